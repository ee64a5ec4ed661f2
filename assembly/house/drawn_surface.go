package house

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	solver "github.com/coldseam/coldseam/assembly/section"
	"github.com/coldseam/coldseam/rvalue"
)

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
			at[i] = rvalue.Both(rvalue.Length(v))
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
			d.fail(at, key, "only a part of it lies on the surface: from %s to %s it runs %s; end it where the surface ends", rvalue.Both(s.from), rvalue.Both(s.to), where)
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
