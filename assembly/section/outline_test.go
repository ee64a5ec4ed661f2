package section_test

import (
	"math/rand/v2"
	"testing"

	"github.com/coldseam/coldseam/assembly/section"
	"github.com/coldseam/coldseam/rvalue"
)

// TestRandomOutlines solves sections of any outline, with cells missing, three
// airs, surfaces held at them and parts without any, roughly and well: the
// brackets of every air must have a value in common, and what cannot be solved
// must be refused, without panic.
func TestRandomOutlines(t *testing.T) {
	rng := rand.New(rand.NewPCG(1926, 12))
	solved, jumps, refused := 0, 0, 0
	for range 150 {
		s := randomOutline(rng)
		rough, err := s.Solve(section.Options{Tolerance: 1, Surface: 1})
		if err != nil {
			refused++
			continue
		}
		well, err := s.Solve(section.Options{Tolerance: 1e-2, Surface: 1e-1, Unknowns: 8000})
		if err != nil {
			t.Fatalf("%v, though it was solved roughly: %+v", err, s)
		}
		if len(rough.Remarks) > 0 && rough.Remarks[0].Code == "jump" {
			jumps++
			continue
		}
		solved++
		for e := range rough.Airs {
			a, b := rough.Airs[e], well.Airs[e]
			if !(a.Low <= b.High && b.Low <= a.High && a.Low <= a.High && b.Low <= b.High) {
				t.Errorf("air at %v gives %v to %v W/m roughly, %v to %v well", a.Air, a.Low, a.High, b.Low, b.High)
			}
		}
		if well.Balance > 1e-9 {
			t.Errorf("%v of the heat is missing", well.Balance)
		}
		left := 0.0
		for _, f := range well.Flows {
			left += f.Heat
		}
		if left > 1e-9*well.Heat || left < -1e-9*well.Heat {
			t.Errorf("the boundaries' flows leave %v of %v W/m over", left, well.Heat)
		}
		if t.Failed() {
			t.Fatalf("with %+v", s)
		}
	}
	if solved < 40 || jumps < 3 || refused < 3 {
		t.Errorf("%d sections solved, %d with jumps, %d refused: the generator misses something", solved, jumps, refused)
	}
}

// randomOutline fills most of three by three cells and lets every edge of the
// outline face something, within the rectangle around it and on it.
func randomOutline(rng *rand.Rand) section.Section {
	const n = 3
	var lines [2][n + 1]float64
	for axis := range lines {
		for i := range n {
			lines[axis][i+1] = lines[axis][i] + 0.01 + 0.2*rng.Float64()
		}
	}
	var solid [n + 2][n + 2]bool // with a frame of nothing
	var s section.Section
	for j := 1; j <= n; j++ {
		for i := 1; i <= n; i++ {
			if solid[i][j] = rng.IntN(5) > 0; solid[i][j] {
				s.Pieces = append(s.Pieces, section.Piece{
					From:         at(lines[0][i-1], lines[1][j-1]),
					To:           at(lines[0][i], lines[1][j]),
					Conductivity: rvalue.Conductivity(0.03 + 2*rng.Float64()*rng.Float64()),
				})
			}
		}
	}
	edge := func(from, to section.Point, within bool) {
		b := section.Boundary{From: from, To: to, Air: rvalue.FromCelsius(float64(10 * rng.IntN(3))), Film: rvalue.Resistance(0.05 + 0.1*rng.Float64())}
		switch rng.IntN(8) {
		case 0:
			b.Film = 0
		case 1, 2, 3:
			if !within {
				return // adiabatic
			}
			b = section.Boundary{From: from, To: to, Adiabatic: true}
		}
		s.Boundaries = append(s.Boundaries, b)
	}
	for l := range n + 1 {
		for i := 1; i <= n; i++ {
			if solid[i][l] != solid[i][l+1] {
				edge(at(lines[0][i-1], lines[1][l]), at(lines[0][i], lines[1][l]), l > 0 && l < n)
			}
			if solid[l][i] != solid[l+1][i] {
				edge(at(lines[0][l], lines[1][i-1]), at(lines[0][l], lines[1][i]), l > 0 && l < n)
			}
		}
	}
	return s
}
