package surface

import (
	"fmt"

	"github.com/coldseam/coldseam/rvalue"
)

// Wind speeds of the ASHRAE set.
const (
	WinterWind = 15 * rvalue.MilePerHour
	SummerWind = 7.5 * rvalue.MilePerHour
)

// greatest wind for which an answer makes sense: a violent hurricane.
const maxWind = 75 * rvalue.MetrePerSecond

// Outside returns the film resistance of an ordinary outer surface, at any tilt,
// in a wind of the given speed. A speed of 0 means "not given" and returns the
// set's winter value: R-0.17 (15 mph) or 0.04 m²·K/W. For an outer face out of
// the wind use [Still]. A negative speed and one above 75 m/s are errors.
func Outside(set Set, wind rvalue.Speed) (rvalue.Resistance, error) {
	if err := set.check(); err != nil {
		return 0, err
	}
	if !(wind >= 0 && wind <= maxWind) {
		return 0, fmt.Errorf("surface: a wind of %.4g m/s (%.4g mph) is out of range, use 0 (the usual winter wind) to %.4g m/s", wind.SI(), wind.IP(), maxWind.SI())
	}
	if set == ISO6946 {
		return outsideISO(wind), nil
	}
	return outsideASHRAE(wind), nil
}

// ASHRAE Handbook—Fundamentals, moving air on any surface, h·ft²·°F/Btu: at
// 15 mph seen in Washington Administrative Code 51-11-0526, at 7.5 mph from memory.
const (
	ashraeWinter = 0.17
	ashraeSummer = 0.25
)

func outsideASHRAE(wind rvalue.Speed) rvalue.Resistance {
	if wind == 0 {
		return rvalue.Resistance(ashraeWinter) * rvalue.RIP
	}
	// A film in the wind conducts a + b·v (the form of Jürges' measurements, 1924,
	// as given by McAdams, Heat Transmission), here through the handbook's two
	// points. It makes b = 3.2 W/(m²·K) per m/s; Jürges has 3.9 for smooth plates.
	t := float64((wind - SummerWind) / (WinterWind - SummerWind))
	h := (1-t)/ashraeSummer + t/ashraeWinter
	return rvalue.Resistance(1/h) * rvalue.RIP
}

func outsideISO(wind rvalue.Speed) rvalue.Resistance {
	if wind == 0 {
		return 0.04 * rvalue.RSI // ISO 6946, table of surface resistances (seen)
	}
	// ISO 6946, annex on surface resistances (from memory): hce = 4 + 4v, with v
	// in m/s, and hr = ε·hr0. The table of Rse by wind speed printed there comes
	// out with hr0 at 0 °C.
	const radiative0C = 4.6 // W/(m²·K)
	return rvalue.Resistance(1 / (4 + 4*wind.SI() + OrdinaryEmittance*radiative0C))
}
