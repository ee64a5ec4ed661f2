package material

import (
	"math"

	"github.com/coldseam/coldseam/rvalue"
)

// chart is a fiberglass maker's compression chart, printed in the Journal of
// Light Construction (JLC) as usable for similar batts: R in h·ft²·°F/Btu of a
// batt (label, thickness in inches) in bays of the given depths. Cells where the
// batt fits are left out: they print the label. The page's text lost its empty
// cells; which column a value of the 3 1/2 in. row belongs to was inferred, here
// so that have 15 and R-19 has 14. (Another reading of the same row
// gives R-22 of 6 1/2 in. 15; that cell is left to the fit.)
var chart = []struct {
	label, inches float64
	cells         []cell // by depth
}{
	{19, 6.25, []cell{{3.5, 14}, {5.5, 18}}},
	{21, 5.5, []cell{{3.5, 15}}},
	{22, 6.5, []cell{{5.5, 20}}},
	{25, 8, []cell{{5.5, 20}, {7.25, 24}}},
	{30, 8.25, []cell{{5.5, 22}, {7.25, 27}}},
	{30, 10, []cell{{5.5, 21}, {7.25, 26}, {9.25, 29}}},
	{38, 10, []cell{{7.25, 30}, {9.25, 36}}},
	{38, 12, []cell{{7.25, 28}, {9.25, 33}, {11.25, 37}}},
}

// cell is R in h·ft²·°F/Btu at a depth in inches.
type cell struct{ inches, r float64 }

// chartBounds returns the chart's values of a batt at the depths next to the
// given one, between which R must lie; exact says that they are one cell, the
// given depth's. Without a neighbour the bounds are 0 and the label.
func chartBounds(b Batt, depth rvalue.Length) (lo, hi rvalue.Resistance, exact bool) {
	hi = b.Label
	for _, column := range chart {
		r := rvalue.Resistance(column.label) * rvalue.RIP
		if math.Abs(float64(b.Label-r)) > sameLabel*float64(r) || !within(b.Thickness, column.inches, onChart) {
			continue
		}
		for _, c := range column.cells {
			r := rvalue.Resistance(c.r) * rvalue.RIP
			switch {
			case within(depth, c.inches, onChart):
				return r, r, true
			case depth > rvalue.Length(c.inches)*rvalue.Inch:
				lo = r
			default:
				return lo, min(r, hi), false
			}
		}
	}
	return lo, hi, false
}

func within(d rvalue.Length, inches float64, tolerance rvalue.Length) bool {
	return math.Abs(float64(d-rvalue.Length(inches)*rvalue.Inch)) <= float64(tolerance)
}
