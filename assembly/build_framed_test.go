package assembly_test

import (
	"math"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/rvalue"
)

// TestAtticFloors: what lies on an attic's joists is not squeezed. Loose fill
// covers the joists: by hand, parallel path with 10 % of 2x6 joists
// under 6.5 in of the same fill.
func TestAtticFloors(t *testing.T) {
	ceiling := assembly.Setting{Faces: assembly.Facing{Use: assembly.Ceiling}}
	batt := written(t, "R-0.45 + 2x6 @ 16 in (fiberglass R-30)", ceiling)
	bay, joist := 0.61+0.45+30+0.61, 0.61+0.45+6.875+0.61
	if got, want := batt.Effective.R.IP(), 1/(0.9/bay+0.1/joist); math.Abs(got-want) > 1e-9 {
		t.Errorf("R-30 batts on attic joists: R-%.4f, by hand R-%.4f", got, want)
	}
	loose := written(t, "R-0.45 + 2x6 @ 16 in (cellulose 12 in)", ceiling)
	perInch := loose.Layers[2].Shares[1].R.IP() / 5.5
	bay, joist = 0.61+0.45+12*perInch+0.61, 0.61+0.45+6.875+6.5*perInch+0.61
	if got, want := loose.Effective.R.IP(), 1/(0.9/bay+0.1/joist); math.Abs(got-want) > 1e-9 {
		t.Errorf("12 in of cellulose on attic joists: R-%.4f, by hand R-%.4f", got, want)
	}
	walled := written(t, "R-0.45 + 2x6 @ 16 in (fiberglass R-30) + plywood 3/4 in", ceiling)
	if walled.Effective.R >= batt.Effective.R {
		t.Errorf("a batt squeezed under a floor, %v, resists no less than one that stands free, %v", walled.Effective.R, batt.Effective.R)
	}
}

// TestTwoBatts: batts that fit one behind the other count their labels, and what
// they leave of the bay is air.
func TestTwoBatts(t *testing.T) {
	for _, c := range []struct {
		text   string
		labels float64
		pieces int
	}{
		{"R-1 + 2x8 @ 16 in (fiberglass R-11 3 1/2 in + fiberglass R-11 3 1/2 in) + R-1", 22, 3},
		{"R-1 + 2x8 @ 16 in (fiberglass R-11 + fiberglass R-11) + R-1", 22, 3},
		{"R-1 + 2x10 @ 16 in (fiberglass R-19 + R-2.5 1/2 in + fiberglass R-8) + R-1", 19 + 2.5 + 8, 3},
	} {
		fill := written(t, c.text, assembly.Setting{}).Layers[2].Shares[1]
		sum := 0.0
		for _, p := range fill.Pieces {
			if !strings.HasPrefix(p.Name, "air ") {
				sum += p.R.IP()
			}
		}
		if !near(sum, c.labels, 1e-6) || len(fill.Pieces) != c.pieces {
			t.Errorf("%s: %d pieces, insulation of R-%.3f, want %d and R-%g", c.text, len(fill.Pieces), sum, c.pieces, c.labels)
		}
	}
}

// TestFramingIsSaid: which share, from where, and what is our own of it; by hand
// from the figures published for 16 and 24 in.
func TestFramingIsSaid(t *testing.T) {
	const in = rvalue.Inch
	for _, c := range []struct {
		use     assembly.Use
		spacing rvalue.Length
		want    float64
		says    string
		not     string
	}{
		{assembly.Wall, 16 * in, 0.25, "ch. 27", "spacings"},
		{assembly.Wall, 600 * rvalue.Millimetre, 0.22, "ch. 27", "spacings"},
		{assembly.Wall, 19.2 * in, 0.235, "between its spacings of 16 and 24 in, plates, headers and corners are kept at 16 % and the studs", "beyond"},
		{assembly.Wall, 12 * in, 0.16 + 1.44/12, "beyond its spacings of 16 and 24 in, plates, headers and corners are kept at 16 %", "between"},
		{assembly.Wall, 700 * rvalue.Millimetre, 0.16 + 1.44*25.4/700, "beyond its spacings", "between"},
		{assembly.Wall, 1200 * rvalue.Millimetre, 0.16 + 1.44*25.4/1200, "beyond its spacings", "between"},
		{assembly.Floor, 12 * in, 0.01 + 1.44/12, "the joists go by 1/spacing", "studs"},
		{assembly.Roof, 48 * in, 0.10, "single rafters, published for 16 and 24 in alike", "between"},
	} {
		got, source, err := assembly.DefaultFraming(c.use, c.spacing)
		if err != nil || !near(got, c.want, 1e-12) || !strings.Contains(source, c.says) || strings.Contains(source, c.not) {
			t.Errorf("DefaultFraming(%v, %v) = %v, %q, %v, want %v, …%s…, without %q", c.use, c.spacing, got, source, err, c.want, c.says, c.not)
		}
	}
	for use, word := range map[assembly.Use]string{assembly.Wall: "factor for studs", assembly.Ceiling: "factor for joists", assembly.Floor: "factor for joists", assembly.Roof: "factor for rafters"} {
		found := false
		for _, m := range written(t, "gypsum 1/2 in + 6 in x 8 in @ 16 in (R-20) + osb 7/16 in", assembly.Setting{Faces: assembly.Facing{Use: use}}).Remarks {
			found = found || m.Code == "framing" && strings.Contains(m.Text, word)
		}
		if !found {
			t.Errorf("%v: no remark that timbers take more than the published %s", use, word)
		}
	}
}

// TestSqueezedIsABattOnce: the word is not said twice.
func TestSqueezedIsABattOnce(t *testing.T) {
	for _, text := range []string{"fiberglass R-19", "R-19 batt", "fiberglass batt R-19", "R-19 fiberglass batts"} {
		said := ""
		for _, m := range written(t, "gypsum 1/2 in + 2x4 @ 16 in ("+text+") + osb 7/16 in", assembly.Setting{}).Remarks {
			if before, _, ok := strings.Cut(m.Text, " squeezed"); ok && m.Code == "squeezed" {
				said = before
			}
		}
		if strings.Count(said, "batt") != 1 {
			t.Errorf("%s: %q is squeezed", text, said)
		}
	}
}
