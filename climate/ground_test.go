package climate

import (
	"math"
	"testing"

	"github.com/coldseam/coldseam/rvalue"
)

// TestGround holds the formula against the reference notes' figures, computed there
// from the same formula to four decimals.
func TestGround(t *testing.T) {
	g := Ground{Mean: rvalue.FromCelsius(12), Amplitude: 10 * rvalue.Kelvin, ColdestDay: 35, Diffusivity: TypicalDiffusivity}
	for _, row := range [...]struct{ depth, day, want float64 }{
		{0, 35, 2},
		{0, 217.625, 22},
		{1, 35, 6.2262},
		{1, 217.625, 17.7738},
		{2, 35, 9.4292},
		{5, 35, 12.6588},
		{10, 35, 12.0286},
	} {
		got, err := g.At(rvalue.Length(row.depth)*rvalue.Metre, row.day)
		if err != nil || math.Abs(got.Celsius()-row.want) > 0.5e-4 {
			t.Errorf("At(%g m, day %g) = %.5f °C, %v; want %.4f", row.depth, row.day, got.Celsius(), err, row.want)
		}
	}
	for _, bad := range [...]struct{ depth, day float64 }{{-1, 1}, {math.NaN(), 1}, {math.Inf(1), 1}, {1, math.NaN()}, {1, math.Inf(-1)}} {
		if got, err := g.At(rvalue.Length(bad.depth), bad.day); err == nil {
			t.Errorf("At(%g, %g) = %v, want an error", bad.depth, bad.day, got)
		}
	}
	if got, err := (Ground{}).At(rvalue.Metre, 1); err == nil {
		t.Errorf("the zero Ground is at %v, want an error", got)
	}
}

// TestGroundFromNormals gives the fit a wave that it must find again.
func TestGroundFromNormals(t *testing.T) {
	const mean, amplitude, coldest = 9.0, 11.0, 28.0
	var n Normals
	start := 0.0
	for i, d := range days {
		middle := start + d/2
		start += d
		n.Mean[i] = rvalue.FromCelsius(mean - amplitude*math.Cos(2*math.Pi*(middle-coldest)/365))
	}
	g, err := n.Ground(TypicalDiffusivity)
	if err != nil {
		t.Fatal(err)
	}
	// Twelve uneven months sample the wave, hence not exactly.
	if math.Abs(g.Mean.Celsius()-mean) > 0.05 || math.Abs(g.Amplitude.SI()-amplitude) > 0.05 || math.Abs(g.ColdestDay-coldest) > 0.3 {
		t.Errorf("found %.3f °C, %.3f K, day %.2f; want %g, %g, %g", g.Mean.Celsius(), g.Amplitude.SI(), g.ColdestDay, mean, amplitude, coldest)
	}
	for _, bad := range [...]float64{0, -1, 0.5, math.NaN()} {
		if g, err := n.Ground(bad); err == nil {
			t.Errorf("Ground(%g) = %v, want an error", bad, g)
		}
	}
}
