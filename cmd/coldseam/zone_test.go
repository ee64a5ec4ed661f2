package main

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"
)

// zoneJSON is what the tests read of coldseam zone --json.
type zoneJSON struct {
	Place struct {
		Station struct{ Remarks []string }
		Design  struct {
			Doubt struct{ SI, IP float64 }
		} `json:"heating_design"`
	}
	Editions []struct{ Requirements []zoneRequirement }
}

type zoneRequirement struct {
	Component string
	U         struct{ SI, IP float64 }
	Notes     []struct {
		Code, Text, Source, Was string
		Applied                 bool
	}
}

func askZone(t *testing.T, args ...string) (out zoneJSON) {
	t.Helper()
	text, stderr, code := call(t, "", append([]string{"zone", "--json"}, args...)...)
	if code != 0 {
		t.Fatalf("coldseam zone %q exits %d and says %q", args, code, stderr)
	}
	if err := json.Unmarshal([]byte(text), &out); err != nil {
		t.Fatal(err)
	}
	return out
}

// TestZoneFootnotes: what the code's footnotes say is part of the answer.
func TestZoneFootnotes(t *testing.T) {
	for _, c := range []struct {
		component, code string
		applied         bool
	}{
		{"ceiling", "raised-heel", false},
		{"ceiling without attic", "no-attic", false},
		{"slab edge", "heated-slab", false},
		{"window", "exempt-glazing", false},
		{"door", "door-as-fenestration", true},
	} {
		found := false
		for _, r := range askZone(t, "6A", "--edition", "2021").Editions[0].Requirements {
			for _, n := range r.Notes {
				if r.Component == c.component && n.Code == c.code {
					found = n.Applied == c.applied && n.Text != "" && n.Source != "" && n.Was != ""
				}
			}
		}
		if !found {
			t.Errorf("%s has no note %q, applied %t, with text and source", c.component, c.code, c.applied)
		}
	}
	text, _, _ := call(t, "", "zone", "6A")
	if n := strings.Count(text, "R-38 does for R-49"); n != 1 {
		t.Errorf("the note of five editions is printed %d times, once is enough", n)
	}
}

// TestZoneAltitude: above 4000 ft the edition of 2021 asks less of windows.
func TestZoneAltitude(t *testing.T) {
	for _, c := range []struct {
		args []string
		u    float64
	}{
		{[]string{"Denver, CO"}, 0.30},
		{[]string{"Denver, CO", "--altitude", "5280 ft"}, 0.32},
	} {
		e := askZone(t, append(c.args, "--edition", "2021")...).Editions[0]
		i := slices.IndexFunc(e.Requirements, func(r zoneRequirement) bool { return r.Component == "window" })
		if got := e.Requirements[i].U.IP; got != c.u {
			t.Errorf("coldseam zone %q asks %v of windows, want %v", c.args, got, c.u)
		}
	}
}

// TestZoneAltitudeDoubt: an altitude that no station near has makes the cold day less
// sure, and the answer says what was done.
func TestZoneAltitudeDoubt(t *testing.T) {
	plain := askZone(t, "St. Louis County, MN").Place
	high := askZone(t, "St. Louis County, MN", "--altitude", "9000 ft").Place
	if !(high.Design.Doubt.SI > plain.Design.Doubt.SI) {
		t.Errorf("±%v K at 9000 ft, ±%v K at the county's default", high.Design.Doubt.SI, plain.Design.Doubt.SI)
	}
	if text := strings.Join(high.Station.Remarks, " "); !strings.Contains(text, "would be Duluth, MN, at 1428 ft") {
		t.Errorf("the station was changed without a word: %q", text)
	}
	text, _, _ := call(t, "", "zone", "Inyo, CA", "--altitude", "-282 ft")
	if !strings.Contains(text, "altitude given, -282 ft") {
		t.Errorf("Death Valley's altitude is not taken:\n%s", text)
	}
}
