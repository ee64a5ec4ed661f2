package surface

import "fmt"

// Direction is that of the heat flow through a surface, as ISO 6946 sorts it.
type Direction uint8

// The directions of heat flow.
const (
	Horizontal Direction = iota // within 30° of level
	Up
	Down
)

// String returns "horizontal", "up" or "down".
func (d Direction) String() string {
	switch d {
	case Horizontal:
		return "horizontal"
	case Up:
		return "up"
	case Down:
		return "down"
	}
	return fmt.Sprintf("Direction(%d)", uint8(d))
}

// DirectionOf sorts the heat flow through a surface at a tilt of 0 to 180
// degrees from horizontal (see [Still]). The error names a tilt out of range.
func DirectionOf(tilt float64, up bool) (Direction, error) {
	// ISO 6946, table of surface resistances: the values for horizontal flow
	// apply within ±30° of it (seen), that is to surfaces from 60° to 120°.
	tilt, err := fold(tilt)
	switch {
	case err != nil:
		return 0, err
	case tilt >= 60:
		return Horizontal, nil
	case up:
		return Up, nil
	}
	return Down, nil
}

// fold checks a tilt and returns it within 0 to 90 degrees: what leans one way
// has the film of what leans the other way.
func fold(tilt float64) (float64, error) {
	if !(tilt >= 0 && tilt <= 180) {
		return 0, fmt.Errorf("surface: a tilt of %g° is impossible, use 0° (level) to 90° (upright) to 180°", tilt)
	}
	return min(tilt, 180-tilt), nil
}
