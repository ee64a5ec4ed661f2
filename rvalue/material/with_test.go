package material_test

import (
	"math"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/rvalue"
	"github.com/coldseam/coldseam/rvalue/material"
)

func TestWith(t *testing.T) {
	house := material.Material{Name: "attic fluff", Aliases: []string{"fluff"}, Conductivity: 0.05, Source: "label"}
	mine := material.Material{Name: "mineral-wool", Aliases: []string{"batt"}, Conductivity: 0.037, Source: "label"}
	c, err := material.Default().With(house, mine)
	if err != nil {
		t.Fatal(err)
	}
	for asked, want := range map[string]string{
		"fluff": "attic fluff", "ATTIC FLUFF": "attic fluff",
		"mineral wool": "mineral-wool", "rock wool": "mineral-wool", "mineral-wool": "mineral-wool", // its place and names
		"batt": "mineral-wool", "fiberglass batt": "fiberglass", // an alias taken over
		"gypsum": "gypsum board",
	} {
		if m, err := c.Find(asked); err != nil || m.Name != want {
			t.Errorf("Find(%q) = %v, %v, want %s", asked, m, err, want)
		}
	}
	if m := find(t, "batt"); m.Name != "fiberglass" {
		t.Errorf("the built-in catalogue has changed: batt is %s", m.Name)
	}
	if _, err := material.Find("fluff"); err == nil {
		t.Error("the built-in catalogue has fluff")
	}
	before, after := 0, 0
	for range material.All() {
		before++
	}
	for range c.All() {
		after++
	}
	if after != before+1 {
		t.Errorf("%d materials, want %d: one more and one in place", after, before+1)
	}
}

// A material in another's place is still of its kind, as careful to handle and as fond
// of the cold, unless it says otherwise; the figures are all its own.
func TestWithKeepsTheKind(t *testing.T) {
	was := find(t, "polyiso")
	if was.Class != material.Foam || was.Cold == 0 {
		t.Fatalf("polyiso is of class %v with cold law %v", was.Class, was.Cold)
	}
	c, err := material.Default().With(material.Material{Name: was.Name, Conductivity: 0.024, Source: "label"})
	if err != nil {
		t.Fatal(err)
	}
	m, err := c.Find(was.Name)
	if err != nil || m.Class != was.Class || m.Cold != was.Cold || m.Caution != was.Caution || m.Conductivity != 0.024 || m.Source != "label" {
		t.Errorf("in its place stands %+v, %v", m, err)
	}
	c, err = material.Default().With(material.Material{Name: was.Name, Conductivity: 0.024, Class: material.Panel, Source: "label"})
	if m, _ := c.Find(was.Name); err != nil || m.Class != material.Panel {
		t.Errorf("its own class became %v, %v", m.Class, err)
	}
	if c.Replaced("Poly-iso").Name != was.Name || c.Replaced("fluff") != nil {
		t.Error("Replaced finds another than With")
	}
}

func TestWithRefuses(t *testing.T) {
	good := material.Material{Name: "fluff", Conductivity: 0.05, Source: "label"}
	size := func(mm, r float64) material.Size {
		return material.Size{Thickness: rvalue.Length(mm) * rvalue.Millimetre, R: rvalue.Resistance(r)}
	}
	for _, c := range []struct {
		name, says string
		change     func(m *material.Material)
	}{
		{"no name", "name", func(m *material.Material) { m.Name = " - " }},
		{"no alias", "name", func(m *material.Material) { m.Aliases = []string{""} }},
		{"no source", "label", func(m *material.Material) { m.Source = " " }},
		{"neither conductivity nor piece", "conductivity", func(m *material.Material) { m.Conductivity = 0 }},
		{"NaN conductivity", "conductivity", func(m *material.Material) { m.Conductivity = rvalue.Conductivity(math.NaN()) }},
		{"infinite conductivity", "conductivity", func(m *material.Material) { m.Conductivity = rvalue.Conductivity(math.Inf(1)) }},
		{"negative conductivity", "conductivity", func(m *material.Material) { m.Conductivity = -0.05 }},
		{"negative R", "above zero", func(m *material.Material) { m.Sizes = []material.Size{size(10, -1)} }},
		{"infinite R", "above zero", func(m *material.Material) { m.Sizes = []material.Size{size(10, math.Inf(1))} }},
		{"NaN thickness", "thickness", func(m *material.Material) { m.Sizes = []material.Size{size(math.NaN(), 1)} }},
		{"pieces out of order", "thinnest", func(m *material.Material) { m.Sizes = []material.Size{size(20, 1), size(10, 1)} }},
		{"nothing to scale", "scale", func(m *material.Material) { m.Scalable = true }},
		{"spread of 100 %", "spread", func(m *material.Material) { m.Spread = 1 }},
		{"NaN mu", "vapour", func(m *material.Material) { m.Mu = math.NaN() }},
		{"negative permeance", "permeance", func(m *material.Material) { m.Permeance = -1 }},
		{"densities swapped", "densities", func(m *material.Material) { m.Density = [2]rvalue.Density{20, 10} }},
		{"a law of cold that is none", "law", func(m *material.Material) { m.Cold = 99 }},
		{"an alias that is another's name", "gypsum board", func(m *material.Material) { m.Aliases = []string{"gypsum board"} }},
	} {
		m := good
		c.change(&m)
		if _, err := material.Default().With(m); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v, want an error with %q", c.name, err, c.says)
		}
	}
	if _, err := material.Default().With(good, good); err == nil {
		t.Error("the same material twice is accepted")
	}
}

func TestZeroCatalogue(t *testing.T) {
	var c material.Catalogue
	if _, err := c.Find("gypsum"); err == nil {
		t.Error("an empty catalogue finds gypsum")
	}
	if c.Search("gypsum") != nil && len(c.Search("gypsum")) > 0 {
		t.Error("an empty catalogue finds gypsum")
	}
	own, err := c.With(material.Material{Name: "fluff", Conductivity: 0.05, Source: "label"})
	if err != nil {
		t.Fatal(err)
	}
	if m, err := own.Find("fluff"); err != nil || m.Name != "fluff" {
		t.Errorf("Find(fluff) = %v, %v", m, err)
	}
}
