package rvalue

import "strconv"

// ParseTemperature reads a temperature above absolute zero in °C, °F or K:
// "68 °F", "-5C", "293.15 K". Absolute zero itself is refused too: as the zero
// value it stands for "not given".
func ParseTemperature(s string) (Temperature, error) {
	v, at, unit, err := temperatureKind.read(s)
	if err != nil {
		return 0, err
	}
	t := Temperature(v)
	switch {
	case unit.key[symCelsius] != 0:
		t = FromCelsius(v)
	case unit.key[symFahrenheit] != 0:
		t = FromFahrenheit(v)
	}
	if t <= 0 {
		return 0, fail(s, at, strconv.Quote(s[at:trimRight(s)]), " is out of range, a temperature is above absolute zero")
	}
	k, err := temperatureKind.check(s, at, len(s), float64(t))
	return Temperature(k), err
}
