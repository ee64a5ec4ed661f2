package surface

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/rvalue"
)

func mustStill(t *testing.T, set Set, tilt float64, up bool, e float64) float64 {
	t.Helper()
	r, err := Still(set, tilt, up, e)
	if err != nil {
		t.Fatal(err)
	}
	return r.RSI()
}

// TestStillIsSmooth: no jump with tilt, none at upright from up to down, and
// the other lean is the same.
func TestStillIsSmooth(t *testing.T) {
	const (
		step = 0.05  // degrees
		jump = 0.002 // of R; where the printed cells are steepest, bright and heat down, they change 0.12 % a step
	)
	for _, e := range []float64{0.02, 0.05, 0.1, 0.2, 0.5, 0.9, 1} {
		for _, up := range []bool{true, false} {
			for tilt := step; tilt <= 180; tilt += step {
				a, b := mustStill(t, ASHRAE, tilt-step, up, e), mustStill(t, ASHRAE, tilt, up, e)
				if e >= 0.05 && math.Abs(a/b-1) > jump {
					t.Errorf("emittance %g, up %v: R %.4f at %g° and %.4f at %g°", e, up, a, tilt-step, b, tilt)
				}
				if tilt <= 90 && up && b < a {
					t.Errorf("emittance %g, heat up: R falls from %g° to %g°", e, tilt-step, tilt)
				}
				if tilt <= 90 && !up && b > a {
					t.Errorf("emittance %g, heat down: R rises from %g° to %g°", e, tilt-step, tilt)
				}
				if other := mustStill(t, ASHRAE, 180-tilt, up, e); math.Abs(other-b) > 1e-12 {
					t.Errorf("emittance %g: %g° and %g° differ", e, tilt, 180-tilt)
				}
			}
		}
		up, down := mustStill(t, ASHRAE, 90, true, e), mustStill(t, ASHRAE, 90, false, e)
		if math.Abs(up-down) > 1e-12 {
			t.Errorf("emittance %g: an upright surface has an up (%g) and a down (%g)", e, up, down)
		}
	}
}

// TestStillFallsWithEmittance in both sets, at all tilts, but for ISO's step
// onto its rounded design value.
func TestStillFallsWithEmittance(t *testing.T) {
	for _, set := range []Set{ASHRAE, ISO6946} {
		for _, up := range []bool{true, false} {
			for tilt := 0.0; tilt <= 90; tilt += 7.5 {
				for e := 0.02; e <= 1; e += 0.01 {
					if set == ISO6946 && e > 0.88 {
						break
					}
					if mustStill(t, set, tilt, up, e) >= mustStill(t, set, tilt, up, e-0.01) {
						t.Errorf("%v, %g°, up %v: R does not fall at emittance %g", set, tilt, up, e)
					}
				}
			}
		}
	}
}

func TestOutsideFallsWithWind(t *testing.T) {
	for _, set := range []Set{ASHRAE, ISO6946} {
		last := math.Inf(1)
		for v := 0.25; v <= 75; v += 0.25 {
			r, err := Outside(set, rvalue.Speed(v))
			if err != nil || !(r.RSI() < last && r > 0) {
				t.Fatalf("%v at %g m/s: %v, %v after %g", set, v, r, err, last)
			}
			last = r.RSI()
		}
	}
}

func TestRefused(t *testing.T) {
	still := func(set Set, tilt, e float64) func() error {
		return func() error { _, err := Still(set, tilt, true, e); return err }
	}
	outside := func(set Set, v rvalue.Speed) func() error {
		return func() error { _, err := Outside(set, v); return err }
	}
	for name, row := range map[string]struct {
		call func() error
		want string
	}{
		"negative tilt":      {still(ASHRAE, -1, 0.9), "-1°"},
		"tilt over 180":      {still(ISO6946, 181, 0.9), "181°"},
		"tilt NaN":           {still(ASHRAE, math.NaN(), 0.9), "NaN"},
		"tilt Inf":           {still(ASHRAE, math.Inf(1), 0.9), "Inf"},
		"emittance over 1":   {still(ASHRAE, 0, 1.01), "1.01"},
		"negative emittance": {still(ISO6946, 0, -0.1), "-0.1"},
		"emittance NaN":      {still(ASHRAE, 0, math.NaN()), "NaN"},
		"unknown set":        {still(7, 0, 0.9), "set 7"},
		"wind of no set":     {outside(7, 1), "set 7"},
		"negative wind":      {outside(ASHRAE, -1), "-1 m/s"},
		"wind too strong":    {outside(ISO6946, 76), "76 m/s"},
		"wind NaN":           {outside(ASHRAE, rvalue.Speed(math.NaN())), "NaN"},
	} {
		err := row.call()
		if err == nil || !strings.HasPrefix(err.Error(), "surface: ") || !strings.Contains(err.Error(), row.want) || !strings.Contains(err.Error(), "use ") {
			t.Errorf("%s: error %v, want one that names %q and says what to use", name, err, row.want)
		}
	}
}

func TestSets(t *testing.T) {
	for _, s := range []Set{ASHRAE, ISO6946} {
		if got, err := ParseSet(s.String()); err != nil || got != s {
			t.Errorf("ParseSet(%q) = %v, %v", s.String(), got, err)
		}
	}
	for _, text := range []string{"iso6946", "ISO 6946", "iso-6946"} {
		if got, err := ParseSet(text); err != nil || got != ISO6946 {
			t.Errorf("ParseSet(%q) = %v, %v", text, got, err)
		}
	}
	if _, err := ParseSet("metric"); err == nil || !strings.Contains(err.Error(), `"metric"`) {
		t.Errorf("ParseSet(metric): error %v", err)
	}
	if got := Set(9).String(); got != "Set(9)" {
		t.Errorf("Set(9) prints %s", got)
	}
}

func TestDirectionOf(t *testing.T) {
	for _, row := range []struct {
		tilt float64
		up   bool
		want Direction
	}{
		{0, true, Up},
		{0, false, Down},
		{59.9, true, Up},
		{60, true, Horizontal},
		{90, false, Horizontal},
		{120, false, Horizontal},
		{121, false, Down},
		{180, true, Up},
	} {
		if got, err := DirectionOf(row.tilt, row.up); err != nil || got != row.want {
			t.Errorf("DirectionOf(%g, %v) = %v, %v, want %v", row.tilt, row.up, got, err, row.want)
		}
	}
}

func TestDirectionNames(t *testing.T) {
	got := fmt.Sprint(Up, ", ", Horizontal, ", ", Down, ", ", Direction(5))
	if want := "up, horizontal, down, Direction(5)"; got != want {
		t.Errorf("directions print %q, want %q", got, want)
	}
	if _, err := DirectionOf(math.NaN(), true); err == nil {
		t.Error("a tilt of NaN has a direction")
	}
}

// FuzzParseSet: what is read prints as something that reads the same.
func FuzzParseSet(f *testing.F) {
	for _, s := range []string{"ashrae", "ISO 6946", "iso-6946", "metric", ""} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		set, err := ParseSet(s)
		if err != nil {
			return
		}
		if again, err := ParseSet(set.String()); err != nil || again != set {
			t.Errorf("ParseSet(%q) = %v, which reads back as %v, %v", s, set, again, err)
		}
	})
}

func BenchmarkStill(b *testing.B) {
	b.ReportAllocs()
	var r rvalue.Resistance
	for b.Loop() {
		r, _ = Still(ASHRAE, 30, true, 0.3)
	}
	sink = r
}

var sink rvalue.Resistance

// The films of a wood-framed wall in winter.
func Example() {
	inside, err := Still(ASHRAE, 90, false, 0)
	if err != nil {
		fmt.Println(err)
		return
	}
	outside, err := Outside(ASHRAE, 0)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("inside R-%.2f, outside R-%.2f\n", inside.IP(), outside.IP())
	// Output: inside R-0.68, outside R-0.17
}

// A 30° roof with bright foil on its underside, heat flowing down in summer.
func ExampleStill() {
	r, err := Still(ASHRAE, 30, false, 0.05)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("R-%.1f\n", r.IP())
	// Output: R-2.7
}

// The same wall by the international standard, on a windy site.
func ExampleOutside() {
	usual, err := Outside(ISO6946, 0)
	if err != nil {
		fmt.Println(err)
		return
	}
	windy, err := Outside(ISO6946, 10*rvalue.MetrePerSecond)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.2f, %.2f m²·K/W\n", usual.RSI(), windy.RSI())
	// Output: 0.04, 0.02 m²·K/W
}
