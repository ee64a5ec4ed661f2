package climate_test

import (
	"testing"

	"github.com/coldseam/coldseam/climate"
	"github.com/coldseam/coldseam/climate/target"
)

// TestZonesAreTargets checks that every county's zone converts to what package target
// takes, and is one that it knows.
func TestZonesAreTargets(t *testing.T) {
	for c := range climate.All {
		for _, z := range [...]climate.Zone{c.Zone15, c.Zone21} {
			want := target.Zone(z)
			want.WarmHumid = false
			if got, err := target.ParseZone(z.Short()); err != nil || got != want {
				t.Errorf("%v: zone %v reads as %v, %v", c, z, got, err)
			}
		}
	}
}
