package section

import (
	"fmt"
	"testing"
)

// BenchmarkPlaneUnknowns measures one solution of the temperature problem by its
// count of unknowns: case 2 of ISO 10211, all elements of degree 8.
func BenchmarkPlaneUnknowns(b *testing.B) {
	s := &Section{
		Pieces: []Piece{
			testPiece(0, 0.5, 0.0415, 0.0475, 1.15), testPiece(0, 0.015, 0.0365, 0.0415, 0.12), testPiece(0, 0.015, 0.035, 0.0365, 230),
			testPiece(0, 0.0015, 0.0015, 0.035, 230), testPiece(0, 0.5, 0, 0.0015, 230), testPiece(0.0015, 0.5, 0.0015, 0.035, 0.029),
			testPiece(0.015, 0.5, 0.035, 0.0415, 0.029),
		},
		Boundaries: []Boundary{testFaces(0, 0, 0.5, 0, 20, 0.11), testFaces(0, 0.0475, 0.5, 0.0475, 0, 0.06)},
	}
	p, err := newPlan(s)
	if err != nil {
		b.Fatal(err)
	}
	for _, n := range []int{3, 10, 16, 32} {
		m := newMesh(p, even(p.xs, n, 8), even(p.ys, n, 8))
		b.Run(fmt.Sprint(m.unknowns()), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, _, err := solveOne(m, false, &factor{}); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(m.unknowns()), "ns/unknown")
		})
	}
}

// BenchmarkSolidUnknowns measures one solution of each problem in space by the
// count of unknowns.
func BenchmarkSolidUnknowns(b *testing.B) {
	p, err := newSolidPlan(bracketed())
	if err != nil {
		b.Fatal(err)
	}
	g := p.firstGrid()
	for _, n := range []int{20, 44, 96} { // cells along an axis
		for axis := 0; axis < 3; {
			if g.n(axis) >= n {
				axis++
				continue
			}
			g = halved(g, axis, n-g.n(axis))
		}
		b.Run(fmt.Sprint(g.vertices()), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := solveSolidPair(g); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(g.vertices()), "ns/unknown")
		})
	}
}

// halved halves the first cells of an axis, so many of them at most.
func halved(g *grid, axis, most int) *grid {
	at, of := g.at, g.of
	at[axis], of[axis] = nil, nil
	for i := range g.n(axis) {
		at[axis], of[axis] = append(at[axis], g.at[axis][i]), append(of[axis], g.of[axis][i])
		if i < most {
			at[axis], of[axis] = append(at[axis], (g.at[axis][i]+g.at[axis][i+1])/2), append(of[axis], g.of[axis][i])
		}
	}
	at[axis] = append(at[axis], g.at[axis][g.n(axis)])
	return newGrid(g.plan, at, of)
}
