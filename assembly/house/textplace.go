package house

import (
	"iter"
	"strings"
	"unicode/utf8"
)

// offset returns where in the file the byte at offset i of the text stands,
// whose source may hold escapes. An i behind the text gives the place behind
// its last character.
func (n *node) offset(i int) int {
	at := n.at
	for p := range pieces(n.raw) {
		if p.decoded > i {
			return n.at + p.from
		}
		at = n.at + p.to
	}
	return at
}

// piece is a piece of a quoted text's source that stands for one character or
// for none.
type piece struct {
	from, to int // in the source
	decoded  int // bytes of the text complete with it
}

// pieces yields the pieces of a text, quotes left out.
func pieces(raw string) iter.Seq[piece] {
	return func(yield func(piece) bool) {
		quote, body := raw[:1], raw[1:len(raw)-1]
		at := 1
		multiline := len(raw) >= 6 && raw[:3] == strings.Repeat(quote, 3)
		if multiline {
			body, at = raw[3:len(raw)-3], 3
			// A line break right behind the opening quotes does not count.
			trimmed := strings.TrimPrefix(strings.TrimPrefix(body, "\r"), "\n")
			if strings.HasPrefix(body, "\n") || strings.HasPrefix(body, "\r\n") {
				at += len(body) - len(trimmed)
				body = trimmed
			}
		}
		decoded := 0
		for len(body) > 0 {
			_, n := utf8.DecodeRuneInString(body)
			gives := n
			if body[0] == '\\' && quote == `"` {
				n, gives = escape(body)
			}
			decoded += gives
			if !yield(piece{at, at + n, decoded}) {
				return
			}
			body, at = body[n:], at+n
		}
	}
}

// escape returns the length of the escape at the start of s and how many bytes
// it stands for. The parser has checked it.
func escape(s string) (length, gives int) {
	digits := 0
	switch s[1] {
	case 'x':
		digits = 2
	case 'u':
		digits = 4
	case 'U':
		digits = 8
	case ' ', '\t', '\n', '\r': // a line break that the text does not have
		return len(s) - len(strings.TrimLeft(s[1:], " \t\r\n")), 0
	default:
		return 2, 1
	}
	r := rune(0)
	for _, c := range s[2 : 2+digits] {
		r = r<<4 | hex(c)
	}
	return 2 + digits, utf8.RuneLen(r)
}

func hex(c rune) rune {
	switch {
	case c >= 'a':
		return c - 'a' + 10
	case c >= 'A':
		return c - 'A' + 10
	}
	return c - '0'
}
