package section

import (
	"math"
	"runtime"
	"testing"

	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/blas64"
	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/lapack/lapack64"

	"github.com/coldseam/coldseam/rvalue"
)

// TestShape checks every product of the one-dimensional bases against Gauss
// quadrature, which is exact for them.
func TestShape(t *testing.T) {
	const exact = 1e-12
	for p := 1; p <= mostDegree; p++ {
		s := shapes[p]()
		n := s.bubbles()
		f, g := make([]float64, n+2), make([]float64, n+2)
		product := func(a, b int, slopeA, slopeB bool) float64 {
			return quad.Fixed(func(x float64) float64 {
				s.at(x, f)
				s.slope(x, g)
				u, v := f[a], f[b]
				if slopeA {
					u = g[a]
				}
				if slopeB {
					v = g[b]
				}
				return u * v
			}, -1, 1, p+2, quad.Legendre{}, 0)
		}
		for a := range n + 2 {
			for b := range n + 2 {
				if got := product(a, b, false, true); math.Abs(got-s.turn[a*(n+2)+b]) > exact {
					t.Errorf("degree %d: ∫f%d f%d′ = %v, kept as %v", p, a, b, got, s.turn[a*(n+2)+b])
				}
				if a < 2 {
					continue
				}
				stiffness, mass := 0.0, 0.0
				if a == b {
					stiffness, mass = 1, s.mu[a-2]
				} else if b < 2 {
					mass = s.end[b][a-2]
				}
				if got := product(a, b, true, true); math.Abs(got-stiffness) > exact {
					t.Errorf("degree %d: ∫f%d′f%d′ = %v, want %v", p, a, b, got, stiffness)
				}
				if got := product(a, b, false, false); math.Abs(got-mass) > exact {
					t.Errorf("degree %d: ∫f%d f%d = %v, kept as %v", p, a, b, got, mass)
				}
			}
		}
	}
}

// testPiece and testFaces draw in metres, W/(m·K), °C and m²·K/W.
func testPiece(x0, x1, y0, y1, k float64) Piece {
	return Piece{From: Point{rvalue.Length(x0), rvalue.Length(y0)}, To: Point{rvalue.Length(x1), rvalue.Length(y1)}, Conductivity: rvalue.Conductivity(k)}
}

func testFaces(x0, y0, x1, y1, celsius, rs float64) Boundary {
	return Boundary{From: Point{rvalue.Length(x0), rvalue.Length(y0)}, To: Point{rvalue.Length(x1), rvalue.Length(y1)}, Air: rvalue.FromCelsius(celsius), Film: rvalue.Resistance(rs)}
}

// lshape has a corner inward, metal beside insulation, three airs and a part of
// the outline that is held.
func lshape() *Section {
	return &Section{
		Pieces: []Piece{testPiece(0, 1, 0, 0.2, 2), testPiece(0, 0.2, 0.2, 1, 0.04), testPiece(1, 1.003, 0, 0.2, 60)},
		Boundaries: []Boundary{
			testFaces(0, 0, 0, 1, -10, 0.04), testFaces(0.2, 0.2, 1.003, 0.2, 20, 0.13),
			testFaces(0.2, 0.2, 0.2, 1, 12, 0.13), testFaces(0.5, 0, 1.003, 0, 5, 0),
		},
	}
}

// even cuts every interval of a plan into n equal elements of one degree.
func even(lines []float64, n, degree int) axis {
	var a axis
	for i := range len(lines) - 1 {
		for q := range n {
			a.at = append(a.at, lines[i]+(lines[i+1]-lines[i])*float64(q)/float64(n))
			a.degree, a.of = append(a.degree, degree), append(a.of, i)
		}
	}
	a.at = append(a.at, lines[len(lines)-1])
	return a
}

// TestAgainstBandCholesky solves both problems of a mesh with LAPACK's band
// Cholesky too.
func TestAgainstBandCholesky(t *testing.T) {
	const agree = 1e-10 // of the largest unknown
	p, err := newPlan(lshape())
	if err != nil {
		t.Fatal(err)
	}
	m := newMesh(p, even(p.xs, 2, 4), even(p.ys, 3, 3))
	for _, flow := range []bool{false, true} {
		s, x, err := solveOne(m, flow, &factor{})
		if err != nil {
			t.Fatal(err)
		}
		band := 0
		for j := range m.y.len() {
			for i := range m.x.len() {
				if dofs, _ := s.element(i, j); len(dofs) > 0 {
					band = max(band, int(dofs[len(dofs)-1]-dofs[0]))
				}
			}
		}
		a := blas64.SymmetricBand{N: s.n, K: band, Stride: band + 1, Data: make([]float64, s.n*(band+1)), Uplo: blas.Lower}
		for j := range m.y.len() {
			for i := range m.x.len() {
				dofs, el := s.element(i, j)
				for r, dr := range dofs {
					for q, dq := range dofs[:r+1] {
						a.Data[int(dr)*a.Stride+band-int(dr-dq)] += el[r*len(dofs)+q]
					}
				}
			}
		}
		c, ok := lapack64.Pbtrf(a)
		if !ok {
			t.Fatal("not positive definite")
		}
		for e := range x {
			b := make([]float64, s.n)
			s.residual(e, solution{make([]float64, s.n), make([]float64, s.n)}, b) // of nothing: the right-hand side
			lapack64.Pbtrs(c, blas64.General{Rows: s.n, Cols: 1, Stride: 1, Data: b})
			size, off := 0.0, 0.0
			for i := range b {
				size, off = max(size, math.Abs(b[i])), max(off, math.Abs(b[i]-x[e].hi[i]-x[e].lo[i]))
			}
			if off > agree*size {
				t.Errorf("flow %v, air %d: off by %v of %v", flow, e, off, size)
			}
		}
	}
}

// TestOrder measures the order of convergence on a layered square against a
// solution made up for it: T = cos(πx) Y(y) with Y = cosh(πy) in the lower
// layer and the combination of cosh and sinh that continues it in the upper
// one. It meets films whose air varies as cos(πx). Both problems must gain
// 2·degree orders in energy.
func TestOrder(t *testing.T) {
	const k1, k2, rs = 0.8, 0.05, 0.13
	y2 := func(y float64) (v, slope float64) {
		z := math.Pi * (y - 0.5)
		c, s := math.Cosh(math.Pi/2), math.Sinh(math.Pi/2)*k1/k2
		return c*math.Cosh(z) + s*math.Sinh(z), math.Pi * (c*math.Sinh(z) + s*math.Cosh(z))
	}
	top, topSlope := y2(1)
	// Ta = T + Rs·(heat that leaves)
	airs := [2]float64{1, top + rs*k2*topSlope} // below and above, times cos(πx)
	// ∫T Ta/Rs along both: twice the energy of the temperature problem, less
	// that of the air itself; ∫Ta ∂ψ/∂s: that of the flow problem.
	wantT := (airs[0]*1 + airs[1]*top) / rs / 2
	wantF := -airs[1] * k2 * topSlope / 2 // nothing leaves below, Y′(0) = 0
	sec := &Section{
		Pieces:     []Piece{testPiece(0, 1, 0, 0.5, k1), testPiece(0, 1, 0.5, 1, k2)},
		Boundaries: []Boundary{testFaces(0, 0, 1, 0, 1, rs), testFaces(0, 1, 1, 1, 0, rs)},
	}
	p, err := newPlan(sec)
	if err != nil {
		t.Fatal(err)
	}
	for _, flow := range []bool{false, true} {
		for degree := 1; degree <= 4; degree++ {
			var errs []float64
			for _, n := range []int{1 + 3/degree, 2 * (1 + 3/degree), 4 * (1 + 3/degree)} {
				m := newMesh(p, even(p.xs, 2*n, degree), even(p.ys, n, degree))
				s := newSystem(m, flow)
				var f factor
				if !f.dissect(m.x.len(), m.y.len(), s.touches, s.element) {
					t.Fatal("not positive definite")
				}
				b := madeUpLoad(s, airs, rs)
				x := append([]float64(nil), b...)
				f.solve(x)
				got, want := 0.0, wantT
				for i := range x {
					got += x[i] * b[i]
				}
				if flow {
					want = -wantF
				}
				errs = append(errs, math.Abs(want-got)/math.Abs(want))
			}
			order := math.Log2(errs[1] / errs[2])
			t.Logf("flow %v, degree %d: errors %.2e, order %.2f", flow, degree, errs, order)
			if math.Abs(order-2*float64(degree)) > 0.25 {
				t.Errorf("flow %v, degree %d: order %.2f in energy, want %d (errors %.2e)", flow, degree, order, 2*degree, errs)
			}
		}
	}
}

// madeUpLoad is the right-hand side for air that varies as cos(πx) along the
// lower and the upper edge of a unit square.
func madeUpLoad(s *system, airs [2]float64, rs float64) []float64 {
	b := make([]float64, s.n)
	var ids []int32
	var c cell
	m := s.m
	for q, j := range [2]int{0, m.y.len() - 1} {
		side := [2]int{bottom, top}[q]
		for i := range m.x.len() {
			ids = s.local(i, j, ids)
			c.set(m, i, j, s.flow)
			ends, first, sh, h := c.side(side)
			v := make([]float64, sh.bubbles()+2)
			for a := range v {
				id := ids[ends[a%2]]
				if a >= 2 {
					id = ids[first+a-2]
				}
				load := quad.Fixed(func(xi float64) float64 {
					air := airs[q] * math.Cos(math.Pi*(m.x.at[i]+(1+xi)/2*h))
					if s.flow { // −∫Ta ∂ψ/∂s, anticlockwise
						sh.slope(xi, v)
						return -air * v[a] * [2]float64{1, -1}[q]
					}
					sh.at(xi, v)
					return air * v[a] * h / 2 / rs
				}, -1, 1, 20, quad.Legendre{}, 0)
				if id >= 0 {
					b[id] += load
				}
			}
		}
	}
	return b
}

// TestGapByElement checks that the elements' parts add up to the gap between
// the bounds of the actual problem.
func TestGapByElement(t *testing.T) {
	p, err := newPlan(lshape())
	if err != nil {
		t.Fatal(err)
	}
	r, err := solvePair(newMesh(p, even(p.xs, 2, 3), even(p.ys, 2, 3)), &factor{})
	if err != nil {
		t.Fatal(err)
	}
	got, want := 0.0, 0.0
	for _, g := range r.gap {
		got += g
	}
	x := r.excess()
	for e := range x {
		for f := range x {
			want += x[e] * x[f] * (r.upper[e][f] - r.lower[e][f])
		}
	}
	if math.Abs(got-want) > 1e-9*want {
		t.Errorf("the elements' gaps sum to %v, the bounds are %v apart", got, want)
	}
}

// TestSameBits: the result does not depend on how many processors there are.
func TestSameBits(t *testing.T) {
	o := Options{Tolerance: 1e-3, Points: []Point{{0.1 * rvalue.Metre, 0.1 * rvalue.Metre}}}
	var first *Result
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(0))
	for _, n := range []int{1, 2, 4} {
		runtime.GOMAXPROCS(n)
		r, err := lshape().Solve(o)
		if err != nil {
			t.Fatal(err)
		}
		if first == nil {
			first = r
		}
		if r.Heat != first.Heat || r.Points[0].Temperature != first.Points[0].Temperature || r.Low != first.Low {
			t.Errorf("with %d processors %v W/m, with one %v", n, r.Heat, first.Heat)
		}
	}
}
