package assembly

import (
	"fmt"
	"math"

	"github.com/coldseam/coldseam/rvalue"
)

// The corrections of ISO 6946 are added to the transmittance of a component
// that was computed without its flaws. All of them grow with the square of the
// share that the insulation has in the whole resistance. The standard's text
// was not at hand: formulas and coefficients are from memory, those of the 1997
// fasteners confirmed by a handbook example (testdata/assemblies_precast.csv).

// Void levels of AirVoids, ISO 6946 annex on corrections.
const (
	VoidsNone    = 0 // insulation without gaps, such as two layers with staggered joints
	VoidsThrough = 1 // gaps from the warm to the cold side, no air moving behind them
	VoidsMoving  = 2 // gaps, and air that can move to the warm side of the insulation
)

// voidU is ΔU″ by level in W/(m²·K): ISO 6946, annex on corrections, from memory.
var voidU = [...]float64{VoidsNone: 0, VoidsThrough: 0.01, VoidsMoving: 0.04}

// AirVoids returns the addition to U for gaps in insulation of resistance r1
// that is part of a component of total resistance rt, films included. It
// refuses a level other than 0, 1, 2 and an r1 above rt.
//
// Source: ISO 6946, annex on corrections, air voids, from memory.
func AirVoids(level int, r1, rt rvalue.Resistance) (rvalue.Transmittance, error) {
	// ISO 6946, air voids: ΔUg = ΔU″ (R1/RT)²
	if level < 0 || level >= len(voidU) {
		return 0, fmt.Errorf("assembly: air voids of level %d, ISO 6946 knows 0, 1 and 2", level)
	}
	share, err := insulationShare(r1, rt)
	if err != nil {
		return 0, err
	}
	return rvalue.Transmittance(voidU[level] * share * share), nil
}

// Fasteners are metal fixings through insulation.
type Fasteners struct {
	Conductivity   rvalue.Conductivity
	Section        rvalue.Area   // cross-section of one
	PerSquareMetre float64       // how many, 1/m²
	Insulation     rvalue.Length // thickness of the layer they are in, d0
	Embedded       rvalue.Length // length within it, d1, of recessed ones; 0: all through
}

const (
	throughAlpha = 0.8 // ISO 6946, coefficient of a fastener through the whole layer, from memory
	poorFastener = 1.0 // W/(m·K); ISO 6946 leaves fasteners below it out, from memory
	tieAlpha     = 6.0 // 1/m, wall ties; ISO 6946:1997, from memory
	roofAlpha    = 5.0 // 1/m, roof fixings; ISO 6946:1997, seen in a Norwegian handbook example
)

// Correction returns the addition to U by the present form of the rule. r1 is
// the resistance of the insulation passed through, rt the total without
// fasteners, films included. Fasteners below 1 W/(m·K) add nothing; ties across
// an empty cavity add nothing either and need no call. It refuses sizes that
// are not positive, and an Embedded longer than the layer is thick.
//
// Source: ISO 6946, annex on corrections, mechanical fasteners, from memory.
func (f Fasteners) Correction(r1, rt rvalue.Resistance) (rvalue.Transmittance, error) {
	// ISO 6946, mechanical fasteners: ΔUf = α (λf Af nf/d0) (R1/RT)²,
	// α = 0.8, recessed 0.8 d1/d0
	share, err := insulationShare(r1, rt)
	if err != nil {
		return 0, err
	}
	if err := f.check(); err != nil {
		return 0, err
	}
	d0, d1 := float64(f.Insulation), float64(f.Embedded)
	if !usable(d0) {
		return 0, fmt.Errorf("assembly: fasteners in insulation %v m thick, it must be positive and finite", d0)
	}
	alpha := throughAlpha
	switch {
	case !(d1 >= 0 && d1 <= d0):
		return 0, fmt.Errorf("assembly: fasteners reach %v m into insulation %v m thick, use 0 (all through) up to the thickness", d1, d0)
	case d1 > 0:
		alpha *= d1 / d0
	}
	return rvalue.Transmittance(alpha * f.conductance() / d0 * share * share), nil
}

// WallTies1997 returns the addition to U by the 1997 edition's rule for wall
// ties, which needs no thickness.
//
// Source: ISO 6946:1997, annex on corrections, α = 6 per metre, from memory.
func (f Fasteners) WallTies1997() (rvalue.Transmittance, error) { return f.plain(tieAlpha) }

// RoofFixings1997 returns the addition to U by the 1997 edition's rule for
// roof fixings.
//
// Source: ISO 6946:1997, annex on corrections, α = 5 per metre; the example of
// the Norwegian precast-concrete handbook uses it.
func (f Fasteners) RoofFixings1997() (rvalue.Transmittance, error) { return f.plain(roofAlpha) }

func (f Fasteners) plain(alpha float64) (rvalue.Transmittance, error) {
	// ISO 6946:1997, mechanical fasteners: ΔUf = α λf nf Af
	if err := f.check(); err != nil {
		return 0, err
	}
	return rvalue.Transmittance(alpha * f.conductance()), nil
}

// conductance returns λf Af nf in W·m/(m²·K), 0 for fasteners that count as none.
func (f Fasteners) conductance() float64 {
	if float64(f.Conductivity) < poorFastener {
		return 0
	}
	return float64(f.Conductivity) * float64(f.Section) * f.PerSquareMetre
}

func (f Fasteners) check() error {
	for _, v := range []struct {
		name  string
		value float64
	}{
		{"conductivity in W/(m·K)", float64(f.Conductivity)},
		{"cross-section in m²", float64(f.Section)},
		{"number per m²", f.PerSquareMetre},
	} {
		if !usable(v.value) {
			return fmt.Errorf("assembly: fasteners with a %s of %v, it must be positive and finite", v.name, v.value)
		}
	}
	if taken := float64(f.Section) * f.PerSquareMetre; taken >= 1 {
		return fmt.Errorf("assembly: fasteners cover %.4g %% of the area, they must leave some of it", 100*taken)
	}
	return nil
}

// OpenJoints is f·x for a single layer of extruded polystyrene with butt
// joints under an open covering such as gravel, in W·day/(m²·K·mm), the
// highest value. Source: ISO 6946, annex on corrections, inverted roofs.
const OpenJoints = 0.04

// InvertedRoof returns the addition to U for rain that runs between insulation
// of resistance r1 and the membrane below it, in a roof of total resistance
// rt. rainPerDay is the mean over the heating season; fx is the drainage share
// times the heat it carries, in W·day/(m²·K·mm), from above 0 to OpenJoints.
//
// Source: ISO 6946, annex on corrections, inverted roofs, from memory; its
// limit for thick insulation is confirmed by a page (testdata/assemblies_inverted.csv).
func InvertedRoof(rainPerDay rvalue.Length, fx float64, r1, rt rvalue.Resistance) (rvalue.Transmittance, error) {
	// ISO 6946, inverted roofs: ΔUr = p f x (R1/RT)²
	share, err := insulationShare(r1, rt)
	if err != nil {
		return 0, err
	}
	p := rainPerDay.Millimetres()
	if !(p >= 0) || math.IsInf(p, 0) {
		return 0, fmt.Errorf("assembly: %v mm of rain a day, it must be 0 or more", p)
	}
	if !(fx > 0 && fx <= OpenJoints) {
		return 0, fmt.Errorf("assembly: a drainage factor of %v W·day/(m²·K·mm), use above 0 and up to %v", fx, OpenJoints)
	}
	return rvalue.Transmittance(p * fx * share * share), nil
}

// negligible is the share of U below which ISO 6946 lets corrections be left
// out. The rule was read in a trade magazine and a Norwegian handbook.
const negligible = 0.03

// Corrected returns u with corrections added, and whether they were: together
// below 3 % of u they are left out, as ISO 6946 allows. It refuses a u that is
// not positive and finite, and a correction below 0.
func Corrected(u rvalue.Transmittance, corrections ...rvalue.Transmittance) (corrected rvalue.Transmittance, applied bool, err error) {
	// ISO 6946, corrected thermal transmittance: Uc = U + ΔUg + ΔUf + ΔUr
	if !usable(float64(u)) {
		return 0, false, fmt.Errorf("assembly: correcting a U of %v W/(m²·K), it must be positive and finite", float64(u))
	}
	var sum rvalue.Transmittance
	for _, c := range corrections {
		if v := float64(c); !(v >= 0) || math.IsInf(v, 0) {
			return 0, false, fmt.Errorf("assembly: a correction of %v W/(m²·K), it must be 0 or more", v)
		}
		sum += c
	}
	if float64(sum) < negligible*float64(u) {
		return u, false, nil
	}
	return u + sum, true, nil
}

// insulationShare returns R1/RT.
func insulationShare(r1, rt rvalue.Resistance) (float64, error) {
	if !usable(float64(r1)) || !usable(float64(rt)) || r1 > rt {
		return 0, fmt.Errorf("assembly: insulation of %v in a total of %v m²·K/W, both must be positive and the first no more than the second", float64(r1), float64(rt))
	}
	return float64(r1) / float64(rt), nil
}

// usable reports whether x is a positive finite number.
func usable(x float64) bool { return x > 0 && !math.IsInf(x, 1) }
