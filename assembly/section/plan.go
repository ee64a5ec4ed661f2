package section

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"github.com/coldseam/coldseam/rvalue"
)

// Bounds of what is taken for a section.
const (
	snap         = 1e-6  // m; edges nearer than this are one edge
	largest      = 1e3   // m, more than any building part
	mostContrast = 1e7   // of conductivities
	mostCells    = 40000 // of the rectangles between all edges
)

// What an edge between two cells is, when it is no boundary.
const (
	within    = -1 // material on both sides, or on none
	adiabatic = -2 // outline without a boundary
)

// plan is a checked section: the grid of all its edges, what fills each cell,
// and what each edge of the outline faces.
type plan struct {
	section *Section
	xs, ys  []float64 // edges, rising, in m
	cell    []int     // by row and column: the piece, −1 if empty
	flat    []int     // level edges, by line of ys and column: a boundary, within or adiabatic
	upright []int     // upright edges, by row and line of xs
	airs    []float64 // different air temperatures in K, warmest first
	air     []int     // by boundary: index in airs

	corner []bool // by line of ys and of xs: the solution is singular there
	jump   []bool // two surfaces held at different temperatures meet there
	jumps  bool   // some do: without films between, the heat is beyond bound
}

func (p *plan) columns() int { return len(p.xs) - 1 }
func (p *plan) rows() int    { return len(p.ys) - 1 }

func (p *plan) at(i, j int) int {
	if i < 0 || j < 0 || i >= p.columns() || j >= p.rows() {
		return -1
	}
	return p.cell[j*p.columns()+i]
}

func (p *plan) flatAt(i, line int) int    { return p.flat[line*p.columns()+i] }
func (p *plan) uprightAt(line, j int) int { return p.upright[j*len(p.xs)+line] }

// newPlan checks a section and lays it out.
func newPlan(s *Section) (*plan, error) {
	p := &plan{section: s}
	if err := p.checkPieces(); err != nil {
		return nil, err
	}
	if err := p.checkBoundaries(); err != nil {
		return nil, err
	}
	if err := p.fill(); err != nil {
		return nil, err
	}
	if err := p.outline(); err != nil {
		return nil, err
	}
	if err := p.whole(); err != nil {
		return nil, err
	}
	p.findCorners()
	return p, nil
}

func (p Point) String() string {
	return fmt.Sprintf("(%.6g, %.6g) m", float64(p.X), float64(p.Y))
}

func (p Point) finite() bool {
	return math.Abs(float64(p.X)) <= largest && math.Abs(float64(p.Y)) <= largest // false for NaN
}

// label names a piece or boundary in an error.
func label(what string, n int, name string) string {
	if name == "" {
		return fmt.Sprintf("section: %s %d", what, n+1)
	}
	return fmt.Sprintf("section: %s %d %q", what, n+1, name)
}

func (p *plan) checkPieces() error {
	pieces := p.section.Pieces
	if len(pieces) == 0 {
		return errors.New("section: no pieces, at least one is needed")
	}
	least, most := 0, 0
	for n, q := range pieces {
		if !q.From.finite() || !q.To.finite() {
			return fmt.Errorf("%s reaches from %v to %v, coordinates must be numbers within %g m", label("piece", n, q.Name), q.From, q.To, largest)
		}
		w, h := math.Abs(float64(q.To.X-q.From.X)), math.Abs(float64(q.To.Y-q.From.Y))
		if w <= snap || h <= snap {
			return fmt.Errorf("%s is %.4g by %.4g m, both sides must be longer than %g m", label("piece", n, q.Name), w, h, snap)
		}
		if k := float64(q.Conductivity); !(k > 0) || math.IsInf(k, 0) {
			return fmt.Errorf("%s conducts %v W/(m·K), the conductivity must be positive and finite", label("piece", n, q.Name), k)
		}
		if q.Conductivity < pieces[least].Conductivity {
			least = n
		}
		if q.Conductivity > pieces[most].Conductivity {
			most = n
		}
	}
	if low, high := float64(pieces[least].Conductivity), float64(pieces[most].Conductivity); high/low > mostContrast {
		return fmt.Errorf("%s conducts %.4g W/(m·K) and %s only %.4g, more than %g times less; rounding would decide the result",
			label("piece", most, pieces[most].Name), high, label("piece", least, pieces[least].Name)[len("section: "):], low, mostContrast)
	}
	return nil
}

func (p *plan) checkBoundaries() error {
	p.air = make([]int, len(p.section.Boundaries))
	for n, b := range p.section.Boundaries {
		if !b.From.finite() || !b.To.finite() {
			return fmt.Errorf("%s runs from %v to %v, coordinates must be numbers within %g m", label("boundary", n, b.Name), b.From, b.To, largest)
		}
		dx, dy := math.Abs(float64(b.To.X-b.From.X)), math.Abs(float64(b.To.Y-b.From.Y))
		switch {
		case dx <= snap && dy <= snap:
			return fmt.Errorf("%s runs from %v to %v, it needs a length", label("boundary", n, b.Name), b.From, b.To)
		case dx > snap && dy > snap:
			return fmt.Errorf("%s runs from %v to %v, it must run along x or along y", label("boundary", n, b.Name), b.From, b.To)
		}
		if b.Adiabatic {
			if b.Air != 0 || b.Film != 0 {
				return fmt.Errorf("%s is adiabatic and has an air temperature or a film; leave one out", label("boundary", n, b.Name))
			}
			p.air[n] = adiabatic
			continue
		}
		if t := float64(b.Air); !(t > 0) || math.IsInf(t, 0) {
			return fmt.Errorf("%s faces air of %v K, give a temperature above absolute zero", label("boundary", n, b.Name), t)
		}
		if r := float64(b.Film); !(r >= 0) || math.IsInf(r, 0) {
			return fmt.Errorf("%s has a film of %v m²·K/W, it must be 0 or more", label("boundary", n, b.Name), r)
		}
		if !slices.Contains(p.airs, float64(b.Air)) {
			p.airs = append(p.airs, float64(b.Air))
		}
	}
	switch len(p.airs) {
	case 0:
		return errors.New("section: no heat passes anywhere, the outline is all adiabatic; give at least two boundaries with air temperatures")
	case 1:
		return fmt.Errorf("section: all air is at %v, nothing would flow; give boundaries of two temperatures at least", rvalue.Temperature(p.airs[0]))
	}
	slices.Sort(p.airs)
	slices.Reverse(p.airs)
	for n, b := range p.section.Boundaries {
		if !b.Adiabatic {
			p.air[n] = slices.Index(p.airs, float64(b.Air))
		}
	}
	return nil
}

// lines returns the different values, rising, those nearer than snap as one.
func lines(values []float64) []float64 {
	slices.Sort(values)
	out := values[:1]
	for _, v := range values[1:] {
		if v-out[len(out)-1] > snap {
			out = append(out, v)
		}
	}
	return out
}

// line returns the index of the line at v.
func line(lines []float64, v float64) int {
	i, found := slices.BinarySearch(lines, v)
	if found || i == 0 {
		return i
	}
	return i - 1 // snapped: lines keep the lowest of their values
}

// fill lays the pieces out on the grid of all edges.
func (p *plan) fill() error {
	s := p.section
	var xs, ys []float64
	for _, q := range s.Pieces {
		xs = append(xs, float64(q.From.X), float64(q.To.X))
		ys = append(ys, float64(q.From.Y), float64(q.To.Y))
	}
	for _, b := range s.Boundaries {
		xs = append(xs, float64(b.From.X), float64(b.To.X))
		ys = append(ys, float64(b.From.Y), float64(b.To.Y))
	}
	p.xs, p.ys = lines(xs), lines(ys)
	if n := p.columns() * p.rows(); n > mostCells {
		return fmt.Errorf("section: the edges of pieces and boundaries, drawn on to both ends, cut the section into %d rectangles, at most %d; draw it with fewer edges or align them", n, mostCells)
	}
	p.cell = make([]int, p.columns()*p.rows())
	for i := range p.cell {
		p.cell[i] = -1
	}
	for n, q := range s.Pieces {
		x0, x1 := between(p.xs, q.From.X, q.To.X)
		y0, y1 := between(p.ys, q.From.Y, q.To.Y)
		if x0 == x1 || y0 == y1 {
			return fmt.Errorf("%s is thinner than %g m, the distance below which edges are one", label("piece", n, q.Name), snap)
		}
		for j := y0; j < y1; j++ {
			for i := x0; i < x1; i++ {
				c := &p.cell[j*p.columns()+i]
				if *c >= 0 {
					return fmt.Errorf("%s overlaps %s at %v; cut one of them back", label("piece", n, q.Name), label("piece", *c, s.Pieces[*c].Name)[len("section: "):], p.middle(i, j))
				}
				*c = n
			}
		}
	}
	return nil
}

func between(lines []float64, a, b rvalue.Length) (from, to int) {
	return line(lines, float64(min(a, b))), line(lines, float64(max(a, b)))
}

func (p *plan) middle(i, j int) Point {
	return Point{rvalue.Length((p.xs[i] + p.xs[i+1]) / 2), rvalue.Length((p.ys[j] + p.ys[j+1]) / 2)}
}

// outline finds what each edge of the outline faces.
func (p *plan) outline() error {
	nx, ny := p.columns(), p.rows()
	p.flat = make([]int, nx*(ny+1))
	p.upright = make([]int, (nx+1)*ny)
	for l := range ny + 1 {
		for i := range nx {
			p.flat[l*nx+i] = edgeOf(p.at(i, l-1), p.at(i, l))
		}
	}
	for j := range ny {
		for l := range nx + 1 {
			p.upright[j*(nx+1)+l] = edgeOf(p.at(l-1, j), p.at(l, j))
		}
	}
	said := map[*int]int{} // edges that a boundary was given for
	for n, b := range p.section.Boundaries {
		edges := p.along(b)
		on := 0
		for _, e := range edges {
			if *e == within {
				continue
			}
			on++
			if before, ok := said[e]; ok {
				return fmt.Errorf("%s covers what %s covers already; cut one of them back", label("boundary", n, b.Name), label("boundary", before, p.section.Boundaries[before].Name)[len("section: "):])
			}
			said[e] = n
			if !b.Adiabatic {
				*e = n
			}
		}
		switch {
		case on == 0:
			return fmt.Errorf("%s from %v to %v touches no surface of the section; nothing reaches it", label("boundary", n, b.Name), b.From, b.To)
		case on < len(edges):
			return fmt.Errorf("%s from %v to %v lies only partly on the surface of the section; end it where the surface ends", label("boundary", n, b.Name), b.From, b.To)
		}
	}
	// Symmetry planes and cuts lie on the rectangle around the section. Inside
	// it an edge without a boundary is where a piece is missing.
	for l := 1; l < ny; l++ {
		for i := range nx {
			e := &p.flat[l*nx+i]
			if _, ok := said[e]; *e == adiabatic && !ok {
				return p.missing(i, l, p.at(i, l) < 0)
			}
		}
	}
	for j := range ny {
		for l := 1; l < nx; l++ {
			e := &p.upright[j*(nx+1)+l]
			if _, ok := said[e]; *e == adiabatic && !ok {
				if p.at(l, j) < 0 {
					return p.gap(l, j)
				}
				return p.gap(l-1, j)
			}
		}
	}
	return nil
}

func (p *plan) missing(i, l int, above bool) error {
	if above {
		return p.gap(i, l)
	}
	return p.gap(i, l-1)
}

func (p *plan) gap(i, j int) error {
	return fmt.Errorf("section: nothing is drawn at %v, beside material that faces no boundary there; draw the missing piece (air too), or the boundary, or say that it is adiabatic", p.middle(i, j))
}

func edgeOf(a, b int) int {
	if (a < 0) == (b < 0) {
		return within
	}
	return adiabatic
}

// along returns the edges under a boundary.
func (p *plan) along(b Boundary) (edges []*int) {
	x0, x1 := between(p.xs, b.From.X, b.To.X)
	y0, y1 := between(p.ys, b.From.Y, b.To.Y)
	for i := x0; i < x1; i++ {
		edges = append(edges, &p.flat[y0*p.columns()+i])
	}
	for j := y0; j < y1; j++ {
		edges = append(edges, &p.upright[j*len(p.xs)+x0])
	}
	return edges
}

// whole refuses a section in several parts, parts that hang together at a
// corner only, and one with a hole.
func (p *plan) whole() error {
	nx, ny := p.columns(), p.rows()
	for l := 1; l < ny; l++ {
		for m := 1; m < nx; m++ {
			a, b, c, d := p.at(m-1, l-1) >= 0, p.at(m, l-1) >= 0, p.at(m-1, l) >= 0, p.at(m, l) >= 0
			if a == d && b == c && a != b {
				return fmt.Errorf("section: material meets only at the corner %v; let it overlap or part there", Point{rvalue.Length(p.xs[m]), rvalue.Length(p.ys[l])})
			}
		}
	}
	// A frame of empty cells around the grid is the outside.
	w, h := nx+2, ny+2
	seen := make([]bool, w*h)
	flood := func(start int, solid bool) {
		todo := []int{start}
		seen[start] = true
		for len(todo) > 0 {
			c := todo[len(todo)-1]
			todo = todo[:len(todo)-1]
			i, j := c%w, c/w
			for _, d := range [4][2]int{{1, 0}, {-1, 0}, {0, 1}, {0, -1}} {
				x, y := i+d[0], j+d[1]
				if x < 0 || y < 0 || x >= w || y >= h || seen[y*w+x] || (p.at(x-1, y-1) >= 0) != solid {
					continue
				}
				seen[y*w+x] = true
				todo = append(todo, y*w+x)
			}
		}
	}
	flood(0, false)
	first := -1
	for c := range seen {
		i, j := c%w-1, c/w-1
		piece := p.at(i, j)
		switch {
		case seen[c]:
		case piece < 0:
			return fmt.Errorf("section: an enclosed empty space at %v; fill it, or cut the section through it", p.middle(i, j))
		case first >= 0:
			s := p.section.Pieces
			return fmt.Errorf("section: %s and %s are not joined by any material; draw what is between them or solve them apart", label("piece", first, s[first].Name)[len("section: "):], label("piece", piece, s[piece].Name)[len("section: "):])
		default:
			first = piece
			flood(c, true)
		}
	}
	return nil
}
