package window_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/assembly/window"
	"github.com/coldseam/coldseam/rvalue"
	"github.com/google/go-cmp/cmp"
)

const mm = rvalue.Millimetre

// notations has what the notation can say, with what it means, how it is printed
// and which remarks it gets.
var notations = []struct {
	text    string
	want    window.Glazing
	printed string // "": as text
	remarks string // codes
}{
	{text: "glass 4 mm", want: window.Glazing{Panes: []window.Pane{{Thickness: 4 * mm}}}},
	{
		text: "glass 1/8 in + air 1/2 in + glass 1/8 in",
		want: window.Glazing{
			Panes: []window.Pane{{Thickness: 0.125 * rvalue.Inch}, {Thickness: 0.125 * rvalue.Inch}},
			Gaps:  []window.Gap{{Thickness: 0.5 * rvalue.Inch}},
		},
	},
	{
		text: "glass 4 mm + argon 90 % 16 mm + low-e 0.04 glass 4 mm",
		want: window.Glazing{
			Panes: []window.Pane{{Thickness: 4 * mm}, {Thickness: 4 * mm, Inner: 0.04}},
			Gaps:  []window.Gap{{Thickness: 16 * mm, Fill: window.Fill{Argon: 0.9}}},
		},
	},
	{
		text: "Glass 4 mm LOW-E 0.04 + Argon 90% 16mm+glass 4mm", // the coating on the other side of the gap
		want: window.Glazing{
			Panes: []window.Pane{{Thickness: 4 * mm, Outer: 0.04}, {Thickness: 4 * mm}},
			Gaps:  []window.Gap{{Thickness: 16 * mm, Fill: window.Fill{Argon: 0.9}}},
		},
		printed: "glass 4 mm low-e 0.04 + argon 90 % 16 mm + glass 4 mm",
	},
	{
		text: "glass 3 mm + air 50 mm + storm 3 mm",
		want: window.Glazing{
			Panes: []window.Pane{{Thickness: 3 * mm}, {Thickness: 3 * mm, Storm: true}},
			Gaps:  []window.Gap{{Thickness: 50 * mm}},
		},
		remarks: "storm-gap",
	},
	{
		text: "glass 3 mm + air 2 in + storm low-e 0.15 1/8 in", // a coating before glass and thickness is towards indoors
		want: window.Glazing{
			Panes: []window.Pane{{Thickness: 3 * mm}, {Thickness: 0.125 * rvalue.Inch, Storm: true, Inner: 0.15}},
			Gaps:  []window.Gap{{Thickness: 2 * rvalue.Inch}},
		},
		printed: "glass 3 mm + air 2 in + low-e 0.15 storm 1/8 in",
		remarks: "storm-gap",
	},
	{
		text: "storm acrylic 5 mm + air 80 mm + glass 3 mm", // a secondary pane on the room side
		want: window.Glazing{
			Panes: []window.Pane{{Thickness: 5 * mm, Sheet: window.Acrylic, Storm: true}, {Thickness: 3 * mm}},
			Gaps:  []window.Gap{{Thickness: 80 * mm}},
		},
		remarks: "storm-gap",
	},
	{
		text: "glass 4 mm + argon + low-e 0.04 glass 4 mm + argon + low-e 0.04 glass 4 mm = 44 mm",
		want: window.Glazing{
			Panes: []window.Pane{{Thickness: 4 * mm}, {Thickness: 4 * mm, Inner: 0.04}, {Thickness: 4 * mm, Inner: 0.04}},
			Gaps:  []window.Gap{{Thickness: 16 * mm, Fill: window.Fill{Argon: 0.9}}, {Thickness: 16 * mm, Fill: window.Fill{Argon: 0.9}}},
		},
		printed: "glass 4 mm + argon 90 % 16 mm + low-e 0.04 glass 4 mm + argon 90 % 16 mm + low-e 0.04 glass 4 mm",
		remarks: "fill-assumed fill-assumed",
	},
	{
		text: "glass 3 mm + krypton 85 % 4 mm + low-e 0.03 glass 3 mm = 10 mm", // a slim unit
		want: window.Glazing{
			Panes: []window.Pane{{Thickness: 3 * mm}, {Thickness: 3 * mm, Inner: 0.03}},
			Gaps:  []window.Gap{{Thickness: 4 * mm, Fill: window.Fill{Krypton: 0.85}}},
		},
		printed: "glass 3 mm + krypton 85 % 4 mm + low-e 0.03 glass 3 mm",
	},
	{
		text: "laminated glass 6.8 mm + argon 60 % krypton 30 % 12 mm + tempered glass 4 mm",
		want: window.Glazing{
			Panes: []window.Pane{{Sheet: window.Laminated, Thickness: 6.8 * mm}, {Thickness: 4 * mm, Tempered: true}},
			Gaps:  []window.Gap{{Thickness: 12 * mm, Fill: window.Fill{Argon: 0.6, Krypton: 0.3}}},
		},
		printed: "laminated 6.8 mm + argon 60 % krypton 30 % 12 mm + tempered glass 4 mm",
		remarks: "interlayer-assumed",
	},
	{
		text: "laminated 7.5 mm interlayer 1.5 mm low-e 0.15", // coated towards outdoors
		want: window.Glazing{Panes: []window.Pane{{Sheet: window.Laminated, Thickness: 7.5 * mm, Interlayer: 1.5 * mm, Outer: 0.15}}},

		remarks: "coating-outdoors",
	},
	{
		text: "low-e 0.15 glass 4 mm low-e 0.04 + xenon 100 % 7 mm + polycarbonate 4 mm",
		want: window.Glazing{
			Panes: []window.Pane{{Thickness: 4 * mm, Inner: 0.15, Outer: 0.04}, {Sheet: window.Polycarbonate, Thickness: 4 * mm}},
			Gaps:  []window.Gap{{Thickness: 7 * mm, Fill: window.Fill{Xenon: 1}}},
		},
		remarks: "coating-room",
	},
	{
		text: "glass 4 mm low-e 0.04 + vacuum 0.2 mm 0.6 W/(m²·K) + glass 4 mm",
		want: window.Glazing{
			Panes: []window.Pane{{Thickness: 4 * mm, Outer: 0.04}, {Thickness: 4 * mm}},
			Gaps:  []window.Gap{{Kind: window.Vacuum, Thickness: 0.2 * mm, Conductance: 0.6 * rvalue.USI}},
		},
	},
	{
		text: "polycarbonate 3 mm + aerogel 15 mm RSI 1.25 + polycarbonate 3 mm",
		want: window.Glazing{
			Panes: []window.Pane{{Sheet: window.Polycarbonate, Thickness: 3 * mm}, {Sheet: window.Polycarbonate, Thickness: 3 * mm}},
			Gaps:  []window.Gap{{Kind: window.Aerogel, Thickness: 15 * mm, Conductance: 0.8 * rvalue.USI}},
		},
		printed: "polycarbonate 3 mm + aerogel 15 mm 0.8 W/(m²·K) + polycarbonate 3 mm",
	},
}

// TestPrintsAsWritten: what a tape or a label says comes back in its words.
func TestPrintsAsWritten(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"glass 3/32 in", ""}, // the single strength of old sashes
		{"glass 7/32 in", ""},
		{"glass 5/32 in + air 19/64 in + glass 1 1/64 in", ""},
		{"glass 4 mm + vacuum 0.2 mm R-9 + glass 4 mm", ""},
		{"glass 4 mm + vacuum 0.2 mm RSI 1.5 + glass 4 mm", ""},
		{"glass 4 mm + aerogel 15 mm U-0.11 + glass 4 mm", ""},
		{"glass 4 mm + vacuum 0.2 mm 0.6 W/(m²·K) + glass 4 mm", ""},
		{"glass 2.5 mm", ""},
		{"glass 0.118 in", ""},
		{"glass 4.2 mm + air + glass 4 mm = 24.1 mm", "glass 4.2 mm + air 15.9 mm + glass 4 mm"},
		{"glass 1/8 in + air + glass 1/8 in = 1 in", "glass 1/8 in + air 3/4 in + glass 1/8 in"},
		{"glass 4 mm + air + glass 4 mm + air + glass 4 mm = 1 in", "glass 4 mm + air 6.7 mm + glass 4 mm + air 6.7 mm + glass 4 mm"},
	} {
		want := c.want
		if want == "" {
			want = c.text
		}
		if g, _, err := window.Parse(c.text); err != nil || g.String() != want {
			t.Errorf("%s prints as %s, %v, want %s", c.text, g, err, want)
		}
	}
}

func TestParse(t *testing.T) {
	for _, c := range notations {
		g, remarks, err := window.Parse(c.text)
		if err != nil {
			t.Errorf("%v", err)
			continue
		}
		if d := cmp.Diff(c.want, g, approximately); d != "" {
			t.Errorf("%s: (-want +got)\n%s", c.text, d)
		}
		var codes []string
		for _, r := range remarks {
			codes = append(codes, r.Code)
			if r.Offset >= len(c.text) || r.Text == "" {
				t.Errorf("%s: remark %+v", c.text, r)
			}
		}
		if got := strings.Join(codes, " "); got != c.remarks {
			t.Errorf("%s: remarks %q, want %q", c.text, got, c.remarks)
		}
		printed := c.printed
		if printed == "" {
			printed = c.text
		}
		if got := g.String(); got != printed {
			t.Errorf("%s prints as %s, want %s", c.text, got, printed)
		}
		if _, err := g.Declared(window.EN673, window.Upright); err != nil {
			t.Errorf("%s: %v", c.text, err)
		}
	}
}

// approximately compares lengths that were summed.
var approximately = cmp.Comparer(func(a, b rvalue.Length) bool { return math.Abs(a.SI()-b.SI()) < 1e-12 })

// TestParseMistakes: each points at what is wrong and says what would do.
func TestParseMistakes(t *testing.T) {
	for _, c := range []struct{ text, at, says string }{
		{"", "", "a pane or a gap is missing"},
		{"glass", "", "how thick is the pane?"},
		{"4 mm", "4 mm", "a thickness without a pane; write what it is made of before it, such as glass 4 mm"},
		{"glass 4", "4", "bare number"},
		{"glass 4 mm 5 mm", "5 mm", "a second thickness"},
		{"glass 4 mm + glass 4 mm", "glass 4 mm", "two panes with nothing between"},
		{"glass 4 mm + 16 mm + glass 4 mm", "16 mm + glass 4 mm", "a gap of what?"},
		{"air 16 mm + glass 4 mm", "air 16 mm + glass 4 mm", "no pane on its indoor side"},
		{"glass 4 mm + air 16 mm", "", "a pane is missing behind the last gap"},
		{"glass 4 mm + air 8 mm + argon 8 mm + glass 4 mm", "argon 8 mm + glass 4 mm", "two gaps with no pane between"},
		{"glass 4 mm + + glass 4 mm", "+ glass 4 mm", "a pane or a gap is missing"},
		{"glass 4 mm + air + glass 4 mm", " + glass 4 mm", "how wide is the gap?"},
		{"double glass 4 mm", "double glass 4 mm", "is neither a pane"},
		{"glas 4 mm", "glas 4 mm", "did you mean glass?"},
		{"glass 4 mm + argno 16 mm + glass 4 mm", "argno 16 mm + glass 4 mm", "did you mean argon?"},
		{"lowe 0.04 laminatd 6 mm", "laminatd 6 mm", "did you mean laminated?"},
		{"glass 4 mm + helium 16 mm + glass 4 mm", "helium 16 mm + glass 4 mm", `"helium" is neither a pane`},
		{"glass 4 mm + air 16 mm wide + glass 4 mm", "wide + glass 4 mm", "nothing may follow"},
		// two coatings on one face
		{"low-e 0.04 low-e 0.15 glass 4 mm", "low-e 0.15 glass 4 mm", "two coatings on the face towards indoors"},
		{"glass 4 mm low-e 0.04 low-e 0.15", "low-e 0.15", "two coatings on the face towards outdoors"},
		{"low-e glass 4 mm", " glass 4 mm", "how low?"},
		{"glass 4 mm low-e", "", "how low?"},
		{"low-e 0.04", "", "a coating on what?"},
		{"low-e 0,04 glass 4 mm", "0,04 glass 4 mm", "is no emissivity"},
		{"low-e 0.95 glass 4 mm", "0.95 glass 4 mm", "bare glass"},
		{"low-e 0 glass 4 mm", "0 glass 4 mm", "no coating's"},
		{"low e glass 4 mm", " glass 4 mm", "how low?"},
		// gas in a zero gap, and shares
		{"glass 4 mm + argon 90 % 0 mm + glass 4 mm", "0 mm + glass 4 mm", "a gap of nothing holds no gas"},
		{"glass 4 mm + argon 120 % 16 mm + glass 4 mm", "120 % 16 mm + glass 4 mm", "a fill of 120 % is impossible"},
		{"glass 4 mm + argon 0 % 16 mm + glass 4 mm", "0 % 16 mm + glass 4 mm", "a fill of 0 % is impossible"},
		{"glass 4 mm + argon x% 16 mm + glass 4 mm", "x% 16 mm + glass 4 mm", "neither"},
		{"glass 4 mm + argon 60 % krypton 50 % 9 mm + glass 4 mm", "krypton 50 % 9 mm + glass 4 mm", "fill 110 %"},
		{"glass 4 mm + argon 60 % krypton 9 mm + glass 4 mm", " 9 mm + glass 4 mm", "how much krypton?"},
		{"glass 4 mm + argon krypton 30 % 9 mm + glass 4 mm", " krypton 30 % 9 mm + glass 4 mm", "how much argon?"},
		{"glass 4 mm + argon 60 % argon 30 % 9 mm + glass 4 mm", "argon 30 % 9 mm + glass 4 mm", "argon twice"},
		{"glass 4 mm + argon 60 % air 40 % 9 mm + glass 4 mm", "air 40 % 9 mm + glass 4 mm", "air is what the other gases leave"},
		{"glass 3 mm + argon 50 mm + storm 3 mm", "argon 50 mm + storm 3 mm", "not sealed"},
		{"glass 4 mm + air 400 mm + glass 4 mm", "air 400 mm + glass 4 mm", "out of range"},
		{"glass 4 mm + vacuum 0.2 mm + glass 4 mm", " + glass 4 mm", "what does the vacuum conduct?"},
		{"glass 4 mm + vacuum 0.6 W/(m²·K) + glass 4 mm", "W/(m²·K) + glass 4 mm", "a length"},
		{"glass 4 mm + aerogel + glass 4 mm", " + glass 4 mm", "how thick is the aerogel?"},
		{"glass 4 mm + aerogel 15 mm lots + glass 4 mm", "lots + glass 4 mm", "no number"},
		// the whole
		{"glass 10 mm + air + glass 10 mm = 18 mm", "18 mm", "the panes alone are 20 mm (0.787 in) thick, the whole only 18 mm"},
		{"glass 25 mm = 24 mm", "24 mm", "the panes alone are 25 mm"},
		{"glass 4 mm + air 16 mm + glass 4 mm = 26 mm", "26 mm", "panes and gaps add up to 24 mm"},
		{"glass 4 mm + air 16 mm + glass 4 mm + air + glass 4 mm = 28 mm", "28 mm", "leaves nothing"},
		{"glass 4 mm =", "", "how thick is the whole?"},
		{"glass 4 mm = 4 mm = 4 mm", "= 4 mm", "nothing may follow"},
		{"glass 4 mm = thick", "thick", "no number"},
		{"glass 80 mm", "glass 80 mm", "no pane's"},
		{"laminated acrylic 4 mm", "acrylic 4 mm", "acrylic after laminated"},
		{"laminated 0.5 mm", "laminated 0.5 mm", "does not fit"},
		{"glass 4 mm interlayer 1 mm", "interlayer 1 mm", "only laminated"},
		{"laminated 4 mm interlayer", "", "how thick is the interlayer?"},
		{strings.Repeat("glass 3 mm + air 9 mm + ", 6) + "glass 3 mm", "glass 3 mm", "more than 6 panes"},
		{"glass\x004 mm", "\x004 mm", "control character"},
		{"glass 4 mm\xff", "\xff", "broken text"},
	} {
		_, _, err := window.Parse(c.text)
		var e *assembly.SyntaxError
		if !errors.As(err, &e) {
			t.Errorf("%q: %v, want a SyntaxError", c.text, err)
			continue
		}
		if e.Text[e.Offset:] != c.at || !strings.Contains(e.Msg, c.says) {
			t.Errorf("%q points at %q and says %q, want %q and something of %q", c.text, e.Text[e.Offset:], e.Msg, c.at, c.says)
		}
	}
	if _, _, err := window.Parse(strings.Repeat("x", 5000)); err == nil {
		t.Error("5000 bytes are accepted")
	}
}

// FuzzParse: whatever is read prints as something that reads the same and can be
// computed; an error points into the text.
func FuzzParse(f *testing.F) {
	for _, c := range notations {
		f.Add(c.text)
	}
	f.Add("glass 4 mm + argon 33.3 % krypton 12.345 % 0.1234567 in + low e 1e-3 storm ⅛ in = 1 ft")
	f.Add("glass 5'-4 1/2\" + sf6 1e-7 % 3 1/2 in + vacuum")
	f.Fuzz(func(t *testing.T, text string) {
		g, _, err := window.Parse(text)
		var e *assembly.SyntaxError
		if err != nil {
			if !errors.As(err, &e) || e.Offset < 0 || e.Offset > len(e.Text) {
				t.Fatalf("Parse(%q): %#v is no error with a place in the text", text, err)
			}
			_ = e.Error()
			return
		}
		again, _, err := window.Parse(g.String())
		if err != nil {
			t.Fatalf("Parse(%q) prints %q, which does not parse: %v", text, g.String(), err)
		}
		if d := cmp.Diff(g, again); d != "" {
			t.Fatalf("Parse(%q) prints %q, which reads otherwise:\n%s", text, g.String(), d)
		}
		s, err := g.Design(window.Winter())
		if err != nil || !(s.U > 0) || s.U.SI() > 12 {
			t.Fatalf("%s: U %v, %v", g, s.U, err)
		}
	})
}

// A glazing is written indoors first; a coating stands on the side of its pane
// that it is on.
func ExampleParse() {
	g, _, err := window.Parse("glass 4 mm + argon 90 % 16 mm + low-e 0.04 glass 4 mm")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(len(g.Panes), "panes,", g.Thickness(), "thick")
	fmt.Println("coated towards indoors:", g.Panes[1].Inner)
	// Output:
	// 2 panes, 24 mm thick
	// coated towards indoors: 0.04
}

// What a label says: EN 673, upright, to one decimal.
func ExampleGlazing_Declared() {
	for _, text := range []string{
		"glass 4 mm",
		"glass 4 mm + air 12 mm + glass 4 mm",
		"glass 4 mm + argon 90 % 16 mm + low-e 0.03 glass 4 mm",
	} {
		g, _, err := window.Parse(text)
		if err != nil {
			fmt.Println(err)
			return
		}
		c, err := g.Declared(window.EN673, window.Upright)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%.1f W/(m²·K)  %s\n", c.U.SI(), g)
	}
	// Output:
	// 5.7 W/(m²·K)  glass 4 mm
	// 2.8 W/(m²·K)  glass 4 mm + air 12 mm + glass 4 mm
	// 1.1 W/(m²·K)  glass 4 mm + argon 90 % 16 mm + low-e 0.03 glass 4 mm
}

// What the glass does on the handbook's winter night, and how cold it is inside.
func ExampleGlazing_Design() {
	for _, text := range []string{"glass 1/8 in", "glass 1/8 in + air 2 in + storm 1/8 in"} {
		g, _, err := window.Parse(text)
		if err != nil {
			fmt.Println(err)
			return
		}
		s, err := g.Design(window.Winter())
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("U-%.2f, %.0f °F inside  %s\n", s.U.IP(), s.Faces[0].Fahrenheit(), g)
	}
	// Output:
	// U-1.07, 14 °F inside  glass 1/8 in
	// U-0.50, 43 °F inside  glass 1/8 in + air 2 in + storm 1/8 in
}
