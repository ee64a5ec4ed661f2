package target

import (
	"math"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/rvalue"
)

// cellTolerance is far below half the last printed digit (0.0005 U, 0.005 SHGC):
// a table cell must come back as typed, but for the trip through SI.
const cellTolerance = 1e-9

func near(got, want float64) bool { return math.Abs(got-want) <= cellTolerance }

func TestRValueTable(t *testing.T) {
	cells := 0
	for _, row := range readCSV(t, "code_rvalue.csv") {
		c, f := componentIn(t, row["component"])
		mark, depthMark, split := strings.Cut(row["mark"], "/")
		if !split {
			depthMark = mark
		}
		for _, e := range editionsIn(t, row["editions"]) {
			for _, z := range zonesIn(t, row["zones"]) {
				cells++
				r := mustFor(t, z, e, c, f)
				if got := cellText(r.Options); got != row["options"] {
					t.Errorf("For(%v, %v, %s).Options = %s, want %s", z, e, row["component"], got, row["options"])
				}
				if r.NotRequired != (row["options"] == "0") {
					t.Errorf("For(%v, %v, %s).NotRequired = %v with %s", z, e, row["component"], r.NotRequired, row["options"])
				}
				if r.Marks.R.String() != mark {
					t.Errorf("For(%v, %v, %s).Marks.R = %v, want %s", z, e, row["component"], r.Marks.R, mark)
				}
				if r.Source == "" {
					t.Errorf("For(%v, %v, %s) has no source", z, e, row["component"])
				}
				if c != Slab {
					continue
				}
				if want := floatIn(t, row["depth_ft"]); !near(r.SlabDepth.IP(), want) {
					t.Errorf("For(%v, %v, slab).SlabDepth = %.4g ft, want %g", z, e, r.SlabDepth.IP(), want)
				}
				if r.SlabDepth != 0 && r.Marks.Depth.String() != depthMark {
					t.Errorf("For(%v, %v, slab).Marks.Depth = %v, want %s", z, e, r.Marks.Depth, depthMark)
				}
			}
		}
	}
	t.Logf("%d cells", cells)
}

// TestCarried2024 keeps the rows that no source has from passing as 2024's.
func TestCarried2024(t *testing.T) {
	for _, name := range []string{"mass wall", "mass wall inside", "floor", "basement wall", "crawl-space wall"} {
		c, f := componentIn(t, name)
		for _, zone := range []string{"1A", "3A", "4A", "4C", "6A", "8"} {
			now, before := mustFor(t, mustZone(t, zone), Edition2024, c, f), mustFor(t, mustZone(t, zone), Edition2021, c, f)
			if cellText(now.Options) != cellText(before.Options) || !near(now.U.IP(), before.U.IP()) {
				t.Errorf("%s %s: 2024 %s U %.3f, 2021 %s U %.3f: must be carried over", zone, name,
					cellText(now.Options), now.U.IP(), cellText(before.Options), before.U.IP())
			}
			if now.Marks.U != LowConfidence || !hasNote(now.Notes, "carried-over", true) || !hasNote(now.Notes, "low-confidence", false) {
				t.Errorf("%s %s: 2024 value does not say that it is carried over: %v %v", zone, name, now.Marks, now.Notes)
			}
		}
	}
}

func TestUFactorTable(t *testing.T) {
	cells := 0
	for _, row := range readCSV(t, "code_ufactor.csv") {
		c, f := componentIn(t, row["component"])
		want := floatIn(t, row["u"])
		for _, e := range editionsIn(t, row["editions"]) {
			for _, z := range zonesIn(t, row["zones"]) {
				cells++
				r := mustFor(t, z, e, c, f)
				if !near(r.U.IP(), want) || r.Marks.U.String() != row["mark"] {
					t.Errorf("For(%v, %v, %s).U = %.3f (%v), want %.3f (%s)", z, e, row["component"], r.U.IP(), r.Marks.U, want, row["mark"])
				}
				if !near(r.R().IP(), 1/want) {
					t.Errorf("For(%v, %v, %s).R() = %.4g, want %.4g", z, e, row["component"], r.R().IP(), 1/want)
				}
				if c == Ceiling {
					if cc := mustFor(t, z, e, CathedralCeiling, f); !near(cc.U.IP(), want) {
						t.Errorf("For(%v, %v, ceiling without attic).U = %.3f, want %.3f", z, e, cc.U.IP(), want)
					}
				}
			}
		}
	}
	t.Logf("%d cells", cells)
}

func TestFenestrationTable(t *testing.T) {
	cells := 0
	for _, row := range readCSV(t, "code_fenestration.csv") {
		c, _ := componentIn(t, row["component"])
		for _, e := range editionsIn(t, row["editions"]) {
			for _, z := range zonesIn(t, row["zones"]) {
				cells++
				checkFenestration(t, mustFor(t, z, e, c, Facts{}), row)
				if c == Window && row["quantity"] != "shgc" {
					checkFenestration(t, mustFor(t, z, e, Door, Facts{}), row)
				}
			}
		}
	}
	t.Logf("%d cells", cells)
}

func checkFenestration(t *testing.T, r Requirement, row map[string]string) {
	t.Helper()
	nr := row["value"] == "NR"
	value, mark := r.U.IP(), r.Marks.U
	switch {
	case row["quantity"] == "shgc" && nr:
		if r.SHGC != 0 {
			t.Errorf("For(%v, %v, %v).SHGC = %.2f, want none", r.Zone, r.Edition, r.Component, r.SHGC)
		}
		return
	case row["quantity"] == "shgc":
		value, mark = r.SHGC, r.Marks.SHGC
	case nr:
		if !r.NotRequired || !hasNote(r.Notes, "not-required", false) {
			t.Errorf("For(%v, %v, %v) must require nothing and say so", r.Zone, r.Edition, r.Component)
		}
		return
	case row["quantity"] == "u" && r.NotRequired:
		t.Errorf("For(%v, %v, %v).NotRequired, want %s", r.Zone, r.Edition, r.Component, row["value"])
	}
	if want := floatIn(t, row["value"]); !near(value, want) || mark.String() != row["mark"] {
		t.Errorf("For(%v, %v, %v) %s = %.2f (%v), want %.2f (%s)", r.Zone, r.Edition, r.Component, row["quantity"], value, mark, want, row["mark"])
	}
}

// TestSecondPage holds the tables against rows that another page prints. A row
// with a reason in its "differs" column must differ, so that a change to our
// table toward an amended or misread page is noticed.
func TestSecondPage(t *testing.T) {
	agree, depart := 0, 0
	for _, row := range readCSV(t, "code_secondpage.csv") {
		if row["source"] == "" {
			t.Fatalf("row without a source: %v", row)
		}
		c, f := componentIn(t, row["component"])
		for _, e := range editionsIn(t, row["edition"]) {
			for _, z := range zonesIn(t, row["zones"]) {
				r := mustFor(t, z, e, c, f)
				got := secondPageText(r, row["quantity"])
				if same := got == row["value"]; same != (row["differs"] == "") {
					t.Errorf("%v %v %s %s = %s; %s prints %s; differs: %q", z, e, row["component"], row["quantity"], got, row["source"], row["value"], row["differs"])
				}
				if row["differs"] == "" {
					agree++
				} else {
					depart++
				}
			}
		}
	}
	t.Logf("%d cells agree, %d depart for the reasons in the file", agree, depart)
}

// secondPageText prints one figure of r as the file does.
func secondPageText(r Requirement, quantity string) string {
	decimals := 3
	if r.Component.fenestration() {
		decimals = 2
	}
	switch quantity {
	case "u":
		return fixed(r.U.IP(), decimals)
	case "shgc":
		if r.SHGC == 0 {
			return "NR"
		}
		return fixed(r.SHGC, 2)
	case "depth":
		return fixed(r.SlabDepth.IP(), 0)
	case "r_first":
		return cellText(r.Options[:1])
	}
	return cellText(r.Options)
}

func TestSteelTable(t *testing.T) {
	uses := map[string]steelUse{"truss": steelTruss, "joist": steelJoist, "wall16": steelWall16, "wall24": steelWall24, "floor": steelFloor}
	want := map[string][]string{} // by use and wood requirement
	for _, row := range readCSV(t, "code_steel.csv") {
		key := row["use"] + " " + row["wood"]
		in := strings.TrimSuffix(row["steel"], ".0") // "5.0" prints as "5"
		if row["nominal_joists"] != "" {
			in += " in " + row["nominal_joists"]
		}
		want[key] = append(want[key], in)
	}
	if len(want) != len(steelRows) {
		t.Errorf("%d rows, want %d", len(steelRows), len(want))
	}
	for key, alts := range want {
		use, wood, _ := strings.Cut(key, " ")
		cavity, ci, _ := strings.Cut(wood, "+")
		p := pair{cavity: floatIn(t, cavity)}
		if ci != "" {
			p.ci = floatIn(t, ci)
		}
		var got []string
		for _, o := range steelOptions([]Option{option(p)}, uses[use], 0) {
			s := strings.NewReplacer("R-", "", "ci", "", "2x", "", ",", "", "or ", "").Replace(o.String())
			got = append(got, s)
		}
		if strings.Join(got, "; ") != strings.Join(alts, "; ") {
			t.Errorf("steel for %s = %q, want %q", key, got, alts)
		}
	}
}

func TestZoneZeroReadsZoneOne(t *testing.T) {
	for _, e := range Editions() {
		for c := Ceiling; c <= Door; c++ {
			zero, one := mustFor(t, mustZone(t, "0A"), e, c, Facts{}), mustFor(t, mustZone(t, "1A"), e, c, Facts{})
			if zero.U != one.U || cellText(zero.Options) != cellText(one.Options) || !near(zero.SHGC, one.SHGC) {
				t.Errorf("%v %v: zone 0 differs from zone 1", e, c)
			}
			if !hasNote(zero.Notes, "zone-0", true) {
				t.Errorf("%v %v: no note on zone 0", e, c)
			}
		}
	}
}

// TestTablesAreNotShared guards purity: a caller may change what it got.
func TestTablesAreNotShared(t *testing.T) {
	z := mustZone(t, "5A")
	for _, f := range []Facts{{}, {Steel: &Steel{}}} {
		r := mustFor(t, z, Edition2018, Floor, f)
		before := cellText(r.Options)
		for i := range r.Options {
			r.Options[i].Cavity = 99 * rvalue.RIP
			for j := range r.Options[i].Joists {
				r.Options[i].Joists[j] = 99
			}
		}
		if again := cellText(mustFor(t, z, Edition2018, Floor, f).Options); again != before {
			t.Errorf("options became %s after a caller changed its copy, want %s", again, before)
		}
	}
}
