package target

import (
	"fmt"

	"github.com/coldseam/coldseam/rvalue"
)

// Where the footnote rules were seen.
const (
	fromEverett     = "City of Everett sheet on the state code with the same text"
	fromPNNLDrawing = "PNNL Building America Solution Center, drawing 7.7 for zones 7 and 8"
	fromInspector   = "professionalinspector.com, \"2009 IECC\""
	fromWAC         = "Washington Administrative Code 51-11R-40211, adoption of the 2021 edition"
)

// note appends one note.
func (r *Requirement) note(applied bool, code, source string, m Mark, format string, args ...any) {
	r.Notes = append(r.Notes, Note{Code: code, Text: fmt.Sprintf(format, args...), Applied: applied, Source: source, Mark: m})
}

// general adds the notes that hold for every component, and weakens the marks
// that zone 0 and the 2024 edition do not deserve.
func (r *Requirement) general() {
	if r.Zone.Number == 0 {
		r.note(true, "zone-0", "residential tables", FromMemory, "zone 0 reads the row of zone 1")
		r.Source += "; that zone 0 reads the row of zone 1 is from memory"
		for _, m := range []*Mark{&r.Marks.U, &r.Marks.R, &r.Marks.SHGC, &r.Marks.Depth} {
			if *m == Seen {
				*m = FromMemory
			}
		}
	}
	if r.Zone.Number == 4 && r.Zone.Moisture == 0 {
		r.note(false, "marine-unknown", r.Edition.rTitle(), Seen,
			"zone 4 was given without a moisture letter and is taken as not marine; marine 4 (4C) reads the row of zone 5")
	}
	if reason, low := r.Edition.LowConfidence(); low {
		r.note(false, "low-confidence", r.Edition.String(), LowConfidence, "%s", reason)
		for i := range r.Notes {
			r.Notes[i].Mark = LowConfidence // a rule seen in an older edition may have changed
		}
	}
}

// opaqueNotes applies the footnotes of ceilings, walls and floors.
func (r *Requirement) opaqueNotes(t *rTable, f Facts) error {
	steel, err := r.steel(f)
	if err != nil {
		return err
	}
	switch r.Component {
	case Ceiling:
		r.raisedHeel(f, steel)
	case CathedralCeiling:
		r.noAttic(f, steel)
	case Wall:
		r.wallNotes()
	case MassWall:
		row := t.rows[r.Zone.band()]
		r.note(f.InteriorMassInsulation, "mass-interior", r.Edition.rTitle()+", note i; "+pageBoise, Seen,
			"a mass wall needs R-%g, but R-%g when more than half of its insulation is on the inside", row.massOut, row.massIn)
	case Floor:
		r.floorFill(t, f, steel)
	case BasementWall, CrawlWall:
		r.belowGrade()
	}
	if carried(r.Edition, r.Component) {
		r.note(true, "carried-over", r.Edition.uTitle()+" of 2021", LowConfidence,
			"no 2024 figure was found; the 2021 one stands in")
	}
	return nil
}

// steel replaces the options by those for steel framing. It returns whether it did.
func (r *Requirement) steel(f Facts) (bool, error) {
	const source = "Table R402.2.6 (402.2.5 in 2009)"
	if f.Steel == nil || r.NotRequired {
		return false, nil
	}
	use, ok, err := f.Steel.use(r.Component)
	if err != nil || !ok {
		return false, err
	}
	wood := r.Options
	r.Source += "; steel-frame equivalents of " + source + ", from memory"
	r.Options, r.Marks.R = steelOptions(wood, use, f.Steel.Nominal), max(r.Marks.R, FromMemory)
	if len(r.Options) == 0 {
		r.note(true, "steel-frame", source, FromMemory,
			"the steel-frame table lists nothing for %s; only the U-factor can show that the part meets the code", list(wood))
		return true, nil
	}
	r.note(true, "steel-frame", source, FromMemory, "steel framing: the options stand for %s in wood", list(wood))
	return true, nil
}

// raisedHeel applies R402.2.1: a lower R where the insulation keeps its full
// height over the top plate. It holds for the R-value path only.
func (r *Requirement) raisedHeel(f Facts, steel bool) {
	for _, step := range []struct {
		want, enough float64
		from, to     Edition
		source       string
	}{
		{38, 30, Edition2009, Edition2024, fromEverett},
		{49, 38, Edition2009, Edition2024, fromEverett},
		{60, 49, Edition2021, Edition2021, fromPNNLDrawing},
	} {
		if steel || r.Edition < step.from || r.Edition > step.to || len(r.Options) != 1 || !r.Options[0].is(pair{step.want, 0}) {
			continue
		}
		r.note(f.FullHeightOverPlate, "raised-heel", "R402.2.1; "+step.source, Seen,
			"R-%g does for R-%g where it lies uncompressed at full height over the top plate at the eaves (R-value path only)", step.enough, step.want)
		if f.FullHeightOverPlate {
			r.Options = []Option{totalR(step.enough)}
		}
		return
	}
}

// Limits of the allowance for ceilings without attic, R402.2.2.
const (
	noAtticR     = 30 // h·ft²·°F/Btu
	noAtticArea  = 500 * rvalue.SquareFoot
	noAtticShare = 0.20 // of all insulated ceiling, from 2012 on
)

// noAttic applies R402.2.2: R-30 is allowed on a limited area without attic.
func (r *Requirement) noAttic(f Facts, steel bool) {
	if steel || len(r.Options) != 1 || r.Options[0].Cavity <= noAtticR*rvalue.RIP+labelTolerance {
		return
	}
	limit, words := noAtticArea, "500 ft²"
	known := f.NoAtticArea > 0
	if r.Edition > Edition2009 {
		words += " or 20 % of the insulated ceiling, the lesser"
		known = known && f.CeilingArea > 0
		limit = min(limit, noAtticShare*f.CeilingArea)
	}
	applied := known && f.NoAtticArea <= limit*(1+equalSlack)
	r.note(applied, "no-attic", "R402.2.2; 2009 wording seen in Wisconsin 322.32", FromMemory,
		"R-%d is allowed in a ceiling without attic where there is no room for more, on at most %s (R-value path only)", noAtticR, words)
	if applied {
		r.Options = append(r.Options, totalR(noAtticR))
	}
}

// wallNotes tells what a reader of another printing may have seen.
func (r *Requirement) wallNotes() {
	b := r.Zone.band()
	if r.Edition == Edition2021 && b >= band4 {
		r.note(false, "first-printing", "GWC Magazine, \"Addendum to Continuous Insulation Series\"", Seen,
			"the first printing of 2021 lacked the R-30 option; it came by erratum")
	}
	if r.Edition == Edition2012 && b >= band3 {
		r.note(false, "sheathing-40", "note h of 2012", FromMemory,
			"where structural sheathing covers 40 %% of the exterior or less, the continuous R may be up to R-3 less there")
	}
}

// floorFill applies note g: insulation that fills the cavity, R-19 at least.
func (r *Requirement) floorFill(t *rTable, f Facts, steel bool) {
	const least = 19 // h·ft²·°F/Btu
	if t.fill && !steel && r.Zone.band() >= band5 {
		r.note(f.CavityFilled, "fills-cavity", r.Edition.rTitle()+", note g; "+pageBoise, Seen,
			"insulation that fills the floor cavity will do, if it is at least R-%d (R-value path only)", least)
		if f.CavityFilled {
			r.Options = append(r.Options, totalR(least))
		}
	}
	if r.Edition == Edition2009 && r.Zone.band() == band78 {
		r.note(false, "irc-differs", pnnl, Seen, "the residential code (IRC) of 2009 has R-30 here")
	}
}

// belowGrade applies note f: nothing is asked of basement walls in the
// warm-humid part of zone 3.
func (r *Requirement) belowGrade() {
	const rule = "basement-wall insulation is not required in warm-humid counties of zone 3"
	b := r.Zone.band()
	switch {
	case r.Component == BasementWall && b == band3:
		r.note(r.Zone.WarmHumid, "warm-humid", r.Edition.rTitle()+", note f", FromMemory, rule)
		if r.Zone.WarmHumid {
			r.Options, r.NotRequired = nil, true
			r.U = uWarmHumid * rvalue.UIP
		}
	case r.Component == CrawlWall && b == band3 && r.Edition == Edition2021:
		// The page prints the letter f in this cell too, but the note speaks
		// of basement walls; the stricter reading is kept.
		r.note(false, "warm-humid", r.Edition.rTitle()+", note f", FromMemory,
			rule+"; the 2021 table sets the same letter beside crawl-space walls, ask the code official")
	case r.Component == BasementWall && r.Edition == Edition2009 && b == band78:
		r.note(false, "irc-differs", pnnl, Seen, "the residential code (IRC) of 2009 has R-10 continuous or R-13 here")
	}
}

// fenestrationNotes applies the footnotes of windows, skylights and doors.
func (r *Requirement) fenestrationNotes(f Facts) {
	b := r.Zone.band()
	if r.Component == Skylight {
		if b <= band3 && r.SHGC != 0 && r.SHGC < skylightSHGC {
			r.note(true, "skylight-shgc", r.Edition.rTitle()+", note b; "+pagePhila, Seen,
				"a skylight in zones 1 to 3 with SHGC %.2f or less is exempt from the column's %.2f", skylightSHGC, r.SHGC)
			r.SHGC, r.Marks.SHGC = skylightSHGC, Seen
			r.Source += "; SHGC of skylights seen on " + pagePhila
		}
	} else {
		r.verticalNotes(f, b)
	}
	if r.Edition == Edition2024 {
		r.note(false, "shgc-unknown", r.Edition.String(), LowConfidence, "no 2024 figure for solar heat gain was found; the edition may have one")
	}
}

// verticalNotes applies what holds for windows and doors but not skylights.
func (r *Requirement) verticalNotes(f Facts, b band) {
	const exempt = "R402.3.3 and R402.3.4; " + fromInspector
	if r.NotRequired {
		r.note(false, "not-required", r.Edition.rTitle()+" and "+r.Edition.uTitle(), r.Marks.U,
			"the R-value table asks nothing of windows here; %.2f is the figure of the U-factor table", r.U.IP())
	}
	if r.Edition == Edition2021 && b >= band5 {
		high := f.Altitude > highAltitude || f.WindborneDebris
		r.note(high, "high-or-windborne", fromWAC, Seen,
			"U-factor %.2f is enough above 4000 ft or where openings must be protected from windborne debris", highU)
		if high {
			r.U, r.Marks.U = highU*rvalue.UIP, Seen
			r.Source += "; " + fmt.Sprintf("U-factor %.2f seen on %s", highU, fromWAC)
		}
	}
	if r.Edition == Edition2009 && (b == band2 || b == band3) {
		u := impactU2
		if b == band3 {
			u = impactU3
		}
		r.note(f.ImpactRated, "impact-rated", "footnote of the 2009 table", FromMemory,
			"impact-rated fenestration may have a U-factor of %.2f", u)
		if f.ImpactRated {
			r.U, r.Marks.U = rvalue.Transmittance(u)*rvalue.UIP, FromMemory
		}
	}
	if r.Component == Door {
		r.note(true, "door-as-fenestration", "definition of fenestration", FromMemory,
			"the code counts doors, opaque ones too, as fenestration; the solar limit concerns glazed doors only")
		r.note(false, "exempt-door", exempt, Seen, "one side-hinged opaque door of up to 24 ft² is exempt")
		return
	}
	r.note(false, "exempt-glazing", exempt, Seen, "up to 15 ft² of glazing is exempt")
}

// list joins options: "R-20 or R-13+5ci".
func list(os []Option) string {
	s := ""
	for i, o := range os {
		if i > 0 {
			s += " or "
		}
		s += o.String()
	}
	return s
}
