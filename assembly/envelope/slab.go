package envelope

import (
	"fmt"
	"math"
	"strings"

	"github.com/coldseam/coldseam/rvalue"
)

// slabRow is the F-factor of an unheated slab's edge by the R of its edge
// insulation, from R-5 in steps of 5, in Btu/(h·ft·°F).
type slabRow struct {
	name    string
	factors []float64
}

// bareSlab is the F-factor of an uninsulated edge. Like slabRows it is read
// off the Washington State Energy Code, table A106.1 (WAC 51-11C-61061), whose
// page lists the values without its blank cells.
const bareSlab = 0.73

var slabRows = [...]slabRow{
	{"2 ft horizontal", []float64{0.70, 0.70, 0.69}},
	{"4 ft horizontal", []float64{0.67, 0.64, 0.63}},
	{"2 ft vertical", []float64{0.58, 0.54, 0.52}},
	{"4 ft vertical", []float64{0.54, 0.48, 0.45}},
	{"full", []float64{0.36, 0.31, 0.26, 0.21}},
}

// SlabSource names where the F-factors come from.
const SlabSource = "Washington State Energy Code, table A106.1 (WAC 51-11C-61061)"

// SlabEdge returns the F-factor of the edge of an unheated slab: the heat per
// length of exposed perimeter that the whole floor loses. reach is "none", "2
// ft horizontal", "4 ft horizontal", "2 ft vertical", "4 ft vertical" or
// "full" (under the whole slab, with its edge). Between the table's R-5, 10,
// 15 (full: 20) it interpolates, from R-0 on; beyond it keeps the last value.
func SlabEdge(reach string, r rvalue.Resistance) (rvalue.LinearTransmittance, error) {
	want := strings.ToLower(strings.Join(strings.Fields(reach), " "))
	if want == "none" || want == "" {
		return bareSlab * rvalue.PsiIP, nil
	}
	if !(r > 0) || math.IsInf(float64(r), 1) {
		return 0, fmt.Errorf("envelope: slab edge insulation %q of %v m²·K/W, it must be positive and finite", reach, float64(r))
	}
	names := []string{"none"}
	for _, row := range slabRows {
		if row.name != want {
			names = append(names, row.name)
			continue
		}
		at := r.IP() / 5 // 0 is the bare edge, 1 the first column
		value := func(i int) float64 {
			if i == 0 {
				return bareSlab
			}
			return row.factors[min(i, len(row.factors))-1]
		}
		i := int(math.Min(at, float64(len(row.factors))))
		f := math.Min(at-float64(i), 1)
		return rvalue.LinearTransmittance(value(i)+f*(value(i+1)-value(i))) * rvalue.PsiIP, nil
	}
	return 0, fmt.Errorf("envelope: %q is no reach of slab edge insulation (use %s)", reach, strings.Join(names, ", "))
}
