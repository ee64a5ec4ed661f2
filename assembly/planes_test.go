package assembly_test

import (
	"math"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/rvalue"
)

// partFilled is a wall whose batts leave part of the bay to the air.
const partFilled = "gypsum 1/2 in + 2x6 @ 16 in (fiberglass R-11) + osb 7/16 in + vinyl siding"

// TestPlanesBetweenPieces: where a batt ends within the bay, an isothermal plane lies
// too, as ISO 6946 divides a component wherever a material ends (its lower limit). By
// hand: 25 % of lumber, R-1.25 per inch, beside 3 1/2 in of R-11 and beside 2 in of
// air; the parallel path knows no planes.
func TestPlanesBetweenPieces(t *testing.T) {
	r := written(t, partFilled, assembly.Setting{})
	bay := r.Layers[2]
	air := bay.Shares[1].Pieces[1].R.IP()
	around := 0.0
	for i, l := range r.Layers {
		if i != 2 {
			around += l.Shares[0].R.IP()
		}
	}
	batt, gap := 1/(0.25/(1.25*3.5)+0.75/11), 1/(0.25/(1.25*2)+0.75/air)
	if got, want := r.IsothermalPlanes.IP(), around+batt+gap; !near(got, want, 1e-9) {
		t.Errorf("isothermal planes: R-%.4f, by hand R-%.4f", got, want)
	}
	through, beside := around+1.25*5.5, around+11+air
	if got, want := r.ParallelPath.IP(), 1/(0.25/through+0.75/beside); !near(got, want, 1e-9) {
		t.Errorf("parallel path: R-%.4f, by hand R-%.4f", got, want)
	}
	if got := (r.ParallelPath - r.IsothermalPlanes) / 2 / r.Combined.R; !near(r.Combined.Error, float64(got), 1e-12) || got < 0.03 {
		t.Errorf("combined is off by %.4f at most, half the difference of its limits is %.4f", r.Combined.Error, float64(got))
	}
}

// TestPlanesWantThicknesses: pieces of unknown thickness say nothing of where they
// meet, and the layer is mixed as one.
func TestPlanesWantThicknesses(t *testing.T) {
	r := written(t, "R-1 + 2x6 @ 16 in (R-8 + R-5) + R-1", assembly.Setting{})
	if got, want := r.Assembly.Layers[2].Mixed().IP(), 1/(0.25/6.875+0.75/13); !near(got, want, 1e-9) {
		t.Errorf("R-8 and R-5 of unknown thickness: R-%.4f, by hand R-%.4f", got, want)
	}
}

// TestHeatCrossesOverBetweenPieces: between isothermal planes every slab divides the
// heat by itself, fraction over R, and a share's part of it all is the mean by the
// drop in each; by hand from the slabs.
func TestHeatCrossesOverBetweenPieces(t *testing.T) {
	r := written(t, partFilled, assembly.Setting{Method: assembly.Isothermal})
	bay := r.Layers[2]
	layer, carried := 0.0, 0.0
	for n, deep := range []float64{3.5, 2} {
		stud, fill := 0.25/(1.25*deep), 0.75/bay.Shares[1].Pieces[n].R.IP()
		layer += 1 / (stud + fill)
		carried += stud / (stud + fill) * 1 / (stud + fill)
	}
	if !near(bay.R.IP(), layer, 1e-9) || !near(bay.Shares[0].Heat, carried/layer, 1e-9) || !near(bay.Shares[0].Heat+bay.Shares[1].Heat, 1, 1e-12) {
		t.Errorf("the bay resists R-%.4f and its studs carry %.4f; by hand R-%.4f and %.4f", bay.R.IP(), bay.Shares[0].Heat, layer, carried/layer)
	}
}

func TestPartsAreChecked(t *testing.T) {
	for name, c := range map[string]struct {
		parts []float64
		says  string
	}{
		"too few": {nil, "equally many"},
		"nothing": {[]float64{1, 0}, "above 0"},
		"NaN":     {[]float64{math.NaN(), 0.5}, "above 0"},
		"too big": {[]float64{0.5, 0.6}, "110 %"},
	} {
		l := assembly.Framed("studs", 0.25, rvalue.RSI, 2*rvalue.RSI)
		l.Shares[0].Parts, l.Shares[1].Parts = []float64{0.5, 0.5}, c.parts
		a := assembly.Assembly{Layers: []assembly.Layer{l}}
		if err := a.Check(); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v, want something of %q", name, err, c.says)
		}
		_ = a.IsothermalPlanes() // and no panic where nobody checked
	}
}
