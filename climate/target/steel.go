package target

import (
	"fmt"
	"math"
	"slices"

	"github.com/coldseam/coldseam/rvalue"
)

// Steel describes cold-formed steel framing, for which the code lists R-values
// that stand for the wood-frame ones.
type Steel struct {
	Truss   bool          // ceiling under trusses rather than joists
	Spacing rvalue.Length // of wall studs: 16 in or 24 in
	Nominal int           // depth of ceiling or floor joists, 4 for a 2x4 up to 10; 0 unknown: all options are listed
}

// steelUse is the block of the steel table.
type steelUse uint8

const (
	steelTruss steelUse = iota
	steelJoist
	steelWall16
	steelWall24
	steelFloor
)

// steelAlt is one alternative, valid for joists of the nominal depths listed,
// or of any depth.
type steelAlt struct {
	r  pair
	in []int
}

type steelRow struct {
	use  steelUse
	wood pair // the wood-frame requirement replaced, R in h·ft²·°F/Btu
	alts []steelAlt
}

// walls makes alternatives without a condition on the depth.
func walls(ps ...pair) (alts []steelAlt) {
	for _, p := range ps {
		alts = append(alts, steelAlt{p, nil})
	}
	return alts
}

// steelRows is the table of steel-frame equivalents, Table R402.2.6 (402.2.5 in
// 2009). From memory in every edition: verify before use.
var steelRows = [...]steelRow{
	{steelTruss, pair{30, 0}, walls(pair{38, 0}, pair{30, 3}, pair{26, 5})},
	{steelTruss, pair{38, 0}, walls(pair{49, 0}, pair{38, 3})},
	{steelTruss, pair{49, 0}, walls(pair{38, 5})},
	{steelJoist, pair{30, 0}, []steelAlt{{pair{38, 0}, []int{4, 6, 8}}, {pair{49, 0}, nil}}},
	{steelJoist, pair{38, 0}, []steelAlt{{pair{49, 0}, []int{4, 6, 8, 10}}}},
	{steelWall16, pair{13, 0}, walls(pair{13, 4.2}, pair{19, 2.1}, pair{21, 2.8}, pair{15, 3.8}, pair{0, 9.3})},
	{steelWall16, pair{13, 3}, walls(pair{0, 11.2}, pair{13, 6.1}, pair{15, 5.7}, pair{19, 5.0}, pair{21, 4.7})},
	{steelWall16, pair{20, 0}, walls(pair{0, 14.0}, pair{13, 8.9}, pair{15, 8.5}, pair{19, 7.8}, pair{21, 7.5})},
	{steelWall16, pair{20, 5}, walls(pair{13, 12.7}, pair{15, 12.3}, pair{19, 11.6}, pair{21, 11.3}, pair{25, 10.9})},
	{steelWall16, pair{21, 0}, walls(pair{0, 14.6}, pair{13, 9.5}, pair{15, 9.1}, pair{19, 8.4}, pair{21, 8.1}, pair{25, 7.7})},
	{steelWall24, pair{13, 0}, walls(pair{0, 9.3}, pair{13, 3.0}, pair{15, 2.4})},
	{steelWall24, pair{13, 3}, walls(pair{0, 11.2}, pair{13, 4.9}, pair{15, 4.3}, pair{19, 3.5}, pair{21, 3.1})},
	{steelWall24, pair{20, 0}, walls(pair{0, 14.0}, pair{13, 7.7}, pair{15, 7.1}, pair{19, 6.3}, pair{21, 5.9})},
	{steelWall24, pair{20, 5}, walls(pair{13, 11.5}, pair{15, 10.9}, pair{19, 10.1}, pair{21, 9.7}, pair{25, 9.1})},
	{steelWall24, pair{21, 0}, walls(pair{0, 14.6}, pair{13, 8.3}, pair{15, 7.7}, pair{19, 6.9}, pair{21, 6.5}, pair{25, 5.9})},
	{steelFloor, pair{13, 0}, []steelAlt{{pair{19, 0}, []int{6}}, {pair{19, 6}, []int{8, 10}}}},
	{steelFloor, pair{19, 0}, []steelAlt{{pair{19, 6}, []int{6}}, {pair{19, 12}, []int{8, 10}}}},
}

// spacingTolerance lets a spacing written in rounded millimetres (406, 610)
// count as the inch spacing it stands for.
const spacingTolerance = 1 * rvalue.Millimetre

// use returns the block of the table for component c, false where steel framing
// changes nothing.
func (s Steel) use(c Component) (steelUse, bool, error) {
	switch c {
	case Ceiling:
		if s.Truss {
			return steelTruss, true, nil
		}
		return steelJoist, true, nil
	case CathedralCeiling:
		return steelJoist, true, nil
	case Floor:
		return steelFloor, true, nil
	case Wall:
		at := func(in float64) bool {
			return math.Abs(float64(s.Spacing-rvalue.Length(in)*rvalue.Inch)) <= float64(spacingTolerance)
		}
		switch {
		case at(16):
			return steelWall16, true, nil
		case at(24):
			return steelWall24, true, nil
		}
		return 0, false, fmt.Errorf("steel stud spacing \"%.4g in\" is not in the table; it has 16 in and 24 in", s.Spacing.Inches())
	}
	return 0, false, nil
}

// steelOptions replaces wood-frame options by their steel equivalents. An
// option that the table does not list has none.
func steelOptions(wood []Option, use steelUse, nominal int) (steel []Option) {
	for _, row := range steelRows {
		if row.use != use || !slices.ContainsFunc(wood, func(o Option) bool { return o.is(row.wood) }) {
			continue
		}
		for _, a := range row.alts {
			if nominal != 0 && a.in != nil && !slices.Contains(a.in, nominal) {
				continue
			}
			o := option(a.r)
			o.Total = a.r.ci == 0 && use != steelWall16 && use != steelWall24
			o.Joists = slices.Clone(a.in)
			steel = append(steel, o)
		}
	}
	return steel
}
