package season_test

import (
	"math"
	"testing"

	"github.com/coldseam/coldseam/assembly/envelope"
	"github.com/coldseam/coldseam/assembly/season"
	"github.com/coldseam/coldseam/climate"
	"github.com/coldseam/coldseam/rvalue"
	"github.com/coldseam/coldseam/testdata"
)

// readCSV reads a file of testdata, each row of which must have its mark.
func readCSV(t *testing.T, name string) []testdata.Row {
	t.Helper()
	return testdata.Read(t, name, "mark")
}

// baseOf returns the base at which a place has so many heating degree days.
func baseOf(t *testing.T, w *climate.Prepared, want climate.DegreeDays) rvalue.Temperature {
	t.Helper()
	lo, hi := 0.0, 40.0
	for range 60 {
		mid := (lo + hi) / 2
		if must(w.Year(rvalue.FromCelsius(mid)))(t).Heating < want {
			lo = mid
		} else {
			hi = mid
		}
	}
	return rvalue.FromCelsius(lo)
}

// TestDegreeDayExamples runs published fuel sums through whole houses: in Boston,
// without gains, at the indoor temperature that has the example's degree days.
func TestDegreeDayExamples(t *testing.T) {
	boston := station(t, "Boston", "MA")
	for _, row := range readCSV(t, "season_degreeday.csv") {
		n := func(key string) float64 { return row.Number(t, key) }
		dd := climate.DegreeDays(n("degree_days")) * climate.FahrenheitDay
		y := must(season.House{
			Ranking: invented(t, rvalue.Conductance(n("loss")/n("difference"))*rvalue.BtuPerHourF),
			Weather: boston, Indoors: baseOf(t, boston, dd), Gains: &season.Gains{},
			Fuel: season.Fuel{
				Kind: season.NaturalGas, Price: &season.Price{Amount: 1, Per: season.PerMcf},
				Heat: season.Energy(1000*n("heat_content")) * season.Btu,
			},
			Plant: season.Plant{Kind: season.Furnace, Efficiency: n("efficiency")},
		}.Year())(t)
		got := math.NaN()
		switch row["unit"] {
		case "Btu per °F·d":
			got = y.Heating.Heat.Btu() / y.DegreeDays.IP()
		case "ft³":
			got = 1000 * y.Heating.Units
		case "MMBtu":
			got = y.Heating.Heat.MMBtu()
		case "therm":
			got = y.Heating.Bought.Therms()
		}
		near(t, row["name"]+", "+row["unit"], got, n("want"), n("digit"))
	}
}

// ukWeather is that of the UK standard year.
func ukWeather(t testing.TB) *climate.Prepared {
	t.Helper()
	g := climate.Given{Latitude: 53}
	for _, c := range []float64{2.76, 3.29, 5.92, 7.90, 11.08, 13.80, 17.24, 15.89, 13.20, 9.82, 6.33, 4.34} {
		g.Mean = append(g.Mean, rvalue.FromCelsius(c))
	}
	n := must(g.Normals())(t)
	w := must(n.Prepare())(t)
	return &w
}

// TestOwnBase holds the heat before and after a fix, each at its own balance
// temperature, against the published degree days of these bases.
func TestOwnBase(t *testing.T) {
	const lastDigit = 0.05 // of the difference in %, which is printed with one decimal
	uk := ukWeather(t)
	var heat, published []float64
	for _, row := range readCSV(t, "season_ownbase.csv") {
		n := func(key string) float64 { return row.Number(t, key) }
		y := must(season.House{
			Ranking: invented(t, rvalue.Conductance(n("ua"))*rvalue.WattPerKelvin), Weather: uk, Indoors: rvalue.FromCelsius(n("indoors")),
			Gains: &season.Gains{Internal: season.Power(n("gains")) * season.Watt},
		}.Year())(t)
		near(t, row["name"]+": balance, °C", y.Balance.Celsius(), n("balance"), 1e-9)
		want := 24 * n("ua") * n("degree_days") / 1000
		near(t, row["name"]+": heat over published, %", 100*(y.Heating.Heat.KWh()/want-1), n("off"), lastDigit)
		heat, published = append(heat, y.Heating.Heat.KWh()), append(published, want)
	}
	// The saving is the difference of the two: published 24·(300·2463 − 135·1060) Wh,
	// 14.30 MWh. UA·DD at the first base, 24·165·2463 Wh, would be a third too little.
	y := must(season.House{
		Ranking: invented(t, 300*rvalue.WattPerKelvin), Weather: uk, Indoors: rvalue.FromCelsius(20),
		Gains: &season.Gains{Internal: 1350 * season.Watt},
	}.Year())(t)
	// Walls from 150 to 35 W/K and windows from 75 to 25 W/K.
	s := must(y.After(envelope.Fix{Row: 0, UA: 35 * rvalue.WattPerKelvin}, envelope.Fix{Row: 1, UA: 25 * rvalue.WattPerKelvin}))(t)
	near(t, "UA that goes away", s.UA.SI(), 165, 1e-9)
	near(t, "balance after", s.Balance.Celsius(), 10, 1e-9)
	near(t, "saving, kWh", s.Heating.Heat.KWh(), heat[1]-heat[2], 1e-8)
	// The first heat is 1.1 % under the published and the second 0.8 % over it (above),
	// which makes (1.1·17.73 + 0.8·3.43)/14.30 = 1.5 %.
	near(t, "saving over published, %", 100*(s.Heating.Heat.KWh()/(published[1]-published[2])-1), -1.5, 0.1)
}

func TestPrices(t *testing.T) {
	boston := station(t, "Boston", "MA")
	for _, row := range readCSV(t, "season_price.csv") {
		n := func(key string) float64 { return row.Number(t, key) }
		h := season.House{
			Ranking: invented(t, 200*rvalue.WattPerKelvin), Weather: boston,
			Fuel: season.Fuel{
				Kind:  must(season.ParseFuel(row["fuel"]))(t),
				Price: &season.Price{Amount: n("price"), Per: must(season.ParseUnit(row["unit"]))(t)},
				Heat:  season.Energy(n("heat")) * season.Btu,
			},
			Plant: season.Plant{Kind: must(season.ParsePlant(row["plant"]))(t)},
		}
		if h.Plant.Kind == season.HeatPump {
			h.Plant.COP = n("figure")
		} else {
			h.Plant.Efficiency = n("figure")
		}
		y := must(h.Year())(t)
		got := y.Heating.Money / y.Heating.Heat.MMBtu()
		if row["per"] == "therm" {
			got = y.Heating.Money / y.Heating.Bought.Therms()
		}
		near(t, row["name"]+", $ per "+row["per"], got, n("want"), n("digit"))
	}
}

func TestCOPFrom(t *testing.T) {
	for _, row := range readCSV(t, "season_cop.csv") {
		near(t, "COP of HSPF "+row["hspf"], season.COPFrom(row.Number(t, "hspf")), row.Number(t, "cop"), 0.0005)
	}
}

func TestCO2(t *testing.T) {
	for _, row := range readCSV(t, "season_co2.csv") {
		n := func(key string) float64 { return row.Number(t, key) }
		e := season.Emission(n("lb_per_mmbtu")) * season.PoundPerMMBtu
		near(t, row["fuel"]+", kg per million Btu", e.Of(season.MMBtu).SI(), n("kg_per_mmbtu"), 0.005)
		near(t, row["fuel"]+", lb per "+row["unit"], e.Of(season.Energy(n("heat"))*season.Btu).IP(), n("per_unit"), n("digit"))

		// The default is this factor, through a whole house.
		y := must(season.House{
			Ranking: invented(t, 200*rvalue.WattPerKelvin), Weather: station(t, "Boston", "MA"),
			Fuel: season.Fuel{Kind: must(season.ParseFuel(row["fuel"]))(t)},
		}.Year())(t)
		near(t, row["fuel"]+" by default, lb per million Btu", y.Heating.CO2.IP()/y.Heating.Bought.MMBtu(), n("lb_per_mmbtu"), 1e-9)
	}
}
