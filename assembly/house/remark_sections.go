package house

import (
	"fmt"
	"slices"
	"strings"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/rvalue"
)

// sectionRemarks says what the psi of bridges rest on, what several share once.
func (b *reportBuilder) sectionRemarks(add func(Remark)) {
	measured := map[*Drawing]*Bridge{} // the first that goes by each section
	var usual []string                 // what our own sections rest on alike
	for _, br := range b.report.House.Bridges {
		dr := br.Section
		if dr == nil {
			continue
		}
		add(br.remark())
		for _, m := range br.solved {
			add(Remark{Code: m.Code, Text: m.Text, About: fmt.Sprintf("section %q", dr.Name)})
		}
		if first := measured[dr]; first == nil {
			measured[dr] = br
		} else if first.External != br.External {
			add(Remark{
				Code: "dimensions", About: br.Name, Place: br.at.start(),
				Text: fmt.Sprintf("section %q counts by %s dimensions here and by %s ones at bridge %q; the areas of a house are taken one way, and psi goes with them", dr.Name, br.dimensions(), first.dimensions(), first.Name),
			})
		}
		for _, text := range dr.usual {
			if !slices.Contains(usual, text) {
				usual = append(usual, text)
			}
		}
	}
	if len(usual) > 0 {
		add(Remark{Code: "section", Text: strings.Join(usual, "; "), About: "sections of our own"})
	}
	b.framedTwice(add)
}

// dimensions is by which of its section's dimensions a bridge goes.
func (b *Bridge) dimensions() string {
	if b.External {
		return dimensions[1]
	}
	return dimensions[0]
}

// remark tells where a bridge's psi was computed, and what it lies between.
func (b *Bridge) remark() Remark {
	text := fmt.Sprintf("psi is %s by %s dimensions, computed from section %q", rvalue.Both(b.Psi), b.dimensions(), b.Section.Name)
	if b.Bracket != nil {
		half := (b.Bracket.High - b.Bracket.Low) / 2
		text += fmt.Sprintf(", within ±%.1g Btu/(h·ft·°F) (%.1g W/(m·K)) for what is drawn", half.IP(), half.SI())
	}
	if b.Section.Notes != "" {
		text += "; " + b.Section.Notes
	}
	return Remark{Code: "section", Text: text, About: b.Name, Place: b.at.start()}
}

// muchFraming is how much more framing than studs alone is worth a remark, of a wall's area.
const muchFraming = 0.02

// framedTwice remarks on framing that the walls' U has and psi of our own sections too:
// plates, posts and headers.
func (b *reportBuilder) framedTwice(add func(Remark)) {
	var bridges []string
	studs := 0.0
	for _, br := range b.report.House.Bridges {
		if br.Section != nil && br.Section.studs > 0 {
			studs = br.Section.studs
			bridges = append(bridges, br.Name)
		}
	}
	if len(bridges) == 0 {
		return
	}
	type wall struct {
		share float64
		twice rvalue.Conductance
	}
	var order []*Evaluated
	walls := map[*Evaluated]*wall{}
	for _, p := range b.report.House.Parts {
		if p.Kind != Wall || p.Toward != ToOutdoors || p.Assembly == nil {
			continue
		}
		i := slices.IndexFunc(b.all, func(e *Evaluated) bool { return e.Assembly == p.Assembly && e.Exposure == p.exposure() })
		if i < 0 {
			continue
		}
		e := b.all[i]
		share, more, ok := framingBeyond(e.Result, studs)
		if !ok || share-studs < muchFraming {
			continue
		}
		area := p.Area
		for _, o := range p.Openings {
			area -= rvalue.Area(float64(o.Area) * float64(o.Count))
		}
		w := walls[e]
		if w == nil {
			w = &wall{share: share}
			walls[e] = w
			order = append(order, e)
		}
		w.twice += more.Times(area)
	}
	for _, e := range order {
		w := walls[e]
		add(Remark{
			Code: "framing-twice", About: fmt.Sprintf("assembly %q", e.Assembly.Name), Place: e.Assembly.place(-1),
			Text: fmt.Sprintf("framing takes %.0f %% of these walls, studs alone %.0f %%; plates, posts and headers stand in their U and again in psi of %s: up to about %s is counted twice; write such as framing %.0f %% at the members to count it once",
				100*w.share, 100*studs, list(quotedAll(bridges)), rvalue.Both(w.twice), 100*studs),
		})
	}
}

// framingBeyond returns the share of members in an assembly with one framed layer, and
// what the U by the parallel path would lose if it were that of studs alone.
func framingBeyond(r *assembly.Result, studs float64) (share float64, more rvalue.Transmittance, ok bool) {
	if r.Zone > 0 { // steel: our sections are of wood
		return 0, 0, false
	}
	framed := -1
	for i := range r.Layers {
		if len(r.Layers[i].Shares) < 2 {
			continue
		}
		if framed >= 0 {
			return 0, 0, false
		}
		framed = i
	}
	if framed < 0 {
		return 0, 0, false
	}
	shares := r.Layers[framed].Shares
	for _, s := range shares {
		if s.Member {
			share += s.Fraction
		}
	}
	if share <= studs || share >= 1 {
		return share, 0, true
	}
	layers := slices.Clone(r.Assembly.Layers)
	layers[framed].Shares = slices.Clone(layers[framed].Shares)
	for i, s := range shares {
		factor := (1 - studs) / (1 - share)
		if s.Member {
			factor = studs / share
		}
		layers[framed].Shares[i].Fraction *= factor
	}
	thin := assembly.Assembly{Layers: layers}
	more = r.Assembly.ParallelPath().U() - thin.ParallelPath().U()
	return share, more, true
}
