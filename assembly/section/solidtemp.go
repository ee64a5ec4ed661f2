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

// apply adds k∫∇u·∇v for every function v of a brick to out.
func (b *brick) apply(u, out *[8]float64) {
	// x
	k := b.k[0]
	m := mean4([4]float64{u[1] - u[0], u[3] - u[2], u[5] - u[4], u[7] - u[6]})
	out[0] -= k * m[0]
	out[1] += k * m[0]
	out[2] -= k * m[1]
	out[3] += k * m[1]
	out[4] -= k * m[2]
	out[5] += k * m[2]
	out[6] -= k * m[3]
	out[7] += k * m[3]
	// y
	k = b.k[1]
	m = mean4([4]float64{u[2] - u[0], u[3] - u[1], u[6] - u[4], u[7] - u[5]})
	out[0] -= k * m[0]
	out[2] += k * m[0]
	out[1] -= k * m[1]
	out[3] += k * m[1]
	out[4] -= k * m[2]
	out[6] += k * m[2]
	out[5] -= k * m[3]
	out[7] += k * m[3]
	// z
	k = b.k[2]
	m = mean4([4]float64{u[4] - u[0], u[5] - u[1], u[6] - u[2], u[7] - u[3]})
	out[0] -= k * m[0]
	out[4] += k * m[0]
	out[1] -= k * m[1]
	out[5] += k * m[1]
	out[2] -= k * m[2]
	out[6] += k * m[2]
	out[3] -= k * m[3]
	out[7] += k * m[3]
}

// eachFilm calls f with the faces of a brick that have a film: its corners, its
// conductance and the air behind.
func (t *tempField) eachFilm(b *brick, f func(v [4]int, conductance float64, room int)) {
	if b.bare {
		return
	}
	for axis := range 3 {
		for side := range 2 {
			room := b.rooms[axis][side]
			if room < 0 {
				continue
			}
			if film := float64(t.g.plan.rooms[room].Film); film > 0 {
				f(corners(axis, side), b.area[axis]/film, room)
			}
		}
	}
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
	clear(y)
	var b brick
	var u, out [8]float64
	t.g.each(func(c [3]int, i int) {
		if t.g.k[i] == 0 {
			return
		}
		t.brick(c, i, &b)
		t.gather(&b, e, x, &u)
		clear(out[:])
		b.apply(&u, &out)
		t.eachFilm(&b, func(v [4]int, g float64, room int) {
			a := is(t.g.plan.air[room], e)
			m := mean4([4]float64{u[v[0]] - a, u[v[1]] - a, u[v[2]] - a, u[v[3]] - a})
			for q := range 4 {
				out[v[q]] += g * m[q]
			}
		})
		for q, v := range b.v {
			if d := t.id[v]; d >= 0 {
				y[d] += out[q]
			}
		}
	})
}

func solveTemp(g *grid) (*tempField, int, error) {
	t := &tempField{g: g, step: [3]int{1, g.n(0) + 1, (g.n(0) + 1) * (g.n(1) + 1)}}
	count := g.vertices()
	t.id = make([]int32, count)
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
					for _, q := range corners(axis, side) {
						switch {
						case film > 0:
							d[b.v[q]] += b.area[axis] / film / 4
						case t.id[b.v[q]] >= 0:
							t.id[b.v[q]] = held(g.plan.air[room])
						}
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
