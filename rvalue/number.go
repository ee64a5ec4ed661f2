package rvalue

import (
	"strconv"
	"strings"
	"unicode/utf8"
)

// number reads one number at the start of s: "13", "-3.5e2", "1,200", "1/2",
// "3 1/2", "3-1/2", "3½". It returns how many bytes it used, 0 if s does not
// start with a number. The message is empty unless the number is malformed;
// then n is the offset of what is wrong with it.
func number(s string) (v float64, n int, msg string) {
	sign, n := 1.0, 0
	if c, w := utf8.DecodeRuneInString(s); isMinus(c) || c == '+' {
		if isMinus(c) {
			sign = -1
		}
		n = w
	}
	start := n
	whole, n, msg := decimal(s, start)
	if msg != "" {
		return 0, n, msg
	}
	if n == start { // a vulgar fraction alone
		if f, w := vulgar(s[n:]); w > 0 {
			return sign * f, n + w, ""
		}
		return 0, 0, ""
	}
	integer := isDigits(s[start:n])
	if d, w := fractionSlash(s[n:]); w > 0 && integer { // 1/2
		den, m := digits(s, n+d+w)
		if m == n+d+w {
			return 0, n, "a fraction without its lower number, write such as 1/2"
		}
		if den == 0 {
			return 0, n + d + w, "a fraction of zero parts"
		}
		return sign * (whole / den), m, ""
	}
	if !integer {
		return sign * whole, n, ""
	}
	f, m, msg := fractionBehind(s, n)
	if msg != "" {
		return 0, m, msg
	}
	return sign * (whole + f), m, ""
}

// decimal reads digits with a point, thousands commas and an exponent.
func decimal(s string, from int) (v float64, n int, msg string) {
	n = skipDigits(s, from)
	whole := n > from
	commas := false
	for n < len(s) && s[n] == ',' && whole && isDigit(s, n+1) {
		m := skipDigits(s, n+1)
		if m-n-1 != 3 || s[from] == '0' || !commas && n-from > 3 {
			return 0, n, "a comma is no decimal sign here: write " + s[from:n] + "." + s[n+1:m]
		}
		commas, n = true, m
	}
	if n < len(s) && s[n] == '.' && (whole || isDigit(s, n+1)) {
		// A point behind the whole number ends it too ("5. ft" is a typing slip, and harmless).
		n = skipDigits(s, n+1)
		if commas && n < len(s) && s[n] == ',' && isDigit(s, n+1) {
			return 0, n, "a comma behind the decimal point"
		}
	}
	if n == from {
		return 0, from, ""
	}
	if n < len(s) && (s[n] == 'e' || s[n] == 'E') {
		m := n + 1
		if m < len(s) && (s[m] == '-' || s[m] == '+') {
			m++
		}
		if isDigit(s, m) {
			n = skipDigits(s, m)
		}
	}
	text := s[from:n]
	if commas {
		text = strings.ReplaceAll(text, ",", "")
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil { // digits only get here, so it is the range
		return 0, from, "the number is out of range"
	}
	return v, n, ""
}

// fractionBehind reads the fraction of a mixed number whose whole part ends at
// n. Without one it returns 0 and n.
func fractionBehind(s string, n int) (f float64, end int, msg string) {
	at := n
	for at < len(s) && s[at] == ' ' {
		at++
	}
	if f, w := vulgar(s[at:]); w > 0 {
		return f, at + w, ""
	}
	if c, w := utf8.DecodeRuneInString(s[at:]); at == n && isDash(c) {
		if f, v := vulgar(s[at+w:]); v > 0 {
			return f, at + w + v, ""
		}
		at += w
	}
	if at == n {
		return 0, n, ""
	}
	num, m := digits(s, at)
	if m == at {
		return 0, n, ""
	}
	d, w := fractionSlash(s[m:])
	if w == 0 {
		return 0, n, ""
	}
	den, end := digits(s, m+d+w)
	switch {
	case end == m+d+w:
		return 0, n, ""
	case den == 0:
		return 0, m + d + w, "a fraction of zero parts"
	case num >= den:
		return 0, at, "the fraction of a mixed number must be below 1, got " + s[at:end]
	}
	return num / den, end, ""
}

// fractionSlash tells that s goes on with a fraction's stroke and its lower
// number: d bytes of space, which are none, and w bytes of stroke.
func fractionSlash(s string) (d, w int) {
	c, w := utf8.DecodeRuneInString(s)
	if c == '⁄' || c == '/' && isDigit(s, 1) {
		return 0, w
	}
	return 0, 0
}

// vulgar reads one character that is a fraction.
func vulgar(s string) (float64, int) {
	if s == "" || s[0] < utf8.RuneSelf {
		return 0, 0
	}
	c, w := utf8.DecodeRuneInString(s)
	switch c {
	case '½':
		return 1. / 2, w
	case '⅓':
		return 1. / 3, w
	case '⅔':
		return 2. / 3, w
	case '¼':
		return 1. / 4, w
	case '¾':
		return 3. / 4, w
	case '⅕':
		return 1. / 5, w
	case '⅖':
		return 2. / 5, w
	case '⅗':
		return 3. / 5, w
	case '⅘':
		return 4. / 5, w
	case '⅙':
		return 1. / 6, w
	case '⅚':
		return 5. / 6, w
	case '⅐':
		return 1. / 7, w
	case '⅛':
		return 1. / 8, w
	case '⅜':
		return 3. / 8, w
	case '⅝':
		return 5. / 8, w
	case '⅞':
		return 7. / 8, w
	case '⅑':
		return 1. / 9, w
	case '⅒':
		return 1. / 10, w
	}
	return 0, 0
}

func digits(s string, from int) (float64, int) {
	n, v := from, 0.0
	for ; isDigit(s, n); n++ {
		v = 10*v + float64(s[n]-'0')
	}
	return v, n
}

func skipDigits(s string, n int) int {
	for isDigit(s, n) {
		n++
	}
	return n
}

func isDigit(s string, n int) bool { return n < len(s) && s[n] >= '0' && s[n] <= '9' }

func isDigits(s string) bool { return skipDigits(s, 0) == len(s) }

// isMinus knows the hyphen that a keyboard has and the minus sign proper.
func isMinus(c rune) bool { return c == '-' || c == '−' }

// isDash knows every stroke that word processors put for a hyphen.
func isDash(c rune) bool { return isMinus(c) || c >= '\u2010' && c <= '\u2014' }
