package rvalue

import (
	"math"
	"strconv"
	"strings"
	"unicode/utf8"
)

// blanks are the spaces that may stand around and inside a quantity.
const blanks = " \t\r\n\u00A0\u2007\u2009\u202F"

// ParseResistance reads a thermal resistance: "R-13", "R13", "R 13" in
// h·ft²·°F/Btu as on a North American label, "RSI 2.3" in m²·K/W, or a number
// with its unit, "2.3 m²·K/W", "13 h·ft²·°F/Btu". With a unit behind it, a
// bare R is only a name. Zero and below is refused.
func ParseResistance(s string) (Resistance, error) {
	v, err := parse(&resistanceKind, s)
	return Resistance(v), err
}

// ParseTransmittance reads a thermal transmittance: "U-0.30", "U 0.30" in
// Btu/(h·ft²·°F) as on a North American window label, "USI 1.7" in W/(m²·K),
// or a number with its unit, "0.36 W/(m²·K)", "0.064 Btu/(h·ft²·°F)". Zero
// and below is refused.
func ParseTransmittance(s string) (Transmittance, error) {
	v, err := parse(&transmittanceKind, s)
	return Transmittance(v), err
}

// ParseConductivity reads a conductivity above zero in W/(m·K),
// Btu·in/(h·ft²·°F) or Btu/(h·ft·°F).
func ParseConductivity(s string) (Conductivity, error) {
	v, err := parse(&conductivityKind, s)
	return Conductivity(v), err
}

// ParseTemperatureDifference reads a difference of temperatures of any sign:
// "10 K", "10 °C", "18 °F". No zero point is added.
func ParseTemperatureDifference(s string) (TemperatureDifference, error) {
	v, err := parse(&differenceKind, s)
	return TemperatureDifference(v), err
}

// ParseConductance reads a conductance of zero or more in W/K or Btu/(h·°F).
func ParseConductance(s string) (Conductance, error) {
	v, err := parse(&conductanceKind, s)
	return Conductance(v), err
}

// ParseLinearTransmittance reads a linear transmittance in W/(m·K) or
// Btu/(h·ft·°F). It may be negative, as the psi-value of an outer corner is
// that is counted by outside dimensions.
func ParseLinearTransmittance(s string) (LinearTransmittance, error) {
	v, err := parse(&linearKind, s)
	return LinearTransmittance(v), err
}

// ParsePermeance reads a vapour permeance of zero or more in perm (the US one)
// or ng/(Pa·s·m²).
func ParsePermeance(s string) (Permeance, error) {
	v, err := parse(&permeanceKind, s)
	return Permeance(v), err
}

// ParseAirFlow reads an air flow of zero or more in cfm, ft³/min, m³/h, m³/s or L/s.
func ParseAirFlow(s string) (AirFlow, error) {
	v, err := parse(&airFlowKind, s)
	return AirFlow(v), err
}

// ParseSpeed reads a speed of zero or more in mph, m/s or km/h.
func ParseSpeed(s string) (Speed, error) {
	v, err := parse(&speedKind, s)
	return Speed(v), err
}

// ParseDensity reads a density above zero in kg/m³ or lb/ft³.
func ParseDensity(s string) (Density, error) {
	v, err := parse(&densityKind, s)
	return Density(v), err
}

// ParseTemperature reads a temperature in °C, °F or K, not below absolute
// zero: "68 °F", "-5C", "293.15 K".
func ParseTemperature(s string) (Temperature, error) {
	k := &temperatureKind
	v, at, sc, err := k.split(s, s)
	if err != nil {
		return 0, err
	}
	var t Temperature
	switch {
	case sc.key[symCelsius] != 0:
		t = FromCelsius(v)
	case sc.key[symFahrenheit] != 0:
		t = FromFahrenheit(v)
	default:
		t = Temperature(v)
	}
	switch {
	case t < 0:
		return 0, fail(s, at, quoteCut(s[at:])+" is below absolute zero")
	case math.IsInf(float64(t), 0):
		return 0, fail(s, at, "the number is out of range")
	}
	return t, nil
}

// ParseShare reads a share of a whole, "25 %", and returns it as a fraction
// of 1. A bare number is refused, since 0.25 and 25 could both be meant; so is
// anything outside 0 to 100 %.
func ParseShare(s string) (float64, error) {
	at := skipBlanks(s, 0)
	v, n, msg := number(s[at:])
	if msg != "" {
		return 0, fail(s, at+n, msg)
	}
	if n == 0 {
		return 0, fail(s, at, "no number; write a share as a percentage, such as 25 %")
	}
	from := skipBlanks(s, at+n)
	unit := strings.TrimRight(s[from:], blanks)
	switch {
	case unit == "":
		return 0, fail(s, at, "a bare number: write a share with its sign, such as 25 %")
	case unit != "%" && !strings.EqualFold(unit, "percent") && !strings.EqualFold(unit, "per cent"):
		return 0, fail(s, from, "unknown unit "+strconv.Quote(unit)+" for a share, write such as 25 %")
	case !(v >= 0 && v <= 100):
		return 0, fail(s, at, quoteCut(s[at:])+" is out of range, a share is 0 to 100 %")
	}
	return v / 100, nil
}

// parse reads a quantity of kind k that is one number with one unit.
func parse(k *kind, s string) (float64, error) {
	v, at, sc, err := k.split(s, s)
	if err != nil {
		return 0, err
	}
	return k.checked(s, at, v*sc.size)
}

// checked returns v if it is in the range of the kind.
func (k *kind) checked(text string, at int, v float64) (float64, error) {
	if err := k.check(text, at, v); err != nil {
		return 0, err
	}
	return v, nil
}

// check refuses what is outside the range of the kind. The number stands at
// the offset at of text.
func (k *kind) check(text string, at int, v float64) error {
	switch {
	case math.IsInf(v, 0) || math.IsNaN(v):
		return fail(text, at, "the number is out of range")
	case k.low == aboveZero && v == 0 && k.zero != "":
		return fail(text, at, quoteCut(text[at:])+" is zero, "+k.zero)
	case k.low == aboveZero && v <= 0:
		return fail(text, at, quoteCut(text[at:])+" is out of range, "+k.name+" is above zero")
	case k.low == fromZero && v < 0:
		return fail(text, at, quoteCut(text[at:])+" is out of range, "+k.name+" is zero or more")
	}
	return nil
}

// split reads the number and the unit of s, a piece of text. at is the offset
// of the number (or of its label) in s.
func (k *kind) split(text, s string) (v float64, at int, sc *scale, err error) {
	at = skipBlanks(s, 0)
	end := trimRight(s)
	from, label := at, labelNone
	if k.label != 0 {
		from, label = k.labelAt(s[:end], at)
	}
	v, n, msg := number(s[from:end])
	if msg != "" {
		return 0, at, nil, fail(text, from+n, msg)
	}
	if n == 0 {
		return 0, at, nil, k.noNumber(text, s[:end], at)
	}
	unitAt := skipBlanks(s, from+n)
	if unitAt >= end {
		switch label {
		case labelSI:
			return v, at, &k.scales[0], nil
		case labelIP:
			return v, at, &k.scales[1], nil
		}
		return 0, at, nil, fail(text, at, "a bare number without its unit: "+s[at:end]+" what? use "+k.use)
	}
	unit := s[unitAt:end]
	key, ok := parseUnit(unit)
	if ok {
		if sc := k.scale(&key); sc != nil && (label != labelSI || sc == &k.scales[0]) {
			return v, at, sc, nil
		}
	}
	return 0, at, nil, k.badUnit(text, unitAt, unit, &key, ok)
}

// labels before a number.
const (
	labelNone = iota
	labelIP   // R-13, U-0.30
	labelSI   // RSI 2.3, USI 1.7
)

// labelAt returns where the number begins behind the kind's label at the
// offset at, and which label it is.
func (k *kind) labelAt(s string, at int) (from, label int) {
	if at >= len(s) || s[at]&^0x20 != k.label {
		return at, labelNone
	}
	from, label = at+1, labelIP
	if len(s) >= at+3 && s[at+1]&^0x20 == 'S' && s[at+2]&^0x20 == 'I' {
		from, label = at+3, labelSI
	}
	if c, w := utf8.DecodeRuneInString(s[from:]); isDash(c) {
		from += w
	}
	return skipBlanks(s, from), label
}

// noNumber says that s, whose first character is at the offset at, does not
// start with a number.
func (k *kind) noNumber(text, s string, at int) error {
	if at >= len(s) {
		return fail(text, at, "nothing is written where "+k.name+" is needed, use "+k.use)
	}
	for _, other := range []*kind{&resistanceKind, &transmittanceKind} {
		if from, label := other.labelAt(s, at); label != labelNone && other != k {
			if _, n, _ := number(s[from:]); n > 0 {
				return fail(text, at, strconv.Quote(s[at:])+" is "+other.name+", "+k.name+" is needed (use "+k.use+")")
			}
		}
	}
	return fail(text, at, "no number in "+strconv.Quote(s[at:])+", "+k.name+" is a number with its unit (use "+k.use+")")
}

// badUnit says what is wrong with a unit that is none of k's.
func (k *kind) badUnit(text string, at int, unit string, key *unitKey, known bool) error {
	if known {
		for _, other := range allKinds {
			if sc := other.scale(key); sc != nil && k.scale(key) == nil {
				return fail(text, at, strconv.Quote(unit)+" is a unit of "+other.plain()+", "+k.name+" is needed (use "+k.use+")")
			}
		}
	}
	first, _ := utf8.DecodeRuneInString(unit)
	if isDash(first) || isDigit(unit, 0) {
		return fail(text, at, "two numbers where one is needed, "+k.name+" such as "+k.use)
	}
	return fail(text, at, "unknown unit "+strconv.Quote(unit)+" for "+k.name+" (use "+k.use+")")
}

// plain is the name of the kind without its article.
func (k *kind) plain() string {
	_, name, _ := strings.Cut(k.name, " ")
	return name
}

// quoteCut quotes the rest of a text from a number on.
func quoteCut(s string) string { return strconv.Quote(s[:trimRight(s)]) }

func skipBlanks(s string, n int) int {
	for n < len(s) {
		if s[n] == ' ' {
			n++
			continue
		}
		c, w := utf8.DecodeRuneInString(s[n:])
		if !strings.ContainsRune(blanks, c) {
			break
		}
		n += w
	}
	return n
}

func trimRight(s string) int {
	if s == "" || s[len(s)-1] > ' ' && s[len(s)-1] < utf8.RuneSelf {
		return len(s)
	}
	return len(strings.TrimRight(s, blanks))
}
