package season

import (
	"errors"
	"fmt"
	"math"

	"github.com/coldseam/coldseam/assembly/envelope"
	"github.com/coldseam/coldseam/climate"
	"github.com/coldseam/coldseam/rvalue"
)

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

// Saving returns what goes away if the row gets another U-factor.
func (y *Year) Saving(row int, u rvalue.Transmittance) (Saving, error) {
	f, err := y.house.Ranking.ToU(row, u)
	if err != nil {
		return Saving{}, err
	}
	return y.After(f)
}

// Meeting returns what goes away if the row just meets its target.
func (y *Year) Meeting(row int) (Saving, error) {
	f, err := y.house.Ranking.ToTarget(row)
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
// correction.) The buffers' heat balance is solved anew too: see envelope's Fixed.
func (y *Year) After(fixes ...envelope.Fix) (Saving, error) {
	rows, err := y.house.Ranking.Fixed(fixes...)
	if err != nil {
		return Saving{}, err
	}
	var ua rvalue.Conductance
	for _, row := range rows {
		ua += row
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
