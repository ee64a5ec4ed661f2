package surface

import (
	"fmt"
	"strings"
)

// Set is a published set of surface films. Its zero value is [ASHRAE].
type Set uint8

// The sets of surface films.
const (
	ASHRAE  Set = iota // ASHRAE Handbook—Fundamentals
	ISO6946            // ISO 6946
)

// String returns the name of the set's source.
func (s Set) String() string {
	switch s {
	case ASHRAE:
		return "ASHRAE"
	case ISO6946:
		return "ISO 6946"
	}
	return fmt.Sprintf("Set(%d)", uint8(s))
}

// ParseSet reads "ashrae" or "iso6946". Case, blanks and hyphens do not matter,
// so that it reads what String prints.
func ParseSet(s string) (Set, error) {
	switch strings.NewReplacer(" ", "", "-", "").Replace(strings.ToLower(s)) {
	case "ashrae":
		return ASHRAE, nil
	case "iso6946":
		return ISO6946, nil
	}
	return 0, fmt.Errorf("surface: %q is no set of surface films (use ashrae or iso6946)", s)
}

func (s Set) check() error {
	if s > ISO6946 {
		return fmt.Errorf("surface: set %d is no set of surface films (use ASHRAE or ISO6946)", uint8(s))
	}
	return nil
}
