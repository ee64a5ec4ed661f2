package main

import (
	"fmt"
	"strings"

	"github.com/coldseam/coldseam/rvalue"
	"github.com/coldseam/coldseam/rvalue/material"
)

// materials lists the catalogue, or what in it the words name.
func materials(c command) error {
	var found []*material.Material
	if len(c.args) == 0 {
		for m := range material.All() {
			found = append(found, m)
		}
	} else if found = material.Search(c.args...); len(found) == 0 {
		_, err := material.Find(strings.Join(c.args, " "))
		if err == nil {
			err = fmt.Errorf("nothing in the catalogue matches %q", strings.Join(c.args, " "))
		}
		return err
	}
	if c.is("json") {
		return writeJSON(c.stdout, materialsObject(found))
	}
	t := table{right: []bool{false, false, true, true, true, false}}
	t.row("material", "class", "conductivity", "R", "give or take", "source")
	var keys []string
	for _, m := range found {
		k, r := "", ""
		switch {
		case m.Conductivity > 0:
			k = m.Conductivity.In(c.units)
			r = perInch(m, c.units)
		case len(m.Sizes) > 0:
			r = short(sizes(m, c.units), nameWidth)
		}
		t.row(m.Name, m.Class.String(), k, r, percent(m.Spread), m.Source)
		keys = append(keys, m.Source)
	}
	t.print(c.stdout)
	citations(c.stdout, keys)
	for _, m := range found {
		for _, note := range []string{m.Note, m.Caution} {
			if note != "" && len(found) <= 12 {
				wrap(c.stdout, "· ", m.Name+": "+note, 100)
			}
		}
	}
	return nil
}

// perInch returns the resistance of the customary unit thickness.
func perInch(m *material.Material, u rvalue.Units) string {
	if u == rvalue.IP {
		return m.Conductivity.Resistance(rvalue.Inch).In(u) + " per in"
	}
	return m.Conductivity.Resistance(100*rvalue.Millimetre).In(u) + " per 100 mm"
}

// sizes lists the resistances of a material sold in fixed pieces.
func sizes(m *material.Material, u rvalue.Units) string {
	var parts []string
	for _, s := range m.Sizes {
		text := s.R.In(u)
		if s.Thickness > 0 {
			text += " at " + s.Thickness.In(u)
		}
		parts = append(parts, text)
	}
	return strings.Join(parts, ", ")
}

func materialsObject(found []*material.Material) any {
	type size struct {
		Thickness quantity `json:"thickness"`
		R         quantity `json:"r"`
	}
	type entry struct {
		Name         string    `json:"name"`
		Aliases      []string  `json:"aliases"`
		Class        string    `json:"class"`
		Conductivity *quantity `json:"conductivity,omitempty"`
		Sizes        []size    `json:"sizes"`
		Spread       number    `json:"spread"`
		Source       string    `json:"source"`
		Note         string    `json:"note,omitempty"`
		Caution      string    `json:"caution,omitempty"`
	}
	out := struct {
		Schema    int                  `json:"schema"`
		Units     map[string][2]string `json:"units"`
		Materials []entry              `json:"materials"`
	}{Schema: schemaVersion, Units: unitNames, Materials: []entry{}}
	for _, m := range found {
		e := entry{
			Name: m.Name, Aliases: append([]string{}, m.Aliases...), Class: m.Class.String(), Sizes: []size{},
			Spread: number(m.Spread), Source: m.Source, Note: m.Note, Caution: m.Caution,
		}
		if m.Conductivity > 0 {
			k := q(m.Conductivity)
			e.Conductivity = &k
		}
		for _, s := range m.Sizes {
			e.Sizes = append(e.Sizes, size{q(s.Thickness), q(s.R)})
		}
		out.Materials = append(out.Materials, e)
	}
	return out
}
