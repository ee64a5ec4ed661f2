package house_test

import (
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
	if !s.Now.Estimate || s.Then.Loss >= s.Now.Loss {
		t.Errorf("loads %v and %v, the first an estimate: %v; want an estimate that sinks with the fixes", s.Now.Loss, s.Then.Loss, s.Now.Estimate)
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
	if got := r.Season.Now.Loss.SI(); math.Abs(got/want-1) > 1e-9 || r.Season.Now.Estimate {
		t.Errorf("design loss %v W, want %v; an estimate: %v", got, want, r.Season.Now.Estimate)
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
		{`months = "cold"`, "twelve monthly"},
		{`living = { gains = "warm" }`, "heat flow"},
		{`living = { bedrooms = 0 }`, "whole number"},
		{`cooling = { seer = 100 }`, "out of range"},
		{`outdoors = { design = "75 °F" }`, "not colder"},
	} {
		h, err := house.Decode("year.toml", []byte(c.line+"\n"+yearHouse))
		if err == nil {
			_, err = h.Rank()
		}
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v, want something of %q", c.line, err, c.says)
		}
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
