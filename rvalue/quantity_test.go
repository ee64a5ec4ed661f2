package rvalue_test

import (
	"math"
	"testing"

	"github.com/coldseam/coldseam/rvalue"
)

// TestFactors holds the unit constants against published conversion factors,
// to half of the last digit that is printed of them.
func TestFactors(t *testing.T) {
	const (
		nist   = "NIST SP 811, Appendix B"
		memory = "NIST SP 811, Appendix B, from memory"
	)
	for _, c := range []struct {
		name, source    string
		got, want, last float64
	}{
		{"1 Btu/(h·ft²·°F) in W/(m²·K)", nist, rvalue.UIP.SI(), 5.678263, 1e-6},
		{"1 h·ft²·°F/Btu in m²·K/W", memory, rvalue.RIP.SI(), 0.1761102, 1e-7},
		{"1 Btu·in/(h·ft²·°F) in W/(m·K)", nist, rvalue.BtuInchPerHourFoot2F.SI(), 0.1442279, 1e-7},
		{"1 Btu/(h·ft·°F) in W/(m·K)", memory, rvalue.PsiIP.SI(), 1.730735, 1e-6},
		{"1 Btu/(h·°F) times 5/9 K in W", memory, rvalue.BtuPerHourF.SI() * 5 / 9, 0.2930711, 1e-7},
		{"1 perm (0 °C) in ng/(Pa·s·m²)", nist, rvalue.Perm.SI(), 57.2135, 1e-4},
		{"1 ft³/min in m³/s", memory, float64(rvalue.CubicFootPerMin), 4.719474e-4, 1e-10},
		{"1 lb/ft³ in kg/m³", memory, rvalue.PoundPerFoot3.SI(), 16.01846, 1e-5},
		{"1 ft³ in m³", memory, rvalue.CubicFoot.SI(), 2.831685e-2, 1e-8},
		{"1 W/(m·K) in Btu·in/(h·ft²·°F)", nist + ", inverse", rvalue.WattPerMetreKelvin.IP(), 6.933472, 1e-6},
		{"1 kg/m³ in lb/ft³", nist + ", inverse", rvalue.KilogramPerMetre3.IP(), 0.0624280, 1e-7},
	} {
		if off := math.Abs(c.got - c.want); !(off <= c.last/2) {
			t.Errorf("%s = %.10g, want %.7g (%s)", c.name, c.got, c.want, c.source)
		}
	}
}

// TestExactUnits holds what is exact by definition.
func TestExactUnits(t *testing.T) {
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"1 in", rvalue.Inch.SI(), 0.0254},
		{"1 ft", rvalue.Foot.SI(), 0.3048},
		{"1 mm", rvalue.Millimetre.SI(), 0.001},
		{"1 ft²", rvalue.SquareFoot.SI(), 0.09290304},
		{"1 ft³", rvalue.CubicFoot.SI(), 0.028316846592},
		{"1 mph", rvalue.MilePerHour.SI(), 0.44704},
		{"1 °F of difference", rvalue.FahrenheitDegree.SI(), 5.0 / 9},
		{"20 °C", rvalue.FromCelsius(20).Kelvins(), 293.15},
		{"0 °C", rvalue.FromCelsius(0).Celsius(), 0},
		{"32 °F", rvalue.FromFahrenheit(32).Kelvins(), 273.15},
		{"68 °F", rvalue.FromFahrenheit(68).Kelvins(), rvalue.FromCelsius(20).Kelvins()},
		{"-40 °F", rvalue.FromFahrenheit(-40).Kelvins(), rvalue.FromCelsius(-40).Kelvins()},
	} {
		if c.got != c.want {
			t.Errorf("%s = %v, want %v exactly", c.name, c.got, c.want)
		}
	}
}

// TestBetweenKinds holds the methods that lead from one kind to another.
func TestBetweenKinds(t *testing.T) {
	// Rounding of a handful of operations, relative.
	const rounding = 1e-15
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"R-20 is U-0.05", (20 * rvalue.RIP).U().IP(), 0.05},
		{"U-0.05 is R-20", (0.05 * rvalue.UIP).R().IP(), 20},
		{"100 mm of 0.04 W/(m·K)", (0.04 * rvalue.WattPerMetreKelvin).Resistance(100 * rvalue.Millimetre).RSI(), 2.5},
		{"1 in of 0.25 Btu·in/(h·ft²·°F)", (0.25 * rvalue.BtuInchPerHourFoot2F).Resistance(rvalue.Inch).IP(), 4},
		{"U-0.1 over 200 ft²", (0.1 * rvalue.UIP).Times(200 * rvalue.SquareFoot).IP(), 20},
		{"20 Btu/(h·°F) spread over 200 ft²", (20 * rvalue.BtuPerHourF).Over(200 * rvalue.SquareFoot).IP(), 0.1},
		{"psi 0.73 Btu/(h·ft·°F) along 40 ft", (0.73 * rvalue.PsiIP).Times(40 * rvalue.Foot).IP(), 29.2},
		{"31 ft by 8.5 ft", (31 * rvalue.Foot).Times(8.5 * rvalue.Foot).IP(), 263.5},
		{"68 °F less 20 °C", rvalue.FromFahrenheit(68).Sub(rvalue.FromCelsius(20)).SI() + 1, 1},
		{"68 °F and 18 °F more", rvalue.FromFahrenheit(68).Add(18 * rvalue.FahrenheitDegree).Celsius(), 30},
		{"1200 cfm", (1200 * rvalue.CubicFootPerMin).SI(), 1200 * 0.028316846592 * 60},
	} {
		// A temperature carries the rounding of its 300 K, not of its 30 °C.
		tolerance := rounding * max(math.Abs(c.want), 300)
		if !(math.Abs(c.got-c.want) <= tolerance) {
			t.Errorf("%s = %v, want %v", c.name, c.got, c.want)
		}
	}
	if u := rvalue.Resistance(0).U(); !math.IsInf(u.SI(), 1) {
		t.Errorf("Resistance(0).U() = %v, want +Inf", u.SI())
	}
}
