package assembly

import (
	"errors"
	"fmt"
	"math"

	"github.com/coldseam/coldseam/rvalue"
)

// Assembly is what a wall, ceiling or floor is made of, air to air: its
// layers from indoors to outdoors, the surface films among them.
type Assembly struct {
	Layers []Layer
}

// Layer is what stands at one depth of an assembly: one share that covers it
// all, or several side by side (studs, and what fills the bays between them).
type Layer struct {
	Name   string
	Shares []Share // their fractions sum to 1

	// Line says which layers' members stand behind one another. Layers of the
	// same non-zero Line have their shares laid out in order along one and the
	// same strip of wall, so that first meets first; all others cross, and
	// their fractions multiply.
	Line int
}

// Share is the part of a layer's area that resists heat in one way.
type Share struct {
	Name     string
	Fraction float64           // of the area, above 0 and up to 1
	R        rvalue.Resistance // above 0
	Member   bool              // a stud, joist, rafter, header, strap or web
}

// Plain returns a layer of one resistance all over.
func Plain(name string, r rvalue.Resistance) Layer {
	return Layer{Name: name, Shares: []Share{{Name: name, Fraction: 1, R: r}}}
}

// Framed returns a layer in which members cover the fraction framing of the
// area and the fill covers the rest.
func Framed(name string, framing float64, member, fill rvalue.Resistance) Layer {
	return Layer{Name: name, Shares: []Share{
		{Name: "members", Fraction: framing, R: member, Member: true},
		{Name: "between the members", Fraction: 1 - framing, R: fill},
	}}
}

// Bridged reports whether the layer has more than one share.
func (l Layer) Bridged() bool { return len(l.Shares) > 1 }

// Mixed returns the resistance of the layer between isothermal faces,
// 1/Σ(fraction/R): ISO 6946, lower limit, and the handbook's isothermal planes;
// NaN without shares.
func (l Layer) Mixed() rvalue.Resistance {
	if len(l.Shares) == 1 {
		return l.Shares[0].R
	}
	if len(l.Shares) == 0 {
		return rvalue.Resistance(math.NaN())
	}
	u := 0.0
	for _, s := range l.Shares {
		u += s.Fraction / float64(s.R)
	}
	return rvalue.Resistance(1 / u)
}

// fractionSlack is how far the fractions of a layer may miss 1: the rounding
// of percentages written with one decimal, no more.
const fractionSlack = 1e-6

// Check reports what makes the assembly impossible: no layer, a layer without
// shares, a fraction outside (0, 1], fractions that do not sum to 1, or a
// resistance that is not a positive finite number.
func (a Assembly) Check() error {
	if len(a.Layers) == 0 {
		return errors.New("assembly: no layers, at least one is needed")
	}
	for i, l := range a.Layers {
		if len(l.Shares) == 0 {
			return fmt.Errorf("assembly: layer %d %q has no shares, at least one is needed", i+1, l.Name)
		}
		sum := 0.0
		for _, s := range l.Shares {
			if !(s.Fraction > 0 && s.Fraction <= 1) {
				return fmt.Errorf("assembly: layer %d %q: %q covers %.4g %% of the area, it must be above 0 and up to 100 %%", i+1, l.Name, s.Name, 100*s.Fraction)
			}
			if r := float64(s.R); !(r > 0) || math.IsInf(r, 0) {
				return fmt.Errorf("assembly: layer %d %q: %q resists %v m²·K/W, it must be positive and finite", i+1, l.Name, s.Name, r)
			}
			sum += s.Fraction
		}
		if math.Abs(sum-1) > fractionSlack {
			return fmt.Errorf("assembly: layer %d %q: the shares cover %.6g %% of the area, they must cover 100 %%", i+1, l.Name, 100*sum)
		}
	}
	return nil
}
