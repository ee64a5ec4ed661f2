package climate

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/rvalue"
)

func TestNearest(t *testing.T) {
	for _, row := range [...]struct {
		county, station, why string
		feet                 float64 // elevation, 0 if unknown
	}{
		{"St. Louis County, MN", "Duluth", "its own station; International Falls is farther", 0},
		{"Maricopa, AZ", "Phoenix", "its own station, although warmer than the zone", 0},
		{"Coos, NH", "Burlington", "not its own, on Mount Washington's summit", 0},
		{"Coos, NH", "Mt. Washington", "on the summit itself", 6267},
		{"Clark, NV", "Las Vegas", "its own, not Milford or Bishop in the mountains", 0},
		{"Siskiyou, CA", "Mount Shasta", "its own", 0},
		{"Suffolk, MA", "Boston", "its own", 0},
	} {
		c, err := Parse(row.county)
		if err != nil {
			t.Fatal(err)
		}
		spot := c.Spot()
		if row.feet > 0 {
			spot.Elevation, spot.ElevationKnown = rvalue.Length(row.feet)*rvalue.Foot, true
		}
		if row.station == "Mt. Washington" {
			spot.ZoneKnown = false // the zone is the valleys'
		}
		w, err := Nearest(spot)
		if err != nil || w.Station.Name != row.station {
			t.Errorf("Nearest(%s, %g ft) = %s, %.0f km, %v; want %s: %s",
				row.county, row.feet, w.Station.Name, w.Distance.SI()/1000, err, row.station, row.why)
		}
	}
}

// TestNearestEverywhere asks for every county's weather.
func TestNearestEverywhere(t *testing.T) {
	for c := range All {
		w, err := Nearest(c.Spot())
		if err != nil {
			t.Errorf("%v: %v", c, err)
			continue
		}
		if w.Distance.SI() > 100e3 && !strings.Contains(strings.Join(w.Remarks(rvalue.SI), " "), "km from the place, or from the middle of its county") {
			t.Errorf("%v: %.0f km without a remark", c, w.Distance.SI()/1000)
		}
		if _, err := w.Normals.Prepare(); err != nil {
			t.Errorf("%v: %v", c, err)
		}
	}
}

func TestNearestElevation(t *testing.T) {
	c, err := Parse("Summit, CO") // zone 7, near 9000 ft, among stations of zones 5 and 6
	if err != nil {
		t.Fatal(err)
	}
	spot := c.Spot()
	blind, err := Nearest(spot)
	if err != nil {
		t.Fatal(err)
	}
	if remarks := strings.Join(blind.Remarks(rvalue.SI), "\n"); blind.Outside <= 0 || !strings.Contains(remarks, "misses zone 7") {
		t.Errorf("without the elevation: %v outside, remarks %q", blind.Outside, remarks)
	}
	spot.Elevation, spot.ElevationKnown = 9075*rvalue.Foot, true
	w, err := Nearest(spot)
	if err != nil {
		t.Fatal(err)
	}
	if w.Outside > 0 || w.Normals.HDD65 <= blind.Normals.HDD65 || !strings.Contains(strings.Join(w.Remarks(rvalue.SI), "\n"), "6.5 K per km") {
		t.Errorf("at 9075 ft: %s, HDD65 %.0f °F·d, %.0f outside, remarks %q",
			w.Station.Name, w.Normals.HDD65.IP(), w.Outside.IP(), w.Remarks(rvalue.SI))
	}
	want := w.Station.Normals().Mean[0].Celsius() - 0.0065*w.Climb.SI()
	if got := w.Normals.Mean[0].Celsius(); math.Abs(got-want) > 1e-9 {
		t.Errorf("January is %.4f °C, want %.4f by the lapse", got, want)
	}
	// The method of degree days must hand on what At says was published.
	p := prepare(t, w.Normals)
	year, err := p.Year(rvalue.FromFahrenheit(65))
	if err != nil || math.Abs(year.Heating.IP()-w.Normals.HDD65.IP()) > 1 {
		t.Errorf("HDD65 %.1f °F·d, %v; carried %.1f", year.Heating.IP(), err, w.Normals.HDD65.IP())
	}
}

// TestRemarks: a height that no station near has changes the choice, and that is said,
// in one system of units.
func TestRemarks(t *testing.T) {
	c, err := Parse("St. Louis County, MN")
	if err != nil {
		t.Fatal(err)
	}
	spot := c.Spot()
	spot.Elevation, spot.ElevationKnown = 9000*rvalue.Foot, true
	w, err := Nearest(spot)
	if err != nil {
		t.Fatal(err)
	}
	for u, row := range map[rvalue.Units]struct{ says, not []string }{
		rvalue.IP: {[]string{"miles", "9000 ft", "°F per 1000 ft", "would be Duluth, MN, at 1428 ft", "make sure"}, []string{" km", " m,", " K"}},
		rvalue.SI: {[]string{"km", "2743 m", "K per km", "would be Duluth, MN, at 435 m", "make sure"}, []string{"miles", " ft", "°F"}},
	} {
		text := strings.Join(w.Remarks(u), "\n")
		for _, want := range row.says {
			if !strings.Contains(text, want) {
				t.Errorf("remarks in %v lack %q:\n%s", u, want, text)
			}
		}
		for _, other := range row.not {
			if strings.Contains(text, other) {
				t.Errorf("remarks in %v have %q:\n%s", u, other, text)
			}
		}
	}
}

// TestBorrowedDoubt: the farther from the station, on the ground or upwards, the less
// sure the cold day.
func TestBorrowedDoubt(t *testing.T) {
	doubt := func(county string, feet float64) float64 {
		c, err := Parse(county)
		if err != nil {
			t.Fatal(err)
		}
		spot := c.Spot()
		spot.Elevation, spot.ElevationKnown = rvalue.Length(feet)*rvalue.Foot, feet != 0
		w, err := Nearest(spot)
		if err != nil {
			t.Fatal(err)
		}
		p := prepare(t, w.Normals)
		return p.HeatingDesign().Doubt.SI()
	}
	own, far, high := doubt("Denver, CO", 5400), doubt("St. Louis County, MN", 0), doubt("Summit, CO", 9075)
	if math.Abs(own-designDoubt) > 1e-9 || !(own < far && far < high) {
		t.Errorf("at the station ±%.1f K, 87 km away ±%.1f K, 1100 m above ±%.1f K", own, far, high)
	}
}

func TestNearestRefuses(t *testing.T) {
	for _, row := range []struct {
		spot Spot
		want string
	}{
		{Spot{Lat: 91}, "latitude"},
		{Spot{Lat: math.NaN()}, "latitude"},
		{Spot{Lat: 45, Lon: 200}, "longitude"},
		{Spot{Lat: 45, Lon: -92, Elevation: 20000 * rvalue.Metre, ElevationKnown: true}, "elevation"},
		{Spot{Lat: 45, Lon: -92, Elevation: rvalue.Length(math.Inf(1)), ElevationKnown: true}, "elevation"},
		{Spot{Lat: 32, Lon: -92, Elevation: -431 * rvalue.Metre, ElevationKnown: true}, "-430 to 9000 m (-1411 to 29528 ft)"},
		{Spot{Lat: 51.5, Lon: 0}, "twelve monthly"}, // Greenwich
	} {
		if w, err := Nearest(row.spot); err == nil || !strings.Contains(err.Error(), row.want) {
			t.Errorf("Nearest(%v) = %v, %v; want an error with %q", row.spot, w.Station.Name, err, row.want)
		}
	}
}

func TestDistance(t *testing.T) {
	// A degree of a great circle is 111.19 km on a sphere of 6371 km.
	if got := distance(0, 0, 1, 0); math.Abs(got-111195) > 1 {
		t.Errorf("one degree north: %.1f m", got)
	}
	if got := distance(60, 179.5, 60, -179.5); math.Abs(got-111195/2) > 10 {
		t.Errorf("one degree of longitude at 60°, across the date line: %.1f m", got)
	}
}

func TestStations(t *testing.T) {
	count, inStates := 0, 0
	humid := 0
	for s := range Stations {
		count++
		n := s.Normals()
		if s.County > 0 && s.County < 60000 {
			inStates++
			if c, ok := byNumber(s.County); !ok || c.State != s.State {
				t.Errorf("%s, %s stands in %v", s.Name, s.State, c)
			}
		}
		if n.Vapour[0] > 0 {
			humid++
		}
		for i := range n.Mean {
			// A month's vapour must saturate below its mean maximum.
			if dew := si.temperature(max(n.Vapour[i], si.saturation(si.low))); dew > n.Mean[i].Celsius()+n.Swing[i].SI()/2 {
				t.Errorf("%s: month %d has a dew point of %.1f °C", s.Name, i+1, dew)
			}
			if swing := n.Swing[i].IP(); !(swing > 5 && swing < 45) {
				t.Errorf("%s: month %d swings by %.1f °F a day", s.Name, i+1, swing)
			}
		}
		// Published heating less cooling is the identity's to rounding: 0.05 °F in each
		// mean over 365 days, and half a °F·d in each of the two figures.
		if off := DegreeDays(identity(&n, base65)) - (n.HDD65 - n.CDD65); math.Abs(off.IP()) > 0.05*365+1 {
			t.Errorf("%s: means and published degree days differ by %.1f °F·d", s.Name, off.IP())
		}
	}
	if count != 281 || inStates != 270 || humid != 234 {
		t.Errorf("%d stations, %d in the states, %d with humidity", count, inStates, humid)
	}
	if stop := slices.Collect(func(yield func(Station) bool) { Stations(yield) }); len(stop) != 281 {
		t.Errorf("%d stations collected", len(stop))
	}
	for s := range Stations {
		if s.Name != "Birmingham AP" {
			t.Errorf("the first station is %s", s.Name)
		}
		break
	}
}

func BenchmarkNearest(b *testing.B) {
	c, err := Parse("St. Louis County, MN")
	if err != nil {
		b.Fatal(err)
	}
	spot := c.Spot()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Nearest(spot); err != nil {
			b.Fatal(err)
		}
	}
}

func ExampleNearest() {
	county, err := Parse("St. Louis County, MN")
	if err != nil {
		fmt.Println(err)
		return
	}
	w, err := Nearest(county.Spot())
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%s, %s, %.0f km away: January %.1f °F, %s\n", w.Station.Name, w.Station.State,
		w.Distance.SI()/1000, w.Normals.Mean[0].Fahrenheit(), w.Normals.HDD65.In(rvalue.IP))
	// Output:
	// Duluth, MN, 87 km away: January 10.2 °F, 9444 °F·d
}
