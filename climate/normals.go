package climate

import (
	"errors"
	"fmt"
	"math"

	"github.com/coldseam/coldseam/rvalue"
)

// days holds the days of the months in an ordinary year. The source's own degree
// days close with the identity HDD − CDD = Σ days·(base − mean) only if February
// has 28, not 28.25.
var days = [12]float64{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}

const (
	daysPerYear  = 365.0
	hoursPerYear = 24 * daysPerYear
)

// Normals are a place's monthly means over many years, January first. Take them
// from a station ([Station.Normals], [Nearest]) or from [Given.Normals], which
// check them. Only Mean is never missing.
type Normals struct {
	Mean  [12]rvalue.Temperature           // air temperature
	Swing [12]rvalue.TemperatureDifference // daily maximum minus daily minimum; all zero if unknown
	Rain  [12]float64                      // precipitation in mm a month; all zero if unknown

	// Vapour is the partial pressure of water vapour in Pa; all zero if unknown.
	Vapour [12]float64

	// HDD65 and CDD65 are the published heating and cooling degree days of the year
	// at base 65 °F, where Published says that there are any.
	HDD65, CDD65 DegreeDays
	Published    bool

	Latitude  float64       // degrees north; south of the equator the seasons swap
	Elevation rvalue.Length // above the sea

	// borrowed is how far the design temperature may be off because the normals are
	// another place's, see [Nearest].
	borrowed rvalue.TemperatureDifference
}

// Given is what a user states for a place that no station stands for: twelve
// monthly values each, January first. Mean must be there, the others may be nil.
type Given struct {
	Mean      []rvalue.Temperature
	Swing     []rvalue.TemperatureDifference // daily maximum minus daily minimum
	Rain      []float64                      // mm a month
	Humidity  []float64                      // mean relative humidity, a share from 0 to 1
	Latitude  float64                        // degrees north
	Elevation rvalue.Length
}

// Bounds of what is believed; beyond them a unit is wrong, not the weather.
const (
	coldestMonth = -75.0 // °C; Vostok's coldest month is −68
	hottestMonth = 45.0  // °C; the hottest months on earth are near 39
	largestSwing = 30.0  // K of daily swing; deserts reach 20
	wettestMonth = 6000  // mm; Cherrapunji's wettest month has 2700
)

// Normals checks g and returns it as normals. Every mistake is reported: eleven or
// thirteen values, a value that no month on earth has (which mostly means a wrong
// unit), a humidity over 100 %.
func (g Given) Normals() (Normals, error) {
	n := Normals{Latitude: g.Latitude, Elevation: g.Elevation}
	var problems []error
	twelve := func(what string, count int, needed bool) bool {
		if count == 0 && !needed {
			return false
		}
		if count != 12 {
			problems = append(problems, fmt.Errorf("%d monthly values of %s; give exactly 12, January first", count, what))
			return false
		}
		return true
	}
	within := func(what string, month int, v, lo, hi float64, unit string) {
		if !(v >= lo && v <= hi) { // refuses NaN too
			problems = append(problems, fmt.Errorf("%s of month %d is %.4g %s; give a value from %g to %g %s",
				what, month+1, v, unit, lo, hi, unit))
		}
	}
	if twelve("mean temperature", len(g.Mean), true) {
		n.Mean = [12]rvalue.Temperature(g.Mean)
		for i, t := range g.Mean {
			within("mean temperature", i, t.Celsius(), coldestMonth, hottestMonth, "°C")
		}
	}
	if twelve("daily swing", len(g.Swing), false) {
		n.Swing = [12]rvalue.TemperatureDifference(g.Swing)
		for i, d := range g.Swing {
			within("daily swing", i, d.SI(), 0, largestSwing, "K")
		}
	}
	if twelve("precipitation", len(g.Rain), false) {
		n.Rain = [12]float64(g.Rain)
		for i, r := range g.Rain {
			within("precipitation", i, r, 0, wettestMonth, "mm")
		}
	}
	if !(g.Latitude >= -90 && g.Latitude <= 90) {
		problems = append(problems, fmt.Errorf("latitude is %.4g°; give one from -90 to 90", g.Latitude))
	}
	if err := checkElevation(g.Elevation); err != nil {
		problems = append(problems, err)
	}
	if twelve("relative humidity", len(g.Humidity), false) {
		for i, h := range g.Humidity {
			within("relative humidity", i, 100*h, 0, 100, "%")
		}
		if len(problems) == 0 {
			for i, h := range g.Humidity {
				n.Vapour[i] = h * si.saturation(n.Mean[i].Celsius())
			}
		}
	}
	if err := errors.Join(problems...); err != nil {
		return Normals{}, fmt.Errorf("monthly normals: %w", err)
	}
	return n, nil
}

// AnnualMean returns the mean temperature of the year.
func (n *Normals) AnnualMean() rvalue.Temperature {
	sum := 0.0
	for i, t := range n.Mean {
		sum += days[i] * t.Celsius()
	}
	return rvalue.FromCelsius(sum / daysPerYear)
}

// spread returns the standard deviation, divisor 12, of the monthly means in K.
func (n *Normals) spread() float64 {
	mean, square := 0.0, 0.0
	for _, t := range n.Mean {
		mean += t.Celsius() / 12
	}
	for _, t := range n.Mean {
		d := t.Celsius() - mean
		square += d * d / 12
	}
	return math.Sqrt(square)
}

// At returns the normals carried to another elevation by 6.5 K per km, the lapse of
// the standard atmosphere. The published degree days, which are not the new
// place's, are carried along by what [Normals.Prepare] makes of the shift.
// Swing and rain stay, and so does humidity as long as the colder air can hold it.
func (n Normals) At(elevation rvalue.Length) (Normals, error) {
	if err := checkElevation(elevation); err != nil {
		return Normals{}, err
	}
	shift := lapse * float64(n.Elevation-elevation)
	moved := n
	moved.Elevation = elevation
	for i, t := range n.Mean {
		moved.Mean[i] = t.Add(rvalue.TemperatureDifference(shift))
		if n.Vapour[i] > 0 {
			moved.Vapour[i] = min(n.Vapour[i], si.saturation(moved.Mean[i].Celsius()))
		}
	}
	if !n.Published {
		return moved, nil
	}
	p, err := n.Prepare()
	if err != nil {
		return Normals{}, err
	}
	p.shift(shift)
	moved.HDD65, moved.CDD65 = p.year(base65)
	return moved, nil
}
