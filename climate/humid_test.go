package climate

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/rvalue"
)

const library = "a general open psychrometrics library, npm, version 1.1.1, as noted in the project's reference"

// TestHumidAirSI holds the SI formulas against the library's figures.
func TestHumidAirSI(t *testing.T) {
	c := rvalue.FromCelsius
	saturation := func(t float64) func() (float64, error) {
		return func() (float64, error) { return SaturationPressure(c(t)) }
	}
	of := func(t, humidity, pressure float64, f func(a Air) float64) func() (float64, error) {
		return func() (float64, error) {
			a, err := NewAir(c(t), humidity, pressure)
			return f(a), err
		}
	}
	dew := func(a Air) float64 { return a.DewPoint().Celsius() }
	rows := []struct {
		name  string
		got   func() (float64, error)
		want  float64
		digit float64 // unit of the last digit printed; the tolerance is half of it
	}{
		{"saturation at −20 °C, Pa", saturation(-20), 103.26037858, 1e-8},
		{"saturation at −5 °C, Pa", saturation(-5), 401.76412248, 1e-8},
		{"saturation at 0 °C, Pa", saturation(0), 611.15357089, 1e-8},
		{"saturation at 10 °C, Pa", saturation(10), 1227.99527544, 1e-8},
		{"saturation at 20 °C, Pa", saturation(20), 2338.80370007, 1e-8},
		{"saturation at 25 °C, Pa", saturation(25), 3169.21647014, 1e-8},
		{"saturation at 50 °C, Pa", saturation(50), 12349.85646672, 1e-8},
		{"dew point at 20 °C, 50 %", of(20, 0.5, SeaLevel, dew), 9.27239229, 1e-8},
		{"dew point at 20 °C, 30 %", of(20, 0.3, SeaLevel, dew), 1.91427186, 1e-8},
		{"dew point at 20 °C, 80 %", of(20, 0.8, SeaLevel, dew), 16.44705770, 1e-8},
		{"frost point at 20 °C, 15 %", of(20, 0.15, SeaLevel, dew), -6.57691630, 1e-8},
		{"dew point at 25 °C, 60 %", of(25, 0.6, SeaLevel, dew), 16.70113185, 1e-8},
		{"humidity ratio at 20 °C, 50 %", of(20, 0.5, SeaLevel, Air.HumidityRatio), 0.00726173721, 1e-11},
		{"humidity ratio at −5 °C, 80 %", of(-5, 0.8, SeaLevel, Air.HumidityRatio), 0.00197913908, 1e-11},
		{"humidity ratio at 25 °C, 60 %, 95461 Pa", of(25, 0.6, 95461, Air.HumidityRatio), 0.01264059107, 1e-11},
		{"humidity ratio saturated at 30 °C", of(30, 1, SeaLevel, Air.HumidityRatio), 0.02720256804, 1e-11},
		{"volume at 20 °C, 50 %, m³/kg", of(20, 0.5, SeaLevel, Air.SpecificVolume), 0.84015634792, 1e-11},
		{"enthalpy at 20 °C, 50 %, J/kg", of(20, 0.5, SeaLevel, Air.Enthalpy), 38551.741380, 1e-6},
		// The library halves the interval until it is under 0.001 K wide, so the last
		// of its four decimals is not the formula's; ours is 13.7836.
		{"wet bulb at 20 °C, 50 %", of(20, 0.5, SeaLevel, func(a Air) float64 { return a.WetBulb().Celsius() }), 13.7834, 1e-3},
	}
	for _, row := range rows {
		got, err := row.got()
		if err != nil || math.Abs(got-row.want) > row.digit/2 {
			t.Errorf("%s = %.12g, %v; want %.12g (%s)", row.name, got, err, row.want, library)
		}
	}
}

// TestHumidAirIP holds the inch-pound formulas against the library's figures.
func TestHumidAirIP(t *testing.T) {
	for _, row := range [...]struct{ fahrenheit, psi float64 }{
		{0, 0.01850224424},
		{20, 0.05048857008},
		{32, 0.08864026353},
		{40, 0.12172353295},
		{50, 0.17810558582},
		{68, 0.33921465760},
		{70, 0.36327706484},
		{75, 0.43007453555},
		{95, 0.81624584554},
	} {
		if got, err := SaturationPressureIP(row.fahrenheit); err != nil || math.Abs(got-row.psi) > 0.5e-11 {
			t.Errorf("SaturationPressureIP(%g) = %.11f, %v; want %.11f (%s)", row.fahrenheit, got, err, row.psi, library)
		}
	}
	nan := math.NaN()
	for _, row := range [...]struct{ fahrenheit, humidity, dew, ratio, enthalpy, volume float64 }{
		{70, 0.4, 44.59800060, nan, nan, nan},
		{70, 0.5, 50.52832266, 0.00778326882, 25.2999522, 13.5200833},
		{68, 0.3, 35.44568866, nan, nan, nan},
		{70, 0.2, 27.69165063, nan, nan, nan}, // a frost point
		{75, 0.6, 60.18562922, 0.01111581392, nan, nan},
	} {
		got, err := AirIP(row.fahrenheit, row.humidity, 14.696)
		if err != nil {
			t.Errorf("AirIP(%g, %g): %v", row.fahrenheit, row.humidity, err)
			continue
		}
		for _, v := range [...]struct {
			name             string
			got, want, digit float64
		}{
			{"dew point", got.DewPoint, row.dew, 1e-8},
			{"humidity ratio", got.HumidityRatio, row.ratio, 1e-11},
			{"enthalpy", got.Enthalpy, row.enthalpy, 1e-7},
			{"volume", got.SpecificVolume, row.volume, 1e-7},
		} {
			if math.Abs(v.got-v.want) > v.digit/2 { // false for a NaN, which asks nothing
				t.Errorf("AirIP(%g, %g): %s %.12g, want %.12g (%s)", row.fahrenheit, row.humidity, v.name, v.got, v.want, library)
			}
		}
	}
}

// TestSaturationTable holds saturation against another coding of the formulas, in
// Python, at the two decimals printed in the reference notes.
func TestSaturationTable(t *testing.T) {
	for celsius, want := range map[float64]float64{
		-20: 103.26, -10: 259.90, -5: 401.76, 0: 611.15, 5: 872.49, 10: 1228.00,
		15: 1705.45, 20: 2338.80, 25: 3169.22, 30: 4246.03, 40: 7383.46,
	} {
		if got, err := SaturationPressure(rvalue.FromCelsius(celsius)); err != nil || math.Abs(got-want) > 0.005 {
			t.Errorf("SaturationPressure(%g °C) = %.4f, %v; want %.2f", celsius, got, err, want)
		}
	}
}

// TestSystemsAgree holds the two sets of coefficients against each other, which the
// reference notes found 0.003 Pa apart at most from 0 to 95 °F.
func TestSystemsAgree(t *testing.T) {
	const psi = 6894.757293168 // Pa
	for f := 0.0; f <= 95; f += 0.5 {
		a, b := si.saturation(rvalue.FromFahrenheit(f).Celsius()), ip.saturation(f)*psi
		if math.Abs(a-b) > 0.003 {
			t.Errorf("saturation at %g °F: %.5f Pa by the SI coefficients, %.5f Pa by the inch-pound ones", f, a, b)
		}
	}
}

// TestHumidAirInverts makes states of air at random and finds each again from its
// dew point, its humidity ratio and its wet bulb.
func TestHumidAirInverts(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	for range 5000 {
		dry := rvalue.FromCelsius(-40 + 90*random.Float64())
		humidity := 0.01 + 0.99*random.Float64()
		pressure := 60000 + 45000*random.Float64()
		a, err := NewAir(dry, humidity, pressure)
		if err != nil {
			t.Fatal(err)
		}
		const share = 1e-9 // of relative humidity: the last digits of bisection
		if b, err := AirOfDewPoint(dry, a.DewPoint(), pressure); err != nil || math.Abs(b.RelativeHumidity()-humidity) > share {
			t.Errorf("dew point of %v is %v, of which %v, %v", a, a.DewPoint().Celsius(), b, err)
		}
		if b, err := AirOfRatio(dry, a.HumidityRatio(), pressure); err != nil || math.Abs(b.RelativeHumidity()-humidity) > share {
			t.Errorf("humidity ratio of %v is %v, of which %v, %v", a, a.HumidityRatio(), b, err)
		}
		wet := a.WetBulb()
		if math.Abs(wet.Celsius()) < 1e-9 {
			continue // ice and water bulbs both have an answer there
		}
		if b, err := AirOfWetBulb(dry, wet, pressure); err != nil || math.Abs(b.HumidityRatio()-a.HumidityRatio()) > 1e-9 {
			t.Errorf("wet bulb of %v is %v, of which %v, %v", a, wet.Celsius(), b, err)
		}
		if d := a.DewPoint(); d > wet+1e-6 || wet > dry+1e-6 {
			t.Errorf("%v: dew point %v, wet bulb %v, dry bulb %v are out of order", a, d.Celsius(), wet.Celsius(), dry.Celsius())
		}
	}
	if temperature, err := SaturationTemperature(2338.80370007); err != nil || math.Abs(temperature.Celsius()-20) > 1e-8 {
		t.Errorf("SaturationTemperature = %v, %v; want 20 °C", temperature.Celsius(), err)
	}
}

func TestHumidAirRefuses(t *testing.T) {
	c := rvalue.FromCelsius
	for _, row := range []struct {
		name string
		call func() (Air, error)
		want string
	}{
		{"humidity over 100 %", func() (Air, error) { return NewAir(c(20), 1.01, SeaLevel) }, "relative humidity is 101 %"},
		{"negative humidity", func() (Air, error) { return NewAir(c(20), -0.1, SeaLevel) }, "relative humidity"},
		{"no humidity", func() (Air, error) { return NewAir(c(20), math.NaN(), SeaLevel) }, "relative humidity"},
		{"percent for a share", func() (Air, error) { return NewAir(c(20), 50, SeaLevel) }, "relative humidity is 5000 %"},
		{"pressure in kPa", func() (Air, error) { return NewAir(c(20), 0.5, 101.3) }, "air pressure is 101.3 Pa"},
		{"infinite pressure", func() (Air, error) { return NewAir(c(20), 0.5, math.Inf(1)) }, "air pressure"},
		{"too hot", func() (Air, error) { return NewAir(c(250), 0.5, SeaLevel) }, "temperature is 250 °C"},
		{"no temperature", func() (Air, error) { return NewAir(rvalue.Temperature(math.NaN()), 0.5, SeaLevel) }, "temperature is NaN"},
		{"boiling", func() (Air, error) { return NewAir(c(101), 0.5, SeaLevel) }, "boils"},
		{"dew point above", func() (Air, error) { return AirOfDewPoint(c(20), c(21), SeaLevel) }, "dew point 21 °C is above"},
		{"wet bulb above", func() (Air, error) { return AirOfWetBulb(c(20), c(21), SeaLevel) }, "wet bulb 21 °C is above"},
		{"wet bulb too low", func() (Air, error) { return AirOfWetBulb(c(30), c(5), SeaLevel) }, "too low"},
		{"too much vapour", func() (Air, error) { return AirOfRatio(c(10), 0.02, SeaLevel) }, "holds at most"},
		{"negative ratio", func() (Air, error) { return AirOfRatio(c(10), -1, SeaLevel) }, "humidity ratio"},
	} {
		if got, err := row.call(); err == nil || !strings.Contains(err.Error(), row.want) {
			t.Errorf("%s: %v, %v; want an error with %q", row.name, got, err, row.want)
		}
	}
	if _, err := SaturationTemperature(-1); err == nil {
		t.Error("SaturationTemperature takes a negative pressure")
	}
	for _, row := range [...][3]float64{{70, 1.2, 14.7}, {500, 0.5, 14.7}, {70, 0.5, 101325}, {215, 0.5, 14.7}, {math.NaN(), 0.5, 14.7}} {
		if got, err := AirIP(row[0], row[1], row[2]); err == nil {
			t.Errorf("AirIP(%v) = %v, want an error", row, got)
		}
	}
}

// TestHumidAirIsLighter holds the density against the gas law.
func TestHumidAirIsLighter(t *testing.T) {
	warm := rvalue.FromCelsius(25)
	dry, err := NewAir(warm, 0, SeaLevel)
	if err != nil {
		t.Fatal(err)
	}
	humid, err := NewAir(warm, 1, SeaLevel)
	if err != nil {
		t.Fatal(err)
	}
	if got, want := dry.Density().SI(), DryAirDensity(warm, SeaLevel).SI(); math.Abs(got-want) > 1e-12 {
		t.Errorf("dry air weighs %v kg/m³, by the gas law %v", got, want)
	}
	// Vapour of partial pressure e weighs 0.622 of the air it replaces.
	want := dry.Density().SI() * (1 - (1-molarRatio)*humid.VapourPressure()/SeaLevel)
	if got := humid.Density().SI(); math.Abs(got-want) > 1e-6 {
		t.Errorf("saturated air weighs %v kg/m³, want %v", got, want)
	}
}

func ExampleNewAir() {
	a, err := NewAir(rvalue.FromCelsius(20), 0.5, SeaLevel)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("dew point %.2f °C, wet bulb %.2f °C\n", a.DewPoint().Celsius(), a.WetBulb().Celsius())
	fmt.Printf("%.3f g/kg, %.2f kJ/kg, %.4f m³/kg\n", 1000*a.HumidityRatio(), a.Enthalpy()/1000, a.SpecificVolume())
	// Output:
	// dew point 9.27 °C, wet bulb 13.78 °C
	// 7.262 g/kg, 38.55 kJ/kg, 0.8402 m³/kg
}
