package window

import (
	"fmt"
	"math"

	"github.com/coldseam/coldseam/rvalue"
)

// Upright is the tilt of an ordinary window. A tilt is the angle in degrees
// between the face towards outdoors and straight up: 0 for a level skylight, 90
// upright, 180 for glass in a floor over the outdoors.
const Upright = 90.0

// Standard chooses the films of a declared value.
type Standard uint8

// The standards of declared values.
const (
	EN673    Standard = iota // EN 673 of 2011: 0.13 m²·K/W inside, 0.04 outside
	ISO10292                 // ISO 10292 and EN 673 of 1997: 8.0 W/(m²·K) inside, 23 outside
)

var standards = [...]struct {
	name            string
	inside, outside float64 // W/(m²·K)
	radiant         float64 // of the inside film, in front of ε/0.837
}{
	EN673:    {"EN 673 (2011)", 1 / 0.13, 1 / 0.04, 4.1},
	ISO10292: {"ISO 10292", 8.0, 23, 4.4},
}

// String returns the name of the standard.
func (s Standard) String() string {
	if int(s) < len(standards) {
		return standards[s].name
	}
	return fmt.Sprintf("Standard(%d)", uint8(s))
}

// Center is the centre of a glazing, away from its edge.
type Center struct {
	U                       rvalue.Transmittance
	InsideFilm, OutsideFilm rvalue.Transmittance
	Gaps                    [MaxPanes - 1]GapFlow
}

// GapFlow is how heat crosses a gap.
type GapFlow struct {
	Radiation  rvalue.Transmittance
	Gas        rvalue.Transmittance // conduction and convection; of a declared gap the whole
	Nusselt    float64              // 1: the gas stands still; 0 for a declared gap
	Difference rvalue.TemperatureDifference
}

// Conductance returns that of the gap from face to face.
func (f GapFlow) Conductance() rvalue.Transmittance { return f.Radiation + f.Gas }

// Conditions of a declared value: EN 673 and ISO 10292, from memory.
const (
	declaredMean       = 283.0 // K
	declaredDifference = 15.0  // K, between the outermost panes
)

// Declared returns the centre of glass as makers declare it, by EN 673 or ISO
// 10292 (from memory; the published tables that it gives are in
// testdata/window_SCORE.md): all gaps at 283 K, 15 K across them together, fixed
// films. The U is not rounded; labels carry one decimal.
//
// The tilt is in degrees, see [Upright]; up to it heat flows up, beyond it down.
// The standards give upright, 45° and level, and the gas is at rest at 180°;
// between these Nu is interpolated along straight lines. A coating towards the
// room counts as long as it is kept clean and dry, one towards outdoors never
// does. The error names what in g or the tilt cannot be.
func (g Glazing) Declared(s Standard, tilt float64) (Center, error) {
	if err := g.check(); err != nil {
		return Center{}, err
	}
	if int(s) >= len(standards) {
		return Center{}, refuse("standard %d is unknown, use EN673 or ISO10292", uint8(s))
	}
	if err := checkTilt(tilt); err != nil {
		return Center{}, err
	}
	films := &standards[s]
	inside := films.inside
	if room := g.Panes[0].Inner; room != 0 {
		// EN 673, internal coefficient for a face of low emissivity
		inside = 3.6 + films.radiant*CorrectedEmissivity(room)/bareGlass
	}
	c := Center{InsideFilm: rvalue.Transmittance(inside), OutsideFilm: rvalue.Transmittance(films.outside)}
	panes := 0.0
	for i := range g.Panes {
		panes += g.Panes[i].resistance()
	}
	gaps := g.declaredGaps(&c, tilt)
	// EN 673 equation 1: 1/U = 1/he + 1/ht + 1/hi
	c.U = rvalue.Transmittance(1 / (1/inside + panes + gaps + 1/films.outside))
	return c, nil
}

// declaredGaps shares 15 K among the gaps by what they resist, EN 673 as for
// multiple glazing, and returns their resistance in m²·K/W.
func (g Glazing) declaredGaps(c *Center, tilt float64) (sum float64) {
	n := len(g.Gaps)
	if n == 0 {
		return 0
	}
	for i := range n {
		c.Gaps[i].Difference = rvalue.TemperatureDifference(declaredDifference / float64(n))
	}
	const (
		settled = 1e-12 // of the sum
		passes  = 200   // a contraction by about 0.4: some 30 are enough
	)
	for range passes {
		before := sum
		sum = 0
		for i := range n {
			g.declaredGap(i, tilt, &c.Gaps[i])
			sum += float64(c.Gaps[i].Conductance().R())
		}
		for i := range n {
			share := float64(c.Gaps[i].Conductance().R()) / sum
			c.Gaps[i].Difference = rvalue.TemperatureDifference(declaredDifference * share)
		}
		if math.Abs(sum-before) <= settled*sum {
			break
		}
	}
	return sum
}

// declaredGap fills in the flow through a gap at its difference.
func (g Glazing) declaredGap(i int, tilt float64, f *GapFlow) {
	gap := &g.Gaps[i]
	if gap.Kind != Filled {
		f.Gas = gap.Conductance
		return
	}
	p, s := gap.Fill.at10(), gap.Thickness.SI()
	// EN 673 equation 5: hr = 4σTm³/(1/ε1 + 1/ε2 − 1)
	hr := 4 * sigma * declaredMean * declaredMean * declaredMean /
		(1/g.Panes[i].outer() + 1/g.Panes[i+1].inner() - 1)
	f.Nusselt = declaredNusselt(p.rayleigh(s, f.Difference.SI(), declaredMean), tilt)
	f.Radiation = rvalue.Transmittance(hr)
	f.Gas = rvalue.Transmittance(f.Nusselt * p.k / s) // EN 673 equation 6
}

// declaredNusselt returns Nu, at least 1, between the positions of EN 673.
func declaredNusselt(ra, tilt float64) float64 {
	// EN 673 equation 7, Nu = A·(Gr·Pr)^n; A and n seen on wiki.energie-m.
	at := func(a, n float64) float64 { return max(1, a*math.Pow(ra, n)) }
	upright := at(0.035, 0.38)
	switch t := tilt / 45; {
	case t <= 1:
		return (1-t)*at(0.16, 0.28) + t*at(0.10, 0.31)
	case t <= 2:
		return (2-t)*at(0.10, 0.31) + (t-1)*upright
	default:
		return ((4-t)*upright + (t - 2)) / 2 // down: 1 at 180°
	}
}

func checkTilt(tilt float64) error {
	if !(tilt >= 0 && tilt <= 180) {
		return refuse("a tilt of %g° is impossible, use 0° (a level skylight) to 90° (upright) to 180° (glass underfoot)", tilt)
	}
	return nil
}

// LevelByFilm returns the declared U of level glass from that of the same glass
// upright by the inside film alone, 0.10 m²·K/W in place of 0.13, as the French
// method 3CL-DPE 2021 prints it (10 of its 10 cells seen). EN 673 at a tilt of 0
// makes the gas move faster too and gives clearly more from a gap of 8 mm; the two
// sources disagree.
func LevelByFilm(upright rvalue.Transmittance) rvalue.Transmittance {
	const step = 0.13 - 0.10 // m²·K/W, ISO 6946, surface resistances inside
	return rvalue.Transmittance(1 / (1/upright.SI() - step))
}

// SecondPaneFrench is what the French method 3CL-DPE 2021 (seen) adds to the
// declared U of a pane set before a window, air-filled double glazing of the same
// gap (20 mm at most), because the gap is not tight.
const SecondPaneFrench = 0.1 * rvalue.USI
