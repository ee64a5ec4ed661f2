package assembly_test

import (
	"math"
	"testing"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/rvalue"
)

func TestUnheatedSpace(t *testing.T) {
	got, err := assembly.UnheatedSpace(15, 45, assembly.UnknownAirChanges, 40)
	if err != nil || math.Abs(got.RSI()-0.17730) > 5e-6 { // our arithmetic: 15/(45 + 0.33·3·40)
		t.Errorf("UnheatedSpace = %v, %v, want 0.17730", got.RSI(), err)
	}
	airtight, err := assembly.UnheatedSpace(15, 45, 0, 40)
	if err != nil || !near(airtight.RSI(), 15.0/45, 1e-15) {
		t.Errorf("airtight: UnheatedSpace = %v, %v, want 1/3", airtight.RSI(), err)
	}
}

func TestSmallUnheatedSpace(t *testing.T) {
	for _, c := range []struct {
		inner, outer rvalue.Area
		want         float64 // our arithmetic, ISO 6946:1997
	}{{10, 40, 0.19}, {10, 10, 0.49}, {10, 9, 0.5}, {30, 10, 0.5}} {
		got, err := assembly.SmallUnheatedSpace(c.inner, c.outer)
		if err != nil || !near(got.RSI(), c.want, 1e-14) {
			t.Errorf("SmallUnheatedSpace(%v, %v) = %v, %v, want %v", c.inner, c.outer, got.RSI(), err, c.want)
		}
	}
}

func TestAtticSpace(t *testing.T) {
	for roof, want := range map[assembly.AtticRoof]rvalue.Resistance{ // ISO 6946, from memory
		assembly.TilesAlone: 0.06, assembly.TilesOnUnderlay: 0.2, assembly.TilesOnShinyLining: 0.3, assembly.TilesOnBoards: 0.3,
	} {
		if got, err := assembly.AtticSpace(roof); err != nil || got != want {
			t.Errorf("AtticSpace(%d) = %v, %v, want %v", roof, got, err, want)
		}
	}
	if _, err := assembly.AtticSpace(4); err == nil {
		t.Error("AtticSpace(4): no error")
	}
}

func TestUnheatedRefuses(t *testing.T) {
	nan := math.NaN()
	second := func(_ any, err error) error { return err }
	for name, err := range map[string]error{
		"inner 0":               second(assembly.UnheatedSpace(0, 45, 3, 40)),
		"inner NaN":             second(assembly.UnheatedSpace(rvalue.Area(nan), 45, 3, 40)),
		"envelope negative":     second(assembly.UnheatedSpace(15, -1, 3, 40)),
		"air changes NaN":       second(assembly.UnheatedSpace(15, 45, nan, 40)),
		"volume infinite":       second(assembly.UnheatedSpace(15, 45, 3, rvalue.Volume(math.Inf(1)))),
		"loses nothing":         second(assembly.UnheatedSpace(15, 0, 3, 0)),
		"small, outer 0":        second(assembly.SmallUnheatedSpace(10, 0)),
		"small, inner negative": second(assembly.SmallUnheatedSpace(-10, 5)),
	} {
		if err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}
