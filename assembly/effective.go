package assembly

import (
	"encoding"
	"fmt"
	"strings"

	"github.com/coldseam/coldseam/rvalue"
	"github.com/coldseam/coldseam/rvalue/material"
	"github.com/coldseam/coldseam/rvalue/surface"
)

// Method is a hand method for the resistance of a bridged assembly.
type Method uint8

// The methods. Advised is the choice of the handbook, or of the standard whose
// films are used.
const (
	Advised    Method = iota
	Parallel          // parallel path
	Isothermal        // isothermal planes
	Mean              // ISO 6946, combined method
	Zone              // for steel studs: published correction factor, else the zone method
	Numeric           // solved in the section, which is package section's to do
)

var (
	methodNames                          = [...]string{"advised", "parallel path", "isothermal planes", "combined", "zone", "numeric"}
	_           encoding.TextMarshaler   = Method(0)
	_           encoding.TextUnmarshaler = (*Method)(nil)
)

// String returns the method's name; "Method(9)" for one that there is not.
func (m Method) String() string {
	if int(m) >= len(methodNames) {
		return fmt.Sprintf("Method(%d)", uint8(m))
	}
	return methodNames[m]
}

// MarshalText returns the method's name, and an error for one that there is not.
func (m Method) MarshalText() ([]byte, error) {
	if int(m) >= len(methodNames) {
		return nil, fmt.Errorf("assembly: method %d is unknown, use Advised to Numeric", uint8(m))
	}
	return []byte(m.String()), nil
}

// UnmarshalText reads a method's name.
func (m *Method) UnmarshalText(text []byte) error {
	v, err := ParseMethod(string(text))
	if err == nil {
		*m = v
	}
	return err
}

// ParseMethod reads the name of a method.
func ParseMethod(s string) (Method, error) {
	word := strings.ToLower(oneLine(strings.TrimSpace(strings.ReplaceAll(s, "-", " "))))
	for m, name := range methodNames {
		if word == name {
			return Method(m), nil
		}
	}
	return 0, fmt.Errorf("assembly: %q is no method (use %s)", s, strings.Join(methodNames[1:], ", "))
}

// Bounds of the contrast of conductivities side by side within which a hand
// method is advised: ASHRAE Handbook—Fundamentals 2021, ch. 27, within one
// order of magnitude and two orders or more.
const (
	parallelContrast = 10
	metalContrast    = 100
)

// contrast returns the largest ratio of resistances side by side in one layer,
// and that layer's name. Air alone that resists less than what stands beside it
// is left out: it is no insulation that something bridges.
func (b *builder) contrast() (ratio float64, layer string) {
	ratio = 1
	for i, l := range b.layers {
		var low, high rvalue.Resistance
		for s, share := range l.Shares {
			high = max(high, share.R)
			if pieces := b.pieces[i]; pieces != nil && allAir(pieces[s]) {
				continue
			}
			if low == 0 || share.R < low {
				low = share.R
			}
		}
		if r := float64(high / low); low > 0 && r > ratio {
			ratio, layer = r, l.Name
		}
	}
	return ratio, layer
}

func allAir(pieces []Piece) bool {
	for _, p := range pieces {
		if p.space == nil {
			return false
		}
	}
	return true
}

// masonry returns the first layer whose members are of masonry, concrete or
// stone, "" if there is none.
func (b *builder) masonry() string {
	for i, l := range b.layers {
		for s, share := range l.Shares {
			if !share.Member {
				continue
			}
			if m := b.pieces[i][s][0].of; m != nil && (m.Class == material.Masonry || m.Class == material.Concrete || m.Class == material.Stone) {
				return l.Name
			}
		}
	}
	return ""
}

// advise returns the method whose result is called effective, and why.
func (b *builder) advise() (Method, string) {
	asked := b.setting.Method
	if asked != Advised {
		if b.steel != nil && asked != Zone {
			b.remark(b.offsets[b.steel.layer], "method", "the %s method was asked for; it is not made for steel studs, whose flanges gather heat", asked)
		}
		return asked, "asked for"
	}
	if b.steel != nil {
		return Zone, "steel studs, whose flanges gather heat from a zone wider than themselves"
	}
	ratio, layer := b.contrast()
	masonry := b.masonry()
	switch {
	case !b.framedBefore():
		return Parallel, "nothing bridges the layers, all methods agree"
	case b.setting.Films == surface.ISO6946:
		return Mean, "ISO 6946 films were asked for, and with them its combined method"
	case ratio > metalContrast:
		b.remark(-1, "contrast", "in %s the resistances side by side differ %.0f times; no hand method is good beyond 100, take this figure as rough", layer, ratio)
		return Isothermal, fmt.Sprintf("resistances side by side differ %.0f times in %s, as with metal; the handbook asks for a zone method or a numeric answer, of the hand methods isothermal planes is the cautious one", ratio, layer)
	case masonry != "":
		return Isothermal, fmt.Sprintf("%s is masonry, in which heat spreads sideways and for which the handbook advises isothermal planes", masonry)
	case ratio > parallelContrast:
		return Isothermal, fmt.Sprintf("resistances side by side differ %.0f times in %s, as in masonry, for which the handbook advises isothermal planes", ratio, layer)
	case ratio == 1:
		return Parallel, "nothing but air stands between the members, which bridge no insulation; the handbook advises the parallel path for framing"
	}
	return Parallel, fmt.Sprintf("resistances side by side differ %.1f times at most, within one order of magnitude, for which the handbook advises the parallel path", ratio)
}
