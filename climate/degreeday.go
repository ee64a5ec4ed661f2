package climate

import (
	"fmt"
	"math"
	"time"

	"github.com/coldseam/coldseam/rvalue"
)

// DegreeDays is a sum over days of a temperature difference, in K·d.
type DegreeDays float64

// Units of degree days.
const (
	KelvinDay     DegreeDays = 1
	FahrenheitDay DegreeDays = 5.0 / 9.0
)

// SI returns d in K·d.
func (d DegreeDays) SI() float64 { return float64(d) }

// IP returns d in °F·d.
func (d DegreeDays) IP() float64 { return float64(d / FahrenheitDay) }

// In returns d in whole degree days of the chosen system, "3156 K·d" or
// "5681 °F·d".
func (d DegreeDays) In(u rvalue.Units) string {
	if u == rvalue.IP {
		return fmt.Sprintf("%.0f °F·d", d.IP())
	}
	return fmt.Sprintf("%.0f K·d", d.SI())
}

// Year is the heating and cooling degree days of a year, or of a month.
type Year struct{ Heating, Cooling DegreeDays }

// Prepared are normals made ready for degree days at any base: per month the mean
// and the spread of the daily means about it. Make one with [Normals.Prepare].
type Prepared struct {
	mean, spread [12]float64 // °C, K
	swing        [12]float64 // K
	scale        float64
	borrowed     rvalue.TemperatureDifference
}

// base65 is the base of the published figures, 65 °F, in °C.
const base65 = (65.0 - 32) / 1.8

// Range of bases that [Prepared.Year] takes, in °C.
const lowestBase, highestBase = -60, 60

// Prepare makes n ready for degree days. The daily means of a month are taken to be
// spread normally about the monthly mean (Schoenau and Kehrig 1990, in the ASHRAE
// Handbook of Fundamentals, "Estimation of degree-days") by half of √days·σm, where
// σm = 1.45 − 0.0290·mean + 0.0664·σyr in °C is Erbs, Klein and Beckman's (1983) and
// σyr the standard deviation of the twelve monthly means. The half is what the
// comparison in testdata/climate_SCORE.md was made with: of the published methods it
// has the smallest error there. Formulas and coefficients are from memory, and
// proved by that comparison.
//
// Where n has published degree days of the year the spread is scaled so that those
// at 65 °F come out: by one factor in the months that bear on that base, and by less
// the farther (in spreads) a month's mean is from it, as exp(−z²/8). [Prepared.Scale]
// returns the factor. It stays from 0.2 to 2.
func (n *Normals) Prepare() (Prepared, error) {
	p := Prepared{scale: 1, borrowed: n.borrowed}
	sigmaYear := n.spread()
	for i, t := range n.Mean {
		p.mean[i] = t.Celsius()
		p.swing[i] = n.Swing[i].SI()
		if !(p.mean[i] >= coldestMonth && p.mean[i] <= hottestMonth) {
			return Prepared{}, fmt.Errorf("mean temperature of %s is %.4g °C; give a value from %g to %g °C",
				time.Month(i+1), p.mean[i], coldestMonth, hottestMonth)
		}
		sigmaMonth := 1.45 - 0.0290*p.mean[i] + 0.0664*sigmaYear
		// Positive for every mean that was let in: 0.145 K at 45 °C.
		p.spread[i] = 0.5 * math.Sqrt(days[i]) * sigmaMonth
	}
	if n.Published {
		if !(n.HDD65 >= 0 && n.CDD65 >= 0) {
			return Prepared{}, fmt.Errorf("published degree days are %.4g and %.4g K·d; give none that is negative", n.HDD65, n.CDD65)
		}
		p.calibrate(n.HDD65, n.CDD65)
	}
	return p, nil
}

// Scale returns the factor on the spread of the daily means that brought out the
// published degree days; 1 where there were none.
func (p *Prepared) Scale() float64 { return p.scale }

// calibrate scales the spreads until the year's heating degree days at 65 °F are
// the published ones.
func (p *Prepared) calibrate(hdd, cdd DegreeDays) {
	// The published pair breaks the identity by its rounding; the target that
	// shares the rest evenly keeps it.
	identity := 0.0
	for i := range days {
		identity += days[i] * (base65 - p.mean[i])
	}
	target := (hdd + cdd + DegreeDays(identity)) / 2
	plain := *p
	lo, hi := 0.2, 2.0
	for range 40 {
		p.scale = (lo + hi) / 2
		for i, s := range plain.spread {
			z := (base65 - p.mean[i]) / s
			p.spread[i] = s * (1 + (p.scale-1)*math.Exp(-z*z/8))
		}
		if got, _ := p.year(base65); got < target {
			lo = p.scale
		} else {
			hi = p.scale
		}
	}
}

// shift moves all means by d kelvins and leaves the spreads.
func (p *Prepared) shift(d float64) {
	for i := range p.mean {
		p.mean[i] += d
	}
}

// Year returns the heating and cooling degree days of the year at a base from −60
// to 60 °C; another base is an error. Heating − Cooling is Σ days·(base − mean) but
// for the last bits.
func (p *Prepared) Year(base rvalue.Temperature) (Year, error) {
	t := base.Celsius()
	if !(t >= lowestBase && t <= highestBase) {
		return Year{}, badBase(t)
	}
	h, c := p.year(t)
	return Year{h, c}, nil
}

// Month returns the degree days of one month, as [Prepared.Year] does.
func (p *Prepared) Month(m time.Month, base rvalue.Temperature) (Year, error) {
	if m < time.January || m > time.December {
		return Year{}, fmt.Errorf("no month %d; give one from 1 to 12", int(m))
	}
	t := base.Celsius()
	if !(t >= lowestBase && t <= highestBase) {
		return Year{}, badBase(t)
	}
	h, c := p.month(int(m-1), t)
	return Year{h, c}, nil
}

func badBase(t float64) error {
	return fmt.Errorf("base temperature is %.4g °C (%.4g °F); give one from %d to %d °C (-76 to 140 °F)",
		t, rvalue.FromCelsius(t).Fahrenheit(), lowestBase, highestBase)
}

func (p *Prepared) year(base float64) (heating, cooling DegreeDays) {
	for i := range days {
		h, c := p.month(i, base)
		heating += h
		cooling += c
	}
	return heating, cooling
}

// month is Schoenau and Kehrig's formula. The smaller of the two sums is computed,
// and the larger follows from the identity, so that both keep their digits.
func (p *Prepared) month(i int, base float64) (heating, cooling DegreeDays) {
	// ASHRAE Handbook of Fundamentals, "Estimation of degree-days", after Schoenau
	// and Kehrig 1990: N·s·[Z·F(Z) + f(Z)], Z = (base − mean)/s
	gap := base - p.mean[i]
	z := math.Abs(gap) / p.spread[i]
	above, density := tail(z)
	less := days[i] * p.spread[i] * max(0, density-z*above)
	more := DegreeDays(less + days[i]*math.Abs(gap))
	if gap > 0 {
		return more, DegreeDays(less)
	}
	return DegreeDays(less), more
}
