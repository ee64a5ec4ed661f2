package section

import (
	"slices"

	"github.com/coldseam/coldseam/rvalue"
)

// Spot is a place in a section and what its temperature is.
type Spot struct {
	At          Point
	Temperature rvalue.Temperature
	// Weights are the parts that the air temperatures have in it, in the order
	// of Result.Airs; they sum to 1 (ISO 10211, temperature weighting factors).
	Weights []float64
}

// evaluator is room for values of an element at points of it, from -1 to 1
// either way.
type evaluator struct {
	c      cell
	fx, fy []float64
	u      []float64
	ids    []int32
}

// value returns what u is at a point of the element v.c, the inner functions
// that condensation left out included.
func (v *evaluator) value(u []float64, xi, eta float64) float64 {
	c := &v.c
	nx, ny := c.x.bubbles(), c.y.bubbles()
	v.fx, v.fy = slices.Grow(v.fx[:0], nx+2)[:nx+2], slices.Grow(v.fy[:0], ny+2)[:ny+2]
	c.x.at(xi, v.fx)
	c.y.at(eta, v.fy)
	sum := 0.0
	for a := range 4 {
		sum += vertex(u, a) * v.fx[a&1] * v.fy[a>>1]
	}
	bt, lr := u[4:], u[4+2*nx:]
	for i := range nx {
		sum += v.fx[2+i] * (bt[i]*(v.fy[0]+v.fy[1]) + bt[nx+i]*v.fy[1])
	}
	for j := range ny {
		sum += v.fy[2+j] * (lr[j]*(v.fx[0]+v.fx[1]) + lr[ny+j]*v.fx[1])
	}
	for i := range nx {
		for j := range ny {
			sum -= c.coupling(u, i, j) / c.weight(i, j) * v.fx[2+i] * v.fy[2+j]
		}
	}
	return sum
}

// spot returns the temperature at a point of an element.
func (p *pair) spot(v *evaluator, i, j int, xi, eta float64) Spot {
	m := p.m
	airs := m.plan.airs
	s := Spot{
		At: Point{
			rvalue.Length(m.x.at[i] + (1+xi)/2*m.x.size(i)),
			rvalue.Length(m.y.at[j] + (1+eta)/2*m.y.size(j)),
		},
		Weights: make([]float64, len(airs)),
	}
	v.c.set(m, i, j, false)
	t, rest := airs[len(airs)-1], 1.0
	for e, over := range p.excess() {
		v.ids, v.u = p.temp.gather(i, j, e, p.t[e], v.ids, v.u)
		w := v.value(v.u, xi, eta)
		s.Weights[e] = w
		rest -= w
		t += over * w
	}
	s.Weights[len(airs)-1] = rest
	s.Temperature = rvalue.Temperature(t)
	return s
}

// find returns the element of the material at a point; of several, the first.
func (m *mesh) find(at Point) (i, j int, ok bool) {
	x, y := float64(at.X), float64(at.Y)
	for j := range m.y.len() {
		if y < m.y.at[j]-snap || y > m.y.at[j+1]+snap {
			continue
		}
		for i := range m.x.len() {
			if x >= m.x.at[i]-snap && x <= m.x.at[i+1]+snap && m.kAt(i, j) > 0 {
				return i, j, true
			}
		}
	}
	return 0, 0, false
}

// point returns the temperature at a point in or on the material.
func (p *pair) point(v *evaluator, at Point) Spot {
	i, j, _ := p.m.find(at)
	local := func(a *axis, i int, x float64) float64 {
		return min(1, max(-1, 2*(x-a.at[i])/a.size(i)-1))
	}
	s := p.spot(v, i, j, local(&p.m.x, i, float64(at.X)), local(&p.m.y, j, float64(at.Y)))
	s.At = at
	return s
}

// extremes returns the coldest and the warmest spot along each boundary.
func (p *pair) extremes(v *evaluator) (coldest, warmest []Spot) {
	m := p.m
	n := len(m.plan.section.Boundaries)
	coldest, warmest = make([]Spot, n), make([]Spot, n)
	where := make([][2]sideSpot, n)
	excess := p.excess()
	var at []float64
	parts := make([][]float64, len(excess))
	for j := range m.y.len() {
		for i := range m.x.len() {
			if m.kAt(i, j) == 0 {
				continue
			}
			gathered := false
			for side := range 4 {
				b := m.side(i, j, side)
				if b < 0 {
					continue
				}
				if !gathered {
					v.c.set(m, i, j, false)
					for e := range parts {
						v.ids, parts[e] = p.temp.gather(i, j, e, p.t[e], v.ids, parts[e])
					}
					at = combine(at, parts, excess)
					gathered = true
				}
				v.c.along(side, at, func(xi, t float64) {
					for q, better := range [2]bool{t < where[b][0].t, t > where[b][1].t} {
						if better || !where[b][q].set {
							where[b][q] = sideSpot{i, j, side, xi, t, true}
						}
					}
				})
			}
		}
	}
	for b, w := range where {
		if !w[0].set {
			continue // adiabatic
		}
		for q, out := range [2]*Spot{&coldest[b], &warmest[b]} {
			xi, eta := w[q].xi, w[q].xi
			switch w[q].side {
			case bottom:
				eta = -1
			case top:
				eta = 1
			case left:
				xi = -1
			case right:
				xi = 1
			}
			*out = p.spot(v, w[q].i, w[q].j, xi, eta)
		}
	}
	return coldest, warmest
}

// sideSpot is a place on a side of an element.
type sideSpot struct {
	i, j, side int
	xi, t      float64
	set        bool
}

// along calls f with both ends of a side and wherever the slope of u changes
// its sign between.
func (c *cell) along(side int, u []float64, f func(xi, value float64)) {
	ends, _, s, _ := c.side(side)
	n := s.bubbles()
	var room [2 * (mostDegree + 1)]float64
	shape, slope := room[:n+2], room[mostDegree+1:][:n+2]
	u0, u1 := vertex(u, ends[0]), vertex(u, ends[1])
	sum := func(w []float64) float64 {
		t := w[0]*u0 + w[1]*u1
		for i := range n {
			t += w[2+i] * c.bubble(u, side, i)
		}
		return t
	}
	slopeAt := func(xi float64) float64 {
		s.slope(xi, slope)
		return sum(slope)
	}
	f(-1, u0)
	f(1, u1)
	steps := 2 * s.degree
	before := slopeAt(-1)
	for q := 1; q <= steps; q++ {
		lo, hi := -1+2*float64(q-1)/float64(steps), -1+2*float64(q)/float64(steps)
		after := slopeAt(hi)
		if before*after < 0 {
			a, b := lo, hi
			for range 40 {
				mid := (a + b) / 2
				if slopeAt(mid)*before > 0 {
					a = mid
				} else {
					b = mid
				}
			}
			xi := (a + b) / 2
			s.at(xi, shape)
			f(xi, sum(shape))
		}
		before = after
	}
}

// flows returns the heat that enters through each boundary, W/m: by the
// temperatures, and by the stream function.
func (p *pair) flows() (temp, flow []float64) {
	m := p.m
	pl := m.plan
	bs := pl.section.Boundaries
	temp, flow = make([]float64, len(bs)), make([]float64, len(bs))
	owner := p.temp.owners()
	excess := p.excess()
	var ids []int32
	var at, ap []float64
	parts := make([][]float64, len(excess))
	var c, cp cell
	nx := m.x.len()
	for j := range m.y.len() {
		for i := range nx {
			if m.kAt(i, j) == 0 {
				continue
			}
			c.set(m, i, j, false)
			cp.set(m, i, j, true)
			for e := range parts {
				ids, parts[e] = p.temp.gather(i, j, e, p.t[e], ids, parts[e])
			}
			at = combine(at, parts, excess)
			touchesHeld := false
			for v := range 4 {
				touchesHeld = touchesHeld || ids[v] < absent
			}
			if touchesHeld {
				// What a held vertex draws is what its function is out of balance by.
				one := make([]float64, len(at))
				for v := range 4 {
					if ids[v] < absent {
						unit(one, v)
						w := (j+v>>1)*(nx+1) + i + v&1
						temp[owner[w]] += c.form(at, one) + p.filmAt(&c, i, j, at, one)
					}
				}
			}
			for e := range parts {
				ids, parts[e] = p.flow.gather(i, j, e, p.psi[e], ids, parts[e])
			}
			ap = combine(ap, parts, excess)
			for side := range 4 {
				b := m.side(i, j, side)
				if b < 0 {
					continue
				}
				sign := -1.0 // what enters is ψ's fall along the outline, anticlockwise
				if side == top || side == left {
					sign = 1
				}
				flow[b] += sign * rise(ap, side)
				if film := float64(bs[b].Film); film > 0 {
					temp[b] += (p.over(b)*sideLength(&c, side) - c.integral(side, at)) / film
				}
			}
		}
	}
	return temp, flow
}

// over is by how much a boundary's air is warmer than the coldest.
func (p *pair) over(b int) float64 {
	pl := p.m.plan
	return pl.airs[pl.air[b]] - pl.airs[len(pl.airs)-1]
}

// filmAt is what the films of an element's sides add to the balance of a vertex.
func (p *pair) filmAt(c *cell, i, j int, at, one []float64) float64 {
	sum := 0.0
	for side := range 4 {
		if b := p.m.side(i, j, side); b >= 0 {
			if film := float64(p.m.plan.section.Boundaries[b].Film); film > 0 {
				sum += c.massForm(side, at, p.over(b), one, 0) / film
			}
		}
	}
	return sum
}

func sideLength(c *cell, side int) float64 {
	_, _, _, h := c.side(side)
	return h
}

// integral returns ∫u along a side.
func (c *cell) integral(side int, u []float64) float64 {
	ends, _, s, h := c.side(side)
	sum := vertex(u, ends[0]) + vertex(u, ends[1])
	for i := range s.bubbles() {
		sum += (s.end[0][i] + s.end[1][i]) * c.bubble(u, side, i)
	}
	return h / 2 * sum
}

// owners returns by vertex the boundary that holds its temperature, −1 if none.
func (s *system) owners() []int {
	out := make([]int, len(s.vertex))
	for i := range out {
		out[i] = -1
	}
	bs := s.m.plan.section.Boundaries
	s.eachEdge(func(_ *int32, a, b, _, kind int) {
		if kind >= 0 && bs[kind].Film == 0 {
			for _, v := range [2]int{a, b} {
				if out[v] < 0 {
					out[v] = kind
				}
			}
		}
	})
	return out
}

// heat returns the heat that each air gives to the section, W/m.
func (p *pair) heat() []float64 { return heat(p.upper, p.lower, p.excess()) }

// widths is half the width of the bracket of the heat from each air.
func (p *pair) widths() []float64 { return widths(p.upper, p.lower, p.excess()) }
