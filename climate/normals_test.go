package climate

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/rvalue"
)

// good returns what a careful user states.
func good() Given {
	g := Given{Latitude: 46.8, Elevation: 435 * rvalue.Metre}
	for i := range 12 {
		g.Mean = append(g.Mean, rvalue.FromCelsius(5-15*math.Cos(2*math.Pi*float64(i)/12)))
		g.Swing = append(g.Swing, 10*rvalue.Kelvin)
		g.Rain = append(g.Rain, 60)
		g.Humidity = append(g.Humidity, 0.7)
	}
	return g
}

func TestGiven(t *testing.T) {
	n, err := good().Normals()
	if err != nil {
		t.Fatal(err)
	}
	if got, want := n.Vapour[0], 0.7*si.saturation(-10); math.Abs(got-want) > 1e-9 {
		t.Errorf("January's vapour %v Pa, want %v", got, want)
	}
	if n.Published {
		t.Error("no degree days were given, but some are published")
	}
	only := Given{Mean: good().Mean} // the rest is optional
	if _, err := only.Normals(); err != nil {
		t.Error(err)
	}
}

func TestGivenRefuses(t *testing.T) {
	for _, row := range []struct {
		name  string
		spoil func(g *Given)
		want  []string // parts of the error
	}{
		{"none", func(g *Given) { *g = Given{} }, []string{"0 monthly values of mean temperature", "exactly 12"}},
		{"eleven months", func(g *Given) { g.Mean = g.Mean[:11] }, []string{"11 monthly values of mean temperature", "exactly 12"}},
		{"thirteen months", func(g *Given) { g.Rain = append(g.Rain, 1) }, []string{"13 monthly values of precipitation"}},
		{"eleven humidities", func(g *Given) { g.Humidity = g.Humidity[1:] }, []string{"11 monthly values of relative humidity"}},
		{"twenty-four swings", func(g *Given) { g.Swing = slices.Repeat(g.Swing, 2) }, []string{"24 monthly values of daily swing"}},
		{"humidity over 100 %", func(g *Given) { g.Humidity[3] = 1.2 }, []string{"relative humidity of month 4 is 120 %"}},
		{"humidity in percent", func(g *Given) { g.Humidity[0] = 70 }, []string{"relative humidity of month 1 is 7000 %"}},
		{"no number", func(g *Given) { g.Mean[6] = rvalue.Temperature(math.NaN()) }, []string{"mean temperature of month 7 is NaN"}},
		{"°F for °C", func(g *Given) { g.Mean[6] = rvalue.FromCelsius(72) }, []string{"month 7 is 72 °C"}},
		{"left out", func(g *Given) { g.Mean[6] = 0 }, []string{"month 7 is -273"}},
		{"infinite rain", func(g *Given) { g.Rain[0] = math.Inf(1) }, []string{"precipitation of month 1"}},
		{"negative rain", func(g *Given) { g.Rain[0] = -1 }, []string{"precipitation of month 1"}},
		{"negative swing", func(g *Given) { g.Swing[0] = -1 * rvalue.Kelvin }, []string{"daily swing of month 1"}},
		{"latitude", func(g *Given) { g.Latitude = 99 }, []string{"latitude is 99°"}},
		{"elevation", func(g *Given) { g.Elevation = 10000 * rvalue.Metre }, []string{"elevation is 10000 m (32808 ft)"}},
		{
			"all at once", func(g *Given) { g.Mean = g.Mean[:3]; g.Rain[2] = -5; g.Latitude = math.NaN() },
			[]string{"3 monthly values", "precipitation of month 3", "latitude"},
		},
	} {
		g := good()
		row.spoil(&g)
		n, err := g.Normals()
		if err == nil {
			t.Errorf("%s: %v, want an error", row.name, n)
			continue
		}
		for _, part := range row.want {
			if !strings.Contains(err.Error(), part) {
				t.Errorf("%s: %v, want an error with %q", row.name, err, part)
			}
		}
	}
}

func TestAt(t *testing.T) {
	n := stationOf(t, "Denver, CO").Normals()
	up, err := n.At(n.Elevation + 1000*rvalue.Metre)
	if err != nil {
		t.Fatal(err)
	}
	if got := n.AnnualMean().Sub(up.AnnualMean()).SI(); math.Abs(got-6.5) > 1e-9 {
		t.Errorf("1000 m up it is %.4f K colder, want 6.5", got)
	}
	// Colder by 6.5 K every day: up to 6.5·365 K·d more heating, less in summer.
	if more := (up.HDD65 - n.HDD65).SI(); !(more > 1500 && more < 6.5*365) {
		t.Errorf("1000 m up there are %.0f K·d more of heating", more)
	}
	same, err := n.At(n.Elevation)
	if err != nil || math.Abs((same.HDD65-n.HDD65).IP()) > 4 { // how near the scaling comes
		t.Errorf("at its own elevation HDD65 is %.1f °F·d, %v; want %.1f", same.HDD65.IP(), err, n.HDD65.IP())
	}
	for i := range up.Vapour {
		if up.Vapour[i] > si.saturation(up.Mean[i].Celsius()) {
			t.Errorf("month %d: more vapour than the air can hold", i+1)
		}
	}
	for _, bad := range [...]rvalue.Length{-1000 * rvalue.Metre, 10000 * rvalue.Metre, rvalue.Length(math.NaN())} {
		if got, err := n.At(bad); err == nil {
			t.Errorf("At(%v) = %v, want an error", bad.SI(), got)
		}
	}
	plain := n
	plain.Published = false
	if up, err := plain.At(2500 * rvalue.Metre); err != nil || up.Published {
		t.Errorf("without published figures: %v, %v", up.Published, err)
	}
}
