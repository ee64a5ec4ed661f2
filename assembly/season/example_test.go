package season_test

import (
	"fmt"

	"github.com/coldseam/coldseam/assembly/envelope"
	"github.com/coldseam/coldseam/assembly/season"
	"github.com/coldseam/coldseam/climate"
	"github.com/coldseam/coldseam/rvalue"
)

// exampleHouse is invented: 1100 ft² of leaky frame house.
func exampleHouse() *envelope.Ranking {
	r, err := envelope.Envelope{
		Parts: []envelope.Part{
			{
				Name: "walls", Kind: envelope.Wall, Area: 1150 * rvalue.SquareFoot, U: 0.24 * rvalue.UIP,
				Target:   envelope.Target{U: 0.045 * rvalue.UIP, Text: "IECC 2021, zone 7"},
				Openings: []envelope.Opening{{Name: "windows", Kind: envelope.Window, Area: 12.5 * rvalue.SquareFoot, Count: 12, U: 0.50 * rvalue.UIP}},
			},
			{
				Name: "attic floor", Kind: envelope.Ceiling, Area: 1100 * rvalue.SquareFoot, U: 0.08 * rvalue.UIP,
				Target: envelope.Target{U: 0.024 * rvalue.UIP, Text: "IECC 2021, zone 7"},
			},
		},
		Leakage: &envelope.Leakage{Flow50: envelope.ACH50(9, 8800*rvalue.CubicFoot), Volume: 8800 * rvalue.CubicFoot},
	}.Rank()
	if err != nil {
		panic(err)
	}
	return r
}

// duluth is the weather of St. Louis County, Minnesota.
func duluth() *climate.Prepared {
	county, err := climate.Parse("St. Louis County, MN")
	if err != nil {
		panic(err)
	}
	weather, err := climate.Nearest(county.Spot())
	if err != nil {
		panic(err)
	}
	p, err := weather.Normals.Prepare()
	if err != nil {
		panic(err)
	}
	return &p
}

// gasHouse is the invented house with a gas furnace, all its figures given.
func gasHouse() season.House {
	return season.House{
		Ranking: exampleHouse(), Weather: duluth(), Indoors: rvalue.FromFahrenheit(68),
		Gains: &season.Gains{Internal: 600 * season.Watt, Solar: 300 * season.Watt},
		Fuel:  season.Fuel{Kind: season.NaturalGas, Price: &season.Price{Amount: 1.20, Per: season.PerTherm}},
		Plant: season.Plant{Kind: season.Furnace, Efficiency: 0.80},
	}
}

func ExampleHouse_Year() {
	y, err := gasHouse().Year()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("balance at %s, %s there\n", y.Balance.In(rvalue.IP), y.DegreeDays.In(rvalue.IP))
	for _, r := range y.Rows {
		fmt.Printf("%-12s %s  $%.0f\n", r.Name, r.Heating.Heat.In(rvalue.IP), r.Heating.Money)
	}
	fmt.Printf("%.0f therm, $%.0f, %s of carbon dioxide\n", y.Heating.Units, y.Heating.Money, y.Heating.CO2.In(rvalue.IP))
	fmt.Printf("truth between %.0f and %.0f %% of that\n", 100*y.Trust.Low, 100*y.Trust.High)
	for _, d := range y.Defaults {
		fmt.Printf("%s: %s (%s, %s)\n", d.What, d.Value, d.Source, d.Date)
	}
	// Output:
	// balance at 62 °F, 8385 °F·d there
	// walls        48.3 MMBtu  $725
	// attic floor  17.7 MMBtu  $266
	// air leakage  15.5 MMBtu  $233
	// windows      15.1 MMBtu  $226
	// 1208 therm, $1449, 14130 lb of carbon dioxide
	// truth between 76 and 124 % of that
	// carbon dioxide of gas: 117.00 lb per million Btu (0.181 kg/kWh) (EIA, carbon dioxide emissions coefficients, Feb 2016)
}

func ExampleYear_Meeting() {
	y, err := gasHouse().Year()
	if err != nil {
		fmt.Println(err)
		return
	}
	s, err := y.Meeting(0) // the walls
	if err != nil {
		fmt.Println(err)
		return
	}
	p, err := s.Payback(4000)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%s of heat, $%.0f, %s of carbon dioxide less a year\n", s.Heating.Heat.In(rvalue.IP), s.Money, s.CO2.In(rvalue.IP))
	fmt.Printf("balance from %s to %s\n", y.Balance.In(rvalue.IP), s.Balance.In(rvalue.IP))
	fmt.Printf("$4000 come back in %.0f years, or in %.0f to %.0f\n", p.Years, p.Soonest, p.Longest)
	// Output:
	// 47.7 MMBtu of heat, $716, 6981 lb of carbon dioxide less a year
	// balance from 62 °F to 57 °F
	// $4000 come back in 6 years, or in 4 to 19
}

func ExampleYear_Load() {
	h := gasHouse()
	y, err := h.Year()
	if err != nil {
		fmt.Println(err)
		return
	}
	walls, err := h.Ranking.ToTarget(0)
	if err != nil {
		fmt.Println(err)
		return
	}
	design := rvalue.FromFahrenheit(-16) // as the building department says
	for _, fixes := range [][]envelope.Fix{nil, {walls}} {
		l, err := y.Load(design, fixes...)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%s (%s, %.1f tons)\n", l.Loss.In(rvalue.IP), l.Loss.In(rvalue.SI), l.Tons())
	}
	// Output:
	// 40325 Btu/h (11818 W, 3.4 tons)
	// 23945 Btu/h (7018 W, 2.0 tons)
}

// HSPF becomes a seasonal COP by the Btu in a watt-hour.
func ExampleCOPFrom() {
	fmt.Printf("%.3f\n", season.COPFrom(8.5))
	// Output: 2.491
}
