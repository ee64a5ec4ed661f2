package rvalue_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/coldseam/coldseam/rvalue"
)

// quantity is what every quantity can do.
type quantity interface {
	fmt.Stringer
	In(rvalue.Units) string
	MarshalText() ([]byte, error)
}

func TestIn(t *testing.T) {
	for _, c := range []struct {
		name   string
		q      quantity
		si, ip string
	}{
		{"a batt", 13 * rvalue.RIP, "RSI 2.29", "R-13.0"},
		{"a ceiling", 60 * rvalue.RIP, "RSI 10.57", "R-60.0"},
		{"an inside film", 0.68 * rvalue.RIP, "RSI 0.12", "R-0.68"},
		{"a sheet of glass", rvalue.Resistance(0.003), "RSI 0.0030", "R-0.017"},
		{"just below one", 0.996 * rvalue.RIP, "RSI 0.18", "R-1.0"},
		{"next to nothing", rvalue.Resistance(2e-9), "RSI 2e-09", "R-1.1e-08"},
		{"no resistance", rvalue.Resistance(0), "RSI 0", "R-0"},
		{"endless", rvalue.Transmittance(0).R(), "RSI +Inf", "R-+Inf"},

		{"a wall", rvalue.Transmittance(0.363), "0.363 W/(m²·K)", "0.0639 Btu/(h·ft²·°F)"},
		{"single glass", 1.04 * rvalue.UIP, "5.91 W/(m²·K)", "1.04 Btu/(h·ft²·°F)"},
		{"a very good wall", rvalue.Transmittance(0.0123), "0.0123 W/(m²·K)", "0.0022 Btu/(h·ft²·°F)"},
		{"no figure at all", rvalue.Transmittance(math.NaN()), "NaN W/(m²·K)", "NaN Btu/(h·ft²·°F)"},

		{"mineral wool", rvalue.Conductivity(0.04), "0.040 W/(m·K)", "0.277 Btu·in/(h·ft²·°F)"},
		{"steel", rvalue.Conductivity(50), "50.0 W/(m·K)", "347 Btu·in/(h·ft²·°F)"},

		{"a stud", 3.5 * rvalue.Inch, "88.9 mm", "3 1/2 in"},
		{"a metric stud", 90 * rvalue.Millimetre, "90 mm", "3.54 in"},
		{"gypsum board", 0.5 * rvalue.Inch, "12.7 mm", "1/2 in"},
		{"sheathing", 7. / 16 * rvalue.Inch, "11.1 mm", "7/16 in"},
		{"metric board", 13 * rvalue.Millimetre, "13 mm", "0.512 in"},
		{"a thousandth off the sixteenth", 3.501 * rvalue.Inch, "88.9 mm", "3.5 in"},
		{"a hair off it", 3.5004 * rvalue.Inch, "88.9 mm", "3 1/2 in"},
		{"polyethylene", 0.15 * rvalue.Millimetre, "0.15 mm", "0.0059 in"},
		{"thinner than a tape can tell", 0.0004 * rvalue.Inch, "0.01 mm", "0.0004 in"},
		{"a spacing", 16 * rvalue.Inch, "406.4 mm", "16 in"},
		{"the wide spacing", 24 * rvalue.Inch, "609.6 mm", "24 in"},
		{"above it", 25 * rvalue.Inch, "635 mm", "2 ft 1 in"},
		{"a window", 64.5 * rvalue.Inch, "1.638 m", "5 ft 4 1/2 in"},
		{"a wall's height", 8 * rvalue.Foot, "2.438 m", "8 ft"},
		{"a wall's length", 31 * rvalue.Foot, "9.449 m", "31 ft"},
		{"nearly 8 ft", 95.996 * rvalue.Inch, "2.438 m", "8 ft"},
		{"metres", rvalue.Length(2.4), "2.4 m", "7 ft 10.49 in"},
		{"a little less than a metre", rvalue.Length(0.99994), "999.9 mm", "3 ft 3.37 in"},
		{"no less than a metre", rvalue.Length(0.99996), "1 m", "3 ft 3.37 in"},
		{"no length", rvalue.Length(0), "0 mm", "0 in"},
		{"less than none", -3.5 * rvalue.Inch, "-88.9 mm", "-3.50 in"},
		{"round the world", rvalue.Length(4e7), "40000000 m", "1.57e+09 in"},

		{"a wall's face", 263.5 * rvalue.SquareFoot, "24.5 m²", "263.5 ft²"},
		{"a sash", rvalue.Area(0.65), "0.65 m²", "7.00 ft²"},
		{"a flat", 7400 * rvalue.CubicFoot, "209.5 m³", "7400 ft³"},

		{"a room", rvalue.FromFahrenheit(68), "20.0 °C", "68 °F"},
		{"a winter night", rvalue.FromFahrenheit(-20), "-28.9 °C", "-20 °F"},
		{"hardly below freezing", rvalue.FromCelsius(-0.04), "0.0 °C", "32 °F"},
		{"hardly below nought", rvalue.FromFahrenheit(-0.3), "-17.9 °C", "0 °F"},
		{"not given", rvalue.Temperature(0), "0 K", "0 K"},
		{"a difference", 18 * rvalue.FahrenheitDegree, "10.0 K", "18.0 °F"},
		{"a small one", rvalue.TemperatureDifference(-0.01), "-0.010 K", "-0.018 °F"},

		{"a part", rvalue.Conductance(27.5), "27.5 W/K", "52.1 Btu/(h·°F)"},
		{"a house", rvalue.Conductance(412.34), "412.3 W/K", "781.6 Btu/(h·°F)"},
		{"a slab's edge", 0.73 * rvalue.PsiIP, "1.26 W/(m·K)", "0.730 Btu/(h·ft·°F)"},
		{"an outer corner", rvalue.LinearTransmittance(-0.05), "-0.050 W/(m·K)", "-0.029 Btu/(h·ft·°F)"},
		{"latex paint", 5 * rvalue.Perm, "286 ng/(Pa·s·m²)", "5.0 perm"},
		{"polyethylene's", 0.06 * rvalue.Perm, "3.43 ng/(Pa·s·m²)", "0.060 perm"},
		{"a blower door", 1200 * rvalue.CubicFootPerMin, "2039 m³/h", "1200 cfm"},
		{"the handbook's winter wind", 15 * rvalue.MilePerHour, "6.7 m/s", "15.0 mph"},
		{"wood fibre", rvalue.Density(35), "35 kg/m³", "2.2 lb/ft³"},
		{"sealed unit", 22.3 * rvalue.Kilogram, "22.3 kg", "49.2 lb"},
	} {
		if got := c.q.In(rvalue.SI); got != c.si {
			t.Errorf("%s: In(SI) = %q, want %q", c.name, got, c.si)
		}
		if got := c.q.In(rvalue.IP); got != c.ip {
			t.Errorf("%s: In(IP) = %q, want %q", c.name, got, c.ip)
		}
		if got := c.q.String(); got != c.si {
			t.Errorf("%s: String() = %q, want %q", c.name, got, c.si)
		}
	}
}
