package section

import "github.com/coldseam/coldseam/rvalue"

// raster is values on the crossings of two sets of lines; the squares between
// are material or not.
type raster struct {
	xs, ys []float64
	solid  []bool // by square, x first
	t, psi []float64
}

// contour returns the lines along which v is level, as chains of points. They
// run straight through each square of the material.
func (r *raster) contour(v []float64, level float64) (chains [][]Point) {
	w := len(r.xs)
	// A crossing lies on an edge: 2n is the level edge right of crossing n, 2n+1
	// the upright one above it.
	point := func(edge int) Point {
		a := edge / 2
		b := a + 1
		if edge&1 == 1 {
			b = a + w
		}
		f := (level - v[a]) / (v[b] - v[a])
		x, y := r.xs[a%w], r.ys[a/w]
		return Point{rvalue.Length(x + f*(r.xs[b%w]-x)), rvalue.Length(y + f*(r.ys[b/w]-y))}
	}
	links := map[int][2]int{} // by edge: the segments that end there, plus one
	var segments [][2]int
	link := func(edge int) {
		l := links[edge]
		if l[0] == 0 {
			l[0] = len(segments)
		} else {
			l[1] = len(segments)
		}
		links[edge] = l
	}
	add := func(a, b int) {
		segments = append(segments, [2]int{a, b})
		link(a)
		link(b)
	}
	for j := range len(r.ys) - 1 {
		for i := range w - 1 {
			if !r.solid[j*(w-1)+i] {
				continue
			}
			n := j*w + i
			above := func(n int) bool { return v[n] >= level }
			a, b, c, d := above(n), above(n+1), above(n+w), above(n+w+1)
			bottom, top, left, right := 2*n, 2*(n+w), 2*n+1, 2*(n+1)+1
			var cut []int
			if a != b {
				cut = append(cut, bottom)
			}
			if b != d {
				cut = append(cut, right)
			}
			if c != d {
				cut = append(cut, top)
			}
			if a != c {
				cut = append(cut, left)
			}
			switch len(cut) {
			case 2:
				add(cut[0], cut[1])
			case 4: // a saddle: the mean says which corners belong together
				if ((v[n]+v[n+1]+v[n+w]+v[n+w+1])/4 >= level) == a {
					add(bottom, right)
					add(top, left)
				} else {
					add(bottom, left)
					add(right, top)
				}
			}
		}
	}
	used := make([]bool, len(segments))
	// other returns the unused segment that goes on from an edge.
	other := func(edge int) int {
		for _, s := range links[edge] {
			if s > 0 && !used[s-1] {
				return s - 1
			}
		}
		return -1
	}
	for s := range segments {
		if used[s] {
			continue
		}
		used[s] = true
		walk := func(edge int) (out []Point) {
			out = append(out, point(edge))
			for n := other(edge); n >= 0; n = other(edge) {
				used[n] = true
				if segments[n][0] == edge {
					edge = segments[n][1]
				} else {
					edge = segments[n][0]
				}
				out = append(out, point(edge))
			}
			return out
		}
		ahead, back := walk(segments[s][1]), walk(segments[s][0])
		chain := make([]Point, 0, len(ahead)+len(back))
		for i := len(back) - 1; i >= 0; i-- {
			chain = append(chain, back[i])
		}
		chains = append(chains, append(chain, ahead...))
	}
	return chains
}
