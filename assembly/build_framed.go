package assembly

import (
	"math"
	"strings"

	"github.com/coldseam/coldseam/rvalue"
	"github.com/coldseam/coldseam/rvalue/material"
)

// depthSlack is how far the pieces of a fill may miss the depth of the bay: a
// 3 1/2 in batt in a stud of 3 5/8 in, not more.
const depthSlack = 3.5 * rvalue.Millimetre

// framed lays out a layer of members and their fill.
func (b *builder) framed(l *SpecLayer) error {
	layer := Layer{Name: l.Text}
	pieces := make([][]Piece, 0, len(l.Members)+1)
	var depth, width rvalue.Length
	covered := 0.0
	for i := range l.Members {
		m := &l.Members[i]
		if i > 0 && math.Abs(float64(m.Depth-depth)) > float64(depthSlack) && m.Depth > 0 && depth > 0 {
			return b.fail(m.Offset, "members %s and %s deep in one layer; give the shallower ones as a resistance, such as R-4.4 4 %%", said(depth), said(m.Depth))
		}
		depth = max(depth, m.Depth)
		fraction, err := b.fraction(m)
		if err != nil {
			return err
		}
		covered += fraction
		p := Piece{Name: m.Name, Thickness: m.Depth, R: m.R, Basis: "as written", of: m.Of}
		switch {
		case m.Timber:
			p.R, p.Basis = rvalue.Resistance(lumberR*float64(m.Depth)), "softwood lumber at R-1.25 per inch, as the code's wall tables take it"
		case m.Steel > 0:
			p.R, p.Basis = rvalue.Resistance(float64(m.Depth)*steelResistivity), "steel at 48 W/(m·K)"
			width = m.Spacing
		case m.Of != nil:
			p.Basis = m.Of.Source
			b.caution(m.Of, m.Offset)
		}
		if m.Spacing > m.Width && m.Width > 0 {
			width = m.Spacing - m.Width
		}
		p.warm = p.R
		layer.Shares = append(layer.Shares, Share{Name: m.Name, Fraction: fraction, R: p.R, Member: true})
		pieces = append(pieces, []Piece{p})
	}
	if covered >= 1-fractionSlack {
		return b.fail(l.Offset, "the members cover %.4g %% of the area and leave no room for the fill; their shares must stay below 100 %%", 100*covered)
	}
	fill, err := b.fill(l, depth, width)
	if err != nil {
		return err
	}
	var r rvalue.Resistance
	names := make([]string, len(fill))
	for i, p := range fill {
		r += p.R
		names[i] = p.Name
	}
	layer.Shares = append(layer.Shares, Share{Name: strings.Join(names, " + "), Fraction: 1 - covered, R: r})
	switch before := b.framedBefore(); {
	case l.Aligned && !before:
		return b.fail(l.Offset, "aligned with what? no framed layer stands before this one")
	case !l.Aligned && before:
		b.remark(l.Offset, "crossing", "these members are taken as crossing those before; write aligned before the bracket if they stand behind one another")
		b.lines++
	case !l.Aligned:
		b.lines++
	}
	layer.Line = b.lines
	if m := l.Members[0]; m.Steel > 0 {
		if b.steel != nil {
			return b.fail(l.Offset, "two layers of steel studs; the methods for steel know one, give the other as a resistance")
		}
		b.steel = &steelLayer{layer: len(b.layers), member: m, rated: r, empty: len(l.Fill) == 0}
	}
	b.add(layer, append(pieces, fill), l.Offset)
	return nil
}

func (b *builder) framedBefore() bool {
	for _, l := range b.layers {
		if l.Bridged() {
			return true
		}
	}
	return false
}

// fraction returns the share of the area that a member takes, and says which
// and from where.
func (b *builder) fraction(m *Member) (float64, error) {
	switch {
	case m.Steel > 0:
		// The web, not a framing factor: the methods for steel work on it.
		return float64(m.Steel) / float64(m.Spacing), nil
	case m.Share > 0:
		b.remark(m.Offset, "framing", "%s: %.4g %% of the area, as written", m.Name, 100*m.Share)
		return m.Share, nil
	case m.Depth <= strapDepth && m.Width > 0:
		if m.Width >= m.Spacing {
			return 0, b.fail(m.Offset, "straps %s wide do not stand %s apart", said(m.Width), said(m.Spacing))
		}
		f := float64(m.Width) / float64(m.Spacing)
		b.remark(m.Offset, "framing", "%s: %.3g %% of the area, %s", m.Text, 100*f, strapSource)
		return f, nil
	}
	f, source, err := DefaultFraming(b.setting.Faces.Use, m.Spacing)
	if err != nil {
		return 0, b.fail(m.Offset, "%s", plain(err))
	}
	if m.Width > 0 && f < float64(m.Width)/float64(m.Spacing) {
		// Timbers wider than studs cover at least what they are.
		f = float64(m.Width) / float64(m.Spacing)
		source = "width over spacing, more than the published factor for studs"
	}
	b.remark(m.Offset, "framing", "%s: framing takes %.3g %% of the area (%s)", m.Text, 100*f, source)
	return f, nil
}

// fill lays out what stands between members of the given depth; 0 if unknown.
func (b *builder) fill(l *SpecLayer, depth, width rvalue.Length) ([]Piece, error) {
	if len(l.Fill) == 0 {
		if depth == 0 {
			return nil, b.fail(l.Offset, "how deep is the empty space? the members have no depth; write (air 3 1/2 in)")
		}
		p, err := b.airPiece(Piece{Name: "empty", Thickness: depth}, ordinaryEmittance, ordinaryEmittance, false, width, l.Offset)
		return []Piece{p}, err
	}
	rest, soft := depth, -1 // depth not yet taken; the piece that takes what is left
	known := depth > 0      // false with a piece of unknown thickness, a bare R: it may fill the bay
	for i := range l.Fill {
		it := &l.Fill[i]
		flexible := it.Kind == Batt || it.Kind == Slab && it.Thickness == 0 && it.Material.Conductivity > 0
		if flexible && depth > 0 {
			if soft >= 0 {
				return nil, b.fail(it.Offset, "two pieces that could fill what is left of the bay; give one of them its thickness as a slab")
			}
			soft = i
			continue
		}
		p, err := b.piece(it, 0, width)
		if err != nil {
			return nil, err
		}
		rest -= p.Thickness
		known = known && p.Thickness > 0
	}
	if depth > 0 && rest < -depthSlack {
		return nil, b.fail(l.Fill[0].Offset, "the fill is %s deep, the bay only %s", said(depth-rest), said(depth))
	}
	var out []Piece
	for i := range l.Fill {
		it := &l.Fill[i]
		if i != soft {
			kept := len(b.remarks)
			p, err := b.piece(it, 0, width)
			b.remarks = b.remarks[:kept] // said in the first pass
			if err != nil {
				return nil, err
			}
			out = append(out, p)
			continue
		}
		if rest <= depthSlack {
			return nil, b.fail(it.Offset, "no room is left for this in a bay %s deep", said(depth))
		}
		p, err := b.soft(it, rest)
		if err != nil {
			return nil, err
		}
		rest -= p.Thickness
		out = append(out, p)
	}
	if known && rest > depthSlack {
		p, err := b.airPiece(Piece{Name: "air " + said(rest), Thickness: rest}, ordinaryEmittance, ordinaryEmittance, false, width, l.Offset)
		if err != nil {
			return nil, err
		}
		b.remark(l.Offset, "left-over", "the fill leaves %s of the bay's %s open, taken as a still air space on the outer side; a real gap beside a batt moves air and does worse", said(rest), said(depth))
		out = append(out, p)
	}
	return out, nil
}

// soft computes a piece that fits itself to the depth left for it: a batt is
// squeezed, loose fill and foam fill it.
func (b *builder) soft(it *Item, depth rvalue.Length) (Piece, error) {
	if it.Kind != Batt {
		return b.piece(it, depth, 0)
	}
	batt, err := b.batt(it)
	if err != nil {
		return Piece{}, err
	}
	p := Piece{Name: it.Text, Thickness: batt.Thickness, R: batt.Label, Basis: "label", of: it.Material, warm: batt.Label}
	if batt.Thickness <= depth+depthSlack/2 {
		return p, nil
	}
	s, err := material.Squeeze(batt, depth)
	if err != nil {
		return p, b.fail(it.Offset, "%s", plain(err))
	}
	p.Thickness, p.R, p.warm, p.Basis = depth, s.R, s.R, "squeezed batt, "+s.Basis
	b.remark(it.Offset, "squeezed", "%s batt squeezed from %s to %s: %s (%s)", it.Text, said(batt.Thickness), said(depth), said(s.R), s.Basis)
	return p, nil
}
