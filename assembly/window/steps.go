package window

import (
	"fmt"
	"math"
	"slices"

	"github.com/coldseam/coldseam/rvalue"
)

// Step is one way to make a window better.
type Step struct {
	Name   string // "as it is" first
	What   string // what it puts in, "" for the first
	From   int    // the step it builds on, by its place in the list; −1 for the first
	Window Window
	Whole  Whole
	Gain   rvalue.Transmittance // what U falls from the step it builds on
	Saved  float64              // of the first window's heat, by all steps so far
}

// What the steps put in.
const (
	stepPane     = 3 * rvalue.Millimetre
	stepGap      = 0.5 * rvalue.Inch // the handbook's; wider ones bring little
	stormGapWide = 2 * rvalue.Inch   // a storm window in the same opening: common practice, no source
	stepSoft     = 0.04
	stepHard     = 0.15 // a coat that may be touched and rained on
)

// Steps returns what a renovator can do to the glass of a window, each step with
// what it gains in the conditions c by the handbook's weighting (see
// [Window.Design]), the window as it is first:
//
//   - a storm window outside, then the same with a hard coat on its inner face; not for
//     glass that is level or leans past upright;
//   - a sealed unit in the sash: second pane, soft coat, argon, warm spacer, third
//     pane (coated and filled too), each on top of the one before.
//
// Steps that the window already has are left out. The frame stays as it is, with
// the published U for so many panes. The error names what in w or c cannot be.
func (w Window) Steps(c Conditions) ([]Step, error) { return Skylight{Window: w}.Steps(c) }

// Steps returns those of the skylight's window, see [Window.Steps], each on the curb.
func (s Skylight) Steps(c Conditions) ([]Step, error) {
	l := stepList{on: s, c: c}
	w := s.Window
	if err := l.add("as it is", "", -1, w); err != nil {
		return nil, err
	}
	if c.Tilt >= turning && c.Tilt <= Upright {
		if err := l.storms(w); err != nil {
			return nil, err
		}
	}
	last := 0
	for _, improve := range [...]struct {
		name  string
		apply func(*Window) string // "" if there is nothing to do
	}{
		{"second pane", (*Window).secondPane},
		{"coating", (*Window).coat},
		{"argon", (*Window).argon},
		{"warm spacer", (*Window).warmSpacer},
		{"third pane", (*Window).thirdPane},
	} {
		next := l.steps[last].Window
		next.Glazing = next.Glazing.clone()
		what := improve.apply(&next)
		if what == "" {
			continue
		}
		if err := l.add(improve.name, what, last, next); err != nil {
			return nil, err
		}
		last = len(l.steps) - 1
	}
	return l.steps, nil
}

// stepList gathers steps.
type stepList struct {
	on    Skylight // the curb
	c     Conditions
	steps []Step
}

// add computes a step that builds on that at from.
func (l *stepList) add(name, what string, from int, w Window) error {
	l.on.Window = w
	whole, _, err := l.on.Design(l.c)
	if err != nil {
		return err
	}
	s := Step{Name: name, What: what, From: from, Window: w, Whole: whole}
	if from >= 0 {
		s.Gain = l.steps[from].Whole.U - whole.U
		s.Saved = 1 - whole.U.SI()/l.steps[0].Whole.U.SI()
	}
	l.steps = append(l.steps, s)
	return nil
}

// storms adds a storm window, and a coat to it, to one that has none.
func (l *stepList) storms(w Window) error {
	n := len(w.Glazing.Panes)
	first, last := w.sash()
	if first > last || n >= MaxPanes {
		return nil
	}
	from := 0
	w.Glazing = w.Glazing.clone()
	if first == 0 && last == n-1 { // no storm yet
		w.Glazing.Panes = append(w.Glazing.Panes, Pane{Thickness: stepPane, Storm: true})
		w.Glazing.Gaps = append(w.Glazing.Gaps, Gap{Thickness: stormGapWide})
		what := fmt.Sprintf("%s of %s, %s before the sash", roughly(stepPane), Glass, roughly(stormGapWide))
		if err := l.add("storm window", what, 0, w); err != nil {
			return err
		}
		from = 1
	}
	outer := &w.Glazing.Panes[len(w.Glazing.Panes)-1]
	if !outer.Storm || outer.Inner != 0 {
		return nil
	}
	w.Glazing = w.Glazing.clone()
	w.Glazing.Panes[len(w.Glazing.Panes)-1].Inner = stepHard
	return l.add("coated storm window", fmt.Sprintf("a hard coat, low-e %g, on the face of the storm towards the sash", stepHard), from, w)
}

// sash returns the first and the last pane that is no storm or secondary one.
func (w *Window) sash() (first, last int) {
	panes := w.Glazing.Panes
	storm := func(p Pane) bool { return !p.Storm }
	first = slices.IndexFunc(panes, storm)
	if first < 0 {
		return 0, -1
	}
	last = first
	for last+1 < len(panes) && !panes[last+1].Storm {
		last++
	}
	return first, last
}

// insert puts a gap and a pane behind the sash's last pane.
func (w *Window) insert(gap Gap, p Pane) bool {
	first, last := w.sash()
	if first > last || len(w.Glazing.Panes) >= MaxPanes {
		return false
	}
	w.Glazing.Panes = slices.Insert(w.Glazing.Panes, last+1, p)
	w.Glazing.Gaps = slices.Insert(w.Glazing.Gaps, last, gap)
	return true
}

func (w *Window) secondPane() string {
	first, last := w.sash()
	if first != last {
		return ""
	}
	pane := Pane{Thickness: w.Glazing.Panes[last].Thickness}
	if !w.insert(Gap{Thickness: stepGap}, pane) {
		return ""
	}
	return fmt.Sprintf("%s of air and %s of glass", roughly(stepGap), roughly(pane.Thickness))
}

// coat puts a soft coat into each gap of the sash that has none, on the pane
// towards outdoors.
func (w *Window) coat() string {
	first, last := w.sash()
	n := 0
	for i := first; i < last; i++ {
		if w.Glazing.Panes[i].Outer == 0 && w.Glazing.Panes[i+1].Inner == 0 && w.Glazing.Gaps[i].Kind == Filled {
			w.Glazing.Panes[i+1].Inner = stepSoft
			n++
		}
	}
	return inGaps(n, "a soft coat, low-e %g, on the outer pane's face in the gap", "soft coats, low-e %g, one in each of %d gaps", stepSoft)
}

func (w *Window) argon() string {
	first, last := w.sash()
	n := 0
	for i := first; i < last; i++ {
		if gap := &w.Glazing.Gaps[i]; gap.Kind == Filled && gap.Fill == (Fill{}) {
			gap.Fill.Argon = usualFill
			n++
		}
	}
	return inGaps(n, "%g %% argon in place of air", "%g %% argon in place of air in %d gaps", 100*usualFill)
}

// inGaps says what is put into n gaps, "" for none.
func inGaps(n int, one, several string, figure float64) string {
	switch n {
	case 0:
		return ""
	case 1:
		return fmt.Sprintf(one, figure)
	}
	return fmt.Sprintf(several, figure, n)
}

func (w *Window) warmSpacer() string {
	if !w.Glazing.sealed() || w.Spacer != Metal {
		return ""
	}
	w.Spacer = Insulating
	return "an insulating spacer in place of metal at the edge of the unit"
}

func (w *Window) thirdPane() string {
	first, last := w.sash()
	if last != first+1 || w.Glazing.Gaps[first].Kind != Filled {
		return ""
	}
	gap, pane := w.Glazing.Gaps[first], Pane{Thickness: w.Glazing.Panes[last].Thickness, Inner: stepSoft}
	if !w.insert(gap, pane) {
		return ""
	}
	return fmt.Sprintf("one more gap (%s) and %s of glass with a soft coat, low-e %g, in it", gap, roughly(pane.Thickness), stepSoft)
}

// roughly writes a thickness to 0.1 mm and 1/32 in, for reading and not for an order.
func roughly(l rvalue.Length) string {
	const division = 32 // of an inch
	return decimals(l.Millimetres(), 1) + " mm (" + fraction(math.Round(l.Inches()*division)/division) + " in)"
}
