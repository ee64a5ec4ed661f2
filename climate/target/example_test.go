package target_test

import (
	"fmt"

	"github.com/coldseam/coldseam/climate/target"
	"github.com/coldseam/coldseam/rvalue"
)

func ExampleFor() {
	zone, err := target.ParseZone("6A")
	if err != nil {
		fmt.Println(err)
		return
	}
	wall, err := target.For(zone, target.Default, target.Wall, target.Facts{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%v, zone %v, %v\n", wall.Edition, wall.Zone, wall.Component)
	fmt.Printf("U-factor %.3f (%v), R-%.1f\n", wall.U.IP(), wall.Marks.U, wall.R().IP())
	for _, o := range wall.Options {
		fmt.Println("or", o)
	}
	// Output:
	// IECC 2021, zone 6A, frame wall
	// U-factor 0.045 (from memory), R-22.2
	// or R-30
	// or R-20+5ci
	// or R-13+10ci
	// or R-0+20ci
}

// An empty 2x4 wall, U 0.29, against zone 5.
func ExampleRequirement_Judge() {
	wall, err := target.For(target.Zone{Number: 5, Moisture: 'A'}, target.Edition2018, target.Wall, target.Facts{})
	if err != nil {
		fmt.Println(err)
		return
	}
	empty := wall.Judge(target.Offer{U: 0.29 * rvalue.UIP})
	fmt.Println(empty.Met, "-", empty.Why)
	fmt.Printf("misses by U %.2f, needs R-%.1f more\n", empty.Short.IP(), empty.Needed.IP())
	filled := wall.Judge(target.Offer{Cavity: 13 * rvalue.RIP, Continuous: 5 * rvalue.RIP})
	fmt.Println(filled.Met, "-", filled.By)
	// Output:
	// false - U-factor 0.290 is above 0.060
	// misses by U 0.23, needs R-13.2 more
	// true - R-value path (R-13+5ci)
}

func ExampleAll() {
	for r, err := range target.All(target.Zone{Number: 4, Moisture: 'C'}, target.Edition2021, target.Facts{}) {
		if err != nil {
			fmt.Println(err)
			return
		}
		if r.U != 0 {
			fmt.Printf("%-22s U %.3f\n", r.Component, r.U.IP())
		}
	}
	// Output:
	// ceiling                U 0.024
	// ceiling without attic  U 0.024
	// frame wall             U 0.045
	// mass wall              U 0.082
	// floor                  U 0.033
	// basement wall          U 0.050
	// crawl-space wall       U 0.055
	// window                 U 0.300
	// skylight               U 0.550
	// door                   U 0.300
}

func ExampleAdvise() {
	zone := target.Zone{Number: 6, Moisture: 'A'}
	for _, part := range []struct {
		c target.Component
		x target.Existing
	}{{target.Ceiling, target.ThreeToFourInches}, {target.Wall, target.Bare}, {target.BasementWall, target.Bare}} {
		a, err := target.Advise(zone, part.c, part.x)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(a.Text)
	}
	// Output:
	// add R-49 to the attic
	// when the siding is off anyway, blow the empty cavities full through the sheathing and add R-5ci to R-10ci insulating sheathing beneath the new siding
	// insulate with R-15ci or R-19 batts
}

func ExampleTightness() {
	ach50, note := target.Tightness(target.Zone{Number: 6, Moisture: 'A'}, target.Edition2018)
	fmt.Println(ach50, note)
	// Output:
	// 3 seen (Home Innovation TechNote; Insulation Institute)
}

func ExampleParseZone() {
	for _, s := range []string{"zone 6A", "marine 4", "3A*", "7A"} {
		z, err := target.ParseZone(s)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println(z)
	}
	// Output:
	// 6A
	// 4C
	// 3A warm-humid
	// climate zone "7A": zone 7 has no moisture letter; write "7"
}
