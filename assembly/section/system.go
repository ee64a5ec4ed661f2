package section

import "math"

// system is one of the two problems on a mesh, in the unknowns of vertices and
// edges; those inside elements are condensed away.
//
// The temperature problem minimises ½∫k|∇T|² + ½∫(T−Ta)²/Rs: the heat flow of
// its solution on a mesh is too high. The flow problem has the heat flow as
// the curl of a stream function, q = (∂ψ/∂y, −∂ψ/∂x), which is ψ's rise along
// the outline for what leaves there, and minimises ½∫|∇ψ|²/k + ½∫Rs(∂ψ/∂s)² +
// ∫Ta ∂ψ/∂s; ψ is constant along what is adiabatic. The heat flow of its
// solution on a mesh is too low.
type system struct {
	m       *mesh
	flow    bool
	n       int
	vertex  []int32 // by line and column line: an unknown, absent or held
	flat    []int32 // level edges: the first of their bubbles' unknowns, absent or held
	upright []int32
	touches []int32
	scratch scratch
}

// What a vertex or an edge has instead of an unknown: nothing there or zero, or
// held(e): one in the problem of air e and zero in the others.
const absent = -1

func held(air int) int32 { return int32(-2 - air) }

// scratch is room for one element's unknowns and matrix.
type scratch struct {
	el    cell
	order []int32
	place []int32
	dofs  []int32
	a     []float64 // by local functions
	s     []float64 // by rising unknowns

	ids    []int32
	u, out []float64
}

func newSystem(m *mesh, flow bool) *system {
	nx, ny := m.x.len(), m.y.len()
	s := &system{m: m, flow: flow}
	ids := make([]int32, (nx+1)*(ny+1)+nx*(ny+1)+(nx+1)*ny)
	for i := range ids {
		ids[i] = absent
	}
	s.vertex, ids = ids[:(nx+1)*(ny+1)], ids[(nx+1)*(ny+1):]
	s.flat, s.upright = ids[:nx*(ny+1)], ids[nx*(ny+1):]
	if flow {
		s.numberFlow()
	} else {
		s.numberTemperature()
	}
	s.touches = make([]int32, s.n)
	for j := range ny {
		for i := range nx {
			if m.kAt(i, j) == 0 {
				continue
			}
			for _, d := range s.locate(i, j) {
				s.touches[d]++
			}
		}
	}
	return s
}

// eachEdge calls f with every edge of the mesh that has material beside it: its
// slot, its ends in vertex, its degree, and what it is.
func (s *system) eachEdge(f func(slot *int32, a, b, degree, kind int)) {
	m := s.m
	nx, ny := m.x.len(), m.y.len()
	for l := range ny + 1 {
		for i := range nx {
			if l > 0 && m.kAt(i, l-1) > 0 || l < ny && m.kAt(i, l) > 0 {
				v := l*(nx+1) + i
				f(&s.flat[l*nx+i], v, v+1, m.x.degree[i], m.flat(i, l))
			}
		}
	}
	for j := range ny {
		for l := range nx + 1 {
			if l > 0 && m.kAt(l-1, j) > 0 || l < nx && m.kAt(l, j) > 0 {
				v := j*(nx+1) + l
				f(&s.upright[j*(nx+1)+l], v, v+nx+1, m.y.degree[j], m.upright(l, j))
			}
		}
	}
}

func (s *system) numberTemperature() {
	const unset = -1 << 20
	for i := range s.vertex {
		s.vertex[i] = unset
	}
	p := s.m.plan
	s.eachEdge(func(slot *int32, a, b, degree, kind int) {
		if kind >= 0 && p.section.Boundaries[kind].Film == 0 {
			*slot = held(p.air[kind])
			for _, v := range [2]int{a, b} {
				if s.vertex[v] == unset || s.vertex[v] >= 0 {
					s.vertex[v] = *slot
				}
			}
			return
		}
		for _, v := range [2]int{a, b} {
			if s.vertex[v] == unset {
				s.vertex[v] = 0
			}
		}
	})
	for i, v := range s.vertex {
		switch {
		case v == unset:
			s.vertex[i] = absent
		case v >= 0:
			s.vertex[i] = int32(s.n)
			s.n++
		}
	}
	s.numberBubbles()
}

// numberBubbles gives unknowns to the bubbles of edges that are not held.
func (s *system) numberBubbles() {
	s.eachEdge(func(slot *int32, _, _, degree, kind int) {
		if *slot == absent && degree > 1 && !(s.flow && kind == adiabatic) {
			*slot = int32(s.n)
			s.n += degree - 1
		}
	})
}

// numberFlow gives one unknown to all vertices along each adiabatic part of the
// outline. ψ is free up to a constant: the first of these parts, or a vertex,
// is zero.
func (s *system) numberFlow() {
	root := make([]int32, len(s.vertex))
	live := make([]bool, len(s.vertex))
	for i := range root {
		root[i] = int32(i)
	}
	find := func(i int32) int32 {
		for root[i] != i {
			root[i] = root[root[i]]
			i = root[i]
		}
		return i
	}
	zero := int32(-1)
	s.eachEdge(func(_ *int32, a, b, _, kind int) {
		live[a], live[b] = true, true
		if kind == adiabatic {
			ra, rb := find(int32(a)), find(int32(b))
			low, high := min(ra, rb), max(ra, rb)
			root[high] = low
			if zero < 0 {
				zero = low
			}
		}
	})
	if zero >= 0 {
		zero = find(zero)
	}
	for i := range s.vertex {
		if !live[i] {
			continue
		}
		if zero < 0 {
			zero = int32(i)
		}
		switch r := find(int32(i)); {
		case r == zero:
			s.vertex[i] = absent
		case r == int32(i):
			s.vertex[i] = int32(s.n)
			s.n++
		default:
			s.vertex[i] = s.vertex[r] // lower, so numbered already
		}
	}
	s.numberBubbles()
}

// local fills ids with the unknowns of an element's functions, in its order.
func (s *system) local(i, j int, ids []int32) []int32 {
	nx := s.m.x.len()
	v := j*(nx+1) + i
	ids = append(ids[:0], s.vertex[v], s.vertex[v+1], s.vertex[v+nx+1], s.vertex[v+nx+2])
	run := func(first int32, degree int) {
		for b := range int32(degree - 1) {
			if first >= 0 {
				ids = append(ids, first+b)
			} else {
				ids = append(ids, absent) // bubbles of held edges are zero
			}
		}
	}
	px, py := s.m.x.degree[i], s.m.y.degree[j]
	run(s.flat[j*nx+i], px)
	run(s.flat[(j+1)*nx+i], px)
	run(s.upright[j*(nx+1)+i], py)
	run(s.upright[j*(nx+1)+i+1], py)
	return ids
}

// locate finds an element's unknowns, rising and without repeats, and in place
// where each of its functions goes among them.
func (s *system) locate(i, j int) []int32 {
	c := &s.scratch
	c.order = s.local(i, j, c.order)
	c.dofs = c.dofs[:0]
	for _, d := range c.order {
		if d < 0 {
			continue
		}
		n := len(c.dofs)
		for n > 0 && c.dofs[n-1] > d {
			n--
		}
		if n > 0 && c.dofs[n-1] == d {
			continue
		}
		c.dofs = append(c.dofs, 0)
		copy(c.dofs[n+1:], c.dofs[n:])
		c.dofs[n] = d
	}
	c.place = c.place[:0]
	for _, d := range c.order {
		n := int32(absent)
		if d >= 0 {
			n = int32(len(c.dofs) - 1)
			for c.dofs[n] != d {
				n--
			}
		}
		c.place = append(c.place, n)
	}
	return c.dofs
}

// matrix fills the scratch with an element's matrix, with that of its sides.
func (s *system) matrix(i, j int) {
	c := &s.scratch
	c.el.set(s.m, i, j, s.flow)
	n := c.el.functions()
	if cap(c.a) < n*n {
		c.a, c.s = make([]float64, n*n), make([]float64, n*n)
	}
	c.a = c.a[:n*n]
	c.el.stiffness(c.a)
	for side := range 4 {
		if b := s.m.side(i, j, side); b >= 0 {
			if film := float64(s.m.plan.section.Boundaries[b].Film); film > 0 {
				c.el.addFilm(c.a, side, film, s.flow)
			}
		}
	}
}

// element is what dissect asks for.
func (s *system) element(i, j int) ([]int32, []float64) {
	if s.m.kAt(i, j) == 0 {
		return nil, nil
	}
	s.matrix(i, j)
	dofs := s.locate(i, j)
	c := &s.scratch
	n, m := len(c.place), len(dofs)
	a := c.s[:m*m]
	clear(a)
	for r, pr := range c.place {
		if pr < 0 {
			continue
		}
		row := c.a[r*n:]
		for q, pq := range c.place[:r] {
			switch {
			case pq < 0:
			case pq < pr:
				a[int(pr)*m+int(pq)] += row[q]
			case pq > pr:
				a[int(pq)*m+int(pr)] += row[q]
			default: // two functions of one unknown
				a[int(pr)*m+int(pr)] += 2 * row[q]
			}
		}
		a[int(pr)*m+int(pr)] += row[r]
	}
	return dofs, a
}

// residual fills r with what the solution x of the problem in which air e is at
// one and all others are at zero leaves of its right-hand side. It goes through
// the elements, not through a matrix.
func (s *system) residual(e int, x solution, r []float64) {
	p := s.m.plan
	c := &s.scratch.el
	ids, u, out := s.scratch.ids, s.scratch.u, s.scratch.out
	clear(r)
	for j := range s.m.y.len() {
		for i := range s.m.x.len() {
			if s.m.kAt(i, j) == 0 {
				continue
			}
			ids, u = s.gather(i, j, e, x, ids, u)
			out = append(out[:0], u...)
			clear(out)
			c.set(s.m, i, j, s.flow)
			c.apply(u, out)
			for side := range 4 {
				b := s.m.side(i, j, side)
				if b < 0 {
					continue
				}
				if film := float64(p.section.Boundaries[b].Film); film > 0 {
					c.applyFilm(side, film, s.flow, u, is(p.air[b], e), out)
				}
				if s.flow && p.air[b] == e {
					// ∫Ta ∂ψ/∂s, with the section on the left hand.
					ends, _, _, _ := c.side(side)
					from, to := ends[0], ends[1]
					if side == top || side == left {
						from, to = to, from
					}
					out[from]--
					out[to]++
				}
			}
			for q, d := range ids {
				if d >= 0 {
					r[d] -= out[q]
				}
			}
		}
	}
	s.scratch.ids, s.scratch.u, s.scratch.out = ids, u, out
}

// solution is the values of the unknowns, as a sum of two numbers each.
type solution struct{ hi, lo []float64 }

// solve solves the problem of air e. What the factor's rounding spoils is mended
// by residuals, until they change nothing more.
func (s *system) solve(f *factor, e int) solution {
	x, r := solution{make([]float64, s.n), make([]float64, s.n)}, make([]float64, s.n)
	s.residual(e, x, r)
	f.solve(r)
	copy(x.hi, r)
	last := math.Inf(1)
	for range mostMends {
		s.residual(e, x, r)
		f.solve(r)
		most, size := 0.0, 0.0
		for i, d := range r {
			x.lo[i] += d
			most, size = max(most, math.Abs(d)), max(size, math.Abs(x.hi[i]))
		}
		if most <= mended*size || most > last/2 {
			break
		}
		last = most
	}
	return x
}

// gather fills u with the values of an element's functions in a solution of the
// problem of air e.
func (s *system) gather(i, j, e int, x solution, ids []int32, u []float64) ([]int32, []float64) {
	ids = s.local(i, j, ids)
	u = u[:0]
	nx, ny := s.m.x.degree[i]-1, s.m.y.degree[j]-1
	value := func(q int) (hi, lo float64) {
		switch d := ids[q]; {
		case d >= 0:
			return x.hi[d], x.lo[d]
		case d == held(e):
			return 1, 0
		}
		return 0, 0
	}
	difference := func(q, from int) float64 {
		h, l := value(q)
		fh, fl := value(from)
		return (h - fh) + (l - fl)
	}
	hi, lo := value(0)
	x0, y0 := difference(1, 0), difference(2, 0)
	twist := difference(3, 2) - x0
	if s.m.x.size(i) > s.m.y.size(j) { // the smaller differences lose less
		twist = difference(3, 1) - y0
	}
	u = append(u, hi+lo, x0, y0, twist)
	for q := 4; q < len(ids); q++ {
		switch {
		case q >= 4+nx && q < 4+2*nx:
			u = append(u, difference(q, q-nx))
		case q >= 4+2*nx+ny:
			u = append(u, difference(q, q-ny))
		default:
			hi, lo := value(q)
			u = append(u, hi+lo)
		}
	}
	return ids, u
}

// How a solution is mended: a change this small is the last one.
const (
	mostMends = 5
	mended    = 1e-11
)
