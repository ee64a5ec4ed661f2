package house

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"github.com/coldseam/coldseam/assembly"
)

// asPrinted is half the last digit of the labels and of the compression chart,
//
const asPrinted = 0.05

// TestInsulation checks what the energy code would count as insulation.
func TestInsulation(t *testing.T) {
	for _, tt := range []struct {
		name, layers       string
		cavity, continuous float64 // R in h·ft²·°F/Btu
	}{
		{"an empty wall has none", "gypsum 1/2 in + 2x4 @ 16 in (empty) + board sheathing 3/4 in + wood bevel siding", 0, 0},
		{"a batt counts at its label", "gypsum 1/2 in + 2x4 @ 16 in (fiberglass R-13) + osb 7/16 in + vinyl siding", 13, 0},
		{"a squeezed batt at its squeezed R, a fiberglass maker's chart in JLC", "gypsum 1/2 in + 2x6 @ 16 in (fiberglass R-19) + osb 7/16 in", 18, 0},
		{"the air beside it does not", "gypsum 1/2 in + 2x4 @ 16 in (R-11 + air 1/2 in) + osb 7/16 in", 11, 0},
		{"foam is continuous, sheathing of wood is nothing", "gypsum 1/2 in + 2x4 @ 16 in (fiberglass R-13) + osb 7/16 in + R-5 + vinyl siding", 13, 5},
		{"two framed layers add up", "gypsum 1/2 in + 2x4 @ 16 in (R-13) + 2x3 @ 24 in (R-8)", 21, 0},
		{"masonry alone", "concrete block 8 in", 0, 0},
	} {
		spec, err := assembly.Parse(tt.layers)
		if err != nil {
			t.Fatal(err)
		}
		r, err := spec.Evaluate(assembly.Setting{})
		if err != nil {
			t.Fatal(err)
		}
		cavity, continuous := offered(insulation(spec, r))
		got, want := []float64{cavity.IP(), continuous.IP()}, []float64{tt.cavity, tt.continuous}
		if diff := cmp.Diff(want, got, cmpopts.EquateApprox(0, asPrinted)); diff != "" {
			t.Errorf("%s: cavity and continuous R (-want +got):\n%s", tt.name, diff)
		}
	}
}

// TestInsulationOfAnAttic: the labels add up, though some of the fill lies above the
// joists, and some of it is air that does not count.
func TestInsulationOfAnAttic(t *testing.T) {
	for layers, want := range map[string]float64{ // R in h·ft²·°F/Btu
		"gypsum 1/2 in + 2x6 @ 16 in (cellulose R-30)":                          30,
		"gypsum 1/2 in + 2x6 @ 16 in (fiberglass R-11 + cellulose R-30)":        41,
		"gypsum 1/2 in + 2x8 @ 16 in (fiberglass R-11 + air 1 in)":              11,
		"gypsum 1/2 in + 2x8 @ 16 in (air 1 in + fiberglass R-11 + air 1 in)":   11,
		"gypsum 1/2 in + 2x8 @ 16 in (air 1 in + fiberglass R-11) + osb 1/2 in": 11,
	} {
		spec, err := assembly.Parse(layers)
		if err != nil {
			t.Fatal(err)
		}
		r, err := spec.Evaluate(assembly.Setting{Faces: assembly.Facing{Use: assembly.Ceiling}})
		if err != nil {
			t.Fatal(err)
		}
		cavity, _ := offered(insulation(spec, r))
		if diff := cmp.Diff(want, cavity.IP(), cmpopts.EquateApprox(0, asPrinted)); diff != "" {
			t.Errorf("%s: R between the joists and above (-want +got):\n%s", layers, diff)
		}
	}
}

// TestFacts checks what the code's footnotes ask about an assembly.
func TestFacts(t *testing.T) {
	for _, tt := range []struct {
		name, layers   string
		inside, filled bool
	}{
		{"insulated inside the block", "gypsum 1/2 in + 2x4 @ 24 in (fiberglass R-13) + concrete block 8 in", true, true},
		{"insulated outside it", "gypsum 1/2 in + concrete block 8 in + xps 2 in + stucco 3/4 in", false, false},
		{"most of it inside", "xps 2 in + brick 8 in + xps 1 in + stucco 3/4 in", true, false},
		{"as much inside as outside", "xps 2 in + brick 8 in + xps 2 in + stucco 3/4 in", false, false},
		{"a floor's batt as deep as its joists", "oak 3/4 in + 2x10 @ 16 in (fiberglass R-30)", false, true},
		{"air left under the batt", "oak 3/4 in + 2x10 @ 16 in (fiberglass R-19)", false, false},
		{"empty", "oak 3/4 in + 2x10 @ 16 in (empty)", false, false},
	} {
		spec, err := assembly.Parse(tt.layers)
		if err != nil {
			t.Fatal(err)
		}
		r, err := spec.Evaluate(assembly.Setting{})
		if err != nil {
			t.Fatal(err)
		}
		if inside := insideOfMass(spec, insulation(spec, r)); inside != tt.inside {
			t.Errorf("%s: insulation on the inside of the mass is %v, want %v", tt.name, inside, tt.inside)
		}
		if got := filled(spec, r); got != tt.filled {
			t.Errorf("%s: bays filled is %v, want %v", tt.name, got, tt.filled)
		}
	}
}

func TestWithoutPiece(t *testing.T) {
	for _, tt := range []struct {
		name, text string
		offset     int
		want       string
		ok         bool
	}{
		{"a layer in the middle", "gypsum 1/2 in + foo 3 in + vinyl", 17, "gypsum 1/2 in + R-1      + vinyl", true},
		{"the last layer", "gypsum 1/2 in + foo 3 in", 17, "gypsum 1/2 in + R-1     ", true},
		{"a fill of one", "2x4 @ 16 in (foo 3 in) + R-1", 13, "2x4 @ 16 in ( R-1    ) + R-1", true},
		{"a fill of several", "2x4 @ 16 in (foo 3 in + bar) + R-1", 13, "2x4 @ 16 in ( R-1     + bar) + R-1", true},
		{"the members take their fill along", "9x9 @ 16 in (foo) + R-1", 0, " R-1              + R-1", true},
		{"too short", "a + b", 0, "a + b", false},
		{"a bracket too many", "a) + foo 3 in", 5, "a) + foo 3 in", false},
	} {
		got, ok := withoutPiece(tt.text, tt.offset)
		if got != tt.want || ok != tt.ok {
			t.Errorf("%s: withoutPiece(%q, %d) = %q, %v, want %q, %v", tt.name, tt.text, tt.offset, got, ok, tt.want, tt.ok)
		}
	}
}
