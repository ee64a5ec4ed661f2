package material_test

import (
	"errors"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/rvalue/material"
)

// lookups are names as strangers write them, and the material they mean.
var lookups = []struct{ asked, want string }{
	// as the layer notation and its examples write them
	{"gypsum", "gypsum board"},
	{"plaster", "plaster"},
	{"fiberglass", "fiberglass"},
	{"osb", "OSB"},
	{"vinyl siding", "vinyl siding"},
	{"board sheathing", "board sheathing"},
	{"wood bevel siding", "wood bevel siding"},
	{"xps", "XPS"},
	{"fir", "Douglas fir"},
	{"house wrap", "house wrap"},
	{"concrete block", "concrete block"},
	// other names of the trade
	{"drywall", "gypsum board"},
	{"plasterboard", "gypsum board"},
	{"lath and plaster", "lath and plaster"},
	{"lime plaster on wood lath", "lath and plaster"},
	{"rock wool", "mineral wool"},
	{"batt", "fiberglass"},
	{"polyiso", "polyiso"},
	{"open-cell foam", "open-cell spray foam"},
	{"insulation board", "fiberboard"},
	{"brick", "common brick"},
	{"brick veneer", "face brick"},
	{"clapboard", "wood bevel siding"},
	{"CMU", "concrete block"},
	{"cedar shingles", "wood shingles"},
	{"oak floor", "hardwood flooring"},
	{"tar paper", "asphalt felt"},
	{"felt", "asphalt felt"},
	{"No. 15 felt", "asphalt felt"},
	{"tile", "ceramic tile"},
	{"lumber", "softwood"},
	{"timber wall", "log wall"},
	{"vapour barrier", "polyethylene"},
	{"AAC", "aerated concrete"},
	{"dimension lumber", "spruce-pine-fir"},
	{"tin ceiling", "steel"},
	// case, plural, punctuation, hyphens, order, words run together
	{"GYPSUM BOARD", "gypsum board"},
	{"  Gypsum   Boards ", "gypsum board"},
	{"board, gypsum", "gypsum board"},
	{"closed cell spray foam", "closed-cell spray foam"},
	{"sprayfoam closed-cell", ""},
	{"housewrap", "house wrap"},
	{"fiber board", "fiberboard"},
	{"hard board", "hardboard"},
	{"batts", "fiberglass"},
	{"slates", "slate"},
	{"sheeps wool", "sheep's wool"},
	{"sheep’s wool", "sheep's wool"},
	{"plaster & lath", "lath and plaster"},
	{"dense-packed cellulose", "dense-pack cellulose"},
	{"siding (vinyl)", "vinyl siding"},
	{"brick, common", "common brick"},
	// British and American spelling
	{"aluminium siding", "aluminum siding"},
	{"fibreglass", "fiberglass"},
	{"wood fibre board", "wood fiber board"},
	{"grey EPS", "graphite EPS"},
	{"fibre-cement siding", "fiber-cement siding"},
	{"chipboard", "particleboard"},
	// a word too many, a word too few
	{"fiberglass insulation", "fiberglass"},
	{"rock wool insulation", "mineral wool"},
	{"vermiculite insulation", "vermiculite"},
	{"polyurethane", "polyurethane board"},
	{"novelty", "wood drop siding"},
	{"oriented strand", "OSB"},
	// cautions must not hide behind a name
	{"asbestos shingles", "asbestos-cement shingles"},
	{"vermiculite", "vermiculite"},
	{"lead paint", "oil paint"},
	// of the everyday list
	{"mineral wool", "mineral wool"},
	{"cellulose", "cellulose"},
	{"eps", "EPS"},
	{"plywood", "plywood"},
	{"particleboard", "particleboard"},
	{"concrete", "concrete"},
	{"hollow clay tile", "hollow clay tile"},
	{"stucco", "stucco"},
	{"aluminum siding", "aluminum siding"},
	{"wood shingles", "wood shingles"},
	{"asphalt shingles", "asphalt shingles"},
	{"slate", "slate"},
	{"pine", "pine"},
	{"spruce", "spruce"},
	{"softwood", "softwood"},
	{"hardwood", "hardwood"},
	{"carpet", "carpet"},
	{"linoleum", "linoleum"},
	{"polyethylene", "polyethylene"},
	{"steel", "steel"},
	{"aluminum", "aluminum"},
	{"glass", "glass"},
	{"adobe", "adobe"},
	{"straw bale", "straw bale"},
	{"cork", "cork"},
	{"hemp", "hemp"},
	{"aerogel blanket", "aerogel blanket"},
	{"sand", "sand"},
	{"gravel", "gravel"},
	{"clay soil", "clay soil"},
	{"limestone", "limestone"},
	{"sandstone", "sandstone"},
	{"granite", "granite"},
	{"marble", "marble"},
	{"aerated concrete", "aerated concrete"},
	{"insulated vinyl siding", "insulated vinyl siding"},
	{"built-up roofing", "built-up roofing"},
	{"EPDM", "EPDM"},
	{"cement board", "cement board"},
	{"hardboard siding", "hardboard siding"},
	{"log", "log wall"},
	{"sawdust", "sawdust"},
	{"newspaper", "newspaper"},
}

func TestFind(t *testing.T) {
	for _, c := range lookups {
		m, err := material.Find(c.asked)
		switch {
		case c.want == "" && err == nil:
			t.Errorf("Find(%q) = %s, want an error", c.asked, m.Name)
		case c.want != "" && err != nil:
			t.Errorf("Find(%q): %v, want %s", c.asked, err, c.want)
		case c.want != "" && m.Name != c.want:
			t.Errorf("Find(%q) = %s, want %s", c.asked, m.Name, c.want)
		}
	}
}

// TestCalled: a part of a name finds a material that is not called so.
func TestCalled(t *testing.T) {
	for _, c := range []struct {
		asked string
		want  bool
	}{
		{"gypsum board", true},
		{"Drywall", true},
		{"boards, gypsum", true},
		{"gypsum board insulation", true},
		{"housewrap", true},
		{"fibreglass", true},
		{"hard", false},
		{"novelty", false},
		{"oriented strand", false},
	} {
		m, err := material.Find(c.asked)
		if err != nil {
			t.Fatal(err)
		}
		if got := m.Called(c.asked); got != c.want {
			t.Errorf("%s is called %q: %v, want %v", m.Name, c.asked, got, c.want)
		}
	}
	for m := range material.All() {
		for _, name := range append(m.Aliases, m.Name) {
			if !m.Called(name) {
				t.Errorf("%s is not called %s", m.Name, name)
			}
		}
	}
}

func TestFindSuggests(t *testing.T) {
	for _, c := range []struct {
		asked     string
		ambiguous bool
		near      string // must be among the suggestions; "" for none at all
	}{
		{"fibreglas", false, "fiberglass"},
		{"gypsm", false, "gypsum"},
		{"plasterbord", false, "plasterboard"},
		{"brik", false, "brick"},
		{"vinal siding", false, "vinyl siding"},
		{"polyisocianurate", false, "polyisocyanurate"},
		{"rokc wool", false, "rock wool"},
		{"celulose", false, "cellulose"},
		{"rigid foam", true, "polyiso"},
		{"vinyl", true, "vinyl siding"},
		{"stone", true, "rubble stone masonry"},
		{"foam", true, "open-cell spray foam"},
		{"spray foam", true, "closed-cell spray foam"},
		{"block", true, "concrete block"},
		{"shingles", true, "asphalt shingles"},
		{"wool", true, "sheep's wool"},
		{"gypsum 1/2", false, "gypsum"},
		{"qqqqqqq", false, ""},
		{"", false, ""},
		{"-", false, ""},
	} {
		m, err := material.Find(c.asked)
		var e *material.UnknownError
		if !errors.As(err, &e) {
			t.Errorf("Find(%q) = %v, %v, want an UnknownError", c.asked, m, err)
			continue
		}
		if e.Name != c.asked || e.Ambiguous != c.ambiguous {
			t.Errorf("Find(%q): Name %q, Ambiguous %v, want %v", c.asked, e.Name, e.Ambiguous, c.ambiguous)
		}
		if c.near == "" && len(e.Near) > 0 {
			t.Errorf("Find(%q) suggests %q, want nothing", c.asked, e.Near)
		}
		if c.near != "" && !strings.Contains(e.Error(), c.near) {
			t.Errorf("Find(%q) says %q, want something of %q", c.asked, e, c.near)
		}
		for _, n := range e.Near {
			if _, err := material.Find(n); err != nil {
				t.Errorf("Find(%q) suggests %q, which is unknown: %v", c.asked, n, err)
			}
		}
	}
}

func FuzzFind(f *testing.F) {
	for _, c := range lookups {
		f.Add(c.asked)
	}
	for _, s := range []string{"", "foam", "fibreglas", "½\x00", "’’s", "ſs ß İ", strings.Repeat("a ", 50), "\xff"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, name string) {
		m, err := material.Find(name)
		if err == nil {
			if again, err := material.Find(m.Name); err != nil || again != m {
				t.Fatalf("Find(%q) is %s, which finds %v, %v", name, m.Name, again, err)
			}
			return
		}
		var e *material.UnknownError
		if !errors.As(err, &e) || e.Name != name || e.Ambiguous && len(e.Near) < 2 {
			t.Fatalf("Find(%q): %#v", name, err)
		}
		for _, n := range e.Near {
			if _, err := material.Find(n); err != nil {
				t.Fatalf("Find(%q) suggests %q: %v", name, n, err)
			}
		}
		_ = material.Search(name)
	})
}

var sinkMaterial *material.Material

func BenchmarkFindExact(b *testing.B) {
	material.Default()
	b.ReportAllocs()
	for b.Loop() {
		m, err := material.Find("gypsum board")
		if err != nil {
			b.Fatal(err)
		}
		sinkMaterial = m
	}
}

func BenchmarkFindForgiving(b *testing.B) {
	material.Default()
	b.ReportAllocs()
	for b.Loop() {
		m, err := material.Find("Boards, Fibre-Cement")
		if err != nil {
			b.Fatal(err)
		}
		sinkMaterial = m
	}
}

var sinkError error

func BenchmarkFindUnknown(b *testing.B) {
	material.Default()
	b.ReportAllocs()
	for b.Loop() {
		_, sinkError = material.Find("fibreglas bats")
	}
}

// TestFindExactAllocatesNothing holds the promise of Find.
func TestFindExactAllocatesNothing(t *testing.T) {
	for _, name := range []string{"gypsum board", "OSB", "osb", "drywall", "vinyl siding"} {
		if n := testing.AllocsPerRun(100, func() { sinkMaterial, _ = material.Find(name) }); n > 0 {
			t.Errorf("Find(%q) allocates %v times", name, n)
		}
	}
}
