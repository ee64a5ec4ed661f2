package section

import (
	"cmp"
	"slices"
	"sync"

	"github.com/coldseam/coldseam/rvalue"
)

// solidPair is the temperature and the flow problem solved on one grid.
type solidPair struct {
	g            *grid
	temp         *tempField
	flow         *flowField
	upper, lower [][]float64  // by two airs, W/K
	slab         [3][]float64 // by cell of an axis: the part of the gap that halving it would mend
	iterations   int
}

func solveSolidPair(g *grid) (*solidPair, error) {
	p := &solidPair{g: g}
	var n, m int
	var flowErr, tempErr error
	// The two know nothing of each other: side by side they take half the time, and
	// come out the same to the bit on any number of processors.
	var both sync.WaitGroup
	both.Go(func() { p.flow, n, flowErr = solveFlow(g) })
	both.Go(func() { p.temp, m, tempErr = solveTemp(g) })
	both.Wait()
	if err := cmp.Or(flowErr, tempErr); err != nil {
		return nil, err
	}
	p.iterations = max(n, m)
	p.forms()
	return p, nil
}

func (p *solidPair) excess() []float64 { return excess(p.g.plan.airs) }

// forms computes both bounds of the unit problems, and where in the grid the
// gap between them in the actual problem comes from.
func (p *solidPair) forms() {
	g := p.g
	n := len(p.flow.x)
	p.upper, p.lower = square(n), square(n)
	for axis := range 3 {
		p.slab[axis] = make([]float64, g.n(axis))
	}
	x := p.excess()
	u, q := make([][8]float64, n), make([][3][2]float64, n)
	var b brick
	g.each(func(c [3]int, i int) {
		if g.k[i] == 0 {
			return
		}
		p.temp.brick(c, i, &b)
		var at [8]float64
		var aq [3][2]float64
		for e := range n {
			p.temp.gather(&b, e, p.temp.x[e], &u[e])
			p.flow.flows(c, i, e, &q[e])
			for v := range at {
				at[v] += x[e] * u[e][v]
			}
			for axis := range 3 {
				aq[axis][0] += x[e] * q[e][axis][0]
				aq[axis][1] += x[e] * q[e][axis][1]
			}
		}
		for e := range n {
			for f := range e + 1 {
				p.upper[e][f] += b.form(&u[e], &u[f])
				p.lower[e][f] -= b.flowForm(&q[e], &q[f])
			}
		}
		for axis := range 3 {
			for side, sign := range [2]float64{-1, 1} {
				room := b.rooms[axis][side]
				if room < 0 {
					continue
				}
				air := g.plan.air[room]
				film := float64(g.plan.rooms[room].Film)
				for e := range n {
					for f := range e + 1 {
						qe, qf := sign*q[e][axis][side], sign*q[f][axis][side] // what leaves
						p.lower[e][f] -= film/b.area[axis]*qe*qf + is(air, e)*qf + is(air, f)*qe
						if film > 0 {
							v := corners(axis, side)
							ae, af := is(air, e), is(air, f)
							m := mean4([4]float64{u[e][v[0]] - ae, u[e][v[1]] - ae, u[e][v[2]] - ae, u[e][v[3]] - ae})
							for w := range 4 {
								p.upper[e][f] += b.area[axis] / film * m[w] * (u[f][v[w]] - af)
							}
						}
					}
				}
			}
		}
		p.blame(c, &b, &at, &aq)
	})
	for e := range n {
		for f := range e {
			p.upper[f][e], p.lower[f][e] = p.upper[e][f], p.lower[e][f]
		}
	}
}

// flowForm returns ∫q·r/k over a brick, for flows that are linear along each axis.
func (b *brick) flowForm(q, r *[3][2]float64) float64 {
	sum := 0.0
	for axis := range 3 {
		a0, a1, b0, b1 := q[axis][0], q[axis][1], r[axis][0], r[axis][1]
		sum += ((a0*b0+a1*b1)/3 + (a0*b1+a1*b0)/6) / b.k[axis]
	}
	return sum
}

// blame adds a brick's part of the gap ∫|√k ∇T + q/√k|² to the slabs it lies in:
// what varies along an axis is mended by halving there. Along an axis q varies
// with that axis alone, the slope of T with the two others.
func (p *solidPair) blame(c [3]int, b *brick, u *[8]float64, q *[3][2]float64) {
	for axis := range 3 {
		d := edges(u, axis)
		one, two := (axis+1)%3, (axis+2)%3
		k := b.k[axis]
		s1 := (d[1] + d[3] - d[0] - d[2]) / 2
		s2 := (d[2] + d[3] - d[0] - d[1]) / 2
		twist := d[3] - d[2] - d[1] + d[0]
		p.slab[one][c[one]] += k * (s1*s1/12 + twist*twist/288)
		p.slab[two][c[two]] += k * (s2*s2/12 + twist*twist/288)
		rise := q[axis][1] - q[axis][0]
		p.slab[axis][c[axis]] += rise * rise / 12 / k
		mean := (d[0]+d[1]+d[2]+d[3])/4 + (q[axis][0]+q[axis][1])/2/k
		for a := range 3 {
			p.slab[a][c[a]] += k * mean * mean / 3
		}
		for side, sign := range [2]float64{-1, 1} {
			room := b.rooms[axis][side]
			if room < 0 {
				continue
			}
			film := float64(p.g.plan.rooms[room].Film)
			if film == 0 {
				continue
			}
			airs := p.g.plan.airs
			over := airs[p.g.plan.air[room]] - airs[len(airs)-1]
			g := b.area[axis] / film
			v := corners(axis, side)
			s1 := (u[v[1]] + u[v[3]] - u[v[0]] - u[v[2]]) / 2
			s2 := (u[v[2]] + u[v[3]] - u[v[0]] - u[v[1]]) / 2
			twist := u[v[3]] - u[v[2]] - u[v[1]] + u[v[0]]
			p.slab[one][c[one]] += g * (s1*s1/12 + twist*twist/288)
			p.slab[two][c[two]] += g * (s2*s2/12 + twist*twist/288)
			mean := (u[v[0]]+u[v[1]]+u[v[2]]+u[v[3]])/4 - over - sign*q[axis][side]/g
			for a := range 3 {
				p.slab[a][c[a]] += g * mean * mean / 3
			}
		}
	}
}

// markedSlabs is the part of the gap whose slabs are halved.
const markedSlabs = 0.6

// refine returns the grid to solve next.
func (p *solidPair) refine(moving []Place) *grid {
	type slab struct {
		axis, i int
		gap     float64
	}
	var all []slab
	total := 0.0
	var halve [3][]bool
	for axis, s := range p.slab {
		halve[axis] = make([]bool, len(s))
		for i, v := range s {
			all = append(all, slab{axis, i, v})
			total += v
		}
	}
	slices.SortFunc(all, func(a, b slab) int {
		return cmp.Or(cmp.Compare(b.gap, a.gap), a.axis-b.axis, a.i-b.i)
	})
	done := 0.0
	for _, s := range all {
		if done > markedSlabs*total {
			break
		}
		halve[s.axis][s.i] = true
		done += s.gap
	}
	g := p.g
	for _, at := range moving {
		for axis := range 3 {
			v := at.coordinate(axis)
			for i := range g.n(axis) {
				if slack := snap * g.size(axis, i); v >= g.at[axis][i]-slack && v <= g.at[axis][i+1]+slack {
					halve[axis][i] = true
				}
			}
		}
	}
	var at [3][]float64
	var of [3][]int
	for axis := range 3 {
		for i, h := range halve[axis] {
			lo, hi := g.at[axis][i], g.at[axis][i+1]
			at[axis], of[axis] = append(at[axis], lo), append(of[axis], g.of[axis][i])
			if h {
				at[axis], of[axis] = append(at[axis], (lo+hi)/2), append(of[axis], g.of[axis][i])
			}
		}
		at[axis] = append(at[axis], g.at[axis][g.n(axis)])
	}
	return newGrid(g.plan, at, of)
}

// heat returns the heat that each air gives to the solid, W.
func (p *solidPair) heat() []float64 { return heat(p.upper, p.lower, p.excess()) }

// widths is half the width of the bracket of the heat from each air, as in the
// plane.
func (p *solidPair) widths() []float64 { return widths(p.upper, p.lower, p.excess()) }

// between returns the coupling coefficients between the airs.
func (p *solidPair) between() [][]float64 {
	n := len(p.upper)
	out := square(n + 1)
	for e := range n {
		for f := range n {
			l := (p.upper[e][f] + p.lower[e][f]) / 2
			if e != f {
				out[e][f] = -l
			}
			out[e][n] += l
		}
		out[n][e] = out[e][n]
	}
	return out
}

// spotAt returns the temperature at a place in a cell, from 0 to 1 along each axis.
func (p *solidPair) spotAt(c [3]int, part [3]float64) SolidSpot {
	g := p.g
	airs := g.plan.airs
	n := len(airs) - 1
	var b brick
	var u [8]float64
	p.temp.brick(c, g.index(c), &b)
	at := func(axis int) rvalue.Length {
		return rvalue.Length(g.at[axis][c[axis]] + part[axis]*g.size(axis, c[axis]))
	}
	s := SolidSpot{At: Place{at(0), at(1), at(2)}, Weights: make([]float64, n+1)}
	t, rest := airs[n], 1.0
	for e, over := range p.excess() {
		p.temp.gather(&b, e, p.temp.x[e], &u)
		w := 0.0
		for q, v := range u {
			for axis := range 3 {
				if q>>axis&1 == 1 {
					v *= part[axis]
				} else {
					v *= 1 - part[axis]
				}
			}
			w += v
		}
		s.Weights[e] = w
		rest -= w
		t += over * w
	}
	s.Weights[n] = rest
	s.Temperature = rvalue.Temperature(t)
	return s
}

// spot returns the temperature at a place in or on the material.
func (p *solidPair) spot(at Place) SolidSpot {
	c, _ := p.g.find(at)
	var part [3]float64
	for axis := range 3 {
		part[axis] = min(1, max(0, (at.coordinate(axis)-p.g.at[axis][c[axis]])/p.g.size(axis, c[axis])))
	}
	s := p.spotAt(c, part)
	s.At = at
	return s
}

// surfaces fills in what happens at the rooms' surfaces, and returns the spots
// whose temperatures decide: the coldest and the warmest of every room.
func (p *solidPair) surfaces(r *SolidResult) (spots []SolidSpot) {
	g := p.g
	pl := g.plan
	x := p.excess()
	type extreme struct {
		c    [3]int
		q    int
		t    float64
		done bool
	}
	found := make([][2]extreme, len(pl.rooms))
	byFlow, byTemp := make([]float64, len(pl.rooms)), make([]float64, len(pl.rooms))
	var b brick
	var u [8]float64
	var q [3][2]float64
	g.each(func(c [3]int, i int) {
		if g.k[i] == 0 {
			return
		}
		p.temp.brick(c, i, &b)
		if b.bare {
			return
		}
		var at [8]float64
		var aq [3][2]float64
		for e := range x {
			p.temp.gather(&b, e, p.temp.x[e], &u)
			p.flow.flows(c, i, e, &q)
			for v := range at {
				at[v] += x[e] * u[v]
			}
			for axis := range 3 {
				aq[axis][0] += x[e] * q[axis][0]
				aq[axis][1] += x[e] * q[axis][1]
			}
		}
		for axis := range 3 {
			for side, sign := range [2]float64{-1, 1} {
				room := b.rooms[axis][side]
				if room < 0 {
					continue
				}
				byFlow[room] -= sign * aq[axis][side]
				over := pl.airs[pl.air[room]] - pl.airs[len(x)]
				film := float64(pl.rooms[room].Film)
				for _, v := range corners(axis, side) {
					if film > 0 {
						byTemp[room] += b.area[axis] / film / 4 * (over - at[v])
					}
					for w, better := range [2]bool{at[v] < found[room][0].t, at[v] > found[room][1].t} {
						if better || !found[room][w].done {
							found[room][w] = extreme{c, v, at[v], true}
						}
					}
				}
			}
		}
	})
	r.Rooms = make([]RoomFlow, len(pl.rooms))
	r.Coldest = -1
	for n := range r.Rooms {
		f := &r.Rooms[n]
		f.Name = pl.names[n]
		f.Heat = byFlow[n]
		if pl.rooms[n].Film > 0 {
			f.Heat = (byFlow[n] + byTemp[n]) / 2
		}
		for w, s := range [2]*SolidSpot{&f.Coldest, &f.Warmest} {
			m := found[n][w]
			*s = p.spotAt(m.c, [3]float64{float64(m.q & 1), float64(m.q >> 1 & 1), float64(m.q >> 2)})
			spots = append(spots, *s)
		}
		if over := pl.airs[pl.air[n]] - pl.airs[len(x)]; over > 0 {
			f.Factor = (float64(f.Coldest.Temperature) - pl.airs[len(x)]) / over
			if r.Coldest < 0 || f.Coldest.Temperature < r.Rooms[r.Coldest].Coldest.Temperature {
				r.Coldest = n
			}
		}
	}
	return spots
}
