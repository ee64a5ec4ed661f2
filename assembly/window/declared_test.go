package window

import (
	"math"
	"strconv"
	"testing"

	"github.com/coldseam/coldseam/rvalue"
	"github.com/coldseam/coldseam/testdata"
)

func number(t *testing.T, s string) float64 {
	t.Helper()
	return testdata.Number(t, s)
}

// orZero reads a cell; an empty one is 0.
func orZero(t *testing.T, s string) float64 {
	t.Helper()
	if s == "" {
		return 0
	}
	return number(t, s)
}

// filled returns a share of one gas.
func filled(t *testing.T, gas string, share float64) Fill {
	t.Helper()
	switch gas {
	case "air":
		return Fill{}
	case "argon":
		return Fill{Argon: share}
	case "krypton":
		return Fill{Krypton: share}
	case "xenon":
		return Fill{Xenon: share}
	case "sf6":
		return Fill{SF6: share}
	}
	t.Fatalf("no gas %q", gas)
	return Fill{}
}

// unit returns a sealed unit of panes of one thickness and equal gaps. The
// coating is on the indoor face of the outer coats panes, that is in the gaps.
func unit(panes int, glass, gap rvalue.Length, fill Fill, coats int, emissivity float64) Glazing {
	g := Glazing{}
	for i := range panes {
		p := Pane{Thickness: glass}
		if i >= panes-coats {
			p.Inner = emissivity
		}
		g.Panes = append(g.Panes, p)
		if i > 0 {
			g.Gaps = append(g.Gaps, Gap{Thickness: gap, Fill: fill})
		}
	}
	return g
}

// declared returns the U of EN 673.
func declared(t *testing.T, g Glazing, tilt float64) float64 {
	t.Helper()
	c, err := g.Declared(EN673, tilt)
	if err != nil {
		t.Fatal(err)
	}
	return c.U.SI()
}

const (
	glass4 = 4 * rvalue.Millimetre
	mm     = rvalue.Millimetre
)

// scoreISOGlass: the glass table of ISO 10077-1, gas at 90 %.
func scoreISOGlass(t *testing.T) *table {
	s := &table{name: "ISO 10077-1 annex table of Ug", kind: "from memory"}
	for _, r := range testdata.Read(t, "window_iso10077.csv", "panes", "gap", "emissivity", "gas", "u", "why", "mark") {
		panes, e := int(r.Number(t, "panes")), orZero(t, r["emissivity"])
		coats := 0
		if e > 0 {
			coats = panes - 1
		}
		g := unit(panes, glass4, rvalue.Length(r.Number(t, "gap"))*mm, filled(t, r["gas"], 0.9), coats, e)
		name := r["panes"] + " panes, " + r["gap"] + " mm " + r["gas"] + ", emissivity " + r["emissivity"]
		s.cell(t, name, declared(t, g, Upright), r["u"], r["why"])
	}
	return s
}

// french returns the double glazing of a row of the French table.
func french(t *testing.T, r testdata.Row) Glazing {
	coats := 0
	if r["coated"] == "yes" {
		coats = 1
	}
	return unit(2, glass4, rvalue.Length(r.Number(t, "gap"))*mm, filled(t, r["gas"], 0.9), coats, 0.03)
}

func scoreFrench(t *testing.T) *table {
	s := &table{name: "3CL-DPE 2021, upright double glazing", kind: "seen"}
	for _, r := range frenchRows(t, "upright") {
		s.cell(t, r["gap"]+" mm "+r["gas"]+", coated "+r["coated"], declared(t, french(t, r), Upright), r["u"], "")
	}
	return s
}

func frenchRows(t *testing.T, position string) (rows []testdata.Row) {
	for _, r := range testdata.Read(t, "window_french.csv", "position", "gap", "gas", "coated", "u", "mark") {
		if r["position"] == position {
			rows = append(rows, r)
		}
	}
	return rows
}

// scoreFrenchLevel: the level column comes from the printed upright one.
func scoreFrenchLevel(t *testing.T) *table {
	s := &table{name: "the same, level, by LevelByFilm from its upright cells", kind: "seen"}
	upright := map[string]string{}
	for _, r := range frenchRows(t, "upright") {
		upright[r["gap"]+r["gas"]+r["coated"]] = r["u"]
	}
	for _, r := range frenchRows(t, "level") {
		u := rvalue.Transmittance(number(t, upright[r["gap"]+r["gas"]+r["coated"]]))
		s.cell(t, r["gap"]+" mm, coated "+r["coated"], LevelByFilm(u).SI(), r["u"], "")
	}
	return s
}

// scoreFrenchSecond: a secondary pane counts as the air-filled double glazing of
// its gap, 20 mm at most, and 0.1 W/(m²·K).
func scoreFrenchSecond(t *testing.T) *table {
	s := &table{name: "the same, pane added to a window", kind: "seen"}
	g := unit(2, glass4, 20*mm, Fill{}, 0, 0)
	g.Panes[0].Storm = true
	s.cell(t, "gap of 20 mm", declared(t, g, Upright)+SecondPaneFrench.SI(), "2.8", "")
	return s
}

// scoreSingle: single glass is printed as 5.8 whatever its thickness.
func scoreSingle(t *testing.T) *table {
	s := &table{name: "single glass 5.8: 3CL-DPE 2021, two trade guides", kind: "seen"}
	for _, d := range []float64{3, 4, 6, 8, 10} {
		g := unit(1, rvalue.Length(d)*mm, 0, Fill{}, 0, 0)
		why := ""
		if d >= 4 {
			why = "the guides print one figure for all thicknesses; a thicker pane resists a little more"
		}
		s.cell(t, g.Panes[0].Thickness.String(), declared(t, g, Upright), "5.8", why)
	}
	return s
}

func scoreDeclared(t *testing.T) *table {
	s := &table{name: "EN 673 upright, unrounded", kind: "own arithmetic"}
	for _, r := range testdata.Read(t, "window_declared.csv", "gap", "emissivity", "gas", "u", "mark") {
		e := orZero(t, r["emissivity"])
		coats := 0
		if e > 0 {
			coats = 1
		}
		g := unit(2, glass4, rvalue.Length(r.Number(t, "gap"))*mm, filled(t, r["gas"], 0.9), coats, e)
		s.cell(t, r["gap"]+" mm "+r["gas"]+", emissivity "+r["emissivity"], declared(t, g, Upright), r["u"], "")
	}
	return s
}

func scoreTilted(t *testing.T) *table {
	s := &table{name: "EN 673 tilted, unrounded", kind: "own arithmetic"}
	glazings := map[string]Glazing{
		"glass 4 mm + air 12 mm + glass 4 mm":                   unit(2, glass4, 12*mm, Fill{}, 0, 0),
		"glass 4 mm + air 16 mm + glass 4 mm":                   unit(2, glass4, 16*mm, Fill{}, 0, 0),
		"glass 4 mm + argon 90 % 16 mm + low-e 0.03 glass 4 mm": unit(2, glass4, 16*mm, Fill{Argon: 0.9}, 1, 0.03),
	}
	for _, r := range testdata.Read(t, "window_tilted.csv", "glazing", "tilt", "u", "mark") {
		g, ok := glazings[r["glazing"]]
		if !ok {
			t.Fatalf("no glazing %q", r["glazing"])
		}
		s.cell(t, r["glazing"]+" at "+r["tilt"]+"°", declared(t, g, r.Number(t, "tilt")), r["u"], "")
	}
	return s
}

// scoreRoomSide: a coating on the room face, by the rule for the inside film.
func scoreRoomSide(t *testing.T) *table {
	s := &table{name: "EN 673, coated towards the room (h inside 4.58 and 4.33 given)", kind: "own arithmetic"}
	// The corrected emissivity of the room face is 0.20 and 0.15: its normal one is less.
	for _, c := range []struct {
		g         Glazing
		corrected float64
		u         string
	}{
		{unit(1, glass4, 0, Fill{}, 0, 0), 0.20, "3.81"},
		{unit(2, glass4, 16*mm, Fill{Argon: 0.9}, 1, 0.03), 0.20, "1.02"},
		{unit(1, glass4, 0, Fill{}, 0, 0), 0.15, "3.64"},
		{unit(2, glass4, 16*mm, Fill{Argon: 0.9}, 1, 0.03), 0.15, "1.01"},
	} {
		c.g.Panes[0].Inner = normal(c.corrected)
		s.cell(t, "corrected emissivity "+strconv.FormatFloat(c.corrected, 'g', -1, 64), declared(t, c.g, Upright), c.u, "")
	}
	return s
}

// normal inverts CorrectedEmissivity.
func normal(corrected float64) float64 {
	low, high := 0.0, bareGlassNormal
	for range 60 {
		if mid := (low + high) / 2; CorrectedEmissivity(mid) < corrected {
			low = mid
		} else {
			high = mid
		}
	}
	return high
}

// TestStepsOfEN673 follows four units through every step of EN 673 (own arithmetic).
func TestStepsOfEN673(t *testing.T) {
	const digits = 6e-5 // half of the last of four decimals, and its rounding
	for _, c := range []struct {
		name              string
		g                 Glazing
		nusselt, gas, rad float64
		u                 float64
	}{
		{"4-12-4 air", unit(2, glass4, 12*mm, Fill{}, 0, 0), 1, 2.0800, 3.6995, 2.8488},
		{"4-16-4 air", unit(2, glass4, 16*mm, Fill{}, 0, 0), 1.0344, 1.6136, 3.6995, 2.7307},
		{"4-16-4 argon 90 %, 0.03", unit(2, glass4, 16*mm, Fill{Argon: 0.9}, 1, 0.03), 1.1044, 1.2184, 0.1868, 1.1241},
		{"4-16-4 argon, 0.03", unit(2, glass4, 16*mm, Fill{Argon: 1}, 1, 0.03), 1.1019, 1.1597, 0.1868, 1.0862},
	} {
		got, err := c.g.Declared(EN673, Upright)
		if err != nil {
			t.Fatal(err)
		}
		f := got.Gaps[0]
		for _, v := range []struct {
			what      string
			got, want float64
		}{{"Nu", f.Nusselt, c.nusselt}, {"gas", f.Gas.SI(), c.gas}, {"radiation", f.Radiation.SI(), c.rad}, {"U", got.U.SI(), c.u}} {
			if math.Abs(v.got-v.want) > digits {
				t.Errorf("%s: %s is %.4f, want %.4f", c.name, v.what, v.got, v.want)
			}
		}
	}
}

// TestOlderFilms: with the films of 1997 (own arithmetic).
func TestOlderFilms(t *testing.T) {
	const digits = 5e-4
	for _, c := range []struct {
		g Glazing
		u float64
	}{
		{unit(2, glass4, 12*mm, Fill{}, 0, 0), 2.861},
		{unit(2, glass4, 16*mm, Fill{Argon: 0.9}, 1, 0.03), 1.126},
		{unit(1, 3*mm, 0, Fill{}, 0, 0), 5.832},
		{unit(1, 10*mm, 0, Fill{}, 0, 0), 5.603},
	} {
		got, err := c.g.Declared(ISO10292, Upright)
		if err != nil || math.Abs(got.U.SI()-c.u) > digits {
			t.Errorf("%v: U = %.4f, %v, want %.3f", c.g, got.U.SI(), err, c.u)
		}
	}
}

// TestBestDeclaredGap: the gap at which the gas begins to move, where EN 673 has
// its lowest U (own arithmetic, 15 K across one gap).
func TestBestDeclaredGap(t *testing.T) {
	const step = 0.1 // mm
	for _, c := range []struct {
		gas  string
		best float64 // mm
	}{{"air", 15.5}, {"argon", 14.7}, {"krypton", 9.7}, {"xenon", 6.7}, {"sf6", 4.6}} {
		best, least := 0.0, math.Inf(1)
		for s := 2.0; s < 25; s += step {
			u := declared(t, unit(2, glass4, rvalue.Length(s)*mm, filled(t, c.gas, 1), 1, 0.03), Upright)
			if u < least {
				best, least = s, u
			}
		}
		if math.Abs(best-c.best) > step {
			t.Errorf("%s: best gap %.1f mm, want %.1f", c.gas, best, c.best)
		}
	}
}
