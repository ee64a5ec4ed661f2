package section

import (
	"fmt"
	"math"

	"github.com/coldseam/coldseam/rvalue"
)

// Result is what a section does in the steady state.
type Result struct {
	// Heat is what flows through from the warmer to the colder air, in W per
	// metre of the building part. The true flow lies between Low and High,
	// rounding apart: a temperature field that fits together gives more heat
	// than it, a flow without sources less; Heat is the mean of both.
	Heat, Low, High float64

	Airs    []Exchange // by air temperature, warmest first
	Flows   []Flow     // by Section.Boundaries
	Coldest int        // the boundary with the coldest spot of all that have a film and do not face the coldest air; -1 if none has
	Points  []Spot     // by Options.Points

	Balance  float64 // what the flows leave over, as a part of Heat
	Moved    float64 // by the last refinement: the most that a surface temperature or one of Points moved, K; infinite after one mesh
	Unknowns int     // of the last mesh, both problems
	Solves   int     // meshes solved
	Remarks  []Remark

	pair *pair
}

// Exchange is what one air gives to the section.
type Exchange struct {
	Air             rvalue.Temperature
	Heat, Low, High float64 // W/m, negative if it receives
}

// Flow is what happens at one boundary.
type Flow struct {
	Name             string
	Length           rvalue.Length
	Heat             float64 // into the section, W/m
	Coldest, Warmest Spot    // of its surface

	// Factor is the temperature factor fRsi of the coldest spot: how far it is
	// from the coldest air on the way to this boundary's own, 0 to 1. It is 0
	// for the coldest air itself. ISO 13788 and ISO 10211.
	Factor float64
}

// Remark is something the reader of a result should know. Code is stable, for
// programs.
type Remark struct {
	Code, Text string
}

// Progress is how far a solution is.
type Progress struct {
	Unknowns int
	Error    float64 // half the width of the bracket as a part of the heat
}

// Bounds of the refinements: each makes the gap some five times smaller, until
// rounding stops it.
const (
	leastSolves = 3 // one move alone may be small by chance
	mostSolves  = 40
	rounding    = 1e-12 // of a heat flow: what its sums may lose
	mostStalls  = 3
)

// Solve checks the section, solves it on finer and finer meshes until the
// tolerance is met, and says what came out. It refuses pieces that overlap or
// leave gaps, sizes and conductivities that are not positive and finite,
// conductivities more than 10⁷ apart, boundaries off the surface, an outline
// that no heat can pass, points outside the material, and tolerances out of
// range, before any work is done.
//
// The meshes are graded toward every corner where materials meet; the degree of
// the polynomials is adapted. Same section, same result, to the bit.
func (s Section) Solve(o Options) (*Result, error) {
	o, err := o.withDefaults()
	if err != nil {
		return nil, err
	}
	plan, err := newPlan(&s)
	if err != nil {
		return nil, err
	}
	x, y := plan.firstAxes()
	m := newMesh(plan, x, y)
	if n := 2 * m.unknowns(); n > o.Unknowns {
		return nil, fmt.Errorf("section: the coarsest mesh that follows every edge has %d unknowns, more than the %d allowed; draw it with fewer edges", n, o.Unknowns)
	}
	for n, at := range o.Points {
		if _, _, ok := m.find(at); !ok {
			return nil, fmt.Errorf("section: point %d at %v lies in no piece", n+1, at)
		}
	}
	span := plan.airs[0] - plan.airs[len(plan.airs)-1]
	r := &Result{}
	var before []Spot
	best := math.Inf(1)
	stalled := 0
	var room factor
	for {
		p, err := solvePair(m, &room)
		if err != nil {
			return nil, err
		}
		r.Solves++
		moving := r.read(p, o.Points, &before, o.Surface*span)
		relative := (r.High - r.Low) / 2 / r.Heat
		if plan.jumps {
			// No flow is to be had; the energy that the temperatures miss is
			// the square of what they miss.
			relative = math.Sqrt(p.miss) / 10
		}
		if relative <= o.Tolerance && (o.Surface == 1 || r.Solves >= leastSolves && r.Moved <= o.Surface*span) {
			return r, nil
		}
		if o.Watch != nil && !o.Watch(Progress{Unknowns: r.Unknowns, Error: relative}) {
			r.stop("stopped", "stopped before the tolerance was met")
			return r, nil
		}
		if relative < 0.9*best || relative <= o.Tolerance {
			best, stalled = relative, 0
		} else if stalled++; stalled == mostStalls {
			r.stop("stalled", "finer meshes change nothing any more")
			return r, nil
		}
		if r.Solves == mostSolves {
			r.stop("solves", fmt.Sprintf("%d meshes did not do", mostSolves))
			return r, nil
		}
		if m = p.refine(moving); m == nil {
			if p.miss == 0 {
				r.Moved = 0 // the solution is exact, as in plain layers
				return r, nil
			}
			r.stop("finest", "meshes cannot be made finer")
			return r, nil
		}
		if n := 2 * m.unknowns(); n > o.Unknowns {
			r.stop("unknowns", fmt.Sprintf("the next mesh would have %d unknowns, more than the %d allowed", n, o.Unknowns))
			return r, nil
		}
	}
}

// stop remarks on a result that does not meet the tolerance. The result stands:
// its bracket says how good it is.
func (r *Result) stop(code, text string) {
	known := fmt.Sprintf("the heat flow is known to ± %.2g %%, ", 50*(r.High-r.Low)/r.Heat)
	if math.IsInf(r.Heat, 0) {
		known = ""
	}
	moved := fmt.Sprintf("surface temperatures moved by %.2g K last", r.Moved)
	if math.IsInf(r.Moved, 0) {
		moved = "how well the surface temperatures are is not known, since one mesh alone was solved"
	}
	r.Remarks = append(r.Remarks, Remark{code, fmt.Sprintf("%s: %s%s", text, known, moved)})
}

func (o Options) withDefaults() (Options, error) {
	for _, t := range []struct {
		name  string
		value *float64
	}{{"tolerance", &o.Tolerance}, {"surface tolerance", &o.Surface}} {
		if *t.value == 0 {
			*t.value = defaultTolerance
		}
		if !(*t.value >= leastTolerance && *t.value <= 1) {
			return o, fmt.Errorf("section: a %s of %v, use %g to 1", t.name, *t.value, leastTolerance)
		}
	}
	if o.Unknowns == 0 {
		o.Unknowns = defaultUnknowns
	}
	if o.Unknowns < 0 {
		return o, fmt.Errorf("section: %d unknowns are none, allow more or leave it out", o.Unknowns)
	}
	return o, nil
}

// read takes over what a solved pair says, and returns the places whose
// temperatures moved by more than slack; before is what it found the last time.
func (r *Result) read(p *pair, points []Point, before *[]Spot, slack float64) (moving []Point) {
	pl := p.m.plan
	bs := pl.section.Boundaries
	r.pair = p
	r.Unknowns = 2 * p.m.unknowns()

	heat, width := p.heat(), p.widths()
	var v evaluator
	temp, flow := p.flows()
	coldest, warmest := p.extremes(&v)
	r.Flows = make([]Flow, len(bs))
	left := 0.0
	cold := pl.airs[len(pl.airs)-1]
	r.Coldest = -1
	var now []Spot
	for b := range bs {
		f := &r.Flows[b]
		f.Name = bs[b].Name
		f.Length = rvalue.Length(math.Hypot(float64(bs[b].To.X-bs[b].From.X), float64(bs[b].To.Y-bs[b].From.Y)))
		if bs[b].Adiabatic {
			continue
		}
		f.Heat = (temp[b] + flow[b]) / 2
		f.Coldest, f.Warmest = coldest[b], warmest[b]
		left += temp[b]
		now = append(now, f.Coldest, f.Warmest)
		if over := p.over(b); over > 0 {
			f.Factor = (float64(f.Coldest.Temperature) - cold) / over
			if film := bs[b].Film > 0; film && (r.Coldest < 0 || f.Coldest.Temperature < r.Flows[r.Coldest].Coldest.Temperature) {
				r.Coldest = b
			}
		}
	}
	r.Airs, r.Heat, r.Low, r.High = exchanges(pl.airs, heat, width, left)
	r.Balance = math.Abs(left) / r.Heat
	if pl.jumps {
		r.unbounded()
	}
	r.Points = make([]Spot, len(points))
	for n, at := range points {
		r.Points[n] = p.point(&v, at)
	}
	now = append(now, r.Points...)
	var far []int
	r.Moved, far = moved(*before, now, slack, func(s Spot) rvalue.Temperature { return s.Temperature })
	for _, i := range far {
		moving = append(moving, now[i].At)
	}
	*before = now
	return moving
}

// unbounded says that there is no heat flow to speak of.
func (r *Result) unbounded() {
	inf := math.Inf(1)
	r.Heat, r.Low, r.High = inf, inf, inf
	for e := range r.Airs {
		a := &r.Airs[e]
		a.Heat, a.Low, a.High = math.NaN(), math.Inf(-1), inf
	}
	for b := range r.Flows {
		r.Flows[b].Heat = math.NaN()
	}
	r.Remarks = []Remark{{"jump", "surfaces held at different temperatures touch: no bound holds the heat that passes between them, only the temperatures have a meaning; give the surfaces a film"}}
}

// Coupling returns the thermal coupling coefficient L2D, heat per kelvin and
// metre, and its bracket. It has a meaning only between two air temperatures:
// with more it is 0.
func (r *Result) Coupling() (l, low, high rvalue.LinearTransmittance) {
	if len(r.Airs) != 2 {
		return 0, 0, 0
	}
	d := float64(r.Airs[0].Air.Sub(r.Airs[1].Air))
	return rvalue.LinearTransmittance(r.Heat / d), rvalue.LinearTransmittance(r.Low / d), rvalue.LinearTransmittance(r.High / d)
}

// U returns the mean transmittance of a section as wide as width between two
// air temperatures.
func (r *Result) U(width rvalue.Length) rvalue.Transmittance {
	l, _, _ := r.Coupling()
	return rvalue.Transmittance(float64(l) / float64(width))
}

// R returns the resistance, air to air, of a plain part that would let as much
// heat through.
func (r *Result) R(width rvalue.Length) rvalue.Resistance { return r.U(width).R() }

// Flank is a plain part beside a linear bridge: its transmittance without the
// bridge, and how long it is in the section, by the dimensions that its area is
// taken with, internal or external.
type Flank struct {
	U      rvalue.Transmittance
	Length rvalue.Length
}

// Psi returns the linear transmittance of the bridge between the flanks,
// L2D − ΣU·l (ISO 10211). Internal dimensions give one psi, external ones
// another; each belongs to areas taken the same way. It is right for two air
// temperatures.
func (r *Result) Psi(flanks ...Flank) rvalue.LinearTransmittance {
	psi, _, _ := r.Coupling()
	for _, f := range flanks {
		psi -= rvalue.LinearTransmittance(float64(f.U) * float64(f.Length))
	}
	return psi
}
