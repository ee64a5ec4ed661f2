package target

import (
	"fmt"
	"math"

	"github.com/coldseam/coldseam/rvalue"
)

// Offer is what a part has. A zero field is unknown and is not judged.
type Offer struct {
	U                  rvalue.Transmittance // of the whole assembly, as built
	Cavity, Continuous rvalue.Resistance    // insulation as installed (a squeezed batt at its squeezed R)
	SHGC               float64              // of glazed fenestration
	SlabDepth          rvalue.Length        // reach of slab-edge insulation
	F                  rvalue.LinearTransmittance
}

// Verdict says whether a part meets its requirement, by which path, and by how
// much it misses.
type Verdict struct {
	Met bool
	By  string // "U-factor", "R-value path (R-20+5ci)", "F-factor, our reading", "nothing is required"; "" when not met

	// Short is U above the largest allowed, 0 when met or when U is unknown.
	Short rvalue.Transmittance
	// Needed is the assembly resistance still missing, 1/Umax − 1/U, 0 as Short.
	Needed rvalue.Resistance
	// ShortF is a slab edge's F above our reading, 0 as Short.
	ShortF rvalue.LinearTransmittance
	// OverSHGC is the solar heat gain above the limit, 0 when within.
	OverSHGC float64
	// Nearest is the option that the installed R comes closest to, and Lacking
	// what is still missing for it; zero when met or when no R was given.
	Nearest, Lacking Option

	Why string // one line for people
}

// equalSlack absorbs rounding of a quantity that went through another unit.
const equalSlack = 1e-9

// depthTolerance lets a depth in whole millimetres (610) stand for feet.
const depthTolerance = 1 * rvalue.Millimetre

// Judge holds an offer against r. Meeting either the U-factor or one option of
// the R-value path is enough; a solar limit must be met besides. U-factors are
// rounded to the decimals the table prints (three, fenestration two), so 0.0604
// meets 0.060. Values that are negative or not finite never meet anything.
func (r Requirement) Judge(o Offer) Verdict {
	for _, v := range []float64{float64(o.U), float64(o.Cavity), float64(o.Continuous), o.SHGC, float64(o.SlabDepth), float64(o.F)} {
		if !finite(v) || v < 0 {
			return Verdict{Why: fmt.Sprintf("the part's value \"%v\" is not a size that can be judged", v)}
		}
	}
	v := r.heat(o)
	if r.SHGC != 0 && o.SHGC > r.SHGC*(1+equalSlack) {
		v.OverSHGC = o.SHGC - r.SHGC
		v.Why += fmt.Sprintf("; SHGC %.2f is above %.2f", o.SHGC, r.SHGC)
		v.Met, v.By = false, ""
	}
	return v
}

// heat judges everything but the solar limit.
func (r Requirement) heat(o Offer) Verdict {
	met := func(by, format string, args ...any) Verdict {
		return Verdict{Met: true, By: by, Why: fmt.Sprintf(format, args...)}
	}
	if r.NotRequired {
		return met("nothing is required", "%v asks nothing of this part in zone %v", r.Edition, r.Zone)
	}
	digits := r.Component.UDecimals()
	if r.U != 0 && o.U != 0 && roundTo(o.U.IP(), digits) <= r.U.IP()*(1+equalSlack) {
		return met("U-factor", "U-factor %.*f is within %.*f", digits, o.U.IP(), digits, r.U.IP())
	}
	known := len(r.Options) > 0 && (o.Cavity > 0 || o.Continuous > 0)
	nearest, lacking := r.nearest(o)
	if known && lacking.none() && o.SlabDepth >= r.SlabDepth-depthTolerance {
		return met(fmt.Sprintf("R-value path (%v)", nearest), "installed insulation reaches %v", nearest)
	}
	if r.F != 0 && o.F != 0 && roundTo(o.F.IP(), 2) <= r.F.IP()*(1+equalSlack) {
		return met("F-factor, our reading", "F-factor %.2f is within %.2f, our reading of the R and depth", o.F.IP(), r.F.IP())
	}

	var v Verdict
	switch {
	case r.U != 0 && o.U != 0:
		v.Short, v.Needed = o.U-r.U, r.U.R()-o.U.R()
		v.Why = fmt.Sprintf("U-factor %.*f is above %.*f", digits, o.U.IP(), digits, r.U.IP())
	case r.F != 0 && o.F != 0:
		v.ShortF = o.F - r.F
		v.Why = fmt.Sprintf("F-factor %.2f is above %.2f, our reading of the R and depth", o.F.IP(), r.F.IP())
	}
	if known {
		v.Nearest, v.Lacking = nearest, lacking
		v.Why = join(v.Why, r.lackWords(nearest, lacking))
	}
	switch {
	case v.Why != "":
	case r.Component == Slab:
		v.Why = "a slab edge is judged by installed insulation and its depth, or by an F-factor; neither is known"
	case r.Component.fenestration():
		v.Why = "no U-factor is known"
	default:
		v.Why = "neither a U-factor nor installed insulation is known"
	}
	return v
}

// lackWords says what an option still lacks.
func (r Requirement) lackWords(nearest, lacking Option) string {
	if lacking.none() {
		return fmt.Sprintf("insulation must reach %.4g ft down", r.SlabDepth.IP())
	}
	return fmt.Sprintf("%v is missing for %v", lacking, nearest)
}

// nearest returns the option that lacks least, the first of equals.
func (r Requirement) nearest(o Offer) (nearest, lacking Option) {
	least := math.Inf(1)
	for _, opt := range r.Options {
		l := opt.lacking(o.Cavity, o.Continuous)
		if sum := float64(l.Cavity + l.Continuous); sum < least {
			least, nearest, lacking = sum, opt, l
		}
	}
	return nearest, lacking
}

func join(a, b string) string {
	if a == "" {
		return b
	}
	return a + "; " + b
}

func roundTo(v float64, digits int) float64 {
	p := math.Pow(10, float64(digits))
	return math.Round(v*p) / p
}
