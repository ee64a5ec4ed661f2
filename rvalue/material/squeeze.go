package material

import (
	"fmt"
	"math"

	"github.com/coldseam/coldseam/rvalue"
)

// Squeezed is a batt as it stands in its bay.
type Squeezed struct {
	R        rvalue.Resistance
	From, To rvalue.Length // thickness as sold, and in the bay
	LeftOver rvalue.Length // depth of the bay that the batt does not fill
	Basis    string        // "chart", "fit", or "label" of a batt that is not squeezed
}

const (
	// deepest is the share of its thickness below which a batt is not squeezed.
	// The chart ends at half; at a quarter the fit is extrapolated fourfold in
	// density, which the handbook's boards still cover.
	deepest = 0.25
	// onChart is how far a depth may be off a printed one and still be it.
	onChart = rvalue.Inch / 16
)

// Squeeze returns what a batt resists in a bay of the given depth, air spaces not
// counted. A batt that fits is returned as labelled, with the depth it leaves
// over. A fiberglass batt and depth that a maker's compression chart (printed in
// the Journal of Light Construction) has, within 1/16 in., get the chart's value.
// Any other is computed from how conductivity goes with density, kept between the
// chart's neighbouring values of the same batt where there are any, so that more
// depth never gives less. Against the 16 cells of the chart that are a real
// squeeze, none of which went into it, the fit is off by 0.77 h·ft²·°F/Btu at most
// (R-30 of 10 in. in 7 1/4 in.), 0.35 rms.
//
// Mineral wool is fitted the same way to its own densities; cotton, of which no
// densities were found, by the fit for fiberglass. A depth below a quarter of the
// batt is refused, and so is what is no batt or no depth.
func Squeeze(b Batt, depth rvalue.Length) (Squeezed, error) {
	if !(b.Label > 0 && b.Thickness > 0) || math.IsInf(float64(b.Label), 0) || math.IsInf(float64(b.Thickness), 0) {
		return Squeezed{}, fmt.Errorf("material: a batt needs a label and a thickness above zero, not %q of %q", b.Label.In(rvalue.IP), b.Thickness.In(rvalue.IP))
	}
	if !(depth > 0) || math.IsInf(float64(depth), 0) {
		return Squeezed{}, fmt.Errorf("material: a bay needs a depth above zero, not %q", depth.In(rvalue.IP))
	}
	curve, ok := curves[b.Fibre]
	if !ok {
		return Squeezed{}, fmt.Errorf("material: how %q takes being squeezed is unknown; fiberglass, mineral wool and cotton are known", b.Fibre)
	}
	if depth >= b.Thickness {
		return Squeezed{R: b.Label, From: b.Thickness, To: b.Thickness, LeftOver: depth - b.Thickness, Basis: "label"}, nil
	}
	if depth < deepest*b.Thickness {
		return Squeezed{}, fmt.Errorf("material: a %s batt %s thick does not go into %s, less than a quarter of it; take a thinner one",
			b.Fibre, b.Thickness.In(rvalue.IP), depth.In(rvalue.IP))
	}
	s := Squeezed{R: curve.squeezed(b, depth), From: b.Thickness, To: depth, Basis: "fit"}
	if b.Fibre != glassFibre {
		return s, nil
	}
	lo, hi, exact := chartBounds(b, depth)
	if exact {
		s.Basis = "chart"
	}
	s.R = min(max(s.R, lo), hi)
	return s, nil
}

// curve gives the conductivity of a fibrous material by its density ρ in kg/m³,
// k = a + bρ + c/ρ in W/(m·K): what air and contacts conduct, more by more fibre,
// and what is radiated from fibre to fibre, less by more of it.
type curve struct{ a, b, c float64 }

// curves are least-squares fits to the densities and conductivities (middles of
// the printed ranges) of A26: fiberglass batts of 7.85, 10.9, 13.5 and 22 kg/m³ and
// the board of 60 kg/m³, met within 0.0006 W/(m·K); rock wool batts of 34.5 and
// 45 kg/m³ and boards of 97 and 170 kg/m³, met within 0.0002. The three terms
// have no meaning one by one: a alone lies below the 0.026 of still air.
var curves = map[string]curve{
	glassFibre:  {0.02104, 1.598e-4, 0.1970},
	mineralWool: {0.01816, 1.147e-4, 0.4914},
	cotton:      {0.02104, 1.598e-4, 0.1970},
}

func (c curve) at(density float64) float64 { return c.a + c.b*density + c.c/density }

// density returns the lighter of the two densities at which the conductivity is
// k, or that of the least conductivity if none is as low.
func (c curve) density(k float64) float64 {
	x := k - c.a
	root := x*x - 4*c.b*c.c
	if x <= 0 || root <= 0 {
		return math.Sqrt(c.c / c.b)
	}
	return 2 * c.c / (x + math.Sqrt(root))
}

// squeezed returns R at a depth below the batt's thickness. Its label and
// thickness give its conductivity and so its density as sold, which the squeeze
// raises in proportion; the factor that keeps the label exact at the label's
// thickness is 1 unless the curve does not reach that low. R = d/k is
// d²/(ad + bρL + cd²/(ρL)) and grows with d throughout.
func (c curve) squeezed(b Batt, depth rvalue.Length) rvalue.Resistance {
	k := float64(b.Thickness) / float64(b.Label)
	sold := c.density(k)
	factor := k / c.at(sold)
	return rvalue.Resistance(float64(depth) / (factor * c.at(sold*float64(b.Thickness/depth))))
}
