package target

import (
	"slices"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/testdata"
)

// readCSV reads a file of testdata, where a row may not leave its mark empty.
func readCSV(t *testing.T, name string) []testdata.Row {
	t.Helper()
	return testdata.Read(t, name)
}

// zonesIn reads the zones of a row; "3A warm-humid" stands alone.
func zonesIn(t *testing.T, s string) (zs []Zone) {
	t.Helper()
	names := strings.Fields(s)
	if strings.Contains(s, "humid") {
		names = []string{s}
	}
	for _, name := range names {
		z, err := ParseZone(name)
		if err != nil {
			t.Fatal(err)
		}
		zs = append(zs, z)
	}
	return zs
}

func editionsIn(t *testing.T, s string) (es []Edition) {
	t.Helper()
	for _, name := range strings.Fields(s) {
		e, err := ParseEdition(name)
		if err != nil {
			t.Fatal(err)
		}
		es = append(es, e)
	}
	return es
}

// componentIn reads a component by its printed name, with the facts that a
// suffix stands for.
func componentIn(t *testing.T, s string) (Component, Facts) {
	t.Helper()
	var f Facts
	if name, ok := strings.CutSuffix(s, " inside"); ok {
		s, f.InteriorMassInsulation = name, true
	}
	if name, ok := strings.CutSuffix(s, " heated"); ok {
		s, f.HeatedSlab = name, true
	}
	i := slices.Index(componentNames[:], s)
	if i <= 0 {
		t.Fatalf("no component %q", s)
	}
	return Component(i), f
}

func floatIn(t *testing.T, s string) float64 {
	t.Helper()
	return testdata.Number(t, s)
}

// cellText prints options in the CSV's form: "20|13+5ci", "0" for nothing.
func cellText(os []Option) string {
	if len(os) == 0 {
		return "0"
	}
	var parts []string
	for _, o := range os {
		parts = append(parts, strings.TrimPrefix(o.String(), "R-"))
	}
	return strings.Join(parts, "|")
}

// mustFor is For for zones, editions and facts that exist.
func mustFor(t testing.TB, z Zone, e Edition, c Component, f Facts) Requirement {
	t.Helper()
	r, err := For(z, e, c, f)
	if err != nil {
		t.Fatalf("For(%v, %v, %v, %+v): %v", z, e, c, f, err)
	}
	return r
}

func mustZone(t testing.TB, s string) Zone {
	t.Helper()
	z, err := ParseZone(s)
	if err != nil {
		t.Fatal(err)
	}
	return z
}
