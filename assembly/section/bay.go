package section

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/rvalue"
)

// Bay is the section through one bay of an assembly.
type Bay struct {
	Section Section
	Width   rvalue.Length     // of the section, for Result.U and Result.R
	Remarks []assembly.Remark // what had to be assumed
}

// What is taken for what an assembly does not say. Common practice, no source.
const (
	unsaidWidth      = 1.5 * rvalue.Inch // of a member
	unsaidInsulation = 0.04              // W/(m·K), of a layer known by its resistance alone
	unsaidWood       = 0.12              // W/(m·K), of a member known by its resistance alone
	thinnest         = 1 * rvalue.Millimetre
)

// NewBay draws the section through an assembly that spec.Evaluate computed: its
// layers with the resistances found there, air spaces too, between the same
// films and air temperatures. The cut runs across the members.
//
// Members of timber cover the share of the area that the assembly gives them:
// the section is half a bay, from the middle of a member to the middle between
// two, a member's width over its share apart, so that a framing factor for
// plates and headers counts here as it does in the hand methods. Steel studs are
// C-sections of web and two flanges at their own spacing. Members that stand
// behind one another are drawn so; members that cross need NewBlock, and are
// refused here.
func NewBay(spec *assembly.Spec, r *assembly.Result) (*Bay, error) {
	b := bay{spec: spec, result: r}
	if err := b.draw(1); err != nil {
		return nil, err
	}
	inner, outer := b.films()
	across := func(name string, y rvalue.Length, air rvalue.Temperature, film rvalue.Resistance) Boundary {
		return Boundary{Name: name, From: Point{0, y}, To: Point{b.width[0], y}, Air: air, Film: film}
	}
	s := Section{Boundaries: []Boundary{
		across("inside", 0, r.Setting.Indoors, inner), across("outside", b.depth, r.Setting.Outdoors, outer),
	}}
	for _, q := range b.boxes {
		s.Pieces = append(s.Pieces, Piece{Name: q.Name, From: Point{q.From.X, q.From.Z}, To: Point{q.To.X, q.To.Z}, Conductivity: q.Conductivity})
	}
	return &Bay{Section: s, Width: b.width[0], Remarks: b.remarks}, nil
}

// Block is the solid of one bay of an assembly whose members cross.
type Block struct {
	Solid   Solid
	Area    rvalue.Area       // of its face, for U = L3D over the area
	Remarks []assembly.Remark // what had to be assumed
}

// NewBlock draws an assembly as NewBay does, in space: members of the first
// framed layer, and those in line with it, run along y, those that cross them
// along x. The third direction that members can cross in is refused.
func NewBlock(spec *assembly.Spec, r *assembly.Result) (*Block, error) {
	b := bay{spec: spec, result: r}
	if err := b.draw(2); err != nil {
		return nil, err
	}
	inner, outer := b.films()
	corner := func(z rvalue.Length) Place { return Place{b.width[0], b.width[1], z} }
	return &Block{
		Solid: Solid{Boxes: b.boxes, Rooms: []Room{
			{Name: "inside", From: Place{Z: -b.depth}, To: corner(0), Air: r.Setting.Indoors, Film: inner},
			{Name: "outside", From: Place{Z: b.depth}, To: corner(2 * b.depth), Air: r.Setting.Outdoors, Film: outer},
		}},
		Area:    b.width[0].Times(b.width[1]),
		Remarks: b.remarks,
	}, nil
}

// bay is a Bay or a Block in the making. Depth runs along z, from indoors.
type bay struct {
	spec    *assembly.Spec
	result  *assembly.Result
	width   [2]rvalue.Length
	depth   rvalue.Length
	lines   []int // of the assembly, the one across x first
	boxes   []Box
	axis    int // across the members of the layer that is drawn
	remarks []assembly.Remark
}

// draw draws all layers, with members in so many directions at most.
func (b *bay) draw(directions int) error {
	if err := b.measure(directions); err != nil {
		return err
	}
	for i := range b.result.Layers {
		if !b.isFilm(i) {
			b.depth = b.layer(i, b.depth)
		}
	}
	if b.depth == 0 {
		return errors.New("section: an assembly of films only has no section")
	}
	return nil
}

func (b *bay) isFilm(i int) bool { return b.result.Layers[i].Offset < 0 }

// films returns the resistance at both faces; what has none is held at the air.
func (b *bay) films() (inner, outer rvalue.Resistance) {
	layers := b.result.Layers
	if b.isFilm(0) {
		inner = layers[0].R
	}
	if last := len(layers) - 1; last > 0 && b.isFilm(last) {
		outer = layers[last].R
	}
	return inner, outer
}

func (b *bay) remark(offset int, code, format string, args ...any) {
	b.remarks = append(b.remarks, assembly.Remark{Code: code, Text: fmt.Sprintf(format, args...), Offset: offset})
}

// written returns the written layer that a layer of the result comes from.
func (b *bay) written(i int) *assembly.SpecLayer {
	for n := range b.spec.Layers {
		if b.spec.Layers[n].Offset == b.result.Layers[i].Offset {
			return &b.spec.Layers[n]
		}
	}
	return nil
}

// steel returns the steel stud of a layer, nil if it has none.
func (b *bay) steel(i int) *assembly.Member {
	if w := b.written(i); w != nil && len(w.Members) > 0 && w.Members[0].Steel > 0 && b.result.Assembly.Layers[i].Bridged() {
		return &w.Members[0]
	}
	return nil
}

// measure finds the lines of the framing and the widths of the section.
func (b *bay) measure(directions int) error {
	var first []int // by line: its first layer
	for i, l := range b.result.Assembly.Layers {
		if !l.Bridged() {
			continue
		}
		w := b.written(i)
		if w == nil {
			return fmt.Errorf("section: layer %q is not in the text that the section is drawn from", l.Name)
		}
		fail := func(msg string) error {
			return &assembly.SyntaxError{Text: b.spec.Text, Offset: w.Offset, Msg: msg}
		}
		steel := b.steel(i)
		if n := slices.Index(b.lines, l.Line); n >= 0 && l.Line != 0 {
			if steel != nil || b.steel(first[n]) != nil {
				return fail("members in line with steel studs cannot be drawn; give this layer as a resistance")
			}
			continue // the first framed layer of a line sets the pitch
		}
		n := len(b.lines)
		switch {
		case n == 1 && directions == 1:
			return fail("these members cross those before, which no flat section shows; a block does")
		case n == directions:
			return fail("these members run in a third direction, which cannot be drawn; write some aligned, or give them as a resistance")
		}
		b.lines, first = append(b.lines, l.Line), append(first, i)
		if steel != nil {
			b.width[n] = steel.Spacing
			continue
		}
		m := w.Members[0]
		width := m.Width
		if width == 0 {
			width = unsaidWidth
			b.remark(m.Offset, "member-width", "%s: no width is known, taken as %s", m.Text, width.In(rvalue.IP))
		}
		b.width[n] = rvalue.Length(float64(width) / l.Shares[0].Fraction / 2)
	}
	for n := len(b.lines); n < len(b.width); n++ {
		b.width[n] = 100 * rvalue.Millimetre // alike all along, so any width does
	}
	return nil
}

// layer draws a layer from y on and returns where it ends.
func (b *bay) layer(i int, y rvalue.Length) rvalue.Length {
	l := &b.result.Layers[i]
	end := y + b.thickness(i)
	b.axis = max(0, slices.Index(b.lines, b.result.Assembly.Layers[i].Line))
	if m := b.steel(i); m != nil {
		b.steelStud(l, m, y, end)
		return end
	}
	x, covered := rvalue.Length(0), 0.0
	for n := range l.Shares {
		s := &l.Shares[n]
		covered += s.Fraction
		to := rvalue.Length(covered * float64(b.width[b.axis]))
		if n == len(l.Shares)-1 {
			to = b.width[b.axis]
		}
		b.stack(s, x, to, y, end, y, end)
		x = to
	}
	return end
}

// thickness returns a layer's thickness, or what is taken for it.
func (b *bay) thickness(i int) rvalue.Length {
	l := &b.result.Layers[i]
	if l.Thickness > 0 {
		return l.Thickness
	}
	k := unsaidInsulation
	if len(l.Shares) > 1 {
		k = unsaidWood
	}
	t := max(thinnest, rvalue.Length(k*float64(l.Shares[0].R)))
	b.remark(l.Offset, "thickness", "%s: no thickness is known, taken as %.3g mm; heat spreads sideways in it accordingly", l.Name, t.Millimetres())
	return t
}

// stack draws a share's pieces, one behind the other from y to end, between x
// and to; only what lies from low to high is drawn. Their thicknesses are
// stretched to the layer's, their resistances kept.
func (b *bay) stack(s *assembly.ShareResult, x, to, y, end, low, high rvalue.Length) {
	depth := float64(end - y)
	known := rvalue.Length(0)
	for _, p := range s.Pieces {
		if p.Thickness == 0 {
			known = 0
			break
		}
		known += p.Thickness
	}
	if known == 0 { // one piece of all
		b.box(s.Name, x, to, max(y, low), min(end, high), depth/float64(s.R))
		return
	}
	at := y
	for n, p := range s.Pieces {
		thick := float64(p.Thickness) / float64(known) * depth
		next := at + rvalue.Length(thick)
		if n == len(s.Pieces)-1 {
			next = end
		}
		b.box(p.Name, x, to, max(at, low), min(next, high), thick/float64(p.R))
		at = next
	}
}

func (b *bay) box(name string, x, to, y, end rvalue.Length, k float64) {
	if to-x <= snap*rvalue.Metre || end-y <= snap*rvalue.Metre {
		return
	}
	q := Box{Name: name, From: Place{x, 0, y}, To: Place{to, b.width[1], end}, Conductivity: rvalue.Conductivity(k)}
	if b.axis == 1 {
		q.From, q.To = Place{0, x, y}, Place{b.width[0], to, end}
	}
	b.boxes = append(b.boxes, q)
}

// steelStud draws a C-section in the middle of its bay: a web and two flanges
// to one side of it, without lips, in what fills the bay.
func (b *bay) steelStud(l *assembly.LayerResult, m *assembly.Member, y, end rvalue.Length) {
	stud, fill := &l.Shares[0], &l.Shares[len(l.Shares)-1]
	k := float64(m.Depth) / float64(stud.R)
	sheet := m.Steel
	web := (b.width[b.axis] - m.Width) / 2
	flange := web + m.Width
	b.stack(fill, 0, web, y, end, y, end)
	b.box(stud.Name+", web", web, web+sheet, y, end, k)
	b.box(stud.Name+", flange", web+sheet, flange, y, y+sheet, k)
	b.stack(fill, web+sheet, flange, y, end, y+sheet, end-sheet)
	b.box(stud.Name+", flange", web+sheet, flange, end-sheet, end, k)
	b.stack(fill, flange, b.width[b.axis], y, end, y, end)
	if d := float64(end - y - m.Depth); math.Abs(d) > snap {
		b.remark(l.Offset, "stud-depth", "%s: the studs are drawn as deep as the layer, %.3g mm", l.Name, (end - y).Millimetres())
	}
}
