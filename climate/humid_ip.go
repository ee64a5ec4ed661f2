package climate

import "fmt"

// The functions of this file are the handbook's inch-pound formulas with the
// coefficients printed for them, which differ from the SI ones in the last digits
// (saturation by less than 0.003 Pa from 0 to 95 °F). The library itself computes
// in SI, with [Air]; these stand beside it for who must match inch-pound tables.
// Temperatures are in °F and pressures in psi.

// SaturationPressureIP returns the vapour pressure of saturated air in psi, from
// −148 to 392 °F, over ice up to 32.018 °F and over water above.
func SaturationPressureIP(fahrenheit float64) (float64, error) {
	if !(fahrenheit >= ip.low && fahrenheit <= ip.high) {
		return 0, fmt.Errorf("temperature is %.4g °F; the vapour pressure is known from %g to %g °F", fahrenheit, ip.low, ip.high)
	}
	return ip.saturation(fahrenheit), nil
}

// HumidAirIP is what the inch-pound formulas say of one state of air.
type HumidAirIP struct {
	DewPoint, WetBulb float64 // °F
	HumidityRatio     float64 // lb of vapour per lb of dry air
	Enthalpy          float64 // Btu per lb of dry air, from zero at 0 °F for dry air
	SpecificVolume    float64 // ft³ per lb of dry air
}

// AirIP computes the state of air at fahrenheit, −148 to 200 °F, of a relative
// humidity from 0 to 1, at a pressure in psi.
func AirIP(fahrenheit, humidity, psi float64) (HumidAirIP, error) {
	if !(humidity >= 0 && humidity <= 1) {
		return HumidAirIP{}, fmt.Errorf("relative humidity is %.4g %%; give one from 0 to 100 %%", 100*humidity)
	}
	saturated, err := SaturationPressureIP(fahrenheit)
	if err != nil {
		return HumidAirIP{}, err
	}
	if !(psi >= 3 && psi <= 17) {
		return HumidAirIP{}, fmt.Errorf("air pressure is %.5g psi; give one from 3 to 17 psi", psi)
	}
	if saturated >= psi {
		return HumidAirIP{}, fmt.Errorf("air of %.4g °F boils water at %.5g psi; give a lower temperature", fahrenheit, psi)
	}
	w := ratio(humidity*saturated, psi)
	return HumidAirIP{
		DewPoint:       ip.temperature(humidity * saturated),
		WetBulb:        ip.wetBulb(fahrenheit, w, psi),
		HumidityRatio:  w,
		Enthalpy:       ip.enthalpy(fahrenheit, w),
		SpecificVolume: ip.volume(fahrenheit, w, psi),
	}, nil
}
