package assembly_test

import (
	"strings"
	"testing"

	"github.com/coldseam/coldseam/assembly"
)

// TestAdvisedMethod: ASHRAE Handbook—Fundamentals 2021, ch. 27, advises the
// parallel path for wood framing, whatever the bays hold, and isothermal planes
// for masonry; metal wants zone methods.
func TestAdvisedMethod(t *testing.T) {
	for _, c := range []struct {
		text string
		want assembly.Method
		says string
	}{
		{"plaster 3/4 in + 2x4 @ 16 in (empty) + board sheathing 3/4 in + wood bevel siding", assembly.Parallel, "nothing but air"},
		{"gypsum 1/2 in + 2x8 @ 16 in (empty) + osb 7/16 in", assembly.Parallel, "nothing but air"},
		{"gypsum 1/2 in + 2x12 @ 16 in (empty) + osb 7/16 in", assembly.Parallel, "nothing but air"},
		{"gypsum 1/2 in + fir 9 in 12 % (air 9 in) + osb 7/16 in", assembly.Parallel, "nothing but air"},
		{"gypsum 1/2 in + 2x6 @ 16 in (xps 1 in + air 4 1/2 in) + osb 7/16 in", assembly.Parallel, "one order of magnitude"},
		{"gypsum 1/2 in + 2x6 @ 16 in (fiberglass R-21) + osb 7/16 in", assembly.Parallel, "one order of magnitude"},
		{"plaster 3/4 in + concrete 6 in 25 % (air 6 in) + plaster 3/4 in", assembly.Isothermal, "masonry"},
		{"plaster 3/4 in + concrete 6 in 25 % (perlite) + plaster 3/4 in", assembly.Isothermal, "masonry"},
		{"R-1 + R-0.01 5 % (air 3 in) + R-1", assembly.Isothermal, "differ"},
		{"R-1 + R-0.2 5 % (R-5) + R-1", assembly.Isothermal, "differ 25 times"},
		{"gypsum 1/2 in + steel 3 1/2 in @ 16 in (empty) + osb 7/16 in", assembly.Zone, "steel"},
		{"gypsum 1/2 in + osb 7/16 in", assembly.Parallel, "nothing bridges"},
	} {
		for _, use := range []assembly.Use{assembly.Wall, assembly.Ceiling, assembly.Floor} {
			s := assembly.Setting{Faces: assembly.Facing{Use: use}}
			if r := written(t, c.text, s); r.Effective.Method != c.want || !strings.Contains(r.Effective.Why, c.says) {
				t.Errorf("%s, %v: %v, %s; want %v", c.text, use, r.Effective.Method, r.Effective.Why, c.want)
			}
		}
	}
}

func TestZoneMethodWantsSteel(t *testing.T) {
	spec, err := assembly.Parse(eightLayers)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := spec.Evaluate(assembly.Setting{Method: assembly.Zone}); err == nil || !strings.Contains(err.Error(), "steel") {
		t.Errorf("the zone method without steel gives %v, want an error", err)
	}
}

func TestParseMethod(t *testing.T) {
	for text, want := range map[string]assembly.Method{
		"parallel path": assembly.Parallel, " Isothermal-Planes ": assembly.Isothermal, "combined": assembly.Mean, "zone": assembly.Zone,
	} {
		if m, err := assembly.ParseMethod(text); err != nil || m != want {
			t.Errorf("ParseMethod(%q) = %v, %v, want %v", text, m, err, want)
		}
	}
	for _, bad := range []string{"", " ", "guess "} {
		if m, err := assembly.ParseMethod(bad); err == nil {
			t.Errorf("ParseMethod(%q) = %v, want an error", bad, m)
		}
	}
}
