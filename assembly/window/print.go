package window

import (
	"math"
	"strconv"
	"strings"

	"github.com/coldseam/coldseam/rvalue"
)

// String returns the glazing in the notation, indoors first. [Parse] reads it back
// as the same glazing.
func (g Glazing) String() string {
	var b strings.Builder
	for i := range g.Panes {
		if i > 0 {
			b.WriteString(" + ")
			if i <= len(g.Gaps) {
				b.WriteString(g.Gaps[i-1].String())
				b.WriteString(" + ")
			}
		}
		b.WriteString(g.Panes[i].String())
	}
	return b.String()
}

// String returns the pane in the notation, such as "low-e 0.04 glass 4 mm".
func (p Pane) String() string {
	var words []string
	coating := func(e float64) {
		if e != 0 {
			words = append(words, "low-e "+strconv.FormatFloat(e, 'g', -1, 64))
		}
	}
	coating(p.Inner)
	if p.Storm {
		words = append(words, "storm")
	}
	if p.Tempered {
		words = append(words, "tempered")
	}
	if !p.Storm || p.Sheet != Glass {
		words = append(words, p.Sheet.String())
	}
	words = append(words, lengthText(p.Thickness))
	if p.Interlayer != 0 {
		words = append(words, "interlayer "+lengthText(p.Interlayer))
	}
	coating(p.Outer)
	return strings.Join(words, " ")
}

// String returns the gap in the notation, such as "argon 90 % 16 mm".
func (g Gap) String() string {
	if g.Kind != Filled {
		return g.Kind.String() + " " + lengthText(g.Thickness) + " " + strconv.FormatFloat(g.Conductance.SI(), 'g', -1, 64) + " W/(m²·K)"
	}
	if g.Fill == (Fill{}) {
		return "air " + lengthText(g.Thickness)
	}
	var b strings.Builder
	for gas, x := range [gasCount]float64{0, g.Fill.Argon, g.Fill.Krypton, g.Fill.Xenon, g.Fill.SF6} {
		if x != 0 {
			b.WriteString(Gas(gas).String() + " " + percentText(x) + " % ")
		}
	}
	return b.String() + lengthText(g.Thickness)
}

// lengthText writes a length as shortly as reads back the same: in whole mm, in
// inches as a tape shows them, in mm or in m.
func lengthText(l rvalue.Length) string {
	exact := l.Millimetres()
	for _, s := range [...]string{
		strconv.FormatFloat(math.Round(exact), 'f', -1, 64) + " mm", l.In(rvalue.IP),
		strconv.FormatFloat(math.Round(exact*1e6)/1e6, 'f', -1, 64) + " mm",
	} {
		if back, err := rvalue.ParseLength(s); err == nil && back == l {
			return s
		}
	}
	return strconv.FormatFloat(l.SI(), 'f', -1, 64) + " m"
}

// percentText writes a share in percent: its shortest decimal with the point two
// places on, which Parse moves back, so that no bit is lost.
func percentText(share float64) string {
	mantissa, exponent, _ := strings.Cut(strconv.FormatFloat(share, 'e', -1, 64), "e")
	digits := strings.Replace(mantissa, ".", "", 1)
	n, _ := strconv.Atoi(exponent) // well formed: it was just written
	switch point := n + 3; {
	case point <= 0:
		return "0." + strings.Repeat("0", -point) + digits
	case point < len(digits):
		return digits[:point] + "." + digits[point:]
	default:
		return digits + strings.Repeat("0", point-len(digits))
	}
}
