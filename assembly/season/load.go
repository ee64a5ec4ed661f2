package season

import (
	"errors"
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

// ErrWarm says that there is no cold day to size a heater for.
var ErrWarm = errors.New("season: the coldest days of the place are not colder than the rooms, so that no heater is needed")

// designGiven is how a temperature is said to be known that the user typed.
const designGiven = "as given"

// Load returns the design heat loss of the house, now without fixes, or with them. A
// design temperature of 0 stands for climate's estimate, which is marked as such: ask
// the building department for the local one. Where that is not below the indoor
// temperature, the error is ErrWarm. See DesignLoad.
func (y *Year) Load(design rvalue.Temperature, fixes ...envelope.Fix) (Load, error) {
	if design != 0 {
		return DesignLoad(y.house.Ranking, y.Indoors, design, fixes...)
	}
	d := y.house.Weather.HeatingDesign()
	if d.Temperature >= y.Indoors {
		return Load{}, ErrWarm
	}
	l, err := DesignLoad(y.house.Ranking, y.Indoors, d.Temperature, fixes...)
	l.Estimate, l.How, l.Doubt = true, d.How, d.Doubt
	span := y.Indoors.Sub(l.Outdoors)
	l.Low = Power(float64(l.Loss) * max(0, float64(span-l.Doubt)/float64(span)))
	l.High = Power(float64(l.Loss) * float64(span+l.Doubt) / float64(span))
	return l, err
}

// DesignLoad returns the heat that a ranked house loses at a design temperature,
// UA·(t_indoors − t_design), now without fixes, or with them. A temperature not below
// the indoor one, or under −60 °C, is an error.
//
// Air leaks more in cold and wind than through the mean of the season, so a leaky
// house loses more than this; nothing is added for pick-up after a setback, nor for
// ducts outside the heated rooms.
func DesignLoad(r *envelope.Ranking, indoors, design rvalue.Temperature, fixes ...envelope.Fix) (Load, error) {
	if !(design.Celsius() >= lowestBase && design < indoors) {
		return Load{}, fmt.Errorf("season: a design temperature of %s °C, give one from %g °C to the indoor temperature, %s °C",
			figure(design.Celsius()), lowestBase, figure(indoors.Celsius()))
	}
	rows, err := r.Fixed(fixes...)
	if err != nil {
		return Load{}, err
	}
	l := Load{Outdoors: design, How: designGiven, Rows: make([]Power, len(rows))}
	for i, ua := range rows {
		l.Rows[i] = Power(ua.SI()*indoors.Sub(design).SI()) * Watt
		l.Loss += l.Rows[i]
	}
	l.Low, l.High = l.Loss, l.Loss
	return l, nil
}
