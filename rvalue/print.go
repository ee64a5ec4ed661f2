package rvalue

import (
	"math"
	"strconv"
	"strings"
)

// Units is a system of units to print in. Its zero value is SI.
type Units uint8

// The systems of units.
const (
	SI Units = iota // metre, kelvin, watt; temperatures in °C
	IP              // inch-pound, as the North American trade uses it
)

// ParseUnits reads "si" or "ip", in any case.
func ParseUnits(s string) (Units, error) {
	switch {
	case strings.EqualFold(s, "si"):
		return SI, nil
	case strings.EqualFold(s, "ip"):
		return IP, nil
	}
	return SI, fail(s, 0, "unknown system of units, use si or ip")
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

// rounding says how a unit's figures are rounded for people: to sig
// significant digits, but not fewer than least nor more than most decimals.
type rounding struct{ sig, least, most int }

// In returns r as "R-13.0" or "RSI 2.29".
func (r Resistance) In(u Units) string {
	if u == IP {
		return "R-" + figure(r.IP(), rounding{2, 1, 4})
	}
	return "RSI " + figure(r.RSI(), rounding{2, 2, 4})
}

// In returns t as "0.0639 Btu/(h·ft²·°F)" or "0.363 W/(m²·K)".
func (t Transmittance) In(u Units) string {
	return in(u, t.IP(), rounding{3, 0, 4}, " Btu/(h·ft²·°F)", t.SI(), rounding{3, 0, 4}, " W/(m²·K)")
}

// In returns k as "0.277 Btu·in/(h·ft²·°F)" or "0.040 W/(m·K)".
func (k Conductivity) In(u Units) string {
	return in(u, k.IP(), rounding{3, 0, 3}, " Btu·in/(h·ft²·°F)", k.SI(), rounding{3, 0, 3}, " W/(m·K)")
}

// In returns a as "263.5 ft²" or "24.5 m²".
func (a Area) In(u Units) string {
	return in(u, a.IP(), rounding{3, 1, 2}, " ft²", a.SI(), rounding{3, 1, 2}, " m²")
}

// In returns v as "7400 ft³" or "209.5 m³".
func (v Volume) In(u Units) string {
	return in(u, v.IP(), rounding{3, 0, 2}, " ft³", v.SI(), rounding{3, 1, 2}, " m³")
}

// In returns t as "68 °F" or "20.0 °C". Absolute zero, which stands for "not
// given", is "0 K" in both.
func (t Temperature) In(u Units) string {
	switch {
	case t == 0:
		return "0 K"
	case u == IP:
		return fixed(t.Fahrenheit(), 0) + " °F"
	}
	return fixed(t.Celsius(), 1) + " °C"
}

// In returns d as "18.0 °F" or "10.0 K".
func (d TemperatureDifference) In(u Units) string {
	return in(u, d.IP(), rounding{2, 1, 3}, " °F", d.SI(), rounding{2, 1, 3}, " K")
}

// In returns c as "52.1 Btu/(h·°F)" or "27.5 W/K".
func (c Conductance) In(u Units) string {
	return in(u, c.IP(), rounding{3, 1, 2}, " Btu/(h·°F)", c.SI(), rounding{3, 1, 2}, " W/K")
}

// In returns p as "0.730 Btu/(h·ft·°F)" or "1.26 W/(m·K)".
func (p LinearTransmittance) In(u Units) string {
	return in(u, p.IP(), rounding{3, 0, 3}, " Btu/(h·ft·°F)", p.SI(), rounding{3, 0, 3}, " W/(m·K)")
}

// In returns p as "5.0 perm" or "286 ng/(Pa·s·m²)".
func (p Permeance) In(u Units) string {
	return in(u, p.IP(), rounding{2, 0, 3}, " perm", p.SI(), rounding{3, 0, 2}, " ng/(Pa·s·m²)")
}

// In returns q as "1200 cfm" or "2039 m³/h".
func (q AirFlow) In(u Units) string {
	return in(u, q.IP(), rounding{3, 0, 2}, " cfm", q.SI(), rounding{3, 0, 2}, " m³/h")
}

// In returns s as "15.0 mph" or "6.7 m/s".
func (s Speed) In(u Units) string {
	return in(u, s.IP(), rounding{2, 1, 2}, " mph", s.SI(), rounding{2, 1, 2}, " m/s")
}

// In returns d as "2.2 lb/ft³" or "35 kg/m³".
func (d Density) In(u Units) string {
	return in(u, d.IP(), rounding{2, 1, 2}, " lb/ft³", d.SI(), rounding{2, 0, 2}, " kg/m³")
}

// footFrom is the length above which feet are used, in inches. Lumber, batts
// and stud spacings up to 24 in are spoken of in inches.
const footFrom = 24

// sixteenth is how far from a sixteenth of an inch a length may be and still
// be printed as one, in inches: a hundredth of what a tape shows.
const sixteenth = 1. / 2000

// In returns l as people write it: "3 1/2 in", "5 ft 4 1/2 in" above 24 in,
// with decimals where it is no sixteenth of an inch; or "90 mm", from 1 m on "2.438 m".
func (l Length) In(u Units) string {
	if u == IP {
		return inches(l.Inches())
	}
	mm := l.Millimetres()
	if math.Abs(mm) < 999.95 {
		return trimZeros(figure(mm, rounding{2, 1, 3})) + " mm"
	}
	return trimZeros(figure(l.SI(), rounding{2, 3, 3})) + " m"
}

func inches(v float64) string {
	const step = 16
	n := math.Round(v * step)
	exact := n >= 1 && n < 1e9 && math.Abs(v-n/step) <= sixteenth
	if !exact && (!(math.Abs(v) > footFrom) || math.IsInf(v, 0) || math.Abs(v) >= 1e9) {
		return trimZeros(figure(v, rounding{3, 2, 4})) + " in"
	}
	if !exact {
		n = math.Round(v*100) * step / 100 // to a hundredth of an inch
	}
	b, sign := []byte(nil), math.Signbit(n)
	if n = math.Abs(n); sign {
		b = append(b, '-')
	}
	if n > footFrom*step {
		feet := math.Floor(n / (12 * step))
		n -= feet * 12 * step
		b = strconv.AppendFloat(b, feet, 'f', 0, 64)
		b = append(b, " ft "...)
		if n < step/200. {
			return string(b[:len(b)-1])
		}
	}
	if !exact {
		return string(strconv.AppendFloat(b, n/step, 'f', 2, 64)) + " in"
	}
	whole, num, den := int(n)/step, int(n)%step, step
	if whole > 0 || num == 0 {
		b = strconv.AppendInt(b, int64(whole), 10)
	}
	if num > 0 {
		for num%2 == 0 {
			num, den = num/2, den/2
		}
		if whole > 0 {
			b = append(b, ' ')
		}
		b = strconv.AppendInt(b, int64(num), 10)
		b = append(b, '/')
		b = strconv.AppendInt(b, int64(den), 10)
	}
	return string(b) + " in"
}

// String returns the quantity as In(SI) does.
func (r Resistance) String() string            { return r.In(SI) }
func (t Transmittance) String() string         { return t.In(SI) }
func (k Conductivity) String() string          { return k.In(SI) }
func (l Length) String() string                { return l.In(SI) }
func (a Area) String() string                  { return a.In(SI) }
func (v Volume) String() string                { return v.In(SI) }
func (t Temperature) String() string           { return t.In(SI) }
func (d TemperatureDifference) String() string { return d.In(SI) }
func (c Conductance) String() string           { return c.In(SI) }
func (p LinearTransmittance) String() string   { return p.In(SI) }
func (p Permeance) String() string             { return p.In(SI) }
func (q AirFlow) String() string               { return q.In(SI) }
func (s Speed) String() string                 { return s.In(SI) }
func (d Density) String() string               { return d.In(SI) }

func in(u Units, ip float64, ipRound rounding, ipUnit string, si float64, siRound rounding, siUnit string) string {
	if u == IP {
		return figure(ip, ipRound) + ipUnit
	}
	return figure(si, siRound) + siUnit
}

// Beyond these a figure is printed with a power of ten.
const (
	tinyFigure = 1e-6
	hugeFigure = 1e9
)

// figure rounds v for people. However small, a value that is not zero keeps
// two significant digits, so that it never looks like nothing.
func figure(v float64, r rounding) string {
	a := math.Abs(v)
	switch {
	case v == 0:
		return "0"
	case !(a >= tinyFigure && a < hugeFigure):
		return strconv.FormatFloat(v, 'g', r.sig, 64)
	}
	first := int(math.Floor(math.Log10(a))) // place of the first digit
	d := min(max(r.sig-1-first, r.least), r.most)
	d = max(d, 1-first, 0)
	return fixed(v, min(d, 8))
}

// fixed prints v with d decimals and no minus before a zero.
func fixed(v float64, d int) string {
	s := strconv.FormatFloat(v, 'f', d, 64)
	if s[0] == '-' && strings.Trim(s, "-0.") == "" {
		return s[1:]
	}
	return s
}

// trimZeros drops the zeros behind a decimal point.
func trimZeros(s string) string {
	if !strings.Contains(s, ".") || strings.Contains(s, "e") {
		return s
	}
	return strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
}
