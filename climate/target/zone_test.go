package target

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

var zoneTexts = []struct {
	in   string
	want Zone
}{
	{"6A", Zone{Number: 6, Moisture: 'A'}},
	{"6a", Zone{Number: 6, Moisture: 'A'}},
	{" zone 6A ", Zone{Number: 6, Moisture: 'A'}},
	{"Climate Zone 6 A", Zone{Number: 6, Moisture: 'A'}},
	{"zone-5B", Zone{Number: 5, Moisture: 'B'}},
	{"5", Zone{Number: 5}},
	{"4C", Zone{Number: 4, Moisture: 'C'}},
	{"marine 4", Zone{Number: 4, Moisture: 'C'}},
	{"4 marine", Zone{Number: 4, Moisture: 'C'}},
	{"4C marine", Zone{Number: 4, Moisture: 'C'}},
	{"2 moist", Zone{Number: 2, Moisture: 'A'}},
	{"2 dry", Zone{Number: 2, Moisture: 'B'}},
	{"7", Zone{Number: 7}},
	{"8", Zone{Number: 8}},
	{"0B", Zone{Number: 0, Moisture: 'B'}},
	{"0", Zone{}},
	{"3A*", Zone{Number: 3, Moisture: 'A', WarmHumid: true}},
	{"3A warm-humid", Zone{Number: 3, Moisture: 'A', WarmHumid: true}},
	{"3A Warm Humid", Zone{Number: 3, Moisture: 'A', WarmHumid: true}},
}

func TestParseZone(t *testing.T) {
	for _, c := range zoneTexts {
		got, err := ParseZone(c.in)
		if err != nil {
			t.Errorf("ParseZone(%q): %v", c.in, err)
		}
		if diff := cmp.Diff(c.want, got); diff != "" {
			t.Errorf("ParseZone(%q): (-want +got)\n%s", c.in, diff)
		}
	}
}

func TestParseZoneErrors(t *testing.T) {
	for _, c := range []struct{ in, says string }{
		{"", "a number from 0 to 8 is missing"},
		{"zone", "a number from 0 to 8 is missing"},
		{"A", "a number from 0 to 8 is missing"},
		{"9", "no zone 9; zones are 0A 0B"},
		{"9A", "no zone 9; zones are 0A 0B"},
		{"6C", "no zone 6C; zone 6 has A, B"},
		{"marine 2", "no zone 2C; zone 2 has A, B"},
		{"7A", `zone 7 has no moisture letter; write "7"`},
		{"8 dry", `zone 8 has no moisture letter; write "8"`},
		{"4D", `"4d" is not a zone`},
		{"45", `"45" is not a zone`},
		{"4AB", `"4ab" is not understood`},
		{"4A marine", "moisture given as both A and C"},
		{"4 4", `"4" stands twice`},
		{"4 5", `"5" is not understood`},
		{"5A (moist)", `"(moist)" is not understood`},
		{"-5", ""}, // a hyphen separates words, so this is zone 5
		{"five", `"five" is not understood`},
		{"5A warm", `write "warm-humid" in full`},
		{"5A*", "warm-humid counties lie in zones 0A, 1A, 2A and 3A only"},
		{"4A*", "warm-humid counties lie in zones 0A, 1A, 2A and 3A only"},
		{"3B*", "warm-humid counties lie in zones 0A, 1A, 2A and 3A only"},
		{"６A", "is not understood"},
	} {
		_, err := ParseZone(c.in)
		switch {
		case c.says == "" && err != nil:
			t.Errorf("ParseZone(%q): %v", c.in, err)
		case c.says != "" && err == nil:
			t.Errorf("ParseZone(%q): no error, want one that says %q", c.in, c.says)
		case c.says != "" && !strings.Contains(err.Error(), c.says):
			t.Errorf("ParseZone(%q): %v; want it to say %q", c.in, err, c.says)
		}
	}
}

func TestZoneString(t *testing.T) {
	for _, c := range []struct {
		z    Zone
		want string
	}{
		{Zone{Number: 6, Moisture: 'A'}, "6A"},
		{Zone{Number: 7}, "7"},
		{Zone{Number: 5}, "5"},
		{Zone{Number: 3, Moisture: 'A', WarmHumid: true}, "3A warm-humid"},
		{Zone{Number: 9}, `Zone(9,'\x00')`},
		{Zone{Number: -1, Moisture: 'A'}, `Zone(-1,'A')`},
		{Zone{Number: 7, Moisture: 'A'}, `Zone(7,'A')`},
	} {
		if got := c.z.String(); got != c.want {
			t.Errorf("%#v prints %q, want %q", c.z, got, c.want)
		}
	}
}

func TestMoistureKnown(t *testing.T) {
	for in, want := range map[string]bool{"5": false, "5A": true, "7": true, "8": true, "4C": true, "0": false} {
		if got := mustZone(t, in).MoistureKnown(); got != want {
			t.Errorf("zone %s: MoistureKnown() = %v, want %v", in, got, want)
		}
	}
}

func TestParseEdition(t *testing.T) {
	for in, want := range map[string]Edition{
		"2021": Edition2021, "IECC 2021": Edition2021, "iecc2009": Edition2009, " 2018 IECC ": Edition2018, "2024": Edition2024,
	} {
		if got, err := ParseEdition(in); err != nil || got != want {
			t.Errorf("ParseEdition(%q) = %v, %v; want %v", in, got, err, want)
		}
	}
	for _, in := range []string{"", "2006", "21", "2021.0", "IECC", "IRC 2021", "2021 IECC IECC", "+2021"} {
		if got, err := ParseEdition(in); err == nil || !strings.Contains(err.Error(), editionsThatExist) {
			t.Errorf("ParseEdition(%q) = %v, %v; want an error that lists the editions", in, got, err)
		}
	}
}

func TestLowConfidence(t *testing.T) {
	for _, e := range Editions() {
		reason, low := e.LowConfidence()
		if low != (e == Edition2024) || low != (reason != "") {
			t.Errorf("%v.LowConfidence() = %q, %v", e, reason, low)
		}
	}
	if _, low := Default.LowConfidence(); low {
		t.Error("the default edition is a low-confidence one")
	}
}

// FuzzParseZone: whatever is accepted exists, and prints as text that reads
// back the same.
func FuzzParseZone(f *testing.F) {
	for _, c := range zoneTexts {
		f.Add(c.in)
	}
	for _, s := range []string{"", "9", "7A", "4D", "4A marine", "*", "-", "3A**", "6\x00"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		z, err := ParseZone(s)
		if err != nil {
			if !strings.HasPrefix(err.Error(), "climate zone ") {
				t.Errorf("ParseZone(%q): error does not name the value: %v", s, err)
			}
			return
		}
		if err := z.check(); err != nil {
			t.Errorf("ParseZone(%q) = %v: %v", s, z, err)
		}
		if again, err := ParseZone(z.String()); err != nil || again != z {
			t.Errorf("ParseZone(%q) = %v, reads back as %v, %v", s, z, again, err)
		}
		if _, err := For(z, Default, Wall, Facts{}); err != nil {
			t.Errorf("ParseZone(%q) = %v: %v", s, z, err)
		}
	})
}

// FuzzParseEdition: an accepted edition is known and reads back the same.
func FuzzParseEdition(f *testing.F) {
	for _, s := range []string{"2021", "IECC 2021", "2018 iecc", "", "2006", "iecc"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		e, err := ParseEdition(s)
		if err != nil {
			return
		}
		if again, err := ParseEdition(e.String()); err != nil || again != e {
			t.Errorf("ParseEdition(%q) = %v, reads back as %v, %v", s, e, again, err)
		}
	})
}
