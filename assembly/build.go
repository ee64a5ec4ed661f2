package assembly

import (
	"fmt"
	"math"

	"github.com/coldseam/coldseam/rvalue"
	"github.com/coldseam/coldseam/rvalue/airspace"
	"github.com/coldseam/coldseam/rvalue/material"
	"github.com/coldseam/coldseam/rvalue/surface"
)

// Piece is one thing of a share, in series with the others: a slab, a batt, an
// air space.
type Piece struct {
	Name      string
	Offset    int           // in the written assembly, -1 for what is not written; what rises above an attic's joists has that of its fill
	Thickness rvalue.Length // 0 if it has none
	R         rvalue.Resistance
	Basis     string // where R comes from: a source, a label, a table, a fit
	Material  string // the catalogue's name of what it is made of, "" without one

	space  *airspace.Space    // of an air space, whose R follows its temperatures
	halved bool               // a slightly vented one
	of     *material.Material // for cold-weather conductivity
	warm   rvalue.Resistance  // R at the label's mean temperature, 75 °F
	cold   *coldness          // what a Setting with Cold did to it
}

// Remark is something the reader of a result should know: an assumption, a
// correction, a caution. Code is stable, for programs.
type Remark struct {
	Code   string
	Text   string
	Offset int // byte offset in the written assembly, -1 if it concerns the whole
}

// builder turns a Spec into an Assembly.
type builder struct {
	spec    *Spec
	setting Setting
	layers  []Layer
	pieces  [][][]Piece // by layer and share; films have none
	offsets []int       // by layer, of the written one; -1 for a film
	steel   *steelLayer // the layer of steel studs, if there is one
	lines   int         // framed layers so far, the number of the current line
	remarks []Remark
}

// steelLayer is a layer of steel studs, for the methods made for them.
type steelLayer struct {
	layer  int // index in the assembly
	member Member
	empty  bool
	label  rvalue.Resistance // of the batt that alone fills it, else 0
}

func (b *builder) remark(offset int, code, format string, args ...any) {
	b.remarks = append(b.remarks, Remark{Code: code, Text: fmt.Sprintf(format, args...), Offset: offset})
}

func (b *builder) fail(offset int, format string, args ...any) error {
	return &SyntaxError{Text: b.spec.Text, Offset: offset, Msg: fmt.Sprintf(format, args...)}
}

func (b *builder) add(l Layer, pieces [][]Piece, offset int) {
	for _, share := range pieces {
		for i := range share {
			if m := share[i].of; m != nil {
				share[i].Material = m.Name
			}
		}
	}
	b.layers = append(b.layers, l)
	b.pieces = append(b.pieces, pieces)
	b.offsets = append(b.offsets, offset)
}

// film names in results.
const (
	innerFilm = "inside air film"
	outerFilm = "outside air film"
)

// build lays the layers out, films included. Air spaces get the resistance at
// the setting's mean temperature; settle corrects it.
func (b *builder) build() error {
	inner, outer, err := b.setting.films()
	if err != nil {
		return err
	}
	if n := len(b.spec.Layers); n > maxLayers {
		return b.fail(b.spec.Layers[maxLayers].Offset, "%d layers, at most %d are computed; give some of them together as one resistance", n, maxLayers)
	}
	b.add(Plain(innerFilm, inner), nil, -1)
	slight := -1 // the first slightly vented layer
	first, end, vented := b.counted()
	for i := range b.spec.Layers[:vented] {
		l := &b.spec.Layers[i]
		idle := i < first || i >= end
		if len(l.Members) > 0 {
			in := bay{idle: idle, openIn: i == first, openOut: i == end-1 && !b.soilCloses(vented)}
			in.attic = i == len(b.spec.Layers)-1 && b.setting.Faces.Use == Ceiling
			if err := b.framed(l, in); err != nil {
				return err
			}
			continue
		}
		if idle {
			b.remark(l.Offset, "open-air", "%s: nothing closes this air on one side, so that it is not still and is not counted", l.Text)
			continue
		}
		p, err := b.piece(&l.Item, 0, 0)
		if err != nil {
			return err
		}
		b.add(Plain(l.Text, p.R), [][]Piece{{p}}, l.Offset)
		if l.Item.Vent == SlightlyVented && slight < 0 {
			slight = len(b.layers) - 1
		}
	}
	if vented < len(b.spec.Layers) {
		// ISO 6946, well-ventilated air layer: it and all beyond it are left
		// out, and the outer film is that of still air.
		outer, err = surface.Still(b.setting.Films, b.setting.Faces.tilt(), b.setting.heatUp(), ordinaryEmittance)
		if err != nil {
			return err
		}
		b.remark(b.spec.Layers[vented].Offset, "vented", "the vented space and what lies beyond it do not count; the outer film is that of still air (ISO 6946)")
	}
	if len(b.layers) == 1 {
		return b.fail(0, "nothing is left here that resists heat; open air and what lies beyond a vented space do not count")
	}
	if outer > 0 {
		b.add(Plain(outerFilm, outer), nil, -1)
	}
	if slight >= 0 {
		b.beyondSlightlyVented(slight)
	}
	b.turned()
	b.inPart()
	return nil
}

// Of what lies beyond a slightly vented layer, up to the air outdoors, no more
// than this counts: ISO 6946:1997, 5.3.3, from memory; outer film included.
const (
	mostBeyond     = 0.15 * rvalue.RSI
	beyondSlightly = "beyond the slightly vented space"
)

// beyondSlightlyVented counts half of a slightly vented layer, which airR has
// done, and caps what lies beyond it.
func (b *builder) beyondSlightlyVented(at int) {
	text := "a slightly vented space counts half its resistance (ISO 6946:1997)"
	var beyond rvalue.Resistance
	for _, l := range b.layers[at+1:] {
		beyond += l.Mixed()
	}
	if beyond > mostBeyond {
		b.layers, b.pieces, b.offsets = b.layers[:at+1], b.pieces[:at+1], b.offsets[:at+1]
		if b.steel != nil && b.steel.layer > at {
			b.steel = nil
		}
		b.add(Plain(beyondSlightly, mostBeyond), [][]Piece{{{Name: beyondSlightly, Offset: -1, R: mostBeyond, Basis: "the most that ISO 6946:1997 counts"}}}, -1)
		text += fmt.Sprintf("; what lies beyond it, the outside film included, counts %s at most instead of %s", rvalue.Both(mostBeyond), rvalue.Both(beyond))
	}
	b.remark(b.offsets[at], "slightly-vented", "%s", text)
}

// inPart remarks on materials that were found by a part of their name.
func (b *builder) inPart() {
	tell := func(offset int, m *material.Material, named string) {
		if m != nil && named != "" && !m.Called(named) {
			b.remark(offset, "read-as", "%q is only part of a name and was read as %s; write the name in full if that is not what is meant", named, m.Name)
		}
	}
	for i := range b.spec.Layers {
		l := &b.spec.Layers[i]
		tell(l.Item.Offset, l.Item.Material, l.Item.Named)
		for j := range l.Members {
			tell(l.Members[j].Offset, l.Members[j].Of, l.Members[j].Named)
		}
		for j := range l.Fill {
			tell(l.Fill[j].Offset, l.Fill[j].Material, l.Fill[j].Named)
		}
	}
}

// turned remarks on a wall that seems written from outdoors to indoors.
func (b *builder) turned() {
	layers := b.spec.Layers
	first, last := layers[0].Item.Material, layers[len(layers)-1].Item.Material
	if first == nil || last == nil || b.setting.Exposure != Open || b.setting.Faces.Use != Wall {
		return
	}
	switch first.Class {
	case material.Siding, material.Masonry, material.Roofing:
		if last.Class == material.Gypsum || last.Class == material.Plaster && first.Class == material.Siding {
			b.remark(layers[0].Offset, "order", "%s indoors and %s outdoors: layers are read from indoors to outdoors, is this the other way round?", first.Name, last.Name)
		}
	}
}

// Bounds beyond which a piece is remarked on.
const (
	mostPerInch = 12               // h·ft²·°F/Btu, more than any insulation sold but vacuum panels
	thickBoard  = 3 * rvalue.Inch  // more than boards, plaster and siding have
	thickPiece  = 1 * rvalue.Metre // more than walls have of anything
)

// plausible remarks on a piece that is hardly meant as it stands.
func (b *builder) plausible(it *Item, p *Piece) {
	if t := p.Thickness; t > 0 && p.R.IP()/t.Inches() > mostPerInch {
		b.remark(it.Offset, "implausible", "%s would resist R-%.3g per inch, more than any insulation sold; is it meant so?", it.Text, p.R.IP()/t.Inches())
	}
	m := it.Material
	if m == nil {
		return
	}
	thin := m.Class == material.Gypsum || m.Class == material.Plaster || m.Class == material.Siding || m.Class == material.Panel || m.Class == material.Flooring
	if it.Thickness > thickPiece || thin && it.Thickness > thickBoard {
		b.remark(it.Offset, "implausible", "%s is hardly sold %s thick; is it meant so?", m.Name, rvalue.Both(it.Thickness))
	}
	if it.Kind == Slab && it.Thickness > 0 && m.Conductivity == 0 && len(m.Sizes) == 1 && m.Sizes[0].Thickness == 0 {
		b.remark(it.Offset, "thickness-unused", "%s is known by the piece, whatever its thickness: %s", m.Name, rvalue.Both(p.R))
	}
	if it.Kind == Labelled && m.Class == material.Fibre {
		b.remark(it.Offset, "label", "no batt of %s is labelled so; counted as written, %s", m.Name, rvalue.Both(p.R))
	}
}

// piece computes what an item resists. depth is that of the bay for an item
// written without a thickness, width that of the bay for air, 0 if open.
func (b *builder) piece(it *Item, depth, width rvalue.Length) (Piece, error) {
	p := Piece{Name: it.Text, Offset: it.Offset, Thickness: it.Thickness, of: it.Material}
	switch it.Kind {
	case Air:
		return b.airPiece(p, it.E1, it.E2, it.Vent == SlightlyVented, width, it.Offset)
	case Labelled:
		p.R, p.Basis = it.R, "as written"
		if m := it.Material; m != nil {
			p.Basis = "label"
			b.caution(m, it.Offset)
			if p.Thickness == 0 && m.Conductivity > 0 {
				p.Thickness = rvalue.Length(float64(it.R) * float64(m.Conductivity))
			}
		}
	case Batt:
		batt, err := b.batt(it)
		if err != nil {
			return p, err
		}
		p.Thickness, p.R, p.Basis = batt.Thickness, batt.Label, "label"
	case Slab:
		d := it.Thickness
		if d == 0 {
			d = depth
		}
		r, err := it.Material.Resistance(d)
		if err != nil {
			return p, b.fail(it.Offset, "%s", plain(err))
		}
		p.R, p.Thickness, p.Basis = r, d, it.Material.Source
		b.caution(it.Material, it.Offset)
	}
	p.warm = p.R
	b.plausible(it, &p)
	return p, nil
}

func (b *builder) caution(m *material.Material, offset int) {
	if m.Caution != "" {
		b.remark(offset, "caution", "%s: %s", m.Name, m.Caution)
	}
}

// batt returns the batt an item names: of several thicknesses of one label the
// one written, else the standard, thickest one.
func (b *builder) batt(it *Item) (material.Batt, error) {
	batts, err := material.FindBatt(it.Material.Name, it.R)
	if err != nil || len(batts) == 0 {
		return material.Batt{}, b.fail(it.Offset, "%s", plain(err))
	}
	best := batts[0]
	for _, c := range batts[1:] {
		if c.Thickness > best.Thickness {
			best = c
		}
	}
	if it.Thickness > 0 {
		best.Thickness = it.Thickness
	} else if len(batts) > 1 {
		b.remark(it.Offset, "batt-thickness", "%s is sold in more than one thickness, taken as the standard %s; write the thickness behind the label for another", it.Text, rvalue.Both(best.Thickness))
	}
	return best, nil
}

func (b *builder) airPiece(p Piece, e1, e2 float64, halved bool, width rvalue.Length, offset int) (Piece, error) {
	p.space = &airspace.Space{
		Thickness: p.Thickness, Tilt: b.setting.Faces.tilt(), Up: b.setting.heatUp(), E1: e1, E2: e2,
	}
	p.Basis = "air space at its own temperatures"
	if b.setting.Films == surface.ISO6946 {
		p.space.Width = width
	}
	p.halved = halved
	mean := rvalue.Temperature((float64(b.setting.Indoors) + float64(b.setting.Outdoors)) / 2)
	if err := p.airR(b.setting, mean, b.setting.Indoors.Sub(b.setting.Outdoors)/4); err != nil {
		return p, b.fail(offset, "%s", plain(err))
	}
	return p, nil
}

// airR sets the resistance of an air space at the temperatures of its faces.
func (p *Piece) airR(s Setting, mean rvalue.Temperature, dT rvalue.TemperatureDifference) error {
	method := airspace.Correlated
	if s.Films == surface.ISO6946 {
		method = airspace.ISO6946
	}
	r, err := p.space.Resistance(method, mean, rvalue.TemperatureDifference(math.Abs(float64(dT))))
	if err != nil {
		return err
	}
	p.R = r
	if p.halved {
		p.R /= 2 // ISO 6946:1997, slightly ventilated air layer
	}
	return nil
}
