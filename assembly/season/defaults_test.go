package season_test

import (
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/coldseam/coldseam/assembly/season"
	"github.com/coldseam/coldseam/rvalue"
)

func codes(y *season.Year) (out []string) {
	for _, d := range y.Defaults {
		out = append(out, d.Code)
	}
	return out
}

// TestDefaultsAreListed: each with its value and source, and nothing that was given.
func TestDefaultsAreListed(t *testing.T) {
	w, ranking := station(t, "Boston", "MA"), invented(t, 250*rvalue.WattPerKelvin)
	co2 := 100 * season.PoundPerMMBtu
	for _, c := range []struct {
		name string
		h    season.House
		want []string
	}{
		{"nothing given", season.House{}, []string{"indoors", "gains-internal", "gains-solar", "fuel", "price", "heat-content", "co2", "plant", "efficiency"}},
		{"cooling too", season.House{Cooling: &season.Cooling{}}, []string{
			"indoors", "gains-internal", "gains-solar", "fuel", "price", "heat-content", "co2", "plant", "efficiency",
			"efficiency-cooling", "cooling-base", "price", "co2",
		}},
		{"all given", season.House{
			Indoors: rvalue.FromCelsius(20), Gains: &season.Gains{}, Plant: season.Plant{Kind: season.Boiler, Efficiency: 0.8},
			Fuel: season.Fuel{Kind: season.NaturalGas, Price: &season.Price{Amount: 15, Per: season.PerMcf}, Heat: 1.03 * season.MMBtu, CO2: &co2},
		}, nil},
		{"by the therm", season.House{
			Indoors: rvalue.FromCelsius(20), Gains: &season.Gains{}, Plant: season.Plant{Kind: season.Boiler, Efficiency: 0.8},
			Fuel: season.Fuel{Kind: season.NaturalGas, Price: &season.Price{Amount: 1.2, Per: season.PerTherm}},
		}, []string{"co2"}},
		{"heat pump", season.House{Gains: &season.Gains{}, Plant: season.Plant{Kind: season.HeatPump}}, []string{"indoors", "fuel", "price", "co2", "efficiency"}},
		{"resistance", season.House{Gains: &season.Gains{}, Fuel: season.Fuel{Kind: season.Electricity}}, []string{"indoors", "price", "co2", "plant"}},
		{"cooling and heating by the same electricity", season.House{
			Gains: &season.Gains{}, Fuel: season.Fuel{Kind: season.Electricity, Price: &season.Price{Amount: 0.2, Per: season.PerKWh}}, Cooling: &season.Cooling{SEER: 15},
		}, []string{"indoors", "co2", "plant", "cooling-base"}},
	} {
		c.h.Weather, c.h.Ranking = w, ranking
		y := must(c.h.Year())(t)
		if diff := cmp.Diff(c.want, codes(y)); diff != "" {
			t.Errorf("%s: defaults (-want +got)\n%s", c.name, diff)
		}
		for _, d := range y.Defaults {
			if d.What == "" || d.Value == "" || d.Source == "" {
				t.Errorf("%s: %+v says too little", c.name, d)
			}
			if (d.Code == "price" || d.Code == "co2" && !strings.Contains(d.Source, "memory")) && d.Date == "" {
				t.Errorf("%s: %+v has no date", c.name, d)
			}
		}
	}
}

// TestDefaultFigures: the dated defaults through whole houses, by what a unit costs,
// holds and gives off. The texts that are listed say the same.
func TestDefaultFigures(t *testing.T) {
	w, ranking := station(t, "Boston", "MA"), invented(t, 250*rvalue.WattPerKelvin)
	for _, c := range []struct {
		fuel               season.FuelKind
		unit               season.Unit
		price, heat, pound float64 // $, Btu and lb a unit; NaN: no default
		text               string
	}{
		{season.NaturalGas, season.PerMcf, 14.85, 1037e3, 1.037 * 117.00, "14.85 $ per mcf; 1037 Btu per ft³; 117.00 lb per million Btu (0.181 kg/kWh)"},
		{season.Propane, season.PerGallon, 2.674, 91452, 0.091452 * 139.05, "2.674 $ per gallon; 91452 Btu per gallon; 139.05 lb per million Btu (0.215 kg/kWh)"},
		{season.HeatingOil, season.PerGallon, math.NaN(), 138500, 0.1385 * 161.30, "138500 Btu per gallon; 161.30 lb per million Btu (0.250 kg/kWh)"},
		{season.Electricity, season.PerKWh, 0.1798, 3412.141633, 0.81, "0.1798 $ per kWh; 0.81 lb per kWh (0.367 kg/kWh)"},
		{season.Wood, season.PerCord, math.NaN(), 20e6, 20 * 93.80 / 0.45359237, "20 million Btu per cord; 93.80 kg per million Btu (0.320 kg/kWh)"},
		{season.Pellets, season.PerTon, math.NaN(), 16e6, 16 * 93.80 / 0.45359237, "16 million Btu per ton; 93.80 kg per million Btu (0.320 kg/kWh)"},
		{season.DistrictHeat, season.PerMMBtu, math.NaN(), 1e6, math.NaN(), ""},
	} {
		y := must(season.House{Ranking: ranking, Weather: w, Fuel: season.Fuel{Kind: c.fuel}}.Year())(t)
		if y.Unit != c.unit || y.MoneyKnown == math.IsNaN(c.price) || y.CO2Known == math.IsNaN(c.pound) {
			t.Errorf("%v is by the %v, money known %v, carbon dioxide known %v", c.fuel, y.Unit, y.MoneyKnown, y.CO2Known)
		}
		u := y.Heating
		near(t, c.fuel.String()+", Btu a unit", u.Bought.Btu()/u.Units, c.heat, 1e-6*c.heat)
		if y.MoneyKnown {
			near(t, c.fuel.String()+", $ a unit", u.Money/u.Units, c.price, 1e-9)
		} else if u.Money != 0 || !said(y, "price-missing") {
			t.Errorf("%v costs %v without a price: %v", c.fuel, u.Money, y.Remarks)
		}
		if y.CO2Known {
			near(t, c.fuel.String()+", lb a unit", u.CO2.IP()/u.Units, c.pound, 1e-9*c.pound)
		} else if u.CO2 != 0 || !said(y, "co2-missing") {
			t.Errorf("%v gives off %v: %v", c.fuel, u.CO2, y.Remarks)
		}
		var texts []string
		for _, d := range y.Defaults {
			if d.Code == "price" || d.Code == "heat-content" || d.Code == "co2" {
				texts = append(texts, d.Value)
			}
		}
		// Where the price is missing the heat content is still of the usual unit.
		if got := strings.Join(texts, "; "); got != c.text {
			t.Errorf("%v lists %q, want %q", c.fuel, got, c.text)
		}
	}
}

// TestForeignMoney: a default in dollars is no price in another currency.
func TestForeignMoney(t *testing.T) {
	h := season.House{Ranking: invented(t, 250*rvalue.WattPerKelvin), Weather: ukWeather(t), Currency: "£"}
	if y := must(h.Year())(t); y.MoneyKnown || y.Heating.Money != 0 || !said(y, "price-missing") {
		t.Errorf("%v of gas cost %v %v", y.Heating.Bought, y.Heating.Money, y.Currency)
	}
	h.Fuel = season.Fuel{Kind: season.NaturalGas, Price: &season.Price{Amount: 0.07, Per: season.PerKWh}}
	y := must(h.Year())(t)
	near(t, "£", y.Heating.Money, 0.07*y.Heating.Bought.KWh(), 1e-9)
}

// TestFreeWood: a price of 0 is a price.
func TestFreeWood(t *testing.T) {
	y := must(season.House{
		Ranking: invented(t, 250*rvalue.WattPerKelvin), Weather: station(t, "Duluth", "MN"),
		Fuel: season.Fuel{Kind: season.Wood, Price: &season.Price{Amount: 0, Per: season.PerCord}},
	}.Year())(t)
	if !y.MoneyKnown || y.Heating.Money != 0 || y.Heating.Units <= 0 || y.Plant != season.Stove {
		t.Errorf("%+v", y.Heating)
	}
}

// TestGainsByDefault: 1500 ft², 3 bedrooms: (17900 + 35700 + 12312)/24 = 2746.3 Btu/h;
// 15 m² of window: 300 W.
func TestGainsByDefault(t *testing.T) {
	h := season.House{Ranking: invented(t, 250*rvalue.WattPerKelvin), Weather: station(t, "Boston", "MA")}
	y := must(h.Year())(t)
	near(t, "internal, Btu/h", y.Gains.Internal.IP(), 65912.0/24, 1e-9)
	near(t, "solar, W", y.Gains.Solar.SI(), 300, 1e-9)
	h.Floor, h.Bedrooms = 1000*rvalue.SquareFoot, 2
	y = must(h.Year())(t)
	near(t, "internal of less, Btu/h", y.Gains.Internal.IP(), (17900+23800+8208)/24.0, 1e-9)
	if want := h.Indoors; y.Indoors.Fahrenheit() < 67.99 || y.Indoors.Fahrenheit() > 68.01 || want != 0 {
		t.Errorf("indoors by default %v", y.Indoors)
	}
}

// TestPlantsByDefault: AFUE 78 % and 80 %, 65 %, HSPF2 7.5, SEER 13.
func TestPlantsByDefault(t *testing.T) {
	h := season.House{Ranking: invented(t, 250*rvalue.WattPerKelvin), Weather: station(t, "Boston", "MA"), Cooling: &season.Cooling{}}
	for kind, want := range map[season.PlantKind]float64{
		season.Furnace: 0.78, season.Boiler: 0.80, season.Stove: 0.65, season.Resistance: 1, season.HeatPump: 7.5 / 3.412141633, season.HeatExchanger: 1,
	} {
		h.Plant.Kind = kind
		y := must(h.Year())(t)
		near(t, kind.String()+": heat over what is bought", float64(y.Heating.Heat/y.Heating.Bought), want, 1e-9)
		near(t, "cooling over what is bought", float64(y.Cooling.Heat/y.Cooling.Bought), 13/3.412141633, 1e-9)
	}
}

// TestUnitsOfFuel: what 1 $ a unit makes of a million Btu, by the sizes of NIST SP
// 811: the US gallon 3.785412 L, the cubic foot 0.02831685 m³, the short ton 907.1847 kg.
func TestUnitsOfFuel(t *testing.T) {
	for _, c := range []struct {
		fuel season.FuelKind
		unit season.Unit
		want float64 // Btu in a unit
	}{
		{season.NaturalGas, season.PerTherm, 1e5},
		{season.NaturalGas, season.PerKWh, 3412.142},
		{season.NaturalGas, season.PerMMBtu, 1e6},
		{season.NaturalGas, season.PerMJ, 947.8171},
		{season.NaturalGas, season.PerGJ, 947817.1},
		{season.NaturalGas, season.PerMcf, 1037e3},
		{season.NaturalGas, season.PerCcf, 103.7e3},
		{season.NaturalGas, season.PerCubicMetre, 1037 / 0.02831685},
		{season.Propane, season.PerLitre, 91452 / 3.785412},
		{season.HeatingOil, season.PerGallon, 138500},
		{season.Wood, season.PerCord, 20e6},
		{season.Pellets, season.PerKilogram, 16e6 / 907.1847},
	} {
		y := must(season.House{
			Ranking: invented(t, 250*rvalue.WattPerKelvin), Weather: station(t, "Boston", "MA"),
			Fuel: season.Fuel{Kind: c.fuel, Price: &season.Price{Amount: 1, Per: c.unit}},
		}.Year())(t)
		// Half the last of seven digits.
		near(t, c.fuel.String()+" by the "+c.unit.String(), y.Heating.Bought.Btu()/y.Heating.Units, c.want, 5e-7*c.want)
		near(t, "units are money at a price of 1", y.Heating.Money, y.Heating.Units, 1e-9*y.Heating.Units)
	}
}
