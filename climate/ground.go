package climate

import (
	"fmt"
	"math"

	"github.com/coldseam/coldseam/rvalue"
)

// Ground is undisturbed ground whose surface temperature swings as a cosine over
// the year. It knows no house above, no snow and no groundwater.
type Ground struct {
	Mean        rvalue.Temperature           // of the surface over the year, and of the depth
	Amplitude   rvalue.TemperatureDifference // half of warmest minus coldest
	ColdestDay  float64                      // day of the year on which the surface is coldest
	Diffusivity float64                      // m²/s; soils have 0.3e-6 to 0.8e-6
}

// daysPerCycle is the length of the year in the cosine, leap years shared out.
const daysPerCycle = 365.25

// TypicalDiffusivity is that of a moist soil in m²/s, the middle of the usual range.
const TypicalDiffusivity = 0.5e-6

// Ground returns the ground under a place: the yearly wave of the air's monthly
// means (their first harmonic) taken for that of the surface. The ground is mostly 0
// to 2 K warmer than the air over the year (from memory), under snow more; this
// is not added. The diffusivity is in m²/s, [TypicalDiffusivity] if nothing is known.
func (n *Normals) Ground(diffusivity float64) (Ground, error) {
	if !(diffusivity >= 1e-8 && diffusivity <= 1e-5) {
		return Ground{}, fmt.Errorf("diffusivity of the ground is %.3g m²/s; soils have 0.3e-6 to 0.8e-6", diffusivity)
	}
	// Each month's mean stands at its middle and weighs by its days.
	mean, start, cosine, sine := n.AnnualMean().Celsius(), 0.0, 0.0, 0.0
	for i, t := range n.Mean {
		middle := 2 * math.Pi * (start + days[i]/2) / daysPerYear
		start += days[i]
		cosine += days[i] * (t.Celsius() - mean) * math.Cos(middle) * 2 / daysPerYear
		sine += days[i] * (t.Celsius() - mean) * math.Sin(middle) * 2 / daysPerYear
	}
	coldest := (math.Atan2(sine, cosine)/(2*math.Pi) + 0.5) * daysPerCycle
	return Ground{
		Mean:        rvalue.FromCelsius(mean),
		Amplitude:   rvalue.TemperatureDifference(math.Hypot(cosine, sine)),
		ColdestDay:  math.Mod(coldest+daysPerCycle, daysPerCycle),
		Diffusivity: diffusivity,
	}, nil
}

// At returns the temperature at a depth, zero or more, on a day of the year, 1 for
// the first of January. Days may run on past a year.
func (g Ground) At(depth rvalue.Length, day float64) (rvalue.Temperature, error) {
	z := depth.SI()
	switch {
	case !(z >= 0) || math.IsInf(z, 0):
		return 0, fmt.Errorf("depth is %.4g m; give one of zero or more", z)
	case math.IsNaN(day) || math.IsInf(day, 0):
		return 0, fmt.Errorf("day is %g; give a day of the year", day)
	case !(g.Diffusivity > 0):
		return 0, fmt.Errorf("diffusivity of the ground is %.3g m²/s; soils have 0.3e-6 to 0.8e-6", g.Diffusivity)
	}
	// Kusuda and Achenbach 1965 (also Hillel 1982, with the damping depth):
	// T(z,t) = Tmean − A·e^(−z/d)·cos(2π/P·(t − t0) − z/d), d = √(α·P/π)
	x := z / math.Sqrt(g.Diffusivity*daysPerCycle*86400/math.Pi)
	phase := 2*math.Pi*(day-g.ColdestDay)/daysPerCycle - x
	return g.Mean.Add(rvalue.TemperatureDifference(-g.Amplitude.SI() * math.Exp(-x) * math.Cos(phase))), nil
}
