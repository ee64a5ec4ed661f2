package window

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/rvalue"
	"github.com/coldseam/coldseam/testdata"
)

// parsed returns the glazing of a row.
func parsed(t *testing.T, r testdata.Row) Glazing {
	t.Helper()
	g, _, err := Parse(r["glazing"])
	if err != nil {
		t.Fatal(err)
	}
	return g
}

func scoreTrade(t *testing.T) *table {
	s := &table{name: "single figures of trade guides", kind: "seen"}
	for _, r := range testdata.Read(t, "window_trade.csv", "glazing", "u", "source", "why", "mark") {
		s.cell(t, r["glazing"], declared(t, parsed(t, r), Upright), r["u"], r["why"])
	}
	return s
}

func scoreOlder(t *testing.T) *table {
	s := &table{name: "ASHRAE 1977 to 1981, storm windows too, by design at 15 mph", kind: "from memory"}
	for _, r := range testdata.Read(t, "window_older.csv", "glazing", "tilt", "u", "mark") {
		c := Winter()
		c.Tilt = r.Number(t, "tilt")
		u, why := solved(t, parsed(t, r), c).U.IP(), ""
		if off := math.Abs(u - r.Number(t, "u")); off > 0.005+rounding {
			why = "computed then with fixed films and air spaces of 1.46, 6 and about 1.3 Btu/(h·ft²·°F); within 5 %"
			if off > 0.05*u {
				t.Errorf("%v: %.4f", r, u)
			}
		}
		s.cell(t, r["glazing"]+" at "+r["tilt"]+"°", u, r["u"], why)
	}
	return s
}

// newerGases writes where our figures put a claim of the trade (common practice, no
// source): that newer gases and fillings insulate two to three times better than the
// usual ones.
func newerGases(t *testing.T, b *strings.Builder) {
	b.WriteString(`
## Newer gases and fillings

It is said that they insulate two to three times better than the usual ones (common practice, no source). At rest they do, over argon;
in a unit much of the heat goes by radiation, films and moving gas, so that its resistance gains far less. Declared U (EN 673, upright)
of a double unit, 4 mm glass, emissivity 0.04, at its best gap; argon, krypton and xenon at 90 %.

| filling | resists at rest, times air | times argon | best gap, mm | U, W/(m²·K) | the unit resists, times argon's |
|---|---:|---:|---:|---:|---:|
`)
	at := rvalue.FromCelsius(10)
	best := func(gas Gas) (gap, u float64) {
		u = math.Inf(1)
		for s := 2.0; s <= 20; s += 0.5 {
			g := unit(2, glass4, rvalue.Length(s)*mm, filled(t, gas.String(), 0.9), 1, 0.04)
			if v := declared(t, g, Upright); v < u {
				gap, u = s, v
			}
		}
		return gap, u
	}
	_, argon := best(Argon)
	for _, gas := range []Gas{Air, Argon, Krypton, Xenon} {
		gap, u := best(gas)
		k := gas.Conductivity(at).SI()
		fmt.Fprintf(b, "| %s | %.1f | %.1f | %.1f | %.2f | %.2f |\n", gas, Air.Conductivity(at).SI()/k, Argon.Conductivity(at).SI()/k, gap, u, argon/u)
	}
	// Seen: aerogel 0.013 W/(m·K) (Baetens et al. 2011), vacuum units from 0.4 to 0.7 W/(m²·K) at the centre.
	const aerogel = 0.013 // W/(m·K)
	g := unit(2, glass4, 15*mm, Fill{}, 0, 0)
	g.Gaps[0] = Gap{Kind: Aerogel, Thickness: 15 * mm, Conductance: rvalue.Transmittance(aerogel / 0.015)}
	u := declared(t, g, Upright)
	fmt.Fprintf(b, "| aerogel, 15 mm of 0.013 W/(m·K) (seen) | %.1f | %.1f | | %.2f | %.2f |\n", Air.Conductivity(at).SI()/aerogel, Argon.Conductivity(at).SI()/aerogel, u, argon/u)
	fmt.Fprintf(b, "| vacuum, U 0.4 to 0.7 at the centre (seen) | | | | | %.1f to %.1f |\n", argon/0.7, argon/0.4)
}
