package material

import (
	"math"

	"github.com/coldseam/coldseam/rvalue"
)

// ColdLaw says how the conductivity of a material follows its mean temperature.
type ColdLaw uint8

// The laws of cold. The zero value is a constant conductivity.
const (
	NoLaw    ColdLaw = iota
	EPSLaw           // expanded polystyrene of about 22 kg/m³ and less
	EPS9Law          // expanded polystyrene of about 29 kg/m³
	XPSLaw           // extruded polystyrene
	IsoLaw           // polyisocyanurate, which gets worse in the cold
	FibreLaw         // mineral fibre batts and loose fill

	lastColdLaw = FibreLaw
)

// coldNames are the laws as the catalogue writes them.
var coldNames = map[string]ColdLaw{"": NoLaw, "eps": EPSLaw, "eps9": EPS9Law, "xps": XPSLaw, "iso": IsoLaw, "fibre": FibreLaw}

// labelMean is the mean temperature at which a North American label holds, 75 °F
// (16 CFR 460.5).
var labelMean = rvalue.FromFahrenheit(75)

// Factor returns what to multiply the resistance of m at 24 °C (75 °F) with when
// its mean temperature is another, and where that comes from; ok is false, and
// the factor 1, for a material whose conductivity is taken as constant or a mean
// that is no temperature. Outside the range that the source covers the factor is
// that of its nearer end, and basis says so.
func (m *Material) Factor(mean rvalue.Temperature) (factor float64, basis string, ok bool) {
	if !(mean > 0) || math.IsInf(float64(mean), 0) {
		return 1, "", false
	}
	switch m.Cold {
	case EPSLaw:
		return polystyrene(mean, 1.214, 0.0028, "type II")
	case EPS9Law:
		return polystyrene(mean, 1.204, 0.0026, "type IX")
	case XPSLaw:
		return polystyrene(mean, 1.172, 0.0022, "XPS")
	case IsoLaw:
		return isocyanurate(mean)
	case FibreLaw:
		return fibre(mean, float64(m.Conductivity))
	}
	return 1, "", false
}

// held limits t to the range from lo to hi and completes the basis with it.
func held(t, lo, hi float64, basis, span string) (float64, string) {
	const rounding = 1e-6 // K, of the conversion between scales
	if t < lo-rounding || t > hi+rounding {
		return min(max(t, lo), hi), basis + ", held constant outside " + span
	}
	return t, basis
}

// polystyrene returns (a − bT)/(a − b·75), T in °F.
func polystyrene(mean rvalue.Temperature, a, b float64, kind string) (float64, string, bool) {
	// EPS industry booklet, p. 12: F = a − bT multiplies R at 75 °F. At 75 °F the
	// formulas themselves give 1.004 (type II), 1.009 (IX) and 1.007 (XPS) instead
	// of 1; dividing by that keeps the label's value at the label's temperature.
	t, basis := held(mean.Fahrenheit(), 20, 110, "linear factor of the EPS industry booklet, "+kind, "20 to 110 °F")
	return (a - b*t) / (a - b*75), basis, true
}

// isocyanurate goes through the tabled points on straight lines.
func isocyanurate(mean rvalue.Temperature) (float64, string, bool) {
	// R per inch 5.6, 5.0, 4.5 at a mean of 75, 40, 25 °F: an EPS maker's page, an
	// interested party. Other readings of the same tests go from 25 to 66 % lost at
	// 15 °F; a caution more than a fact about one product.
	t, basis := held(mean.Fahrenheit(), 25, 75, "R-5.6, 5.0, 4.5 per inch at 75, 40, 25 °F, a caution and no fact about one product", "25 to 75 °F")
	r := 5.0 + (5.6-5.0)*(t-40)/(75-40)
	if t < 40 {
		r = 4.5 + (5.0-4.5)*(t-25)/(40-25)
	}
	return r / 5.6, basis, true
}

// fibreCoefficients are f_T per kelvin by conductivity in W/(m·K): ISO
// 10456:2007, conversion coefficients of mineral wool batts and loose fill, from
// memory.
var fibreCoefficients = [...]struct{ k, fT float64 }{{0.035, 0.0046}, {0.040, 0.0056}, {0.045, 0.0062}, {0.050, 0.0069}}

// fibre returns exp(−f_T (T − 24 °C)).
func fibre(mean rvalue.Temperature, k float64) (float64, string, bool) {
	// ISO 10456:2007, conversion for temperature: λ2 = λ1 exp(f_T (T2 − T1)).
	c := fibreCoefficients
	fT := c[0].fT
	for i := 1; i < len(c); i++ {
		if k > c[i-1].k {
			x := min((k-c[i-1].k)/(c[i].k-c[i-1].k), 1)
			fT = c[i-1].fT + x*(c[i].fT-c[i-1].fT)
		}
	}
	t, basis := held(mean.Celsius(), 0, 30, "ISO 10456 conversion, coefficients from memory", "0 to 30 °C")
	return math.Exp(-fT * (t - labelMean.Celsius())), basis, true
}
