package house_test

import (
	"fmt"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/assembly/envelope"
	"github.com/coldseam/coldseam/assembly/house"
	"github.com/coldseam/coldseam/climate/target"
	"github.com/coldseam/coldseam/rvalue"
)

// sameUnits is how far the same house in other units may differ: a few roundings
// of a float64.
const sameUnits = 1e-12

// approx compares quantities as the plain numbers they are, to sameUnits.
var approx = cmp.Options{
	cmpopts.EquateApprox(sameUnits, 0),
	cmp.FilterPath(func(p cmp.Path) bool {
		t := p.Last().Type()
		return t != nil && t.Kind() == reflect.Float64 && t != reflect.TypeFor[float64]()
	}, cmp.Transformer("number", func(v any) float64 { return reflect.ValueOf(v).Float() })),
}

func decode(t testing.TB, name string) *house.House {
	t.Helper()
	h, err := house.Decode(filepath.Base(name), read(t, name))
	if err != nil {
		t.Fatal(err)
	}
	return h
}

func examples(t testing.TB) []string {
	names, err := filepath.Glob("../../examples/*.toml")
	names = slices.DeleteFunc(names, func(name string) bool { return house.IsDrawing(read(t, name)) })
	if err != nil || len(names) < 3 {
		t.Fatalf("%d examples: %v", len(names), err)
	}
	return names
}

// TestExamples checks that the houses to copy from are houses, and complete.
func TestExamples(t *testing.T) {
	for _, name := range append(examples(t), files(t, "good/*.toml")...) {
		t.Run(filepath.Base(name), func(t *testing.T) {
			r, err := decode(t, name).Rank()
			if err != nil {
				t.Fatal(err)
			}
			sum := 0.0
			for _, row := range r.Ranking.Rows {
				sum += row.Share
				if !(row.UA > 0) && row.Kind != envelope.ThermalBridge {
					t.Errorf("%s has a UA of %v", row.Name, row.UA)
				}
			}
			if !cmp.Equal(sum, 1.0, cmpopts.EquateApprox(0, 1e-12)) {
				t.Errorf("shares add to %v", sum)
			}
			for _, m := range r.Remarks {
				if m.Code == "unused" && strings.Contains(name, "examples") {
					t.Errorf("%s is not used", m.About)
				}
			}
		})
	}
}

// TestMixedUnits decodes one house three times: in inch-pound units, in metric
// ones, and in both mixed.
func TestMixedUnits(t *testing.T) {
	equal := cmp.Options{
		approx,
		cmpopts.IgnoreUnexported(house.Assembly{}, house.Window{}, house.Bridge{}, house.Fuel{}),
		// The texts themselves differ, and places in them.
		cmpopts.IgnoreFields(house.House{}, "Name", "Defaults"),
		cmpopts.IgnoreFields(house.Assembly{}, "Layers"),
	}
	want := decode(t, testdata+"good/inch-pound.toml")
	ranked, err := want.Rank()
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"metric.toml", "mixed.toml"} {
		got := decode(t, testdata+"good/"+name)
		if diff := cmp.Diff(want, got, equal); diff != "" {
			t.Errorf("%s is another house (-inch-pound +got):\n%s", name, diff)
		}
		r, err := got.Rank()
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(ranked.Ranking.Rows, r.Ranking.Rows, approx,
			cmpopts.IgnoreFields(envelope.Piece{}, "Name")); diff != "" {
			t.Errorf("%s ranks otherwise (-inch-pound +got):\n%s", name, diff)
		}
	}
}

// TestEverything checks each key of the file once.
func TestEverything(t *testing.T) {
	h := decode(t, testdata+"good/everything.toml")
	ft, in := rvalue.Foot, rvalue.Inch
	checks := []struct {
		name      string
		got, want any
	}{
		{"name", h.Name, "Every key once"},
		{"place", h.Place, "Duluth, MN"},
		{"zone", h.Zone, target.Zone{Number: 6, Moisture: 'A'}},
		{"edition", h.Edition, target.Edition2018},
		{"altitude", h.Altitude, 700 * ft},
		{"units", h.Units, rvalue.SI},
		{"films", h.Films.String(), "ISO 6946"},
		{"notes", h.Notes, "one line\nand another\n"},
		{"indoors", h.Indoors, house.Indoors{Temperature: rvalue.FromCelsius(21), Humidity: 0.35}},
		{"outdoors", h.Outdoors, house.Outdoors{Temperature: rvalue.FromFahrenheit(-20), Wind: 15 * rvalue.MilePerHour}},
		{"leakage", *h.Leakage, house.Leakage{Volume: 7400 * rvalue.CubicFoot, Flow50: 1200 * rvalue.CubicFootPerMin, Storeys: 1.5, Shelter: envelope.Exposed}},
		{"fuel", *h.Fuel, house.Fuel{Kind: "heat pump", Price: 0.18, Per: "kWh", Efficiency: 2.5}},
		{"material", h.Materials[0].Conductivity, 0.04 * rvalue.WattPerMetreKelvin},
		{"material by the piece", h.Materials[1].Sizes[0].R, 1.2 * rvalue.RIP},
		{"density", h.Materials[0].Density[1], 35 * rvalue.KilogramPerMetre3},
		{"faces", h.Assemblies[0].Faces.String(), "roof 45°"},
		{"method", h.Assemblies[0].Method, assembly.Isothermal},
		{"window by its label", h.Windows[0].U, 0.3 * rvalue.UIP},
		{"window by its glass", h.Windows[1].Operable, false},
		{"skylight", h.Windows[2].Kind, envelope.Skylight},
		{"door", h.Windows[3].Leaf, "wood"},
		{"buffer", h.Buffers[0].AirChange, 2.0},
		{"buffer by a plain number", h.Buffers[1].AirChange, 0.5},
		{"buffer volume", h.Buffers[0].Volume, 3600 * rvalue.CubicFoot},
		{"buffer surfaces", len(h.Buffers[0].ToOutdoors), 3},
		{"part of an assembly", h.Parts[0].Kind, house.Roof},
		{"part of a window", h.Parts[1].Kind, house.Glazing},
		{"part by its U-factor", h.Parts[2].Kind, house.MassWall},
		{"part toward a buffer", h.Parts[3].Buffer.Name, "old garage"},
		{"openings", *h.Parts[0].Openings[0], house.Opening{Name: "roof lights", Window: h.Windows[2], Area: (24 * in).Times(48 * in), Count: 2, Width: 24 * in, Height: 48 * in}},
		{"opening by its area", h.Parts[0].Openings[1].Area, 8 * rvalue.SquareFoot},
		{"slab", h.Parts[4].Edge, house.Edge{Reach: "4 ft vertical", Depth: 4 * ft, R: 10 * rvalue.RIP}},
		{"perimeter", h.Parts[4].Perimeter, 140 * ft},
		{"basement wall", h.Parts[5].Depth, 6 * ft},
		{"basement floor", h.Parts[6].Kind, house.BasementFloor},
		{"crawl wall", h.Parts[7].Kind, house.CrawlWall},
		{"bridge", *h.Bridges[0], house.Bridge{Name: "slab edge", Psi: -0.1 * rvalue.PsiSI, Length: 24 * ft}},
	}
	for _, c := range checks {
		if diff := cmp.Diff(c.want, c.got, approx, cmpopts.IgnoreUnexported(house.Assembly{}, house.Window{}, house.Bridge{}, house.Fuel{})); diff != "" {
			t.Errorf("%s (-want +got):\n%s", c.name, diff)
		}
	}
	if len(h.Defaults) > 4 { // of which no key is asked for: two U-factors of tables, the leakage's divisor, the basement's walls
		t.Errorf("much was filled in though every key is given: %v", h.Defaults)
	}
}

// TestDefaults checks that a house that says next to nothing lists what was
// filled in.
func TestDefaults(t *testing.T) {
	h, err := house.Decode("least.toml", []byte(`
zone = "6A"
leakage = { volume = "7400 ft3", tightness = "drafty" }
assembly.wall = { faces = "wall", layers = "gypsum 1/2 in + 2x4 @ 16 in (empty) + vinyl siding" }
window.sash = { glass = "single", frame = "wood" }
[[part]]
name = "wall"
assembly = "wall"
area = "900 ft2"
openings = [ { name = "sashes", window = "sash", size = "30 in x 60 in", count = 8 } ]
`))
	if err != nil {
		t.Fatal(err)
	}
	want := []string{
		"edition", "altitude", "films", "indoors.temperature", "outdoors.temperature", "outdoors.wind", "leakage.ach50",
		"leakage.storeys", "leakage.shelter", "leakage.divisor", `window "sash": operable`, `window "sash": u`,
	}
	var got []string
	for _, d := range h.Defaults {
		got = append(got, d.Key)
		if d.Value == "" || d.Why == "" {
			t.Errorf("default %q has no value or no reason", d.Key)
		}
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("defaults (-want +got):\n%s", diff)
	}
}

func ExampleDecode() {
	_, err := house.Decode("larkspur.toml", []byte(`place = "St. Louis County, MN"
[assembly.wall-1926]
faces  = "wall"
layers = "plaster 3/4 in + 2x4 @ 16 in (fibreglas R-13) + board sheathing 3/4 in"
[[part]]
name     = "street wall"
assembly = "wall-1926"
area     = "31 ft x 8 furlong"
`))
	fmt.Println(err)
	// Output:
	// larkspur.toml:4:41: assembly "wall-1926": layers: unknown material "fibreglas"; did you mean fiberglass or fiberboard?
	//   layers = "plaster 3/4 in + 2x4 @ 16 in (fibreglas R-13) + board sheathing 3/4 in"
	//                                           ^
	// larkspur.toml:8:23: part "street wall": area: "31 ft x 8 furlong": unknown unit "furlong" for a length (use mm, cm, m, in or ft)
	//   area     = "31 ft x 8 furlong"
	//                         ^
}

func ExampleHouse_Rank() {
	h, err := house.Decode("larkspur.toml", []byte(`place = "St. Louis County, MN"
[assembly.wall-1926]
faces  = "wall"
layers = "plaster 3/4 in + 2x4 @ 16 in (empty) + board sheathing 3/4 in + wood bevel siding"
[window.sash]
u = "U-0.89"
[[part]]
name     = "street wall"
assembly = "wall-1926"
area     = "31 ft x 8 ft 6 in"
openings = [ { name = "bay windows", window = "sash", size = "30 in x 60 in", count = 3 } ]
`))
	if err != nil {
		fmt.Println(err)
		return
	}
	report, err := h.Rank()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, row := range report.Ranking.Rows {
		fmt.Printf("%-12s %5.1f Btu/(h·°F), %2.0f %% of all\n", row.Name, row.UA.IP(), 100*row.Share)
	}
	fmt.Println("weakest link:", report.Ranking.Rows[report.Ranking.Weakest.Row].Name)
	// Output:
	// street wall   53.3 Btu/(h·°F), 62 % of all
	// bay windows   33.4 Btu/(h·°F), 38 % of all
	// weakest link: street wall
}

func BenchmarkDecode(b *testing.B) {
	data := read(b, "../../examples/split-1978.toml")
	b.ReportAllocs()
	b.SetBytes(int64(len(data)))
	for b.Loop() {
		if _, err := house.Decode("split-1978.toml", data); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkRank(b *testing.B) {
	h := decode(b, "../../examples/split-1978.toml")
	b.ReportAllocs()
	for b.Loop() {
		if _, err := h.Rank(); err != nil {
			b.Fatal(err)
		}
	}
}
