package airspace

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"gonum.org/v1/gonum/floats/scalar"

	"github.com/coldseam/coldseam/rvalue"
)

func mustR(t *testing.T, s Space, m Method, mean rvalue.Temperature, dT rvalue.TemperatureDifference) float64 {
	t.Helper()
	r, err := s.Resistance(m, mean, dT)
	if err != nil {
		t.Fatalf("%+v, %v, %v, %v: %v", s, m, mean, dT, err)
	}
	return r.RSI()
}

// draw returns spaces and temperatures over the whole allowed range.
func draw(r *rand.Rand) (s Space, mean rvalue.Temperature, dT rvalue.TemperatureDifference) {
	s = Space{
		Thickness: rvalue.Length(0.001 + 0.298*r.Float64()*r.Float64()),
		Tilt:      180 * r.Float64(),
		Up:        r.IntN(2) == 0,
		E1:        0.02 + 0.97*r.Float64(),
		E2:        0.02 + 0.97*r.Float64(),
	}
	if r.IntN(3) == 0 {
		s.Width = rvalue.Length(0.01 + r.Float64())
	}
	return s, rvalue.FromCelsius(-60 + 160*r.Float64()), rvalue.TemperatureDifference(149 * r.Float64())
}

// TestLaws: what holds for every air space, by either method.
func TestLaws(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	const rounding = 1e-12
	for range 20000 {
		s, mean, dT := draw(r)
		for _, m := range []Method{Correlated, ISO6946} {
			at := mustR(t, s, m, mean, dT)
			fail := func(law string, s2 Space, r2 float64) {
				t.Errorf("%s: %v, %+v %.4f against %+v %.4f at %.1f °C, %.1f K", law, m, s, at, s2, r2, mean.SI(), dT.SI())
			}
			if !(at > 0) || math.IsInf(at, 0) {
				fail("positive and finite", s, at)
			}
			// The hotter and the colder face may change places.
			s2 := s
			s2.E1, s2.E2 = s.E2, s.E1
			if r2 := mustR(t, s2, m, mean, dT); !scalar.EqualWithinRel(at, r2, rounding) {
				fail("symmetrical in the faces", s2, r2)
			}
			s2 = s
			s2.Tilt = 180 - s.Tilt
			if r2 := mustR(t, s2, m, mean, dT); !scalar.EqualWithinRel(at, r2, 1e-9) {
				fail("symmetrical about upright", s2, r2)
			}
			s2 = s
			s2.E1 += 0.01
			if r2 := mustR(t, s2, m, mean, dT); r2 >= at {
				fail("a duller face resists less", s2, r2)
			}
			if r2 := mustR(t, s, m, mean, dT+1); r2 > at*(1+rounding) {
				fail("a greater difference resists less", s, r2)
			}
			// Still air, wide, is the best air can do: by the conductivity of air, which
			// the other method takes as 0.025 W/(m·K) at any temperature.
			k, _ := air(mean.Kelvins())
			if m == ISO6946 {
				k = isoConduction
			}
			d := min(s.Thickness.SI(), 0.3)
			if best := 1 / (k/d + radiation(&s, m, mean.Kelvins())); at > best*(1+rounding) {
				fail("no better than still air", s, best)
			}
		}
	}
}

// TestSmooth: the default method has no jump in thickness, tilt, width,
// difference or mean temperature, and the upright space has no up. The steps are
// so small that a slope is far below the bound.
func TestSmooth(t *testing.T) {
	const (
		jump = 1e-4
		tiny = 1e-5
	)
	for _, base := range []Space{{E1: 0.03}, {}, {E1: 0.05, Width: 0.4}} {
		for _, up := range []bool{true, false} {
			for _, dT := range []rvalue.TemperatureDifference{0, 1e-6, 1, 5, 17} {
				mean := rvalue.FromCelsius(5)
				s := base
				s.Up = up
				same := func(what string, a, b float64) {
					if math.Abs(a/b-1) > jump {
						t.Errorf("%s: %+v at %g K jumps from %.6f to %.6f", what, s, dT.SI(), a, b)
					}
				}
				for mm := 1.0; mm < 300; mm += 0.5 {
					s.Thickness = rvalue.Length(mm) * rvalue.Millimetre
					for tilt := 0.0; tilt <= 180-tiny; tilt += 7.5 {
						s.Tilt = tilt
						at := mustR(t, s, Correlated, mean, dT)
						s2 := s
						s2.Tilt += tiny
						same("tilt", at, mustR(t, s2, Correlated, mean, dT))
						s2 = s
						s2.Thickness *= 1 + tiny
						same("thickness", at, mustR(t, s2, Correlated, mean, dT))
						same("difference", at, mustR(t, s, Correlated, mean, dT+tiny))
					}
				}
				s.Thickness, s.Tilt = 0.09, 90
				s2 := s
				s2.Up = !up
				same("upright", mustR(t, s, Correlated, mean, dT), mustR(t, s2, Correlated, mean, dT))
			}
		}
	}
}

// TestSlopes: half a degree of tilt or a tenth of a millimetre changes R by at
// most this much, in spaces of 10 mm and more and differences up to 20 K.
func TestSlopes(t *testing.T) {
	const (
		byThickness = 0.010 // thin spaces, R as good as proportional to the thickness
		byTilt      = 0.010
		byTiltDown  = 0.036 // bright, 3.5 in, near level, heat down: a little tilt lets the air run, Arnold's sine
	)
	for _, e := range []float64{0.03, 0.2, 0.9} {
		for _, up := range []bool{true, false} {
			for _, dT := range []rvalue.TemperatureDifference{1, 5, 20} {
				for mm := 10.0; mm <= 290; mm += 2.5 {
					for tilt := 0.0; tilt < 90; tilt += 0.5 {
						s := Space{Thickness: rvalue.Length(mm) * rvalue.Millimetre, Tilt: tilt, Up: up, E1: e}
						at := mustR(t, s, Correlated, rvalue.FromCelsius(10), dT)
						s2 := s
						s2.Thickness += 0.1 * rvalue.Millimetre
						if r2 := mustR(t, s2, Correlated, rvalue.FromCelsius(10), dT); math.Abs(r2/at-1) > byThickness {
							t.Errorf("%+v at %g K: %.4f, with 0.1 mm more %.4f", s, dT.SI(), at, r2)
						}
						s2 = s
						s2.Tilt += 0.5
						bound := byTilt
						if !up && tilt < 45 {
							bound = byTiltDown
						}
						if r2 := mustR(t, s2, Correlated, rvalue.FromCelsius(10), dT); math.Abs(r2/at-1) > bound {
							t.Errorf("%+v at %g K: %.4f, with 0.5° more %.4f", s, dT.SI(), at, r2)
						}
					}
				}
			}
		}
	}
}

// TestTiltOrder: the more the heat has to go down, the better the space resists.
// Not asked of the obliquely upward and the level space beyond the fitted range.
func TestTiltOrder(t *testing.T) {
	for _, mean := range []float64{-45, 10, 32} {
		for _, dT := range []rvalue.TemperatureDifference{2, 5, 17} {
			for mm := 5.0; mm <= 89; mm++ {
				last := 0.0
				for angle := 0.0; angle <= 180; angle += 2.5 {
					s := Space{Thickness: rvalue.Length(mm) * rvalue.Millimetre, Tilt: min(angle, 180-angle), Up: angle < 90, E1: 0.03}
					at := mustR(t, s, Correlated, rvalue.FromCelsius(mean), dT)
					if at < last*(1-0.004) { // curves of still air fitted apart differ by 0.4 %
						t.Errorf("%g mm, %g °C, %g K: R falls from %.4f to %.4f at %g° from heat up", mm, mean, dT.SI(), last, at, angle)
					}
					last = at
				}
			}
		}
	}
}

// TestCosineOfTilt: between the level and the 45° space, going with the cosine of
// the tilt follows the published correlation for inclined layers.
func TestCosineOfTilt(t *testing.T) {
	for _, ra := range []float64{1e4, 3e4, 1e5, 3e5, 1e6} {
		for _, tilt := range []float64{15, 30} {
			share := (1 - math.Cos(tilt*math.Pi/180)) / (1 - math.Sqrt2/2)
			got := (1-share)*hollands(ra, 0) + share*hollands(ra, 45)
			if want := hollands(ra, tilt); !scalar.EqualWithinRel(got, want, 0.02) {
				t.Errorf("Ra %g at %g°: between its own ends %.3f, the correlation %.3f", ra, tilt, got, want)
			}
		}
	}
}

func TestEffectiveEmittance(t *testing.T) {
	for _, row := range []struct {
		e1, e2, want float64
	}{
		{0.9, 0.9, 0.82},  // handbook: both faces ordinary
		{0, 0, 0.82},      // the same, not given
		{0.05, 0.9, 0.05}, // one bright foil
		{0.05, 0.05, 0.03},
	} {
		if got := EffectiveEmittance(row.e1, row.e2); !scalar.EqualWithinAbs(got, row.want, 0.005) {
			t.Errorf("EffectiveEmittance(%g, %g) = %.4f, want %.2f", row.e1, row.e2, got, row.want)
		}
	}
	for _, bad := range []float64{-0.1, 1.1, math.NaN(), math.Inf(1)} {
		if got := EffectiveEmittance(bad, 0.9); !math.IsNaN(got) {
			t.Errorf("EffectiveEmittance(%g, 0.9) = %g, want NaN", bad, got)
		}
	}
}

// TestAir: the properties of dry air in common tables (from memory), which are
// at 1 bar: k 0.0263 W/(m·K), ν 15.89e-6 m²/s, α 22.5e-6 m²/s at 300 K, and
// k 0.0223, ν 11.44e-6, α 15.9e-6 at 250 K.
func TestAir(t *testing.T) {
	const atmosphere = 1.01325 // bar; ν and α go with its inverse
	for _, row := range []struct{ t, k, nu, alpha float64 }{
		{300, 0.0263, 15.89e-6, 22.5e-6},
		{250, 0.0223, 11.44e-6, 15.9e-6},
	} {
		k, ra := air(row.t)
		if !scalar.EqualWithinRel(k, row.k, 0.01) {
			t.Errorf("k = %.5f at %g K, want %g", k, row.t, row.k)
		}
		if want := 9.81 / row.t / (row.nu * row.alpha) * atmosphere * atmosphere; !scalar.EqualWithinRel(ra, want, 0.02) {
			t.Errorf("Ra = %.4g per m³·K at %g K, want %.4g", ra, row.t, want)
		}
	}
}

func TestRefused(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	good := Space{Thickness: 0.02, Tilt: 90}
	ten := rvalue.FromCelsius(10)
	with := func(f func(*Space)) Space { s := good; f(&s); return s }
	for name, row := range map[string]struct {
		space  Space
		method Method
		mean   rvalue.Temperature
		dT     rvalue.TemperatureDifference
		want   string
	}{
		"no thickness":       {Space{}, 0, ten, 5, "a thickness of 0 mm"},
		"negative thickness": {with(func(s *Space) { s.Thickness = -0.01 }), 0, ten, 5, "-10 mm"},
		"thickness NaN":      {with(func(s *Space) { s.Thickness = rvalue.Length(nan) }), 0, ten, 5, "NaN"},
		"too thick":          {with(func(s *Space) { s.Thickness = 0.31 }), 1, ten, 5, "310 mm"},
		"tilt under 0":       {with(func(s *Space) { s.Tilt = -1 }), 0, ten, 5, "-1°"},
		"tilt over 180":      {with(func(s *Space) { s.Tilt = 181 }), 0, ten, 5, "181°"},
		"tilt NaN":           {with(func(s *Space) { s.Tilt = nan }), 0, ten, 5, "NaN"},
		"negative width":     {with(func(s *Space) { s.Width = -1 }), 0, ten, 5, "-1000 mm"},
		"width NaN":          {with(func(s *Space) { s.Width = rvalue.Length(nan) }), 0, ten, 5, "NaN"},
		"width infinite":     {with(func(s *Space) { s.Width = rvalue.Length(inf) }), 0, ten, 5, "Inf"},
		"emittance over 1":   {with(func(s *Space) { s.E1 = 1.2 }), 0, ten, 5, "1.2"},
		"negative emittance": {with(func(s *Space) { s.E2 = -0.2 }), 0, ten, 5, "-0.2"},
		"emittance NaN":      {with(func(s *Space) { s.E2 = nan }), 0, ten, 5, "NaN"},
		"too cold":           {good, 0, rvalue.FromCelsius(-61), 5, "-61 °C"},
		"too hot":            {good, 0, rvalue.FromCelsius(101), 5, "101 °C"},
		"mean not given":     {good, 0, 0, 5, "-273.1 °C"},
		"mean NaN":           {good, 0, rvalue.Temperature(nan), 5, "NaN"},
		"negative dT":        {good, 0, ten, -5, "-5 K"},
		"dT too great":       {good, 0, ten, 151, "151 K"},
		"dT NaN":             {good, 1, ten, rvalue.TemperatureDifference(nan), "NaN"},
		"unknown method":     {good, 2, ten, 5, "method 2"},
	} {
		_, err := row.space.Resistance(row.method, row.mean, row.dT)
		if err == nil || !strings.HasPrefix(err.Error(), "airspace: ") || !strings.Contains(err.Error(), row.want) || !strings.Contains(err.Error(), "use ") {
			t.Errorf("%s: error %v, want one that says %q and what to use", name, err, row.want)
		}
	}
}

func TestMethodNames(t *testing.T) {
	got := fmt.Sprint(Correlated, ", ", ISO6946, ", ", Method(5))
	if want := "correlated, ISO 6946, Method(5)"; got != want {
		t.Errorf("methods print %q, want %q", got, want)
	}
}

var sink rvalue.Resistance

func BenchmarkResistance(b *testing.B) {
	mean := rvalue.FromCelsius(10)
	for _, row := range []struct {
		name   string
		method Method
		space  Space
	}{
		{"upright", Correlated, Space{Thickness: 0.04, Tilt: 90, E1: 0.05}},
		{"tilted", Correlated, Space{Thickness: 0.04, Tilt: 30, Up: true, E1: 0.05}},
		{"ISO6946", ISO6946, Space{Thickness: 0.04, E1: 0.05}},
	} {
		b.Run(row.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				sink, _ = row.space.Resistance(row.method, mean, 8)
			}
		})
	}
}
