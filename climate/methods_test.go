package climate

import "math"

// method estimates the heating degree days of a year in K·d from monthly means.
// Cooling follows from the identity.
type method struct {
	name    string
	heating func(n *Normals, base float64) float64 // base in °C
}

// methods are the published ways that were compared; ours is chosen. Formulas and
// coefficients from memory, see the reference notes.
var methods = [...]method{
	{chosen, func(n *Normals, base float64) float64 {
		plain := *n
		plain.Published = false
		p, err := plain.Prepare()
		if err != nil {
			return math.NaN()
		}
		heating, _ := p.year(base)
		return heating.SI()
	}},
	{"Erbs, Klein and Beckman, a = 1.698", func(n *Normals, base float64) float64 { return erbs(n, base, false) }},
	{"the same with a = 1.698·√N, as often misprinted", func(n *Normals, base float64) float64 { return erbs(n, base, true) }},
	{"Schoenau and Kehrig, 4 K everywhere", func(n *Normals, base float64) float64 {
		var p Prepared
		for i, t := range n.Mean {
			p.mean[i], p.spread[i] = t.Celsius(), 4
		}
		heating, _ := p.year(base)
		return heating.SI()
	}},
	{"Hitchin, k = 0.71", hitchin},
	{"max(0, base − mean)", func(n *Normals, base float64) float64 {
		sum := 0.0
		for i, t := range n.Mean {
			sum += days[i] * max(0, base-t.Celsius())
		}
		return sum
	}},
}

const chosen = "Schoenau and Kehrig, Erbs's spread (chosen)"

func erbs(n *Normals, base float64, misprinted bool) float64 {
	sum := 0.0
	for i, t := range n.Mean {
		sum += erbsMonth(t.Celsius(), days[i], base, n.spread(), misprinted)
	}
	return sum
}

// erbsMonth is Erbs, Klein and Beckman 1983: HDD = σm·N^1.5·[h/2 +
// ln(e^(−ah) + e^(ah))/(2a)], h = (base − mean)/(σm·√N).
func erbsMonth(mean, n, base, sigmaYear float64, misprinted bool) float64 {
	sigma := 1.45 - 0.0290*mean + 0.0664*sigmaYear
	h := (base - mean) / (sigma * math.Sqrt(n))
	a := 1.698
	if misprinted {
		a *= math.Sqrt(n)
	}
	// ln(2 cosh x) without overflow.
	x := math.Abs(a * h)
	return sigma * math.Pow(n, 1.5) * (h/2 + (x+math.Log1p(math.Exp(-2*x)))/(2*a))
}

// hitchin is N·(base − mean)/(1 − e^(−k·(base − mean))), with its limit N/k.
func hitchin(n *Normals, base float64) float64 {
	const k = 0.71 // 1/K
	sum := 0.0
	for i, t := range n.Mean {
		if d := base - t.Celsius(); math.Abs(d) < 1e-9 {
			sum += days[i] / k
		} else {
			sum += days[i] * d / -math.Expm1(-k*d)
		}
	}
	return sum
}

// identity returns Σ days·(base − mean) in K·d.
func identity(n *Normals, base float64) float64 {
	sum := 0.0
	for i, t := range n.Mean {
		sum += days[i] * (base - t.Celsius())
	}
	return sum
}
