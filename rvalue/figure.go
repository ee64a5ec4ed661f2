package rvalue

import (
	"math"
	"strconv"
	"strings"
)

// rounding says how the figures of a unit are rounded: to sig significant
// digits, but with no fewer than least and no more than most decimals.
type rounding struct{ sig, least, most int }

// Outside of these a figure is printed with a power of ten.
const (
	tinyFigure = 1e-6
	hugeFigure = 1e9
)

// in prints one of two figures with its unit.
func in(u Units, ip float64, ipRound rounding, ipUnit string, si float64, siRound rounding, siUnit string) string {
	if u == IP {
		return figure(ip, ipRound) + ipUnit
	}
	return figure(si, siRound) + siUnit
}

// figure rounds v for people. Two significant digits are kept whatever the
// rounding says, so that what is small does not look like nothing; only zero
// is "0".
func figure(v float64, r rounding) string {
	a := math.Abs(v)
	switch {
	case v == 0:
		return "0"
	case !(a >= tinyFigure && a < hugeFigure): // NaN and infinities too
		return strconv.FormatFloat(v, 'g', r.sig, 64)
	}
	place := place(a, r.sig)
	d := min(max(r.sig-1-place, r.least), r.most)
	return fixed(v, max(d, 1-place, 0))
}

// place returns the power of ten of a's first digit once a is rounded to sig
// digits: 1 for 9.96 rounded to two.
func place(a float64, sig int) int {
	var buf [32]byte
	b := strconv.AppendFloat(buf[:0], a, 'e', sig-1, 64)
	exp := len(b) - 1
	for b[exp] != 'e' {
		exp--
	}
	n, _ := strconv.Atoi(string(b[exp+1:])) // well formed: it was just written
	return n
}

// fixed prints v with d decimals, and no minus before a zero.
func fixed(v float64, d int) string {
	s := strconv.FormatFloat(v, 'f', d, 64)
	if s[0] == '-' && strings.Trim(s, "-0.") == "" {
		return s[1:]
	}
	return s
}

// trimZeros drops the zeros at the end of decimals.
func trimZeros(s string) string {
	if !strings.Contains(s, ".") || strings.Contains(s, "e") {
		return s
	}
	return strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
}
