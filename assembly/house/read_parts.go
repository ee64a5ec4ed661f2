package house

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/assembly/envelope"
	"github.com/coldseam/coldseam/rvalue"
	"github.com/coldseam/coldseam/rvalue/material"
)

// maxCount bounds how many alike openings one line may give.
const maxCount = 1000

// item opens the n-th table of a list and reads its name.
func (d *decoder) item(t *table, what string, n int, seen map[string]int) (*section, string) {
	s := &section{d: d, t: t, where: fmt.Sprintf("%s %d", what, n+1)}
	name, ok := s.text("name")
	if !ok {
		s.missing("name", `a name is missing, by which the ranking calls it; write such as name = "street wall"`)
		return s, ""
	}
	name = strings.Join(strings.Fields(name), " ") // a line break would tear the ranking apart
	inner := what[strings.LastIndexByte(what, ':')+1:]
	s.where = fmt.Sprintf("%s %q", what, name)
	if line, ok := seen[name]; ok {
		s.fail("name", "another%s of this name is on line %d; give each its own", prefixed(inner), line)
	} else {
		seen[name] = d.src.place(s.at("name")).Line
	}
	return s, name
}

func prefixed(what string) string { return " " + strings.TrimSpace(what) }

// lookup finds a named thing that a key refers to.
func lookup[T any](s *section, key, what string, all []*T, name func(*T) string) *T {
	written, ok := s.text(key)
	if !ok {
		return nil
	}
	names := make([]string, len(all))
	for i, one := range all {
		if names[i] = name(one); names[i] == written {
			return one
		}
	}
	s.noSuch(key, what, written, names)
	return nil
}

// noSuch reports a name that refers to nothing.
func (s *section) noSuch(key, what, written string, names []string) {
	msg := fmt.Sprintf("there is no [%s.%s]", what, join([]name{{written, 0}}))
	switch near := nearest(written, names); {
	case near != "":
		msg += fmt.Sprintf("; did you mean %q?", near)
	case len(names) == 0:
		msg += ", and no other either; describe it under that header"
	case len(names) <= 8:
		msg += "; the file has " + strings.ReplaceAll(either(names), " or ", " and ")
	default:
		msg += "; describe it under that header"
	}
	s.fail(key, "%s", msg)
}

// construction reads what an area is made of, by exactly one of the keys.
func (d *decoder) construction(s *section, optional bool) Construction {
	var c Construction
	c.Assembly = lookup(s, "assembly", "assembly", d.h.Assemblies, func(a *Assembly) string { return a.Name })
	c.Window = lookup(s, "window", "window", d.h.Windows, func(w *Window) string { return w.Name })
	c.U, _ = quantity(s, "u", "U-0.30", someU)
	if !optional || s.has("assembly") || s.has("window") || s.has("u") {
		s.oneOf("what it is made of", []string{"assembly", "u", "window"})
	}
	return c
}

// mostU is more than anything lets through: the films at both faces alone resist more.
// A metal frame around single glass has 7.4 W/(m²·K).
const mostU = 11 * rvalue.USI

// someU reads a U-factor that can be.
func someU(text string) (rvalue.Transmittance, error) {
	u, err := rvalue.ParseTransmittance(text)
	if err == nil && u > mostU {
		return 0, &rvalue.ParseError{Text: text, Msg: fmt.Sprintf("%s is more than the air at both faces lets through; a bare U-0.30 is inch-pound, a metric one is written \"1.7 W/(m²·K)\"", rvalue.Both(u))}
	}
	return u, err
}

// parts reads the [[part]] tables.
func (d *decoder) parts(s *section) {
	seen := map[string]int{}
	tables := s.tables("part")
	for i, t := range tables {
		p, name := d.item(t, "part", i, seen)
		d.part(p, &Part{Name: name})
		p.done()
	}
	inSoil := func(p *Part) bool { return p.Toward == ToGround && p.Kind != Slab }
	if d.h.Soil == 0 && !s.has("soil") && (slices.ContainsFunc(d.h.Parts, inSoil) || slices.ContainsFunc(d.h.Buffers, func(b *Buffer) bool { return len(b.ToGround) > 0 })) {
		d.h.Soil = envelope.ClayOrSilt
		d.filled("soil", soils[0]+", "+rvalue.Both(d.h.Soil), "what ISO 13370 takes where nothing is known, from memory")
	}
	if !s.has("part") && !s.t.partial {
		d.fail(len(d.src.text), "", "the house has no parts; write a [[part]] for each wall, ceiling and floor, with its name, assembly and area")
	} else if e := s.get("part"); e != nil && len(tables) == 0 && e.value.kind == array && len(e.value.items) == 0 {
		s.fail("part", "the house has no parts; write a [[part]] for each wall, ceiling and floor, with its name, assembly and area")
	}
}

func (d *decoder) part(s *section, p *Part) {
	d.h.Parts = append(d.h.Parts, p)
	d.toward(s, p)
	kind, given := s.choice("kind", kindNames[:Glazing])
	slab := given && (Kind(kind) == Slab || Kind(kind) == BasementFloor)
	p.Construction = d.construction(s, slab)
	p.Kind = Kind(kind)
	if !given {
		p.Kind = d.kindOf(s, p)
	} else if p.Window != nil {
		s.fail("kind", "a part that is a window has the window's kind; leave this out")
	}
	if given && p.Assembly != nil && p.Assembly.facing && !p.Kind.faces(p.Assembly.Faces.Use) {
		s.fail("kind", "a %s of assembly %q, which faces %q; write the kind that it is, or name an assembly that faces such a part", p.Kind, p.Assembly.Name, p.Assembly.Faces)
	}
	p.Area, _ = quantity(s, "area", "31 ft x 8 ft 6 in", areas)
	s.missing("area", `its area is missing; write it with its openings included, such as area = "31 ft x 8 ft 6 in"`)
	d.openings(s, p)
	d.ground(s, p)
}

// toward reads what the part faces.
func (d *decoder) toward(s *section, p *Part) {
	text, ok := s.text("toward")
	if !ok {
		return // outdoors, as most parts; not worth a line among the defaults
	}
	name, isBuffer := strings.CutPrefix(text, "buffer ")
	name = strings.TrimSpace(name)
	switch {
	case text == "outdoors":
	case text == "ground":
		p.Toward = ToGround
	case isBuffer && name != "":
		p.Toward = ToBuffer
		var names []string
		for _, b := range d.h.Buffers {
			if b.Name == name {
				p.Buffer = b
			}
			names = append(names, b.Name)
		}
		if p.Buffer == nil {
			s.noSuch("toward", "buffer", name, names)
		}
	default:
		for _, b := range d.h.Buffers {
			if strings.EqualFold(b.Name, strings.TrimSpace(text)) {
				s.fail("toward", "%q is not known; did you mean %q?", text, "buffer "+b.Name)
				return
			}
		}
		s.fail("toward", `%q is not known; write "outdoors", "ground", or "buffer" with the name of one, such as "buffer garage"`, text)
	}
}

// kindOf returns the kind that follows from what a part is made of and faces.
func (d *decoder) kindOf(s *section, p *Part) Kind {
	switch {
	case p.Window != nil:
		return Glazing
	case p.Assembly != nil:
		ground := p.Toward == ToGround
		switch use := p.Assembly.Faces.Use; {
		case use == assembly.Wall && ground:
			return BasementWall
		case use == assembly.Floor && ground && s.has("depth"):
			return BasementFloor
		case use == assembly.Floor && ground:
			return Slab
		case use == assembly.Wall && p.Assembly.Layers != nil && massWall(p.Assembly.Layers):
			d.filled(s.path("kind"), MassWall.String(), "masonry, concrete, stone or earth carries it, so that the code's column of mass walls is asked; write kind = \"wall\" if a frame does")
			return MassWall
		default:
			return [...]Kind{assembly.Wall: Wall, assembly.Ceiling: Ceiling, assembly.Floor: Floor, assembly.Roof: Roof}[use]
		}
	case p.U > 0 && !s.has("kind"):
		s.fail("u", "what this part is must be said where only its U-factor is known; write such as kind = \"wall\"")
	}
	return Wall
}

// Bounds of what counts as a mass wall where the file does not say: our own
// reading of the code's definition, so that brick veneer before a frame does not.
const (
	massive = 140 * rvalue.Millimetre // whatever else is in the wall
	solid   = 85 * rvalue.Millimetre  // with no framed layer deeper than furring
	furring = 1.6 * rvalue.Inch
)

// massWall reports whether masonry, concrete, stone or earth carries a wall.
func massWall(s *assembly.Spec) bool {
	var thick, framed rvalue.Length
	for _, l := range s.Layers {
		for _, m := range l.Members {
			framed = max(framed, m.Depth)
		}
		if m := l.Item.Material; m != nil && heavy(m) {
			thick += l.Item.Thickness
		}
	}
	return thick >= massive || thick >= solid && framed <= furring
}

// faces reports whether an assembly made for a use can be a part of this kind: films
// and framing follow the use, what the code asks follows the kind.
func (k Kind) faces(use assembly.Use) bool {
	switch k {
	case Wall, MassWall, BasementWall, CrawlWall:
		return use == assembly.Wall
	case Ceiling, Roof:
		return use == assembly.Ceiling || use == assembly.Roof
	case Floor, BasementFloor, Slab:
		return use == assembly.Floor
	}
	return true
}

// heavy reports whether a material makes a wall a mass wall.
func heavy(m *material.Material) bool {
	switch m.Class {
	case material.Masonry, material.Concrete, material.Stone, material.Earth:
		return true
	}
	return false
}

// areas reads an area, or several joined by plus: "10 ft x 8 ft + 6 ft x 4 ft".
func areas(text string) (rvalue.Area, error) {
	var sum rvalue.Area
	at := 0
	for piece := range strings.SplitSeq(text, "+") {
		a, err := rvalue.ParseArea(piece)
		var q *rvalue.ParseError
		if errors.As(err, &q) {
			return 0, &rvalue.ParseError{Text: text, Offset: at + q.Offset, Msg: q.Msg}
		}
		if err != nil {
			return 0, err
		}
		sum += a
		at += len(piece) + 1
	}
	return sum, nil
}

// openings reads the openings of a part and holds their area against its own.
func (d *decoder) openings(s *section, p *Part) {
	seen := map[string]int{}
	var open rvalue.Area
	complete := true
	for i, t := range s.tables("openings") {
		o, name := d.item(t, s.where+": opening", i, seen)
		r := &Opening{Name: name, Count: 1}
		p.Openings = append(p.Openings, r)
		r.Window = lookup(o, "window", "window", d.h.Windows, func(w *Window) string { return w.Name })
		o.missing("window", `the window is missing; write the name of a [window.NAME], such as window = "sash"`)
		size, ok1 := quantity(o, "size", "30 in x 60 in", rvalue.ParseArea)
		if ok1 {
			if width, height, err := rvalue.ParseSize(o.t.index["size"].value.text); err == nil {
				r.Width, r.Height = width, height
			}
		}
		area, ok2 := quantity(o, "area", "12.5 ft2", rvalue.ParseArea)
		o.oneOf("its size", []string{"size", "area"})
		if r.Area = area; ok1 {
			r.Area = size
		}
		if n, ok := o.count("count", maxCount); ok {
			r.Count = n
		} else if o.has("count") {
			complete = false
		}
		d.order(o, r)
		o.done()
		if !ok1 && !ok2 {
			complete = false
		}
		if r.Window != nil && r.Window.Built != nil && r.Area > 0 {
			width, height := r.sides()
			if _, whole, err := d.h.glazed(r.Window, width, height, p.tilt()); err != nil {
				key := "size"
				if ok2 {
					key = "area"
				}
				o.fail(key, "%s", plain(err))
			} else if ok2 {
				d.filled(o.path("size"), "square", "of its area; write the size, since edge and frame depend on it")
			} else {
				d.fits(o, r, whole)
			}
		}
		open += rvalue.Area(float64(r.Count) * float64(r.Area))
	}
	if complete && p.Area > 0 && float64(open) > float64(p.Area)*(1+areaSlack) {
		s.fail("openings", "the openings take %s, the whole part has only %s", rvalue.Both(open), rvalue.Both(p.Area))
	}
}

// areaSlack lets openings fill their part although both were rounded.
const areaSlack = 1e-9

// ground reads what a part toward the ground needs besides, and refuses it for
// other parts.
func (d *decoder) ground(s *section, p *Part) {
	floor := p.Kind == Slab || p.Kind == BasementFloor
	below := p.Kind == BasementFloor || (p.Kind == BasementWall || p.Kind == CrawlWall) && p.Toward == ToGround
	if floor && p.Toward != ToGround {
		if s.has("toward") {
			if s.get("toward") != nil {
				s.fail("toward", "a %s faces the ground; leave this out or write \"ground\"", p.Kind)
			}
		}
		p.Toward = ToGround
	}
	if p.Toward == ToGround && !floor && !below {
		s.fail("toward", "a %s does not face the ground; parts that do are of kind \"basement wall\", \"crawl wall\", \"basement floor\" or \"slab\"", p.Kind)
	}
	d.below(s, p)
	only := func(key string, wanted bool, of string) {
		if !wanted && s.has(key) && s.get(key) != nil {
			s.fail(key, "this is for %s only, and the part is a %s toward %s", of, p.Kind, p.Toward)
		}
	}
	only("perimeter", floor, "a slab or basement floor")
	only("depth", below, "basement and crawl walls and basement floors toward the ground")
	if e := s.sub("edge"); e != nil {
		only("edge", p.Kind == Slab, "a slab")
		d.edge(e, p)
	} else if p.Kind == Slab && !s.has("edge") {
		p.Edge.Reach = "none"
		d.filled(s.path("edge"), "no insulation at the slab's edge", "none is given")
	}
	if p.Kind == Slab && (p.Assembly != nil || p.U > 0) {
		d.filled(s.path("assembly"), "not used", "a slab's heat goes by its edge: the F-factors hold for bare concrete floors")
	}
}

// below reads how deep a part lies in the ground, and how long its edge is.
func (d *decoder) below(s *section, p *Part) {
	p.Perimeter, _ = quantity(s, "perimeter", "140 ft", rvalue.ParseLength)
	p.Depth, _ = quantity(s, "depth", "6 ft", rvalue.ParseLength)
	if p.Toward != ToGround {
		return
	}
	if p.Kind == Slab || p.Kind == BasementFloor {
		s.missing("perimeter", `the length of the edge toward outdoors is missing; write such as perimeter = "140 ft"`)
	}
	if p.Kind == BasementFloor || p.Kind == BasementWall || p.Kind == CrawlWall {
		s.missing("depth", `how deep the floor lies below ground is missing; write such as depth = "6 ft"`)
	}
	if p.Kind == BasementFloor {
		d.filled(s.path("walls above"), rvalue.Both(basementWall)+" thick", "of the walls on the floor's edge; it changes the answer by a few percent at most")
		if p.Assembly == nil && p.U == 0 {
			d.filled(s.path("assembly"), "bare", "none is given")
		}
	}
}

func (d *decoder) edge(e *section, p *Part) {
	reaches := slices.Collect(envelope.SlabReaches())
	words := make([]string, len(reaches))
	for i, r := range reaches {
		words[i] = r.Words
	}
	if i, ok := e.choice("reach", words); ok {
		p.Edge.Reach, p.Edge.Depth = reaches[i].Words, reaches[i].Depth
	}
	e.missing("reach", "how far the insulation reaches is missing; write reach = %s", either(words))
	p.Edge.R, _ = quantity(e, "resistance", "R-10", rvalue.ParseResistance)
	if p.Edge.Reach == "none" {
		if e.has("resistance") {
			e.fail("resistance", "insulation that reaches nowhere resists nothing; leave this out, or write how far it reaches")
		}
	} else {
		e.missing("resistance", `what it resists is missing; write such as resistance = "R-10"`)
	}
	e.done()
}

// envelopeKind is the envelope's word for a kind of part.
var envelopeKind = [...]envelope.Kind{
	Wall: envelope.Wall, MassWall: envelope.Wall, Ceiling: envelope.Ceiling, Roof: envelope.Roof, Floor: envelope.Floor,
	BasementWall: envelope.BasementWall, CrawlWall: envelope.CrawlWall, BasementFloor: envelope.BasementFloor, Slab: envelope.Slab,
}
