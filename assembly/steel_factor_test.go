package assembly_test

import (
	"math"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/rvalue"
)

func TestSteelCorrection(t *testing.T) {
	const in, r = rvalue.Inch, rvalue.RIP
	for _, c := range []struct {
		name           string
		depth, spacing rvalue.Length
		rated          rvalue.Resistance
		want           float64
		exact          bool
		source         string // part of it
	}{
		{"first row", 3.5 * in, 16 * in, 11 * r, 0.50, true, "ASHRAE Handbook"},
		{"last row of a group", 3.5 * in, 16 * in, 15 * r, 0.43, true, "from memory"},
		{"deep stud", 6 * in, 24 * in, 21 * r, 0.43, true, "from memory"},
		{"one row only", 8 * in, 16 * in, 25 * r, 0.31, true, "from memory"},
		{"3 5/8 in studs", 3.625 * in, 16 * in, 13 * r, 0.46, true, "Construction Specifier"},
		{"metric sizes, label in m²·K/W", 90 * rvalue.Millimetre, 600 * rvalue.Millimetre, 2.29, 0.55, true, "from memory"},
		{"half way between rows", 3.5 * in, 16 * in, 12 * r, 0.48, false, "straight line"},
		{"a quarter between rows", 6 * in, 16 * in, 19.5 * r, 0.365, false, "straight line"},
	} {
		got, source, exact, err := assembly.SteelCorrection(c.depth, c.spacing, c.rated)
		if err != nil || !near(got, c.want, 1e-12) || exact != c.exact || !strings.Contains(source, c.source) {
			t.Errorf("%s: SteelCorrection = %v, %q, %v, %v, want %v, …%s…, %v", c.name, got, source, exact, err, c.want, c.source, c.exact)
		}
	}
	for _, c := range []struct {
		name           string
		depth, spacing rvalue.Length
		rated          rvalue.Resistance
		want           string // part of the error
	}{
		{"below the rows", 3.5 * in, 16 * in, 10 * r, "R-11, R-13, R-15"},
		{"above the rows", 3.5 * in, 16 * in, 19 * r, "R-11, R-13, R-15"},
		{"empty", 3.5 * in, 16 * in, 0, "R-11, R-13, R-15"},
		{"NaN", 3.5 * in, 16 * in, rvalue.Resistance(math.NaN()), "R-11"},
		{"an odd depth", 5.5 * in, 16 * in, 19 * r, "3.5, 6 and 8 in"},
		{"an odd spacing", 3.5 * in, 19.2 * in, 13 * r, "16 and 24 in"},
		{"NaN depth", rvalue.Length(math.NaN()), 16 * in, 13 * r, "3.5, 6 and 8 in"},
	} {
		got, _, _, err := assembly.SteelCorrection(c.depth, c.spacing, c.rated)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: SteelCorrection = %v, %v, want an error with %q", c.name, got, err, c.want)
		}
	}
}

func TestSteelLayer(t *testing.T) {
	const in, r = rvalue.Inch, rvalue.RIP
	for _, c := range []struct {
		name           string
		depth, spacing rvalue.Length
		rated          rvalue.Resistance
		want           float64 // h·ft²·°F/Btu
	}{
		{"empty at 16 in", 3.5 * in, 16 * in, 0, 0.79},
		{"empty at 24 in", 3.5 * in, 24 * in, 0, 0.91},
		{"R-13 at 16 in, as printed", 3.5 * in, 16 * in, 13 * r, 6.0},
	} {
		got, source, exact, err := assembly.SteelLayer(c.depth, c.spacing, c.rated)
		if err != nil || !exact || source == "" || !near(got.IP(), c.want, 1e-12) {
			t.Errorf("%s: SteelLayer = R-%v, %q, %v, %v, want R-%v", c.name, got.IP(), source, exact, err, c.want)
		}
	}
	half, source, exact, err := assembly.SteelLayer(6*in, 16*in, 20*r)
	if err != nil || exact || !strings.Contains(source, "straight line") || !near(half.IP(), (7.1+7.4)/2, 1e-12) {
		t.Errorf("between R-19 and R-21: SteelLayer = R-%v, %q, %v, %v, want R-7.25 by a straight line", half.IP(), source, exact, err)
	}
	for name, depth := range map[string]rvalue.Length{"deep and empty": 6 * in, "odd and empty": 5 * in} {
		if got, _, _, err := assembly.SteelLayer(depth, 16*in, 0); err == nil {
			t.Errorf("%s: SteelLayer = %v, want an error", name, got)
		}
	}
	if got, _, _, err := assembly.SteelLayer(3.5*in, 16*in, -1); err == nil {
		t.Errorf("negative: SteelLayer = %v, want an error", got)
	}
}
