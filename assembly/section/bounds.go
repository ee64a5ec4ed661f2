package section

import (
	"math"

	"github.com/coldseam/coldseam/rvalue"
)

// What follows from the two bounds is the same in the plane and in space.

// excess is by how much each air but the coldest, the last, is warmer than it.
func excess(airs []float64) []float64 {
	out := make([]float64, len(airs)-1)
	for e := range out {
		out[e] = airs[e] - airs[len(airs)-1]
	}
	return out
}

// heat returns the heat that each air gives, the mean of both bounds.
func heat(upper, lower [][]float64, excess []float64) []float64 {
	n := len(upper)
	out := make([]float64, n+1)
	for e := range n {
		for f, x := range excess {
			out[e] += x * (upper[e][f] + lower[e][f]) / 2
		}
		out[n] -= out[e]
	}
	return out
}

// widths is half the width of the bracket of the heat from each air. The error
// of the mean of both problems' flows is at most half the geometric mean of the
// actual problem's gap and the air's own.
func widths(upper, lower [][]float64, excess []float64) []float64 {
	n := len(excess)
	actual, last := 0.0, 0.0
	for e := range n {
		for f := range n {
			g := upper[e][f] - lower[e][f]
			actual += excess[e] * excess[f] * g
			last += g
		}
	}
	out := make([]float64, n+1)
	for e := range n {
		out[e] = math.Sqrt(max(0, actual)*max(0, upper[e][e]-lower[e][e])) / 2
	}
	out[n] = math.Sqrt(max(0, actual)*max(0, last)) / 2
	return out
}

// exchanges returns what each air gives with its bounds, and the sums of what is given.
// What the flows leave over shows how much rounding can hide.
func exchanges(airs, heat, width []float64, left float64) (out []Exchange, sum, low, high float64) {
	out = make([]Exchange, len(heat))
	for e, h := range heat {
		w := width[e] + math.Abs(left) + rounding*math.Abs(h)
		out[e] = Exchange{rvalue.Temperature(airs[e]), h, h - w, h + w}
		if h > 0 {
			sum += h
			low += h - w
			high += h + w
		}
	}
	return out, sum, low, high
}

// moved returns the most that a spot has moved since the last mesh, in K, and which
// moved by more than slack; before the second mesh nothing is known.
func moved[S any](before, now []S, slack float64, at func(S) rvalue.Temperature) (most float64, far []int) {
	if before == nil && len(now) > 0 {
		return math.Inf(1), nil
	}
	for i := range now {
		d := math.Abs(float64(at(now[i]).Sub(at(before[i]))))
		if d > slack {
			far = append(far, i)
		}
		most = max(most, d)
	}
	return most, far
}
