package window

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/rvalue"
	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

func solved(t *testing.T, g Glazing, c Conditions) Solved {
	t.Helper()
	s, err := g.Design(c)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// anyGlazing returns some glazing in some conditions, all within their ranges.
func anyGlazing(r *rand.Rand) (Glazing, Conditions) {
	between := func(low, high float64) float64 { return low + (high-low)*r.Float64() }
	g := Glazing{}
	for i := range 1 + r.IntN(MaxPanes) {
		p := Pane{Sheet: Sheet(r.IntN(4)), Thickness: rvalue.Length(between(2, 20)) * mm}
		if r.IntN(2) == 0 {
			p.Inner = between(0.01, 0.89)
		}
		if r.IntN(3) == 0 {
			p.Outer = between(0.01, 0.89)
		}
		g.Panes = append(g.Panes, p)
		if i == 0 {
			continue
		}
		gap := Gap{Thickness: rvalue.Length(math.Exp(between(math.Log(0.5), math.Log(300)))) * mm}
		switch r.IntN(8) {
		case 0:
			gap.Kind, gap.Conductance = Vacuum, rvalue.Transmittance(between(0.1, 5))
		case 1, 2:
		default:
			x := between(0, 1)
			gap.Fill = [...]Fill{{Argon: x}, {Krypton: x}, {Xenon: x}, {SF6: x}, {Argon: x / 2, Krypton: x / 2}}[r.IntN(5)]
		}
		g.Gaps = append(g.Gaps, gap)
	}
	c := Conditions{
		Indoors: rvalue.FromCelsius(between(-59, 59)), Outdoors: rvalue.FromCelsius(between(-60, 60)),
		Wind: rvalue.Speed(between(0, 30)), Tilt: between(0, 180), Height: rvalue.Length(between(0.1, 5)),
	}
	if r.IntN(4) == 0 || math.Abs(c.Indoors.Sub(c.Outdoors).SI()) < 0.1 { // nearly nothing flows
		c.Outdoors = c.Indoors.Add(rvalue.TemperatureDifference(between(0.11, 0.3)))
	}
	return g, c
}

// TestHeatBalance: every glazing settles, and at the pane temperatures that are
// returned each film, gap and pane passes the same heat.
func TestHeatBalance(t *testing.T) {
	const relative = 1e-9
	// A face near 300 K is known to 1e-13 K; what lies between two of them not better.
	const known = 1e-12 // K
	r := rand.New(rand.NewPCG(1, 2))
	for range 5000 {
		g, c := anyGlazing(r)
		s, err := g.Design(c)
		if err != nil {
			t.Fatalf("%+v in %+v: %v", g, c, err)
		}
		q := s.U.SI() * c.Indoors.Sub(c.Outdoors).SI()
		flows := map[string][2]float64{ // conductance, drop
			"inside film":  {s.InsideFilm.SI(), c.Indoors.Sub(s.Faces[0]).SI()},
			"outside film": {s.OutsideFilm.SI(), s.Faces[2*s.Panes-1].Sub(c.Outdoors).SI()},
		}
		for i := range g.Panes {
			flows[fmt.Sprint("pane ", i)] = [2]float64{1 / g.Panes[i].resistance(), s.Faces[2*i].Sub(s.Faces[2*i+1]).SI()}
		}
		for i := range g.Gaps {
			flows[fmt.Sprint("gap ", i)] = [2]float64{s.Gaps[i].Conductance().SI(), s.Faces[2*i+1].Sub(s.Faces[2*i+2]).SI()}
			flows[fmt.Sprint("gap by its difference ", i)] = [2]float64{s.Gaps[i].Conductance().SI(), s.Gaps[i].Difference.SI()}
		}
		for name, f := range flows {
			if off := math.Abs(f[0]*f[1] - q); !(off <= relative*math.Abs(q)+known*f[0]) {
				t.Fatalf("%+v in %+v: %s passes %.12g, the whole %.12g W/m²", g, c, name, f[0]*f[1], q)
			}
		}
	}
}

// TestStringReadsBack: any glazing made in Go, to the last bit.
func TestStringReadsBack(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for range 5000 {
		g, _ := anyGlazing(r)
		p := &g.Panes[r.IntN(len(g.Panes))]
		if p.Tempered = r.IntN(2) == 0; p.Sheet == Laminated {
			p.Interlayer = p.Thickness / 3
		}
		back, _, err := Parse(g.String())
		if err != nil {
			t.Fatal(err)
		}
		if d := cmp.Diff(g, back, cmpopts.EquateEmpty()); d != "" {
			t.Fatalf("%s reads otherwise: (-made +read)\n%s", g, d)
		}
	}
}

// upgrades makes a glazing better in one way.
var upgrades = map[string]func(*Glazing, *rand.Rand){
	"a pane more": func(g *Glazing, _ *rand.Rand) {
		if len(g.Panes) < MaxPanes {
			gap := Gap{Thickness: 8 * mm}
			if len(g.Gaps) > 0 {
				gap = g.Gaps[0]
			}
			g.Panes, g.Gaps = append(g.Panes, Pane{Thickness: glass4}), append(g.Gaps, gap)
		}
	},
	"lower emissivity": func(g *Glazing, r *rand.Rand) {
		p := &g.Panes[r.IntN(len(g.Panes))]
		if p.Inner == 0 {
			p.Inner = 0.88
		}
		p.Inner *= r.Float64()
	},
	"heavier gas": func(g *Glazing, r *rand.Rand) {
		if len(g.Gaps) == 0 {
			return
		}
		f := &g.Gaps[r.IntN(len(g.Gaps))].Fill
		x := (1 - f.sum()) * r.Float64()
		f.Argon, f.Krypton, f.Xenon = f.Argon/2, f.Krypton+f.Argon/2, f.Xenon+x
	},
}

// TestBetterIsBetter: upright and below the convection limit (gaps of 2 to 5 mm),
// a pane more, a lower emissivity or a heavier gas never raises U, by
// either route.
func TestBetterIsBetter(t *testing.T) {
	const slack = 1e-9 // relative: what the solver leaves
	r := rand.New(rand.NewPCG(3, 4))
	for range 1000 {
		g := unit(1+r.IntN(4), glass4, rvalue.Length(2+3*r.Float64())*mm, Fill{Argon: r.Float64()}, r.IntN(2), 0.05+0.8*r.Float64())
		c := Winter()
		c.Outdoors = rvalue.FromCelsius(-20 + 35*r.Float64())
		for name, better := range upgrades {
			before, beforeDeclared := solved(t, g, c).U, declared(t, g, Upright)
			h := unit(len(g.Panes), glass4, 0, Fill{}, 0, 0)
			copy(h.Panes, g.Panes)
			copy(h.Gaps, g.Gaps)
			better(&h, r)
			after, afterDeclared := solved(t, h, c).U, declared(t, h, Upright)
			if after.SI() > before.SI()*(1+slack) || afterDeclared > beforeDeclared*(1+slack) {
				t.Fatalf("%s: %+v gives %v (declared %.4f), %+v gives %v (%.4f)", name, g, before, beforeDeclared, h, after, afterDeclared)
			}
		}
	}
}

// TestContinuous: a hair more tilt or gap changes U by a hair, everywhere.
func TestContinuous(t *testing.T) {
	// 0.05° and 0.05 mm may change U by so much, relatively. The change is fastest
	// near 180°, where the air comes to rest, and in the thinnest gaps.
	const byTilt, byGap = 3e-3, 0.02
	glazings := []Glazing{
		unit(1, glass4, 0, Fill{}, 0, 0), unit(2, glass4, 16*mm, Fill{}, 0, 0),
		unit(2, glass4, 16*mm, Fill{Argon: 0.9}, 1, 0.04), unit(3, glass4, 10*mm, Fill{Krypton: 0.9}, 2, 0.04),
	}
	routes := map[string]func(Glazing, float64) float64{
		"declared": func(g Glazing, tilt float64) float64 { return declared(t, g, tilt) },
		"winter": func(g Glazing, tilt float64) float64 {
			c := Winter()
			c.Tilt = tilt
			return solved(t, g, c).U.SI()
		},
		"summer": func(g Glazing, tilt float64) float64 {
			c := Winter()
			c.Tilt, c.Outdoors = tilt, rvalue.FromCelsius(35)
			return solved(t, g, c).U.SI()
		},
	}
	for name, route := range routes {
		for i, g := range glazings {
			before := route(g, 0)
			for n := 5; n <= 18000; n += 5 {
				u := route(g, float64(n)/100)
				if math.Abs(u/before-1) > byTilt {
					t.Fatalf("%s, glazing %d: U %.5f at %.2f°, %.5f just before", name, i, u, float64(n)/100, before)
				}
				before = u
			}
			if len(g.Gaps) == 0 {
				continue
			}
			for _, tilt := range []float64{0, 30, 60, 75, 90, 135, 180} {
				before = 0
				for s := 2.0; s < 60; s += 0.05 {
					for i := range g.Gaps {
						g.Gaps[i].Thickness = rvalue.Length(s) * mm
					}
					u := route(g, tilt)
					if before > 0 && math.Abs(u/before-1) > byGap {
						t.Fatalf("%s, glazing %d at %g°: U %.5f at a gap of %.2f mm, %.5f just before", name, i, tilt, u, s, before)
					}
					before = u
				}
			}
		}
	}
}

// TestAgainstDeclared: with glass 15 K apart around 10 °C, as EN 673 declares,
// the design route's resistance from glass to glass differs from the declared one
// by at most 1.5 % where the gas rests, which the gas data of the two standards
// do, and by at most 10 % where it moves (6 % of a coated unit's U): EN 673 lets it
// begin to move later, in air and argon beside a coating most of all.
func TestAgainstDeclared(t *testing.T) {
	const still, moving = 0.015, 0.101
	for _, gas := range []string{"air", "argon", "krypton", "xenon"} {
		for _, gap := range []float64{4, 6, 8, 10, 12, 14, 16, 20} {
			for _, e := range []float64{0, 0.2, 0.04} {
				coats := 1
				if e == 0 {
					coats = 0
				}
				g := unit(2, glass4, rvalue.Length(gap)*mm, filled(t, gas, 0.9), coats, e)
				c := Winter()
				c.Indoors, c.Outdoors = rvalue.FromCelsius(20), rvalue.FromCelsius(0)
				var s Solved
				for range 40 { // until the inner faces of the gap are at 17.5 and 2.5 °C
					s = solved(t, g, c)
					c.Indoors = c.Indoors.Add(rvalue.FromCelsius(17.5).Sub(s.Faces[1]))
					c.Outdoors = c.Outdoors.Add(rvalue.FromCelsius(2.5).Sub(s.Faces[2]))
				}
				want, err := g.Declared(EN673, Upright)
				if err != nil {
					t.Fatal(err)
				}
				within := still
				if want.Gaps[0].Nusselt > 1 || s.Gaps[0].Nusselt > 1.01 {
					within = moving
				}
				if off := s.Gaps[0].Conductance().SI()/want.Gaps[0].Conductance().SI() - 1; math.Abs(off) > within {
					t.Errorf("%g mm of %s, emissivity %g: %v by design, %v declared, %.1f %% apart", gap, gas, e, s.Gaps[0].Conductance(), want.Gaps[0].Conductance(), 100*off)
				}
			}
		}
	}
}

// TestAgainstISO15099 states how far Nu is from the equations that ISO 15099 has
// at 90° (Wright 1996) and 60° (ElSherbiny et al. 1982), from memory, over the
// numbers that sealed units have.
func TestAgainstISO15099(t *testing.T) {
	const at90, at60 = 0.005, 0.106
	iso90 := func(ra, aspect float64) float64 {
		nu := 1 + 1.7596678e-10*math.Pow(ra, 2.2984755)
		if ra > 5e4 {
			nu = 0.0673838 * math.Cbrt(ra)
		} else if ra > 1e4 {
			nu = 0.028154 * math.Pow(ra, 0.4134)
		}
		return max(nu, 0.242*math.Pow(ra/aspect, 0.272))
	}
	iso60 := func(ra, aspect float64) float64 {
		g := 0.5 / math.Pow(1+math.Pow(ra/3160, 20.6), 0.1)
		return max(math.Pow(1+math.Pow(0.0936*math.Pow(ra, 0.314)/(1+g), 7), 1./7), (0.104+0.175/aspect)*math.Pow(ra, 0.283))
	}
	sixty, ninety := slopeOf(60), slopeOf(90)
	worst := [2]float64{}
	for ra := 100.0; ra < 1e5; ra *= 1.02 {
		for _, aspect := range []float64{25, 60, 100} {
			worst[0] = max(worst[0], math.Abs(ninety.nusselt(ra, math.Log(aspect))/iso90(ra, aspect)-1))
			worst[1] = max(worst[1], math.Abs(sixty.nusselt(ra, math.Log(aspect))/iso60(ra, aspect)-1))
		}
	}
	for i, want := range []float64{at90, at60} {
		if worst[i] > want || worst[i] < 0.8*want {
			t.Errorf("Nu differs by %.1f %% at %d°, stated %.1f %%", 100*worst[i], 90-30*i, 100*want)
		}
	}
}

// TestHeatDown: heat that flows down finds a gas at rest under level glass.
func TestHeatDown(t *testing.T) {
	g, c := unit(2, glass4, 16*mm, Fill{}, 0, 0), Winter()
	c.Tilt = 0
	up := solved(t, g, c)
	c.Outdoors = rvalue.FromCelsius(35)
	down := solved(t, g, c)
	c = Winter()
	c.Tilt = 180
	floor := solved(t, g, c)
	if down.Gaps[0].Nusselt != 1 || floor.Gaps[0].Nusselt > 1+1e-12 || up.Gaps[0].Nusselt < 1.5 {
		t.Errorf("Nu is %g in summer, %g underfoot, %g in winter; want 1, 1 and well above", down.Gaps[0].Nusselt, floor.Gaps[0].Nusselt, up.Gaps[0].Nusselt)
	}
	if down.Gaps[0].Difference >= 0 {
		t.Errorf("with the heat flowing in the difference is %v, want it negative", down.Gaps[0].Difference)
	}
}

// TestRefused: what cannot be is named with what would do.
func TestRefused(t *testing.T) {
	good := func() (Glazing, Conditions) { return unit(2, glass4, 16*mm, Fill{Argon: 0.9}, 1, 0.04), Winter() }
	for _, c := range []struct {
		name  string
		spoil func(*Glazing, *Conditions)
		says  string
	}{
		{"no pane", func(g *Glazing, _ *Conditions) { *g = Glazing{} }, "without a pane"},
		{"too many panes", func(g *Glazing, _ *Conditions) { *g = unit(7, glass4, 6*mm, Fill{}, 0, 0) }, "7 panes, at most 6"},
		{"a gap missing", func(g *Glazing, _ *Conditions) { g.Gaps = nil }, "2 panes with 0 gaps between; give 1"},
		{"no thickness", func(g *Glazing, _ *Conditions) { g.Panes[1].Thickness = 0 }, "pane 2 from indoors: a thickness of 0 mm"},
		{"thickness NaN", func(g *Glazing, _ *Conditions) { g.Panes[0].Thickness = rvalue.Length(math.NaN()) }, "is no pane's"},
		{"zero gap", func(g *Glazing, _ *Conditions) { g.Gaps[0].Thickness = 0 }, "no room for a gas"},
		{"endless gap", func(g *Glazing, _ *Conditions) { g.Gaps[0].Thickness = rvalue.Length(math.Inf(1)) }, "out of range"},
		{"overfull", func(g *Glazing, _ *Conditions) { g.Gaps[0].Fill = Fill{Argon: 0.6, Xenon: 0.5} }, "fill 110 %"},
		{"fill over 100 %", func(g *Glazing, _ *Conditions) { g.Gaps[0].Fill.Argon = 1.2 }, "a fill of 120 %"},
		{"negative fill", func(g *Glazing, _ *Conditions) { g.Gaps[0].Fill.Argon = -0.1 }, "a fill of -10 %"},
		{"emissivity", func(g *Glazing, _ *Conditions) { g.Panes[0].Outer = 0.95 }, "an emissivity of 0.95"},
		{"emissivity NaN", func(g *Glazing, _ *Conditions) { g.Panes[0].Inner = math.NaN() }, "an emissivity of NaN"},
		{"gas by a storm window", func(g *Glazing, _ *Conditions) { g.Panes[1].Storm = true }, "not sealed"},
		{"vacuum without a figure", func(g *Glazing, _ *Conditions) { g.Gaps[0] = Gap{Kind: Vacuum, Thickness: mm} }, "declared by its maker"},
		{"conductance of argon", func(g *Glazing, _ *Conditions) { g.Gaps[0].Conductance = 1 }, "computed"},
		{"thick interlayer", func(g *Glazing, _ *Conditions) { g.Panes[0].Sheet, g.Panes[0].Interlayer = Laminated, glass4 }, "does not fit"},
		{"interlayer in plain glass", func(g *Glazing, _ *Conditions) { g.Panes[0].Interlayer = mm }, "only laminated"},
		{"tilt", func(_ *Glazing, c *Conditions) { c.Tilt = 181 }, "a tilt of 181° is impossible"},
		{"tilt NaN", func(_ *Glazing, c *Conditions) { c.Tilt = math.NaN() }, "a tilt of NaN°"},
		{"no temperature", func(_ *Glazing, c *Conditions) { c.Indoors = 0 }, "indoors at -273.1 °C"},
		{"no difference", func(_ *Glazing, c *Conditions) { c.Outdoors = c.Indoors }, "no heat flows"},
		{"wind", func(_ *Glazing, c *Conditions) { c.Wind = -1 }, "a wind of"},
		{"height", func(_ *Glazing, c *Conditions) { c.Height = -1 }, "a height of"},
	} {
		g, cond := good()
		c.spoil(&g, &cond)
		if _, err := g.Design(cond); err == nil || !strings.HasPrefix(err.Error(), "window: ") || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v, want %q", c.name, err, c.says)
		}
		if _, err := g.Declared(EN673, cond.Tilt); err == nil && cond == Winter() {
			t.Errorf("%s: declared without an error", c.name)
		}
	}
	g, _ := good()
	if _, err := g.Declared(9, Upright); err == nil {
		t.Error("standard 9 is accepted")
	}
}

var (
	sinkSolved Solved
	sinkCenter Center
)

func BenchmarkDesign(b *testing.B) {
	g, c := unit(2, glass4, 16*mm, Fill{Argon: 0.9}, 1, 0.04), Winter()
	b.ReportAllocs()
	for b.Loop() {
		s, err := g.Design(c)
		if err != nil {
			b.Fatal(err)
		}
		sinkSolved = s
	}
}

func BenchmarkDeclared(b *testing.B) {
	g := unit(3, glass4, 14*mm, Fill{Argon: 0.9}, 2, 0.04)
	b.ReportAllocs()
	for b.Loop() {
		c, err := g.Declared(EN673, Upright)
		if err != nil {
			b.Fatal(err)
		}
		sinkCenter = c
	}
}
