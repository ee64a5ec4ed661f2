package envelope

import (
	"fmt"
	"math"

	"github.com/coldseam/coldseam/rvalue"
)

// Conductivity of the ground by kind.
//
// Source: ISO 13370, from memory.
const (
	ClayOrSilt   = 1.5 * rvalue.WattPerMetreKelvin
	SandOrGravel = 2.0 * rvalue.WattPerMetreKelvin
	Rock         = 3.5 * rvalue.WattPerMetreKelvin
)

// Surface resistances that ISO 13370 takes: floors, heat flowing down, 0.17;
// basement walls 0.13; outside 0.04 m²·K/W (seen in ISO 6946's table).
const (
	floorRsi = 0.17
	wallRsi  = 0.13
	outerRse = 0.04
)

// GroundSource says what GroundFloor goes by.
const GroundSource = "ISO 13370, steady heat through floors and walls of heated basements, checked against printed tables"

// GroundFloor is a floor on the ground, or the floor and walls of a heated
// basement.
type GroundFloor struct {
	Area      rvalue.Area
	Perimeter rvalue.Length       // exposed: between heated rooms and outdoors
	Wall      rvalue.Length       // thickness of the walls above
	Floor     rvalue.Resistance   // of the floor's own layers without films, 0 allowed
	Soil      rvalue.Conductivity // 0: ClayOrSilt
	Depth     rvalue.Length       // of a basement's floor below ground, 0: slab on ground
	Below     rvalue.Resistance   // of a basement's walls without films, 0 allowed
}

// size is a named number to be checked.
type size struct {
	name   string
	value  float64
	orZero bool
}

// checkSizes refuses the first size that is not positive and finite.
func checkSizes(what string, sizes ...size) error {
	for _, s := range sizes {
		switch {
		case positive(s.value) || s.orZero && s.value == 0:
		case s.orZero:
			return fmt.Errorf("envelope: %s with a %s of %v, it must be 0 or more and finite", what, s.name, s.value)
		default:
			return fmt.Errorf("envelope: %s with a %s of %v, it must be positive and finite", what, s.name, s.value)
		}
	}
	return nil
}

func (g GroundFloor) check() error {
	return checkSizes("a ground floor",
		size{"area in m²", float64(g.Area), false},
		size{"exposed perimeter in m", float64(g.Perimeter), false},
		size{"wall thickness in m", float64(g.Wall), false},
		size{"floor resistance in m²·K/W", float64(g.Floor), true},
		size{"soil conductivity in W/(m·K)", float64(g.Soil), true},
		size{"depth in m", float64(g.Depth), true},
		size{"basement wall resistance in m²·K/W", float64(g.Below), true},
	)
}

// soil returns the conductivity of the ground, λ, with its default.
func soil(k rvalue.Conductivity) float64 {
	if k == 0 {
		return float64(ClayOrSilt)
	}
	return float64(k)
}

// equivalent returns d_t, a floor of resistance r with its surfaces under walls
// w thick, as a thickness of soil of conductivity lambda.
func equivalent(w rvalue.Length, lambda float64, r rvalue.Resistance) float64 {
	// ISO 13370, d_t = w + λ(Rsi + Rf + Rse)
	return float64(w) + lambda*(floorRsi+float64(r)+outerRse)
}

// characteristic returns B', the area over half the exposed perimeter.
func characteristic(a rvalue.Area, p rvalue.Length) float64 {
	return float64(a) / (float64(p) / 2) // ISO 13370, B' = A/(P/2)
}

// onGround returns the U of a floor of equivalent thickness d and
// characteristic dimension b on soil of conductivity lambda.
func onGround(b, d, lambda float64) float64 {
	if d < b {
		// ISO 13370, uninsulated and moderately insulated floors:
		// U = 2λ/(πB' + d)·ln(πB'/d + 1)
		return 2 * lambda / (math.Pi*b + d) * math.Log(math.Pi*b/d+1)
	}
	// ISO 13370, well-insulated floors: U = λ/(0.457B' + d)
	return lambda / (0.457*b + d)
}

// U returns the transmittance toward outdoors, as a yearly mean, of the floor,
// slab on ground or basement, without edge insulation. It refuses sizes that
// are not positive and finite.
//
// Source: ISO 13370, slab-on-ground floor and heated basement, from memory;
// the formula gives all 120 entries of Approved Document L1 (2002), appendix C.
func (g GroundFloor) U() (rvalue.Transmittance, error) {
	if err := g.check(); err != nil {
		return 0, err
	}
	lambda := soil(g.Soil)
	// ISO 13370, heated basement: d_t is replaced by d_t + z/2
	d := equivalent(g.Wall, lambda, g.Floor) + float64(g.Depth)/2
	return rvalue.Transmittance(onGround(characteristic(g.Area, g.Perimeter), d, lambda)), nil
}

// WallU returns the transmittance toward outdoors of a basement's walls below
// ground, whose area is the perimeter times the depth.
//
// Source: ISO 13370, heated basement, from memory.
func (g GroundFloor) WallU() (rvalue.Transmittance, error) {
	if err := g.check(); err != nil {
		return 0, err
	}
	if g.Depth == 0 {
		return 0, fmt.Errorf("envelope: a ground floor without a depth below ground has no basement walls")
	}
	z, lambda := float64(g.Depth), soil(g.Soil)
	dw := lambda * (wallRsi + float64(g.Below) + outerRse)  // ISO 13370, d_w = λ(Rsi + Rw + Rse)
	dt := min(equivalent(g.Wall, lambda, g.Floor), dw)      // d_t is replaced by d_w if that is less
	u := 2 * lambda / (math.Pi * z) * (1 + 0.5*dt/(dt+z)) * // ISO 13370, heated basement walls
		math.Log(z/dw+1)
	return rvalue.Transmittance(u), nil
}

// EdgeInsulation is insulation along the perimeter of a slab.
type EdgeInsulation struct {
	Vertical  bool          // down the foundation, else flat under the rim
	Width     rvalue.Length // D: how deep, or how far in
	Thickness rvalue.Length
	R         rvalue.Resistance
}

// Psi returns what the edge insulation takes off along the perimeter, a
// negative linear transmittance; the floor's U with it is U + 2ψ/B'. It refuses
// a board that resists no more than the soil in its place.
//
// Source: ISO 13370, edge insulation, from memory.
func (g GroundFloor) Psi(e EdgeInsulation) (rvalue.LinearTransmittance, error) {
	if err := g.check(); err != nil {
		return 0, err
	}
	if err := checkSizes("edge insulation",
		size{"width in m", float64(e.Width), false},
		size{"thickness in m", float64(e.Thickness), false},
		size{"resistance in m²·K/W", float64(e.R), false},
	); err != nil {
		return 0, err
	}
	lambda := soil(g.Soil)
	dt := equivalent(g.Wall, lambda, g.Floor)
	d := float64(e.R)*lambda - float64(e.Thickness) // ISO 13370, d' = R'λ with R' = Rn − dn/λ
	if d <= 0 {
		return 0, fmt.Errorf("envelope: edge insulation of %s resists no more than the soil in its place", e.R)
	}
	w := float64(e.Width)
	if e.Vertical {
		w *= 2
	}
	// ISO 13370, ψ = −(λ/π)[ln(D/d_t + 1) − ln(D/(d_t + d') + 1)], 2D if vertical
	return rvalue.LinearTransmittance(-lambda / math.Pi * (math.Log(w/dt+1) - math.Log(w/(dt+d)+1))), nil
}

// WithEdge returns the floor's U with edge insulation. A basement's floor has
// none.
func (g GroundFloor) WithEdge(e EdgeInsulation) (rvalue.Transmittance, error) {
	if g.Depth > 0 {
		return 0, fmt.Errorf("envelope: edge insulation belongs to a slab on ground, not to a basement %s deep", g.Depth)
	}
	u, err := g.U()
	if err != nil {
		return 0, err
	}
	psi, err := g.Psi(e)
	if err != nil {
		return 0, err
	}
	return u + rvalue.Transmittance(2*float64(psi)/characteristic(g.Area, g.Perimeter)), nil // ISO 13370
}
