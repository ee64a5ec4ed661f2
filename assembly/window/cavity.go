package window

import "math"

// Convection in the gap between two panes, as ISO 15099 clause 5.3.3 lays it
// out: heated from below up to 60°, upright at 90°, a blend between, and beyond
// 90° the upright value scaled down. All from memory; package airspace's tests
// have the same two correlations beside the table of plane air spaces.
//
// ISO 15099 itself takes at 60° and at 90° other fits to the same measurements.
// Its pieces do not meet, by 0.7 % of Nu at 90° and by up to 10 % at 60°, so that U
// would jump with the gap and the tilt. TestAgainstISO15099 states the differences:
// up to 4 % of Nu at 90°, and 10 % at 60° where the gas has just begun to move.

// slope is what the direction of the heat means to a gap: 0° straight up, 90°
// level, 180° straight down.
type slope struct {
	cos    float64 // of the angle, or of 60° beyond that
	sin16  float64 // sin(1.8·angle)^1.6, likewise
	toward float64 // share of the upright value, 0 up to 60° and 1 at 90°
	scale  float64 // of what convection adds, 1 up to 90°
}

func slopeOf(angle float64) slope {
	if angle >= Upright {
		return slope{toward: 1, scale: math.Max(math.Sin(angle*math.Pi/180), 0)}
	}
	low := min(angle, 60) * math.Pi / 180
	return slope{
		cos:    math.Cos(low),
		sin16:  math.Pow(math.Max(math.Sin(1.8*low), 0), 1.6),
		toward: max(0, (angle-60)/30), scale: 1,
	}
}

// nusselt returns the heat that the gas carries over what it would conduct at
// rest, at the Rayleigh number ra and the logarithm of height over thickness.
func (s *slope) nusselt(ra, lnAspect float64) float64 {
	if ra <= 0 {
		return 1
	}
	switch s.toward {
	case 0:
		return s.fromBelow(ra)
	case 1:
		// Arnold, Catton and Edwards (1976), ISO 15099 beyond 90°: 1 + (Nu − 1)·sin
		return 1 + (upright(ra, lnAspect)-1)*s.scale
	}
	// Between 60° and 90°: a straight line in the angle, as ElSherbiny et al. and
	// ISO 15099 have it.
	return (1-s.toward)*s.fromBelow(ra) + s.toward*upright(ra, lnAspect)
}

// fromBelow is the inclined layer heated from below: Hollands, Unny, Raithby and
// Konicek (1976), J. Heat Transfer 98, equation 7; for Ra below 1e5 and gaps of at
// most a twentieth of their height.
func (s *slope) fromBelow(ra float64) float64 {
	const critical = 1708
	x := ra * s.cos
	nu := 1.0
	if x > critical {
		nu += 1.44 * (1 - critical/x) * (1 - critical*s.sin16/x)
	}
	if x > 5830 {
		nu += math.Cbrt(x/5830) - 1
	}
	return max(nu, 1)
}

// upright is the upright layer heated from one side, with the logarithm of its
// height over thickness: ElSherbiny, Raithby and Hollands (1982), J. Heat Transfer
// 104, for Ra up to 2e7.
func upright(ra, lnAspect float64) float64 {
	ln := math.Log(ra)
	onset := 0.104 * math.Exp(0.293*ln) / (1 + math.Exp(1.36*(lnTransition-ln)))
	nu := max(math.Cbrt(1+onset*onset*onset), 0.0605*math.Cbrt(ra))
	if x := ln - lnAspect; x > lnStill {
		nu = max(nu, 0.242*math.Exp(0.272*x))
	}
	return nu
}

const (
	lnTransition = 8.749890956 // ln 6310
	lnStill      = 5.216       // ln 184: below, 0.242·(Ra/A)^0.272 is less than 1
)
