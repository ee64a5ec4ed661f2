package house

import (
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"github.com/coldseam/coldseam/assembly"
	solver "github.com/coldseam/coldseam/assembly/section"
	"github.com/coldseam/coldseam/rvalue"
	"github.com/coldseam/coldseam/rvalue/airspace"
	"github.com/coldseam/coldseam/rvalue/material"
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
				t.fail("temperature", "%s is no air at a building; write one from %s to %s", both(v), both(coldestAir), both(hottestAir))
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
		d.filled(s.path("film"), both(film), fmt.Sprintf("that of %s by %s", map[string]string{
			"wall": "still air at a wall", "ceiling": "still air at a ceiling, heat flowing up", "floor": "still air at a floor, heat flowing down",
			"wind": "the winter wind",
		}[filmWords[i]], set))
		return film, true
	}
	film, _ = quantity(s, "film", "R-0.68", rvalue.ParseResistance)
	return film, true
}

// pieces reads the [[piece]] tables.
func (d *decoder) pieces(s *section, dr *Drawing) {
	for n, t := range d.list(s, "piece") {
		p, name := d.drawnItem(s, t, "piece", n)
		piece := &DrawnPiece{Name: name, at: t.at}
		ok := true
		if piece.From, piece.To, ok = p.rectangle(); ok {
			dr.Pieces = append(dr.Pieces, piece)
		}
		d.substance(p, dr, piece, ok)
		p.done()
	}
}

// rectangle reads x and y, each from and to.
func (s *section) rectangle() (from, to solver.Point, ok bool) {
	x, okX := s.span("x")
	y, okY := s.span("y")
	s.missing("x", `where it stands is missing; write from where to where, such as x = ["0 in", "3 1/2 in"]`)
	s.missing("y", `where it stands is missing; write from where to where, such as y = ["0 in", "8 ft"]`)
	single := func(key string, at []rvalue.Length) bool {
		if len(at) == 1 {
			s.fail(key, `a single place; a piece goes from one to another, %s = ["0 in", "3 1/2 in"]`, key)
		}
		return len(at) == 1
	}
	if single("x", x) || single("y", y) || !okX || !okY {
		return from, to, false
	}
	return solver.Point{X: x[0], Y: y[0]}, solver.Point{X: x[1], Y: y[1]}, true
}

// substance reads what a piece is made of.
func (d *decoder) substance(s *section, dr *Drawing, p *DrawnPiece, sized bool) {
	shorter := min(p.To.X-p.From.X, p.To.Y-p.From.Y)
	if text, ok := s.text("material"); ok {
		d.drawnMaterial(s, p, text)
	}
	if k, ok := quantity(s, "conductivity", "0.040 W/(m·K)", rvalue.ParseConductivity); ok {
		p.Conductivity, p.Basis = k, "as given"
	}
	if r, ok := quantity(s, "resistance", "R-13", rvalue.ParseResistance); ok && sized {
		p.Conductivity = rvalue.Conductivity(float64(shorter) / float64(r))
		p.Basis = fmt.Sprintf("%s across its shorter side, %s", both(r), both(shorter))
		d.filled(s.path("conductivity"), both(p.Conductivity), p.Basis)
	}
	if i, ok := s.choice("air_space", ways); ok && sized {
		d.airSpace(s, dr, p, i)
	}
	s.oneOf("what it is made of", []string{"material", "conductivity", "resistance", "air_space"})
}

// drawnMaterial takes a piece's conductivity from the catalogue.
func (d *decoder) drawnMaterial(s *section, p *DrawnPiece, text string) {
	if !s.has("name") {
		p.Name = strings.Join(strings.Fields(text), " ")
	}
	m, err := d.catalogue.Find(text)
	if err != nil {
		s.fail("material", "%s", plain(err))
		return
	}
	switch {
	case m.Conductivity > 0:
		p.Conductivity = m.Conductivity
	case m.Scalable && len(m.Sizes) > 0 && m.Sizes[0].Thickness > 0:
		p.Conductivity = rvalue.Conductivity(float64(m.Sizes[0].Thickness) / float64(m.Sizes[0].R))
	default:
		s.fail("material", "%s is known by the piece only, not by a conductivity; write the resistance of this one, such as resistance = \"R-1\"", quoted(m.Name))
		return
	}
	p.Basis = m.Name + ", " + sourceOf(m)
	key := "conductivity of " + m.Name
	own := slices.ContainsFunc(d.h.Materials, func(o *material.Material) bool { return o.Name == m.Name })
	if !own && !slices.ContainsFunc(d.h.Defaults, func(f Default) bool { return f.Key == key }) {
		d.filled(key, both(p.Conductivity), sourceOf(m))
	}
}

// sourceOf cites the source of a material's thermal figure.
func sourceOf(m *material.Material) string {
	key, _, _ := strings.Cut(m.Source, "+")
	if c, ok := material.Citation(key); ok {
		return c
	}
	return m.Source
}

// ways are those that heat can cross an air space.
var ways = []string{"sideways", "up", "down"}

// Temperatures at which air spaces of a drawing are taken: the usual column of the
// handbook's table, near the design values of ISO 6946.
var (
	spaceMean       = rvalue.FromFahrenheit(50)
	spaceDifference = 10 * rvalue.FahrenheitDegree
)

// airSpace gives a piece the conductivity that carries as much heat as the air in it
// does, by convection and radiation (ISO 10211, equivalent thermal conductivity).
func (d *decoder) airSpace(s *section, dr *Drawing, p *DrawnPiece, way int) {
	x, y := p.To.X-p.From.X, p.To.Y-p.From.Y
	space := airspace.Space{Thickness: min(x, y), Width: max(x, y), Tilt: 90}
	if way > 0 {
		space = airspace.Space{Thickness: y, Width: x, Up: ways[way] == "up"}
	}
	method := airspace.Correlated
	if dr.Films == surface.ISO6946 {
		method = airspace.ISO6946
	}
	r, err := space.Resistance(method, spaceMean, spaceDifference)
	if err != nil {
		s.fail("air_space", "%s", plain(err))
		return
	}
	p.Conductivity = rvalue.Conductivity(float64(space.Thickness) / float64(r))
	p.Basis = fmt.Sprintf("an air space that resists %s, heat flowing %s across %s, ordinary faces, at a mean of %s and a difference of %s (%s)",
		both(r), ways[way], both(space.Thickness), both(spaceMean), both(spaceDifference), spaceSource[method])
	d.filled(s.path("conductivity"), both(p.Conductivity), p.Basis)
}

var spaceSource = map[airspace.Method]string{
	airspace.Correlated: "curves fitted to the plane-air-space table of ASHRAE Handbook—Fundamentals",
	airspace.ISO6946:    "ISO 6946, annex on airspaces",
}

// faces reads the [[face]] tables.
func (d *decoder) faces(s *section, dr *Drawing) {
	for n, t := range d.list(s, "face") {
		f, name := d.drawnItem(s, t, "face", n)
		face := &Face{Name: name}
		if yes, ok := f.flag("adiabatic"); ok && !yes {
			f.fail("adiabatic", "write true, or leave this out")
		}
		face.Adiabatic = f.has("adiabatic")
		face.Air = lookup(f, "air", "air", dr.Airs, func(a *Air) string { return a.Name })
		f.oneOf("what it faces", []string{"air", "adiabatic"})
		film, own := d.film(f, dr.Films)
		switch a := face.Air; {
		case face.Adiabatic && own:
			f.fail("film", "no heat passes here, so no film counts; leave this out")
		case own:
			face.Film = film
		case a != nil && a.filmed:
			face.Film = a.Film
		case a != nil:
			f.missing("film", `its film is missing, and air %q has none either; write such as film = "R-0.68", or one of %s`, a.Name, either(filmWords))
		}
		if face.Air != nil && !f.has("name") {
			face.Name = face.Air.Name
		}
		x, okX := f.span("x")
		y, okY := f.span("y")
		f.missing("x", `where it runs is missing; write one of x and y as a single place, such as x = "8 in", y = ["0 in", "4 ft"]`)
		f.missing("y", `where it runs is missing; write one of x and y as a single place, such as x = ["0 in", "4 ft"], y = "8 in"`)
		if okX && okY {
			if len(x)+len(y) != 3 {
				f.fail("y", `a face is a straight line along x or along y: write one of them as a single place, the other as from and to, such as x = "8 in", y = ["0 in", "4 ft"]`)
			}
			face.From, face.To = solver.Point{X: x[0], Y: y[0]}, solver.Point{X: x[len(x)-1], Y: y[len(y)-1]}
		}
		f.done()
		dr.Faces = append(dr.Faces, face)
	}
}

// span reads where something stands along x or y: a single place, or from and to,
// the lower first in what is returned.
func (s *section) span(key string) (at []rvalue.Length, ok bool) {
	e := s.get(key)
	if e == nil {
		return nil, false
	}
	if e.value.kind != array {
		v, ok := quantity(s, key, "8 in", coordinate)
		return []rvalue.Length{v}, ok
	}
	bare := false
	for _, item := range e.value.items {
		if item.kind == integer || item.kind == float {
			bare = true
			s.d.fail(item.at, s.path(key), "%s without a unit; write it with its unit, in quotes: %q", item.raw, withUnit(item.raw, "8 in"))
		}
	}
	if bare {
		return nil, false
	}
	texts := s.texts(key)
	if len(texts) != len(e.value.items) {
		return nil, false // reported
	}
	if len(texts) != 2 {
		s.fail(key, `%d places; write two, from and to, such as %s = ["0 in", "3 1/2 in"]`, len(texts), key)
		return nil, false
	}
	for i, text := range texts {
		v, err := coordinate(text)
		if err != nil {
			s.itemError(key, i, text, err)
			return nil, false
		}
		at = append(at, v)
	}
	if near(float64(at[0]), float64(at[1])) {
		s.fail(key, "from %s to %s is no distance; write two places", quoted(texts[0]), quoted(texts[1]))
		return nil, false
	}
	slices.Sort(at)
	return at, true
}

// itemError reports an error in a text of a list.
func (s *section) itemError(key string, i int, text string, err error) {
	msg := plain(err)
	var q *rvalue.ParseError
	if errors.As(err, &q) {
		msg = quoted(text) + ": " + q.Msg
	}
	s.d.fail(s.t.index[key].value.items[i].at, s.path(key), "%s", msg)
}

// coordinate reads a single place along x or y, which must be there.
func (s *section) coordinate(key string) rvalue.Length {
	v, _ := quantity(s, key, "8 in", coordinate)
	s.missing(key, `its %s is missing; write such as %s = "8 in"`, key, key)
	return v
}

// coordinate reads a length that may be nothing or negative.
func coordinate(text string) (rvalue.Length, error) {
	trimmed := strings.TrimSpace(text)
	if strings.HasPrefix(trimmed, "0 ") && !strings.ContainsAny(trimmed[2:], "0123456789") {
		_, err := rvalue.ParseLength("1" + trimmed[1:]) // the unit is to be one
		if err == nil {
			return 0, nil
		}
	}
	negative, positive := false, text
	for _, minus := range []string{"-", "−"} {
		if rest, ok := strings.CutPrefix(trimmed, minus); ok {
			negative, positive = true, rest
		}
	}
	v, err := rvalue.ParseLength(positive)
	if err == nil && v > farthest {
		return 0, &rvalue.ParseError{Text: text, Msg: fmt.Sprintf("no building part is so large; write a place within %s", both(farthest))}
	}
	var q *rvalue.ParseError
	if errors.As(err, &q) {
		return 0, &rvalue.ParseError{Text: text, Offset: q.Offset + len(text) - len(positive), Msg: q.Msg}
	}
	if negative {
		v = -v
	}
	return v, err
}

const farthest = 100 * rvalue.Metre

// assemble lays the pieces over each other, holds the faces against their
// outline, and reports what makes the section impossible to solve.
func (d *decoder) assemble(s *section, dr *Drawing) *overlay {
	o := newOverlay(dr.Pieces, dr.Faces)
	before := len(d.errs)
	for n, p := range dr.Pieces {
		if !slices.Contains(o.top, n) {
			d.fail(p.at, s.inside(fmt.Sprintf("piece %q", p.Name)), "later pieces cover all of it; draw it behind them in the file, or leave it out")
		}
	}
	var taken []*Face
	for n, t := range s.tables("face")[:len(dr.Faces)] {
		d.onSurface(t.at, s.inside(fmt.Sprintf("face %q", dr.Faces[n].Name)), dr.Faces[n], taken, o)
		taken = append(taken, dr.Faces[n])
	}
	for n, t := range s.tables("point") {
		if n < len(dr.Points) && !o.holds(dr.Points[n].At) {
			d.fail(t.at, s.inside(fmt.Sprintf("point %q", dr.Points[n].Name)), "it lies in no piece")
		}
	}
	var whole []solver.Piece
	for _, p := range dr.Pieces {
		whole = append(whole, solver.Piece{Name: p.Name, From: p.From, To: p.To, Conductivity: p.Conductivity})
	}
	var drawn []int
	dr.Section.Pieces, drawn = solver.Overlay(whole)
	for _, f := range dr.Faces {
		b := solver.Boundary{Name: f.Name, From: f.From, To: f.To, Adiabatic: f.Adiabatic}
		if f.Air != nil {
			b.Air, b.Film = f.Air.Temperature, f.Film
		}
		dr.Section.Boundaries = append(dr.Section.Boundaries, b)
	}
	if len(d.errs) == before {
		if err := dr.Section.Check(); err != nil {
			at := s.get("piece").at
			if m := firstPiece.FindStringSubmatch(err.Error()); m != nil {
				n, _ := strconv.Atoi(m[1])
				at = dr.Pieces[drawn[n-1]].at
			}
			d.fail(at, strings.TrimSuffix(s.where, "."), "%s", asDrawn(plain(err)))
		}
	}
	return o
}

// How package section names a piece, by its number among the cut ones, which the
// file does not know, and a place, in metres.
var (
	firstPiece = regexp.MustCompile(`^section: piece (\d+) `)
	drawnPiece = regexp.MustCompile(`piece \d+ `)
	somePlace  = regexp.MustCompile(`\(([-0-9.e]+), ([-0-9.e]+)\) m`)
)

// asDrawn says a mistake that package section found in the words of the drawing.
func asDrawn(msg string) string {
	msg = strings.NewReplacer("beside material that faces no boundary there", "where the material has no face", "boundaries", "faces", "boundary", "face").Replace(drawnPiece.ReplaceAllString(msg, "piece "))
	return somePlace.ReplaceAllStringFunc(msg, func(place string) string {
		m := somePlace.FindStringSubmatch(place)
		var at [2]string
		for i := range at {
			v, err := strconv.ParseFloat(m[i+1], 64)
			if err != nil {
				return place
			}
			at[i] = both(rvalue.Length(v))
		}
		return fmt.Sprintf("x = %s, y = %s", at[0], at[1])
	})
}

// onSurface holds a face against the outline and the faces before it.
func (d *decoder) onSurface(at int, key string, f *Face, before []*Face, o *overlay) {
	stretches := o.along(f.From, f.To)
	on := 0
	for _, s := range stretches {
		if s.surface() {
			on++
		}
	}
	for _, s := range stretches {
		switch {
		case s.surface():
		case on > 0:
			where := "beside the drawing"
			if s.sides[0] >= 0 {
				where = "inside the material"
			}
			d.fail(at, key, "only a part of it lies on the surface: from %s to %s it runs %s; end it where the surface ends", both(s.from), both(s.to), where)
			return
		case s.sides[0] >= 0:
			d.fail(at, key, "it runs inside the material; a face lies where the material ends")
			return
		default:
			d.fail(at, key, "no piece has an edge there; a face lies where the material ends")
			return
		}
	}
	for _, b := range before {
		if f.crosses(b) {
			d.fail(at, key, "it covers what face %q covers already; end one where the other begins", b.Name)
			return
		}
	}
}

// crosses reports whether two faces share more than a point.
func (f *Face) crosses(g *Face) bool {
	overlap := func(a, b, c, e rvalue.Length) float64 { return float64(min(b, e) - max(a, c)) }
	x := overlap(f.From.X, f.To.X, g.From.X, g.To.X)
	y := overlap(f.From.Y, f.To.Y, g.From.Y, g.To.Y)
	level := func(f *Face) bool { return near(float64(f.From.Y), float64(f.To.Y)) }
	if level(f) != level(g) {
		return false
	}
	if level(f) {
		return x > edge && y > -edge
	}
	return y > edge && x > -edge
}

// holds reports whether a point lies in a piece or on its edge.
func (o *overlay) holds(at solver.Point) bool {
	x, y := float64(at.X), float64(at.Y)
	for j := range o.rows() {
		for i := range o.columns() {
			if o.at(i, j) >= 0 && x >= o.xs[i]-edge && x <= o.xs[i+1]+edge && y >= o.ys[j]-edge && y <= o.ys[j+1]+edge {
				return true
			}
		}
	}
	return false
}

// flank reads a plain part beside the bridge.
func (d *decoder) flank(s *section, dr *Drawing, name string, o *overlay) {
	f := &Flank{Name: name}
	dr.Flanks = append(dr.Flanks, f)
	f.U, _ = quantity(s, "u", "U-0.060", someU)
	x, okX := s.span("x")
	y, okY := s.span("y")
	text, layered := s.text("layers")
	facing, faced := s.text("faces")
	ways := []string{"u", "layers", "x", "y"}
	if d.what == "house" {
		ways = append(ways, "assembly")
		d.flankAssembly(s, f)
	}
	s.oneOf("what it lets through", ways)
	switch {
	case layered:
		s.missing("faces", `what it faces is missing, which decides its films; write faces = "wall", "ceiling", "floor" or "roof"`)
		if faced {
			d.flankLayers(s, dr, f, text, facing)
		}
	case faced:
		s.fail("faces", "this goes with layers; leave it out")
	case o == nil: // mistakes are known
	case okX && len(x) == 1:
		d.flankCut(s, "x", x[0], dr, f, o)
	case okY && len(y) == 1:
		d.flankCut(s, "y", y[0], dr, f, o)
	case okX || okY:
		key := "x"
		if okY {
			key = "y"
		}
		s.fail(key, `a straight cut is at a single place, such as %s = "8 in"`, key)
	}
	f.Internal, _ = quantity(s, "internal", "4 ft", rvalue.ParseLength)
	f.External, _ = quantity(s, "external", "4 ft 6 in", rvalue.ParseLength)
	if !s.has("internal") && !s.has("external") {
		s.missing("", `its length in the section is missing; write internal = "4 ft" or external = "4 ft 6 in", by the dimensions that areas are taken with, or both`)
	}
	if o != nil && len(airsOf(dr)) > 2 {
		d.fail(s.t.at, s.where, "a linear transmittance is between two temperatures, and the faces here have %d; leave the flanks out", len(airsOf(dr)))
	}
}

// airsOf returns the temperatures that faces have.
func airsOf(dr *Drawing) []rvalue.Temperature {
	var out []rvalue.Temperature
	for _, f := range dr.Faces {
		if f.Air != nil && !slices.Contains(out, f.Air.Temperature) {
			out = append(out, f.Air.Temperature)
		}
	}
	return out
}

func (d *decoder) flankLayers(s *section, dr *Drawing, f *Flank, text, facing string) {
	set := assembly.Setting{Films: dr.Films}
	var err error
	if set.Faces, err = assembly.ParseFacing(facing); err != nil {
		s.fail("faces", "%s", plain(err))
		return
	}
	spec, err := assembly.Parser{Catalogue: d.catalogue}.Parse(text)
	if err != nil {
		s.textError("layers", err)
		return
	}
	r, err := spec.Evaluate(set)
	if err != nil {
		s.textError("layers", err)
		return
	}
	f.U = r.Effective.U()
	d.filled(s.path("u"), both(f.U), fmt.Sprintf("of its layers, by %s, with the films of a %s by %s", r.Effective.Method, set.Faces, set.Films))
}

// flankCut sums the pieces and films on a straight cut.
func (d *decoder) flankCut(s *section, key string, at rvalue.Length, dr *Drawing, f *Flank, o *overlay) {
	r, msg := o.through(key == "x", at, dr)
	if msg != "" {
		s.fail(key, "%s", msg)
		return
	}
	f.U = r.U()
	d.filled(s.path("u"), both(f.U), fmt.Sprintf("of the pieces and films at %s = %s", key, both(at)))
}

// through returns the resistance from air to air along a straight cut, or what is
// wrong with it.
func (o *overlay) through(upright bool, at rvalue.Length, dr *Drawing) (rvalue.Resistance, string) {
	across, along := o.ys, o.xs // edges that the cut lies between, and that it crosses
	if upright {
		across, along = o.xs, o.ys
	}
	field := func(i, j int) int {
		if upright {
			return o.at(j, i)
		}
		return o.at(i, j)
	}
	strip := func(j int) []int {
		out := make([]int, len(along)-1)
		for i := range out {
			out[i] = field(i, j)
		}
		return out
	}
	v := float64(at)
	var strips [][]int
	for j := range len(across) - 1 {
		if v >= across[j]-edge && v <= across[j+1]+edge {
			strips = append(strips, strip(j))
		}
	}
	if len(strips) == 0 {
		return 0, "no piece is there; cut the drawing where it shows the plain part"
	}
	if len(strips) == 2 && !slices.Equal(strips[0], strips[1]) {
		return 0, "pieces end right there; cut the drawing beside that, where it shows the plain part"
	}
	row := strips[0]
	from := slices.IndexFunc(row, func(n int) bool { return n >= 0 })
	if from < 0 {
		return 0, "no piece is there; cut the drawing where it shows the plain part"
	}
	to := from
	r := 0.0
	for to < len(row) && row[to] >= 0 {
		r += (along[to+1] - along[to]) / float64(dr.Pieces[row[to]].Conductivity)
		to++
	}
	if slices.ContainsFunc(row[to:], func(n int) bool { return n >= 0 }) {
		return 0, "the cut leaves the material and enters it again; cut the drawing where it shows the plain part alone"
	}
	var ends [2]*Face
	for n, edge := range []float64{along[from], along[to]} {
		for _, f := range dr.Faces {
			if f.meets(upright, at, rvalue.Length(edge)) {
				ends[n] = f
			}
		}
		if ends[n] == nil || ends[n].Air == nil {
			return 0, "the cut does not go from one face to another; cut the drawing where it shows the plain part"
		}
	}
	if ends[0].Air.Temperature == ends[1].Air.Temperature {
		return 0, "the cut goes from one air to the same; cut the drawing where it shows the plain part"
	}
	return rvalue.Resistance(r) + ends[0].Film + ends[1].Film, ""
}

// meets reports whether a cut at a place ends on the face, at an edge.
func (f *Face) meets(upright bool, at, end rvalue.Length) bool {
	from, to := f.From, f.To
	if upright { // the cut runs along y
		return near(float64(from.Y), float64(to.Y)) && near(float64(from.Y), float64(end)) && at >= from.X-edge*rvalue.Metre && at <= to.X+edge*rvalue.Metre
	}
	return near(float64(from.X), float64(to.X)) && near(float64(from.X), float64(end)) && at >= from.Y-edge*rvalue.Metre && at <= to.Y+edge*rvalue.Metre
}
