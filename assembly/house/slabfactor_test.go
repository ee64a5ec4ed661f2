package house_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/coldseam/coldseam/assembly/envelope"
	"github.com/coldseam/coldseam/climate/target"
	"github.com/coldseam/coldseam/rvalue"
)

// TestSlabFactorsAgree: what package target reads the code's R and depth of a slab's edge
// as is what package envelope computes for an edge so insulated. Both hold figures of one
// table (WAC 51-11C-61061), since neither may import the other.
func TestSlabFactorsAgree(t *testing.T) {
	compared := 0
	for _, e := range target.Editions() {
		for n := int8(1); n <= 8; n++ {
			r, err := target.For(target.Zone{Number: n}, e, target.Slab, target.Facts{})
			if err != nil {
				t.Fatal(err)
			}
			if r.F == 0 {
				continue
			}
			compared++
			var installed rvalue.Resistance
			if len(r.Options) > 0 {
				installed = r.Options[0].Cavity
			}
			want := 0.0
			// A depth between the table's two is the mean of both.
			shallow, deep := "2 ft vertical", "4 ft vertical"
			switch depth := r.SlabDepth.IP(); {
			case depth < 2.5:
				deep = shallow
			case depth > 3.5:
				shallow = deep
			}
			for _, reach := range []string{shallow, deep} {
				f, err := envelope.SlabEdge(reach, installed)
				if err != nil {
					t.Fatal(err)
				}
				want += f.IP() / 2
			}
			if got := r.F.IP(); math.Abs(got-want) > 1e-9 {
				t.Errorf("%v, zone %d, %s: %.4f, by the table of F-factors %.4f Btu/(h·ft·°F)", e, n, fmt.Sprint(r.Options), got, want)
			}
		}
	}
	if compared < 20 {
		t.Errorf("%d factors were compared", compared)
	}
}
