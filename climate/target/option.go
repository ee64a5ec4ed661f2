package target

import (
	"fmt"
	"math"
	"strconv"

	"github.com/coldseam/coldseam/rvalue"
)

// Option is one way to meet a requirement by R-values. Both must be installed.
type Option struct {
	Cavity     rvalue.Resistance // between the framing members
	Continuous rvalue.Resistance // across the members, "ci"
	Total      bool              // Cavity is one R for all insulation of the part, wherever it sits
	Joists     []int             // nominal steel joist depths for which the option holds, nil any
}

// String prints o as the code does: "R-30", "R-20+5ci", "R-0+20ci".
func (o Option) String() string {
	s := "R-" + number(o.Cavity)
	if o.Continuous != 0 {
		s += "+" + number(o.Continuous) + "ci"
	}
	for i, n := range o.Joists {
		switch {
		case i == 0:
			s += " in "
		case i == len(o.Joists)-1:
			s += " or "
		default:
			s += ", "
		}
		s += fmt.Sprintf("2x%d", n)
	}
	return s
}

// number prints r in h·ft²·°F/Btu with one decimal at most, as the tables do.
func number(r rvalue.Resistance) string {
	return strconv.FormatFloat(math.Round(r.IP()*10)/10, 'f', -1, 64)
}

// labelTolerance is half the last digit of a label in m²·K/W: RSI 3.52 is R-20.
const labelTolerance = 0.005 * rvalue.RSI

// lacking returns what an installed cavity and continuous R lack for o.
func (o Option) lacking(cavity, continuous rvalue.Resistance) Option {
	if o.Total {
		return Option{Cavity: short(o.Cavity, cavity+continuous), Total: true}
	}
	return Option{Cavity: short(o.Cavity, cavity), Continuous: short(o.Continuous, continuous)}
}

// short returns want−have, or 0 when have is enough within the label's rounding.
func short(want, have rvalue.Resistance) rvalue.Resistance {
	if have >= want-labelTolerance {
		return 0
	}
	return want - have
}

func (o Option) none() bool { return o.Cavity == 0 && o.Continuous == 0 }

// is reports whether o is the pair p, both taken from our own tables.
func (o Option) is(p pair) bool {
	return number(o.Cavity) == number(option(p).Cavity) && number(o.Continuous) == number(option(p).Continuous)
}

func option(p pair) Option {
	return Option{Cavity: rvalue.Resistance(p.cavity) * rvalue.RIP, Continuous: rvalue.Resistance(p.ci) * rvalue.RIP}
}

func options(ps []pair) (os []Option) {
	for _, p := range ps {
		os = append(os, option(p))
	}
	return os
}

func totalR(r float64) Option {
	return Option{Cavity: rvalue.Resistance(r) * rvalue.RIP, Total: true}
}
