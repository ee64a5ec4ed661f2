package season

import (
	"errors"
	"fmt"
	"math"

	"github.com/coldseam/coldseam/climate"
	"github.com/coldseam/coldseam/rvalue"
)

// Fix is another UA of one row.
type Fix struct {
	Row int // index in Year.Rows
	UA  rvalue.Conductance
}

// Saving is what a year takes less once something is fixed. What is worse than
// before counts as negative.
type Saving struct {
	UA         rvalue.Conductance // that goes away
	Balance    rvalue.Temperature // of the house afterwards
	DegreeDays climate.DegreeDays // at that balance

	Heating Use // that goes away; units as in the Year
	Cooling Use
	Money   float64 // of both
	CO2     Mass

	Trust Trust

	moneyKnown bool
}

// ToU returns the fix that gives a row with an area another U-factor, its own, air to
// air. The temperature of a buffer that it faces is taken to stay.
func (y *Year) ToU(row int, u rvalue.Transmittance) (Fix, error) {
	if err := y.checkRow(row); err != nil {
		return Fix{}, err
	}
	r := &y.house.Ranking.Rows[row]
	if r.Area <= 0 {
		return Fix{}, fmt.Errorf("season: %q has no area and so no U-factor; give its UA", r.Name)
	}
	if v := u.SI(); !(v > 0) || !finite(v) {
		return Fix{}, fmt.Errorf("season: a U-factor of %v W/(m²·K) for %q, it must be positive and finite", v, r.Name)
	}
	return Fix{row, rvalue.Conductance(u.Times(r.Area).SI() * r.Factor)}, nil
}

// ToTarget returns the fix with which a row just meets its target; a row that meets
// it stays as it is. A row without a target is an error.
func (y *Year) ToTarget(row int) (Fix, error) {
	if err := y.checkRow(row); err != nil {
		return Fix{}, err
	}
	r := &y.house.Ranking.Rows[row]
	if !r.HasTarget {
		return Fix{}, fmt.Errorf("season: nothing is asked of %q; give the U-factor or UA that it would have", r.Name)
	}
	return Fix{row, r.UA - r.Behind}, nil
}

// Saving returns what goes away if the row gets another U-factor.
func (y *Year) Saving(row int, u rvalue.Transmittance) (Saving, error) {
	f, err := y.ToU(row, u)
	if err != nil {
		return Saving{}, err
	}
	return y.After(f)
}

// Meeting returns what goes away if the row just meets its target.
func (y *Year) Meeting(row int) (Saving, error) {
	f, err := y.ToTarget(row)
	if err != nil {
		return Saving{}, err
	}
	return y.After(f)
}

// After returns what goes away with all the fixes, each of another row. The house is
// computed once more with its new balance temperature, plant and gains as they are,
// because a tighter house needs heat on fewer days: two fixes together save a little
// less than the sum of each alone. (NREL/TP-253-2435, 1985: savings are the difference
// of two runs at the house's own balance point, not degree days at 65 °F times a
// correction.)
func (y *Year) After(fixes ...Fix) (Saving, error) {
	ua, err := y.fixed(fixes)
	if err != nil {
		return Saving{}, err
	}
	before, err := y.at(y.UA)
	if err != nil {
		return Saving{}, err
	}
	after, err := y.at(ua)
	if err != nil {
		return Saving{}, err
	}
	heating, cooling := y.uses(&before, before.ua)
	newHeating, newCooling := y.uses(&after, after.ua)
	s := Saving{
		UA: before.ua - after.ua, Balance: after.balance, DegreeDays: after.heating,
		Heating: heating.minus(newHeating), Cooling: cooling.minus(newCooling),
		Trust: y.Trust.ofSaving(), moneyKnown: y.MoneyKnown,
	}
	s.Money, s.CO2 = s.Heating.Money+s.Cooling.Money, s.Heating.CO2+s.Cooling.CO2
	return s, nil
}

// fixed returns the UA of the house with the fixes.
func (y *Year) fixed(fixes []Fix) (rvalue.Conductance, error) {
	for i, f := range fixes {
		if err := y.checkRow(f.Row); err != nil {
			return 0, err
		}
		name := y.Rows[f.Row].Name
		if v := f.UA.SI(); !finite(v) || v < 0 && y.Rows[f.Row].UA >= 0 {
			return 0, fmt.Errorf("season: a UA of %v W/K for %q, it must be 0 or more, and finite", v, name)
		}
		for _, g := range fixes[:i] {
			if g.Row == f.Row {
				return 0, fmt.Errorf("season: %q is fixed twice", name)
			}
		}
	}
	var ua rvalue.Conductance
	for i := range y.Rows {
		u := y.Rows[i].UA
		for _, f := range fixes {
			if f.Row == i {
				u = f.UA
			}
		}
		ua += u
	}
	return ua, nil
}

func (y *Year) checkRow(row int) error {
	if row < 0 || row >= len(y.Rows) {
		return fmt.Errorf("season: no row %d, there are %d from 0 on", row, len(y.Rows))
	}
	return nil
}

// Payback is after how many years a fix has paid for itself at today's prices, without
// interest, upkeep and grants.
type Payback struct {
	Years   float64
	Soonest float64 // with the most that the saving's Trust allows
	Longest float64 // with the least; +Inf where that is nothing
}

// Payback returns the simple payback of what a fix costs, 0 or more, in the currency
// of the Year. It is an error where no money is saved, or none is known.
func (s Saving) Payback(cost float64) (Payback, error) {
	switch {
	case !(cost >= 0) || math.IsInf(cost, 1):
		return Payback{}, fmt.Errorf("season: a cost of %v, it must be 0 or more, and finite", cost)
	case !s.moneyKnown:
		return Payback{}, errors.New("season: no payback without a price of the fuel; give one")
	case !(s.Money > 0):
		return Payback{}, errors.New("season: no payback, the fix saves no money")
	}
	years := cost / s.Money
	return Payback{years, years / s.Trust.High, years / s.Trust.Low}, nil
}
