package house_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/assembly/house"
	"github.com/coldseam/coldseam/assembly/window"
	"github.com/coldseam/coldseam/climate"
	"github.com/coldseam/coldseam/rvalue"
)

// glassHouse has a wall with one opening, and goes on with more of it.
const glassHouse = `zone = "6A"
%s
indoors = { temperature = "20 °C", humidity = "40 %%" }
outdoors = { temperature = "-10 °C", design = "-20 °C" }
[window.w]
%s
[assembly.wall]
faces = %q
layers = "gypsum 1/2 in + R-20 + stucco 3/4 in"
[[part]]
name = "wall"
assembly = "wall"
area = "40 m2"
openings = [ { name = "o", window = "w", %s } ]
`

const doubleGlass = "glazing = \"glass 4 mm + argon 90 % 16 mm + low-e 0.04 glass 4 mm\"\nframe = \"wood\"\nspacer = \"warm\"\noperable = false"

// A window by its glass has the U-factor that package window gives for the size and
// the tilt of its opening: the handbook's weighting, or ISO 10077-1 where the house goes
// by ISO.
func TestBuiltWindow(t *testing.T) {
	g, _, err := window.Parse("glass 4 mm + argon 90 % 16 mm + low-e 0.04 glass 4 mm")
	if err != nil {
		t.Fatal(err)
	}
	w := window.Window{Glazing: g, Frame: window.Wood, Spacer: window.Insulating, Width: 1.2 * rvalue.Metre, Height: 1.5 * rvalue.Metre}
	level := window.Winter()
	level.Tilt = 30
	design, _, err := w.Design(window.Winter())
	if err != nil {
		t.Fatal(err)
	}
	tilted, _, err := w.Design(level)
	if err != nil {
		t.Fatal(err)
	}
	declared, err := w.Declared(window.EN673, window.Upright)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name, top, faces string
		want             rvalue.Transmittance
	}{
		{"upright", "", "wall", design.U},
		{"in a roof of 30°", "", "roof 30°", tilted.U},
		{"by ISO", `films = "iso 6946"`, "wall", declared.U},
	} {
		r := rank(t, fmt.Sprintf(glassHouse, c.top, doubleGlass, c.faces, `size = "1.2 m x 1.5 m"`))
		o := row(t, r, "o")
		if got := o.U; math.Abs(float64(got-c.want)) > 1e-12 {
			t.Errorf("%s: U %v, want %v", c.name, got, c.want)
		}
		sum := 0.0
		for _, p := range o.Detail {
			sum += p.Share
		}
		if len(o.Detail) != 3 || math.Abs(sum-1) > 1e-12 {
			t.Errorf("%s: glass, edge and frame %v sum to %v", c.name, o.Detail, sum)
		}
	}
}

// A door with lights weighs its leaf and its glass; glass block is a table's.
func TestOtherGlass(t *testing.T) {
	u := func(text, opening string) rvalue.Transmittance {
		return row(t, rank(t, fmt.Sprintf(glassHouse, "", text, "wall", opening)), "o").U
	}
	leaf := u("kind = \"door\"\nleaf = \"wood\"", `size = "36 in x 80 in"`)
	glazed := u("kind = \"door\"\nleaf = \"wood\"\nglazing = \"glass 1/8 in\"\nlight = \"20 in x 36 in\"", `size = "36 in x 80 in"`)
	// By areas: 5 ft² of single glass of 1.0 Btu/(h·ft²·°F) in 20 ft² of leaf.
	single, _, err := window.Parse("glass 1/8 in")
	if err != nil {
		t.Fatal(err)
	}
	center, err := single.Declared(window.EN673, window.Upright)
	if err != nil {
		t.Fatal(err)
	}
	if want := 0.25*center.U.SI() + 0.75*leaf.SI(); math.Abs(glazed.SI()-want) > 1e-9 {
		t.Errorf("a door a quarter of which is glass has U %v, want %v", glazed.SI(), want)
	}
	r := rank(t, fmt.Sprintf(glassHouse, "", "kind = \"door\"\nleaf = \"wood\"\nglazing = \"glass 1/8 in\"\nlight = \"20 in x 36 in\"", "wall", `size = "36 in x 80 in"`))
	if source := r.House.Windows[0].Source; !strings.HasPrefix(source, "ISO 10077-1") || !strings.Contains(source, "the leaf by IECC") || strings.Contains(source, "winter night") {
		t.Errorf("the door's figure is said to come from %q", source)
	}
	if got := u(`glass = "glass block"`, `area = "10 ft2"`); got != window.GlassBlock {
		t.Errorf("glass block %v", got)
	}
}

func TestBuiltWindowMistakes(t *testing.T) {
	for _, c := range []struct{ name, window, opening, says string }{
		{"two coatings on a face", "glazing = \"low-e 0.04 low-e 0.1 glass 4 mm\"\nframe = \"wood\"", `size = "1 m x 1 m"`, "f:6:"},
		{"gas in no gap", "glazing = \"glass 4 mm + argon 0 mm + glass 4 mm\"\nframe = \"wood\"", `size = "1 m x 1 m"`, "f:6:"},
		{"no frame", "glazing = \"glass 4 mm\"", `size = "1 m x 1 m"`, "frame is missing"},
		{"a frame that is none", "glazing = \"glass 4 mm\"\nframe = \"brass\"", `size = "1 m x 1 m"`, "no frame"},
		{"a spacer that is none", "glazing = \"glass 4 mm\"\nframe = \"wood\"\nspacer = \"rope\"", `size = "1 m x 1 m"`, "no spacer"},
		{"a spacer without a glazing", "u = \"U-1\"\nspacer = \"metal\"", `size = "1 m x 1 m"`, "goes with the glass"},
		{"smaller than its frame", "glazing = \"glass 4 mm\"\nframe = \"wood\"", `size = "4 in x 4 in"`, "smaller than its frame"},
		{"tilt over 180°", "glazing = \"glass 4 mm\"\nframe = \"wood\"\ntilt = \"190°\"", `size = "1 m x 1 m"`, "no tilt"},
		{"lights", "glazing = \"glass 4 mm\"\nframe = \"wood\"\nlights = \"two\"", `size = "1 m x 1 m"`, "number of lights"},
		{"curb of a wall's window", "glazing = \"glass 4 mm\"\nframe = \"wood\"\ncurb_height = \"4 in\"", `size = "1 m x 1 m"`, "skylight's"},
		{"two readings", "u = \"U-1\"", `size = "1 m x 1 m", measured = { widths = ["1 m", "1 m"], heights = ["1 m", "1 m", "1 m"] }`, "2 readings; write 3"},
		{"no sill", "u = \"U-1\"", `size = "1 m x 1 m", site = { walkway = "1 ft" }`, "above the floor is missing"},
		{"a way out that does not open", "glazing = \"glass 4 mm\"\nframe = \"wood\"\noperable = false", `size = "2 m x 2 m", escape = { clear = "1 m x 1 m", sill = "10 in" }`, "does not open"},
		{"a way out wider than the window", "u = \"U-1\"", `size = "1 m x 1 m", escape = { clear = "2 m x 0.9 m", sill = "0 in" }`, "stay clear of a window"},
		{"a pane larger than its window", "glazing = \"glass 4 mm\"\nframe = \"wood\"", `size = "1 m x 1 m", measured = { widths = ["1.2 m", "1.2 m", "1.2 m"], heights = ["0.9 m", "0.9 m", "0.9 m"] }`, "larger than its window"},
		{"diagonals of another opening", "glazing = \"glass 4 mm\"\nframe = \"wood\"", `size = "1 m x 1 m", measured = { widths = ["0.9 m", "0.9 m", "0.9 m"], heights = ["0.9 m", "0.9 m", "0.9 m"], diagonals = ["2 m", "2 m"] }`, "diagonals"},
		{"lights and more", "glazing = \"glass 4 mm\"\nframe = \"wood\"\nlights = \"2 x 3x4\"", `size = "1 m x 1 m"`, "number of lights"},
		{"no clear opening", "u = \"U-1\"", `size = "1 m x 1 m", escape = { sill = "1 ft" }`, "stays clear"},
	} {
		_, err := house.Decode("f", []byte(fmt.Sprintf(glassHouse, "", c.window, "wall", c.opening)))
		if err == nil || !strings.Contains(err.Error(), c.says) || !strings.HasPrefix(err.Error(), "f:") {
			t.Errorf("%s: %v, want something of %q with its place", c.name, err, c.says)
		}
	}
	r := rank(t, fmt.Sprintf(glassHouse, "", "glazing = \"glass 4 mm low-e 0.04\"\nframe = \"wood\"", "wall", `area = "1 m2"`))
	codes := ""
	for _, m := range r.Remarks {
		codes += m.Code + " "
	}
	square := false
	for _, d := range r.Defaults {
		square = square || d.Value == "square"
	}
	if !strings.Contains(codes, "coating-outdoors") || !square {
		t.Errorf("remarks %s, square listed: %v; want one on a coating outdoors, and the square", codes, square)
	}
}

// An opening known by its area alone cannot be ordered, and readings that are not those
// of a pane there are remarked on.
func TestSheetDoubts(t *testing.T) {
	s, err := rank(t, fmt.Sprintf(glassHouse, "", doubleGlass, "wall", `area = "2 m2"`)).Sheet()
	if err != nil || len(s.Fitted[0].Pieces) != 0 {
		t.Errorf("%v; an opening without a size has the order %+v", err, s.Fitted[0].Pieces)
	}
	r := rank(t, fmt.Sprintf(glassHouse, "", doubleGlass, "wall", `size = "1.2 m x 1.5 m", measured = { widths = ["0.5 m", "0.5 m", "0.5 m"], heights = ["1.4 m", "1.4 m", "1.4 m"] }`))
	found := false
	for _, m := range r.Remarks {
		found = found || m.Code == "readings" && m.Place.Line > 0
	}
	if !found {
		t.Errorf("no remark on readings of another opening: %v", r.Remarks)
	}
}

// A window toward a porch is as cold as the porch allows: t = ti − b·(ti − te).
func TestSheetTowardABuffer(t *testing.T) {
	text := strings.Replace(fmt.Sprintf(glassHouse, "", doubleGlass, "wall", `size = "1 m x 1 m"`), "area = \"40 m2\"", "area = \"40 m2\"\ntoward = \"buffer porch\"", 1) +
		"[buffer.porch]\nto_outdoors = [ { u = \"2 W/(m²·K)\", area = \"20 m2\" } ]\n"
	r := rank(t, text)
	s, err := r.Sheet()
	if err != nil {
		t.Fatal(err)
	}
	b := row(t, r, "o").Factor
	if want := 20 - b*40; !(b < 1) || math.Abs(s.Fitted[0].Outdoors.Celsius()-want) > 1e-9 {
		t.Errorf("the porch is at %v, want %v °C", s.Fitted[0].Outdoors, want)
	}
}

// What leaks by windows and doors is shared by the length of their joints, and only
// among those that open.
func TestDrafts(t *testing.T) {
	r := rank(t, `zone = "6A"
leakage = { volume = "10000 ft3", ach50 = 10 }
[window.opens]
u = "U-0.5"
[window.fixed]
glazing = "glass 1/8 in"
frame = "wood"
operable = false
[[part]]
name = "wall"
kind = "wall"
u = "U-0.1"
area = "400 ft2"
openings = [
  { name = "two", window = "opens", size = "2 ft x 4 ft", count = 2 },
  { name = "one", window = "opens", size = "3 ft x 3 ft" },
  { name = "fixed", window = "fixed", size = "3 ft x 3 ft" },
]
`)
	s, err := r.Sheet()
	if err != nil {
		t.Fatal(err)
	}
	leak := row(t, r, "air leakage").UA.SI()
	for i, want := range []float64{0.15 * leak * 24 / 36, 0.15 * leak * 12 / 36, 0} { // joints of 24, 12 and 0 ft
		if got := s.Fitted[i].Draft.SI(); math.Abs(got-want) > 1e-12 {
			t.Errorf("%s: draft %v W/K, want %v", s.Fitted[i].Name, got, want)
		}
	}
}

func TestSheet(t *testing.T) {
	r := rank(t, fmt.Sprintf(glassHouse, "", "glazing = \"glass 3 mm\"\nframe = \"wood\"\nlights = \"1 x 2\"\nbar = \"1 1/2 in\"", "wall",
		`size = "40 in x 80 in", count = 2, measured = { widths = ["35 in", "35 1/4 in", "35 in"], heights = ["36 in", "36 in", "36 1/8 in"] }, site = { sill = "6 in", walkway = "12 in" }, escape = { clear = "30 in x 20 in", sill = "48 in" }`))
	s, err := r.Sheet()
	if err != nil {
		t.Fatal(err)
	}
	if len(s.Fitted) != 1 || s.Outdoors != rvalue.FromCelsius(-20) || s.Edition != 2021 {
		t.Fatalf("%d openings for %v outside by %d, want one for the design temperature by 2021", len(s.Fitted), s.Outdoors, s.Edition)
	}
	f := &s.Fitted[0]
	if len(f.Pieces) != 1 || !f.Pieces[0].Measured || f.Pieces[0].Lights != 2 {
		t.Fatalf("pieces %+v, want one measured kind, two in each window", f.Pieces)
	}
	// The smallest readings less 3 mm all round.
	if p := f.Pieces[0]; math.Abs(p.Width.Millimetres()-(35*25.4-6)) > 1e-9 || math.Abs(p.Height.Millimetres()-(36*25.4-6)) > 1e-9 {
		t.Errorf("order %v x %v", p.Width, p.Height)
	}
	// By hand: face = 20 − U/h·40 °C with the film h that the glass has on the cold day,
	// and the air whose dew point that is.
	solved, err := f.Window.Built.Window.Glazing.Design(s.Cold(f))
	if err != nil {
		t.Fatal(err)
	}
	face := rvalue.FromCelsius(20 - solved.U.SI()/solved.InsideFilm.SI()*40)
	air, err := climate.AirOfDewPoint(rvalue.FromCelsius(20), face, climate.SeaLevel)
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(f.Sweats.Center-air.RelativeHumidity()) > 1e-9 {
		t.Errorf("sweats from %v, by hand %v", f.Sweats.Center, air.RelativeHumidity())
	}
	// 34.4 x 36 in of glass are under 9 ft² (IRC R308.4.3), so that the floor and the
	// walkway near it trip nothing; a clear opening of 4.2 ft², 20 in high, 48 in
	// above the floor fails three rules of R310.
	if len(f.Safety) != 0 || len(f.Escape) != 3 {
		t.Errorf("safety %+v, escape %+v; want none and three", f.Safety, f.Escape)
	}
	if len(f.Steps) < 5 || f.Steps[0].Whole.U != f.U {
		t.Errorf("%d steps from %v, want those of single glass from %v", len(f.Steps), f.Steps[0].Whole.U, f.U)
	}

	// The same pane in one light is over 9 ft² and trips the rule.
	r = rank(t, fmt.Sprintf(glassHouse, "", "glazing = \"glass 3 mm\"\nframe = \"wood\"", "wall", `size = "40 in x 80 in", site = { sill = "6 in", walkway = "12 in" }`))
	if s, err = r.Sheet(); err != nil || len(s.Fitted[0].Safety) != 1 || s.Fitted[0].Safety[0].Clause != "R308.4.3" || s.Fitted[0].Pieces[0].Measured {
		t.Errorf("safety %+v, %v; want the four-part rule of R308.4.3, and a guessed order", s.Fitted[0].Safety, err)
	}
}
