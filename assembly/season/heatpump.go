package season

import (
	"fmt"
	"math"

	"github.com/coldseam/coldseam/climate"
	"github.com/coldseam/coldseam/rvalue"
)

// fillPump checks the figures of a heat pump, and turns HSPF into a COP.
func (p Plant) fillPump(given int, defaults *[]Default, remark func(code, text string)) (Plant, error) {
	switch {
	case p.Efficiency != 0:
		return p, fmt.Errorf("season: a heat pump with an efficiency of %s %%, give its COP, HSPF or HSPF2 instead", figure(100*p.Efficiency))
	case given == 0:
		p.COP = COPFrom(defaultHSPF2)
		*defaults = append(*defaults, Default{
			Code: "efficiency", What: "efficiency of the heat pump", Value: "HSPF2 7.5 Btu/Wh (COP 2.2)",
			Source: "US federal minimum of split systems since 2023, from memory",
		})
	case p.HSPF != 0:
		p.COP = COPFrom(p.HSPF)
		remark("hspf", "HSPF is measured for a mild winter, and by the old test some 15 % better than HSPF2 (from memory); where it is colder a line of COP by temperature tells more")
	case p.HSPF2 != 0:
		p.COP = COPFrom(p.HSPF2)
		remark("hspf", "HSPF2 is measured for a mild winter; where it is colder a line of COP by temperature tells more")
	}
	if len(p.Line) == 0 {
		if !(p.COP >= 1) || !finite(p.COP) {
			return p, fmt.Errorf("season: a heat pump with a COP of %s, below 1 it would be less than plain resistance; HSPF is 3.4 times the COP", figure(p.COP))
		}
		return p, nil
	}
	return p, p.checkLine()
}

func (p Plant) checkLine() error {
	for i, at := range p.Line {
		if !(at.COP >= 1) || !finite(at.COP) {
			return fmt.Errorf("season: a heat pump with a COP of %s at %s, below 1 it would be less than plain resistance", figure(at.COP), at.Outdoors.In(rvalue.IP))
		}
		if t := at.Outdoors.Celsius(); !(t >= -60 && t <= 60) {
			return fmt.Errorf("season: a COP at %s °C, give temperatures from -60 to 60 °C", figure(t))
		}
		if c := float64(at.Capacity); !(c >= 0) || !finite(c) {
			return fmt.Errorf("season: a capacity of %v, it must be positive and finite", at.Capacity)
		}
		if (at.Capacity == 0) != (p.Line[0].Capacity == 0) {
			return fmt.Errorf("season: a capacity at some points of the line only; give it at all or at none")
		}
		if i > 0 && !(at.Outdoors > p.Line[i-1].Outdoors) {
			return fmt.Errorf("season: the line of COP goes from %s to %s; give the points coldest first, each once",
				p.Line[i-1].Outdoors.In(rvalue.IP), at.Outdoors.In(rvalue.IP))
		}
	}
	return nil
}

// at returns the COP and the capacity at an outdoor temperature: straight between
// the points, level above the warmest, and straight on below the coldest, where the
// COP stops at 1 and the capacity at 0.
func (p *Plant) at(t rvalue.Temperature) (cop float64, capacity Power) {
	l := p.Line
	i := 1 // of the upper end of the piece
	for i < len(l)-1 && t > l[i].Outdoors {
		i++
	}
	if last := l[len(l)-1]; t >= last.Outdoors || len(l) == 1 {
		return last.COP, last.Capacity
	}
	a, b := l[i-1], l[i]
	x := t.Sub(a.Outdoors).SI() / b.Outdoors.Sub(a.Outdoors).SI()
	return max(1, a.COP+x*(b.COP-a.COP)), max(0, a.Capacity+Power(x)*(b.Capacity-a.Capacity))
}

// carnot returns the bound that no heat pump can reach between two temperatures,
// and +Inf where no pump is needed.
func carnot(indoors, outdoors rvalue.Temperature) float64 {
	// Second law of thermodynamics: T_hot / (T_hot − T_cold)
	lift := indoors.Sub(outdoors).SI()
	if lift <= 0 {
		return math.Inf(1)
	}
	return indoors.Kelvins() / lift
}

// binWidth is that of the bins for heat pumps; 1 K gives the same electricity
// within 0.1 % (TestBinsAreFineEnough).
const binWidth = 2 * rvalue.Kelvin

// performance is what a plant gives for what it takes, over a season.
type performance struct {
	factor float64 // heat over energy bought
	backup float64 // share of the heat that resistance gives, since the pump cannot
}

// perform runs the plant through the season of a house.
func (p *Plant) perform(w *climate.Prepared, ua rvalue.Conductance, indoors, balance rvalue.Temperature) (performance, error) {
	if p.Kind != HeatPump {
		return performance{factor: p.Efficiency}, nil
	}
	bins, err := w.Bins(balance, binWidth)
	if err != nil {
		return performance{}, err
	}
	var heat, bought, backup, least float64 // W·h; least is Carnot's electricity
	for _, b := range bins {
		// The mean of the bin, so that the bins sum to the degree days.
		dT := balance.Sub(b.Mean).SI()
		if dT <= 0 {
			continue
		}
		q := ua.SI() * dT * b.Hours
		bound := carnot(indoors, b.Mean)
		heat += q
		least += q / bound
		if len(p.Line) == 0 {
			continue
		}
		cop, capacity := p.at(b.Mean)
		if cop > bound {
			return performance{}, overCarnot(cop, b.Mean, bound)
		}
		short := 0.0
		if p.Line[0].Capacity > 0 {
			short = max(0, q-float64(capacity)*b.Hours)
		}
		backup += short
		bought += (q-short)/cop + short
	}
	switch {
	case len(p.Line) == 0:
		// Carnot's electricity is linear in the outdoor temperature: at the mean
		// weighted by heat it bounds the season's COP.
		if heat > 0 && p.COP > heat/least {
			return performance{}, fmt.Errorf("season: a heat pump with a COP of %s over a season in which the best that physics allows (Carnot) is %s", figure(p.COP), figure(heat/least))
		}
		return performance{factor: p.COP}, nil
	case heat == 0:
		return performance{factor: p.Line[len(p.Line)-1].COP}, nil
	}
	return performance{factor: heat / bought, backup: backup / heat}, nil
}

func overCarnot(cop float64, t rvalue.Temperature, bound float64) error {
	return fmt.Errorf("season: a heat pump with a COP of %s at %s (%s), where the best that physics allows (Carnot) is %s",
		figure(cop), t.In(rvalue.IP), t.In(rvalue.SI), figure(bound))
}
