package target

import (
	"errors"
	"strings"
	"testing"
)

// adviceText prints an advice in the CSV's form: "fill|5-10ci", "15ci|19".
func adviceText(a Advice) string {
	var parts []string
	if a.FillCavity {
		parts = append(parts, "fill")
	}
	for _, add := range a.Add {
		s := number(add.Min)
		if add.Max > add.Min {
			s += "-" + number(add.Max)
		}
		if add.Continuous {
			s += "ci"
		}
		parts = append(parts, s)
	}
	return strings.Join(parts, "|")
}

func existingIn(t *testing.T, s string) Existing {
	t.Helper()
	for x := Bare; x <= InsulatedWall; x++ {
		if x.String() == s {
			return x
		}
	}
	t.Fatalf("no existing state %q", s)
	return 0
}

func TestAdvice(t *testing.T) {
	for _, table := range []struct {
		file   string
		advise func(Zone, Component, Existing) (Advice, error)
	}{
		{"advice_current.csv", Advise},
		{"advice_older.csv", AdviseBefore2021},
	} {
		cells := 0
		for _, row := range readCSV(t, table.file) {
			c, _ := componentIn(t, row["component"])
			x := existingIn(t, row["existing"])
			for _, z := range zonesIn(t, row["zones"]) {
				cells++
				a, err := table.advise(z, c, x)
				if err != nil {
					t.Errorf("%s: %v %v %v: %v", table.file, z, c, x, err)
					continue
				}
				if got := adviceText(a); got != row["add"] {
					t.Errorf("%s: %v %v %v: %q, want %q", table.file, z, c, x, got, row["add"])
				}
				if hasNote(a.Notes, "zone-0", true) != (z.Number == 0) {
					t.Errorf("%s: %v %v %v: notes %v, zone 0 must be said and nothing else", table.file, z, c, x, a.Notes)
				}
				if a.Mark.String() != row["mark"] || a.Source == "" || a.Text == "" {
					t.Errorf("%s: %v %v %v: mark %v, source %q, text %q; want mark %s", table.file, z, c, x, a.Mark, a.Source, a.Text, row["mark"])
				}
			}
		}
		t.Logf("%s: %d cells", table.file, cells)
	}
}

// TestMarineTrap: in the current advice the floor and the basement row part 4A
// and 4B from 4C, which goes with 5; attics and walls do not part at all.
func TestMarineTrap(t *testing.T) {
	text := func(zone string, c Component, x Existing) string {
		t.Helper()
		a, err := Advise(mustZone(t, zone), c, x)
		if err != nil {
			t.Fatal(err)
		}
		return adviceText(a)
	}
	for _, c := range []struct {
		c          Component
		x          Existing
		parts      bool
		inland, on string // 4A, 4B; 4C
	}{
		{Ceiling, Bare, false, "60", "60"},
		{Ceiling, ThreeToFourInches, false, "49", "49"},
		{Wall, Bare, false, "fill|5-10ci", "fill|5-10ci"},
		{Wall, InsulatedWall, false, "10ci", "10ci"},
		{Floor, Bare, true, "19", "30"},
		{BasementWall, Bare, true, "10ci|13", "15ci|19"},
		{CrawlWall, Bare, true, "10ci|13", "15ci|19"},
	} {
		for zone, want := range map[string]string{"4A": c.inland, "4B": c.inland, "4": c.inland, "4C": c.on, "5A": c.on, "5C": c.on} {
			if got := text(zone, c.c, c.x); got != want {
				t.Errorf("Advise(%s, %v, %v) = %s, want %s", zone, c.c, c.x, got, want)
			}
		}
		a, err := Advise(mustZone(t, "4"), c.c, c.x)
		if err != nil || hasNote(a.Notes, "marine-unknown", false) != c.parts {
			t.Errorf("Advise(4, %v, %v): notes %v, %v; a note on the missing letter: want %v", c.c, c.x, a.Notes, err, c.parts)
		}
	}
}

// TestAdviceAsksWhatTheCodeAsks: the current advice is said to rest on the 2021
// code. A bare attic, a floor and a basement wall must agree with its R-values.
func TestAdviceAsksWhatTheCodeAsks(t *testing.T) {
	for _, zone := range ladder {
		z := mustZone(t, zone)
		for _, c := range []Component{Ceiling, Floor, BasementWall, CrawlWall} {
			a, err := Advise(z, c, Bare)
			if err != nil {
				t.Fatal(err)
			}
			var added []Option
			for _, add := range a.Add {
				o := Option{Cavity: add.Min}
				if add.Continuous {
					o = Option{Continuous: add.Min}
				}
				added = append(added, o)
			}
			// The advice leaves out the third way of 2021, 13+5ci.
			want := cellText(mustFor(t, z, Edition2021, c, Facts{}).Options)
			want = strings.TrimSuffix(want, "|13+5ci")
			if got := cellText(added); got != want {
				t.Errorf("zone %s %v: advice %s, code %s", zone, c, got, want)
			}
		}
	}
}

func TestAdviceErrors(t *testing.T) {
	z := mustZone(t, "5A")
	for _, c := range []struct {
		c    Component
		x    Existing
		says string
	}{
		{Window, Bare, "it covers attics"},
		{Door, Bare, "it covers attics"},
		{Slab, Bare, "it covers attics"},
		{MassWall, Bare, "it covers attics"},
		{CathedralCeiling, Bare, "it covers attics"},
		{Floor, ThreeToFourInches, "uninsulated one only"},
		{BasementWall, InsulatedWall, "uninsulated one only"},
		{Ceiling, InsulatedWall, `it covers "uninsulated" and "3 to 4 in of insulation"`},
		{Wall, ThreeToFourInches, `it covers "uninsulated" and "insulated 2x4 wall"`},
		{Wall, Existing(9), "Existing(9)"},
	} {
		for _, advise := range []func(Zone, Component, Existing) (Advice, error){Advise, AdviseBefore2021} {
			_, err := advise(z, c.c, c.x)
			if !errors.Is(err, ErrNoAdvice) || !strings.Contains(err.Error(), c.says) {
				t.Errorf("advice for %v, %v: error %v, want ErrNoAdvice that says %q", c.c, c.x, err, c.says)
			}
		}
	}
	if _, err := AdviseBefore2021(z, BasementWall, Bare); !errors.Is(err, ErrNoAdvice) {
		t.Errorf("older advice for a basement wall: %v, want ErrNoAdvice", err)
	}
	if _, err := Advise(Zone{Number: 9}, Ceiling, Bare); err == nil || errors.Is(err, ErrNoAdvice) {
		t.Errorf("zone 9: %v, want an error about the zone", err)
	}
	if _, err := Advise(z, 0, Bare); err == nil || errors.Is(err, ErrNoAdvice) {
		t.Errorf("component 0: %v, want an error about the component", err)
	}
}

func TestTightness(t *testing.T) {
	for _, row := range readCSV(t, "code_tightness.csv") {
		for _, e := range editionsIn(t, row["editions"]) {
			for _, z := range zonesIn(t, row["zones"]) {
				got, note := Tightness(z, e)
				if want := floatIn(t, row["ach50"]); !near(got, want) || !strings.Contains(note, row["mark"]) {
					t.Errorf("Tightness(%v, %v) = %g, %q; want %g, %s", z, e, got, note, want, row["mark"])
				}
			}
		}
	}
	for _, c := range []struct {
		z Zone
		e Edition
	}{{Zone{Number: 9}, Edition2021}, {Zone{Number: 5}, 2006}} {
		if got, note := Tightness(c.z, c.e); got != 0 || note == "" {
			t.Errorf("Tightness(%v, %v) = %g, %q; want 0 and a reason", c.z, c.e, got, note)
		}
	}
}
