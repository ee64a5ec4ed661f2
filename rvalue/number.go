package rvalue

import (
	"strconv"
	"strings"
)

// number reads the number that s starts with and returns the bytes it takes:
// "13", "-3.5e2", "1,200", "1/2", "3 1/2", "3-1/2", "3½". A width of 0 with no
// message means that s starts with none; with a message, the number is
// malformed at the offset width.
func number(s string) (v float64, width int, msg string) {
	sign, start := 1.0, 0
	if c, w := runeAt(s, 0); isMinus(c) {
		sign, start = -1, w
	} else if c == '+' {
		start = w
	}
	whole, end, msg := decimal(s, start)
	if msg != "" {
		return 0, end, msg
	}
	if end == start {
		if f, w := vulgar(s, start); w > 0 {
			return sign * f, start + w, ""
		}
		return 0, 0, ""
	}
	if end == len(s) || !isDigits(s[start:end]) {
		return sign * whole, end, ""
	}
	if isFractionStroke(s, end) {
		f, n, msg := lowerNumber(s, whole, end)
		return sign * f, n, msg
	}
	f, n, msg := mixed(s, end)
	return sign * (whole + f), n, msg
}

// decimal reads digits with a point, thousands commas and an exponent.
func decimal(s string, from int) (v float64, end int, msg string) {
	end = skipDigits(s, from)
	commas := false
	for end > from && end < len(s) && s[end] == ',' && isDigit(s, end+1) {
		next := skipDigits(s, end+1)
		// 1,200 and 12,345 are thousands. 0,04 and 3,5 are meant as decimals, and
		// nobody can tell what 1,2345 is.
		if next-end-1 != 3 || s[from] == '0' || !commas && end-from > 3 {
			return 0, end, "a comma is no decimal sign here, write " + s[from:end] + "." + s[end+1:next]
		}
		commas, end = true, next
	}
	if end < len(s) && s[end] == '.' && (end > from || isDigit(s, end+1)) {
		end = skipDigits(s, end+1)
	}
	if end == from {
		return 0, from, ""
	}
	if end < len(s) && s[end]|0x20 == 'e' {
		n := end + 1
		if n < len(s) && (s[n] == '-' || s[n] == '+') {
			n++
		}
		if isDigit(s, n) {
			end = skipDigits(s, n)
		}
	}
	text := s[from:end]
	if commas {
		text = strings.ReplaceAll(text, ",", "")
	}
	v, ok := value(text)
	if !ok {
		return 0, from, "the number is out of range"
	}
	return v, end, ""
}

// mixed reads the fraction behind a whole number that ends at end: " 1/2",
// "-1/2", "½". Without one it returns 0 and end.
func mixed(s string, end int) (f float64, width int, msg string) {
	from := end
	for from < len(s) && s[from] == ' ' {
		from++
	}
	if c, w := runeAt(s, from); from == end && isDash(c) {
		from += w
	}
	if f, w := vulgar(s, from); w > 0 {
		return f, from + w, ""
	}
	stroke := skipDigits(s, from)
	if from == end || stroke == from || !isFractionStroke(s, stroke) {
		return 0, end, ""
	}
	upper, ok := value(s[from:stroke])
	if !ok {
		return 0, from, "the number is out of range"
	}
	f, width, msg = lowerNumber(s, upper, stroke)
	if msg == "" && f >= 1 {
		return 0, from, "the fraction of a mixed number is below 1, not " + s[from:width]
	}
	return f, width, msg
}

// isFractionStroke tells whether a stroke with a number below it is at i.
func isFractionStroke(s string, i int) bool {
	c, w := runeAt(s, i)
	return (c == '/' || c == '⁄') && isDigit(s, i+w)
}

// lowerNumber reads the stroke at i and what is below it.
func lowerNumber(s string, upper float64, i int) (f float64, end int, msg string) {
	_, w := runeAt(s, i)
	end = skipDigits(s, i+w)
	lower, ok := value(s[i+w : end])
	if !ok {
		return 0, i + w, "the number is out of range"
	}
	if lower == 0 {
		return 0, i + w, "a fraction of zero parts"
	}
	return upper / lower, end, ""
}

// value returns the value of a well-formed number; it is not ok if that is
// out of range. Short whole numbers, most of what is written, take a short way.
func value(text string) (v float64, ok bool) {
	if len(text) <= 15 && isDigits(text) { // below 2^53, so exact
		n := 0
		for i := range len(text) {
			n = 10*n + int(text[i]-'0')
		}
		return float64(n), true
	}
	v, err := strconv.ParseFloat(text, 64)
	return v, err == nil
}

// vulgar reads a character that is a fraction, at i.
func vulgar(s string, i int) (f float64, width int) {
	c, w := runeAt(s, i)
	if c < '¼' {
		return 0, 0
	}
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
