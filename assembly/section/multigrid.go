package section

import "math"

// sparse is a symmetric matrix by rows, without the diagonal. In each row what
// lies before the diagonal comes first.
type sparse struct {
	start []int32
	upper []int32 // by row: where what lies behind the diagonal starts
	col   []int32
	val   []float64
	diag  []float64
}

func (a *sparse) n() int { return len(a.diag) }

// multiply sets y = A x.
func (a *sparse) multiply(x, y []float64) {
	for i, d := range a.diag {
		s := d * x[i]
		lo, hi := a.start[i], a.start[i+1]
		val := a.val[lo:hi]
		for q, c := range a.col[lo:hi] {
			s += val[q] * x[c]
		}
		y[i] = s
	}
}

// forward solves the lower triangle, a Gauss–Seidel sweep from nothing, and sets
// r to what it leaves of b.
func (a *sparse) forward(b, x, r []float64) {
	for i, d := range a.diag {
		s := b[i]
		lo, hi := a.start[i], a.upper[i]
		val := a.val[lo:hi]
		for q, c := range a.col[lo:hi] {
			s -= val[q] * x[c]
		}
		x[i] = s / d
	}
	for i := range a.diag {
		s := 0.0
		lo, hi := a.upper[i], a.start[i+1]
		val := a.val[lo:hi]
		for q, c := range a.col[lo:hi] {
			s -= val[q] * x[c]
		}
		r[i] = s
	}
}

// backward improves x by a Gauss–Seidel sweep from the last unknown to the first.
func (a *sparse) backward(b, x []float64) {
	for i := a.n() - 1; i >= 0; i-- {
		s := b[i]
		lo, hi := a.start[i], a.start[i+1]
		val := a.val[lo:hi]
		for q, c := range a.col[lo:hi] {
			s -= val[q] * x[c]
		}
		x[i] = s / a.diag[i]
	}
}

// split orders the last row that was added and notes where its upper part starts.
func (a *sparse) split(from int) {
	row := int32(len(a.upper))
	at := from
	for q := from; q < len(a.col); q++ {
		if a.col[q] < row {
			a.col[at], a.col[q] = a.col[q], a.col[at]
			a.val[at], a.val[q] = a.val[q], a.val[at]
			at++
		}
	}
	a.upper = append(a.upper, int32(at))
}

// multigrid preconditions a conduction matrix, whose entries beside the diagonal
// are negative or zero: unknowns are paired along their strongest ties, level by
// level, so that anisotropy and jumps of conductivity take care of themselves.
// Every level is swept, since what is tied a thousand times stronger one way than
// the other moves the other way only as a pair; every second level is solved by
// two conjugate-gradient steps (the K-cycle), which makes the count of iterations
// hardly grow with size.
//
// Source: Y. Notay, An aggregation-based algebraic multigrid method, ETNA 37
// (2010), from memory.
type multigrid struct {
	levels []gridLevel
	bottom []float64 // Cholesky factor of the coarsest matrix
}

type gridLevel struct {
	a      *sparse
	gather []int32 // by unknown: its aggregate on the next level

	b, x, r    []float64 // of this level's own problem
	c, v, d, w []float64 // of the two steps
	rest       []float64
}

const (
	fallback    = 10   // sweeps on a coarsest level too large to be solved directly
	coarsest    = 250  // unknowns that are solved directly
	mostQuality = 8.0  // that a pair may have
	enoughStep  = 0.25 // of the residual: what a first step may leave
)

func newMultigrid(a *sparse) *multigrid {
	g := &multigrid{}
	for {
		l := gridLevel{a: a}
		n := a.n()
		vectors := make([]float64, 8*n)
		for _, v := range []*[]float64{&l.b, &l.x, &l.r, &l.c, &l.v, &l.d, &l.w, &l.rest} {
			*v, vectors = vectors[:n:n], vectors[n:]
		}
		if n <= coarsest {
			g.levels = append(g.levels, l)
			break
		}
		pairs, half := a.pair()
		if half.n() > n*9/10 { // hardly anything makes a pair any more
			g.levels = append(g.levels, l)
			break
		}
		l.gather = pairs
		g.levels = append(g.levels, l)
		a = half
	}
	last := g.levels[len(g.levels)-1].a
	if n := last.n(); n <= 2*coarsest {
		g.bottom = make([]float64, n*n)
		for i := range n {
			g.bottom[i*n+i] = last.diag[i]
			for q := last.start[i]; q < last.start[i+1]; q++ {
				g.bottom[i*n+int(last.col[q])] = last.val[q]
			}
		}
		if !cholesky(g.bottom, n, n) {
			g.bottom = nil
		}
	}
	return g
}

// pair matches every unknown with the free neighbour that it makes the best pair
// with, and returns each one's pair and the matrix of the pairs. The quality of a
// pair, 1 at best, bounds how much slower the multigrid is for it.
//
// Source: A. Napov and Y. Notay, An algebraic multigrid method with guaranteed
// convergence rate, SIAM J. Sci. Comput. 34 (2012), from memory.
func (a *sparse) pair() ([]int32, *sparse) {
	n := a.n()
	of := make([]int32, n)
	for i := range of {
		of[i] = -1
	}
	first, second := make([]int32, 0, n/2), make([]int32, 0, n/2)
	// What a row has beside its ties.
	own := make([]float64, n)
	for i := range n {
		own[i] = a.diag[i]
		for q := a.start[i]; q < a.start[i+1]; q++ {
			own[i] += a.val[q]
		}
		own[i] = max(0, own[i])
	}
	for i := range n {
		if of[i] >= 0 {
			continue
		}
		best, least := int32(-1), mostQuality
		for q := a.start[i]; q < a.start[i+1]; q++ {
			j := a.col[q]
			tie := -a.val[q]
			if of[j] >= 0 || tie <= 0 {
				continue
			}
			above := tie + together(2*(a.diag[i]-tie)-own[i], 2*(a.diag[j]-tie)-own[j])
			below := tie + together(own[i], own[j])
			if quality := above / below; quality < least {
				best, least = j, quality
			}
		}
		of[i] = int32(len(first))
		first = append(first, int32(i))
		if best >= 0 {
			of[best] = of[i]
		}
		second = append(second, best)
	}
	m := len(first)
	b := &sparse{start: make([]int32, 1, m+1), upper: make([]int32, 0, m), diag: make([]float64, m), col: make([]int32, 0, len(a.col)/2), val: make([]float64, 0, len(a.val)/2)}
	slot := make([]int32, m) // where a column stands in the present row, plus one
	for r := range m {
		from := len(b.col)
		for _, i := range [2]int32{first[r], second[r]} {
			if i < 0 {
				continue
			}
			b.diag[r] += a.diag[i]
			for q := a.start[i]; q < a.start[i+1]; q++ {
				c := of[a.col[q]]
				switch {
				case int(c) == r:
					b.diag[r] += a.val[q]
				case slot[c] > int32(from):
					b.val[slot[c]-1] += a.val[q]
				default:
					b.col, b.val = append(b.col, c), append(b.val, a.val[q])
					slot[c] = int32(len(b.col))
				}
			}
		}
		b.split(from)
		b.start = append(b.start, int32(len(b.col)))
	}
	return of, b
}

// together is 1/(1/a + 1/b).
func together(a, b float64) float64 {
	if a <= 0 || b <= 0 {
		return 0
	}
	return a * b / (a + b)
}

// apply sets x to an approximate solution for b on a level.
func (g *multigrid) apply(level int, b, x []float64) {
	l := &g.levels[level]
	if level == len(g.levels)-1 {
		g.direct(l.a, b, x)
		return
	}
	l.a.forward(b, x, l.r)
	next := &g.levels[level+1]
	clear(next.b)
	for i, r := range l.r {
		next.b[l.gather[i]] += r
	}
	if level%2 == 0 {
		g.apply(level+1, next.b, next.x)
	} else {
		g.solve(level+1, next.b, next.x)
	}
	for i, c := range l.gather {
		x[i] += next.x[c]
	}
	l.a.backward(b, x)
}

// direct solves the coarsest problem.
func (g *multigrid) direct(a *sparse, b, x []float64) {
	n := a.n()
	if g.bottom == nil {
		a.forward(b, x, g.levels[len(g.levels)-1].r)
		for range fallback {
			a.backward(b, x)
		}
		return
	}
	for i := range n {
		s := b[i]
		row := g.bottom[i*n : i*n+i+1]
		for j, v := range row[:i] {
			s -= v * x[j]
		}
		x[i] = s / row[i]
	}
	for i := n - 1; i >= 0; i-- {
		row := g.bottom[i*n : i*n+i+1]
		x[i] /= row[i]
		for j, v := range row[:i] {
			x[j] -= v * x[i]
		}
	}
}

// solve takes one or two conjugate-gradient steps on a level.
func (g *multigrid) solve(level int, b, x []float64) {
	if level == len(g.levels)-1 {
		g.direct(g.levels[level].a, b, x)
		return
	}
	l := &g.levels[level]
	c, v := l.c, l.v
	g.apply(level, b, c)
	l.a.multiply(c, v)
	rho, alpha := dot(c, v), dot(c, b)
	if !(rho > 0) {
		clear(x)
		return
	}
	step := alpha / rho
	before, after := 0.0, 0.0
	for i, bi := range b {
		r := bi - step*v[i]
		l.rest[i] = r
		before += bi * bi
		after += r * r
	}
	if after <= enoughStep*enoughStep*before {
		for i := range x {
			x[i] = step * c[i]
		}
		return
	}
	d, w := l.d, l.w
	// The level's own room is in use by apply below it, not these four.
	g.apply(level, l.rest, d)
	l.a.multiply(d, w)
	gamma, beta, alpha2 := dot(d, v), dot(d, w), dot(d, l.rest)
	rho2 := beta - gamma*gamma/rho
	if !(rho2 > 0) {
		for i := range x {
			x[i] = step * c[i]
		}
		return
	}
	sc, sd := step-gamma*alpha2/(rho*rho2), alpha2/rho2
	for i := range x {
		x[i] = sc*c[i] + sd*d[i]
	}
}

func dot(a, b []float64) float64 {
	s := 0.0
	for i, v := range a {
		s += v * b[i]
	}
	return s
}

// mostIterations bounds the conjugate gradients; a healthy problem takes thirty.
const mostIterations = 400

// conjugate solves multiply(x) = b from x on by conjugate gradients with g, until
// the residual is small beside the first right-hand side, and returns how many
// iterations it took; ok is false if that was not enough.
func (g *multigrid) conjugate(multiply func(x, y []float64), b, x []float64, small float64) (iterations int, ok bool) {
	n := len(b)
	room := make([]float64, 5*n)
	r, z, p, q, old := room[:n], room[n:2*n], room[2*n:3*n], room[3*n:4*n], room[4*n:]
	multiply(x, q)
	for i := range r {
		r[i] = b[i] - q[i]
	}
	goal := small * math.Sqrt(dot(b, b))
	rho := 0.0
	for it := range mostIterations {
		if math.Sqrt(dot(r, r)) <= goal {
			return it, true
		}
		g.apply(0, r, z)
		now := dot(r, z)
		beta := 0.0
		if it > 0 {
			beta = (now - dot(old, z)) / rho // the cycle is not quite linear
		}
		rho = now
		for i := range p {
			p[i] = z[i] + beta*p[i]
		}
		multiply(p, q)
		step := rho / dot(p, q)
		copy(old, r)
		for i := range x {
			x[i] += step * p[i]
			r[i] -= step * q[i]
		}
	}
	return mostIterations, false
}
