package material_test

import (
	"testing"

	"github.com/coldseam/coldseam/rvalue/material"
)

func TestSearch(t *testing.T) {
	for _, c := range []struct {
		asked []string
		first string
	}{
		{[]string{"brick"}, "common brick"},
		{[]string{"wood", "siding"}, "wood bevel siding"},
		{[]string{"wood shingles"}, "wood shingles"},
		{[]string{"polyisocyanurate"}, "polyiso"},
		{[]string{"fibre", "cement"}, "fiber-cement board"},
		{[]string{"spray"}, "open-cell spray foam"},
		{[]string{"vermic"}, "vermiculite"},
	} {
		got := material.Search(c.asked...)
		if len(got) == 0 || got[0].Name != c.first {
			var names []string
			for _, m := range got[:min(len(got), 5)] {
				names = append(names, m.Name)
			}
			t.Errorf("Search(%q) = %q, want %s first", c.asked, names, c.first)
		}
	}
	if got := material.Search(); len(got) != 0 {
		t.Errorf("Search() = %d materials", len(got))
	}
	if got := material.Search("zzz"); len(got) != 0 {
		t.Errorf("Search(zzz) = %v", got[0].Name)
	}
	n := 0
	for m := range material.All() {
		if m.Class == material.Roofing {
			n++
		}
	}
	if got := material.Search("roofing"); len(got) < n {
		t.Errorf("Search(roofing) = %d materials, the class has %d", len(got), n)
	}
}
