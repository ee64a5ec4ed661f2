package house

import (
	"fmt"

	"github.com/coldseam/coldseam/rvalue"
	"github.com/coldseam/coldseam/rvalue/material"
)

// materials reads the [material.NAME] tables and puts them into a catalogue
// beside the built-in one's.
func (d *decoder) materials(s *section) {
	d.catalogue = material.Default()
	var own []material.Material
	var at []int
	for _, e := range s.named("material") {
		t := &section{d: d, t: e.value.table, where: fmt.Sprintf("material %q", e.key)}
		before := len(d.errs)
		m := d.material(t, e.key)
		t.done()
		if len(d.errs) == before && !t.t.partial {
			own, at = append(own, m), append(at, e.at)
		}
	}
	for i := range own {
		if d.what == "house" { // whose parts the energy code judges
			d.class(&own[i])
		}
	}
	d.catalogue = d.with(own, at)
	for i := range own {
		d.h.Materials = append(d.h.Materials, &own[i])
	}
}

// insulating is the conductivity below which a material is taken for insulation:
// ISO 9229, thermal insulation product, from memory.
const insulating = 0.065 * rvalue.WattPerMetreKelvin

// class fills in the class of a material that neither says it nor replaces one of the
// catalogue's: the energy code counts what insulates.
func (d *decoder) class(m *material.Material) {
	if m.Class != 0 || d.catalogue.Replaced(m.Name) != nil {
		return
	}
	poor := m.Conductivity > 0 && m.Conductivity < insulating
	if len(m.Sizes) > 0 && m.Sizes[0].Thickness > 0 {
		poor = m.Sizes[0].R > insulating.Resistance(m.Sizes[0].Thickness)
	}
	if poor {
		m.Class = material.InsulationBoard
		d.filled(join([]name{{"material", 0}, {m.Name, 0}, {"class", 0}}), m.Class.String(), "it conducts less than 0.065 W/(m·K), so that it counts as insulation")
	}
}

// with returns the catalogue with the file's own materials, and reports which
// of them it refuses.
func (d *decoder) with(own []material.Material, at []int) *material.Catalogue {
	c, err := d.catalogue.With(own...)
	if err == nil {
		return c
	}
	for i := range own {
		// Those before it are fine; the one that spoils them is to blame.
		if _, err := d.catalogue.With(own[:i+1]...); err != nil {
			d.fail(at[i], fmt.Sprintf("material %q", own[i].Name), "%s", plain(err))
			break
		}
	}
	return d.catalogue
}

// material reads one material: a conductivity, or what a piece resists.
func (d *decoder) material(t *section, name string) material.Material {
	m := material.Material{Name: name}
	m.Conductivity, _ = quantity(t, "conductivity", "0.040 W/(m·K)", rvalue.ParseConductivity)
	r, hasR := quantity(t, "resistance", "R-2", rvalue.ParseResistance)
	thickness, hasT := quantity(t, "thickness", "1/2 in", rvalue.ParseLength)
	t.oneOf("its resistance", []string{"conductivity", "resistance"})
	switch {
	case hasR:
		m.Sizes = []material.Size{{Thickness: thickness, R: r}}
		m.Scalable = hasT // one figure for one thickness: as if homogeneous
	case hasT && !t.has("resistance"):
		t.fail("thickness", "a thickness goes with the resistance of a piece; a conductivity holds for any")
	}
	if v, ok := quantity(t, "density", "35 kg/m³", rvalue.ParseDensity); ok {
		m.Density = [2]rvalue.Density{v, v}
	}
	if i, ok := t.choice("class", material.Classes()); ok {
		m.Class = material.Class(i + 1)
	}
	m.Source, _ = t.text("source")
	t.missing("source", `where its figure comes from is missing; write such as source = "label"`)
	m.Aliases = t.texts("aliases")
	return m
}

// texts returns a list of texts.
func (s *section) texts(key string) []string {
	e := s.get(key)
	if e == nil {
		return nil
	}
	if e.value.kind != array {
		s.fail(key, "%s; write a list of texts, %s = [ \"…\" ]", e.value.is(), key)
		return nil
	}
	var out []string
	for _, item := range e.value.items {
		switch item.kind {
		case text:
			out = append(out, item.text)
		case broken:
		default:
			s.d.fail(item.at, s.path(key), "%s, not a text; write it in quotes", item.is())
		}
	}
	return out
}
