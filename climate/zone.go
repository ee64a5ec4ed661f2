package climate

import (
	"fmt"
	"slices"
	"strings"
)

// Zone is a climate zone of the energy code (IECC, ASHRAE 169). Its fields are
// those of target.Zone, so that target.Zone(z) converts it.
type Zone struct {
	Number    int8 // 0 (hottest) to 8 (coldest)
	Moisture  byte // 'A' moist, 'B' dry, 'C' marine; 0 in zones 7 and 8, which have none
	WarmHumid bool // county marked warm-humid, see [County]
}

// String returns "6A", "7", "2A warm-humid".
func (z Zone) String() string {
	s := z.Short()
	if z.WarmHumid {
		s += " warm-humid"
	}
	return s
}

// Short returns z without the warm-humid mark: "6A", "7".
func (z Zone) Short() string {
	if z.Moisture == 0 {
		return fmt.Sprint(z.Number)
	}
	return fmt.Sprintf("%d%c", z.Number, z.Moisture)
}

// zoneOf reads a zone of the embedded table, "6A" or "2A*"; a test reads all.
func zoneOf(s string) Zone {
	z := Zone{Number: int8(s[0] - '0')}
	for i := 1; i < len(s); i++ {
		if s[i] == '*' {
			z.WarmHumid = true
		} else {
			z.Moisture = s[i]
		}
	}
	return z
}

// editions holds the years of the editions that have a map of these zones. The
// map of 2003 stayed unchanged from the edition of 2006 to that of 2018; the map
// of ASHRAE 169-2013 came in with 2021. That 2024 kept the boundaries of 2021 is a
// note by a user of the county table, not checked in the code's text.
var editions = [...]int{2006, 2009, 2012, 2015, 2018, firstNewMap, 2024}

const firstNewMap = 2021

// newMap reports whether the IECC edition of that year uses the newer map.
func newMap(edition int) (bool, error) {
	if !slices.Contains(editions[:], edition) {
		years := strings.Trim(fmt.Sprint(editions), "[]")
		return false, fmt.Errorf("no IECC edition %d; editions are %s", edition, years)
	}
	return edition >= firstNewMap, nil
}
