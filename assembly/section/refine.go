package section

import (
	"cmp"
	"math"
	"slices"
)

// Where and how a mesh is refined.
const (
	grading    = 0.15 // an element at a corner is cut to this part of itself
	marked     = 0.7  // of the whole gap: the elements refined are those that cause this much
	firstInner = 2    // degree of an element cut off at a corner, and of all at the start
	finest     = 1e-9 // of the section; no smaller element is cut
	tailShare  = 0.2  // a direction is refined if its last modes hold this much of the other's
)

// findCorners tells at which vertices the solution is singular: all those where
// the materials or what the outline faces are not the same on either side of a
// straight line through them.
func (p *plan) findCorners() {
	w := len(p.xs)
	p.corner, p.jump = make([]bool, w*len(p.ys)), make([]bool, w*len(p.ys))
	for l := range p.ys {
		for m := range p.xs {
			p.corner[l*w+m] = p.singular(m, l)
			p.jump[l*w+m] = p.jumpAt(m, l)
			p.jumps = p.jumps || p.jump[l*w+m]
		}
	}
}

// jumpAt reports whether surfaces held at two temperatures meet at a vertex.
func (p *plan) jumpAt(m, l int) bool {
	held := -1
	for _, e := range p.edgesAt(m, l) {
		if e < 0 || p.section.Boundaries[e].Film > 0 {
			continue
		}
		if held >= 0 && p.air[held] != p.air[e] {
			return true
		}
		held = e
	}
	return false
}

// edgesAt returns what the edges that meet at a vertex are.
func (p *plan) edgesAt(m, l int) [4]int {
	out := [4]int{within, within, within, within}
	if m > 0 {
		out[0] = p.flatAt(m-1, l)
	}
	if m < p.columns() {
		out[1] = p.flatAt(m, l)
	}
	if l > 0 {
		out[2] = p.uprightAt(m, l-1)
	}
	if l < p.rows() {
		out[3] = p.uprightAt(m, l)
	}
	return out
}

func (p *plan) singular(m, l int) bool {
	k := func(i, j int) float64 {
		if c := p.at(i, j); c >= 0 {
			return float64(p.section.Pieces[c].Conductivity)
		}
		return 0
	}
	a, b, c, d := k(m-1, l-1), k(m, l-1), k(m-1, l), k(m, l)
	empty := 0
	for _, v := range [4]float64{a, b, c, d} {
		if v == 0 {
			empty++
		}
	}
	switch empty {
	case 0:
		return !(a == b && c == d || a == c && b == d)
	case 2:
		// A straight part of the outline: the same film and air on both sides,
		// and one material, or an adiabatic one, which acts as a mirror.
		var e, f int
		same := false
		if a == 0 && b == 0 || c == 0 && d == 0 {
			e, f = p.flatAt(m-1, l), p.flatAt(m, l)
			same = a == b && c == d
		} else {
			e, f = p.uprightAt(m, l-1), p.uprightAt(m, l)
			same = a == c && b == d
		}
		return !p.alike(e, f) || !same && e != adiabatic
	case 3:
		var e, f int
		if a != 0 || c != 0 {
			e = p.flatAt(m-1, l)
		} else {
			e = p.flatAt(m, l)
		}
		if a != 0 || b != 0 {
			f = p.uprightAt(m, l-1)
		} else {
			f = p.uprightAt(m, l)
		}
		return e != adiabatic && f != adiabatic && !p.alike(e, f)
	}
	return empty == 1
}

// alike reports whether two edges of the outline face the same.
func (p *plan) alike(e, f int) bool {
	if e < 0 || f < 0 {
		return e == f
	}
	b := p.section.Boundaries
	return e == f || b[e].Air == b[f].Air && b[e].Film == b[f].Film
}

// firstAxes cuts every interval of the plan once toward each end that has a
// singular corner on it.
func (p *plan) firstAxes() (x, y axis) {
	w := len(p.xs)
	atX, atY := make([]bool, w), make([]bool, len(p.ys))
	for i, s := range p.corner {
		if s {
			atX[i%w], atY[i/w] = true, true
		}
	}
	return firstAxis(p.xs, atX), firstAxis(p.ys, atY)
}

func firstAxis(lines []float64, graded []bool) axis {
	var a axis
	add := func(at float64, degree, of int) {
		a.at, a.degree, a.of = append(a.at, at), append(a.degree, degree), append(a.of, of)
	}
	for n := range len(lines) - 1 {
		from, to := lines[n], lines[n+1]
		add(from, firstInner, n)
		if graded[n] {
			add(from+grading*(to-from), firstInner, n)
		}
		if graded[n+1] {
			add(to-grading*(to-from), firstInner, n)
		}
	}
	a.at = append(a.at, lines[len(lines)-1])
	return a
}

// change is what happens to one element of an axis.
type change struct {
	low, high bool // a piece is cut off at this end
	raise     bool // its degree rises
}

// apply returns the axis with the changes made.
func (a *axis) apply(changes []change) axis {
	var out axis
	add := func(at float64, degree, of int) {
		out.at, out.degree, out.of = append(out.at, at), append(out.degree, degree), append(out.of, of)
	}
	for i, c := range changes {
		from, to, p, of := a.at[i], a.at[i+1], a.degree[i], a.of[i]
		if c.raise {
			p++
		}
		if p > mostDegree { // halved instead
			add(from, mostDegree, of)
			from, p = (from+to)/2, mostDegree
			add(from, mostDegree, of)
			continue
		}
		inner := max(firstInner, a.degree[i]-1)
		h := to - from
		switch {
		case c.low && c.high:
			add(from, inner, of)
			add(from+grading*h, p, of)
			add(to-grading*h, inner, of)
		case c.low:
			add(from, inner, of)
			add(from+grading*h, p, of)
		case c.high:
			add(from, p, of)
			add(to-grading*h, inner, of)
		default:
			add(from, p, of)
		}
	}
	out.at = append(out.at, a.at[len(a.at)-1])
	return out
}

// refine returns the mesh to solve next: the elements that cause most of the
// gap, and those at the spots whose temperatures still move, are cut smaller
// toward their singular corners and get a higher degree where they have none,
// in the direction that lacks it. It returns nil if nothing is left to refine.
func (p *pair) refine(moving []Point) *mesh {
	m := p.m
	nx := m.x.len()
	r := refinement{pair: p, x: make([]change, nx), y: make([]change, m.y.len())}
	order := make([]int, 0, len(p.gap))
	total := 0.0
	for e, g := range p.gap {
		if g > 0 {
			order = append(order, e)
			total += g
		}
	}
	slices.SortFunc(order, func(a, b int) int { return cmp.Or(cmp.Compare(p.gap[b], p.gap[a]), a-b) })
	changed := false
	done := 0.0
	for _, e := range order {
		if done > marked*total {
			break
		}
		if r.mark(e%nx, e/nx) {
			changed = true
			done += p.gap[e]
		} else {
			total -= p.gap[e] // as fine as can be
		}
	}
	for _, at := range moving {
		m.around(at, func(i, j int) { changed = r.mark(i, j) || changed })
	}
	if !changed {
		return nil
	}
	return newMesh(m.plan, m.x.apply(r.x), m.y.apply(r.y))
}

// fromJump weighs an element by its distance from where the temperature of the
// surface jumps. The energy there has no bound, and what is wrong at a jump is
// wrong farther away only as the square of the distance.
func (m *mesh) fromJump(i, j int) float64 {
	w := 1.0
	if !m.plan.jumps {
		return w
	}
	size := math.Hypot(m.x.at[m.x.len()]-m.x.at[0], m.y.at[m.y.len()]-m.y.at[0])
	for v, jump := range m.plan.jump {
		if jump {
			x, y := m.plan.xs[v%len(m.plan.xs)], m.plan.ys[v/len(m.plan.xs)]
			r := math.Hypot((m.x.at[i]+m.x.at[i+1])/2-x, (m.y.at[j]+m.y.at[j+1])/2-y) / size
			w = min(w, r*r)
		}
	}
	return w
}

// around calls f with every element of the material that holds a point.
func (m *mesh) around(at Point, f func(i, j int)) {
	near := func(a *axis, i int, x float64) bool {
		slack := snap * a.size(i)
		return x >= a.at[i]-slack && x <= a.at[i+1]+slack
	}
	for j := range m.y.len() {
		if !near(&m.y, j, float64(at.Y)) {
			continue
		}
		for i := range m.x.len() {
			if near(&m.x, i, float64(at.X)) && m.kAt(i, j) > 0 {
				f(i, j)
			}
		}
	}
}

// refinement collects what changes in a mesh.
type refinement struct {
	*pair
	x, y []change
}

// mark has one element refined, and reports whether it can be.
func (r *refinement) mark(i, j int) bool {
	m := r.m
	w := len(m.plan.xs)
	corner, cut := false, false
	for v := range 4 {
		lx, okx := m.x.onLine(i, v&1)
		ly, oky := m.y.onLine(j, v>>1)
		if !okx || !oky || !m.plan.corner[ly*w+lx] {
			continue
		}
		corner = true
		cut = r.x[i].cut(&m.x, i, v&1) || cut
		cut = r.y[j].cut(&m.y, j, v>>1) || cut
	}
	if corner {
		return cut
	}
	tx, ty := r.tails(i, j)
	if tx >= tailShare*ty {
		r.x[i].raise = true
	}
	if ty >= tailShare*tx {
		r.y[j].raise = true
	}
	return true
}

// cut has a piece cut off at one end, if the element is not too small for it.
func (c *change) cut(a *axis, i, end int) bool {
	if a.size(i) < finest*(a.at[len(a.at)-1]-a.at[0]) {
		return false
	}
	if end == 0 {
		c.low = true
	} else {
		c.high = true
	}
	return true
}

// onLine returns which line of the plan an end of an element lies on.
func (a *axis) onLine(i, end int) (line int, ok bool) {
	if end == 0 {
		return a.of[i], i == 0 || a.of[i-1] != a.of[i]
	}
	return a.of[i] + 1, i+1 == a.len() || a.of[i+1] != a.of[i]
}

// tails returns how much energy the actual solutions have in their highest
// modes of an element, along x and along y.
func (p *pair) tails(i, j int) (tx, ty float64) {
	var c cell
	var ids []int32
	var u, sum []float64
	for _, s := range [2]*system{p.temp, p.flow} {
		c.set(p.m, i, j, s.flow)
		x := p.t
		if s.flow {
			x = p.psi
		}
		sum = sum[:0]
		for e, w := range p.excess() {
			ids, u = s.gather(i, j, e, x[e], ids, u)
			if e == 0 {
				sum = append(sum, make([]float64, len(u))...)
			}
			for q, v := range u {
				sum[q] += w * v
			}
		}
		a, b := c.tails(sum)
		tx, ty = tx+a, ty+b
	}
	return tx, ty
}

// tails returns the energy of the two highest modes along x, and along y.
func (c *cell) tails(u []float64) (tx, ty float64) {
	nx, ny := c.x.bubbles(), c.y.bubbles()
	inner := make([]float64, nx*ny)
	for i := range nx {
		for j := range ny {
			inner[i*ny+j] = -c.coupling(u, i, j) / c.weight(i, j)
		}
	}
	bt, lr := u[4:], u[4+2*nx:]
	tx = tail(c.x, c.y, c.kx, c.ky, bt, func(along, across int) float64 { return inner[along*ny+across] })
	ty = tail(c.y, c.x, c.ky, c.kx, lr, func(along, across int) float64 { return inner[across*ny+along] })
	return tx, ty
}

// tail returns the energy of the two highest modes along an axis; edge has the bubbles
// of the two sides along it, inner those of the middle.
func tail(along, across *shape, k, kAcross float64, edge []float64, inner func(along, across int) float64) (sum float64) {
	n := along.bubbles()
	for d := max(0, n-2); d < n; d++ {
		// g across the axis is what the mode of degree d+2 along it is multiplied by.
		mode := along.modes[d]
		var g0, g1, mu, mass, slope float64
		for i, v := range mode {
			g0 += v * edge[i]
			g1 += v * (edge[i] + edge[n+i])
			mu += v * v * along.mu[i]
		}
		mass = (g0*g0 + g0*g1 + g1*g1) / 3
		slope = (g1 - g0) * (g1 - g0)
		for j := range across.bubbles() {
			g := 0.0
			for i, v := range mode {
				g += v * inner(i, j)
			}
			mass += (across.end[0][j]*g0+across.end[1][j]*g1)*g + across.mu[j]*g*g/2
			slope += 2 * g * g
		}
		sum += 2*k*mass + kAcross/2*mu*slope
	}
	return sum
}
