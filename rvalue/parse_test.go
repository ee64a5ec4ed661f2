package rvalue_test

import (
	"math"
	"testing"

	"github.com/coldseam/coldseam/rvalue"
)

// form is a way to write a quantity. What is parsed must equal the wanted
// value to the last bit: the parsers promise the value of the Go expression.
type form[T ~float64] struct {
	text string
	want T
}

func checkForms[T ~float64](t *testing.T, name string, parse func(string) (T, error), forms []form[T]) {
	t.Helper()
	for _, f := range forms {
		got, err := parse(f.text)
		if err != nil {
			t.Errorf("Parse%s(%q): %v", name, f.text, err)
		} else if got != f.want {
			t.Errorf("Parse%s(%q) = %v, want %v", name, f.text, float64(got), float64(f.want))
		}
	}
}

var resistances = []form[rvalue.Resistance]{
	{"R-13", 13 * rvalue.RIP},
	{"R13", 13 * rvalue.RIP},
	{"R 13", 13 * rvalue.RIP},
	{"r-13", 13 * rvalue.RIP},
	{"R\u201113", 13 * rvalue.RIP}, // a hyphen that does not break
	{"R–13", 13 * rvalue.RIP},
	{" R-13 ", 13 * rvalue.RIP},
	{"R-13.", 13 * rvalue.RIP},
	{"R-3.85", 3.85 * rvalue.RIP},
	{"R-1/2", 0.5 * rvalue.RIP},
	{"R-3½", 3.5 * rvalue.RIP},
	{"RSI 2.3", 2.3},
	{"RSI2.3", 2.3},
	{"RSI-2.3", 2.3},
	{"rsi 0.9", 0.9},
	{"2.3 m²·K/W", 2.3},
	{"2.3 m2K/W", 2.3},
	{"2.3 m2.K/W", 2.3},
	{"2.3 m^2 K / W", 2.3},
	{"2.3 (m²·K)/W", 2.3},
	{"2.3 K·m²/W", 2.3},
	{"2.3 m² °C/W", 2.3},
	{"2.3 m²⋅K⋅W⁻¹", 2.3},
	{"R 2.3 m²·K/W", 2.3}, // the unit decides
	{"RSI 2.3 m²·K/W", 2.3},
	{"13 h·ft²·°F/Btu", 13 * rvalue.RIP},
	{"13 hr ft2 F/Btu", 13 * rvalue.RIP},
	{"13 hr·ft²·ºF/BTU", 13 * rvalue.RIP},
	{"13 ft2-hr-F/Btu", 13 * rvalue.RIP},
	{"13 °F ft² h/Btu", 13 * rvalue.RIP},
	{"13 hft2F/Btu", 13 * rvalue.RIP},
	{"R-13 h·ft²·°F/Btu", 13 * rvalue.RIP},
	{"13 sq ft hr deg F per Btu", 13 * rvalue.RIP},
}

var transmittances = []form[rvalue.Transmittance]{
	{"U-0.30", 0.3 * rvalue.UIP},
	{"U 0.30", 0.3 * rvalue.UIP},
	{"u0.30", 0.3 * rvalue.UIP},
	{"U-.3", 0.3 * rvalue.UIP},
	{"USI 1.7", 1.7},
	{"0.36 W/(m²·K)", 0.36},
	{"0.36 W/m2K", 0.36},
	{"0.36 W/m²/K", 0.36},
	{"0.36 W m-2 K-1", 0.36},
	{"0.36 W·m⁻²·K⁻¹", 0.36},
	{"0.36 W/(m² °C)", 0.36},
	{"0.36 watts per square metre per kelvin", 0.36},
	{"0.36 W/(K·m²)", 0.36},
	{"0.36 W/m²\u212A", 0.36}, // the Kelvin sign
	{"U 0.36 W/(m²·K)", 0.36},
	{"0.064 Btu/(h·ft²·°F)", 0.064 * rvalue.UIP},
	{"0.064 Btu/h-ft2-F", 0.064 * rvalue.UIP},
	{"0.064 Btu/(hr sq ft °F)", 0.064 * rvalue.UIP},
	{"0.064 Btuh/ft²·℉", 0.064 * rvalue.UIP},
}

var conductivities = []form[rvalue.Conductivity]{
	{"0.04 W/(m·K)", 0.04},
	{"0.04 W/mK", 0.04},
	{"0.04 W/m·K", 0.04},
	{"0.26 Btu·in/(h·ft²·°F)", 0.26 * rvalue.BtuInchPerHourFoot2F},
	{"0.26 Btu in/(h ft2 F)", 0.26 * rvalue.BtuInchPerHourFoot2F},
	{"0.26 Btu-in/hr-ft2-F", 0.26 * rvalue.BtuInchPerHourFoot2F},
	{"0.26 Btu/(h·ft²·°F)·in", 0.26 * rvalue.BtuInchPerHourFoot2F},
	{"0.26 Btu/h·ft²·(°F/in)", 0.26 * rvalue.BtuInchPerHourFoot2F},
	{"0.15 Btu/(h·ft·°F)", 0.15 * rvalue.Conductivity(rvalue.PsiIP)},
}

var lengths = []form[rvalue.Length]{
	{"90 mm", 90 * rvalue.Millimetre},
	{"90mm", 90 * rvalue.Millimetre},
	{"9 cm", 9 * rvalue.Length(0.01)},
	{"2.4 m", 2.4},
	{"2.4 metres", 2.4},
	{"1e3 mm", 1000 * rvalue.Millimetre},
	{"1.5e-1 m", 0.15},
	{"1,200 mm", 1200 * rvalue.Millimetre},
	{"12,345.5 mm", 12345.5 * rvalue.Millimetre},
	{".5 in", 0.5 * rvalue.Inch},
	{"1/2 in", 0.5 * rvalue.Inch},
	{`1/2"`, 0.5 * rvalue.Inch},
	{"1⁄2 in", 0.5 * rvalue.Inch},
	{"½ in", 0.5 * rvalue.Inch},
	{"⅜ in", 0.375 * rvalue.Inch},
	{"7/16 in", 0.4375 * rvalue.Inch},
	{"3 1/2 in", 3.5 * rvalue.Inch},
	{"3-1/2 in", 3.5 * rvalue.Inch},
	{"3–1/2 in", 3.5 * rvalue.Inch},
	{`3 1/2"`, 3.5 * rvalue.Inch},
	{"3½ in", 3.5 * rvalue.Inch},
	{"3 ½”", 3.5 * rvalue.Inch},
	{"3¾ inches", 3.75 * rvalue.Inch},
	{"3 1/2\u00A0in", 3.5 * rvalue.Inch},
	{"16 in.", 16 * rvalue.Inch},
	{"16 IN", 16 * rvalue.Inch},
	{"24''", 24 * rvalue.Inch},
	{"5'", 5 * rvalue.Foot},
	{"5 feet", 5 * rvalue.Foot},
	{"5.375 ft", 5.375 * rvalue.Foot},
	{`5'-4 1/2"`, 64.5 * rvalue.Inch},
	{`5' - 4 1/2"`, 64.5 * rvalue.Inch},
	{`5'-4-1/2"`, 64.5 * rvalue.Inch},
	{`5'4"`, 64 * rvalue.Inch},
	{"5’-4½”", 64.5 * rvalue.Inch},
	{"5′ 4½″", 64.5 * rvalue.Inch},
	{"5 ft 4 1/2 in", 64.5 * rvalue.Inch},
	{"5 ft, 4 in", 64 * rvalue.Inch},
	{"5 ft. 4 in.", 64 * rvalue.Inch},
	{"5ft4in", 64 * rvalue.Inch},
	{"8 ft 6 in", 102 * rvalue.Inch},
	{`8'-0"`, 96 * rvalue.Inch},
	{`0'-6"`, 6 * rvalue.Inch},
	{"2 m 40 cm", 240 * rvalue.Length(0.01)},
	{"2 m 5 mm", 2005 * rvalue.Millimetre},
}

var areas = []form[rvalue.Area]{
	{"24.5 m²", 24.5},
	{"24.5 m2", 24.5},
	{"24.5 m^2", 24.5},
	{"24.5 square metres", 24.5},
	{"263 ft²", 263 * rvalue.SquareFoot},
	{"263 ft2", 263 * rvalue.SquareFoot},
	{"263 sq ft", 263 * rvalue.SquareFoot},
	{"263 sq. ft.", 263 * rvalue.SquareFoot},
	{"263 sqft", 263 * rvalue.SquareFoot},
	{"263 sf", 263 * rvalue.SquareFoot},
	{"1,263 SQ FT", 1263 * rvalue.SquareFoot},
	{"1800 in²", 1800 * rvalue.Area(0.00064516)},
	{"31 ft x 8 ft 6 in", (31 * rvalue.Foot).Times(102 * rvalue.Inch)},
	{"31' x 8'-6\"", (31 * rvalue.Foot).Times(102 * rvalue.Inch)},
	{"31 ft by 8 ft", (31 * rvalue.Foot).Times(8 * rvalue.Foot)},
	{"31ftx8ft", (31 * rvalue.Foot).Times(8 * rvalue.Foot)},
	{"2.4 m × 3 m", rvalue.Length(2.4).Times(3)},
	{"2.4 m * 3 m", rvalue.Length(2.4).Times(3)},
	{"2.4 m X 300 cm", rvalue.Length(2.4).Times(3)},
	{"30 in x 60 in", (30 * rvalue.Inch).Times(60 * rvalue.Inch)},
	{"30 x 60 in", (30 * rvalue.Inch).Times(60 * rvalue.Inch)},
	{`30 1/2 x 60"`, (30.5 * rvalue.Inch).Times(60 * rvalue.Inch)},
}

var volumes = []form[rvalue.Volume]{
	{"210 m³", 210},
	{"210 m3", 210},
	{"7400 ft³", 7400 * rvalue.CubicFoot},
	{"7400 ft3", 7400 * rvalue.CubicFoot},
	{"7,400 cu ft", 7400 * rvalue.CubicFoot},
	{"7400 cubic feet", 7400 * rvalue.CubicFoot},
	{"2 m x 3 m x 4 m", 24},
	{"2 x 3 x 4 m", 24},
	{"20 m² x 4 m", 80},
	{"4 m × 20 m²", 80},
	{"10 ft x 20 ft x 96 in", rvalue.Volume(float64(10*rvalue.Foot) * float64(20*rvalue.Foot) * float64(96*rvalue.Inch))},
}

var temperatures = []form[rvalue.Temperature]{
	{"68 °F", rvalue.FromFahrenheit(68)},
	{"68F", rvalue.FromFahrenheit(68)},
	{"68 F", rvalue.FromFahrenheit(68)},
	{"68 deg F", rvalue.FromFahrenheit(68)},
	{"68 degrees Fahrenheit", rvalue.FromFahrenheit(68)},
	{"68℉", rvalue.FromFahrenheit(68)},
	{"-20 °F", rvalue.FromFahrenheit(-20)},
	{"20 °C", rvalue.FromCelsius(20)},
	{"20 ºC", rvalue.FromCelsius(20)}, // an ordinal sign for a degree sign
	{"20°c", rvalue.FromCelsius(20)},
	{"20 ℃", rvalue.FromCelsius(20)},
	{"+5 °C", rvalue.FromCelsius(5)},
	{"-5C", rvalue.FromCelsius(-5)},
	{"−5 °C", rvalue.FromCelsius(-5)},
	{"–5 °C", rvalue.FromCelsius(-5)},
	{"0 °C", rvalue.FromCelsius(0)},
	{"293.15 K", 293.15},
}

var differences = []form[rvalue.TemperatureDifference]{
	{"10 K", 10},
	{"10 °C", 10},
	{"-10 K", -10},
	{"0 K", 0},
	{"18 °F", 18 * rvalue.FahrenheitDegree},
}

var conductances = []form[rvalue.Conductance]{
	{"27.5 W/K", 27.5},
	{"27.5 W/°C", 27.5},
	{"0 W/K", 0},
	{"52.1 Btu/(h·°F)", 52.1 * rvalue.BtuPerHourF},
	{"52.1 Btu/hr-F", 52.1 * rvalue.BtuPerHourF},
	{"52.1 Btu/h°F", 52.1 * rvalue.BtuPerHourF},
	{"52.1 Btu/hr/°F", 52.1 * rvalue.BtuPerHourF},
}

var linears = []form[rvalue.LinearTransmittance]{
	{"0.05 W/(m·K)", 0.05},
	{"-0.05 W/(m·K)", -0.05},
	{"−0.05 W/mK", -0.05},
	{"0 W/(m·K)", 0},
	{"0.73 Btu/(h·ft·°F)", 0.73 * rvalue.PsiIP},
	{"0.73 Btu/(h·°F·ft)", 0.73 * rvalue.PsiIP},
	{"0.73 Btu/h-ft-F", 0.73 * rvalue.PsiIP},
}

var permeances = []form[rvalue.Permeance]{
	{"5 perm", 5 * rvalue.Perm},
	{"0.06 perms", 0.06 * rvalue.Perm},
	{"0 perm", 0},
	{"286 ng/(Pa·s·m²)", 286 * rvalue.NanogramPerPascalSecondMetre2},
	{"286 ng/Pa·s·m2", 286 * rvalue.NanogramPerPascalSecondMetre2},
	{"286 ng/(m² s Pa)", 286 * rvalue.NanogramPerPascalSecondMetre2},
	{"2.86e-10 kg/(Pa·s·m²)", 2.86e-10},
}

var airFlows = []form[rvalue.AirFlow]{
	{"1200 cfm", 1200 * rvalue.CubicFootPerMin},
	{"1,200 CFM", 1200 * rvalue.CubicFootPerMin},
	{"1200 ft3/min", 1200 * rvalue.CubicFootPerMin},
	{"1200 cu ft/min", 1200 * rvalue.CubicFootPerMin},
	{"1200 cubic feet per minute", 1200 * rvalue.CubicFootPerMin},
	{"2000 m³/h", 2000 * rvalue.CubicMetrePerHour},
	{"2000 m3/hr", 2000 * rvalue.CubicMetrePerHour},
	{"50 L/s", 50 * rvalue.AirFlow(0.001)},
	{"0.5 m³/s", 0.5},
	{"0 cfm", 0},
}

var speeds = []form[rvalue.Speed]{
	{"15 mph", 15 * rvalue.MilePerHour},
	{"15 mi/h", 15 * rvalue.MilePerHour},
	{"15 miles per hour", 15 * rvalue.MilePerHour},
	{"6.7 m/s", 6.7},
	{"24 km/h", 24 * rvalue.Speed(1/3.6)},
	{"24 kph", 24 * rvalue.Speed(1/3.6)},
	{"0 mph", 0},
}

var densities = []form[rvalue.Density]{
	{"2.2 lb/ft3", 2.2 * rvalue.PoundPerFoot3},
	{"2.2 lb/ft³", 2.2 * rvalue.PoundPerFoot3},
	{"2.2 lb/cu ft", 2.2 * rvalue.PoundPerFoot3},
	{"2.2 pcf", 2.2 * rvalue.PoundPerFoot3},
	{"35 kg/m³", 35},
}

var masses = []form[rvalue.Mass]{
	{"49 lb", 49 * rvalue.Pound},
	{"49 pounds", 49 * rvalue.Pound},
	{"22.2 kg", 22.2},
}

func TestParse(t *testing.T) {
	checkForms(t, "Resistance", rvalue.ParseResistance, resistances)
	checkForms(t, "Transmittance", rvalue.ParseTransmittance, transmittances)
	checkForms(t, "Conductivity", rvalue.ParseConductivity, conductivities)
	checkForms(t, "Length", rvalue.ParseLength, lengths)
	checkForms(t, "Area", rvalue.ParseArea, areas)
	checkForms(t, "Volume", rvalue.ParseVolume, volumes)
	checkForms(t, "Temperature", rvalue.ParseTemperature, temperatures)
	checkForms(t, "TemperatureDifference", rvalue.ParseTemperatureDifference, differences)
	checkForms(t, "Conductance", rvalue.ParseConductance, conductances)
	checkForms(t, "LinearTransmittance", rvalue.ParseLinearTransmittance, linears)
	checkForms(t, "Permeance", rvalue.ParsePermeance, permeances)
	checkForms(t, "AirFlow", rvalue.ParseAirFlow, airFlows)
	checkForms(t, "Speed", rvalue.ParseSpeed, speeds)
	checkForms(t, "Density", rvalue.ParseDensity, densities)
	checkForms(t, "Mass", rvalue.ParseMass, masses)
}

func TestParseShare(t *testing.T) {
	for _, c := range []struct {
		text string
		want float64
	}{
		{"25 %", 0.25},
		{"25%", 0.25},
		{" 12.5 % ", 0.125},
		{"12 1/2 percent", 0.125},
		{"0 %", 0},
		{"100 %", 1},
	} {
		got, err := rvalue.ParseShare(c.text)
		if err != nil || got != c.want {
			t.Errorf("ParseShare(%q) = %v, %v, want %v", c.text, got, err, c.want)
		}
	}
}

func TestParseUnits(t *testing.T) {
	for text, want := range map[string]rvalue.Units{"si": rvalue.SI, "SI": rvalue.SI, "ip": rvalue.IP, "IP": rvalue.IP} {
		if got, err := rvalue.ParseUnits(text); err != nil || got != want {
			t.Errorf("ParseUnits(%q) = %v, %v, want %v", text, got, err, want)
		}
	}
	for _, u := range []rvalue.Units{rvalue.SI, rvalue.IP} {
		text, err := u.MarshalText()
		if err != nil {
			t.Fatal(err)
		}
		var got rvalue.Units
		if err := got.UnmarshalText(text); err != nil || got != u {
			t.Errorf("%v is written as %q and read as %v, %v", u, text, got, err)
		}
	}
}

// A size is read with its sides apart, and as the area that ParseArea reads.
func TestParseSize(t *testing.T) {
	for text, want := range map[string][2]rvalue.Length{
		"30 in x 60 in": {30 * rvalue.Inch, 60 * rvalue.Inch}, "30 x 60 in": {30 * rvalue.Inch, 60 * rvalue.Inch},
		"2.4 m × 3 m": {2.4 * rvalue.Metre, 3 * rvalue.Metre}, "2 ft 6 in by 1.2 m": {30 * rvalue.Inch, 1.2 * rvalue.Metre},
	} {
		w, h, err := rvalue.ParseSize(text)
		a, _ := rvalue.ParseArea(text)
		if err != nil || w != want[0] || h != want[1] || math.Abs(w.Times(h).SI()-a.SI()) > 1e-12 {
			t.Errorf("%q: %v by %v, %v; want %v", text, w, h, err, want)
		}
	}
	for _, text := range []string{"", "12 ft2", "30 in", "30 in x", "30 in x 60 in x 2 in", "-3 in x 3 in"} {
		if w, h, err := rvalue.ParseSize(text); err == nil {
			t.Errorf("%q is read as %v by %v", text, w, h)
		}
	}
}
