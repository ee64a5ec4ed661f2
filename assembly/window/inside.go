package window

import (
	"math"

	"github.com/coldseam/coldseam/rvalue"
)

// FaceFilm is the resistance of the film inside that ISO 13788 takes where glass
// and frames may sweat (from memory); corners behind curtains have more.
const FaceFilm = 0.13 * rvalue.RSI

// InsideFace returns the temperature of the face towards the room of what has the
// transmittance u and the inside film film (0: [FaceFilm]), between air at two
// temperatures: ti − U·Rsi·(ti − te). The U of a metal frame counts fins and sides
// beyond the area that is seen, so that the formula could pass below what metal
// without any resistance between two films has; that is the least then.
//
// It sweats once the dew point of the room's air reaches that temperature; the
// humidity at which that happens is climate.AirOfDewPoint(indoors, face, pressure).
func InsideFace(u rvalue.Transmittance, film rvalue.Resistance, indoors, outdoors rvalue.Temperature) rvalue.Temperature {
	if film == 0 {
		film = FaceFilm
	}
	const outside = 0.03 // m²·K/W: of 15 mph, ASHRAE, seen
	part := math.Min(u.SI()*film.RSI(), film.RSI()/(film.RSI()+outside))
	return indoors.Add(rvalue.TemperatureDifference(-part * indoors.Sub(outdoors).SI()))
}

// Inside has the temperatures of a window's faces towards the room.
type Inside struct{ Center, Edge, Frame rvalue.Temperature }

// Coldest returns the lowest of them, where the window sweats first.
func (f Inside) Coldest() rvalue.Temperature { return min(f.Center, f.Edge, f.Frame) }

// Inside returns the temperatures towards the room between air at two
// temperatures, each from its own U by [InsideFace] with [FaceFilm]. The edge's U is
// the mean of the 2 1/2 in beside the sight line; right at a metal spacer it is
// colder still.
func (w Whole) Inside(indoors, outdoors rvalue.Temperature) Inside {
	return Inside{
		Center: InsideFace(w.CenterU, 0, indoors, outdoors),
		Edge:   InsideFace(w.EdgeU, 0, indoors, outdoors),
		Frame:  InsideFace(w.FrameU, 0, indoors, outdoors),
	}
}

// Widths among which BestGap looks, finely enough for any spacer that is sold.
const (
	leastGap, mostGap = 2 * rvalue.Millimetre, 40 * rvalue.Millimetre
	gapStep           = 0.5 * rvalue.Millimetre
)

// BestGap returns the width of gap i, from 2 to 40 mm in steps of 0.5 mm, with
// which the glazing lets the least heat through in the conditions c, and what it
// does then. The error names what in g, i or c cannot be.
func (g Glazing) BestGap(i int, c Conditions) (rvalue.Length, Solved, error) {
	if !(i >= 0 && i < len(g.Gaps)) {
		return 0, Solved{}, refuse("gap %d of a glazing with %d; count from 0", i, len(g.Gaps))
	}
	if g.Gaps[i].Kind != Filled {
		return 0, Solved{}, refuse("a gap with %s has a declared conductance, at no other width than its own", g.Gaps[i].Kind)
	}
	var width rvalue.Length
	var best Solved
	g = g.clone()
	for n := range int(math.Round(float64((mostGap-leastGap)/gapStep))) + 1 {
		g.Gaps[i].Thickness = leastGap + rvalue.Length(n)*gapStep
		s, err := g.Design(c)
		if err != nil {
			return 0, Solved{}, err
		}
		if width == 0 || s.U < best.U {
			width, best = g.Gaps[i].Thickness, s
		}
	}
	return width, best, nil
}

// clone returns a glazing that shares nothing with g.
func (g Glazing) clone() Glazing {
	return Glazing{Panes: append([]Pane(nil), g.Panes...), Gaps: append([]Gap(nil), g.Gaps...)}
}

// SealFailed returns the glazing once its seals have failed: air in every gap that
// held a gas or vacuum. Its coatings may follow, see [Glazing.CoatingsLost].
func (g Glazing) SealFailed() Glazing {
	g = g.clone()
	for i := range g.Gaps {
		if gap := &g.Gaps[i]; gap.Kind != Aerogel {
			*gap = Gap{Thickness: gap.Thickness}
		}
	}
	return g
}

// CoatingsLost returns the glazing without its coatings, which corrode in a gap
// whose seal has failed (seen in a builders' magazine).
func (g Glazing) CoatingsLost() Glazing {
	g = g.clone()
	for i := range g.Panes {
		g.Panes[i].Inner, g.Panes[i].Outer = 0, 0
	}
	return g
}
