package climate

import (
	"errors"
	"fmt"
	"strings"

	"github.com/coldseam/coldseam/rvalue"
)

// Heights above the sea at which weather is wanted: the Dead Sea's shore and Everest.
const (
	lowest  = -430 * rvalue.Metre
	highest = 9000 * rvalue.Metre
)

// ParseElevation reads a height above the sea from −430 to 9000 m as
// [rvalue.ParseLength] reads a length, and with a minus sign one below it:
// "5280 ft", "1610 m", "-282 ft" in Death Valley. The error is a *[rvalue.ParseError].
func ParseElevation(text string) (rvalue.Length, error) {
	size := strings.TrimLeft(text, " \t")
	above := true
	for _, minus := range [...]string{"-", "\u2212"} {
		if rest, ok := strings.CutPrefix(size, minus); ok {
			size, above = rest, false
			break
		}
	}
	size = strings.TrimSpace(size)
	if size == "0 ft" || size == "0 m" { // a length is not 0, a height may be
		return 0, nil
	}
	v, err := rvalue.ParseLength(size)
	if err != nil {
		var place *rvalue.ParseError
		if errors.As(err, &place) {
			return 0, &rvalue.ParseError{Text: text, Offset: place.Offset + len(text) - len(size), Msg: place.Msg}
		}
		return 0, err
	}
	if !above {
		v = -v
	}
	if err := checkElevation(v); err != nil {
		return 0, &rvalue.ParseError{Text: text, Msg: err.Error()}
	}
	return v, nil
}

// checkElevation refuses what is no height on earth, not a number too.
func checkElevation(v rvalue.Length) error {
	if v >= lowest && v <= highest {
		return nil
	}
	return fmt.Errorf("elevation is %.0f m (%.0f ft); give one from %.0f to %.0f m (%.0f to %.0f ft)",
		v.SI(), v.IP(), lowest.SI(), highest.SI(), lowest.IP(), highest.IP())
}

// Height writes a height above the sea, "1428 ft" or "435 m".
func Height(v rvalue.Length, u rvalue.Units) string {
	if u == rvalue.IP {
		return fmt.Sprintf("%.0f ft", v.IP())
	}
	return fmt.Sprintf("%.0f m", v.SI())
}

// Overland writes a distance in whole miles or kilometres, "54 miles", "1 km".
func Overland(d rvalue.Length, u rvalue.Units) string {
	const mile = 5280 * rvalue.Foot
	n, unit := float64(d/rvalue.Metre)/1000, "km"
	if u == rvalue.IP {
		n, unit = float64(d/mile), "miles"
	}
	text := fmt.Sprintf("%.0f %s", n, unit)
	if text == "1 miles" {
		return "1 mile"
	}
	return text
}
