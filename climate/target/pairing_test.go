package target

import (
	"math"
	"strconv"
	"testing"
)

func fixed(v float64, decimals int) string { return strconv.FormatFloat(v, 'f', decimals, 64) }

// wallU is a wood wall by parallel path, in Btu/(h·ft²·°F): a quarter framing
// of resistance stud, three quarters cavity, others in series. It is written
// out here, apart from package assembly, so that the tables have an
// independent witness. An empty cavity is R-0.91 (ASHRAE 90.1, from memory).
func wallU(stud, cavity, ci, others float64) float64 {
	if cavity == 0 {
		cavity = 0.91
	}
	return 0.25/(stud+ci+others) + 0.75/(cavity+ci+others)
}

// Layers of the residential wall: outside film 0.17, siding 0.62, OSB 7/16 in
// 0.62 (seen, continuous-insulation trade association), gypsum 0.45, inside
// film 0.68 (from memory); wood an inch.
const (
	residentialOthers = 0.17 + 0.62 + 0.62 + 0.45 + 0.68
	wood2x4           = 4.375
	wood2x6           = 6.875
	wood2x8           = 9.0625
)

// optionU gives an option the smallest stud that holds its batt.
func optionU(o Option) float64 {
	stud := wood2x4
	switch cavity := o.Cavity.IP(); {
	case cavity > 21.5:
		stud = wood2x8 // R-30 squeezed into 7.25 in counts as R-30 here
	case cavity > 15.5:
		stud = wood2x6
	}
	return wallU(stud, o.Cavity.IP(), o.Continuous.IP(), residentialOthers)
}

// TestWitness holds wallU itself against printed U-factors: a
// continuous-insulation trade association's tables (seen), 16 in spacing, other
// layers 2.05, printed to three decimals; R-19 in a 2x6 counts as R-18.
func TestWitness(t *testing.T) {
	for _, w := range []struct {
		stud, cavity, ci float64
		printed          string
	}{
		{4.38, 11, 5, "0.063"},
		{4.38, 13, 3.8, "0.064"},
		{6.88, 0, 12, "0.062"},
		{6.88, 18, 2, "0.057"},
		{6.88, 20, 2, "0.054"},
		{6.88, 21, 2, "0.053"},
	} {
		if got := fixed(wallU(w.stud, w.cavity, w.ci, 2.05), 3); got != w.printed {
			t.Errorf("wallU(%g, %g, %g) = %s, want %s", w.stud, w.cavity, w.ci, got, w.printed)
		}
	}
}

// TestWallPairs holds the U-factor line of frame walls, which is from memory,
// against the R-value options, which were seen: the weakest option must give the
// line's figure at three decimals.
//
// From 2015 on every zone does. The lines of 2009 and 2012 do not, see
// TestEarlierWallLines; the departures are recorded below.
func TestWallPairs(t *testing.T) {
	type key struct {
		e    Edition
		zone string
	}
	differs := map[key]string{ // computed at three decimals
		{Edition2009, "1A"}: "0.084", // printed 0.082
		{Edition2009, "2A"}: "0.084",
		{Edition2009, "3A"}: "0.084",
		{Edition2009, "4A"}: "0.084",
		{Edition2009, "5A"}: "0.060", // printed 0.057
		{Edition2009, "6A"}: "0.060",
		{Edition2009, "7"}:  "0.058", // R-21 alone; printed 0.057
		{Edition2012, "1A"}: "0.084", // printed 0.082
		{Edition2012, "2A"}: "0.084",
		{Edition2012, "3A"}: "0.060", // printed 0.057
		{Edition2012, "4A"}: "0.060",
		{Edition2012, "5A"}: "0.060",
		{Edition2012, "6A"}: "0.045", // printed 0.048
		{Edition2012, "7"}:  "0.045",
	}
	for _, e := range Editions() {
		for _, zone := range []string{"1A", "2A", "3A", "4A", "5A", "6A", "7"} {
			r := mustFor(t, mustZone(t, zone), e, Wall, Facts{})
			weakest := 0.0
			for _, o := range r.Options {
				weakest = max(weakest, optionU(o))
			}
			got, printed := fixed(weakest, 3), fixed(r.U.IP(), 3)
			known, departs := differs[key{e, zone}]
			switch {
			case departs && (got != known || got == printed):
				t.Errorf("%v zone %s: %s computed, %s printed, recorded departure %s", e, zone, got, printed, known)
			case !departs && got != printed:
				t.Errorf("%v zone %s: weakest of %s computes to %s, table has %s", e, zone, cellText(r.Options), got, printed)
			}
		}
	}
}

// TestEarlierWallLines says why 2009 and 2012 depart: with 2.8 instead of 2.54
// of other layers, R-13, 13+5 and R-21 give their lines 0.082 and 0.057 to the
// last digit, so those editions counted other layers and the line of zone 5
// followed the stronger of its two options (R-20 alone would be 0.059). Nothing of the kind
// gives 0.048 in 2012: R-20+5 comes to 0.044. R-19, squeezed to R-18, plus R-5
// in ASHRAE 90.1's wall does (0.0485), which may or may not be where it is from.
// The figures are from memory; this arithmetic cannot prove the 0.048.
func TestEarlierWallLines(t *testing.T) {
	const others = 2.8 // h·ft²·°F/Btu, fitted here, not published
	for _, w := range []struct {
		stud, cavity, ci float64
		line, computed   string
	}{
		{wood2x4, 13, 0, "0.082", "0.082"},
		{wood2x4, 13, 5, "0.057", "0.057"},
		{wood2x6, 21, 0, "0.057", "0.057"},
		{wood2x6, 20, 0, "0.057", "0.059"},  // departs
		{wood2x6, 20, 5, "0.048", "0.044"},  // departs
		{wood2x4, 13, 10, "0.048", "0.044"}, // departs
	} {
		if got := fixed(wallU(w.stud, w.cavity, w.ci, others), 3); got != w.computed {
			t.Errorf("R-%g+%g: U %s, want %s (line %s)", w.cavity, w.ci, got, w.computed, w.line)
		}
	}
}

// TestStrongerOptions records the options that do better than the line of 2015
// and later, which follows the weakest: no option may do worse.
func TestStrongerOptions(t *testing.T) {
	for _, w := range []struct {
		cavity, ci float64
		printed    float64 // the U-factor line that the option stands under
		computed   string
	}{
		{13, 0, 0.084, "0.0844"},
		{20, 0, 0.060, "0.0598"},
		{13, 5, 0.060, "0.0575"}, // 0.003 better
		{20, 5, 0.045, "0.0446"},
		{13, 10, 0.045, "0.0441"}, // rounds to 0.044
		{30, 0, 0.045, "0.0446"},  // in a 2x8; supports the erratum of 2021
		{0, 10, 0.084, "0.0705"},
		{0, 15, 0.060, "0.0521"},
		{0, 20, 0.045, "0.0413"},
	} {
		u := optionU(option(pair{w.cavity, w.ci}))
		if got := fixed(u, 4); got != w.computed {
			t.Errorf("R-%g+%g: U %s, want %s", w.cavity, w.ci, got, w.computed)
		}
		if math.Round(u*1000)/1000 > w.printed+cellTolerance {
			t.Errorf("R-%g+%g: U %.4f is worse than its line %.3f", w.cavity, w.ci, u, w.printed)
		}
	}
}

// ladder runs from hot to cold; 4C stands after 4A because it reads with 5.
var ladder = []string{"0A", "1A", "2A", "3A", "4A", "4C", "5A", "6A", "7", "8"}

// variant is a component with the facts that pick its column.
var variants = []struct {
	c Component
	f Facts
}{
	{c: Ceiling},
	{c: CathedralCeiling},
	{c: Wall},
	{c: MassWall},
	{c: MassWall, f: Facts{InteriorMassInsulation: true}},
	{c: Floor},
	{c: BasementWall},
	{c: CrawlWall},
	{c: Slab},
	{c: Slab, f: Facts{HeatedSlab: true}},
	{c: Window},
	{c: Skylight},
	{c: Door},
	{c: Ceiling, f: Facts{FullHeightOverPlate: true}},
	{c: Floor, f: Facts{CavityFilled: true}},
}

// asksLess lists how b asks less than a: a larger U, R that a's part would not
// need, a shallower slab. SHGC is left out: it rightly eases with cold.
func asksLess(a, b Requirement) (how []string) {
	if a.U != 0 && b.U.IP() > a.U.IP()+cellTolerance {
		how = append(how, "U")
	}
	if b.NotRequired && !a.NotRequired {
		how = append(how, "not required")
	}
	if weakest(b) < weakest(a)-0.0005 {
		how = append(how, "R")
	}
	if b.SlabDepth < a.SlabDepth {
		how = append(how, "depth")
	}
	if a.F != 0 && b.F != 0 && b.F.IP() > a.F.IP()+cellTolerance {
		how = append(how, "F")
	}
	return how
}

// weakest is the least that the options ask: total R, or for a frame wall the
// R of the whole wall by parallel path (rounded as the U-factor line is).
func weakest(r Requirement) float64 {
	if len(r.Options) == 0 {
		return 0
	}
	least := math.Inf(1)
	for _, o := range r.Options {
		v := (o.Cavity + o.Continuous).IP()
		if r.Component == Wall {
			v = 1 / (math.Round(optionU(o)*1000) / 1000)
		}
		least = min(least, v)
	}
	return least
}

// TestColderNeverAsksLess: no exception in any edition, but for the floor note,
// which lets R-19 fill a cavity from zone 5 on and is the same R as zone 4's.
func TestColderNeverAsksLess(t *testing.T) {
	for _, e := range Editions() {
		for _, v := range variants {
			for i := 1; i < len(ladder); i++ {
				warm, cold := mustFor(t, mustZone(t, ladder[i-1]), e, v.c, v.f), mustFor(t, mustZone(t, ladder[i]), e, v.c, v.f)
				if how := asksLess(warm, cold); how != nil {
					t.Errorf("%v %v %+v: zone %s asks less than zone %s: %v", e, v.c, v.f, ladder[i], ladder[i-1], how)
				}
			}
		}
	}
}

// TestLaterNeverAsksLess runs 2009 to 2021. 2024 is left out: it is low
// confidence, and its ceilings went back on purpose.
func TestLaterNeverAsksLess(t *testing.T) {
	type key struct {
		from Edition // the earlier of two neighbours
		c    Component
		zone string
		how  string
	}
	exceptions := map[key]string{
		{Edition2012, Wall, "0A", "U"}: "0.082 became 0.084 with other layers counted, same R",
		{Edition2012, Wall, "1A", "U"}: "as zone 0",
		{Edition2012, Wall, "2A", "U"}: "as zone 0",
		{Edition2012, Wall, "3A", "U"}: "0.057 became 0.060, same R",
		{Edition2012, Wall, "4A", "U"}: "as zone 3",
		{Edition2012, Wall, "4C", "U"}: "as zone 3",
		{Edition2012, Wall, "5A", "U"}: "as zone 3",
		// 2009 sent inside-insulated mass walls to the frame-wall line; 2012 gave them their own.
		{Edition2009, MassWall, "4C", "U"}: "0.057 became 0.065, inside insulation",
		{Edition2009, MassWall, "5A", "U"}: "as marine 4",
		// 1.20 became NR, with 0.50 in the U-factor table.
		{Edition2009, Window, "0A", "not required"}: "1.20 became NR",
		{Edition2009, Window, "1A", "not required"}: "1.20 became NR",
		{Edition2009, Door, "0A", "not required"}:   "1.20 became NR",
		{Edition2009, Door, "1A", "not required"}:   "1.20 became NR",
	}
	used := map[key]bool{}
	es := Editions()
	for i := 1; es[i] <= Edition2021; i++ {
		for _, v := range variants {
			for _, zone := range ladder {
				before, after := mustFor(t, mustZone(t, zone), es[i-1], v.c, v.f), mustFor(t, mustZone(t, zone), es[i], v.c, v.f)
				for _, how := range asksLess(before, after) {
					k := key{es[i-1], v.c, zone, how}
					used[k] = true
					if exceptions[k] == "" {
						t.Errorf("%v zone %s %v %+v asks less than %v: %s", es[i], zone, v.c, v.f, es[i-1], how)
					}
				}
				if v.c.fenestration() && before.SHGC != 0 && (after.SHGC == 0 || after.SHGC > before.SHGC) {
					t.Errorf("%v zone %s %v: SHGC eased from %.2f to %.2f", es[i], zone, v.c, before.SHGC, after.SHGC)
				}
			}
		}
	}
	for k, why := range exceptions {
		if !used[k] {
			t.Errorf("exception %v (%s) no longer happens", k, why)
		}
	}
}
