package house

import (
	"fmt"

	"github.com/coldseam/coldseam/rvalue"
)

// remarks gathers what the reader should know, each thing once.
func (b *reportBuilder) remarks() {
	r := b.report
	seen := map[Remark]bool{}
	add := func(m Remark) {
		key := m
		if m.Code == "caution" { // once for a house is enough
			key.About, key.Place = "", Place{}
		}
		if !seen[key] {
			seen[key] = true
			r.Remarks = append(r.Remarks, m)
		}
	}
	b.zoneRemark(add)
	r.House.sizeRemarks(add)
	used := map[string]bool{}
	for _, e := range b.all {
		about := fmt.Sprintf("assembly %q", e.Assembly.Name)
		used[about] = true
		for _, m := range e.Result.Remarks {
			add(Remark{Code: m.Code, Text: m.Text, About: about, Place: e.Assembly.place(m.Offset)})
		}
	}
	for _, p := range r.House.Parts {
		if p.Window != nil {
			used[fmt.Sprintf("window %q", p.Window.Name)] = true
		}
		for _, o := range p.Openings {
			used[fmt.Sprintf("window %q", o.Window.Name)] = true
		}
	}
	for _, b := range r.House.Buffers {
		for _, s := range b.ToOutdoors {
			if s.Window != nil {
				used[fmt.Sprintf("window %q", s.Window.Name)] = true
			}
		}
	}
	for _, p := range r.House.Parts {
		if p.Toward == ToGround && p.Kind != Slab {
			add(Remark{Code: "ground", About: p.Name, Text: "R and U are toward outdoors, with what the soil resists on the way (ISO 13370)"})
		}
	}
	for _, m := range r.Ranking.Remarks { // on parts and on buffers that nothing faces
		add(Remark{Code: m.Code, Text: m.Text, About: m.Place})
	}
	for _, j := range r.Judgements {
		j.remarks(add)
	}
	if reason, low := r.House.Edition.LowConfidence(); low {
		add(Remark{Code: "edition", Text: reason, About: r.House.Edition.String()})
	}
	b.sectionRemarks(add)
	for _, w := range r.House.Windows {
		for _, m := range w.remarks {
			add(m)
		}
	}
	for _, about := range r.House.named() {
		if !used[about.About] {
			add(about)
		}
	}
	if n := len(r.Defaults); n > 0 {
		add(Remark{Code: "defaults", Text: fmt.Sprintf("%d values were not given and have been filled in; what the result says rests on them too", n)})
	}
}

// remarks tells which footnotes of the code have changed what is asked of a part, and
// of one that is behind which others could.
func (j *Judgement) remarks(add func(Remark)) {
	about := j.Part
	if j.Opening != "" {
		about = j.Opening
	}
	for _, n := range j.Requirement.Notes {
		switch {
		case n.Applied:
			add(Remark{Code: "code-note", About: about, Text: fmt.Sprintf("by a footnote of the code, %s (%s)", n.Text, n.Source)})
		case !j.Verdict.Met && n.Eases():
			add(Remark{Code: "code-exception", About: about, Text: fmt.Sprintf("%s (%s)", n.Text, n.Source)})
		}
	}
}

// Bounds beyond which sizes of one house belie each other: our own judgement.
const (
	highRooms  = 20 * rvalue.Foot // volume over floor
	lowRooms   = 6 * rvalue.Foot
	manyLids   = 2.0 // ceilings and roofs over floor
	fewestLids = 0.1
)

// sizeRemarks tells when the volume of the rooms, or their ceilings, do not go with
// their floor: a zero too many, or feet for metres.
func (h *House) sizeRemarks(add func(Remark)) {
	floor := h.Living.Floor
	if floor == 0 {
		return
	}
	if h.Leakage != nil && h.Leakage.Volume > 0 {
		if height := rvalue.Length(float64(h.Leakage.Volume) / float64(floor)); height > highRooms || height < lowRooms {
			add(Remark{Code: "sizes", About: "leakage", Text: fmt.Sprintf("%s of rooms over %s of floor make them %s high; check both", h.Leakage.Volume.In(rvalue.IP), floor.In(rvalue.IP), height.In(rvalue.IP))})
		}
	}
	var lids rvalue.Area
	for _, p := range h.Parts {
		if p.Kind == Ceiling || p.Kind == Roof {
			lids += p.Area
		}
	}
	if lids > 0 && (float64(lids) > manyLids*float64(floor) || float64(lids) < fewestLids*float64(floor)) {
		add(Remark{Code: "sizes", About: "ceilings", Text: fmt.Sprintf("ceilings and roofs of %s over a heated floor of %s; check both", lids.In(rvalue.IP), floor.In(rvalue.IP))})
	}
}

// zoneRemark tells when the zone that the file gives is not that of its place.
func (b *reportBuilder) zoneRemark(add func(Remark)) {
	h := b.report.House
	z, county, err := zoneAt(h.Place, h.Edition)
	if h.Place == "" || err != nil || z.Number == h.Zone.Number && (z.Moisture == h.Zone.Moisture || h.Zone.Moisture == 0) {
		return
	}
	add(Remark{
		Code: "zone", About: "zone",
		Text: fmt.Sprintf("the file says zone %v, %v lists %s in zone %v; the file's own is used", h.Zone, h.Edition, county, z),
	})
}

// named lists what the house describes by name, as remarks that it is not used.
func (h *House) named() []Remark {
	var out []Remark
	add := func(what, name string, p Place) {
		out = append(out, Remark{Code: "unused", Text: "no part is made of this", About: fmt.Sprintf("%s %q", what, name), Place: p})
	}
	for _, a := range h.Assemblies {
		add("assembly", a.Name, a.at.start())
	}
	for _, w := range h.Windows {
		add("window", w.Name, w.at.start())
	}
	return out
}

// place returns where in the file a byte of the layer text stands.
func (a *Assembly) place(offset int) Place {
	switch {
	case a.at.src == nil:
		return Place{}
	case offset < 0:
		return a.at.src.place(a.layers.at)
	}
	return a.at.src.place(a.layers.offset(offset))
}
