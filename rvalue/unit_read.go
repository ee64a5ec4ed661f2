package rvalue

// maxNesting bounds the brackets in a unit. Real ones have two at most.
const maxNesting = 4

// maxExponent bounds what a symbol may be raised to, far above any real unit.
const maxExponent = 9

// unitReader collects the key of a unit text. Its signs are +1 above the
// fraction stroke and -1 below.
type unitReader struct {
	key    unitKey
	count  int  // symbols so far
	sign   int8 // of the next symbol
	outer  int8 // of what stands above the stroke inside the present bracket
	power  int8 // of the next symbol, by sq or cu
	stroke bool // a stroke stands right before this place
	depth  int
	stack  [maxNesting]struct{ sign, outer int8 } // to go back to behind each open bracket
}

// parseUnit takes a unit text apart. Everything behind a stroke is below it,
// as people mean it in "W/m2K" and "Btu/h-ft2-F"; only a bracket that the
// stroke stands right before ends what is below: "Btu/(h·ft²·°F)·in".
func parseUnit(s string) (unitKey, bool) {
	u := unitReader{sign: 1, outer: 1, power: 1}
	for i := 0; i < len(s); {
		c, w := runeAt(s, i)
		ok := true
		switch {
		case isUnitLetter(c):
			w, ok = u.letters(s[i:])
		case c == '/' || c == '∕' || c == '÷':
			u.sign, u.stroke = -u.outer, true
		case c == '(':
			ok = u.open()
		case c == ')':
			ok = u.close()
		default:
			ok = isUnitSeparator(c) || isDegree(c)
		}
		if !ok {
			return unitKey{}, false
		}
		i += w
	}
	if u.depth != 0 || u.count == 0 || u.power != 1 {
		return unitKey{}, false
	}
	if u.count > 1 {
		u.key[symKelvin] += u.key[symCelsius]
		u.key[symCelsius] = 0
	}
	return u.key, true
}

func (u *unitReader) open() bool {
	if u.depth == maxNesting {
		return false
	}
	back := &u.stack[u.depth]
	back.sign, back.outer = u.sign, u.outer
	if u.stroke {
		back.sign = u.outer
	}
	u.outer, u.stroke = u.sign, false
	u.depth++
	return true
}

func (u *unitReader) close() bool {
	if u.depth == 0 {
		return false
	}
	u.depth--
	u.sign, u.outer, u.stroke = u.stack[u.depth].sign, u.stack[u.depth].outer, false
	return true
}

// letters takes a run of letters and its exponent off s and returns their
// width. A run that is no word may be several in a row, as in mK and hft2F.
func (u *unitReader) letters(s string) (width int, ok bool) {
	var low [12]byte // room for the longest word
	n := 0
	for width < len(s) {
		c, w := runeAt(s, width)
		if !isUnitLetter(c) {
			break
		}
		if n == len(low) {
			return 0, false
		}
		low[n] = lower(c)
		n++
		width += w
	}
	exp, w, ok := exponent(s[width:])
	if !ok {
		return 0, false
	}
	for from, to := 0, n; from < n; from, to = to, n {
		word, ok := unitWord(low[from:to])
		for !ok { // the longest word that the run begins with
			if to--; to == from {
				return 0, false
			}
			word, ok = unitWord(low[from:to])
		}
		e := int8(1)
		if to == n {
			e = exp
		}
		if !u.word(word, e) {
			return 0, false
		}
	}
	return width + w, true
}

// word acts on one word with its exponent.
func (u *unitReader) word(word int, exp int8) bool {
	u.stroke = false
	if word < symbols {
		return u.add(word, exp)
	}
	if exp != 1 { // cfm50 is no unit
		return false
	}
	switch word {
	case wordSquare, wordCubic:
		if u.power != 1 {
			return false
		}
		u.power = int8(2 + word - wordSquare)
		return true
	case wordDegree:
		return true
	case wordPer:
		u.sign, u.stroke = -u.outer, true
		return true
	case wordMph:
		return u.add(symMile, 1) && u.add(symHour, -1)
	case wordKmh:
		return u.add(symKilometre, 1) && u.add(symHour, -1)
	case wordCfm:
		return u.add(symFoot, 3) && u.add(symMinute, -1)
	case wordPcf:
		return u.add(symPound, 1) && u.add(symFoot, -3)
	case wordSf:
		return u.add(symFoot, 2)
	default: // wordBtuh
		return u.add(symBtu, 1) && u.add(symHour, -1)
	}
}

// add puts one symbol into the key.
func (u *unitReader) add(symbol int, exp int8) bool {
	if u.power != 1 && exp != 1 { // sq ft²
		return false
	}
	e := u.key[symbol] + u.sign*exp*u.power // within ±(9+9·3), no overflow
	if e < -maxExponent || e > maxExponent {
		return false
	}
	u.key[symbol], u.power = e, 1
	u.count++
	return true
}

// exponent reads what may stand right behind a symbol, 2, ², ^2, -1, ⁻¹, and
// its width. Without any it is 1; more than one digit is not ok.
func exponent(s string) (exp int8, width int, ok bool) {
	if s == "" {
		return 1, 0, true
	}
	sign, marked := int8(1), false
	if s[0] == '^' {
		width, marked = 1, true
	}
	if c, w := runeAt(s, width); isMinus(c) && isDigit(s, width+w) || c == '⁻' {
		sign, marked = -1, true
		width += w
	}
	c, w := runeAt(s, width)
	switch {
	case c >= '1' && c <= '9':
		exp = int8(c - '0')
	case c == '¹':
		exp = 1
	case c == '²':
		exp = 2
	case c == '³':
		exp = 3
	default:
		return 1, 0, !marked && c != '0'
	}
	width += w
	return sign * exp, width, !isDigit(s, width)
}
