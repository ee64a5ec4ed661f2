package section

import "slices"

// grid is a solid plan cut into cells, a product of three cut lines.
type grid struct {
	plan *solidPlan
	at   [3][]float64 // ends of the cells along each axis
	of   [3][]int     // by cell of an axis: the interval of the plan
	k    []float64    // by cell, x first: conductivity, 0 if empty
}

func newGrid(p *solidPlan, at [3][]float64, of [3][]int) *grid {
	g := &grid{plan: p, at: at, of: of}
	g.k = make([]float64, g.n(0)*g.n(1)*g.n(2))
	g.each(func(c [3]int, i int) {
		if b := p.at([3]int{of[0][c[0]], of[1][c[1]], of[2][c[2]]}); b >= 0 {
			g.k[i] = float64(p.solid.Boxes[b].Conductivity)
		}
	})
	return g
}

// firstGrid cuts every interval of the plan in two.
func (p *solidPlan) firstGrid() *grid {
	var at [3][]float64
	var of [3][]int
	for axis, l := range p.lines {
		for n := 1; n < len(l)-2; n++ {
			at[axis] = append(at[axis], l[n], (l[n]+l[n+1])/2)
			of[axis] = append(of[axis], n, n)
		}
		at[axis] = append(at[axis], l[len(l)-2])
	}
	return newGrid(p, at, of)
}

func (g *grid) n(axis int) int { return len(g.of[axis]) }

func (g *grid) size(axis, i int) float64 { return g.at[axis][i+1] - g.at[axis][i] }

func (g *grid) index(c [3]int) int { return (c[2]*g.n(1)+c[1])*g.n(0) + c[0] }

// each calls f with every cell, x running fastest.
func (g *grid) each(f func(c [3]int, i int)) {
	i := 0
	for z := range g.n(2) {
		for y := range g.n(1) {
			for x := range g.n(0) {
				f([3]int{x, y, z}, i)
				i++
			}
		}
	}
}

// beside returns what lies beside a cell of material: the index of a cell of
// material, else the room there or nowhere, with cell −1.
func (g *grid) beside(c [3]int, axis, d int) (cell, room int) {
	o := c
	o[axis] += d
	if o[axis] >= 0 && o[axis] < g.n(axis) {
		if i := g.index(o); g.k[i] > 0 {
			return i, nowhere
		}
	}
	pc := [3]int{g.of[0][c[0]], g.of[1][c[1]], g.of[2][c[2]]}
	if o[axis] < 0 || o[axis] >= g.n(axis) || g.of[axis][o[axis]] != pc[axis] {
		pc[axis] += d
	}
	if q := g.plan.at(pc); q < nowhere {
		return -1, -2 - q
	}
	return -1, nowhere
}

// vertices is how many corners of cells of material there are, at most.
func (g *grid) vertices() int { return (g.n(0) + 1) * (g.n(1) + 1) * (g.n(2) + 1) }

// find returns a cell of the material at a place.
func (g *grid) find(at Place) (c [3]int, ok bool) {
	var lo, hi [3]int
	for axis := range 3 {
		v := at.coordinate(axis)
		l := g.at[axis]
		lo[axis], _ = slices.BinarySearch(l, v-snap)
		hi[axis], _ = slices.BinarySearch(l, v+snap)
		lo[axis], hi[axis] = max(0, lo[axis]-1), min(g.n(axis)-1, hi[axis])
		if v < l[0]-snap || v > l[len(l)-1]+snap {
			return c, false
		}
	}
	for z := lo[2]; z <= hi[2]; z++ {
		for y := lo[1]; y <= hi[1]; y++ {
			for x := lo[0]; x <= hi[0]; x++ {
				c := [3]int{x, y, z}
				inside := true
				for axis := range 3 {
					v := at.coordinate(axis)
					inside = inside && v >= g.at[axis][c[axis]]-snap && v <= g.at[axis][c[axis]+1]+snap
				}
				if inside && g.k[g.index(c)] > 0 {
					return c, true
				}
			}
		}
	}
	return c, false
}
