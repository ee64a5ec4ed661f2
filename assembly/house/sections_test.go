package house_test

import (
	"encoding/json"
	"math"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/assembly/house"
	solver "github.com/coldseam/coldseam/assembly/section"
	"github.com/coldseam/coldseam/rvalue"
)

// TestBridgesOfSections: a bridge's psi is its section's heat less that of the flanks, and
// the ranking counts it.
func TestBridgesOfSections(t *testing.T) {
	h := decode(t, testdata+"good/sections.toml")
	detail, _ := solver.FindDetail("rim joist, 2x4")
	r := solved(t, &house.Drawing{Section: detail.Section}, solver.Options{})
	for _, c := range []struct {
		bridge int
		want   rvalue.LinearTransmittance
	}{
		{1, r.Psi(detail.Flanks...)},
		{2, 0.05 * rvalue.PsiSI},
	} {
		if got := h.Bridges[c.bridge].Psi; math.Abs(float64(got-c.want)) > 1e-4 {
			t.Errorf("bridge %q: psi %v, want %v", h.Bridges[c.bridge].Name, got, c.want)
		}
	}
	post := h.Bridges[0]
	if b := post.Bracket; b == nil || !(b.Low <= post.Psi && post.Psi <= b.High) || post.External || post.Psi < 0.05*rvalue.PsiSI {
		t.Errorf("the post: psi %v, %+v", post.Psi, b)
	}
	report, err := h.Rank()
	if err != nil {
		t.Fatal(err)
	}
	found, said := false, 0
	for _, row := range report.Ranking.Rows {
		if row.Name == "posts" {
			found = math.Abs(float64(row.UA)-float64(post.Psi)*40*float64(rvalue.Foot)) < 1e-9
		}
	}
	for _, m := range report.Remarks {
		if m.Code == "section" && (strings.Contains(m.Text, "a steel post in the wall") || strings.Contains(m.Text, "as warm as the rooms")) && m.Place.Line > 0 {
			said++
		}
	}
	if !found || said != 2 {
		t.Errorf("the ranking counts the posts: %v; %d remarks on sections", found, said)
	}
}

// TestNumericBeforePsi: solved in their sections, assemblies give psi another U of the
// flank; the file and the library ask for that alike, and psi and ranking rest on one U.
func TestNumericBeforePsi(t *testing.T) {
	data := read(t, testdata+"good/sections.toml")
	hand := decode(t, testdata+"good/sections.toml")
	asked, err := house.Decoder{Numeric: true}.Decode("f", data)
	if err != nil {
		t.Fatal(err)
	}
	said, err := house.Decode("f", append([]byte("numeric = true\n"), data...))
	if err != nil {
		t.Fatal(err)
	}
	if a, b := asked.Bridges[0].Psi, said.Bridges[0].Psi; a != b || a == hand.Bridges[0].Psi || !asked.Numeric || !said.Numeric {
		t.Errorf("psi %v asked for, %v by the file, %v by hand", a, b, hand.Bridges[0].Psi)
	}
	report, err := said.Rank()
	if err != nil {
		t.Fatal(err)
	}
	if u := said.Sections[0].Flanks[0].U; math.Abs(float64(u-report.Assemblies[0].Result.Effective.U())) > 1e-12 {
		t.Errorf("the flank has U %v, the wall %v", u, report.Assemblies[0].Result.Effective.U())
	}
}

// TestSectionKeysAgree: what is drawn has the same keys in a file of its own and in a
// house's, but for a flank's assembly, and the schema names every section of the catalogue.
func TestSectionKeysAgree(t *testing.T) {
	definitions := func(schema []byte) map[string]any {
		var s struct{ Definitions map[string]any }
		if err := json.Unmarshal(schema, &s); err != nil {
			t.Fatal(err)
		}
		return s.Definitions
	}
	own, inside := definitions(house.DrawingSchema()), definitions(house.Schema())
	for name, d := range own {
		if name != "flank" && !reflect.DeepEqual(d, inside[name]) {
			t.Errorf("the schemas differ in %s", name)
		}
	}
	for _, d := range solver.Catalogue() {
		if !strings.Contains(string(house.Schema()), d.Name) {
			t.Errorf("the schema does not name %q", d.Name)
		}
	}
}

// TestFramingTwice: plates that a wall's U has are in the psi of our own sections too; how
// much is at most what the wall's U by the parallel path loses with studs alone, and a wall
// of those alone is not remarked on. What sections share is said once.
func TestFramingTwice(t *testing.T) {
	const file = `zone = "6A"
[assembly.wall]
faces = "wall"
layers = "gypsum 1/2 in + 2x4 @ 16 in%s (fiberglass R-13) + osb 7/16 in + vinyl siding"
[[part]]
name = "walls"
assembly = "wall"
area = "120 ft x 8 ft"
[[bridge]]
name = "rim"
section = "rim joist, 2x4"
length = "100 ft"
[[bridge]]
name = "corners"
section = "outer corner, 2x4"
length = "32 ft"
`
	remarks := func(framing string) (twice string, usual, ours int) {
		h, err := house.Decode("f", []byte(strings.Replace(file, "%s", framing, 1)))
		if err != nil {
			t.Fatal(err)
		}
		r, err := h.Rank()
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range r.Remarks {
			switch {
			case m.Code == "framing-twice":
				twice = m.Text
			case m.Code == "section" && m.About == "sections of our own":
				usual++
			case m.Code == "section":
				ours++
				if strings.Contains(m.Text, "framing") {
					t.Errorf("%s: %s", m.About, m.Text)
				}
			}
		}
		return twice, usual, ours
	}
	twice, usual, ours := remarks("")
	// By hand: gypsum, board, siding and films are, with
	// studs and fiberglass R-13 side by side: U 0.1441 and 0.0644. 25 % less 9.375 %
	// of 960 ft², times their difference, is 11.96 Btu/(h·°F).
	_, figures, _ := strings.Cut(twice, "up to about ")
	amount, _, _ := strings.Cut(figures, " ")
	if v, err := strconv.ParseFloat(amount, 64); err != nil || math.Abs(v-11.96) > 0.05 {
		t.Errorf("%q counted twice", amount)
	}
	if !strings.Contains(twice, "framing takes 25 % of these walls, studs alone 9 %") || !strings.Contains(twice, `"rim" and "corners"`) {
		t.Errorf("%q", twice)
	}
	if usual != 1 || ours != 2 {
		t.Errorf("%d remarks on what both rest on, %d on each", usual, ours)
	}
	if twice, _, _ := remarks(" framing 9 %"); twice != "" {
		t.Errorf("of studs alone: %q", twice)
	}
}

// TestOneKindOfDimensions: one section by both kinds of dimensions in one house is
// remarked on.
func TestOneKindOfDimensions(t *testing.T) {
	data := string(read(t, testdata+"good/sections.toml"))
	more := "\n[[bridge]]\nname = \"more posts\"\nsection = \"post\"\ndimensions = \"%s\"\nlength = \"8 ft\"\n"
	for by, want := range map[string]int{"internal": 0, "external": 1} {
		h, err := house.Decode("f", []byte(data+strings.Replace(more, "%s", by, 1)))
		if err != nil {
			t.Fatal(err)
		}
		r, err := h.Rank()
		if err != nil {
			t.Fatal(err)
		}
		said := 0
		for _, m := range r.Remarks {
			if m.Code == "dimensions" && m.About == "more posts" && m.Place.Line > 0 {
				said++
			}
		}
		if said != want {
			t.Errorf("%s: %d remarks", by, said)
		}
	}
}
