package airspace

import (
	"math"

	"github.com/coldseam/coldseam/rvalue"
)

// greatestFitted is the greatest thickness of the table behind the curves, in m.
// Deeper spaces get its convective coefficient, as the handbook says (from
// memory) for heat flowing up or sideways. With the heat flowing down that is a
// little on the safe side.
var greatestFitted = (3.5 * rvalue.Inch).SI()

// curve is the Nusselt number, the air's heat flow over that of still air, of
// one position as a function of the Rayleigh number. With r = Ra/1e5:
//
//	Nu = (1 + x^n)^(1/n),  x^−8 = a^−8 + b^−8,  a = e^lnA·r^m,  b = e^lnB·r^q
//
// that is still air at small Ra, a steep power of Ra where the flow sets in and
// a flatter one beyond, blended as Churchill and Usagi (1972) do. An infinite lnB
// leaves the second power out; n = 1 makes it Nu = 1 + a. n is a power of two, so
// that square roots suffice.
type curve struct {
	lnA, m, lnB, q float64
	log2n          int
}

// The curves, fitted to the plane-air-space table: TestFit repeats the fit.
var (
	curveUp      = curve{1.4555, 0.2877, math.Inf(1), 0, 3}
	curveUp45    = curve{2.0226, 0.5595, 1.3215, 0.3041, 2}
	curveUpright = curve{1.2436, 0.5049, 1.1563, 0.3018, 2}
	curveDown45  = curve{0.7381, 0.4112, 1.0752, 0.2327, 2}
	curveDown    = curve{-2.0183, 0.5464, math.Inf(1), 0, 0}
)

// at returns the Nusselt number at the given natural logarithm of Ra/1e5.
func (c *curve) at(lnR float64) float64 {
	a, ratio := math.Exp(c.lnA+c.m*lnR), math.Exp(c.lnA-c.lnB+(c.m-c.q)*lnR)
	xn := power(a, c.log2n) / root(1+power(ratio, 3), 3-c.log2n) // x^n, from x = a/(1 + (a/b)^8)^(1/8)
	return root(1+xn, c.log2n)
}

// power returns x to the power 2^n, root its inverse.
func power(x float64, n int) float64 {
	for range n {
		x *= x
	}
	return x
}

func root(x float64, n int) float64 {
	for range n {
		x = math.Sqrt(x)
	}
	return x
}

// convection returns the convective coefficient in W/(m²·K), still air's
// conduction included, of a space d m thick at a tilt of 0 to 90 degrees, a
// mean temperature of t K and a difference of dT K.
func convection(d, tilt float64, up bool, t, dT float64) float64 {
	d = min(d, greatestFitted)
	k, ra := air(t)
	// Below Ra = 1 no air moves that would matter: the curves are at 1.
	return nusselt(math.Log(max(ra*dT*d*d*d, 1)/1e5), tilt, up) * k / d
}

// nusselt interpolates between the five positions of the table. With the heat
// flowing up it goes with the cosine of the tilt, as in the correlation of
// Hollands, Unny, Raithby and Konicek (1976); with the heat flowing down with
// the sine, as Arnold, Catton and Edwards (1976) found. Both give 45° and 90°
// the table's own curves.
func nusselt(lnR, tilt float64, up bool) float64 {
	switch {
	case tilt >= 90:
		return curveUpright.at(lnR)
	case tilt <= 0 && up:
		return curveUp.at(lnR)
	case tilt <= 0:
		return curveDown.at(lnR)
	}
	const half = math.Sqrt2 / 2 // sine and cosine of 45°
	sin, cos := math.Sincos(tilt * math.Pi / 180)
	switch {
	case up && tilt <= 45:
		return between(&curveUp, &curveUp45, (1-cos)/(1-half), lnR)
	case up:
		return between(&curveUp45, &curveUpright, 1-cos/half, lnR)
	case tilt >= 45:
		return between(&curveDown45, &curveUpright, (sin-half)/(1-half), lnR)
	}
	return between(&curveDown, &curveDown45, sin/half, lnR)
}

func between(from, to *curve, share, lnR float64) float64 {
	return (1-share)*from.at(lnR) + share*to.at(lnR)
}

// air returns the conductivity of air in W/(m·K) at t K and sea-level pressure,
// and its Rayleigh number per m³ and K of difference.
func air(t float64) (k, rayleigh float64) {
	// ISO 15099, annex on properties of gases, air (from memory): linear in the
	// temperature, and a perfect gas.
	const (
		pressure = 101325          // Pa
		gas      = 8314.46 / 28.97 // J/(kg·K)
		gravity  = 9.80665         // m/s²
	)
	k = 2.873e-3 + 7.760e-5*t
	viscosity := 3.723e-6 + 4.94e-8*t // Pa·s
	heat := 1002.737 + 1.2324e-2*t    // J/(kg·K)
	density := pressure / (gas * t)
	// Ra = g·β·ΔT·d³/(ν·α), with β = 1/T, ν = µ/ρ, α = k/(ρ·cp).
	return k, gravity * density * density * heat / (t * viscosity * k)
}
