package house

import (
	"fmt"
	"math"

	"github.com/coldseam/coldseam/assembly"
	solver "github.com/coldseam/coldseam/assembly/section"
	"github.com/coldseam/coldseam/rvalue"
)

// Bounds of the sections in a house file, so that none keeps the program busy for
// long.
const (
	maxSections     = 20
	sectionUnknowns = 200_000 // of one that a bridge rests on, a second's work
)

// sections reads the [section.NAME] tables.
func (d *decoder) sections(s *section) {
	for n, e := range s.named("section") {
		if n == maxSections {
			d.fail(e.at, "section", "more than %d; draw the others in files of their own, and write their psi here", maxSections)
			break
		}
		dr := &Drawing{Name: e.key, Units: d.h.Units, Films: d.h.Films}
		d.h.Sections = append(d.h.Sections, dr)
		t := &section{d: d, t: e.value.table, where: fmt.Sprintf("section %q", e.key)}
		before := len(d.errs)
		dr.Notes, _ = t.text("notes")
		d.drawn(t, dr)
		t.done()
		dr.sound = len(d.errs) == before && !t.t.partial
	}
}

// dimensions are the two ways to measure flanks, as a bridge names them.
var dimensions = []string{"internal", "external"}

// bridges reads the [[bridge]] tables.
func (d *decoder) bridges(s *section) {
	seen := map[string]int{}
	for i, t := range s.tables("bridge") {
		b, name := d.item(t, "bridge", i, seen)
		r := &Bridge{Name: name, at: place{d.src, b.t}}
		d.h.Bridges = append(d.h.Bridges, r)
		r.Psi, _ = quantity(b, "psi", "0.3 W/(m·K)", somePsi)
		if text, ok := b.text("section"); ok {
			r.Section = d.sectionNamed(b, text)
		}
		if !b.has("psi") && !b.has("section") {
			b.missing("psi", `its heat per length is missing; write such as psi = "0.3 W/(m·K)" or "0.17 Btu/(h·ft·°F)", or a section that gives it`)
		} else {
			b.oneOf("its heat per length", []string{"psi", "section"})
		}
		d.measured(b, r)
		r.Length, _ = quantity(b, "length", "24 ft", rvalue.ParseLength)
		b.missing("length", `its length is missing; write such as length = "24 ft"`)
		b.done()
	}
}

// sectionNamed finds one of the file's sections, or one of the catalogue.
func (d *decoder) sectionNamed(s *section, written string) *Drawing {
	var own []string
	for _, dr := range d.h.Sections {
		if dr.Name == written {
			return dr
		}
		own = append(own, dr.Name)
	}
	if dr := Junction(written); dr != nil {
		return dr
	}
	ours := Junctions()
	msg := fmt.Sprintf("there is no [section.%s], and none of our own of that name", join([]name{{written, 0}}))
	if near := nearest(written, append(own, ours...)); near != "" {
		msg += fmt.Sprintf("; did you mean %q?", near)
	} else {
		msg += "; ours are " + list(quotedAll(ours))
	}
	s.fail("section", "%s", msg)
	return nil
}

func quotedAll(words []string) []string {
	out := make([]string, len(words))
	for i, w := range words {
		out[i] = quoted(w)
	}
	return out
}

// measured reads by which of a section's dimensions a bridge goes.
func (d *decoder) measured(s *section, b *Bridge) {
	i, given := s.choice("dimensions", dimensions)
	if b.Section == nil {
		if given && !s.has("section") {
			s.fail("dimensions", "this goes with a section; leave it out")
		}
		return
	}
	if !b.Section.sound {
		return
	}
	has := [2]bool{len(b.Section.Flanks) > 0, len(b.Section.Flanks) > 0}
	for _, f := range b.Section.Flanks {
		has[0], has[1] = has[0] && f.Internal > 0, has[1] && f.External > 0
	}
	switch {
	case !has[0] && !has[1]:
		s.fail("section", "section %q says nothing of its flanks, or not all by the same dimensions, so that it gives no psi; write a [[flank]] for each plain part in it", b.Section.Name)
		b.Section = nil
	case given && !has[i]:
		s.fail("dimensions", "section %q has its flanks by %s dimensions only", b.Section.Name, dimensions[1-i])
	case given:
		b.External = i == 1
	case !s.has("dimensions") && has[0] && has[1]:
		s.missing("dimensions", `section %q has a psi by internal and another by external dimensions; write dimensions = "internal" if the areas of the file are the rooms' own, else "external"`, b.Section.Name)
	default:
		b.External = !has[0]
	}
}

// solveSections computes the psi that bridges take from their sections, each section
// once.
func (d *decoder) solveSections() {
	type answer struct {
		internal, external *Psi
		remarks            []solver.Remark
	}
	solved := map[string]answer{}
	for _, b := range d.h.Bridges {
		if b.Section == nil {
			continue
		}
		a, ok := solved[b.Section.Name]
		if !ok {
			r, err := b.Section.Solve(solver.Options{Surface: 1, Unknowns: sectionUnknowns})
			if err != nil {
				s := &section{d: d, t: b.at.t, where: fmt.Sprintf("bridge %q", b.Name)}
				s.fail("section", "%s", plain(err))
				continue
			}
			if math.IsInf(r.Heat, 0) {
				s := &section{d: d, t: b.at.t, where: fmt.Sprintf("bridge %q", b.Name)}
				s.fail("section", "section %q gives no psi: %s", b.Section.Name, r.Remarks[0].Text)
				continue
			}
			a.internal, a.external = b.Section.Psi(r)
			a.remarks = r.Remarks
			solved[b.Section.Name] = a
		}
		b.Bracket, b.solved = a.internal, a.remarks
		if b.External {
			b.Bracket = a.external
		}
		b.Psi = b.Bracket.Psi
	}
}

// flankAssembly takes a flank's U from an assembly of the house, as the ranking does.
func (d *decoder) flankAssembly(s *section, f *Flank) {
	a := lookup(s, "assembly", "assembly", d.h.Assemblies, func(a *Assembly) string { return a.Name })
	if a == nil || a.Layers == nil || len(d.errs) > 0 {
		return
	}
	r, err := d.h.solved(a, assembly.Open)
	if err != nil {
		s.textError("assembly", err)
		return
	}
	f.U = r.Effective.U()
}
