package material

import (
	"fmt"
	"math"
	"strings"

	"github.com/coldseam/coldseam/rvalue"
)

// Material is one row of the catalogue. Those that a Catalogue hands out are
// shared: read them, do not write to them.
type Material struct {
	Name    string
	Aliases []string
	Class   Class

	Density      [2]rvalue.Density   // lowest and highest of what the figure stands for, zero if unknown
	Conductivity rvalue.Conductivity // at a mean of 24 °C; 0 for what is known by the piece only
	Sizes        []Size              // what one piece resists, thinnest first; may stand beside a conductivity
	Scalable     bool                // a homogeneous piece: between and beyond its sizes R goes with thickness
	Spread       float64             // relative half-range of the figure, 0.05 means ±5 %

	Mu        float64          // vapour resistance factor against still air (195 ng/(Pa·s·m)) at about 50 % humidity, else 0
	Permeance rvalue.Permeance // of a layer as it is sold, else 0

	Cold    ColdLaw // how its conductivity follows temperature
	Source  string  // a key for Citation, or several joined by "+": first that of the thermal figure, then of vapour
	Note    string
	Caution string // what to know before touching it
}

// Size is a piece as it is sold.
type Size struct {
	Thickness rvalue.Length // 0: a layer of unstated thickness
	R         rvalue.Resistance
}

// sameThickness is how far a thickness may be off the one a piece is sold by and
// still mean that piece: 7/16 in. is the handbook's 11 mm, 8 in. of block its
// 200 mm.
const sameThickness = 0.05

// Resistance returns what the thickness d of m resists. d may be 0 only if m has
// a usual piece: a size without thickness, or a single one. A conductivity gives
// any thickness; otherwise d must be that of a piece, within 5 %, unless m is
// Scalable, where R goes in proportion to thickness below the thinnest and above
// the thickest piece and on a straight line between. A piece without a thickness
// (siding, shingles) is itself whatever d says. The error names the thicknesses
// that there are.
func (m *Material) Resistance(d rvalue.Length) (rvalue.Resistance, error) {
	if math.IsNaN(float64(d)) || math.IsInf(float64(d), 0) || d < 0 {
		return 0, fmt.Errorf("material: %s: %q is no thickness; write one above zero, such as 1/2 in", m.Name, fmt.Sprint(float64(d))+" m")
	}
	thing, pieces := m.pieces()
	switch {
	case d == 0 && thing > 0:
		return thing, nil
	case d == 0 && m.Conductivity == 0 && len(pieces) == 1:
		return pieces[0].R, nil
	case d == 0 && m.Conductivity > 0:
		return 0, fmt.Errorf("material: %s needs its thickness, such as %s 1/2 in", m.Name, m.Name)
	case d == 0:
		return 0, fmt.Errorf("material: %s needs its thickness; the catalogue has %s", m.Name, thicknesses(pieces))
	case m.Conductivity > 0:
		return m.Conductivity.Resistance(d), nil
	case len(pieces) == 0:
		return thing, nil
	}
	near := pieces[0]
	for _, p := range pieces[1:] {
		if math.Abs(float64(p.Thickness-d)) < math.Abs(float64(near.Thickness-d)) {
			near = p
		}
	}
	if math.Abs(float64(near.Thickness-d)) <= sameThickness*float64(near.Thickness) {
		return near.R, nil
	}
	if m.Scalable {
		return scaled(pieces, d), nil
	}
	return 0, fmt.Errorf("material: %s of %s is not in the catalogue, which has %s", m.Name, rvalue.Both(d), thicknesses(pieces))
}

// pieces parts the piece of unstated thickness from those with one.
func (m *Material) pieces() (thing rvalue.Resistance, pieces []Size) {
	if len(m.Sizes) > 0 && m.Sizes[0].Thickness == 0 { // thinnest first
		return m.Sizes[0].R, m.Sizes[1:]
	}
	return 0, m.Sizes
}

// scaled returns R at d from pieces in order of thickness.
func scaled(pieces []Size, d rvalue.Length) rvalue.Resistance {
	first, last := pieces[0], pieces[len(pieces)-1]
	switch {
	case d <= first.Thickness:
		return rvalue.Resistance(float64(first.R) * float64(d/first.Thickness))
	case d >= last.Thickness:
		return rvalue.Resistance(float64(last.R) * float64(d/last.Thickness))
	}
	i := 1
	for pieces[i].Thickness < d {
		i++
	}
	a, b := pieces[i-1], pieces[i]
	f := float64(d-a.Thickness) / float64(b.Thickness-a.Thickness)
	return rvalue.Resistance((1-f)*float64(a.R) + f*float64(b.R))
}

// thicknesses lists pieces for an error.
func thicknesses(pieces []Size) string {
	s := make([]string, len(pieces))
	for i, p := range pieces {
		s[i] = rvalue.Both(p.Thickness)
	}
	if n := len(s); n > 1 {
		return strings.Join(s[:n-1], ", ") + " and " + s[n-1]
	}
	return strings.Join(s, "")
}

// check refuses a material that the functions here could not compute with.
func (m *Material) check() error {
	fail := func(format string, args ...any) error {
		return fmt.Errorf("material: %q: %s", m.Name, fmt.Sprintf(format, args...))
	}
	if len(words(m.Name)) == 0 {
		return fail("a material needs a name with a letter or digit in it")
	}
	for _, a := range m.Aliases {
		if len(words(a)) == 0 {
			return fail("%q is no name; write one with a letter or digit in it", a)
		}
	}
	switch {
	case !(m.Conductivity >= 0) || math.IsInf(float64(m.Conductivity), 0):
		return fail("its conductivity must be above zero, such as 0.040 W/(m·K)")
	case m.Conductivity == 0 && len(m.Sizes) == 0:
		return fail("give it a conductivity, or the resistance of a piece")
	case !(m.Spread >= 0 && m.Spread < 1):
		return fail("its spread is a share from 0 to below 1, such as 0.05")
	case !(m.Mu >= 0) || math.IsInf(m.Mu, 0):
		return fail("its vapour resistance factor must be zero (unknown) or above")
	case !(m.Permeance >= 0) || math.IsInf(float64(m.Permeance), 0):
		return fail("its permeance must be zero (unknown) or above")
	case !(m.Density[0] >= 0 && m.Density[1] >= m.Density[0]) || math.IsInf(float64(m.Density[1]), 0):
		return fail("its densities must be zero (unknown), or the lower before the higher")
	case m.Cold > lastColdLaw:
		return fail("unknown law of cold %d", m.Cold)
	case strings.TrimSpace(m.Source) == "":
		return fail(`say where its figure comes from, be it "label"`)
	}
	last := rvalue.Length(-1)
	for _, s := range m.Sizes {
		switch {
		case !(s.R > 0) || math.IsInf(float64(s.R), 0):
			return fail("the resistance of a piece must be above zero")
		case !(s.Thickness >= 0) || math.IsInf(float64(s.Thickness), 0):
			return fail("the thickness of a piece must be zero (unstated) or above")
		case s.Thickness <= last:
			return fail("its pieces must go from the thinnest up, each thickness once")
		}
		last = s.Thickness
	}
	if _, pieces := m.pieces(); m.Scalable && len(pieces) == 0 {
		return fail("nothing to scale: it has no piece of a stated thickness")
	}
	return nil
}
