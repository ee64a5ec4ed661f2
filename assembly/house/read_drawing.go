package house

import (
	"fmt"
	"strconv"
	"strings"

	solver "github.com/coldseam/coldseam/assembly/section"
	"github.com/coldseam/coldseam/rvalue"
	"github.com/coldseam/coldseam/rvalue/surface"
)

// maxDrawn bounds the pieces, faces, flanks and points of a drawing.
const maxDrawn = 200

// drawing reads the whole tree into dr.
func (d *decoder) drawing(dr *Drawing, root *table) {
	s := &section{d: d, t: root}
	ok := false
	if dr.Name, ok = s.text("name"); !ok {
		dr.Name = "unnamed section"
	}
	dr.Name = strings.Join(strings.Fields(dr.Name), " ")
	dr.Notes, _ = s.text("notes")
	dr.Units = rvalue.IP
	if i, ok := s.choice("units", []string{"ip", "si"}); ok && i == 1 {
		dr.Units = rvalue.SI
	}
	if i, ok := s.choice("films", filmSets); ok {
		dr.Films = filmSet[i]
	}
	d.materials(s)
	d.drawn(s, dr)
	s.done()
	dr.Materials, dr.Defaults = d.h.Materials, d.h.Defaults
}

var (
	filmSets = []string{"ashrae", "iso 6946"}
	filmSet  = []surface.Set{surface.ASHRAE, surface.ISO6946}
)

// drawn reads what is drawn: the same keys in a file of its own and in a
// house's [section.NAME].
func (d *decoder) drawn(s *section, dr *Drawing) {
	before := len(d.errs)
	d.airs(s, dr)
	d.pieces(s, dr)
	d.faces(s, dr)
	flanks := d.list(s, "flank")
	for n, t := range d.list(s, "point") {
		p, name := d.drawnItem(s, t, "point", n)
		x, y := p.coordinate("x"), p.coordinate("y")
		p.done()
		dr.Points = append(dr.Points, &DrawnPoint{Name: name, At: solver.Point{X: x, Y: y}})
	}
	if !s.has("piece") && !s.t.partial {
		s.missing("piece", "nothing is drawn; write a [[%spiece]] for each rectangle, with its material, x and y", s.header())
	}
	if !s.has("face") && !s.t.partial {
		s.missing("face", "the faces are missing, where heat enters and leaves; write a [[%sface]] for each, with its air, x and y", s.header())
	}
	var o *overlay
	if len(d.errs) == before && len(dr.Pieces) > 0 && len(dr.Faces) > 0 {
		o = d.assemble(s, dr)
	}
	for n, t := range flanks {
		f, name := d.drawnItem(s, t, "flank", n)
		d.flank(f, dr, name, o)
		f.done()
	}
	if o != nil && len(d.errs) == before {
		d.flankLengths(s, dr, flanks, o)
	}
}

// header is what stands before the name of a table inside this one.
func (s *section) header() string {
	kind, called, ok := strings.Cut(s.where, " ")
	if !ok {
		return ""
	}
	if text, err := strconv.Unquote(called); err == nil {
		called = text
	}
	return join([]name{{kind, 0}, {called, 0}}) + "."
}

// list returns the tables of a list of what is drawn.
func (d *decoder) list(s *section, key string) []*table {
	tables := s.tables(key)
	if len(tables) > maxDrawn {
		d.fail(tables[maxDrawn].at, s.path(key), "more than %d; draw it more simply", maxDrawn)
		tables = tables[:maxDrawn]
	}
	if key != "piece" { // of pieces the name is the material's
		d.distinct(s, key, tables)
	}
	return tables
}

// distinct refuses a name that another of a list has.
func (d *decoder) distinct(s *section, what string, tables []*table) {
	seen := map[string]int{}
	for n, t := range tables {
		e := t.index["name"]
		if e == nil || e.value.kind != text {
			continue
		}
		called := strings.Join(strings.Fields(e.value.text), " ")
		if first, ok := seen[called]; ok && called != "" {
			d.fail(e.value.at, s.inside(fmt.Sprintf("%s %d: name", what, n+1)), "%s %d is called %q too; give each a name of its own", what, first, called)
			continue
		}
		seen[called] = n + 1
	}
}

// drawnItem opens the n-th table of a list; a name is read and need not be there.
func (d *decoder) drawnItem(in *section, t *table, what string, n int) (*section, string) {
	name := fmt.Sprintf("%s %d", what, n+1)
	s := &section{d: d, t: t, where: in.inside(name)}
	if text, ok := s.text("name"); ok {
		name = strings.Join(strings.Fields(text), " ")
		s.where = in.inside(fmt.Sprintf("%s %q", what, name))
	}
	return s, name
}

// inside is how messages name a table inside this one.
func (s *section) inside(name string) string {
	if s.where == "" {
		return name
	}
	return strings.TrimSuffix(s.where, ".") + ": " + name
}

// airs reads the [air.NAME] tables.
func (d *decoder) airs(s *section, dr *Drawing) {
	for _, e := range s.named("air") {
		t := &section{d: d, t: e.value.table, where: s.inside(fmt.Sprintf("air %q", e.key))}
		a := &Air{Name: e.key}
		dr.Airs = append(dr.Airs, a)
		if v, ok := quantity(t, "temperature", "68 °F", rvalue.ParseTemperature); ok {
			if a.Temperature = v; v < coldestAir || v > hottestAir {
				t.fail("temperature", "%s is no air at a building; write one from %s to %s", rvalue.Both(v), rvalue.Both(coldestAir), rvalue.Both(hottestAir))
			}
		}
		t.missing("temperature", `its temperature is missing; write such as temperature = "68 °F"`)
		a.Film, a.filmed = d.film(t, dr.Films)
		t.done()
	}
	if !s.has("air") {
		s.missing("air", `the air on both sides is missing; write such as air.indoors = { temperature = "68 °F", film = "wall" } and air.outdoors = { temperature = "0 °F", film = "wind" }`)
	}
}

// The air that a drawing may have about it.
var (
	coldestAir = rvalue.FromCelsius(-90)
	hottestAir = rvalue.FromCelsius(90)
)

// filmWords are the films that can be written as words.
var filmWords = []string{"wall", "ceiling", "floor", "wind", "none"}

// film reads the film of a surface: a resistance, or a word for a published one.
func (d *decoder) film(s *section, set surface.Set) (film rvalue.Resistance, given bool) {
	e := s.get("film")
	if e == nil {
		return 0, s.has("film")
	}
	if e.value.kind == text && !strings.ContainsAny(e.value.text, "0123456789") {
		i, ok := s.choice("film", filmWords)
		if !ok {
			return 0, true
		}
		var err error
		switch word := filmWords[i]; word {
		case "none":
			d.filled(s.path("film"), "none", "the surface itself has the temperature of the air")
			return 0, true
		case "wind":
			film, err = surface.Outside(set, 0)
		default:
			film, err = surface.Still(set, map[string]float64{"wall": 90}[word], word == "ceiling", 0)
		}
		if err != nil {
			s.fail("film", "%s", plain(err))
		}
		d.filled(s.path("film"), rvalue.Both(film), fmt.Sprintf("that of %s by %s", map[string]string{
			"wall": "still air at a wall", "ceiling": "still air at a ceiling, heat flowing up", "floor": "still air at a floor, heat flowing down",
			"wind": "the winter wind",
		}[filmWords[i]], set))
		return film, true
	}
	film, _ = quantity(s, "film", "R-0.68", rvalue.ParseResistance)
	return film, true
}
