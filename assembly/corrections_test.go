package assembly_test

import (
	"math"
	"testing"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/rvalue"
)

// near reports whether two numbers agree to rel, relative to want, or to 1e-15
// when want is 0. Unit tests on values we computed ourselves to five digits use
// half a unit of their last digit as rel·want.
func near(got, want, rel float64) bool {
	return math.Abs(got-want) <= max(rel*math.Abs(want), 1e-15)
}

func TestAirVoids(t *testing.T) {
	for _, c := range []struct {
		name   string
		source string
		level  int
		want   float64
		tol    float64 // half of want's last digit
	}{
		{"no voids", "ISO 6946, level 0 adds nothing", 0, 0, 0},
		{"gaps", "our arithmetic: 0.01·(3/3.5)²", 1, 0.00735, 5e-6},
		{"gaps and moving air", "our arithmetic: 0.04·(3/3.5)²", 2, 0.02939, 5e-6},
	} {
		got, err := assembly.AirVoids(c.level, 3, 3.5)
		if err != nil || math.Abs(got.SI()-c.want) > c.tol {
			t.Errorf("%s: AirVoids(%d, 3, 3.5) = %v, %v, want %v (%s)", c.name, c.level, got.SI(), err, c.want, c.source)
		}
	}
}

func TestFasteners(t *testing.T) {
	steel := assembly.Fasteners{
		Conductivity: 50, Section: rvalue.Area(math.Pi * 0.002 * 0.002), PerSquareMetre: 5, Insulation: 0.1,
	}
	r1 := rvalue.Resistance(0.1 / 0.035)
	rt := r1 + 0.47

	through, err := steel.Correction(r1, rt)
	if err != nil || math.Abs(through.SI()-0.01853) > 5e-6 { // our arithmetic, five digits
		t.Errorf("Correction = %v, %v, want 0.01853", through.SI(), err)
	}
	recessed := steel
	recessed.Embedded = 0.06
	got, err := recessed.Correction(r1, rt)
	if err != nil || !near(got.SI(), 0.6*through.SI(), 1e-14) {
		t.Errorf("recessed to 60 mm of 100: Correction = %v, %v, want 0.6 of %v", got.SI(), err, through.SI())
	}
	recessed.Embedded = 0.1
	if got, err := recessed.Correction(r1, rt); err != nil || !near(got.SI(), through.SI(), 1e-14) {
		t.Errorf("embedded all through: Correction = %v, %v, want %v", got.SI(), err, through.SI())
	}
	basalt := steel
	basalt.Conductivity = 0.7
	if got, err := basalt.Correction(r1, rt); err != nil || got != 0 {
		t.Errorf("below 1 W/(m·K): Correction = %v, %v, want 0", got, err)
	}
	ties, err := steel.WallTies1997()
	if err != nil || !near(ties.SI(), 6*50*float64(steel.Section)*5, 1e-14) {
		t.Errorf("WallTies1997 = %v, %v", ties.SI(), err)
	}
	if roof, err := steel.RoofFixings1997(); err != nil || !near(roof.SI(), ties.SI()*5/6, 1e-14) {
		t.Errorf("RoofFixings1997 = %v, %v, want 5/6 of %v", roof.SI(), err, ties.SI())
	}
}

func TestInvertedRoof(t *testing.T) {
	got, err := assembly.InvertedRoof(2*rvalue.Millimetre, assembly.OpenJoints, 3, 3.5)
	if want := 0.0590; err != nil || math.Abs(got.SI()-want) > 5e-4 { // our arithmetic: 2·0.04·(3/3.5)² = 0.05878
		t.Errorf("InvertedRoof = %v, %v, want %v", got.SI(), err, want)
	}
	if dry, err := assembly.InvertedRoof(0, assembly.OpenJoints, 3, 3.5); err != nil || dry != 0 {
		t.Errorf("without rain: InvertedRoof = %v, %v, want 0", dry, err)
	}
}

func TestCorrected(t *testing.T) {
	for _, c := range []struct {
		name    string
		add     []rvalue.Transmittance
		want    rvalue.Transmittance
		applied bool
	}{
		{"none", nil, 0.3, false},
		{"together below 3 %", []rvalue.Transmittance{0.004, 0.004}, 0.3, false},
		{"2.97 %", []rvalue.Transmittance{0.0089}, 0.3, false},
		{"3.03 %", []rvalue.Transmittance{0.0091}, 0.3091, true},
		{"together above 3 %, each below", []rvalue.Transmittance{0.005, 0.005}, 0.31, true},
		{"level 2 voids", []rvalue.Transmittance{0.0289}, 0.3289, true},
	} {
		got, applied, err := assembly.Corrected(0.3, c.add...)
		if err != nil || applied != c.applied || !near(float64(got), float64(c.want), 1e-14) {
			t.Errorf("%s: Corrected(0.3, %v) = %v, %v, %v, want %v, %v", c.name, c.add, got, applied, err, c.want, c.applied)
		}
	}
}

func TestCorrectionsRefuse(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	good := assembly.Fasteners{Conductivity: 17, Section: 2e-5, PerSquareMetre: 4, Insulation: 0.2}
	with := func(change func(*assembly.Fasteners)) assembly.Fasteners {
		f := good
		change(&f)
		return f
	}
	second := func(_ any, err error) error { return err }
	for name, err := range map[string]error{
		"level 3":            second(assembly.AirVoids(3, 3, 3.5)),
		"level -1":           second(assembly.AirVoids(-1, 3, 3.5)),
		"r1 above rt":        second(assembly.AirVoids(1, 4, 3.5)),
		"r1 zero":            second(assembly.AirVoids(1, 0, 3.5)),
		"rt NaN":             second(assembly.AirVoids(1, 3, rvalue.Resistance(nan))),
		"rt infinite":        second(assembly.AirVoids(1, 3, rvalue.Resistance(inf))),
		"conductivity 0":     second(with(func(f *assembly.Fasteners) { f.Conductivity = 0 }).Correction(3, 3.5)),
		"section NaN":        second(with(func(f *assembly.Fasteners) { f.Section = rvalue.Area(nan) }).WallTies1997()),
		"none per m²":        second(with(func(f *assembly.Fasteners) { f.PerSquareMetre = 0 }).RoofFixings1997()),
		"all fasteners":      second(with(func(f *assembly.Fasteners) { f.PerSquareMetre = 1e6 }).RoofFixings1997()),
		"no thickness":       second(with(func(f *assembly.Fasteners) { f.Insulation = 0 }).Correction(3, 3.5)),
		"embedded too long":  second(with(func(f *assembly.Fasteners) { f.Embedded = 0.3 }).Correction(3, 3.5)),
		"embedded below 0":   second(with(func(f *assembly.Fasteners) { f.Embedded = -1 }).Correction(3, 3.5)),
		"negative rain":      second(assembly.InvertedRoof(-1, 0.04, 3, 3.5)),
		"rain NaN":           second(assembly.InvertedRoof(rvalue.Length(nan), 0.04, 3, 3.5)),
		"drainage above max": second(assembly.InvertedRoof(0.002, 0.05, 3, 3.5)),
	} {
		if err == nil {
			t.Errorf("%s: no error", name)
		}
	}
	for _, u := range []rvalue.Transmittance{0, -1, rvalue.Transmittance(nan), rvalue.Transmittance(inf)} {
		if _, _, err := assembly.Corrected(u, 0.1); err == nil {
			t.Errorf("Corrected(%v): no error", u)
		}
	}
	for _, d := range []rvalue.Transmittance{-0.1, rvalue.Transmittance(nan), rvalue.Transmittance(inf)} {
		if _, _, err := assembly.Corrected(0.3, d); err == nil {
			t.Errorf("Corrected(0.3, %v): no error", d)
		}
	}
}
