package house

import (
	"math"
	"slices"

	solver "github.com/coldseam/coldseam/assembly/section"
	"github.com/coldseam/coldseam/rvalue"
)

// edge is the distance within which two edges of a drawing are one, in m:
// package section takes them so.
const edge = 1e-6

func near(a, b float64) bool { return math.Abs(a-b) <= edge }

// overlay is a drawing on the grid of all its edges: what is on top where.
type overlay struct {
	xs, ys []float64
	top    []int // by row and column: the piece, -1 for none
}

func newOverlay(pieces []*DrawnPiece, faces []*Face) *overlay {
	o := &overlay{}
	for _, p := range pieces {
		o.line(p.From, p.To)
	}
	for _, f := range faces {
		o.line(f.From, f.To)
	}
	o.xs, o.ys = distinct(o.xs), distinct(o.ys)
	o.top = slices.Repeat([]int{-1}, max(0, o.columns()*o.rows()))
	for n, p := range pieces {
		for j := o.row(p.From.Y); j < o.row(p.To.Y); j++ {
			for i := o.column(p.From.X); i < o.column(p.To.X); i++ {
				o.top[j*o.columns()+i] = n
			}
		}
	}
	return o
}

func (o *overlay) line(from, to solver.Point) {
	o.xs = append(o.xs, float64(from.X), float64(to.X))
	o.ys = append(o.ys, float64(from.Y), float64(to.Y))
}

func distinct(v []float64) []float64 {
	slices.Sort(v)
	return slices.CompactFunc(v, near)
}

func (o *overlay) columns() int { return len(o.xs) - 1 }
func (o *overlay) rows() int    { return len(o.ys) - 1 }

// column returns the grid line of a coordinate that is one of the edges.
func (o *overlay) column(x rvalue.Length) int { return index(o.xs, float64(x)) }
func (o *overlay) row(y rvalue.Length) int    { return index(o.ys, float64(y)) }

func index(edges []float64, v float64) int {
	i, _ := slices.BinarySearch(edges, v-edge)
	return min(i, len(edges)-1)
}

// at returns the piece in a field of the grid, -1 for none and outside it.
func (o *overlay) at(i, j int) int {
	if i < 0 || j < 0 || i >= o.columns() || j >= o.rows() {
		return -1
	}
	return o.top[j*o.columns()+i]
}

// stretch is a piece of a straight line of the drawing.
type stretch struct {
	from, to rvalue.Length
	sides    [2]int // the pieces on either side, -1 for none
}

// surface reports whether it lies between material and none.
func (s stretch) surface() bool { return (s.sides[0] < 0) != (s.sides[1] < 0) }

// along returns the stretches of a line between two points.
func (o *overlay) along(from, to solver.Point) []stretch {
	var out []stretch
	if near(float64(from.Y), float64(to.Y)) {
		j := o.row(from.Y)
		for i := o.column(from.X); i < o.column(to.X); i++ {
			out = append(out, stretch{from: rvalue.Length(o.xs[i]), to: rvalue.Length(o.xs[i+1]), sides: [2]int{o.at(i, j-1), o.at(i, j)}})
		}
		return out
	}
	i := o.column(from.X)
	for j := o.row(from.Y); j < o.row(to.Y); j++ {
		out = append(out, stretch{from: rvalue.Length(o.ys[j]), to: rvalue.Length(o.ys[j+1]), sides: [2]int{o.at(i-1, j), o.at(i, j)}})
	}
	return out
}
