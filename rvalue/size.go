package rvalue

import (
	"strconv"
	"strings"
	"unicode/utf8"
)

// ParseLength reads a length above zero in mm, cm, m, in or ft, also in two
// parts as carpenters write it: "90 mm", "3 1/2 in", `5'-4 1/2"`, "8 ft 6 in".
// It is exact: the value of the constant expression 3.5*Inch.
func ParseLength(s string) (Length, error) {
	at := skipBlanks(s, 0)
	v, end, err := length(s, at, len(s))
	if err != nil {
		return 0, err
	}
	if end = skipBlanks(s, end); end < len(s) {
		return 0, trailing(s, at, end)
	}
	v, err = lengthKind.checked(s, at, v)
	return Length(v), err
}

// ParseArea reads an area above zero in m², ft² (also sq ft, sqft, in²) or as
// the product of two lengths, "31 ft x 8 ft 6 in", "2.4 m × 3 m",
// "30 x 60 in" (the unit behind the last number is then that of both).
func ParseArea(s string) (Area, error) {
	v, err := product(&areaKind, s, 2)
	return Area(v), err
}

// ParseVolume reads a volume above zero in m³, ft³ (also cu ft), as the
// product of three lengths, or of an area and a length, "263 ft² x 8 ft".
func ParseVolume(s string) (Volume, error) {
	v, err := product(&volumeKind, s, 3)
	return Volume(v), err
}

// part is a unit that a length may be written in, with its size in the
// smallest one of its system, in which parts are added up exactly.
type part struct {
	small float64
	scale *scale
}

// lengthPart knows the marks and words of length units. It returns a zero
// part if b is none.
func lengthPart(b []byte) part {
	sc := lengthKind.scales
	switch string(b) {
	case "m", "metre", "metres", "meter", "meters":
		return part{1000, &sc[0]}
	case "mm":
		return part{1, &sc[1]}
	case "cm":
		return part{10, &sc[2]}
	case "in", "inch", "inches", `"`:
		return part{1, &sc[3]}
	case "ft", "foot", "feet", "'":
		return part{12, &sc[4]}
	}
	return part{}
}

// metric tells which of the two systems a unit of length is of.
func metric(sc *scale) bool { return sc != &lengthKind.scales[3] && sc != &lengthKind.scales[4] }

// length reads a length of one or more parts in s[at:to] and returns where it
// ends. It ends before anything that is no part.
func length(s string, at, to int) (v float64, end int, err error) {
	var total, last float64
	var sc *scale
	from := at
	for from < to {
		n, w, msg := number(s[from:to])
		if msg != "" {
			return 0, 0, fail(s, from+w, msg)
		}
		if w == 0 {
			break
		}
		unitAt := skipBlanks(s[:to], from+w)
		p, unitEnd := lengthUnit(s[:to], unitAt)
		if p.scale == nil {
			return 0, 0, lengthUnitError(s, at, from, unitAt, to)
		}
		switch {
		case sc == nil:
			total, sc, last = n, p.scale, p.small
		case last <= p.small || metric(sc) != metric(p.scale):
			return 0, 0, fail(s, from, strconv.Quote(s[from:unitEnd])+" does not go on a length in "+sc.unit+"; write such as 5 ft 4 1/2 in")
		case n < 0 || n*p.small >= last:
			return 0, 0, fail(s, from, strconv.Quote(s[from:unitEnd])+" is not less than 1 "+sc.unit+"; write such as 5 ft 4 1/2 in")
		default:
			total, sc, last = float64(total*(last/p.small))+n, p.scale, p.small
		}
		end = unitEnd
		from = nextPart(s[:to], end)
	}
	if sc == nil {
		return 0, 0, lengthKind.noNumber(s, s[:to], at)
	}
	return total * sc.size, end, nil
}

// nextPart skips what may stand between the parts of a length, 5'-4", 5 ft, 4 in.
func nextPart(s string, n int) int {
	m := skipBlanks(s, n)
	c, w := utf8.DecodeRuneInString(s[m:])
	if !isDash(c) && c != ',' {
		return m
	}
	if m = skipBlanks(s, m+w); m < len(s) {
		if _, k, _ := number(s[m:]); k > 0 {
			return m
		}
	}
	return n
}

// lengthUnit reads the unit of a part at the offset at.
func lengthUnit(s string, at int) (p part, end int) {
	var low [8]byte
	n := 0
	for end = at; end < len(s); {
		c, w := utf8.DecodeRuneInString(s[end:])
		switch {
		case isUnitLetter(c) && n < len(low):
			low[n] = lower(c)
			n++
			end += w
			continue
		case isUnitLetter(c):
			return part{}, end
		case n == 0 && (c == '"' || c == '″' || c == '”' || c == '“' || c == '‟'):
			return lengthPart([]byte{'"'}), end + w
		case n == 0 && isFootMark(c):
			end += w
			if c, w := utf8.DecodeRuneInString(s[end:]); isFootMark(c) { // '' for inches
				return lengthPart([]byte{'"'}), end + w
			}
			return lengthPart([]byte{'\''}), end
		}
		break
	}
	p = lengthPart(low[:n])
	if p.scale != nil && end < len(s) && s[end] == '.' {
		end++ // 16 in.
	}
	return p, end
}

func isFootMark(c rune) bool {
	return c == '\'' || c == '′' || c == '’' || c == '‘' || c == '‛'
}

// lengthUnitError says what is wrong behind the number at the offset from.
func lengthUnitError(s string, at, from, unitAt, to int) error {
	to = trimRight(s[:to])
	if _, w, _ := number(s[at:to]); from > at && w > 0 { // 263 ft2: the 2 is no second part
		first := skipBlanks(s, at+w)
		if key, ok := parseUnit(s[first:to]); ok {
			return lengthKind.badUnit(s, first, s[first:to], &key, ok)
		}
	}
	if unitAt >= to {
		return fail(s, from, "a bare number without its unit: "+strings.TrimRight(s[from:to], blanks)+" what? use "+lengthKind.use)
	}
	unit := s[unitAt:to]
	key, ok := parseUnit(unit)
	return lengthKind.badUnit(s, unitAt, unit, &key, ok)
}

// trailing says what is wrong with the text behind a length.
func trailing(s string, at, end int) error {
	if _, w, _ := number(s[at:]); w > 0 {
		unitAt := skipBlanks(s, at+w)
		unit := s[unitAt:trimRight(s)]
		if key, ok := parseUnit(unit); ok {
			return lengthKind.badUnit(s, unitAt, unit, &key, ok)
		}
	}
	return fail(s, end, "unexpected "+quoteCut(s[end:])+" behind the length")
}

// product reads a quantity of kind k, with its unit or as the product of
// lengths (and areas, in a volume) that make up dims dimensions.
func product(k *kind, s string, dims int) (float64, error) {
	at := skipBlanks(s, 0)
	cut, w := times(s, at)
	if cut < 0 {
		return parse(k, s)
	}
	total, left := 1.0, dims
	shared := sharedUnit(s)
	for from := at; ; {
		to := len(s)
		if cut >= 0 {
			to = cut
		}
		v, d, err := factor(s, from, to, shared)
		if err != nil {
			return 0, err
		}
		left -= d
		if left < 0 {
			return 0, fail(s, from, "one side too many for "+k.name)
		}
		total *= v
		if cut < 0 {
			break
		}
		from = skipBlanks(s, cut+w)
		cut, w = times(s, from)
	}
	if left > 0 {
		return 0, fail(s, at, "a side is missing, "+k.name+" has "+strconv.Itoa(dims))
	}
	return k.checked(s, at, total)
}

// times finds the next sign of multiplication at or after n, and its width;
// -1 if there is none. No unit has an x in it, nor a by.
func times(s string, n int) (at, w int) {
	for ; n < len(s); n++ {
		switch c := s[n]; {
		case c == 'x' || c == 'X' || c == '*':
			return n, 1
		case strings.HasPrefix(s[n:], "×"):
			return n, len("×")
		case c == 'b' && strings.HasPrefix(s[n:], "by"):
			return n, 2
		}
	}
	return -1, 0
}

// sharedUnit returns the unit behind the last side if it is its only one:
// in "30 x 60 in" it is the unit of both.
func sharedUnit(s string) *scale {
	last := 0
	for at, w := times(s, 0); at >= 0; at, w = times(s, last) {
		last = at + w
	}
	last = skipBlanks(s, last)
	_, n, _ := number(s[last:])
	if n == 0 {
		return nil
	}
	p, end := lengthUnit(s, skipBlanks(s, last+n))
	if skipBlanks(s, end) < len(s) {
		return nil
	}
	return p.scale
}

// factor reads one side in s[from:to], or an area where a volume has one. It
// returns the value and its dimensions. A bare number takes the shared unit.
func factor(s string, from, to int, shared *scale) (v float64, dims int, err error) {
	to = from + trimRight(s[from:max(from, to)])
	if from >= to {
		return 0, 0, fail(s, min(from, len(s)), "a side is missing, write such as 31 ft x 8 ft 6 in")
	}
	if n, w, msg := number(s[from:to]); w > 0 && msg == "" {
		unitAt := skipBlanks(s[:to], from+w)
		if unitAt == to && shared != nil {
			v := n * shared.size
			return v, 1, lengthKind.check(s[:to], from, v)
		}
		if key, ok := parseUnit(s[unitAt:to]); ok {
			if sc := areaKind.scale(&key); sc != nil {
				v := n * sc.size
				return v, 2, areaKind.check(s[:to], from, v)
			}
		}
	}
	v, end, err := length(s, from, to)
	if err != nil {
		return 0, 0, err
	}
	if end = skipBlanks(s[:to], end); end < to {
		return 0, 0, fail(s, end, "unexpected "+strconv.Quote(s[end:to])+" behind the side")
	}
	return v, 1, lengthKind.check(s[:to], from, v)
}
