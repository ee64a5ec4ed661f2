package house

import (
	"cmp"
	"fmt"
	"slices"

	"github.com/coldseam/coldseam/assembly/envelope"
	"github.com/coldseam/coldseam/assembly/season"
	"github.com/coldseam/coldseam/rvalue"
)

// Step is one thing to work on: all parts of the same make, or a part by itself.
type Step struct {
	Make   string             // `assembly "wall-1926"`, `window "sash-1926"`, or the part's own name
	Parts  []string           // the rows of the ranking that it takes in, most heat first
	Behind rvalue.Conductance // what would go away if all of them just met what is asked
	Share  float64            // of the whole house's heat
	Rows   []int              // of the ranking

	// Saving is what that takes off a year, nil where the season is not known.
	Saving *season.Saving
}

// Order puts what is behind into the order of what would go away, with the
// parts of one make taken together: whoever insulates one empty wall has the
// tools out for the next. It says nothing of cost.
func (r *Report) Order() ([]Step, error) {
	made := r.House.makes()
	var steps []Step
	for i := range r.Ranking.Rows {
		row := &r.Ranking.Rows[i]
		if row.Behind <= 0 {
			continue
		}
		name, known := made[[2]string{row.In, row.Name}]
		at := -1
		if known && row.Kind != envelope.ThermalBridge && row.Kind != envelope.AirLeakage { // which a part may share its name with
			at = slices.IndexFunc(steps, func(s Step) bool { return s.Make == name })
		} else {
			name = row.Name
		}
		if at < 0 {
			at = len(steps)
			steps = append(steps, Step{Make: name})
		}
		s := &steps[at]
		s.Parts, s.Rows = append(s.Parts, row.Name), append(s.Rows, i)
	}
	for i := range steps {
		s := &steps[i]
		fixes, err := r.fixes(s.Rows)
		if err != nil {
			return nil, err
		}
		rows, err := r.Ranking.Fixed(fixes...)
		if err != nil {
			return nil, fmt.Errorf("house: %s: %w", s.Make, err)
		}
		s.Behind = r.Ranking.Total.UA
		for _, ua := range rows {
			s.Behind -= ua
		}
		s.Share = float64(s.Behind) / float64(r.Ranking.Total.UA)
		if r.Season == nil {
			continue
		}
		saving, err := r.Season.Year.After(fixes...)
		if err != nil {
			return nil, fmt.Errorf("house: %s: %w", s.Make, err)
		}
		s.Saving = &saving
	}
	slices.SortStableFunc(steps, func(a, b Step) int { return cmp.Compare(b.Behind, a.Behind) })
	return steps, nil
}

// makes tells by part and name what the rows of the ranking are made of.
func (h *House) makes() map[[2]string]string {
	made := map[[2]string]string{}
	window := func(w *Window) string { return fmt.Sprintf("window %q", w.Name) }
	for _, p := range h.Parts {
		switch {
		case p.Assembly != nil:
			made[[2]string{"", p.Name}] = fmt.Sprintf("assembly %q", p.Assembly.Name)
		case p.Window != nil:
			made[[2]string{"", p.Name}] = window(p.Window)
		}
		for _, o := range p.Openings {
			made[[2]string{p.Name, o.Name}] = window(o.Window)
		}
	}
	return made
}
