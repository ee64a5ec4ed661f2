package target

import (
	"fmt"
	"iter"
	"math"

	"github.com/coldseam/coldseam/rvalue"
)

// Facts are what the footnotes of the code ask about a part. The zero Facts is
// ordinary wood-frame work without any exception claimed.
type Facts struct {
	HeatedSlab             bool          // heating pipes or wires in the slab
	FullHeightOverPlate    bool          // attic insulation uncompressed at full height over the top plate (raised heel)
	InteriorMassInsulation bool          // more than half of a mass wall's insulation is on its inside
	CavityFilled           bool          // the floor's insulation fills its cavity
	WindborneDebris        bool          // windborne-debris region where openings must be protected
	ImpactRated            bool          // impact-rated fenestration (2009)
	Altitude               rvalue.Length // of the site, 0 unknown or sea level
	NoAtticArea            rvalue.Area   // all insulated ceiling without an attic in the house, 0 unknown
	CeilingArea            rvalue.Area   // all insulated ceiling in the house, 0 unknown
	Steel                  *Steel        // cold-formed steel framing, nil for wood
}

// Marks says how each figure of a requirement was got.
type Marks struct {
	U, R, SHGC, Depth, F Mark
}

// Requirement is what an edition asks of a component in a zone.
type Requirement struct {
	Component Component
	Zone      Zone
	Edition   Edition

	// U is the largest assembly U-factor, 0 when the edition gives none.
	U rvalue.Transmittance
	// Options is the R-value path: any one suffices. Empty for fenestration,
	// and where the R-value table asks nothing.
	Options []Option
	// NotRequired is set where the R-value table asks nothing (R-0 or NR). U
	// may still hold what the U-factor table reckons for such a part.
	NotRequired bool
	// SHGC is the largest solar heat gain coefficient of glazed products, 0 none.
	SHGC float64
	// SlabDepth is how far slab-edge insulation reaches, 0 for other parts.
	SlabDepth rvalue.Length
	// F is the slab-edge F-factor that we read the R and depth as, 0 none.
	// It is not a limit of the code.
	F rvalue.LinearTransmittance

	Marks  Marks
	Notes  []Note // footnotes that change a value, applied or applicable
	Source string // standard, table, how it was seen
}

// R returns the assembly resistance 1/U that the U-factor asks for, 0 when the
// requirement has no U-factor.
func (r Requirement) R() rvalue.Resistance {
	if r.U == 0 {
		return 0
	}
	return r.U.R()
}

// For returns what edition e asks of component c in zone z, with the footnotes
// that the facts call for applied. It refuses a zone, edition or component that
// does not exist, and areas or altitudes that are not finite or, for areas,
// negative.
func For(z Zone, e Edition, c Component, f Facts) (Requirement, error) {
	if err := check(z, e, c, f); err != nil {
		return Requirement{}, fmt.Errorf("target: %w", err)
	}
	r := Requirement{Component: c, Zone: z, Edition: e}
	var err error
	switch {
	case c.fenestration():
		r.fenestration(f)
	case c == Slab:
		r.slab(f)
	default:
		err = r.opaque(f)
	}
	if err != nil {
		return Requirement{}, fmt.Errorf("target: %w", err)
	}
	r.general()
	return r, nil
}

// All yields the requirement of every component in zone z by edition e, as [For]
// does. A zone, edition or fact that cannot be yields one error.
func All(z Zone, e Edition, f Facts) iter.Seq2[Requirement, error] {
	return func(yield func(Requirement, error) bool) {
		for c := Ceiling; c <= Door; c++ {
			r, err := For(z, e, c, f)
			if !yield(r, err) || err != nil {
				return
			}
		}
	}
}

func check(z Zone, e Edition, c Component, f Facts) error {
	if err := z.check(); err != nil {
		return fmt.Errorf("climate zone: %w", err)
	}
	if err := e.check(); err != nil {
		return err
	}
	if err := c.check(); err != nil {
		return err
	}
	if !finite(float64(f.Altitude)) {
		return fmt.Errorf("altitude \"%v\" is not a height", float64(f.Altitude))
	}
	for _, a := range []rvalue.Area{f.NoAtticArea, f.CeilingArea} {
		if !finite(float64(a)) || a < 0 {
			return fmt.Errorf("ceiling area \"%v\" is not an area", float64(a))
		}
	}
	if f.CeilingArea > 0 && f.NoAtticArea > f.CeilingArea {
		return fmt.Errorf("ceiling without attic \"%.4g ft2\" is larger than all ceilings, \"%.4g ft2\"",
			f.NoAtticArea.IP(), f.CeilingArea.IP())
	}
	return nil
}

func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }

// opaque fills walls, ceilings and floors.
func (r *Requirement) opaque(f Facts) error {
	t, b, c := rTableOf(r.Edition), r.Zone.band(), r.Component
	inside := c == MassWall && f.InteriorMassInsulation
	r.Options, r.Marks.R = t.rows[b].cell(c, inside), t.mark
	u, m := uFactor(r.Edition, c, inside, b)
	r.U, r.Marks.U = rvalue.Transmittance(u)*rvalue.UIP, m
	r.NotRequired = len(r.Options) == 0
	r.Source = r.opaqueSource(t)
	return r.opaqueNotes(t, f)
}

// fenestration fills windows, skylights and doors.
func (r *Requirement) fenestration(f Facts) {
	b, lines := r.Zone.band(), windowU[:]
	if r.Component == Skylight {
		lines = skylightU[:]
	}
	u, m, uPage := fenLine(lines, r.Edition, b)
	r.U, r.Marks.U = rvalue.Transmittance(u)*rvalue.UIP, m
	var solarPage string
	r.SHGC, r.Marks.SHGC, solarPage = fenLine(shgc[:], r.Edition, b)
	if r.Edition == Edition2021 && r.Zone.Number == 4 && r.Zone.Moisture == 'C' {
		r.SHGC, r.Marks.SHGC = 0, 0 // the 0.40 of this row binds zone 5 only
	}
	r.NotRequired = r.Component != Skylight && notAsked(r.Edition, b)
	r.Source = fmt.Sprintf("%v: U-factor of the fenestration columns, %s, %s", r.Edition, r.Edition.rTitle(), m.at(uPage))
	if r.SHGC != 0 {
		r.Source += fmt.Sprintf("; SHGC of the same table, %s", r.Marks.SHGC.at(solarPage))
	}
	r.fenestrationNotes(f)
}

// slab fills the slab edge.
func (r *Requirement) slab(f Facts) {
	t, b := rTableOf(r.Edition), r.Zone.band()
	row := t.rows[b]
	r.Options, r.Marks.R = row.cell(Slab, false), t.mark
	r.SlabDepth, r.Marks.Depth = rvalue.Length(row.depth)*rvalue.Foot, t.depthMark
	r.slabNotes(row, f)
	r.NotRequired = len(r.Options) == 0
	if r.NotRequired {
		r.Marks.Depth = 0
	}
	r.Source = r.opaqueSource(t)
}

// opaqueSource words where the figures of an opaque part come from.
func (r *Requirement) opaqueSource(t *rTable) string {
	s := r.Edition.String() + ": R-values of " + r.Edition.rTitle() + ", " + t.mark.at(t.page)
	if t.mark != Seen {
		s += ", " + t.page
	}
	if r.U != 0 {
		s += "; U-factor of " + r.Edition.uTitle() + ", " + r.Marks.U.at(pageCeiling2021)
	}
	if r.SlabDepth != 0 && r.Marks.Depth != t.mark {
		s += "; depth " + r.Marks.Depth.String()
	}
	if r.F != 0 {
		s += "; F-factor " + r.Marks.F.String() + " of " + washingtonF
	}
	return s
}
