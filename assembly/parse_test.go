package assembly_test

import (
	"errors"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/rvalue"
)

// notations are texts that a stranger could have written, with what they say.
var notations = []struct {
	name string
	text string
	want []string // by layer: what was understood
}{
	{
		"the main example", "gypsum 1/2 in + 2x4 @ 16 in (fiberglass R-13) + osb 7/16 in + vinyl siding",
		[]string{"gypsum board 0.0127", "2x4 0.0889 @0.4064 (fiberglass R2.28943)", "OSB 0.0111125", "vinyl siding"},
	},
	{"bare resistances in both units", "R-5 + RSI 0.9", []string{"R0.880551", "R0.9"}},
	{"a label apart from its R", "gypsum 13 mm + R 13", []string{"gypsum board 0.013", "R2.28943"}},
	{
		"an empty bay of an old wall", "plaster 3/4 in + 2x4 @ 16 in (empty) + board sheathing 3/4 in + wood bevel siding",
		[]string{"plaster 0.01905", "2x4 0.0889 @0.4064 ()", "board sheathing 0.01905", "wood bevel siding"},
	},
	{"several kinds of member", "2x4 21 %, fir 3 1/2 in 4 % (fiberglass R-13)", []string{"2x4 0.0889 21% + fir 3 1/2 in 0.0889 4% (fiberglass R2.28943)"}},
	{"members known by their resistance", "RSI 0.77 25 % (RSI 2.30)", []string{"RSI 0.77 r0.77 25% (R2.3)"}},
	{"a share over the spacing", "2x6 @ 24 in framing 18 % (cellulose)", []string{"2x6 0.1397 @0.6096 18% (cellulose)"}},
	{"metric lumber", "48 x 198 mm @ 600 mm (mineral wool)", []string{"48 x 198 mm 0.198 @0.6 (mineral wool)"}},
	{"boards lie flat", "1x3 @ 16 in (empty)", []string{"1x3 0.01905 @0.4064 ()"}},
	{"a stud laid flat", "2x4 flat @ 16 in (empty)", []string{"2x4 flat 0.0381 @0.4064 ()"}},
	{"a steel stud with its gauge", "steel stud 3 1/2 in 20 ga @ 16 in (fiberglass R-13)", []string{"steel stud 3 1/2 in 20 ga 0.0889 @0.4064 s0.0008382 (fiberglass R2.28943)"}},
	{"a fill in series", "2x4 @ 16 in (fiberglass R-11 + air 1/2 in)", []string{"2x4 0.0889 @0.4064 (fiberglass R1.93721 + air 0.0127 0.9/0.9)"}},
	{
		"air spaces", "air 3/4 in + air 20 mm bright + air 1 in bright both + air 1 in emittance 0.1/0.8 + air 1 in slightly vented",
		[]string{"air 0.01905 0.9/0.9", "air 0.02 0.05/0.9", "air 0.0254 0.05/0.05", "air 0.0254 0.1/0.8", "air 0.0254 0.9/0.9 vent1"},
	},
	{
		"aligned members", "2x4 @ 16 in (fiberglass R-13) + 2x4 @ 16 in aligned (fiberglass R-13)",
		[]string{"2x4 0.0889 @0.4064 (fiberglass R2.28943)", "2x4 0.0889 @0.4064 aligned (fiberglass R2.28943)"},
	},
	{"lumber of a wood", "fir 2x4 @ 16 in (fiberglass R-13)", []string{"fir 2x4 0.0889 @0.4064 (fiberglass R2.28943)"}},
	{"bays of air", "2x4 @16in (air)", []string{"2x4 0.0889 @0.4064 ()"}},
	{"on centre without a sign", "2x6 16\" o.c. (cellulose) + 2x6 studs 16 in oc (cellulose) + 48 x 198 mm 600 mm on center (cellulose)", []string{"2x6 0.1397 @0.4064 (cellulose)", "2x6 0.1397 @0.4064 (cellulose)", "48 x 198 mm 0.198 @0.6 (cellulose)"}},
	{"on centre with a sign", "2x6 @ 16 in O.C. (cellulose) + 2x6 @ 16 in oc. (cellulose) + 2x6 at 16 in on centers (cellulose)", []string{"2x6 0.1397 @0.4064 (cellulose)", "2x6 0.1397 @0.4064 (cellulose)", "2x6 0.1397 @0.4064 (cellulose)"}},
	{"spacings of several words", "2x6 19 1/5 in o.c. (cellulose) + steel 3 1/2 in 24\"OC (fiberglass R-13)", []string{"2x6 0.1397 @0.48768 (cellulose)", "steel 3 1/2 in 0.0889 @0.6096 s0.0010922 (fiberglass R2.28943)"}},
	{"odd spacing of the text", "  Gypsum   Board 1/2\"+ 2X4 @16 in o.c.(Fiberglass R13) ", []string{"gypsum board 0.0127", "2X4 0.0889 @0.4064 (fiberglass R2.28943)"}},
}

// told says in short what was understood of a layer.
func told(l assembly.SpecLayer) string {
	var parts []string
	num := func(v float64) string { return strconv.FormatFloat(v, 'g', 6, 64) }
	if len(l.Members) == 0 {
		return toldItem(l.Item, num)
	}
	for _, m := range l.Members {
		s := m.Name
		if m.Depth > 0 {
			s += " " + num(m.Depth.SI())
		}
		if m.R > 0 && m.Depth == 0 {
			s += " r" + num(m.R.RSI())
		}
		if m.Spacing > 0 {
			s += " @" + num(m.Spacing.SI())
		}
		if m.Steel > 0 {
			s += " s" + num(m.Steel.SI())
		}
		if m.Share > 0 {
			s += " " + num(100*m.Share) + "%"
		}
		parts = append(parts, s)
	}
	var fill []string
	for _, it := range l.Fill {
		fill = append(fill, toldItem(it, num))
	}
	aligned := ""
	if l.Aligned {
		aligned = " aligned"
	}
	return strings.Join(parts, " + ") + aligned + " (" + strings.Join(fill, " + ") + ")"
}

func toldItem(it assembly.Item, num func(float64) string) string {
	var parts []string
	if it.Kind == assembly.Air {
		parts = append(parts, "air")
	}
	if it.Material != nil {
		parts = append(parts, it.Material.Name)
	}
	if it.Thickness > 0 {
		parts = append(parts, num(it.Thickness.SI()))
	}
	if it.R > 0 {
		parts = append(parts, "R"+num(it.R.RSI()))
	}
	if it.Kind == assembly.Air {
		parts = append(parts, num(it.E1)+"/"+num(it.E2))
	}
	if it.Vent > 0 {
		parts = append(parts, "vent"+num(float64(it.Vent)))
	}
	return strings.Join(parts, " ")
}

func TestParse(t *testing.T) {
	for _, c := range notations {
		t.Run(c.name, func(t *testing.T) {
			spec, err := assembly.Parse(c.text)
			if err != nil {
				t.Fatal(err)
			}
			var got []string
			for _, l := range spec.Layers {
				got = append(got, told(l))
			}
			if d := cmp.Diff(c.want, got); d != "" {
				t.Errorf("Parse(%q), -want +got:\n%s", c.text, d)
			}
		})
	}
}

// sameLayers compares what two specs say, not where it stands in their texts.
var sameLayers = cmp.Options{
	cmpopts.IgnoreFields(assembly.Spec{}, "Text"),
	cmpopts.IgnoreFields(assembly.SpecLayer{}, "Offset"),
	cmpopts.IgnoreFields(assembly.Item{}, "Offset"),
	cmpopts.IgnoreFields(assembly.Member{}, "Offset"),
}

func TestParsePrintIsIdentity(t *testing.T) {
	for _, c := range notations {
		first, err := assembly.Parse(c.text)
		if err != nil {
			t.Fatal(err)
		}
		second, err := assembly.Parse(first.String())
		if err != nil {
			t.Fatalf("Parse(%q): %v", first.String(), err)
		}
		if d := cmp.Diff(first, second, sameLayers); d != "" {
			t.Errorf("Parse(%q) reads back otherwise, -first +second:\n%s", first.String(), d)
		}
	}
}

func TestSyntaxErrors(t *testing.T) {
	for _, c := range []struct {
		name, text string
		at         string // the text from the mistake on
		says       string // a piece of the message
	}{
		{"unknown material", "gypsum 1/2 in + fibreglas R-13", "fibreglas R-13", "fiberglass"},
		{"no unit", "gypsum 1/2", "1/2", "unit"},
		{"unknown unit", "gypsum 1 furlong", "furlong", "furlong"},
		{"a missing layer", "gypsum 1/2 in + + osb 7/16 in", "+ osb 7/16 in", "missing"},
		{"nothing at all", "", "", "missing"},
		{"a trailing plus", "gypsum 1/2 in +", "", "missing"},
		{"members without a fill", "2x4 @ 16 in", "", "(empty)"},
		{"members on centre without a fill", "2x4 16 in o.c.", "", "(empty)"},
		{"lumber of no size", "fir 2x7 @ 16 in (empty)", "2x7 @ 16 in (empty)", "nominal"},
		{"lumber of a material that is none", "foo 2x4 @ 16 in (empty)", "foo 2x4 @ 16 in (empty)", "foo"},
		{"a fill without members", "gypsum 1/2 in + (fiberglass R-13)", "(fiberglass R-13)", "members"},
		{"an empty bracket", "2x4 @ 16 in ()", ")", "empty"},
		{"an open bracket", "2x4 @ 16 in (fiberglass R-13", "(fiberglass R-13", "not closed"},
		{"a closed one too many", "gypsum 1/2 in) + R-5", ") + R-5", "not opened"},
		{"brackets in brackets", "2x4 @ 16 in (2x2 @ 16 in (empty))", "(empty))", "inside"},
		{"words behind the bracket", "2x4 @ 16 in (empty) R-5", "R-5", "+"},
		{"framing behind the bracket", "2x4 @ 16 in (fiberglass R-13) framing 18 %", "framing 18 %", "before the bracket"},
		{"a share behind it", "2x4 (fiberglass R-13) 18 % + osb 7/16 in", "18 % + osb 7/16 in", "before the bracket"},
		{"a spacing behind it", "2x4 (fiberglass R-13) @ 16 in", "@ 16 in", "before the bracket"},
		{"no spacing and no share", "2x4 (empty)", " (empty)", "@ 16 in"},
		{"a share over 100 %", "2x4 120 % (empty)", "120 % (empty)", "120"},
		{"shares over 100 % together", "2x4 60 %, 2x4 50 % (empty)", "2x4 60 %, 2x4 50 % (empty)", "110"},
		{"a share that is no number", "2x4 many % (empty)", "many % (empty)", "percentage"},
		{"a size that is none", "2x7 @ 16 in (empty)", "2x7 @ 16 in (empty)", "nominal"},
		{"a gauge that is none", "steel 3 1/2 in 19 ga @ 16 in (empty)", "steel 3 1/2 in 19 ga @ 16 in (empty)", "19 ga"},
		{"steel by share", "steel 3 1/2 in 10 % (empty)", " 10 % (empty)", "@ 16 in"},
		{"no depth", "fir 25 % (empty)", " 25 % (empty)", "deep"},
		{"air without thickness", "gypsum 1/2 in + air", "", "air 3/4 in"},
		{"an emittance over 1", "air 1 in emittance 1.2", "emittance 1.2", "above 0 and up to 1"},
		{"a negative resistance", "R-0", "", "R-0"},
		{"a size the other way round", "4x2 @ 16 in (empty)", "4x2 @ 16 in (empty)", "depth last"},
		{"steel by spacing and share", "gypsum 1/2 in + steel 3 1/2 in @ 16 in framing 30 % (empty) + R-1", "steel 3 1/2 in @ 16 in framing 30 % (empty) + R-1", "30 %"},
		{"steel behind another kind", "2x4 10 %, steel 3 1/2 in @ 16 in (fiberglass R-13)", "steel 3 1/2 in @ 16 in (fiberglass R-13)", "only member"},
		{"steel before another kind", "steel 3 1/2 in @ 16 in, 2x4 10 % (fiberglass R-13)", "steel 3 1/2 in @ 16 in, 2x4 10 % (fiberglass R-13)", "only member"},
		{"two kinds of steel", "steel 3 1/2 in @ 16 in, steel 3 1/2 in @ 24 in (fiberglass R-13)", "steel 3 1/2 in @ 16 in, steel 3 1/2 in @ 24 in (fiberglass R-13)", "only member"},
		{"two kinds, one without a share", "2x4 @ 16 in, fir 3 1/2 in 4 % (empty)", ", fir 3 1/2 in 4 % (empty)", "share"},
		{"a control character", "gypsum\x00 1/2 in", "\x00 1/2 in", "control"},
		{"delete", "gypsum\x7f 1/2 in", "\x7f 1/2 in", "control"},
		{"a control character beyond ASCII", "gypsum\u009b 1/2 in", "\u009b 1/2 in", "control"},
	} {
		t.Run(c.name, func(t *testing.T) {
			spec, err := assembly.Parse(c.text)
			if err == nil {
				_, err = spec.Evaluate(assembly.Setting{})
			}
			var e *assembly.SyntaxError
			if !errors.As(err, &e) {
				t.Fatalf("Parse(%q) = %v, want a SyntaxError", c.text, err)
			}
			if c.name != "a negative resistance" && e.Text[e.Offset:] != c.at {
				t.Errorf("Parse(%q) points at %q, want %q (%s)", c.text, e.Text[e.Offset:], c.at, e.Msg)
			}
			if !strings.Contains(e.Msg, c.says) {
				t.Errorf("Parse(%q) says %q, want something of %q", c.text, e.Msg, c.says)
			}
		})
	}
}

// TestErrorsCommandNoTerminal: what does not print is shown as an escape, in one
// line, with the caret under the mistake.
func TestErrorsCommandNoTerminal(t *testing.T) {
	for text, want := range map[string]string{
		"R-1 + gyp\x1b[31msum 1/2 in":   "  R-1 + gyp\\x1b[31msum 1/2 in\n           ^",
		"R-1 +\n\tgyp\x1b[31msum":       "  R-1 +  gyp\\x1b[31msum\n            ^",
		"R-1\x1b + \xff":                "  R-1\\x1b + \\xff\n     ^",
		"R-1 + \u202egypsum":            "  R-1 + \\u202egypsum\n        ^", // right to left
		"gyps\u00adum 1/2 in":           "  gyps\\u00adum 1/2 in\n  ^",      // a soft hyphen, in the message too
		"R-1 + fichte\u00a0½ in":        "  R-1 + fichte  ½ in\n        ^",
		"R-1 + Fußbodenlack 2 cm + R-1": "  R-1 + Fußbodenlack 2 cm + R-1\n        ^",
	} {
		_, err := assembly.Parse(text)
		if err == nil {
			t.Errorf("Parse(%q) has no error", text)
			continue
		}
		got := err.Error()
		if !strings.HasSuffix(got, "\n"+want) || strings.ContainsAny(got, "\x1b\u202e\u00ad\t") || strings.Count(got, "\n") != 2 {
			t.Errorf("Parse(%q) says\n%q\nwant an end of\n%q", text, got, want)
		}
	}
}

// TestBuildErrors holds the mistakes that only show when the layers are laid out.
func TestBuildErrors(t *testing.T) {
	for _, c := range []struct{ name, text, at, says string }{
		{"a batt in a quarter of its depth", "2x2 @ 16 in (fiberglass R-38)", "fiberglass R-38)", "12 in"},
		{"a fill deeper than its bay", "2x4 @ 16 in (xps 2 in + xps 2 in)", "xps 2 in + xps 2 in)", "beyond the members"},
		{"a label deeper than its bay", "2x4 @ 16 in (cellulose R-60)", "cellulose R-60)", "thickness behind the label"},
		{"no room left", "2x4 @ 16 in (xps 3 1/2 in + fiberglass R-13)", "fiberglass R-13)", "no room"},
		{"two that stretch", "2x4 @ 16 in (cellulose + fiberglass R-13)", "cellulose + fiberglass R-13)", "thickness"},
		{"two that stretch, the other way round", "2x8 @ 16 in (fiberglass R-13 + cellulose)", "cellulose)", "thickness"},
		{"two batts that do not fit", "2x6 @ 16 in (fiberglass R-11 3 1/2 in + fiberglass R-11 3 1/2 in)", "fiberglass R-11 3 1/2 in)", "7 in"},
		{"a spacing out of all tables", "2x4 @ 3 in (empty)", "2x4 @ 3 in (empty)", "framing factor"},
		{"aligned with nothing", "gypsum 1/2 in + 2x4 @ 16 in aligned (empty)", "2x4 @ 16 in aligned (empty)", "aligned with what"},
		{"members of two depths", "2x4 20 %, 2x6 4 % (empty)", "2x6 4 % (empty)", "resistance"},
		{"a vented space between members", "R-1 + 2x6 @ 16 in (xps 2 in + air 1 in vented) + R-1", "air 1 in vented) + R-1", "layer of its own"},
		{"a slightly vented one", "R-1 + 2x6 @ 16 in (xps 2 in + air 1 in slightly vented) + R-1", "air 1 in slightly vented) + R-1", "layer of its own"},
		{"too many layers", strings.Repeat("R-1 + ", 64) + "R-2 + R-3", "R-2 + R-3", "at most 64"},
		{"too many paths", strings.Repeat("R-1 10 % (R-5) + ", 12) + "R-2 10 % (R-5) + R-3", "R-2 10 % (R-5) + R-3", "8192 paths"},
		{"a slab without thickness", "gypsum 1/2 in + xps", "xps", "thickness"},
		{"a piece in another size than it is sold", "hollow clay tile 7 in", "hollow clay tile 7 in", "in the catalogue"},
	} {
		t.Run(c.name, func(t *testing.T) {
			spec, err := assembly.Parse(c.text)
			if err == nil {
				_, err = spec.Evaluate(assembly.Setting{})
			}
			var e *assembly.SyntaxError
			if !errors.As(err, &e) {
				t.Fatalf("%q evaluates to %v, want a SyntaxError", c.text, err)
			}
			if e.Text[e.Offset:] != c.at || !strings.Contains(e.Msg, c.says) {
				t.Errorf("%q points at %q and says %q, want %q and something of %q", c.text, e.Text[e.Offset:], e.Msg, c.at, c.says)
			}
		})
	}
}

// TestAlignedLayersMakeFewPaths: members behind one another divide the wall once,
// however many layers they frame.
func TestAlignedLayersMakeFewPaths(t *testing.T) {
	text := "R-1 + 2x4 10 % (R-5)" + strings.Repeat(" + 2x4 10 % aligned (R-5)", 20) + " + R-1"
	if r := written(t, text, assembly.Setting{}); len(r.Paths) != 2 {
		t.Errorf("%d paths, want 2", len(r.Paths))
	}
}

func FuzzParse(f *testing.F) {
	for _, c := range notations {
		f.Add(c.text)
	}
	f.Add("2x4 @ 16 in (")
	f.Add("½ in x ⅔ in 5 % (air 1 in bright both vented)")
	f.Fuzz(func(t *testing.T, text string) {
		spec, err := assembly.Parse(text)
		var e *assembly.SyntaxError
		if err != nil {
			if !errors.As(err, &e) || e.Offset < 0 || e.Offset > len(e.Text) {
				t.Fatalf("Parse(%q): %#v is no error with a place in the text", text, err)
			}
			_ = e.Error()
			return
		}
		again, err := assembly.Parse(spec.String())
		if err != nil {
			t.Fatalf("Parse(%q) prints %q, which does not parse: %v", text, spec.String(), err)
		}
		if d := cmp.Diff(spec, again, sameLayers); d != "" {
			t.Fatalf("Parse(%q) prints %q, which reads otherwise:\n%s", text, spec.String(), d)
		}
		res, err := spec.Evaluate(assembly.Setting{})
		if err != nil {
			return
		}
		slack := 1e-12 * float64(res.ParallelPath)
		if r := res.Effective.R; !(r > 0) || float64(res.IsothermalPlanes-res.ParallelPath) > slack {
			t.Fatalf("%q resists %v, between %v and %v", text, r, res.IsothermalPlanes, res.ParallelPath)
		}
	})
}

var sinkSpec *assembly.Spec

// eightLayers is the wall of the benchmarks.
const eightLayers = "gypsum 1/2 in + polyethylene + 2x4 @ 16 in (fiberglass R-13) + osb 7/16 in + house wrap + xps 1 in + air 3/4 in + wood bevel siding"

func BenchmarkParse(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		s, err := assembly.Parse(eightLayers)
		if err != nil {
			b.Fatal(err)
		}
		sinkSpec = s
	}
}

var sinkR rvalue.Resistance

func BenchmarkEvaluate(b *testing.B) {
	s, err := assembly.Parse(eightLayers)
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		r, err := s.Evaluate(assembly.Setting{})
		if err != nil {
			b.Fatal(err)
		}
		sinkR = r.Effective.R
	}
}
