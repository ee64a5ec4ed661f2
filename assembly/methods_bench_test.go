package assembly_test

import (
	"testing"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/rvalue"
)

// benchWall is an eight-layer wall framed at 16 in, 25 % framing.
func benchWall() assembly.Assembly {
	return assembly.Assembly{Layers: []assembly.Layer{
		assembly.Plain("inside film", 0.12),
		assembly.Plain("plaster", 0.02),
		assembly.Plain("gypsum", 0.08),
		assembly.Framed("studs", 0.25, 0.77, 2.30),
		assembly.Plain("board sheathing", 0.17),
		assembly.Plain("rigid foam", 0.70),
		assembly.Plain("siding", 0.11),
		assembly.Plain("outside film", 0.03),
	}}
}

var sink rvalue.Resistance // keeps the compiler from dropping the work

func BenchmarkParallelPath(b *testing.B) {
	a := benchWall()
	b.ReportAllocs()
	for b.Loop() {
		sink = a.ParallelPath()
	}
}

func BenchmarkIsothermalPlanes(b *testing.B) {
	a := benchWall()
	b.ReportAllocs()
	for b.Loop() {
		sink = a.IsothermalPlanes()
	}
}

func BenchmarkCombined(b *testing.B) {
	a := benchWall()
	b.ReportAllocs()
	for b.Loop() {
		sink = a.Combined().R
	}
}

// BenchmarkParallelPathCrossing has straps across the studs: four paths.
func BenchmarkParallelPathCrossing(b *testing.B) {
	a := benchWall()
	a.Layers[2] = assembly.Framed("straps", 0.10, 0.16, 0.18)
	b.ReportAllocs()
	for b.Loop() {
		sink = a.ParallelPath()
	}
}

// BenchmarkByHand is the arithmetic of the same wall's parallel path, written
// out: what any method has at least to do.
func BenchmarkByHand(b *testing.B) {
	common := []float64{0.12, 0.02, 0.08, 0.17, 0.70, 0.11, 0.03}
	stud, batt, framing := 0.77, 2.30, 0.25
	b.ReportAllocs()
	for b.Loop() {
		rest := 0.0
		for _, r := range common {
			rest += r
		}
		sink = rvalue.Resistance(1 / (framing/(rest+stud) + (1-framing)/(rest+batt)))
	}
}

// The hand arithmetic is that of the benchmarked wall.
func TestBenchWallByHand(t *testing.T) {
	rest := 0.12 + 0.02 + 0.08 + 0.17 + 0.70 + 0.11 + 0.03
	want := 1 / (0.25/(rest+0.77) + 0.75/(rest+2.30))
	if got := float64(benchWall().ParallelPath()); !near(got, want, rounding) {
		t.Errorf("ParallelPath = %v, by hand %v", got, want)
	}
}
