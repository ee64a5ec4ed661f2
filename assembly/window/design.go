package window

import (
	"math"
	"strconv"
	"strings"

	"github.com/coldseam/coldseam/rvalue"
)

// Conditions are what a window stands in. Start from [Winter]: a Tilt of 0 is a
// level skylight.
type Conditions struct {
	Indoors, Outdoors rvalue.Temperature // of air and of all that the glass faces, −60 to 60 °C
	Wind              rvalue.Speed       // at the glass; 0: 15 mph
	Tilt              float64            // degrees, see Upright
	Height            rvalue.Length      // of the glass along its slope; 0: 1 m
}

// ParseTilt reads a tilt from level, 0° to 180°: "45°" or "45 deg"; "90°" is upright.
func ParseTilt(text string) (float64, error) {
	number := strings.TrimSpace(text)
	number, ok := strings.CutSuffix(number, "°")
	if !ok {
		number, ok = strings.CutSuffix(number, "deg")
	}
	v, err := strconv.ParseFloat(strings.TrimSpace(number), 64)
	if !ok || err != nil || !(v >= 0 && v <= 180) {
		return 0, refuse("%q is no tilt; write it from level, 0° to 180°, such as 45° for a roof light, 90° is upright", text)
	}
	return v, nil
}

// Winter returns the handbook's winter night: 70 °F inside, 0 °F outside, wind of
// 15 mph, no sun, upright glass (seen).
func Winter() Conditions {
	return Conditions{
		Indoors: rvalue.FromFahrenheit(70), Outdoors: rvalue.FromFahrenheit(0),
		Wind: winterWind, Tilt: Upright, Height: usualHeight,
	}
}

const (
	winterWind  = 15 * rvalue.MilePerHour
	usualHeight = 1 * rvalue.Metre
	maxWind     = 75 * rvalue.MetrePerSecond
	maxHeight   = 20 * rvalue.Metre
	// leastApart is the temperature difference below which no U has a meaning
	// that anybody could measure.
	leastApart = 0.1 * rvalue.Kelvin
)

// filled returns c with what it leaves open.
func (c Conditions) filled() Conditions {
	if c.Wind == 0 {
		c.Wind = winterWind
	}
	if c.Height == 0 {
		c.Height = usualHeight
	}
	return c
}

// alike reports whether there is next to no difference of temperatures.
func (c Conditions) alike() bool {
	return math.Abs(c.Indoors.Sub(c.Outdoors).SI()) < leastApart.SI()
}

func (c Conditions) check() error {
	for _, t := range [...]struct {
		where string
		t     rvalue.Temperature
	}{{"indoors", c.Indoors}, {"outdoors", c.Outdoors}} {
		if v := t.t.Celsius(); !(v >= -60 && v <= 60) {
			return refuse("%s at %.4g °C is no air temperature of a house, use -60 °C to 60 °C", t.where, v)
		}
	}
	switch {
	case c.alike():
		return refuse("indoors and outdoors at %s: no heat flows that a U could be told from; put them 0.1 K or more apart", said(c.Indoors))
	case !(c.Wind >= 0 && c.Wind <= maxWind):
		return refuse("a wind of %s is out of range, use 0 (the winter wind) to %s", said(c.Wind), said(maxWind))
	case !(c.Height > 0 && c.Height <= maxHeight):
		return refuse("a height of %s is no window's, use above 0 to %s", said(c.Height), said(maxHeight))
	}
	return checkTilt(c.Tilt)
}

// Solved is the centre of a glazing at real temperatures.
type Solved struct {
	Center
	Panes int
	Faces [2 * MaxPanes]rvalue.Temperature // inner and outer face of each pane, indoors first
}

// Design returns the centre of glass in real conditions: it finds the pane
// temperatures at which each film, gap and pane passes the same heat.
//
// Gaps: convection by ISO 15099 clause 5.3.3 (see the file cavity.go for where we
// differ), its gas properties at the gap's mean temperature, radiation between
// parallel grey faces. Inside film: natural convection by ISO 15099 clause 8.3.2
// and radiation to a room at air temperature. Outside film: 4 + 4v W/(m²·K) by ISO
// 15099 clause 8.3.3 and radiation to surroundings at air temperature; a clear
// night sky takes more. No sun. All from memory.
//
// The correlations are for gaps of a fifth to a hundredth of their height; in wider
// and narrower ones they are extrapolated.
//
// Heat that flows down, under a tilted or level glazing in summer or through
// glass underfoot, follows from the tilt and the temperatures. The error names
// what in g or c cannot be.
func (g Glazing) Design(c Conditions) (Solved, error) {
	if err := g.check(); err != nil {
		return Solved{}, err
	}
	c = c.filled()
	if err := c.check(); err != nil {
		return Solved{}, err
	}
	var s solver
	s.prepare(&g, &c)
	if !s.solve() {
		return Solved{}, unsettled()
	}
	return s.result(), nil
}

func unsettled() error {
	return refuse("the temperatures of this glazing did not settle in %d passes; please report it with its text", maxPasses)
}

// part is a film or a gap: what heat crosses by radiation and by air or gas.
type part struct {
	gas       linear  // of a gap or the inside film
	thickness float64 // m, of a gap; 0: nothing moves by itself
	lnAspect  float64 // of a gap, logarithm of its height over its thickness
	exchange  float64 // σ/(1/ε1 + 1/ε2 − 1), W/(m²·K⁴)
	fixed     float64 // W/(m²·K) that no temperature changes: wind, a declared gap

	drop, flow         float64 // K and W/m², along the heat, at this pass
	dropWas, flowWas   float64 // at the pass before
	radiation, carried float64 // W/(m²·K)
	nu                 float64
	slope, perK        float64 // W/(m²·K), how the flow changes with the drop, and its inverse
}

// solver has a glazing as films and gaps in series, indoors first.
type solver struct {
	n       int // films and gaps: panes + 1
	parts   [MaxPanes + 1]part
	panes   [MaxPanes]float64 // resistances, m²·K/W
	indoors float64           // K
	dT      float64           // K, positive
	sign    float64           // −1 with the heat flowing in
	slope   slope
	film    film
	height  float64 // m
	q       float64 // W/m²
}

// around sets what the glass stands in.
func (s *solver) around(c *Conditions) {
	s.indoors, s.dT, s.sign = c.Indoors.Kelvins(), c.Indoors.Sub(c.Outdoors).SI(), 1
	angle := c.Tilt
	if s.dT < 0 {
		s.dT, s.sign, angle = -s.dT, -1, 180-c.Tilt
	}
	s.slope, s.film, s.height = slopeOf(angle), filmOf(angle), c.Height.SI()
}

func (s *solver) prepare(g *Glazing, c *Conditions) {
	s.around(c)
	s.n = len(g.Panes) + 1
	last := len(g.Panes) - 1
	s.parts[0].gas, s.parts[0].exchange = Fill{}.linear(), sigma*g.Panes[0].inner()
	// ISO 15099 clause 8.3.3, outside: 4 + 4v
	s.parts[s.n-1].fixed, s.parts[s.n-1].exchange = 4+4*c.Wind.SI(), sigma*g.Panes[last].outer()
	for i := range g.Gaps {
		gap, p := &g.Gaps[i], &s.parts[i+1]
		if gap.Kind != Filled {
			p.fixed = gap.Conductance.SI()
			continue
		}
		p.gas, p.thickness = gap.Fill.linear(), gap.Thickness.SI()
		p.lnAspect = math.Log(s.height / p.thickness)
		// ISO 15099 clause 5.3.4, two parallel grey faces that let nothing through
		p.exchange = sigma / (1/g.Panes[i].outer() + 1/g.Panes[i+1].inner() - 1)
	}
	for i := range g.Panes {
		s.panes[i] = g.Panes[i].resistance()
	}
}

const (
	// balance is how far, relatively, the heat through a film or gap may be from
	// that through the whole, before a last step that all but removes it.
	balance   = 1e-9
	maxPasses = 100
	// leastShare of the temperature drop is left to each film and gap on the way.
	leastShare = 1e-9
)

// solve finds the temperature drops. Each pass takes the heat through a film or
// gap as a straight line in its own drop, with the slope that the last two passes
// showed, and solves the series of these: a secant for each part, which gains
// digits much faster than repeated substitution.
func (s *solver) solve() (settled bool) {
	s.start()
	for pass := range maxPasses {
		s.flows()
		offset, compliance := 0.0, 0.0
		least, most := s.parts[0].flow, s.parts[0].flow
		for i := range s.n {
			p := &s.parts[i]
			p.secant(pass == 0)
			least, most = min(least, p.flow), max(most, p.flow)
			offset += p.drop - p.flow*p.perK
			compliance += p.perK
		}
		for i := range s.n - 1 {
			compliance += s.panes[i]
		}
		s.q = (s.dT - offset) / compliance
		for i := range s.n {
			p := &s.parts[i]
			p.dropWas, p.flowWas = p.drop, p.flow
			p.drop = max(p.drop+(s.q-p.flow)*p.perK, leastShare*s.dT)
		}
		if max(most-s.q, s.q-least) <= balance*s.q {
			return true
		}
	}
	return false
}

// start shares the difference as films and gaps with gas at rest would, all at
// the mean temperature.
func (s *solver) start() {
	const room = 3 // W/(m²·K), about what convection is inside
	t, sum := s.indoors-s.sign*s.dT/2, 0.0
	for i := range s.n {
		p := &s.parts[i]
		h := p.fixed + 4*t*t*t*p.exchange
		if i == 0 {
			h += room
		} else if p.thickness > 0 {
			h += p.gas.at(t).k / p.thickness
		}
		p.drop = 1 / h
		sum += p.drop
	}
	for i := range s.n {
		s.parts[i].drop *= s.dT / sum
	}
	s.q = s.dT / sum
}

// secant sets the slope of the part's line, within what convection can do. A step
// too small to tell a slope from leaves it as it was.
func (p *part) secant(first bool) {
	h := p.radiation + p.carried
	switch step := p.drop - p.dropWas; {
	case first:
		p.slope = h
		if p.fixed == 0 && p.nu != 1 {
			p.slope += 0.25 * p.carried // what moves by itself grows with about the fourth root of the drop
		}
	case math.Abs(step) > 1e-8*p.drop:
		p.slope = (p.flow - p.flowWas) / step
	}
	p.slope = min(max(p.slope, 0.5*h), 4*h)
	p.perK = 1 / p.slope
}

// flows computes the heat through each film and gap at its drop and at the
// temperatures that the drops add to.
func (s *solver) flows() {
	t := s.indoors // of the face towards indoors
	for i := range s.n {
		p := &s.parts[i]
		next := t - s.sign*p.drop
		p.radiation = p.exchange * (t*t + next*next) * (t + next)
		p.carried = p.fixed
		switch {
		case i == 0:
			p.carried += s.film.coefficient(&p.gas, t, p.drop, next, s.height)
		case p.thickness > 0:
			mean := (t + next) / 2
			gas := p.gas.at(mean)
			p.nu = s.slope.nusselt(gas.rayleigh(p.thickness, p.drop, mean), p.lnAspect)
			p.carried += p.nu * gas.k / p.thickness
		}
		p.flow = (p.radiation + p.carried) * p.drop
		if i < s.n-1 {
			next -= s.sign * s.q * s.panes[i]
		}
		t = next
	}
}

func (s *solver) result() Solved {
	out := Solved{Panes: s.n - 1}
	out.U = rvalue.Transmittance(s.q / s.dT)
	t := s.indoors
	for i := range s.n {
		p := &s.parts[i]
		h := rvalue.Transmittance(p.radiation + p.carried)
		switch {
		case i == 0:
			out.InsideFilm = h
		case i == s.n-1:
			out.OutsideFilm = h
		default:
			out.Gaps[i-1] = GapFlow{
				Radiation: rvalue.Transmittance(p.radiation), Gas: rvalue.Transmittance(p.carried),
				Nusselt: p.nu, Difference: rvalue.TemperatureDifference(s.sign * p.drop),
			}
		}
		if i == s.n-1 {
			break
		}
		t -= s.sign * p.drop
		out.Faces[2*i] = rvalue.Temperature(t)
		t -= s.sign * s.q * s.panes[i]
		out.Faces[2*i+1] = rvalue.Temperature(t)
	}
	return out
}
