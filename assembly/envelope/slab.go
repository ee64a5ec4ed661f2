package envelope

import (
	"fmt"
	"iter"
	"math"

	"github.com/coldseam/coldseam/rvalue"
)

// point is the F-factor of a slab's edge, Btu/(h·ft·°F), with insulation of
// some R, h·ft²·°F/Btu.
type point struct{ r, f float64 }

// slabRow is a row of the table of F-factors, from the bare edge on.
type slabRow struct {
	reach  string
	depth  rvalue.Length // that the code counts
	points []point
}

// SlabSource names where the F-factors come from.
const SlabSource = "Washington State Energy Code, table A106.1 (WAC 51-11C-61061)"

// slabRows is the table for unheated slabs, seen on a page that lists the
// values without the blank cells before them. The three values of the edge
// rows start at R-5. The four of the fully insulated slab stand at R-10, 15,
// 20 and 30: the same row of ASHRAE 90.1 (from memory) has R-10 0.36, R-15
// 0.30, R-20 0.26 and R-30 0.21, and R-5 0.46 besides; it is the careful
// reading of the two as well.
var slabRows = [...]slabRow{
	{"none", 0, []point{{0, 0.73}}},
	{"2 ft horizontal", 2 * rvalue.Foot, []point{{0, 0.73}, {5, 0.70}, {10, 0.70}, {15, 0.69}}},
	{"4 ft horizontal", 4 * rvalue.Foot, []point{{0, 0.73}, {5, 0.67}, {10, 0.64}, {15, 0.63}}},
	{"2 ft vertical", 2 * rvalue.Foot, []point{{0, 0.73}, {5, 0.58}, {10, 0.54}, {15, 0.52}}},
	{"4 ft vertical", 4 * rvalue.Foot, []point{{0, 0.73}, {5, 0.54}, {10, 0.48}, {15, 0.45}}},
	{"full", 4 * rvalue.Foot, []point{{0, 0.73}, {10, 0.36}, {15, 0.31}, {20, 0.26}, {30, 0.21}}},
}

// heatedSlab is the same table's row for a slab with heating in it, insulated
// all under: its five values fill every column from R-5 on.
var heatedSlab = []point{{0, 0.84}, {5, 0.74}, {10, 0.55}, {15, 0.44}, {20, 0.39}, {30, 0.32}}

// SlabReach is how far insulation at a slab's edge reaches, in words and as a depth.
type SlabReach struct {
	Words string        // as SlabEdge reads it
	Depth rvalue.Length // down or inward; of "full" as deep as any code asks
}

// SlabReaches yields what SlabEdge reads, the bare edge first.
func SlabReaches() iter.Seq[SlabReach] {
	return func(yield func(SlabReach) bool) {
		for _, row := range slabRows {
			if !yield(SlabReach{row.reach, row.depth}) {
				return
			}
		}
	}
}

// SlabEdge returns the F-factor of the edge of an unheated slab: the heat per
// length of exposed perimeter that the whole floor loses, so that the floor's
// mean U is f.Times(perimeter).Over(area). reach is "none", "2 ft horizontal",
// "4 ft horizontal", "2 ft vertical", "4 ft vertical" (all without a thermal
// break at the edge) or "full" (under the whole slab and at its edge). Between
// the table's R it interpolates straight, from the bare edge at 0 on; beyond
// the last it keeps the last value.
//
// Source: SlabSource. The error is a *NameError for an unknown reach; r must
// be 0 or more and finite.
func SlabEdge(reach string, r rvalue.Resistance) (rvalue.LinearTransmittance, error) {
	known := make([]string, 0, len(slabRows))
	for i := range slabRows {
		if slabRows[i].reach == oneLine(reach) {
			return between(slabRows[i].points, r)
		}
		known = append(known, slabRows[i].reach)
	}
	return 0, &NameError{Name: reach, What: "no reach of slab edge insulation", Known: known}
}

// HeatedSlab returns the F-factor of a slab with heating in it, insulated all
// under with r, 0 or more. It interpolates as SlabEdge does.
//
// Source: SlabSource.
func HeatedSlab(r rvalue.Resistance) (rvalue.LinearTransmittance, error) {
	return between(heatedSlab, r)
}

// between reads a row at r.
func between(row []point, r rvalue.Resistance) (rvalue.LinearTransmittance, error) {
	if !(r >= 0) || math.IsInf(float64(r), 1) {
		return 0, fmt.Errorf("envelope: slab insulation of %v m²·K/W, it must be 0 or more and finite", float64(r))
	}
	f, x := row[len(row)-1].f, r.IP()
	for i := 1; i < len(row); i++ {
		if a, b := row[i-1], row[i]; x < b.r {
			f = a.f + (b.f-a.f)*(x-a.r)/(b.r-a.r)
			break
		}
	}
	return rvalue.LinearTransmittance(f * float64(rvalue.PsiIP)), nil
}
