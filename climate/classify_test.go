package climate

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/rvalue"
	"github.com/coldseam/coldseam/testdata"
)

func number(t testing.TB, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// TestThermalZoneCities holds the thermal criteria against cities of which degree
// days and zone are both published.
func TestThermalZoneCities(t *testing.T) {
	rows := testdata.Read(t, "climate_cities.csv")
	if len(rows) != 62 {
		t.Fatalf("%d cities, want 62", len(rows))
	}
	for _, row := range rows {
		want := row["zone"][0] - '0'
		got, err := ThermalZone(DegreeDays(number(t, row["hdd18"])), DegreeDays(number(t, row["cdd10"])))
		if err != nil || got != int8(want) {
			t.Errorf("%s: zone %d, %v; want %s", row["city"], got, err, row["zone"])
		}
	}
}

func TestThermalZoneEdges(t *testing.T) {
	// IECC 2021 and ASHRAE 169: above the lower bound, up to and with the upper one.
	for _, row := range [...]struct {
		heating, cooling DegreeDays
		want             int8
	}{
		{0, 6000.1, 0},
		{0, 6000, 1},
		{0, 5000.1, 1},
		{0, 5000, 2},
		{0, 3500.1, 2},
		{0, 3500, 3},
		{2000, 3500, 3},
		{2000.1, 3500, 4},
		{3000, 0, 4},
		{3000.1, 0, 5},
		{4000, 0, 5},
		{4000.1, 0, 6},
		{5000, 0, 6},
		{5000.1, 0, 7},
		{7000, 0, 7},
		{7000.1, 0, 8},
		{2627, 3655, 2}, // cooling first: a station of 169-2020 (51573) is listed 4B against this rule
	} {
		if got, err := ThermalZone(row.heating, row.cooling); err != nil || got != row.want {
			t.Errorf("ThermalZone(%g, %g) = %d, %v; want %d", row.heating, row.cooling, got, err, row.want)
		}
	}
	f := FahrenheitDay
	// IECC 2006, Table 301.3(2), in °F·d as printed.
	for _, row := range [...]struct {
		heating, cooling DegreeDays
		marine           bool
		want             int8
	}{
		{0, 9001 * f, false, 1},
		{0, 9000 * f, false, 2},
		{0, 6301 * f, false, 2},
		{5400 * f, 6300 * f, false, 3},
		{5400 * f, 4501 * f, false, 3},
		{5400 * f, 4500 * f, false, 4},
		{0, 4500 * f, false, 4},        // no lower bound of heating: 4 even with hardly any
		{5401 * f, 6000 * f, false, 5}, // the gap of the table
		{3600 * f, 3000 * f, true, 3},
		{3601 * f, 3000 * f, true, 4},
		{5400 * f, 3000 * f, true, 4},
		{7200 * f, 0, false, 5},
		{7201 * f, 0, false, 6},
		{9001 * f, 0, false, 7},
		{12600 * f, 0, false, 7},
		{12601 * f, 0, false, 8},
	} {
		got, err := ThermalZoneBefore2021(row.heating, row.cooling, row.marine)
		if err != nil || got != row.want {
			t.Errorf("ThermalZoneBefore2021(%.0f °F·d, %.0f °F·d, %t) = %d, %v; want %d",
				row.heating.IP(), row.cooling.IP(), row.marine, got, err, row.want)
		}
	}
	for _, bad := range [...]DegreeDays{-1, 40000, DegreeDays(math.NaN()), DegreeDays(math.Inf(1))} {
		if got, err := ThermalZone(bad, 100); err == nil {
			t.Errorf("ThermalZone(%g, 100) = %d, want an error", bad, got)
		}
		if got, err := ThermalZoneBefore2021(100, bad, false); err == nil {
			t.Errorf("ThermalZoneBefore2021(100, %g) = %d, want an error", bad, got)
		}
	}
}

// given are twelve monthly means in °C and sums in mm.
func given(t testing.TB, latitude float64, mean, rain [12]float64) Normals {
	t.Helper()
	g := Given{Latitude: latitude, Rain: rain[:]}
	for _, m := range mean {
		g.Mean = append(g.Mean, rvalue.FromCelsius(m))
	}
	n, err := g.Normals()
	if err != nil {
		t.Fatal(err)
	}
	return n
}

// TestZoneAbroad goes all the way from monthly normals to the zone, for cities whose
// zone is published (ASHRAE 169-2020, list of stations). The normals are from memory
// and rounded.
func TestZoneAbroad(t *testing.T) {
	for _, row := range []struct {
		name       string
		latitude   float64
		mean, rain [12]float64
		want       string
	}{
		{
			"London Heathrow", 51.5,
			[12]float64{5.2, 5.3, 7.6, 9.9, 13.3, 16.5, 18.7, 18.5, 15.7, 12.0, 8.0, 5.5},
			[12]float64{55, 41, 42, 44, 49, 45, 45, 50, 49, 69, 59, 55},
			"4A",
		},
		{
			"Madrid Barajas", 40.5,
			[12]float64{5.5, 7.1, 10.2, 12.2, 16.2, 21.7, 25.2, 24.7, 20.5, 14.8, 9.4, 6.0},
			[12]float64{29, 32, 22, 38, 44, 22, 9, 10, 24, 51, 49, 42},
			"3B",
		},
		{
			"Vancouver", 49.2,
			[12]float64{4.1, 4.9, 6.9, 9.4, 12.8, 15.7, 18.0, 18.0, 14.9, 10.3, 6.3, 3.6},
			[12]float64{168, 105, 114, 89, 65, 54, 36, 37, 51, 121, 189, 162},
			"4C",
		},
		{ // south of the equator the cold half-year is April to September
			"Santiago", -33.4,
			[12]float64{20.9, 20.0, 18.0, 14.1, 10.8, 8.4, 7.8, 9.3, 11.4, 14.4, 17.2, 19.7},
			[12]float64{0.5, 1, 4, 13, 41, 69, 66, 47, 29, 13, 7, 4},
			"3C",
		},
	} {
		n := given(t, row.latitude, row.mean, row.rain)
		got, err := n.Zone(2021)
		if err != nil || got.Short() != row.want {
			t.Errorf("%s: zone %v, %v; want %s", row.name, got, err, row.want)
		}
	}
}

// TestMoistureTraps tries the sides of each moisture test.
func TestMoistureTraps(t *testing.T) {
	mild := [12]float64{5, 6, 8, 10.5, 13, 16, 18, 18, 15, 11, 8, 6} // annual mean 11.2
	wetWinter := [12]float64{60, 60, 60, 40, 40, 20, 20, 20, 40, 60, 60, 60}
	change := func(a [12]float64, i int, v float64) [12]float64 { a[i] = v; return a }
	for _, row := range []struct {
		name       string
		latitude   float64
		mean, rain [12]float64
		marine     bool
	}{
		{"three times exactly", 45, mild, wetWinter, true},
		{"driest month a little wetter", 45, mild, [12]float64{60, 60, 60, 40, 40, 21, 21, 21, 40, 60, 60, 60}, false},
		{"wettest month in the warm half does not count", 45, mild, change(wetWinter, 4, 300), true},
		{"driest month in the cold half does not count", 45, mild, change([12]float64{60, 60, 60, 40, 40, 21, 21, 21, 40, 60, 60, 60}, 1, 1), false},
		{"the same in the south", -45, mild, wetWinter, false},
		{"coldest at −3", 45, change(mild, 0, -3), wetWinter, false},
		{"coldest above −3", 45, change(mild, 0, -2.9), wetWinter, true},
		{"warmest at 22", 45, change(mild, 6, 22), wetWinter, false},
		{"warmest below 22", 45, change(mild, 6, 21.9), wetWinter, true},
		{"three months over 10", 60, [12]float64{0, 0, 2, 4, 8, 11, 12, 11, 8, 5, 2, 1}, wetWinter, false},
		{"four months over 10", 60, [12]float64{0, 0, 2, 4, 10.1, 11, 12, 11, 8, 5, 2, 1}, wetWinter, true},
		{"no rain known", 45, mild, [12]float64{}, false},
	} {
		n := given(t, row.latitude, row.mean, row.rain)
		if got := n.Marine(); got != row.marine {
			t.Errorf("%s: marine %t, want %t", row.name, got, row.marine)
		}
	}
	// Twelve months of t °C: the lines are 20·(t + 7), and since 2021 with 70 % of the
	// rain in the warm half 20·(t + 14), with 30 % 20·t.
	spread := func(warm, total float64) (rain [12]float64) {
		for i := range rain {
			rain[i] = total * (1 - warm) / 6
			if i >= 3 && i <= 8 {
				rain[i] = total * warm / 6
			}
		}
		return rain
	}
	flat := [12]float64{10, 10, 10, 10, 10, 10, 10, 10, 10, 10, 10, 10}
	for _, row := range [...]struct {
		warm, total float64
		edition     int
		dry         bool
	}{
		{0.5, 339, 2018, true},
		{0.5, 341, 2018, false},
		{0.5, 339, 2021, true},
		{0.5, 341, 2021, false},
		{0.75, 479, 2021, true},
		{0.75, 481, 2021, false},
		{0.75, 341, 2018, false},
		{0.25, 199, 2021, true},
		{0.25, 201, 2021, false},
		{0.25, 201, 2018, true},
		{0, 199, 2024, true},
		{1, 481, 2024, false},
		{0.5, 0, 2021, false}, // unknown is not dry
	} {
		n := given(t, 45, flat, spread(row.warm, row.total))
		if got := n.Dry(row.edition); got != row.dry {
			t.Errorf("%.0f %% of %g mm in the warm half, %d: dry %t, want %t", 100*row.warm, row.total, row.edition, got, row.dry)
		}
	}
	// The inch-pound form of the line, P < 0.44·(T − 19.5) in: 13.42 in at 50 °F in the
	// reference notes, 340.9 mm against 340 of the SI form at 10 °C.
	if got, want := 13.42*25.4, 20.0*(10+7); math.Abs(got-want) > 1 {
		t.Errorf("the two forms of the dry line are %g and %g mm", got, want)
	}
}

func TestZoneWithoutRain(t *testing.T) {
	n := given(t, 45, [12]float64{-5, -3, 2, 9, 15, 20, 22, 21, 17, 10, 4, -2}, [12]float64{})
	z, err := n.Zone(2021)
	if err != nil || z.Moisture != 0 {
		t.Errorf("zone %v, %v; want one without a letter", z, err)
	}
	if _, err := n.Zone(2020); err == nil || !strings.Contains(err.Error(), "editions are") {
		t.Errorf("edition 2020: %v, want an error that lists the editions", err)
	}
}
