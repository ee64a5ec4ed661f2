package section

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/blas64"
	"gonum.org/v1/gonum/lapack/lapack64"

	"github.com/coldseam/coldseam/rvalue"
)

// bracketed is a solid of three materials with a part held at its air.
func bracketed() *Solid {
	place := func(x, y, z float64) Place { return Place{rvalue.Length(x), rvalue.Length(y), rvalue.Length(z)} }
	return &Solid{
		Boxes: []Box{
			{From: place(0, 0, 0), To: place(1, 1, 0.2), Conductivity: 0.04 * rvalue.WattPerMetreKelvin},
			{From: place(0, 0, 0.2), To: place(0.3, 1, 0.5), Conductivity: 50 * rvalue.WattPerMetreKelvin},
			{From: place(0.3, 0, 0.2), To: place(1, 0.4, 0.5), Conductivity: 1 * rvalue.WattPerMetreKelvin},
		},
		Rooms: []Room{
			{Name: "below", From: place(0, 0, -1), To: place(1, 1, 0), Air: rvalue.FromCelsius(20), Film: 0.13 * rvalue.RSI},
			{Name: "beside", From: place(0.3, 0.4, 0.2), To: place(1, 1, 0.5), Air: rvalue.FromCelsius(5), Film: 0.1 * rvalue.RSI},
			{Name: "above", From: place(0, 0, 0.5), To: place(1, 1, 1), Air: rvalue.FromCelsius(-5)},
		},
	}
}

// TestConjugateAgainstBandCholesky solves the flow problem with LAPACK's band
// Cholesky too.
func TestConjugateAgainstBandCholesky(t *testing.T) {
	const agree = 1e-9 // K per K of difference between the airs
	p, err := newSolidPlan(bracketed())
	if err != nil {
		t.Fatal(err)
	}
	g := p.firstGrid()
	for range 2 { // halve everything twice, so that the multigrid has levels
		pair, err := solveSolidPair(g)
		if err != nil {
			t.Fatal(err)
		}
		for axis := range pair.slab {
			for i := range pair.slab[axis] {
				pair.slab[axis][i] = 1 // all alike
			}
		}
		g = pair.refine(nil)
	}
	f, iterations, err := solveFlow(g)
	if err != nil {
		t.Fatal(err)
	}
	band := 0
	d := make([]float64, len(g.k))
	loads := make([][]float64, len(f.x))
	for e := range loads {
		loads[e] = make([]float64, len(f.cell))
	}
	g.each(func(c [3]int, i int) {
		if g.k[i] == 0 {
			return
		}
		for axis := range 3 {
			for _, dir := range [2]int{-1, 1} {
				next, room := g.beside(c, axis, dir)
				if next >= 0 {
					band = max(band, int(f.id[next]-f.id[i]))
				} else if room >= 0 {
					v := g.through(c, i, axis, float64(p.rooms[room].Film))
					d[i] += v
					if e := p.air[room]; e < len(loads) {
						loads[e][f.id[i]] += v
					}
				}
			}
		}
	})
	n := len(f.cell)
	m := ties([3]int{g.n(0), g.n(1), g.n(2)}, f.id, n, f.t, d)
	a := blas64.SymmetricBand{N: n, K: band, Stride: band + 1, Data: make([]float64, n*(band+1)), Uplo: blas.Lower}
	for r := range n {
		a.Data[r*a.Stride+band] = m.diag[r]
		for q := m.start[r]; q < m.start[r+1]; q++ {
			if c := int(m.col[q]); c < r {
				a.Data[r*a.Stride+band-(r-c)] = m.val[q]
			}
		}
	}
	c, ok := lapack64.Pbtrf(a)
	if !ok {
		t.Fatal("not positive definite")
	}
	for e, b := range loads {
		lapack64.Pbtrs(c, blas64.General{Rows: n, Cols: 1, Stride: 1, Data: b})
		for i := range b {
			if math.Abs(b[i]-f.x[e][i]) > agree {
				t.Fatalf("air %d, cell %d: %v, by band Cholesky %v", e, i, f.x[e][i], b[i])
			}
		}
	}
	if iterations > 60 {
		t.Errorf("%d iterations for %d unknowns", iterations, n)
	}
}

// TestGapBySlab checks that the slabs' parts add up to the gap between the
// bounds of the actual problem.
func TestGapBySlab(t *testing.T) {
	p, err := newSolidPlan(bracketed())
	if err != nil {
		t.Fatal(err)
	}
	pair, err := solveSolidPair(p.firstGrid())
	if err != nil {
		t.Fatal(err)
	}
	got, want := 0.0, 0.0
	for _, s := range pair.slab {
		for _, v := range s {
			got += v
		}
	}
	x := pair.excess()
	for e := range x {
		for f := range x {
			want += x[e] * x[f] * (pair.upper[e][f] - pair.lower[e][f])
		}
	}
	if math.Abs(got-want) > 1e-6*want {
		t.Errorf("the slabs' gaps sum to %v, the bounds are %v apart", got, want)
	}
}

// TestIterationsGrowSlowly: grading and jumps of conductivity of 1000 do not
// make the count of iterations run away.
func TestIterationsGrowSlowly(t *testing.T) {
	p, err := newSolidPlan(bracketed())
	if err != nil {
		t.Fatal(err)
	}
	g := p.firstGrid()
	var counts []int
	for range 5 {
		pair, err := solveSolidPair(g)
		if err != nil {
			t.Fatal(err)
		}
		counts = append(counts, pair.iterations)
		g = pair.refine(nil)
	}
	t.Logf("iterations %v, %d vertices at the last", counts, g.vertices())
	if last := counts[len(counts)-1]; last > 80 {
		t.Errorf("iterations grow: %v", counts)
	}
}
