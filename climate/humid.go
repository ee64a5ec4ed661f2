package climate

import (
	"fmt"

	"github.com/coldseam/coldseam/rvalue"
)

// SeaLevel is the pressure of the standard atmosphere at sea level in Pa.
const SeaLevel = 101325.0

// Air is a state of humid air. Make one with [NewAir], [AirOfDewPoint],
// [AirOfRatio] or [AirOfWetBulb]: each is the inverse of a method of Air. All
// pressures are in Pa. The formulas are those of the ASHRAE Handbook of
// Fundamentals, chapter "Psychrometrics", for −100 to 200 °C, over ice below 0.01 °C
// and over water above. Below freezing, the dew point is therefore the frost point,
// and 100 % is saturation over ice, which a weather report's is not.
type Air struct {
	t, vapour, pressure float64 // °C, Pa, Pa
}

// NewAir returns the air of that temperature and relative humidity, a share from 0
// to 1, at a pressure in Pa.
func NewAir(t rvalue.Temperature, humidity, pressure float64) (Air, error) {
	if !(humidity >= 0 && humidity <= 1) {
		return Air{}, fmt.Errorf("relative humidity is %.4g %%; give one from 0 to 100 %%", 100*humidity)
	}
	saturated, err := SaturationPressure(t)
	if err != nil {
		return Air{}, err
	}
	return air(t, humidity*saturated, pressure)
}

// AirOfDewPoint returns the air of that temperature and dew point, which is not above
// the temperature.
func AirOfDewPoint(t, dewPoint rvalue.Temperature, pressure float64) (Air, error) {
	if dewPoint > t {
		return Air{}, fmt.Errorf("dew point %.4g °C is above the temperature, %.4g °C", dewPoint.Celsius(), t.Celsius())
	}
	vapour, err := SaturationPressure(dewPoint)
	if err != nil {
		return Air{}, err
	}
	return air(t, vapour, pressure)
}

// AirOfRatio returns the air of that temperature and humidity ratio, kg of vapour
// per kg of dry air.
func AirOfRatio(t rvalue.Temperature, humidityRatio, pressure float64) (Air, error) {
	if !(humidityRatio >= 0 && humidityRatio <= 1) {
		return Air{}, fmt.Errorf("humidity ratio is %.4g kg/kg; give one from 0 to 1", humidityRatio)
	}
	return air(t, humidityRatio*pressure/(molarRatio+humidityRatio), pressure)
}

// AirOfWetBulb returns the air of that temperature whose wet bulb shows wetBulb.
func AirOfWetBulb(t, wetBulb rvalue.Temperature, pressure float64) (Air, error) {
	if wetBulb > t {
		return Air{}, fmt.Errorf("wet bulb %.4g °C is above the temperature, %.4g °C", wetBulb.Celsius(), t.Celsius())
	}
	if _, err := SaturationPressure(wetBulb); err != nil {
		return Air{}, err
	}
	w := si.ratioOfWetBulb(t.Celsius(), wetBulb.Celsius(), pressure)
	if w < 0 {
		return Air{}, fmt.Errorf("wet bulb %.4g °C is too low for air of %.4g °C; dry air would show more", wetBulb.Celsius(), t.Celsius())
	}
	return AirOfRatio(t, w, pressure)
}

// Pressures that are believed, in Pa: from above Everest to below the Dead Sea.
const lowestPressure, highestPressure = 20000, 120000

func air(t rvalue.Temperature, vapour, pressure float64) (Air, error) {
	if !(pressure >= lowestPressure && pressure <= highestPressure) {
		return Air{}, fmt.Errorf("air pressure is %.6g Pa; give one from %d to %d Pa", pressure, lowestPressure, highestPressure)
	}
	saturated, err := SaturationPressure(t)
	if err != nil {
		return Air{}, err
	}
	// A vapour pressure that went through another measure comes back with other
	// last bits; saturated air must pass.
	if vapour > saturated*(1+1e-9) {
		return Air{}, fmt.Errorf("air of %.4g °C holds at most %.5g Pa of vapour, not %.5g Pa (%.4g %%)",
			t.Celsius(), saturated, vapour, 100*vapour/saturated)
	}
	if saturated >= pressure {
		return Air{}, fmt.Errorf("air of %.4g °C boils water at %.6g Pa; give a lower temperature", t.Celsius(), pressure)
	}
	return Air{t: t.Celsius(), vapour: min(vapour, saturated), pressure: pressure}, nil
}

// SaturationPressure returns the vapour pressure in Pa of saturated air, from −100
// to 200 °C, over ice up to 0.01 °C and over water above.
func SaturationPressure(t rvalue.Temperature) (float64, error) {
	c := t.Celsius()
	if !(c >= si.low && c <= si.high) {
		return 0, fmt.Errorf("temperature is %.4g °C; the vapour pressure is known from %g to %g °C", c, si.low, si.high)
	}
	return si.saturation(c), nil
}

// SaturationTemperature returns the temperature at which a vapour pressure in Pa
// saturates: the dew point, or the frost point below 0.01 °C.
func SaturationTemperature(vapour float64) (rvalue.Temperature, error) {
	lo, hi := si.saturation(si.low), si.saturation(si.high)
	if !(vapour >= lo && vapour <= hi) {
		return 0, fmt.Errorf("vapour pressure is %.4g Pa; give one from %.3g to %.3g Pa", vapour, lo, hi)
	}
	return rvalue.FromCelsius(si.temperature(vapour)), nil
}

// Temperature returns the temperature of the air, the dry bulb.
func (a Air) Temperature() rvalue.Temperature { return rvalue.FromCelsius(a.t) }

// Pressure returns the pressure of the air in Pa, vapour included.
func (a Air) Pressure() float64 { return a.pressure }

// VapourPressure returns the part of the pressure that is vapour's, in Pa.
func (a Air) VapourPressure() float64 { return a.vapour }

// RelativeHumidity returns the vapour pressure over that of saturation, 0 to 1.
func (a Air) RelativeHumidity() float64 { return a.vapour / si.saturation(a.t) }

// HumidityRatio returns the mass of vapour per mass of dry air, in kg/kg.
func (a Air) HumidityRatio() float64 { return ratio(a.vapour, a.pressure) }

// DewPoint returns the temperature at which the air would be saturated, the frost
// point below 0.01 °C. Air so dry that it has none above −100 °C gives −100 °C.
func (a Air) DewPoint() rvalue.Temperature { return rvalue.FromCelsius(si.temperature(a.vapour)) }

// WetBulb returns the thermodynamic wet-bulb temperature, of a bulb with ice below
// 0 °C. Where bulbs with water and with ice both have an answer it is one of them.
func (a Air) WetBulb() rvalue.Temperature {
	return rvalue.FromCelsius(si.wetBulb(a.t, a.HumidityRatio(), a.pressure))
}

// Enthalpy returns the heat content in J per kg of dry air, from zero at 0 °C for
// dry air and liquid water.
func (a Air) Enthalpy() float64 { return 1000 * si.enthalpy(a.t, a.HumidityRatio()) }

// SpecificVolume returns the volume in m³ per kg of dry air.
func (a Air) SpecificVolume() float64 { return si.volume(a.t, a.HumidityRatio(), a.pressure) }

// Density returns the mass of air and vapour together per volume.
func (a Air) Density() rvalue.Density {
	w := a.HumidityRatio()
	return rvalue.Density((1 + w) / si.volume(a.t, w, a.pressure))
}
