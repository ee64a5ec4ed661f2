package assembly_test

import (
	"math"
	"testing"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/rvalue"
)

// TestWrittenSteelWalls: ASHRAE 90.1-2016 A3.3 base (films 0.17 and 0.68,
// stucco 0.08, 5/8 in gypsum 0.56 twice, seen) with the wall U-factors of the
// Cold-Formed Steel Engineers Institute's guide, seen.
func TestWrittenSteelWalls(t *testing.T) {
	for _, c := range []struct {
		text string
		u    float64
	}{
		{"R-0.56 + steel 3 1/2 in @ 16 in (fiberglass R-13) + R-0.56 + R-0.08", 0.124},
		{"R-0.56 + steel 6 in @ 16 in (R-19) + R-0.56 + R-0.08", 0.109},
	} {
		r := written(t, c.text, assembly.Setting{})
		if r.Effective.Method != assembly.Zone {
			t.Errorf("%s: effective by %v, want the methods for steel", c.text, r.Effective.Method)
		}
		if got := r.Effective.U().IP(); math.Abs(got-c.u) > 0.0005 {
			t.Errorf("%s: U = %.5f, the guide prints %.3f", c.text, got, c.u)
		}
		if r.Zone >= r.ParallelPath || r.Zone <= 0 {
			t.Errorf("%s: R by zone %v against parallel path %v", c.text, r.Zone, r.ParallelPath)
		}
	}
}

// TestGainOfPublishedSteel: outside the studs' layer the published layer is one
// more in series, so that a plain layer gains what it adds; in it the table goes
// by labels and nothing is said.
func TestGainOfPublishedSteel(t *testing.T) {
	r := written(t, "gypsum 1/2 in + steel 3 1/2 in @ 16 in (fiberglass R-13) + osb 7/16 in", assembly.Setting{})
	for _, l := range r.Layers {
		for _, s := range l.Shares {
			if bridged := len(l.Shares) > 1; bridged != math.IsNaN(s.Gain) || !bridged && !near(s.Gain, 1, 1e-6) {
				t.Errorf("gain of %q is %v", s.Name, s.Gain)
			}
		}
	}
}

// TestCoversOfKnownThickness: nothing is said of covers whose thickness is known,
// of membranes, and where the published factor does not ask for it.
func TestCoversOfKnownThickness(t *testing.T) {
	for _, text := range []string{
		"gypsum 1/2 in + polyethylene + steel 3 in @ 12 in (fiberglass R-13) + osb 7/16 in + vinyl siding 1/2 in + R-5 1 in",
		"R-1 + steel 3 1/2 in @ 16 in (fiberglass R-13) + R-1",
	} {
		for _, m := range written(t, text, assembly.Setting{}).Remarks {
			if m.Code == "zone-cover" {
				t.Errorf("%s: %s", text, m.Text)
			}
		}
	}
}

// TestSteelByLabel: a standard batt in a 6 in stud is the row of its label,
// R-19 at 16 in: U 0.109 with the layers of the guide cited above.
func TestSteelByLabel(t *testing.T) {
	r := written(t, "R-0.56 + steel 6 in @ 16 in (fiberglass R-19) + R-0.56 + R-0.08", assembly.Setting{})
	if got := r.Effective.U().IP(); math.Abs(got-0.109) > 0.0005 {
		t.Errorf("U = %.5f, the guide prints 0.109", got)
	}
	sum := 0.0
	for _, l := range r.Layers {
		sum += float64(l.R)
	}
	if math.Abs(sum-float64(r.Effective.R)) > 1e-12 {
		t.Errorf("the layers sum to %v, the wall has %v", sum, float64(r.Effective.R))
	}
}

// TestSteelOverWeakCavity: where the empty cavity alone resists too little for
// the table's row, R-0.91 at 24 in, the studs still carry their part of the heat.
func TestSteelOverWeakCavity(t *testing.T) {
	weak := 0
	for f := 60; f >= -60; f-- {
		for _, use := range []assembly.Use{assembly.Wall, assembly.Ceiling} {
			r := written(t, "R-0.1 1/2 in + steel 3 1/2 in @ 24 in (empty) + R-0.1 1/2 in", assembly.Setting{Faces: assembly.Facing{Use: use}, Outdoors: rvalue.FromFahrenheit(float64(f))})
			layer := r.Layers[2]
			if !(layer.R < layer.Shares[1].R && layer.R > layer.Shares[0].R) || !(r.Paths[0].Heat > 0) || layer.R.IP() > 0.91+1e-9 {
				t.Errorf("%s at %d °F: the layer has %v with a cavity of %v, the studs carry %v", use, f, layer.R, layer.Shares[1].R, r.Paths[0].Heat)
			}
			if layer.R.IP() < 0.91-1e-9 {
				weak++
			}
		}
	}
	if weak == 0 || weak == 242 {
		t.Errorf("%d of 242 cavities are too weak; the test wants both", weak)
	}
}
