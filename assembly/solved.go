package assembly

import (
	"fmt"
	"math"

	"github.com/coldseam/coldseam/rvalue"
)

// Solution is the numeric answer for an assembly, air to air, and what it lies
// between. Package section finds it.
type Solution struct{ R, Low, High rvalue.Resistance }

// Doubt returns half the width of what the answer lies between, as a part of R.
func (s Solution) Doubt() float64 { return float64(s.High-s.Low) / float64(2*s.R) }

// solutionSlack is what rounding may put a solution outside its own bounds by.
const solutionSlack = 1e-9

// Solved returns the result with a numeric answer as the effective one. Layers without
// members keep their R; those with members share what is left as they do by the
// combined method, and in each the heat divides so that its shares average to that
// (in a bay of several pieces by proportion, between both limits' divisions).
// Gains stay those of the method that r went by: the numeric answer has its own, which
// are not computed.
//
// The error says what cannot be about s: bounds out of order, or less resistance than
// the layers without members have by themselves.
func (r *Result) Solved(s Solution) (*Result, error) {
	for _, v := range [...]rvalue.Resistance{s.R, s.Low, s.High} {
		if !(v > 0) || math.IsInf(float64(v), 1) {
			return nil, fmt.Errorf("assembly: a numeric answer of %v m²·K/W, it must be positive and finite", float64(v))
		}
	}
	if s.R < s.Low*(1-solutionSlack) || s.R > s.High*(1+solutionSlack) {
		return nil, fmt.Errorf("assembly: a numeric answer of %s outside its own bounds, %s to %s", rvalue.Both(s.R), rvalue.Both(s.Low), rvalue.Both(s.High))
	}
	d, bridged, err := r.Assembly.solved(s.R)
	if err != nil {
		return nil, err
	}
	out := *r
	out.Numeric = &s
	out.Effective = Effective{
		R: s.R, Method: Numeric,
		Why: fmt.Sprintf("solved in its section, within %.2g %% for what is drawn", max(0.01, 100*s.Doubt())),
	}
	at := r.Setting.Indoors
	fall := float64(r.Setting.Indoors.Sub(r.Setting.Outdoors))
	out.Layers = append([]LayerResult(nil), r.Layers...)
	for i := range out.Layers {
		l := &out.Layers[i]
		l.R, l.Drop = d.layers[i], float64(d.layers[i]/s.R)
		l.Inner = at
		at = at.Add(rvalue.TemperatureDifference(-l.Drop * fall))
		l.Outer = at
		l.Shares = append([]ShareResult(nil), l.Shares...)
		for n := range l.Shares {
			l.Shares[n].Heat = d.heat[i][n]
		}
	}
	if len(bridged) > 0 {
		out.Paths = nil
	}
	if len(bridged) == 1 {
		for n, share := range r.Assembly.Layers[bridged[0]].Shares {
			out.Paths = append(out.Paths, PathResult{Name: share.Name, Fraction: share.Fraction, Heat: d.heat[bridged[0]][n]})
		}
	}
	return &out, nil
}

// solved divides heat and drop by a numeric answer, and lists the bridged layers.
func (a Assembly) solved(r rvalue.Resistance) (d division, bridged []int, err error) {
	d = a.between()
	plain, mixed := rvalue.Resistance(0), rvalue.Resistance(0)
	for i, l := range a.Layers {
		if l.Bridged() {
			bridged = append(bridged, i)
			mixed += d.layers[i]
		} else {
			plain += d.layers[i]
		}
	}
	if len(bridged) == 0 {
		return d, nil, nil
	}
	if r <= plain {
		return d, nil, fmt.Errorf("assembly: a numeric answer of %s, less than the %s of the layers that nothing bridges", rvalue.Both(r), rvalue.Both(plain))
	}
	planes := a.acrossPlanes()
	for _, i := range bridged {
		before := d.layers[i]
		d.layers[i] = rvalue.Resistance(float64(before) * float64((r-plain)/mixed))
		d.heat[i] = toward(d.layers[i], before, planes.layers[i], d.heat[i], planes.heat[i])
	}
	return d, bridged, nil
}

// toward returns how heat divides in a layer that resists r: on the straight line
// from a division by which it resists a to one by which it resists b. So where no
// plane cuts the layer, the shares' resistances weighed by their heat make r.
func toward(r, a, b rvalue.Resistance, from, to []float64) []float64 {
	if a == b {
		return from
	}
	t := float64((r - a) / (b - a))
	// No share carries less than nothing.
	for n := range from {
		if step := to[n] - from[n]; step*t < -from[n] {
			t = -from[n] / step
		}
	}
	out := make([]float64, len(from))
	for n := range from {
		out[n] = from[n] + t*(to[n]-from[n])
	}
	return out
}
