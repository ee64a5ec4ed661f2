package material

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"gonum.org/v1/gonum/mat"

	"github.com/coldseam/coldseam/rvalue"
)

// read returns the records of a file of testdata, without its header.
func read(t *testing.T, name string) [][]string {
	t.Helper()
	f, err := os.Open(filepath.Join("..", "..", "testdata", name))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil || len(rows) < 2 {
		t.Fatalf("%s: %v", name, err)
	}
	return rows[1:]
}

func float(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// TestCurves fits the curves anew to the densities they were fitted to.
func TestCurves(t *testing.T) {
	const (
		digits = 0.002 // relative: the coefficients are written with four digits
		reach  = 0.0007
	)
	data := map[string][][2]float64{}
	for _, row := range read(t, "material_density.csv") {
		data[row[0]] = append(data[row[0]], [2]float64{float(t, row[2]), float(t, row[3])})
	}
	for fibre, points := range data {
		A, y := mat.NewDense(len(points), 3, nil), mat.NewVecDense(len(points), nil)
		for i, p := range points {
			A.SetRow(i, []float64{1, p[0], 1 / p[0]})
			y.SetVec(i, p[1])
		}
		var x mat.VecDense
		if err := x.SolveVec(A, y); err != nil {
			t.Fatal(err)
		}
		c := curves[fibre]
		for i, got := range []float64{c.a, c.b, c.c} {
			if want := x.AtVec(i); math.Abs(got-want) > digits*want {
				t.Errorf("%s: coefficient %d is %v, the fit gives %v", fibre, i, got, want)
			}
		}
		for _, p := range points {
			if off := c.at(p[0]) - p[1]; math.Abs(off) > reach {
				t.Errorf("%s of %v kg/m³: %.4f W/(m·K), printed %v", fibre, p[0], c.at(p[0]), p[1])
			}
		}
	}
}

// TestFitAgainstChart shows how well the fit, which knows nothing of the chart,
// gives the chart's cells.
func TestFitAgainstChart(t *testing.T) {
	const (
		most = 0.78 // h·ft²·°F/Btu, the largest difference stated in the comment of Squeeze
		rms  = 0.36
	)
	n, sum, worst := 0, 0.0, 0.0
	for _, row := range read(t, "material_compression.csv") {
		label, thickness, depth, want := float(t, row[0]), float(t, row[1]), float(t, row[2]), float(t, row[3])
		if depth >= thickness {
			continue
		}
		b := Batt{glassFibre, rvalue.Resistance(label) * rvalue.RIP, rvalue.Length(thickness) * rvalue.Inch, "JLC"}
		got := curves[glassFibre].squeezed(b, rvalue.Length(depth)*rvalue.Inch).IP()
		t.Logf("R-%v of %v in in %v in: fit %.2f, chart %v, off %+.2f", label, thickness, depth, got, want, got-want)
		n++
		sum += (got - want) * (got - want)
		worst = max(worst, math.Abs(got-want))
	}
	r := math.Sqrt(sum / float64(n))
	t.Logf("%d cells: largest difference %.2f, rms %.2f h·ft²·°F/Btu", n, worst, r)
	if n != 16 || worst > most || r > rms {
		t.Errorf("%d cells, largest difference %.2f, rms %.2f; stated are 16, %v, %v", n, worst, r, most, rms)
	}
}

// TestDensity holds that density inverts the curve on its light side.
func TestDensity(t *testing.T) {
	for fibre, c := range curves {
		least := math.Sqrt(c.c / c.b)
		for rho := 3.0; rho < least; rho *= 1.1 {
			if got := c.density(c.at(rho)); math.Abs(got-rho) > 1e-6*rho {
				t.Errorf("%s: density of k at %v is %v", fibre, rho, got)
			}
		}
		if got := c.density(0.01); math.Abs(got-least) > 1e-9 {
			t.Errorf("%s: density of an impossible k is %v, want %v", fibre, got, least)
		}
	}
}

// TestSourcesAreUsed holds that the list of sources names none for nothing.
func TestSourcesAreUsed(t *testing.T) {
	used := map[string]bool{"JLC": true} // the chart of Squeeze
	for _, b := range batts {
		used[b.source] = true
	}
	for m := range All() {
		for k := range strings.SplitSeq(m.Source, "+") {
			used[k] = true
		}
	}
	for k := range citations() {
		if !used[k] {
			t.Errorf("source %s is used by nothing", k)
		}
	}
	for k := range used {
		if _, ok := Citation(k); !ok {
			t.Errorf("source %s is unknown", k)
		}
	}
}

func TestDecodeRefuses(t *testing.T) {
	for _, c := range []struct{ name, table string }{
		{"nothing", ""},
		{"another header", "name\n"},
		{"a short row", header + "\nx,y\n"},
		{"an unknown class", header + "\nx,,cloth,,0.04,,,0.05,,,,MEM,,\n"},
		{"an unknown law", header + "\nx,,fibre,,0.04,,,0.05,,,hot,MEM,,\n"},
		{"a number that is none", header + "\nx,,fibre,,four,,,0.05,,,,MEM,,\n"},
		{"a piece that is none", header + "\nx,,fibre,,,0.1,,0.05,,,,MEM,,\n"},
		{"no source", header + "\nx,,fibre,,0.04,,,0.05,,,,,,\n"},
	} {
		if list, err := decode([]byte(c.table)); err == nil {
			t.Errorf("%s: decoded to %d rows", c.name, len(list))
		}
	}
}
