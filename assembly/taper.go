package assembly

import (
	"errors"
	"fmt"
	"math"

	"github.com/coldseam/coldseam/rvalue"
)

// Taper is the plan of one plane of tapered insulation. A roof drained to one
// point is cut into these shapes along its valleys and ridges.
type Taper uint8

// The shapes of ISO 6946, annex on tapered layers.
const (
	Rectangle Taper = iota // thickness falls from one side to the opposite one
	ThickApex              // a triangle, thickest at its apex, nothing along its base
	ThinApex               // a triangle, nothing at its apex, thickest along its base
)

// maxTaper is the slope, rise per run, up to which the formulas hold: heat is
// taken to run straight up. ISO 6946, annex on tapered layers, from memory.
const maxTaper = 0.05

// TaperedPart is one plane of a roof with tapered insulation.
type TaperedPart struct {
	Shape   Taper
	Area    rvalue.Area       // seen from above
	Slope   float64           // rise per run, from 0 up to 0.05
	Fixed   rvalue.Resistance // of all that is not tapered, films included: R0
	Tapered rvalue.Resistance // of the tapered layer where it is thickest: R1
}

// U returns the mean transmittance over the part's plan. The tapered layer
// starts from nothing; what it has along its thin edge belongs to Fixed. A
// Tapered of 0 gives 1/Fixed. It refuses a Fixed that is not positive, a Tapered
// below 0, and a slope above 5 %.
//
// Source: ISO 6946, annex on components with tapered layers, from memory.
func (p TaperedPart) U() (rvalue.Transmittance, error) {
	r0, r1 := float64(p.Fixed), float64(p.Tapered)
	switch {
	case !usable(r0):
		return 0, fmt.Errorf("assembly: %v m²·K/W below the taper, it must be positive and finite", r0)
	case !(r1 >= 0) || math.IsInf(r1, 0):
		return 0, fmt.Errorf("assembly: a taper of %v m²·K/W, it must be 0 or more", r1)
	case !(p.Slope >= 0 && p.Slope <= maxTaper):
		return 0, fmt.Errorf("assembly: a taper of slope %.4g %%, the formulas hold from 0 to %g %%", 100*p.Slope, 100*maxTaper)
	}
	// With x = R1/R0 every formula is (1/R0) times a function that starts at 1.
	mean, err := p.Shape.mean(r1 / r0)
	return rvalue.Transmittance(mean / r0), err
}

// nearlyFlat is the R1/R0 below which the triangles are summed as series. Their
// closed forms lose about 2ε/x of precision to cancellation: 1e-14 here.
const nearlyFlat = 0.05

// mean returns U·R0 for x = R1/R0.
func (t Taper) mean(x float64) (float64, error) {
	switch t {
	case Rectangle:
		// ISO 6946, tapered layers: U = (1/R1) ln(1 + R1/R0)
		if x == 0 {
			return 1, nil
		}
		return math.Log1p(x) / x, nil
	case ThickApex:
		// ISO 6946, tapered layers: U = (2/R1) [(1 + R0/R1) ln(1 + R1/R0) − 1]
		if x > nearlyFlat {
			return 2 / x * ((1+1/x)*math.Log1p(x) - 1), nil
		}
		return alternating(x, func(j float64) float64 { return 2 / ((j + 1) * (j + 2)) }), nil
	case ThinApex:
		// ISO 6946, tapered layers: U = (2/R1) [1 − (R0/R1) ln(1 + R1/R0)]
		if x > nearlyFlat {
			return 2 / x * (1 - math.Log1p(x)/x), nil
		}
		return alternating(x, func(j float64) float64 { return 2 / (j + 2) }), nil
	}
	return 0, fmt.Errorf("assembly: no taper of shape %d, use Rectangle, ThickApex or ThinApex", t)
}

// alternating sums Σ (−x)^j c(j) for x below nearlyFlat, until a term is below
// the last bit of a sum near 1.
func alternating(x float64, c func(j float64) float64) float64 {
	sum, power := 0.0, 1.0
	for j := 0.0; math.Abs(power) > 1e-17; j++ {
		sum += power * c(j)
		power *= -x
	}
	return sum
}

// TaperedRoof returns the transmittance of a roof of several planes, weighted
// by area. It refuses no parts, an area that is not positive, and what
// TaperedPart.U refuses.
//
// Source: ISO 6946, annex on components with tapered layers: U = ΣUiAi/ΣAi.
func TaperedRoof(parts ...TaperedPart) (rvalue.Transmittance, error) {
	if len(parts) == 0 {
		return 0, errors.New("assembly: a tapered roof without parts, at least one is needed")
	}
	var ua, area float64
	for i, p := range parts {
		if !usable(float64(p.Area)) {
			return 0, fmt.Errorf("assembly: part %d of the tapered roof covers %v m², it must be positive and finite", i+1, float64(p.Area))
		}
		u, err := p.U()
		if err != nil {
			return 0, fmt.Errorf("part %d of the tapered roof: %w", i+1, err)
		}
		ua += float64(u) * float64(p.Area)
		area += float64(p.Area)
	}
	return rvalue.Transmittance(ua / area), nil
}
