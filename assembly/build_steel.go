package assembly

import (
	"fmt"

	"github.com/coldseam/coldseam/rvalue"
)

// zone returns the resistance of an assembly with a layer of steel studs: by
// the published correction factor where the table has the stud and its fill,
// else by the zone method; and what it rests on.
func (b *builder) zone(a Assembly) (rvalue.Resistance, string, error) {
	s := b.steel
	m := s.member
	asked := a.Layers[s.layer].Shares[1].R
	switch {
	case s.empty:
		asked = 0 // the table has rows of its own for empty cavities
	case s.label > 0:
		asked = s.label // and goes by labels
	}
	if effective, source, _, err := SteelLayer(m.Depth, m.Spacing, asked); err == nil {
		whole := Assembly{Layers: append([]Layer(nil), a.Layers...)}
		whole.Layers[s.layer] = Plain(m.Name, effective)
		return whole.ParallelPath(), fmt.Sprintf("steel studs: the insulated layer counts %s by the published correction factor (%s)", said(effective), source), nil
	}
	z, err := b.zones(a)
	return z, "steel studs: no published correction factor for this depth, spacing and fill, so the zone method (ASHRAE Handbook—Fundamentals 2021, ch. 27); it is rough, a numeric answer would be better", err
}

// zones returns the resistance of an assembly with a layer of steel studs by
// the zone method.
func (b *builder) zones(a Assembly) (rvalue.Resistance, error) {
	s := b.steel
	m := s.member
	frame := SteelFrame{Spacing: m.Spacing, Depth: m.Depth, Flange: m.Width, Thickness: m.Steel, Cavity: a.Layers[s.layer].Shares[1].R}
	for i, l := range a.Layers {
		if i == s.layer {
			continue
		}
		c := Cover{R: l.Mixed(), Thickness: b.thickness(i)}
		if i < s.layer {
			frame.Inside = append(frame.Inside, c)
		} else {
			frame.Outside = append(frame.Outside, c)
		}
	}
	z, err := frame.Zones()
	if err != nil {
		return 0, b.fail(b.offsets[s.layer], "%s", plain(err))
	}
	return z.R, nil
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

// gainStep is the relative step of the numeric derivative in zoneGain: small
// against the curvature, large against rounding.
const gainStep = 1e-5

// zoneGain returns the derivative of zone's result by one share's resistance,
// by a central difference. In the layer of the studs it is that of the zone
// method: the published factors are a table with steps.
func (b *builder) zoneGain(a Assembly, layer, share int) (float64, error) {
	at := func(r rvalue.Resistance) (rvalue.Resistance, error) {
		c := Assembly{Layers: append([]Layer(nil), a.Layers...)}
		c.Layers[layer].Shares = append([]Share(nil), c.Layers[layer].Shares...)
		c.Layers[layer].Shares[share].R = r
		if layer == b.steel.layer {
			return b.zones(c)
		}
		z, _, err := b.zone(c)
		return z, err
	}
	r := float64(a.Layers[layer].Shares[share].R)
	high, err := at(rvalue.Resistance(r * (1 + gainStep)))
	if err != nil {
		return 0, err
	}
	low, err := at(rvalue.Resistance(r * (1 - gainStep)))
	if err != nil {
		return 0, err
	}
	return float64(high-low) / (2 * gainStep * r), nil
}
