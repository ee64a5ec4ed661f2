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

// bay is what a framed layer's fill has to fit.
type bay struct {
	depth, width    rvalue.Length // 0 if unknown
	idle            bool          // it holds nothing but air, open to one side
	openIn, openOut bool          // nothing closes it on that side: air there moves freely
	attic           bool          // the fill may rise above the members, nothing lies on them
}

// framed lays out a layer of members and their fill.
func (b *builder) framed(l *SpecLayer, in bay) error {
	told := len(b.remarks)
	layer := Layer{Name: l.Text}
	pieces := make([][]Piece, 0, len(l.Members)+1)
	covered := 0.0
	for i := range l.Members {
		m := &l.Members[i]
		if m.Steel > 0 && len(l.Members) > 1 {
			return b.fail(m.Offset, "steel studs beside other members in one layer: the methods for steel know steel alone; make it the layer's only member, and what is framed otherwise a wall of its own")
		}
		if i > 0 && math.Abs(float64(m.Depth-in.depth)) > float64(depthSlack) && m.Depth > 0 && in.depth > 0 {
			return b.fail(m.Offset, "members %s and %s deep in one layer; give the shallower ones as a resistance, such as R-4.4 4 %%", rvalue.Both(in.depth), rvalue.Both(m.Depth))
		}
		in.depth = max(in.depth, m.Depth)
		fraction, err := b.fraction(m)
		if err != nil {
			return err
		}
		covered += fraction
		p := Piece{Name: m.Name, Offset: m.Offset, Thickness: m.Depth, R: m.R, Basis: "as written", of: m.Of}
		switch {
		case m.Timber:
			p.R, p.Basis = rvalue.Resistance(lumberR*float64(m.Depth)), "softwood lumber at R-1.25 per inch, as the code's wall tables take it"
		case m.Steel > 0:
			p.R, p.Basis = rvalue.Resistance(float64(m.Depth)*steelResistivity), "steel at 48 W/(m·K)"
			in.width = m.Spacing
		case m.Of != nil:
			p.Basis = m.Of.Source
			b.caution(m.Of, m.Offset)
		}
		if m.Spacing > m.Width && m.Width > 0 {
			in.width = m.Spacing - m.Width
		}
		p.warm = p.R
		layer.Shares = append(layer.Shares, Share{Name: m.Name, Fraction: fraction, R: p.R, Member: true})
		pieces = append(pieces, []Piece{p})
	}
	if covered >= 1-fractionSlack {
		return b.fail(l.Offset, "the members cover %.4g %% of the area and leave no room for the fill; their shares must stay below 100 %%", 100*covered)
	}
	switch before := b.framedBefore(); {
	case l.Aligned && !before && !b.framedWrittenBefore(l):
		return b.fail(l.Offset, "aligned with what? no framed layer stands before this one")
	case !l.Aligned && before:
		b.remark(l.Offset, "crossing", "these members are taken as crossing those before; write aligned before the bracket if they stand behind one another")
		b.lines++
	case !before:
		b.lines++
	}
	if in.idle {
		b.remarks = b.remarks[:told]
		b.remark(l.Offset, "open-bay", "%s: nothing closes these empty bays on one side, so that they hold no air still; they and their members are not counted", l.Text)
		return nil
	}
	fill, above, err := b.fill(l, in)
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
	layer.cut(fill)
	layer.Line = b.lines
	if m := l.Members[0]; m.Steel > 0 {
		if b.steel != nil {
			return b.fail(l.Offset, "two layers of steel studs; the methods for steel know one, give the other as a resistance")
		}
		b.steel = &steelLayer{layer: len(b.layers), member: m, empty: hollow(l), label: b.steelLabel(l, m)}
	}
	b.add(layer, append(pieces, fill), l.Offset)
	if above != nil {
		b.add(Plain(above.Name, above.R), [][]Piece{{*above}}, l.Offset)
	}
	return nil
}

// cut sets the parts of the shares where planes between the pieces of the fill,
// which is the last share, cut the layer. Members are alike all through, so that
// they are cut in proportion to the depth. Pieces of unknown thickness say nothing
// of where they meet, and nothing is cut.
func (l *Layer) cut(fill []Piece) {
	depth := rvalue.Length(0)
	for _, p := range fill {
		if !(p.Thickness > 0) {
			return
		}
		depth += p.Thickness
	}
	if len(fill) < 2 {
		return
	}
	deep := make([]float64, len(fill))
	for n, p := range fill {
		deep[n] = float64(p.Thickness / depth)
	}
	last := len(l.Shares) - 1
	for s := range l.Shares[:last] {
		l.Shares[s].Parts = deep
	}
	l.Shares[last].Parts = portions(fill)
}

// portions returns how the pieces of a share divide its resistance.
func portions(pieces []Piece) []float64 {
	var whole rvalue.Resistance
	for _, p := range pieces {
		whole += p.R
	}
	out := make([]float64, len(pieces))
	for n, p := range pieces {
		out[n] = float64(p.R / whole)
	}
	return out
}

// hollow reports whether a bay is empty, or holds nothing but plain air.
func hollow(l *SpecLayer) bool {
	return len(l.Fill) == 0 ||
		len(l.Fill) == 1 && l.Fill[0].Kind == Air && l.Fill[0].E1 == ordinaryEmittance && l.Fill[0].E2 == ordinaryEmittance
}

// steelLabel returns the label of a batt that alone fills a steel stud of
// about its thickness: the published factors go by labels. Else 0.
func (b *builder) steelLabel(l *SpecLayer, m Member) rvalue.Resistance {
	if len(l.Fill) != 1 || l.Fill[0].Kind != Batt {
		return 0
	}
	kept := len(b.remarks)
	batt, err := b.batt(&l.Fill[0])
	b.remarks = b.remarks[:kept]
	if err != nil || math.Abs(float64(batt.Thickness-m.Depth)) > float64(steelFit) {
		return 0
	}
	return batt.Label
}

// steelFit is how far a batt's thickness may miss a steel stud's depth and
// still be the one the tables of steel walls mean: R-19 of 6 1/4 in and R-21 of
// 5 1/2 in in 6 in studs.
const steelFit = 0.6 * rvalue.Inch

func (b *builder) framedBefore() bool {
	for _, l := range b.layers {
		if l.Bridged() {
			return true
		}
	}
	return false
}

// framedWrittenBefore reports whether a framed layer is written before l, which
// counts as aligned with it even if that one does not count.
func (b *builder) framedWrittenBefore(l *SpecLayer) bool {
	for i := range b.spec.Layers {
		if before := &b.spec.Layers[i]; before == l {
			return false
		} else if len(before.Members) > 0 {
			return true
		}
	}
	return false
}

// fraction returns the share of the area that a member takes, and says which
// and from where.
func (b *builder) fraction(m *Member) (float64, error) {
	switch {
	case m.Steel > 0 && m.Share > 0:
		return 0, b.fail(m.Offset, "steel studs go by their spacing, their share of the area says too little; leave %.4g %% out", 100*m.Share)
	case m.Steel > 0:
		// The web, not a framing factor: the methods for steel work on it.
		return float64(m.Steel) / float64(m.Spacing), nil
	case m.Share > 0:
		b.remark(m.Offset, "framing", "%s: %.4g %% of the area, as written", m.Name, 100*m.Share)
		return m.Share, nil
	case m.Depth <= strapDepth && m.Width > 0:
		if m.Width >= m.Spacing {
			return 0, b.fail(m.Offset, "straps %s wide do not stand %s apart", rvalue.Both(m.Width), rvalue.Both(m.Spacing))
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
		source = "width over spacing, more than the published factor for " + framingFactors[b.setting.Faces.Use].members
	}
	b.remark(m.Offset, "framing", "%s: framing takes %.3g %% of the area (%s)", m.Text, 100*f, source)
	return f, nil
}

// fill lays out what stands in a bay, and what of it rises above an attic's
// joists all over.
func (b *builder) fill(l *SpecLayer, in bay) (out []Piece, above *Piece, err error) {
	if len(l.Fill) == 0 {
		if in.depth == 0 {
			return nil, nil, b.fail(l.Offset, "how deep is the empty space? the members have no depth; write (air 3 1/2 in)")
		}
		p, err := b.airPiece(Piece{Name: "empty", Offset: l.Offset, Thickness: in.depth}, ordinaryEmittance, ordinaryEmittance, false, in.width, l.Offset)
		return []Piece{p}, nil, err
	}
	rest := in.depth
	var soft []int        // pieces that fit themselves to the depth that the others leave
	known := in.depth > 0 // false with a piece of unknown thickness, a bare R: it may fill the bay
	start, end := openPieces(l.Fill, in)
	out = make([]Piece, len(l.Fill))
	for i := range l.Fill {
		it := &l.Fill[i]
		if it.Vent != Closed {
			return nil, nil, b.fail(it.Offset, "a vented space between members; how much it still resists is defined for a layer all over: write it as a layer of its own, or as closed air")
		}
		if i < start || i >= len(l.Fill)-end {
			if !in.attic { // where nothing bounds the bay's depth
				rest -= it.Thickness
			}
			continue
		}
		flexible := it.Kind == Batt && !in.attic || it.Kind == Slab && it.Thickness == 0 && it.Material.Conductivity > 0
		if flexible && in.depth > 0 {
			soft = append(soft, i)
			continue
		}
		if out[i], err = b.piece(it, 0, in.width); err != nil {
			return nil, nil, err
		}
		b.labelled(it, &out[i], in.depth)
		rest -= out[i].Thickness
		known = known && out[i].Thickness > 0
	}
	if in.depth > 0 && rest < -depthSlack && !in.attic {
		hint := ""
		for _, it := range l.Fill {
			if it.Kind == Labelled && it.Material != nil && it.Thickness == 0 {
				hint = "; if " + it.Text + " is thinner than its conductivity makes it, write its thickness behind the label"
			}
		}
		return nil, nil, b.fail(l.Fill[0].Offset, "the fill is %s deep, the bay only %s; write what the bay holds, and what lies beyond the members as a layer of its own behind the bracket%s", rvalue.Both(in.depth-rest), rvalue.Both(in.depth), hint)
	}
	switch {
	case len(soft) > 0 && rest <= depthSlack:
		return nil, nil, b.fail(l.Fill[soft[0]].Offset, "no room is left for this in a bay %s deep", rvalue.Both(in.depth))
	case len(soft) == 1:
		if out[soft[0]], err = b.soft(&l.Fill[soft[0]], rest); err != nil {
			return nil, nil, err
		}
		rest -= out[soft[0]].Thickness
	case len(soft) > 1:
		if rest, err = b.batts(l, out, soft, rest); err != nil {
			return nil, nil, err
		}
	}
	switch {
	case !known:
	case rest < -depthSlack:
		above, err = b.rise(&l.Fill[len(out)-end-1], &out[len(out)-end-1], -rest)
	case start+end > 0: // which says it
	case rest > depthSlack && (in.openIn || in.openOut):
		b.remark(l.Offset, "open-bay", "%s: nothing closes the %s that the fill leaves open, so that it holds no air still and is not counted", l.Text, rvalue.Both(rest))
	case rest > depthSlack:
		var p Piece
		if p, err = b.airPiece(Piece{Name: "air " + rvalue.Both(rest), Offset: -1, Thickness: rest}, ordinaryEmittance, ordinaryEmittance, false, in.width, l.Offset); err == nil {
			b.remark(l.Offset, "left-over", "the fill leaves %s of the bay's %s open, taken as a still air space on the outer side; a real gap beside a batt moves air and does worse", rvalue.Both(rest), rvalue.Both(in.depth))
			out = append(out, p)
		}
	}
	if start+end > 0 {
		b.remark(l.Offset, "open-bay", "%s: nothing closes the air on the open side of the bays, so that it is not still and is not counted", l.Text)
		out = out[start : len(out)-end]
	}
	return out, above, err
}

// batts lays several batts into the depth left for them, and returns what they
// leave of it. They must fit as they are: which of them would give way, nobody
// can know.
func (b *builder) batts(l *SpecLayer, out []Piece, soft []int, depth rvalue.Length) (rest rvalue.Length, err error) {
	rest = depth
	for _, i := range soft {
		it := &l.Fill[i]
		if it.Kind != Batt {
			return 0, b.fail(it.Offset, "this and another piece could fill what is left of the bay; write its thickness")
		}
		if out[i], err = b.piece(it, 0, 0); err != nil {
			return 0, err
		}
		if rest -= out[i].Thickness; rest < -depthSlack/2 {
			return 0, b.fail(it.Offset, "up to this one the batts are %s deep, and the bay leaves them %s; write the squeezed one alone with what it resists there, or the thickness that each is sold in", rvalue.Both(depth-rest), rvalue.Both(depth))
		}
	}
	return rest, nil
}

// rise cuts off what of the top piece stands above the joists of an attic, and
// returns it: loose fill covers the joists too. A batt stands between them and
// leaves them bare; it is not cut, and nothing is returned.
func (b *builder) rise(it *Item, p *Piece, surplus rvalue.Length) (*Piece, error) {
	if it.Kind == Batt {
		b.remark(it.Offset, "rises", "%s stands %s above the members, not squeezed, and leaves them uncovered", it.Text, rvalue.Both(surplus))
		return nil, nil
	}
	if surplus >= p.Thickness {
		return nil, b.fail(it.Offset, "this lies wholly above the members; write it as a layer of its own, behind the bracket")
	}
	share := float64(surplus) / float64(p.Thickness)
	over := *p
	over.Name = p.Name + ", above the members"
	over.Thickness, over.R, over.warm = surplus, rvalue.Resistance(share*float64(p.R)), rvalue.Resistance(share*float64(p.warm))
	p.Thickness -= surplus
	p.R, p.warm = p.R-over.R, p.warm-over.warm
	b.remark(it.Offset, "rises", "%s of %s lie above the members, all over", rvalue.Both(surplus), it.Text)
	return &over, nil
}

// Bounds of what a label in a bay may mean.
const (
	battLike   = 4.6  // h·ft²·°F/Btu per inch, more than any fibrous batt has
	labelSlack = 1.15 // loose fill goes by its label into a bay a little thinner than R over k
)

// labelled looks at a piece written by its resistance: a bare one that no batt
// of the bay's depth can have is remarked on, loose fill takes the bay's depth.
func (b *builder) labelled(it *Item, p *Piece, depth rvalue.Length) {
	if it.Kind != Labelled || depth == 0 {
		return
	}
	if it.Material == nil && it.R.IP()/depth.Inches() > battLike {
		b.remark(it.Offset, "bare-r", "%s is read as what it resists in the bay as built; for a batt, which is squeezed here, write its fibre too, such as fiberglass %s", it.Text, it.Text)
	}
	if it.Thickness == 0 && p.Thickness > depth && p.Thickness < rvalue.Length(labelSlack*float64(depth)) {
		p.Thickness = depth
	}
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
	p := Piece{Name: it.Text, Offset: it.Offset, Thickness: batt.Thickness, R: batt.Label, Basis: "label", of: it.Material, warm: batt.Label}
	if batt.Thickness <= depth+depthSlack/2 {
		return p, nil
	}
	s, err := material.Squeeze(batt, depth)
	if err != nil {
		return p, b.fail(it.Offset, "%s", plain(err))
	}
	basis := squeezeBasis[s.Basis]
	p.Thickness, p.R, p.warm, p.Basis = depth, s.R, s.R, "squeezed batt, "+basis
	name := it.Text
	if !strings.Contains(strings.ToLower(name), "batt") {
		name += " batt"
	}
	b.remark(it.Offset, "squeezed", "%s squeezed from %s to %s: %s (%s)", name, rvalue.Both(batt.Thickness), rvalue.Both(depth), rvalue.Both(s.R), basis)
	return p, nil
}

// squeezeBasis spells out what a squeezed R rests on.
var squeezeBasis = map[string]string{
	"chart": "a fiberglass maker's compression chart, printed in the Journal of Light Construction",
	"fit":   "a physical curve, within R-0.8 of that chart's cells",
}
