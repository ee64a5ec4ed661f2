package assembly_test

import (
	"fmt"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/rvalue"
)

// The worked examples of other handbooks, textbooks, codes and pages; their
// keys are in testdata/REFERENCES.md.

// Stud wall 48 x 198 mm at 600 mm, 12 % wood [NO-GLASSWOOL]: paths 6.110 and
// 2.260, framed layer 4.297, limits 5.073 and 4.907.
func ExampleAssembly_Combined() {
	wall := assembly.Assembly{Layers: []assembly.Layer{
		assembly.Plain("inside film", 0.130),
		assembly.Plain("gypsum 13 mm", 0.060),
		assembly.Plain("vapour barrier", 0.050),
		assembly.Framed("studs and mineral wool 198 mm", 0.12, 1.650, 5.500),
		assembly.Plain("porous fibreboard 12 mm", 0.240),
		assembly.Plain("sheltered outside film", 0.130),
	}}
	for _, p := range wall.Paths() {
		fmt.Printf("%.0f %%: %.3f\n", 100*p.Fraction, p.R.RSI())
	}
	fmt.Printf("framed layer %.3f\n", wall.Layers[3].Mixed().RSI())
	fmt.Printf("limits %.3f and %.3f\n", wall.ParallelPath().RSI(), wall.IsothermalPlanes().RSI())
	c := wall.Combined()
	fmt.Printf("total %.3f, error up to %.1f %%, within the method's limit: %t\n", c.R.RSI(), 100*c.Error, c.Valid)
	// Output:
	// 12 %: 2.260
	// 88 %: 6.110
	// framed layer 4.297
	// limits 5.073 and 4.907
	// total 4.990, error up to 1.7 %, within the method's limit: true
}

// Timber-framed wall with brick [SCO]: paths 3.971 and 1.715; limits and U,
// 0.29, are our arithmetic.
func ExampleAssembly_Combined_timberFrame() {
	wall := assembly.Assembly{Layers: []assembly.Layer{
		assembly.Plain("internal surface", 0.130),
		assembly.Plain("plasterboard", 0.100),
		assembly.Framed("timber and mineral wool", 0.095, 1.077, 3.333),
		assembly.Plain("plywood", 0.146),
		assembly.Plain("air cavity", 0.090),
		assembly.Plain("brick", 0.132),
		assembly.Plain("external surface", 0.040),
	}}
	paths := wall.Paths()
	fmt.Printf("paths %.3f and %.3f\n", paths[1].R.RSI(), paths[0].R.RSI())
	fmt.Printf("U %.2f\n", wall.Combined().R.U().SI())
	// Output:
	// paths 3.971 and 1.715
	// U 0.29
}

// Solid brick wall of 215 mm [CHU]: U 2.17.
func ExampleAssembly_ParallelPath_solidBrick() {
	wall := assembly.Assembly{Layers: []assembly.Layer{
		assembly.Plain("inside", 0.123),
		assembly.Plain("plaster 13 mm", rvalue.Conductivity(0.50).Resistance(13*rvalue.Millimetre)),
		assembly.Plain("brick 215 mm", rvalue.Conductivity(0.84).Resistance(215*rvalue.Millimetre)),
		assembly.Plain("outside", 0.055),
	}}
	fmt.Printf("U %.2f\n", wall.ParallelPath().U().SI())
	// Output: U 2.17
}

// Timber cladding on battens over double brick [CAS]: where no batten stands,
// the ventilated space replaces cladding and film. R 0.61, U 1.64.
func ExampleAssembly_ParallelPath_claddingOnBattens() {
	wall := assembly.Assembly{Layers: []assembly.Layer{
		assembly.Plain("plaster, bricks and cavity", 0.46),
		assembly.Framed("battens with their cladding", 0.10, 0.38+0.04, 0.13),
	}}
	for _, p := range wall.Paths() {
		fmt.Printf("%.0f %%: %.2f\n", 100*p.Fraction, p.R.RSI())
	}
	fmt.Printf("R %.2f, U %.2f\n", wall.ParallelPath().RSI(), wall.ParallelPath().U().SI())
	// Output:
	// 10 %: 0.88
	// 90 %: 0.59
	// R 0.61, U 1.64
}

// Brick, polystyrene and plaster [LESS]: 1.57, U 0.64.
func ExampleAssembly_ParallelPath_brickAndPolystyrene() {
	wall := assembly.Assembly{Layers: []assembly.Layer{
		assembly.Plain("inside surface", 0.12),
		assembly.Plain("plaster 1 cm", 0.04),
		assembly.Plain("polystyrene 5 cm", 1.25),
		assembly.Plain("brick 10 cm", 0.10),
		assembly.Plain("outside surface", 0.06),
	}}
	fmt.Printf("%.2f, U %.2f\n", wall.ParallelPath().RSI(), wall.ParallelPath().U().SI())
	// Output: 1.57, U 0.64
}

// Wood-frame wall, then with foam in place of its fibreboard [CENGEL], both
// from memory: U 0.449 and R 2.23; U 0.324 and R 3.09.
func ExampleAssembly_ParallelPath_fibreboardOrFoam() {
	for _, sheathing := range []assembly.Layer{assembly.Plain("wood fibreboard 13 mm", 0.23), assembly.Plain("rigid foam 25 mm", 0.98)} {
		wall := assembly.Assembly{Layers: []assembly.Layer{
			assembly.Plain("inside film", 0.12),
			assembly.Plain("gypsum 13 mm", 0.079),
			assembly.Framed("studs and glass fibre 90 mm", 0.25, 0.63, 2.45),
			sheathing,
			assembly.Plain("bevel siding", 0.14),
			assembly.Plain("outside film", 0.030),
		}}
		fmt.Printf("%s: U %.3f, R %.2f\n", sheathing.Name, wall.ParallelPath().U().SI(), wall.ParallelPath().RSI())
	}
	// Output:
	// wood fibreboard 13 mm: U 0.449, R 2.23
	// rigid foam 25 mm: U 0.324, R 3.09
}

// Composite wall of ten bays, 2.5 m by 6.5 m, without films [INCROPERA], from
// memory: 0.1854 K/W.
func ExampleAssembly_IsothermalPlanes_compositeWall() {
	slab := func(k rvalue.Conductivity, d rvalue.Length) rvalue.Resistance { return k.Resistance(d) }
	wall := assembly.Assembly{Layers: []assembly.Layer{
		assembly.Plain("gypsum", slab(0.17, 12*rvalue.Millimetre)),
		assembly.Framed("studs and glass fibre", 40/650.0, slab(0.16, 130*rvalue.Millimetre), slab(0.038, 130*rvalue.Millimetre)),
		assembly.Plain("siding", slab(0.094, 8*rvalue.Millimetre)),
	}}
	ua := wall.IsothermalPlanes().U().Times(rvalue.Length(2.5).Times(6.5))
	fmt.Printf("%.4f K/W\n", 1/ua.SI())
	// Output: 0.1854 K/W
}

// Two walls of a permit drawing by the rule of the National Building Code of
// Canada [PERMIT], 23 % framing of 0.0085 m²·K/W per mm: 2.55 and 2.93; 1.62
// and 2.00.
func ExampleAssembly_IsothermalPlanes_permitDrawing() {
	for _, w := range []struct {
		name  string
		depth float64 // of the stud, mm
		batt  rvalue.Resistance
	}{{"2x6", 140, 3.87}, {"2x4", 89, 2.46}} {
		wall := assembly.Assembly{Layers: []assembly.Layer{
			assembly.Plain("interior film", 0.12),
			assembly.Plain("gypsum 5/8 in", 0.10),
			assembly.Framed(w.name, 0.23, rvalue.Resistance(w.depth*0.0085), w.batt),
			assembly.Plain("plywood 1/2 in", 0.11),
			assembly.Plain("stucco", 0.02),
			assembly.Plain("exterior film", 0.03),
		}}
		fmt.Printf("%s: framed layer %.2f, effective %.2f\n", w.name, wall.Layers[2].Mixed().RSI(), wall.IsothermalPlanes().RSI())
	}
	// Output:
	// 2x6: framed layer 2.55, effective 2.93
	// 2x4: framed layer 1.62, effective 2.00
}

// Roof insulation above deck [90.1-A2], three of 37 rows: 0.173, 0.048, 0.016.
func ExampleAssembly_ParallelPath_aboveDeck() {
	for _, r := range []rvalue.Resistance{5, 20, 60} {
		roof := assembly.Assembly{Layers: []assembly.Layer{
			assembly.Plain("inside film", 0.61*rvalue.RIP),
			assembly.Plain("insulation", r*rvalue.RIP),
			assembly.Plain("outside film", 0.17*rvalue.RIP),
		}}
		fmt.Printf("R-%g: U %.3f\n", float64(r), roof.ParallelPath().U().IP())
	}
	// Output:
	// R-5: U 0.173
	// R-20: U 0.048
	// R-60: U 0.016
}

// Single-rafter roofs [90.1-A2], 10 % rafters: U 0.055 and 0.036.
func ExampleAssembly_ParallelPath_singleRafters() {
	const R = rvalue.RIP
	for _, c := range []struct{ depth, batt rvalue.Resistance }{{5.5, 19}, {9.25, 30}} { // in, h·ft²·°F/Btu
		roof := assembly.Assembly{Layers: []assembly.Layer{
			assembly.Plain("inside film", 0.61*R),
			assembly.Plain("gypsum 5/8 in", 0.56*R),
			assembly.Framed("rafters", 0.10, c.depth*1.25*R, c.batt*R),
			assembly.Plain("semi-exterior film", 0.46*R),
		}}
		fmt.Printf("R-%g: U %.3f\n", float64(c.batt), roof.ParallelPath().U().IP())
	}
	// Output:
	// R-19: U 0.055
	// R-30: U 0.036
}

// Walls deemed to comply [CI-TABLES]: R-13 + 3.8 in 2x4 has U 0.064, R-19 + 2 in
// 2x6, its batt squeezed to R-18, has 0.057.
func ExampleAssembly_ParallelPath_deemedToComply() {
	const R = rvalue.RIP
	wall := func(stud, batt, foam rvalue.Resistance) assembly.Assembly {
		return assembly.Assembly{Layers: []assembly.Layer{
			assembly.Plain("inside film", 0.68*R),
			assembly.Plain("gypsum 5/8 in", 0.56*R),
			assembly.Framed("studs", 0.25, stud*R, batt*R),
			assembly.Plain("gypsum 5/8 in", 0.56*R),
			assembly.Plain("foam", foam*R),
			assembly.Plain("stucco", 0.08*R),
			assembly.Plain("outside film", 0.17*R),
		}}
	}
	fmt.Printf("%.3f\n", wall(4.38, 13, 3.8).ParallelPath().U().IP())
	fmt.Printf("%.3f\n", wall(6.88, 18, 2).ParallelPath().U().IP())
	// Output:
	// 0.064
	// 0.057
}

// An attic of R-38 with 1 % of bare stairs at R-1 loses 27 % [BAILES]; half R-50
// and half R-10 make R-17.
func ExampleAssembly_ParallelPath_bareStairs() {
	const R = rvalue.RIP
	attic := assembly.Assembly{Layers: []assembly.Layer{assembly.Framed("insulation and stairs", 0.01, 1*R, 38*R)}}
	fmt.Printf("R-%.1f, a loss of %.0f %%\n", attic.ParallelPath().IP(), 100*(1-attic.ParallelPath().IP()/38))
	halves := assembly.Assembly{Layers: []assembly.Layer{assembly.Framed("two halves", 0.5, 10*R, 50*R)}}
	fmt.Printf("R-%.0f\n", halves.ParallelPath().IP())
	// Output:
	// R-27.7, a loss of 27 %
	// R-17
}

// Stainless screws of 20 mm², four per m², through a flat roof [NO-PRECAST]:
// 0.007 W/(m²·K).
func ExampleFasteners_RoofFixings1997() {
	screws := assembly.Fasteners{Conductivity: 17, Section: 2e-5, PerSquareMetre: 4}
	dU, err := screws.RoofFixings1997()
	fmt.Printf("%.3f %v\n", dU.SI(), err)
	// Output: 0.007 <nil>
}

// However thick its insulation, an inverted roof under 3 mm of rain a day does
// not get below 0.12 W/(m²·K) [INVERTED].
func ExampleInvertedRoof() {
	for _, r := range []rvalue.Resistance{4.5, 1e6} {
		dU, err := assembly.InvertedRoof(3*rvalue.Millimetre, assembly.OpenJoints, r, r+0.5)
		fmt.Printf("%.2f %v\n", dU.SI(), err)
	}
	// Output:
	// 0.10 <nil>
	// 0.12 <nil>
}

// Gaps that let air move cost more than 3 % of U and count; our arithmetic.
func ExampleCorrected() {
	const u = rvalue.Transmittance(0.30)
	dU, err := assembly.AirVoids(assembly.VoidsMoving, 0.85, 1) // R1/RT 0.85
	if err != nil {
		fmt.Println(err)
		return
	}
	uc, applied, err := assembly.Corrected(u, dU)
	fmt.Printf("%.3f %t %v\n", uc.SI(), applied, err)
	// Output: 0.329 true <nil>
}

// A roof of two planes tapered from nothing to R 3 on a fixed R 1; our
// arithmetic.
func ExampleTaperedRoof() {
	u, err := assembly.TaperedRoof(
		assembly.TaperedPart{Shape: assembly.Rectangle, Area: 40, Slope: 1.0 / 60, Fixed: 1, Tapered: 3},
		assembly.TaperedPart{Shape: assembly.ThinApex, Area: 20, Slope: 1.0 / 60, Fixed: 1, Tapered: 3},
	)
	fmt.Printf("U %.3f %v\n", u.SI(), err)
	// Output: U 0.428 <nil>
}

// A garage beside 15 m² of wall: 45 W/K toward outdoors, 40 m³, air changes
// unknown; our arithmetic.
func ExampleUnheatedSpace() {
	r, err := assembly.UnheatedSpace(15, 45, assembly.UnknownAirChanges, 40)
	fmt.Printf("R %.3f %v\n", r.RSI(), err)
	// Output: R 0.177 <nil>
}
