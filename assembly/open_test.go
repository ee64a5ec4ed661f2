package assembly_test

import (
	"math"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/rvalue/surface"
)

// TestVentedCladding: Norwegian catalogue wall (seen), 48 x 198 mm at 600 mm
// with 12 % wood: ventilated cladding, film 0.13 on both sides; R'T 5.073,
// R”T 4.907 m²K/W. Layers as resistances, since the catalogue's own λ are used.
func TestVentedCladding(t *testing.T) {
	r := written(t, "RSI 0.06 + RSI 0.05 + RSI 1.65 12 % (RSI 5.5) + RSI 0.24 + air 25 mm vented + wood bevel siding",
		assembly.Setting{Films: surface.ISO6946})
	if got := r.ParallelPath.RSI(); math.Abs(got-5.073) > 0.0005 {
		t.Errorf("upper limit %.4f, printed 5.073", got)
	}
	if got := r.IsothermalPlanes.RSI(); math.Abs(got-4.907) > 0.0005 {
		t.Errorf("lower limit %.4f, printed 4.907", got)
	}
	if r.Effective.Method != assembly.Mean {
		t.Errorf("effective by %v, want ISO 6946's combined method with its films", r.Effective.Method)
	}
}

// TestSlightlyVented: ISO 6946:1997, 5.3.3, from memory: half the resistance of
// the layer, and 0.15 m²·K/W at most for all between it and the outdoors.
func TestSlightlyVented(t *testing.T) {
	iso := assembly.Setting{Films: surface.ISO6946}
	for _, c := range []struct {
		text   string
		beyond float64 // with the outer film of 0.04
		capped bool
	}{
		{"RSI 1 + air 50 mm slightly vented + RSI 0.1", 0.14, false},
		{"RSI 1 + air 50 mm slightly vented + RSI 0.12", 0.15, true},
		{"RSI 1 + air 50 mm slightly vented + RSI 0.5 20 % (RSI 3) + RSI 2", 0.15, true},
		{"RSI 1 + air 50 mm slightly vented + steel 3 1/2 in @ 16 in (fiberglass R-13) + RSI 2", 0.15, true},
		{"RSI 1 + air 50 mm slightly vented + RSI 2 + air 50 mm slightly vented + RSI 2", 0.15, true},
		{"RSI 1 + air 50 mm slightly vented + RSI 2 + air 25 mm vented + RSI 2", 0.15, true},
	} {
		closed := written(t, "RSI 1 + air 50 mm + RSI 0.01", iso)
		r := written(t, c.text, iso)
		// The space's own R moves a little with its temperatures.
		want := 0.13 + 1 + float64(closed.Layers[2].R)/2 + c.beyond
		if got := float64(r.Effective.R); math.Abs(got-want) > 0.002 {
			t.Errorf("%s: RSI %.4f, by hand %.4f", c.text, got, want)
		}
		capped := false
		for _, m := range r.Remarks {
			capped = capped || m.Code == "slightly-vented" && strings.Contains(m.Text, "at most")
		}
		if capped != c.capped {
			t.Errorf("%s: remarked on the cap %v, want %v: %+v", c.text, capped, c.capped, r.Remarks)
		}
	}
}

// TestOpenAirDoesNotCount: air that nothing closes on one side, at a face of the
// assembly or beside a vented space, is the room's or the outdoors' own, however
// it is written; each text counts as what is left without it.
func TestOpenAirDoesNotCount(t *testing.T) {
	ceiling := assembly.Setting{Faces: assembly.Facing{Use: assembly.Ceiling}}
	floor := assembly.Setting{Faces: assembly.Facing{Use: assembly.Floor}, Exposure: assembly.Still}
	soil := assembly.Setting{Faces: assembly.Facing{Use: assembly.Floor}, Exposure: assembly.Soil}
	still := assembly.Setting{Exposure: assembly.Still}
	wall := assembly.Setting{}
	for _, c := range []struct {
		text   string
		s      assembly.Setting
		as     string // resists as much, in asIn
		asIn   assembly.Setting
		remark string // its code, none if empty
	}{
		{"gypsum 1/2 in + 2x6 @ 16 in (empty)", ceiling, "gypsum 1/2 in", ceiling, "open-bay"},
		{"gypsum 1/2 in + 2x6 @ 16 in (air)", ceiling, "gypsum 1/2 in", ceiling, "open-bay"},
		{"gypsum 1/2 in + 2x6 @ 16 in (air 5 1/2 in)", ceiling, "gypsum 1/2 in", ceiling, "open-bay"},
		{"gypsum 1/2 in + 2x6 @ 16 in (air 1 in bright + air 2 in)", ceiling, "gypsum 1/2 in", ceiling, "open-bay"},
		{"gypsum 1/2 in + 2x6 @ 16 in (loose mineral wool 3 1/2 in + air 2 in)", ceiling, "gypsum 1/2 in + 2x6 @ 16 in (loose mineral wool 3 1/2 in)", ceiling, "open-bay"},
		{"gypsum 1/2 in + 2x6 @ 16 in (air 1 in + loose mineral wool 3 1/2 in + air 1 in)", ceiling, "gypsum 1/2 in + 2x6 @ 16 in (air 1 in + loose mineral wool 3 1/2 in)", ceiling, "open-bay"},
		{"gypsum 1/2 in + 2x6 @ 16 in (cellulose 10 in + air 1 in)", ceiling, "gypsum 1/2 in + 2x6 @ 16 in (cellulose 10 in)", ceiling, "open-bay"},
		{"gypsum 1/2 in + 2x6 @ 16 in (fiberglass R-19 + air 1 in)", ceiling, "gypsum 1/2 in + 2x6 @ 16 in (fiberglass R-19)", ceiling, "open-bay"},
		{"gypsum 1/2 in + RSI 0.8 10 % (RSI 2 + air 2 in)", ceiling, "gypsum 1/2 in + RSI 0.8 10 % (RSI 2)", ceiling, "open-bay"},
		{"plywood 3/4 in + 2x8 @ 16 in (fiberglass R-19 + air 1 in)", floor, "plywood 3/4 in + 2x8 @ 16 in (fiberglass R-19)", floor, "open-bay"},
		{"plywood 3/4 in + air 2 in", floor, "plywood 3/4 in", floor, "open-air"},
		{"plywood 3/4 in + air 2 in bright", floor, "plywood 3/4 in", floor, "open-air"},
		{"air 2 in + plywood 3/4 in", wall, "plywood 3/4 in", wall, "open-air"},
		{"plywood 3/4 in + air 2 in slightly vented", wall, "plywood 3/4 in", wall, "open-air"},
		{"plywood 3/4 in + 2x4 @ 16 in (empty) + air 2 in", wall, "plywood 3/4 in", wall, "open-air"},
		{"plywood 3/4 in + 1x3 @ 16 in (empty) + 2x4 @ 16 in (empty)", wall, "plywood 3/4 in", wall, "open-bay"},
		{"2x4 @ 16 in (air 1 in + fiberglass R-8) + plywood 3/4 in", wall, "2x4 @ 16 in (fiberglass R-8 2 1/2 in) + plywood 3/4 in", wall, "open-bay"},
		{"gypsum 1/2 in + 2x4 @ 16 in (empty) + air 1 in vented + brick 4 in", wall, "gypsum 1/2 in", still, "open-bay"},
		{"gypsum 1/2 in + air 1 in + air 1 in vented + brick 4 in", wall, "gypsum 1/2 in", still, "open-air"},
		{"gypsum 1/2 in + 2x8 @ 24 in (fiberglass R-19) + air 1 in vented + osb 1/2 in", wall, "gypsum 1/2 in + 2x8 @ 24 in (fiberglass R-19)", still, "open-bay"},
		{"2x4 @ 16 in (empty) + 2x4 @ 16 in aligned (fiberglass R-13) + osb 7/16 in", wall, "2x4 @ 16 in (fiberglass R-13) + osb 7/16 in", wall, "open-bay"},
		// Closed, and counted:
		{"plywood 3/4 in + 2x4 @ 16 in (empty)", soil, "plywood 3/4 in + 2x4 @ 16 in (air 3 1/2 in)", soil, ""},
		{"plywood 3/4 in + air 2 in", soil, "plywood 3/4 in + air 2 in", soil, ""},
		{"gypsum 1/2 in + 2x4 @ 16 in (empty) + house wrap + air 1 in vented + brick 4 in", wall, "gypsum 1/2 in + 2x4 @ 16 in (air 3 1/2 in) + house wrap", still, ""},
	} {
		got, want := written(t, c.text, c.s), written(t, c.as, c.asIn)
		if !near(float64(got.Effective.R), float64(want.Effective.R), 1e-9) {
			t.Errorf("%s: R-%.3f, %s: R-%.3f", c.text, got.Effective.R.IP(), c.as, want.Effective.R.IP())
		}
		codes := ""
		for _, m := range got.Remarks {
			if strings.HasPrefix(m.Code, "open-") && !strings.Contains(codes, m.Code) {
				codes += m.Code
			}
		}
		if !strings.Contains(codes, c.remark) || c.remark == "" && codes != "" {
			t.Errorf("%s: remarks %q, want %q", c.text, codes, c.remark)
		}
	}
	if r := written(t, "gypsum 1/2 in + 2x6 @ 16 in (empty) + osb 1/2 in", ceiling); r.Effective.R.IP() < 2.5 {
		t.Errorf("a closed bay resists R-%.2f, no air space", r.Effective.R.IP())
	}
}
