package target

import (
	"fmt"
	"strings"
)

// Zone is a climate zone of the energy code (IECC, ASHRAE 169): a thermal
// number, a moisture regime and the warm-humid flag of the code's county list.
type Zone struct {
	Number    int8 // 0 (hottest) to 8 (coldest)
	Moisture  byte // 'A' moist, 'B' dry, 'C' marine; 0 when unknown, and always in zones 7 and 8, which have none
	WarmHumid bool // county marked warm-humid (an asterisk in the code's list); exists in 0A to 3A
}

// regimes holds the moisture letters that exist in each thermal zone.
var regimes = [...]string{0: "AB", 1: "AB", 2: "AB", 3: "ABC", 4: "ABC", 5: "ABC", 6: "AB", 7: "", 8: ""}

const zonesThatExist = "zones are 0A 0B 1A 1B 2A 2B 3A 3B 3C 4A 4B 4C 5A 5B 5C 6A 6B 7 8"

// ParseZone reads a climate zone: "6A", "zone 6A", "climate zone 5", "4C",
// "marine 4", "8", and for a warm-humid county "3A warm-humid" or "3A*". Case
// and hyphens do not matter. Zones 7 and 8 have no letter. In the other zones
// the letter may be left out; Moisture is then 0, unknown. The error quotes s
// and says which zones exist.
func ParseZone(s string) (Zone, error) {
	fail := func(format string, args ...any) (Zone, error) {
		return Zone{}, fmt.Errorf("climate zone %q: "+format, append([]any{s}, args...)...)
	}
	// A closed set of words, each at most once, in any order but for the number.
	var z Zone
	seen := map[string]bool{}
	numbered := false
	tidy := strings.NewReplacer("-", " ", "*", " * ")
	for _, word := range strings.Fields(tidy.Replace(strings.ToLower(s))) {
		if seen[word] {
			return fail("%q stands twice; write \"6A\" or \"marine 4\"", word)
		}
		seen[word] = true
		letter := byte(0)
		switch {
		case word == "climate" || word == "zone" || word == "warm" || word == "humid" || word == "*":
			continue
		case word == "a" || word == "moist":
			letter = 'A'
		case word == "b" || word == "dry":
			letter = 'B'
		case word == "c" || word == "marine":
			letter = 'C'
		case word[0] >= '0' && word[0] <= '9' && len(word) <= 2 && !numbered:
			numbered = true
			if word[0] == '9' {
				return fail("no zone 9; %s", zonesThatExist)
			}
			z.Number = int8(word[0] - '0')
			if len(word) == 1 {
				continue
			}
			if word[1] < 'a' || word[1] > 'c' {
				return fail("%q is not a zone; %s", word, zonesThatExist)
			}
			letter = word[1] - 'a' + 'A'
		default:
			return fail("%q is not understood; %s", word, zonesThatExist)
		}
		if z.Moisture != 0 && z.Moisture != letter {
			return fail("moisture given as both %c and %c; write one letter", z.Moisture, letter)
		}
		z.Moisture = letter
	}
	if !numbered {
		return fail("a number from 0 to 8 is missing; %s", zonesThatExist)
	}
	if seen["warm"] != seen["humid"] {
		return fail("write \"warm-humid\" in full, or an asterisk")
	}
	z.WarmHumid = seen["humid"] || seen["*"]
	if err := z.check(); err != nil {
		return fail("%w", err)
	}
	if z.WarmHumid && (z.Number > 3 || z.Moisture != 'A') {
		return fail("warm-humid counties lie in zones 0A, 1A, 2A and 3A only")
	}
	return z, nil
}

// check reports a zone that does not exist. The warm-humid flag is not held
// against it, because only zone 3 reads the flag.
func (z Zone) check() error {
	if z.Number < 0 || int(z.Number) >= len(regimes) {
		return fmt.Errorf("no zone %d; %s", z.Number, zonesThatExist)
	}
	letters := regimes[z.Number]
	switch {
	case z.Moisture == 0 || strings.IndexByte(letters, z.Moisture) >= 0:
		return nil
	case letters == "":
		return fmt.Errorf("zone %d has no moisture letter; write \"%d\"", z.Number, z.Number)
	}
	return fmt.Errorf("no zone %d%c; zone %d has %s", z.Number, z.Moisture, z.Number,
		strings.Join(strings.Split(letters, ""), ", "))
}

// String returns z as ParseZone reads it: "6A", "5", "7", "3A warm-humid". A
// zone that does not exist prints its raw fields.
func (z Zone) String() string {
	if z.check() != nil {
		return fmt.Sprintf("Zone(%d,%q)", z.Number, z.Moisture)
	}
	s := fmt.Sprint(z.Number)
	if z.Moisture != 0 {
		s += string(z.Moisture)
	}
	if z.WarmHumid {
		s += " warm-humid"
	}
	return s
}

// MoistureKnown reports whether z says all that its zone has to say about
// moisture: a letter in zones 0 to 6, nothing in 7 and 8.
func (z Zone) MoistureKnown() bool { return z.Moisture != 0 || z.Number >= 7 }

// band is a column of the code's residential tables.
type band int

const (
	band1 band = iota // zones 0 and 1
	band2
	band3
	band4 // zone 4 except marine
	band5 // zone 5 and marine 4
	band6
	band78 // zones 7 and 8
	bands  = 7
)

// band returns the table column of z: zone 0 reads with 1, 4C with 5, 8 with 7.
func (z Zone) band() band {
	switch {
	case z.Number <= 1:
		return band1
	case z.Number == 4 && z.Moisture == 'C':
		return band5
	case z.Number >= 7:
		return band78
	}
	return band(z.Number - 1)
}
