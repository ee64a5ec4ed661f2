package house

import (
	"errors"
	"fmt"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/assembly/envelope"
	"github.com/coldseam/coldseam/assembly/season"
	"github.com/coldseam/coldseam/assembly/window"
	"github.com/coldseam/coldseam/climate/target"
	"github.com/coldseam/coldseam/rvalue"
)

// Report is the whole answer for a house: its ranking, and everything that the
// ranking rests on.
type Report struct {
	House    *House
	Envelope envelope.Envelope
	Ranking  *envelope.Ranking
	Season   *Season // nil: neither the place nor its months are known

	// Now and Then are what the heater must give, as the house is and if all that is
	// behind just met what is asked. nil: no temperature to design for is known.
	Now, Then *season.Load

	Assemblies []*Evaluated
	Judgements []Judgement
	Defaults   []Default
	Remarks    []Remark
}

// Remark is something the reader should know: an assumption, a caution.
type Remark struct {
	Code  string // stable, for programs
	Text  string
	About string // `assembly "wall-1926"`, or the name of a part
	Place Place  // in the house file; the zero Place if there is none
}

// Rank computes the house: every assembly as built, what the code asks of each
// part, and the ranking with its weakest link.
func (h *House) Rank() (*Report, error) {
	b, err := h.build()
	if err != nil {
		return nil, err
	}
	r := b.report
	if r.Ranking, err = r.Envelope.Rank(); err != nil {
		var wrong *envelope.PlaceError
		if errors.As(err, &wrong) && wrong.What == "bridge" {
			for _, bridge := range h.Bridges {
				if bridge.Name == wrong.Name {
					return nil, bridge.at.fail(fmt.Sprintf("bridge %q", bridge.Name), errors.New(wrong.Problem))
				}
			}
		}
		return nil, err
	}
	if r.Season, err = r.season(); err != nil {
		return nil, err
	}
	if err := r.heater(); err != nil {
		return nil, err
	}
	b.remarks()
	return r, nil
}

// Envelope puts together the house's envelope, with the U-factors of its
// assemblies as built and what the energy code asks of its parts.
func (h *House) Envelope() (envelope.Envelope, error) {
	b, err := h.build()
	if err != nil {
		return envelope.Envelope{}, err
	}
	return b.report.Envelope, nil
}

type reportBuilder struct {
	report *Report
	evaluator
}

func (h *House) build() (*reportBuilder, error) {
	if err := h.whole(); err != nil {
		return nil, err
	}
	b := &reportBuilder{report: &Report{House: h, Defaults: h.Defaults}, evaluator: evaluator{h: h}}
	e := &b.report.Envelope
	e.Altitude, e.Indoors, e.Outdoors = h.Altitude, h.Indoors.Temperature, h.Outdoors.Temperature
	for _, buffer := range h.Buffers {
		if err := b.buffer(buffer); err != nil {
			return nil, err
		}
	}
	for _, p := range h.Parts {
		if err := b.part(p); err != nil {
			return nil, err
		}
	}
	for _, bridge := range h.Bridges {
		e.Bridges = append(e.Bridges, envelope.Bridge{Name: bridge.Name, Psi: bridge.Psi, Length: bridge.Length, Kind: envelope.ThermalBridge})
	}
	if err := b.leakage(h.Leakage); err != nil {
		return nil, err
	}
	b.report.Assemblies = b.all
	return b, nil
}

// whole refuses a House that a caller has changed into what no file can say.
func (h *House) whole() error {
	for i, p := range h.Parts {
		switch {
		case p == nil:
			return fmt.Errorf("house: part %d is nil", i+1)
		case p.Kind > Glazing || p.Toward > ToBuffer:
			return fmt.Errorf("house: part %q is of kind %d toward %d, use the constants", p.Name, p.Kind, p.Toward)
		case p.Kind == Glazing && p.Window == nil:
			return fmt.Errorf("house: part %q is a window, but which is not said", p.Name)
		case p.Toward == ToBuffer && p.Buffer == nil:
			return fmt.Errorf("house: part %q faces a buffer, but which is not said", p.Name)
		}
		for _, o := range p.Openings {
			if o == nil || o.Window == nil {
				return fmt.Errorf("house: an opening of part %q has no window", p.Name)
			}
		}
	}
	for i, b := range h.Buffers {
		if b == nil {
			return fmt.Errorf("house: buffer %d is nil", i+1)
		}
	}
	for i, b := range h.Bridges {
		if b == nil {
			return fmt.Errorf("house: bridge %d is nil", i+1)
		}
	}
	return nil
}

func (b *reportBuilder) buffer(buffer *Buffer) error {
	var out rvalue.Conductance
	for _, s := range buffer.ToOutdoors {
		u := s.U
		switch {
		case s.Window != nil:
			var err error
			width, height := square(s.Area)
			if u, _, err = b.report.House.glazed(s.Window, width, height, window.Upright); err != nil {
				return fmt.Errorf("house: buffer %q: %w", buffer.Name, err)
			}
		case s.Assembly != nil:
			r, err := b.evaluate(s.Assembly, assembly.Open, buffer.Name)
			if err != nil {
				return err
			}
			u = r.Effective.U()
		}
		out += u.Times(s.Area)
	}
	for _, p := range buffer.ToGround {
		var e envelope.Part
		var layers rvalue.Resistance
		switch {
		case p.Assembly != nil:
			r, err := b.evaluate(p.Assembly, assembly.Soil, buffer.Name)
			if err != nil {
				return err
			}
			layers = r.Effective.R - film(r)
		case p.U > 0:
			layers = max(0, p.U.R()-groundFilms)
		}
		if err := b.buried(p, &e, layers); err != nil {
			return err
		}
		out += e.U.Times(p.Area)
	}
	b.report.Envelope.Buffers = append(b.report.Envelope.Buffers, envelope.Buffer{
		Name: buffer.Name, ToOutdoors: out, Volume: buffer.Volume, AirChange: buffer.AirChange,
	})
	return nil
}

// part computes a part with its openings.
func (b *reportBuilder) part(p *Part) error {
	e := envelope.Part{Name: p.Name, Area: p.Area, U: p.U}
	if p.Kind != Glazing {
		e.Kind = envelopeKind[p.Kind]
	}
	if p.Buffer != nil {
		e.Toward = p.Buffer.Name
	}
	offer, facts := target.Offer{}, b.facts(p)
	var layers rvalue.Resistance       // films left out
	var published rvalue.Transmittance // of steel studs; 0: none
	switch {
	case p.Window != nil:
		e.Kind = p.Window.Kind
		width, height := square(p.Area)
		u, whole, err := b.report.House.glazed(p.Window, width, height, p.tilt())
		if err != nil {
			return fmt.Errorf("house: part %q: %w", p.Name, err)
		}
		e.U, e.Detail = u, glassDetail(whole)
	case p.Assembly != nil && p.Kind != Slab:
		r, err := b.evaluate(p.Assembly, p.exposure(), p.Name)
		if err != nil {
			return err
		}
		e.U, e.Detail = r.Effective.U(), detail(r)
		layers = r.Effective.R - film(r)
		if r.Zone > 0 && r.Effective.Method == assembly.Numeric {
			published = r.Zone.U()
		}
		all := insulation(p.Assembly.Layers, r)
		offer.Cavity, offer.Continuous = offered(all)
		facts.InteriorMassInsulation = p.Kind == MassWall && insideOfMass(p.Assembly.Layers, all)
		facts.CavityFilled = p.Kind == Floor && filled(p.Assembly.Layers, r)
	case p.U > 0:
		layers = max(0, p.U.R()-groundFilms)
	}
	var err error
	switch {
	case p.Kind == Slab:
		err = b.slab(p, &e)
	case p.Toward == ToGround:
		err = b.underground(p, &e, layers, offer)
	default:
		if !listed(facts.Steel, p.Kind) {
			facts.Steel, offer = nil, target.Offer{}
		}
		offer.U = e.U
		if published > 0 {
			offer.U = published
		}
		e.Target, _, err = b.judge(p.Name, "", p.component(), facts, offer)
		if t := &e.Target; published > 0 && !t.Met && t.U > 0 {
			// The code goes by the published table: the resistance that is missing by it,
			// added to what the wall really resists, is what would do.
			t.U = (e.U.R() + t.U.R() - published.R()).U()
			t.Text += " (by the published factor for steel studs; the ranking goes by the numeric answer)"
		}
	}
	if err != nil {
		return err
	}
	for _, o := range p.Openings {
		width, height := o.sides()
		u, whole, err := b.report.House.glazed(o.Window, width, height, p.tilt())
		if err != nil {
			return fmt.Errorf("house: part %q: opening %q: %w", p.Name, o.Name, err)
		}
		t, _, err := b.judge(p.Name, o.Name, glazing(o.Window.Kind), target.Facts{}, target.Offer{U: u})
		if err != nil {
			return err
		}
		e.Openings = append(e.Openings, envelope.Opening{
			Name: o.Name, Kind: o.Window.Kind, Area: o.Area, Count: o.Count, U: u, Target: t, Detail: glassDetail(whole),
		})
	}
	b.report.Envelope.Parts = append(b.report.Envelope.Parts, e)
	return nil
}

// detail tells how heat divides inside an assembly: over its paths, if there
// is more than one, and the temperature drop over its layers.
func detail(r *assembly.Result) []envelope.Piece {
	var out []envelope.Piece
	if len(r.Paths) > 1 {
		for _, p := range r.Paths {
			out = append(out, envelope.Piece{Name: p.Name, Share: p.Heat, R: p.R})
		}
	}
	for _, l := range r.Layers {
		out = append(out, envelope.Piece{Name: l.Name, Layer: true, Share: l.Drop, R: l.R})
	}
	return out
}

// slab computes a slab by the heat that its edge loses, spread over its area.
func (b *reportBuilder) slab(p *Part, e *envelope.Part) error {
	f, err := envelope.SlabEdge(p.Edge.Reach, p.Edge.R)
	if err != nil {
		return fmt.Errorf("house: part %q: %w", p.Name, err)
	}
	spread := func(f rvalue.LinearTransmittance) rvalue.Transmittance { return f.Times(p.Perimeter).Over(p.Area) }
	e.U = spread(f)
	t, r, err := b.judge(p.Name, "", target.Slab, target.Facts{}, target.Offer{F: f, Continuous: p.Edge.R, SlabDepth: p.Edge.Depth})
	if t.U = 0; r.F > 0 && !r.NotRequired {
		t.U = spread(r.F)
	}
	e.Target = t
	return err
}

const (
	// groundFilms are the surface resistances of a basement wall with its
	// outer face in the air, 0.13 and 0.04 m²·K/W: ISO 13370, from memory.
	groundFilms = 0.17 * rvalue.RSI
	// basementWall is the thickness taken for the walls above a basement's
	// floor; it changes the answer by a few percent at most.
	basementWall = 1 * rvalue.Foot
)

// inSoil tells how the temperature drop divides between the layers of a part and the
// soil beyond, which is the rest. Nothing is known of the paths through both.
func inSoil(layers []envelope.Piece, u rvalue.Transmittance) []envelope.Piece {
	var out []envelope.Piece
	rest := u.R()
	for _, l := range layers {
		if l.Layer {
			l.Share = float64(l.R) / float64(u.R())
			out = append(out, l)
			rest -= l.R
		}
	}
	rest = max(rest, 0)
	return append(out, envelope.Piece{Name: "the soil", Layer: true, Share: float64(rest) / float64(u.R()), R: rest})
}

// underground computes a wall or floor toward the ground by ISO 13370. layers
// is what the part itself resists, films left out. What the code asks of a
// wall is asked of the wall itself; the target for the ranking is what the
// wall would lose through the same ground if it just met that.
func (b *reportBuilder) underground(p *Part, e *envelope.Part, layers rvalue.Resistance, offer target.Offer) error {
	if err := b.buried(p, e, layers); err != nil || p.Kind == BasementFloor {
		return err
	}
	offer.U = (layers + groundFilms).U()
	t, r, err := b.judge(p.Name, "", p.component(), target.Facts{}, offer)
	if err != nil {
		return err
	}
	if t.U > 0 {
		var met envelope.Part
		if err := b.buried(p, &met, r.R()-groundFilms); err != nil {
			return err
		}
		t.U = met.U
	}
	e.Target = t
	return nil
}

// buried computes what a part in the ground loses: its U toward outdoors, and how the
// drop divides between its layers and the soil.
func (b *reportBuilder) buried(p *Part, e *envelope.Part, layers rvalue.Resistance) error {
	g := envelope.GroundFloor{Area: p.Area, Perimeter: p.Perimeter, Wall: basementWall, Depth: p.Depth, Soil: b.report.House.Soil}
	var err error
	if p.Kind == BasementFloor {
		g.Floor = layers
		e.U, err = g.U()
	} else {
		g.Perimeter = rvalue.Length(float64(p.Area) / float64(p.Depth)) // of a wall as long as that
		g.Below = max(0, layers)
		e.U, err = g.WallU()
	}
	if err != nil {
		return fmt.Errorf("house: part %q: %w", p.Name, err)
	}
	e.Detail = inSoil(e.Detail, e.U)
	return nil
}

func (b *reportBuilder) leakage(l *Leakage) error {
	if l == nil {
		return nil
	}
	h := b.report.House
	e := &envelope.Leakage{Flow50: l.Flow50, Volume: l.Volume, Text: "blower door"}
	n := l.ACH50
	if l.Tightness != "" {
		var err error
		if n, err = envelope.Described(l.Tightness); err != nil {
			return err
		}
		e.Text = fmt.Sprintf("described as %s: %s", l.Tightness, envelope.TightnessSource)
	}
	if n > 0 {
		e.Flow50 = envelope.ACH50(n, l.Volume)
	}
	var err error
	if e.Divisor, err = envelope.Divide(0, l.Storeys, l.Shelter); err != nil {
		return err
	}
	e.Target50, _ = target.Tightness(h.Zone, h.Edition)
	b.report.Envelope.Leakage = e
	return nil
}
