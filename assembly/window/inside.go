package window

import (
	"math"

	"github.com/coldseam/coldseam/rvalue"
)

// FaceFilm is the resistance of the film inside that ISO 13788 takes where glass
// and frames may sweat (from memory); corners behind curtains have more.
const FaceFilm = 0.13 * rvalue.RSI

// leastBehind is what lies between any face and the air outdoors, the film of 15
// mph, ASHRAE, seen. The U of a metal frame counts fins and sides beyond the area that is
// seen, so that what is left of it behind a film could be less.
const leastBehind = 0.03 * rvalue.RSI

// behind returns what resists between the face towards the room and the air outdoors,
// of what has the transmittance u with the film inside film.
func behind(u rvalue.Transmittance, film rvalue.Resistance) rvalue.Resistance {
	return max(u.R()-film, leastBehind)
}

// InsideFace returns the temperature of the face towards the room of what has the
// transmittance u and the inside film film (0: [FaceFilm]), between air at two
// temperatures: ti − U·Rsi·(ti − te), but no colder than metal without any resistance
// between two films. It is for upright faces of which only U is known, not coated
// towards the room; [Window.Faces] solves those of a described window.
//
// It sweats once the dew point of the room's air reaches that temperature; the
// humidity at which that happens is climate.AirOfDewPoint(indoors, face, pressure).
func InsideFace(u rvalue.Transmittance, film rvalue.Resistance, indoors, outdoors rvalue.Temperature) rvalue.Temperature {
	if film == 0 {
		film = FaceFilm
	}
	part := float64(film) / float64(film+behind(u, film))
	return indoors.Add(rvalue.TemperatureDifference(-part * indoors.Sub(outdoors).SI()))
}

// Inside has the temperatures of a window's faces towards the room.
type Inside struct{ Center, Edge, Frame rvalue.Temperature }

// Coldest returns the lowest of them, where the window sweats first.
func (f Inside) Coldest() rvalue.Temperature { return min(f.Center, f.Edge, f.Frame) }

// Faces returns the temperatures towards the room in the conditions c. The centre's is
// that of [Glazing.Design]. Edge and frame have what their published U, less the film
// [FaceFilm] of upright bare faces that it counts, leaves behind the face; the film
// before it is solved as that of the centre is (ISO 15099, from memory), for its own
// temperature, the tilt, and the emissivity of the glass or 0.9 of a frame. So a
// coating towards the room and heat that flows down make faces colder.
//
// The edge is the mean of the 2 1/2 in beside the sight line; right at a metal spacer
// it is colder still. Between air of one temperature all are at that. The error names
// what in w or c cannot be.
func (w Window) Faces(c Conditions) (Inside, error) {
	if c.alike() {
		_, err := w.Declared(EN673, Upright) // what cannot be of w
		return Inside{c.Indoors, c.Indoors, c.Indoors}, err
	}
	whole, solved, err := w.Design(c)
	if err != nil {
		return Inside{}, err
	}
	c = c.filled()
	in := Inside{}
	if in.Center, in.Edge, err = w.Glazing.faces(c, &solved, w.Spacer); err != nil {
		return Inside{}, err
	}
	in.Frame, err = c.face(behind(whole.FrameU, FaceFilm), frameEmissivity)
	return in, err
}

// frameEmissivity is that of most building surfaces: ISO 6946 and ISO 10077-2, from memory.
const frameEmissivity = 0.9

// faces returns the temperatures of the glass towards the room, in conditions that
// are filled in and in which it was solved.
func (g Glazing) faces(c Conditions, solved *Solved, spacer Spacer) (center, edge rvalue.Temperature, err error) {
	center = solved.Faces[0]
	if !g.sealed() {
		return center, center, nil
	}
	// The rule of the edge is of glass with an upright bare face, so it is asked for that.
	rest := behind(solved.U, solved.InsideFilm.R())
	u := spacer.EdgeU((rest + FaceFilm).U())
	edge, err = c.face(min(behind(u, FaceFilm), rest), g.Panes[0].inner())
	return center, edge, err
}

// face returns the temperature of a face towards the room, of an emissivity and with
// what resists behind it, in conditions that are filled in and checked.
func (c *Conditions) face(behind rvalue.Resistance, emissivity float64) (rvalue.Temperature, error) {
	var s solver
	s.around(c)
	s.n = 2
	s.parts[0].gas, s.parts[0].exchange = Fill{}.linear(), sigma*emissivity
	s.parts[1].fixed = behind.U().SI()
	if !s.solve() {
		return 0, unsettled()
	}
	return s.result().Faces[0], nil
}

// Widths among which BestGap looks, finely enough for any spacer that is sold.
const (
	leastGap, mostGap = 2 * rvalue.Millimetre, 40 * rvalue.Millimetre
	gapStep           = 0.5 * rvalue.Millimetre
)

// Best is the best of the gaps that were tried.
type Best struct {
	Solved  // the glazing with it
	Width   rvalue.Length
	AtLimit bool // it is the narrowest or widest of those tried; beyond it may be better
}

// BestGap returns the width of gap i, from 2 to 40 mm in steps of 0.5 mm, with
// which the glazing lets the least heat through in the conditions c. The error names
// what in g, i or c cannot be.
func (g Glazing) BestGap(i int, c Conditions) (Best, error) {
	if !(i >= 0 && i < len(g.Gaps)) {
		return Best{}, refuse("gap %d of a glazing with %d; count from 0", i, len(g.Gaps))
	}
	if g.Gaps[i].Kind != Filled {
		return Best{}, refuse("a gap with %s has a declared conductance, at no other width than its own", g.Gaps[i].Kind)
	}
	var best Best
	g = g.clone()
	last := int(math.Round(float64((mostGap - leastGap) / gapStep)))
	for n := range last + 1 {
		g.Gaps[i].Thickness = leastGap + rvalue.Length(n)*gapStep
		s, err := g.Design(c)
		if err != nil {
			return Best{}, err
		}
		if n == 0 || s.U < best.U {
			best = Best{Solved: s, Width: g.Gaps[i].Thickness, AtLimit: n == 0 || n == last}
		}
	}
	return best, nil
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
