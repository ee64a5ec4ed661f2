package section_test

import (
	"testing"

	"github.com/coldseam/coldseam/assembly/envelope"
	"github.com/coldseam/coldseam/assembly/section"
	"github.com/coldseam/coldseam/rvalue"
)

// A long floor on the ground, half of it drawn with 20 m of soil below and beside it
// (ISO 10211, clause on calculations in the ground: 2.5 times its width), against the
// U of ISO 13370's formulas, from memory, as package envelope has them. Those are fits to
// such calculations: the standard's annexes put them within some 10 %, and here they
// come out within agree of what is solved.
func TestFloorOnTheGround(t *testing.T) {
	const (
		wall   = 0.3 * rvalue.Metre
		far    = 20 * rvalue.Metre
		inside = 0.17 * rvalue.RSI // heat flowing down
		agree  = 0.06
	)
	worst := 0.0
	for _, soil := range []rvalue.Conductivity{envelope.ClayOrSilt, envelope.SandOrGravel, envelope.Rock} {
		for _, width := range []rvalue.Length{4, 8, 16} {
			for _, floor := range []rvalue.Resistance{0, 0.5, 2.5} {
				s := section.Section{
					Pieces: []section.Piece{{Name: "soil", From: section.Point{X: -width / 2, Y: -far - width}, To: section.Point{X: wall + far + width}, Conductivity: soil}},
					Boundaries: []section.Boundary{
						{Name: "floor", From: section.Point{X: -width / 2}, Air: rvalue.FromCelsius(20), Film: inside + floor},
						{Name: "ground", From: section.Point{X: wall}, To: section.Point{X: wall + far + width}, Air: rvalue.FromCelsius(0), Film: 0.04 * rvalue.RSI},
					},
				}
				r, err := s.Solve(section.Options{Tolerance: 1e-3, Surface: 1})
				if err != nil {
					t.Fatal(err)
				}
				// Of a long floor area over half the perimeter is its width.
				g := envelope.GroundFloor{Area: width.Times(100 * width), Perimeter: 200 * width, Wall: wall, Soil: soil, Floor: floor}
				want, err := g.U()
				if err != nil {
					t.Fatal(err)
				}
				off := float64(r.U(width/2)/want) - 1
				t.Logf("soil %v, %v wide, floor %v: solved %.4f, ISO 13370 %.4f W/(m²·K), %+.1f %%", soil, width, floor, r.U(width/2).SI(), want.SI(), 100*off)
				worst = max(worst, off, -off)
			}
		}
	}
	if worst > agree {
		t.Errorf("solved and ISO 13370 differ by %.1f %%", 100*worst)
	}
}
