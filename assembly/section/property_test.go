package section_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/assembly/section"
	"github.com/coldseam/coldseam/rvalue"
)

const (
	rounds = 500 // random sections
	// rounding is the slack for what is equal in exact arithmetic.
	rounding = 1e-9
	// loose is the tolerance that the random sections are solved to: the laws
	// hold for the brackets, whatever their width.
	loose = 1e-2
)

// grid is a random wall: rows of cells from the warm side (y = 0) to the cold one.
type grid struct {
	widths, heights []float64
	k               [][]float64 // by row and column
	rsi, rse        float64
}

func randomGrid(rng *rand.Rand) grid {
	size := func() float64 { return math.Exp(math.Log(0.003) + rng.Float64()*math.Log(100)) } // 3 mm to 0.3 m
	g := grid{rsi: 0.05 + 0.2*rng.Float64(), rse: 0.02 + 0.1*rng.Float64()}
	g.widths, g.heights = make([]float64, 1+rng.IntN(3)), make([]float64, 1+rng.IntN(3))
	for i := range g.widths {
		g.widths[i] = size()
	}
	for j := range g.heights {
		g.heights[j] = size()
		row := make([]float64, len(g.widths))
		for i := range row {
			row[i] = math.Exp(math.Log(0.02) + rng.Float64()*math.Log(1e3)) // 0.02 to 20 W/(m·K)
		}
		g.k = append(g.k, row)
	}
	return g
}

func sum(v []float64) (s float64) {
	for _, x := range v {
		s += x
	}
	return s
}

// section lays the grid out; place maps a point of it.
func (g grid) section(place func(x, y float64) section.Point) section.Section {
	var s section.Section
	y := 0.0
	for j, h := range g.heights {
		x := 0.0
		for i, w := range g.widths {
			s.Pieces = append(s.Pieces, section.Piece{From: place(x, y), To: place(x+w, y+h), Conductivity: rvalue.Conductivity(g.k[j][i])})
			x += w
		}
		y += h
	}
	width := sum(g.widths)
	s.Boundaries = []section.Boundary{
		{Name: "warm", From: place(0, 0), To: place(width, 0), Air: rvalue.FromCelsius(20), Film: rvalue.Resistance(g.rsi)},
		{Name: "cold", From: place(0, y), To: place(width, y), Air: rvalue.FromCelsius(-5), Film: rvalue.Resistance(g.rse)},
	}
	return s
}

// assembly is the same wall for the hand methods, its columns in line.
func (g grid) assembly() assembly.Assembly {
	a := assembly.Assembly{Layers: []assembly.Layer{assembly.Plain("inside", rvalue.Resistance(g.rsi))}}
	for j, h := range g.heights {
		l := assembly.Layer{Line: 1}
		for i, w := range g.widths {
			l.Shares = append(l.Shares, assembly.Share{Fraction: w / sum(g.widths), R: rvalue.Resistance(h / g.k[j][i])})
		}
		a.Layers = append(a.Layers, l)
	}
	a.Layers = append(a.Layers, assembly.Plain("outside", rvalue.Resistance(g.rse)))
	return a
}

// scaled is the grid with conductivities c times as large; its lengths are up to
// the place.
func (g grid) scaled(c float64) grid {
	k := make([][]float64, len(g.k))
	for j, row := range g.k {
		for _, v := range row {
			k[j] = append(k[j], c*v)
		}
	}
	g.k = k
	return g
}

// solve solves the grid, placed on the paper. The few sections whose materials
// meet like the fields of a chessboard would take long; they are cut short, their
// brackets hold all the same.
func (g grid) solve(t *testing.T, place func(x, y float64) section.Point) *section.Result {
	return solve(t, g.section(place), section.Options{Tolerance: loose, Surface: loose, Unknowns: 3000})
}

// agree reports whether two brackets have a value in common, the first one
// scaled, and, if both were refined to the end, whether their means, which are
// far better than the bounds, agree too.
func agree(a, b *section.Result, scale float64) bool {
	if a.Low*scale > b.High || b.Low > a.High*scale {
		return false
	}
	return a.Remarks != nil || b.Remarks != nil || math.Abs(a.Heat*scale-b.Heat) <= loose/4*b.Heat
}

// atMost reports whether a bracket may lie below or at a value, the same way.
func atMost(a *section.Result, most float64) bool {
	return a.Low <= most*(1+rounding) && (a.Remarks != nil || a.Heat <= most*(1+loose/4))
}

// atLeast reports whether a bracket may lie above or at a value, the same way.
func atLeast(a *section.Result, least float64) bool {
	return a.High >= least*(1-rounding) && (a.Remarks != nil || a.Heat >= least*(1-loose/4))
}

// TestLaws holds random sections against what is known of them all.
func TestLaws(t *testing.T) {
	const balance = 1e-9 // of the heat flow
	rng := rand.New(rand.NewPCG(1926, 10))
	refined := 0
	for range rounds {
		g := randomGrid(rng)
		r := g.solve(t, at)
		if r.Remarks == nil {
			refined++
		}

		// Isothermal planes ≤ R ≤ parallel path. Both hand methods are admissible
		// fields of the two problems, so that it is a theorem.
		a := g.assembly()
		area, dT := sum(g.widths), 25.0
		most, least := area*dT/a.IsothermalPlanes().SI(), area*dT/a.ParallelPath().SI()
		if !atMost(r, most) || !atLeast(r, least) {
			t.Errorf("%v to %v W/m, isothermal planes %v, parallel path %v", r.Low, r.High, most, least)
		}

		// What enters leaves, and no surface is colder or warmer than the air
		// allows, the error of the temperatures apart.
		if r.Balance > balance {
			t.Errorf("%v of the heat is missing", r.Balance)
		}
		for _, f := range r.Flows {
			if cold, warm := f.Coldest.Temperature.Celsius(), f.Warmest.Temperature.Celsius(); cold < -5-loose*dT || warm > 20+loose*dT || cold > warm {
				t.Errorf("%s from %v to %v °C between air of -5 and 20 °C", f.Name, cold, warm)
			}
		}

		// How a section lies on the paper changes nothing, and with all lengths
		// and conductivities c times as large, U is the same.
		c := math.Exp(4*rng.Float64() - 2)
		dx, dy := 10*rng.Float64(), 10*rng.Float64()
		place := []func(x, y float64) section.Point{
			func(x, y float64) section.Point { return at(c*x+dx, c*y+dy) },
			func(x, y float64) section.Point { return at(-c*x, c*y) },
			func(x, y float64) section.Point { return at(-c*y, c*x) },
			func(x, y float64) section.Point { return at(-c*x, -c*y) },
		}[rng.IntN(4)]
		if o := g.scaled(c).solve(t, place); !agree(r, o, c) {
			t.Errorf("%v to %v W/m became %v to %v when laid otherwise and scaled by %v", r.Low, r.High, o.Low, o.High, c)
		}

		// A better insulator anywhere, or a stiller surface, never lets more heat
		// through.
		better := g
		if rng.IntN(2) == 0 {
			better.k = append([][]float64(nil), g.k...)
			j, i := rng.IntN(len(g.heights)), rng.IntN(len(g.widths))
			better.k[j] = append([]float64(nil), g.k[j]...)
			better.k[j][i] *= 0.1 + 0.8*rng.Float64()
		} else {
			better.rsi *= 1.5
		}
		if o := better.solve(t, at); o.Low > r.High || r.Remarks == nil && !atMost(o, r.Heat) {
			t.Errorf("%v to %v W/m became %v to %v with less conductance", r.Low, r.High, o.Low, o.High)
		}
		if t.Failed() {
			t.Fatalf("with %+v", g)
		}
	}
	if refined < rounds*9/10 {
		t.Errorf("only %d of %d sections were refined to the end", refined, rounds)
	}
}
