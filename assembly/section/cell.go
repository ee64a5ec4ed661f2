package section

// cell is one element. Its functions are those of its four vertices (x first),
// the bubbles of its bottom, top, left and right edge, and, condensed away,
// the products of bubbles inside.
//
// The values u of these functions are kept as differences: after the first
// vertex, by how much the second and the third are above it, and by how much
// the fourth is above what these make of it; the bubbles of the top edge from
// those of the bottom, of the right from those of the left. In a thin sliver of
// metal the difference, times a great conductance, is the heat flow, and must
// not be lost beside the values.
type cell struct {
	x, y   *shape
	hx, hy float64
	k      float64 // conductivity, or for the flow problem its inverse
	kx, ky float64 // k·hy/hx, k·hx/hy
}

func (c *cell) set(m *mesh, i, j int, flow bool) {
	c.x, c.y = shapes[m.x.degree[i]](), shapes[m.y.degree[j]]()
	c.hx, c.hy = m.x.size(i), m.y.size(j)
	c.k = m.kAt(i, j)
	if flow {
		c.k = 1 / c.k
	}
	c.kx, c.ky = c.k*c.hy/c.hx, c.k*c.hx/c.hy
}

// functions is how many an element has on its edge.
func (c *cell) functions() int { return 4 + 2*c.x.bubbles() + 2*c.y.bubbles() }

// side returns a side's two ends, its first bubble, its shape and its length.
func (c *cell) side(side int) (ends [2]int, bubbles int, s *shape, h float64) {
	nx, ny := c.x.bubbles(), c.y.bubbles()
	switch side {
	case bottom:
		return [2]int{0, 1}, 4, c.x, c.hx
	case top:
		return [2]int{2, 3}, 4 + nx, c.x, c.hx
	case left:
		return [2]int{0, 2}, 4 + 2*nx, c.y, c.hy
	}
	return [2]int{1, 3}, 4 + 2*nx + ny, c.y, c.hy
}

// mass and slope products of the ends' functions on a unit length.
func endMass(v, w int) float64 {
	if v == w {
		return 1.0 / 3
	}
	return 1.0 / 6
}

func endSlope(v, w int) float64 {
	if v == w {
		return 1
	}
	return -1
}

// stiffness fills a, lower triangle by rows, with k∫∇u·∇v after the inner
// functions are condensed away. In the bubbles' own basis the inner functions
// do not couple, and each bubble of an edge couples only with those of its row.
func (c *cell) stiffness(a []float64) {
	n := c.functions()
	nx, ny := c.x.bubbles(), c.y.bubbles()
	clear(a)
	for v := range 4 {
		for w := range v + 1 {
			a[v*n+w] = c.kx*endSlope(v&1, w&1)*endMass(v>>1, w>>1) + c.ky*endMass(v&1, w&1)*endSlope(v>>1, w>>1)
		}
	}
	ob, ol := 4, 4+2*nx
	for side := range 2 {
		for i := range nx {
			r := ob + side*nx + i
			for v := range 4 {
				a[r*n+v] = c.ky / 2 * c.x.end[v&1][i] * endSlope(side, v>>1)
			}
			for w := range side + 1 {
				s := 2*c.kx*endMass(side, w) + c.ky/2*c.x.mu[i]*endSlope(side, w)
				for j := range ny {
					s -= c.kx * c.kx * c.y.end[side][j] * c.y.end[w][j] / (c.kx*c.y.mu[j] + c.ky*c.x.mu[i])
				}
				a[r*n+ob+w*nx+i] = s
			}
		}
		for j := range ny {
			r := ol + side*ny + j
			for v := range 4 {
				a[r*n+v] = c.kx / 2 * c.y.end[v>>1][j] * endSlope(side, v&1)
			}
			for w := range side + 1 {
				s := 2*c.ky*endMass(side, w) + c.kx/2*c.y.mu[j]*endSlope(side, w)
				for i := range nx {
					s -= c.ky * c.ky * c.x.end[side][i] * c.x.end[w][i] / (c.kx*c.y.mu[j] + c.ky*c.x.mu[i])
				}
				a[r*n+ol+w*ny+j] = s
			}
			for w := range 2 {
				for i := range nx {
					a[r*n+ob+w*nx+i] = -c.kx * c.y.end[w][j] * c.ky * c.x.end[side][i] / (c.kx*c.y.mu[j] + c.ky*c.x.mu[i])
				}
			}
		}
	}
}

// addFilm adds a surface film on one side: ∫uv/Rs, or for the flow problem
// ∫Rs ∂u/∂s ∂v/∂s.
func (c *cell) addFilm(a []float64, side int, film float64, flow bool) {
	n := c.functions()
	ends, first, s, h := c.side(side)
	if flow {
		for v := range 2 {
			for w := range v + 1 {
				a[ends[v]*n+ends[w]] += film / h * endSlope(v, w)
			}
		}
		for i := range s.bubbles() {
			a[(first+i)*n+first+i] += 2 * film / h
		}
		return
	}
	for v := range 2 {
		for w := range v + 1 {
			a[ends[v]*n+ends[w]] += h / film * endMass(v, w)
		}
	}
	for i := range s.bubbles() {
		r := (first + i) * n
		a[r+ends[0]] += h / 2 / film * s.end[0][i]
		a[r+ends[1]] += h / 2 / film * s.end[1][i]
		a[r+first+i] += h / 2 / film * s.mu[i]
	}
}

// coupling is what the bubbles of the edges push the inner function (i, j)
// with; its value is −coupling/weight.
func (c *cell) coupling(u []float64, i, j int) float64 {
	nx, ny := c.x.bubbles(), c.y.bubbles()
	bt, lr := u[4:], u[4+2*nx:]
	return c.kx*((c.y.end[0][j]+c.y.end[1][j])*bt[i]+c.y.end[1][j]*bt[nx+i]) +
		c.ky*((c.x.end[0][i]+c.x.end[1][i])*lr[j]+c.x.end[1][i]*lr[ny+j])
}

func (c *cell) weight(i, j int) float64 { return c.kx*c.y.mu[j] + c.ky*c.x.mu[i] }

// form returns k∫∇u·∇v, the inner functions included.
func (c *cell) form(u, v []float64) float64 {
	nx, ny := c.x.bubbles(), c.y.bubbles()
	sum := 0.0
	xu, yu := rises(u)
	xv, yv := rises(v)
	sum += c.kx * ((xu[0]*xv[0]+xu[1]*xv[1])/3 + (xu[0]*xv[1]+xu[1]*xv[0])/6)
	sum += c.ky * ((yu[0]*yv[0]+yu[1]*yv[1])/3 + (yu[0]*yv[1]+yu[1]*yv[0])/6)
	ub, ug, vb, vg := u[4:4+nx], u[4+nx:4+2*nx], v[4:4+nx], v[4+nx:4+2*nx]
	// Along y the difference of top and bottom counts, vertices included.
	for i := range nx {
		m0, m1 := c.x.end[0][i], c.x.end[1][i]
		gu, gv := ug[i], vg[i]
		ut, vt := ub[i]+gu, vb[i]+gv
		eu := m0*yu[0] + m1*yu[1]
		ev := m0*yv[0] + m1*yv[1]
		sum += c.ky / 2 * (c.x.mu[i]*gu*gv + eu*gv + gu*ev)
		sum += 2 * c.kx * ((ub[i]*vb[i]+ut*vt)/3 + (ub[i]*vt+ut*vb[i])/6)
	}
	o := 4 + 2*nx
	ul, ug, vl, vg := u[o:o+ny], u[o+ny:o+2*ny], v[o:o+ny], v[o+ny:o+2*ny]
	for j := range ny {
		m0, m1 := c.y.end[0][j], c.y.end[1][j]
		gu, gv := ug[j], vg[j]
		ur, vr := ul[j]+gu, vl[j]+gv
		eu := m0*xu[0] + m1*xu[1]
		ev := m0*xv[0] + m1*xv[1]
		sum += c.kx / 2 * (c.y.mu[j]*gu*gv + eu*gv + gu*ev)
		sum += 2 * c.ky * ((ul[j]*vl[j]+ur*vr)/3 + (ul[j]*vr+ur*vl[j])/6)
	}
	for i := range nx {
		for j := range ny {
			sum -= c.coupling(u, i, j) * c.coupling(v, i, j) / c.weight(i, j)
		}
	}
	return sum
}

// rises is by how much u rises along the bottom and the top, and along the left
// and the right.
func rises(u []float64) (x, y [2]float64) {
	return [2]float64{u[1], u[1] + u[3]}, [2]float64{u[2], u[2] + u[3]}
}

// rise is by how much u rises along a side.
func rise(u []float64, side int) float64 {
	x, y := rises(u)
	switch side {
	case bottom:
		return x[0]
	case top:
		return x[1]
	case left:
		return y[0]
	}
	return y[1]
}

// bubble is the value of a side's i-th bubble.
func (c *cell) bubble(u []float64, side, i int) float64 {
	_, first, s, _ := c.side(side)
	if side == top || side == right {
		return u[first+i] + u[first-s.bubbles()+i]
	}
	return u[first+i]
}

// vertex is the value of a vertex.
func vertex(u []float64, a int) float64 {
	switch a {
	case 0:
		return u[0]
	case 1:
		return u[0] + u[1]
	case 2:
		return u[0] + u[2]
	}
	return u[0] + (u[1] + u[2] + u[3])
}

// unit fills u with the function of one vertex.
func unit(u []float64, a int) {
	clear(u)
	u[a] = 1
	switch a {
	case 0:
		u[1], u[2], u[3] = -1, -1, 1
	case 1, 2:
		u[3] = -1
	}
}

// apply adds to out the products of k∫∇u·∇v with every function v of the edge.
func (c *cell) apply(u, out []float64) {
	nx, ny := c.x.bubbles(), c.y.bubbles()
	xu, yu := rises(u)
	fb, ft := c.kx*(xu[0]/3+xu[1]/6), c.kx*(xu[1]/3+xu[0]/6)
	fl, fr := c.ky*(yu[0]/3+yu[1]/6), c.ky*(yu[1]/3+yu[0]/6)
	out[0] -= fb + fl
	out[1] += fb - fr
	out[2] += fl - ft
	out[3] += ft + fr
	ub, gt, ob, ot := u[4:4+nx], u[4+nx:4+2*nx], out[4:4+nx], out[4+nx:4+2*nx]
	o := 4 + 2*nx
	ul, gr, ol, or := u[o:o+ny], u[o+ny:o+2*ny], out[o:o+ny], out[o+ny:o+2*ny]
	for i := range nx {
		m0, m1 := c.x.end[0][i], c.x.end[1][i]
		g := gt[i]
		across := c.ky / 2 * (c.x.mu[i]*g + m0*yu[0] + m1*yu[1])
		ob[i] += c.kx*(ub[i]+g/3) - across
		ot[i] += c.kx*(ub[i]+g*2/3) + across
		w := c.ky / 2 * g
		out[0] -= w * m0
		out[1] -= w * m1
		out[2] += w * m0
		out[3] += w * m1
	}
	for j := range ny {
		m0, m1 := c.y.end[0][j], c.y.end[1][j]
		g := gr[j]
		across := c.kx / 2 * (c.y.mu[j]*g + m0*xu[0] + m1*xu[1])
		ol[j] += c.ky*(ul[j]+g/3) - across
		or[j] += c.ky*(ul[j]+g*2/3) + across
		w := c.kx / 2 * g
		out[0] -= w * m0
		out[2] -= w * m1
		out[1] += w * m0
		out[3] += w * m1
	}
	for i := range nx {
		x0, x1 := c.ky*c.x.end[0][i], c.ky*c.x.end[1][i]
		for j := range ny {
			y0, y1 := c.kx*c.y.end[0][j], c.kx*c.y.end[1][j]
			q := ((y0+y1)*ub[i] + y1*gt[i] + (x0+x1)*ul[j] + x1*gr[j]) / (c.kx*c.y.mu[j] + c.ky*c.x.mu[i])
			ob[i] -= y0 * q
			ot[i] -= y1 * q
			ol[j] -= x0 * q
			or[j] -= x1 * q
		}
	}
}

// applyFilm adds what a film on a side adds to apply, u being held against a.
func (c *cell) applyFilm(side int, film float64, flow bool, u []float64, a float64, out []float64) {
	ends, first, s, h := c.side(side)
	if flow {
		w := film / h * rise(u, side)
		out[ends[0]] -= w
		out[ends[1]] += w
		for i := range s.bubbles() {
			out[first+i] += 2 * film / h * c.bubble(u, side, i)
		}
		return
	}
	g := h / film
	u0, u1 := vertex(u, ends[0])-a, vertex(u, ends[1])-a
	out[ends[0]] += g * (u0/3 + u1/6)
	out[ends[1]] += g * (u1/3 + u0/6)
	for i := range s.bubbles() {
		v := c.bubble(u, side, i)
		out[ends[0]] += g / 2 * s.end[0][i] * v
		out[ends[1]] += g / 2 * s.end[1][i] * v
		out[first+i] += g / 2 * (s.end[0][i]*u0 + s.end[1][i]*u1 + s.mu[i]*v)
	}
}

// massForm returns ∫(u−a)(v−b) along a side.
func (c *cell) massForm(side int, u []float64, a float64, v []float64, b float64) float64 {
	ends, _, s, h := c.side(side)
	u0, u1 := vertex(u, ends[0])-a, vertex(u, ends[1])-a
	v0, v1 := vertex(v, ends[0])-b, vertex(v, ends[1])-b
	sum := h * ((u0*v0+u1*v1)/3 + (u0*v1+u1*v0)/6)
	for i := range s.bubbles() {
		m0, m1 := s.end[0][i], s.end[1][i]
		ui, vi := c.bubble(u, side, i), c.bubble(v, side, i)
		sum += h / 2 * ((m0*u0+m1*u1)*vi + (m0*v0+m1*v1)*ui + s.mu[i]*ui*vi)
	}
	return sum
}

// slopeForm returns ∫∂u/∂s ∂v/∂s along a side.
func (c *cell) slopeForm(side int, u, v []float64) float64 {
	_, _, s, h := c.side(side)
	sum := rise(u, side) * rise(v, side) / h
	for i := range s.bubbles() {
		sum += 2 / h * c.bubble(u, side, i) * c.bubble(v, side, i)
	}
	return sum
}

// turnForm returns ∫(u−a) ∂v/∂s ds along a side, toward rising coordinates.
func (c *cell) turnForm(side int, u []float64, a float64, v []float64) float64 {
	ends, _, s, _ := c.side(side)
	n := s.bubbles()
	w := n + 2
	sum := 0.0
	row := func(r int, x float64) {
		t := s.turn[r*w:]
		y := t[1] * rise(v, side) // the ends' slopes cancel
		for i := range n {
			y += t[2+i] * c.bubble(v, side, i)
		}
		sum += x * y
	}
	row(0, vertex(u, ends[0])-a)
	row(1, vertex(u, ends[1])-a)
	for i := range n {
		row(2+i, c.bubble(u, side, i))
	}
	return sum
}
