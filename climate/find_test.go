package climate

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// found are places as people write them, and the county meant.
var found = []struct{ text, want, note string }{
	{text: "St. Louis County, MN", want: "27137"},
	{text: "Saint Louis county,  minnesota ", want: "27137"},
	{text: "st louis co mn", want: "27137"},
	{text: "ST. LOUIS COUNTY MINNESOTA", want: "27137"},
	{text: "County of St. Louis, MN", want: "27137"},
	{text: "27137", want: "27137"},
	{text: "1001", want: "01001", note: "stands in"}, // spreadsheets drop the zero; zone 3A
	{text: "Orleans Parish, LA", want: "22071"},
	{text: "Orleans County, LA", want: "22071"},
	{text: "Orleans, LA", want: "22071"},
	{text: "Saint John the Baptist, LA", want: "22095"},
	{text: "Dona Ana, NM", want: "35013"},
	{text: "Doña Ana County, NM", want: "35013"},
	{text: "Don\u0303a Ana County, NM", want: "35013"}, // the tilde a mark of its own
	{text: "Mayaguez, PR", want: "72097", note: "from memory"},
	{text: "Prince Georges, MD", want: "24033"},
	{text: "Prince George’s County, MD", want: "24033"},
	{text: "Queen Anne's County, MD", want: "24035"},
	{text: "La Salle, IL", want: "17099"},
	{text: "LaSalle, IL", want: "17099"},
	{text: "De Kalb, IL", want: "17037"},
	{text: "Saint Genevieve, MO", want: "29186"},
	{text: "Miami Dade, FL", want: "12086"},
	{text: "Dade County, FL", want: "12086", note: "Dade until 1997"},
	{text: "Baltimore city, MD", want: "24510"},
	{text: "City of Baltimore, MD", want: "24510"},
	{text: "Baltimore County, MD", want: "24005"},
	{text: "St. Louis city, MO", want: "29510"},
	{text: "Richmond city, VA", want: "51760"},
	{text: "Richmond County, VA", want: "51159"},
	{text: "Carson City, NV", want: "32510"},
	{text: "Charles City, VA", want: "51036"},
	{text: "James City County, VA", want: "51095"},
	{text: "Falls Church, VA", want: "51610"},
	{text: "Juneau City and Borough, AK", want: "02110"},
	{text: "Aleutians West Census Area, AK", want: "02016", note: "zone 8 before 2021"},
	{text: "Kodiak Island, AK", want: "02150"},
	{text: "Rock Island, IL", want: "17161"},
	{text: "Island, WA", want: "53029"},
	{text: "District of Columbia, D.C.", want: "11001"},
	{text: "Washington, DC", want: "11001", note: "town of Washington"},
	{text: "St. Croix, US Virgin Islands", want: "78010", note: "from memory"},
	{text: "St. Croix, Virgin Islands", want: "78010", note: "from memory"},
	{text: "Hawaii, HI", want: "15001"},
	{text: "Kauaʻi, HI", want: "15007"},
	{text: "Brooklyn, NY", want: "36047", note: "Kings County"},
	{text: "The Bronx, NY", want: "36005"},
	{text: "Bedford city, VA", want: "51019", note: "since 2013"},
	{text: "51515", want: "51019", note: "since 2013"},
	{text: "09110", want: "09003", note: "Capitol Planning Region"},
	{text: "Naugatuck Valley Planning Region, CT", want: "09009", note: "Naugatuck"},
	{text: "02063", want: "02261", note: "since 2019"},
	{text: "Shannon, SD", want: "46102", note: "until 2015"},
	{text: "Wade Hampton, AK", want: "02158", note: "until 2015"},
	{text: "Duluth, MN", want: "27137", note: "town of Duluth"},
	{text: "Atlanta, GA", want: "13121", note: "town of Atlanta"},
	{text: "Sault Sainte Marie, MI", want: "26033", note: "town of"},
	{text: "Houston County, TX", want: "48225"},
	{text: "Boston, MA", want: "25025", note: "town of Boston"},
	{text: "Shelby, TN", want: "47157", note: "stands in for the code's own list"}, // zone 3A
	{text: "Ramsey County North Dakota", want: "38071"},
}

func TestParse(t *testing.T) {
	for _, row := range found {
		got, err := Parse(row.text)
		if err != nil {
			t.Errorf("Parse(%q): %v", row.text, err)
			continue
		}
		if got.Code() != row.want || !strings.Contains(got.Note, row.note) || row.note == "" && got.Note != "" {
			t.Errorf("Parse(%q) = %v %s, note %q; want %s with a note of %q", row.text, got, got.Code(), got.Note, row.want, row.note)
		}
	}
}

// lost are places that no one county answers to.
var lost = []struct {
	text, problem string
	choices       []string // nearest first
	ambiguous     bool
}{
	{text: "", problem: "a place is missing"},
	{text: "  ", problem: "a place is missing"},
	{text: ",", problem: "a state is missing"},
	{text: ", MN", problem: "a county is missing"},
	{text: "Hennepin,", problem: "a state is missing"},
	{text: "MN", problem: `that is a state, and a county is missing; write "COUNTY, MN"`},
	{text: "minnesota", problem: `write "COUNTY, MN"`},
	{text: "Ohio", problem: "a state is missing", choices: []string{"Ohio County, IN", "Ohio County, KY", "Ohio County, WV"}, ambiguous: true},
	{text: "duluth", problem: "a state is missing", choices: []string{"Duluth, MN"}, ambiguous: true},
	{text: "dulut", problem: "no such county or town", choices: []string{"Duluth, MN"}},
	{text: "New York", problem: "a state is missing", choices: []string{"New York County, NY"}, ambiguous: true},
	{text: "Portland", problem: "a state is missing", choices: []string{"Portland, ME", "Portland, OR"}, ambiguous: true},
	{
		text: "Houston", problem: "a state is missing", ambiguous: true, // the town is in Harris County
		choices: []string{"Houston County, AL", "Houston County, GA", "Houston County, MN", "Houston County, TN", "Houston County, TX", "Harris County, TX"},
	},
	{
		text: "Franklin County", problem: "26 places have that name", ambiguous: true,
		choices: []string{"Franklin County, AL", "Franklin County, AR", "Franklin County, FL", "Franklin County, GA", "Franklin County, IA", "Franklin County, ID"},
	},
	{text: "Baltimore, MD", problem: "more than one", choices: []string{"Baltimore city, MD", "Baltimore County, MD"}, ambiguous: true},
	{text: "St. Louis, MO", problem: "more than one", choices: []string{"St. Louis city, MO", "St. Louis County, MO"}, ambiguous: true},
	{text: "Fairfax, VA", problem: "more than one", choices: []string{"Fairfax County, VA", "Fairfax city, VA"}, ambiguous: true},
	// A town in a county of another name, and a county of the town's name.
	{text: "Houston, TX", problem: "Houston is in Harris County", choices: []string{"Harris County, TX", "Houston County, TX"}, ambiguous: true},
	{text: "Boise, ID", problem: "Boise is in Ada County", choices: []string{"Ada County, ID", "Boise County, ID"}, ambiguous: true},
	{text: "Jackson, MS", problem: "Jackson is in Hinds County", choices: []string{"Hinds County, MS", "Jackson County, MS"}, ambiguous: true},
	{text: "Hennepim, MN", problem: "no such county in Minnesota", choices: []string{"Hennepin County, MN"}},
	{text: "Henepin County, MN", problem: "no such county in Minnesota", choices: []string{"Hennepin County, MN"}},
	{text: "Dulut, MN", problem: "no such county in Minnesota", choices: []string{"Duluth, MN"}},
	{text: "Hennepin, WI", problem: "no such county in Wisconsin, but elsewhere", choices: []string{"Hennepin County, MN"}},
	{text: "Iowa City, IA", problem: "no such county in Iowa", choices: []string{"Iowa County, IA"}},
	{text: "Hennepin, Minesota", problem: `"Minesota" is not a state`, choices: []string{"Minnesota"}},
	{text: "Hennepin, XN", problem: `"XN" is not a state`, choices: []string{"IN", "MN", "TN"}},
	{text: "Hennepin, Ontario", problem: `"Ontario" is not a state`},
	{text: "Hennepin", problem: "a state is missing", choices: []string{"Hennepin County, MN"}, ambiguous: true},
	{
		text: "St. Louis County", problem: "a state is missing", ambiguous: true,
		choices: []string{"St. Louis County, MN", "St. Louis County, MO", "St. Louis city, MO"},
	},
	{text: "99999", problem: "no state the first two digits"},
	{text: "27999", problem: "numbers of Minnesota begin with 27"},
	{text: "271", problem: "five digits"},
	{text: "99999999999999999999", problem: "five digits"},
	{text: "Zzyzx, CA", problem: "no such county in California"},
}

func TestParseErrors(t *testing.T) {
	for _, row := range lost {
		got, err := Parse(row.text)
		var place *PlaceError
		if !errors.As(err, &place) {
			t.Errorf("Parse(%q) = %v, %v; want a *PlaceError", row.text, got, err)
			continue
		}
		if !strings.Contains(place.Problem, row.problem) || place.Ambiguous != row.ambiguous {
			t.Errorf("Parse(%q): problem %q, ambiguous %t; want %q, %t", row.text, place.Problem, place.Ambiguous, row.problem, row.ambiguous)
		}
		if diff := cmp.Diff(row.choices, place.Choices); diff != "" {
			t.Errorf("Parse(%q): choices (-want +got)\n%s", row.text, diff)
		}
		// What is offered must be understood when it is typed.
		for _, choice := range place.Choices {
			if _, err := Parse(choice); err != nil && strings.Contains(choice, ",") {
				t.Errorf("Parse(%q) offers %q: %v", row.text, choice, err)
			}
		}
	}
}

// TestTowns looks every town of a weather station up, and the towns and stations
// must lie in counties that exist.
func TestTowns(t *testing.T) {
	for _, town := range towns {
		want, ok := byNumber(town.fips)
		if !ok || want.State != town.state {
			t.Errorf("%v is in no county of its state", town)
			continue
		}
		got, err := Find(town.name, town.state)
		var place *PlaceError
		switch {
		case errors.As(err, &place):
			if !place.Ambiguous || place.Choices[0] != want.String() {
				t.Errorf("Find(%q, %q): %v, want %v first", town.name, town.state, err, want)
			}
		case got.FIPS != want.FIPS:
			t.Errorf("Find(%q, %q) = %v, want %v", town.name, town.state, got, want)
		}
	}
}

// TestAliases follows every alias to a county that exists.
func TestAliases(t *testing.T) {
	for _, a := range aliases {
		if c, ok := byNumber(a.county); !ok || c.State != a.state {
			t.Errorf("alias %v leads to no county of its state", a)
		}
		if _, ok := byNumber(a.fips); ok {
			t.Errorf("alias %v: the number is a county's own", a)
		}
	}
}

func TestFindAllocatesNothing(t *testing.T) {
	for _, row := range [...][2]string{{"St. Louis County", "MN"}, {"Doña Ana", "NM"}, {"Yuma", "AZ"}, {"Orleans Parish", "Louisiana"}} {
		if n := testing.AllocsPerRun(100, func() {
			if _, err := Find(row[0], row[1]); err != nil {
				t.Fatal(err)
			}
		}); n != 0 {
			t.Errorf("Find(%q, %q) allocates %v times", row[0], row[1], n)
		}
	}
	if n := testing.AllocsPerRun(100, func() {
		if _, err := Parse("St. Louis County, MN"); err != nil {
			t.Fatal(err)
		}
	}); n != 0 {
		t.Errorf("Parse allocates %v times", n)
	}
}

func FuzzParse(f *testing.F) {
	for _, row := range found {
		f.Add(row.text)
	}
	for _, row := range lost {
		f.Add(row.text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		c, err := Parse(text)
		var place *PlaceError
		switch {
		case errors.As(err, &place):
			if place.Error() == "" || c != (County{}) {
				t.Errorf("Parse(%q) = %v with the error %v", text, c, err)
			}
		case err != nil:
			t.Errorf("Parse(%q): %T", text, err)
		default:
			if again, err := Parse(c.String()); err != nil || again.FIPS != c.FIPS {
				t.Errorf("Parse(%q) = %v, which reads back as %v, %v", text, c, again, err)
			}
		}
	})
}

func BenchmarkFind(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Find("St. Louis County", "MN"); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkParse(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Parse("St. Louis County, MN"); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkByFIPS(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := ByFIPS(27137); err != nil {
			b.Fatal(err)
		}
	}
}

func ExampleParse() {
	for _, text := range [...]string{"Saint Louis county, Minnesota", "Merrimack, NH", "Baltimore, MD"} {
		c, err := Parse(text)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Printf("%v: zone %v, since 2021 %v\n", c, c.Zone15, c.Zone21)
	}
	// Output:
	// St. Louis County, MN: zone 7, since 2021 7
	// Merrimack County, NH: zone 6A, since 2021 5A
	// place "Baltimore, MD": more than one place has that name; write one of "Baltimore city, MD", "Baltimore County, MD"
}
