package house

import (
	"fmt"
	"math"

	"github.com/coldseam/coldseam/assembly/envelope"
	"github.com/coldseam/coldseam/assembly/window"
	"github.com/coldseam/coldseam/climate"
	"github.com/coldseam/coldseam/rvalue"
	"github.com/coldseam/coldseam/rvalue/surface"
)

// Sheet is what the windows of a house come to, and what to order for them.
type Sheet struct {
	Indoors, Outdoors rvalue.Temperature // of the cold day on which they sweat
	Edition           int                // of the residential code that safety and escape go by
	Fitted            []Fitted           // in the order of the file

	buffers map[string]rvalue.Temperature // on the cold day
}

// Fitted is one opening of a house, or several alike.
type Fitted struct {
	Part, Name    string
	Window        *Window
	Count         int
	Width, Height rvalue.Length // 0: only the area is known
	U             rvalue.Transmittance
	Upright       rvalue.Transmittance // what it would have upright; 0: it is, or its U is declared
	Whole         *window.Whole        // nil: its U is declared or a table's
	Method        string               // of U, where Whole is not nil

	Outdoors rvalue.Temperature // what it faces: the cold day, or a buffer on it
	Tilt     float64            // degrees, as package window has it; of a window described by its glass

	// Inside has the faces towards the room on the cold day, and Sweats the relative
	// humidity of the room at which each sweats, 0 to 1. Of a window that is not
	// described by its glass only the mean face is known: all three are that.
	Inside window.Inside
	Sweats struct{ Center, Edge, Frame float64 }

	// Draft is an estimate of what leaks by the joints of all of them, 0 where they do
	// not open or the house's leakage is not known. See DraftShare.
	Draft rvalue.Conductance

	Steps  []window.Step // what can be done to it; of a window described by its glass
	Pieces []Ordered     // storm panes left out, which have a frame of their own
	Safety []window.Flag
	Escape []window.Flag // what it fails as a way out; of no meaning without Opening.Escape

	Opening *Opening
}

// Ordered is one piece of glass to order for each light of an opening.
type Ordered struct {
	Glazing window.Glazing
	Lights  int // alike, in each opening
	window.Order

	// Measured is whether Order follows readings. Else it is a guess from the size of
	// the opening, good for weights and costs: measure before you order.
	Measured bool
}

// bite is how far a pane reaches behind its bead on each side, where it was not
// measured: common practice, no source.
const bite = 3.0 / 8 * rvalue.Inch

// DraftShare is the part of a house's leakage that goes by its windows and doors: 15 %,
// 6 to 22 in the houses measured (ASHRAE Handbook—Fundamentals, residential air leakage,
// from memory). It is shared out by the length of their joints.
const DraftShare = 0.15

// drafts shares the leakage by windows and doors out over those that open.
func (s *Sheet) drafts(r *Report) {
	var leak rvalue.Conductance
	for i := range r.Ranking.Rows {
		if row := &r.Ranking.Rows[i]; row.Kind == envelope.AirLeakage {
			leak = row.UA
		}
	}
	joint := func(f *Fitted) float64 {
		if !f.Window.Operable {
			return 0
		}
		width, height := f.Opening.sides()
		return float64(f.Count) * 2 * float64(width+height)
	}
	all := 0.0
	for i := range s.Fitted {
		all += joint(&s.Fitted[i])
	}
	for i := range s.Fitted {
		if all > 0 {
			s.Fitted[i].Draft = rvalue.Conductance(DraftShare * float64(leak) * joint(&s.Fitted[i]) / all)
		}
	}
}

// Sheet works out the windows of a ranked house. The cold day is that of the heater's
// size where it is known, else the temperature outside that the file gives.
func (r *Report) Sheet() (*Sheet, error) {
	h := r.House
	s := &Sheet{Indoors: h.Indoors.Temperature, Outdoors: h.Outdoors.Temperature}
	if r.Now != nil {
		s.Outdoors = r.Now.Outdoors
	}
	s.buffers = map[string]rvalue.Temperature{}
	for _, b := range r.Ranking.Buffers {
		// ISO 13789: t_u = t_i − b·(t_i − t_e)
		s.buffers[b.Name] = s.Indoors.Add(rvalue.TemperatureDifference(-b.Factor * float64(s.Indoors.Sub(s.Outdoors))))
	}
	for _, e := range window.Editions() {
		if e <= int(h.Edition) {
			s.Edition = e
		}
	}
	air, err := climate.StandardAtmosphere(h.Altitude)
	if err != nil {
		return nil, fmt.Errorf("house: altitude: %w", err)
	}
	for _, p := range h.Parts {
		if p.Window != nil {
			o := &Opening{Name: p.Name, Window: p.Window, Area: p.Area, Count: 1}
			if err := s.fit(h, p, o, air.Pressure); err != nil {
				return nil, err
			}
		}
		for _, o := range p.Openings {
			if err := s.fit(h, p, o, air.Pressure); err != nil {
				return nil, err
			}
		}
	}
	s.drafts(r)
	return s, nil
}

// Cold returns what a window described by its glass stands in on the cold day.
func (s *Sheet) Cold(f *Fitted) window.Conditions {
	c := window.Winter()
	c.Indoors, c.Outdoors, c.Tilt = s.Indoors, f.Outdoors, f.Tilt
	return c
}

// fit works out one opening.
func (s *Sheet) fit(h *House, p *Part, o *Opening, pressure float64) error {
	fail := func(err error) error { return fmt.Errorf("house: opening %q: %w", o.Name, err) }
	w := o.Window
	f := Fitted{Part: p.Name, Name: o.Name, Window: w, Count: o.Count, Width: o.Width, Height: o.Height, Opening: o}
	width, height := o.sides()
	tilt := p.tilt()
	f.Outdoors = s.Outdoors
	if p.Buffer != nil {
		f.Outdoors = s.buffers[p.Buffer.Name]
	}
	var err error
	if f.U, f.Whole, err = h.glazed(w, width, height, tilt); err != nil {
		return fail(err)
	}
	if f.Whole == nil {
		face := window.InsideFace(f.U, 0, s.Indoors, f.Outdoors)
		f.Inside = window.Inside{Center: face, Edge: face, Frame: face}
	} else {
		f.Method = "the handbook's weighting"
		if h.Films == surface.ISO6946 || w.Built.Leaf > 0 {
			f.Method = "ISO 10077-1"
		}
		if w.Built.Tilt != nil {
			tilt = *w.Built.Tilt
		}
		f.Tilt = tilt
		if f.Inside, err = w.Built.faces(width, height, s.Cold(&f)); err != nil {
			return fail(err)
		}
		if tilt != window.Upright {
			whole, err := w.Built.in(width, height, window.Upright, h.Films)
			if err != nil {
				return fail(err)
			}
			f.Upright = whole.U
		}
		if err := f.glass(width, height, tilt); err != nil {
			return fail(err)
		}
	}
	if f.Sweats.Center, err = sweats(s.Indoors, f.Inside.Center, pressure); err != nil {
		return fail(err)
	}
	if f.Sweats.Edge, err = sweats(s.Indoors, f.Inside.Edge, pressure); err != nil {
		return fail(err)
	}
	if f.Sweats.Frame, err = sweats(s.Indoors, f.Inside.Frame, pressure); err != nil {
		return fail(err)
	}
	if err := f.rules(s.Edition, width, height, tilt); err != nil {
		return fail(err)
	}
	s.Fitted = append(s.Fitted, f)
	return nil
}

// sweats returns the relative humidity of the room at which a face in it sweats.
func sweats(indoors, face rvalue.Temperature, pressure float64) (float64, error) {
	if face >= indoors {
		return 1, nil
	}
	air, err := climate.AirOfDewPoint(indoors, face, pressure)
	if err != nil {
		return 0, err
	}
	return air.RelativeHumidity(), nil
}

// glass works out what can be done to the glass, and what to order.
func (f *Fitted) glass(width, height rvalue.Length, tilt float64) error {
	b := f.Window.Built
	if b.Leaf == 0 {
		on := b.Curb
		on.Window = b.Window
		on.Window.Width, on.Window.Height = width, height
		c := window.Winter()
		c.Tilt = tilt
		var err error
		if f.Steps, err = on.Steps(c); err != nil {
			return err
		}
	}
	if f.Width == 0 {
		return nil // nothing can be ordered by an area
	}
	for _, g := range b.Window.Glazing.Units() {
		if g.Panes[0].Storm { // it has a frame of its own, over all lights
			continue
		}
		place := window.Opening{}
		measured := f.Opening.Measured != nil
		if measured {
			place = *f.Opening.Measured
		} else {
			for i := range place.Widths {
				place.Widths[i], place.Heights[i] = f.Whole.LightWidth+2*bite, f.Whole.LightHeight+2*bite
			}
		}
		order, err := g.Order(place)
		if err != nil {
			return err
		}
		f.Pieces = append(f.Pieces, Ordered{Glazing: g, Lights: f.Whole.Lights, Order: order, Measured: measured})
	}
	return nil
}

// rules holds an opening against the residential code.
func (f *Fitted) rules(edition int, width, height rvalue.Length, tilt float64) error {
	if f.Window.Leaf == "" || f.Whole != nil {
		place := window.Place{BottomUnknown: true, WalkingUnknown: true}
		if f.Opening.Site != nil {
			place = *f.Opening.Site
		}
		place.Width, place.Height = width, height
		if f.Whole != nil {
			place.Width, place.Height = f.Whole.LightWidth, f.Whole.LightHeight
		}
		place.Lean = min(math.Abs(window.Upright-tilt), 90)
		place.Door = f.Window.Kind == envelope.Door
		if f.Window.Built != nil {
			place.Glazing = f.Window.Built.Window.Glazing
		}
		var err error
		if f.Safety, err = window.Safety(edition, place); err != nil {
			return err
		}
	}
	if e := f.Opening.Escape; e != nil {
		var err error
		if f.Escape, err = e.Check(edition); err != nil {
			return err
		}
	}
	return nil
}
