package envelope

import (
	"fmt"
	"math"

	"github.com/coldseam/coldseam/rvalue"
)

// Fix gives a row of a Ranking another conductance.
type Fix struct {
	Row int                // index in Ranking.Rows
	UA  rvalue.Conductance // its own, air to air: toward the buffer, where it faces one
}

// Own returns the conductance of the row itself, U·Area, whatever it faces. It is UA
// divided by the buffer's factor.
func (r *Row) Own() rvalue.Conductance {
	if r.Toward == "" {
		return r.UA
	}
	return r.U.Times(r.Area)
}

// ToU returns the fix that gives a row with an area another U-factor, air to air.
func (r *Ranking) ToU(row int, u rvalue.Transmittance) (Fix, error) {
	if err := r.checkRow(row); err != nil {
		return Fix{}, err
	}
	at := &r.Rows[row]
	if at.Area <= 0 {
		return Fix{}, fmt.Errorf("envelope: %q has no area and so no U-factor; give its UA", at.Name)
	}
	if v := u.SI(); !(v > 0) || math.IsInf(v, 1) {
		return Fix{}, fmt.Errorf("envelope: a U-factor of %v W/(m²·K) for %q, it must be positive and finite", v, at.Name)
	}
	return Fix{row, u.Times(at.Area)}, nil
}

// ToTarget returns the fix with which a row just meets its target; a row that meets
// it stays as it is. A row without a target is an error.
func (r *Ranking) ToTarget(row int) (Fix, error) {
	if err := r.checkRow(row); err != nil {
		return Fix{}, err
	}
	at := &r.Rows[row]
	switch {
	case !at.HasTarget:
		return Fix{}, fmt.Errorf("envelope: nothing is asked of %q; give the U-factor or UA that it would have", at.Name)
	case at.Behind == 0:
		return Fix{row, at.Own()}, nil
	case at.Toward == "":
		return Fix{row, at.UA - at.Behind}, nil
	}
	return Fix{row, at.Target.U.Times(at.Area)}, nil
}

// Fixed returns what the rows conduct toward outdoors with all the fixes, each of
// another row, in the order of Rows. The buffers' heat balance is solved anew: less
// heat into a buffer makes it colder, so that a fix saves less than its share, and the
// other rows toward the same buffer lose a little more.
func (r *Ranking) Fixed(fixes ...Fix) ([]rvalue.Conductance, error) {
	for i, f := range fixes {
		if err := r.checkRow(f.Row); err != nil {
			return nil, err
		}
		at := &r.Rows[f.Row]
		if v := f.UA.SI(); math.IsNaN(v) || math.IsInf(v, 0) || v < 0 && at.UA >= 0 {
			return nil, fmt.Errorf("envelope: a UA of %v W/K for %q, it must be 0 or more, and finite", v, at.Name)
		}
		for _, g := range fixes[:i] {
			if g.Row == f.Row {
				return nil, fmt.Errorf("envelope: %q is fixed twice", at.Name)
			}
		}
	}
	ua := make([]rvalue.Conductance, len(r.Rows))
	for i := range r.Rows {
		ua[i] = r.Rows[i].UA
	}
	changed := map[string]rvalue.Conductance{} // inward, by buffer
	for _, f := range fixes {
		at := &r.Rows[f.Row]
		ua[f.Row] = f.UA
		if at.Toward != "" {
			changed[at.Toward] += f.UA - at.Own()
		}
	}
	for i := range r.Buffers {
		b := &r.Buffers[i]
		change, ok := changed[b.Name]
		if !ok {
			continue
		}
		factor := b.factor(change)
		for j := range r.Rows {
			if r.Rows[j].Toward == b.Name {
				ua[j] = scale(r.Rows[j].Own(), factor)
			}
		}
		for _, f := range fixes {
			if r.Rows[f.Row].Toward == b.Name {
				ua[f.Row] = scale(f.UA, factor)
			}
		}
	}
	return ua, nil
}

func (r *Ranking) checkRow(row int) error {
	if row < 0 || row >= len(r.Rows) {
		return fmt.Errorf("envelope: no row %d, there are %d from 0 on", row, len(r.Rows))
	}
	return nil
}
