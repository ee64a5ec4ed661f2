package season_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/coldseam/coldseam/assembly/envelope"
	"github.com/coldseam/coldseam/assembly/season"
	"github.com/coldseam/coldseam/climate"
	"github.com/coldseam/coldseam/rvalue"
)

// places are the prepared normals of every ninth station.
func places(t *testing.T) (out []*climate.Prepared) {
	t.Helper()
	i := 0
	for s := range climate.Stations {
		if i++; i%9 != 0 {
			continue
		}
		n := s.Normals()
		w := must(n.Prepare())(t)
		out = append(out, &w)
	}
	if len(out) < 30 {
		t.Fatalf("only %d places", len(out))
	}
	return out
}

// plants are all that can heat, each with its fuel.
func plants() []season.House {
	line := []season.Point{{rvalue.FromFahrenheit(5), 1.7, 4000}, {rvalue.FromFahrenheit(17), 2.1, 5200}, {rvalue.FromFahrenheit(47), 3.4, 8800}}
	plain := make([]season.Point, len(line))
	for i, p := range line {
		plain[i] = season.Point{Outdoors: p.Outdoors, COP: p.COP}
	}
	return []season.House{
		{},
		{Fuel: season.Fuel{Kind: season.Propane}, Plant: season.Plant{Kind: season.Boiler, Efficiency: 0.9}},
		{Fuel: season.Fuel{Kind: season.Electricity}},
		{Fuel: season.Fuel{Kind: season.Electricity}, Plant: season.Plant{HSPF2: 8.1}},
		{Fuel: season.Fuel{Kind: season.Electricity}, Plant: season.Plant{Line: plain}},
		{Fuel: season.Fuel{Kind: season.Electricity}, Plant: season.Plant{Line: line}},
	}
}

// random returns a house somewhere with some plant.
func random(t *testing.T, r *rand.Rand, where []*climate.Prepared) season.House {
	t.Helper()
	all := plants()
	h := all[r.IntN(len(all))]
	h.Weather = where[r.IntN(len(where))]
	h.Ranking = invented(t, rvalue.Conductance(50*math.Exp(3*r.Float64()))) // 50 to 1000 W/K
	h.Indoors = rvalue.FromCelsius(16 + 8*r.Float64())
	h.Gains = &season.Gains{Internal: season.Power(1500 * r.Float64()), Solar: season.Power(800 * r.Float64())}
	h.Cooling = &season.Cooling{SEER: 14}
	return h
}

// TestRowsSumToTheHouse, to the last bit.
func TestRowsSumToTheHouse(t *testing.T) {
	r, where := rand.New(rand.NewPCG(1, 5)), places(t)
	for range 300 {
		y := must(random(t, r, where).Year())(t)
		var heating, cooling season.Use
		share := 0.0
		add := func(s *season.Use, u season.Use) {
			s.Heat += u.Heat
			s.Bought += u.Bought
			s.Units += u.Units
			s.Money += u.Money
			s.CO2 += u.CO2
		}
		for _, row := range y.Rows {
			add(&heating, row.Heating)
			add(&cooling, row.Cooling)
			share += row.Share
		}
		if heating != y.Heating || cooling != y.Cooling {
			t.Fatalf("rows sum to %+v and %+v, the house has %+v and %+v", heating, cooling, y.Heating, y.Cooling)
		}
		near(t, "sum of shares", share, 1, rounding)
		want := y.UA.SI() * y.DegreeDays.SI() * 24 / 1000
		near(t, "heat over UA·DD", y.Heating.Heat.KWh()/max(want, 1e-9), min(1, want/1e-9), 1e-9)
	}
}

// TestDoubleUADoublesHeat at a fixed base: with twice the gains the balance is the same.
func TestDoubleUADoublesHeat(t *testing.T) {
	r, where := rand.New(rand.NewPCG(2, 5)), places(t)
	for range 100 {
		h := random(t, r, where)
		h.Plant, h.Fuel = season.Plant{}, season.Fuel{} // a pump with a capacity would be too small
		one := must(h.Year())(t)
		h.Ranking = invented(t, 2*one.UA)
		h.Gains = &season.Gains{Internal: 2 * one.Gains.Internal, Solar: 2 * one.Gains.Solar}
		two := must(h.Year())(t)
		near(t, "balance of the two", two.Balance.Sub(one.Balance).SI(), 0, 1e-9)
		if one.DegreeDays > 1 { // below, the digits are the balance's rounding
			near(t, "ratio of heat", float64(two.Heating.Heat/one.Heating.Heat), 2, 1e-8)
			near(t, "ratio of money", two.Heating.Money/one.Heating.Money, 2, 1e-8)
		}
	}
}

// TestInsulationHelps: less UA lowers the balance temperature and never raises heat,
// money or carbon dioxide, whatever heats the house; and what goes away is at least
// the row's own part of the heat that its UA was of.
func TestInsulationHelps(t *testing.T) {
	// The heat pump's steps move with the balance temperature; see lineStep.
	const steps = 1e-4
	r, where := rand.New(rand.NewPCG(3, 5)), places(t)
	for range 400 {
		h := random(t, r, where)
		y := must(h.Year())(t)
		row, keep := r.IntN(len(y.Rows)), 0.98*r.Float64()
		fix := envelope.Fix{Row: row, UA: rvalue.Conductance(keep * y.Rows[row].UA.SI())}
		s := must(y.After(fix))(t)
		if s.Balance > y.Balance || s.UA <= 0 {
			t.Errorf("balance rose from %v to %v", y.Balance, s.Balance)
		}
		if s.Heating.Heat < 0 || s.Cooling.Heat < 0 {
			t.Errorf("heat rose: %+v", s)
		}
		if least := -steps * y.Heating.Money; s.Heating.Money < least || s.Heating.CO2 < -season.Mass(steps)*y.Heating.CO2 {
			t.Errorf("the bill rose by %v of %v (%v at %v)", -s.Heating.Money, y.Heating.Money, h.Plant, y.Balance)
		}
		own := (1 - keep) * float64(y.Rows[row].Heating.Heat)
		if float64(s.Heating.Heat) < own*(1-1e-9) {
			t.Errorf("saved %v, less than the row's own part %v", s.Heating.Heat, season.Energy(own))
		}
	}
}

// TestTwoFixesTogether save no more than the sum of each alone, as the heat is a
// convex function of the UA.
func TestTwoFixesTogether(t *testing.T) {
	r, where := rand.New(rand.NewPCG(4, 5)), places(t)
	for range 200 {
		y := must(random(t, r, where).Year())(t)
		a := envelope.Fix{Row: 0, UA: rvalue.Conductance(r.Float64() * y.Rows[0].UA.SI())}
		b := envelope.Fix{Row: 1, UA: rvalue.Conductance(r.Float64() * y.Rows[1].UA.SI())}
		both := must(y.After(a, b))(t).Heating.Heat
		alone := must(y.After(a))(t).Heating.Heat + must(y.After(b))(t).Heating.Heat
		if float64(both) > float64(alone)*(1+1e-9)+1 { // 1 J
			t.Errorf("both save %v, each alone %v in all", both, alone)
		}
	}
}

// TestNothingFixedSavesNothing, and fixing comes out as computing the fixed house anew.
func TestFixedHouseIsTheNewHouse(t *testing.T) {
	r, where := rand.New(rand.NewPCG(5, 5)), places(t)
	for range 100 {
		h := random(t, r, where)
		y := must(h.Year())(t)
		if s := must(y.After())(t); s.Money != 0 || s.UA != 0 || s.Heating != (season.Use{}) {
			t.Errorf("no fix saves %+v", s)
		}
		var fixes []envelope.Fix
		for i, row := range y.Rows {
			fixes = append(fixes, envelope.Fix{Row: i, UA: rvalue.Conductance(0.5 * row.UA.SI())})
		}
		s := must(y.After(fixes...))(t)
		h.Ranking = invented(t, rvalue.Conductance(0.5*y.UA.SI()))
		half := must(h.Year())(t)
		near(t, "money afterwards", y.Heating.Money+y.Cooling.Money-s.Money, half.Heating.Money+half.Cooling.Money, 1e-6)
		near(t, "carbon dioxide afterwards", (y.Heating.CO2 + y.Cooling.CO2 - s.CO2).SI(), (half.Heating.CO2 + half.Cooling.CO2).SI(), 1e-5)
	}
}

// TestTrustHoldsTheEstimate: Low ≤ 1 ≤ High, and a saving is never trusted more.
func TestTrustHoldsTheEstimate(t *testing.T) {
	r, where := rand.New(rand.NewPCG(6, 5)), places(t)
	for i := range 100 {
		h := random(t, r, where)
		h.From = season.From(i % 3)
		if i%2 == 0 {
			h.Gains = nil
		}
		y := must(h.Year())(t)
		s := must(y.After(envelope.Fix{Row: 0, UA: rvalue.Conductance(0.5 * y.Rows[0].UA.SI())}))(t)
		if y.Trust.Low < 0 || y.Trust.Low > 1 || y.Trust.High < 1 || len(y.Trust.Why) == 0 {
			t.Errorf("trust is %+v", y.Trust)
		}
		near(t, "low of the saving", s.Trust.Low, 0.39*y.Trust.Low, rounding)
		near(t, "high of the saving", s.Trust.High, y.Trust.High, rounding)
		if len(s.Trust.Why) != len(y.Trust.Why)+1 {
			t.Errorf("the saving says %q", s.Trust.Why)
		}
	}
}

// TestLoadScales with the difference of temperature, and its rows sum up.
func TestLoadScales(t *testing.T) {
	r, where := rand.New(rand.NewPCG(7, 5)), places(t)
	for range 50 {
		y := must(random(t, r, where).Year())(t)
		cold := must(y.Load(y.Indoors.Add(-40)))(t)
		mild := must(y.Load(y.Indoors.Add(-20)))(t)
		near(t, "ratio of the losses", float64(cold.Loss/mild.Loss), 2, 1e-9)
		near(t, "loss over UA, K", cold.Loss.SI()/y.UA.SI(), 40, 1e-9)
		var sum season.Power
		for _, p := range cold.Rows {
			sum += p
		}
		if sum != cold.Loss || cold.Low != cold.Loss || cold.High != cold.Loss || cold.Estimate {
			t.Errorf("rows sum to %v: %+v", sum, cold)
		}
		fixed := must(y.Load(y.Indoors.Add(-40), envelope.Fix{Row: 0, UA: 0}))(t)
		near(t, "loss of the fixed row", (cold.Loss - fixed.Loss).SI(), 40*y.Rows[0].UA.SI(), 1e-6)
	}
}
