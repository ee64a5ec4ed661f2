package envelope_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/assembly/envelope"
	"github.com/coldseam/coldseam/rvalue"
)

// TestSlabOnClay: the formula gives every one of the 120 printed cells.
func TestSlabOnClay(t *testing.T) {
	// Half the last printed digit, and a hair for 0.49496, which prints 0.49.
	const lastDigit = 0.005 + 1e-9
	for _, row := range readCSV(t, "ground_slab_l1.csv") {
		g := envelope.GroundFloor{
			Area: 100, Perimeter: rvalue.Length(100 * num(t, row["p_over_a"])), Wall: 300 * rvalue.Millimetre,
			Floor: rvalue.Resistance(num(t, row["rf"])), Soil: envelope.ClayOrSilt,
		}
		near(t, fmt.Sprintf("U at P/A %s, Rf %s", row["p_over_a"], row["rf"]), must(g.U())(t).SI(), num(t, row["u"]), lastDigit)
	}
}

// TestOlderGroundTable records how far ISO 13370 lies from an older formula's
// table: never above it by more than a digit, below it the more the smaller
// the floor.
func TestOlderGroundTable(t *testing.T) {
	const lastDigit = 0.00005 // of "ours" in the file
	before := math.Inf(1)
	for _, row := range readCSV(t, "ground_ihve.csv") {
		a, b := num(t, row["a"]), num(t, row["b"])
		u := must(envelope.GroundFloor{Area: rvalue.Area(a * b), Perimeter: rvalue.Length(2 * (a + b)), Wall: 0.3, Soil: 1.4}.U())(t).SI()
		near(t, fmt.Sprintf("U of %v m x %v m", a, b), u, num(t, row["ours"]), lastDigit)
		ratio := u / num(t, row["printed"])
		// The prints of two digits make the ratio jump by 0.03 between rows.
		if ratio > 1+0.03 || ratio > before+0.03 {
			t.Errorf("%v m x %v m: ours over printed is %.3f, and was %.3f in the larger floor before", a, b, ratio, before)
		}
		before = ratio
	}
}

// TestGroundArithmetic holds the code to the formulas done by hand.
func TestGroundArithmetic(t *testing.T) {
	for _, row := range readCSV(t, "ground_arithmetic.csv") {
		g := envelope.GroundFloor{
			Area: 80, Perimeter: 36, Wall: 0.3, Soil: envelope.SandOrGravel, Floor: rvalue.Resistance(num(t, row["rf"])),
			Depth: rvalue.Length(num(t, row["depth"])), Below: rvalue.Resistance(num(t, row["rw"])),
		}
		board := envelope.EdgeInsulation{
			Vertical: row["vertical"] == "yes", Width: rvalue.Length(num(t, row["width"])),
			Thickness: 0.05, R: rvalue.Resistance(0.05 / 0.035),
		}
		var got float64
		switch {
		case row["quantity"] == "psi":
			got = must(g.Psi(board))(t).SI()
		case row["quantity"] == "U" && row["width"] != "":
			got = must(g.WithEdge(board))(t).SI()
		case row["quantity"] == "U":
			got = must(g.U())(t).SI()
		case row["quantity"] == "U wall":
			got = must(g.WallU())(t).SI()
		case row["quantity"] == "H":
			wall := g.Perimeter.Times(g.Depth)
			got = (must(g.U())(t).Times(g.Area) + must(g.WallU())(t).Times(wall)).SI()
		default:
			t.Fatalf("no such quantity: %v", row)
		}
		want := num(t, row["value"])
		lastDigit := 5e-7 // half the last digit written
		if want > 1 {
			lastDigit = 5e-6
		}
		near(t, row["case"]+", "+row["quantity"], got, want, lastDigit)
	}
}

// TestBasementWallThinnerThanFloor: where d_w < d_t, d_w takes its place.
// λ 2, z 2: d_w = 2·0.17 = 0.34, d_t = 0.3 + 2·1.21 = 2.72, so
// U = 2·2/(2π)·(1 + 0.5·0.34/2.34)·ln(2/0.34 + 1) = 0.63662·1.07265·1.92896.
func TestBasementWallThinnerThanFloor(t *testing.T) {
	g := envelope.GroundFloor{Area: 80, Perimeter: 36, Wall: 0.3, Soil: 2, Floor: 1, Depth: 2}
	near(t, "U of a bare basement wall", must(g.WallU())(t).SI(), 0.63662*1.07265*1.92896, 2e-5) // five digits a factor
}

// TestSuspendedFloor does ISO 13370's suspended floor by hand. 10 m x 8 m,
// P 36 m: B' = 80/18 = 4.44444. Clay: d_g = 0.3 + 1.5·0.21 = 0.615, less than
// B', so U_g = 2·1.5/(13.96263 + 0.615)·ln(13.96263/0.615 + 1) = 0.205795·3.165622
// = 0.651469. U_x = 2·0.4·1.7/4.44444 + 1450·0.0015·4·0.05/4.44444 = 0.306 +
// 0.097875. U = 1/(1/0.5 + 1/1.055344) = 1/2.947558.
func TestSuspendedFloor(t *testing.T) {
	s := envelope.SuspendedFloor{
		Area: 80, Perimeter: 36, Wall: 0.3, Floor: 0.5, Height: 0.4, WallU: 1.7, Vents: 0.0015, Wind: 4,
	}
	near(t, "U of a suspended floor", must(s.U())(t).SI(), 1/2.947558, 1e-6)
	closed := s
	closed.Vents = 0
	if a, b := must(closed.U())(t), must(s.U())(t); a >= b || b >= s.Floor {
		t.Errorf("U is %v with the vents closed and %v open, the floor alone %v: it must rise", a, b, s.Floor)
	}
	s.Shelter = 7
	if _, err := s.U(); err == nil || !strings.Contains(err.Error(), "shelter 7") {
		t.Errorf("shelter 7 gives %v, want an error that names it", err)
	}
}

// TestGroundLosesLess: more insulation, a better soil and a deeper floor each
// lose less, and edge insulation never makes it worse.
func TestGroundLosesLess(t *testing.T) {
	base := envelope.GroundFloor{Area: 90, Perimeter: 38, Wall: 0.25, Soil: envelope.SandOrGravel, Floor: 0.3}
	u := must(base.U())(t)
	for what, change := range map[string]func(*envelope.GroundFloor){
		"insulated":     func(g *envelope.GroundFloor) { g.Floor = 2 },
		"on clay":       func(g *envelope.GroundFloor) { g.Soil = 0 },
		"deeper":        func(g *envelope.GroundFloor) { g.Depth = 1 },
		"less exposed":  func(g *envelope.GroundFloor) { g.Perimeter = 20 },
		"thicker walls": func(g *envelope.GroundFloor) { g.Wall = 0.5 },
	} {
		g := base
		change(&g)
		if got := must(g.U())(t); got >= u {
			t.Errorf("a floor %s has U %v, not less than %v", what, got, u)
		}
	}
	before := u
	for _, width := range []rvalue.Length{0.3, 0.6, 1.2, 2.4} {
		got := must(base.WithEdge(envelope.EdgeInsulation{Width: width, Thickness: 0.05, R: 1.4}))(t)
		if got >= before {
			t.Errorf("edge insulation %v wide gives U %v, not less than %v", width, got, before)
		}
		before = got
	}
}

func TestGroundErrors(t *testing.T) {
	good := envelope.GroundFloor{Area: 80, Perimeter: 36, Wall: 0.3}
	board := envelope.EdgeInsulation{Width: 1, Thickness: 0.05, R: 1.4}
	fails := func(want string, g envelope.GroundFloor, f func(envelope.GroundFloor) error) {
		t.Helper()
		if err := f(g); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%+v gives %v, want an error about %q", g, err, want)
		}
	}
	u := func(g envelope.GroundFloor) error { _, err := g.U(); return err }
	wall := func(g envelope.GroundFloor) error { _, err := g.WallU(); return err }
	g := good
	g.Area = 0
	fails("area in m² of 0", g, u)
	g = good
	g.Perimeter = rvalue.Length(math.Inf(1))
	fails("perimeter", g, u)
	g = good
	g.Floor = rvalue.Resistance(math.NaN())
	fails("floor resistance in m²·K/W of NaN", g, u)
	g = good
	g.Depth = -1
	fails("depth in m of -1", g, wall)
	fails("no basement walls", good, wall)
	edge := func(b envelope.EdgeInsulation) func(envelope.GroundFloor) error {
		return func(g envelope.GroundFloor) error { _, err := g.WithEdge(b); return err }
	}
	thin := board
	thin.R = 0.03 // 0.05 m of soil is 0.033
	fails("no more than the soil", good, edge(thin))
	none := board
	none.Width = 0
	fails("width", good, edge(none))
	g = good
	g.Depth = 2
	fails("not to a basement", g, edge(board))
	if _, err := (envelope.SuspendedFloor{Area: 80, Perimeter: 36, Wall: 0.3}).U(); err == nil || !strings.Contains(err.Error(), "U-factor") {
		t.Errorf("a suspended floor without a U gives %v", err)
	}
}

// TestSlabEdge holds every cell of the table, the straight line between its
// columns, and that more insulation never loses more.
func TestSlabEdge(t *testing.T) {
	for _, row := range readCSV(t, "ground_slab_edge.csv") {
		r := rvalue.Resistance(num(t, row["r"])) * rvalue.RIP
		f, err := envelope.SlabEdge(row["reach"], r)
		if row["slab"] == "heated" {
			f, err = envelope.HeatedSlab(r)
		}
		near(t, fmt.Sprintf("F of %s slab, %s, R-%s", row["slab"], row["reach"], row["r"]), must(f, err)(t).IP(), num(t, row["f"]), rounding)
	}
	for _, c := range []struct{ r, want float64 }{{0, 0.73}, {2.5, 0.655}, {7.5, 0.56}, {40, 0.52}} {
		near(t, fmt.Sprintf("F of 2 ft vertical at R-%g", c.r), must(envelope.SlabEdge(" 2 FT  vertical", rvalue.Resistance(c.r)*rvalue.RIP))(t).IP(), c.want, rounding)
	}
	for _, reach := range []string{"none", "2 ft horizontal", "4 ft horizontal", "2 ft vertical", "4 ft vertical", "full"} {
		before := math.Inf(1)
		for r := range 45 {
			f := must(envelope.SlabEdge(reach, rvalue.Resistance(r)*rvalue.RIP))(t).IP()
			if f > before {
				t.Errorf("%s: F rises to %v at R-%d", reach, f, r)
			}
			before = f
		}
	}
	if _, err := envelope.SlabEdge("3 ft up", 1); err == nil || !strings.Contains(err.Error(), `"3 ft up"`) || !strings.Contains(err.Error(), "4 ft vertical") {
		t.Errorf("an unknown reach gives %v, want it and those that exist", err)
	}
	for _, r := range []float64{-1, math.NaN(), math.Inf(1)} {
		if _, err := envelope.HeatedSlab(rvalue.Resistance(r)); err == nil {
			t.Errorf("slab insulation of %v is taken", r)
		}
	}
}

// ExampleGroundFloor is a bare slab of 10 m x 8 m on clay, all edges exposed:
// P/A 0.45, in Approved Document L1 (2002), appendix C, 0.65 W/(m²·K).
func ExampleGroundFloor() {
	floor := envelope.GroundFloor{
		Area: 80 * rvalue.SquareMetre, Perimeter: 36 * rvalue.Metre, Wall: 300 * rvalue.Millimetre, Soil: envelope.ClayOrSilt,
	}
	bare, err := floor.U()
	if err != nil {
		fmt.Println(err)
		return
	}
	insulated, err := floor.WithEdge(envelope.EdgeInsulation{Vertical: true, Width: 2 * rvalue.Foot, Thickness: 2 * rvalue.Inch, R: 10 * rvalue.RIP})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("bare %.2f, with R-10 two feet down %.2f W/(m²·K)\n", bare.SI(), insulated.SI())
	// Output: bare 0.65, with R-10 two feet down 0.49 W/(m²·K)
}
