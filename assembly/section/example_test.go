package section_test

import (
	"fmt"
	"log"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/assembly/section"
	"github.com/coldseam/coldseam/rvalue"
)

// ISO 10211, case 2: printed are 9.5 W/m and, at the inside of the web, 16.8 °C.
func ExampleSection_Solve() {
	r, err := roofEdge().Solve(section.Options{})
	if err != nil {
		log.Fatal(err)
	}
	coldest := r.Flows[r.Coldest].Coldest
	fmt.Printf("%.3f W/m, between %.3f and %.3f\n", r.Heat, r.Low, r.High)
	fmt.Printf("coldest inside %.1f °C, fRsi %.2f\n", coldest.Temperature.Celsius(), r.Flows[r.Coldest].Factor)
	// Output:
	// 9.491 W/m, between 9.491 and 9.492
	// coldest inside 16.8 °C, fRsi 0.84
}

// The linear transmittance of an uninsulated slab edge, from a half model: the
// wall's own U is taken off along its height, seen from indoors or from outdoors.
func ExampleResult_Psi() {
	r, err := slabEdge().Solve(section.Options{})
	if err != nil {
		log.Fatal(err)
	}
	wall := (0.04 + 0.1/0.8 + 0.1/0.036 + 0.0125/0.16 + 0.13) * rvalue.RSI
	inside := r.Psi(section.Flank{U: wall.U(), Length: 1.0 * rvalue.Metre})
	outside := r.Psi(section.Flank{U: wall.U(), Length: 1.1 * rvalue.Metre})
	fmt.Printf("psi of the whole joint %.3f (internal), %.3f W/(m·K) (external dimensions)\n", 2*inside.SI(), 2*outside.SI())
	// Output:
	// psi of the whole joint 0.984 (internal), 0.921 W/(m·K) (external dimensions)
}

// A wall of the layer notation by the hand methods and by its section.
func ExampleNewBay() {
	spec, err := assembly.Parse("gypsum 1/2 in + steel 3 1/2 in @ 16 in (fiberglass R-13) + gypsum sheathing 1/2 in")
	if err != nil {
		log.Fatal(err)
	}
	hand, err := spec.Evaluate(assembly.Setting{})
	if err != nil {
		log.Fatal(err)
	}
	bay, err := section.NewBay(spec, hand)
	if err != nil {
		log.Fatal(err)
	}
	r, err := bay.Section.Solve(section.Options{})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("parallel path R-%.1f, isothermal planes R-%.1f, zone method R-%.1f, section R-%.1f\n",
		hand.ParallelPath.IP(), hand.IsothermalPlanes.IP(), hand.Zone.IP(), r.R(bay.Width).IP())
	// Output:
	// parallel path R-14.5, isothermal planes R-4.8, zone method R-7.7, section R-8.1
}

// ISO 10211, case 4: printed are 0.540 W and 0.805 °C.
func ExampleSolid_Solve() {
	r, err := ironBar().Solve(section.SolidOptions{})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%.3f W, between %.3f and %.3f\n", r.Heat, r.Low, r.High)
	fmt.Printf("warmest outside %.2f °C\n", r.Rooms[1].Warmest.Temperature.Celsius())
	// Output:
	// 0.540 W, between 0.539 and 0.541
	// warmest outside 0.80 °C
}
