package climate

import "math"

const invSqrt2Pi = 0.398942280401432677939946059934 // 1/√(2π)

// tail returns the chance that a standard normal variable is above z ≥ 0, and the
// density at z. Sums over a year call it 12 times at every base, so the density's
// exponential serves for both: Hart's rational approximation no. 5666, in the form of
// West, "Better approximations to cumulative normal functions", 2005; coefficients
// from memory, held against math.Erfc by a test to 1e-15.
func tail(z float64) (above, density float64) {
	if z > 7 { // beyond, under 2e-12 of either
		return 0, 0
	}
	e := math.Exp(-z * z / 2)
	p := ((((((3.52624965998911e-02*z+0.700383064443688)*z+6.37396220353165)*z+33.912866078383)*z+
		112.079291497871)*z+221.213596169931)*z + 220.206867912376)
	q := (((((((8.83883476483184e-02*z+1.75566716318264)*z+16.064177579207)*z+86.7807322029461)*z+
		296.564248779674)*z+637.333633378831)*z+793.826512519948)*z + 440.413735824752)
	return e * p / q, e * invSqrt2Pi
}
