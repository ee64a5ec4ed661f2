package airspace

import (
	"fmt"
	"math"

	"github.com/coldseam/coldseam/rvalue"
)

// Method is a way to compute what an air space resists. Its zero value is
// [Correlated].
type Method uint8

// The methods.
const (
	Correlated Method = iota // curves fitted to the plane-air-space table, see the package comment
	ISO6946                  // the closed form of ISO 6946
)

// String returns "correlated" or "ISO 6946".
func (m Method) String() string {
	switch m {
	case Correlated:
		return "correlated"
	case ISO6946:
		return "ISO 6946"
	}
	return fmt.Sprintf("Method(%d)", uint8(m))
}

// Space is an unventilated air space between two flat parallel faces.
type Space struct {
	Thickness rvalue.Length // between the faces, above 0 to 300 mm
	Tilt      float64       // degrees from horizontal: 0 level, 90 upright; beyond 90 to 180 it leans the other way and counts as 180−Tilt
	Up        bool          // heat flows upward through it; an upright space has no up
	Width     rvalue.Length // of a narrow void, face to face across the heat flow; 0: wide
	E1, E2    float64       // emittances of the two faces, in (0, 1]; 0 means 0.9, ordinary building surfaces
}

// Ranges of what a space and its temperatures may be.
const (
	// MaxThickness: beyond it ISO 6946 treats the space as a room with a heat
	// balance of its own.
	MaxThickness = 300 * rvalue.Millimetre

	ordinaryEmittance = 0.9
	minMean, maxMean  = -60.0, 100.0 // °C
	maxDifference     = 150.0        // K
)

// Resistance returns what the space resists at the mean temperature of its two
// faces, −60 to 100 °C, and the difference dT between them, 0 to 150 K. At a
// difference of 0 the air stands still. Whatever is out of range, here or in the
// space itself, is an error that names it and says what would do.
//
// The two temperatures depend in turn on the resistance when the space is part
// of an assembly; package assembly finds them.
func (s Space) Resistance(m Method, mean rvalue.Temperature, dT rvalue.TemperatureDifference) (rvalue.Resistance, error) {
	if s.E1 == 0 {
		s.E1 = ordinaryEmittance
	}
	if s.E2 == 0 {
		s.E2 = ordinaryEmittance
	}
	if err := check(&s, m, mean, dT); err != nil {
		return 0, err
	}
	tilt := min(s.Tilt, 180-s.Tilt)
	var hc float64
	if m == ISO6946 {
		hc = convectionISO(s.Thickness.SI(), tilt, s.Up, dT.SI())
	} else {
		hc = convection(s.Thickness.SI(), tilt, s.Up, mean.Kelvins(), dT.SI())
	}
	return rvalue.Resistance(1 / (hc + radiation(&s, m, mean.Kelvins()))), nil
}

// EffectiveEmittance returns that of two facing surfaces: 1/(1/ε1 + 1/ε2 − 1),
// the exchange between infinite parallel grey faces. An emittance of 0 means
// 0.9, as in [Space]. For emittances outside (0, 1] it returns NaN.
func EffectiveEmittance(e1, e2 float64) float64 {
	if e1 == 0 {
		e1 = ordinaryEmittance
	}
	if e2 == 0 {
		e2 = ordinaryEmittance
	}
	if !emittance(e1) || !emittance(e2) {
		return math.NaN()
	}
	// ISO 6946, annex on airspaces; ASHRAE Handbook—Fundamentals, plane air
	// spaces (both from memory).
	return 1 / (1/e1 + 1/e2 - 1)
}

func emittance(e float64) bool { return e > 0 && e <= 1 }

// radiation returns the radiative coefficient in W/(m²·K) at a mean of t K.
func radiation(s *Space, m Method, t float64) float64 {
	// ISO 6946, annex on airspaces (from memory): hr = E·hr0, hr0 = 4σTm³.
	const stefanBoltzmann = 5.670374419e-8 // W/(m²·K⁴), CODATA 2018
	hr := EffectiveEmittance(s.E1, s.E2) * 4 * stefanBoltzmann * t * t * t
	if s.Width == 0 || m == ISO6946 && s.Width >= 10*s.Thickness {
		return hr
	}
	// ISO 6946, small or divided air spaces (from memory): the side walls of a
	// void take part. The standard switches to it below 10 thicknesses, a step of
	// 5 %; it tends to 1 for wide spaces, so that the other method uses it always.
	x := float64(s.Thickness / s.Width)
	return hr * (1 + math.Sqrt(1+x*x) - x) / 2
}

func check(s *Space, m Method, mean rvalue.Temperature, dT rvalue.TemperatureDifference) error {
	switch {
	case m > ISO6946:
		return refuse("method %d is unknown, use Correlated or ISO6946", uint8(m))
	case !(s.Thickness > 0 && s.Thickness <= MaxThickness):
		return refuse("a thickness of %.4g mm (%.4g in) is out of range, use above 0 to 300 mm (11.8 in); a deeper space is a room with a heat balance of its own", s.Thickness.Millimetres(), s.Thickness.Inches())
	case !(s.Tilt >= 0 && s.Tilt <= 180):
		return refuse("a tilt of %g° is impossible, use 0° (level) to 90° (upright) to 180°", s.Tilt)
	case !(s.Width >= 0) || math.IsInf(float64(s.Width), 0):
		return refuse("a width of %g mm is impossible, use 0 for a wide space or the width of the void", s.Width.Millimetres())
	case !emittance(s.E1) || !emittance(s.E2):
		bad := s.E1
		if emittance(bad) {
			bad = s.E2
		}
		return refuse("an emittance of %g is impossible, use above 0 to 1, such as 0.9 for ordinary surfaces or 0.05 for bright foil", bad)
	case !(mean.Celsius() >= minMean && mean.Celsius() <= maxMean):
		return refuse("a mean temperature of %.4g °C (%.4g °F) is out of range, use -60 °C to 100 °C (-76 °F to 212 °F)", mean.Celsius(), mean.Fahrenheit())
	case !(dT >= 0 && dT.SI() <= maxDifference):
		return refuse("a temperature difference of %.4g K is out of range, use 0 to 150 K; the direction of the heat is said by Up", dT.SI())
	}
	return nil
}

func refuse(format string, args ...any) error {
	return fmt.Errorf("airspace: "+format, args...)
}
