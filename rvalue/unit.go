package rvalue

import "unicode/utf8"

// unitKey is a unit text taken apart: the exponent of each symbol. So
// "W/(m²·K)", "W/m2K" and "W K-1 m-2" are one key, in whatever order they come.
type unitKey [symbols]int8

// The symbols that units are made of. A scale with an offset, °C or °F,
// stands for its degree inside a compound.
const (
	symWatt = iota
	symMetre
	symCentimetre
	symMillimetre
	symKilometre
	symKelvin
	symCelsius
	symFahrenheit
	symHour
	symMinute
	symSecond
	symFoot
	symInch
	symMile
	symBtu
	symPascal
	symNanogram
	symKilogram
	symPound
	symLitre
	symPerm
	symbols
)

// Words that are no symbol but act on the next one, or on nothing.
const (
	wordSquare = symbols + iota
	wordCubic
	wordDegree
	wordMph
	wordKmh
	wordCfm
	wordPcf
)

// word looks a unit word up, in lower case. The Kelvin sign folds to k.
func unitWord(b []byte) (sym int, ok bool) {
	switch string(b) {
	case "w", "watt", "watts":
		return symWatt, true
	case "m", "metre", "metres", "meter", "meters":
		return symMetre, true
	case "cm":
		return symCentimetre, true
	case "mm":
		return symMillimetre, true
	case "km":
		return symKilometre, true
	case "k", "kelvin", "kelvins":
		return symKelvin, true
	case "c", "celsius":
		return symCelsius, true
	case "f", "fahrenheit":
		return symFahrenheit, true
	case "h", "hr", "hrs", "hour", "hours":
		return symHour, true
	case "min", "minute":
		return symMinute, true
	case "s", "sec", "second":
		return symSecond, true
	case "ft", "foot", "feet":
		return symFoot, true
	case "in", "inch", "inches":
		return symInch, true
	case "mi", "mile", "miles":
		return symMile, true
	case "btu":
		return symBtu, true
	case "pa":
		return symPascal, true
	case "ng":
		return symNanogram, true
	case "kg":
		return symKilogram, true
	case "lb", "lbs":
		return symPound, true
	case "l", "litre", "litres", "liter", "liters":
		return symLitre, true
	case "perm", "perms":
		return symPerm, true
	case "sq", "square":
		return wordSquare, true
	case "cu", "cubic":
		return wordCubic, true
	case "deg", "degs", "degree", "degrees":
		return wordDegree, true
	case "mph":
		return wordMph, true
	case "kmh", "kph":
		return wordKmh, true
	case "cfm":
		return wordCfm, true
	case "pcf":
		return wordPcf, true
	}
	return 0, false
}

// maxNesting bounds the brackets inside a unit; real ones have one.
const maxNesting = 4

// keyer collects a unit's key. sign is +1 above the fraction stroke, -1 below.
type keyer struct {
	key     unitKey
	sign    int8
	base    int8 // sign just behind the bracket around this place
	power   int8 // from sq, cu: of the next symbol
	count   int
	stack   [maxNesting][2]int8
	depth   int
	bracket bool // a bracket opened right behind the stroke
}

// parseUnit takes a unit text apart. Everything behind a stroke is below it
// ("W/m2K", "Btu/h-ft2-F"), up to the end of a bracket that the stroke opened.
func parseUnit(s string) (unitKey, bool) {
	k := keyer{sign: 1, base: 1, power: 1}
	for i := 0; i < len(s); {
		c, w := rune(s[i]), 1
		if c >= utf8.RuneSelf {
			c, w = utf8.DecodeRuneInString(s[i:])
		}
		switch {
		case isUnitLetter(c):
			n, ok := k.word(s[i:])
			if !ok {
				return unitKey{}, false
			}
			i += n
			continue
		case c == '/' || c == '÷' || c == '∕':
			k.sign = -k.base
			if i+w < len(s) && s[i+w] == '(' {
				k.bracket = true
			}
		case c == '(':
			if k.depth == maxNesting {
				return unitKey{}, false
			}
			after := k.sign
			if k.bracket {
				after = k.base
			}
			k.stack[k.depth] = [2]int8{after, k.base}
			k.depth++
			k.base, k.bracket = k.sign, false
		case c == ')':
			if k.depth == 0 {
				return unitKey{}, false
			}
			k.depth--
			k.sign, k.base = k.stack[k.depth][0], k.stack[k.depth][1]
		case isUnitSeparator(c) || isDegree(c):
		default:
			return unitKey{}, false
		}
		i += w
	}
	if k.depth != 0 || k.count == 0 || k.power != 1 {
		return unitKey{}, false
	}
	if k.count > 1 { // a degree of difference: the scales' zero points are gone
		k.key[symKelvin] += k.key[symCelsius]
		k.key[symCelsius] = 0
	}
	return k.key, true
}

// word takes a run of letters with its exponent and returns its length. A run
// that is no word may be several symbols in a row, such as mK, hft2F.
func (k *keyer) word(s string) (int, bool) {
	var low [12]byte
	n, end := 0, 0
	for end < len(s) {
		c, w := rune(s[end]), 1
		if c >= utf8.RuneSelf {
			c, w = utf8.DecodeRuneInString(s[end:])
		}
		if !isUnitLetter(c) {
			break
		}
		if n == len(low) {
			return 0, false
		}
		low[n] = lower(c)
		n++
		end += w
	}
	from := 0
	for from < n {
		to := n
		sym, ok := unitWord(low[from:to])
		for !ok && to > from+1 {
			to--
			sym, ok = unitWord(low[from:to])
		}
		if !ok {
			return 0, false
		}
		exp := int8(1)
		if to == n {
			var w int
			if exp, w, ok = exponent(s[end:]); !ok {
				return 0, false
			}
			end += w
		}
		if !k.add(sym, exp) {
			return 0, false
		}
		from = to
	}
	return end, true
}

// add puts a symbol to the power exp into the key.
func (k *keyer) add(sym int, exp int8) bool {
	switch sym {
	case wordSquare, wordCubic:
		if k.power != 1 || exp != 1 {
			return false
		}
		k.power = int8(2 + sym - wordSquare)
		return true
	case wordDegree:
		return exp == 1
	case wordMph:
		return exp == 1 && k.add(symMile, 1) && k.add2(symHour)
	case wordKmh:
		return exp == 1 && k.add(symKilometre, 1) && k.add2(symHour)
	case wordCfm:
		return exp == 1 && k.add(symFoot, 3) && k.add2(symMinute)
	case wordPcf:
		return exp == 1 && k.add(symPound, 1) && k.add(symFoot, -3)
	}
	e := int(k.key[sym]) + int(k.sign*exp*k.power)
	if e < -9 || e > 9 || k.power != 1 && exp != 1 {
		return false
	}
	k.key[sym] = int8(e)
	k.power = 1
	k.count++
	return true
}

func (k *keyer) add2(sym int) bool { return k.add(sym, -1) }

// exponent reads what may stand behind a symbol: 2, ², ^2, -1, ⁻¹. Without one it is 1.
func exponent(s string) (exp int8, n int, ok bool) {
	i, sign, marked := 0, int8(1), false
	if i < len(s) && s[i] == '^' {
		i, marked = 1, true
	}
	if c, w := utf8.DecodeRuneInString(s[i:]); isMinus(c) && isDigit(s, i+w) || c == '⁻' {
		sign, marked = -1, true
		i += w
	}
	if isDigit(s, i) {
		if isDigit(s, i+1) || s[i] == '0' {
			return 0, 0, false
		}
		return sign * int8(s[i]-'0'), i + 1, true
	}
	switch c, w := utf8.DecodeRuneInString(s[i:]); c {
	case '¹':
		return sign, i + w, true
	case '²':
		return sign * 2, i + w, true
	case '³':
		return sign * 3, i + w, true
	}
	return 1, 0, !marked
}

// isUnitLetter knows the letters that unit words are written with.
func isUnitLetter(c rune) bool {
	return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c == '\u212A' || c == '℃' || c == '℉'
}

// lower folds a letter of isUnitLetter.
func lower(c rune) byte {
	switch c {
	case '\u212A': // Kelvin sign
		return 'k'
	case '℃':
		return 'c'
	case '℉':
		return 'f'
	}
	if c <= 'Z' {
		c += 'a' - 'A'
	}
	return byte(c)
}

// isUnitSeparator knows what people put between the symbols of a product.
func isUnitSeparator(c rune) bool {
	switch c {
	case ' ', '\t', '\u00A0', '\u2009', '\u202F', '*', '.', '·', '⋅', '•', '∙':
		return true
	}
	return isDash(c)
}

// isDegree knows the degree sign and its two look-alikes.
func isDegree(c rune) bool { return c == '°' || c == 'º' || c == '˚' }
