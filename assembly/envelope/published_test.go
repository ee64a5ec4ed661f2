package envelope_test

import (
	"math"
	"testing"

	"github.com/coldseam/coldseam/assembly/envelope"
	"github.com/coldseam/coldseam/rvalue"
)

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s = %.6g, want %.6g ± %.2g", what, got, want, tolerance)
	}
}

// TestGroundFloorTable holds the slab-on-ground formula against Approved
// Document L1 (2002), appendix C: solid floor on clay, 0.3 m walls; U in
// W/(m²·K) by perimeter over area and by floor resistance 0, 0.5 … 2.5. The
// table is from memory. The tolerance is half its last digit, and a rounding
// of 0.49496 printed 0.49.
func TestGroundFloorTable(t *testing.T) {
	table := [][6]float64{ // rows P/A = 0.05, 0.10 … 1.00
		{0.13, 0.11, 0.10, 0.09, 0.08, 0.08},
		{0.22, 0.18, 0.16, 0.14, 0.13, 0.12},
		{0.30, 0.24, 0.21, 0.18, 0.17, 0.15},
		{0.37, 0.29, 0.25, 0.22, 0.19, 0.18},
		{0.44, 0.34, 0.28, 0.24, 0.22, 0.19},
		{0.49, 0.38, 0.31, 0.27, 0.23, 0.21},
		{0.55, 0.41, 0.34, 0.29, 0.25, 0.22},
		{0.60, 0.44, 0.36, 0.30, 0.26, 0.23},
		{0.65, 0.47, 0.38, 0.32, 0.27, 0.23},
		{0.70, 0.50, 0.40, 0.33, 0.28, 0.24},
		{0.74, 0.52, 0.41, 0.34, 0.28, 0.25},
		{0.78, 0.55, 0.43, 0.35, 0.29, 0.25},
		{0.82, 0.57, 0.44, 0.35, 0.30, 0.26},
		{0.86, 0.59, 0.45, 0.36, 0.30, 0.26},
		{0.89, 0.61, 0.46, 0.37, 0.31, 0.27},
		{0.93, 0.62, 0.47, 0.37, 0.32, 0.27},
		{0.96, 0.64, 0.47, 0.38, 0.32, 0.28},
		{0.99, 0.65, 0.48, 0.39, 0.32, 0.28},
		{1.02, 0.66, 0.49, 0.39, 0.33, 0.28},
		{1.05, 0.68, 0.50, 0.40, 0.33, 0.28},
	}
	met := 0
	for i, row := range table {
		for j, want := range row {
			g := envelope.GroundFloor{
				Area: 100 * rvalue.SquareMetre, Perimeter: rvalue.Length(5 * float64(i+1)), Wall: 300 * rvalue.Millimetre,
				Floor: rvalue.Resistance(0.5 * float64(j)), Soil: envelope.ClayOrSilt,
			}
			u, err := g.U()
			if err != nil {
				t.Fatal(err)
			}
			near(t, "U of a slab on clay", u.SI(), want, 0.005+1e-9)
			met++
		}
	}
	t.Logf("Approved Document L1 (2002), appendix C: %d of 120 entries tried", met)
}

// TestGroundFloorArithmetic holds a floor of 10 m × 8 m on sand against our own
// arithmetic of ISO 13370 (no published counterpart).
func TestGroundFloorArithmetic(t *testing.T) {
	g := envelope.GroundFloor{Area: 80, Perimeter: 36, Wall: 0.3, Soil: envelope.SandOrGravel}
	for _, c := range []struct{ floor, u float64 }{{0, 0.821425}, {1, 0.434880}, {2.5, 0.258028}, {5, 0.156849}} {
		g.Floor = rvalue.Resistance(c.floor)
		u, err := g.U()
		if err != nil {
			t.Fatal(err)
		}
		near(t, "U0", u.SI(), c.u, 5e-7)
	}
	g.Floor = 0
	board := envelope.EdgeInsulation{Width: 1, Thickness: 0.05, R: rvalue.Resistance(0.05 / 0.035)}
	flat, err := g.WithEdge(board)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "U with flat edge insulation", flat.SI(), 0.643457, 5e-7)
	board.Vertical, board.Width = true, 0.6
	psi, err := g.Psi(board)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "psi of vertical edge insulation", psi.SI(), -0.437992, 5e-7)
	g.Floor, g.Depth, g.Below = 1, 2.2, 1.5
	bf, err := g.U()
	if err != nil {
		t.Fatal(err)
	}
	bw, err := g.WallU()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "U of a basement floor", bf.SI(), 0.345949, 5e-7)
	near(t, "U of a basement wall", bw.SI(), 0.373812, 5e-7)
}

// TestOlderGroundTable shows how far ISO 13370 lies from the older table of
// solid ground floors in the IHVE Guide A3 (1977), seen as quoted in a design
// handbook: another formula, so only rough agreement is expected. 3 m × 3 m is
// left out: there the two part by 17 %.
func TestOlderGroundTable(t *testing.T) {
	for _, c := range []struct{ a, b, printed float64 }{
		{60, 60, 0.15}, {30, 30, 0.26}, {30, 15, 0.36}, {15, 15, 0.45}, {15, 7.5, 0.62}, {7.5, 7.5, 0.76},
	} {
		u, err := envelope.GroundFloor{
			Area: rvalue.Area(c.a * c.b), Perimeter: rvalue.Length(2 * (c.a + c.b)), Wall: 0.3, Soil: 1.4,
		}.U()
		if err != nil {
			t.Fatal(err)
		}
		if d := u.SI()/c.printed - 1; math.Abs(d) > 0.10 {
			t.Errorf("%v m × %v m: U %.3f, the older table has %.2f, %.0f %% apart", c.a, c.b, u.SI(), c.printed, 100*d)
		}
	}
}

// TestRelativeDensity holds the altitude factor against Table 6a of a federal
// design guide for heating, ventilating and air conditioning (2000, revised
// 2006), seen: five rows, all three digits.
func TestRelativeDensity(t *testing.T) {
	for _, c := range []struct{ feet, want float64 }{
		{5900, 0.804}, {6000, 0.801}, {7000, 0.772}, {8000, 0.743}, {8700, 0.723},
	} {
		near(t, "relative density", envelope.RelativeDensity(rvalue.Length(c.feet)*rvalue.Foot), c.want, 0.0005)
	}
}

// TestAirConductance holds 1.08 Btu/(h·°F) per cfm at sea level: seen with its
// derivation, 60 min · 0.075 lb/ft³ · 0.24 Btu/(lb·°F).
func TestAirConductance(t *testing.T) {
	near(t, "UA of 1 cfm", envelope.AirConductance(1*rvalue.CubicFootPerMin, 0).IP(), 1.08, 1e-9)
}

// TestDivide rebuilds the corners of the leakage divisor table, from memory.
func TestDivide(t *testing.T) {
	for _, c := range []struct {
		region  envelope.Region
		storeys float64
		shelter envelope.Shelter
		want    float64
	}{
		{1, 1, envelope.WellSheltered, 18.6},
		{1, 3, envelope.Exposed, 9.8},
		{2, 1, envelope.NormalShelter, 18.5},
		{2, 1.5, envelope.WellSheltered, 20.0},
		{3, 2, envelope.Exposed, 15.5},
		{4, 1, envelope.WellSheltered, 29.4},
		{4, 3, envelope.NormalShelter, 17.2},
		{0, 0, envelope.NormalShelter, 18.5},
	} {
		n, err := envelope.Divide(c.region, c.storeys, c.shelter)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "N", n, c.want, 0.05+1e-9)
	}
}

// TestLeakageArea: 1 cfm at 50 Pa is 0.0549 in², our arithmetic of the
// handbook's definition with an exponent of 0.65 and 1.2 kg/m³.
func TestLeakageArea(t *testing.T) {
	in2 := envelope.LeakageArea(1*rvalue.CubicFootPerMin).SI() / (0.0254 * 0.0254)
	near(t, "leakage area of 1 cfm", in2, 0.0549, 5e-5)
}

// TestBasicFlow: 100 in², 40 °F, 10 mph, class 3: 111.8 cfm on one storey and
// 143.4 on two, our arithmetic of the inch-pound coefficients (0.0150, 0.0065;
// 0.0299, 0.0086). The SI coefficients are rounded on their own, so that the
// two forms differ by up to 0.5 %.
func TestBasicFlow(t *testing.T) {
	for storeys, want := range map[int]float64{1: 111.8, 2: 143.4} {
		q, err := envelope.BasicFlow(rvalue.Area(100*0.0254*0.0254), 40*rvalue.FahrenheitDegree, 10*rvalue.MilePerHour, storeys, 3)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "flow in cfm", q.IP(), want, 0.005*want)
	}
}

// TestSlabEdge holds every cell of the slab table (seen) and the straight line
// between its columns.
func TestSlabEdge(t *testing.T) {
	for _, c := range []struct {
		reach   string
		r, want float64
	}{
		{"none", 0, 0.73},
		{"2 ft horizontal", 5, 0.70}, {"2 ft horizontal", 10, 0.70}, {"2 ft horizontal", 15, 0.69},
		{"4 ft horizontal", 5, 0.67}, {"4 ft horizontal", 10, 0.64}, {"4 ft horizontal", 15, 0.63},
		{"2 ft vertical", 5, 0.58}, {"2 ft vertical", 10, 0.54}, {"2 ft vertical", 15, 0.52},
		{"4 ft vertical", 5, 0.54}, {"4 ft vertical", 10, 0.48}, {"4 ft vertical", 15, 0.45},
		{"full", 5, 0.36}, {"full", 10, 0.31}, {"full", 15, 0.26}, {"full", 20, 0.21},
		{"2 ft vertical", 7.5, 0.56}, {"2 ft vertical", 2.5, 0.655}, {"2 ft vertical", 40, 0.52},
	} {
		f, err := envelope.SlabEdge(c.reach, rvalue.Resistance(c.r)*rvalue.RIP)
		if err != nil {
			t.Fatal(err)
		}
		near(t, c.reach, f.IP(), c.want, 1e-9)
	}
}

// TestComputedWindow recomputes rows of the handbook's whole-window table that
// are known (from memory) by the same weights as the coated rows: double 1/2 in
// air and triple 1/2 in air in aluminum, fixed.
func TestComputedWindow(t *testing.T) {
	double, _, err := envelope.DefaultWindow("double", "aluminum", false)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "double in aluminum", double.IP(), 0.64, 1e-9)
	triple, _, err := envelope.DefaultWindow("triple", "aluminium", false)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "triple in aluminum", triple.IP(), 0.49, 0.005)
}
