package section

import "fmt"

// How far conjugate gradients go: the residual beside the right-hand side.
const solidResidual = 1e-10

// ties builds the matrix of nodes on a product grid of n by n by n that are tied
// to their next ones along each axis by conductances t, and to the air by d.
// Nodes without an unknown (id below 0) are held: they count on the diagonal of
// their neighbours only.
func ties(n [3]int, id []int32, unknowns int, t [3][]float64, d []float64) *sparse {
	a := &sparse{
		start: make([]int32, 1, unknowns+1), upper: make([]int32, 0, unknowns), diag: make([]float64, 0, unknowns),
		col: make([]int32, 0, 6*unknowns), val: make([]float64, 0, 6*unknowns),
	}
	step := [3]int{1, n[0], n[0] * n[1]}
	i := 0
	for z := range n[2] {
		for y := range n[1] {
			for x := range n[0] {
				if id[i] >= 0 {
					sum := d[i]
					c := [3]int{x, y, z}
					tie := func(j int, v float64) {
						if v == 0 {
							return
						}
						sum += v
						if id[j] >= 0 {
							a.col, a.val = append(a.col, id[j]), append(a.val, -v)
						}
					}
					for axis := 2; axis >= 0; axis-- {
						if c[axis] > 0 {
							tie(i-step[axis], t[axis][i-step[axis]])
						}
					}
					a.upper = append(a.upper, int32(len(a.col)))
					for axis := range 3 {
						if c[axis] < n[axis]-1 {
							tie(i+step[axis], t[axis][i])
						}
					}
					a.diag = append(a.diag, sum)
					a.start = append(a.start, int32(len(a.col)))
				}
				i++
			}
		}
	}
	return a
}

// flowField is the heat flow by finite volumes: one temperature a cell, the flow
// through a face from the two on its sides. What enters a cell leaves it, so
// that these flows, linear across each cell, are admissible in the flow problem
// and bound the heat from below.
type flowField struct {
	g    *grid
	id   []int32      // by cell
	cell []int        // by unknown
	t    [3][]float64 // by cell: the conductance to the next one along each axis, W/K
	x    [][]float64  // by air but the coldest: its unit problem's temperatures
}

// through returns the conductance from a cell's middle to its surface or to air
// behind a film, W/K.
func (g *grid) through(c [3]int, i, axis int, film float64) float64 {
	return g.faceArea(c, axis) / (g.size(axis, c[axis])/2/g.k[i] + film)
}

func (g *grid) faceArea(c [3]int, axis int) float64 {
	a, b := (axis+1)%3, (axis+2)%3
	return g.size(a, c[a]) * g.size(b, c[b])
}

func solveFlow(g *grid) (*flowField, int, error) {
	f := &flowField{g: g, id: make([]int32, len(g.k))}
	for i, k := range g.k {
		f.id[i] = -1
		if k > 0 {
			f.id[i] = int32(len(f.cell))
			f.cell = append(f.cell, i)
		}
	}
	for axis := range f.t {
		f.t[axis] = make([]float64, len(g.k))
	}
	d := make([]float64, len(g.k))
	loads := make([][]float64, len(g.plan.airs)-1)
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
				switch {
				case next >= 0 && dir > 0:
					o := c
					o[axis]++
					a, b := g.through(c, i, axis, 0), g.through(o, next, axis, 0)
					f.t[axis][i] = a * b / (a + b)
				case room >= 0:
					v := g.through(c, i, axis, float64(g.plan.rooms[room].Film))
					d[i] += v
					if e := g.plan.air[room]; e < len(loads) {
						loads[e][f.id[i]] += v
					}
				}
			}
		}
	})
	a := ties([3]int{g.n(0), g.n(1), g.n(2)}, f.id, len(f.cell), f.t, d)
	mg := newMultigrid(a)
	iterations := 0
	for _, b := range loads {
		x := make([]float64, len(b))
		n, ok := mg.conjugate(a.multiply, b, x, solidResidual)
		if iterations = max(iterations, n); !ok {
			return nil, n, fmt.Errorf("section: %d unknowns were not solved within %d iterations; conductivities or sizes lie too far apart", len(b), mostIterations)
		}
		f.x = append(f.x, x)
	}
	return f, iterations, nil
}

// flows fills q with the flow through both faces of a cell along each axis in a
// unit problem, toward rising coordinates, W/K.
func (f *flowField) flows(c [3]int, i, e int, q *[3][2]float64) {
	g := f.g
	x := f.x[e]
	here := x[f.id[i]]
	step := [3]int{1, g.n(0), g.n(0) * g.n(1)}
	for axis := range 3 {
		for side, dir := range [2]int{-1, 1} {
			next, room := g.beside(c, axis, dir)
			v := 0.0
			switch {
			case next >= 0 && dir > 0:
				v = f.t[axis][i] * (here - x[f.id[next]])
			case next >= 0:
				v = f.t[axis][i-step[axis]] * (x[f.id[next]] - here)
			case room >= 0:
				v = float64(dir) * g.through(c, i, axis, float64(g.plan.rooms[room].Film)) * (here - is(g.plan.air[room], e))
			}
			q[axis][side] = v
		}
	}
}
