package window

import "math"

// film is the natural convection at the face of glass towards a room, by the
// direction of the heat, as for slope.
type film struct {
	level    float64 // share of the level face's value, 1 at 0° and 0 from 15° on
	sin      float64 // of the angle, at least 15°
	critical float64 // Rayleigh number at which the flow turns turbulent
	down     bool    // beyond 90°
}

// turning is the angle below which ISO 15099 takes a face for level.
const turning = 15.0

func filmOf(angle float64) film {
	f := film{level: max(0, 1-angle/turning), down: angle > Upright}
	a := max(angle, turning)
	f.sin = math.Max(math.Sin(a*math.Pi/180), 0)
	if !f.down {
		// ISO 15099 clause 8.3.2, the critical Rayleigh number, the angle in degrees:
		// 2.5e5·(e^(0.72·γ)/sin γ)^(1/5)
		f.critical = 2.5e5 * math.Exp((0.72*a-math.Log(f.sin))/5)
	}
	return f
}

// coefficient returns the convection in W/(m²·K) at a face of t K, drop K from
// air at room K, along a height in m.
//
// ISO 15099 clause 8.3.2. Below 15° the standard switches to the level value, by
// some 2 %; here a straight line leads there, so that U is continuous in tilt.
func (f *film) coefficient(air *linear, room, drop, t, height float64) float64 {
	mean := room + 0.25*(t-room)
	p := air.at(mean)
	ra := p.rayleigh(height, drop, mean)
	var nu float64
	if f.down {
		nu = max(0.56*fourth(ra*f.sin), 0.58*math.Pow(ra, 0.2))
	} else {
		nu = 0.56 * fourth(min(ra, f.critical)*f.sin)
		if ra > f.critical {
			nu += 0.13 * (math.Cbrt(ra) - math.Cbrt(f.critical))
		}
		if f.level > 0 {
			nu += f.level * (0.13*math.Cbrt(ra) - nu)
		}
	}
	return nu * p.k / height
}

func fourth(x float64) float64 { return math.Sqrt(math.Sqrt(x)) }
