package material_test

import (
	"regexp"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/rvalue/material"
)

// ranges are what conductivities of a class can be at all, in W/(m·K): a slip of
// a digit or of a unit falls out.
var ranges = map[material.Class][2]float64{
	material.Fibre: {0.012, 0.07}, material.LooseFill: {0.03, 0.2}, material.Foam: {0.02, 0.045}, material.SprayFoam: {0.02, 0.045},
	material.InsulationBoard: {0.004, 0.11}, material.Wood: {0.08, 0.21}, material.Panel: {0.05, 0.6}, material.Masonry: {0.1, 1.5},
	material.Concrete: {0.05, 3}, material.Stone: {1, 7}, material.Earth: {0.05, 1.2}, material.Plaster: {0.05, 1.5}, material.Gypsum: {0.12, 0.4},
	material.Metal: {10, 400}, material.Glass: {0.9, 1.1}, material.Plastic: {0.15, 0.5}, material.Membrane: {0.05, 0.5},
	material.Siding: {0.1, 1}, material.Roofing: {0.06, 2}, material.Flooring: {0.04, 0.5}, material.AirBarrier: {0.1, 0.5}, material.Soil: {0.5, 4},
}

// least are the spreads that a class has at least, beside the 5 % of all.
var least = map[material.Class]float64{
	material.Wood: 0.20, material.Masonry: 0.30, material.Concrete: 0.30, material.Stone: 0.30, material.Plaster: 0.30, material.Earth: 0.30, material.Soil: 0.30,
}

// printedRange finds in a note the range that the row's own source prints.
var printedRange = regexp.MustCompile(`\brange (\d\.\d+)-(\d\.\d+)`)

func TestCatalogueRows(t *testing.T) {
	seen := map[string]string{}
	bySource := map[string]int{}
	total := 0
	for m := range material.All() {
		total++
		first, _, _ := strings.Cut(m.Source, "+")
		bySource[first]++
		for _, n := range append([]string{m.Name}, m.Aliases...) {
			if other, ok := seen[strings.ToLower(n)]; ok {
				t.Errorf("%q names %s and %s", n, other, m.Name)
			}
			seen[strings.ToLower(n)] = m.Name
			if found, err := material.Find(n); err != nil || found != m {
				t.Errorf("Find(%q) = %v, %v, want %s", n, found, err, m.Name)
			}
			if n != strings.TrimSpace(n) || n == "" {
				t.Errorf("%s: %q is no tidy name", m.Name, n)
			}
		}
		for k := range strings.SplitSeq(m.Source, "+") {
			if _, ok := material.Citation(k); !ok {
				t.Errorf("%s: unknown source %q", m.Name, k)
			}
		}
		r, ok := ranges[m.Class]
		if !ok {
			t.Errorf("%s: class %v has no range here", m.Name, m.Class)
		}
		if k := m.Conductivity.SI(); k != 0 && !(k >= r[0] && k <= r[1]) {
			t.Errorf("%s: %v W/(m·K) is outside what its class can be, %v", m.Name, k, r)
		}
		for _, s := range m.Sizes {
			if s.Thickness == 0 {
				continue
			}
			// Siding, shingles and masonry units enclose air; what they are worth as a
			// slab still lies between that of fibreboard and of stone.
			if k := float64(s.Thickness) / float64(s.R); m.Class != material.Flooring && !(k > 0.03 && k < 2) || !(k > 0.03 && k < 3) {
				t.Errorf("%s: %v at %v is %.3g W/(m·K) as a slab", m.Name, s.R, s.Thickness, k)
			}
		}
		if want := max(0.05, least[m.Class]); m.Spread < want {
			t.Errorf("%s: spread %v, want at least %v", m.Name, m.Spread, want)
		}
		if d := m.Density; d[1] > 0 && !(d[0].SI() >= 6 && d[1].SI() <= 12000) {
			t.Errorf("%s: density %v", m.Name, d)
		}
		if m.Mu != 0 && (m.Mu < 1 || m.Mu > 1e5) || m.Permeance != 0 && (m.Permeance.SI() < 2 || m.Permeance.SI() > 6000) {
			t.Errorf("%s: mu %v, permeance %v", m.Name, m.Mu, m.Permeance)
		}
		if strings.HasSuffix(m.Note, ".") || strings.HasSuffix(m.Caution, ".") {
			t.Errorf("%s: a note ends in a full stop", m.Name)
		}
		if first == "MEM" || first == "CP" || first == "ISOM" {
			if m.Spread < 0.10 {
				t.Errorf("%s: an unseen figure with a spread of %v, want at least 0.10", m.Name, m.Spread)
			}
		}
		if r := printedRange.FindStringSubmatch(m.Note); r != nil {
			lo, hi := num(t, r[1]), num(t, r[2])
			if half := (hi - lo) / (hi + lo); m.Spread < half-0.01 {
				t.Errorf("%s: spread %v, its source's range is ±%.2f", m.Name, m.Spread, half)
			}
		}
	}
	if total < 180 {
		t.Errorf("%d materials, want 180", total)
	}
	for key, n := range bySource {
		if float64(n) > 0.6*float64(total) {
			t.Errorf("%s gives %d of %d rows; no source may give 60 %%", key, n, total)
		}
	}
	if len(bySource) < 8 {
		t.Errorf("only %d sources", len(bySource))
	}
}

// TestHollowSiding holds the handbook's own note: off by half either way.
func TestHollowSiding(t *testing.T) {
	for _, name := range []string{"vinyl siding", "aluminum siding", "board-backed metal siding"} {
		if m := find(t, name); m.Spread < 0.5 {
			t.Errorf("%s: spread %v, want 0.5", name, m.Spread)
		}
	}
}

func TestCautions(t *testing.T) {
	for _, c := range []struct{ name, says string }{
		{"vermiculite", "asbestos"},
		{"vermiculite plaster", "asbestos"},
		{"asbestos-cement shingles", "asbestos"},
		{"asbestos-cement board", "asbestos"},
		{"asbestos-cement roof shingles", "asbestos"},
		{"asphalt tile", "asbestos"},
		{"plaster", "asbestos"},
		{"lath and plaster", "asbestos"},
		{"oil paint", "1978"},
		{"closed-cell spray foam", "thermal barrier"},
		{"open-cell spray foam", "thermal barrier"},
		{"cellulose", "knob-and-tube"},
		{"dense-pack cellulose", "knob-and-tube"},
		{"blown fiberglass", "knob-and-tube"},
		{"lead", "poisonous"},
		{"glass", "gloves"},
	} {
		if m := find(t, c.name); !strings.Contains(m.Caution, c.says) {
			t.Errorf("%s: caution %q, want something of %q", c.name, m.Caution, c.says)
		}
	}
}

func find(t *testing.T, name string) *material.Material {
	t.Helper()
	m, err := material.Find(name)
	if err != nil {
		t.Fatal(err)
	}
	return m
}
