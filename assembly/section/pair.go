package section

import "fmt"

// pair is the temperature and the flow problem solved on one mesh.
type pair struct {
	m          *mesh
	temp, flow *system
	t, psi     []solution // by air but the coldest: its unit problem's solution

	upper, lower [][]float64 // by two airs: the forms, W/(m·K) per kelvin squared
	gap          []float64   // by element: what of the actual problem's bracket it causes, W·K/m
	miss         float64     // the gap as a part of the energy, both weighed by the distance from jumps
}

// solvePair solves both problems on a mesh, in the room of f.
func solvePair(m *mesh, f *factor) (*pair, error) {
	p := &pair{m: m}
	var err error
	if p.temp, p.t, err = solveOne(m, false, f); err != nil {
		return nil, err
	}
	if p.flow, p.psi, err = solveOne(m, true, f); err != nil {
		return nil, err
	}
	p.forms()
	return p, nil
}

func solveOne(m *mesh, flow bool, f *factor) (*system, []solution, error) {
	s := newSystem(m, flow)
	if !f.dissect(m.x.len(), m.y.len(), s.touches, s.element) {
		return nil, nil, fmt.Errorf("section: the system of %d unknowns is singular to working precision; conductivities or sizes lie too far apart", s.n)
	}
	x := make([]solution, len(m.plan.airs)-1)
	for e := range x {
		x[e] = s.solve(f, e)
	}
	return s, x, nil
}

// excess is by how much each air but the coldest is warmer than it.
func (p *pair) excess() []float64 { return excess(p.m.plan.airs) }

// forms computes the energies of the unit problems and each element's part of
// the gap between the bounds in the actual one.
func (p *pair) forms() {
	m := p.m
	n := len(p.t)
	p.upper, p.lower = square(n), square(n)
	p.gap = make([]float64, len(m.k))
	excess := p.excess()
	var ids []int32
	ut, up := make([][]float64, n), make([][]float64, n)
	var at, ap []float64 // the actual problem
	var gaps, energies float64
	var ct, cp cell
	for j := range m.y.len() {
		for i := range m.x.len() {
			if m.kAt(i, j) == 0 {
				continue
			}
			ct.set(m, i, j, false)
			cp.set(m, i, j, true)
			for e := range n {
				ids, ut[e] = p.temp.gather(i, j, e, p.t[e], ids, ut[e])
				ids, up[e] = p.flow.gather(i, j, e, p.psi[e], ids, up[e])
			}
			at, ap = combine(at, ut, excess), combine(ap, up, excess)
			energy := ct.form(at, at)
			gap := energy + cp.form(ap, ap)
			for e := range n {
				for f := range e + 1 {
					p.upper[e][f] += ct.form(ut[e], ut[f])
					p.lower[e][f] += cp.form(up[e], up[f])
				}
			}
			for side := range 4 {
				b := m.side(i, j, side)
				sign := 1.0 // of ds along the outline of the element, anticlockwise
				if side == top || side == left {
					sign = -1
				}
				gap += 2 * sign * ct.turnForm(side, at, 0, ap)
				if b < 0 {
					continue
				}
				film := float64(m.plan.section.Boundaries[b].Film)
				air := m.plan.air[b]
				air0 := 0.0
				if air < n {
					air0 = excess[air]
				}
				if film == 0 {
					continue
				}
				gap += ct.massForm(side, at, air0, at, air0)/film + film*cp.slopeForm(side, ap, ap)
				gap -= 2 * sign * ct.turnForm(side, at, air0, ap)
				for e := range n {
					for f := range e + 1 {
						p.upper[e][f] += ct.massForm(side, ut[e], is(air, e), ut[f], is(air, f)) / film
						p.lower[e][f] += film * cp.slopeForm(side, up[e], up[f])
					}
				}
			}
			w := m.fromJump(i, j)
			gap = max(gap, 0) * w
			p.gap[j*m.x.len()+i] = gap
			gaps += gap
			energies += energy * w
		}
	}
	p.miss = gaps / energies
	for e := range n {
		for f := range e {
			p.upper[f][e], p.lower[f][e] = p.upper[e][f], p.lower[e][f]
		}
	}
}

func is(a, b int) float64 {
	if a == b {
		return 1
	}
	return 0
}

func square(n int) [][]float64 {
	a := make([][]float64, n)
	for i := range a {
		a[i] = make([]float64, n)
	}
	return a
}

func combine(out []float64, parts [][]float64, weights []float64) []float64 {
	out = append(out[:0], parts[0]...)
	for i := range out {
		out[i] *= weights[0]
	}
	for e := 1; e < len(parts); e++ {
		for i, v := range parts[e] {
			out[i] += weights[e] * v
		}
	}
	return out
}
