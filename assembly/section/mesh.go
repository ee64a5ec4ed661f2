package section

// axis is a line cut into elements, each with its degree.
type axis struct {
	at     []float64 // ends of the elements, rising
	degree []int     // by element
	of     []int     // by element: the interval of the plan it lies in
}

func (a *axis) len() int           { return len(a.degree) }
func (a *axis) size(i int) float64 { return a.at[i+1] - a.at[i] }

// mesh is a plan cut into a grid of rectangular elements. All elements of a
// column share their width and degree in x, all of a row theirs in y, so that
// neighbours always fit.
type mesh struct {
	plan *plan
	x, y axis
	k    []float64 // by row and column: conductivity, 0 if empty
}

func newMesh(p *plan, x, y axis) *mesh {
	m := &mesh{plan: p, x: x, y: y, k: make([]float64, x.len()*y.len())}
	for j := range y.len() {
		for i := range x.len() {
			if c := p.at(x.of[i], y.of[j]); c >= 0 {
				m.k[j*x.len()+i] = float64(p.section.Pieces[c].Conductivity)
			}
		}
	}
	return m
}

func (m *mesh) kAt(i, j int) float64 { return m.k[j*m.x.len()+i] }

// flat returns what the level edge below row l of column i is, upright what the
// upright edge left of column l of row j is.
func (m *mesh) flat(i, l int) int {
	nx, ny := m.plan.columns(), m.y.len()
	column := m.x.of[i]
	switch {
	case l == 0:
		return m.plan.flat[column]
	case l == ny:
		return m.plan.flat[m.plan.rows()*nx+column]
	case m.y.of[l-1] == m.y.of[l]:
		return within
	}
	return m.plan.flat[m.y.of[l]*nx+column]
}

func (m *mesh) upright(l, j int) int {
	n, nx := len(m.plan.xs), m.x.len()
	row := m.y.of[j]
	switch {
	case l == 0:
		return m.plan.upright[row*n]
	case l == nx:
		return m.plan.upright[row*n+n-1]
	case m.x.of[l-1] == m.x.of[l]:
		return within
	}
	return m.plan.upright[row*n+m.x.of[l]]
}

// sides are the edges of an element, in this order.
const (
	bottom = iota
	top
	left
	right
)

// side returns what a side of an element is.
func (m *mesh) side(i, j, side int) int {
	switch side {
	case bottom:
		return m.flat(i, j)
	case top:
		return m.flat(i, j+1)
	case left:
		return m.upright(i, j)
	}
	return m.upright(i+1, j)
}

// unknowns is how many values a function on the mesh has, inner ones included.
func (m *mesh) unknowns() int {
	n := 0
	for j := range m.y.len() {
		for i := range m.x.len() {
			if m.kAt(i, j) > 0 {
				n += m.x.degree[i] * m.y.degree[j]
			}
		}
	}
	return n
}
