package rvalue_test

import (
	"errors"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/rvalue"
)

// parsers are all of the package's, for what holds of every one.
var parsers = map[string]func(string) (float64, error){
	"Resistance":            bare(rvalue.ParseResistance),
	"Transmittance":         bare(rvalue.ParseTransmittance),
	"Conductivity":          bare(rvalue.ParseConductivity),
	"Length":                bare(rvalue.ParseLength),
	"Area":                  bare(rvalue.ParseArea),
	"Volume":                bare(rvalue.ParseVolume),
	"Temperature":           bare(rvalue.ParseTemperature),
	"TemperatureDifference": bare(rvalue.ParseTemperatureDifference),
	"Conductance":           bare(rvalue.ParseConductance),
	"LinearTransmittance":   bare(rvalue.ParseLinearTransmittance),
	"Permeance":             bare(rvalue.ParsePermeance),
	"AirFlow":               bare(rvalue.ParseAirFlow),
	"Speed":                 bare(rvalue.ParseSpeed),
	"Density":               bare(rvalue.ParseDensity),
	"Mass":                  bare(rvalue.ParseMass),
	"Share":                 rvalue.ParseShare,
	"Units":                 bareUnits,
}

func bare[T ~float64](parse func(string) (T, error)) func(string) (float64, error) {
	return func(s string) (float64, error) {
		v, err := parse(s)
		return float64(v), err
	}
}

func bareUnits(s string) (float64, error) {
	u, err := rvalue.ParseUnits(s)
	return float64(u), err
}

// mistakes are texts that are refused, with the text from the fault on and a
// piece of the message.
var mistakes = []struct{ kind, text, at, says string }{
	// nothing, or no number
	{"Resistance", "", "", "nothing is written where a thermal resistance is needed (use R-13, RSI 2.3"},
	{"Length", "   ", "", "nothing is written"},
	{"Length", "thick", "thick", `no number in "thick"`},
	{"Length", "in", "in", "no number"},
	{"Length", "- 3 in", "- 3 in", "no number"},
	{"Resistance", "R", "R", "no number"},
	{"Resistance", "R-", "R-", "no number"},
	{"Resistance", "R-value 13", "R-value 13", "no number"},
	{"Area", "x", "x", "a side is missing"},
	{"Share", "many %", "many %", "no number, write a share as 25 %"},
	{"Share", "", "", "25 %"},

	// not a number, no finite one, out of all range
	{"Length", "NaN m", "NaN m", "no number"},
	{"Length", "Inf m", "Inf m", "no number"},
	{"Temperature", "-Inf °C", "-Inf °C", "no number"},
	{"Length", "1e999 m", "1e999 m", "the number is out of range"},
	{"Length", "1e300 m", "1e300 m", "out of range for a length"},
	{"Length", "1e-300 m", "1e-300 m", "out of range for a length"},
	{"Area", "1e29 m x 1e29 m", "1e29 m x 1e29 m", "out of range for an area"},
	{"Temperature", "1e40 °F", "1e40 °F", "out of range"},
	{"Share", "1e999 %", "1e999 %", "out of range"},
	{"Length", "0x10 mm", "x10 mm", "unknown unit"},
	{"Length", "1_000 mm", "_000 mm", "unknown unit"},

	// commas
	{"Conductivity", "0,04 W/(m·K)", ",04 W/(m·K)", "write 0.04"},
	{"Length", "3,5 m", ",5 m", "write 3.5"},
	{"Length", "1,20 m", ",20 m", "write 1.20"},
	{"Length", "0,035 m", ",035 m", "write 0.035"},
	{"Length", "1234,567 mm", ",567 mm", "write 1234.567"},
	{"Length", "1,2345 mm", ",2345 mm", "comma"},

	// fractions
	{"Length", "1/0 in", "0 in", "zero parts"},
	{"Length", "3 5/4 in", "5/4 in", "below 1, not 5/4"},
	{"Length", "1/2/4 in", "/4 in", "unknown unit"},
	{"Length", "3.5 1/2 in", "1/2 in", "second number"},

	// no unit
	{"Length", "13", "13", "a bare number without its unit: 13 what? use mm, cm, m, in or ft"},
	{"Length", "3 1/2", "3 1/2", "3 1/2 what?"},
	{"Length", "5 ft 4", "4", "4 what?"},
	{"Resistance", "13", "13", "13 what? use R-13, RSI 2.3"},
	{"Temperature", "20", "20", "use °C, °F or K"},
	{"Temperature", "68°", "°", "unknown unit"},
	{"Area", "263", "263", "263 what?"},
	{"Area", "31 x 8 ft 6 in", "31 x 8 ft 6 in", "31 what?"},
	{"Share", "25", "25", "25 %"},
	{"Share", "0.25", "0.25", "25 %"},

	// unknown units
	{"Length", "13 furlong", "furlong", `unknown unit "furlong" for a length (use mm, cm, m, in or ft)`},
	{"Length", "13 yd", "yd", "unknown unit"},
	{"Length", "13 incheslong", "incheslong", "unknown unit"},
	{"Area", "3 ft x 4 furlong", "furlong", "furlong"},
	{"AirFlow", "1200 cfm50", "cfm50", "unknown unit"},
	{"Resistance", "13 W", "W", "unknown unit"},
	{"Resistance", "13 m²·K/", "m²·K/", "unknown unit"},
	{"Resistance", "13 (m²·K/W", "(m²·K/W", "unknown unit"},
	{"Resistance", "13 m²·K)/W", "m²·K)/W", "unknown unit"},
	{"Resistance", "13 ((((((m²·K/W))))))", "((((((m²·K/W))))))", "unknown unit"},
	{"Area", "13 sq sq m", "sq sq m", "unknown unit"},
	{"Area", "13 sq m²", "sq m²", "unknown unit"},
	{"Area", "13 m^", "m^", "unknown unit"},
	{"Area", "13 m22", "m22", "unknown unit"},
	{"Volume", "13 m9m9m9", "m9m9m9", "unknown unit"},
	{"Share", "25 ‰", "‰", "unknown unit"},
	{"Units", "metric", "metric", "use si or ip"},

	// units of something else
	{"Resistance", "13 W/(m·K)", "W/(m·K)", `"W/(m·K)" is a unit of conductivity, a thermal resistance is needed`},
	{"Resistance", "U-0.30", "U-0.30", "is a thermal transmittance, a thermal resistance is needed"},
	{"Transmittance", "R-13", "R-13", "is a thermal resistance"},
	{"Length", "R-13", "R-13", "is a thermal resistance, a length is needed"},
	{"Length", "263 ft²", "ft²", "is a unit of area, a length is needed"},
	{"Length", "263 ft2", "ft2", "is a unit of area"},
	{"Length", "20 °C", "°C", "is a unit of temperature"},
	{"Area", "3 ft", "ft", "is a unit of length, an area is needed"},
	{"Area", "3 ft³", "ft³", "is a unit of volume"},
	{"Temperature", "20 m", "m", "is a unit of length"},
	{"LinearTransmittance", "1 Btu·in/(h·ft²·°F)", "Btu·in/(h·ft²·°F)", "is a unit of conductivity, a linear"},
	{"Conductance", "1 W/(m²·K)", "W/(m²·K)", "is a unit of thermal transmittance"},
	{"Resistance", "RSI 13 h·ft²·°F/Btu", "h·ft²·°F/Btu", "RSI means m²·K/W, not"},

	// out of a kind's range
	{"Resistance", "R-0", "R-0", "is zero, a layer that resists nothing needs no entry"},
	{"Resistance", "R--3", "R--3", "above zero"},
	{"Resistance", "-3 m²·K/W", "-3 m²·K/W", "above zero"},
	{"Transmittance", "U-0", "U-0", "above zero"},
	{"Conductivity", "0 W/(m·K)", "0 W/(m·K)", "above zero"},
	{"Length", "0 in", "0 in", "a length is above zero"},
	{"Length", "-3 1/2 in", "-3 1/2 in", "above zero"},
	{"Length", `0'-0"`, `0'-0"`, "above zero"},
	{"Area", "0 ft²", "0 ft²", "above zero"},
	{"Area", "3 ft x 0 ft", "0 ft", "a length is above zero"},
	{"Area", "-3 ft x -3 ft", "-3 ft x -3 ft", "above zero"},
	{"Area", "-3 x -3 ft", "-3 x -3 ft", "above zero"},
	{"Volume", "-3 ft² x 3 ft", "-3 ft² x 3 ft", "an area is above zero"},
	{"Density", "0 kg/m³", "0 kg/m³", "above zero"},
	{"Mass", "0 kg", "0 kg", "above zero"},
	{"Conductance", "-1 W/K", "-1 W/K", "zero or more"},
	{"Permeance", "-1 perm", "-1 perm", "zero or more"},
	{"AirFlow", "-1 cfm", "-1 cfm", "zero or more"},
	{"Speed", "−1 mph", "−1 mph", "zero or more"},
	{"Temperature", "-274 °C", "-274 °C", "above absolute zero"},
	{"Temperature", "-460 °F", "-460 °F", "above absolute zero"},
	{"Temperature", "0 K", "0 K", "above absolute zero"},
	{"Share", "101 %", "101 %", "0 to 100 %"},
	{"Share", "-1 %", "-1 %", "0 to 100 %"},

	// more than one thing
	{"Length", "16-24 in", "-24 in", "a second number"},
	{"Length", "1 200 mm", "200 mm", "a second number"},
	{"Length", "16 in o.c.", "o.c.", `unexpected "o.c." behind the length`},
	{"Length", "5 ft 14 in", "14 in", `"14 in" is not less than 1 ft`},
	{"Length", "5 ft -4 in -2 in", "2 in", `"2 in" does not go on a length in in`},
	{"Length", "5 in 4 ft", "4 ft", "does not go on a length in in"},
	{"Length", "5 ft 20 mm", "20 mm", "does not go on a length in ft"},
	{"Length", "5 ft 4 furlong", "furlong", "furlong"},
	{"Length", "5 ft 1/0 in", "0 in", "zero parts"},
	{"Temperature", "68 °F 20 °C", "°F 20 °C", "unknown unit"},
	{"Area", "3 ft x", "", "a side is missing"},
	{"Area", "x 3 ft", "x 3 ft", "a side is missing"},
	{"Area", "3 ft x x 3 ft", "x 3 ft", "a side is missing"},
	{"Area", "3 ft x 4 ft x 5 ft", "5 ft", "one side too many for an area"},
	{"Area", "1 ft² x 3 ft", "3 ft", "one side too many"},
	{"Area", "3 ft x 4 ft wide", "wide", "unexpected"},
	{"Area", "3 ft x R-13", "R-13", "a length is needed"},
	{"Volume", "3 ft x 4 ft", "", "a side is missing, a volume has 3"},
	{"Share", "25 % 3", "% 3", "unknown unit"},

	// no text at all
	{"Length", "\xff\xfe", "\xff\xfe", "no number"},
	{"Length", "3\xc2", "\xc2", "unknown unit"},
	{"Length", "3 in\x00", "\x00", "unexpected"},
}

func TestMistakes(t *testing.T) {
	for _, c := range mistakes {
		v, err := parsers[c.kind](c.text)
		var e *rvalue.ParseError
		if !errors.As(err, &e) {
			t.Errorf("Parse%s(%q) = %v, %v, want a ParseError", c.kind, c.text, v, err)
			continue
		}
		if v != 0 {
			t.Errorf("Parse%s(%q) = %v with an error, want 0", c.kind, c.text, v)
		}
		if e.Text != c.text {
			t.Errorf("Parse%s(%q) blames the text %q", c.kind, c.text, e.Text)
		} else if e.Text[e.Offset:] != c.at {
			t.Errorf("Parse%s(%q) points at %q, want %q (%s)", c.kind, c.text, e.Text[e.Offset:], c.at, e.Msg)
		}
		if !strings.Contains(e.Msg, c.says) {
			t.Errorf("Parse%s(%q) says %q, want something of %q", c.kind, c.text, e.Msg, c.says)
		}
	}
}

func TestParseErrorText(t *testing.T) {
	_, err := rvalue.ParseLength("13 furlong")
	const want = `rvalue: "13 furlong": unknown unit "furlong" for a length (use mm, cm, m, in or ft)`
	if err == nil || err.Error() != want {
		t.Errorf("ParseLength says %v, want %s", err, want)
	}
}
