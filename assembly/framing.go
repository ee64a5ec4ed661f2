package assembly

import (
	"fmt"

	"github.com/coldseam/coldseam/rvalue"
)

// lumberR is the resistivity of framing lumber, R-1.25 per inch: the value
// behind the code's wall tables (2x6, 2x4: ), as the published
// deemed-to-comply walls print it. Softwood at 12 % moisture measures to
// per inch (Wood Handbook, eq. 4-15).
const lumberR = 1.25 * float64(rvalue.RIP) / float64(rvalue.Inch) // m·K/W

// dressed gives the actual size of a nominal inch: American Softwood Lumber
// Standard PS 20, dry dressed dimension lumber and boards.
func dressed(nominal int) (rvalue.Length, bool) {
	var inches float64
	switch nominal {
	case 1:
		inches = 0.75
	case 2, 3, 4, 5, 6:
		inches = float64(nominal) - 0.5
	case 8, 10, 12, 14:
		inches = float64(nominal) - 0.75
	default:
		return 0, false
	}
	return rvalue.Length(inches) * rvalue.Inch, true
}

// framingFactor is the share of the area that framing takes at two spacings,
// plates, headers and corners included.
type framingFactor struct {
	at16, at24 float64
	by16, by24 string // what they are made up of
	source     string
	members    string // what stands at the spacing
	rest       string // what does not, and so stays with it
}

var framingFactors = [...]framingFactor{
	Wall: {
		0.25, 0.22, "studs, plates and sills 21 %, headers 4 %", "studs, plates and sills 18 %, headers 4 %",
		"ASHRAE Handbook—Fundamentals 2021, ch. 27", "studs", "plates, headers and corners",
	},
	Ceiling: {0.10, 0.10, "attic joists", "attic joists", "ASHRAE 90.1, App. A2.4", "joists", ""},
	Floor:   {0.10, 0.07, "wood joists", "wood joists", "California joint appendix, from memory", "joists", "what lies across them"},
	Roof:    {0.10, 0.10, "single rafters", "single rafters", "ASHRAE 90.1, App. A2.4", "rafters", ""},
}

// DefaultFraming returns the share of the area that wood framing takes for a
// use and a spacing of the members, and where the figure comes from. Published
// at 16 and 24 in on centre. At other spacings it follows the straight line in
// 1/spacing through both, which is our own: its slope is the members' own width,
// 1.44 in for studs, and its start what does not go with the spacing, 16 % of a
// wall for plates, headers and corners. So a wall never falls below that, however
// far apart its studs stand. Where one figure is published for both spacings it
// is taken at all. Spacings from 6 in to 8 ft are answered; any other, and an
// unknown use, is an error.
func DefaultFraming(use Use, spacing rvalue.Length) (fraction float64, source string, err error) {
	if !(spacing >= 6*rvalue.Inch && spacing <= 8*rvalue.Foot) {
		return 0, "", fmt.Errorf("assembly: no framing factor for members %s apart, published ones are for 16 and 24 in; give the share of the area instead, such as 20 %%", rvalue.Both(spacing))
	}
	if int(use) >= len(framingFactors) {
		return 0, "", fmt.Errorf("assembly: no framing factor for use %d, use Wall to Roof", use)
	}
	f := framingFactors[use]
	in := spacing.Inches()
	slope := (f.at16 - f.at24) / (1/16.0 - 1/24.0)
	fraction = f.at24 + slope*(1/in-1/24.0)
	// The metric module, 400 and 600 mm, is the same framing as 16 and 24 in.
	switch {
	case in > 15.7 && in < 16.1:
		return f.at16, f.by16 + ": " + f.source, nil
	case in > 23.5 && in < 24.1:
		return f.at24, f.by24 + ": " + f.source, nil
	}
	if slope == 0 {
		return fraction, fmt.Sprintf("%s, published for 16 and 24 in alike and taken at any spacing: %s", f.by16, f.source), nil
	}
	where := "beyond"
	if in > 16 && in < 24 {
		where = "between"
	}
	return fraction, fmt.Sprintf("%s; %s its spacings of 16 and 24 in, %s are kept at %.2g %% and the %s go by 1/spacing", f.source, where, f.rest, 100*(fraction-slope/in), f.members), nil
}

// strapDepth is the greatest depth of straps, battens and furring. They have
// no plates, headers or corners, so that their share is width over spacing.
const strapDepth = 1.5 * rvalue.Inch

// strapSource is where the share of straps comes from.
const strapSource = "width over spacing, as BR 443 counts battens (47 mm at 400 mm: 11.8 %), from memory"

// steelThickness gives the base-metal thickness of a stud by the gauge it is
// sold under: 18 ga 0.043 in and 16 ga 0.054 in as in ASHRAE 90.1, A3.3; the
// others from memory of the trade's minimum thicknesses.
func steelThickness(gauge int) (rvalue.Length, bool) {
	var inches float64
	switch gauge {
	case 25:
		inches = 0.018
	case 20:
		inches = 0.033
	case 18:
		inches = 0.043
	case 16:
		inches = 0.054
	case 14:
		inches = 0.068
	case 12:
		inches = 0.097
	default:
		return 0, false
	}
	return rvalue.Length(inches) * rvalue.Inch, true
}

const (
	defaultGauge = 18
	steelFlange  = 1.625 * rvalue.Inch // common practice, no source
)
