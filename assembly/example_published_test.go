package assembly_test

import (
	"fmt"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/rvalue"
)

// The worked examples of the ASHRAE handbook. All values of these and other
// sources, with what differs and why, are in testdata/SCORE.md.

// Wood-frame wall, studs at 400 mm: ASHRAE Handbook—Fundamentals 2021 (SI),
// ch. 27, example 3. It prints a parallel-path U of 0.36 and, by isothermal
// planes, 0.651 for the framed layer and 2.58 and 0.388 for the wall.
func ExampleAssembly_ParallelPath() {
	wall := assembly.Assembly{Layers: []assembly.Layer{
		assembly.Plain("inside film", 0.12),
		assembly.Plain("gypsum 13 mm", 0.08),
		assembly.Framed("studs, plates and headers", 0.25, 0.77, 2.30),
		assembly.Plain("rigid foam", 0.70),
		assembly.Plain("vinyl siding", 0.11),
		assembly.Plain("outside film", 0.03),
	}}
	fmt.Printf("parallel path: U %.2f\n", wall.ParallelPath().U().SI())
	fmt.Printf("framed layer: U %.3f, R %.2f\n", wall.Layers[2].Mixed().U().SI(), wall.Layers[2].Mixed().RSI())
	fmt.Printf("isothermal planes: R %.2f, U %.3f\n", wall.IsothermalPlanes().RSI(), wall.IsothermalPlanes().U().SI())
	// Output:
	// parallel path: U 0.36
	// framed layer: U 0.651, R 1.54
	// isothermal planes: R 2.58, U 0.388
}

// The same wall in inch-pounds, as the 2005 to 2017 editions have it (from
// memory): U 0.064, framed layer about 8.7, isothermal planes about 14.6.
func ExampleAssembly_ParallelPath_inchPounds() {
	const R = rvalue.RIP
	wall := assembly.Assembly{Layers: []assembly.Layer{
		assembly.Plain("inside film", 0.68*R),
		assembly.Plain("gypsum 1/2 in", 0.45*R),
		assembly.Framed("2x4 and R-13", 0.25, 4.38*R, 13*R),
		assembly.Plain("rigid foam", 4.0*R),
		assembly.Plain("vinyl siding", 0.62*R),
		assembly.Plain("outside film", 0.17*R),
	}}
	fmt.Printf("U %.3f, framed layer R-%.1f, isothermal planes R-%.1f\n",
		wall.ParallelPath().U().IP(), wall.Layers[2].Mixed().IP(), wall.IsothermalPlanes().IP())
	// Output: U 0.064, framed layer R-8.7, isothermal planes R-14.6
}

// Structural insulated panel: ASHRAE Handbook—Fundamentals 2021 (SI), ch. 27,
// example 1, by the values of its text: 4.56 surface to surface, U 0.21. (Its
// 4.70 air to air is cut off from 4.707.)
func ExampleAssembly_ParallelPath_sandwichPanel() {
	panel := []assembly.Layer{
		assembly.Plain("gypsum 13 mm", 0.079),
		assembly.Plain("foam core 150 mm", 4.29),
		assembly.Plain("oriented strand board 11 mm", 0.07),
		assembly.Plain("felt", 0.011),
		assembly.Plain("vinyl siding", 0.107),
	}
	wall := []assembly.Layer{assembly.Plain("inside film", 0.120)}
	wall = append(append(wall, panel...), assembly.Plain("outside film", 0.030))
	fmt.Printf("surface to surface: %.2f\n", assembly.Assembly{Layers: panel}.ParallelPath().RSI())
	airToAir := assembly.Assembly{Layers: wall}.ParallelPath()
	fmt.Printf("air to air: %.3f, U %.2f\n", airToAir.RSI(), airToAir.U().SI())
	// Output:
	// surface to surface: 4.56
	// air to air: 4.707, U 0.21
}

// Concrete block with insulated cores: ASHRAE Handbook—Fundamentals 2021 (SI),
// ch. 27, example 4. It prints shells 0.045, webs 0.091, cores 2.60, webs 19.0 %
// of the area. (Its 0.608 for the assembly comes from webs rounded to 0.09.)
func ExampleAssembly_IsothermalPlanes() {
	const concrete, perlite = 1 / 0.70, 1 / 20.0 // W/(m·K)
	depth := rvalue.Length(0.194 - 2*0.032)
	web := rvalue.Conductivity(concrete).Resistance(depth)
	core := rvalue.Conductivity(perlite).Resistance(depth)
	shells := rvalue.Conductivity(concrete).Resistance(2 * 0.032)
	block := assembly.Assembly{Layers: []assembly.Layer{
		assembly.Plain("inside film", 0.12),
		assembly.Plain("shells", shells),
		assembly.Framed("webs and cores", 3*25/395.0, web, core),
		assembly.Plain("outside film", 0.03),
	}}
	fmt.Printf("shells %.3f, webs %.3f on %.1f %%, cores %.2f\n", shells.RSI(), web.RSI(), 100*block.Layers[2].Shares[0].Fraction, core.RSI())
	fmt.Printf("isothermal planes: %.3f\n", block.IsothermalPlanes().RSI())
	// Output:
	// shells 0.045, webs 0.091 on 19.0 %, cores 2.60
	// isothermal planes: 0.612
}

// Metal-stud wall by the modified zone method: ASHRAE Handbook—Fundamentals
// 2021 (SI), ch. 27, example 5, z_f 1.71 from its chart. It prints a zone of
// 0.125 m, R 2.71 and U 0.369.
func ExampleSteelFrame_ModifiedZones() {
	wall := assembly.SteelFrame{
		Spacing: 0.406, Depth: 0.089, Flange: 0.038, Thickness: 0.001,
		Cavity:  rvalue.Resistance(0.089 * 23.92), // resistivity of the fill, m·K/W
		Outside: []assembly.Cover{{Thickness: 0.051, R: 1.47}},
		Inside:  []assembly.Cover{{Thickness: 0.00127, R: 0.043}},
	}
	z, err := wall.ModifiedZones(1.71)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("zone %.3f m, R %.2f, U %.3f\n", z.Width.SI(), z.R.RSI(), z.R.U().SI())
	// Output: zone 0.125 m, R 2.71, U 0.369
}

// Steel studs 38 x 90 mm at 400 mm with R 1.94 between: ASHRAE
// Handbook—Fundamentals 2021 (SI), ch. 27, 0.08 + 0.50·1.94 + 0.08 = 1.13.
func ExampleSteelCorrection() {
	const rated = rvalue.Resistance(1.94)
	fc, source, exact, err := assembly.SteelCorrection(90*rvalue.Millimetre, 400*rvalue.Millimetre, rated)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("F_c %.2f (%s; the very row: %t)\n", fc, source, exact)
	fmt.Printf("R %.2f\n", 0.08+fc*rated.RSI()+0.08)
	// Output:
	// F_c 0.50 (ASHRAE Handbook—Fundamentals 2021, ch. 27; the very row: true)
	// R 1.13
}

// Temperature where condensation would start, between batt and foam, at 21 °C
// inside and −1 °C outside: ASHRAE Handbook—Fundamentals 2021 (SI), ch. 27,
// example 7, prints 4.68 in all, 3.54 inward of the plane, and 4.3 °C.
func ExampleAssembly_Paths_condensingPlane() {
	wall := assembly.Assembly{Layers: []assembly.Layer{
		assembly.Plain("inside film", 0.12),
		assembly.Plain("gypsum", 0.08),
		assembly.Plain("batt", 3.34),
		assembly.Plain("extruded polystyrene 25 mm", 0.88),
		assembly.Plain("oriented strand board 13 mm", 0.12),
		assembly.Plain("vinyl siding", 0.107),
		assembly.Plain("outside film", 0.03),
	}}
	inward := assembly.Assembly{Layers: wall.Layers[:3]}.ParallelPath()
	all := wall.Paths()[0].R
	in, out := rvalue.FromCelsius(21), rvalue.FromCelsius(-1)
	plane := in.Add(rvalue.TemperatureDifference(-float64(inward/all) * float64(in.Sub(out))))
	fmt.Printf("%.2f of %.2f, %.1f °C\n", inward.RSI(), all.RSI(), plane.Celsius())
	// Output: 3.54 of 4.68, 4.3 °C
}

// Temperatures through a wood wall in winter, 21 °C inside and −6.6 °C outside:
// ASHRAE Handbook—Fundamentals 2021 (SI), ch. 27, example 8, prints R 2.42 and
// 19.6, 18.7, −2.9, −4.2, −6.3 °C. (The third is −2.9504 by its own layers.)
func ExampleAssembly_Paths_temperatures() {
	wall := assembly.Assembly{Layers: []assembly.Layer{
		assembly.Plain("inside film", 0.12),
		assembly.Plain("gypsum", 0.08),
		assembly.Plain("mineral fibre", 1.90),
		assembly.Plain("plywood", 0.11),
		assembly.Plain("wood siding", 0.18),
		assembly.Plain("outside film", 0.03),
	}}
	path := wall.Paths()[0]
	fmt.Printf("R %.2f:", path.R.RSI())
	t := rvalue.FromCelsius(21)
	drop := t.Sub(rvalue.FromCelsius(-6.6))
	for i, share := range path.Shares[:len(path.Shares)-1] {
		t = t.Add(rvalue.TemperatureDifference(-float64(wall.Layers[i].Shares[share].R/path.R) * float64(drop)))
		fmt.Printf(" %.1f", t.Celsius())
	}
	fmt.Println(" °C")
	// Output: R 2.42: 19.6 18.7 -3.0 -4.2 -6.3 °C
}

// Steel walls of an institute's guide, on the energy code's base of R-2.05 for
// films, stucco and gypsum: printed U-factors 0.124 and 0.109.
func ExampleSteelLayer() {
	for _, stud := range []struct {
		depth rvalue.Length
		fill  rvalue.Resistance
	}{
		{3.5 * rvalue.Inch, 13 * rvalue.RIP},
		{6 * rvalue.Inch, 19 * rvalue.RIP},
	} {
		r, _, _, err := assembly.SteelLayer(stud.depth, 16*rvalue.Inch, stud.fill)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("R-%.0f between steel counts R-%.1f, U %.3f\n", stud.fill.IP(), r.IP(), (r + 2.05*rvalue.RIP).U().IP())
	}
	// Output:
	// R-13 between steel counts R-6.0, U 0.124
	// R-19 between steel counts R-7.1, U 0.109
}
