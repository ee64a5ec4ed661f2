package envelope

import (
	"fmt"

	"github.com/coldseam/coldseam/rvalue"
)

// SuspendedFloor is a floor over a ventilated space on the ground, no deeper
// than half a metre below the ground around it: a crawl space with vents.
type SuspendedFloor struct {
	Area      rvalue.Area
	Perimeter rvalue.Length        // exposed
	Wall      rvalue.Length        // thickness of the walls of the space
	Floor     rvalue.Transmittance // between the rooms and the space, inside film on both faces
	Ground    rvalue.Resistance    // of insulation on the ground of the space, 0 for none
	Soil      rvalue.Conductivity  // 0: ClayOrSilt
	Height    rvalue.Length        // of the floor above the ground outside
	WallU     rvalue.Transmittance // of the walls of the space above ground
	Vents     rvalue.Length        // ε: area of vents per length of perimeter, m²/m; 0 for none
	Wind      rvalue.Speed         // yearly mean, at 10 m
	Shelter   Shelter
}

// ventShelter is f_w by Shelter: ISO 13370, table of wind shielding factors,
// from memory.
var ventShelter = [...]float64{NormalShelter: 0.05, WellSheltered: 0.02, Exposed: 0.10}

// U returns the transmittance of the floor from the rooms through the space to
// outdoors, as a yearly mean. It is always less than Floor alone.
//
// Source: ISO 13370, suspended floors, from memory. No worked example of the
// standard was found; the tests hold it against its terms done by hand.
func (s SuspendedFloor) U() (rvalue.Transmittance, error) {
	if err := checkSizes("a suspended floor",
		size{"area in m²", float64(s.Area), false},
		size{"exposed perimeter in m", float64(s.Perimeter), false},
		size{"wall thickness in m", float64(s.Wall), false},
		size{"U-factor in W/(m²·K)", float64(s.Floor), false},
		size{"ground insulation in m²·K/W", float64(s.Ground), true},
		size{"soil conductivity in W/(m·K)", float64(s.Soil), true},
		size{"height in m", float64(s.Height), true},
		size{"wall U-factor in W/(m²·K)", float64(s.WallU), true},
		size{"vent area in m²/m", float64(s.Vents), true},
		size{"wind in m/s", float64(s.Wind), true},
	); err != nil {
		return 0, err
	}
	if int(s.Shelter) >= len(ventShelter) {
		return 0, fmt.Errorf("envelope: no shelter %d, use NormalShelter, WellSheltered or Exposed", s.Shelter)
	}
	lambda, b := soil(s.Soil), characteristic(s.Area, s.Perimeter)
	ground := onGround(b, equivalent(s.Wall, lambda, s.Ground), lambda) // U_g, with d_g for d_t
	// ISO 13370, suspended floors: U_x = 2hU_w/B' + 1450εvf_w/B'
	walls := 2 * float64(s.Height) * float64(s.WallU) / b
	vents := 1450 * float64(s.Vents) * float64(s.Wind) * ventShelter[s.Shelter] / b
	// ISO 13370, suspended floors: 1/U = 1/U_f + 1/(U_g + U_x)
	return rvalue.Transmittance(1 / (1/float64(s.Floor) + 1/(ground+walls+vents))), nil
}
