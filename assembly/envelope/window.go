package envelope

import (
	"fmt"
	"strings"

	"github.com/coldseam/coldseam/rvalue"
)

// Frames of the handbook's table of whole windows, in the order of its columns.
var frameNames = []string{"aluminum", "aluminum with thermal break", "clad wood", "wood", "fiberglass"}

var frameAliases = map[string]string{
	"aluminium": "aluminum", "metal": "aluminum", "steel": "aluminum",
	"aluminium with thermal break": "aluminum with thermal break",
	"reinforced vinyl":             "clad wood", "vinyl": "wood", "pvc": "wood", "insulated vinyl": "fiberglass",
}

// glassRow is one glazing of the handbook's table of whole-window U-factors in
// Btu/(h·ft²·°F), by frame.
type glassRow struct {
	name            string
	fixed, operable [5]float64 // 0 where the table was not had
}

// glassRows is from memory of ASHRAE Handbook—Fundamentals 2005, chapter on
// fenestration, table of U-factors of whole vertical windows (1/8 in glass).
// The fixed column of aluminum was recomputed from centre, edge and frame to
// within 0.01.
var glassRows = [...]glassRow{
	{"single", [5]float64{1.13, 1.07, 0.98, 0.98, 0.94}, [5]float64{1.27, 1.08, 0.90, 0.89, 0.81}},
	{"double 1/4 in", [5]float64{0.69, 0.63, 0.56, 0.56, 0.53}, [5]float64{0.87, 0.65, 0.57, 0.55, 0.49}},
	{"double", [5]float64{0.64, 0.57, 0.50, 0.50, 0.48}, [5]float64{0.81, 0.60, 0.53, 0.51, 0.44}},
	{"double 1/4 in argon", [5]float64{0.66, 0.59, 0.53, 0.52, 0.50}, [5]float64{}},
	{"double argon", [5]float64{0.61, 0.54, 0.48, 0.48, 0.45}, [5]float64{}},
}

// computedRow is a glazing whose whole-window figure is weighted from centre,
// edge and frame.
type computedRow struct {
	name         string
	centre, edge float64 // Btu/(h·ft²·°F)
	panes        int
}

// computedRows has the coated and triple glazings, 1/2 in gaps, coatings of
// emittance 0.10: same handbook, table of centre and edge of glass, from memory.
var computedRows = [...]computedRow{
	{"double low-e", 0.32, 0.48, 2},
	{"double low-e argon", 0.27, 0.44, 2},
	{"triple", 0.31, 0.47, 3},
	{"triple low-e argon", 0.14, 0.34, 3},
}

// frameU is the U-factor of frames around double and triple glass by frame,
// fixed and operable: same handbook, from memory.
var frameU = map[int]struct{ fixed, operable [5]float64 }{
	2: {[5]float64{1.80, 1.13, 0.51, 0.48, 0.33}, [5]float64{2.27, 0.92, 0.58, 0.51, 0.33}},
	3: {[5]float64{1.74, 1.11, 0.48, 0.42, 0.32}, [5]float64{2.20, 0.83, 0.51, 0.48, 0.32}},
}

// Areas in in² of centre, edge band (2.5 in) and frame of a window 48 in
// square with a frame 1.3 in wide: the weights of the whole window.
const (
	centreArea = 40.4 * 40.4
	edgeArea   = 45.4*45.4 - centreArea
	frameArea  = 48*48 - 45.4*45.4
)

// ComputedWindowSource says where the figures of coated and triple glass come from.
const ComputedWindowSource = "computed from the centre, edge and frame figures of ASHRAE Handbook—Fundamentals 2005 (from memory) for a window 48 in square"

// WindowSource says where the figures of DefaultWindow come from.
const WindowSource = "ASHRAE Handbook—Fundamentals 2005, whole vertical windows, from memory"

// stormU is the centre of a single pane with a storm window 1 to 4 in away,
// in Btu/(h·ft²·°F): ASHRAE Handbook 1977-1981, from memory; a consumer group's
// page says about 0.5 as well.
const stormU = 0.50

// DefaultWindow returns the whole-window U-factor of the handbook's table for
// a glazing ("single", "double", "double argon", "double 1/4 in", "double 1/4
// in argon", "single with storm") in a frame ("wood", "vinyl", "clad wood",
// "aluminum", "aluminum with thermal break", "fiberglass"), fixed or operable,
// and its source. A window's own label is better whenever there is one.
func DefaultWindow(glass, frame string, operable bool) (rvalue.Transmittance, string, error) {
	glass, frame = oneLine(glass), oneLine(frame)
	if a, ok := frameAliases[frame]; ok {
		frame = a
	}
	column := -1
	for i, name := range frameNames {
		if name == frame {
			column = i
		}
	}
	if column < 0 {
		return 0, "", fmt.Errorf("envelope: %q is no frame in the table (use %s)", frame, strings.Join(frameNames, ", "))
	}
	if glass == "single with storm" || glass == "storm over single" {
		return stormU * rvalue.UIP, "single glass with a storm window 1 to 4 in away, centre of glass, ASHRAE Handbook 1977-1981, from memory; the frame is not counted", nil
	}
	names := []string{"single with storm"}
	for _, row := range glassRows {
		names = append(names, row.name)
		if row.name != glass {
			continue
		}
		u := row.fixed[column]
		if operable && row.operable[column] > 0 {
			u = row.operable[column]
		}
		return rvalue.Transmittance(u) * rvalue.UIP, WindowSource, nil
	}
	for _, row := range computedRows {
		names = append(names, row.name)
		if row.name != glass {
			continue
		}
		frames := frameU[row.panes].fixed
		if operable {
			frames = frameU[row.panes].operable
		}
		// ASHRAE Handbook—Fundamentals, fenestration: U0 = ΣU·A/ΣA
		u := (row.centre*centreArea + row.edge*edgeArea + frames[column]*frameArea) / (48 * 48)
		return rvalue.Transmittance(u) * rvalue.UIP, ComputedWindowSource, nil
	}
	return 0, "", fmt.Errorf("envelope: %q is no glazing in the table (use %s); for another give the label's U, such as u = \"U-0.30\"", glass, strings.Join(names, ", "))
}

// DoorSource says where the figures of DefaultDoor come from.
const DoorSource = "energy code default U-factors of doors, from memory"

// DefaultDoor returns the U-factor of a door by what it is made of: "wood",
// "insulated steel", "uninsulated steel".
func DefaultDoor(of string) (rvalue.Transmittance, string, error) {
	u := map[string]float64{"wood": 0.50, "insulated steel": 0.60, "uninsulated steel": 1.20}[oneLine(of)]
	if u == 0 {
		return 0, "", fmt.Errorf("envelope: no default U for a door of %q (use wood, insulated steel, uninsulated steel)", of)
	}
	return rvalue.Transmittance(u) * rvalue.UIP, DoorSource, nil
}

func oneLine(s string) string { return strings.ToLower(strings.Join(strings.Fields(s), " ")) }
