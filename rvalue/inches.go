package rvalue

import (
	"math"
	"strconv"
)

const (
	// feetAbove is the length, in inches, above which feet are used. Lumber,
	// batts and stud spacings are all spoken of in inches up to 24 in.
	feetAbove = 24
	// tape is the division of a tape measure, in parts of an inch.
	tape = 16
	// tapeError is how far from such a division a length may be and be printed
	// as one, in inches. What is off by more, 90 mm say, gets decimals.
	tapeError = 1. / 2000
	// longest is where feet end, in inches. 1/100 in of it fit a 32-bit int.
	longest = 1e7
	// metreFrom is the length in mm from which metres are used. It rounds to 1 m.
	metreFrom = 999.95
)

// In returns l as people write it: "3 1/2 in", "5 ft 4 1/2 in" above 24 in,
// with decimals where it is no sixteenth of an inch; or "88.9 mm", and
// "1.638 m" from 1 m on.
func (l Length) In(u Units) string {
	if u == IP {
		return inches(l.Inches())
	}
	if mm := l.Millimetres(); math.Abs(mm) < metreFrom {
		return trimZeros(figure(mm, rounding{3, 1, 3})) + " mm"
	}
	return trimZeros(figure(l.SI(), rounding{3, 3, 3})) + " m"
}

// inches prints a length of v in.
func inches(v float64) string {
	divisions := math.Round(v * tape)
	onTape := math.Abs(v-divisions/tape) <= tapeError
	switch {
	case !(v > 0 && v < longest): // no length that is measured with a tape; NaN too
		return figure(v, rounding{3, 2, 4}) + " in"
	case onTape && divisions > 0:
		return feetAndInches(int(divisions), tape, func(n int) string { return fraction(n, tape) })
	case v > feetAbove:
		return feetAndInches(int(math.Round(v*100)), 100, func(n int) string { return fixed(float64(n)/100, 2) })
	}
	return trimZeros(figure(v, rounding{3, 2, 4})) + " in"
}

// feetAndInches prints a length of n parts of an inch, the inches by the
// function show.
func feetAndInches(n, parts int, show func(n int) string) string {
	if n <= feetAbove*parts {
		return show(n) + " in"
	}
	feet, rest := n/(12*parts), n%(12*parts)
	s := strconv.Itoa(feet) + " ft"
	if rest == 0 {
		return s
	}
	return s + " " + show(rest) + " in"
}

// fraction prints n/parts as a mixed number in lowest terms; parts is a power of two.
func fraction(n, parts int) string {
	whole, n := n/parts, n%parts
	if n == 0 {
		return strconv.Itoa(whole)
	}
	for n%2 == 0 {
		n, parts = n/2, parts/2
	}
	s := strconv.Itoa(n) + "/" + strconv.Itoa(parts)
	if whole == 0 {
		return s
	}
	return strconv.Itoa(whole) + " " + s
}
