package assembly_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/rvalue"
)

func written(t *testing.T, text string, s assembly.Setting) *assembly.Result {
	t.Helper()
	spec, err := assembly.Parse(text)
	if err != nil {
		t.Fatal(err)
	}
	r, err := spec.Evaluate(s)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// TestWrittenWalls holds whole walls, from text to effective R, against
// published figures; unlike the cases of published_test.go, films, framing
// factors, squeezing and catalogue are in play. All are walls of wood at 16 in.
//
// Base of the printed table: stucco R-0.08, 5/8 in gypsum R-0.56 twice, films
// 0.68 and 0.17; framing 25 % (a continuous-insulation trade association's
// deemed-to-comply tables, seen; base layers of ASHRAE 90.1 A3.4, from memory).
// Tolerance: half the last printed digit.
func TestWrittenWalls(t *testing.T) {
	for _, c := range []struct {
		name, text string
		u          float64 // Btu/(h·ft²·°F)
	}{
		{"2x4 R-11 + R-5", "R-0.56 + 2x4 @ 16 in (fiberglass R-11) + R-0.56 + R-5 + R-0.08", 0.063},
		{"2x4 R-13 + R-3.8", "R-0.56 + 2x4 @ 16 in (fiberglass R-13) + R-0.56 + R-3.8 + R-0.08", 0.064},
		{"2x6 empty + R-12", "R-0.56 + 2x6 @ 16 in (R-0.91) + R-0.56 + R-12 + R-0.08", 0.062},
		{"2x6 R-19 squeezed + R-2", "R-0.56 + 2x6 @ 16 in (fiberglass R-19) + R-0.56 + R-2 + R-0.08", 0.057},
		{"2x6 R-21 + R-2", "R-0.56 + 2x6 @ 16 in (fiberglass R-21) + R-0.56 + R-2 + R-0.08", 0.053},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := written(t, c.text, assembly.Setting{})
			if got := r.Effective.U().IP(); math.Abs(got-c.u) > 0.0005 {
				t.Errorf("U = %.5f, the table prints %.3f", got, c.u)
			}
		})
	}
}

func TestRemarks(t *testing.T) {
	for _, c := range []struct{ text, code, says string }{
		{"2x6 @ 16 in (fiberglass R-38)", "squeezed", "from 12 in (304.8 mm) to 5 1/2 in (139.7 mm)"},
		{"R-1 + 2x6 @ 24 in (fiberglass R-13) + R-1", "left-over", "2 in"},
		{"R-1 + 2x6 @ 24 in (fiberglass R-13)", "open-bay", "2 in"},
		{"R-1 + 2x4 @ 16 in (empty)", "open-bay", "not counted"},
		{"gypsum 12 in + R-5", "implausible", "12 in"},
		{"hard 1/2 in + R-5", "read-as", "maple"},
		{"R-1 + hard 3 1/2 in 20 % (novelty) + R-1", "read-as", "maple"},
		{"R-1 + hard 3 1/2 in 20 % (oriented strand 3 1/2 in) + R-1", "read-as", "OSB"},
		{"R-500 xps 1 in", "implausible", "per inch"},
		{"vinyl siding 3/4 in + R-5", "thickness-unused", "by the piece"},
		{"fiberglass R-13 + gypsum 1/2 in + mineral wool R 2.5", "label", "RSI 0.44"},
		{"wood bevel siding + 2x4 @ 16 in (empty) + gypsum 1/2 in", "order", "other way round"},
		{"2x4 @ 16 in (R-19)", "bare-r", "fiberglass R-19"},
		{"R-1 + 2x4 @ 16 in (empty) + R-1", "framing", "25 %"},
		{"R-1 + 2x4 @ 24 in (empty) + R-1", "framing", "22 %"},
		{"R-1 + 2x4 @ 400 mm (empty) + R-1", "framing", "25 %"},
		{"R-1 + 1x3 @ 16 in (empty) + R-1", "framing", "15.6 %"},
		{"R-1 + 2x4 @ 16 in framing 18 % (empty) + R-1", "framing", "as written"},
		{"R-1 + 1x3 @ 16 in (empty) + 2x4 @ 16 in (empty) + R-1", "crossing", "aligned"},
		{"steel 3 1/2 in @ 16 in (fiberglass R-13)", "steel", "correction factor"},
		{"steel 3 in @ 12 in (fiberglass R-13)", "steel", "zone method"},
		{"steel 3 1/2 in @ 12 in (fiberglass R-13)", "steel", "which is our own"},
		{"steel 5 in @ 16 in (R-15)", "steel", "by our own straight line"},
		{"R-1 + steel 3 in @ 12 in (fiberglass R-13) + osb 7/16 in", "zone-cover", "R-1: its thickness"},
		{"gypsum 1/2 in + steel 3 in @ 12 in (fiberglass R-13) + osb 7/16 in + vinyl siding", "zone-cover", "vinyl siding: its thickness"},
		{"brick 3 5/8 in + air 1 in vented + brick 3 5/8 in", "vented", "do not count"},
		{"RSI 0.01 10 % (RSI 3)", "contrast", "rough"},
	} {
		r := written(t, c.text, assembly.Setting{})
		found := false
		for _, m := range r.Remarks {
			found = found || m.Code == c.code && strings.Contains(m.Text, c.says)
		}
		if !found {
			t.Errorf("%s: no remark %s of %q in %+v", c.text, c.code, c.says, r.Remarks)
		}
	}
}

func ExampleSpec_Evaluate() {
	spec, err := assembly.Parse("plaster 3/4 in + 2x4 @ 16 in (fiberglass R-19) + board sheathing 3/4 in + wood bevel siding")
	if err != nil {
		fmt.Println(err)
		return
	}
	wall, err := spec.Evaluate(assembly.Setting{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("effective:", wall.Effective.R.In(rvalue.IP), "by", wall.Effective.Method)
	for _, r := range wall.Remarks {
		if r.Code == "squeezed" {
			fmt.Println(r.Text)
		}
	}
	// Output:
	// effective: R-12.5 by parallel path
	// fiberglass R-19 batt squeezed from 6 1/4 in (158.8 mm) to 3 1/2 in (88.9 mm): R-14.0 (RSI 2.47) (a fiberglass maker's compression chart, printed in the Journal of Light Construction)
}

func ExampleParse_mistake() {
	_, err := assembly.Parse("gypsum 1/2 in + 2x4 @ 16 in (fibreglas R-13)")
	fmt.Println(err)
	// Output:
	// assembly: unknown material "fibreglas"; did you mean fiberglass or fiberboard?
	//   gypsum 1/2 in + 2x4 @ 16 in (fibreglas R-13)
	//                                ^
}
