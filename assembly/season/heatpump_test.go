package season_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/assembly/season"
	"github.com/coldseam/coldseam/climate"
	"github.com/coldseam/coldseam/rvalue"
)

// pump is a house with a heat pump of that line; gains keep its balance at 16 °C.
func pump(t testing.TB, w *climate.Prepared, line []season.Point) season.House {
	t.Helper()
	return season.House{
		Ranking: invented(t, 250*rvalue.WattPerKelvin), Weather: w, Indoors: rvalue.FromCelsius(20),
		Gains: &season.Gains{Internal: 1000 * season.Watt},
		Fuel:  season.Fuel{Kind: season.Electricity}, Plant: season.Plant{Kind: season.HeatPump, Line: line},
	}
}

// sweep adds up heat, electricity and Carnot's electricity of a pump over fine bins,
// apart from the code under test, with the COP and the capacity by functions.
func sweep(t testing.TB, w *climate.Prepared, ua, indoors, balance float64, cop, capacity func(c float64) float64) (heat, electricity, carnot float64) {
	t.Helper()
	for _, b := range must(w.Bins(rvalue.FromCelsius(balance), 0.1*rvalue.Kelvin))(t) {
		c := b.Mean.Celsius()
		if c >= balance {
			continue
		}
		q := ua * (balance - c) * b.Hours
		short := max(0, q-capacity(c)*b.Hours)
		heat += q
		electricity += (q-short)/cop(c) + short
		carnot += q * (indoors - c) / (indoors + 273.15)
	}
	return heat, electricity, carnot
}

func unlimited(float64) float64 { return math.Inf(1) }

// TestStepsAreFineEnough holds lines of COP and capacity against a sweep in steps of
// 0.1 K; 0.1 % of the electricity is far below what any line is known to.
func TestStepsAreFineEnough(t *testing.T) {
	const enough = 1e-3
	// Straight lines through 5 °C: COP 3 and 0.05 more a kelvin, down to 1 at −35 °C; 6 kW
	// and 250 W more a kelvin, down to 0 at −19 °C.
	cop := func(c float64) float64 { return max(1, 3+0.05*(min(c, 15)-5)) }
	capacity := func(c float64) float64 { return max(0, 6000+250*(min(c, 15)-5)) }
	for _, c := range []struct {
		name, state string
		capacity    func(float64) float64
		backup      bool
	}{
		{"Boston", "MA", unlimited, false},
		{"Boston", "MA", capacity, true},
		{"Duluth", "MN", unlimited, false},
		{"Duluth", "MN", capacity, true},
		{"Miami", "FL", capacity, false},
		{"Fairbanks", "AK", unlimited, false},
		{"Fairbanks", "AK", capacity, true},
	} {
		w := station(t, c.name, c.state)
		var line []season.Point
		for _, x := range []float64{-5, 15} {
			p := season.Point{Outdoors: rvalue.FromCelsius(x), COP: cop(x)}
			if !math.IsInf(c.capacity(x), 1) {
				p.Capacity = season.Power(c.capacity(x)) * season.Watt
			}
			line = append(line, p)
		}
		y := must(pump(t, w, line).Year())(t)
		heat, electricity, carnot := sweep(t, w, 250, 20, 16, cop, c.capacity)
		near(t, c.name+": heat, kWh", y.Heating.Heat.KWh(), heat/1000, 1e-6*heat/1000)
		near(t, c.name+": electricity over that of fine bins", y.Heating.Bought.KWh()/(electricity/1000), 1, enough)
		if bound := heat / carnot; y.Performance >= bound {
			t.Errorf("%s: a COP of %v beats Carnot's %v", c.name, y.Performance, bound)
		}
		if (y.Backup > 0) != c.backup {
			t.Errorf("%s: backup is %v", c.name, y.Backup)
		}
	}
}

// TestPumpByHand: a level line is its own season, whatever the weather; a house that
// always asks for twice the capacity gets half of its heat from resistance: COP 3
// over one half and 1 over the other is 1/(0.5/3 + 0.5) = 1.5.
func TestPumpByHand(t *testing.T) {
	w := station(t, "Duluth", "MN")
	level := func(capacity season.Power) []season.Point {
		return []season.Point{{Outdoors: rvalue.FromCelsius(-10), COP: 3, Capacity: capacity}, {Outdoors: rvalue.FromCelsius(10), COP: 3, Capacity: capacity}}
	}
	y := must(pump(t, w, level(0)).Year())(t)
	near(t, "level line", y.Performance, 3, 1e-9)
	one := must(pump(t, w, level(0)[:1]).Year())(t)
	near(t, "line of one point", one.Performance, 3, 1e-9)

	// A line of capacity with which the pump always covers half of 250 W/K·(16 − t).
	half := []season.Point{
		{Outdoors: rvalue.FromCelsius(-50), COP: 3, Capacity: 125 * 66 * season.Watt},
		{Outdoors: rvalue.FromCelsius(15.99), COP: 3, Capacity: 125 * 0.01 * season.Watt},
	}
	y = must(pump(t, w, half).Year())(t)
	near(t, "half the capacity", y.Performance, 1.5, 1e-4)
	near(t, "backup", y.Backup, 0.5, 1e-4)
	if !said(y, "backup") {
		t.Errorf("remarks are %v, want one on the backup", y.Remarks)
	}
}

func said(y *season.Year, code string) bool {
	for _, r := range y.Remarks {
		if r.Code == code {
			return true
		}
	}
	return false
}

// TestNeverBeatsCarnot: whatever is accepted is under Carnot's COP of the season, and
// a little more than that is refused.
func TestNeverBeatsCarnot(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 5))
	accepted, refused := 0, 0
	for _, w := range places(t) {
		heat, _, carnot := sweep(t, w, 250, 20, 16, func(float64) float64 { return 1 }, unlimited)
		if heat < 1e3 { // Wh: hardly a winter
			continue
		}
		bound := heat / carnot
		for range 8 {
			h := pump(t, w, nil)
			h.Plant.COP = 1 + 25*r.Float64()
			y, err := h.Year()
			switch {
			case err == nil:
				accepted++
				if y.Performance > bound*1.001 { // bins of 0.1 K against 2 K
					t.Errorf("COP %v is taken, Carnot's is %v", y.Performance, bound)
				}
				if y.Performance > 5 && !said(y, "cop-high") {
					t.Errorf("COP %v without a remark", y.Performance)
				}
			case !strings.Contains(err.Error(), "Carnot"):
				t.Error(err)
			default:
				refused++
				if h.Plant.COP < bound*0.999 {
					t.Errorf("COP %v is refused, Carnot's is %v", h.Plant.COP, bound)
				}
			}
		}
		// A line that follows a share of Carnot's COP, over 1 here and there.
		for _, share := range []float64{0.4, 0.9, 1.1} {
			var line []season.Point
			for c := -30.0; c <= 10; c += 5 {
				line = append(line, season.Point{Outdoors: rvalue.FromCelsius(c), COP: share * 293.15 / (20 - c)})
			}
			y, err := pump(t, w, line).Year()
			if (err == nil) != (share < 1) {
				t.Errorf("a line at %v of Carnot's: %v", share, err)
			}
			if err == nil && y.Performance > bound*1.001 {
				t.Errorf("a line at %v of Carnot's gives %v, over %v", share, y.Performance, bound)
			}
		}
	}
	if accepted < 20 || refused < 20 {
		t.Errorf("%d accepted and %d refused, the test tests nothing", accepted, refused)
	}
}

// TestHSPFIsRemarked: its climate is not the house's.
func TestHSPFIsRemarked(t *testing.T) {
	h := pump(t, station(t, "Boston", "MA"), nil)
	for _, p := range []season.Plant{{HSPF: 9}, {HSPF2: 9}} {
		h.Plant = p
		y := must(h.Year())(t)
		near(t, "COP of 9 Btu/Wh", y.Performance, 2.638, 0.0005)
		if !said(y, "hspf") {
			t.Errorf("%+v: remarks are %v", p, y.Remarks)
		}
	}
}

// A COP of 12 is more than any heat pump has, which is remarked where Carnot allows it.
func TestCOPOf12(t *testing.T) {
	h := pump(t, station(t, "Boston", "MA"), nil)
	h.Plant.COP = 12
	if y := must(h.Year())(t); !said(y, "cop-high") {
		t.Errorf("remarks are %v", y.Remarks)
	}
	h.Plant.COP = 3
	if y := must(h.Year())(t); said(y, "cop-high") {
		t.Errorf("remarks are %v", y.Remarks)
	}
}

// A heat pump whose COP falls with the cold, with too little capacity for it.
func ExamplePlant_line() {
	w := duluth()
	y, err := season.House{
		Ranking: exampleHouse(), Weather: w, Indoors: rvalue.FromFahrenheit(68),
		Gains: &season.Gains{Internal: 600 * season.Watt, Solar: 300 * season.Watt},
		Fuel:  season.Fuel{Kind: season.Electricity},
		Plant: season.Plant{Line: []season.Point{
			{Outdoors: rvalue.FromFahrenheit(5), COP: 1.8, Capacity: 17000 * season.BtuPerHour},
			{Outdoors: rvalue.FromFahrenheit(17), COP: 2.2, Capacity: 20000 * season.BtuPerHour},
			{Outdoors: rvalue.FromFahrenheit(47), COP: 3.5, Capacity: 30000 * season.BtuPerHour},
		}},
	}.Year()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("seasonal COP %.2f, %.0f %% of the heat from resistance\n", y.Performance, 100*y.Backup)
	// Output: seasonal COP 1.98, 15 % of the heat from resistance
}
