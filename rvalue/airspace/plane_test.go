package airspace

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/floats/scalar"
	"gonum.org/v1/gonum/optimize"

	"github.com/coldseam/coldseam/rvalue"
)

// rowR returns the resistances of a row by a convective coefficient in
// W/(m²·K), in h·ft²·°F/Btu.
func rowR(r planeRow, hc float64) (out [5]float64) {
	for i, e := range planeE {
		s := r.space.withE(e)
		out[i] = rvalue.Resistance(1 / (hc + radiation(&s, Correlated, r.mean.Kelvins()))).IP()
	}
	return out
}

// TestTableIsConsistent: for each row there is one convective coefficient that
// gives all five printed cells. The table is from memory; a cell remembered
// wrong would break this.
func TestTableIsConsistent(t *testing.T) {
	const tolerance = 0.011 // h·ft²·°F/Btu; half the last printed digit, twice over, since the table was itself worked out from rounded coefficients
	for _, r := range planeTable(t) {
		miss := func(hc float64) (worst float64) {
			for i, got := range rowR(r, hc) {
				worst = max(worst, math.Abs(got-r.printed[i]))
			}
			return worst
		}
		// The worst miss has one minimum: ternary search.
		lo, hi := 0.05, 10.0
		for range 100 {
			a, b := lo+(hi-lo)/3, hi-(hi-lo)/3
			if miss(a) < miss(b) {
				hi = b
			} else {
				lo = a
			}
		}
		if worst := miss(lo); worst > tolerance {
			t.Errorf("%v, %.0f °F, %.0f °F, %.2f in: no coefficient comes nearer than %.4f, want %.3f",
				r.position, r.mean.IP(), r.dT.IP(), r.space.Thickness.Inches(), worst, tolerance)
		}
	}
}

// score is the largest and the root-mean-square relative difference.
type score struct {
	largest, square float64
	n               int
}

func (s *score) add(got, want float64) {
	d := got/want - 1
	s.largest = max(s.largest, math.Abs(d))
	s.square += d * d
	s.n++
}

func (s *score) String() string {
	return fmt.Sprintf("%.1f, %.1f", 100*s.largest, 100*math.Sqrt(s.square/float64(s.n)))
}

// TestPlaneTable recomputes the table of differences in the package comment.
func TestPlaneTable(t *testing.T) {
	columns := []string{"ISO form", "published", "curves", "curves, 300 cells not fitted"}
	// Largest and rms difference in %, as in the package comment.
	want := map[position][]string{
		{0, "up"}:          {"32.6, 12.7", "26.3, 9.2", "1.1, 0.5", "1.1, 0.5"},
		{45, "up"}:         {"19.3, 7.0", "21.2, 7.5", "1.9, 0.8", "1.9, 0.9"},
		{90, "horizontal"}: {"25.8, 9.2", "7.4, 2.7", "2.0, 0.6", "2.0, 0.8"},
		{45, "down"}:       {"207.5, 59.6", "18.0, 6.4", "1.3, 0.4", "1.3, 0.4"},
		{0, "down"}:        {"15.5, 5.2", "56.8, 12.0", "2.3, 0.6", "1.5, 0.6"},
	}
	rows := planeTable(t)
	for _, p := range positions {
		scores := make([]score, len(columns))
		for _, r := range rows {
			if r.position != p {
				continue
			}
			k, perRa := air(r.mean.Kelvins())
			d := r.space.Thickness.SI()
			byPublished := rowR(r, published(p, perRa*r.dT.SI()*d*d*d, d)*k/d)
			for i, e := range planeE {
				s := r.space.withE(e)
				iso, err := s.Resistance(ISO6946, r.mean, r.dT)
				if err != nil {
					t.Fatal(err)
				}
				ours, err := s.Resistance(Correlated, r.mean, r.dT)
				if err != nil {
					t.Fatal(err)
				}
				scores[0].add(iso.IP(), r.printed[i])
				scores[1].add(byPublished[i], r.printed[i])
				scores[2].add(ours.IP(), r.printed[i])
				if !r.fit {
					scores[3].add(ours.IP(), r.printed[i])
				}
			}
		}
		for i := range scores {
			if got := scores[i].String(); got != want[p][i] {
				t.Errorf("%v, %s: largest and rms difference %s %%, want %s", p, columns[i], got, want[p][i])
			}
		}
	}
}

// TestFit repeats the fit of the curves: least squares of the relative
// differences over the 80 rows at 0 °F and 50 °F.
func TestFit(t *testing.T) {
	rows := planeTable(t)
	for _, row := range []struct {
		position position
		curve    curve
		free     int // of its parameters, in the order of the struct, were fitted
	}{
		{positions[0], curveUp, 2},
		{positions[1], curveUp45, 4},
		{positions[2], curveUpright, 4},
		{positions[3], curveDown45, 4},
		{positions[4], curveDown, 2},
	} {
		build := func(x []float64) curve {
			c := row.curve
			c.lnA, c.m = x[0], x[1]
			if row.free == 4 {
				c.lnB, c.q = x[2], x[3]
			}
			return c
		}
		loss := func(x []float64) float64 {
			c := build(x)
			var s score
			for _, r := range rows {
				if !r.fit || r.position != row.position {
					continue
				}
				k, perRa := air(r.mean.Kelvins())
				d := r.space.Thickness.SI()
				got := rowR(r, c.at(math.Log(perRa*r.dT.SI()*d*d*d/1e5))*k/d)
				for i := range got {
					s.add(got[i], r.printed[i])
				}
			}
			return math.Sqrt(s.square / float64(s.n))
		}
		at := []float64{row.curve.lnA, row.curve.m, row.curve.lnB, row.curve.q}[:row.free]
		start := slices.Clone(at)
		for i := range start {
			start[i] *= 1.03 // away from the answer, so that the search has to find it
		}
		best, err := optimize.Minimize(optimize.Problem{Func: loss}, start, nil, &optimize.NelderMead{})
		if err != nil {
			t.Fatal(err)
		}
		if ours := loss(at); !scalar.EqualWithinRel(ours, best.F, 0.001) {
			t.Errorf("%v: the constants miss by %.5f rms, the best ones %.5v by %.5f", row.position, ours, best.X, best.F)
		}
	}
}
