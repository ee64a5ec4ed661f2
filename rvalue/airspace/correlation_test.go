package airspace

import "math"

// The published correlations that the curves are compared with, from memory,
// as functions of the Rayleigh number.

// positive is the part of x above 0, the dotted bracket of the paper.
func positive(x float64) float64 { return max(x, 0) }

// hollands is the inclined layer heated from below, 0° to 60° from horizontal:
// Hollands, Unny, Raithby and Konicek (1976), J. Heat Transfer 98.
func hollands(ra, tilt float64) float64 {
	sin, cos := math.Sin(1.8*tilt*math.Pi/180), math.Cos(tilt*math.Pi/180)
	x := ra * cos
	return 1 + 1.44*positive(1-1708/x)*(1-1708*math.Pow(sin, 1.6)/x) + positive(math.Cbrt(x/5830)-1)
}

// elSherbiny is the upright layer of the given height over thickness:
// ElSherbiny, Raithby and Hollands (1982), J. Heat Transfer 104.
func elSherbiny(ra, aspect float64) float64 {
	onset := 0.104 * math.Pow(ra, 0.293) / (1 + math.Pow(6310/ra, 1.36))
	return max(0.0605*math.Cbrt(ra), math.Cbrt(1+onset*onset*onset), 0.242*math.Pow(ra/aspect, 0.272))
}

// published is the correlation for one of the five positions, with a height of
// 2.4 m where it asks for one. Heat flowing down obliquely is scaled from the
// upright layer, Arnold, Catton and Edwards (1976); straight down, air is still.
func published(p position, ra, thickness float64) float64 {
	aspect := 2.4 / thickness
	switch p {
	case position{0, "up"}, position{45, "up"}:
		return hollands(ra, p.tilt)
	case position{90, "horizontal"}:
		return elSherbiny(ra, aspect)
	case position{45, "down"}:
		return 1 + (elSherbiny(ra, aspect)-1)*math.Sin(math.Pi/4)
	}
	return 1
}
