package rvalue

import (
	"strconv"
	"strings"
)

// ParseShare reads a share of a whole, "25 %", and returns it as a fraction of
// 1, here 0.25. A bare number is refused, since 0.25 and 25 could both be
// meant; so is what lies outside 0 to 100 %.
func ParseShare(s string) (float64, error) {
	at, end := inner(s)
	v, n, msg := number(s[at:end])
	if msg != "" {
		return 0, fail(s, at+n, msg)
	}
	if n == 0 {
		return 0, fail(s, at, "no number, write a share as 25 %")
	}
	unitAt := skipBlanks(s[:end], at+n)
	unit := s[unitAt:end]
	switch {
	case unit == "":
		return 0, fail(s, at, "a bare number, write a share with its sign as 25 %")
	case unit != "%" && !strings.EqualFold(unit, "percent") && !strings.EqualFold(unit, "per cent"):
		return 0, fail(s, unitAt, "unknown unit ", strconv.Quote(unit), " for a share, write 25 %")
	case v < 0 || v > 100:
		return 0, fail(s, at, strconv.Quote(s[at:end]), " is out of range, a share is 0 to 100 %")
	}
	return v / 100, nil
}
