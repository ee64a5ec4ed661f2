package assembly_test

import (
	"math"
	"testing"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/rvalue"
)

func TestParseFacing(t *testing.T) {
	for _, c := range []struct {
		text string
		want string
	}{
		{"wall", "wall"}, {" Ceiling ", "ceiling"}, {"roof", "roof"}, {"roof 30°", "roof 30°"}, {"roof 30 deg", "roof 30°"}, {"Roof 6/12", "roof 26.57°"}, {"roof 12/12", "roof 45°"},
	} {
		f, err := assembly.ParseFacing(c.text)
		if err != nil || f.String() != c.want {
			t.Errorf("ParseFacing(%q) = %v, %v, want %s", c.text, f, err, c.want)
		}
	}
	for _, bad := range []string{"", "door", "wall 30°", "roof 95°", "roof x/12", "roof 6/0", "roof 30"} {
		if f, err := assembly.ParseFacing(bad); err == nil {
			t.Errorf("ParseFacing(%q) = %v, want an error", bad, f)
		}
	}
}

func TestSettingsAreRefused(t *testing.T) {
	spec, err := assembly.Parse("R-5")
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range []assembly.Setting{
		{Indoors: rvalue.FromCelsius(400)},
		{Outdoors: rvalue.Temperature(math.NaN())},
		{Faces: assembly.Facing{Use: assembly.Roof, Tilt: 120}},
		{Faces: assembly.Facing{Use: 9}},
		{Wind: -1 * rvalue.MetrePerSecond},
	} {
		if _, err := spec.Evaluate(s); err == nil {
			t.Errorf("the setting %+v passes", s)
		}
	}
}
