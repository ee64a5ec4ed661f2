package surface

import (
	"fmt"
	"math"

	"github.com/coldseam/coldseam/rvalue"
)

// OrdinaryEmittance is that of paint, wood, brick, gypsum and glass: both
// sources' value for building surfaces that are not bright metal.
const OrdinaryEmittance = 0.9

// Still returns the film resistance of a surface in still air.
//
// The tilt is in degrees from horizontal, 0 flat, 90 upright, up to 180; beyond
// 90 the surface leans the other way and counts as 180−tilt. Up says that heat
// flows upward through it, whichever face is meant; an upright surface has no
// up. The emittance lies in (0, 1]; 0 means [OrdinaryEmittance]. Anything else is
// an error.
//
// ASHRAE films change smoothly with tilt; those of ISO 6946 step at 60°, where
// the standard calls the flow horizontal.
func Still(set Set, tilt float64, up bool, emittance float64) (rvalue.Resistance, error) {
	if err := set.check(); err != nil {
		return 0, err
	}
	folded, err := fold(tilt)
	if err != nil {
		return 0, err
	}
	if emittance == 0 {
		emittance = OrdinaryEmittance
	}
	if !(emittance > 0 && emittance <= 1) {
		return 0, fmt.Errorf("surface: an emittance of %g is impossible, use above 0 to 1, such as 0.9 for ordinary surfaces or 0.05 for bright foil", emittance)
	}
	if set == ISO6946 {
		d, err := DirectionOf(tilt, up)
		if err != nil {
			return 0, err
		}
		return stillISO(d, emittance), nil
	}
	// Angle from heat rising (0°) over level (90°) to heat sinking (180°).
	if !up {
		folded = 180 - folded
	}
	return stillASHRAE(folded, emittance), nil
}

// ashraeEmittances are the columns, ashraeStill the printed cells, in
// h·ft²·°F/Btu. Rows every 45° from heat rising to heat sinking.
//
// ASHRAE Handbook—Fundamentals, surface film resistances; from memory. Seen in
// Washington Administrative Code 51-11-0526: 0.61, 0.68 and 0.92.
var (
	ashraeEmittances = [...]float64{0.05, 0.20, 0.90}
	ashraeStill      = [...][3]float64{
		{1.32, 1.10, 0.61}, // level, heat up
		{1.37, 1.14, 0.62}, // 45°, heat up
		{1.70, 1.35, 0.68}, // upright
		{2.22, 1.67, 0.76}, // 45°, heat down
		{4.55, 2.70, 0.92}, // level, heat down
	}
)

// stillASHRAE interpolates the conductances of the printed cells, which are
// what convection and radiation add to: linearly in the emittance, as radiation
// is, and linearly in the angle, a choice of ours. The conductances printed
// beside the resistances are a little off 1/R; the resistances are what people
// add up by hand, so they are the ones met exactly.
func stillASHRAE(angle, emittance float64) rvalue.Resistance {
	row, t := split(angle/45, len(ashraeStill))
	col := 0
	if emittance > ashraeEmittances[1] {
		col = 1
	}
	e := (emittance - ashraeEmittances[col]) / (ashraeEmittances[col+1] - ashraeEmittances[col])
	h := func(row int) float64 {
		cells := &ashraeStill[row]
		return (1-e)/cells[col] + e/cells[col+1]
	}
	return rvalue.Resistance(1/((1-t)*h(row)+t*h(row+1))) * rvalue.RIP
}

// split cuts a position among n evenly spaced nodes into the node below it and
// the fraction of the step above that.
func split(x float64, n int) (node int, fraction float64) {
	node = min(int(x), n-2)
	return node, x - float64(node)
}

// ISO 6946, annex on surface resistances (from memory): convective coefficients
// at an inside surface and the black body's radiative one at 20 °C, W/(m²·K).
var isoConvective = [...]float64{Horizontal: 2.5, Up: 5.0, Down: 0.7}

const isoRadiative20C = 5.7

// isoDesign are the design values for ordinary surfaces (ISO 6946, table of
// surface resistances; seen).
var isoDesign = [...]rvalue.Resistance{Horizontal: 0.13 * rvalue.RSI, Up: 0.10 * rvalue.RSI, Down: 0.17 * rvalue.RSI}

func stillISO(d Direction, emittance float64) rvalue.Resistance {
	// The design value is the formula's, rounded (0.131, 0.099, 0.172). Asked for
	// that emittance, the standard answers with the design value.
	const same = 1e-9 // what arithmetic may have done to a 0.9
	if math.Abs(emittance-OrdinaryEmittance) < same {
		return isoDesign[d]
	}
	// ISO 6946, annex on surface resistances: Rs = 1/(hc + hr), hr = ε·hr0.
	return rvalue.Resistance(1 / (isoConvective[d] + emittance*isoRadiative20C))
}
