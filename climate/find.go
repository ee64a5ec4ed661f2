package climate

import (
	"fmt"
	"strconv"
	"strings"
)

// Parse reads a place as people write it and returns its county:
//
//	St. Louis County, MN     Saint Louis county, Minnesota     st louis co mn
//	Orleans Parish, LA       Baltimore city, MD                Dona Ana, NM
//	27137                    Duluth, MN
//
// Case, accents, points, apostrophes and the word County (or Parish, Borough …) do
// not matter, except to tell a county from an independent city of the same name. A
// number is a FIPS code. A town is known where it has a weather station in the
// normals; the county's Note then says so. The error is a [*PlaceError]: unknown, or
// ambiguous, with the nearest names.
func Parse(text string) (County, error) {
	place := strings.TrimSpace(text)
	if place == "" {
		return County{}, &PlaceError{Text: text, Problem: `a place is missing; write "COUNTY, ST"`}
	}
	if digits := strings.Trim(place, "0123456789"); digits == "" {
		n, err := strconv.Atoi(place)
		if err != nil || len(place) < 4 || len(place) > 5 {
			return County{}, &PlaceError{Text: text, Problem: "a FIPS number of a county has five digits"}
		}
		return ByFIPS(n)
	}
	if i := strings.LastIndexByte(place, ','); i >= 0 {
		return Find(place[:i], place[i+1:])
	}
	// No comma: the last words may be a state, as "MN" or "North Dakota".
	k := fold(place)
	for from := k.nw - 1; from >= max(1, k.nw-3); from-- {
		name := k.cut(from, k.nw)
		if s := stateOf(&name); s != nil {
			county := k.cut(0, from)
			c, problem := s.find(&county)
			if problem != nil {
				problem.Text = text
				return County{}, problem
			}
			return c, nil
		}
	}
	return County{}, stateMissing(text, k)
}

// Find returns the county of that name in a state, which is given by its postal
// code or its full name; names are read as forgivingly as by [Parse].
func Find(county, stateName string) (County, error) {
	k := fold(stateName)
	s := stateOf(&k)
	if s == nil {
		return County{}, stateUnknown(text(county, stateName), stateName, k)
	}
	k = fold(county)
	if k.n == 0 {
		return County{}, &PlaceError{Text: text(county, stateName), Problem: `a county is missing; write "COUNTY, ST"`}
	}
	c, problem := s.find(&k)
	if problem != nil {
		problem.Text = text(county, stateName)
		return County{}, problem
	}
	return c, nil
}

func text(county, stateName string) string {
	return strings.TrimSpace(county) + ", " + strings.TrimSpace(stateName)
}

// ByFIPS returns the county of that number, 27137. Numbers of counties that were
// renamed, merged or drawn anew since or before 2017 lead to their counties of 2017.
func ByFIPS(number int) (County, error) {
	if c, ok := byNumber(number); ok {
		return c, nil
	}
	for _, a := range aliases {
		if a.fips == number {
			c, _ := byNumber(a.county)
			c.Note = join(c.Note, a.note)
			return c, nil
		}
	}
	e := &PlaceError{Text: fmt.Sprintf("%05d", number), Problem: "no county has that FIPS number"}
	for _, s := range states {
		if s.fips == number/1000 {
			e.Problem += "; numbers of " + s.name + " begin with " + fmt.Sprintf("%02d", s.fips)
			return County{}, e
		}
	}
	e.Problem += ", and no state the first two digits"
	return County{}, e
}

func byNumber(number int) (County, bool) {
	for i := range states {
		s := &states[i]
		if s.fips != number/1000 {
			continue
		}
		// Numbers rise with the names but for a few, so halving mostly finds them.
		lo, hi := 1, len(s.rows)
		for lo < hi {
			row, from, to := s.rowAt((lo + hi) / 2)
			switch n := s.number(row); {
			case n == number:
				return s.decode(row), true
			case n < number:
				lo = to + 1
			default:
				hi = from
			}
		}
		for from := 1; from < len(s.rows); {
			row, _, to := s.rowAt(from)
			if s.number(row) == number {
				return s.decode(row), true
			}
			from = to + 1
		}
	}
	return County{}, false
}

// stateOf returns the state whose postal code or name is k, or nil.
func stateOf(k *key) *state {
	if k.n == 2 {
		lo, hi := 0, len(states)
		for lo < hi {
			mid := (lo + hi) / 2
			code := states[mid].code
			a, b := code[0]|0x20, code[1]|0x20 // lower case
			if a < k.b[0] || a == k.b[0] && b < k.b[1] {
				lo = mid + 1
			} else {
				hi = mid
			}
		}
		if lo < len(states) && states[lo].code[0]|0x20 == k.b[0] && states[lo].code[1]|0x20 == k.b[1] {
			return &states[lo]
		}
		return nil
	}
	for i := range states {
		if name := fold(states[i].name); name.compare(k) == 0 {
			return &states[i]
		}
	}
	if k.is("virginislands") {
		v := key{b: [56]byte{'v', 'i'}, n: 2}
		return stateOf(&v)
	}
	return nil
}

// find looks a county up by its folded name. The caller writes the text into the
// error; keys go by value where they may end up on the heap.
func (s *state) find(k *key) (County, *PlaceError) {
	bare, kind := k.withoutKind()
	if kind != anyKind {
		if c, n, _ := s.lookUp(&bare, kind); n == 1 {
			return c, nil
		}
	}
	c, n, elsewhere := s.lookUp(k, anyKind)
	if n == 1 && !elsewhere {
		return c, nil
	}
	if n > 0 {
		return County{}, s.ambiguous(*k)
	}
	for _, a := range aliases {
		if a.state == s.code && (k.is(a.name) || bare.is(a.name)) {
			c, _ := byNumber(a.county)
			c.Note = join(c.Note, a.note)
			return c, nil
		}
	}
	if t, ok := s.town(k); ok {
		c, _ := byNumber(t.fips)
		c.Note = join(c.Note, "the county of the town of "+t.name)
		return c, nil
	}
	return County{}, s.unknown(*k)
}

// lookUp returns a county named k of that kind, how many there are, and whether a
// town of the name lies elsewhere.
func (s *state) lookUp(k *key, kind kind) (c County, n int, elsewhere bool) {
	for at := s.search(k); at < len(s.rows); {
		row, _, to := s.rowAt(at)
		if folded := fold(nameOf(row)); folded.compare(k) != 0 {
			break
		}
		if found := s.decode(row); kind == anyKind || (kind == cityKind) == (found.Kind == "city") {
			c = found
			n++
			elsewhere = townElsewhere(row)
		}
		at = to + 1
	}
	return c, n, elsewhere
}

// search returns where the first row whose name is not less than k begins. Rows
// are sorted by folded name; the search halves the text, not a list of rows.
func (s *state) search(k *key) int {
	lo, hi := 1, len(s.rows) // the rows begin after a first line end
	for lo < hi {
		row, from, to := s.rowAt((lo + hi) / 2)
		name := nameOf(row)
		less := name[0]|0x20 < k.b[0] // a first letter folds to its lower case
		if name[0]|0x20 == k.b[0] {
			folded := fold(name)
			less = folded.compare(k) < 0
		}
		if less {
			lo = to + 1
		} else {
			hi = from
		}
	}
	return lo
}

func (s *state) town(k *key) (town, bool) {
	for _, t := range towns {
		if t.state == s.code {
			if name := fold(t.name); name.compare(k) == 0 {
				return t, true
			}
		}
	}
	return town{}, false
}

func join(a, b string) string {
	if a == "" {
		return b
	}
	return a + "; " + b
}
