package house

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"github.com/coldseam/coldseam/assembly/envelope"
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
		switch e := o.Escape; {
		case o.Window != nil && !o.Window.Operable && o.Window.Kind != envelope.Door:
			s.fail("escape", "window %q does not open, so that nobody gets out by it; leave this out, or write operable = true", o.Window.Name)
		case o.Width > 0 && (e.Width > o.Width || e.Height > o.Height):
			t.fail("clear", "%s x %s stay clear of a window of %s x %s; write what is free when it stands open", rvalue.Both(e.Width), rvalue.Both(e.Height), rvalue.Both(o.Width), rvalue.Both(o.Height))
		}
		o.Escape.Grade, _ = t.flag("grade")
		t.done()
	}
}

// fits holds the readings of a place against the window that it is in.
func (d *decoder) fits(s *section, o *Opening, whole *window.Whole) {
	m, b := o.Measured, o.Window.Built
	if m == nil || b == nil {
		return
	}
	for _, g := range b.Window.Glazing.Units() {
		if g.Panes[0].Storm {
			continue
		}
		if _, err := g.Order(*m); err != nil {
			s.fail("measured", "%s", plain(err))
			return
		}
	}
	width, height := min(m.Widths[0], m.Widths[1], m.Widths[2]), min(m.Heights[0], m.Heights[1], m.Heights[2])
	if o.Width > 0 && (width > o.Width || height > o.Height) {
		s.fail("measured", "the place of a pane, %s x %s, is larger than its window, %s x %s", rvalue.Both(width), rvalue.Both(height), rvalue.Both(o.Width), rvalue.Both(o.Height))
		return
	}
	const slip = 0.25 // of what the frame and the lights of the file leave for one pane
	off := func(read, seen rvalue.Length) bool {
		return float64(read) < float64(seen)*(1-slip) || float64(read) > float64(seen+2*bite)*(1+slip)
	}
	if off(width, whole.LightWidth) || off(height, whole.LightHeight) {
		o.Window.remarks = append(o.Window.remarks, Remark{
			Code: "readings", About: o.Name, Place: d.src.place(s.at("measured")),
			Text: fmt.Sprintf("the readings, %s x %s, are not those of one pane by the window's size, lights and frame, some %s x %s; check both", rvalue.Both(width), rvalue.Both(height), rvalue.Both(whole.LightWidth+2*bite), rvalue.Both(whole.LightHeight+2*bite)),
		})
	}
}

// where reads where a pane is, for what the residential code says of it.
func (d *decoder) where(t *section) *window.Place {
	p := &window.Place{}
	p.Bottom, _ = quantity(t, "sill", "10 in", orNothing)
	t.missing("sill", `how high the lowest edge of the glass is above the floor is missing; write such as sill = "10 in"`)
	walking, ok := quantity(t, "walkway", "24 in", orNothing)
	p.Walking, p.WalkingUnknown = walking, !ok
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
	number := strings.TrimRight(strings.TrimSpace(text), "abcdefghijklmnopqrstuvwxyz\"'′″ ")
	if v, err := strconv.ParseFloat(number, 64); err == nil && v == 0 {
		if _, err := rvalue.ParseLength("1" + strings.TrimPrefix(strings.TrimSpace(text), number)); err == nil {
			return 0, nil
		}
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
