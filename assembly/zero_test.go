package assembly_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/rvalue"
	"github.com/coldseam/coldseam/rvalue/material"
)

// TestImpossibleAssemblies: what Check refuses for want of layers or shares has
// no resistance, by any method, and panics nowhere.
func TestImpossibleAssemblies(t *testing.T) {
	for name, a := range map[string]assembly.Assembly{
		"no layers":                    {},
		"a layer without shares":       {Layers: []assembly.Layer{{}}},
		"one of several without":       {Layers: []assembly.Layer{assembly.Plain("a", 1), {}}},
		"in line with a layer without": {Layers: []assembly.Layer{{Line: 1}, {Line: 1, Shares: assembly.Framed("b", 0.2, 1, 2).Shares}}},
	} {
		for _, m := range methods {
			if r := m.r(a); !math.IsNaN(r) {
				t.Errorf("%s: %s %v, want NaN", name, m.name, r)
			}
		}
		if a.Check() == nil || a.Paths() != nil || a.Combined().Valid {
			t.Errorf("%s: Check %v, paths %v, combined %+v", name, a.Check(), a.Paths(), a.Combined())
		}
	}
}

// TestUnknownNames: values outside an enumeration have a plain word.
func TestUnknownNames(t *testing.T) {
	for want, got := range map[string]fmt.Stringer{
		"Method(9)": assembly.Method(9), "Use(9)": assembly.Use(9), "Use(8)": assembly.Facing{Use: 8},
	} {
		if got.String() != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	if text, err := assembly.Method(9).MarshalText(); err == nil {
		t.Errorf("method 9 is written %q", text)
	}
	if f, _, err := assembly.DefaultFraming(9, 16*rvalue.Inch); err == nil {
		t.Errorf("use 9 is framed to %v", f)
	}
	for _, offset := range []int{-1, 7} {
		if got, want := (&assembly.SyntaxError{Msg: "wrong", Offset: offset}).Error(), "assembly: wrong\n  \n  ^"; got != want {
			t.Errorf("an error without a text says %q, want %q", got, want)
		}
	}
}

// TestSpecsMadeByHand: layers that Parse would not make are refused.
func TestSpecsMadeByHand(t *testing.T) {
	framed := func(m assembly.Member, fill ...assembly.Item) assembly.SpecLayer {
		return assembly.SpecLayer{Members: []assembly.Member{m}, Fill: fill}
	}
	stud := assembly.Member{Share: 0.2, Depth: 0.1, Timber: true}
	sound := assembly.Item{Kind: assembly.Labelled, R: 1}
	for name, l := range map[string]assembly.SpecLayer{
		"zero value":               {},
		"batt without material":    {Item: assembly.Item{Kind: assembly.Batt}},
		"label of nothing":         {Item: assembly.Item{Kind: assembly.Labelled}},
		"label below zero":         {Offset: 99, Item: assembly.Item{Kind: assembly.Labelled, R: -1, Offset: 99}},
		"air of no thickness":      {Offset: 99, Item: assembly.Item{Kind: assembly.Air, Offset: 99}},
		"unknown kind":             {Item: assembly.Item{Kind: 9, R: 1}},
		"unknown ventilation":      {Item: assembly.Item{Kind: assembly.Air, Thickness: 0.02, Vent: 7}},
		"empty material":           {Item: assembly.Item{Material: &material.Material{}, Thickness: 0.1}},
		"empty material of a batt": {Item: assembly.Item{Kind: assembly.Batt, Material: &material.Material{}, R: 1}},
		"zero member":              framed(assembly.Member{}, sound),
		"member without R":         framed(assembly.Member{Share: 0.2}, sound),
		"member of share NaN":      framed(assembly.Member{Share: math.NaN(), Depth: 0.1, R: 1}, sound),
		"member all over":          framed(assembly.Member{Share: 1, Depth: 0.1, R: 1}, sound),
		"steel without spacing":    framed(assembly.Member{Steel: 0.001, Depth: 0.1, R: 1}, sound),
		"fill without material":    framed(stud, assembly.Item{}),
		"batt in a bay without":    framed(stud, assembly.Item{Kind: assembly.Batt}),
		"vented in a bay":          framed(stud, assembly.Item{Kind: assembly.Air, Thickness: 0.02, Vent: assembly.Vented}),
	} {
		s := assembly.Spec{Layers: []assembly.SpecLayer{l}}
		r, err := s.Evaluate(assembly.Setting{})
		if err == nil {
			t.Errorf("%s: resists %v, want an error", name, r.Effective.R)
			continue
		}
		var e *assembly.SyntaxError
		if errors.As(err, &e) && e.Msg == "" || err.Error() == "" {
			t.Errorf("%s: an error without words", name)
		}
	}
	if _, err := (&assembly.Spec{}).Evaluate(assembly.Setting{}); err == nil {
		t.Error("a spec without layers evaluates")
	}
}
