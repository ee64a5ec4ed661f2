package surface

import (
	"math"
	"testing"

	"github.com/coldseam/coldseam/rvalue"
	"gonum.org/v1/gonum/floats/scalar"
)

// rounding is what turning h·ft²·°F/Btu into SI and back may do to a printed
// resistance: nothing that anybody could print.
const rounding = 1e-12

// TestPublishedASHRAE: the printed resistances come back as printed.
func TestPublishedASHRAE(t *testing.T) {
	for _, row := range readCSV(t, "films_ashrae.csv") {
		var got rvalue.Resistance
		var err error
		if row["wind"] != "" {
			got, err = Outside(ASHRAE, rvalue.Speed(num(t, row["wind"]))*rvalue.MilePerHour)
		} else {
			got, err = Still(ASHRAE, num(t, row["tilt"]), row["flow"] == "up", num(t, row["emittance"]))
		}
		if err != nil {
			t.Errorf("%v: %v", row, err)
			continue
		}
		if want := num(t, row["r"]); !scalar.EqualWithinAbs(got.IP(), want, rounding) {
			t.Errorf("tilt %s, heat %s, emittance %s, wind %s mph: R = %.4f, want %s (%s)",
				row["tilt"], row["flow"], row["emittance"], row["wind"], got.IP(), row["r"], row["mark"])
		}
	}
}

// TestASHRAEIsConvectionAndRadiation: one convective coefficient a position and
// one radiative coefficient for all give every printed conductance, so that
// interpolation which is linear in emittance is right. A cell remembered wrong
// would break this.
func TestASHRAEIsConvectionAndRadiation(t *testing.T) {
	const (
		radiative = 1.022 // Btu/(h·ft²·°F): 4σT³ at 71 °F
		lastDigit = 0.005 // half of the last printed digit of h
	)
	hc := map[[2]string]float64{}
	n := 0
	for _, row := range readCSV(t, "films_ashrae.csv") {
		if row["wind"] != "" {
			continue
		}
		position := [2]string{row["tilt"], row["flow"]}
		h, r := num(t, row["h"]), num(t, row["r"])
		convective := h - num(t, row["emittance"])*radiative
		hc[position] += convective / 3
		n++
		// Both are rounded: 1.08 stands beside 0.92, as 1.083 and 0.923 would.
		if off := math.Abs(1/r - h); off > lastDigit+lastDigit/(r*r) {
			t.Errorf("%v: 1/%g = %.4f, want the %g printed beside it", position, r, 1/r, h)
		}
	}
	if n != 15 {
		t.Fatalf("%d cells, want 15", n)
	}
	for _, row := range readCSV(t, "films_ashrae.csv") {
		if row["wind"] != "" {
			continue
		}
		position := [2]string{row["tilt"], row["flow"]}
		// One printed digit and not half of one: hc itself was got from rounded cells.
		if got, want := hc[position]+num(t, row["emittance"])*radiative, num(t, row["h"]); math.Abs(got-want) > 2*lastDigit {
			t.Errorf("%v emittance %s: hc + ε·hr = %.4f, want %.2f", position, row["emittance"], got, want)
		}
	}
}

// TestPublishedISO: design values exactly, formula to the printed digits.
func TestPublishedISO(t *testing.T) {
	for _, row := range readCSV(t, "films_iso6946.csv") {
		want := num(t, row["r"])
		var got rvalue.Resistance
		var err error
		tolerance := rounding
		if row["side"] == "inside" {
			tilt := 0.0
			if row["flow"] == "horizontal" {
				tilt = 90
			}
			up := row["flow"] == "up"
			got, err = Still(ISO6946, tilt, up, 0)
			// A hair off the ordinary emittance answers the annex's formula, which
			// must round to the design value.
			byFormula, err := Still(ISO6946, tilt, up, 0.9001)
			if err != nil || !scalar.EqualWithinAbs(byFormula.RSI(), want, 0.005) {
				t.Errorf("heat %s by formula: %.4f, %v, want %.2f", row["flow"], byFormula.RSI(), err, want)
			}
		} else {
			got, err = Outside(ISO6946, rvalue.Speed(num(t, row["wind"])))
			if row["wind"] != "" {
				tolerance = 0.005 // half of the last printed digit
			}
		}
		if err != nil || !scalar.EqualWithinAbs(got.RSI(), want, tolerance) {
			t.Errorf("%s, heat %s, wind %s m/s: %.4f, %v, want %s (%s)", row["side"], row["flow"], row["wind"], got.RSI(), err, row["r"], row["mark"])
		}
	}
}
