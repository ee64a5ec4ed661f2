package climate

import "github.com/coldseam/coldseam/rvalue"

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
		how += ", for a daily swing of 11 K, as none is known"
		doubt += 1
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
