package house_test

import (
	"encoding/json"
	"math"
	"reflect"
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
