package airspace

import (
	"fmt"

	"github.com/coldseam/coldseam/rvalue"
)

// Ventilation is how far the openings of an air space to the outdoors spoil it.
type Ventilation uint8

// The degrees of ventilation of ISO 6946.
const (
	Unventilated       Ventilation = iota // counts in full
	SlightlyVentilated                    // counts in part, see [PartlyVentilated]
	WellVentilated                        // counts nothing, nor does what lies beyond it; the outer film is that of still air
)

// String returns "unventilated", "slightly ventilated" or "well ventilated".
func (v Ventilation) String() string {
	switch v {
	case Unventilated:
		return "unventilated"
	case SlightlyVentilated:
		return "slightly ventilated"
	case WellVentilated:
		return "well ventilated"
	}
	return fmt.Sprintf("Ventilation(%d)", uint8(v))
}

// Opening areas at which a space begins to count as slightly and as well
// ventilated: ISO 6946, clause on ventilated air layers (from memory).
const (
	slightFrom = 500e-6  // m²
	wellFrom   = 1500e-6 // m²
)

// VentilationOf returns the degree of ventilation of a space with the given area
// of openings to the outdoors: per metre of length along the foot of an upright
// space, per m² of surface of a level one. Up to 500 mm² is unventilated, from
// 1500 mm² well ventilated. Drainage
// slots, the open joints at the foot of a brick wall, do not count.
// A negative or infinite area is an error.
func VentilationOf(openings rvalue.Area) (Ventilation, error) {
	// ISO 6946, clause on ventilated air layers. The limits belong to the outer
	// sides, also after arithmetic has moved them by a hair.
	const hair = 1e-9
	switch a := openings.SI(); {
	case !(a >= 0 && a < 1e6):
		return 0, refuse("openings of %g m² per metre are impossible, use 0 or more, such as 0.001 m² (1000 mm²)", a)
	case a <= slightFrom*(1+hair):
		return Unventilated, nil
	case a < wellFrom*(1-hair):
		return SlightlyVentilated, nil
	}
	return WellVentilated, nil
}

// PartlyVentilated returns the total resistance of an assembly, films included,
// one of whose air spaces has openings to the outdoors (see [VentilationOf]):
// between its total with the space unventilated and its total with the space
// well ventilated, in proportion to the openings. It is an error if a total is
// not above 0 or if ventilation would raise it.
//
// The rule is that of the 2017 edition. The one of 1997 counts half the
// resistance of the unventilated space instead.
func PartlyVentilated(unventilated, well rvalue.Resistance, openings rvalue.Area) (rvalue.Resistance, error) {
	if _, err := VentilationOf(openings); err != nil {
		return 0, err
	}
	if !(well > 0 && unventilated >= well && unventilated < 1e6*rvalue.RSI) {
		return 0, refuse("total resistances of %g m²·K/W unventilated and %g well ventilated are impossible, use totals above 0, the first not below the second", unventilated.RSI(), well.RSI())
	}
	// ISO 6946:2017, slightly ventilated air layer (from memory):
	// R = (1500 − Av)/1000·Ru + (Av − 500)/1000·Rv, with Av in mm².
	share := (openings.SI() - slightFrom) / (wellFrom - slightFrom)
	share = min(max(share, 0), 1)
	return rvalue.Resistance((1-share)*unventilated.RSI() + share*well.RSI()), nil
}
