package season_test

import (
	"math"
	"testing"

	"github.com/coldseam/coldseam/assembly/envelope"
	"github.com/coldseam/coldseam/assembly/season"
	"github.com/coldseam/coldseam/climate"
	"github.com/coldseam/coldseam/rvalue"
)

// TestMeetingByHand: walls of half the UA go to 30 % of their U, windows of a quarter
// to 60 %; the floor meets its target, of the ceiling nothing is asked.
func TestMeetingByHand(t *testing.T) {
	w := station(t, "Boston", "MA")
	y := must(season.House{
		Ranking: invented(t, 200*rvalue.WattPerKelvin), Weather: w, Indoors: rvalue.FromCelsius(20), Gains: &season.Gains{Internal: 800},
		Fuel: season.Fuel{Kind: season.NaturalGas, Price: &season.Price{Amount: 0.05, Per: season.PerKWh}}, Plant: season.Plant{Efficiency: 0.8},
	}.Year())(t)
	near(t, "balance, °C", y.Balance.Celsius(), 20-800/200.0, 1e-9)
	heat := func(ua float64) float64 { // kWh
		return 0.024 * ua * must(w.Year(rvalue.FromCelsius(20-800/ua)))(t).Heating.SI()
	}
	for i, less := range []float64{0.7 * 100, 0.4 * 50} {
		s := must(y.Meeting(i))(t)
		want := heat(200) - heat(200-less)
		near(t, y.Rows[i].Name+": UA", s.UA.SI(), less, 1e-9)
		near(t, y.Rows[i].Name+": balance, °C", s.Balance.Celsius(), 20-800/(200-less), 1e-9)
		near(t, y.Rows[i].Name+": heat, kWh", s.Heating.Heat.KWh(), want, 1e-6)
		near(t, y.Rows[i].Name+": money", s.Money, want/0.8*0.05, 1e-7)
		near(t, y.Rows[i].Name+": carbon dioxide, lb", s.CO2.IP(), want/0.8*3412.141633/1e6*117, 1e-5)
	}
	// The same by U-factor, and by a UA.
	a := must(y.Meeting(0))(t)
	b := must(y.Saving(0, rvalue.Transmittance(0.3*100/120.0)))(t)
	c := must(y.After(envelope.Fix{Row: 0, UA: 30 * rvalue.WattPerKelvin}))(t)
	near(t, "by U", b.Money, a.Money, 1e-9)
	near(t, "by UA", c.Money, a.Money, 1e-9)
	for i, r := range y.Rows {
		if r.Name != "floor" {
			continue
		}
		if s := must(y.Meeting(i))(t); s.UA != 0 || s.Money != 0 {
			t.Errorf("the floor meets its target and saves %+v", s)
		}
	}
}

// TestTowardABuffer: 25 W/K to the attic are 18.75 W/K to outdoors. With 10 W/K the attic
// is colder: b = 75/85.
func TestTowardABuffer(t *testing.T) {
	ranking := must(envelope.Envelope{
		Parts: []envelope.Part{
			{Name: "walls", Kind: envelope.Wall, Area: 100, U: 1},
			{Name: "ceiling", Kind: envelope.Ceiling, Area: 50, U: 0.5, Toward: "attic", Target: envelope.Target{U: 0.2}},
		},
		Buffers: []envelope.Buffer{{Name: "attic", ToOutdoors: 75}}, // b = 75/(25 + 75)
	}.Rank())(t)
	y := must(season.House{Ranking: ranking, Weather: station(t, "Boston", "MA")}.Year())(t)
	near(t, "UA by U", must(y.Saving(1, 0.2))(t).UA.SI(), 18.75-10*75./85, 1e-9)
	near(t, "UA by target", must(y.Meeting(1))(t).UA.SI(), 18.75-10*75./85, 1e-9)
}

// TestPayback: a new house to the code of 2009 costs 818.72 $ more, saves 243.37 $ a
// year and pays back in 3.364 years (BCAP and EPA, 2010; printed 819, 243, 3.36).
func TestPayback(t *testing.T) {
	h := season.House{
		Ranking: invented(t, 200*rvalue.WattPerKelvin), Weather: station(t, "Boston", "MA"), Gains: &season.Gains{},
		Fuel: season.Fuel{Kind: season.NaturalGas, Price: &season.Price{Amount: 1, Per: season.PerTherm}}, From: season.OwnStation,
	}
	h.Fuel.Price.Amount = 243.37 / must(must(h.Year())(t).Meeting(0))(t).Money
	y := must(h.Year())(t)
	s := must(y.Meeting(0))(t)
	near(t, "saved, $", s.Money, 243.37, 1e-9)
	p := must(s.Payback(818.72))(t)
	near(t, "years", p.Years, 3.364, 0.0005)
	near(t, "soonest", p.Soonest, p.Years/y.Trust.High, rounding)
	near(t, "longest", p.Longest, p.Years/(0.39*y.Trust.Low), 1e-9)
}

// TestTrustByHand: 102 °F·d of the degree days, and 24.4 % or 20.4 % for the station.
func TestTrustByHand(t *testing.T) {
	h := season.House{
		Ranking: invented(t, 200*rvalue.WattPerKelvin), Weather: station(t, "Boston", "MA"), Gains: &season.Gains{Internal: 600},
	}
	for from, station := range map[season.From]float64{season.OwnStation: 0, season.NearestAtElevation: 0.204, season.NearestStation: 0.244} {
		h.From = from
		y := must(h.Year())(t)
		want := math.Hypot(102/y.DegreeDays.IP(), station)
		near(t, "high", y.Trust.High, 1+want, 1e-9)
		near(t, "low", y.Trust.Low, 1-want, 1e-9)
	}
	// Default gains that may be off by half: the house with half the gains is within.
	h.Gains, h.From = nil, season.OwnStation
	y := must(h.Year())(t)
	h.Gains = &season.Gains{Internal: y.Gains.Internal / 2, Solar: y.Gains.Solar / 2}
	more := must(h.Year())(t)
	off := float64(more.Heating.Heat/y.Heating.Heat) - 1
	near(t, "high with default gains", y.Trust.High, 1+math.Hypot(off, 102/y.DegreeDays.IP()), 1e-9)

	// Where there is no winter nothing is claimed.
	h.Weather, h.Gains = station(t, "Honolulu", "HI"), &season.Gains{Internal: 5000}
	if y := must(h.Year())(t); y.Trust.Low != 0 || y.Trust.High != 1 {
		t.Errorf("in Honolulu %+v", y.Trust)
	}
}

func TestFromOf(t *testing.T) {
	for _, c := range []struct {
		distance, climb rvalue.Length
		known           bool
		want            season.From
	}{
		{5e3, 20, true, season.OwnStation},
		{5e3, 0, false, season.NearestStation}, // it may lie on a mountain
		{5e3, -400, true, season.NearestAtElevation},
		{5e3, 400, true, season.NearestAtElevation},
		{80e3, 20, true, season.NearestAtElevation},
		{80e3, 0, false, season.NearestStation},
	} {
		if got := season.FromOf(climate.Weather{Distance: c.distance, Climb: c.climb}, c.known); got != c.want {
			t.Errorf("%+v: got %v", c, got)
		}
	}
}

// TestLoadByHand: 200 W/K and 20 °C to −20 °C are 8 kW, 27297 Btu/h, 2.27 tons.
func TestLoadByHand(t *testing.T) {
	w := station(t, "Boston", "MA")
	h := season.House{Ranking: invented(t, 200*rvalue.WattPerKelvin), Weather: w, Indoors: rvalue.FromCelsius(20)}
	y := must(h.Year())(t)
	l := must(y.Load(rvalue.FromCelsius(-20)))(t)
	near(t, "W", l.Loss.SI(), 8000, 1e-8)
	near(t, "Btu/h", l.Loss.IP(), 27297.13, 0.005)
	near(t, "tons", l.Tons(), 2.2748, 0.00005)
	near(t, "walls, W", l.Rows[0].SI(), 4000, 1e-8)
	if l.Estimate || l.How != "as given" || l.Doubt != 0 {
		t.Errorf("a given temperature is said to be %+v", l)
	}

	l = must(y.Load(0))(t)
	d := w.HeatingDesign()
	near(t, "W at climate's estimate", l.Loss.SI(), 200*(20-d.Temperature.Celsius()), 1e-8)
	near(t, "doubt, W", (l.High - l.Low).SI(), 2*200*d.Doubt.SI(), 1e-8)
	if !l.Estimate || l.How != d.How || l.Outdoors != d.Temperature {
		t.Errorf("an estimate is said to be %+v", l)
	}
	target := must(h.Ranking.ToTarget(0))(t)
	near(t, "W with the walls at their target", must(y.Load(rvalue.FromCelsius(-20), target))(t).Loss.SI(), 40*130, 1e-8)
}

// TestCoolingByHand: UA times the degree days at the base, over SEER/3.412.
func TestCoolingByHand(t *testing.T) {
	w := station(t, "Miami", "FL")
	h := season.House{
		Ranking: invented(t, 200*rvalue.WattPerKelvin), Weather: w,
		Cooling: &season.Cooling{SEER: 14, Electricity: season.Fuel{Kind: season.Electricity, Price: &season.Price{Amount: 0.15, Per: season.PerKWh}}},
	}
	y := must(h.Year())(t)
	cdd := must(w.Year(rvalue.FromFahrenheit(65)))(t).Cooling.SI()
	heat := 0.024 * 200 * cdd
	near(t, "heat, kWh", y.Cooling.Heat.KWh(), heat, 1e-8)
	near(t, "electricity, kWh", y.Cooling.Bought.KWh(), heat*3.412141633/14, 1e-5)
	near(t, "money", y.Cooling.Money, heat*3.412141633/14*0.15, 1e-6)
	if y.CoolingUnit != season.PerKWh || !said(y, "cooling-partial") {
		t.Errorf("by the %v, remarks %v", y.CoolingUnit, y.Remarks)
	}
	s := must(y.Meeting(0))(t) // 70 of 200 W/K go
	near(t, "saved in summer", s.Cooling.Money, y.Cooling.Money*70/200, 1e-9)
	near(t, "saved in all", s.Money, s.Cooling.Money+s.Heating.Money, 1e-12)
}

// TestWarmBox: gains that no winter beats need no heat, which is remarked.
func TestWarmBox(t *testing.T) {
	h := season.House{
		Ranking: invented(t, 10*rvalue.WattPerKelvin), Weather: station(t, "Fairbanks", "AK"), Gains: &season.Gains{Internal: 2000},
	}
	for _, p := range plants() {
		h.Fuel, h.Plant = p.Fuel, p.Plant
		y := must(h.Year())(t)
		if y.Heating.Heat > season.KilowattHour || !said(y, "no-heating") {
			t.Errorf("%v: %v of heat, remarks %v", h.Plant, y.Heating.Heat, y.Remarks)
		}
	}
}
