package envelope

import (
	"fmt"
	"math"

	"github.com/coldseam/coldseam/rvalue"
)

// Buffer is an unheated space between the rooms and outdoors: a garage, an
// attic, a porch. Its temperature follows from its own balance of heat.
type Buffer struct {
	Name       string
	ToOutdoors rvalue.Conductance // ΣU·A of what separates it from outdoors
	Volume     rvalue.Volume      // 0: its own air change is left out
	AirChange  float64            // of outdoor air, 1/h
}

func (b Buffer) check() error {
	if !positive(float64(b.ToOutdoors)) {
		return fmt.Errorf("envelope: buffer %q has %v W/K to outdoors, it must be positive and finite", b.Name, float64(b.ToOutdoors))
	}
	if v := float64(b.Volume); !(v >= 0) || math.IsInf(v, 1) {
		return fmt.Errorf("envelope: buffer %q has a volume of %v m³", b.Name, v)
	}
	if n := b.AirChange; !(n >= 0 && n <= 100) {
		return fmt.Errorf("envelope: buffer %q changes its air %v times an hour, use 0 to 100", b.Name, n)
	}
	return nil
}

// outward returns the conductance from the buffer to outdoors, its air change
// included.
func (b Buffer) outward(altitude rvalue.Length) float64 {
	// ISO 13789, H_ue = H_T,ue + H_V,ue
	return float64(b.ToOutdoors) + float64(airConductance(b.AirChange, b.Volume, altitude))
}

// Balance returns the factor by which heat toward the buffer is less than
// toward outdoors, b = H_ue/(H_iu + H_ue), and the temperature of the buffer.
// inward is H_iu, the conductance between the rooms and the buffer.
//
// Source: ISO 13789, adjustment for unheated spaces.
func (b Buffer) Balance(inward rvalue.Conductance, altitude rvalue.Length, indoors, outdoors rvalue.Temperature) (factor float64, at rvalue.Temperature) {
	out := b.outward(altitude)
	factor = out / (float64(inward) + out)
	return factor, indoors.Add(rvalue.TemperatureDifference(-factor * float64(indoors.Sub(outdoors))))
}
