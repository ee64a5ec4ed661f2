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
	rounds = 500 // random sections per law
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

// each calls law with random grids, the same ones on every run.
func each(t *testing.T, law func(rng *rand.Rand, g grid)) {
	t.Helper()
	rng := rand.New(rand.NewPCG(1926, 10))
	for range rounds {
		g := randomGrid(rng)
		law(rng, g)
		if t.Failed() {
			t.Fatalf("with %+v", g)
		}
	}
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

func (g grid) solve(t *testing.T) *section.Result {
	return solve(t, g.section(at), section.Options{Tolerance: loose, Surface: loose})
}

// overlap reports whether two brackets have a value in common, one scaled.
func overlap(a, b *section.Result, scale float64) bool {
	return a.Low*scale <= b.High && b.Low <= a.High*scale
}

// TestBounds: isothermal planes ≤ R ≤ parallel path. Both hand methods are
// admissible fields of the two problems, so that it is a theorem. What enters
// leaves, and no surface is colder or warmer than the air allows.
func TestBounds(t *testing.T) {
	const (
		rounding = 1e-9
		balance  = 1e-9 // of the heat flow
	)
	each(t, func(_ *rand.Rand, g grid) {
		r := g.solve(t)
		a := g.assembly()
		area, dT := sum(g.widths), 25.0
		most, least := area*dT/a.IsothermalPlanes().SI(), area*dT/a.ParallelPath().SI()
		if r.Low > most*(1+rounding) || r.High < least*(1-rounding) {
			t.Errorf("%v to %v W/m, isothermal planes %v, parallel path %v", r.Low, r.High, most, least)
		}
		// The mean of the bounds is far better than they are.
		if r.Heat > most*(1+loose/4) || r.Heat < least*(1-loose/4) {
			t.Errorf("%v W/m, isothermal planes %v, parallel path %v", r.Heat, most, least)
		}
		if r.Balance > balance {
			t.Errorf("%v of the heat is missing", r.Balance)
		}
		for _, f := range r.Flows {
			if cold, warm := f.Coldest.Temperature.Celsius(), f.Warmest.Temperature.Celsius(); cold < -5-loose*25 || warm > 20+loose*25 || cold > warm {
				t.Errorf("%s from %v to %v °C between air of -5 and 20 °C", f.Name, cold, warm)
			}
		}
	})
}

// TestMirroredAndTurned: how a section lies on the paper changes nothing.
func TestMirroredAndTurned(t *testing.T) {
	each(t, func(rng *rand.Rand, g grid) {
		r := g.solve(t)
		dx, dy := 10*rng.Float64(), 10*rng.Float64()
		places := []func(x, y float64) section.Point{
			func(x, y float64) section.Point { return at(x+dx, y+dy) },
			func(x, y float64) section.Point { return at(-x, y) },
			func(x, y float64) section.Point { return at(-y, x) },
			func(x, y float64) section.Point { return at(-x, -y) },
		}
		n := rng.IntN(len(places))
		o := solve(t, g.section(places[n]), section.Options{Tolerance: loose, Surface: loose})
		if !overlap(r, o, 1) || math.Abs(o.Heat-r.Heat) > loose/4*r.Heat {
			t.Errorf("placed in way %d: %v W/m, was %v", n, o.Heat, r.Heat)
		}
	})
}

// TestScaled: with all lengths and conductivities twice as large, U is the same.
func TestScaled(t *testing.T) {
	each(t, func(rng *rand.Rand, g grid) {
		r := g.solve(t)
		c := math.Exp(4*rng.Float64() - 2)
		h := grid{rsi: g.rsi, rse: g.rse}
		for _, w := range g.widths {
			h.widths = append(h.widths, c*w)
		}
		for j, y := range g.heights {
			h.heights = append(h.heights, c*y)
			row := make([]float64, len(g.k[j]))
			for i, k := range g.k[j] {
				row[i] = c * k
			}
			h.k = append(h.k, row)
		}
		o := h.solve(t)
		if u, v := r.U(rvalue.Length(sum(g.widths))), o.U(rvalue.Length(sum(h.widths))); !overlap(r, o, c) || math.Abs(float64(u-v)) > loose/4*float64(u) {
			t.Errorf("%v became %v when scaled by %v", u, v, c)
		}
	})
}

// TestMonotone: a better insulator anywhere, or a stiller surface, never lets
// more heat through.
func TestMonotone(t *testing.T) {
	each(t, func(rng *rand.Rand, g grid) {
		before := g.solve(t)
		j, i := rng.IntN(len(g.heights)), rng.IntN(len(g.widths))
		g.k[j][i] *= 0.1 + 0.8*rng.Float64()
		better := g.solve(t)
		if better.Low > before.High || better.Heat > before.Heat*(1+loose/4) {
			t.Errorf("%v W/m became %v with less conductivity", before.Heat, better.Heat)
		}
		g.rsi *= 1.5
		if still := g.solve(t); still.Low > better.High || still.Heat > better.Heat*(1+loose/4) {
			t.Errorf("%v W/m became %v with a larger film", better.Heat, still.Heat)
		}
	})
}
