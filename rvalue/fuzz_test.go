package rvalue_test

import (
	"errors"
	"maps"
	"math"
	"slices"
	"testing"

	"github.com/coldseam/coldseam/rvalue"
)

// FuzzParse runs every parser: none may panic, an error points into the text,
// and what is accepted is finite and survives being written and read.
func FuzzParse(f *testing.F) {
	for _, c := range mistakes {
		f.Add(c.text)
	}
	addForms(f, resistances)
	addForms(f, transmittances)
	addForms(f, conductivities)
	addForms(f, lengths)
	addForms(f, areas)
	addForms(f, volumes)
	addForms(f, temperatures)
	addForms(f, differences)
	addForms(f, conductances)
	addForms(f, linears)
	addForms(f, permeances)
	addForms(f, airFlows)
	addForms(f, speeds)
	addForms(f, densities)
	addForms(f, masses)
	names := slices.Sorted(maps.Keys(parsers)) // one order, or the fuzzer sees new coverage in every run
	f.Fuzz(func(t *testing.T, text string) {
		for _, name := range names {
			v, err := parsers[name](text)
			if err == nil {
				if math.IsNaN(v) || math.IsInf(v, 0) {
					t.Errorf("Parse%s(%q) = %v", name, text, v)
				}
				continue
			}
			var e *rvalue.ParseError
			if !errors.As(err, &e) {
				t.Errorf("Parse%s(%q) fails with %T", name, text, err)
			} else if e.Text != text || e.Offset < 0 || e.Offset > len(text) || e.Msg == "" || v != 0 {
				t.Errorf("Parse%s(%q) = %v, %#v", name, text, v, e)
			}
		}
		for _, k := range kinds {
			v, err := k.parse(text)
			if err != nil {
				continue
			}
			written, err := k.of(v).MarshalText()
			if err != nil {
				t.Fatalf("%s(%v) from %q can not be written: %v", k.name, v, text, err)
			}
			if again, err := k.read(written); err != nil || again != v {
				t.Errorf("%s %q is %v, written as %q, read as %v, %v", k.name, text, v, written, again, err)
			}
			for _, u := range []rvalue.Units{rvalue.SI, rvalue.IP} {
				if k.of(v).In(u) == "" {
					t.Errorf("%s %q prints as nothing", k.name, text)
				}
			}
		}
	})
}

func addForms[T ~float64](f *testing.F, forms []form[T]) {
	for _, c := range forms {
		f.Add(c.text)
	}
}
