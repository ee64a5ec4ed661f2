package rvalue

import (
	"strconv"
	"strings"
)

// ParseLength reads a length above zero in mm, cm, m, in or ft, also in parts
// as carpenters write it: "90 mm", "3 1/2 in", `5'-4 1/2"`, "8 ft 6 in". Parts
// are added up in the smallest unit, so that the last is 102 * Inch to the bit.
func ParseLength(s string) (Length, error) {
	at, to := inner(s)
	v, end, err := length(s, at, to)
	if err != nil {
		return 0, err
	}
	if end < to {
		return 0, behindLength(s, at, end, to)
	}
	v, err = lengthKind.check(s, at, to, v)
	return Length(v), err
}

// ParseArea reads an area above zero in m², ft² (or sq ft, sqft), or as the
// product of two lengths: "31 ft x 8 ft 6 in", "2.4 m × 3 m". In "30 x 60 in"
// the one unit is that of both.
func ParseArea(s string) (Area, error) {
	v, err := product(&areaKind, s, 2)
	return Area(v), err
}

// ParseSize reads a width and a height, as the product of two lengths: "30 in x 60
// in", "2.4 m × 3 m"; in "30 x 60 in" the one unit is that of both.
func ParseSize(s string) (width, height Length, err error) {
	if _, err := ParseArea(s); err != nil {
		return 0, 0, err
	}
	at, end := inner(s)
	cut, w := times(s, at)
	if cut < 0 {
		return 0, 0, fail(s, at, "no size, write a width and a height such as 30 in x 60 in")
	}
	shared := sharedUnit(s[:end])
	x, _, err := readSide(s, at, cut, shared)
	if err != nil {
		return 0, 0, err
	}
	y, _, err := readSide(s, skipBlanks(s, cut+w), end, shared)
	return Length(x), Length(y), err
}

// ParseVolume reads a volume above zero in m³, ft³ (or cu ft), or as the
// product of three lengths, or of an area and a length: "263 ft² x 8 ft".
func ParseVolume(s string) (Volume, error) {
	v, err := product(&volumeKind, s, 3)
	return Volume(v), err
}

// lengthUnit is a unit that a length may be written in. Parts of one length
// are of one system and come with the larger unit first.
type lengthUnit struct {
	scale  *scale
	metric bool
	small  float64 // of the smallest unit of its system, a whole number
}

// lengthWord looks up a unit word or mark in lower case.
func lengthWord(b []byte) (lengthUnit, bool) {
	sc := lengthKind.scales
	switch string(b) {
	case "m", "metre", "metres", "meter", "meters":
		return lengthUnit{&sc[0], true, 1000}, true
	case "mm":
		return lengthUnit{&sc[1], true, 1}, true
	case "cm":
		return lengthUnit{&sc[2], true, 10}, true
	case "in", "inch", "inches", `"`:
		return lengthUnit{&sc[3], false, 1}, true
	case "ft", "foot", "feet", "'":
		return lengthUnit{&sc[4], false, 12}, true
	}
	return lengthUnit{}, false
}

// length reads the parts of a length from s[at:to], and returns where what is
// no part of it begins.
func length(s string, at, to int) (v float64, end int, err error) {
	var unit lengthUnit // of the part before
	for from := at; ; {
		n, w, msg := number(s[from:to])
		if msg != "" {
			return 0, 0, fail(s, from+w, msg)
		}
		if w == 0 && from == at {
			return 0, 0, lengthKind.noNumber(s, at, to)
		}
		if w == 0 {
			break
		}
		unitAt := skipBlanks(s[:to], from+w)
		u, next, ok := readLengthUnit(s[:to], unitAt)
		part := strconv.Quote
		switch {
		case !ok:
			return 0, 0, badLengthUnit(s, at, from, unitAt, to)
		case unit.scale == nil:
			v = n
		case u.metric != unit.metric || u.small >= unit.small:
			return 0, 0, fail(s, from, part(s[from:next]), " does not go on a length in ", unit.scale.unit, ", write such as 5 ft 4 1/2 in")
		case n < 0 || n*u.small >= unit.small:
			return 0, 0, fail(s, from, part(s[from:next]), " is not less than 1 ", unit.scale.unit, ", write such as 5 ft 4 1/2 in")
		default:
			v = float64(v*(unit.small/u.small)) + n // rounded before the sum, on every processor
		}
		unit, end = u, next
		from = nextPart(s[:to], end)
	}
	return v * unit.scale.size, skipBlanks(s[:to], end), nil
}

// readLengthUnit reads the unit of a part at the offset at.
func readLengthUnit(s string, at int) (u lengthUnit, end int, ok bool) {
	switch c, w := runeAt(s, at); {
	case isInchMark(c):
		u, ok = lengthWord([]byte{'"'})
		return u, at + w, ok
	case isFootMark(c):
		mark := []byte{'\''}
		if c, w2 := runeAt(s, at+w); isFootMark(c) { // '' for inches
			mark[0], w = '"', w+w2
		}
		u, ok = lengthWord(mark)
		return u, at + w, ok
	}
	var low [8]byte // room for the longest word
	n := 0
	for end = at; ; {
		c, w := runeAt(s, end)
		if !isUnitLetter(c) {
			break
		}
		if n == len(low) {
			return lengthUnit{}, end, false
		}
		low[n] = lower(c)
		n++
		end += w
	}
	u, ok = lengthWord(low[:n])
	if ok && end < len(s) && s[end] == '.' { // 16 in.
		end++
	}
	return u, end, ok
}

// nextPart skips what may stand before another part, as in 5'-4" and 5 ft, 4 in.
func nextPart(s string, end int) int {
	next := skipBlanks(s, end)
	c, w := runeAt(s, next)
	if !isDash(c) && c != ',' {
		return next
	}
	after := skipBlanks(s, next+w)
	if _, n, msg := number(s[after:]); n > 0 || msg != "" {
		return after
	}
	return end
}

func isFootMark(c rune) bool {
	return c == '\'' || c == '′' || c == '’' || c == '‘' || c == '‛'
}

func isInchMark(c rune) bool {
	return c == '"' || c == '″' || c == '”' || c == '“' || c == '‟'
}

// badLengthUnit says what is wrong behind the number at the offset from, of
// the length that starts at the offset at.
func badLengthUnit(s string, at, from, unitAt, to int) error {
	if from > at { // 263 ft2: the 2 is no second part
		if err := otherKind(s, at, to); err != nil {
			return err
		}
	}
	if unitAt >= to {
		return lengthKind.noUnit(s, from, to)
	}
	if key, ok := parseUnit(s[unitAt:to]); ok {
		return lengthKind.otherUnit(s, unitAt, to, &key)
	}
	return lengthKind.unknownUnit(s, unitAt, to)
}

// behindLength says that s[end:to] should not follow the length at the offset at.
func behindLength(s string, at, end, to int) error {
	if err := otherKind(s, at, to); err != nil {
		return err
	}
	return fail(s, end, "unexpected ", strconv.Quote(s[end:to]), " behind the length")
}

// otherKind tells whether s[at:to] is a number with a unit that is none of a
// length, such as ft² or m/s. If not, it returns nil.
func otherKind(s string, at, to int) error {
	_, w, _ := number(s[at:to])
	unitAt := skipBlanks(s[:to], at+w)
	if key, ok := parseUnit(s[unitAt:to]); ok && w > 0 && lengthKind.scale(&key) == nil {
		return lengthKind.otherUnit(s, unitAt, to, &key)
	}
	return nil
}

// product reads a quantity of kind k, with its unit or as the product of sides
// that have dims dimensions together.
func product(k *kind, s string, dims int) (float64, error) {
	at, end := inner(s)
	cut, w := times(s, at)
	if cut < 0 {
		return parse(k, s)
	}
	shared := sharedUnit(s[:end])
	v, left := 1.0, dims
	for from := at; ; {
		to := end
		if cut >= 0 {
			to = cut
		}
		side, d, err := readSide(s, from, to, shared)
		if err != nil {
			return 0, err
		}
		if left -= d; left < 0 {
			return 0, fail(s, from, "one side too many for ", k.name)
		}
		v *= side
		if cut < 0 {
			break
		}
		from = skipBlanks(s, cut+w)
		cut, w = times(s, from)
	}
	if left > 0 {
		return 0, fail(s, end, "a side is missing, ", k.name, " has ", strconv.Itoa(dims))
	}
	return k.check(s, at, end, v)
}

// times finds the next sign of multiplication from i on and its width; -1 if
// there is none. No unit that a side has contains an x or by.
func times(s string, i int) (at, width int) {
	for ; i < len(s); i++ {
		switch c := s[i]; {
		case c == 'x' || c == 'X' || c == '*':
			return i, 1
		case c == 0xC3 && strings.HasPrefix(s[i:], "×"):
			return i, len("×")
		case c == 'b' && strings.HasPrefix(s[i:], "by"):
			return i, len("by")
		}
	}
	return -1, 0
}

// sharedUnit returns the unit of the last side if that is one number with one
// unit; bare numbers before it are then in the same unit.
func sharedUnit(s string) *scale {
	last := 0
	for at, w := times(s, 0); at >= 0; at, w = times(s, last) {
		last = at + w
	}
	last = skipBlanks(s, last)
	_, n, _ := number(s[last:])
	u, end, ok := readLengthUnit(s, skipBlanks(s, last+n))
	if n == 0 || !ok || end < len(s) {
		return nil
	}
	return u.scale
}

// readSide reads s[from:to], a length, or an area where a volume is made of
// one, and returns its size and dimensions.
func readSide(s string, from, to int, shared *scale) (v float64, dims int, err error) {
	to = from + trimRight(s[from:max(from, to)])
	if from >= to {
		return 0, 0, fail(s, from, "a side is missing, write such as 31 ft x 8 ft 6 in")
	}
	if n, w, msg := number(s[from:to]); w > 0 && msg == "" {
		unitAt := skipBlanks(s[:to], from+w)
		if unitAt == to && shared != nil {
			v, err = lengthKind.check(s, from, to, n*shared.size)
			return v, 1, err
		}
		if key, ok := parseUnit(s[unitAt:to]); ok {
			if unit := areaKind.scale(&key); unit != nil {
				v, err = areaKind.check(s, from, to, n*unit.size)
				return v, 2, err
			}
		}
	}
	v, end, err := length(s, from, to)
	if err != nil {
		return 0, 0, err
	}
	if end < to {
		return 0, 0, behindLength(s, from, end, to)
	}
	v, err = lengthKind.check(s, from, to, v)
	return v, 1, err
}
