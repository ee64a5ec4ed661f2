package assembly_test

import (
	"math"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/rvalue"
)

// With a numeric answer the layers sum to it, the drops and the heat of every layer to
// 1, the faces fall from the rooms' air to the outer, and in each layer the shares
// average to its R; in bays of several pieces, where heat crosses over, they need not.
func TestSolvedAddsUp(t *testing.T) {
	for _, c := range []struct {
		layers string
		at     float64 // of the way from isothermal planes to the parallel path
	}{
		{"gypsum 1/2 in + 2x4 @ 16 in (fiberglass R-13) + osb 7/16 in + vinyl siding", 0.5},
		{"gypsum 1/2 in + 2x4 @ 16 in (fiberglass R-13) + osb 7/16 in + vinyl siding", 0.05},
		{"gypsum 1/2 in + 1x3 @ 24 in (air 3/4 in) + 2x6 @ 16 in (fiberglass R-21) + osb 7/16 in", 0.4},
		{"gypsum 1/2 in + steel 3 1/2 in @ 16 in (fiberglass R-13) + gypsum 1/2 in", 0.3},
		{"gypsum 1/2 in + 2x4 21 %, fir 3 1/2 in 4 % (fiberglass R-13) + osb 7/16 in", 0.6},
		{partFilled, 0.3},
		{partFilled, 0},
		{"gypsum 1/2 in + 48 x 198 mm @ 600 mm (closed-cell spray foam 2 in) + osb 7/16 in", 0.02},
	} {
		s := must(assembly.Parse(c.layers))(t)
		hand := must(s.Evaluate(assembly.Setting{}))(t)
		r := hand.IsothermalPlanes + rvalue.Resistance(c.at)*(hand.ParallelPath-hand.IsothermalPlanes)
		got := must(hand.Solved(assembly.Solution{R: r, Low: r * 0.99, High: r * 1.01}))(t)
		sum, drop := rvalue.Resistance(0), 0.0
		at := got.Setting.Indoors
		for _, l := range got.Layers {
			sum, drop = sum+l.R, drop+l.Drop
			if l.Inner != at || l.Outer > l.Inner {
				t.Errorf("%s: layer %q from %v to %v, the one before ends at %v", c.layers, l.Name, l.Inner, l.Outer, at)
			}
			at = l.Outer
			heat, mean := 0.0, 0.0
			crosses := len(l.Shares[len(l.Shares)-1].Pieces) > 1
			for _, share := range l.Shares {
				heat += share.Heat
				mean += share.Heat * share.R.RSI()
				if share.Heat < 0 {
					t.Errorf("%s: %q carries %v", c.layers, share.Name, share.Heat)
				}
			}
			if math.Abs(heat-1) > 1e-12 || !crosses && math.Abs(mean-l.R.RSI()) > 1e-9 {
				t.Errorf("%s: layer %q: heat sums to %v, shares average to %v of %v", c.layers, l.Name, heat, mean, l.R.RSI())
			}
		}
		if math.Abs(float64(sum/r)-1) > 1e-12 || math.Abs(drop-1) > 1e-12 || math.Abs(at.Sub(got.Setting.Outdoors).SI()) > 1e-9 {
			t.Errorf("%s: layers sum to %v of %v, drops to %v, the last face at %v", c.layers, sum, r, drop, at)
		}
		if got.Effective.Method != assembly.Numeric || got.Effective.R != r || hand.Numeric != nil || hand.Effective.Method == assembly.Numeric {
			t.Errorf("%s: effective %+v; the hand result says %+v", c.layers, got.Effective, hand.Effective)
		}
	}
}

func TestSolvedRefuses(t *testing.T) {
	hand := must(must(assembly.Parse("gypsum 1/2 in + 2x4 @ 16 in (fiberglass R-13) + osb 7/16 in"))(t).Evaluate(assembly.Setting{}))(t)
	for name, c := range map[string]struct {
		s    assembly.Solution
		says string
	}{
		"nothing":       {assembly.Solution{}, "positive"},
		"no number":     {assembly.Solution{R: rvalue.Resistance(math.NaN()), Low: 1, High: 2}, "positive"},
		"out of bounds": {assembly.Solution{R: 3, Low: 1, High: 2}, "outside its own bounds"},
		"too little":    {assembly.Solution{R: 0.1, Low: 0.1, High: 0.1}, "less than"},
	} {
		if _, err := hand.Solved(c.s); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v, want something of %q", name, err, c.says)
		}
	}
	if _, err := must(assembly.Parse("gypsum 1/2 in"))(t).Evaluate(assembly.Setting{Method: assembly.Numeric}); err == nil || !strings.Contains(err.Error(), "section.Evaluate") {
		t.Errorf("asked for the numeric answer the hand methods say %v", err)
	}
}

// must returns v, or ends the test.
func must[T any](v T, err error) func(t testing.TB) T {
	return func(t testing.TB) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}
