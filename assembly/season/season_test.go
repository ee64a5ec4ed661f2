package season_test

import (
	"math"
	"testing"

	"github.com/coldseam/coldseam/assembly/envelope"
	"github.com/coldseam/coldseam/assembly/season"
	"github.com/coldseam/coldseam/climate"
	"github.com/coldseam/coldseam/rvalue"
)

// station returns the prepared normals of a station by its name and state.
func station(t testing.TB, name, state string) *climate.Prepared {
	t.Helper()
	for s := range climate.Stations {
		if s.Name == name && s.State == state {
			n := s.Normals()
			p, err := n.Prepare()
			if err != nil {
				t.Fatal(err)
			}
			return &p
		}
	}
	t.Fatalf("no station %q in %s", name, state)
	return nil
}

// invented is an envelope whose rows are worth so much in all, in W/K: walls with
// half of it, windows with a quarter, the rest divided among ceiling and leakage.
func invented(t testing.TB, ua rvalue.Conductance) *envelope.Ranking {
	t.Helper()
	part := func(name string, kind envelope.Kind, area rvalue.Area, share, target float64) envelope.Part {
		u := rvalue.Conductance(share * ua.SI()).Over(area)
		return envelope.Part{Name: name, Kind: kind, Area: area, U: u, Target: envelope.Target{U: rvalue.Transmittance(target * u.SI())}}
	}
	e := envelope.Envelope{
		Parts: []envelope.Part{
			part("walls", envelope.Wall, 120, 0.5, 0.3),
			part("windows", envelope.Window, 15, 0.25, 0.6),
			part("ceiling", envelope.Ceiling, 90, 0.15, 0),
			part("floor", envelope.Floor, 90, 0.1, 2),
		},
	}
	r, err := e.Rank()
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// must returns v, or ends the test.
func must[T any](v T, err error) func(t testing.TB) T {
	return func(t testing.TB) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

// rounding is what a few conversions and sums may do to a value near 1.
const rounding = 1e-12

func near(t testing.TB, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s = %.8g, want %.8g ± %.2g", what, got, want, tolerance)
	}
}

// TestBalanceByHand: UA 400 Btu/(h·°F), 70 °F inside and 3000 Btu/h of gains balance
// at 70 − 3000/400 = 62.5 °F.
func TestBalanceByHand(t *testing.T) {
	boston := station(t, "Boston", "MA")
	y := must(season.House{
		Ranking: invented(t, 400*rvalue.BtuPerHourF), Weather: boston, Indoors: rvalue.FromFahrenheit(70),
		Gains: &season.Gains{Internal: 2000 * season.BtuPerHour, Solar: 1000 * season.BtuPerHour},
	}.Year())(t)
	near(t, "balance temperature, °F", y.Balance.Fahrenheit(), 62.5, 1e-9) // rounding of 290 K
	dd := must(boston.Year(rvalue.FromFahrenheit(62.5)))(t)
	near(t, "heat, Btu", y.Heating.Heat.Btu(), 24*400*dd.Heating.IP(), 1e-3) // of 5e7
}
