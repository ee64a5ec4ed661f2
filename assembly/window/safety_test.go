package window

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/rvalue"
)

// clausesOf returns the clauses of flags.
func clausesOf(fs []Flag) string {
	var out []string
	for _, f := range fs {
		out = append(out, f.Clause)
	}
	return strings.Join(out, " ")
}

// hazardous is a pane that just trips all four parts of the window test: 36 x 37 in,
// its bottom at 17.9 in.
func hazardous() Place {
	return Place{Width: 36 * inch, Height: 37 * inch, Bottom: 17.9 * inch, Walking: 36 * inch}
}

// away is a pane that trips nothing.
func away() Place {
	return Place{Width: 30 * inch, Height: 40 * inch, Bottom: 30 * inch, Walking: 10 * foot}
}

// TestSafety: each rule just tripped and just not, at its printed limit, in the
// edition that says so. Texts seen or from memory as the code's comments say.
func TestSafety(t *testing.T) {
	with := func(p Place, change func(*Place)) Place {
		change(&p)
		return p
	}
	for _, c := range []struct {
		name    string
		edition int
		p       Place
		want    string
	}{
		{"all four parts", 2021, hazardous(), "R308.4.3"},
		{"36 x 36 in is 9 ft², not more", 2021, with(hazardous(), func(p *Place) { p.Height = 36 * inch }), ""},
		{"a hair more than 9 ft²", 2021, with(hazardous(), func(p *Place) { p.Height = 36.01 * inch }), "R308.4.3"},
		{"bottom at exactly 18 in", 2021, with(hazardous(), func(p *Place) { p.Bottom = 18 * inch }), ""},
		{"bottom at 457 mm, less than 18 in", 2021, with(hazardous(), func(p *Place) { p.Bottom = 457 * mm }), "R308.4.3"},
		{"top at exactly 36 in", 2021, with(hazardous(), func(p *Place) { p.Width, p.Height, p.Bottom = 80*inch, 36*inch, 0 }), ""},
		{"top just above 36 in", 2021, with(hazardous(), func(p *Place) { p.Width, p.Height, p.Bottom = 80*inch, 36*inch, 0.1*inch }), "R308.4.3"},
		{"walking at exactly 36 in", 2021, hazardous(), "R308.4.3"},
		{"walking just beyond", 2021, with(hazardous(), func(p *Place) { p.Walking = 36.1 * inch }), ""},
		{"where one walks is not known", 2021, with(hazardous(), func(p *Place) { p.Walking, p.WalkingUnknown = 10*foot, true }), "R308.4.3"},
		{"its bottom is not known", 2021, with(hazardous(), func(p *Place) { p.BottomUnknown, p.BesideDoor = true, &BesideDoor{} }), ""},
		{"its bottom is not known, in a door and leaning", 2021, with(hazardous(), func(p *Place) { p.BottomUnknown, p.Door, p.Lean = true, true, 20 }), "R308.4.1 R308.6"},
		{"decorative", 2021, with(hazardous(), func(p *Place) { p.Decorative = true }), ""},
		{"behind a rail", 2021, with(hazardous(), func(p *Place) { p.Rail = true }), ""},
		{"nothing near", 2024, away(), ""},

		{"in a door", 2021, with(away(), func(p *Place) { p.Door = true }), "R308.4.1"},
		{"in a door, 3 in wide", 2021, with(away(), func(p *Place) { p.Door, p.Width = true, 3*inch }), "R308.4.1"},
		{"in a door, a 3 in sphere does not pass", 2021, with(away(), func(p *Place) { p.Door, p.Width = true, 2.9*inch }), ""},
		{"in a door, decorative", 2021, with(away(), func(p *Place) { p.Door, p.Decorative = true, true }), ""},

		{"24 in beside a door", 2015, with(away(), func(p *Place) { p.BesideDoor = &BesideDoor{Distance: 24 * inch} }), "R308.4.2"},
		{"beyond 24 in", 2015, with(away(), func(p *Place) { p.BesideDoor = &BesideDoor{Distance: 24.1 * inch} }), ""},
		{"bottom at exactly 60 in", 2015, with(away(), func(p *Place) { p.Bottom, p.BesideDoor = 60*inch, &BesideDoor{} }), ""},
		{"bottom just below 60 in", 2015, with(away(), func(p *Place) { p.Bottom, p.BesideDoor = 59.9*inch, &BesideDoor{} }), "R308.4.2"},
		{"at a right angle, by the hinges", 2015, with(away(), func(p *Place) { p.BesideDoor = &BesideDoor{Perpendicular: true, HingeSide: true} }), "R308.4.2"},
		{"at a right angle, by the lock", 2015, with(away(), func(p *Place) { p.BesideDoor = &BesideDoor{Perpendicular: true} }), ""},
		{"the same in 2006", 2006, with(away(), func(p *Place) { p.BesideDoor = &BesideDoor{Perpendicular: true} }), "R308.4.2"},
		{"behind a barrier", 2015, with(away(), func(p *Place) { p.BesideDoor = &BesideDoor{Barrier: true} }), ""},
		{"beside a closet", 2015, with(away(), func(p *Place) { p.BesideDoor = &BesideDoor{Closet: true} }), ""},
		{"fixed panel of a patio door", 2015, with(away(), func(p *Place) { p.BesideDoor = &BesideDoor{FixedPanel: true} }), ""},

		{"in a guard", 2021, with(away(), func(p *Place) { p.Guard = true }), "R308.4.4"},

		{"facing a tub, 60 in away", 2018, with(away(), func(p *Place) { p.Wet = &Wet{Distance: 60 * inch, Above: 59.9 * inch, Facing: true} }), "R308.4.5"},
		{"beyond 60 in", 2018, with(away(), func(p *Place) { p.Wet = &Wet{Distance: 60.1 * inch, Facing: true} }), ""},
		{"60 in above the tub's floor", 2018, with(away(), func(p *Place) { p.Wet = &Wet{Above: 60 * inch, Facing: true} }), ""},
		{"beside a tub, 2018", 2018, with(away(), func(p *Place) { p.Wet = &Wet{} }), ""},
		{"beside a tub, 2021", 2021, with(away(), func(p *Place) { p.Wet = &Wet{} }), "R308.4.5"},

		{"by stairs, 2021", 2021, with(away(), func(p *Place) { p.Stair = &Stair{Distance: 35.9 * inch, Above: 35.9 * inch} }), "R308.4.6"},
		{"36 in above them", 2021, with(away(), func(p *Place) { p.Stair = &Stair{Above: 36 * inch} }), ""},
		{"the same in 2006", 2006, with(away(), func(p *Place) { p.Stair = &Stair{Above: 36 * inch} }), "R308.4.6"},
		{"60 in above them in 2006", 2006, with(away(), func(p *Place) { p.Stair = &Stair{Above: 60 * inch} }), ""},
		{"36 in away, 2021", 2021, with(away(), func(p *Place) { p.Stair = &Stair{Distance: 36 * inch} }), ""},
		{"36 in away, 2006", 2006, with(away(), func(p *Place) { p.Stair = &Stair{Distance: 36 * inch} }), "R308.4.6"},
		{"behind a guard", 2021, with(away(), func(p *Place) { p.Stair = &Stair{Guarded: true} }), ""},

		{"at the bottom landing", 2012, with(away(), func(p *Place) { p.Landing = &Stair{Distance: 60 * inch, Above: 35.9 * inch} }), "R308.4.7"},
		{"36 in above it", 2012, with(away(), func(p *Place) { p.Landing = &Stair{Above: 36 * inch} }), ""},
		{"36 in above the nose, 2009", 2009, with(away(), func(p *Place) { p.Landing = &Stair{Above: 36 * inch} }), "R308.4.7"},
		{"beyond 60 in of the tread", 2012, with(away(), func(p *Place) { p.Landing = &Stair{Distance: 60.1 * inch} }), ""},

		{"leaning 15°", 2021, with(away(), func(p *Place) { p.Lean = 15 }), "R308.6"},
		{"leaning less", 2021, with(away(), func(p *Place) { p.Lean = 14.9 }), ""},
		{"all at once", 2021, with(hazardous(), func(p *Place) {
			p.Door, p.Guard, p.BesideDoor, p.Wet, p.Stair, p.Landing, p.Lean = true, true, &BesideDoor{}, &Wet{}, &Stair{}, &Stair{}, 20
		}), "R308.4.1 R308.4.2 R308.4.3 R308.4.4 R308.4.5 R308.4.6 R308.4.7 R308.6"},
	} {
		got, err := Safety(c.edition, c.p)
		if err != nil || clausesOf(got) != c.want {
			t.Errorf("%s: %q, %v, want %q", c.name, clausesOf(got), err, c.want)
		}
		for _, f := range got {
			if f.Fact == "" || f.Need == "" || !strings.Contains(f.Basis, "the local code decides") {
				t.Errorf("%s: %+v", c.name, f)
			}
		}
	}
}

// TestUnknownPlace: what is not known is not printed as if it were, and a leaning pane
// gets the thicker interlayer.
func TestUnknownPlace(t *testing.T) {
	p := hazardous()
	p.WalkingUnknown = true
	got, err := Safety(2021, p)
	if err != nil || len(got) != 1 || !strings.Contains(got[0].Fact, "where one walks is not known") || strings.Contains(got[0].Fact, "away") {
		t.Errorf("%+v, %v", got, err)
	}
	got, err = Safety(2021, Place{Width: 2 * foot, Height: 2 * foot, BottomUnknown: true, Lean: 90})
	if err != nil || len(got) != 1 || !strings.Contains(got[0].Need, "0.030 in or more (4.00 ft² of glass, its height above the floor not known)") {
		t.Errorf("%+v, %v", got, err)
	}
}

// TestSafetyMet: glass that is described as tempered or laminated satisfies a rule when
// every pane is, and a leaning one's when the pane towards the room is laminated with
// the interlayer it takes (IRC R308.1, R308.3 and R308.6, from memory).
func TestSafetyMet(t *testing.T) {
	for _, c := range []struct {
		glazing string
		lean    float64
		met     bool
		need    string
	}{
		{"glass 6 mm", 0, false, "safety glass with a permanent mark: tempered or laminated"},
		{"tempered glass 6 mm", 0, true, "it is tempered: have each pane marked permanently"},
		{"laminated 7 mm", 0, true, "it is laminated: have each pane marked"},
		{"tempered glass 6 mm + air 12 mm + laminated 7 mm", 0, true, "it is tempered and laminated"},
		{"tempered glass 6 mm + air 12 mm + glass 6 mm", 0, false, "pane 2 from indoors is neither"},
		{"glass 3 mm + air 50 mm + storm tempered 3 mm", 0, false, "pane 1 from indoors is neither"},
		{"polycarbonate 6 mm", 0, false, "safety glass with a permanent mark"},
		{"laminated 7 mm interlayer 0.76 mm + air 12 mm + tempered glass 6 mm", 30, true, "it is tempered and laminated"},
		{"laminated 7 mm interlayer 0.38 mm + air 12 mm + tempered glass 6 mm", 30, false, "an interlayer of 0.030 in"},
		{"laminated 7 mm", 30, false, "an interlayer of 0.030 in"}, // its interlayer is assumed
		{"tempered glass 6 mm", 30, false, "tempered glass with a screen below"},
		{"tempered glass 6 mm + air 12 mm + laminated 7 mm interlayer 0.76 mm", 30, false, "on the room side"},
	} {
		p := away()
		p.Guard, p.Lean, p.BottomUnknown = c.lean == 0, c.lean, true
		var err error
		if p.Glazing, _, err = Parse(c.glazing); err != nil {
			t.Fatal(err)
		}
		got, err := Safety(2021, p)
		if err != nil || len(got) != 1 || got[0].Met != c.met || !strings.Contains(got[0].Need, c.need) {
			t.Errorf("%s at %g°: %+v, %v, want met %v, %q", c.glazing, c.lean, got, err, c.met, c.need)
		}
	}
}

// TestSloped: the interlayer of a sloped pane, by its size and height (2006 text,
// seen): 0.015 in up to 16 ft² and 12 ft, else 0.030 in.
func TestSloped(t *testing.T) {
	for _, c := range []struct {
		width, height, bottom rvalue.Length
		want                  string
	}{
		{4 * foot, 4 * foot, 12 * foot, "0.015"}, // level: its highest edge is its lowest
		{4 * foot, 4.01 * foot, 12 * foot, "0.030"},
		{4 * foot, 4 * foot, 12.01 * foot, "0.030"},
	} {
		got, err := Safety(2006, Place{Width: c.width, Height: c.height, Bottom: c.bottom, Walking: 10 * foot, Lean: 90})
		if err != nil || len(got) != 1 || !strings.Contains(got[0].Need, c.want) {
			t.Errorf("%v x %v at %v: %+v, %v, want %s in", c.width, c.height, c.bottom, got, err, c.want)
		}
	}
}

func TestSafetyRefused(t *testing.T) {
	for name, spoil := range map[string]func(*Place){
		"no width":         func(p *Place) { p.Width = 0 },
		"bottom below 0":   func(p *Place) { p.Bottom = -1 },
		"bottom NaN":       func(p *Place) { p.Bottom = rvalue.Length(math.NaN()) },
		"lean over 90":     func(p *Place) { p.Lean = 91 },
		"lean NaN":         func(p *Place) { p.Lean = math.NaN() },
		"door behind":      func(p *Place) { p.BesideDoor = &BesideDoor{Distance: -1} },
		"tub behind":       func(p *Place) { p.Wet = &Wet{Distance: -1} },
		"stairs behind":    func(p *Place) { p.Stair = &Stair{Distance: -1} },
		"landing above it": func(p *Place) { p.Landing = &Stair{Above: -1} },
	} {
		p := away()
		spoil(&p)
		if _, err := Safety(2021, p); err == nil {
			t.Errorf("%s is accepted", name)
		}
	}
	if _, err := Safety(2017, away()); err == nil || !strings.Contains(err.Error(), "edition 2017") {
		t.Errorf("edition 2017: %v", err)
	}
	if e := Editions(); !slices.IsSorted(e) || len(e) != 7 {
		t.Errorf("editions %v", e)
	}
}

// TestEscape: R310 at its limits. 20 in wide wants 41.04 in of height, 24 in high
// wants 34.2 in of width; 34 x 24 in, which a page gives, is 5.67 ft², just short.
func TestEscape(t *testing.T) {
	for _, c := range []struct {
		name    string
		e       Escape
		edition int
		want    string
	}{
		{"20 x 41.04 in", Escape{Width: 20 * inch, Height: 41.04 * inch, Sill: 44 * inch}, 2021, ""},
		{"20 x 41 in", Escape{Width: 20 * inch, Height: 41 * inch}, 2021, "R310.2.1"},
		{"34.2 x 24 in", Escape{Width: 34.2 * inch, Height: 24 * inch}, 2021, ""},
		{"34 x 24 in", Escape{Width: 34 * inch, Height: 24 * inch}, 2021, "R310.2.1"},
		{"34 x 24 in at grade", Escape{Width: 34 * inch, Height: 24 * inch, Grade: true}, 2021, ""},
		{"30 x 24 in at grade is 5.0 ft²", Escape{Width: 30 * inch, Height: 24 * inch, Grade: true}, 2021, ""},
		{"29.9 x 24 in at grade", Escape{Width: 29.9 * inch, Height: 24 * inch, Grade: true}, 2021, "R310.2.1"},
		{"too low", Escape{Width: 40 * inch, Height: 23.9 * inch}, 2021, "R310.2.2"},
		{"too narrow", Escape{Width: 19.9 * inch, Height: 50 * inch}, 2021, "R310.2.2"},
		{"sill at 44.1 in", Escape{Width: 30 * inch, Height: 40 * inch, Sill: 44.1 * inch}, 2021, "R310.2.3"},
		{"the same by 2015", Escape{Width: 30 * inch, Height: 40 * inch, Sill: 44.1 * inch}, 2015, "R310.2.2"},
		{"all, 2012", Escape{Width: 19 * inch, Height: 23 * inch, Sill: 50 * inch}, 2012, "R310.1.1 R310.1.2 R310.1.3 R310.1"},
		{"24 x 20 in is only 3.33 ft²", Escape{Width: 20 * inch, Height: 24 * inch}, 2021, "R310.2.1"},
	} {
		got, err := c.e.Check(c.edition)
		if err != nil || clausesOf(got) != c.want {
			t.Errorf("%s: %q, %v, want %q", c.name, clausesOf(got), err, c.want)
		}
	}
	narrow, err := Escape{Width: 20 * inch, Height: 24 * inch}.Check(2021)
	if err != nil || !strings.Contains(narrow[0].Fact, "3.33 ft²") || !strings.Contains(narrow[0].Need, "3 ft 5 1/8 in high") {
		t.Errorf("20 x 24 in: %+v, %v", narrow, err)
	}
	// 5.7 ft² are 820.8 in²: no advice rests on a side that fails by itself.
	for _, c := range []struct {
		e          Escape
		fact, need string
	}{
		{Escape{Width: 19 * inch, Height: 40 * inch}, "5.28 ft² clear is less than the 5.7 ft²", "20 5/8 in wide at this height"},
		{Escape{Width: 37.5 * inch, Height: 20 * inch}, "5.21 ft²", "24 in high at this width"},
		{Escape{Width: 19 * inch, Height: 23 * inch}, "3.03 ft²", "3 ft 5 1/8 in high at the least width of 20 in, or 2 ft 10 1/4 in wide at the least height of 24 in"},
		{Escape{Width: 30 * inch, Height: 27.355 * inch}, "5.699 ft² clear is less than the 5.7 ft²", "2 ft 3 3/8 in high at this width, or 2 ft 6 1/8 in wide at this height"},
	} {
		got, err := c.e.Check(2021)
		if err != nil || !strings.Contains(got[0].Fact, c.fact) || got[0].Need != "at least 5.7 ft² clear: "+c.need {
			t.Errorf("%v x %v: %+v, %v, want %q, %q", c.e.Width, c.e.Height, got, err, c.fact, c.need)
		}
	}
	for _, bad := range []Escape{{}, {Width: 1, Height: 1, Sill: -1}, {Width: rvalue.Length(math.NaN()), Height: 1}} {
		if _, err := bad.Check(2021); err == nil {
			t.Errorf("%+v is accepted", bad)
		}
	}
	if _, err := (Escape{Width: 1, Height: 1}).Check(1999); err == nil {
		t.Error("edition 1999 is accepted")
	}
}
