package material_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/coldseam/coldseam/rvalue"
	"github.com/coldseam/coldseam/rvalue/material"
)

func TestFindBattLabels(t *testing.T) {
	for _, row := range table(t, "material_labels.csv") {
		label := rvalue.Resistance(num(t, row["label"])) * rvalue.RIP
		batts, err := material.FindBatt("fiberglass", label)
		if err != nil {
			t.Errorf("R-%s: %v", row["label"], err)
			continue
		}
		var got, want []float64
		for _, b := range batts {
			if b.Source == "LAB" || b.Source == "IHB" {
				got = append(got, math.Round(1000*b.Thickness.Inches())/1000)
			}
			if _, ok := material.Citation(b.Source); !ok {
				t.Errorf("R-%s: unknown source %q", row["label"], b.Source)
			}
		}
		for f := range strings.FieldsSeq(row["thicknesses_in"]) {
			want = append(want, num(t, f))
		}
		if d := cmp.Diff(want, got); d != "" {
			t.Errorf("R-%s, thickest first, -want +got:\n%s", row["label"], d)
		}
	}
}

func TestFindBatt(t *testing.T) {
	for _, c := range []struct {
		name   string
		label  rvalue.Resistance
		inches []float64
	}{
		{"fiberglass batt", 13 * rvalue.RIP, []float64{3.5}},
		{"Fibreglass", 13 * rvalue.RIP, []float64{3.5}},
		{"fiberglass", 2.3 * rvalue.RSI, []float64{3.5}},     // a metric label is R-13
		{"fiberglass", 3.52 * rvalue.RSI, []float64{5.5}},    // and R-20
		{"fiberglass", 22 * rvalue.RIP, []float64{6.5, 5.5}}, // two trades, two depths
		{"fiberglass", 30 * rvalue.RIP, []float64{10, 8.25}},
		{"fiberglass", 38 * rvalue.RIP, []float64{12, 10}},
		{"fiberglass", 49 * rvalue.RIP, []float64{14}},
		{"rock wool", 15 * rvalue.RIP, []float64{3.5}},
		{"mineral wool", 23 * rvalue.RIP, []float64{5.5}},
		{"cotton batts", 19 * rvalue.RIP, []float64{5.5}},
		{"mineral wool", 24 * rvalue.RIP, []float64{5.5}},
		{"fiberglass", 14 * rvalue.RIP, []float64{3.5}},
		{"fiberglass", 24 * rvalue.RIP, []float64{5.5}},
	} {
		batts, err := material.FindBatt(c.name, c.label)
		if err != nil {
			t.Errorf("FindBatt(%q, %v): %v", c.name, c.label, err)
			continue
		}
		var got []float64
		for _, b := range batts {
			got = append(got, math.Round(1000*b.Thickness.Inches())/1000)
		}
		if d := cmp.Diff(c.inches, got); d != "" {
			t.Errorf("FindBatt(%q, %v), -want +got:\n%s", c.name, c.label, d)
		}
	}
	for _, c := range []struct {
		name  string
		label rvalue.Resistance
		says  string
	}{
		{"fiberglass", 16 * rvalue.RIP, "R-15"},
		{"fiberglass", 0, "R-13"},
		{"fiberglass", rvalue.Resistance(math.NaN()), "R-13"},
		{"cellulose", 13 * rvalue.RIP, "not sold as batts"},
		{"blown fiberglass", 13 * rvalue.RIP, "not sold as batts"},
		{"fibreglas", 13 * rvalue.RIP, "fiberglass"},
	} {
		if got, err := material.FindBatt(c.name, c.label); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("FindBatt(%q, %v) = %v, %v, want an error with %q", c.name, c.label, got, err, c.says)
		}
	}
	var unknown *material.UnknownError
	if _, err := material.FindBatt("fibreglas", 13*rvalue.RIP); !errors.As(err, &unknown) {
		t.Errorf("an unknown fibre gives %v, want an UnknownError", err)
	}
}

// TestSqueezeChart holds every cell of the published chart.
func TestSqueezeChart(t *testing.T) {
	const printed = 1e-9 // relative: the chart's own figures are returned
	for _, row := range table(t, "material_compression.csv") {
		label, thickness, depth := num(t, row["label"]), num(t, row["thickness_in"]), num(t, row["depth_in"])
		b := glass(label, thickness)
		s, err := material.Squeeze(b, rvalue.Length(depth)*rvalue.Inch)
		if err != nil {
			t.Errorf("R-%v of %v in in %v in: %v", label, thickness, depth, err)
			continue
		}
		want, basis := num(t, row["r"]), "chart"
		if depth >= thickness {
			basis = "label"
		}
		if math.Abs(s.R.IP()-want) > printed*want || s.Basis != basis {
			t.Errorf("R-%v of %v in in %v in: R-%.2f by %s, want R-%v by %s", label, thickness, depth, s.R.IP(), s.Basis, want, basis)
		}
		if left := depth - thickness; left > 0 && math.Abs(s.LeftOver.Inches()-left) > 1e-9 {
			t.Errorf("R-%v of %v in in %v in leaves %v in, want %v", label, thickness, depth, s.LeftOver.Inches(), left)
		}
	}
}

func TestSqueeze(t *testing.T) {
	for _, c := range []struct {
		name   string
		b      material.Batt
		inches float64
		r      float64 // h·ft²·°F/Btu
		basis  string
		tol    float64
	}{
		{"a 1/16 in. off the chart is on it", glass(38, 12), 9.2, 33, "chart", 1e-9},
		{"a batt that fits", glass(13, 3.5), 3.5, 13, "label", 1e-9},
		{"a batt that fits loosely", glass(13, 3.5), 5.5, 13, "label", 1e-9},
		{"between two cells: 28 at 7 1/4 in., 33 at 9 1/4 in., 29.9 on a straight line", glass(38, 12), 8, 29.9, "fit", 0.3},
		{"not in the chart: R-13 in 2 1/2 in.", glass(13, 3.5), 2.5, 10.4, "fit", 0.3},
		{"mineral wool R-23 in 3 1/2 in.", material.Batt{Fibre: "mineral wool", Label: 23 * rvalue.RIP, Thickness: 5.5 * rvalue.Inch}, 3.5, 15, "fit", 0.5},
		{"a label denser than the curve knows", glass(16, 3.5), 3, 13.7, "fit", 0.3},
	} {
		s, err := material.Squeeze(c.b, rvalue.Length(c.inches)*rvalue.Inch)
		if err != nil || math.Abs(s.R.IP()-c.r) > c.tol || s.Basis != c.basis {
			t.Errorf("%s: R-%.3f by %s, %v, want R-%v by %s", c.name, s.R.IP(), s.Basis, err, c.r, c.basis)
		}
	}
	for _, c := range []struct {
		name  string
		b     material.Batt
		depth rvalue.Length
		says  string
	}{
		{"under a quarter", glass(38, 12), 2.9 * rvalue.Inch, "quarter"},
		{"no depth", glass(13, 3.5), 0, "depth"},
		{"NaN depth", glass(13, 3.5), rvalue.Length(math.NaN()), "depth"},
		{"endless depth", glass(13, 3.5), rvalue.Length(math.Inf(1)), "depth"},
		{"no batt", material.Batt{Fibre: "fiberglass"}, rvalue.Inch, "label"},
		{"NaN label", glass(math.NaN(), 3.5), rvalue.Inch, "label"},
		{"an unknown fibre", material.Batt{Fibre: "moss", Label: 2, Thickness: 0.1}, rvalue.Inch, "moss"},
	} {
		if s, err := material.Squeeze(c.b, c.depth); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v, %v, want an error with %q", c.name, s, err, c.says)
		}
	}
}

// TestSqueezeCode compares with the energy code's table of the same, which is
// from memory and thus decides nothing.
func TestSqueezeCode(t *testing.T) {
	for _, row := range table(t, "material_compression_code.csv") {
		label, thickness, depth := num(t, row["label"]), num(t, row["thickness_in"]), num(t, row["depth_in"])
		s, err := material.Squeeze(glass(label, thickness), rvalue.Length(depth)*rvalue.Inch)
		if err != nil {
			t.Error(err)
			continue
		}
		t.Logf("R-%v of %v in in %v in: R-%.1f by %s, %s there", label, thickness, depth, s.R.IP(), s.Basis, row["r"])
	}
}

// TestSqueezeGrows is the property that a deeper bay never makes a batt worse,
// that no bay makes it better than its label, and that the label's thickness gives
// the label.
func TestSqueezeGrows(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 2))
	const slack = 1e-12 // relative, of rounding
	check := func(b material.Batt) {
		last := 0.0
		for i := range 600 {
			f := 0.25 + 0.75*float64(i)/599
			s, err := material.Squeeze(b, rvalue.Length(f*float64(b.Thickness)))
			if err != nil {
				if f < 0.2501 {
					continue
				}
				t.Fatalf("%v at %v: %v", b, f, err)
			}
			r := float64(s.R)
			if r < last*(1-slack) || r > float64(b.Label)*(1+slack) {
				t.Fatalf("%s R-%.2f of %.3g in: R-%.3f at %.4f of its thickness after R-%.3f", b.Fibre, b.Label.IP(), b.Thickness.Inches(), s.R.IP(), f, rvalue.Resistance(last).IP())
			}
			last = r
		}
		if math.Abs(last-float64(b.Label)) > slack*float64(b.Label) {
			t.Fatalf("%v ends at %v", b, last)
		}
	}
	for _, fibre := range []string{"fiberglass", "mineral wool", "cotton"} {
		for r := 5.0; r < 60; r++ {
			batts, err := material.FindBatt(fibre, rvalue.Resistance(r)*rvalue.RIP)
			if err != nil {
				continue
			}
			for _, b := range batts {
				check(b)
			}
		}
		for range 100 {
			k := 0.030 + 0.025*rnd.Float64() // a label between dense and light
			d := (2 + 12*rnd.Float64()) * 0.0254
			check(material.Batt{Fibre: fibre, Label: rvalue.Resistance(d / k), Thickness: rvalue.Length(d)})
		}
	}
}

func glass(label, inches float64) material.Batt {
	return material.Batt{Fibre: "fiberglass", Label: rvalue.Resistance(label) * rvalue.RIP, Thickness: rvalue.Length(inches) * rvalue.Inch}
}
