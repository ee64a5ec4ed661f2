package airspace

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/floats/scalar"

	"github.com/coldseam/coldseam/rvalue"
)

const mm2 = 1e-6 * rvalue.SquareMetre

// TestVentilationOf: ISO 6946, clause on ventilated air layers, from memory.
func TestVentilationOf(t *testing.T) {
	for _, row := range []struct {
		openings rvalue.Area
		want     Ventilation
	}{
		{0, Unventilated},
		{499 * mm2, Unventilated},
		{500 * mm2, Unventilated},
		{501 * mm2, SlightlyVentilated},
		{1499 * mm2, SlightlyVentilated},
		{1500 * mm2, WellVentilated},
		{1501 * mm2, WellVentilated},
		{1, WellVentilated},
	} {
		if got, err := VentilationOf(row.openings); err != nil || got != row.want {
			t.Errorf("VentilationOf(%g mm²) = %v, %v, want %v", row.openings/mm2, got, err, row.want)
		}
	}
	got := fmt.Sprint(Unventilated, ", ", SlightlyVentilated, ", ", WellVentilated, ", ", Ventilation(9))
	if want := "unventilated, slightly ventilated, well ventilated, Ventilation(9)"; got != want {
		t.Errorf("they print %q, want %q", got, want)
	}
}

// TestPartlyVentilated: straight between the two totals, flat beyond them.
func TestPartlyVentilated(t *testing.T) {
	for _, row := range []struct {
		openings rvalue.Area
		want     float64
	}{
		{0, 3},
		{500 * mm2, 3},
		{750 * mm2, 2.75}, // 0.75·3 + 0.25·2
		{1000 * mm2, 2.5},
		{1500 * mm2, 2},
		{9000 * mm2, 2},
	} {
		if got, err := PartlyVentilated(3, 2, row.openings); err != nil || !scalar.EqualWithinAbs(got.RSI(), row.want, 1e-12) {
			t.Errorf("PartlyVentilated(3, 2, %g mm²) = %v, %v, want %g", row.openings/mm2, got.RSI(), err, row.want)
		}
	}
}

func TestVentilationRefused(t *testing.T) {
	nan := math.NaN()
	for name, row := range map[string]struct {
		unventilated, well rvalue.Resistance
		openings           rvalue.Area
		want               string
	}{
		"negative openings":      {3, 2, -1, "-1 m²"},
		"openings NaN":           {3, 2, rvalue.Area(nan), "NaN"},
		"openings infinite":      {3, 2, rvalue.Area(math.Inf(1)), "Inf"},
		"ventilation that helps": {2, 3, 0, "3 well ventilated"},
		"no resistance":          {2, 0, 0, "0 well ventilated"},
		"total NaN":              {rvalue.Resistance(nan), 2, 0, "NaN"},
		"total infinite":         {rvalue.Resistance(math.Inf(1)), 2, 0, "Inf"},
	} {
		_, err := PartlyVentilated(row.unventilated, row.well, row.openings)
		if err == nil || !strings.HasPrefix(err.Error(), "airspace: ") || !strings.Contains(err.Error(), row.want) || !strings.Contains(err.Error(), "use ") {
			t.Errorf("%s: error %v, want one that says %q and what to use", name, err, row.want)
		}
	}
}
