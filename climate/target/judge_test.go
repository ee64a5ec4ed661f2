package target

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/rvalue"
)

func TestJudge(t *testing.T) {
	uip := func(u float64) rvalue.Transmittance { return rvalue.Transmittance(u) * rvalue.UIP }
	rip := func(r float64) rvalue.Resistance { return rvalue.Resistance(r) * rvalue.RIP }
	for _, c := range []struct {
		name  string
		zone  string
		e     Edition
		c     Component
		f     Facts
		o     Offer
		by    string  // "" when not met
		short float64 // Btu/(h·ft²·°F)
		why   string
	}{
		{name: "U exactly", zone: "5A", e: Edition2018, c: Wall, o: Offer{U: uip(0.060)}, by: "U-factor"},
		{name: "U rounds to the table's digits", zone: "5A", e: Edition2018, c: Wall, o: Offer{U: uip(0.0604)}, by: "U-factor"},
		{name: "U one digit over", zone: "5A", e: Edition2018, c: Wall, o: Offer{U: uip(0.0606)}, short: 0.0006, why: "U-factor 0.061 is above 0.060"},
		{name: "empty 2x4 wall", zone: "5A", e: Edition2018, c: Wall, o: Offer{U: uip(0.29)}, short: 0.23, why: "U-factor 0.290 is above 0.060"},
		{name: "window label", zone: "5A", e: Edition2021, c: Window, o: Offer{U: uip(0.304)}, by: "U-factor"},
		{name: "window over", zone: "5A", e: Edition2021, c: Window, o: Offer{U: uip(0.306)}, short: 0.006, why: "U-factor 0.31 is above 0.30"},
		{name: "window with solar gain over", zone: "4A", e: Edition2021, c: Window, o: Offer{U: uip(0.28), SHGC: 0.45}, why: "SHGC 0.45 is above 0.40"},
		{name: "window with solar gain at the limit", zone: "4A", e: Edition2021, c: Window, o: Offer{U: uip(0.28), SHGC: 0.40}, by: "U-factor"},
		{name: "window where no solar limit holds", zone: "4C", e: Edition2021, c: Window, o: Offer{U: uip(0.28), SHGC: 0.70}, by: "U-factor"},

		{name: "cavity option", zone: "5A", e: Edition2018, c: Wall, o: Offer{Cavity: rip(21)}, by: "R-value path (R-20)"},
		{name: "cavity and continuous", zone: "6A", e: Edition2018, c: Wall, o: Offer{Cavity: rip(20), Continuous: rip(5)}, by: "R-value path (R-20+5ci)"},
		{name: "13+10", zone: "6A", e: Edition2018, c: Wall, o: Offer{Cavity: rip(15), Continuous: rip(10)}, by: "R-value path (R-13+10ci)"},
		{name: "continuous only", zone: "6A", e: Edition2021, c: Wall, o: Offer{Continuous: rip(20)}, by: "R-value path (R-0+20ci)"},
		{name: "R by the label in m²K/W", zone: "5A", e: Edition2018, c: Wall, o: Offer{Cavity: 3.52 * rvalue.RSI}, by: "R-value path (R-20)"},
		{name: "R path beats a U that misses", zone: "1A", e: Edition2018, c: Wall, o: Offer{U: uip(0.0851), Cavity: rip(13)}, by: "R-value path (R-13)"},
		{name: "sum of layers does not count in a wall", zone: "6A", e: Edition2018, c: Wall, o: Offer{Cavity: rip(25)}, why: "R-0+5ci is missing for R-20+5ci"},
		{name: "nearest option", zone: "6A", e: Edition2021, c: Wall, o: Offer{Cavity: rip(15), Continuous: rip(5)}, why: "R-5 is missing for R-20+5ci"},
		{name: "attic: layers add up", zone: "6A", e: Edition2018, c: Ceiling, o: Offer{Cavity: rip(19), Continuous: rip(30)}, by: "R-value path (R-49)"},
		{name: "attic misses", zone: "6A", e: Edition2018, c: Ceiling, o: Offer{U: uip(0.05), Cavity: rip(19)}, short: 0.024, why: "U-factor 0.050 is above 0.026; R-30 is missing for R-49"},
		{name: "attic with raised heel", zone: "6A", e: Edition2018, c: Ceiling, f: Facts{FullHeightOverPlate: true}, o: Offer{U: uip(0.028), Cavity: rip(38)}, by: "R-value path (R-38)"},
		{name: "floor that fills its cavity", zone: "5A", e: Edition2018, c: Floor, f: Facts{CavityFilled: true}, o: Offer{U: uip(0.047), Cavity: rip(19)}, by: "R-value path (R-19)"},
		{name: "basement continuous", zone: "6A", e: Edition2018, c: BasementWall, o: Offer{Continuous: rip(15)}, by: "R-value path (R-0+15ci)"},
		{name: "basement cavity", zone: "6A", e: Edition2018, c: BasementWall, o: Offer{Cavity: rip(19)}, by: "R-value path (R-19)"},
		{name: "basement 13+5 in 2018 is nothing yet", zone: "6A", e: Edition2018, c: BasementWall, o: Offer{Cavity: rip(13), Continuous: rip(5)}, why: "R-6 is missing for R-19"},
		{name: "basement 13+5 in 2021", zone: "6A", e: Edition2021, c: BasementWall, o: Offer{Cavity: rip(13), Continuous: rip(5)}, by: "R-value path (R-13+5ci)"},
		{name: "warm-humid basement", zone: "3A*", e: Edition2021, c: BasementWall, by: "nothing is required"},
		{name: "zone 1 window of 2015", zone: "1A", e: Edition2015, c: Window, o: Offer{U: uip(1.1)}, by: "nothing is required"},

		{name: "slab R and depth", zone: "6A", e: Edition2018, c: Slab, o: Offer{Continuous: rip(10), SlabDepth: 4 * rvalue.Foot}, by: "R-value path (R-10)"},
		{name: "slab too shallow", zone: "6A", e: Edition2018, c: Slab, o: Offer{Continuous: rip(10), SlabDepth: 2 * rvalue.Foot}, why: "insulation must reach 4 ft down"},
		{name: "slab depth in whole millimetres", zone: "5A", e: Edition2018, c: Slab, o: Offer{Continuous: rip(10), SlabDepth: 609 * rvalue.Millimetre}, by: "R-value path (R-10)"},
		{name: "slab 2 mm too shallow", zone: "5A", e: Edition2018, c: Slab, o: Offer{Continuous: rip(10), SlabDepth: 608 * rvalue.Millimetre}, why: "insulation must reach 2 ft down"},
		{name: "slab too thin", zone: "6A", e: Edition2018, c: Slab, o: Offer{Continuous: rip(5), SlabDepth: 4 * rvalue.Foot}, why: "R-5 is missing for R-10"},
		{name: "slab by F", zone: "6A", e: Edition2018, c: Slab, o: Offer{F: 0.48 * rvalue.PsiIP}, by: "F-factor, our reading"},
		{name: "slab F misses", zone: "6A", e: Edition2018, c: Slab, o: Offer{F: 0.73 * rvalue.PsiIP}, why: "F-factor 0.73 is above 0.48"},
		{name: "slab unknown", zone: "6A", e: Edition2018, c: Slab, o: Offer{U: uip(0.1)}, why: "a slab edge is judged by"},
		{name: "slab in zone 1", zone: "1A", e: Edition2018, c: Slab, by: "nothing is required"},

		{name: "nothing known", zone: "6A", e: Edition2018, c: Wall, why: "neither a U-factor nor installed insulation is known"},
		{name: "no window U", zone: "6A", e: Edition2018, c: Window, why: "no U-factor is known"},
		{name: "R says nothing of a window", zone: "6A", e: Edition2018, c: Window, o: Offer{Cavity: rip(99)}, why: "no U-factor is known"},
		{name: "steel ceiling without a row has no R path", zone: "6A", e: Edition2021, c: Ceiling, f: Facts{Steel: &Steel{Truss: true}}, o: Offer{U: uip(0.03), Cavity: rip(99)}, short: 0.006, why: "U-factor 0.030 is above 0.024"},
		{name: "U not a number", zone: "6A", e: Edition2018, c: Wall, o: Offer{U: rvalue.Transmittance(math.NaN())}, why: "not a size that can be judged"},
		{name: "R infinite", zone: "6A", e: Edition2018, c: Wall, o: Offer{Cavity: rvalue.Resistance(math.Inf(1))}, why: "not a size that can be judged"},
		{name: "U negative", zone: "6A", e: Edition2018, c: Wall, o: Offer{U: -1}, why: "not a size that can be judged"},
		{name: "nonsense is not met even where nothing is required", zone: "1A", e: Edition2018, c: Slab, o: Offer{F: -1}, why: "not a size that can be judged"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := mustFor(t, mustZone(t, c.zone), c.e, c.c, c.f)
			v := r.Judge(c.o)
			if v.Met != (c.by != "") || v.By != c.by {
				t.Errorf("Met %v by %q, want by %q (%s)", v.Met, v.By, c.by, v.Why)
			}
			if !near(v.Short.IP(), c.short) {
				t.Errorf("Short %.5f, want %.5f", v.Short.IP(), c.short)
			}
			if c.short != 0 {
				if want := 1/r.U.IP() - 1/c.o.U.IP(); !near(v.Needed.IP(), want) {
					t.Errorf("Needed R-%.3f, want R-%.3f", v.Needed.IP(), want)
				}
			}
			if !strings.Contains(v.Why, c.why) || v.Why == "" {
				t.Errorf("Why %q, want it to say %q", v.Why, c.why)
			}
		})
	}
}

// TestJudgeIsMonotone: more insulation or a smaller U never turns a part that
// meets its requirement into one that does not, and never misses by more.
func TestJudgeIsMonotone(t *testing.T) {
	rng := rand.New(rand.NewPCG(20, 21))
	for range 20000 {
		z := mustZone(t, ladder[rng.IntN(len(ladder))])
		e := editions[rng.IntN(len(editions))]
		c := Component(1 + rng.IntN(int(Door)))
		r := mustFor(t, z, e, c, Facts{FullHeightOverPlate: rng.IntN(2) == 0, HeatedSlab: rng.IntN(2) == 0, CavityFilled: rng.IntN(2) == 0})
		o := Offer{
			U:          rvalue.Transmittance(0.01+rng.Float64()) * rvalue.UIP,
			Cavity:     rvalue.Resistance(float64(rng.IntN(61))) * rvalue.RIP,
			Continuous: rvalue.Resistance(float64(rng.IntN(31))) * rvalue.RIP,
			SlabDepth:  rvalue.Length(float64(rng.IntN(6))) * rvalue.Foot,
		}
		better := o
		better.U *= rvalue.Transmittance(0.5 + rng.Float64()/2)
		better.Cavity += rvalue.Resistance(float64(rng.IntN(10))) * rvalue.RIP
		better.Continuous += rvalue.Resistance(float64(rng.IntN(10))) * rvalue.RIP
		better.SlabDepth += rvalue.Length(float64(rng.IntN(3))) * rvalue.Foot
		worse, best := r.Judge(o), r.Judge(better)
		if worse.Met && !best.Met {
			t.Fatalf("%v %v %v: %+v meets, %+v does not: %s", z, e, c, o, better, best.Why)
		}
		if strings.HasPrefix(worse.By, "R-value") && len(r.Options) == 0 {
			t.Fatalf("%v %v %v: met by an R-value path that does not exist", z, e, c)
		}
		if best.Short > worse.Short && !worse.Met {
			t.Fatalf("%v %v %v: %+v misses by %v, the better %+v by %v", z, e, c, o, worse.Short, better, best.Short)
		}
		if v := worse; v.Met != (v.By != "") || (v.Met && (v.Short != 0 || v.Needed != 0)) || v.Short < 0 || v.Needed < 0 {
			t.Fatalf("%v %v %v: verdict contradicts itself: %+v", z, e, c, v)
		}
	}
}

// TestAskedIsEnough: what a requirement asks, offered, meets it by every path.
func TestAskedIsEnough(t *testing.T) {
	for _, e := range Editions() {
		for _, zone := range ladder {
			for _, v := range variants {
				r := mustFor(t, mustZone(t, zone), e, v.c, v.f)
				if r.U != 0 && !r.Judge(Offer{U: r.U}).Met {
					t.Errorf("%v zone %s %v: its own U %.3f does not meet it", e, zone, v.c, r.U.IP())
				}
				for _, o := range r.Options {
					if got := r.Judge(Offer{Cavity: o.Cavity, Continuous: o.Continuous, SlabDepth: r.SlabDepth}); !got.Met {
						t.Errorf("%v zone %s %v: its own option %v does not meet it: %s", e, zone, v.c, o, got.Why)
					}
				}
			}
		}
	}
}

func BenchmarkFor(b *testing.B) {
	z := mustZone(b, "6A")
	b.ReportAllocs()
	for b.Loop() {
		if _, err := For(z, Edition2021, Wall, Facts{}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkJudge(b *testing.B) {
	r := mustFor(b, mustZone(b, "6A"), Edition2021, Wall, Facts{})
	o := Offer{U: 0.29 * rvalue.UIP}
	b.ReportAllocs()
	for b.Loop() {
		if r.Judge(o).Met {
			b.Fatal("an empty wall cannot meet 2021")
		}
	}
}
