package house

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	solver "github.com/coldseam/coldseam/assembly/section"
	"github.com/coldseam/coldseam/rvalue"
)

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
		return 0, &rvalue.ParseError{Text: text, Msg: fmt.Sprintf("no building part is so large; write a place within %s", rvalue.Both(farthest))}
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
