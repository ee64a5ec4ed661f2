package window

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/rvalue"
	"github.com/coldseam/coldseam/testdata"
)

// tableWind makes the outside film with which the handbook's table comes out: 29
// to 30 W/(m²·K) in its editions of 1993 to 2005 (from memory), not the 34 that
// its rule for walls has at the 15 mph the table names.
const tableWind = 5.5 * rvalue.MetrePerSecond

// reading is how a table is read where it is silent.
type reading struct {
	wind          rvalue.Speed
	fill          float64 // of argon and krypton
	hemispherical bool    // the emissivity given is the corrected one
}

// ashrae returns our U of a row in Btu/(h·ft²·°F); coatings are in the outer gaps.
func (m reading) ashrae(t *testing.T, r testdata.Row) float64 {
	t.Helper()
	length := func(column string) rvalue.Length {
		if r[column] == "" {
			return 0
		}
		l, err := rvalue.ParseLength(r[column] + " in")
		if err != nil {
			t.Fatal(err)
		}
		return l
	}
	e, coats := 0.0, 0
	if r["coating"] != "" {
		if _, err := fmt.Sscanf(r["coating"], "%gx%d", &e, &coats); err != nil {
			t.Fatal(err)
		}
	}
	if m.hemispherical && e > 0 {
		e = normal(e)
	}
	gas := Fill{}
	if r["gas"] != "" {
		gas = filled(t, r["gas"], m.fill)
	}
	g := unit(int(r.Number(t, "panes")), length("thickness"), length("gap"), gas, coats, e)
	if r["sheet"] == "acrylic" {
		g.Panes[0].Sheet = Acrylic
	}
	c := Winter()
	c.Wind = m.wind
	return solved(t, g, c).U.IP()
}

func (m reading) score(t *testing.T, s *table) *table {
	for _, r := range testdata.Read(t, "window_ashrae.csv", "panes", "sheet", "thickness", "gap", "gas", "coating", "center", "edge", "mark") {
		u, why := m.ashrae(t, r), ""
		if off := math.Abs(u - r.Number(t, "center")); off > 0.005+rounding {
			why = "another solver; within 0.010"
			if r["sheet"] == "acrylic" {
				why = "the table's sheet must resist more or radiate less than 0.18 W/(m·K) and 0.90 say"
			} else if off > 0.010 && s.whole == "" {
				t.Errorf("%v: %.4f", r, u)
			}
		}
		s.cell(t, strings.Join([]string{r["panes"], r["thickness"], r["sheet"], r["gap"], r["gas"], r["coating"]}, " "), u, r["center"], why)
	}
	return s
}

// The table says neither how full its gaps are nor which emissivity it gives.
func scoreASHRAEFull(t *testing.T) *table {
	return reading{tableWind, 1, true}.score(t, &table{
		name: "ASHRAE centre of glass, outside film 29, gaps full, emissivities hemispherical", kind: "from memory",
	})
}

func scoreASHRAE(t *testing.T) *table {
	return reading{tableWind, 0.9, false}.score(t, &table{
		name: "the same, gaps at 90 %, emissivities normal", kind: "from memory",
		whole: "a tenth of air and a higher corrected emissivity add up to 0.013 to argon and low-e cells; the two acrylic cells as above",
	})
}

func scoreASHRAEWindy(t *testing.T) *table {
	return reading{15 * rvalue.MilePerHour, 1, true}.score(t, &table{
		name: "the same, gaps full, emissivities hemispherical, outside film of 15 mph by ISO 15099", kind: "from memory",
		whole: "an outside film of 34 W/(m²·K) in place of 29 adds up to 0.03 to single glass and 0.01 to double glass",
	})
}

// scoreAcrylic: one sheet upright and level, in winter (15 mph out, heat up
// through level sheets) and summer (7.5 mph, heat in, down through level sheets).
func scoreAcrylic(t *testing.T) *table {
	s := &table{
		name: "acrylic sheet, upright and level, winter and summer", kind: "seen",
		whole: "the maker adds fixed handbook films (R-0.68, 0.61 and 0.92 inside) for a wall's emissivity 0.90; ours solves them at the sheet's own temperature, colder and so faster in winter",
	}
	for _, r := range testdata.Read(t, "window_acrylic.csv", "thickness", "position", "season", "u", "mark") {
		d, err := rvalue.ParseLength(r["thickness"] + " in")
		if err != nil {
			t.Fatal(err)
		}
		g, c := unit(1, d, 0, Fill{}, 0, 0), Winter()
		g.Panes[0].Sheet = Acrylic
		if r["season"] == "summer" {
			c.Indoors, c.Outdoors, c.Wind = rvalue.FromFahrenheit(75), rvalue.FromFahrenheit(89), 7.5*rvalue.MilePerHour
		}
		if r["position"] == "level" {
			c.Tilt = 0
		}
		s.cell(t, r["thickness"]+" "+r["position"]+" "+r["season"], solved(t, g, c).U.IP(), r["u"], "")
	}
	return s
}

// scoreFoil holds the convection of a gap against the foil table that package
// airspace is held against too: as R with the table's own emissivities.
func scoreFoil(t *testing.T) *table {
	s := &table{
		name: "foil spaces of 13 mm at 23 °C", kind: "seen",
		whole: "level with the heat up the table, which follows hot-box tests of building spaces, has air moving from the smallest difference, where by theory and by Hollands et al. it rests up to a Rayleigh number of 1708 (a third at most); elsewhere within 12 %: 45° up it begins below what still air conducts and grows in a straight line; package airspace has curves fitted to such spaces",
	}
	const width, kelvins, height = 0.013, 296.15, 2.4 // m, K, m
	for _, r := range testdata.Read(t, "airspace_foil.csv", "tilt", "flow", "difference", "mark") {
		angle := r.Number(t, "tilt")
		if r["flow"] == "down" {
			angle = 180 - angle
		}
		air := Fill{}.linear()
		p, sl := air.at(kelvins), slopeOf(angle)
		nu := sl.nusselt(p.rayleigh(width, r.Number(t, "difference"), kelvins), math.Log(height/width))
		for _, pair := range []string{"0.03/0.03", "0.03/0.9", "0.05/0.9", "0.1/0.9", "0.2/0.9", "0.9/0.9"} {
			if r[pair] == "" {
				continue // not seen
			}
			var e1, e2 float64
			if _, err := fmt.Sscanf(pair, "%g/%g", &e1, &e2); err != nil {
				t.Fatal(err)
			}
			hr := 4 * sigma * kelvins * kelvins * kelvins / (1/e1 + 1/e2 - 1)
			ours, want := 1/(hr+nu*p.k/width), r.Number(t, pair)
			most := 0.12
			if angle == 0 {
				most = 0.33
			}
			if off := math.Abs(ours/want - 1); off > most {
				t.Errorf("%v %s: %.4f, %.1f %% off", r, pair, ours, 100*off)
			}
			s.cell(t, r["tilt"]+" "+r["flow"]+" "+pair, ours, r[pair], "")
		}
	}
	return s
}
