package season_test

import (
	"fmt"
	"testing"

	"github.com/coldseam/coldseam/assembly/envelope"
	"github.com/coldseam/coldseam/assembly/season"
	"github.com/coldseam/coldseam/rvalue"
)

// twenty is an envelope of 20 rows.
func twenty(b *testing.B) *envelope.Ranking {
	var e envelope.Envelope
	for i := range 20 {
		e.Parts = append(e.Parts, envelope.Part{
			Name: fmt.Sprint("part ", i), Kind: envelope.Wall, Area: 20, U: rvalue.Transmittance(0.3 + 0.05*float64(i)),
			Target: envelope.Target{U: 0.3 * rvalue.USI},
		})
	}
	return must(e.Rank())(b)
}

// BenchmarkYear: a whole season for 20 rows, meant to be under 20 µs.
func BenchmarkYear(b *testing.B) {
	w := station(b, "Duluth", "MN")
	ranking := twenty(b)
	line := []season.Point{{rvalue.FromFahrenheit(5), 1.8, 5000}, {rvalue.FromFahrenheit(17), 2.2, 6000}, {rvalue.FromFahrenheit(47), 3.5, 9000}}
	for _, c := range []struct {
		name string
		h    season.House
	}{
		{"defaults", season.House{}},
		{"furnace", season.House{
			Gains: &season.Gains{Internal: 800}, Fuel: season.Fuel{Kind: season.NaturalGas, Price: &season.Price{Amount: 1.2, Per: season.PerTherm}},
			Plant: season.Plant{Efficiency: 0.8}, From: season.OwnStation,
		}},
		{"cooling", season.House{Cooling: &season.Cooling{SEER: 14}}},
		{"heat pump", season.House{Fuel: season.Fuel{Kind: season.Electricity}, Plant: season.Plant{HSPF2: 8.1}}},
		{"heat pump of high COP", season.House{Fuel: season.Fuel{Kind: season.Electricity}, Plant: season.Plant{COP: 4}}},
		{"heat pump line", season.House{Fuel: season.Fuel{Kind: season.Electricity}, Plant: season.Plant{Line: line}}},
	} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			c.h.Ranking, c.h.Weather = ranking, w
			for b.Loop() {
				if _, err := c.h.Year(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// BenchmarkMeeting: what one row saves, at the house's balance before and after.
func BenchmarkMeeting(b *testing.B) {
	y := must(season.House{Ranking: twenty(b), Weather: station(b, "Duluth", "MN")}.Year())(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := y.Meeting(0); err != nil {
			b.Fatal(err)
		}
	}
}
