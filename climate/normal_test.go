package climate

import (
	"math"
	"testing"
)

func TestTail(t *testing.T) {
	for z := 0.0; z < 8; z += 1.0 / 256 {
		above, density := tail(z)
		wantAbove, wantDensity := math.Erfc(z/math.Sqrt2)/2, math.Exp(-z*z/2)/math.Sqrt(2*math.Pi)
		off := 1e-15
		if z > 7 {
			off = 2e-11 // cut to zero there
		}
		if math.Abs(above-wantAbove) > off || math.Abs(density-wantDensity) > off {
			t.Errorf("tail(%g) = %g, %g; want %g, %g", z, above, density, wantAbove, wantDensity)
		}
	}
}
