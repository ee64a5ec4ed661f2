package season

import (
	"fmt"

	"github.com/coldseam/coldseam/assembly/envelope"
	"github.com/coldseam/coldseam/rvalue"
)

// Load is the heat that the house loses at its design temperature, which the heater
// or heat pump must deliver. Gains do not count, as nobody may be at home and the sun
// down.
type Load struct {
	Outdoors rvalue.Temperature // design temperature
	Estimate bool               // that temperature is climate's estimate, not the local one
	How      string             // where the temperature is from
	Doubt    rvalue.TemperatureDifference

	Rows []Power // in the order of Year.Rows
	Loss Power   // their sum

	// Low and High are the loss at the warm and the cold end of Doubt, equal to Loss
	// where the temperature was given.
	Low, High Power
}

// Tons returns the load in tons of refrigeration of 12 000 Btu/h.
func (l Load) Tons() float64 { return l.Loss.Tons() }

// designGiven is how a temperature is said to be known that the user typed.
const designGiven = "as given"

// Load returns the design heat loss UA·(t_indoors − t_design), now without fixes, or
// with them. A design temperature of 0 stands for climate's estimate, which is marked
// as such: ask the building department for the local one. A temperature not below
// the indoor one, or under −60 °C, is an error.
//
// Air leaks more in cold and wind than through the mean of the season, so a leaky
// house loses more than this; nothing is added for pick-up after a setback, nor for
// ducts outside the heated rooms.
func (y *Year) Load(design rvalue.Temperature, fixes ...envelope.Fix) (Load, error) {
	l := Load{Outdoors: design, How: designGiven}
	if design == 0 {
		d := y.house.Weather.HeatingDesign()
		l.Outdoors, l.Estimate, l.How, l.Doubt = d.Temperature, true, d.How, d.Doubt
	}
	if t := l.Outdoors; !(t.Celsius() >= lowestBase && t < y.Indoors) {
		return Load{}, fmt.Errorf("season: a design temperature of %s °C, give one from %g °C to the indoor temperature, %s °C",
			figure(t.Celsius()), lowestBase, figure(y.Indoors.Celsius()))
	}
	rows, err := y.house.Ranking.Fixed(fixes...)
	if err != nil {
		return Load{}, err
	}
	loss := func(ua rvalue.Conductance, outdoors rvalue.Temperature) Power {
		return Power(ua.SI()*y.Indoors.Sub(outdoors).SI()) * Watt
	}
	l.Rows = make([]Power, len(rows))
	for i, ua := range rows {
		l.Rows[i] = loss(ua, l.Outdoors)
		l.Loss += l.Rows[i]
		l.Low += loss(ua, min(l.Outdoors.Add(l.Doubt), y.Indoors))
		l.High += loss(ua, l.Outdoors.Add(-l.Doubt))
	}
	return l, nil
}
