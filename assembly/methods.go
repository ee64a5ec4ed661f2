package assembly

import (
	"math"

	"github.com/coldseam/coldseam/rvalue"
)

// Path is one way straight through the assembly: the share it crosses in
// every layer.
type Path struct {
	Fraction float64           // of the area; the paths of an assembly sum to 1
	R        rvalue.Resistance // sum of the shares crossed
	Shares   []int             // by layer: index into Layer.Shares
}

// Paths returns every combination of shares that a straight line through the
// assembly can cross. Shares of layers in one Line are laid along the same
// strip; those of other layers cross, so that their fractions multiply. There are
// none without layers, or with a layer without shares.
func (a Assembly) Paths() []Path {
	if !a.shared() {
		return nil
	}
	paths := []Path{{Fraction: 1, Shares: make([]int, len(a.Layers))}}
	for i := range a.Layers {
		together := a.together(i)
		if together == nil {
			continue
		}
		strips := a.strips(together)
		next := make([]Path, 0, len(paths)*len(strips))
		shares := make([]int, 0, cap(next)*len(a.Layers))
		for _, p := range paths {
			for _, s := range strips {
				shares = append(shares, p.Shares...)
				q := Path{Fraction: p.Fraction * s.Fraction, Shares: shares[len(shares)-len(a.Layers) : len(shares) : len(shares)]}
				for n, layer := range together {
					q.Shares[layer] = s.Shares[n]
				}
				next = append(next, q)
			}
		}
		paths = next
	}
	for n := range paths {
		for i, s := range paths[n].Shares {
			paths[n].R += a.Layers[i].Shares[s].R
		}
	}
	return paths
}

// together returns a bridged layer and all behind it that stand in one Line with
// it; nil for a plain layer and for one that stands in line with one before.
func (a Assembly) together(layer int) []int {
	l := a.Layers[layer]
	if l.Line == 0 {
		if l.Bridged() {
			return []int{layer}
		}
		return nil
	}
	for _, before := range a.Layers[:layer] {
		if before.Line == l.Line {
			return nil
		}
	}
	group := []int{layer}
	for j := layer + 1; j < len(a.Layers); j++ {
		if a.Layers[j].Line == l.Line {
			group = append(group, j)
		}
	}
	return group
}

// shared reports whether the assembly has layers, and each of them shares.
func (a Assembly) shared() bool {
	for _, l := range a.Layers {
		if len(l.Shares) == 0 {
			return false
		}
	}
	return len(a.Layers) > 0
}

// strips lays the shares of the layers that stand in line along one strip of
// unit width, from its start, and returns the pieces between all borders.
func (a Assembly) strips(layers []int) []Path {
	var out []Path
	at := make([]int, len(layers))       // share under the cursor
	left := make([]float64, len(layers)) // of that share
	for n, layer := range layers {
		left[n] = a.Layers[layer].Shares[0].Fraction
	}
	for {
		step := left[0]
		for _, l := range left[1:] {
			step = min(step, l)
		}
		out = append(out, Path{Fraction: step, Shares: append([]int(nil), at...)})
		for n, layer := range layers {
			left[n] -= step
			if left[n] > fractionSlack {
				continue
			}
			shares := a.Layers[layer].Shares
			if at[n]++; at[n] == len(shares) {
				// The last border of every layer is the far end of the strip;
				// what rounding left of the others is below fractionSlack.
				return out
			}
			left[n] += shares[at[n]].Fraction
		}
	}
}

// ParallelPath returns the air-to-air resistance if heat runs straight through
// and none flows sideways: 1/Σ(fraction/ΣR) over the paths. No real assembly
// of these layers resists more. Without layers, or with a layer without shares,
// it is NaN; Check says what else makes an assembly impossible.
//
// Source: ASHRAE Handbook—Fundamentals 2021, ch. 27; ISO 6946, upper limit R′T.
func (a Assembly) ParallelPath() rvalue.Resistance {
	if !a.shared() {
		return rvalue.Resistance(math.NaN())
	}
	u := 0.0
	for _, p := range a.Paths() {
		u += p.Fraction / float64(p.R)
	}
	return rvalue.Resistance(1 / u)
}

// IsothermalPlanes returns the air-to-air resistance if every plane between
// layers, and between the pieces of a bay (Share.Parts), has one temperature, as
// if heat flowed sideways freely: the sum of the layers' mixed resistances. No
// real assembly of these layers resists less.
// Without layers, or with a layer without shares, it is NaN.
//
// Source: ASHRAE Handbook—Fundamentals 2021, ch. 27; ISO 6946, lower limit R”T.
func (a Assembly) IsothermalPlanes() rvalue.Resistance {
	if len(a.Layers) == 0 {
		return rvalue.Resistance(math.NaN())
	}
	var r rvalue.Resistance
	for _, l := range a.Layers {
		r += l.Mixed()
	}
	return r
}

// Combined is the result of ISO 6946's combined method.
type Combined struct {
	R     rvalue.Resistance // (R′T + R″T)/2
	Error float64           // (R′T − R″T)/(2R), the largest relative error of R
	Valid bool              // R′T/R″T ≤ 1.5; the standard refuses the method beyond
}

// Combined returns the mean of the parallel-path and the isothermal-planes
// resistance, with the largest relative error it can have. The method does
// not apply where metal bridges the insulation; the caller knows that.
//
// Source: ISO 6946, total thermal resistance of a component consisting of
// homogeneous and inhomogeneous layers, and its limit R′T/R”T ≤ 1.5.
func (a Assembly) Combined() Combined {
	upper, lower := float64(a.ParallelPath()), float64(a.IsothermalPlanes())
	r := (upper + lower) / 2
	return Combined{
		R:     rvalue.Resistance(r),
		Error: (upper - lower) / (2 * r),
		Valid: upper <= 1.5*lower,
	}
}
