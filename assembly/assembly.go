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

	// Parts says how R lies in the depth of a layer whose fill is of several
	// pieces, indoors first: what of it stands before the plane where the first
	// piece ends, what between that and the next, summing to 1. The shares of a
	// layer have equally many, or none. Isothermal planes go by it; the parallel
	// path, whose heat keeps to its share, does not.
	Parts []float64
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
// NaN without shares. A layer whose shares have Parts is cut by isothermal planes
// between them too, as ISO 6946 cuts a component wherever a material ends.
func (l Layer) Mixed() rvalue.Resistance {
	if len(l.Shares) == 1 {
		return l.Shares[0].R
	}
	if len(l.Shares) == 0 {
		return rvalue.Resistance(math.NaN())
	}
	var r rvalue.Resistance
	for n, slabs := 0, l.slabs(); n < slabs; n++ {
		r += l.slab(n, slabs)
	}
	return r
}

// slabs returns into how many slabs the Parts of its shares cut the layer: 1 if
// there are none, or not equally many.
func (l Layer) slabs() int {
	for _, s := range l.Shares {
		if len(s.Parts) != len(l.Shares[0].Parts) {
			return 1
		}
	}
	return max(1, len(l.Shares[0].Parts))
}

// slab returns the resistance of the nth slab of so many between isothermal faces.
func (l Layer) slab(n, slabs int) rvalue.Resistance {
	u := 0.0
	for _, s := range l.Shares {
		u += s.Fraction / s.in(n, slabs)
	}
	return rvalue.Resistance(1 / u)
}

// in returns what the share resists in the nth slab of so many, in m²·K/W.
func (s Share) in(n, slabs int) float64 {
	if slabs == 1 {
		return float64(s.R)
	}
	return s.Parts[n] * float64(s.R)
}

// fractionSlack is how far the fractions of a layer may miss 1: the rounding
// of percentages written with one decimal, no more.
const fractionSlack = 1e-6

// Check reports what makes the assembly impossible: no layer, a layer without
// shares, a fraction outside (0, 1], fractions or parts that do not sum to 1, or
// a resistance that is not a positive finite number.
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
			if err := s.checkParts(len(l.Shares[0].Parts)); err != nil {
				return fmt.Errorf("assembly: layer %d %q: %w", i+1, l.Name, err)
			}
		}
		if math.Abs(sum-1) > fractionSlack {
			return fmt.Errorf("assembly: layer %d %q: the shares cover %.6g %% of the area, they must cover 100 %%", i+1, l.Name, 100*sum)
		}
	}
	return nil
}

// checkParts refuses Parts other than n positive ones that sum to 1.
func (s Share) checkParts(n int) error {
	if len(s.Parts) != n {
		return fmt.Errorf("%q has %d parts and the first share %d, all shares of a layer must have equally many", s.Name, len(s.Parts), n)
	}
	sum := 0.0
	for _, p := range s.Parts {
		if !(p > 0) {
			return fmt.Errorf("%q has a part of %.4g %% of its resistance, it must be above 0", s.Name, 100*p)
		}
		sum += p
	}
	if n > 0 && !(math.Abs(sum-1) <= fractionSlack) {
		return fmt.Errorf("the parts of %q are %.6g %% of its resistance, they must be 100 %%", s.Name, 100*sum)
	}
	return nil
}
