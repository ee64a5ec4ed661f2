package section

import (
	"math"
	"slices"

	"github.com/coldseam/coldseam/rvalue"
)

// Overlay lays pieces over each other, later ones over those before, and
// returns what is seen of them as pieces side by side, for a Section: of each
// what no later one covers, in rectangles. of says which of the given pieces each
// is of. Corners may be given in any order.
func Overlay(pieces []Piece) (seen []Piece, of []int) {
	var xs, ys []float64
	for _, p := range pieces {
		xs = append(xs, float64(p.From.X), float64(p.To.X))
		ys = append(ys, float64(p.From.Y), float64(p.To.Y))
	}
	xs, ys = distinct(xs), distinct(ys)
	columns, rows := max(0, len(xs)-1), max(0, len(ys)-1)
	top := slices.Repeat([]int{-1}, columns*rows)
	for n, p := range pieces {
		x0, x1 := lineOf(xs, min(p.From.X, p.To.X)), lineOf(xs, max(p.From.X, p.To.X))
		for j := lineOf(ys, min(p.From.Y, p.To.Y)); j < lineOf(ys, max(p.From.Y, p.To.Y)); j++ {
			for i := x0; i < x1; i++ {
				top[j*columns+i] = n
			}
		}
	}
	type strip struct{ piece, from, to int }
	var below map[strip]int // strips of the row below: which of seen
	for j := range rows {
		row := map[strip]int{}
		for i := 0; i < columns; {
			n, from := top[j*columns+i], i
			for i < columns && top[j*columns+i] == n {
				i++
			}
			if n < 0 {
				continue
			}
			s := strip{n, from, i}
			k, joined := below[s]
			if !joined {
				k = len(seen)
				of = append(of, n)
				seen = append(seen, pieces[n])
				seen[k].From = Point{rvalue.Length(xs[from]), rvalue.Length(ys[j])}
			}
			seen[k].To = Point{rvalue.Length(xs[i]), rvalue.Length(ys[j+1])}
			row[s] = k
		}
		below = row
	}
	return seen, of
}

// distinct sorts coordinates and joins those nearer than snap.
func distinct(v []float64) []float64 {
	slices.Sort(v)
	return slices.CompactFunc(v, func(a, b float64) bool { return math.Abs(a-b) <= snap })
}

// lineOf returns which of the lines a coordinate is on.
func lineOf(lines []float64, v rvalue.Length) int {
	i, _ := slices.BinarySearch(lines, float64(v)-snap)
	return min(i, len(lines)-1)
}
