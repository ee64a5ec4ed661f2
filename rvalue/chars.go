package rvalue

import (
	"strings"
	"unicode/utf8"
)

// runeAt decodes the character of s at i, with 0 and width 0 behind the end.
func runeAt(s string, i int) (rune, int) {
	switch {
	case i >= len(s):
		return 0, 0
	case s[i] < utf8.RuneSelf:
		return rune(s[i]), 1
	case s[i] == 0xC2 && i+1 < len(s) && s[i+1]&0xC0 == 0x80:
		// Degree sign, middle dot and superscripts lie in one page of UTF-8.
		return rune(s[i+1]), 2
	}
	return utf8.DecodeRuneInString(s[i:])
}

// isUnitLetter knows the letters that unit words are made of; the last three
// are the Kelvin sign and the ready-made ℃ and ℉.
func isUnitLetter(c rune) bool {
	return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c == '\u212A' || c == '℃' || c == '℉'
}

// lower folds a letter that isUnitLetter knows.
func lower(c rune) byte {
	switch c {
	case '\u212A':
		return 'k'
	case '℃':
		return 'c'
	case '℉':
		return 'f'
	}
	return byte(c) | 0x20
}

// isUnitSeparator knows what people put between the symbols of a product.
func isUnitSeparator(c rune) bool {
	switch c {
	case ' ', '·', '*', '.', '\t', '⋅', '•', '∙':
		return true
	}
	return isBlank(c) || isDash(c)
}

// isDegree knows the degree sign and its two look-alikes.
func isDegree(c rune) bool { return c == '°' || c == 'º' || c == '˚' }

func skipDigits(s string, i int) int {
	for isDigit(s, i) {
		i++
	}
	return i
}

func isDigit(s string, i int) bool { return i < len(s) && s[i] >= '0' && s[i] <= '9' }

func isDigits(s string) bool { return skipDigits(s, 0) == len(s) }

// isMinus knows the hyphen of the keyboard, the minus sign, and the en dash
// that word processors make of either.
func isMinus(c rune) bool { return c == '-' || c == '−' || c == '–' }

// isDash knows every stroke that may stand for a hyphen.
func isDash(c rune) bool { return isMinus(c) || c >= '\u2010' && c <= '\u2014' }

// isBlank knows the spaces that stand around and inside a quantity, the
// narrow and the unbreakable ones too.
func isBlank(c rune) bool {
	switch c {
	case ' ', '\t', '\r', '\n', '\u00A0', '\u2007', '\u2009', '\u202F':
		return true
	}
	return false
}

// skipBlanks returns where the blanks of s from i on end.
func skipBlanks(s string, i int) int {
	for i < len(s) && s[i] == ' ' {
		i++
	}
	for {
		c, w := runeAt(s, i)
		if !isBlank(c) {
			return i
		}
		i += w
	}
}

// trimRight returns the length of s without the blanks at its end.
func trimRight(s string) int {
	if s != "" && s[len(s)-1] > ' ' && s[len(s)-1] < 0x80 {
		return len(s)
	}
	return len(strings.TrimRightFunc(s, isBlank))
}

// inner returns where the text begins and ends between the blanks around it.
func inner(s string) (from, to int) {
	from = skipBlanks(s, 0)
	return from, max(from, trimRight(s))
}
