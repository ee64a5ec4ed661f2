package window

import "math"

// Convection in the gap between two panes, as ISO 15099 clause 5.3.3 lays it
// out: heated from below up to 60°, upright at 90°, a blend between, and beyond
// 90° the upright value scaled down. All from memory.
//
// The pieces of the standard do not quite meet, and a U would jump with the gap and
// the tilt. Two differences of ours make it continuous; TestAgainstISO15099 states
// their size. At 60° the standard switches to another equation, from which that of
// the lower tilts is up to 10 % of Nu away where the gas has just begun to move and 7 %
// beyond; here the blend starts from the latter. At 90° see upright.

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
	// Between 60° and 90°: a straight line in the angle, ISO 15099.
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
// height over thickness: Wright (1996), as ISO 15099 has it for 90°, a fit to the
// measurements of ElSherbiny, Raithby and Hollands (1982) and of Shewen; for Ra up to
// 1e6. Its three pieces meet within 0.7 %. Here the second is raised by 0.15 %, so
// that it touches the first, and each ends where it meets the next.
func upright(ra, lnAspect float64) float64 {
	ln := math.Log(ra)
	var nu float64
	switch {
	case ln <= lnTouch:
		nu = 1 + 1.7596678e-10*math.Exp(2.2984755*ln)
	case ln <= lnTurbulent:
		nu = 0.028154 * raised * math.Exp(0.4134*ln)
	default:
		nu = 0.0673838 * math.Exp(ln/3)
	}
	if x := ln - lnAspect; x > lnStill {
		nu = max(nu, 0.242*math.Exp(0.272*x))
	}
	return nu
}

const (
	raised      = 1.0014965871 // brings the second piece to touch the first
	lnTouch     = 9.1118737    // at Ra 9062; the standard switches at 1e4
	lnTurbulent = 10.881179    // where the second meets the third, Ra 53166; the standard switches at 5e4
	lnStill     = 5.216        // ln 184: below, 0.242·(Ra/A)^0.272 is less than 1
)
