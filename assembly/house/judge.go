package house

import (
	"fmt"
	"slices"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/assembly/envelope"
	"github.com/coldseam/coldseam/climate/target"
	"github.com/coldseam/coldseam/rvalue"
)

// Judgement is what the energy code asks of a part or an opening, and how far
// that is met.
type Judgement struct {
	Part        string
	Opening     string // "" for the part itself
	Requirement target.Requirement
	Verdict     target.Verdict
}

var components = [...]target.Component{
	Wall: target.Wall, MassWall: target.MassWall, Ceiling: target.Ceiling, Roof: target.CathedralCeiling, Floor: target.Floor,
	BasementWall: target.BasementWall, CrawlWall: target.CrawlWall, Slab: target.Slab,
}

// component returns the code's word for a part, 0 where it asks nothing: of a
// basement's floor.
func (p *Part) component() target.Component {
	switch {
	case p.Kind == Glazing:
		return glazing(p.Window.Kind)
	case int(p.Kind) < len(components):
		return components[p.Kind]
	}
	return 0
}

func glazing(k envelope.Kind) target.Component {
	switch k {
	case envelope.Skylight:
		return target.Skylight
	case envelope.Door:
		return target.Door
	}
	return target.Window
}

// judge holds an offer against what the code asks of a component and returns
// the target for the ranking.
func (b *reportBuilder) judge(part, opening string, c target.Component, f target.Facts, o target.Offer) (envelope.Target, target.Requirement, error) {
	if c == 0 {
		return envelope.Target{}, target.Requirement{}, nil
	}
	h := b.report.House
	f.Altitude = h.Altitude
	r, err := target.For(h.Zone, h.Edition, c, f)
	if err != nil {
		return envelope.Target{}, r, fmt.Errorf("house: part %q: %w", part, err)
	}
	v := r.Judge(o)
	b.report.Judgements = append(b.report.Judgements, Judgement{Part: part, Opening: opening, Requirement: r, Verdict: v})
	t := envelope.Target{U: r.U, Met: v.Met, Text: fmt.Sprintf("%v, zone %v: %s", h.Edition, h.Zone, v.Why)}
	switch {
	case r.NotRequired:
		t.U = 0
	case !v.Met && eased(r) && o.U > 0:
		// The footnote asks less insulation than the U-factor table: to meet it will
		// do. What is missing added right across is the least that the part needs.
		t.U = max(t.U, (o.U.R() + v.Lacking.Cavity + v.Lacking.Continuous).U())
	}
	return t, r, nil
}

// eased reports whether a footnote that is applied allows less insulation than the
// U-factor of the table stands for.
func eased(r target.Requirement) bool {
	return slices.ContainsFunc(r.Notes, func(n target.Note) bool {
		return n.Applied && (n.Code == "no-attic" || n.Code == "fills-cavity")
	})
}

// facts gathers what the code's footnotes ask about a part.
func (b *reportBuilder) facts(p *Part) target.Facts {
	var f target.Facts
	for _, other := range b.report.House.Parts {
		if other.Kind == Ceiling || other.Kind == Roof {
			f.CeilingArea += other.Area
		}
		if other.Kind == Roof {
			f.NoAtticArea += other.Area
		}
	}
	if p.Assembly != nil {
		f.Steel = steel(p.Assembly.Layers)
	}
	return f
}

// steelSpacings are those for which the code lists R-values of steel-framed
// walls.
var steelSpacings = [...]rvalue.Length{16 * rvalue.Inch, 24 * rvalue.Inch}

// listed reports whether the code's R-values hold for an assembly as it is
// framed; if not it is judged by its U-factor alone.
func listed(s *target.Steel, k Kind) bool {
	if s == nil || k == Floor || k == Ceiling || k == Roof {
		return true
	}
	for _, at := range steelSpacings {
		if d := s.Spacing - at; k == Wall && d <= rvalue.Millimetre && -d <= rvalue.Millimetre {
			return true
		}
	}
	return false
}

// steel describes the steel members of an assembly, nil if there are none.
func steel(s *assembly.Spec) *target.Steel {
	for _, l := range s.Layers {
		for _, m := range l.Members {
			if m.Steel > 0 {
				return &target.Steel{Spacing: m.Spacing}
			}
		}
	}
	return nil
}
