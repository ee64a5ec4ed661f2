package section

import (
	"math"
	"sync"
)

// mostDegree bounds the polynomial degree of an element in one direction.
const mostDegree = 14

// shape is the one-dimensional basis of one degree on [-1, 1]: the two linear
// functions of the ends and, between them, bubbles that vanish at both ends.
// The bubbles diagonalise the stiffness and the mass matrix at once, which
// makes the interior of a rectangular element a diagonal matrix: static
// condensation then costs a few products.
//
//	∫ φi′ φj′ = δij,  ∫ φi φj = mu[i] δij,  ∫ φi′ N′ = 0,  ∫ φi N_v = end[v][i]
type shape struct {
	degree int
	mu     []float64
	end    [2][]float64
	modes  [][]float64 // by degree 2…p: the part of each bubble in that integrated Legendre polynomial
	turn   []float64   // ∫ f_a f_b′ over the ends and bubbles, row-major
}

// bubbles is how many functions vanish at both ends.
func (s *shape) bubbles() int { return s.degree - 1 }

var shapes = func() (f [mostDegree + 1]func() *shape) {
	for p := range f {
		f[p] = sync.OnceValue(func() *shape { return newShape(p) })
	}
	return f
}()

func newShape(p int) *shape {
	n := p - 1
	s := &shape{degree: p, mu: make([]float64, n), modes: make([][]float64, n)}
	// Integrated Legendre polynomials l_d = c_d (P_d − P_{d−2}), d = 2…p:
	// their derivatives are orthonormal, their mass matrix couples d and d±2.
	c := func(d int) float64 { return 1 / math.Sqrt(2*float64(2*d-1)) }
	mass := make([][]float64, n)
	for i := range mass {
		mass[i] = make([]float64, n)
		s.modes[i] = make([]float64, n)
	}
	for i := range n {
		d := i + 2
		mass[i][i] = c(d) * c(d) * (2/float64(2*d+1) + 2/float64(2*d-3))
		if i+2 < n {
			off := -c(d) * c(d+2) * 2 / float64(2*d+1)
			mass[i][i+2], mass[i+2][i] = off, off
		}
	}
	jacobi(mass, s.modes)
	for v := range s.end {
		s.end[v] = make([]float64, n)
	}
	for i := range n {
		s.mu[i] = mass[i][i]
		// ∫ l_2 N_v = −c_2, ∫ l_3 N_v = ±c_3/3, the others are orthogonal to N_v.
		even := -c(2) * s.modes[0][i]
		odd := 0.0
		if n > 1 {
			odd = c(3) / 3 * s.modes[1][i]
		}
		s.end[0][i], s.end[1][i] = even+odd, even-odd
	}
	s.turns()
	return s
}

// turns fills in ∫ f_a f_b′: ends by ends in closed form, the rest by parts.
func (s *shape) turns() {
	n := s.bubbles()
	w := n + 2
	s.turn = make([]float64, w*w)
	s.turn[0], s.turn[1], s.turn[w], s.turn[w+1] = -0.5, 0.5, -0.5, 0.5
	for i := range n {
		sum := s.end[0][i] + s.end[1][i] // ∫ φi
		// ∫ φi N1′ = sum/2, ∫ N φi′ = −∫ N′ φi.
		s.turn[(2+i)*w], s.turn[(2+i)*w+1] = -sum/2, sum/2
		s.turn[2+i], s.turn[w+2+i] = sum/2, -sum/2
		for j := range n {
			// l_a′ = sqrt((2a−1)/2) P_{a−1}, so that ∫ l_b l_a′ is left only
			// for a = b±1.
			t := 0.0
			for b := 2; b <= s.degree; b++ {
				cb := 1 / math.Sqrt(2*float64(2*b-1))
				if a := b + 1; a <= s.degree { // ∫ P_b P_b = 2/(2b+1)
					t += s.modes[b-2][i] * s.modes[a-2][j] * cb * math.Sqrt(float64(2*a-1)/2) * 2 / float64(2*b+1)
				}
				if a := b - 1; a >= 2 { // −∫ P_{b−2} P_{b−2}
					t -= s.modes[b-2][i] * s.modes[a-2][j] * cb * math.Sqrt(float64(2*a-1)/2) * 2 / float64(2*b-3)
				}
			}
			s.turn[(2+i)*w+2+j] = t
		}
	}
}

// at fills out with the values of the ends' functions and the bubbles at xi.
func (s *shape) at(xi float64, out []float64) {
	out[0], out[1] = (1-xi)/2, (1+xi)/2
	n := s.bubbles()
	clear(out[2 : 2+n])
	before, now := 1.0, xi // P_{d−2}, P_{d−1}
	for d := 2; d <= s.degree; d++ {
		next := (float64(2*d-1)*xi*now - float64(d-1)*before) / float64(d)
		l := (next - before) / math.Sqrt(2*float64(2*d-1))
		for i := range n {
			out[2+i] += s.modes[d-2][i] * l
		}
		before, now = now, next
	}
}

// slope fills out with the derivatives by xi of what at gives.
func (s *shape) slope(xi float64, out []float64) {
	out[0], out[1] = -0.5, 0.5
	n := s.bubbles()
	clear(out[2 : 2+n])
	before, now := 1.0, xi // P_{d−2}, P_{d−1}
	for d := 2; d <= s.degree; d++ {
		for i := range n {
			out[2+i] += s.modes[d-2][i] * math.Sqrt(float64(2*d-1)/2) * now
		}
		before, now = now, (float64(2*d-1)*xi*now-float64(d-1)*before)/float64(d)
	}
}

// jacobi turns the symmetric matrix a into its eigenvalues, on the diagonal,
// and v into its eigenvectors, by columns: rotations in a fixed order until
// nothing is left beside the diagonal.
func jacobi(a, v [][]float64) {
	n := len(a)
	for i := range n {
		clear(v[i])
		v[i][i] = 1
	}
	for range 60 {
		off := 0.0
		for i := range n {
			for j := range i {
				off += math.Abs(a[i][j])
			}
		}
		if off == 0 {
			return
		}
		for p := range n {
			for q := p + 1; q < n; q++ {
				if math.Abs(a[p][q]) <= 1e-18*math.Sqrt(math.Abs(a[p][p]*a[q][q])) {
					a[p][q], a[q][p] = 0, 0
					continue
				}
				theta := (a[q][q] - a[p][p]) / (2 * a[p][q])
				t := math.Copysign(1, theta) / (math.Abs(theta) + math.Hypot(1, theta))
				c := 1 / math.Hypot(1, t)
				sn := c * t
				for i := range n {
					a[i][p], a[i][q] = c*a[i][p]-sn*a[i][q], sn*a[i][p]+c*a[i][q]
				}
				for i := range n {
					a[p][i], a[q][i] = c*a[p][i]-sn*a[q][i], sn*a[p][i]+c*a[q][i]
				}
				for i := range n {
					v[i][p], v[i][q] = c*v[i][p]-sn*v[i][q], sn*v[i][p]+c*v[i][q]
				}
			}
		}
	}
}
