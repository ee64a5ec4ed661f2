package assembly_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/rvalue"
	"github.com/coldseam/coldseam/rvalue/surface"
)

// TestMoreInASteelWallNeverRaisesU: better fills, and any layer more on either
// side, over studs that the published table has and over such as go by the zone
// method, whatever the weather and with conductivities that follow it.
func TestMoreInASteelWallNeverRaisesU(t *testing.T) {
	bare := []string{"(empty)", "(R-1.2)"}
	for r := 1.5; r < 40; r += 1.3 {
		bare = append(bare, fmt.Sprintf("(R-%.1f)", r))
	}
	fills := map[string][][]string{ // each from worse to better
		"3 1/2 in": {bare, {"(empty)", "(air 3 1/2 in bright)", "(fiberglass R-11)", "(fiberglass R-13)", "(R-14)", "(fiberglass R-15)"}, {"(cellulose)", "(spray foam closed cell)"}},
		"6 in":     {bare, {"(empty)", "(R-18.9)", "(fiberglass R-19)", "(R-20)", "(fiberglass R-21)", "(R-21.5)"}},
		"8 in":     {bare, {"(fiberglass R-25)", "(R-25.1)", "(R-30)"}},
		"5 in":     {bare, {"(fiberglass R-11)", "(fiberglass R-13)", "(fiberglass R-15)"}}, // between the table's
		"3 in":     {bare, {"(fiberglass R-11)", "(fiberglass R-13)", "(fiberglass R-15)"}}, // of no table
	}
	u := func(text string, s assembly.Setting) float64 { return float64(written(t, text, s).Effective.U()) }
	for depth, series := range fills {
		for _, spacing := range []string{"12 in", "16 in", "19.2 in", "24 in"} {
			for i, outdoors := range []float64{50, 32, -20, 100} {
				s := assembly.Setting{Outdoors: rvalue.FromFahrenheit(outdoors), Cold: i%2 == 0}
				for _, list := range series {
					last, from := math.Inf(1), ""
					for _, fill := range list {
						studs := "steel " + depth + " @ " + spacing + " " + fill
						base := u("gypsum 1/2 in + "+studs+" + osb 7/16 in", s)
						if base > last*(1+settledU) {
							t.Errorf("%s at %v °F, cold %v: U %.5f, above %.5f of %s", studs, outdoors, s.Cold, base, last, from)
						}
						last, from = base, studs
						if len(list) > 10 && len(fill)%2 == 0 {
							continue // bare R: layers more over some of them
						}
						for _, more := range []string{"gypsum 1/2 in + %s + xps 1 in + osb 7/16 in", "gypsum 1/2 in + R-0.1 1 in + %s + osb 7/16 in", "gypsum 1/2 in + %s + osb 7/16 in + brick 4 in", "gypsum 1/2 in + R-0.05 3/8 in + %s + osb 7/16 in", "gypsum 1/2 in + %s + concrete 6 in + osb 7/16 in", "gypsum 1/2 in + 1x3 @ 16 in (air 3/4 in) + %s + osb 7/16 in"} {
							text := fmt.Sprintf(more, studs)
							if got := u(text, s); got > base*(1+settledU) {
								t.Errorf("%s at %v °F, cold %v: U %.5f, above %.5f without the layer", text, outdoors, s.Cold, got, base)
							}
						}
					}
				}
			}
		}
	}
}

// settledU is the relative slack of U-factors whose air spaces have found their
// temperatures to 1e-9.
const settledU = 1e-8

// TestSteelFollowsItsSpacing: studs wider apart never resist less, and nothing jumps
// where the published table begins and ends: no more than 2 % in a quarter inch.
func TestSteelFollowsItsSpacing(t *testing.T) {
	for _, studs := range []string{"3 1/2 in @ %g in (empty)", "3 1/2 in @ %g in (fiberglass R-13)", "3 5/8 in @ %g in (R-10)", "5 in @ %g in (cellulose)", "6 in @ %g in (fiberglass R-19)", "8 in @ %g in (fiberglass R-25)"} {
		last := 0.0
		for s := 8.0; s <= 48; s += 0.25 {
			got := written(t, fmt.Sprintf("gypsum 1/2 in + steel "+studs+" + gypsum 1/2 in", s), assembly.Setting{}).Zone.IP()
			if last > 0 && !(got >= last*(1-settledU) && got <= last*1.02) {
				t.Errorf("steel "+studs+": R-%.3f, a quarter inch closer R-%.3f", s, got, last)
			}
			last = got
		}
	}
}

// TestSteelSettles: fills that a seam between two methods once sent to and fro.
func TestSteelSettles(t *testing.T) {
	for f := -20; f < 68; f += 3 {
		for _, fill := range []string{"fiberglass R-19", "cellulose", "empty", "air 3 1/2 in bright"} {
			spec, err := assembly.Parse("R-5 + steel 3 1/2 in @ 16 in (" + fill + ") + clapboard")
			if err != nil {
				t.Fatal(err)
			}
			s := assembly.Setting{Faces: assembly.Facing{Use: assembly.Roof, Tilt: 57}, Exposure: assembly.Soil, Films: surface.ISO6946, Outdoors: rvalue.FromFahrenheit(float64(f)), Cold: true}
			if _, err := spec.Evaluate(s); err != nil {
				t.Errorf("%s at %d °F: %v", fill, f, err)
			}
		}
	}
}

// TestSteelBeyondItsTable: what the published table is not made for is said.
func TestSteelBeyondItsTable(t *testing.T) {
	for _, c := range []struct {
		stud string
		use  assembly.Use
		want string // codes
	}{
		{"steel 3 1/2 in @ 16 in (fiberglass R-13)", assembly.Wall, "steel"},
		{"steel 3 1/2 in 16 ga @ 16 in (fiberglass R-13)", assembly.Wall, "steel"},
		{"steel 3 1/2 in 25 ga @ 16 in (fiberglass R-13)", assembly.Wall, "steel steel-sheet"},
		{"steel 3 1/2 in 12 ga @ 16 in (fiberglass R-13)", assembly.Wall, "steel steel-sheet"},
		{"steel 6 in @ 16 in (fiberglass R-19)", assembly.Floor, "steel steel-use"},
		{"steel 3 in @ 16 in (R-9)", assembly.Floor, "steel"}, // the zone method knows no use
	} {
		var codes []string
		for _, m := range written(t, "gypsum 1/2 in + "+c.stud+" + osb 7/16 in", assembly.Setting{Faces: assembly.Facing{Use: c.use}}).Remarks {
			if strings.HasPrefix(m.Code, "steel") {
				codes = append(codes, m.Code)
			}
		}
		if got := strings.Join(codes, " "); got != c.want {
			t.Errorf("%s, %s: remarks %q, want %q", c.stud, c.use, got, c.want)
		}
	}
}
