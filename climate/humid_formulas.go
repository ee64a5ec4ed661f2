package climate

import "math"

// formulas are the handbook's humid-air formulas with the coefficients of one
// system of units: °C, Pa, kJ/kg, m³/kg or °F, psi, Btu/lb, ft³/lb; the humidity
// ratio is a mass of vapour per mass of dry air in both.
//
// Source: ASHRAE Handbook of Fundamentals, chapter "Psychrometrics"; the saturation
// pressure after Hyland and Wexler 1983.
type formulas struct {
	zero        float64 // absolute temperature of the scale's zero
	triple      float64 // where ice gives way to water
	low, high   float64 // range of the saturation formulas
	ice, water  [7]float64
	cp          float64    // heat capacity of dry air
	latent, cpv float64    // enthalpy of vapour at the scale's zero, its heat capacity
	wet, frozen wetFormula // of a wet bulb with water, and with ice
	freezing    float64    // what parts the two
	gas         float64    // gas constant of dry air in the units of pressure and volume
}

// wetFormula holds what the wet-bulb equation has of water or of ice: the heat of
// evaporation at the scale's zero, its fall per degree, the heat capacity.
type wetFormula struct{ latent, fall, cp float64 }

// molarRatio is the ratio of the molar masses of water and dry air.
const molarRatio = 0.621945

// si and ip are the two sets of coefficients; nothing changes them.
var (
	si = formulas{
		zero: 273.15, triple: 0.01, low: -100, high: 200,
		ice: [7]float64{
			-5.6745359e3, 6.3925247, -9.6778430e-3, 6.2215701e-7, 2.0747825e-9, -9.4840240e-13, 4.1635019,
		},
		water: [7]float64{
			-5.8002206e3, 1.3914993, -4.8640239e-2, 4.1764768e-5, -1.4452093e-8, 0, 6.5459673,
		},
		cp: 1.006, latent: 2501, cpv: 1.86,
		wet: wetFormula{2501, 2.326, 4.186}, frozen: wetFormula{2830, 0.24, 2.1},
		gas: 287.042,
	}
	ip = formulas{
		zero: 459.67, triple: 32.018, low: -148, high: 392,
		ice: [7]float64{
			-1.0214165e4, -4.8932428, -5.3765794e-3, 1.9202377e-7, 3.5575832e-10, -9.0344688e-14, 4.1635019,
		},
		water: [7]float64{
			-1.0440397e4, -1.1294650e1, -2.7022355e-2, 1.2890360e-5, -2.4780681e-9, 0, 6.5459673,
		},
		cp: 0.240, latent: 1061, cpv: 0.444,
		wet: wetFormula{1093, 0.556, 1}, frozen: wetFormula{1220, 0.04, 0.48},
		freezing: 32, gas: 53.350 / 144, // ft·lbf/(lb·°R), and 144 in² to the ft²
	}
)

// saturation returns the vapour pressure over ice below the triple point, over
// water above it. It does not check the range.
func (f *formulas) saturation(t float64) float64 {
	// ASHRAE Handbook of Fundamentals, "Psychrometrics", after Hyland and Wexler 1983:
	// ln p = C0/T + C1 + C2·T + C3·T² + C4·T³ + C5·T⁴ + C6·ln T
	c := &f.water
	if t <= f.triple {
		c = &f.ice
	}
	T := t + f.zero
	return math.Exp(c[0]/T + c[1] + T*(c[2]+T*(c[3]+T*(c[4]+T*c[5]))) + c[6]*math.Log(T))
}

// temperature returns where pw saturates, the inverse of saturation.
func (f *formulas) temperature(pw float64) float64 {
	// Bisection: the function rises everywhere, but steps by its rounding at the
	// triple point, where Newton's tangent may throw one back and forth.
	lo, hi := f.low, f.high
	for range 60 { // 300 K halved 60 times is below the last bit
		mid := (lo + hi) / 2
		if f.saturation(mid) < pw {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2
}

// ratio returns the humidity ratio of vapour pressure pw at total pressure p.
func ratio(pw, p float64) float64 { return molarRatio * pw / (p - pw) }

// enthalpy returns the enthalpy per mass of dry air, from zero at the scale's zero.
func (f *formulas) enthalpy(t, w float64) float64 { return f.cp*t + w*(f.latent+f.cpv*t) }

// volume returns the volume per mass of dry air.
func (f *formulas) volume(t, w, p float64) float64 {
	return f.gas * (t + f.zero) * (1 + 1.607858*w) / p
}

// ratioOfWetBulb returns the humidity ratio of air at t whose wet bulb shows wet.
func (f *formulas) ratioOfWetBulb(t, wet, p float64) float64 {
	ws, k := ratio(f.saturation(wet), p), &f.wet
	if wet < f.freezing {
		k = &f.frozen
	}
	return ((k.latent-k.fall*wet)*ws - f.cp*(t-wet)) / (k.latent + f.cpv*t - k.cp*wet)
}

// wetBulb returns what the wet bulb shows in air of t and w at p. Just below
// freezing a bulb with water and one with ice both have an answer; it is one of them.
func (f *formulas) wetBulb(t, w, p float64) float64 {
	lo, hi := f.temperature(w*p/(molarRatio+w)), t // from the dew point up
	for range 60 {
		mid := (lo + hi) / 2
		if f.ratioOfWetBulb(t, mid, p) < w {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2
}
