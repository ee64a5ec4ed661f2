package climate

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/rvalue"
)

// TestBins tries what must hold for any bins: they join, sum to the year, hold the
// year's mean, and below an edge add up to its degree days.
func TestBins(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	for s := range Stations {
		n := s.Normals()
		p := prepare(t, n)
		edge := rvalue.FromCelsius(5 + 15*random.Float64())
		width := rvalue.TemperatureDifference(0.5 + 5*random.Float64())
		for name, make := range map[string]func(rvalue.Temperature, rvalue.TemperatureDifference) ([]Bin, error){
			"daily": p.Bins, "hourly": p.HourBins,
		} {
			list, err := make(edge, width)
			if err != nil {
				t.Fatal(err)
			}
			hours, sum, below := 0.0, 0.0, 0.0
			for i, b := range list {
				hours += b.Hours
				sum += b.Hours * b.Mean.Celsius()
				if gap := edge.Sub(b.Mean).SI(); gap > 0 {
					below += b.Hours * gap / 24
				}
				first, last := i == 0, i == len(list)-1
				if (first || last) && b.Hours < few {
					t.Errorf("%s: a %s bin of %g hours at the end", s.Name, name, b.Hours)
				}
				if !first && b.Mean < b.From || !last && b.Mean > b.To {
					t.Errorf("%s: %s bin %v to %v has mean %v", s.Name, name, b.From.Celsius(), b.To.Celsius(), b.Mean.Celsius())
				}
				if !first && math.Abs(b.From.Celsius()-list[i-1].To.Celsius()) > 1e-9 {
					t.Errorf("%s: %s bins do not join at %v", s.Name, name, b.From.Celsius())
				}
			}
			if math.Abs(hours-8760) > 1e-6 {
				t.Errorf("%s: %s bins sum to %v hours", s.Name, name, hours)
			}
			// The daily wave sums to zero but for its last digits.
			if mean := n.AnnualMean().Celsius(); math.Abs(sum/hours-mean) > 1e-6 {
				t.Errorf("%s: %s bins have mean %v, the year %v", s.Name, name, sum/hours, mean)
			}
			year, err := p.Year(edge)
			if err != nil {
				t.Fatal(err)
			}
			switch heating := year.Heating.SI(); {
			case name == "daily" && math.Abs(below-heating) > 1e-3:
				t.Errorf("%s: bins below %.2f °C sum to %.4f K·d, degree days are %.4f", s.Name, edge.Celsius(), below, heating)
			case name == "hourly" && below < heating-1e-6:
				// The night's hours count where the day's mean does not.
				t.Errorf("%s: hourly bins sum to %.2f K·d, less than the days' %.2f", s.Name, below, heating)
			}
		}
	}
}

func TestBinsRefuse(t *testing.T) {
	n := stationOf(t, "Duluth, MN").Normals()
	p := prepare(t, n)
	for _, row := range [...]struct{ edge, width float64 }{{10, 0}, {10, -1}, {10, 50}, {10, math.NaN()}, {math.NaN(), 2}, {400, 2}} {
		if got, err := p.Bins(rvalue.FromCelsius(row.edge), rvalue.TemperatureDifference(row.width)); err == nil {
			t.Errorf("Bins(%g °C, %g K): %d bins, want an error", row.edge, row.width, len(got))
		}
	}
	n.Swing = [12]rvalue.TemperatureDifference{}
	p = prepare(t, n)
	if got, err := p.HourBins(rvalue.FromCelsius(10), 2*rvalue.Kelvin); err == nil || !strings.Contains(err.Error(), "daily swing") {
		t.Errorf("hourly bins without a swing: %d bins, %v; want an error", len(got), err)
	}
}

// TestDayShape checks the mean day's wave, whose coefficients are from memory: its
// extremes must be about 1 apart and at likely hours, and it must sum to zero.
func TestDayShape(t *testing.T) {
	var p Prepared
	for i := range p.swing {
		p.swing[i] = 1
	}
	day := p.hourly(0)[:24]
	lo, hi, sum := 0, 0, 0.0
	for h := range day {
		if day[h].mean < day[lo].mean {
			lo = h
		}
		if day[h].mean > day[hi].mean {
			hi = h
		}
		sum += day[h].mean
	}
	if d := day[hi].mean - day[lo].mean; math.Abs(d-0.976) > 0.001 || math.Abs(sum) > 1e-12 {
		t.Errorf("the wave spans %.4f and sums to %g", d, sum)
	}
	if lo+1 != 6 || hi+1 != 15 { // the first is one o'clock
		t.Errorf("coldest at %d o'clock, warmest at %d; want 6 and 15", lo+1, hi+1)
	}
}

func TestDesign(t *testing.T) {
	n := stationOf(t, "Duluth, MN").Normals()
	p := prepare(t, n)
	cold, warm := p.HeatingDesign(), p.CoolingDesign()
	if h, _ := below(p.hourly(0), cold.Temperature.Celsius()); math.Abs(h-87.6) > 1e-3 {
		t.Errorf("%.2f hours are colder than the heating design temperature, want 87.6", h)
	}
	if h, _ := below(p.hourly(0), warm.Temperature.Celsius()); math.Abs(8760-h-87.6) > 1e-3 {
		t.Errorf("%.2f hours are warmer than the cooling design temperature, want 87.6", 8760-h)
	}
	for _, d := range [...]DesignTemperature{cold, warm} {
		if !strings.Contains(d.How, "estimated") || d.Doubt.SI() < 3 {
			t.Errorf("not marked as an estimate: %+v", d)
		}
	}
	n.Swing = [12]rvalue.TemperatureDifference{}
	p = prepare(t, n)
	if d := p.HeatingDesign(); !strings.Contains(d.How, "swing of a mean place") || d.Doubt <= cold.Doubt ||
		math.Abs(d.Temperature.Sub(cold.Temperature).SI()) > 1 {
		t.Errorf("without a swing: %+v, with one %+v", d, cold)
	}
}
