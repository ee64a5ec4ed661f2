package house

import (
	"fmt"
	"slices"
	"strings"

	solver "github.com/coldseam/coldseam/assembly/section"
	"github.com/coldseam/coldseam/rvalue"
	"github.com/coldseam/coldseam/rvalue/airspace"
	"github.com/coldseam/coldseam/rvalue/material"
	"github.com/coldseam/coldseam/rvalue/surface"
)

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
		p.Basis = fmt.Sprintf("%s across its shorter side, %s", rvalue.Both(r), rvalue.Both(shorter))
		d.filled(s.path("conductivity"), rvalue.Both(p.Conductivity), p.Basis)
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
		d.filled(key, rvalue.Both(p.Conductivity), sourceOf(m))
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
		rvalue.Both(r), ways[way], rvalue.Both(space.Thickness), rvalue.Both(spaceMean), rvalue.Both(spaceDifference), spaceSource[method])
	d.filled(s.path("conductivity"), rvalue.Both(p.Conductivity), p.Basis)
}

var spaceSource = map[airspace.Method]string{
	airspace.Correlated: "curves fitted to the plane-air-space table of ASHRAE Handbook—Fundamentals",
	airspace.ISO6946:    "ISO 6946, annex on airspaces",
}
