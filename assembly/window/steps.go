package window

import (
	"slices"

	"github.com/coldseam/coldseam/rvalue"
)

// Step is one way to make a window better.
type Step struct {
	Name   string // "as it is" first
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
//   - a storm window outside, then the same with a hard coat on its inner face;
//   - a sealed unit in the sash: second pane, soft coat, argon, warm spacer, third
//     pane (coated and filled too), each on top of the one before.
//
// Steps that the window already has are left out. The frame stays as it is, with
// the published U for so many panes. The error names what in w or c cannot be.
func (w Window) Steps(c Conditions) ([]Step, error) {
	var steps []Step
	add := func(name string, from int, w Window) error {
		whole, _, err := w.Design(c)
		if err != nil {
			return err
		}
		s := Step{Name: name, From: from, Window: w, Whole: whole}
		if from >= 0 {
			s.Gain = steps[from].Whole.U - whole.U
			s.Saved = 1 - whole.U.SI()/steps[0].Whole.U.SI()
		}
		steps = append(steps, s)
		return nil
	}
	if err := add("as it is", -1, w); err != nil {
		return nil, err
	}
	if err := w.stormSteps(add); err != nil {
		return nil, err
	}
	last := 0
	for _, improve := range [...]struct {
		name  string
		apply func(*Window) bool
	}{
		{"second pane", (*Window).secondPane},
		{"coating", (*Window).coat},
		{"argon", (*Window).argon},
		{"warm spacer", (*Window).warmSpacer},
		{"third pane", (*Window).thirdPane},
	} {
		next := steps[last].Window
		next.Glazing = next.Glazing.clone()
		if !improve.apply(&next) {
			continue
		}
		if err := add(improve.name, last, next); err != nil {
			return nil, err
		}
		last = len(steps) - 1
	}
	return steps, nil
}

// stormSteps adds a storm window, and a coat to it, to one that has none.
func (w Window) stormSteps(add func(string, int, Window) error) error {
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
		if err := add("storm window", 0, w); err != nil {
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
	return add("coated storm window", from, w)
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

func (w *Window) secondPane() bool {
	first, last := w.sash()
	return first == last && w.insert(Gap{Thickness: stepGap}, Pane{Thickness: w.Glazing.Panes[last].Thickness})
}

// coat puts a soft coat into each gap of the sash that has none, on the pane
// towards outdoors.
func (w *Window) coat() (done bool) {
	first, last := w.sash()
	for i := first; i < last; i++ {
		if w.Glazing.Panes[i].Outer == 0 && w.Glazing.Panes[i+1].Inner == 0 && w.Glazing.Gaps[i].Kind == Filled {
			w.Glazing.Panes[i+1].Inner, done = stepSoft, true
		}
	}
	return done
}

func (w *Window) argon() (done bool) {
	first, last := w.sash()
	for i := first; i < last; i++ {
		if gap := &w.Glazing.Gaps[i]; gap.Kind == Filled && gap.Fill == (Fill{}) {
			gap.Fill.Argon, done = usualFill, true
		}
	}
	return done
}

func (w *Window) warmSpacer() bool {
	if !w.Glazing.sealed() || w.Spacer != Metal {
		return false
	}
	w.Spacer = Insulating
	return true
}

func (w *Window) thirdPane() bool {
	first, last := w.sash()
	if last != first+1 || w.Glazing.Gaps[first].Kind != Filled {
		return false
	}
	pane := Pane{Thickness: w.Glazing.Panes[last].Thickness, Inner: stepSoft}
	return w.insert(w.Glazing.Gaps[first], pane)
}
