package assembly

import (
	"fmt"
	"math"

	"github.com/coldseam/coldseam/rvalue"
)

// UnknownAirChanges is the number of air changes per hour that ISO 6946 takes
// for an unheated space when nothing is known about it; from memory.
const UnknownAirChanges = 3.0

// airHeat is the heat that a cubic metre of air carries per kelvin, in
// W·h/(m³·K): ISO 6946, unheated spaces.
const airHeat = 0.33

// UnheatedSpace returns the resistance that an unheated space (a garage, a
// store, a glazed porch) adds to the inside face toward it, of area inner, as
// if it were one more layer. outer is ΣA·U of what encloses the space toward
// outdoors, the ground floor left out; airChanges its exchange with outdoors
// per hour, UnknownAirChanges if unknown. outer and airChanges may be 0, not
// both.
//
// Source: ISO 6946, unheated spaces, from memory.
func UnheatedSpace(inner rvalue.Area, outer rvalue.Conductance, airChanges float64, volume rvalue.Volume) (rvalue.Resistance, error) {
	// ISO 6946, unheated spaces: Ru = Ai / [Σ(Ae Ue) + 0.33 n V]
	if !usable(float64(inner)) {
		return 0, fmt.Errorf("assembly: %v m² toward the unheated space, it must be positive and finite", float64(inner))
	}
	for _, v := range []struct {
		name  string
		value float64
	}{{"envelope of W/K", float64(outer)}, {"number of air changes", airChanges}, {"volume in m³", float64(volume)}} {
		if !(v.value >= 0) || math.IsInf(v.value, 0) {
			return 0, fmt.Errorf("assembly: an unheated space with a %s of %v, it must be 0 or more", v.name, v.value)
		}
	}
	lost := float64(outer) + airHeat*airChanges*float64(volume)
	if lost == 0 {
		return 0, fmt.Errorf("assembly: an unheated space that loses nothing to outdoors has no finite resistance")
	}
	return rvalue.Resistance(float64(inner) / lost), nil
}

// SmallUnheatedSpace returns the resistance of a small unheated space by the
// 1997 edition's rule, which knows the areas only: inner toward the house,
// outer toward outdoors. It is at most 0.5 m²·K/W.
//
// Source: ISO 6946:1997, unheated spaces, other spaces, from memory.
func SmallUnheatedSpace(inner, outer rvalue.Area) (rvalue.Resistance, error) {
	// ISO 6946:1997, unheated spaces: Ru = 0.09 + 0.4 Ai/Ae ≤ 0.5
	if !usable(float64(inner)) || !usable(float64(outer)) {
		return 0, fmt.Errorf("assembly: an unheated space with %v m² inside and %v m² outside, both must be positive and finite", float64(inner), float64(outer))
	}
	return rvalue.Resistance(min(0.09+0.4*float64(inner)/float64(outer), 0.5)), nil
}

// AtticRoof is what covers a naturally ventilated attic over an insulated
// ceiling.
type AtticRoof uint8

// The pitched roofs of ISO 6946's table of attic resistances.
const (
	TilesAlone         AtticRoof = iota // tiles without felt, boards or the like
	TilesOnUnderlay                     // tiles on felt or boards, or sheets
	TilesOnShinyLining                  // the same, with a lining of low emissivity
	TilesOnBoards                       // tiles on boards and felt both
)

// atticR is R_u: ISO 6946, table of attic spaces, from memory.
var atticR = [...]rvalue.Resistance{
	TilesAlone:         0.06 * rvalue.RSI,
	TilesOnUnderlay:    0.2 * rvalue.RSI,
	TilesOnShinyLining: 0.3 * rvalue.RSI,
	TilesOnBoards:      0.3 * rvalue.RSI,
}

// AtticSpace returns the resistance of a ventilated attic and the roof above
// it, to be added to the ceiling as one more layer below the outside film,
// which is not part of it.
//
// Source: ISO 6946, thermal resistance of roof spaces, from memory.
func AtticSpace(roof AtticRoof) (rvalue.Resistance, error) {
	if int(roof) >= len(atticR) {
		return 0, fmt.Errorf("assembly: no attic roof %d, use TilesAlone to TilesOnBoards", roof)
	}
	return atticR[roof], nil
}
