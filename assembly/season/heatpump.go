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

// performance is what a plant gives for what it takes, over a season.
type performance struct {
	factor float64 // heat over energy bought
	backup float64 // share of the heat that resistance gives, since the pump cannot
}

// perform runs the plant through the season of a house.
func (p *Plant) perform(w *climate.Prepared, ua rvalue.Conductance, indoors, balance rvalue.Temperature) (performance, error) {
	switch {
	case p.Kind != HeatPump:
		return performance{factor: p.Efficiency}, nil
	case len(p.Line) > 0:
		return p.performLine(w, ua, indoors, balance)
	}
	if p.COP <= carnot(indoors, coldest) { // in any weather
		return performance{factor: p.COP}, nil
	}
	bound, err := seasonCarnot(w, indoors, balance)
	if err == nil && p.COP > bound {
		err = fmt.Errorf("season: a heat pump with a COP of %s over a season in which the best that physics allows (Carnot) is %s", figure(p.COP), figure(bound))
	}
	return performance{factor: p.COP}, err
}

// Steps by which the season is gone through, coldward from the balance temperature.
// TestStepsAreFineEnough holds what comes of them against steps of 0.1 K.
const (
	lineStep   = 1 * rvalue.Kelvin
	carnotStep = 1 * rvalue.Kelvin
)

// negligible is a share of the degree days that is not followed any farther.
const negligible = 1e-5

// coldest is the lowest base that package climate takes.
var coldest = rvalue.FromCelsius(lowestBase)

// performLine adds up heat and electricity over the outdoor temperatures. A flow of
// heat f that is zero at a temperature t₀ and straight between others t₀ > t₁ > …
// below it is a sum of (tₖ − t)⁺ times the change of its slope at tₖ, and the degree
// days at base tₖ are the sum of (tₖ − t)⁺ over the year. So the season's sum of f is
//
//	Σ (slopeₖ − slopeₖ₋₁)·DD(tₖ)
//
// exactly, as bins would give it at any width if their hours were spread right.
func (p *Plant) performLine(w *climate.Prepared, ua rvalue.Conductance, indoors, balance rvalue.Temperature) (performance, error) {
	var whole climate.DegreeDays
	var bought, backup sum
	for t := balance; ; {
		dd, err := w.Year(t)
		if err != nil {
			return performance{}, err
		}
		if t >= balance {
			whole = dd.Heating
		}
		if dd.Heating <= negligible*whole || t <= coldest {
			break
		}
		next := p.below(t)
		if bend, ok := p.bend(ua, balance, t, next); ok {
			next = bend
		}
		cop, capacity := p.at(next)
		if bound := carnot(indoors, next); cop > bound {
			return performance{}, fmt.Errorf("season: a heat pump with a COP of %s at %s (%s), where the best that physics allows (Carnot) is %s",
				figure(cop), next.In(rvalue.IP), next.In(rvalue.SI), figure(bound))
		}
		q := ua.SI() * balance.Sub(next).SI()
		short := 0.0
		if p.Line[0].Capacity > 0 {
			short = max(0, q-capacity.SI())
		}
		bought.add((q-short)/cop+short, t.Sub(next), dd.Heating)
		backup.add(short, t.Sub(next), dd.Heating)
		t = next
	}
	if bought.total == 0 { // no heating
		return performance{factor: p.Line[len(p.Line)-1].COP}, nil
	}
	heat := ua.SI() * whole.SI()
	return performance{factor: heat / bought.total, backup: backup.total / heat}, nil
}

// sum is the sum over the year of a flow that is straight between temperatures.
type sum struct{ total, flow, slope float64 }

// add goes on to a colder temperature, where the flow is flow; dd is at the warmer.
func (s *sum) add(flow float64, step rvalue.TemperatureDifference, dd climate.DegreeDays) {
	slope := (flow - s.flow) / step.SI()
	s.total += (slope - s.slope) * dd.SI()
	s.flow, s.slope = flow, slope
}

// below returns the next colder temperature to stop at: a step away, or the next
// point of the line, where it bends.
func (p *Plant) below(t rvalue.Temperature) rvalue.Temperature {
	next := max(t.Add(-lineStep), coldest)
	for _, at := range p.Line {
		if at.Outdoors < t && at.Outdoors > next {
			next = at.Outdoors
		}
	}
	return next
}

// hair keeps a bend that is a temperature already from being found again, in W.
const hair = 1e-6

// bend returns where between two temperatures the load grows over the capacity, if it
// does; both are straight there.
func (p *Plant) bend(ua rvalue.Conductance, balance, warm, cold rvalue.Temperature) (rvalue.Temperature, bool) {
	spare := func(t rvalue.Temperature) float64 {
		_, capacity := p.at(t)
		return capacity.SI() - ua.SI()*balance.Sub(t).SI()
	}
	a, b := spare(warm), spare(cold)
	if p.Line[0].Capacity == 0 || a <= hair || b >= -hair {
		return 0, false
	}
	return warm.Add(rvalue.TemperatureDifference(a/(a-b)*cold.Sub(warm).SI()) * rvalue.Kelvin), true
}

// seasonCarnot returns the bound of a whole season's COP: heat over the least
// electricity that physics allows for it.
func seasonCarnot(w *climate.Prepared, indoors, balance rvalue.Temperature) (float64, error) {
	// The least electricity for heat (t_bal − t) is that times (t_i − t)/t_i, and the
	// sum of (t_bal − t)² over a year is twice the integral of the degree days over
	// their base; Simpson's rule.
	var integral float64
	var whole climate.DegreeDays
	for t := balance; t > coldest.Add(2*carnotStep); t = t.Add(-2 * carnotStep) {
		var dd [3]climate.DegreeDays
		for i := range dd {
			year, err := w.Year(t.Add(rvalue.TemperatureDifference(-i) * carnotStep))
			if err != nil {
				return 0, err
			}
			dd[i] = year.Heating
		}
		if t >= balance {
			whole = dd[0]
		}
		if dd[0] <= negligible*whole {
			break
		}
		integral += carnotStep.SI() / 3 * (dd[0] + 4*dd[1] + dd[2]).SI()
	}
	if whole == 0 {
		return math.Inf(1), nil
	}
	lift := indoors.Sub(balance).SI() + 2*integral/whole.SI()
	return indoors.Kelvins() / lift, nil
}
