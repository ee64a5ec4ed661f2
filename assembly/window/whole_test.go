package window

import (
	"math"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/rvalue"
	"github.com/coldseam/coldseam/testdata"
)

// scoreISOWhole: the table of Uw for 1.23 m x 1.48 m with 30 % frame. Its psi goes
// with the frame: up to 2.0 wood or PVC, above a metal with a break.
func scoreISOWhole(t *testing.T) *table {
	s := &table{name: "ISO 10077-1 table F, whole window", kind: "seen"}
	// 30 % frame all round one casement
	const width, height, share = 1.23, 1.48, 0.30
	face := (width + height - math.Sqrt((width+height)*(width+height)-4*share*width*height)) / 4
	for _, r := range testdata.Read(t, "window_iso_whole.csv", "glass", "frame", "u", "mark") {
		w := Window{
			Glazing: unit(2, glass4, 16*mm, Fill{Argon: 0.9}, 1, 0.04), Frame: Wood,
			FrameU: rvalue.Transmittance(r.Number(t, "frame")) * rvalue.USI,
			Width:  width * rvalue.Metre, Height: height * rvalue.Metre, Face: rvalue.Length(face),
		}
		if w.FrameU > 2.1*rvalue.USI {
			w.Frame = AluminumBreak
		}
		got, err := w.iso(rvalue.Transmittance(r.Number(t, "glass")))
		if err != nil {
			t.Fatal(err)
		}
		s.cell(t, "glass "+r["glass"]+", frame "+r["frame"], got.U.SI(), r["u"], "")
	}
	return s
}

// scoreEdge: the edge column from the printed centre.
func scoreEdge(t *testing.T) *table {
	s := &table{name: "ASHRAE edge of glass from its printed centre", kind: "from memory"}
	for _, r := range testdata.Read(t, "window_ashrae.csv", "panes", "center", "edge", "mark") {
		center, edge := rvalue.Transmittance(r.Number(t, "center"))*rvalue.UIP, 0.0
		if edge = center.IP(); r["panes"] != "1" {
			edge = Metal.EdgeU(center).IP()
		}
		why := ""
		if off := math.Abs(edge - r.Number(t, "edge")); off > 0.005+rounding {
			why = "the centre is rounded to 0.01 itself; within 0.010"
			if off > 0.010 {
				t.Errorf("%v: %.4f", r, edge)
			}
		}
		s.cell(t, r["panes"]+" panes, centre "+r["center"], edge, r["edge"], why)
	}
	return s
}

// scoreWhole: whole windows of the handbook from computed centres of glass, in its
// two sizes. Insulating spacers in operable windows, as the table of frames shows.
func scoreWhole(t *testing.T) *table {
	s := &table{
		name: "ASHRAE whole windows, centre computed", kind: "from memory",
		whole: "the centre of glass differs by up to 0.010, and the print weighs figures that are rounded to 0.01; within 0.013",
	}
	for _, r := range testdata.Read(t, "windows_whole.csv", "glass", "frame", "operable", "u", "mark") {
		fill, gap, panes := Fill{}, 0.5*rvalue.Inch, 1
		if strings.Contains(r["glass"], "argon") {
			fill = Fill{Argon: 1}
		}
		if strings.Contains(r["glass"], "1/4") {
			gap = 0.25 * rvalue.Inch
		}
		if strings.Contains(r["glass"], "double") {
			panes = 2
		} else if strings.Contains(r["glass"], "triple") {
			panes = 3
		}
		w := Window{Glazing: unit(panes, 0.125*rvalue.Inch, gap, fill, 0, 0), Width: 48 * rvalue.Inch, Height: 48 * rvalue.Inch}
		if r["operable"] == "yes" {
			w.Operable, w.Width, w.Height = true, 600*mm, 1500*mm
		}
		for f := range Frame(FrameCount) {
			if f.String() == r["frame"] {
				w.Frame = f
			}
		}
		if w.Frame.String() != r["frame"] {
			t.Fatalf("no frame %q", r["frame"])
		}
		c := Winter()
		c.Wind = tableWind
		solved, err := w.Glazing.Design(c)
		if err != nil {
			t.Fatal(err)
		}
		p, err := w.plan()
		if err != nil {
			t.Fatal(err)
		}
		// Operable windows of the table have frames of insulating spacers beside
		// glass of metal ones.
		if w.Operable {
			w.FrameU = w.Frame.U(panes, true, Insulating)
		}
		u := w.handbook(&p, solved.U).U.IP()
		if off := math.Abs(u - r.Number(t, "u")); off > 0.013 {
			t.Errorf("%v: %.4f", r, u)
		}
		s.cell(t, r["glass"]+" in "+r["frame"]+", operable "+r["operable"], u, r["u"], "")
	}
	return s
}

func scorePsi(t *testing.T) *table {
	s := &table{name: "psi by frame and spacer (looked up)", kind: "seen"}
	for _, r := range testdata.Read(t, "window_psi.csv", "frame", "coated", "spacer", "psi", "mark") {
		spacer := Metal
		if r["spacer"] == "improved" {
			spacer = Insulating
		}
		for f := range Frame(FrameCount) {
			if f.String() == r["frame"] {
				s.cell(t, r["frame"], f.Psi(r["coated"] == "yes", spacer).SI(), r["psi"], "")
			}
		}
	}
	return s
}

func scoreFrames(t *testing.T) *table {
	s := &table{name: "U of frames (looked up)", kind: "from memory"}
	for _, r := range testdata.Read(t, "window_frames.csv", "frame", "spacer", "operable", "panes", "u", "mark") {
		spacer := Metal
		if r["spacer"] == "insulating" {
			spacer = Insulating
		}
		for f := range Frame(FrameCount) {
			if f.String() == r["frame"] {
				s.cell(t, r["frame"], f.U(int(r.Number(t, "panes")), r["operable"] == "yes", spacer).IP(), r["u"], "")
			}
		}
	}
	return s
}

// scoreFace: the temperature of the face towards the room.
func scoreFace(t *testing.T) *table {
	s := &table{name: "inside face of glass, Rsi 0.13", kind: "own arithmetic"}
	for _, r := range testdata.Read(t, "window_face.csv", "outdoors", "u", "face", "mark") {
		face := InsideFace(rvalue.Transmittance(r.Number(t, "u")), 0, rvalue.FromCelsius(20), rvalue.FromCelsius(r.Number(t, "outdoors")))
		s.cell(t, "U "+r["u"]+" at "+r["outdoors"]+" °C", face.Celsius(), r["face"], "")
	}
	return s
}

// TestBands: the worked example of a frame of 1.3 in around 48 x 48 in (own
// arithmetic): glass 45.4² in², centre 40.4² in², the whole 0.640.
func TestBands(t *testing.T) {
	w := Window{
		Glazing: unit(2, 0.125*rvalue.Inch, 0.5*rvalue.Inch, Fill{}, 0, 0), FrameU: 1.80 * rvalue.UIP,
		Width: 48 * rvalue.Inch, Height: 48 * rvalue.Inch,
	}
	p, err := w.plan()
	if err != nil {
		t.Fatal(err)
	}
	const in2 = 1. / 144 // ft²
	for _, c := range []struct {
		what      string
		got, want float64
	}{{"glass", p.glass.IP() / in2, 2061.16}, {"centre", p.centered.IP() / in2, 1632.16}, {"frame", (p.total - p.glass).IP() / in2, 242.84}} {
		if math.Abs(c.got-c.want) > 0.005 {
			t.Errorf("%s is %.2f in², want %.2f", c.what, c.got, c.want)
		}
	}
	if got := w.handbook(&p, 0.48*rvalue.UIP).U.IP(); math.Abs(got-0.640) > 0.0005 {
		t.Errorf("U %.4f, want 0.640", got)
	}
}

// TestWholeSums: centre, edge and frame are the whole, by both ways, and lights are
// all counted.
func TestWholeSums(t *testing.T) {
	g := unit(2, glass4, 16*mm, Fill{Argon: 0.9}, 1, 0.04)
	one := Window{Glazing: g, Frame: Wood, Width: 900 * mm, Height: 1500 * mm}
	for _, w := range []Window{
		one,
		{Glazing: g, Frame: AluminumBreak, Width: 900 * mm, Height: 1500 * mm, Across: 2, Down: 3, Operable: true},
		{Glazing: unit(1, 3*mm, 0, Fill{}, 0, 0), Frame: Wood, Width: 900 * mm, Height: 1500 * mm, Down: 2, Bar: 40 * mm},
	} {
		iso, err := w.Declared(EN673, Upright)
		if err != nil {
			t.Fatal(err)
		}
		book, s, err := w.Design(Winter())
		if err != nil {
			t.Fatal(err)
		}
		if book.CenterU != s.U {
			t.Errorf("centre %v, solved %v", book.CenterU, s.U)
		}
		for _, whole := range []Whole{iso, book} {
			sum := (whole.Center + whole.Edge + whole.Frame).SI()
			if off := sum - whole.U.SI()*whole.Area.SI(); math.Abs(off) > 1e-12*sum {
				t.Errorf("%+v: parts sum to %g more", w, off)
			}
		}
	}
	bars := one
	bars.Across, bars.Down = 2, 2
	a, _ := one.Declared(EN673, Upright)
	b, err := bars.Declared(EN673, Upright)
	if err != nil {
		t.Fatal(err)
	}
	face, bar := Wood.Face(false).SI(), usualBar.SI()
	glass := (0.9 - 2*face - bar) * (1.5 - 2*face - bar)
	edge := 4 * ((0.9 - 2*face - bar) + (1.5 - 2*face - bar))
	if math.Abs(b.GlassArea.SI()-glass) > 1e-12 || math.Abs(b.GlassEdge.SI()-edge) > 1e-12 || b.U <= a.U {
		t.Errorf("four lights: %v of glass, %v of edge, U %v after %v; want %g m², %g m and more", b.GlassArea, b.GlassEdge, b.U, a.U, glass, edge)
	}
}

// TestStormHasNoSpacer: neither psi nor a colder edge for single glass and a storm.
func TestStormHasNoSpacer(t *testing.T) {
	storm := unit(2, 3*mm, 50*mm, Fill{}, 0, 0)
	storm.Panes[1].Storm = true
	for _, g := range []Glazing{unit(1, 3*mm, 0, Fill{}, 0, 0), storm} {
		w := Window{Glazing: g, Frame: Wood, Width: 800 * mm, Height: 1200 * mm}
		iso, err := w.Declared(EN673, Upright)
		if err != nil {
			t.Fatal(err)
		}
		book, _, err := w.Design(Winter())
		if err != nil || iso.Edge != 0 || book.EdgeU != book.CenterU {
			t.Errorf("%s: edge loses %v by ISO, %v by the handbook, centre %v, %v", g, iso.Edge, book.EdgeU, book.CenterU, err)
		}
	}
}

// TestRoofWindow: a tilted window loses more than the same upright, by the glass
// alone, and a curb adds its sides.
func TestRoofWindow(t *testing.T) {
	w := Window{Glazing: unit(2, glass4, 16*mm, Fill{Argon: 0.9}, 1, 0.04), Frame: Wood, Width: 780 * mm, Height: 1180 * mm}
	upright, _, err := w.Design(Winter())
	if err != nil {
		t.Fatal(err)
	}
	c := Winter()
	c.Tilt = 30
	tilted, _, err := w.Design(c)
	if err != nil || tilted.U <= upright.U || tilted.Frame != upright.Frame {
		t.Errorf("at 30°: %v, upright %v, %v", tilted, upright, err)
	}
	curb := Skylight{Window: w, CurbHeight: 150 * mm, CurbR: 0.35 * rvalue.RSI}
	on, _, err := curb.Design(c)
	// 0.15 m x 3.92 m of 1/(0.35 + 0.17)
	if want := 0.15 * 3.92 / 0.52; err != nil || math.Abs((on.Frame-tilted.Frame).SI()-want) > 1e-9 {
		t.Errorf("the curb adds %v, want %.3f W/K, %v", on.Frame-tilted.Frame, want, err)
	}
	curb.CurbHeight = -1
	if _, _, err := curb.Design(c); err == nil {
		t.Error("a curb of -1 m is accepted")
	}
}

func TestDoor(t *testing.T) {
	d := Door{
		Width: 900 * mm, Height: 2100 * mm, LeafU: 1.8 * rvalue.USI,
		Glazing: unit(2, glass4, 16*mm, Fill{Argon: 0.9}, 1, 0.03), LightWidth: 300 * mm, LightHeight: 400 * mm, Lights: 2,
	}
	got, err := d.Declared(EN673)
	// ISO 10077-1: (0.24·1.1241 + 1.65·1.8 + 2.8·0.08)/1.89
	if want := (0.24*1.1241 + 1.65*1.8 + 2.8*0.08) / 1.89; err != nil || math.Abs(got.U.SI()-want) > 1e-4 {
		t.Errorf("U %v, %v, want %.4f", got.U, err, want)
	}
	if got.Lights != 2 || got.LightWidth != 300*mm || got.LightHeight != 400*mm {
		t.Errorf("%d lights of %v x %v, want those of the door", got.Lights, got.LightWidth, got.LightHeight)
	}
	opaque := Door{Width: 900 * mm, Height: 2100 * mm, LeafU: 1.8 * rvalue.USI}
	if got, err := opaque.Declared(EN673); err != nil || math.Abs(got.U.SI()-1.8) > 1e-12 {
		t.Errorf("an opaque door: %v, %v", got.U, err)
	}
	d.LightHeight = 2200 * mm
	if _, err := d.Declared(EN673); err == nil || !strings.Contains(err.Error(), "do not fit into a door") {
		t.Errorf("lights taller than the door: %v", err)
	}
}

func TestParseSpacer(t *testing.T) {
	for s := range Spacer(spacerCount) {
		if got, err := ParseSpacer(strings.ToUpper(s.String())); err != nil || got != s {
			t.Errorf("%v reads as %v, %v", s, got, err)
		}
	}
	if got, err := ParseSpacer(" Warm "); err != nil || got != Insulating {
		t.Errorf("warm reads as %v, %v", got, err)
	}
	if _, err := ParseSpacer("gold"); err == nil || !strings.Contains(err.Error(), `"gold" is no spacer`) || !strings.Contains(err.Error(), "fused glass") {
		t.Errorf("gold: %v", err)
	}
}

// TestWindowRefused: sizes that cannot be, each with what would do.
func TestWindowRefused(t *testing.T) {
	good := Window{Glazing: unit(1, 3*mm, 0, Fill{}, 0, 0), Frame: Wood, Width: 800 * mm, Height: 1200 * mm}
	for name, c := range map[string]struct {
		spoil func(*Window)
		says  string
	}{
		"smaller than the frame": {func(w *Window) { w.Width, w.Face = 100*mm, 60*mm }, "is smaller than its frame"},
		"all bars":               {func(w *Window) { w.Across = 40 }, "leave no glass"},
		"no size":                {func(w *Window) { w.Height = 0 }, "a window of"},
		"NaN":                    {func(w *Window) { w.Width = rvalue.Length(math.NaN()) }, "a window of"},
		"lights":                 {func(w *Window) { w.Down = -1 }, "1 by"},
		"frame U":                {func(w *Window) { w.FrameU = -1 }, "a frame of U"},
		"frame":                  {func(w *Window) { w.Frame = 77 }, "is no frame"},
		"spacer":                 {func(w *Window) { w.Spacer = 77 }, "is no frame with a spacer"},
		"glass":                  {func(w *Window) { w.Glazing = Glazing{} }, "without a pane"},
	} {
		w := good
		c.spoil(&w)
		_, err := w.Declared(EN673, Upright)
		_, _, err2 := w.Design(Winter())
		if err == nil || err2 == nil || name != "lights" && !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v, %v, want %q", name, err, err2, c.says)
		}
	}
	if (Frame(99).U(2, true, Metal) != 0) || Frame(99).Face(true) != 0 || Frame(99).Psi(true, Metal) != 0 || Spacer(99).EdgeU(1) != 0 {
		t.Error("an unknown frame or spacer has a figure")
	}
	if Frame(99).String() != "Frame(99)" || Spacer(99).String() != "Spacer(99)" {
		t.Error("an unknown frame or spacer has a name")
	}
}
