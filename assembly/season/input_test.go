package season_test

import (
	"errors"
	"go/parser"
	"go/token"
	"math"
	"os"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/assembly/envelope"
	"github.com/coldseam/coldseam/assembly/season"
	"github.com/coldseam/coldseam/climate"
	"github.com/coldseam/coldseam/rvalue"
)

// TestRefused: what cannot be is an error that names the value and what would do.
func TestRefused(t *testing.T) {
	w, ranking := station(t, "Boston", "MA"), invented(t, 250*rvalue.WattPerKelvin)
	gas := season.Fuel{Kind: season.NaturalGas}
	power := season.Fuel{Kind: season.Electricity}
	price := func(amount float64, per season.Unit) *season.Price { return &season.Price{Amount: amount, Per: per} }
	at := func(f, cop float64, capacity season.Power) season.Point {
		return season.Point{Outdoors: rvalue.FromFahrenheit(f), COP: cop, Capacity: capacity}
	}
	negative := season.Emission(-1)
	for _, c := range []struct {
		name string
		h    season.House
		want string
	}{
		{"no ranking", season.House{Weather: w}, "no ranking"},
		{"empty ranking", season.House{Weather: w, Ranking: &envelope.Ranking{}}, "no ranking"},
		{"no weather", season.House{Ranking: ranking}, "no weather"},
		{"weather not prepared", season.House{Ranking: ranking, Weather: &climate.Prepared{}}, "no weather"},
		{"a UA that is no number", season.House{Weather: w, Ranking: &envelope.Ranking{Rows: []envelope.Row{{Name: "wall", UA: rvalue.Conductance(math.NaN())}}}}, `"wall" has a UA of NaN`},
		{"no UA", season.House{Weather: w, Ranking: &envelope.Ranking{Rows: []envelope.Row{{Name: "wall"}}}}, "must be positive"},
		{"indoors in °F", season.House{Indoors: rvalue.FromCelsius(68)}, "68.0 °C, give 0 to 40 °C"},
		{"indoors no number", season.House{Indoors: rvalue.Temperature(math.NaN())}, "give 0 to 40 °C"},
		{"negative gains", season.House{Gains: &season.Gains{Internal: -1}}, "gains of -1.00 W, give 0 to"},
		{"gains no number", season.House{Gains: &season.Gains{Solar: season.Power(math.NaN())}}, "gains of NaN W"},
		{"a floor in ft² as m²", season.House{Floor: 25000}, "floor area of 25000 m²"},
		{"negative bedrooms", season.House{Bedrooms: -1}, "-1 bedrooms, give 0 to 50"},
		{"nearness", season.House{From: 7}, "nearness of weather, 7"},

		{"price of nothing", season.House{Fuel: season.Fuel{Price: price(1, season.PerTherm)}}, "name the fuel"},
		{"no such fuel", season.House{Fuel: season.Fuel{Kind: 99}}, `"fuel 99" is no fuel (use gas`},
		{"negative price", season.House{Fuel: season.Fuel{Kind: season.NaturalGas, Price: price(-0.1, season.PerTherm)}}, "a price of -0.1 for gas"},
		{"price no number", season.House{Fuel: season.Fuel{Kind: season.NaturalGas, Price: price(math.NaN(), season.PerTherm)}}, "a price of NaN for gas"},
		{"price by no unit", season.House{Fuel: season.Fuel{Kind: season.NaturalGas, Price: price(1, 0)}}, `"no unit" is no unit of fuel (use therm`},
		{"gas by the cord", season.House{Fuel: season.Fuel{Kind: season.NaturalGas, Price: price(1, season.PerCord)}}, "no heat content of gas by the cord"},
		{"electricity by the gallon", season.House{Fuel: season.Fuel{Kind: season.Electricity, Price: price(1, season.PerGallon)}}, "not sold by the gallon"},
		{"heat of a therm", season.House{Fuel: season.Fuel{Kind: season.NaturalGas, Price: price(1, season.PerTherm), Heat: season.Therm}}, "an energy itself"},
		{"heat of what", season.House{Fuel: season.Fuel{Kind: season.NaturalGas, Heat: season.Therm}}, "without a price"},
		{"negative heat", season.House{Fuel: season.Fuel{Kind: season.Wood, Price: price(1, season.PerCord), Heat: -season.MMBtu}}, "must be positive"},
		{"negative emission", season.House{Fuel: season.Fuel{Kind: season.NaturalGas, CO2: &negative}}, "of carbon dioxide from gas"},

		{"no such plant", season.House{Plant: season.Plant{Kind: 99}}, `"plant 99" is no heating plant (use furnace`},
		{"furnace at 130 %", season.House{Fuel: gas, Plant: season.Plant{Kind: season.Furnace, Efficiency: 1.3}}, "furnace at an efficiency of 130 %, give 10 to 100 %"},
		{"furnace at 80, not 0.8", season.House{Fuel: gas, Plant: season.Plant{Kind: season.Furnace, Efficiency: 80}}, "8000 %, give 10 to 100 % (as a share, 0.1 to 1)"},
		{"boiler at 1 %", season.House{Fuel: gas, Plant: season.Plant{Kind: season.Boiler, Efficiency: 0.01}}, "give 10 to 100 %"},
		{"efficiency no number", season.House{Fuel: gas, Plant: season.Plant{Efficiency: math.NaN()}}, "give 10 to 100 %"},
		{"resistance at 101 %", season.House{Plant: season.Plant{Kind: season.Resistance, Efficiency: 1.01}}, "resistance at an efficiency of 101 %"},
		{"furnace by COP", season.House{Fuel: gas, Plant: season.Plant{Kind: season.Furnace, COP: 3}}, "COP and HSPF are a heat pump's"},
		{"furnace on electricity", season.House{Fuel: power, Plant: season.Plant{Kind: season.Furnace}}, "a furnace does not run on electricity"},
		{"heat pump on gas", season.House{Fuel: gas, Plant: season.Plant{Kind: season.HeatPump, COP: 3}}, "a heat pump does not run on gas"},
		{"stove on district heat", season.House{Fuel: season.Fuel{Kind: season.DistrictHeat}, Plant: season.Plant{Kind: season.Stove}}, "does not run on district heat"},
		{"heat pump by efficiency", season.House{Plant: season.Plant{Kind: season.HeatPump, Efficiency: 3}}, "give its COP, HSPF or HSPF2"},
		{"heat pump twice", season.House{Fuel: power, Plant: season.Plant{COP: 3, HSPF: 9}}, "more than one efficiency"},
		{"COP below 1", season.House{Fuel: power, Plant: season.Plant{COP: 0.9}}, "a COP of 0.900, below 1"},
		{"negative COP", season.House{Fuel: power, Plant: season.Plant{COP: -3}}, "below 1"},
		{"COP no number", season.House{Fuel: power, Plant: season.Plant{COP: math.NaN()}}, "COP of NaN"},
		{"HSPF as if it were COP", season.House{Fuel: power, Plant: season.Plant{HSPF: 2.5}}, "a COP of 0.733, below 1"},
		{"COP over Carnot's", season.House{Fuel: power, Plant: season.Plant{COP: 25}}, "(Carnot) is"},
		{"line out of order", season.House{Fuel: power, Plant: season.Plant{Line: []season.Point{at(47, 3, 0), at(17, 2, 0)}}}, "coldest first"},
		{"line with a point twice", season.House{Fuel: power, Plant: season.Plant{Line: []season.Point{at(17, 3, 0), at(17, 2, 0)}}}, "coldest first"},
		{"line below 1", season.House{Fuel: power, Plant: season.Plant{Line: []season.Point{at(5, 0.9, 0), at(17, 2, 0)}}}, "COP of 0.900 at 5 °F"},
		{"line over Carnot's", season.House{Fuel: power, Plant: season.Plant{Line: []season.Point{at(5, 9, 0), at(47, 9, 0)}}}, "Carnot"},
		{"capacity here and there", season.House{Fuel: power, Plant: season.Plant{Line: []season.Point{at(5, 2, 0), at(47, 3, 9000)}}}, "some points of the line only"},
		{"negative capacity", season.House{Fuel: power, Plant: season.Plant{Line: []season.Point{at(5, 2, -1)}}}, "a capacity of -1.00 W"},
		{"line at 999 °F", season.House{Fuel: power, Plant: season.Plant{Line: []season.Point{at(999, 2, 0)}}}, "from -60 to 60 °C"},

		{"cooling of COP under 1", season.House{Cooling: &season.Cooling{SEER: 3}}, "cooling of 3.00 Btu/Wh"},
		{"cooling over Carnot's", season.House{Cooling: &season.Cooling{EER: 130}}, "Carnot"},
		{"SEER and EER", season.House{Cooling: &season.Cooling{SEER: 14, EER: 11}}, "both SEER 14.0 and EER 11.0"},
		{"cooling base", season.House{Cooling: &season.Cooling{Base: rvalue.FromCelsius(65)}}, "65.0 °C, give 0 to 40 °C"},
		{"cooling by gas", season.House{Cooling: &season.Cooling{Electricity: gas}}, "only electricity"},
	} {
		h := c.h
		if h.Ranking == nil && c.name != "no ranking" {
			h.Ranking = ranking
		}
		if h.Weather == nil && c.name != "no weather" {
			h.Weather = w
		}
		y, err := h.Year()
		if err == nil {
			t.Errorf("%s: no error, %+v", c.name, y.Heating)
			continue
		}
		if !strings.Contains(err.Error(), c.want) || !strings.HasPrefix(err.Error(), "season: ") {
			t.Errorf("%s: %q, want it to say %q", c.name, err, c.want)
		}
	}
}

// TestNames reads back what String writes, and answers a wrong name with the right ones.
func TestNames(t *testing.T) {
	for k := season.NaturalGas; k <= season.DistrictHeat; k++ {
		if got, err := season.ParseFuel(k.String()); got != k || err != nil {
			t.Errorf("ParseFuel(%q) = %v, %v", k, got, err)
		}
	}
	for u := season.PerTherm; u <= season.PerKilogram; u++ {
		if got, err := season.ParseUnit(u.String()); got != u || err != nil {
			t.Errorf("ParseUnit(%q) = %v, %v", u, got, err)
		}
	}
	for k := season.Furnace; k <= season.HeatExchanger; k++ {
		if got, err := season.ParsePlant(k.String()); got != k || err != nil {
			t.Errorf("ParsePlant(%q) = %v, %v", k, got, err)
		}
	}
	if got, err := season.ParsePlant("  Heat   PUMP "); got != season.HeatPump || err != nil {
		t.Errorf("in upper case and spaces: %v, %v", got, err)
	}
	_, err := season.ParseFuel("peat")
	var name *season.NameError
	if !errors.As(err, &name) || name.Name != "peat" || err.Error() != `season: "peat" is no fuel (use gas, propane, oil, electricity, wood, pellets, district heat)` {
		t.Errorf("of peat: %v", err)
	}
	if _, err := season.ParseUnit("no unit"); err == nil {
		t.Error(`"no unit" is taken for a unit`)
	}
}

// TestFixesRefused: rows, U-factors, UA and costs that cannot be.
func TestFixesRefused(t *testing.T) {
	h := season.House{Ranking: exampleHouse(), Weather: station(t, "Duluth", "MN"), Indoors: rvalue.FromCelsius(20)}
	y := must(h.Year())(t)
	index := map[string]int{}
	for i, r := range y.Rows {
		index[r.Name] = i
	}
	first := func(_ any, err error) error { return err }
	nan := math.NaN()
	for _, c := range []struct {
		name, want string
		err        error
	}{
		{"row under 0", "no row -1", first(y.Meeting(-1))},
		{"row over the last", "no row 4, there are 4", first(y.Saving(4, 0.3))},
		{"no target", "nothing is asked of \"windows\"", first(y.Meeting(index["windows"]))},
		{"leakage by U", "has no area", first(y.Saving(index["air leakage"], 0.3))},
		{"zero U", "must be positive", first(y.Saving(0, 0))},
		{"U no number", "must be positive", first(y.Saving(0, rvalue.Transmittance(nan)))},
		{"negative UA", "a UA of -1 W/K", first(y.After(envelope.Fix{Row: 0, UA: -1}))},
		{"UA no number", "a UA of NaN", first(y.After(envelope.Fix{Row: 0, UA: rvalue.Conductance(nan)}))},
		{"the same twice", "fixed twice", first(y.After(envelope.Fix{Row: 0, UA: 1}, envelope.Fix{Row: 0, UA: 2}))},
		{"nothing left", "must be positive", first(y.After(envelope.Fix{Row: 0}, envelope.Fix{Row: 1}, envelope.Fix{Row: 2}, envelope.Fix{Row: 3}))},
		{"row of a load", "no row 9", first(y.Load(0, envelope.Fix{Row: 9}))},
		{"design warmer than the rooms", "a design temperature of 25.0 °C", first(y.Load(rvalue.FromCelsius(25)))},
		{"design no number", "a design temperature of NaN", first(y.Load(rvalue.Temperature(nan)))},
		{"design under any weather", "from -60 °C", first(y.Load(rvalue.FromCelsius(-80)))},
	} {
		if c.err == nil || !strings.Contains(c.err.Error(), c.want) {
			t.Errorf("%s: %v, want it to say %q", c.name, c.err, c.want)
		}
	}

	s := must(y.Meeting(0))(t)
	for _, cost := range []float64{-1, nan, math.Inf(1)} {
		if _, err := s.Payback(cost); err == nil {
			t.Errorf("a cost of %v is taken", cost)
		}
	}
	worse := must(y.Saving(0, 2*h.Ranking.Rows[0].U))(t)
	if _, err := worse.Payback(100); worse.Money >= 0 || err == nil || !strings.Contains(err.Error(), "saves no money") {
		t.Errorf("a worse wall saves %v: %v", worse.Money, err)
	}
	h.Fuel = season.Fuel{Kind: season.HeatingOil}
	s = must(must(h.Year())(t).Meeting(0))(t)
	if _, err := s.Payback(100); err == nil || !strings.Contains(err.Error(), "without a price") {
		t.Errorf("payback without a price: %v", err)
	}
}

// TestImports keeps the package where the layout puts it.
func TestImports(t *testing.T) {
	const module = "github.com/coldseam/coldseam/"
	allowed := map[string]bool{module + "rvalue": true, module + "climate": true, module + "assembly/envelope": true}
	for _, std := range []string{"errors", "fmt", "math", "strconv", "strings"} {
		allowed[std] = true
	}
	for _, entry := range must(os.ReadDir("."))(t) {
		name := entry.Name()
		if !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") {
			continue
		}
		for _, imp := range must(parser.ParseFile(token.NewFileSet(), name, nil, parser.ImportsOnly))(t).Imports {
			if path := strings.Trim(imp.Path.Value, `"`); !allowed[path] {
				t.Errorf("%s imports %s", name, path)
			}
		}
	}
}
