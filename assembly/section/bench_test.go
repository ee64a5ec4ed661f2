package section_test

import (
	"math"
	"testing"

	"github.com/coldseam/coldseam/assembly/section"
)

var sink *section.Result

// BenchmarkSolve measures whole solutions, and reports how far the heat flow is
// from the converged one, as a part of it.
func BenchmarkSolve(b *testing.B) {
	for _, bb := range []struct {
		name               string
		s                  section.Section
		tolerance, surface float64
		converged          float64 // W/m
	}{
		{"stud, flow 1e-3", stud(), 1e-3, 1, 4.63037535},
		{"stud, flow 1e-4", stud(), 1e-4, 1, 4.63037535},
		{"stud", stud(), 0, 0, 4.63037535},
		{"roof edge, flow 1e-3", roofEdge(), 1e-3, 1, 9.49144775},
		{"roof edge, flow 1e-4", roofEdge(), 1e-4, 1, 9.49144775},
		{"roof edge, flow 1e-5", roofEdge(), 1e-5, 1, 9.49144775},
		{"roof edge", roofEdge(), 0, 0, 9.49144775},
		{"slab edge", slabEdge(), 0, 0, 31.56958123},
		{"block", block(), 0, 0, 17.47570585},
	} {
		b.Run(bb.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				r, err := bb.s.Solve(section.Options{Tolerance: bb.tolerance, Surface: bb.surface})
				if err != nil {
					b.Fatal(err)
				}
				sink = r
			}
			b.ReportMetric(math.Abs(sink.Heat/bb.converged-1), "error")
			b.ReportMetric(float64(sink.Unknowns), "unknowns")
		})
	}
}

// BenchmarkSolid measures whole solutions in space.
func BenchmarkSolid(b *testing.B) {
	for _, bb := range []struct {
		name      string
		s         section.Solid
		converged float64 // W, ISO 10211's own cases on the finest meshes here
	}{
		{"balcony", balcony(), 59.99},
		{"iron bar", ironBar(), 0.53999},
	} {
		b.Run(bb.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				r, err := bb.s.Solve(section.SolidOptions{})
				if err != nil {
					b.Fatal(err)
				}
				solid = r
			}
			b.ReportMetric(math.Abs(solid.Heat/bb.converged-1), "error")
			b.ReportMetric(float64(solid.Unknowns), "unknowns")
		})
	}
}

var solid *section.SolidResult
