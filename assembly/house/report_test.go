package house_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/assembly/envelope"
	"github.com/coldseam/coldseam/assembly/house"
	"github.com/coldseam/coldseam/rvalue"
)

// rank decodes and ranks a text.
func rank(t testing.TB, text string) *house.Report {
	t.Helper()
	h, err := house.Decode("f", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	r, err := h.Rank()
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func row(t testing.TB, r *house.Report, name string) envelope.Row {
	t.Helper()
	for _, row := range r.Ranking.Rows {
		if row.Name == name {
			return row
		}
	}
	t.Fatalf("no row %q", name)
	return envelope.Row{}
}

// TestJudged holds assemblies against the code by both of its paths.
func TestJudged(t *testing.T) {
	for _, tt := range []struct {
		name, source        string
		edition, zone, kind string
		faces, layers       string
		met                 bool
		by                  string
	}{
		{
			"20 between studs and 5 outside, by the R-value path", "IECC 2018, table R402.1.2, zone 6 wood frame wall 20+5",
			"2018", "6A", "wall", "wall", "gypsum 1/2 in + 2x6 @ 16 in (R-20) + R-5 + stucco 3/4 in", true, "R-value path (R-20+5ci)",
		},
		{
			"21 between studs without anything outside", "same table",
			"2018", "6A", "wall", "wall", "gypsum 1/2 in + 2x6 @ 16 in (fiberglass R-21) + osb 7/16 in + vinyl siding", false, "",
		},
		{
			"13 between studs in a warm zone", "same table, zone 2",
			"2018", "2A", "wall", "wall", "gypsum 1/2 in + 2x4 @ 16 in (fiberglass R-13) + osb 7/16 in + vinyl siding", true, "U-factor",
		},
		{
			"a batt of R-38 squeezed into 2x10 is not R-38", "same table, zone 3 ceiling 38; a fiberglass maker's chart in JLC",
			"2018", "3A", "roof", "roof 30°", "gypsum 1/2 in + 2x8 @ 16 in (fiberglass R-38) + plywood 1/2 in + asphalt shingles", false, "",
		},
		{
			"steel studs at a spacing that the code does not list", "judged by the U-factor alone",
			"2021", "5A", "wall", "wall", "gypsum 1/2 in + steel 3 1/2 in @ 12 in (fiberglass R-15) + R-20 + vinyl siding", true, "U-factor",
		},
		{
			"steel studs at 16 in with what would do between wood", "IECC, table R402.2.6, from memory: 13 needs 13+4.2",
			"2018", "2A", "wall", "wall", "gypsum 1/2 in + steel 3 1/2 in @ 16 in (fiberglass R-13) + osb 7/16 in + vinyl siding", false, "",
		},
	} {
		t.Run(tt.name, func(t *testing.T) {
			r := rank(t, fmt.Sprintf("edition = %q\nzone = %q\n[assembly.a]\nfaces = %q\nlayers = %q\n[[part]]\nname = \"p\"\nkind = %q\nassembly = \"a\"\narea = \"100 ft2\"\n",
				tt.edition, tt.zone, tt.faces, tt.layers, tt.kind))
			v := r.Judgements[0].Verdict
			if v.Met != tt.met || v.By != tt.by {
				t.Errorf("met %v by %q (%s), want %v by %q: %s", v.Met, v.By, v.Why, tt.met, tt.by, tt.source)
			}
			if got := row(t, r, "p").Behind > 0; got == tt.met {
				t.Errorf("behind is %v of a part that is met: %v", row(t, r, "p").Behind, tt.met)
			}
		})
	}
}

// TestJudgedByFacts: what a footnote of the code asks about is read off the layers.
func TestJudgedByFacts(t *testing.T) {
	for _, tt := range []struct {
		name, source  string
		zone, kind    string
		layers        string
		met           bool
		by, note      string
		noteIsApplied bool
	}{
		{
			"mass wall insulated inside needs more in zone 5: R-17, U-0.065", "IECC 2021, table R402.1.3, note i, and the U-factor table",
			"5A", "mass wall", "gypsum 1/2 in + xps 2 1/2 in + concrete block 8 in + stucco 3/4 in", false, "", "mass-interior", true,
		},
		{
			"the same outside: R-13, U-0.082", "same note and table",
			"5A", "mass wall", "gypsum 1/2 in + concrete block 8 in + xps 2 1/2 in + stucco 3/4 in", true, "U-factor", "mass-interior", false,
		},
		{
			"R-23 that fills a floor of 2x6 in zone 5", "IECC 2021, table R402.1.3, note g: R-19 at least where it fills the cavity",
			"5A", "floor", "oak 3/4 in + 2x6 @ 16 in (mineral wool R-23)", true, "R-value path (R-19)", "fills-cavity", true,
		},
		{
			"R-19 that leaves air under it in a floor of 2x10", "same note",
			"5A", "floor", "oak 3/4 in + 2x10 @ 16 in (fiberglass R-19)", false, "", "fills-cavity", false,
		},
	} {
		t.Run(tt.name, func(t *testing.T) {
			faces := "wall"
			if tt.kind == "floor" {
				faces = "floor"
			}
			r := rank(t, fmt.Sprintf("zone = %q\nedition = \"2021\"\n[assembly.a]\nfaces = %q\nlayers = %q\n[[part]]\nname = \"p\"\nkind = %q\nassembly = \"a\"\narea = \"100 ft2\"\n",
				tt.zone, faces, tt.layers, tt.kind))
			j := r.Judgements[0]
			if j.Verdict.Met != tt.met || !strings.HasPrefix(j.Verdict.By, tt.by) {
				t.Errorf("met %v by %q (%s), want %v by %q: %s", j.Verdict.Met, j.Verdict.By, j.Verdict.Why, tt.met, tt.by, tt.source)
			}
			found := false
			for _, n := range j.Requirement.Notes {
				found = found || n.Code == tt.note && n.Applied == tt.noteIsApplied
			}
			said := false
			for _, m := range r.Remarks {
				said = said || m.Code == "code-note" && m.About == "p"
			}
			if !found || said != tt.noteIsApplied {
				t.Errorf("note %q applied %v, remarked %v, want %v", tt.note, found, said, tt.noteIsApplied)
			}
		})
	}
}

// A material of the file counts as insulation by what it says, by what it replaces, or
// where it conducts little, which is then listed.
func TestOwnMaterialInsulates(t *testing.T) {
	for _, tt := range []struct {
		name, material, layer string
		continuous            float64 // R that the code counts
		listed                bool
	}{
		{"little conducted", "[material.felted-hemp]\nconductivity = \"0.04 W/(m·K)\"\nsource = \"label\"\n", "felted-hemp 2 in", 7.21, true},
		{"by the piece", "[material.felted-hemp]\nresistance = \"R-4\"\nthickness = \"1 in\"\nsource = \"label\"\n", "felted-hemp 2 in", 8, true},
		{"by its class", "[material.lime-hemp]\nclass = \"insulation board\"\nconductivity = \"0.09 W/(m·K)\"\nsource = \"label\"\n", "lime-hemp 2 in", 3.205, false},
		{"much conducted", "[material.lime-hemp]\nconductivity = \"0.09 W/(m·K)\"\nsource = \"label\"\n", "lime-hemp 2 in", 0, false},
		{"replacing one of the catalogue", "[material.xps]\nconductivity = \"0.030 W/(m·K)\"\nsource = \"label\"\n", "xps 2 in", 9.615, false},
		{"another class than what it replaces", "[material.xps]\nclass = \"plastic\"\nconductivity = \"0.030 W/(m·K)\"\nsource = \"label\"\n", "xps 2 in", 0, false},
	} {
		t.Run(tt.name, func(t *testing.T) {
			r := rank(t, fmt.Sprintf("zone = \"5A\"\n%s[assembly.a]\nfaces = \"wall\"\nlayers = \"gypsum 1/2 in + 2x4 @ 16 in (empty) + %s\"\n[[part]]\nname = \"p\"\nassembly = \"a\"\narea = \"100 ft2\"\n", tt.material, tt.layer))
			v := r.Judgements[0].Verdict
			// The nearest option is the one of continuous insulation alone, R-20ci; what
			// is missing of it tells what was counted.
			counted := (v.Nearest.Continuous - v.Lacking.Continuous).IP()
			if !cmp.Equal(counted, tt.continuous, cmpopts.EquateApprox(0, 0.005)) || v.Nearest.Cavity > 0 {
				t.Errorf("R-%.2f is counted of %v, want R-%g (%s)", counted, v.Nearest, tt.continuous, v.Why)
			}
			listed := false
			for _, d := range r.Defaults {
				listed = listed || strings.HasSuffix(d.Key, ".class")
			}
			if listed != tt.listed {
				t.Errorf("class listed among the defaults: %v, want %v", listed, tt.listed)
			}
		})
	}
}

// The code goes by the published factors of steel studs, the ranking by the numeric
// answer: a wall that meets what is asked by the second alone is behind by what it
// lacks by the first.
func TestSteelIsJudgedByTheTable(t *testing.T) {
	const layers = "gypsum 1/2 in + steel 6 in @ 16 in (fiberglass R-19) + XPS 1 1/2 in + vinyl siding"
	r := rank(t, fmt.Sprintf("zone = \"3A\"\nedition = \"2021\"\n[assembly.a]\nfaces = \"wall\"\nlayers = %q\n[[part]]\nname = \"p\"\nassembly = \"a\"\narea = \"100 ft2\"\n", layers))
	e := r.Assemblies[0].Result
	w := row(t, r, "p")
	if e.Effective.Method != assembly.Numeric || w.U != e.Effective.U() || r.Judgements[0].Verdict.Met {
		t.Fatalf("U %v by %v, met: %v", w.U, e.Effective.Method, r.Judgements[0].Verdict.Met)
	}
	// What is missing by the table, in R, added to the numeric answer.
	missing := r.Judgements[0].Requirement.R() - e.Zone
	if want := (w.U - (w.R() + missing).U()).Times(w.Area); missing <= 0 || !cmp.Equal(float64(w.Behind), float64(want), cmpopts.EquateApprox(1e-9, 0)) {
		t.Errorf("behind by %v, by the table %v", w.Behind, want)
	}
}

// ofAll is how far sums and balances may be off: a few roundings of a float64.
const ofAll = 1e-12

// TestSlab checks that a slab loses its edge's F-factor times its length, and
// that a slab as the code asks is behind by nothing.
func TestSlab(t *testing.T) {
	const file = "zone = \"4A\"\n[[part]]\nname = \"slab\"\nkind = \"slab\"\narea = \"44 ft x 26 ft\"\nperimeter = \"140 ft\"\n"
	bare := row(t, rank(t, file), "slab")
	// Washington State Energy Code, table A106.1: 0.73 Btu/(h·ft·°F) bare.
	if got := bare.UA.IP(); !cmp.Equal(got, 0.73*140, cmpopts.EquateApprox(ofAll, 0)) {
		t.Errorf("UA of a bare slab is %v Btu/(h·°F), want 0.73 × 140", got)
	}
	// IECC 2021, zone 4: R-10 to 4 ft.
	done := row(t, rank(t, file+"edge = { reach = \"4 ft vertical\", resistance = \"R-10\" }\n"), "slab")
	if done.Behind > 0 || !done.Target.Met || bare.Behind <= 0 {
		t.Errorf("behind: bare %v, as asked %v", bare.Behind, done.Behind)
	}
	if diff := float64(bare.UA - done.UA - bare.Behind); diff > 1e-9 || diff < -1e-9 { // W/K
		t.Errorf("a bare slab is behind by %v, the one asked for saves %v", bare.Behind, bare.UA-done.UA)
	}
}

// TestBasementWall checks that a wall toward the ground is behind by what the
// wall asked for would save through the same ground.
func TestBasementWall(t *testing.T) {
	wall := func(u string) envelope.Row {
		return row(t, rank(t, fmt.Sprintf("zone = \"5A\"\n[[part]]\nname = \"w\"\nkind = \"basement wall\"\nu = %q\narea = \"40 m x 2 m\"\ntoward = \"ground\"\ndepth = \"2 m\"\n", u)), "w")
	}
	// IECC 2021, zone 5: U-0.050, from memory.
	poor, asked := wall("U-0.30"), wall("U-0.050")
	if !asked.Target.Met || asked.Behind > 0 {
		t.Errorf("a wall as asked is behind by %v", asked.Behind)
	}
	if got, want := float64(poor.Behind), float64(poor.UA-asked.UA); !cmp.Equal(got, want, cmpopts.EquateApprox(1e-9, 0)) {
		t.Errorf("behind by %v W/K, the wall asked for saves %v", got, want)
	}
	if open := 0.30 * rvalue.UIP; poor.U >= open {
		t.Errorf("the ground does not help: U %v, in the open %v", poor.U, open)
	}
}

// In a wall in the ground most of the drop is in the soil: its share and those of the
// layers sum to 1, and the weakest link names it.
func TestSoilWithholdsMost(t *testing.T) {
	r := rank(t, "zone = \"6A\"\n[assembly.stone]\nfaces = \"wall\"\nlayers = \"limestone 18 in\"\n[[part]]\nname = \"w\"\nassembly = \"stone\"\narea = \"100 ft x 7 ft\"\ntoward = \"ground\"\ndepth = \"7 ft\"\n")
	w := row(t, r, "w")
	sum := 0.0
	for _, piece := range w.Detail {
		sum += piece.Share
		if !piece.Layer {
			t.Errorf("a path %q though nothing is known of paths through the soil", piece.Name)
		}
	}
	soil := w.Detail[len(w.Detail)-1]
	if !cmp.Equal(sum, 1.0, cmpopts.EquateApprox(1e-9, 0)) || soil.Name != "the soil" || soil.Share < 0.5 {
		t.Errorf("shares %+v sum to %v, want the soil to hold most", w.Detail, sum)
	}
	if r.Ranking.Weakest.Piece != "the soil" || !r.Ranking.Weakest.PieceLayer {
		t.Errorf("the weakest link names %q", r.Ranking.Weakest.Piece)
	}
}

// A cellar that only its walls in the ground part from outdoors: ISO 13370's wall is
// its H_ue, so that b follows by hand.
func TestBufferInTheGround(t *testing.T) {
	const cellar = "zone = \"6A\"\n[buffer.cellar]\nto_outdoors = [ { u = \"U-0.5\", area = \"20 ft2\" } ]\nto_ground = [ { kind = \"basement wall\", u = \"U-0.30\", area = \"40 m x 2 m\", depth = \"2 m\" }, { kind = \"basement floor\", area = \"100 m2\", perimeter = \"40 m\", depth = \"2 m\" } ]\n" +
		"[[part]]\nname = \"f\"\nkind = \"floor\"\nu = \"U-0.2\"\narea = \"100 m2\"\ntoward = \"buffer cellar\"\n"
	wall := envelope.GroundFloor{Area: 80, Perimeter: 40, Depth: 2, Wall: rvalue.Foot, Below: (0.30 * rvalue.UIP).R() - 0.17*rvalue.RSI}
	floor := envelope.GroundFloor{Area: 100, Perimeter: 40, Depth: 2, Wall: rvalue.Foot}
	w, err := wall.WallU()
	if err != nil {
		t.Fatal(err)
	}
	f, err := floor.U()
	if err != nil {
		t.Fatal(err)
	}
	out := (0.5 * rvalue.UIP).Times(20*rvalue.SquareFoot) + w.Times(80) + f.Times(100)
	in := (0.2 * rvalue.UIP).Times(100)
	want := float64(out) / float64(in+out)
	r := rank(t, cellar)
	if got := row(t, r, "f").Factor; !cmp.Equal(got, want, cmpopts.EquateApprox(1e-9, 0)) {
		t.Errorf("b = %v, by hand %v", got, want)
	}
}

// Within the area that the code exempts, a roof without attic is behind by what R-30
// would save, not by what the U-factor of R-49 would.
func TestExemptRoofIsBehindByLess(t *testing.T) {
	const file = "zone = \"6A\"\nedition = \"2021\"\n[assembly.r]\nfaces = \"roof\"\nlayers = \"gypsum 1/2 in + 2x6 @ 16 in (R-13) + plywood 1/2 in + asphalt shingles\"\n[assembly.c]\nfaces = \"ceiling\"\nlayers = \"gypsum 1/2 in + R-60\"\n" +
		"[[part]]\nname = \"r\"\nassembly = \"r\"\narea = \"100 ft2\"\n[[part]]\nname = \"c\"\nassembly = \"c\"\narea = \"%s\"\n"
	exempt, not := row(t, rank(t, fmt.Sprintf(file, "2000 ft2")), "r"), row(t, rank(t, fmt.Sprintf(file, "100 ft2")), "r")
	if want := exempt.U - (exempt.R() + 17*rvalue.RIP).U(); !cmp.Equal(float64(exempt.Behind), float64(want.Times(exempt.Area)), cmpopts.EquateApprox(1e-9, 0)) {
		t.Errorf("behind by %v, R-17 that is missing for R-30 would save %v", exempt.Behind, want.Times(exempt.Area))
	}
	if exempt.Behind >= not.Behind {
		t.Errorf("behind by %v where R-30 will do, %v where it will not", exempt.Behind, not.Behind)
	}
}

// A part that shares the name of the leakage is a step of its own.
func TestPartNamedAsTheLeakage(t *testing.T) {
	r := rank(t, "zone = \"6A\"\nleakage = { volume = \"8000 ft3\", ach50 = 11 }\n[[part]]\nname = \"air leakage\"\nkind = \"wall\"\nu = \"U-0.3\"\narea = \"100 ft2\"\n")
	steps, err := r.Order()
	if err != nil || len(steps) != 2 {
		t.Errorf("steps %+v, %v, want two", steps, err)
	}
}

// A House that a caller has changed into nonsense is refused, not followed.
func TestChangedHouse(t *testing.T) {
	for name, change := range map[string]func(h *house.House){
		"no window":  func(h *house.House) { h.Parts[0].Openings[0].Window = nil },
		"no part":    func(h *house.House) { h.Parts[0] = nil },
		"boundary":   func(h *house.House) { h.Parts[0].Toward = 7 },
		"kind":       func(h *house.House) { h.Parts[0].Kind = 77 },
		"no buffer":  func(h *house.House) { h.Parts[0].Toward = house.ToBuffer },
		"glazing":    func(h *house.House) { h.Parts[0].Kind = house.Glazing },
		"nil bridge": func(h *house.House) { h.Bridges = append(h.Bridges, nil) },
		"nil buffer": func(h *house.House) { h.Buffers = append(h.Buffers, nil) },
	} {
		h, err := house.Decode("f", []byte("zone = \"6A\"\n[window.w]\nu = \"U-1\"\n[[part]]\nname = \"p\"\nkind = \"wall\"\nu = \"U-0.3\"\narea = \"100 ft2\"\nopenings = [ { name = \"o\", window = \"w\", size = \"2 ft x 3 ft\" } ]\n"))
		if err != nil {
			t.Fatal(err)
		}
		change(h)
		if _, err := h.Rank(); err == nil {
			t.Errorf("%s: ranked all the same", name)
		}
	}
}

// TestBufferBalance checks that what enters an unheated space leaves it.
func TestBufferBalance(t *testing.T) {
	r := rank(t, `
zone = "5A"
indoors = { temperature = "20 °C" }
outdoors = { temperature = "-10 °C" }
[window.door]
u = "U-0.6"
[buffer.garage]
to_outdoors = [ { u = "2 W/(m²·K)", area = "30 m2" }, { window = "door", area = "10 m2" } ]
[[part]]
name = "wall"
kind = "wall"
u = "0.5 W/(m²·K)"
area = "20 m2"
toward = "buffer garage"
openings = [ { name = "door", window = "door", size = "0.9 m x 2 m" } ]
[[part]]
name = "floor"
kind = "floor"
u = "0.4 W/(m²·K)"
area = "40 m2"
toward = "buffer garage"
`)
	in, out := 20.0, -10.0 // °C
	entering, counted := 0.0, 0.0
	at := 0.0
	for _, row := range r.Ranking.Rows {
		at = row.At.Celsius()
		entering += float64(row.U) * float64(row.Area) * (in - at)
		counted += float64(row.UA) * (in - out)
	}
	leaving := float64(r.Envelope.Buffers[0].ToOutdoors) * (at - out)
	if !cmp.Equal(entering, leaving, cmpopts.EquateApprox(1e-9, 0)) || !cmp.Equal(entering, counted, cmpopts.EquateApprox(1e-9, 0)) {
		t.Errorf("%v W enter at %v °C, %v leave, %v are counted", entering, at, leaving, counted)
	}
}

// TestLeakage checks that the three ways of giving the leakage agree.
func TestLeakage(t *testing.T) {
	ua := func(leakage string) float64 {
		return row(t, rank(t, "zone = \"5A\"\nleakage = "+leakage+"\n[[part]]\nname = \"w\"\nkind = \"wall\"\nu = \"U-0.1\"\narea = \"90 ft2\"\n"), "air leakage").UA.IP()
	}
	// 12 air changes of 10 000 ft³ an hour are 2000 ft³ a minute; over 18.5 and
	// at 1.08 Btu/(h·°F) for each cubic foot a minute, ASHRAE Handbook.
	want := 2000 / 18.5 * 1.08
	for _, leakage := range []string{
		`{ volume = "10000 ft3", ach50 = 12 }`,
		`{ volume = "10000 ft3", flow50 = "2000 cfm" }`,
		`{ flow50 = "2000 cfm" }`,
		`{ volume = "10000 ft3", tightness = "drafty" }`,
	} {
		if got := ua(leakage); !cmp.Equal(got, want, cmpopts.EquateApprox(1e-9, 0)) {
			t.Errorf("%s: %v Btu/(h·°F), want %v", leakage, got, want)
		}
	}
}

// TestRemarks checks that remarks carry their place in the file.
func TestRemarks(t *testing.T) {
	const file = `place = "St. Louis County, MN"
zone = "4A"
[assembly.wall]
faces = "wall"
layers = '''
  gypsum 1/2" +
  2x4 @ 16" (fiberglass R-19) + osb 7/16 in'''
[assembly.spare]
faces = "wall"
layers = "brick 4 in"
[[part]]
name = "w"
assembly = "wall"
area = "90 ft2"
`
	r := rank(t, file)
	lines := strings.Split(file, "\n")
	// By code, what stands at the place of the first remark; "" for one about
	// the whole house.
	want := map[string]string{"squeezed": "fiberglass R-19", "framing": "2x4 @", "unused": "spare]", "zone": "", "defaults": ""}
	for _, m := range r.Remarks {
		start, ok := want[m.Code]
		delete(want, m.Code)
		switch {
		case !ok:
		case start == "" && m.Place != (house.Place{}):
			t.Errorf("%s has a place: %v", m.Code, m.Place)
		case start != "":
			if rest := string([]rune(lines[m.Place.Line-1])[m.Place.Column-1:]); !strings.HasPrefix(rest, start) {
				t.Errorf("%s points at %q, want %q", m.Code, rest, start)
			}
		}
	}
	for code := range want {
		t.Errorf("no remark %q", code)
	}
}
