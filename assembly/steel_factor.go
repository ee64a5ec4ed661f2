package assembly

import (
	"fmt"
	"math"
	"strings"

	"github.com/coldseam/coldseam/rvalue"
)

// steelRow is one row of the published table of steel studs. The effective
// resistance is the table's own figure; its factor is that over the rated one,
// rounded to two digits.
type steelRow struct {
	depth, spacing float64 // in, nominal
	rated          float64 // of the cavity insulation, h·ft²·°F/Btu; 0: empty
	factor         float64 // F_c; 0 in the row of an empty cavity
	effective      float64 // of the layer, studs included, h·ft²·°F/Btu
	source         string
}

// steelRows is the table of ASHRAE 90.1, appendix A (the same in the IECC's
// U = 1/(Rs + ER)), ordered by depth, spacing and rated resistance. Rows seen
// on a page say which; the others are from memory.
var steelRows = [...]steelRow{
	{3.5, 16, 0, 0, 0.79, "ASHRAE 90.1, from memory"},
	{3.5, 16, 11, 0.50, 5.5, "ASHRAE Handbook—Fundamentals 2021, ch. 27"},
	{3.5, 16, 13, 0.46, 6.0, "Construction Specifier, energy code math for commercial walls"},
	{3.5, 16, 15, 0.43, 6.4, "ASHRAE 90.1, from memory"},
	{3.5, 24, 0, 0, 0.91, "ASHRAE 90.1, from memory"},
	{3.5, 24, 11, 0.60, 6.6, "ASHRAE 90.1, from memory"},
	{3.5, 24, 13, 0.55, 7.2, "ASHRAE 90.1, from memory"},
	{3.5, 24, 15, 0.52, 7.8, "ASHRAE 90.1, from memory"},
	{6, 16, 19, 0.37, 7.1, "Building Enclosure, the continuing story of continuous insulation"},
	{6, 16, 21, 0.35, 7.4, "ASHRAE 90.1, from memory"},
	{6, 24, 19, 0.45, 8.6, "ASHRAE 90.1, from memory"},
	{6, 24, 21, 0.43, 9.0, "ASHRAE 90.1, from memory"},
	{8, 16, 25, 0.31, 7.8, "ASHRAE 90.1, from memory"},
	{8, 24, 25, 0.38, 9.6, "ASHRAE 90.1, from memory"},
}

const (
	// ratedSlack is how far a rated resistance may miss a row's, in
	// h·ft²·°F/Btu: the rounding of labels in m²·K/W with two decimals.
	ratedSlack = 0.05
	// moduleSlack is how far a spacing may miss 16 or 24 in: the metric module.
	moduleSlack = 0.4 // in; 600 mm is 23.62 in
	// depthSlackSteel is how far a depth may miss a row's: the 3 5/8 in stud
	// counts as 3 1/2 in, that of 150 mm as 6 in.
	depthSlackSteel = 0.15 // in
)

// SteelCorrection returns F_c, by which the rated resistance of insulation
// between steel studs is multiplied to get that of the insulated layer, studs
// included; the published source; and whether the table has the very row.
// Between two rated resistances of one depth and spacing it interpolates
// linearly, which is our own and the source says so. Depths 3 1/2, 6 and 8 in and spacings 16
// and 24 in are answered; anything else, and a rated resistance outside the
// rows, is an error. An empty cavity has no factor, see SteelLayer.
//
// Source: ASHRAE 90.1, appendix A; rows by row.
func SteelCorrection(depth, spacing rvalue.Length, rated rvalue.Resistance) (fc float64, source string, exact bool, err error) {
	low, high, f, err := steelBetween(depth, spacing, rated)
	if err != nil {
		return 0, "", false, err
	}
	return low.factor + f*(high.factor-low.factor), steelSource(low, high), low.rated == high.rated, nil
}

// steelBetween returns the rows that a rated resistance lies between, and how
// far between them; the same row twice if it is that row's.
func steelBetween(depth, spacing rvalue.Length, rated rvalue.Resistance) (low, high steelRow, f float64, err error) {
	rows, err := steelRowsFor(depth, spacing)
	if err != nil {
		return low, high, 0, err
	}
	if rows[0].factor == 0 { // the empty cavity
		rows = rows[1:]
	}
	r := rated.IP()
	for i, row := range rows {
		if math.Abs(r-row.rated) <= ratedSlack {
			return row, row, 0, nil
		}
		if i > 0 && rows[i-1].rated < r && r < row.rated {
			low = rows[i-1]
			return low, row, (r - low.rated) / (row.rated - low.rated), nil
		}
	}
	list := make([]string, len(rows))
	for i, row := range rows {
		list[i] = fmt.Sprintf("R-%g", row.rated)
	}
	return low, high, 0, fmt.Errorf("assembly: no correction factor for insulation of R-%.4g between steel studs %.4g in deep and %.4g in apart, the published ones are for %s",
		r, depth.Inches(), spacing.Inches(), strings.Join(list, ", "))
}

func steelSource(low, high steelRow) string {
	if low.rated == high.rated {
		return low.source
	}
	source := low.source
	if high.source != low.source {
		source += "; " + high.source
	}
	return fmt.Sprintf("%s; between the rows R-%g and R-%g by our own straight line", source, low.rated, high.rated)
}

// steelRowsFor returns the rows of one depth and spacing.
func steelRowsFor(depth, spacing rvalue.Length) ([]steelRow, error) {
	d, s := depth.Inches(), spacing.Inches()
	first, n := 0, 0
	for i, row := range steelRows {
		if math.Abs(d-row.depth) <= depthSlackSteel && math.Abs(s-row.spacing) <= moduleSlack {
			if n == 0 {
				first = i
			}
			n++
		}
	}
	if n == 0 {
		return nil, noSteelRows(depth, spacing)
	}
	return steelRows[first : first+n], nil
}

func noSteelRows(depth, spacing rvalue.Length) error {
	return fmt.Errorf("assembly: no correction factor for steel studs %.4g in deep and %.4g in apart, the published ones are for 3.5, 6 and 8 in studs at 16 and 24 in", depth.Inches(), spacing.Inches())
}
