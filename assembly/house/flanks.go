package house

import (
	"fmt"
	"math"
	"slices"

	solver "github.com/coldseam/coldseam/assembly/section"
	"github.com/coldseam/coldseam/rvalue"
)

// Flanks are the plain parts of what is drawn: together they are as long as the faces in
// the rooms by internal dimensions, and as those outdoors by external ones (ISO 13789).
const (
	mostFlanks = 1.25 // of the longer of the faces on either side: beyond that no dimensions reach
	alikeFlank = 0.02 // as a part of the faces: what readings may be off
	mostPlain  = 1.5  // of the coupling: what plain parts may let through; an outer corner's by external dimensions nears it
)

// flankLengths holds the lengths of flanks against those of the faces: what no kind of
// dimensions explains is a mistake, what one may explain a remark.
func (d *decoder) flankLengths(s *section, dr *Drawing, tables []*table, o *overlay) {
	if len(dr.Flanks) == 0 {
		return
	}
	warm, cold := dr.facing(o)
	for _, by := range []struct {
		key    string
		length func(*Flank) rvalue.Length
	}{
		{"internal", func(f *Flank) rvalue.Length { return f.Internal }},
		{"external", func(f *Flank) rvalue.Length { return f.External }},
	} {
		var sum, longest rvalue.Length
		all, at := true, 0
		for n, f := range dr.Flanks {
			l := by.length(f)
			sum += l
			all = all && l > 0
			if l > longest {
				longest, at = l, n
			}
		}
		text := fmt.Sprintf("the flanks are %s long by %s dimensions, and what lies between the airs has %s of faces on the warm side and %s on the cold one", rvalue.Both(sum), by.key, rvalue.Both(warm), rvalue.Both(cold))
		if sum > mostFlanks*max(warm, cold) {
			f := &section{d: d, t: tables[at], where: s.inside(fmt.Sprintf("flank %q", dr.Flanks[at].Name))}
			f.fail(by.key, "%s; write how long each plain part is in the drawing, each once", text)
			continue
		}
		side := warm
		if by.key == "external" {
			side = cold
		}
		if all && math.Abs(float64(sum-side)) > alikeFlank*float64(side) {
			dr.Remarks = append(dr.Remarks, solver.Remark{Code: "flanks", Text: text + "; psi is right only if the difference is what the dimensions make of corners and of floors in between, or a part that is not counted, such as a window"})
		}
	}
}

// facing returns how long the faces toward the warm and the cold air are, without those
// of what stands inside or outside alone: whoever goes straight into the material from
// them comes out at the same air again.
func (d *Drawing) facing(o *overlay) (warm, cold rvalue.Length) {
	airs := airsOf(d)
	for _, f := range d.Faces {
		if f.Air == nil {
			continue
		}
		for _, part := range o.opposite(d, f) {
			switch {
			case part.face != nil && part.face.Air != nil && part.face.Air.Temperature == f.Air.Temperature:
			case f.Air.Temperature == slices.Max(airs):
				warm += part.length
			default:
				cold += part.length
			}
		}
	}
	return warm, cold
}

// opposite is what lies straight across the material from a part of a face.
type opposite struct {
	length rvalue.Length
	face   *Face // nil for none
}

func (o *overlay) opposite(d *Drawing, f *Face) []opposite {
	upright := near(float64(f.From.Y), float64(f.To.Y)) // the way across
	edges, ends := o.ys, o.xs
	from, to, start := o.column(f.From.X), o.column(f.To.X), o.row(f.From.Y)
	at := func(n, i int) int { return o.at(i, n) }
	if !upright {
		edges, ends = o.xs, o.ys
		from, to, start = o.row(f.From.Y), o.row(f.To.Y), o.column(f.From.X)
		at = func(n, i int) int { return o.at(n, i) }
	}
	var out []opposite
	for i := from; i < to; i++ {
		end := start
		for at(end, i) >= 0 {
			end++
		}
		if end == start {
			for at(end-1, i) >= 0 {
				end--
			}
		}
		part := opposite{length: rvalue.Length(ends[i+1] - ends[i])}
		middle := rvalue.Length((ends[i] + ends[i+1]) / 2)
		for _, g := range d.Faces {
			if g.meets(upright, middle, rvalue.Length(edges[end])) {
				part.face = g
			}
		}
		out = append(out, part)
	}
	return out
}

// flanksExceed remarks on plain parts that would let through far more than the whole.
func (d *Drawing) flanksExceed(r *solver.Result) []solver.Remark {
	var out []solver.Remark
	l, _, _ := r.Coupling()
	internal, external := d.Psi(r)
	for i, p := range []*Psi{internal, external} {
		if p == nil || l <= 0 || math.IsInf(float64(l), 0) {
			continue
		}
		if plain := l - p.Psi; plain > mostPlain*l {
			out = append(out, solver.Remark{Code: "psi", Text: fmt.Sprintf(
				"the flanks alone, by %s dimensions, would let %s through, far more than the section with its bridge does, %s: look at their lengths and U", dimensions[i], rvalue.Both(plain), rvalue.Both(l))})
		}
	}
	return out
}
