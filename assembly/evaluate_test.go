package assembly_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/rvalue"
	"github.com/coldseam/coldseam/rvalue/surface"
)

func written(t *testing.T, text string, s assembly.Setting) *assembly.Result {
	t.Helper()
	spec, err := assembly.Parse(text)
	if err != nil {
		t.Fatal(err)
	}
	r, err := spec.Evaluate(s)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// TestWrittenWalls holds whole walls, from text to effective R, against
// published figures; unlike the cases of published_test.go, films, framing
// factors, squeezing and catalogue are in play. All are walls of wood at 16 in.
//
// Base of the printed table: stucco R-0.08, 5/8 in gypsum R-0.56 twice, films
// 0.68 and 0.17; framing 25 % (a continuous-insulation trade association's
// deemed-to-comply tables, seen; base layers of ASHRAE 90.1 A3.4, from memory).
// Tolerance: half the last printed digit.
func TestWrittenWalls(t *testing.T) {
	for _, c := range []struct {
		name, text string
		u          float64 // Btu/(h·ft²·°F)
	}{
		{"2x4 R-11 + R-5", "R-0.56 + 2x4 @ 16 in (fiberglass R-11) + R-0.56 + R-5 + R-0.08", 0.063},
		{"2x4 R-13 + R-3.8", "R-0.56 + 2x4 @ 16 in (fiberglass R-13) + R-0.56 + R-3.8 + R-0.08", 0.064},
		{"2x6 empty + R-12", "R-0.56 + 2x6 @ 16 in (R-0.91) + R-0.56 + R-12 + R-0.08", 0.062},
		{"2x6 R-19 squeezed + R-2", "R-0.56 + 2x6 @ 16 in (fiberglass R-19) + R-0.56 + R-2 + R-0.08", 0.057},
		{"2x6 R-21 + R-2", "R-0.56 + 2x6 @ 16 in (fiberglass R-21) + R-0.56 + R-2 + R-0.08", 0.053},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := written(t, c.text, assembly.Setting{})
			if got := r.Effective.U().IP(); math.Abs(got-c.u) > 0.0005 {
				t.Errorf("U = %.5f, the table prints %.3f", got, c.u)
			}
		})
	}
}

// TestWrittenSteelWalls: ASHRAE 90.1-2016 A3.3 base (films 0.17 and 0.68,
// stucco 0.08, 5/8 in gypsum 0.56 twice, seen) with the wall U-factors of the
// Cold-Formed Steel Engineers Institute's guide, seen.
func TestWrittenSteelWalls(t *testing.T) {
	for _, c := range []struct {
		text string
		u    float64
	}{
		{"R-0.56 + steel 3 1/2 in @ 16 in (fiberglass R-13) + R-0.56 + R-0.08", 0.124},
		{"R-0.56 + steel 6 in @ 16 in (R-19) + R-0.56 + R-0.08", 0.109},
	} {
		r := written(t, c.text, assembly.Setting{})
		if r.Effective.Method != assembly.Zone {
			t.Errorf("%s: effective by %v, want the methods for steel", c.text, r.Effective.Method)
		}
		if got := r.Effective.U().IP(); math.Abs(got-c.u) > 0.0005 {
			t.Errorf("%s: U = %.5f, the guide prints %.3f", c.text, got, c.u)
		}
		if r.Zone >= r.ParallelPath || r.Zone <= 0 {
			t.Errorf("%s: R by zone %v against parallel path %v", c.text, r.Zone, r.ParallelPath)
		}
	}
}

// TestVentedCladding: Norwegian catalogue wall (seen), 48 x 198 mm at 600 mm
// with 12 % wood: ventilated cladding, film 0.13 on both sides; R'T 5.073,
// R”T 4.907 m²K/W. Layers as resistances, since the catalogue's own λ are used.
func TestVentedCladding(t *testing.T) {
	r := written(t, "RSI 0.06 + RSI 0.05 + RSI 1.65 12 % (RSI 5.5) + RSI 0.24 + air 25 mm vented + wood bevel siding",
		assembly.Setting{Films: surface.ISO6946})
	if got := r.ParallelPath.RSI(); math.Abs(got-5.073) > 0.0005 {
		t.Errorf("upper limit %.4f, printed 5.073", got)
	}
	if got := r.IsothermalPlanes.RSI(); math.Abs(got-4.907) > 0.0005 {
		t.Errorf("lower limit %.4f, printed 4.907", got)
	}
	if r.Effective.Method != assembly.Mean {
		t.Errorf("effective by %v, want ISO 6946's combined method with its films", r.Effective.Method)
	}
}

// TestAirSpaceFindsItsTemperatures: an air space in the middle of a wall is at
// its own mean temperature and difference, so that evaluating it again by hand
// at those gives the same resistance.
func TestAirSpaceFindsItsTemperatures(t *testing.T) {
	r := written(t, "gypsum 1/2 in + air 3/4 in bright + brick 3 5/8 in", assembly.Setting{
		Indoors: rvalue.FromFahrenheit(70), Outdoors: rvalue.FromFahrenheit(0),
	})
	air := r.Layers[2]
	drop := float64(air.Inner.Sub(air.Outer))
	total := 70.0 * 5 / 9
	if want := total * float64(air.R) / float64(r.Effective.R); math.Abs(drop-want) > 1e-6 {
		t.Errorf("the air space drops %.4f K, its share of R says %.4f K", drop, want)
	}
	// A bright space resists more than R-1.5 and less than R-4 at any
	// temperature of a house: plane-air-space table, E 0.05, from memory.
	if ip := air.R.IP(); ip < 1.5 || ip > 4 {
		t.Errorf("a 3/4 in space with one bright face resists R-%.2f", ip)
	}
}

// TestGainIsTheDerivative compares each gain with the change of the effective R
// when a little resistance is added in that very place.
func TestGainIsTheDerivative(t *testing.T) {
	const step = 1e-6
	for _, m := range []assembly.Method{assembly.Parallel, assembly.Isothermal, assembly.Mean} {
		r := written(t, "gypsum 1/2 in + 1x3 @ 16 in (R-1) + 2x4 @ 16 in (fiberglass R-13) + osb 7/16 in", assembly.Setting{Method: m})
		by := map[assembly.Method]func(assembly.Assembly) rvalue.Resistance{
			assembly.Parallel:   assembly.Assembly.ParallelPath,
			assembly.Isothermal: assembly.Assembly.IsothermalPlanes,
			assembly.Mean:       func(a assembly.Assembly) rvalue.Resistance { return a.Combined().R },
		}[m]
		for i, l := range r.Layers {
			for s, sh := range l.Shares {
				up, down := clone(r.Assembly), clone(r.Assembly)
				up.Layers[i].Shares[s].R += step
				down.Layers[i].Shares[s].R -= step
				want := float64(by(up)-by(down)) / (2 * step)
				if math.Abs(sh.Gain-want) > 1e-7 {
					t.Errorf("%v: gain of %q is %.9f, the difference quotient %.9f", m, sh.Name, sh.Gain, want)
				}
			}
		}
	}
}

// TestSharesSum: heat over the paths, heat over a layer's shares and the drops
// over the layers sum to the whole, by every method.
func TestSharesSum(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 12))
	texts := []string{}
	for _, c := range notations {
		texts = append(texts, c.text)
	}
	for _, text := range texts {
		for _, m := range []assembly.Method{assembly.Advised, assembly.Parallel, assembly.Isothermal, assembly.Mean} {
			r := written(t, "R-1 + "+text+" + R-1", assembly.Setting{Method: m, Outdoors: rvalue.FromFahrenheit(40 * rng.Float64()), Cold: rng.IntN(2) == 0})
			paths, drops := 0.0, 0.0
			for _, p := range r.Paths {
				paths += p.Heat
			}
			for _, l := range r.Layers {
				drops += l.Drop
				heat := 0.0
				for _, s := range l.Shares {
					heat += s.Heat
				}
				if math.Abs(heat-1) > 1e-12 {
					t.Errorf("%s by %v: heat over the shares of %q sums to %v", text, m, l.Name, heat)
				}
			}
			if math.Abs(paths-1) > 1e-12 || math.Abs(drops-1) > 1e-9 && r.Effective.Method != assembly.Zone {
				t.Errorf("%s by %v: heat of the paths sums to %v, drops to %v", text, m, paths, drops)
			}
			last := r.Layers[len(r.Layers)-1].Outer
			if r.Effective.Method != assembly.Zone && math.Abs(float64(last.Sub(r.Setting.Outdoors))) > 1e-9 {
				t.Errorf("%s by %v: the last plane is at %v, outdoors at %v", text, m, last, r.Setting.Outdoors)
			}
		}
	}
}

func TestRemarks(t *testing.T) {
	for _, c := range []struct{ text, code, says string }{
		{"2x6 @ 16 in (fiberglass R-38)", "squeezed", "from 12 in (304.8 mm) to 5 1/2 in (139.7 mm)"},
		{"R-1 + 2x6 @ 24 in (fiberglass R-13) + R-1", "left-over", "2 in"},
		{"R-1 + 2x6 @ 24 in (fiberglass R-13)", "open-bay", "2 in"},
		{"R-1 + 2x4 @ 16 in (empty)", "open-bay", "not counted"},
		{"gypsum 12 in + R-5", "implausible", "12 in"},
		{"R-500 xps 1 in", "implausible", "per inch"},
		{"vinyl siding 3/4 in + R-5", "thickness-unused", "by the piece"},
		{"fiberglass R-13 + gypsum 1/2 in + mineral wool R 2.5", "label", "RSI 0.44"},
		{"wood bevel siding + 2x4 @ 16 in (empty) + gypsum 1/2 in", "order", "other way round"},
		{"2x4 @ 16 in (R-19)", "bare-r", "fiberglass R-19"},
		{"R-1 + 2x4 @ 16 in (empty) + R-1", "framing", "25 %"},
		{"R-1 + 2x4 @ 24 in (empty) + R-1", "framing", "22 %"},
		{"R-1 + 2x4 @ 400 mm (empty) + R-1", "framing", "25 %"},
		{"R-1 + 1x3 @ 16 in (empty) + R-1", "framing", "15.6 %"},
		{"R-1 + 2x4 @ 16 in framing 18 % (empty) + R-1", "framing", "as written"},
		{"R-1 + 1x3 @ 16 in (empty) + 2x4 @ 16 in (empty) + R-1", "crossing", "aligned"},
		{"steel 3 1/2 in @ 16 in (fiberglass R-13)", "steel", "correction factor"},
		{"steel 3 1/2 in @ 12 in (fiberglass R-13)", "steel", "zone method"},
		{"brick 3 5/8 in + air 1 in vented + brick 3 5/8 in", "vented", "do not count"},
		{"RSI 0.01 10 % (RSI 3)", "contrast", "rough"},
	} {
		r := written(t, c.text, assembly.Setting{})
		found := false
		for _, m := range r.Remarks {
			found = found || m.Code == c.code && strings.Contains(m.Text, c.says)
		}
		if !found {
			t.Errorf("%s: no remark %s of %q in %+v", c.text, c.code, c.says, r.Remarks)
		}
	}
}

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

func ExampleSpec_Evaluate() {
	spec, err := assembly.Parse("plaster 3/4 in + 2x4 @ 16 in (fiberglass R-19) + board sheathing 3/4 in + wood bevel siding")
	if err != nil {
		fmt.Println(err)
		return
	}
	wall, err := spec.Evaluate(assembly.Setting{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("effective:", wall.Effective.R.In(rvalue.IP), "by", wall.Effective.Method)
	for _, r := range wall.Remarks {
		if r.Code == "squeezed" {
			fmt.Println(r.Text)
		}
	}
	// Output:
	// effective: R-12.5 by parallel path
	// fiberglass R-19 batt squeezed from 6 1/4 in (158.8 mm) to 3 1/2 in (88.9 mm): R-14.0 (RSI 2.47) (a fiberglass maker's compression chart, printed in the Journal of Light Construction)
}

func ExampleParse_mistake() {
	_, err := assembly.Parse("gypsum 1/2 in + 2x4 @ 16 in (fibreglas R-13)")
	fmt.Println(err)
	// Output:
	// assembly: unknown material "fibreglas"; did you mean fiberglass or fiberboard?
	//   gypsum 1/2 in + 2x4 @ 16 in (fibreglas R-13)
	//                                ^
}

// TestAtticFloors: what lies on an attic's joists is not squeezed. Loose fill
// covers the joists: by hand, parallel path with 10 % of 2x6 joists (R-6.875)
// under 6.5 in of the same fill.
func TestAtticFloors(t *testing.T) {
	ceiling := assembly.Setting{Faces: assembly.Facing{Use: assembly.Ceiling}}
	batt := written(t, "R-0.45 + 2x6 @ 16 in (fiberglass R-30)", ceiling)
	bay, joist := 0.61+0.45+30+0.61, 0.61+0.45+6.875+0.61
	if got, want := batt.Effective.R.IP(), 1/(0.9/bay+0.1/joist); math.Abs(got-want) > 1e-9 {
		t.Errorf("R-30 batts on attic joists: R-%.4f, by hand R-%.4f", got, want)
	}
	loose := written(t, "R-0.45 + 2x6 @ 16 in (cellulose 12 in)", ceiling)
	perInch := loose.Layers[2].Shares[1].R.IP() / 5.5
	bay, joist = 0.61+0.45+12*perInch+0.61, 0.61+0.45+6.875+6.5*perInch+0.61
	if got, want := loose.Effective.R.IP(), 1/(0.9/bay+0.1/joist); math.Abs(got-want) > 1e-9 {
		t.Errorf("12 in of cellulose on attic joists: R-%.4f, by hand R-%.4f", got, want)
	}
	walled := written(t, "R-0.45 + 2x6 @ 16 in (fiberglass R-30) + plywood 3/4 in", ceiling)
	if walled.Effective.R >= batt.Effective.R {
		t.Errorf("a batt squeezed under a floor, %v, resists no less than one that stands free, %v", walled.Effective.R, batt.Effective.R)
	}
}

// TestSteelByLabel: a standard batt in a 6 in stud is the row of its label,
// R-19 at 16 in: U 0.109 with the layers of the guide cited above.
func TestSteelByLabel(t *testing.T) {
	r := written(t, "R-0.56 + steel 6 in @ 16 in (fiberglass R-19) + R-0.56 + R-0.08", assembly.Setting{})
	if got := r.Effective.U().IP(); math.Abs(got-0.109) > 0.0005 {
		t.Errorf("U = %.5f, the guide prints 0.109", got)
	}
	sum := 0.0
	for _, l := range r.Layers {
		sum += float64(l.R)
	}
	if math.Abs(sum-float64(r.Effective.R)) > 1e-12 {
		t.Errorf("the layers sum to %v, the wall has %v", sum, float64(r.Effective.R))
	}
}

func TestZoneMethodWantsSteel(t *testing.T) {
	spec, err := assembly.Parse(eightLayers)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := spec.Evaluate(assembly.Setting{Method: assembly.Zone}); err == nil || !strings.Contains(err.Error(), "steel") {
		t.Errorf("the zone method without steel gives %v, want an error", err)
	}
}

func TestParseMethod(t *testing.T) {
	for text, want := range map[string]assembly.Method{
		"parallel path": assembly.Parallel, " Isothermal-Planes ": assembly.Isothermal, "combined": assembly.Mean, "zone": assembly.Zone,
	} {
		if m, err := assembly.ParseMethod(text); err != nil || m != want {
			t.Errorf("ParseMethod(%q) = %v, %v, want %v", text, m, err, want)
		}
	}
	for _, bad := range []string{"", " ", "guess "} {
		if m, err := assembly.ParseMethod(bad); err == nil {
			t.Errorf("ParseMethod(%q) = %v, want an error", bad, m)
		}
	}
}
