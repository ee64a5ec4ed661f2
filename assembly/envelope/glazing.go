package envelope

import (
	"github.com/coldseam/coldseam/assembly/window"
	"github.com/coldseam/coldseam/rvalue"
)

var frameNames = []string{"aluminum", "aluminum with thermal break", "clad wood", "wood", "vinyl", "fiberglass"}

// coe is the U of a glazing at its centre and in the 2.5 in beside its spacer,
// Btu/(h·ft²·°F).
type coe struct{ centre, edge float64 }

// glazing is a row of the tables.
type glazing struct {
	name     string
	words    word
	panes    int
	wide     coe                        // gaps of 1/2 in; wider ones bring no significant change (1993 handbook, seen)
	narrow   coe                        // gaps of 1/4 in; zero where there is no such row
	skylight [window.Fiberglass]float64 // whole, by frame up to wood; zero where there is no such row
}

const stormName = "single with storm"

// glazings has centre and edge of glass from ASHRAE Handbook—Fundamentals 1997
// to 2005, table 4 of the fenestration chapter, from memory, 1/8 in glass and
// metal spacers; low-e is its emittance 0.10, between 0.20 and 0.05. A storm
// window has no spacer. Skylights are from SkylightSource.
var glazings = [...]glazing{
	{"single", wordSingle, 1, coe{1.04, 1.04}, coe{}, [4]float64{1.58, 1.51, 1.40, 1.18}},
	{stormName, wordSingle | wordStorm, 2, coe{0.50, 0.50}, coe{}, [4]float64{}},
	{"double", wordDouble, 2, coe{0.48, 0.59}, coe{0.55, 0.64}, [4]float64{1.05, 0.89, 0.84, 0.67}},
	{"double argon", wordDouble | wordArgon, 2, coe{0.45, 0.57}, coe{0.51, 0.61}, [4]float64{1.02, 0.86, 0.80, 0.64}},
	{"double low-e", wordDouble | wordLowE, 2, coe{0.32, 0.48}, coe{0.42, 0.55}, [4]float64{0.94, 0.79, 0.74, 0.58}},
	{"double low-e argon", wordDouble | wordLowE | wordArgon, 2, coe{0.27, 0.44}, coe{0.35, 0.50}, [4]float64{0.89, 0.73, 0.68, 0.52}},
	{"triple", wordTriple, 3, coe{0.31, 0.47}, coe{0.38, 0.52}, [4]float64{0.90, 0.70, 0.67, 0.51}},
	{"triple argon", wordTriple | wordArgon, 3, coe{0.29, 0.45}, coe{0.34, 0.49}, [4]float64{0.87, 0.69, 0.64, 0.48}},
	{"triple low-e", wordTriple | wordLowE, 3, coe{0.18, 0.37}, coe{0.27, 0.44}, [4]float64{0.81, 0.62, 0.58, 0.42}},
	{"triple low-e argon", wordTriple | wordLowE | wordArgon, 3, coe{0.14, 0.34}, coe{0.21, 0.39}, [4]float64{0.77, 0.58, 0.54, 0.38}},
}

// The sizes of ASHRAE Handbook—Fundamentals 1997 to 2005, fenestration chapter, in
// the notes to its whole windows, from memory: fixed 48 x 48 in, operable 600 x
// 1500 mm. With its frames, beside metal spacers in fixed windows and beside
// insulating ones, where there are such, in operable ones, they rebuild 40 of the 42
// remembered cells of the whole-window table to its last digit and the other two
// within 0.01.
const (
	fixedSide                     = 48 * rvalue.Inch
	operableWidth, operableHeight = 600 * rvalue.Millimetre, 1500 * rvalue.Millimetre
)

// whole returns the U of a whole window in Btu/(h·ft²·°F).
func whole(glass coe, panes int, frame window.Frame, operable bool) float64 {
	width, height, spacer := fixedSide, fixedSide, window.Metal
	if operable {
		width, height, spacer = operableWidth, operableHeight, window.Insulating
	}
	face, band := frame.Face(operable), 2*window.EdgeBand
	w, h := width-2*face, height-2*face
	pane, centre, all := w.Times(h).SI(), (w - band).Times(h-band).SI(), width.Times(height).SI()
	// ASHRAE Handbook—Fundamentals, fenestration: U = ΣU·A/ΣA
	return (glass.centre*centre + glass.edge*(pane-centre) + frame.U(panes, operable, spacer).IP()*(all-pane)) / all
}
