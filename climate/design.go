package climate

import (
	"math"

	"github.com/coldseam/coldseam/rvalue"
)

// DesignTemperature is an estimate of a place's design temperature, to stand in until
// the local one is known: building departments, and the ASHRAE tables, have it.
type DesignTemperature struct {
	Temperature rvalue.Temperature
	Doubt       rvalue.TemperatureDifference // how far off it may be, either way
	How         string                       // what it is and how it was estimated
}

// designDoubt is about the largest difference between these estimates and the few
// published values that could be had, see testdata/climate_SCORE.md.
const designDoubt = 3.0 // K

// What a station that is not the place's own adds, at most in nine of ten places: of
// the stations in the states, each left out in turn, and what the best other one says
// of it, see testdata/climate_SCORE.md.
const (
	elsewhere = 3.5 * rvalue.Kelvin
	climbed   = 6.5 * rvalue.Kelvin // carried over more than steep
	steep     = 300 * rvalue.Metre
)

// A station so near, and about as high, counts as the place's own: towns and their
// airports are that far apart, our own judgement.
const (
	near  = 25e3 * rvalue.Metre
	level = 100 * rvalue.Metre
)

// borrowed returns what w adds to the doubt about a design temperature.
func (w *Weather) borrowed() rvalue.TemperatureDifference {
	climb := rvalue.Length(math.Abs(w.Climb.SI()))
	switch {
	case climb > steep:
		return climbed
	case w.Distance <= near && climb <= level:
		return 0
	}
	return elsewhere
}

// assumedSwing stands in for an unknown daily swing; the stations' mean is 11.4 K.
const assumedSwing = 11.0 // K

// rareHours are the hours beyond a 99 % or 1 % design value, in a year.
const rareHours = 0.01 * hoursPerYear

// HeatingDesign estimates the 99 % heating design temperature, which 88 hours a year
// are colder than: the point below which the hours of [Prepared.HourBins] count 88.
func (p *Prepared) HeatingDesign() DesignTemperature {
	return p.design(rareHours, "99 % heating design temperature (88 hours a year are colder)")
}

// CoolingDesign estimates the 1 % cooling design temperature, which 88 hours a year
// are warmer than.
func (p *Prepared) CoolingDesign() DesignTemperature {
	return p.design(hoursPerYear-rareHours, "1 % cooling design temperature (88 hours a year are warmer)")
}

func (p *Prepared) design(colder float64, what string) DesignTemperature {
	how := what + ", estimated from monthly means and their spread"
	doubt := designDoubt
	if p.swing == [12]float64{} {
		how += ", for the daily swing of a mean place, as none is known"
		doubt += 1
	}
	if p.borrowed > 0 {
		how += "; less sure because the weather is that of another place"
		doubt = math.Hypot(doubt, p.borrowed.SI()) // two independent causes
	}
	return DesignTemperature{
		Temperature: rvalue.FromCelsius(quantile(p.hourly(assumedSwing), colder)),
		Doubt:       rvalue.TemperatureDifference(doubt) * rvalue.Kelvin,
		How:         how,
	}
}

// quantile returns the temperature that so many hours a year are colder than.
func quantile(clouds []cloud, hours float64) float64 {
	lo, hi := -120.0, 80.0
	for range 50 {
		mid := (lo + hi) / 2
		if h, _ := below(clouds, mid); h < hours {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2
}
