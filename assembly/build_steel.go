package assembly

import (
	"fmt"
	"slices"
	"strings"

	"github.com/coldseam/coldseam/rvalue"
	"github.com/coldseam/coldseam/rvalue/material"
)

// steelResult is what an assembly with a layer of steel studs resists by a
// method made for them.
type steelResult struct {
	r         rvalue.Resistance // air to air
	layer     rvalue.Resistance // of it, what studs and fill add
	whole     Assembly          // the assembly with that in place of studs and fill
	published bool              // by the published correction factor; else by the zone method
	apart     []int             // layers that the zone method takes apart from the studs' zones
	why       string
}

// zone computes an assembly with a layer of steel studs: by the published table
// for studs of its depths, else by the zone method.
func (b *builder) zone(a Assembly) (steelResult, error) {
	s := b.steel
	m := s.member
	fill := a.Layers[s.layer].Shares[1].R
	rated := fill
	if s.label > 0 {
		rated = s.label // the table goes by labels
	}
	if m.Width >= m.Spacing {
		return steelResult{}, b.fail(b.offsets[s.layer], "steel flanges %s wide do not stand %s apart", rvalue.Both(m.Width), rvalue.Both(m.Spacing))
	}
	z := steelResult{whole: Assembly{Layers: append([]Layer(nil), a.Layers...)}}
	effective, source, exact, err := SteelLayer(m.Depth, m.Spacing, rated)
	if s.empty {
		// The table has rows of its own for empty cavities of 3 1/2 in; one that
		// resists too little for it goes by what the studs conduct.
		if row, from, is, err := SteelLayer(m.Depth, m.Spacing, 0); err == nil && row <= effective {
			effective, source, exact = row, from, is
		}
	}
	if err == nil {
		z.layer, z.published = effective, true
		z.whole.Layers[s.layer] = Plain(m.Name, effective)
		z.r = z.whole.ParallelPath()
		by := "by the published correction factor"
		if !exact {
			by = "by what the published table of correction factors implies"
		}
		z.why = fmt.Sprintf("steel studs: by hand the insulated layer has %s %s (%s)", rvalue.Both(effective), by, source)
		return z, nil
	}
	if z.r, z.apart, err = b.zones(a); err != nil {
		return z, err
	}
	z.layer = z.r
	for i, l := range a.Layers {
		if i != s.layer {
			z.layer -= l.Mixed()
		}
	}
	z.whole.Layers[s.layer] = Plain(m.Name, z.layer)
	z.why = "steel studs: no published correction factor for this depth, so the zone method (ASHRAE Handbook—Fundamentals 2021, ch. 27); it is rough, a numeric answer would be better"
	return z, nil
}

// zones returns the resistance of an assembly with a layer of steel studs by
// the zone method, and the layers that it takes apart from the zone.
//
// The method widens a stud's zone by all that covers it, so that a thick layer of
// little resistance, brick, would take away more than it adds. No layer does:
// between isothermal planes the rest resists at least what it did before. So what
// covers the studs counts in series with the others where that makes more.
func (b *builder) zones(a Assembly) (most rvalue.Resistance, apart []int, err error) {
	s := b.steel
	m := s.member
	var thick []int // layers that may count apart, for the films widen nothing
	for i := range a.Layers {
		if i != s.layer && b.thickness(i) > 0 && len(thick) < mostApart {
			thick = append(thick, i)
		}
	}
	best := 0
	for subset := range 1 << len(thick) {
		frame := SteelFrame{Spacing: m.Spacing, Depth: m.Depth, Flange: m.Width, Thickness: m.Steel, Cavity: a.Layers[s.layer].Shares[1].R}
		var series rvalue.Resistance
		for i, l := range a.Layers {
			c := Cover{R: l.Mixed(), Thickness: b.thickness(i)}
			switch n := slices.Index(thick, i); {
			case i == s.layer:
			case n >= 0 && subset&(1<<n) != 0:
				series += c.R
			case i < s.layer:
				frame.Inside = append(frame.Inside, c)
			default:
				frame.Outside = append(frame.Outside, c)
			}
		}
		z, err := frame.Zones()
		if err != nil {
			return 0, nil, b.fail(b.offsets[s.layer], "%s", plain(err))
		}
		if z.R+series > most {
			most, best = z.R+series, subset
		}
	}
	for n, i := range thick {
		if best&(1<<n) != 0 {
			apart = append(apart, i)
		}
	}
	return most, apart, nil
}

func (b *builder) apartRemark(apart []int) {
	if len(apart) == 0 {
		return
	}
	names := make([]string, len(apart))
	for n, i := range apart {
		names[n] = b.layers[i].Name
	}
	b.remark(b.offsets[b.steel.layer], "zone-apart", "the zone method as it stands would widen the studs' zones by more than these resist; they are counted in series beside it, which is our own: %s", strings.Join(names, "; "))
}

// mostApart bounds the layers that may count apart, and with them the work.
const mostApart = 6

// Sheets of the studs that the published table is made for, 18 to 16 ga, and as a
// footnote of it says thinner ones, which carry less: from memory.
var thinnestTable, thickestTable = 0.043 * rvalue.Inch, 0.054 * rvalue.Inch

// beyondTable remarks on studs for which the published table does not speak.
func (b *builder) beyondTable() {
	m, at := b.steel.member, b.offsets[b.steel.layer]
	const slack = 0.0005 * rvalue.Inch
	switch {
	case m.Steel > thickestTable+slack:
		b.remark(at, "steel-sheet", "the published table is for studs of 18 and 16 ga (from memory); a sheet of %s carries more heat than these, so that R comes out too high", rvalue.Both(m.Steel))
	case m.Steel < thinnestTable-slack:
		b.remark(at, "steel-sheet", "the published table is for studs of 18 and 16 ga, and for thinner ones on the safe side (from memory): a sheet of %s carries less heat, so that R may be higher", rvalue.Both(m.Steel))
	}
	if u := b.setting.Faces.Use; u != Wall {
		b.remark(at, "steel-use", "the published table is for walls; it is taken for this %s for want of one of its own, as a rough figure", u)
	}
}

// bareCovers remarks on what covers steel studs without a thickness that the zone
// method could go by. Films and membranes have none.
func (b *builder) bareCovers() {
	for i := range b.layers {
		if i == b.steel.layer || b.pieces[i] == nil || b.thickness(i) > 0 {
			continue
		}
		if m := b.pieces[i][0][0].of; m != nil && (m.Class == material.Membrane || m.Class == material.AirBarrier) {
			continue
		}
		b.remark(b.offsets[i], "zone-cover", "%s: its thickness is not known and widens no stud's zone, so that R may come out too high (the zone method takes %s of cover at least, from memory); write the thickness behind it", b.layers[i].Name, rvalue.Both(leastCover))
	}
}

// thickness returns the thickness of a layer, 0 for a film.
func (b *builder) thickness(layer int) rvalue.Length {
	var thick rvalue.Length
	for _, pieces := range b.pieces[layer] {
		sum := rvalue.Length(0)
		for _, p := range pieces {
			sum += p.Thickness
		}
		thick = max(thick, sum)
	}
	return thick
}
