package window

import (
	"math"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/rvalue"
	"github.com/google/go-cmp/cmp"
)

const (
	inch = rvalue.Inch
	foot = rvalue.Foot
)

// same compares what was computed in floating point.
var same = cmp.Options{nearly[rvalue.Length](), nearly[rvalue.Area](), nearly[rvalue.Mass](), nearly[rvalue.Volume](), nearly[float64]()}

func nearly[T ~float64]() cmp.Option {
	return cmp.Comparer(func(a, b T) bool { return math.Abs(float64(a-b)) <= 1e-9*math.Abs(float64(a))+1e-12 })
}

// TestMass: 2.5 kg/m² per mm of float glass (seen with two glass references), and
// figures of a weight table and two trade pages.
func TestMass(t *testing.T) {
	for _, c := range []struct {
		g      Glazing
		lbFt2  float64
		within float64 // the prints are rounded and of 156 to 160 lb/ft³
	}{
		{unit(1, inch/8, 0, Fill{}, 0, 0), 1.64, 0.02},
		{unit(1, inch/4, 0, Fill{}, 0, 0), 3.27, 0.03},
		{unit(1, inch/2, 0, Fill{}, 0, 0), 6.54, 0.05},
		{unit(2, glass4, 16*mm, Fill{}, 0, 0), 20 / 4.8824, 0.001},
		{unit(3, glass4, 12*mm, Fill{}, 0, 0), 30 / 4.8824, 0.001},
	} {
		if got := c.g.Mass(1 * rvalue.SquareFoot).IP(); math.Abs(got-c.lbFt2) > c.within {
			t.Errorf("%s weighs %.3f lb/ft², want %.3f", c.g, got, c.lbFt2)
		}
	}
	laminated := Glazing{Panes: []Pane{{Sheet: Laminated, Thickness: 6.76 * mm}}}
	if got := laminated.Mass(1).SI(); math.Abs(got-(6*2.5+0.76*1.07)) > 1e-9 {
		t.Errorf("laminated glass weighs %.3f kg/m²", got)
	}
}

// TestOrder: the worked example of a unit of 36 x 48 in (own arithmetic): blocks of
// 1.2 in by the rule, so that the least of 4 in governs; 49 lb of 4 mm + 4 mm glass.
func TestOrder(t *testing.T) {
	g := unit(2, glass4, 16*mm, Fill{Argon: 0.9}, 1, 0.04)
	clear := 0.125 * inch
	got, err := g.Order(Opening{
		Widths:  [3]rvalue.Length{36.5 * inch, 36.25 * inch, 36.375 * inch},
		Heights: [3]rvalue.Length{48.25 * inch, 48.5 * inch, 48.25 * inch}, Clearance: clear,
	})
	if err != nil {
		t.Fatal(err)
	}
	around := 2 * (36.25 + 48.25) * inch
	want := Order{
		Width: 36 * inch, Height: 48 * inch, Thickness: 24 * mm, Area: 12 * rvalue.SquareFoot, Mass: g.Mass(12 * rvalue.SquareFoot),
		UnitedInches: 84, Clearance: clear, Spread: 0.25 * inch, People: 2,
		Blocks: Blocks{Count: 2, Length: 4 * inch, Width: 24 * mm, Height: clear, From: 9 * inch},
		Bead:   1.1 * around, Seal: 2 * around, Sealant: rvalue.Volume(0.005 * 0.005 * (2 * around).SI()), Cartridges: 1,
	}
	if d := cmp.Diff(want, got, same); d != "" {
		t.Errorf("(-want +got)\n%s", d)
	}
	if lb := got.Mass.IP(); math.Abs(lb-49.2) > 0.05 {
		t.Errorf("it weighs %.2f lb, want 49.2", lb)
	}
}

// TestClearance: a glass merchant's 6 mm less each way, and more for a large pane.
func TestClearance(t *testing.T) {
	g := unit(1, glass4, 0, Fill{}, 0, 0)
	for _, c := range []struct{ side, less rvalue.Length }{{1000 * mm, 6 * mm}, {2000 * mm, 6 * mm}, {2001 * mm, 10 * mm}} {
		got, err := g.Order(square(c.side))
		if err != nil || math.Abs((c.side-got.Width-c.less).SI()) > 1e-12 {
			t.Errorf("a side of %v: %v, %v, want %v less", c.side, got.Width, err, c.less)
		}
	}
}

// square is an opening of one side both ways.
func square(side rvalue.Length) Opening {
	return Opening{Widths: [3]rvalue.Length{side, side, side}, Heights: [3]rvalue.Length{side, side, side}}
}

// TestSkew: an opening of 1000 x 1200 mm whose top stands 10 mm to the side has the
// diagonals that Pythagoras says, and the pane that fits is 10 mm narrower.
func TestSkew(t *testing.T) {
	g := unit(1, glass4, 0, Fill{}, 0, 0)
	o := Opening{Widths: [3]rvalue.Length{1, 1, 1}, Heights: [3]rvalue.Length{1.2, 1.2, 1.2}}
	true1, err := g.Order(o)
	if err != nil {
		t.Fatal(err)
	}
	o.Diagonals = [2]rvalue.Length{rvalue.Length(math.Hypot(1.01, 1.2)), rvalue.Length(math.Hypot(0.99, 1.2))}
	got, err := g.Order(o)
	if err != nil || math.Abs(got.Skew.SI()-0.010) > 1e-9 || math.Abs((true1.Width-got.Width).SI()-0.010) > 1e-9 || got.Height != true1.Height {
		t.Errorf("skew %v, %v x %v after %v x %v, %v", got.Skew, got.Width, got.Height, true1.Width, true1.Height, err)
	}
	o.Diagonals[0], o.Diagonals[1] = o.Diagonals[1], o.Diagonals[0]
	if again, err := g.Order(o); err != nil || math.Abs((again.Skew-got.Skew).SI()) > 1e-12 {
		t.Errorf("leaning the other way: %v, %v", again.Skew, err)
	}
}

// TestSpread: readings that are an inch apart, or 5 % of a small pane, are still taken.
func TestSpread(t *testing.T) {
	g := unit(1, glass4, 0, Fill{}, 0, 0)
	for _, o := range []Opening{
		{Widths: [3]rvalue.Length{40 * inch, 39 * inch, 39.5 * inch}, Heights: [3]rvalue.Length{1, 1, 1}},
		{Widths: [3]rvalue.Length{10 * inch, 9.5 * inch, 10 * inch}, Heights: [3]rvalue.Length{1, 1, 1}},
	} {
		least, most := o.Widths[1], o.Widths[0]
		if got, err := g.Order(o); err != nil || got.Spread != most-least {
			t.Errorf("%v: spread %v, %v", o.Widths, got.Spread, err)
		}
	}
}

// TestBlocksAndHands at their limits.
func TestBlocksAndHands(t *testing.T) {
	single, double := unit(1, 3*mm, 0, Fill{}, 0, 0), unit(2, 6*mm, 12*mm, Fill{}, 0, 0)
	at := func(g Glazing, width, height rvalue.Length) Order {
		t.Helper()
		clear := 0.125 * inch
		w, h := width+2*clear, height+2*clear
		o, err := g.Order(Opening{Widths: [3]rvalue.Length{w, w, w}, Heights: [3]rvalue.Length{h, h, h}, Clearance: clear})
		if err != nil {
			t.Fatal(err)
		}
		return o
	}
	if got := at(single, 20*inch, 29.9*inch).Blocks.Count; got != 0 {
		t.Errorf("single glass below 50 united inches: %d blocks", got)
	}
	if got := at(single, 20*inch, 31*inch).Blocks.Count; got != 2 {
		t.Errorf("single glass above 50 united inches: %d blocks", got)
	}
	if got := at(double, 10*inch, 10*inch).Blocks; got.Count != 2 || got.Length != 4*inch {
		t.Errorf("a small unit: %+v", got)
	}
	// 0.1 in per ft²: from 40 ft² on the rule governs.
	if got := at(double, 6*foot, 8*foot).Blocks.Length.Inches(); math.Abs(got-4.8) > 1e-9 {
		t.Errorf("48 ft²: blocks of %.2f in, want 4.8", got)
	}
	for _, c := range []struct {
		width, height rvalue.Length
		people        int
		lift          bool
	}{
		{0.7, 0.9, 1, false}, // 18.9 kg
		{0.7, 1.05, 2, false},
		{1, 1.5, 2, false}, // 45 kg
		{1.6, 1.6, 4, false},
		{2, 2, 6, true},
	} {
		if got := at(double, c.width, c.height); got.People != c.people || got.Lift != c.lift {
			t.Errorf("%v x %v of %v: %d people, lift %v, want %d, %v", c.width, c.height, got.Mass, got.People, got.Lift, c.people, c.lift)
		}
	}
}

func TestUnits(t *testing.T) {
	g, _, err := Parse("storm acrylic 3 mm + air 80 mm + glass 4 mm + argon 90 % 16 mm + glass 4 mm + air 50 mm + storm 3 mm")
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, u := range g.Units() {
		got = append(got, u.String())
	}
	if d := cmp.Diff([]string{"storm acrylic 3 mm", "glass 4 mm + argon 90 % 16 mm + glass 4 mm", "storm 3 mm"}, got); d != "" {
		t.Errorf("(-want +got)\n%s", d)
	}
	if _, err := g.Order(square(1)); err == nil || !strings.Contains(err.Error(), "made of 3 pieces") {
		t.Errorf("three pieces in one order: %v", err)
	}
	if n := len(unit(3, glass4, 12*mm, Fill{}, 0, 0).Units()); n != 1 {
		t.Errorf("a triple unit is %d pieces", n)
	}
}

func TestOrderRefused(t *testing.T) {
	g := unit(1, glass4, 0, Fill{}, 0, 0)
	for name, c := range map[string]struct {
		spoil func(*Opening)
		says  string
	}{
		"a reading missing":    {func(o *Opening) { o.Widths[2] = 0 }, "reading 3 of the width"},
		"a reading NaN":        {func(o *Opening) { o.Heights[0] = rvalue.Length(math.NaN()) }, "reading 1 of the height"},
		"one diagonal":         {func(o *Opening) { o.Diagonals[0] = 1.4 }, "measure both"},
		"strange diagonals":    {func(o *Opening) { o.Diagonals = [2]rvalue.Length{1.4, 1.6} }, "do not belong"},
		"a slip of an inch":    {func(o *Opening) { o.Widths[1] += 1.01 * inch }, "a slip of the tape"},
		"a slip of 5 %":        {func(o *Opening) { o.Heights = [3]rvalue.Length{0.2, 0.2, 0.189} }, "differ by 11 mm"},
		"nothing left":         {func(o *Opening) { o.Clearance = 0.5 }, "leaves nothing"},
		"a negative clearance": {func(o *Opening) { o.Clearance = -1 }, "leaves nothing"},
	} {
		o := square(1)
		c.spoil(&o)
		if _, err := g.Order(o); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v, want %q", name, err, c.says)
		}
	}
}
