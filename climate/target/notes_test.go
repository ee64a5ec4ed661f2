package target

import (
	"math"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/rvalue"
)

// hasNote reports a note of the code, applied or not.
func hasNote(notes []Note, code string, applied bool) bool {
	for _, n := range notes {
		if n.Code == code && n.Applied == applied {
			return true
		}
	}
	return false
}

// want is what a footnote makes of a requirement. Empty fields are not looked at.
func TestFootnotes(t *testing.T) {
	steel := func(nominal int) *Steel { return &Steel{Nominal: nominal, Spacing: 16 * rvalue.Inch} }
	for _, c := range []struct {
		name, source string
		zone         string
		e            Edition
		c            Component
		f            Facts
		code         string
		applied      bool
		options      string
		u, depth     float64 // Btu/(h·ft²·°F); ft
	}{
		{name: "heated slab adds R-5", source: "note d, City of Boise", zone: "5B", e: Edition2012, c: Slab, f: Facts{HeatedSlab: true}, code: "heated-slab", applied: true, options: "15", depth: 2},
		{name: "unheated slab says so", source: "note d", zone: "5B", e: Edition2012, c: Slab, code: "heated-slab", options: "10", depth: 2},
		{name: "heated slab in zone 1: R-5 to 2 ft", source: "note d, from memory", zone: "1A", e: Edition2018, c: Slab, f: Facts{HeatedSlab: true}, code: "heated-slab-depth", applied: true, options: "5", depth: 2},
		{name: "2018 and later may ask R-5 below", source: "from memory", zone: "6A", e: Edition2018, c: Slab, f: Facts{HeatedSlab: true}, code: "heated-slab-under", options: "15", depth: 4},

		{name: "raised heel 49 to 38", source: "R402.2.1, City of Everett", zone: "6A", e: Edition2018, c: Ceiling, f: Facts{FullHeightOverPlate: true}, code: "raised-heel", applied: true, options: "38", u: 0.026},
		{name: "raised heel 38 to 30", source: "R402.2.1, City of Everett", zone: "2A", e: Edition2012, c: Ceiling, f: Facts{FullHeightOverPlate: true}, code: "raised-heel", applied: true, options: "30", u: 0.030},
		{name: "raised heel 60 to 49", source: "PNNL drawing 7.7", zone: "7", e: Edition2021, c: Ceiling, f: Facts{FullHeightOverPlate: true}, code: "raised-heel", applied: true, options: "49", u: 0.024},
		{name: "raised heel offered", source: "R402.2.1", zone: "7", e: Edition2021, c: Ceiling, code: "raised-heel", options: "60"},
		{name: "raised heel: one step only", source: "R402.2.1", zone: "2A", e: Edition2021, c: Ceiling, f: Facts{FullHeightOverPlate: true}, code: "raised-heel", applied: true, options: "38"},
		{name: "raised heel is for attics", source: "R402.2.1", zone: "6A", e: Edition2018, c: CathedralCeiling, f: Facts{FullHeightOverPlate: true}, code: "no-attic", options: "49"},

		{name: "no attic, 400 of 2000 ft2", source: "R402.2.2, from memory", zone: "6A", e: Edition2018, c: CathedralCeiling, f: Facts{NoAtticArea: 400 * rvalue.SquareFoot, CeilingArea: 2000 * rvalue.SquareFoot}, code: "no-attic", applied: true, options: "49|30", u: 0.026},
		{name: "no attic, over 20 %", source: "R402.2.2", zone: "6A", e: Edition2018, c: CathedralCeiling, f: Facts{NoAtticArea: 401 * rvalue.SquareFoot, CeilingArea: 2000 * rvalue.SquareFoot}, code: "no-attic", options: "49"},
		{name: "no attic, 500 ft2 is the cap", source: "R402.2.2", zone: "6A", e: Edition2021, c: CathedralCeiling, f: Facts{NoAtticArea: 500 * rvalue.SquareFoot, CeilingArea: 9000 * rvalue.SquareFoot}, code: "no-attic", applied: true, options: "60|30"},
		{name: "no attic, over 500 ft2", source: "R402.2.2", zone: "6A", e: Edition2021, c: CathedralCeiling, f: Facts{NoAtticArea: 501 * rvalue.SquareFoot, CeilingArea: 9000 * rvalue.SquareFoot}, code: "no-attic", options: "60"},
		{name: "no attic 2009 has no share", source: "2009 wording, Wisconsin 322.32", zone: "6A", e: Edition2009, c: CathedralCeiling, f: Facts{NoAtticArea: 500 * rvalue.SquareFoot, CeilingArea: 500 * rvalue.SquareFoot}, code: "no-attic", applied: true, options: "49|30"},
		{name: "no attic, share unknown", source: "R402.2.2", zone: "6A", e: Edition2012, c: CathedralCeiling, f: Facts{NoAtticArea: 100 * rvalue.SquareFoot}, code: "no-attic", options: "49"},

		{name: "floor fills its cavity", source: "note g, City of Boise", zone: "5A", e: Edition2018, c: Floor, f: Facts{CavityFilled: true}, code: "fills-cavity", applied: true, options: "30|19", u: 0.033},
		{name: "floor of marine 4 too", source: "note g", zone: "4C", e: Edition2021, c: Floor, f: Facts{CavityFilled: true}, code: "fills-cavity", applied: true, options: "30|19"},
		{name: "floor note offered", source: "note g", zone: "7", e: Edition2018, c: Floor, code: "fills-cavity", options: "38"},

		{name: "window above 4000 ft", source: "WAC 51-11R-40211", zone: "5B", e: Edition2021, c: Window, f: Facts{Altitude: 4001 * rvalue.Foot}, code: "high-or-windborne", applied: true, u: 0.32},
		{name: "window at 4000 ft", source: "WAC 51-11R-40211: above", zone: "5B", e: Edition2021, c: Window, f: Facts{Altitude: 4000 * rvalue.Foot}, code: "high-or-windborne", u: 0.30},
		{name: "window of marine 4, windborne", source: "WAC 51-11R-40211", zone: "4C", e: Edition2021, c: Window, f: Facts{WindborneDebris: true}, code: "high-or-windborne", applied: true, u: 0.32},
		{name: "door too", source: "vertical fenestration", zone: "8", e: Edition2021, c: Door, f: Facts{WindborneDebris: true}, code: "high-or-windborne", applied: true, u: 0.32},

		{name: "impact-rated, zone 2", source: "2009, from memory", zone: "2A", e: Edition2009, c: Window, f: Facts{ImpactRated: true}, code: "impact-rated", applied: true, u: 0.75},
		{name: "impact-rated, zone 3", source: "2009, from memory", zone: "3A", e: Edition2009, c: Window, f: Facts{ImpactRated: true}, code: "impact-rated", applied: true, u: 0.65},
		{name: "impact-rated offered", source: "2009", zone: "3A", e: Edition2009, c: Window, code: "impact-rated", u: 0.50},

		{name: "warm-humid basement", source: "note f", zone: "3A warm-humid", e: Edition2021, c: BasementWall, code: "warm-humid", applied: true, options: "0", u: 0.360},
		{name: "basement of 3A not warm-humid", source: "note f", zone: "3A", e: Edition2021, c: BasementWall, code: "warm-humid", options: "0+5ci|13", u: 0.091},
		{name: "warm-humid crawl space keeps its R", source: "note f speaks of basements", zone: "3A warm-humid", e: Edition2021, c: CrawlWall, code: "warm-humid", options: "0+5ci|13", u: 0.136},

		{name: "mass wall inside", source: "note i, City of Boise", zone: "6A", e: Edition2018, c: MassWall, f: Facts{InteriorMassInsulation: true}, code: "mass-interior", applied: true, options: "20", u: 0.057},
		{name: "mass wall outside", source: "note i", zone: "6A", e: Edition2018, c: MassWall, code: "mass-interior", options: "15", u: 0.060},

		{name: "2021 erratum", source: "GWC Magazine", zone: "4A", e: Edition2021, c: Wall, code: "first-printing", options: "30|20+5ci|13+10ci|0+20ci"},
		{name: "2012 sheathing", source: "note h, from memory", zone: "6A", e: Edition2012, c: Wall, code: "sheathing-40", options: "20+5ci|13+10ci", u: 0.048},
		{name: "zone 4 without letter", source: "table heads", zone: "4", e: Edition2018, c: Floor, code: "marine-unknown", options: "19"},
		{name: "IRC floor of 2009", source: "PNNL", zone: "7", e: Edition2009, c: Floor, code: "irc-differs", options: "38"},
		{name: "IRC basement of 2009", source: "PNNL", zone: "8", e: Edition2009, c: BasementWall, code: "irc-differs", options: "0+15ci|19"},
		{name: "door is fenestration", source: "definition, from memory", zone: "5A", e: Edition2018, c: Door, code: "door-as-fenestration", applied: true, u: 0.30},

		{name: "steel wall 2018 zone 5", source: "Table R402.2.6, from memory", zone: "5A", e: Edition2018, c: Wall, f: Facts{Steel: steel(0)}, code: "steel-frame", applied: true, options: "0+14ci|13+8.9ci|15+8.5ci|19+7.8ci|21+7.5ci", u: 0.060},
		{name: "steel wall 24 in", source: "Table R402.2.6", zone: "1A", e: Edition2018, c: Wall, f: Facts{Steel: &Steel{Spacing: 610 * rvalue.Millimetre}}, code: "steel-frame", applied: true, options: "0+9.3ci|13+3ci|15+2.4ci"},
		{name: "steel truss", source: "Table R402.2.6", zone: "6A", e: Edition2018, c: Ceiling, f: Facts{Steel: &Steel{Truss: true}, FullHeightOverPlate: true}, code: "steel-frame", applied: true, options: "38+5ci"},
		{name: "steel joist of known depth", source: "Table R402.2.6", zone: "1A", e: Edition2018, c: Ceiling, f: Facts{Steel: steel(10)}, code: "steel-frame", applied: true, options: "49"},
		{name: "steel floor, 2x8", source: "Table R402.2.6", zone: "4A", e: Edition2018, c: Floor, f: Facts{Steel: steel(8)}, code: "steel-frame", applied: true, options: "19+12ci in 2x8 or 2x10"},
		{name: "no steel row for R-60", source: "Table R402.2.6", zone: "6A", e: Edition2021, c: Ceiling, f: Facts{Steel: &Steel{Truss: true}}, code: "steel-frame", applied: true, options: "0", u: 0.024},
		{name: "steel changes no basement", source: "Table R402.2.6", zone: "5A", e: Edition2018, c: BasementWall, f: Facts{Steel: steel(0)}, options: "0+15ci|19"},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := mustFor(t, mustZone(t, c.zone), c.e, c.c, c.f)
			if c.code != "" && !hasNote(r.Notes, c.code, c.applied) {
				t.Errorf("no note %q applied %v (%s): %+v", c.code, c.applied, c.source, r.Notes)
			}
			if c.options != "" && cellText(r.Options) != c.options {
				t.Errorf("options %s, want %s (%s)", cellText(r.Options), c.options, c.source)
			}
			if c.u != 0 && !near(r.U.IP(), c.u) {
				t.Errorf("U %.3f, want %.3f (%s)", r.U.IP(), c.u, c.source)
			}
			if c.depth != 0 && !near(r.SlabDepth.IP(), c.depth) {
				t.Errorf("depth %.3g ft, want %.3g (%s)", r.SlabDepth.IP(), c.depth, c.source)
			}
			for _, n := range r.Notes {
				if n.Source == "" || n.Mark == 0 || n.Text == "" || strings.Contains(n.Text, "%!") {
					t.Errorf("note without text, source or mark: %+v", n)
				}
			}
		})
	}
}

// TestAbsentNotes: notes stay away from where they do not hold.
func TestAbsentNotes(t *testing.T) {
	everything := Facts{HeatedSlab: true, FullHeightOverPlate: true, InteriorMassInsulation: true, CavityFilled: true, WindborneDebris: true, ImpactRated: true, Altitude: 6000 * rvalue.Foot}
	for _, c := range []struct {
		zone string
		e    Edition
		c    Component
		code string
	}{
		{"4A", Edition2021, Window, "high-or-windborne"},
		{"5A", Edition2018, Window, "high-or-windborne"},
		{"5A", Edition2021, Skylight, "high-or-windborne"},
		{"4A", Edition2009, Window, "impact-rated"},
		{"3A", Edition2012, Window, "impact-rated"},
		{"4A", Edition2018, Floor, "fills-cavity"},
		{"5A", Edition2024, Floor, "fills-cavity"},
		{"1A", Edition2018, Ceiling, "raised-heel"},
		{"1A", Edition2018, CathedralCeiling, "no-attic"},
		{"4A", Edition2018, Wall, "marine-unknown"},
		{"4A", Edition2018, Slab, "heated-slab-depth"},
		{"5A", Edition2012, Slab, "heated-slab-under"},
	} {
		r := mustFor(t, mustZone(t, c.zone), c.e, c.c, everything)
		if hasNote(r.Notes, c.code, true) || hasNote(r.Notes, c.code, false) {
			t.Errorf("%v zone %s %v: note %q does not belong here", c.e, c.zone, c.c, c.code)
		}
	}
}

func TestSkylightSHGC(t *testing.T) {
	for _, c := range []struct {
		zone    string
		e       Edition
		want    float64
		applied bool
	}{
		{"1A", Edition2018, 0.30, true},
		{"3A", Edition2021, 0.30, true},
		{"3A", Edition2009, 0.30, false}, // the column itself says 0.30
		{"4A", Edition2018, 0.40, false},
		{"5A", Edition2018, 0, false},
		{"4C", Edition2021, 0, false},
		{"5A", Edition2021, 0.40, false},
		{"3A", Edition2024, 0, false}, // no figure found
	} {
		r := mustFor(t, mustZone(t, c.zone), c.e, Skylight, Facts{})
		if !near(r.SHGC, c.want) || hasNote(r.Notes, "skylight-shgc", true) != c.applied {
			t.Errorf("%v zone %s skylight: SHGC %.2f, notes %v; want %.2f, applied %v", c.e, c.zone, r.SHGC, r.Notes, c.want, c.applied)
		}
		if hasNote(r.Notes, "shgc-unknown", false) != (c.e == Edition2024) {
			t.Errorf("%v zone %s skylight: shgc-unknown is wrong: %v", c.e, c.zone, r.Notes)
		}
	}
}

// TestSlabF: the F-factors are those of Washington's Table A106.1 (seen), 3 ft
// midway, and always say that they are our reading.
func TestSlabF(t *testing.T) {
	for _, c := range []struct {
		zone string
		e    Edition
		want float64 // Btu/(h·ft·°F)
	}{
		{"1A", Edition2018, 0.73},
		{"3A", Edition2018, 0.73},
		{"3A", Edition2021, 0.54},
		{"4A", Edition2018, 0.54},
		{"4A", Edition2021, 0.48},
		{"6A", Edition2009, 0.48},
		{"4A", Edition2024, 0.51},
		{"8", Edition2024, 0.48},
	} {
		r := mustFor(t, mustZone(t, c.zone), c.e, Slab, Facts{})
		if !near(r.F.IP(), c.want) || r.Marks.F != Derived || !hasNote(r.Notes, "f-factor", false) {
			t.Errorf("%v zone %s slab: F %.3f (%v), want %.2f, our reading, with a note", c.e, c.zone, r.F.IP(), r.Marks.F, c.want)
		}
	}
	if r := mustFor(t, mustZone(t, "6A"), Edition2018, Slab, Facts{HeatedSlab: true}); r.F != 0 {
		t.Errorf("heated slab: F %.2f, want none: the table has no such edge", r.F.IP())
	}
	// Every unheated slab of every edition and zone has its reading.
	for _, e := range Editions() {
		for _, zone := range ladder {
			if r := mustFor(t, mustZone(t, zone), e, Slab, Facts{}); r.F == 0 {
				t.Errorf("%v zone %s: no F-factor for %s to %.3g ft", e, zone, cellText(r.Options), r.SlabDepth.IP())
			}
		}
	}
}

func TestForErrors(t *testing.T) {
	good := Zone{Number: 5, Moisture: 'A'}
	for _, c := range []struct {
		name string
		z    Zone
		e    Edition
		c    Component
		f    Facts
		says string
	}{
		{"zone 9", Zone{Number: 9}, Edition2021, Wall, Facts{}, "no zone 9; zones are"},
		{"zone -1", Zone{Number: -1}, Edition2021, Wall, Facts{}, "no zone -1; zones are"},
		{"zone 6C", Zone{Number: 6, Moisture: 'C'}, Edition2021, Wall, Facts{}, "no zone 6C"},
		{"zero edition", good, 0, Wall, Facts{}, `code edition "0" is not known; editions are 2009`},
		{"2006", good, 2006, Wall, Facts{}, `code edition "2006" is not known`},
		{"zero component", good, Edition2021, 0, Facts{}, "no component 0"},
		{"component 12", good, Edition2021, 12, Facts{}, "no component 12"},
		{"altitude NaN", good, Edition2021, Window, Facts{Altitude: rvalue.Length(math.NaN())}, "is not a height"},
		{"area Inf", good, Edition2021, CathedralCeiling, Facts{CeilingArea: rvalue.Area(math.Inf(1))}, "is not an area"},
		{"area negative", good, Edition2021, CathedralCeiling, Facts{NoAtticArea: -1}, "is not an area"},
		{"share over 100 %", good, Edition2021, CathedralCeiling, Facts{NoAtticArea: 2, CeilingArea: 1}, "is larger than all ceilings"},
		{"steel spacing", good, Edition2021, Wall, Facts{Steel: &Steel{Spacing: 12 * rvalue.Inch}}, `"12 in" is not in the table; it has 16 in and 24 in`},
		{"steel spacing NaN", good, Edition2021, Wall, Facts{Steel: &Steel{Spacing: rvalue.Length(math.NaN())}}, "is not in the table"},
	} {
		if _, err := For(c.z, c.e, c.c, c.f); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: error %v, want one that says %q", c.name, err, c.says)
		}
	}
}

func TestAll(t *testing.T) {
	n := Component(0)
	for r, err := range All(mustZone(t, "5A"), Edition2021, Facts{}) {
		n++
		if err != nil || r.Component != n || r.Source == "" {
			t.Errorf("item %d: %v, %v", n, r, err)
		}
	}
	if n != Door {
		t.Errorf("%d components, want %d", n, Door)
	}
	errs := 0
	for _, err := range All(Zone{Number: 9}, Edition2021, Facts{}) {
		if err == nil {
			t.Error("a zone that does not exist gave a requirement")
		}
		errs++
	}
	if errs != 1 {
		t.Errorf("%d errors, want one", errs)
	}
	for range All(mustZone(t, "5A"), Edition2021, Facts{}) {
		break // must not panic when the caller stops
	}
}
