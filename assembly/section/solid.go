package section

import (
	"fmt"
	"math"

	"github.com/coldseam/coldseam/rvalue"
)

// Place is a point in space.
type Place struct {
	X, Y, Z rvalue.Length
}

func (p Place) String() string {
	return fmt.Sprintf("(%.6g, %.6g, %.6g) m", float64(p.X), float64(p.Y), float64(p.Z))
}

func (p Place) coordinate(axis int) float64 {
	return float64([3]rvalue.Length{p.X, p.Y, p.Z}[axis])
}

// Box is a block of one material between two opposite corners.
type Box struct {
	Name         string
	From, To     Place
	Conductivity rvalue.Conductivity
}

// Room is a box of air. Every surface of the material inside the box or on its
// faces is exposed to it; what material stands in it does not matter. Several
// boxes of one name, air and film are one room.
type Room struct {
	Name     string
	From, To Place
	Air      rvalue.Temperature
	Film     rvalue.Resistance // of the surfaces; 0 holds them at Air
}

// Solid is a building part in space: boxes of material without gaps or overlaps,
// and the rooms around them. A surface that no room reaches lets no heat
// through; it must lie on the block around the whole solid, as planes of
// symmetry and cuts do.
type Solid struct {
	Boxes []Box
	Rooms []Room
}

// SolidOptions say how well a solid is solved. The zero value is the default.
type SolidOptions struct {
	// Tolerance is how far, at most, the heat flow may lie from the true one, as
	// a part of itself: half the width of its bracket. 0: 0.01. The error of
	// Heat itself, the mean of the bounds, is far smaller.
	Tolerance float64

	// Surface is how far, at most, the coldest and warmest spots of the surfaces
	// and the Points may still move on the last refinement, as a part of the
	// difference of the air temperatures; 1 asks nothing of them. 0: 0.002.
	Surface float64

	// Unknowns bounds the size of the largest mesh. 0: 1 000 000.
	Unknowns int

	Points []Place // whose temperatures are wanted

	// Watch, if set, is called after each mesh that does not meet the tolerance
	// yet; false stops the refinement there.
	Watch func(Progress) bool
}

const (
	solidTolerance = 0.01
	solidSurface   = 0.002
	solidUnknowns  = 1_000_000
)

func (o SolidOptions) withDefaults() (SolidOptions, error) {
	if o.Tolerance == 0 {
		o.Tolerance = solidTolerance
	}
	if o.Surface == 0 {
		o.Surface = solidSurface
	}
	if o.Unknowns == 0 {
		o.Unknowns = solidUnknowns
	}
	for _, t := range []struct {
		name  string
		value float64
	}{{"tolerance", o.Tolerance}, {"surface tolerance", o.Surface}} {
		if !(t.value >= leastTolerance && t.value <= 1) {
			return o, fmt.Errorf("section: a %s of %v, use %g to 1", t.name, t.value, leastTolerance)
		}
	}
	if o.Unknowns < 0 {
		return o, fmt.Errorf("section: %d unknowns are none, allow more or leave it out", o.Unknowns)
	}
	return o, nil
}

// SolidSpot is a place in a solid and what its temperature is.
type SolidSpot struct {
	At          Place
	Temperature rvalue.Temperature
	Weights     []float64 // of the air temperatures, in the order of SolidResult.Airs; they sum to 1
}

// SolidResult is what a solid does in the steady state.
type SolidResult struct {
	// Heat is what flows through from the warmer to the colder air, in W. The
	// true flow lies between Low and High, rounding apart; Heat is their mean.
	Heat, Low, High float64

	Airs    []Exchange  // by air temperature, warmest first; in W
	Between [][]float64 // by two of Airs: thermal coupling coefficients L3D, W/K; ISO 10211
	Rooms   []RoomFlow  // by name, in the order of Solid.Rooms
	Coldest int         // of Rooms: that with the coldest spot of all that have not the coldest air
	Points  []SolidSpot // by SolidOptions.Points

	Balance    float64 // what the rooms' heat leaves over, as a part of Heat
	Moved      float64 // by the last refinement: the most that a surface temperature or one of Points moved, K
	Unknowns   int     // of the last mesh, both problems
	Iterations int     // of conjugate gradients, on the last mesh
	Solves     int     // meshes solved
	Remarks    []Remark
}

// RoomFlow is what happens at the surfaces of one room.
type RoomFlow struct {
	Name             string
	Heat             float64 // into the solid, W
	Coldest, Warmest SolidSpot

	// Factor is the temperature factor fRsi of the coldest spot: how far it is
	// from the coldest air on the way to this room's own, 0 to 1; 0 for the
	// coldest air itself. ISO 13788 and ISO 10211.
	Factor float64
}

// Solve checks the solid, solves it on finer and finer meshes until the tolerance
// is met, and says what came out; it refuses what Section.Solve refuses. The
// meshes follow every face and are halved where bounds or surfaces ask for it.
// Same solid, same result, to the bit.
func (s Solid) Solve(o SolidOptions) (*SolidResult, error) {
	o, err := o.withDefaults()
	if err != nil {
		return nil, err
	}
	plan, err := newSolidPlan(&s)
	if err != nil {
		return nil, err
	}
	g := plan.firstGrid()
	if n := g.vertices(); n > o.Unknowns {
		return nil, fmt.Errorf("section: the coarsest mesh that follows every face has %d unknowns, more than the %d allowed; draw it with fewer edges", n, o.Unknowns)
	}
	for n, at := range o.Points {
		if _, ok := g.find(at); !ok {
			return nil, fmt.Errorf("section: point %d at %v lies in no box", n+1, at)
		}
	}
	span := plan.airs[0] - plan.airs[len(plan.airs)-1]
	r := &SolidResult{}
	var before []SolidSpot
	for {
		p, err := solveSolidPair(g)
		if err != nil {
			return nil, err
		}
		r.Solves++
		moving := r.read(p, o.Points, &before, o.Surface*span)
		relative := (r.High - r.Low) / 2 / r.Heat
		if relative <= o.Tolerance && (o.Surface == 1 || r.Solves >= leastSolves && r.Moved <= o.Surface*span) {
			return r, nil
		}
		if o.Watch != nil && !o.Watch(Progress{Unknowns: r.Unknowns, Error: relative}) {
			r.stop("stopped", "stopped before the tolerance was met")
			return r, nil
		}
		finer := p.refine(moving)
		if n := finer.vertices(); n > o.Unknowns {
			r.stop("unknowns", fmt.Sprintf("the next mesh would have %d unknowns, more than the %d allowed", n, o.Unknowns))
			return r, nil
		}
		if r.Solves == mostSolves {
			r.stop("solves", fmt.Sprintf("%d meshes did not do", mostSolves))
			return r, nil
		}
		g = finer
	}
}

func (r *SolidResult) stop(code, text string) {
	r.Remarks = append(r.Remarks, Remark{code, fmt.Sprintf("%s: the heat flow is known to ± %.2g %%, surface temperatures moved by %.2g K last", text, 50*(r.High-r.Low)/r.Heat, r.Moved)})
}

// Coupling returns the thermal coupling coefficient L3D and its bracket. It has a
// meaning only between two air temperatures: with more it is 0, see Between.
func (r *SolidResult) Coupling() (l, low, high rvalue.Conductance) {
	if len(r.Airs) != 2 {
		return 0, 0, 0
	}
	d := float64(r.Airs[0].Air.Sub(r.Airs[1].Air))
	return rvalue.Conductance(r.Heat / d), rvalue.Conductance(r.Low / d), rvalue.Conductance(r.High / d)
}

// Patch is a plain part of a solid, its transmittance and area.
type Patch struct {
	U    rvalue.Transmittance
	Area rvalue.Area
}

// Edge is a linear bridge in a solid, its linear transmittance and length.
type Edge struct {
	Psi    rvalue.LinearTransmittance
	Length rvalue.Length
}

// Chi returns the point transmittance of what remains when plain parts and
// linear bridges are taken off: L3D − ΣU·A − Σψ·l (ISO 10211), all with one
// kind of dimensions. It is right for two air temperatures.
func (r *SolidResult) Chi(patches []Patch, edges []Edge) rvalue.Conductance {
	chi, _, _ := r.Coupling()
	for _, p := range patches {
		chi -= p.U.Times(p.Area)
	}
	for _, e := range edges {
		chi -= e.Psi.Times(e.Length)
	}
	return chi
}

// read takes over what a solved pair says, and returns the places whose
// temperatures moved by more than slack; before is what it found the last time.
func (r *SolidResult) read(p *solidPair, points []Place, before *[]SolidSpot, slack float64) (moving []Place) {
	pl := p.g.plan
	r.Unknowns = p.g.vertices() + len(p.flow.cell)
	r.Iterations = p.iterations

	now := p.surfaces(r)
	left := 0.0
	for _, room := range r.Rooms {
		left += room.Heat
	}
	heat, width := p.heat(), p.widths()
	r.Airs, r.Heat, r.Low, r.High = exchanges(pl.airs, heat, width, left)
	r.Between = p.between()
	r.Balance = math.Abs(left) / r.Heat
	r.Points = make([]SolidSpot, len(points))
	for n, at := range points {
		r.Points[n] = p.spot(at)
	}
	now = append(now, r.Points...)
	var far []int
	r.Moved, far = moved(*before, now, slack, func(s SolidSpot) rvalue.Temperature { return s.Temperature })
	for _, i := range far {
		moving = append(moving, now[i].At)
	}
	*before = now
	return moving
}
