package main

import (
	"fmt"
	"io"
	"math"
	"strings"
	"unicode/utf8"

	"github.com/coldseam/coldseam/rvalue"
)

// table collects rows of cells and prints them in columns: text to the left,
// numbers to the right.
type table struct {
	right []bool // by column
	rows  [][]string
}

func (t *table) row(cells ...string) { t.rows = append(t.rows, cells) }

func (t *table) print(w io.Writer) {
	var widths []int
	for _, r := range t.rows {
		for i, c := range r {
			if i == len(widths) {
				widths = append(widths, 0)
			}
			widths[i] = max(widths[i], utf8.RuneCountInString(c))
		}
	}
	for _, r := range t.rows {
		var b strings.Builder
		for i, c := range r {
			if i > 0 {
				b.WriteString("  ")
			}
			pad := strings.Repeat(" ", widths[i]-utf8.RuneCountInString(c))
			if i < len(t.right) && t.right[i] {
				b.WriteString(pad + c)
			} else {
				b.WriteString(c + pad)
			}
		}
		fmt.Fprintln(w, strings.TrimRight(b.String(), " "))
	}
}

// figure prints a quantity without its unit, with three significant digits and
// at most three decimals.
func figure[T interface {
	SI() float64
	IP() float64
}](v T, u rvalue.Units) string {
	x := v.SI()
	if u == rvalue.IP {
		x = v.IP()
	}
	switch a := math.Abs(x); {
	case a >= 100:
		return fmt.Sprintf("%.0f", x)
	case a >= 10:
		return fmt.Sprintf("%.1f", x)
	case a >= 1:
		return fmt.Sprintf("%.2f", x)
	}
	return fmt.Sprintf("%.3f", x)
}

// bar draws a share of width characters.
func bar(share float64, width int) string {
	n := int(share*float64(width) + 0.5)
	return strings.Repeat("▪", min(max(n, 0), width))
}

func percent(share float64) string {
	if share > 0 && share < 0.005 {
		return "<1 %"
	}
	return fmt.Sprintf("%.0f %%", 100*share)
}

// wrap prints text in lines of at most width characters, the first behind
// head and the others indented as far.
func wrap(w io.Writer, head, text string, width int) {
	indent := strings.Repeat(" ", utf8.RuneCountInString(head))
	line, length := head, utf8.RuneCountInString(head)
	start := true
	for _, word := range strings.Fields(text) {
		n := utf8.RuneCountInString(word)
		if !start && length+1+n > width {
			fmt.Fprintln(w, line)
			line, length, start = indent, utf8.RuneCountInString(indent), true
		}
		if !start {
			line += " "
			length++
		}
		line += word
		length += n
		start = false
	}
	fmt.Fprintln(w, line)
}
