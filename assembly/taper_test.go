package assembly_test

import (
	"math"
	"math/big"
	"testing"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/rvalue"
)

func TestTaperedPart(t *testing.T) {
	// Our arithmetic with R0 = 1, R1 = 3 m²·K/W, to half a unit of the fifth digit.
	for _, c := range []struct {
		name  string
		shape assembly.Taper
		want  float64
	}{
		{"rectangle", assembly.Rectangle, 0.46210},
		{"thickest at the apex", assembly.ThickApex, 0.565595},
		{"thinnest at the apex", assembly.ThinApex, 0.35860},
	} {
		got, err := assembly.TaperedPart{Shape: c.shape, Fixed: 1, Tapered: 3}.U()
		if err != nil || math.Abs(got.SI()-c.want) > 5e-6 {
			t.Errorf("%s: U = %v, %v, want %v", c.name, got.SI(), err, c.want)
		}
	}
}

// The closed forms lose their digits as R1/R0 goes to 0; the result must not.
// The expected value is the plan integral itself, by Gauss points on the strip
// of width w(s) at height s of the taper: mean of 1/(1 + x s) weighted by w.
func TestTaperTowardFlat(t *testing.T) {
	weights := map[assembly.Taper]func(s float64) float64{
		assembly.Rectangle: func(float64) float64 { return 1 },
		assembly.ThickApex: func(s float64) float64 { return 2 * (1 - s) },
		assembly.ThinApex:  func(s float64) float64 { return 2 * s },
	}
	for shape, w := range weights {
		for _, x := range []float64{1e-300, 1e-12, 1e-8, 1e-4, 1e-3, 0.01, 0.0499, 0.05, 0.0501, 0.1, 1, 10} {
			want := simpson(func(s float64) float64 { return w(s) / (1 + x*s) })
			got, err := assembly.TaperedPart{Shape: shape, Fixed: 1, Tapered: rvalue.Resistance(x)}.U()
			// 1e-13: cancellation of the closed form just above its switch.
			if err != nil || !near(got.SI(), want, 1e-13) {
				t.Errorf("shape %d, R1/R0 = %g: U = %.17g, %v, want %.17g", shape, x, got.SI(), err, want)
			}
		}
		flat, err := assembly.TaperedPart{Shape: shape, Fixed: 2}.U()
		if err != nil || !near(flat.SI(), 0.5, 1e-15) {
			t.Errorf("shape %d without taper: U = %v, %v, want 1/R0 = 0.5", shape, flat.SI(), err)
		}
	}
}

// simpson integrates a smooth f over 0..1: 4000 panels leave an error below
// 1e-14 for the functions here, whose fourth derivative is below 5e5; the sum
// is made in extended precision so that it is not the one that loses digits.
func simpson(f func(float64) float64) float64 {
	const n = 8000
	sum := new(big.Float).SetPrec(120)
	for i := range n + 1 {
		k := 2.0
		switch {
		case i == 0 || i == n:
			k = 1
		case i%2 == 1:
			k = 4
		}
		sum.Add(sum, big.NewFloat(k*f(float64(i)/n)))
	}
	v, _ := sum.Float64()
	return v / (3 * n)
}

func TestTaperedRoof(t *testing.T) {
	part := func(shape assembly.Taper, area rvalue.Area) assembly.TaperedPart {
		return assembly.TaperedPart{Shape: shape, Area: area, Slope: 1.0 / 60, Fixed: 1, Tapered: 3}
	}
	// A rectangle cut along its diagonal: the two triangles together are not the
	// rectangle's taper, but their mean by area must be that of their U.
	got, err := assembly.TaperedRoof(part(assembly.ThickApex, 10), part(assembly.ThinApex, 30))
	if want := (10*0.565595 + 30*0.35860) / 40; err != nil || math.Abs(got.SI()-want) > 5e-6 {
		t.Errorf("TaperedRoof = %v, %v, want %v", got.SI(), err, want)
	}
	// Half as many squares of either triangle make the rectangle: at each height
	// their widths 2(1−s) and 2s sum to the rectangle's.
	both, err := assembly.TaperedRoof(part(assembly.ThickApex, 5), part(assembly.ThinApex, 5))
	if err != nil {
		t.Fatal(err)
	}
	whole, err := assembly.TaperedRoof(part(assembly.Rectangle, 10))
	if err != nil || !near(both.SI(), whole.SI(), 1e-14) {
		t.Errorf("both triangles %v, rectangle %v, %v", both.SI(), whole.SI(), err)
	}
}

func TestTaperRefuses(t *testing.T) {
	good := assembly.TaperedPart{Area: 10, Slope: 0.02, Fixed: 1, Tapered: 3}
	nan := math.NaN()
	for name, change := range map[string]func(*assembly.TaperedPart){
		"fixed 0":          func(p *assembly.TaperedPart) { p.Fixed = 0 },
		"fixed NaN":        func(p *assembly.TaperedPart) { p.Fixed = rvalue.Resistance(nan) },
		"tapered negative": func(p *assembly.TaperedPart) { p.Tapered = -1 },
		"tapered infinite": func(p *assembly.TaperedPart) { p.Tapered = rvalue.Resistance(math.Inf(1)) },
		"slope of 6 %":     func(p *assembly.TaperedPart) { p.Slope = 0.06 },
		"slope NaN":        func(p *assembly.TaperedPart) { p.Slope = nan },
		"area 0":           func(p *assembly.TaperedPart) { p.Area = 0 },
		"no such shape":    func(p *assembly.TaperedPart) { p.Shape = 9 },
	} {
		p := good
		change(&p)
		if u, err := assembly.TaperedRoof(p); err == nil {
			t.Errorf("%s: TaperedRoof = %v, want an error", name, u)
		}
	}
	if _, err := assembly.TaperedRoof(); err == nil {
		t.Error("TaperedRoof() of nothing: no error")
	}
	at5 := good
	at5.Slope = 0.05
	if _, err := at5.U(); err != nil {
		t.Errorf("slope of 5 %%: %v", err)
	}
}
