package rvalue

import (
	"math"
	"strconv"
)

// Beyond these a value is refused, in the kind's SI unit. No wall comes near
// them, and within them a calculation on what a person wrote can not overflow.
const (
	smallest = 1e-30
	largest  = 1e30
)

// parse reads a quantity of kind k, one number with one unit.
func parse(k *kind, s string) (float64, error) {
	v, at, unit, err := k.read(s)
	if err != nil {
		return 0, err
	}
	return k.check(s, at, len(s), v*unit.size)
}

// read takes s apart into a number and a unit of kind k. The number, or the
// label before it, stands at the offset at.
func (k *kind) read(s string) (v float64, at int, unit *scale, err error) {
	at, end := inner(s)
	from, label := k.label(s[:end], at)
	v, n, msg := number(s[from:end])
	if msg != "" {
		return 0, at, nil, fail(s, from+n, msg)
	}
	if n == 0 {
		return 0, at, nil, k.noNumber(s, at, end)
	}
	unitAt := skipBlanks(s, from+n)
	if unitAt >= end {
		if label == none {
			return 0, at, nil, k.noUnit(s, at, end)
		}
		return v, at, &k.scales[label], nil
	}
	key, known := parseUnit(s[unitAt:end])
	if !known {
		return 0, at, nil, k.unknownUnit(s, unitAt, end)
	}
	unit = k.scale(&key)
	switch {
	case unit == nil:
		return 0, at, nil, k.otherUnit(s, unitAt, end, &key)
	case label == labelSI && unit != &k.scales[labelSI]:
		return 0, at, nil, fail(s, unitAt, s[at:at+3], " means ", k.scales[labelSI].unit, ", not ", strconv.Quote(s[unitAt:end]))
	}
	return v, at, unit, nil
}

// Labels that stand before a number. Their values are places in the scales of
// a kind that has labels.
const (
	none    = -1
	labelSI = 0 // RSI 2.3, USI 1.7
	labelIP = 1 // R-13, U-0.30
)

// label reads the kind's label at the offset at, and returns where the number
// behind it begins.
func (k *kind) label(s string, at int) (from, label int) {
	if k.letter == 0 || at >= len(s) || s[at]&^0x20 != k.letter {
		return at, none
	}
	from, label = at+1, labelIP
	if at+2 < len(s) && s[at+1]&^0x20 == 'S' && s[at+2]&^0x20 == 'I' {
		from, label = at+3, labelSI
	}
	if c, w := runeAt(s, from); isDash(c) {
		from += w
	}
	return skipBlanks(s, from), label
}

// check returns v if it is in the range of the kind; else it blames s[at:to].
func (k *kind) check(s string, at, to int, v float64) (float64, error) {
	a := math.Abs(v)
	if a >= smallest && a <= largest && (v > 0 || k.low == anySign) {
		return v, nil
	}
	quoted := strconv.Quote(s[at : at+trimRight(s[at:to])])
	switch {
	case v == 0 && k.low != aboveZero:
		return 0, nil // no negative zero either
	case v == 0 && k.zero != "":
		return 0, fail(s, at, quoted, " is zero, ", k.zero)
	case v <= 0 && k.low == aboveZero:
		return 0, fail(s, at, quoted, " is out of range, ", k.name, " is above zero")
	case v < 0 && k.low == fromZero:
		return 0, fail(s, at, quoted, " is out of range, ", k.name, " is zero or more")
	}
	return 0, fail(s, at, quoted, " is out of range for ", k.name)
}

// noNumber says that s[at:end] does not start with a number.
func (k *kind) noNumber(s string, at, end int) error {
	if at >= end {
		return fail(s, at, "nothing is written where ", k.name, " is needed (use ", k.use, ")")
	}
	for _, other := range []*kind{&resistanceKind, &transmittanceKind} {
		from, label := other.label(s[:end], at)
		if _, n, _ := number(s[from:end]); label != none && other != k && n > 0 {
			return fail(s, at, strconv.Quote(s[at:end]), " is ", other.name, ", ", k.name, " is needed (use ", k.use, ")")
		}
	}
	return fail(s, at, "no number in ", strconv.Quote(s[at:end]), ", ", k.name, " is a number with its unit (use ", k.use, ")")
}

// noUnit says that s[at:end] is a number alone.
func (k *kind) noUnit(s string, at, end int) error {
	return fail(s, at, "a bare number without its unit: ", s[at:end], " what? use ", k.use)
}

// unknownUnit says that s[at:end] is no unit at all.
func (k *kind) unknownUnit(s string, at, end int) error {
	if c, _ := runeAt(s, at); isDash(c) || isDigit(s, at) { // 16-24 in, 1 200 mm
		return fail(s, at, "a second number, ", k.name, " is one number with its unit (use ", k.use, ")")
	}
	return fail(s, at, "unknown unit ", strconv.Quote(s[at:end]), " for ", k.name, " (use ", k.use, ")")
}

// otherUnit says that s[at:end] is a unit, but none of k's.
func (k *kind) otherUnit(s string, at, end int, key *unitKey) error {
	for _, other := range allKinds {
		if other.scale(key) != nil {
			return fail(s, at, strconv.Quote(s[at:end]), " is a unit of ", other.plain(), ", ", k.name, " is needed (use ", k.use, ")")
		}
	}
	return k.unknownUnit(s, at, end)
}
