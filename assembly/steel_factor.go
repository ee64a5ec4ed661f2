package assembly

import (
	"fmt"
	"math"
	"strings"

	"github.com/coldseam/coldseam/rvalue"
)

// steelRow is one row of the published correction factors of steel studs.
type steelRow struct {
	depth, spacing float64 // in, nominal
	rated          float64 // of the cavity insulation, h·ft²·°F/Btu
	factor         float64 // effective over rated; 0 in the row of an empty cavity
	empty          float64 // effective resistance of the empty cavity, h·ft²·°F/Btu
	source         string
}

// steelRows is the table of ASHRAE 90.1, appendix A (the same in the IECC's
// U = 1/(Rs + ER)), ordered by depth, spacing and rated resistance. Rows seen
// on a page say which; the others are from memory.
var steelRows = [...]steelRow{
	{3.5, 16, 0, 0, 0.79, "ASHRAE 90.1, from memory"},
	{3.5, 16, 11, 0.50, 0, "ASHRAE Handbook—Fundamentals 2021, ch. 27"},
	{3.5, 16, 13, 0.46, 0, "Construction Specifier, energy code math for commercial walls"},
	{3.5, 16, 15, 0.43, 0, "ASHRAE 90.1, from memory"},
	{3.5, 24, 0, 0, 0.91, "ASHRAE 90.1, from memory"},
	{3.5, 24, 11, 0.60, 0, "ASHRAE 90.1, from memory"},
	{3.5, 24, 13, 0.55, 0, "ASHRAE 90.1, from memory"},
	{3.5, 24, 15, 0.52, 0, "ASHRAE 90.1, from memory"},
	{6, 16, 19, 0.37, 0, "Building Enclosure, the continuing story of continuous insulation (as effective R-7.1)"},
	{6, 16, 21, 0.35, 0, "ASHRAE 90.1, from memory"},
	{6, 24, 19, 0.45, 0, "ASHRAE 90.1, from memory"},
	{6, 24, 21, 0.43, 0, "ASHRAE 90.1, from memory"},
	{8, 16, 25, 0.31, 0, "ASHRAE 90.1, from memory"},
	{8, 24, 25, 0.38, 0, "ASHRAE 90.1, from memory"},
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
// linearly, and the source says so. Depths 3 1/2, 6 and 8 in and spacings 16
// and 24 in are answered; anything else, and a rated resistance outside the
// rows, is an error. An empty cavity has no factor, see SteelLayer.
//
// Source: ASHRAE 90.1, appendix A; rows by row.
func SteelCorrection(depth, spacing rvalue.Length, rated rvalue.Resistance) (fc float64, source string, exact bool, err error) {
	rows, err := steelRowsFor(depth, spacing)
	if err != nil {
		return 0, "", false, err
	}
	if rows[0].factor == 0 { // the empty cavity
		rows = rows[1:]
	}
	r := rated.IP()
	for i, row := range rows {
		if math.Abs(r-row.rated) <= ratedSlack {
			return row.factor, row.source, true, nil
		}
		if i > 0 && rows[i-1].rated < r && r < row.rated {
			low := rows[i-1]
			f := (r - low.rated) / (row.rated - low.rated)
			return low.factor + f*(row.factor-low.factor), between(low, row), false, nil
		}
	}
	return 0, "", false, fmt.Errorf("assembly: no correction factor for insulation of R-%.4g between steel studs %.4g in deep and %.4g in apart, the published ones are for %s",
		r, depth.Inches(), spacing.Inches(), ratedList(rows))
}

func between(low, high steelRow) string {
	source := low.source
	if high.source != low.source {
		source += "; " + high.source
	}
	return fmt.Sprintf("%s; between the rows R-%g and R-%g by a straight line", source, low.rated, high.rated)
}

func ratedList(rows []steelRow) string {
	list := make([]string, len(rows))
	for i, row := range rows {
		list[i] = fmt.Sprintf("R-%g", row.rated)
	}
	return strings.Join(list, ", ")
}

// SteelLayer returns the effective resistance of a layer of steel studs with
// the cavity insulation between them, SteelCorrection times rated, or with an
// empty cavity for a rated of 0 (3 1/2 in studs only).
//
// Source: ASHRAE 90.1, appendix A; rows by row.
func SteelLayer(depth, spacing rvalue.Length, rated rvalue.Resistance) (effective rvalue.Resistance, source string, exact bool, err error) {
	if rated == 0 {
		rows, err := steelRowsFor(depth, spacing)
		if err != nil {
			return 0, "", false, err
		}
		if rows[0].empty == 0 {
			return 0, "", false, fmt.Errorf("assembly: no published resistance for an empty cavity between steel studs %.4g in deep, only for 3.5 in", depth.Inches())
		}
		return rvalue.Resistance(rows[0].empty) * rvalue.RIP, rows[0].source, true, nil
	}
	fc, source, exact, err := SteelCorrection(depth, spacing, rated)
	return rvalue.Resistance(fc * float64(rated)), source, exact, err
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
		return nil, fmt.Errorf("assembly: no correction factor for steel studs %.4g in deep and %.4g in apart, the published ones are for 3.5, 6 and 8 in studs at 16 and 24 in", d, s)
	}
	return steelRows[first : first+n], nil
}
