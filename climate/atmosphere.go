package climate

import (
	"fmt"
	"math"

	"github.com/coldseam/coldseam/rvalue"
)

// Heights that the standard atmosphere's formula is given for, in m (−16500 to
// 36000 ft).
const lowestHeight, highestHeight = -5000, 11000

// lapse is how much colder the air is per metre of height, in K/m: the standard
// atmosphere's 6.5 K per km (ICAO; US Standard Atmosphere 1976). Tried on the
// stations of this package against one another, 5 K per km did no better.
const lapse = 0.0065

// Atmosphere is the standard atmosphere at a height.
type Atmosphere struct {
	Pressure    float64 // Pa
	Temperature rvalue.Temperature

	// Density is that of dry air at the pressure and temperature here.
	Density rvalue.Density

	// Thinness is the pressure over that at sea level, which is also the density
	// over that at sea level of air of the same temperature: the factor for the
	// heat that leaking air carries out of a heated house.
	Thinness float64
}

// StandardAtmosphere returns pressure, temperature and density at a height from
// −5000 to 11000 m above the sea. Weather moves the pressure by some 2 %.
func StandardAtmosphere(height rvalue.Length) (Atmosphere, error) {
	z := height.SI()
	if !(z >= lowestHeight && z <= highestHeight) {
		return Atmosphere{}, fmt.Errorf("height is %.4g m; give one from %d to %d m", z, lowestHeight, highestHeight)
	}
	// ASHRAE Handbook of Fundamentals, "Psychrometrics", after the US Standard
	// Atmosphere 1976: p = 101.325·(1 − 2.25577e-5·Z)^5.2559 kPa, t = 15 − 0.0065·Z °C
	thinness := math.Pow(1-2.25577e-5*z, 5.2559)
	t := rvalue.FromCelsius(15 - lapse*z)
	p := SeaLevel * thinness
	return Atmosphere{Pressure: p, Temperature: t, Density: DryAirDensity(t, p), Thinness: thinness}, nil
}

// DryAirDensity returns the density of dry air at a pressure in Pa, by the gas law.
// Humid air at room temperature is up to 1 % lighter, see [Air.Density].
func DryAirDensity(t rvalue.Temperature, pressure float64) rvalue.Density {
	return rvalue.Density(pressure / (si.gas * t.Kelvins()))
}
