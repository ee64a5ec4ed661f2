package window

import (
	"fmt"
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
		return g.Kind.String() + " " + lengthText(g.Thickness) + " " + conductanceText(g.Conductance)
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

// lengthText writes a length in the first of these that reads back as the same: whole
// mm, inches to a 64th, mm and inches with few decimals, and then as many as it takes.
func lengthText(l rvalue.Length) string {
	if s, back := written(l, 0); s != "" && back == l {
		return s
	}
	if s := strconv.FormatFloat(l.Millimetres(), 'f', -1, 64) + " mm"; lengthReads(s) == l {
		return s
	}
	return strconv.FormatFloat(l.SI(), 'f', -1, 64) + " m"
}

// written returns the plainest text of a length that reads back within so much of it,
// and what it reads as; "" and 0 if none does.
func written(l, within rvalue.Length) (string, rvalue.Length) {
	mm, inches := l.Millimetres(), l.Inches()
	for _, s := range [...]string{
		decimals(mm, 0) + " mm", fraction(inches) + " in",
		decimals(mm, 1) + " mm", decimals(mm, 2) + " mm", decimals(inches, 3) + " in", decimals(mm, 6) + " mm",
	} {
		if back := lengthReads(s); back > 0 && math.Abs(float64(back-l)) <= float64(within) {
			return s, back
		}
	}
	return "", 0
}

// lengthReads returns what a text reads as, 0 if it is no length.
func lengthReads(s string) rvalue.Length {
	l, err := rvalue.ParseLength(s)
	if err != nil {
		return 0
	}
	return l
}

// decimals writes v with at most n decimals, none that is an idle zero.
func decimals(v float64, n int) string {
	p := math.Pow10(n)
	return strconv.FormatFloat(math.Round(v*p)/p, 'f', -1, 64)
}

// fraction writes inches to the nearest 64th, as a tape shows them: "1 3/32".
func fraction(inches float64) string {
	const finest = 64
	n := math.Round(inches * finest)
	whole, part, of := math.Floor(n/finest), int(math.Mod(n, finest)), finest
	for part > 0 && part%2 == 0 {
		part, of = part/2, of/2
	}
	switch {
	case part == 0:
		return decimals(whole, 0)
	case whole == 0:
		return fmt.Sprintf("%d/%d", part, of)
	}
	return fmt.Sprintf("%.0f %d/%d", whole, part, of)
}

// conductanceText writes what a gap is declared to conduct: as W/(m²·K), R, RSI or U,
// whichever reads back as the same with the fewest digits, which is how it was written.
func conductanceText(u rvalue.Transmittance) string {
	best := strconv.FormatFloat(u.SI(), 'g', -1, 64)
	text := best + " W/(m²·K)"
	for _, other := range [...]struct {
		prefix string
		value  float64
	}{{"R-", u.R().IP()}, {"RSI ", u.R().RSI()}, {"U-", u.IP()}} {
		for n := range 7 {
			digits := decimals(other.value, n)
			if len(digits) >= len(best) {
				break
			}
			if s := other.prefix + digits; readsAs(s, u) {
				best, text = digits, s
				break
			}
		}
	}
	return text
}

// readsAs reports whether Parse reads the text as the conductance u.
func readsAs(text string, u rvalue.Transmittance) bool {
	got, err := readConductance(text)
	return err == nil && got == u
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
