package target

import (
	"go/parser"
	"go/token"
	"os"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/rvalue"
)

// TestEverySourceIsNamed: each value says how it was got, and what was seen
// names its page.
func TestEverySourceIsNamed(t *testing.T) {
	facts := []Facts{
		{},
		{WindborneDebris: true, ImpactRated: true, HeatedSlab: true, InteriorMassInsulation: true},
		{Steel: &Steel{Spacing: 16 * rvalue.Inch}},
	}
	for _, e := range Editions() {
		for _, zone := range append([]string{"3A*"}, ladder...) {
			for c := Ceiling; c <= Door; c++ {
				for _, f := range facts {
					r := mustFor(t, mustZone(t, zone), e, c, f)
					for _, v := range []struct {
						what string
						set  bool
						m    Mark
					}{
						{"U", r.U != 0, r.Marks.U},
						{"R", len(r.Options) > 0, r.Marks.R},
						{"SHGC", r.SHGC != 0, r.Marks.SHGC},
						{"depth", r.SlabDepth != 0, r.Marks.Depth},
						{"F", r.F != 0, r.Marks.F},
					} {
						if v.set && v.m == 0 {
							t.Errorf("%v zone %s %v: %s has no mark", e, zone, c, v.what)
						}
						if v.set && v.m == Seen && !strings.Contains(r.Source, "seen on ") {
							t.Errorf("%v zone %s %v: %s was seen, but %q names no page", e, zone, c, v.what, r.Source)
						}
					}
					if low := (e == Edition2024); low != (r.Marks.U == LowConfidence || r.Marks.R == LowConfidence) {
						t.Errorf("%v zone %s %v: marks %+v, low confidence must be %v", e, zone, c, r.Marks, low)
					}
					for _, n := range r.Notes {
						if e == Edition2024 && n.Mark != LowConfidence {
							t.Errorf("%v zone %s %v: note %q of an older edition passes for one of 2024", e, zone, c, n.Code)
						}
					}
					if zone[0] == '0' && (r.Marks.U == Seen || r.Marks.R == Seen || r.Marks.SHGC == Seen || r.Marks.Depth == Seen) {
						t.Errorf("%v zone %s %v: nothing of zone 0 was seen, marks %+v", e, zone, c, r.Marks)
					}
					if !strings.HasPrefix(r.Source, e.String()+": ") || strings.HasSuffix(r.Source, "seen on ") || strings.Contains(r.Source, "seen on ;") {
						t.Errorf("%v zone %s %v: source %q", e, zone, c, r.Source)
					}
				}
			}
		}
	}
}

// TestMarkLetters: every table line has a known letter for every band, and a
// page where it claims one.
func TestMarkLetters(t *testing.T) {
	for _, l := range uLines {
		if len(l.marks) != bands || strings.Trim(l.marks, "sml") != "" {
			t.Errorf("U-factor line %v %v: marks %q", l.from, l.c, l.marks)
		}
		if strings.Contains(l.marks, "s") && (l.c != Ceiling || l.from != Edition2021) {
			t.Errorf("U-factor line %v %v is marked seen, but the source text knows the page of the 2021 ceiling only", l.from, l.c)
		}
	}
	for _, lines := range [][]fLine{windowU[:], skylightU[:], shgc[:]} {
		for _, l := range lines {
			if len(l.marks) != bands || strings.Trim(l.marks, "sml") != "" || strings.Contains(l.marks, "s") != (l.page != "") {
				t.Errorf("fenestration line %v: marks %q, page %q", l.from, l.marks, l.page)
			}
		}
	}
	for m, want := range map[Mark]string{0: "", Seen: "seen", FromMemory: "from memory", Derived: "our reading", 9: "Mark(9)"} {
		if m.String() != want {
			t.Errorf("Mark %d prints %q, want %q", m, m, want)
		}
	}
	if markOf('x') != 0 || Component(99).String() != "Component(99)" {
		t.Error("unknown letters and components must not pass for known ones")
	}
}

// TestImports: the package stands on rvalue and the standard library alone, and
// on nothing that reads files, clocks or the environment.
func TestImports(t *testing.T) {
	allowed := map[string]bool{
		"errors": true, "fmt": true, "iter": true, "math": true, "slices": true, "strconv": true, "strings": true,
		"github.com/coldseam/coldseam/rvalue": true,
	}
	entries, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	for _, entry := range entries {
		name := entry.Name()
		if !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ImportsOnly)
		if err != nil {
			t.Fatal(err)
		}
		for _, imp := range file.Imports {
			if path := strings.Trim(imp.Path.Value, `"`); !allowed[path] {
				t.Errorf("%s imports %s", name, path)
			}
		}
	}
}
