package assembly

import (
	"strings"
	"unicode/utf8"

	"github.com/coldseam/coldseam/rvalue"
)

// anatomy finds in a written item the name, the label and the thickness, in
// this order or with the last two swapped. What is not there is empty; a
// thickness that cannot be read has no length.
func (n *notation) anatomy(s span) (name, label, thickness span, length rvalue.Length) {
	name = s
	for w := n.word(s, s.from); w.from < w.to; w = n.word(s, w.to) {
		if !isLabel(n.str(w), n.text[w.to:s.to]) {
			continue
		}
		label = w
		after := w.to
		switch c := n.text[w.to-1]; {
		case len(n.str(w)) > 2 && strings.EqualFold(n.text[w.to-2:w.to], "ci"): // R-5ci, continuous insulation
			label.to -= 2
		case c < '0' || c > '9': // R 13, RSI 0.9: the number is the next word
			label.to = n.word(s, w.to).to
			after = label.to
		}
		name, thickness = n.trim(span{s.from, label.from}), n.trim(span{after, s.to})
		if name.from == name.to && thickness.from < thickness.to && !startsNumber(n.str(thickness)) {
			name, thickness = thickness, span{} // R-5 xps
		}
		break
	}
	if thickness.from < thickness.to {
		length, _ = rvalue.ParseLength(n.str(thickness))
		return name, label, thickness, length
	}
	body := name
	var number span // the first word that starts with a digit behind a known name
	for w := n.word(body, body.from); w.from < w.to; w = n.word(body, w.to) {
		if !startsNumber(n.str(w)) {
			continue
		}
		rest := span{w.from, body.to}
		if length, err := rvalue.ParseLength(n.str(rest)); err == nil {
			return n.trim(span{body.from, w.from}), label, rest, length
		}
		if number.from == number.to {
			number = rest
		}
	}
	if number.from == number.to {
		return body, label, number, 0
	}
	if number.from == body.from { // 1/2 in gypsum: the longest start that is a length
		for w := n.word(body, body.from); w.from < w.to; w = n.word(body, w.to) {
			if l, err := rvalue.ParseLength(n.text[body.from:w.to]); err == nil {
				name, thickness, length = n.trim(span{w.to, body.to}), span{body.from, w.to}, l
			}
		}
		if length > 0 {
			return name, label, thickness, length
		}
		return body, label, number, 0
	}
	// No thickness that can be read. A name may hold a number (No. 15 felt);
	// if the words before it are a name of their own, the number is a thickness
	// gone wrong, and its error says what is.
	if n.known(body) {
		return body, label, span{}, 0
	}
	if before := n.trim(span{body.from, number.from}); n.known(before) {
		return before, label, number, 0
	}
	return body, label, span{}, 0
}

func (n *notation) known(s span) bool {
	_, err := n.catalogue.Find(n.str(s))
	return err == nil
}

// word returns the next word of s at or after the offset from, empty at its end.
func (n *notation) word(s span, from int) span {
	for from < s.to && isBlank(n.text[from]) {
		from++
	}
	to := from
	for to < s.to && !isBlank(n.text[to]) {
		to++
	}
	return span{from, to}
}

func startsNumber(word string) bool {
	if c := word[0]; c < utf8.RuneSelf {
		return c >= '0' && c <= '9' || c == '.' || c == '-' && len(word) > 1
	}
	r, _ := utf8.DecodeRuneInString(word)
	return strings.ContainsRune("½¼¾⅛⅜⅝⅞⅓⅔", r)
}

// isLabel reports whether word starts a resistance: R-13, R13, RSI2.3, or R
// and RSI before a number.
func isLabel(word, rest string) bool {
	if len(word) == 0 || word[0] != 'R' && word[0] != 'r' {
		return false
	}
	w := word[1:]
	if len(w) >= 2 && strings.EqualFold(w[:2], "si") {
		w = w[2:]
	}
	w = strings.TrimLeft(w, "-–")
	if w == "" {
		rest = strings.TrimLeft(rest, blanks)
		return rest != "" && startsNumber(rest[:1])
	}
	return w[0] >= '0' && w[0] <= '9' || w[0] == '.'
}
