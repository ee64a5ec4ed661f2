package climate

import (
	"crypto/sha256"
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/coldseam/coldseam/testdata"
)

// TestTable reads the whole embedded table, which the look-up trusts.
func TestTable(t *testing.T) {
	regimes := [...]string{"A", "AB", "AB", "ABC", "ABC", "ABC", "AB", "\x00", "\x00"}
	numbers := map[int]bool{}
	for c := range All {
		if numbers[c.FIPS] {
			t.Errorf("%v: number %s twice", c, c.Code())
		}
		numbers[c.FIPS] = true
		for _, z := range [...]Zone{c.Zone15, c.Zone21} {
			if z.Number < 1 || z.Number > 8 || strings.IndexByte(regimes[z.Number], z.Moisture) < 0 {
				t.Errorf("%v: no zone %v", c, z)
			}
			// Some dry counties by the Rio Grande are in the region too.
			if z.WarmHumid && z.Number > 3 || z.WarmHumid && z.Moisture != 'A' && z.Short() != "2B" {
				t.Errorf("%v: zone %v cannot be warm-humid", c, z)
			}
		}
		// Guam and the Marianas lie west of the date line, Samoa south of the equator.
		if !(c.Lat > -15 && c.Lat < 72) || !(c.Lon > -180 && c.Lon < -64 || c.Lon > 144 && c.Lon < 146) {
			t.Errorf("%v lies at %g, %g", c, c.Lat, c.Lon)
		}
	}
	if len(numbers) != 3231 {
		t.Errorf("%d counties, want the 3231 of the Census list of 2017", len(numbers))
	}
	for i := range states {
		s := &states[i]
		if i > 0 && states[i-1].code >= s.code {
			t.Errorf("state %s is out of order", s.code)
		}
		var last key
		s.each(func(c County, folded *key) {
			if last.compare(folded) > 0 {
				t.Errorf("%v is out of order", c)
			}
			last = *folded
			if folded.n == len(folded.b) {
				t.Errorf("%v: name is cut", c)
			}
		})
	}
}

// TestFindsEveryCounty looks every county up by its name, its code and its number.
func TestFindsEveryCounty(t *testing.T) {
	for c := range All {
		for _, text := range [...]string{c.String(), c.Code(), strings.ToUpper(c.String()), strings.ReplaceAll(c.String(), "St. ", "Saint ")} {
			got, err := Parse(text)
			if err != nil {
				t.Errorf("Parse(%q): %v", text, err)
				continue
			}
			if diff := cmp.Diff(c, got); diff != "" {
				t.Errorf("Parse(%q): (-want +got)\n%s", text, diff)
			}
		}
	}
}

// TestMoved2021 holds the table against a list of the counties that changed zone.
func TestMoved2021(t *testing.T) {
	var got []string
	for c := range All {
		if c.Zone15 != c.Zone21 {
			got = append(got, strings.Join([]string{c.State, c.Name, c.Zone15.Short(), c.Zone21.Short()}, "|"))
			if c.Zone15.Number == c.Zone21.Number {
				t.Errorf("%v: only the letter or the mark changed: %v, %v", c, c.Zone15, c.Zone21)
			}
		}
	}
	var want []string
	for _, row := range testdata.Read(t, "climate_moved.csv") {
		for county := range strings.SplitSeq(row["counties"], ";") {
			want = append(want, strings.Join([]string{row["state"], county, row["from"], row["to"]}, "|"))
		}
	}
	slices.Sort(got)
	slices.Sort(want)
	if len(want) != 373 {
		t.Errorf("the list has %d counties, want 373", len(want))
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("counties that moved: (-want +got)\n%s", diff)
	}
}

// TestZoneCounts holds the number of counties in each zone against a count made
// independently from the same source.
func TestZoneCounts(t *testing.T) {
	// Reference notes, counted in the PNNL table: 3141 records and Bristol, without
	// the territories and Kusilvak.
	want15 := map[string]int{
		"1A": 8, "2A": 222, "2B": 20, "3A": 577, "3B": 109, "3C": 14, "4A": 737, "4B": 57, "4C": 38,
		"5A": 617, "5B": 150, "6A": 337, "6B": 125, "7": 121, "8": 9,
	}
	want21 := map[string]int{
		"1A": 12, "2A": 239, "2B": 20, "3A": 637, "3B": 110, "3C": 14, "4A": 718, "4B": 66, "4C": 34,
		"5A": 637, "5B": 146, "5C": 7, "6A": 306, "6B": 119, "7": 69, "8": 7,
	}
	got15, got21 := map[string]int{}, map[string]int{}
	marked := 0
	for c := range All {
		if c.FIPS >= 60000 || c.FIPS == 2158 {
			continue
		}
		got15[c.Zone15.Short()]++
		got21[c.Zone21.Short()]++
		if c.Zone21.WarmHumid {
			marked++
		}
		if c.Zone15.WarmHumid != c.Zone21.WarmHumid || c.State == "FL" && !c.Zone21.WarmHumid {
			// All of Florida is marked in the code's own list, which was seen.
			t.Errorf("%v: zones %v and %v", c, c.Zone15, c.Zone21)
		}
	}
	if diff := cmp.Diff(want15, got15); diff != "" {
		t.Errorf("zones to 2018: (-want +got)\n%s", diff)
	}
	if diff := cmp.Diff(want21, got21); diff != "" {
		t.Errorf("zones since 2021: (-want +got)\n%s", diff)
	}
	if marked != 436 {
		t.Errorf("%d counties are warm-humid, want the 436 of the region Hot-Humid", marked)
	}
}

func TestCountyZone(t *testing.T) {
	c, err := Parse("Hall, GA") // 4A until 2018, 3A since
	if err != nil {
		t.Fatal(err)
	}
	for _, edition := range editions {
		want := "3A"
		if edition <= 2018 {
			want = "4A"
		}
		if got, err := c.Zone(edition); err != nil || got.String() != want {
			t.Errorf("Zone(%d) = %v, %v, want %s", edition, got, err, want)
		}
	}
	for _, edition := range [...]int{0, 2003, 2010, 2016, 2020, 2027} {
		if _, err := c.Zone(edition); err == nil || !strings.Contains(err.Error(), "2006 2009 2012 2015 2018 2021 2024") {
			t.Errorf("Zone(%d): error %v, want one that lists the editions", edition, err)
		}
	}
}

func TestZoneString(t *testing.T) {
	for z, want := range map[Zone]string{
		{Number: 6, Moisture: 'A'}: "6A",
		{Number: 7}:                "7",
		{Number: 2, Moisture: 'A', WarmHumid: true}: "2A warm-humid",
	} {
		if got := z.String(); got != want {
			t.Errorf("%#v prints %q, want %q", z, got, want)
		}
	}
}

// TestRecordedList holds the table against what testdata/climate_counties.go found
// when it last fetched an independent list of the counties.
func TestRecordedList(t *testing.T) {
	raw, err := os.ReadFile("../testdata/climate_counties.md")
	if err != nil {
		t.Fatal(err)
	}
	record := string(raw)
	var lines []string
	count := map[string]int{}
	for c := range All {
		lines = append(lines, c.Code()+" "+c.Name+"\n")
		count[c.Code()[:2]]++
	}
	slices.Sort(lines)
	want := []string{
		"- counties in the list: 3231\n", "- in the list but not in the table: 0\n",
		"- in the table but not in the list: 0\n", "- named otherwise: 0\n",
		fmt.Sprintf(": %x\n", sha256.Sum256([]byte(strings.Join(lines, "")))),
	}
	for code, n := range count {
		want = append(want, fmt.Sprintf("| %s | %d |\n", code, n))
	}
	for _, line := range want {
		if !strings.Contains(record, line) {
			t.Errorf("the recorded list has no line %q", line)
		}
	}
}
