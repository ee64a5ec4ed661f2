package house

import (
	"errors"

	"github.com/coldseam/coldseam/assembly/window"
	"github.com/coldseam/coldseam/rvalue"
)

// order reads what an order sheet needs of an opening: readings of the place of a pane
// or unit, where it is in the room, and whether it is a way out.
func (d *decoder) order(s *section, o *Opening) {
	if m := s.sub("measured"); m != nil {
		o.Measured = &window.Opening{}
		widths, heights := m.lengths("widths", 3), m.lengths("heights", 3)
		copy(o.Measured.Widths[:], widths)
		copy(o.Measured.Heights[:], heights)
		m.missing("widths", `its widths are missing, read near the top, in the middle and near the bottom; write such as widths = [ "30 1/4 in", "30 1/8 in", "30 1/4 in" ]`)
		m.missing("heights", `its heights are missing, read near both sides and in the middle; write such as heights = [ "46 1/2 in", "46 1/2 in", "46 3/8 in" ]`)
		copy(o.Measured.Diagonals[:], m.lengths("diagonals", 2))
		o.Measured.Clearance, _ = quantity(m, "clearance", "1/8 in", rvalue.ParseLength)
		m.done()
	}
	if t := s.sub("site"); t != nil {
		o.Site = d.where(t)
		t.done()
	}
	if t := s.sub("escape"); t != nil {
		o.Escape = &window.Escape{}
		if text, ok := t.text("clear"); ok {
			var err error
			if o.Escape.Width, o.Escape.Height, err = rvalue.ParseSize(text); err != nil {
				t.textError("clear", err)
			}
		}
		t.missing("clear", `the opening that stays clear with the window open is missing; write such as clear = "22 in x 36 in"`)
		o.Escape.Sill, _ = quantity(t, "sill", "40 in", orNothing)
		t.missing("sill", `the height of its sill above the floor is missing; write such as sill = "40 in"`)
		o.Escape.Grade, _ = t.flag("grade")
		t.done()
	}
}

// where reads where a pane is, for what the residential code says of it.
func (d *decoder) where(t *section) *window.Place {
	p := &window.Place{}
	p.Bottom, _ = quantity(t, "sill", "10 in", orNothing)
	t.missing("sill", `how high the lowest edge of the glass is above the floor is missing; write such as sill = "10 in"`)
	p.Walking, _ = quantity(t, "walkway", "24 in", orNothing)
	p.Rail, _ = t.flag("rail")
	p.Guard, _ = t.flag("guard")
	if v, ok := quantity(t, "door", "12 in", orNothing); ok {
		p.BesideDoor = &window.BesideDoor{Distance: v}
	}
	if v, ok := quantity(t, "bath", "40 in", orNothing); ok {
		p.Wet = &window.Wet{Distance: v, Above: p.Bottom, Facing: true}
	}
	if v, ok := quantity(t, "stairs", "30 in", orNothing); ok {
		p.Stair = &window.Stair{Distance: v, Above: p.Bottom}
	}
	if v, ok := quantity(t, "landing", "40 in", orNothing); ok {
		p.Landing = &window.Stair{Distance: v, Above: p.Bottom}
	}
	return p
}

// orNothing reads a length that may be nothing at all, "0 in".
func orNothing(text string) (rvalue.Length, error) {
	switch text {
	case "0 in", "0 ft", "0 mm", "0 cm", "0 m":
		return 0, nil
	}
	return rvalue.ParseLength(text)
}

// lengths reads a list of so many lengths.
func (s *section) lengths(key string, n int) []rvalue.Length {
	texts := s.texts(key)
	if texts == nil {
		return nil
	}
	if len(texts) != n {
		s.fail(key, "%d readings; write %d", len(texts), n)
		return nil
	}
	out := make([]rvalue.Length, n)
	for i, text := range texts {
		v, err := rvalue.ParseLength(text)
		if err != nil {
			at, msg := s.t.index[key].value.items[i].at, plain(err)
			var q *rvalue.ParseError
			if errors.As(err, &q) {
				msg = quoted(text) + ": " + q.Msg
			}
			s.d.fail(at, s.path(key), "%s", msg)
			return nil
		}
		out[i] = v
	}
	return out
}
