package window

// Solar is the solar heat gain factor (SHGC) at the centre of glass, the sun
// square to it: the share of the sun's heat that comes in. A whole window has it
// for its share of glass, and little for its frame.
type Solar struct {
	Low, High float64 // equal when the table has one figure
	Source    string
}

// Sources of solar gain factors.
const (
	solarHandbook = "ASHRAE Handbook—Fundamentals, table of solar heat gain coefficients at the centre of glass, from memory"
	solarEurope   = "European g-value guides, seen; coats that let the sun through have the higher, sun-control coats less than either"
)

// Solar returns the factor that published tables carry for such glass, and false
// for glass they do not have. It is looked up, not computed: the coating's and the
// glass's own solar properties, which a maker's label knows, are not in the notation.
func (g Glazing) Solar() (Solar, bool) {
	thick := false
	lowest := 1.0
	inner := false // whether it is on the pane towards indoors, which lets the sun warm the coat
	for i := range g.Panes {
		p := &g.Panes[i]
		if p.Sheet != Glass && p.Sheet != Laminated {
			return Solar{}, false
		}
		if p.Thickness.Millimetres() > quarterTo {
			return Solar{}, false
		}
		thick = thick || p.Thickness.Millimetres() > quarterFrom
		for face, e := range [...]float64{p.Inner, p.Outer} {
			if e != 0 && e < lowest {
				lowest, inner = e, face == 1
			}
		}
	}
	for i := range g.Gaps {
		if g.Gaps[i].Kind == Aerogel {
			return Solar{}, false
		}
	}
	one := func(thin, quarter float64) (Solar, bool) {
		if thick {
			thin = quarter
		}
		return Solar{thin, thin, solarHandbook}, true
	}
	switch n := len(g.Panes); {
	case n == 1 && lowest == 1:
		return one(0.86, 0.81)
	case n == 2 && lowest == 1:
		return one(0.76, 0.70)
	case n == 3 && lowest == 1:
		return one(0.68, 0.61)
	case n == 2 && lowest > softBelow && inner:
		return Solar{0.70, 0.70, solarHandbook}, true // emissivity 0.2 on face 3
	case n == 2 && lowest > softBelow:
		return Solar{0.65, 0.65, solarHandbook}, true // on face 2
	case n == 2:
		return Solar{0.41, 0.65, solarHandbook + " (0.41); " + solarEurope}, true
	case n == 3:
		return Solar{0.45, 0.53, solarEurope}, true
	}
	return Solar{}, false
}

const (
	quarterFrom = 4.5 // mm: nearer to 1/4 in than to 1/8 in
	quarterTo   = 8.0 // mm: nearer to 1/4 in, the tables' thickest, than to 3/8 in
	softBelow   = 0.12
)
