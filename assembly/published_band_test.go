package assembly_test

import (
	"math"
	"strconv"
	"testing"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/rvalue"
)

// readNumbers reads the rows of a band file.
func readNumbers(t *testing.T, file string, heads []string) [][]float64 {
	t.Helper()
	_, _, rows := readSource(t, testdata+file, heads)
	out := make([][]float64, len(rows))
	for i, row := range rows {
		for _, field := range row.fields {
			x, err := strconv.ParseFloat(field, 64)
			if err != nil {
				t.Fatalf("%s:%d: %v", file, row.line, err)
			}
			out[i] = append(out[i], x)
		}
	}
	return out
}

// The table of sloped insulation does not say which roof it was made for. With
// R-5 at the thin edge on films of, a rectangle of the listed average
// must come out 3 to 6 % better than uniform insulation from R-10 on, a triangle
// thickest at its apex 4 to 8 % worse from R-20 on, and the mean of both within
// 2 % from R-15 on. Averages are whole numbers, which alone is worth 5 % at
// a rectangle passes if any average that rounds to the listed one does
// (R-11, R-13 and R-17 need it).
func TestPublishedSlopedInsulation(t *testing.T) {
	const films, edge = 0.78, 5.0 // h·ft²·°F/Btu
	mean := func(shape assembly.Taper, tapered float64) float64 {
		u, err := assembly.TaperedPart{
			Shape: shape, Slope: 0.25 / 12,
			Fixed: rvalue.Resistance(films+edge) * rvalue.RIP, Tapered: rvalue.Resistance(tapered) * rvalue.RIP,
		}.U()
		if err != nil {
			t.Fatal(err)
		}
		return u.IP()
	}
	// The average of a linear taper: half its maximum in a rectangle, a third in
	// a triangle thickest at its apex.
	rectangle := func(average float64) float64 { return mean(assembly.Rectangle, 2*(average-edge)) }
	triangle := func(average float64) float64 { return mean(assembly.ThickApex, 3*(average-edge)) }

	worst := 0.0
	for _, row := range readNumbers(t, "assemblies_sloped.csv", []string{"uniform", "average"}) {
		uniform, average := row[0], row[1]
		table := 1 / (films + uniform)
		low, high := rectangle(average+0.5)/table-1, rectangle(average-0.5)/table-1
		if uniform >= 10 && (low > -0.03 || high < -0.06) {
			t.Errorf("R-%g: a rectangle is %+.1f to %+.1f %% off the table, want 3 to 6 %% below", uniform, 100*low, 100*high)
		}
		if off := triangle(average)/table - 1; uniform >= 20 && !(off > 0.04 && off < 0.08) {
			t.Errorf("R-%g: a triangle is %+.1f %% off the table, want 4 to 8 %% above", uniform, 100*off)
		}
		if uniform >= 15 {
			worst = max(worst, math.Abs((rectangle(average)+triangle(average))/2/table-1))
		}
	}
	t.Logf("mean of both shapes from R-15 on: within %.2f %% of the table", 100*worst)
	if worst > 0.02 {
		t.Errorf("mean of both shapes off by %.2f %%, want within 2 %%", 100*worst)
	}
}

// Options that a table lists as equals for one U are R-values that can be
// bought: each must come close to the U and none may be much worse.
func TestPublishedSteelOptions(t *testing.T) {
	const (
		base = 2.05 // films, stucco and gypsum of the code's steel wall, h·ft²·°F/Btu
		// Both as found: continuous insulation is listed to 0.1 to 0.5, and the
		// U-factor to three decimals, 0.8 % of it.
		worse, better = 0.013, 0.045
	)
	for _, row := range readNumbers(t, "assemblies_deemedsteel.csv", []string{"depth", "cavity", "continuous", "u"}) {
		depth, cavity, continuous, want := row[0], row[1], row[2], row[3]
		layer, _, _, err := assembly.SteelLayer(rvalue.Length(depth)*rvalue.Inch, 16*rvalue.Inch, rvalue.Resistance(cavity)*rvalue.RIP)
		if err != nil {
			t.Errorf("R-%g + %g: %v", cavity, continuous, err)
			continue
		}
		u := 1 / (base + layer.IP() + continuous)
		if off := u/want - 1; off > worse || off < -better {
			t.Errorf("R-%g + %g: U %.4f, %+.1f %% of the listed %.3f", cavity, continuous, u, 100*off, want)
		}
	}
}
