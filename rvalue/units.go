package rvalue

import "strings"

// Units is a system of units to print in. Its zero value is SI.
type Units uint8

// The systems of units.
const (
	SI Units = iota // metre, kelvin, watt, and temperatures in °C
	IP              // inch-pound, as the North American trade uses it
)

// ParseUnits reads "si" or "ip", in upper or lower case.
func ParseUnits(s string) (Units, error) {
	switch {
	case strings.EqualFold(s, "si"):
		return SI, nil
	case strings.EqualFold(s, "ip"):
		return IP, nil
	}
	return SI, fail(s, 0, "unknown system of units (use si or ip)")
}

// String returns "si" or "ip".
func (u Units) String() string {
	if u == IP {
		return "ip"
	}
	return "si"
}

// MarshalText returns "si" or "ip".
func (u Units) MarshalText() ([]byte, error) { return []byte(u.String()), nil }

// UnmarshalText reads what ParseUnits reads.
func (u *Units) UnmarshalText(text []byte) error { return unmarshal(u, text, ParseUnits) }
