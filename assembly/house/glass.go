package house

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/assembly/envelope"
	"github.com/coldseam/coldseam/assembly/window"
	"github.com/coldseam/coldseam/rvalue"
	"github.com/coldseam/coldseam/rvalue/surface"
)

// Built is a window described by its glass and frame, for any opening.
type Built struct {
	Text   string          // of the glazing, as written
	Window window.Window   // without a size
	Tilt   *float64        // degrees, as package window has them; nil: that of the part
	Curb   window.Skylight // height and resistance of a skylight's curb; its Window is not used

	// Of a door with lights of this glass in it; LightWidth and LightHeight are seen.
	Leaf                    rvalue.Transmittance // the opaque door in its frame; 0: not a door
	LightWidth, LightHeight rvalue.Length
}

// in computes the window in an opening.
func (b *Built) in(width, height rvalue.Length, tilt float64, films surface.Set) (window.Whole, error) {
	w := b.Window
	w.Width, w.Height = width, height
	if b.Leaf > 0 {
		return b.door(width, height).Declared(window.EN673)
	}
	if films == surface.ISO6946 { // declared values are what its users compare
		return w.Declared(window.EN673, tilt)
	}
	c := window.Winter()
	c.Tilt = tilt
	if b.Curb.CurbHeight > 0 {
		s := b.Curb
		s.Window = w
		whole, _, err := s.Design(c)
		return whole, err
	}
	whole, _, err := w.Design(c)
	return whole, err
}

func (b *Built) door(width, height rvalue.Length) window.Door {
	w := &b.Window
	return window.Door{
		Width: width, Height: height, LeafU: b.Leaf, Glazing: w.Glazing, Spacer: w.Spacer,
		LightWidth: b.LightWidth, LightHeight: b.LightHeight, Lights: max(w.Across, 1) * max(w.Down, 1),
	}
}

// faces returns how cold the window is towards the room in an opening.
func (b *Built) faces(width, height rvalue.Length, c window.Conditions) (window.Inside, error) {
	if b.Leaf > 0 {
		return b.door(width, height).Faces(c)
	}
	w := b.Window
	w.Width, w.Height = width, height
	return w.Faces(c)
}

// BuiltSource says what the U-factors of windows described by their glass go by.
func BuiltSource(films surface.Set) string {
	if films == surface.ISO6946 {
		return "ISO 10077-1, its glass by EN 673 (from memory, checked against printed tables)"
	}
	return "glass solved at the handbook's winter night, 70 °F inside, 0 °F and 15 mph outside (ISO 15099, from memory), edge and frame weighed as in ASHRAE Handbook—Fundamentals"
}

// Tilt returns that of what stands in the part, in degrees as package window has it:
// 0 is level, 90 upright.
func (p *Part) tilt() float64 {
	if p.Assembly == nil {
		if p.Kind == Roof || p.Kind == Ceiling {
			return 0
		}
		return window.Upright
	}
	switch p.Assembly.Faces.Use {
	case assembly.Ceiling:
		return 0
	case assembly.Roof:
		return p.Assembly.Faces.Tilt
	case assembly.Floor:
		return 180
	}
	return window.Upright
}

// glazed returns the U-factor of a window in an opening of a part, and the whole
// window where it is described by its glass.
func (h *House) glazed(w *Window, width, height rvalue.Length, tilt float64) (rvalue.Transmittance, *window.Whole, error) {
	if w.Built == nil {
		return w.U, nil, nil
	}
	if w.Built.Tilt != nil {
		tilt = *w.Built.Tilt
	}
	whole, err := w.Built.in(width, height, tilt, h.Films)
	return whole.U, &whole, err
}

// square returns the sides of a square of an area, for a window of which no more is
// known.
func square(a rvalue.Area) (width, height rvalue.Length) {
	side := rvalue.Length(math.Sqrt(float64(a)))
	return side, side
}

// sides returns the width and the height of an opening.
func (o *Opening) sides() (width, height rvalue.Length) {
	if o.Width > 0 {
		return o.Width, o.Height
	}
	return square(o.Area)
}

// glassDetail tells how heat divides over a window.
func glassDetail(w *window.Whole) []envelope.Piece {
	if w == nil {
		return nil
	}
	all := float64(w.Center + w.Edge + w.Frame)
	var out []envelope.Piece
	for _, p := range []struct {
		name string
		ua   rvalue.Conductance
	}{{"the glass", w.Center}, {"the edge of the glass", w.Edge}, {"the frame", w.Frame}} {
		out = append(out, envelope.Piece{Name: p.name, Share: float64(p.ua) / all})
	}
	return out
}

// builtKeys are the keys that go with a glazing.
var builtKeys = []string{"spacer", "frame_width", "frame_u", "lights", "bar", "light", "tilt", "curb_height", "curb_resistance"}

// glazing reads a window described by its glass.
func (d *decoder) glazing(t *section, w *Window, text string) {
	b := &Built{Text: text}
	g, remarks, err := window.Parse(text)
	if err != nil {
		t.textError("glazing", err)
		for _, key := range append([]string{"frame"}, builtKeys...) {
			t.get(key) // known, though nothing comes of it
		}
		return
	}
	b.Window.Glazing = g
	at := t.t.index["glazing"].value
	for _, m := range remarks {
		w.remarks = append(w.remarks, Remark{Code: m.Code, Text: m.Text, About: fmt.Sprintf("window %q", w.Name), Place: d.src.place(at.offset(max(m.Offset, 0)))})
	}
	if t.has("leaf") {
		b.Leaf = w.U
		if text, ok := t.text("light"); ok {
			if b.LightWidth, b.LightHeight, err = rvalue.ParseSize(text); err != nil {
				t.textError("light", err)
			}
		}
		t.missing("light", `the size of the glass in the door is missing; write what is seen of one light, such as light = "20 in x 36 in"`)
	} else {
		t.missing("frame", `the frame is missing; write such as frame = "wood"`)
	}
	if text, ok := t.text("frame"); ok {
		var err error
		if b.Window.Frame, err = envelope.ParseFrame(text); err != nil {
			t.fail("frame", "%s", plain(err))
		}
		w.Frame = text
	}
	b.Window.Operable = w.Operable
	if text, ok := t.text("spacer"); ok {
		var err error
		if b.Window.Spacer, err = window.ParseSpacer(text); err != nil {
			t.fail("spacer", "%s", plain(err))
		}
	} else if !t.has("spacer") && len(g.Units()) < len(g.Panes) {
		d.filled(t.path("spacer"), b.Window.Spacer.String(), "that of most sealed units until about 2000, common practice, no source")
	}
	b.Window.Face, _ = quantity(t, "frame_width", "2 3/4 in", rvalue.ParseLength)
	b.Window.FrameU, _ = quantity(t, "frame_u", "U-0.40", someU)
	b.Window.Bar, _ = quantity(t, "bar", "3/4 in", rvalue.ParseLength)
	if text, ok := t.text("lights"); ok {
		across, down, ok := strings.Cut(text, " x ")
		var err1, err2 error
		b.Window.Across, err1 = strconv.Atoi(across)
		b.Window.Down, err2 = strconv.Atoi(down)
		if !ok || err1 != nil || err2 != nil || b.Window.Across < 1 || b.Window.Down < 1 {
			t.fail("lights", `%q is no number of lights; write how many side by side and one above the other, such as lights = "2 x 3"`, text)
			return
		}
	}
	if text, ok := t.text("tilt"); ok {
		tilt, err := window.ParseTilt(text)
		if err != nil {
			t.textError("tilt", err)
		}
		b.Tilt = &tilt
	}
	b.Curb.CurbHeight, _ = quantity(t, "curb_height", "8 in", rvalue.ParseLength)
	b.Curb.CurbR, _ = quantity(t, "curb_resistance", "R-5", rvalue.ParseResistance)
	if b.Curb.CurbHeight > 0 {
		if w.Kind != envelope.Skylight {
			t.fail("curb_height", `a curb is a skylight's; write kind = "skylight" too`)
			return
		}
		t.missing("curb_resistance", `what the curb's sides resist is missing; write such as curb_resistance = "R-5"`)
	}
	// Anything that cannot be at any size shows at a large one.
	const large = 2.5 * rvalue.Metre
	if _, err := b.in(large, large, window.Upright, d.h.Films); err != nil && (t.has("frame") || b.LightWidth > 0) {
		t.fail("glazing", "%s", plain(err))
		return
	}
	w.Built = b
	if b.Leaf > 0 { // a door, whose leaf has said its source
		w.U, w.Source = 0, "ISO 10077-1 with its glass by EN 673; the leaf by "+w.Source
		return
	}
	w.Source = BuiltSource(d.h.Films)
}
