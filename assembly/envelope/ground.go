package envelope

import (
	"fmt"
	"math"

	"github.com/coldseam/coldseam/rvalue"
)

// Soil is the conductivity of the ground by kind.
//
// Source: ISO 13370, from memory.
var (
	ClayOrSilt   = rvalue.Conductivity(1.5)
	SandOrGravel = rvalue.Conductivity(2.0)
	Rock         = rvalue.Conductivity(3.5)
)

// GroundFloor is a floor on the ground, or the floor and walls of a heated
// basement.
type GroundFloor struct {
	Area      rvalue.Area
	Perimeter rvalue.Length       // exposed
	Wall      rvalue.Length       // thickness of the walls above
	Floor     rvalue.Resistance   // of the floor's own layers, 0 allowed
	Soil      rvalue.Conductivity // 0: ClayOrSilt
	Depth     rvalue.Length       // of a basement's floor below ground, 0: slab on ground
	Below     rvalue.Resistance   // of a basement's walls
}

// Surface resistances that ISO 13370 takes for the ground: floor, downward
// 0.17; basement wall 0.13; outside 0.04 m²·K/W.
const (
	floorRsi = 0.17
	wallRsi  = 0.13
	groundRe = 0.04
)

func (g GroundFloor) check() error {
	for _, v := range []struct {
		name  string
		value float64
		zero  bool
	}{
		{"area in m²", float64(g.Area), false},
		{"exposed perimeter in m", float64(g.Perimeter), false},
		{"wall thickness in m", float64(g.Wall), false},
		{"floor resistance in m²·K/W", float64(g.Floor), true},
		{"soil conductivity in W/(m·K)", float64(g.Soil), true},
		{"depth in m", float64(g.Depth), true},
		{"basement wall resistance in m²·K/W", float64(g.Below), true},
	} {
		if !positive(v.value) && !(v.zero && v.value == 0) {
			return fmt.Errorf("envelope: a ground floor with a %s of %v, it must be positive and finite", v.name, v.value)
		}
	}
	return nil
}

func (g GroundFloor) soil() float64 {
	if g.Soil == 0 {
		return float64(ClayOrSilt)
	}
	return float64(g.Soil)
}

// thickness returns d_t, the floor with its surfaces as a thickness of soil.
func (g GroundFloor) thickness() float64 {
	// ISO 13370, d_t = w + λ(Rsi + Rf + Rse)
	return float64(g.Wall) + g.soil()*(floorRsi+float64(g.Floor)+groundRe)
}

// characteristic returns B', the area over half the exposed perimeter.
func (g GroundFloor) characteristic() float64 {
	return float64(g.Area) / (float64(g.Perimeter) / 2) // ISO 13370, B' = A/(P/2)
}

// U returns the transmittance of the floor, slab on ground or basement,
// without edge insulation. It refuses sizes that are not positive and finite.
//
// Source: ISO 13370, slab-on-ground floor and heated basement, from memory;
// the formula gives all 120 entries of Approved Document L1 (2002), appendix C.
func (g GroundFloor) U() (rvalue.Transmittance, error) {
	if err := g.check(); err != nil {
		return 0, err
	}
	b, d, k := g.characteristic(), g.thickness()+float64(g.Depth)/2, g.soil()
	if d < b {
		// ISO 13370, uninsulated and moderately insulated floors:
		// U = 2λ/(πB' + d)·ln(πB'/d + 1)
		return rvalue.Transmittance(2 * k / (math.Pi*b + d) * math.Log(math.Pi*b/d+1)), nil
	}
	// ISO 13370, well-insulated floors: U = λ/(0.457B' + d)
	return rvalue.Transmittance(k / (0.457*b + d)), nil
}

// WallU returns the transmittance of a basement's walls below ground.
//
// Source: ISO 13370, heated basement walls, from memory.
func (g GroundFloor) WallU() (rvalue.Transmittance, error) {
	if err := g.check(); err != nil {
		return 0, err
	}
	if g.Depth == 0 {
		return 0, fmt.Errorf("envelope: a ground floor without a depth below ground has no basement walls")
	}
	z, k := float64(g.Depth), g.soil()
	dw := k * (wallRsi + float64(g.Below) + groundRe) // ISO 13370, d_w = λ(Rsi + Rw + Rse)
	dt := min(g.thickness(), dw)                      // d_t is replaced by d_w if that is less
	// ISO 13370, U = 2λ/(πz)·(1 + 0.5d_t/(d_t + z))·ln(z/d_w + 1)
	return rvalue.Transmittance(2 * k / (math.Pi * z) * (1 + 0.5*dt/(dt+z)) * math.Log(z/dw+1)), nil
}

// EdgeInsulation is insulation along the perimeter of a slab.
type EdgeInsulation struct {
	Vertical  bool          // down the foundation, else flat under the rim
	Width     rvalue.Length // D: how deep, or how far in
	Thickness rvalue.Length
	R         rvalue.Resistance
}

// Psi returns what the edge insulation takes off along the perimeter, a
// negative linear transmittance; the floor's U with it is U + 2ψ/B'.
//
// Source: ISO 13370, edge insulation, from memory.
func (g GroundFloor) Psi(e EdgeInsulation) (rvalue.LinearTransmittance, error) {
	if err := g.check(); err != nil {
		return 0, err
	}
	if !positive(float64(e.Width)) || !positive(float64(e.Thickness)) || !positive(float64(e.R)) {
		return 0, fmt.Errorf("envelope: edge insulation %v m wide, %v m thick, of %v m²·K/W; all must be positive and finite", float64(e.Width), float64(e.Thickness), float64(e.R))
	}
	k, dt := g.soil(), g.thickness()
	d := float64(e.R)*k - float64(e.Thickness) // ISO 13370, d' = R'λ with R' = Rn − dn/λ
	if d <= 0 {
		return 0, fmt.Errorf("envelope: edge insulation that resists no more than the soil in its place")
	}
	w := float64(e.Width)
	if e.Vertical {
		w *= 2
	}
	// ISO 13370, ψ = −(λ/π)[ln(D/d_t + 1) − ln(D/(d_t + d') + 1)], 2D if vertical
	return rvalue.LinearTransmittance(-k / math.Pi * (math.Log(w/dt+1) - math.Log(w/(dt+d)+1))), nil
}

// WithEdge returns the floor's U with edge insulation.
func (g GroundFloor) WithEdge(e EdgeInsulation) (rvalue.Transmittance, error) {
	u, err := g.U()
	if err != nil {
		return 0, err
	}
	psi, err := g.Psi(e)
	if err != nil {
		return 0, err
	}
	return u + rvalue.Transmittance(2*float64(psi)/g.characteristic()), nil // ISO 13370
}
