package assembly_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/rvalue"
	"github.com/coldseam/coldseam/rvalue/airspace"
)

// TestAirSpaceFindsItsTemperatures: an air space has the resistance of a space
// at the temperatures that it has in the assembly, by every method, also one of
// two that share a fill.
func TestAirSpaceFindsItsTemperatures(t *testing.T) {
	outdoors := rvalue.FromFahrenheit(0)
	for _, m := range []assembly.Method{assembly.Advised, assembly.Isothermal, assembly.Mean} {
		r := written(t, "gypsum 1/2 in + air 3/4 in bright + 2x4 @ 16 in (xps 1 1/2 in + air 2 in) + brick 3 5/8 in", assembly.Setting{Outdoors: outdoors, Method: m})
		plain, fill := r.Layers[2], r.Layers[3].Shares[1]
		mean := rvalue.Temperature((float64(plain.Inner) + float64(plain.Outer)) / 2)
		want, err := airspace.Space{Thickness: 0.75 * rvalue.Inch, Tilt: 90, Up: true, E1: 0.05, E2: 0.9}.Resistance(airspace.Correlated, mean, plain.Inner.Sub(plain.Outer))
		if err != nil || !near(float64(plain.R), float64(want), 1e-6) {
			t.Errorf("by %v: the bright space resists %v, at its temperatures %v, %v", r.Effective.Method, float64(plain.R), float64(want), err)
		}
		inner, outer := r.Layers[3].Inner, r.Layers[3].Outer
		if r.Effective.Method == assembly.Parallel {
			planes := r.Paths[1].Planes
			inner, outer = planes[3], planes[4]
		}
		// Of the drop across the bay the space has its share: by the parallel path
		// of the fill's R, by isothermal planes that of its own slab.
		space := fill.Pieces[1]
		framing, stud := r.Layers[3].Shares[0].Fraction, float64(r.Layers[3].Shares[0].R)
		slab := func(deep float64, r rvalue.Resistance) float64 {
			return 1 / (framing/(stud*deep/3.5) + (1-framing)/float64(r))
		}
		foam, air := slab(1.5, fill.Pieces[0].R), slab(2, space.R)
		part := float64(space.R / fill.R)
		switch r.Effective.Method {
		case assembly.Isothermal:
			part = air / (foam + air)
		case assembly.Mean: // half of either limit's resistance, of which the sum is twice the layer's
			through := 0.0 // what the studs carry by the parallel path
			for _, p := range r.Assembly.Paths() {
				if p.Shares[3] == 0 {
					through += p.Fraction * float64(r.ParallelPath/p.R)
				}
			}
			part = (air + through*stud*2/3.5 + (1-through)*float64(space.R)) / (2 * float64(r.Layers[3].R))
		}
		drop := float64(inner.Sub(outer)) * part
		mean = outer.Add(rvalue.TemperatureDifference(drop / 2))
		want, err = airspace.Space{Thickness: 2 * rvalue.Inch, Tilt: 90, Up: true, E1: 0.9, E2: 0.9}.Resistance(airspace.Correlated, mean, rvalue.TemperatureDifference(drop))
		if err != nil || !near(float64(space.R), float64(want), 1e-6) {
			t.Errorf("by %v: the space of the fill resists %v, at its temperatures %v, %v", r.Effective.Method, float64(space.R), float64(want), err)
		}
	}
}

// TestGainIsTheDerivative compares each gain with the change of the effective R
// when a little resistance is added in that very place.
func TestGainIsTheDerivative(t *testing.T) {
	const step = 1e-6
	steel := func(a assembly.Assembly) rvalue.Resistance {
		frame := assembly.SteelFrame{Spacing: 12 * rvalue.Inch, Depth: 3 * rvalue.Inch, Flange: 1.625 * rvalue.Inch, Thickness: 0.043 * rvalue.Inch, Cavity: a.Layers[2].Shares[1].R}
		for i, d := range []rvalue.Length{0, 0.5 * rvalue.Inch, 0, 7.0 / 16 * rvalue.Inch, 0} {
			c := assembly.Cover{Thickness: d, R: a.Layers[i].Mixed()}
			switch {
			case i < 2:
				frame.Inside = append(frame.Inside, c)
			case i > 2:
				frame.Outside = append(frame.Outside, c)
			}
		}
		z, err := frame.Zones()
		if err != nil {
			t.Fatal(err)
		}
		return z.R
	}
	const wood = "gypsum 1/2 in + 1x3 @ 16 in (R-1) + 2x4 @ 16 in (fiberglass R-13) + osb 7/16 in"
	for _, c := range []struct {
		text   string
		method assembly.Method
		by     func(assembly.Assembly) rvalue.Resistance
	}{
		{wood, assembly.Parallel, assembly.Assembly.ParallelPath},
		{wood, assembly.Isothermal, assembly.Assembly.IsothermalPlanes},
		{wood, assembly.Mean, func(a assembly.Assembly) rvalue.Resistance { return a.Combined().R }},
		{"gypsum 1/2 in + steel 3 in @ 12 in (fiberglass R-13) + osb 7/16 in", assembly.Zone, steel},
	} {
		r := written(t, c.text, assembly.Setting{Method: c.method})
		if got := c.by(r.Assembly); !near(float64(r.Effective.R), float64(got), 1e-12) {
			t.Fatalf("%v: effective R %v, by hand %v", c.method, float64(r.Effective.R), float64(got))
		}
		for i, l := range r.Layers {
			for s, sh := range l.Shares {
				d := step * float64(sh.R)
				up, down := clone(r.Assembly), clone(r.Assembly)
				up.Layers[i].Shares[s].R += rvalue.Resistance(d)
				down.Layers[i].Shares[s].R -= rvalue.Resistance(d)
				want := float64(c.by(up)-c.by(down)) / (2 * d)
				if !near(sh.Gain, want, 1e-5) && math.Abs(sh.Gain-want) > 1e-7 {
					t.Errorf("%v: gain of %q is %.9f, the difference quotient %.9f", c.method, sh.Name, sh.Gain, want)
				}
			}
		}
	}
}

// dividing are assemblies of all kinds that methods divide in their own way.
var dividing = []string{
	"gypsum 1/2 in + steel 3 1/2 in @ 16 in (fiberglass R-13) + osb 7/16 in + xps 1 in + vinyl siding", // published factor
	"R-0.45 + steel 3 1/2 in @ 16 in (empty) + R-0.6",
	"gypsum 1/2 in + steel 3 in @ 12 in (fiberglass R-13) + osb 7/16 in", // zone method
	"gypsum 1/2 in + 1x3 @ 16 in (air 3/4 in) + steel 6 in @ 16 in (fiberglass R-19) + osb 7/16 in",
	"gypsum 1/2 in + 1x3 @ 16 in (air 3/4 in) + steel 3 in @ 16 in (cellulose) + osb 7/16 in",
	"plaster 3/4 in + concrete 6 in 25 % (perlite) + plaster 3/4 in", // masonry
	"R-1 + RSI 0.1 20 % (RSI 1.9) + R-1",
	"R-1 + RSI 0.1 20 % (RSI 1.9) + RSI 0.2 10 % (RSI 3) + R-1",
}

// TestEffectiveMethodAgreesWithItself: R, drops, temperatures and shares of heat
// are all those of the effective method and add up, by every method.
func TestEffectiveMethodAgreesWithItself(t *testing.T) {
	texts := dividing
	for _, c := range notations {
		texts = append(texts, "R-1 + "+c.text+" + R-1")
	}
	rng := rand.New(rand.NewPCG(11, 12))
	for _, text := range texts {
		for _, m := range []assembly.Method{assembly.Advised, assembly.Parallel, assembly.Isothermal, assembly.Mean} {
			r := written(t, text, assembly.Setting{Method: m, Outdoors: rvalue.FromFahrenheit(40 * rng.Float64()), Cold: rng.IntN(2) == 0})
			by := fmt.Sprintf("%s by %v", text, r.Effective.Method)
			whole := float64(r.Effective.R)
			drops, sum, at := 0.0, 0.0, r.Setting.Indoors
			for _, l := range r.Layers {
				drops += l.Drop
				sum += float64(l.R)
				if l.Inner != at || !(l.Outer < l.Inner) {
					t.Errorf("%s: %q goes from %v to %v behind %v", by, l.Name, l.Inner, l.Outer, at)
				}
				at = l.Outer
				heat, average := 0.0, 0.0
				for _, s := range l.Shares {
					heat += s.Heat
					average += s.Heat * float64(s.R)
				}
				// Between pieces of a bay heat crosses over: see TestHeatCrossesOverBetweenPieces.
				crosses := len(l.Shares[len(l.Shares)-1].Pieces) > 1 && (r.Effective.Method == assembly.Isothermal || r.Effective.Method == assembly.Mean)
				if !near(heat, 1, 1e-12) || !crosses && !near(average, float64(l.R), 1e-12) {
					t.Errorf("%s: in %q heat sums to %v, and averages the shares to %v, the layer has %v", by, l.Name, heat, average, float64(l.R))
				}
				if len(l.Shares) == 1 && !near(float64(l.R), float64(l.Shares[0].R), 1e-12) {
					t.Errorf("%s: plain %q counts %v, it has %v", by, l.Name, float64(l.R), float64(l.Shares[0].R))
				}
			}
			if !near(drops, 1, 1e-12) || !near(sum, whole, 1e-12) {
				t.Errorf("%s: drops sum to %v, layers to %v of %v", by, drops, sum, whole)
			}
			if math.Abs(float64(at.Sub(r.Setting.Outdoors))) > 1e-9 {
				t.Errorf("%s: the last plane is at %v, outdoors at %v", by, at, r.Setting.Outdoors)
			}
			area, heat := 0.0, 0.0
			for _, p := range r.Paths {
				area += p.Fraction
				heat += p.Heat
			}
			if len(r.Paths) > 0 && (!near(area, 1, 1e-12) || !near(heat, 1, 1e-12)) {
				t.Errorf("%s: the paths have %v of the area and %v of the heat", by, area, heat)
			}
		}
	}
}

// TestFacesAreMeansOverTheArea: by the parallel path a face has the mean of its
// paths' temperatures, by area.
func TestFacesAreMeansOverTheArea(t *testing.T) {
	r := written(t, "gypsum 1/2 in + 1x3 @ 16 in (air 3/4 in) + 2x4 @ 16 in (fiberglass R-13) + osb 7/16 in", assembly.Setting{})
	for i, l := range r.Layers {
		inner, outer := 0.0, 0.0
		for _, p := range r.Paths {
			inner += p.Fraction * p.Planes[i].Celsius()
			outer += p.Fraction * p.Planes[i+1].Celsius()
		}
		if math.Abs(l.Inner.Celsius()-inner) > 1e-9 || math.Abs(l.Outer.Celsius()-outer) > 1e-9 {
			t.Errorf("%q from %v to %v, its paths from %.6f to %.6f °C", l.Name, l.Inner, l.Outer, inner, outer)
		}
	}
}

// TestMembersCarry: what the effective method implies for the heat through the
// members, worked out beside it.
func TestMembersCarry(t *testing.T) {
	const in = rvalue.Inch
	member := func(text string, s assembly.Setting) float64 {
		r := written(t, text, s)
		for _, l := range r.Layers {
			if len(l.Shares) > 1 && !near(r.Paths[0].Heat, l.Shares[0].Heat, 1e-12) {
				t.Errorf("%s: path %v and share %v of the members differ", text, r.Paths[0].Heat, l.Shares[0].Heat)
			}
		}
		return r.Paths[0].Heat
	}
	// Published factor, R-6.0 for R-13 between studs at 16 in: the batts carry
	// 6.0/13 of the heat, the studs the rest, but for the web's own R-0.0105.
	want := (13 - 6.0) / (13 - 0.0105)
	if got := member(dividing[0], assembly.Setting{}); !near(got, want, 1e-5) {
		t.Errorf("published factor: the studs carry %.5f, by hand %.5f", got, want)
	}
	// Isothermal planes: heat goes as fraction over R.
	want = 0.2 / 0.1 / (0.2/0.1 + 0.8/1.9)
	if got := member("R-1 + RSI 0.1 20 % (RSI 1.9) + R-1", assembly.Setting{Method: assembly.Isothermal}); !near(got, want, 1e-12) {
		t.Errorf("isothermal planes: the webs carry %.5f, by hand %.5f", got, want)
	}
	// Zone method: the clear wall's heat and the fill's in the zone, where
	// heat goes as width over R; the flanges, whose fill is a sheet thick, aside.
	r := written(t, dividing[2], assembly.Setting{})
	frame := assembly.SteelFrame{
		Spacing: 12 * in, Depth: 3 * in, Flange: 1.625 * in, Thickness: 0.043 * in, Cavity: r.Layers[2].Shares[1].R,
		Inside:  []assembly.Cover{{R: r.Layers[0].R}, {Thickness: 0.5 * in, R: r.Layers[1].R}},
		Outside: []assembly.Cover{{Thickness: 7.0 / 16 * in, R: r.Layers[3].R}, {R: r.Layers[4].R}},
	}
	z, err := frame.Zones()
	if err != nil {
		t.Fatal(err)
	}
	zone := float64(z.Width/frame.Spacing) * float64(z.R/z.Framed)
	deep := float64(frame.Depth - 2*frame.Thickness)
	web := float64(frame.Thickness/z.Width) * float64(z.Web) / (deep * 0.0208)
	if got := r.Paths[0].Heat; !near(got, zone*web, 0.01) {
		t.Errorf("zone method: the studs carry %.5f, by hand %.5f", got, zone*web)
	}
}
