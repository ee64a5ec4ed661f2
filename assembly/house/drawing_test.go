package house_test

import (
	"bytes"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/santhosh-tekuri/jsonschema/v6"

	"github.com/coldseam/coldseam/assembly/house"
	solver "github.com/coldseam/coldseam/assembly/section"
	"github.com/coldseam/coldseam/rvalue"
)

const drawings = "../drawing/" // below testdata

func drawing(t testing.TB, text string) *house.Drawing {
	t.Helper()
	d, err := house.DecodeDrawing("f", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func solved(t testing.TB, d *house.Drawing, o solver.Options) *solver.Result {
	t.Helper()
	r, err := d.Solve(o)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// slabCut is case (v) of testdata/section_ours.csv, solved there with a general
// finite-element language: half of a slab's uninsulated edge. The wall is drawn
// first and all the way down, the slab over it.
const slabCut = `units = "si"
air = { rooms = { temperature = "21 °C", film = "RSI 0.13" }, outdoors = { temperature = "-18 °C", film = "RSI 0.04" } }
piece = [
  { name = "masonry", conductivity = "0.8 W/(m·K)", x = ["0 m", "0.1 m"], y = ["0 m", "1.1 m"] },
  { name = "insulation", conductivity = "0.036 W/(m·K)", x = ["0.1 m", "0.2 m"], y = ["0 m", "1.1 m"] },
  { name = "gypsum", conductivity = "0.16 W/(m·K)", x = ["0.2 m", "0.2125 m"], y = ["0 m", "1.1 m"] },
  { name = "slab", conductivity = "2 W/(m·K)", x = ["0 m", "1.2125 m"], y = ["0 m", "0.1 m"] },
]
face = [
  { air = "outdoors", x = "0 m", y = ["0 m", "1.1 m"] },
  { air = "rooms", x = "0.2125 m", y = ["0.1 m", "1.1 m"] },
  { air = "rooms", x = ["0.2125 m", "1.2125 m"], y = "0.1 m" },
]
flank = [ { y = "1.1 m", internal = "1 m", external = "1.1 m" } ]
point = [ { name = "corner", x = "0.2125 m", y = "0.1 m" }, { x = "0 m", y = "0 m" } ]
`

// TestDrawnSlabEdge: the printed figures are those of the finite-element solution, with
// its own error.
func TestDrawnSlabEdge(t *testing.T) {
	d := drawing(t, slabCut)
	r := solved(t, d, solver.Options{Tolerance: 1e-6})
	internal, external := d.Psi(r)
	for _, c := range []struct {
		what      string
		got, want float64
		tolerance float64
	}{
		{"heat", r.Heat, 31.56958, 2e-5},
		{"U of the flank", d.Flanks[0].U.SI(), 0.31736936, 1e-8},
		{"psi of the whole joint, internal", 2 * internal.Psi.SI(), 0.984214, 2e-6},
		{"psi of the whole joint, external", 2 * external.Psi.SI(), 0.920740, 2e-6},
		{"corner", r.Points[0].Temperature.Celsius(), 7.1785, 1e-3},
		{"outside, middle of the slab", r.Points[1].Temperature.Celsius(), -12.5634, 1e-3},
	} {
		if !(math.Abs(c.got-c.want) <= c.tolerance) {
			t.Errorf("%s: %.7g, want %.7g within %g", c.what, c.got, c.want, c.tolerance)
		}
	}
	if !(internal.Low <= internal.Psi && internal.Psi <= internal.High) || d.Points[1].Name != "point 2" {
		t.Errorf("psi %v, point %q", internal, d.Points[1].Name)
	}
	if _, ok := d.U(r); ok {
		t.Error("a slab edge has a U of its own")
	}
}

// TestOverlapsAreCut: what is drawn over each other gives the same section as what
// is drawn side by side, whatever lies below.
func TestOverlapsAreCut(t *testing.T) {
	want := solved(t, drawing(t, slabCut), solver.Options{}).Heat
	aside := strings.NewReplacer(
		`x = ["0 m", "0.1 m"], y = ["0 m", "1.1 m"]`, `x = ["0 m", "0.1 m"], y = ["0.1 m", "1.1 m"]`,
		`x = ["0.1 m", "0.2 m"], y = ["0 m", "1.1 m"]`, `x = ["0.1 m", "0.2 m"], y = ["1.1 m", "0.1 m"]`,
		`x = ["0.2 m", "0.2125 m"], y = ["0 m", "1.1 m"]`, `x = ["0.2125 m", "200 mm"], y = ["0.1 m", "1.1 m"]`,
	).Replace(slabCut)
	if got := solved(t, drawing(t, aside), solver.Options{}).Heat; got != want {
		t.Errorf("side by side %v, over each other %v", got, want)
	}
	below := strings.Replace(slabCut, "piece = [", `piece = [ { name = "rubble", material = "brick", x = ["0 m", "0.2125 m"], y = ["0 m", "1.1 m"] }, { name = "more", material = "oak", x = ["0.05 m", "0.3 m"], y = ["0 m", "0.1 m"] },`, 1)
	if _, err := house.DecodeDrawing("f", []byte(below)); err == nil || !strings.Contains(err.Error(), `piece "rubble": later pieces cover all of it`) {
		t.Errorf("pieces that are covered: %v", err)
	}
}

// TestPlainPart: a wall drawn alone resists the sum of its layers.
func TestPlainPart(t *testing.T) {
	d := drawing(t, `air = { rooms = { temperature = "68 °F", film = "wall" }, outdoors = { temperature = "0 °F", film = "wind" } }
piece = [
  { material = "gypsum board", x = ["0 in", "40 in"], y = ["0 in", "1/2 in"] },
  { resistance = "R-13", x = ["0 in", "40 in"], y = ["1/2 in", "4 in"] },
  { air_space = "sideways", x = ["0 in", "40 in"], y = ["4 in", "5 in"] },
  { conductivity = "0.7 W/(m·K)", x = ["0 in", "40 in"], y = ["5 in", "9 in"] },
]
face = [ { air = "rooms", x = ["0 in", "40 in"], y = "0 in" }, { air = "outdoors", x = ["0 in", "40 in"], y = "9 in" } ]
flank = [ { x = "20 in", internal = "40 in" } ]`)
	r := solved(t, d, solver.Options{})
	u, ok := d.U(r)
	gap := 0.0254 / d.Pieces[2].Conductivity.SI()
	// ASHRAE: films; an upright space of 1 in is about R-1.
	want := rvalue.Resistance(0.0127/0.16+0.1016/0.7+gap) + 13.85*rvalue.RIP
	if !ok || math.Abs(u.R().IP()-want.IP()) > 1e-6 || gap < 0.15 || gap > 0.2 {
		t.Errorf("R-%.4f (%v), want R-%.4f with a gap of RSI %.3f", u.R().IP(), ok, want.IP(), gap)
	}
	internal, external := d.Psi(r)
	if math.Abs(internal.Psi.SI()) > 1e-9 || external != nil {
		t.Errorf("psi %v and %v of no bridge", internal, external)
	}
}

// TestDamp: at a surface of the air's own temperature it sweats at 100 %; at 20 °C and
// 12.6 °C the room may have 63.6 % until it sweats and 50 % until mould can grow, which
// is where the temperature factor 0.75 at -10 °C stands (DIN 4108-2's example, from memory).
func TestDamp(t *testing.T) {
	sweats, mould, err := house.Damp(rvalue.FromCelsius(20), rvalue.FromCelsius(12.6))
	if err != nil || math.Abs(mould-0.5) > 0.002 || math.Abs(sweats-mould/0.8) > 1e-12 {
		t.Errorf("sweats at %.3f, mould at %.3f, %v", sweats, mould, err)
	}
	if sweats, _, err := house.Damp(rvalue.FromCelsius(20), rvalue.FromCelsius(20)); err != nil || sweats != 1 {
		t.Errorf("sweats at %v, %v", sweats, err)
	}
}

// TestDrawingDefaults: what is taken for granted is listed.
func TestDrawingDefaults(t *testing.T) {
	d := drawing(t, string(read(t, testdata+drawings+"good/everything.toml")))
	var keys []string
	for _, f := range d.Defaults {
		if f.Value == "" || f.Why == "" {
			t.Errorf("%+v says too little", f)
		}
		keys = append(keys, f.Key)
	}
	want := []string{
		"piece 3: conductivity", `piece "batt": conductivity`, `face "ceiling": film`, "face 4: film",
		`flank "wall above": u`, `flank "wall below": u`,
	}
	if diff := cmp.Diff(want, keys); diff != "" {
		t.Errorf("defaults, -want +got:\n%s", diff)
	}
}

// TestBadDrawings compares every message with the text file beside the bad file.
func TestBadDrawings(t *testing.T) {
	for _, name := range files(t, drawings+"bad/*/*.toml") {
		t.Run(filepath.Base(name), func(t *testing.T) {
			_, err := house.DecodeDrawing(filepath.Base(name), read(t, name))
			if err == nil {
				t.Fatal("DecodeDrawing took a bad file")
			}
			got := err.Error() + "\n"
			golden := strings.TrimSuffix(name, ".toml") + ".txt"
			if *update {
				if err := os.WriteFile(golden, []byte(got), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			if diff := cmp.Diff(string(read(t, golden)), got); diff != "" {
				t.Errorf("messages differ from %s (-want +got):\n%s", golden, diff)
			}
		})
	}
	for _, tt := range []struct{ data, want string }{
		{"", "f:1:1: nothing is in this file; a drawing needs air"},
		{"\x00", "f:1:1: this is no text file; a drawing file is TOML"},
	} {
		if _, err := house.DecodeDrawing("f", []byte(tt.data)); err == nil || !strings.HasPrefix(err.Error(), tt.want) {
			t.Errorf("DecodeDrawing(%q): %v", tt.data, err)
		}
	}
	_, err := house.DecodeDrawing("f", nil)
	_, example, _ := strings.Cut(err.Error(), "such as\n")
	solved(t, drawing(t, example), solver.Options{})
}

// TestIsDrawing tells drawings from houses.
func TestIsDrawing(t *testing.T) {
	for _, name := range append(files(t, "good/*.toml"), files(t, "bad/meaning/*.toml")...) {
		if house.IsDrawing(read(t, name)) {
			t.Errorf("%s is taken for a drawing", name)
		}
	}
	for _, name := range append(files(t, drawings+"good/*.toml"), files(t, drawings+"bad/meaning/*.toml")...) {
		if !house.IsDrawing(read(t, name)) {
			t.Errorf("%s is taken for a house", name)
		}
	}
}

func drawingSchema(t testing.TB) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(house.DrawingSchema()))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("drawing.schema.json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("drawing.schema.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// TestDrawingSchema holds the schema against DecodeDrawing, as TestSchema does.
func TestDrawingSchema(t *testing.T) {
	s := drawingSchema(t)
	for _, pattern := range []string{"good/*.toml", "bad/meaning/*.toml", "bad/structure/*.toml"} {
		names := files(t, drawings+pattern)
		if pattern == "good/*.toml" {
			names = append(names, "../../examples/slab-edge.toml")
		}
		for _, name := range names {
			v, err := asJSON(read(t, name))
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			err = s.Validate(v)
			if structure := strings.Contains(pattern, "structure"); structure != (err != nil) {
				t.Errorf("%s: the schema says %v", name, err)
			}
			if _, err := house.DecodeDrawing(name, read(t, name)); strings.HasPrefix(pattern, "good") && err != nil {
				t.Error(err)
			}
		}
	}
	var schema struct {
		Properties  map[string]object
		Definitions map[string]object
	}
	if err := json.Unmarshal(house.DrawingSchema(), &schema); err != nil {
		t.Fatal(err)
	}
	d := schema.Definitions
	for _, tt := range []struct {
		file string
		want map[string]object
	}{
		{"qqqqqqqq = 1", schema.Properties},
		{"[material.x]\nqqqqqqqq = 1", d["material"].Properties},
		{"[air.x]\nqqqqqqqq = 1", d["air"].Properties},
		{"[[piece]]\nqqqqqqqq = 1", d["piece"].Properties},
		{"[[face]]\nqqqqqqqq = 1", d["face"].Properties},
		{"[[flank]]\nqqqqqqqq = 1", d["flank"].Properties},
		{"[[point]]\nqqqqqqqq = 1", d["point"].Properties},
	} {
		_, err := house.DecodeDrawing("f", []byte(tt.file))
		sameKeys(t, tt.file, err, tt.want)
	}
}

// FuzzDecodeDrawing checks that no input makes DecodeDrawing panic, that mistakes
// point into the file, and that what it takes obeys the schema and can be solved
// as far as a small mesh goes.
func FuzzDecodeDrawing(f *testing.F) {
	for _, pattern := range []string{"good/*.toml", "bad/*/*.toml"} {
		for _, name := range files(f, drawings+pattern) {
			f.Add(read(f, name))
		}
	}
	f.Add([]byte(slabCut))
	s := drawingSchema(f)
	f.Fuzz(func(t *testing.T, data []byte) {
		house.IsDrawing(data)
		d, err := house.DecodeDrawing("f", data)
		if err != nil {
			lines := bytes.Count(data, []byte("\n")) + 1
			for _, e := range err.(house.Errors) {
				if e.Line < 1 || e.Line > lines || e.Column < 1 || e.Column > len(e.Source)+1 && e.Source != "" {
					t.Errorf("mistake at %d:%d of %d lines, in %q", e.Line, e.Column, lines, e.Source)
				}
			}
			return
		}
		v, err := asJSON(data)
		if err != nil {
			t.Fatalf("DecodeDrawing takes what is no TOML: %v", err)
		}
		if err := s.Validate(v); err != nil {
			t.Fatalf("DecodeDrawing takes what the schema refuses: %v", err)
		}
		if _, err := d.Solve(solver.Options{Tolerance: 0.1, Surface: 1, Unknowns: 3000}); err != nil && !strings.Contains(err.Error(), "allow more") {
			t.Fatalf("a drawing that DecodeDrawing takes cannot be solved: %v", err)
		}
	})
}
