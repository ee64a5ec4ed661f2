package climate

import (
	"bytes"
	"unicode"
)

// key is a name folded for comparison: lower-case letters and digits only, no
// accents, and before another word "St.", "Ste." and "Sainte" as "saint" and "Mt." as
// "mount" (the last word may be a state, MT). It lives on the stack, so that a look-up allocates nothing. Longer names than any place has are
// cut, and match nothing.
type key struct {
	b     [56]byte
	n     int
	words [12]int // where each word starts
	nw    int
}

// fold returns the key of s.
func fold(s string) (k key) {
	inWord := false
	for _, r := range s {
		switch {
		case r >= 'A' && r <= 'Z':
			r += 'a' - 'A'
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9':
		case r == '\'' || r == '’' || r == 'ʻ' || unicode.Is(unicode.Mn, r):
			continue // Queen Anne's, Hawaiʻi, and accents written as marks of their own
		case r > unicode.MaxASCII:
			r = plain(r)
		default:
			r = 0
		}
		if r == 0 {
			inWord = false
			continue
		}
		if !inWord && k.nw < len(k.words) {
			k.expand()
			k.words[k.nw] = k.n
			k.nw++
		}
		inWord = true
		k.put(byte(r))
	}
	return k
}

func (k *key) put(c byte) {
	if k.n < len(k.b) {
		k.b[k.n] = c
		k.n++
	}
}

// expand writes the last word in full if it is a short form.
func (k *key) expand() {
	if k.nw == 0 {
		return
	}
	full := ""
	switch string(k.word(k.nw - 1)) {
	case "st", "ste", "sainte":
		full = "saint"
	case "mt":
		full = "mount"
	default:
		return
	}
	k.n = k.words[k.nw-1]
	for i := range len(full) {
		k.put(full[i])
	}
}

// bytes returns the whole key.
func (k *key) bytes() []byte { return k.b[:k.n] }

// word returns word i of the key.
func (k *key) word(i int) []byte {
	if i+1 < k.nw {
		return k.b[k.words[i]:k.words[i+1]]
	}
	return k.b[k.words[i]:k.n]
}

// cut returns the key of words i to j−1.
func (k *key) cut(i, j int) (c key) {
	for ; i < j; i++ {
		c.words[c.nw] = c.n
		c.nw++
		c.n += copy(c.b[c.n:], k.word(i))
	}
	return c
}

func (k *key) is(s string) bool { return string(k.bytes()) == s }

func (k *key) compare(o *key) int { return bytes.Compare(k.bytes(), o.bytes()) }

// plain returns the letter under the accent, for the accents of Spanish and
// French place names, or 0.
func plain(r rune) rune {
	switch unicode.ToLower(r) {
	case 'á', 'à', 'â', 'ä', 'ã':
		return 'a'
	case 'ç':
		return 'c'
	case 'é', 'è', 'ê', 'ë':
		return 'e'
	case 'í', 'ì', 'î', 'ï':
		return 'i'
	case 'ñ':
		return 'n'
	case 'ó', 'ò', 'ô', 'ö', 'õ':
		return 'o'
	case 'ú', 'ù', 'û', 'ü':
		return 'u'
	}
	return 0
}
