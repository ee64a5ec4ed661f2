package house_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/assembly/house"
	"github.com/coldseam/coldseam/rvalue"
)

// yearHouse is the least house with a place and a fuel; more goes above.
const yearHouse = `place = "St. Louis County, MN"
assembly.wall = { faces = "wall", layers = "gypsum 1/2 in + 2x4 @ 16 in (empty) + board sheathing 3/4 in + vinyl siding" }
part = [ { name = "walls", assembly = "wall", area = "120 ft x 8 ft" } ]
`

func ranked(t *testing.T, text string) *house.Report {
	t.Helper()
	h, err := house.Decode("year.toml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	r, err := h.Rank()
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func TestSeasonOfAHouse(t *testing.T) {
	r := ranked(t, `fuel = { kind = "gas", price = 1.40, per = "therm", efficiency = "80 %" }
living = { gains = "1000 Btu/h" }
`+yearHouse)
	s := r.Season
	if s == nil || !s.Fuel || s.Weather == nil || s.Weather.Station.Name != "Duluth" {
		t.Fatalf("season %+v, want one of gas by Duluth's weather", s)
	}
	// By hand, the variable-base degree-day method: balance = 68 °F − gains/UA;
	// heat = UA·24·DD; fuel = heat/0.8 in therms of 100 000 Btu at 1.40.
	ua := r.Ranking.Total.UA.IP()
	if got, want := s.Year.Balance.Fahrenheit(), 68-1000/ua; math.Abs(got-want) > 1e-6 {
		t.Errorf("balance %v °F, want %v", got, want)
	}
	heat := ua * 24 * s.Year.DegreeDays.IP()
	if got := s.Year.Heating.Heat.Btu(); math.Abs(got/heat-1) > 1e-9 {
		t.Errorf("heat %v Btu, want %v", got, heat)
	}
	if got, want := s.Year.Heating.Money, heat/0.8/1e5*1.40; math.Abs(got/want-1) > 1e-9 {
		t.Errorf("money %v, want %v", got, want)
	}
	if !r.Now.Estimate || r.Then.Loss >= r.Now.Loss {
		t.Errorf("loads %v and %v, the first an estimate: %v; want an estimate that sinks with the fixes", r.Now.Loss, r.Then.Loss, r.Now.Estimate)
	}
	steps, err := r.Order()
	if err != nil || len(steps) != 1 || steps[0].Saving == nil {
		t.Fatalf("Order = %+v, %v, want one step with its saving", steps, err)
	}
	if got, want := float64(steps[0].Saving.Heating.Heat), float64(s.All.Heating.Heat); math.Abs(got/want-1) > 1e-12 {
		t.Errorf("the only step saves %v, all steps %v", got, want)
	}
}

func TestSeasonByTheFilesOwnMonths(t *testing.T) {
	r := ranked(t, `zone = "6A"
months = ["-10 °C", "-8 °C", "-2 °C", "5 °C", "11 °C", "17 °C", "20 °C", "19 °C", "14 °C", "8 °C", "1 °C", "-7 °C"]
outdoors = { design = "-25 °C" }
fuel = { kind = "electricity", plant = "heat pump", hspf = 8.53, price = 0.2, per = "kWh" }
`+strings.Replace(yearHouse, `place = "St. Louis County, MN"`, `place = "a village abroad"`, 1))
	if r.Season == nil || r.Season.Weather != nil {
		t.Fatal("no season by the months of the file")
	}
	if got, want := r.Season.Year.Performance, 8.53/3.412141633; math.Abs(got-want) > 1e-6 {
		t.Errorf("performance %v, HSPF 8.53 is %v", got, want)
	}
	// Design loss by hand: UA·(20 − (−25)) K.
	want := r.Ranking.Total.UA.SI() * float64(rvalue.FromFahrenheit(68).Sub(rvalue.FromCelsius(-25)))
	if got := r.Now.Loss.SI(); math.Abs(got/want-1) > 1e-9 || r.Now.Estimate {
		t.Errorf("design loss %v W, want %v; an estimate: %v", got, want, r.Now.Estimate)
	}
}

// TestZoneByMonths: where no list has the place its months tell the zone. These are near
// the normals of Duluth, listed in zone 7: over 5000 K·d below 18 °C in ASHRAE 169.
func TestZoneByMonths(t *testing.T) {
	const months = `months = ["10.2 °F", "15.5 °F", "26.5 °F", "39.8 °F", "51.0 °F", "59.9 °F", "66.4 °F", "64.9 °F", "56.3 °F", "43.5 °F", "28.9 °F", "14.9 °F"]
`
	for _, place := range []string{`place = "a village abroad"`, ``} {
		r := ranked(t, months+strings.Replace(yearHouse, `place = "St. Louis County, MN"`, place, 1))
		if got := r.House.Zone; got.Number != 7 || r.Season == nil {
			t.Errorf("with %q: zone %v, a year: %v; want zone 7 and a year", place, got, r.Season != nil)
		}
		told := false
		for _, d := range r.House.Defaults {
			told = told || d.Key == "zone" && strings.Contains(d.Why, "by the months")
		}
		if !told {
			t.Errorf("with %q: the zone is filled in without a word: %v", place, r.House.Defaults)
		}
	}
	if r := ranked(t, months+`zone = "6A"
`+strings.Replace(yearHouse, `place = "St. Louis County, MN"`, ``, 1)); r.House.Zone.Number != 6 {
		t.Errorf("zone %v, the file says 6A", r.House.Zone)
	}
}

func TestNoSeasonWithoutAPlace(t *testing.T) {
	r := ranked(t, `zone = "6A"
`+strings.Replace(yearHouse, `place = "St. Louis County, MN"`, "", 1))
	if r.Season != nil {
		t.Errorf("a season of no place: %+v", r.Season)
	}
	steps, err := r.Order()
	if err != nil || len(steps) != 1 || steps[0].Saving != nil {
		t.Errorf("Order = %+v, %v, want a step without a saving", steps, err)
	}
}

func TestSeasonMistakes(t *testing.T) {
	for _, c := range []struct{ line, says string }{
		{`fuel = { kind = "gas", efficiency = "130 %" }`, "more heat than the fuel has"},
		{`fuel = { kind = "heat pump", efficiency = "80 %" }`, "less than a heat pump gives"},
		{`fuel = { kind = "heat pump", cop = 2.5, hspf = 9 }`, "say the same thing"},
		{`fuel = { kind = "gas", cop = 2.5 }`, "are a heat pump's"},
		{`fuel = { kind = "heat pump", cop = 15 }`, "out of range"},
		{`fuel = { kind = "gas", plant = "heat pump" }`, "does not run on gas"},
		{`fuel = { kind = "gas", price = -1, per = "therm" }`, "out of range"},
		{`months = ["1 °C", "2 °C"]`, "a year has 12"},
		{`months = ["1", "1 °C", "1 °C", "1 °C", "1 °C", "1 °C", "1 °C", "1 °C", "1 °C", "1 °C", "1 °C", "1 °C"]`, "unit"},
		{`months = ["48 °C", "1 °C", "1 °C", "1 °C", "1 °C", "1 °C", "1 °C", "1 °C", "1 °C", "1 °C", "1 °C", "1 °C"]`, "no monthly mean"},
		{`months = "cold"`, "twelve monthly"},
		{`living = { gains = "warm" }`, "heat flow"},
		{`living = { bedrooms = 0 }`, "whole number"},
		{`living = { floor = "20 ft2" }`, "no heated floor of a dwelling"},
		{`fuel = { kind = "gas", efficiency = 0.8 }`, `efficiency = "80 %"`},
		{`fuel = { kind = "gas", price = 1, per = "cord" }`, "cord"},
		{`fuel = { kind = "heat pump", cop_at = [ { outdoors = "17 °F" } ] }`, "the COP at that temperature is missing"},
		{`fuel = { kind = "heat pump", cop_at = [ { outdoors = "17 °F", cop = 2 }, { outdoors = "17 °F", cop = 3 } ] }`, "is there twice"},
		{`fuel = { kind = "heat pump", cop_at = [ { outdoors = "17 °F", cop = 2 }, { outdoors = "47 °F", cop = 3, capacity = "9000 Btu/h" } ] }`, "at some temperatures only"},
		{`fuel = { kind = "heat pump", hspf = 9, cop_at = [ { outdoors = "17 °F", cop = 2 } ] }`, "say the same thing"},
		{`fuel = { kind = "gas", cop_at = [ { outdoors = "17 °F", cop = 2 } ] }`, "are a heat pump's"},
		{`cooling = { seer = 100 }`, "out of range"},
		{`fuel = { kind = "gas", price = 1, per = "gallon" }`, `gas is not priced by the gallon; write per = "therm"`},
		{`fuel = { kind = "heat pump", cop = 12, price = 1, per = "kWh" }`, "Carnot"},
		{`bridge = [ { name = "corner", psi = "-2 W/(m·K)", length = "200 m" } ]`, "more than all parts lose together"},
		{`bridge = [ { name = "corner", psi = "25 Btu/(h·ft·°F)", length = "20 m" } ]`, "no edge loses"},
		{`window.w = { u = "U-30" }`, "more than the air at both faces lets through"},
		{`outdoors = { design = "75 °F" }`, "not colder"},
	} {
		h, err := house.Decode("year.toml", []byte(c.line+"\n"+yearHouse))
		if err == nil {
			_, err = h.Rank()
		}
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v, want something of %q", c.line, err, c.says)
		}
		if err != nil && !strings.Contains(err.Error(), "year.toml:1:") {
			t.Errorf("%s: %v, want its place in the file", c.line, err)
		}
	}
}

// An edition that does not exist is one mistake: the zone of the place is looked up all
// the same.
func TestWrongEditionIsOneMistake(t *testing.T) {
	_, err := house.Decode("year.toml", []byte("edition = 2020\n"+yearHouse))
	var all house.Errors
	if !errors.As(err, &all) || len(all) != 1 || all[0].Key != "edition" {
		t.Errorf("mistakes %v, want the edition alone", err)
	}
}

// What a file holds for a terminal does not reach it by a message.
func TestErrorsAreHarmless(t *testing.T) {
	_, err := house.Decode("a\x1b[2J.toml", []byte("zone = \"6A\x1b[31m\"\nplace = \"\u202edesrever\"\n"))
	if err == nil || strings.ContainsAny(err.Error(), "\x1b\u202e") || !strings.Contains(err.Error(), "^") {
		t.Errorf("%q", err)
	}
}

// No gains at all are another thing than gains that nobody gave.
func TestGainsOfNothing(t *testing.T) {
	if y := ranked(t, "living = { gains = \"0 Btu/h\" }\n"+yearHouse).Season.Year; y.Balance != y.Indoors || y.Gains.Internal != 0 {
		t.Errorf("without gains it is heated below %v, it is %v inside", y.Balance, y.Indoors)
	}
	if y := ranked(t, yearHouse).Season.Year; y.Balance >= y.Indoors {
		t.Errorf("with unknown gains it is heated below %v, it is %v inside", y.Balance, y.Indoors)
	}
}

// A heat pump by a line of two points, in any order, is that line whatever the order.
func TestCOPLine(t *testing.T) {
	year := func(line string) float64 {
		y := ranked(t, `fuel = { kind = "heat pump", price = 0.2, per = "kWh", cop_at = [ `+line+" ] }\n"+yearHouse).Season.Year
		return y.Performance
	}
	const cold, mild = `{ outdoors = "5 °F", cop = 2 }`, `{ outdoors = "47 °F", cop = 3.5 }`
	up, down := year(cold+", "+mild), year(mild+", "+cold)
	if up != down || !(up > 2 && up < 3.5) {
		t.Errorf("through the season a COP of %v, in the other order %v, want one between those of the points", up, down)
	}
	if level := year(`{ outdoors = "17 °F", cop = 2.5 }`); math.Abs(level-2.5) > 1e-9 {
		t.Errorf("a level line of 2.5 gives %v", level)
	}
	if small := year(`{ outdoors = "17 °F", cop = 2.5, capacity = "4000 Btu/h" }`); !(small < 2.5 && small > 1) {
		t.Errorf("a pump too small for the house gives %v, want less than its 2.5 but more than resistance", small)
	}
}

// What no house has is said: cents written as dollars, rooms of 86 ft, an attic ten
// times its floor. A usual house has none of these remarks.
func TestSizesThatBelieEachOther(t *testing.T) {
	codes := func(line string) string {
		r := ranked(t, line+"\n"+yearHouse)
		all := ""
		for _, m := range r.Remarks {
			if m.Code == "sizes" {
				all += m.About + " "
			}
		}
		for _, m := range r.Season.Year.Remarks {
			if m.Code == "price-high" {
				all += m.Code + " "
			}
		}
		return strings.TrimSpace(all)
	}
	for line, want := range map[string]string{
		`fuel = { kind = "electricity", price = 15, per = "kWh" }`:                                             "price-high",
		`fuel = { kind = "electricity", price = 0.15, per = "kWh" }`:                                           "",
		`fuel = { kind = "gas", price = 140, per = "therm" }`:                                                  "price-high",
		"living = { floor = \"860 ft2\" }\nleakage = { volume = \"74000 ft3\", ach50 = 11 }":                   "leakage",
		"living = { floor = \"860 ft2\" }\nleakage = { volume = \"7400 ft3\", ach50 = 11 }":                    "",
		"living = { floor = \"860 ft2\" }\nassembly.lid = { faces = \"ceiling\", layers = \"gypsum 1/2 in\" }": "",
	} {
		if got := codes(line); got != want {
			t.Errorf("%s: remarks %q, want %q", line, got, want)
		}
	}
	if _, err := house.Decode("f", []byte("leakage = { volume = \"7400 ft3\", flow50 = \"13000 cfm\" }\n"+yearHouse)); err == nil || !strings.Contains(err.Error(), "f:1:") || !strings.Contains(err.Error(), "air changes") {
		t.Errorf("105 air changes an hour: %v", err)
	}
}

// Where it never gets cold there is a ranking, and no heater.
func TestNoHeaterWhereItIsWarm(t *testing.T) {
	r := ranked(t, strings.Replace(yearHouse, "St. Louis County, MN", "San Juan Municipio, PR", 1))
	if r.Now != nil || r.Then != nil || r.Season == nil || len(r.Ranking.Rows) != 1 {
		t.Errorf("heater %+v in a place without a winter", r.Now)
	}
}

// The heater's size needs a design temperature only, no place.
func TestHeaterWithoutAPlace(t *testing.T) {
	const bare = "zone = \"6A\"\noutdoors = { design = \"-20 °F\" }\n"
	r := ranked(t, bare+strings.Replace(yearHouse, `place = "St. Louis County, MN"`, "", 1))
	if r.Season != nil || r.Now == nil || r.Then == nil {
		t.Fatalf("season %v, heater %v", r.Season, r.Now)
	}
	if got, want := r.Now.Loss.IP(), r.Ranking.Total.UA.IP()*88; math.Abs(got/want-1) > 1e-9 || r.Now.Estimate || r.Now.Low != r.Now.High {
		t.Errorf("%v Btu/h, an estimate: %v; UA times 88 °F is %v", got, r.Now.Estimate, want)
	}
}

func TestPartsReadAsMeant(t *testing.T) {
	h, err := house.Decode("parts.toml", []byte(`zone = "5A"
assembly.brick = { faces = "wall", layers = "plaster 3/4 in + brick 8 in" }
assembly.veneer = { faces = "wall", layers = "gypsum 1/2 in + 2x4 @ 16 in (fiberglass R-11) + board sheathing 3/4 in + air 1 in + brick 3 5/8 in" }
assembly.furred = { faces = "wall", layers = "gypsum 1/2 in + 2x4 @ 16 in (fiberglass R-11) + concrete block 8 in" }
part = [
  { name = "brick  wall\t", assembly = "brick", area = "10 ft x 10 ft + 5 ft x 8 ft" },
  { name = "veneer", assembly = "veneer", area = "100 ft2" },
  { name = "furred", assembly = "furred", area = "100 ft2" },
  { name = "said", assembly = "brick", area = "100 ft2", kind = "wall" },
]
`))
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []struct {
		name string
		kind house.Kind
		area float64
	}{{"brick wall", house.MassWall, 140}, {"veneer", house.Wall, 100}, {"furred", house.MassWall, 100}, {"said", house.Wall, 100}} {
		p := h.Parts[i]
		if p.Name != want.name || p.Kind != want.kind || math.Abs(p.Area.IP()-want.area) > 1e-9 {
			t.Errorf("part %d is %q, a %v of %v ft², want %+v", i, p.Name, p.Kind, p.Area.IP(), want)
		}
	}
	for line, says := range map[string]string{
		`name = "gable` + "\\u001b" + `[31m"`: "control character",
		"zone = \"5A\"\n" + `assembly.w = { faces = "wall", layers = "R-5" }` + "\n" + `part = [ { name = "a", assembly = "w", area = "10 ft x 10 ft + 5 furlong x 1 ft" } ]`: "furlong",
	} {
		if _, err := house.Decode("bad.toml", []byte(line)); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%s: %v, want something of %q", line, err, says)
		}
	}
}

// TestColdHouse: cold = true lets polyiso lose on a cold day, and says so.
func TestColdHouse(t *testing.T) {
	text := `zone = "7"
outdoors = { temperature = "-10 °F" }
assembly.wall = { faces = "wall", layers = "gypsum 1/2 in + 2x4 @ 16 in (empty) + polyiso 2 in + vinyl siding" }
part = [ { name = "walls", assembly = "wall", area = "100 ft2" } ]
`
	warm, cold := ranked(t, text), ranked(t, "cold = true\n"+text)
	if cold.Ranking.Total.UA <= warm.Ranking.Total.UA {
		t.Errorf("UA %v in the cold, %v by the labels; polyiso insulates less in the cold", cold.Ranking.Total.UA, warm.Ranking.Total.UA)
	}
	said := false
	for _, m := range cold.Remarks {
		said = said || m.Code == "cold"
	}
	if !said {
		t.Error("no remark says that conductivities follow the temperature")
	}
}
