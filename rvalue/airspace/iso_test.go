package airspace

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/floats/scalar"

	"github.com/coldseam/coldseam/rvalue"
)

// TestISOTable: all 24 cells of the standard's table at its printed digits.
func TestISOTable(t *testing.T) {
	const lastDigit = 0.005 // m²·K/W, half of the last printed digit
	cells := 0
	for _, r := range readCSV(t, "airspace_iso6946.csv") {
		for _, flow := range []string{"up", "horizontal", "down"} {
			s := Space{Thickness: rvalue.Length(num(t, r["thickness"])) * rvalue.Millimetre, Up: flow == "up"}
			if flow == "horizontal" {
				s.Tilt = 90
			}
			for _, dT := range []rvalue.TemperatureDifference{0, 2, 5} {
				got, err := s.Resistance(ISO6946, rvalue.FromCelsius(10), dT)
				if want := num(t, r[flow]); err != nil || !scalar.EqualWithinAbs(got.RSI(), want, lastDigit) {
					t.Errorf("%s mm, heat %s, %g K: %.4f, %v, want %.2f", r["thickness"], flow, dT.SI(), got.RSI(), err, want)
				}
			}
			cells++
		}
	}
	if cells != 24 {
		t.Errorf("%d cells, want 24", cells)
	}
}

// TestISOByHand: the formulas of the standard worked by hand, with hr0 at 10 °C,
// 5.149 W/(m²·K).
func TestISOByHand(t *testing.T) {
	const tolerance = 0.0005 // m²·K/W, half of the last digit given
	for _, row := range []struct {
		name  string
		space Space
		dT    rvalue.TemperatureDifference
		want  float64
	}{
		// One bright face, ε 0.05 and 0.9: E·hr0 = 0.0497·5.149 = 0.2560.
		{"5 mm bright", Space{Thickness: 0.005, E1: 0.05}, 1, 0.190},                            // 1/(5 + 0.2560)
		{"15 mm bright, up", Space{Thickness: 0.015, Up: true, E1: 0.05}, 1, 0.453},             // 1/(1.95 + 0.2560)
		{"15 mm bright, upright", Space{Thickness: 0.015, Tilt: 90, E2: 0.05}, 1, 0.520},        // 1/(0.025/0.015 + 0.2560)
		{"25 mm bright, upright", Space{Thickness: 0.025, Tilt: 90, E2: 0.05}, 1, 0.664},        // 1/(1.25 + 0.2560)
		{"50 mm bright, down", Space{Thickness: 0.05, E1: 0.05}, 1, 1.423 - 0.1},                // 1/(0.12·0.05^-0.44 + 0.2560)
		{"100 mm bright, down", Space{Thickness: 0.1, E1: 0.05}, 1, 1.705},                      // 1/(0.12·0.1^-0.44 + 0.2560)
		{"25 mm bright, upright, 20 K", Space{Thickness: 0.025, Tilt: 90, E1: 0.05}, 20, 0.447}, // 1/(0.73·20^(1/3) + 0.2560)
		{"25 mm bright, up, 20 K", Space{Thickness: 0.025, Up: true, E1: 0.05}, 20, 0.298},      // 1/(1.14·20^(1/3) + 0.2560)
		{"50 mm bright, down, 20 K", Space{Thickness: 0.05, E1: 0.05}, 20, 1.184},               // 1/(0.09·20^0.187·0.05^-0.44 + 0.2560)
		// E·hr0 = 0.8182·5.149 = 4.213, times (1 + √(1 + 1) − 1)/2 = 0.7071.
		{"void as wide as deep", Space{Thickness: 0.1, Width: 0.1, Tilt: 90}, 1, 0.236}, // 1/(1.25 + 2.979)
		{"void ten times as wide", Space{Thickness: 0.02, Width: 0.2, Tilt: 90}, 1, 0.183},
	} {
		got, err := row.space.Resistance(ISO6946, rvalue.FromCelsius(10), row.dT)
		if err != nil || !scalar.EqualWithinAbs(got.RSI(), row.want, tolerance) {
			t.Errorf("%s: %.4f, %v, want %.3f", row.name, got.RSI(), err, row.want)
		}
	}
}

// TestISOJoin: no step in the temperature difference, and the standard's own
// branches outside 5.0 to 5.1 K.
func TestISOJoin(t *testing.T) {
	for _, s := range []Space{{}, {Up: true}, {Tilt: 90}} {
		flow := &isoDown
		switch {
		case s.Up:
			flow = &isoUp
		case s.Tilt > 0:
			flow = &isoHorizontal
		}
		last := math.NaN()
		for dT := 0.0; dT < 40; dT += 0.001 {
			got := convectionISO(0.2, s.Tilt, s.Up, dT)
			want := flow.small
			if dT > 5 {
				want = flow.large * math.Pow(dT, flow.power)
			}
			want *= math.Pow(0.2, flow.depth)
			if (dT <= 5 || dT > 5.1) && !scalar.EqualWithinRel(got, want, 1e-12) {
				t.Fatalf("%+v, %.3f K: %v, want the standard's %v", s, dT, got, want)
			}
			if got < last || got > last*1.001 {
				t.Fatalf("%+v: a step or a fall at %.3f K, from %v to %v", s, dT, last, got)
			}
			last = got
		}
	}
}
