package window

import (
	"fmt"
	"strings"

	"github.com/coldseam/coldseam/rvalue"
)

// Frame is what a frame and its sash are made of.
type Frame uint8

// The frames.
const (
	Aluminum      Frame = iota // any metal, without a thermal break
	AluminumBreak              // with a thermal break
	Clad                       // wood clad with metal or vinyl, or reinforced vinyl
	Wood                       // or vinyl
	Fiberglass                 // insulated, or insulated vinyl
)

// FrameCount is how many kinds of frame there are.
const FrameCount = int(Fiberglass) + 1

// String returns the name of the frame, as house files write it.
func (f Frame) String() string {
	if int(f) < FrameCount {
		return frames[f].name
	}
	return fmt.Sprintf("Frame(%d)", uint8(f))
}

// Spacer is what holds two panes of a sealed unit apart at their edge.
type Spacer uint8

// The spacers. All but Metal are thermally improved in the sense of ISO 10077-1
// (sum of thickness times conductivity at most 0.007 W/K, seen).
const (
	Metal          Spacer = iota // aluminum or plain steel
	Insulating                   // plastic, foam, or stainless steel with plastic
	FusedGlass                   // the panes melted together
	MetalInsulated               // metal with a break
)

const spacerCount = int(MetalInsulated) + 1

// edges is the U at the edge of glass as a + b·U + c·U² of that at the centre, in
// W/(m²·K): ASHRAE Handbook—Fundamentals 1993, fenestration, from memory. The first
// gives every edge cell of the handbook's table within 0.01.
var edges = [spacerCount]struct {
	name    string
	a, b, c float64
}{
	Metal:          {"metal", 1.266, 0.842, -0.027},
	Insulating:     {"insulating", 0.681, 0.682, 0.043},
	FusedGlass:     {"fused glass", 0.897, 0.774, 0.010},
	MetalInsulated: {"insulated metal", 0.769, 0.706, 0.033},
}

// String returns "metal", "insulating", "fused glass" or "insulated metal".
func (s Spacer) String() string {
	if int(s) < spacerCount {
		return edges[s].name
	}
	return fmt.Sprintf("Spacer(%d)", uint8(s))
}

// ParseSpacer reads what String prints, and "warm" for an insulating spacer. Case
// does not matter. The error names what can be read.
func ParseSpacer(s string) (Spacer, error) {
	name := strings.Join(strings.Fields(strings.ToLower(s)), " ")
	if name == "warm" {
		return Insulating, nil
	}
	for i := range edges {
		if name == edges[i].name {
			return Spacer(i), nil
		}
	}
	return 0, refuse("%q is no spacer of a sealed unit (use metal, insulating or warm, fused glass, insulated metal)", s)
}

// frames has the U of each frame in Btu/(h·ft²·°F) by panes, 1 to 3, beside metal
// and beside other spacers, and the width that is seen of it in inches: ASHRAE
// Handbook—Fundamentals 1997 to 2005, fenestration chapter, table of frames and
// notes to its whole windows, from memory.
var frames = [FrameCount]struct {
	name                       string
	fixed, fixedImproved       [3]float64
	operable, operableImproved [3]float64
	face, operableFace         float64
	psi                        [4]float64 // W/(m·K), see psiDefault
}{
	Aluminum: {
		"aluminum",
		[3]float64{1.92, 1.80, 1.74},
		[3]float64{1.92, 1.80, 1.74},
		[3]float64{2.38, 2.27, 2.20},
		[3]float64{2.38, 2.27, 2.20},
		1.3, 1.5,
		[4]float64{0.02, 0.01, 0.05, 0.04},
	},
	AluminumBreak: {
		"aluminum with thermal break",
		[3]float64{1.32, 1.13, 1.11},
		[3]float64{1.32, 1.04, 1.02},
		[3]float64{1.20, 0.92, 0.83},
		[3]float64{1.20, 0.88, 0.77},
		1.3, 2.1,
		[4]float64{0.08, 0.06, 0.11, 0.08},
	},
	Clad: {
		"clad wood",
		[3]float64{0.55, 0.51, 0.48},
		[3]float64{0.55, 0.48, 0.44},
		[3]float64{0.60, 0.58, 0.51},
		[3]float64{0.60, 0.55, 0.48},
		1.6, 2.8,
		woodPsi,
	},
	Wood: {
		"wood",
		[3]float64{0.55, 0.48, 0.42},
		[3]float64{0.55, 0.42, 0.35},
		[3]float64{0.55, 0.51, 0.48},
		[3]float64{0.55, 0.49, 0.40},
		1.6, 2.8,
		woodPsi,
	},
	Fiberglass: {
		"fiberglass",
		[3]float64{0.37, 0.33, 0.32},
		[3]float64{0.37, 0.32, 0.26},
		[3]float64{0.37, 0.33, 0.32},
		[3]float64{0.37, 0.32, 0.26},
		1.8, 3.1,
		woodPsi,
	},
}

// woodPsi is the row of wood and PVC frames.
var woodPsi = [4]float64{0.06, 0.05, 0.08, 0.06}

// U returns the published U of the frame beside glazing of so many panes, more
// than three counting as three: ASHRAE Handbook—Fundamentals 1997 to 2005, from
// memory. A frame or spacer that is not one of the constants gives 0.
func (f Frame) U(panes int, operable bool, s Spacer) rvalue.Transmittance {
	if int(f) >= FrameCount || int(s) >= spacerCount || panes < 1 {
		return 0
	}
	row := &frames[f].fixed
	switch {
	case operable && s == Metal:
		row = &frames[f].operable
	case operable:
		row = &frames[f].operableImproved
	case s != Metal:
		row = &frames[f].fixedImproved
	}
	return rvalue.Transmittance(row[min(panes, 3)-1]) * rvalue.UIP
}

// Face returns the width that is seen of the frame and sash in the handbook's
// windows, from memory; 0 for an unknown frame.
func (f Frame) Face(operable bool) rvalue.Length {
	if int(f) >= FrameCount {
		return 0
	}
	width := frames[f].face
	if operable {
		width = frames[f].operableFace
	}
	return rvalue.Length(width) * rvalue.Inch
}

// Psi returns the default linear transmittance where the frame, the glass and its
// spacer meet: ISO 10077-1 annex E, seen as annex VII of the Walloon PEB order. The
// table tells glass that is coated (or filled) from plain multiple glass; glass
// without a spacer has none. An unknown frame or spacer gives 0.
func (f Frame) Psi(coated bool, s Spacer) rvalue.LinearTransmittance {
	if int(f) >= FrameCount || int(s) >= spacerCount {
		return 0
	}
	i := 0
	if coated {
		i = 2
	}
	if s != Metal {
		i++
	}
	return rvalue.LinearTransmittance(frames[f].psi[i]) * rvalue.PsiSI
}

// EdgeU returns the U of the 2 1/2 in of glass beside the sight line from that at
// the centre: ASHRAE Handbook—Fundamentals 1993, from memory. It holds for sealed
// units; single glass and a storm window's pane have no colder edge.
func (s Spacer) EdgeU(center rvalue.Transmittance) rvalue.Transmittance {
	if int(s) >= spacerCount {
		return 0
	}
	e, u := &edges[s], center.SI()
	return rvalue.Transmittance(e.a + e.b*u + e.c*u*u)
}

// EdgeBand is how wide the edge of glass is: ASHRAE Handbook—Fundamentals, from
// memory (65 mm seen in a textbook).
const EdgeBand = 2.5 * rvalue.Inch
