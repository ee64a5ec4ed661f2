package section

import "fmt"

// tempField is the temperature by conforming trilinear elements, which bounds
// the heat from above.
type tempField struct {
	g    *grid
	id   []int32 // by vertex: an unknown, absent or held
	n    int
	x    [][]float64 // by air but the coldest: its unit problem's solution
	step [3]int      // between vertices along each axis

	films    []filmFace
	all, out []float64 // by vertex: room for apply
}

// filmFace is a face of a brick with a film.
type filmFace struct {
	v           [4]int32 // vertices
	conductance float64  // area over film
	air         int
}

func (t *tempField) vertex(c [3]int) int {
	return c[0] + t.step[1]*c[1] + t.step[2]*c[2]
}

// brick is one trilinear element: its conductances along each axis, its vertices
// and the rooms at its faces.
type brick struct {
	k     [3]float64 // k·area/length
	v     [8]int     // vertices, x first
	rooms [3][2]int
	area  [3]float64
	bare  bool // no room at any face
}

func (t *tempField) brick(c [3]int, i int, b *brick) {
	g := t.g
	b.bare = true
	for axis := range 3 {
		b.area[axis] = g.faceArea(c, axis)
		b.k[axis] = g.k[i] * b.area[axis] / g.size(axis, c[axis])
		for side, dir := range [2]int{-1, 1} {
			_, b.rooms[axis][side] = g.beside(c, axis, dir)
			b.bare = b.bare && b.rooms[axis][side] < 0
		}
	}
	at := t.vertex(c)
	for q := range 8 {
		b.v[q] = at + q&1 + q>>1&1*t.step[1] + q>>2*t.step[2]
	}
}

// corners returns the vertices of a face, along the next axis first.
func corners(axis, side int) [4]int {
	one, a, b := 1<<axis, 1<<((axis+1)%3), 1<<((axis+2)%3)
	at := side * one
	return [4]int{at, at + a, at + b, at + a + b}
}

// mean4 sets out to the products of a bilinear function with the four functions
// of a unit square.
func mean4(u [4]float64) (out [4]float64) {
	a0, a1 := u[0]/3+u[1]/6, u[1]/3+u[0]/6
	b0, b1 := u[2]/3+u[3]/6, u[3]/3+u[2]/6
	return [4]float64{a0/3 + b0/6, a1/3 + b1/6, b0/3 + a0/6, b1/3 + a1/6}
}

// edges returns the rises of u along the four edges of an axis.
func edges(u *[8]float64, axis int) (d [4]float64) {
	lo, hi := corners(axis, 0), corners(axis, 1)
	for q := range 4 {
		d[q] = u[hi[q]] - u[lo[q]]
	}
	return d
}

// form returns k∫∇u·∇v over a brick.
func (b *brick) form(u, v *[8]float64) float64 {
	sum := 0.0
	for axis := range 3 {
		m, d := mean4(edges(u, axis)), edges(v, axis)
		for q := range 4 {
			sum += b.k[axis] * m[q] * d[q]
		}
	}
	return sum
}

// gather fills u with the values of a brick's vertices in x, that of held
// vertices being one for air e.
func (t *tempField) gather(b *brick, e int, x []float64, u *[8]float64) {
	for q, v := range b.v {
		switch d := t.id[v]; {
		case d >= 0:
			u[q] = x[d]
		case d == held(e):
			u[q] = 1
		default:
			u[q] = 0
		}
	}
}

// noAir is the problem in which all air is at zero.
const noAir = -1000

// apply sets y to what the functions have against x in the problem of air e: the
// matrix times x for noAir, the residual with its sign turned otherwise.
func (t *tempField) apply(e int, x, y []float64) {
	for v, d := range t.id {
		switch {
		case d >= 0:
			t.all[v] = x[d]
		case d == held(e):
			t.all[v] = 1
		default:
			t.all[v] = 0
		}
	}
	clear(t.out)
	g := t.g
	nx := g.n(0)
	hx := make([]float64, nx)
	for i := range hx {
		hx[i] = g.size(0, i)
	}
	for z := range g.n(2) {
		hz := g.size(2, z)
		for yy := range g.n(1) {
			hy := g.size(1, yy)
			at := yy*t.step[1] + z*t.step[2]
			i := (z*g.n(1) + yy) * nx
			var u, o [4][]float64 // rows of vertices: below and above in y, then in z
			for q := range 4 {
				from := at + q&1*t.step[1] + q>>1*t.step[2]
				u[q], o[q] = t.all[from:from+nx+1], t.out[from:from+nx+1]
			}
			applyRow(g.k[i:i+nx], hx, hy, hz, u, o)
		}
	}
	for _, f := range t.films {
		a := is(f.air, e)
		v := f.v
		m := mean4([4]float64{t.all[v[0]] - a, t.all[v[1]] - a, t.all[v[2]] - a, t.all[v[3]] - a})
		for q := range 4 {
			t.out[v[q]] += f.conductance * m[q]
		}
	}
	for v, d := range t.id {
		if d >= 0 {
			y[d] = t.out[v]
		}
	}
}

// applyRow adds k∫∇u·∇v for every function v of a row of bricks.
func applyRow(ks, hx []float64, hy, hz float64, u, o [4][]float64) {
	n := len(ks)
	hx = hx[:n]
	u0, u1, u2, u3 := u[0][:n+1], u[1][:n+1], u[2][:n+1], u[3][:n+1]
	o0, o1, o2, o3 := o[0][:n+1], o[1][:n+1], o[2][:n+1], o[3][:n+1]
	for i, k := range ks {
		if k == 0 {
			continue
		}
		k /= 36
		h := hx[i]
		kx, ky, kz := k*hy*hz/h, k*h*hz/hy, k*h*hy/hz
		a0, b0, a1, b1 := u0[i], u0[i+1], u1[i], u1[i+1]
		a2, b2, a3, b3 := u2[i], u2[i+1], u3[i], u3[i+1]
		// Each rise along an edge is weighed 4, 2, 2, 1 with those of the edges
		// beside it.
		d0, d1, d2, d3 := b0-a0, b1-a1, b2-a2, b3-a3
		s, t := 2*d0+d1, d0+2*d1
		v, w := 2*d2+d3, d2+2*d3
		x0, x1, x2, x3 := kx*(2*s+v), kx*(2*t+w), kx*(s+2*v), kx*(t+2*w)

		d0, d1, d2, d3 = a1-a0, b1-b0, a3-a2, b3-b2
		s, t = 2*d0+d1, d0+2*d1
		v, w = 2*d2+d3, d2+2*d3
		y0, y1, y2, y3 := ky*(2*s+v), ky*(2*t+w), ky*(s+2*v), ky*(t+2*w)

		d0, d1, d2, d3 = a2-a0, b2-b0, a3-a1, b3-b1
		s, t = 2*d0+d1, d0+2*d1
		v, w = 2*d2+d3, d2+2*d3
		z0, z1, z2, z3 := kz*(2*s+v), kz*(2*t+w), kz*(s+2*v), kz*(t+2*w)

		o0[i] -= x0 + y0 + z0
		o0[i+1] += x0 - y1 - z1
		o1[i] += y0 - x1 - z2
		o1[i+1] += x1 + y1 - z3
		o2[i] += z0 - x2 - y2
		o2[i+1] += x2 + z1 - y3
		o3[i] += y2 + z2 - x3
		o3[i+1] += x3 + y3 + z3
	}
}

func solveTemp(g *grid) (*tempField, int, error) {
	t := &tempField{g: g, step: [3]int{1, g.n(0) + 1, (g.n(0) + 1) * (g.n(1) + 1)}}
	count := g.vertices()
	t.id = make([]int32, count)
	t.all, t.out = make([]float64, count), make([]float64, count)
	const unset = -1 << 20
	for i := range t.id {
		t.id[i] = unset
	}
	var ties7 [3][]float64
	for axis := range 3 {
		ties7[axis] = make([]float64, count)
	}
	d := make([]float64, count)
	var b brick
	g.each(func(c [3]int, i int) {
		if g.k[i] == 0 {
			return
		}
		t.brick(c, i, &b)
		for _, v := range b.v {
			if t.id[v] == unset {
				t.id[v] = 0
			}
		}
		// The lumped matrix, whose ties run along edges only: with it as
		// preconditioner the count of iterations depends on neither shapes nor
		// conductivities, since its energy is one to nine times the true one on
		// every brick.
		for axis := range 3 {
			for _, q := range corners(axis, 0) {
				ties7[axis][b.v[q]] += b.k[axis] / 4
			}
			for side := range 2 {
				if room := b.rooms[axis][side]; room >= 0 {
					film := float64(g.plan.rooms[room].Film)
					face := filmFace{conductance: b.area[axis] / film, air: g.plan.air[room]}
					for n, q := range corners(axis, side) {
						face.v[n] = int32(b.v[q])
						switch {
						case film > 0:
							d[b.v[q]] += face.conductance / 4
						case t.id[b.v[q]] >= 0:
							t.id[b.v[q]] = held(g.plan.air[room])
						}
					}
					if film > 0 {
						t.films = append(t.films, face)
					}
				}
			}
		}
	})
	for i, v := range t.id {
		switch {
		case v == unset:
			t.id[i] = absent
		case v >= 0:
			t.id[i] = int32(t.n)
			t.n++
		}
	}
	mg := newMultigrid(ties([3]int{g.n(0) + 1, g.n(1) + 1, g.n(2) + 1}, t.id, t.n, ties7, d))
	iterations := 0
	zero := make([]float64, t.n)
	for e := range len(g.plan.airs) - 1 {
		x, load := make([]float64, t.n), make([]float64, t.n)
		t.apply(e, zero, load)
		for i := range load {
			load[i] = -load[i]
		}
		n, ok := mg.conjugate(func(x, y []float64) { t.apply(noAir, x, y) }, load, x, solidResidual)
		if iterations = max(iterations, n); !ok {
			return nil, n, fmt.Errorf("section: %d unknowns were not solved within %d iterations; conductivities or sizes lie too far apart", t.n, mostIterations)
		}
		t.x = append(t.x, x)
	}
	return t, iterations, nil
}
