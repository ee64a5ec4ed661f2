package assembly

import (
	"fmt"
	"math"

	"github.com/coldseam/coldseam/rvalue"
)

// SteelLayer returns the effective resistance of a layer of steel studs with
// the cavity insulation between them, to be added to all else in the wall, films
// included: as the table prints it where exact. A rated resistance of 0 is the
// table's empty cavity (3 1/2 in studs only). It answers depths from 3 1/2 to 8 in
// at any spacing wider than a flange; anything else is an error.
//
// Off the rows it is our own, as the source says. It rests on what the rows of
// insulated cavities have in common: the studs conduct beside the fill,
// 1/R − 1/rated, nearly alike at all depths and rated resistances, 0.088 to
// 0.091 Btu/(h·ft²·°F) at 16 in and 0.061 to 0.064 at 24 in. So 1/R is a straight
// line in 1/rated between two rows; beyond the first and the last row the studs
// conduct as in that row. Between 16 and 24 in 1/R is a straight line in
// 1/spacing; beyond them each stud carries what it carries there, so that what all
// conduct goes by 1/spacing. Between two depths 1/R is a straight line in the depth:
// the rows of 3 1/2 and 8 in give those of 6 in to the print's own rounding. More
// in the cavity and studs wider apart never make less of the layer, and the layer
// resists less than its cavity. The rows of empty cavities stand apart: two
// digits do not tell what studs conduct beside.
//
// Source: ASHRAE 90.1, appendix A; rows by row.
func SteelLayer(depth, spacing rvalue.Length, rated rvalue.Resistance) (effective rvalue.Resistance, source string, exact bool, err error) {
	if !(rated >= 0) || math.IsInf(float64(rated), 0) {
		return 0, "", false, fmt.Errorf("assembly: cavity insulation of %v m²·K/W between steel studs, it must be 0 or more and finite", float64(rated))
	}
	if !(spacing > steelFlange) || math.IsInf(float64(spacing), 0) {
		return 0, "", false, fmt.Errorf("assembly: steel studs %.4g in apart, use more than their flanges of %.4g in", spacing.Inches(), steelFlange.Inches())
	}
	low, high, t, err := steelDepthsAround(depth)
	if err != nil {
		return 0, "", false, err
	}
	u, source, exact, err := steelAtDepth(low, spacing, rated)
	if err != nil {
		return 0, "", false, err
	}
	if low != high {
		deeper, beside, _, err := steelAtDepth(high, spacing, rated)
		if err != nil {
			return 0, "", false, err
		}
		u += t * (deeper - u)
		exact = false
		source = fmt.Sprintf("between the depths of %.4g and %.4g in that ASHRAE 90.1 has, by our own straight line; at %.4g in %s; at %.4g in %s",
			low.Inches(), high.Inches(), low.Inches(), source, high.Inches(), beside)
	}
	return rvalue.Resistance(1/u) * rvalue.RIP, offSpacing(spacing) + source, exact, nil
}

// steelDepthsAround returns the published depths that one lies between and how
// far; the same twice where it passes for one of them.
func steelDepthsAround(depth rvalue.Length) (low, high rvalue.Length, t float64, err error) {
	d, last := depth.Inches(), 0.0
	for _, row := range steelRows {
		switch {
		case math.Abs(d-row.depth) <= depthSlackSteel:
			listed := rvalue.Length(row.depth) * rvalue.Inch
			return listed, listed, 0, nil
		case d < row.depth && last > 0:
			from, to := last+depthSlackSteel, row.depth-depthSlackSteel
			return rvalue.Length(last) * rvalue.Inch, rvalue.Length(row.depth) * rvalue.Inch, (d - from) / (to - from), nil
		case d < row.depth:
			return 0, 0, 0, noSteelDepth(d)
		}
		last = row.depth
	}
	return 0, 0, 0, noSteelDepth(d)
}

func noSteelDepth(inches float64) error {
	return fmt.Errorf("assembly: no published resistance for steel studs %.4g in deep, only from 3.5 to 8 in", inches)
}

// The published spacings, in inches.
const nearStuds, farStuds = 16, 24

// offSpacing says what is done about a spacing that is not published, "" for one
// that is.
func offSpacing(spacing rvalue.Length) string {
	t, in := wider(spacing), spacing.Inches()
	switch {
	case in < nearStuds-moduleSlack:
		return "beyond the spacings of 16 and 24 in that ASHRAE 90.1 has, each stud is taken to carry what it does at 16 in, which is our own; "
	case in > farStuds+moduleSlack:
		return "beyond the spacings of 16 and 24 in that ASHRAE 90.1 has, each stud is taken to carry what it does at 24 in, which is our own; "
	case t > 0 && t < 1:
		return "between the spacings of 16 and 24 in that ASHRAE 90.1 has, by our own straight line in 1/spacing; "
	}
	return ""
}

// steelAtDepth returns 1/R of a layer of studs of a published depth in
// Btu/(h·ft²·°F), where it comes from, and whether the table has the very row.
func steelAtDepth(depth, spacing rvalue.Length, rated rvalue.Resistance) (u float64, source string, exact bool, err error) {
	in := spacing.Inches()
	switch {
	case in < nearStuds-moduleSlack:
		return steelBeyond(depth, nearStuds, (nearStuds-moduleSlack)/in, rated)
	case in > farStuds+moduleSlack:
		return steelBeyond(depth, farStuds, (farStuds+moduleSlack)/in, rated)
	}
	t := wider(spacing)
	if t == 0 || t == 1 {
		return steelConductance(depth, spacing, rated)
	}
	near, source, _, err := steelConductance(depth, nearStuds*rvalue.Inch, rated)
	if err != nil {
		return 0, "", false, err
	}
	far, beside, _, err := steelConductance(depth, farStuds*rvalue.Inch, rated)
	if beside != source {
		source = "at 16 in " + source + "; at 24 in " + beside
	}
	return near + t*(far-near), source, false, err
}

// steelBeyond is steelAtDepth at spacings beyond a published one, where the studs
// stand so many times as close as there. What they conduct beside an empty cavity
// is taken from the first insulated row.
func steelBeyond(depth rvalue.Length, published, times float64, rated rvalue.Resistance) (u float64, source string, exact bool, err error) {
	spacing := rvalue.Length(published) * rvalue.Inch
	u, source, _, err = steelConductance(depth, spacing, rated)
	if err != nil {
		return 0, "", false, err
	}
	studs := u - 1/rated.IP()
	if rated == 0 {
		rows, err := steelRowsFor(depth, spacing)
		if err != nil {
			return 0, "", false, err
		}
		first := rows[1] // behind the empty cavity
		studs = 1/first.effective - 1/first.rated
	}
	return u + studs*(times-1), source, false, nil
}

// wider returns how far a spacing is from the published 16 in to the published
// 24 in, for which 600 mm passes, in 1/spacing.
func wider(spacing rvalue.Length) float64 {
	const near, far = 1.0 / nearStuds, 1 / (farStuds - moduleSlack)
	return min(max((near-1/spacing.Inches())/(near-far), 0), 1)
}

// steelConductance returns 1/R of a layer in Btu/(h·ft²·°F) at a published
// spacing, where it comes from, and whether the table has the very row.
func steelConductance(depth, spacing rvalue.Length, rated rvalue.Resistance) (u float64, source string, exact bool, err error) {
	rows, err := steelRowsFor(depth, spacing)
	if err != nil {
		return 0, "", false, err
	}
	hasEmpty := rows[0].rated == 0
	switch {
	case rated == 0 && hasEmpty:
		return 1 / rows[0].effective, rows[0].source, true, nil
	case rated == 0:
		return 0, "", false, fmt.Errorf("assembly: no published resistance for an empty cavity between steel studs %.4g in deep, only for 3.5 in", depth.Inches())
	case hasEmpty:
		rows = rows[1:]
	}
	r, above := rated.IP(), 0
	for i, row := range rows {
		if math.Abs(r-row.rated) <= ratedSlack {
			source, exact = row.source, true
		}
		if row.rated <= r {
			above = i + 1
		}
	}
	low, high := rows[max(above-1, 0)], rows[min(above, len(rows)-1)]
	if low == high { // beyond the rows
		if !exact {
			source = fmt.Sprintf("%s; beyond its rows the studs are taken to conduct as in that of R-%g", low.source, low.rated)
		}
		return 1/r + 1/low.effective - 1/low.rated, source, exact, nil
	}
	if !exact {
		source = steelSource(low, high)
	}
	f := (1/low.rated - 1/r) / (1/low.rated - 1/high.rated)
	return 1/low.effective + f*(1/high.effective-1/low.effective), source, exact, nil
}
