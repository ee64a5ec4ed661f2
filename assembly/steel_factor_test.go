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
	// Our own, off the rows: by hand, from the rows beside.
	for _, c := range []struct {
		name                  string
		depth, spacing, rated float64
		want                  float64
		source                string // part of it
	}{
		{"half way between R-19 and R-21 in 1/R", 6, 16, 2 / (1/19.0 + 1/21.0), 2 / (1/7.1 + 1/7.4), "between the rows R-19 and R-21"},
		{"beyond R-15", 3.5, 16, 30, 1 / (1/30.0 + 1/6.4 - 1/15.0), "as in that of R-15"},
		{"below R-19", 6, 24, 11, 1 / (1/11.0 + 1/8.6 - 1/19.0), "as in that of R-19"},
		{"half way between the spacings in 1/s, 24 in as 600 mm", 3.5, 2 / (1/16.0 + 1/23.6), 13, 2 / (1/6.0 + 1/7.2), "between the spacings"},
		// The row's spacings reach from 15.6 to 24.4 in; beyond, each stud carries the same.
		{"closer than 16 in", 6, 12, 19, 1 / (1/19.0 + (1/7.1-1/19.0)*15.6/12), "each stud is taken to carry what it does at 16 in"},
		{"wider than 24 in", 8, 48, 25, 1 / (1/25.0 + (1/9.6-1/25.0)*24.4/48), "each stud is taken to carry what it does at 24 in"},
		{"empty, beside which studs conduct as beside R-11", 3.5, 12, 0, 1 / (1/0.79 + (1/5.5-1/11.0)*(15.6/12-1)), "beyond the spacings"},
		{"half way between the depths", (3.65 + 5.85) / 2, 16, 13, 2 / (1/6.0 + 1/13.0 + 1/7.1 - 1/19.0), "between the depths of 3.5 and 6 in"},
	} {
		got, source, exact, err := assembly.SteelLayer(rvalue.Length(c.depth)*in, rvalue.Length(c.spacing)*in, rvalue.Resistance(c.rated)*r)
		if err != nil || exact || !strings.Contains(source, c.source) || !strings.Contains(source, "ASHRAE 90.1") || !near(got.IP(), c.want, 1e-12) {
			t.Errorf("%s: SteelLayer = R-%v, %q, %v, %v, want R-%v, …%s…", c.name, got.IP(), source, exact, err, c.want, c.source)
		}
	}
	for name, depth := range map[string]rvalue.Length{"deep and empty": 6 * in, "odd and empty": 5 * in} {
		if got, _, _, err := assembly.SteelLayer(depth, 16*in, 0); err == nil {
			t.Errorf("%s: SteelLayer = %v, want an error", name, got)
		}
	}
	nan, inf := math.NaN(), math.Inf(1)
	for _, c := range [][3]float64{{3.5, 16, -1}, {3.5, 16, nan}, {3.5, 16, inf}, {3.5, nan, 13}, {3.5, inf, 13}, {3.5, 0, 13}, {3.5, -20, 13}, {3.5, 1.6, 13}, {3.3, 16, 13}, {8.2, 16, 13}, {nan, 19.2, 13}, {6, 12, 0}, {5, 30, 0}} {
		if got, _, _, err := assembly.SteelLayer(rvalue.Length(c[0])*in, rvalue.Length(c[1])*in, rvalue.Resistance(c[2])*r); err == nil {
			t.Errorf("SteelLayer(%v) = %v, want an error", c, got)
		}
	}
}

// Studs of 6 in read between those of 3 1/2 and 8 in, as if they had no rows, are
// what their own rows print, within 1 %: the straight line in the depth is sound.
func TestSteelBetweenDepths(t *testing.T) {
	const in, r = rvalue.Inch, rvalue.RIP
	for _, c := range []struct{ spacing, rated, printed float64 }{{16, 19, 7.1}, {16, 21, 7.4}, {24, 19, 8.6}, {24, 21, 9.0}} {
		u := func(depth rvalue.Length) float64 {
			got, _, _, err := assembly.SteelLayer(depth*in, rvalue.Length(c.spacing)*in, rvalue.Resistance(c.rated)*r)
			if err != nil {
				t.Fatal(err)
			}
			return 1 / got.IP()
		}
		between := 1 / (u(3.5) + (6-3.5)/(8-3.5)*(u(8)-u(3.5)))
		if math.Abs(between/c.printed-1) > 0.01 {
			t.Errorf("R-%g at %g in: R-%.2f between the other depths, its own row prints R-%g", c.rated, c.spacing, between, c.printed)
		}
	}
}

// More in the cavity, and studs wider apart, never make less of the layer; it
// never jumps, and never resists more than its cavity. Studs that stand so much
// wider apart make no more of it than that.
func TestSteelLayerIsMonotone(t *testing.T) {
	const in, r = rvalue.Inch, rvalue.RIP
	for _, depth := range []rvalue.Length{3.5, 4, 5.5, 6, 7, 8} {
		var closer []float64
		for s := 6.05; s < 60; s += 0.1 {
			row, last := []float64{}, 0.0
			for x := 0.1; x < 60; x += 0.3 {
				got, _, _, err := assembly.SteelLayer(depth*in, rvalue.Length(s)*in, rvalue.Resistance(x)*r)
				if err != nil {
					t.Fatal(err)
				}
				e := got.IP()
				if !(e > last && e-last < 0.3 && e < x) {
					t.Errorf("%v in @ %.2f in, R-%.1f: R-%.4f behind R-%.4f", float64(depth), s, x, e, last)
				}
				if i := len(row); closer != nil && !(e >= closer[i]*(1-rounding) && e <= closer[i]*s/(s-0.1)*(1+rounding)) {
					t.Errorf("%v in, R-%.1f: R-%.4f at %.2f in, R-%.4f at 0.1 in less", float64(depth), x, e, s, closer[i])
				}
				row, last = append(row, e), e
			}
			closer = row
		}
	}
}
