package section

import (
	"errors"
	"strings"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/rvalue/surface"
)

// How well an assembly is solved: half the bracket, of the whole. The mean of both
// bounds, which is what counts, is far better.
const (
	bayTolerance   = 1e-4
	blockTolerance = 0.01
	anySurface     = 1 // surface temperatures are not asked for
)

// Evaluate is spec.Evaluate with the numeric answer as the effective one, where the
// setting asks for it, or leaves the choice where hand methods are weak: for steel
// studs, and where their limits lie more than 5 % to both sides of their mean (ISO 6946:
// more than half as far apart again). What cannot be drawn keeps its hand method, with
// a remark; asked for, that is an error.
//
// What is drawn are the members of one bay with the shares that the hand methods take
// (see [NewBay]): of steel the studs, without tracks, screws and corners.
func Evaluate(spec *assembly.Spec, setting assembly.Setting) (*assembly.Result, error) {
	if setting.Method != assembly.Numeric {
		r, err := spec.Evaluate(setting)
		if err != nil || setting.Method != assembly.Advised || !weak(r) {
			return r, err
		}
		return prefer(spec, r)
	}
	hand := setting
	hand.Method = assembly.Advised
	r, err := spec.Evaluate(hand)
	if err != nil {
		return nil, err
	}
	if r, err = improve(spec, r); err != nil {
		return nil, err
	}
	r.Setting.Method = setting.Method
	return r, nil
}

// Prefer is Evaluate with the numeric answer wherever the setting leaves the choice and
// the assembly can be drawn.
func Prefer(spec *assembly.Spec, setting assembly.Setting) (*assembly.Result, error) {
	if setting.Method != assembly.Advised {
		return Evaluate(spec, setting)
	}
	r, err := spec.Evaluate(setting)
	if err != nil {
		return nil, err
	}
	return prefer(spec, r)
}

// prefer makes the numeric answer the effective one, or remarks why there is none.
func prefer(spec *assembly.Spec, r *assembly.Result) (*assembly.Result, error) {
	solved, err := improve(spec, r)
	if err == nil {
		return solved, nil
	}
	why := strings.TrimPrefix(err.Error(), "section: ")
	var syntax *assembly.SyntaxError
	if errors.As(err, &syntax) {
		why = syntax.Msg
	}
	r.Remarks = append(r.Remarks, assembly.Remark{Code: "numeric-none", Text: "no numeric answer: " + why, Offset: -1})
	return r, nil
}

// improve makes the numeric answer the effective one.
func improve(spec *assembly.Spec, r *assembly.Result) (*assembly.Result, error) {
	s, remarks, err := Solve(spec, r)
	if err != nil {
		return nil, err
	}
	solved, err := r.Solved(s)
	if err != nil {
		return nil, err
	}
	solved.Remarks = append(append([]assembly.Remark(nil), r.Remarks...), remarks...)
	if r.Zone > 0 {
		solved.Remarks = append(solved.Remarks, assembly.Remark{
			Code: "steel-drawn", Offset: -1,
			Text: "drawn are the studs with web and flanges, in full contact, at their spacing; tracks, screws, corners and headers are not, and a code's own tables may count them",
		})
	}
	return solved, nil
}

// apart is how far, half the width of their bracket, the hand methods may lie apart and
// still do: our own judgement, what the materials' own figures spread by.
const apart = 0.05

// weak reports whether the hand methods are too weak for an assembly: with steel studs,
// or where their limits leave more open than the materials do. ISO 6946 names its own
// limit, within which it has its answer.
func weak(r *assembly.Result) bool {
	switch {
	case r.Zone > 0 || !r.Combined.Valid:
		return true
	case r.Setting.Films == surface.ISO6946:
		return false
	}
	return r.Combined.Error > apart
}

// Solve finds the numeric answer for an assembly that spec.Evaluate computed, in the
// plane or, where members cross, in space. The remarks say what had to be assumed.
// The error says why it cannot be drawn.
func Solve(spec *assembly.Spec, r *assembly.Result) (assembly.Solution, []assembly.Remark, error) {
	lines := map[int]bool{}
	crossing, bridged := 0, false
	for _, l := range r.Assembly.Layers {
		if !l.Bridged() {
			continue
		}
		bridged = true
		if l.Line == 0 || !lines[l.Line] {
			crossing++
		}
		lines[l.Line] = true
	}
	if !bridged {
		whole := r.ParallelPath // all methods agree
		return assembly.Solution{R: whole, Low: whole, High: whole}, nil, nil
	}
	if crossing > 1 {
		b, err := NewBlock(spec, r)
		if err != nil {
			return assembly.Solution{}, nil, err
		}
		q, err := b.Solid.Solve(SolidOptions{Tolerance: blockTolerance, Surface: anySurface})
		if err != nil {
			return assembly.Solution{}, nil, err
		}
		l, low, high := q.Coupling()
		return assembly.Solution{R: l.Over(b.Area).R(), Low: high.Over(b.Area).R(), High: low.Over(b.Area).R()}, b.Remarks, nil
	}
	b, err := NewBay(spec, r)
	if err != nil {
		return assembly.Solution{}, nil, err
	}
	q, err := b.Section.Solve(Options{Tolerance: bayTolerance, Surface: anySurface})
	if err != nil {
		return assembly.Solution{}, nil, err
	}
	l, low, high := q.Coupling()
	return assembly.Solution{R: l.Over(b.Width).R(), Low: high.Over(b.Width).R(), High: low.Over(b.Width).R()}, b.Remarks, nil
}
