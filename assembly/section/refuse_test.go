package section_test

import (
	"math"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/assembly/section"
	"github.com/coldseam/coldseam/rvalue"
)

// plain is a section that solves; tests spoil it.
func plain() section.Section {
	return section.Section{
		Pieces: []section.Piece{piece("left", 0, 0.1, 0, 0.2, 1), piece("right", 0.1, 0.3, 0, 0.2, 0.04)},
		Boundaries: []section.Boundary{
			faces("inside", 0, 0, 0.3, 0, 20, 0.13), faces("outside", 0, 0.2, 0.3, 0.2, -5, 0.04),
		},
	}
}

// TestRefuses spoils a section in every way that is known, and wants an error
// that names the place and says what would do.
func TestRefuses(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for name, tt := range map[string]struct {
		spoil func(s *section.Section, o *section.Options)
		want  string
	}{
		"nothing drawn":         {func(s *section.Section, _ *section.Options) { s.Pieces = nil }, "no pieces"},
		"no width":              {func(s *section.Section, _ *section.Options) { s.Pieces[0].To.X = 0 }, `piece 1 "left" is 0 by 0.2 m`},
		"a NaN":                 {func(s *section.Section, _ *section.Options) { s.Pieces[1].To.Y = rvalue.Length(nan) }, "coordinates must be numbers"},
		"endless":               {func(s *section.Section, _ *section.Options) { s.Pieces[1].To.X = rvalue.Length(inf) }, "coordinates must be numbers"},
		"no conductivity":       {func(s *section.Section, _ *section.Options) { s.Pieces[1].Conductivity = 0 }, "must be positive and finite"},
		"negative conductivity": {func(s *section.Section, _ *section.Options) { s.Pieces[1].Conductivity = rvalue.Conductivity(-1.0) }, "must be positive and finite"},
		"far apart": {func(s *section.Section, _ *section.Options) {
			s.Pieces[1].Conductivity = 1e-8 * rvalue.WattPerMetreKelvin
		}, `piece 1 "left" conducts 1 W/(m·K) and piece 2 "right" only 1e-08`},
		"overlap": {
			func(s *section.Section, _ *section.Options) { s.Pieces[1].From.X = 0.05 * rvalue.Metre },
			`piece 2 "right" overlaps piece 1 "left" at (0.075, 0.1) m`,
		},
		"gap inside": {
			func(s *section.Section, _ *section.Options) { s.Pieces[1].From.X = 0.12 * rvalue.Metre },
			"boundary 1 \"inside\" from (0, 0) m to (0.3, 0) m lies only partly on the surface",
		},
		"missing corner": {
			func(s *section.Section, _ *section.Options) {
				s.Pieces[0].To.Y = 0.15 * rvalue.Metre
				s.Boundaries[1].From.X = 0.1 * rvalue.Metre
			},
			"nothing is drawn at (0.05, 0.175) m",
		},
		"hole": {
			func(s *section.Section, _ *section.Options) {
				s.Pieces = []section.Piece{
					piece("", 0, 0.3, 0, 0.05, 1), piece("", 0, 0.1, 0.05, 0.15, 1), piece("", 0.2, 0.3, 0.05, 0.15, 1), piece("", 0, 0.3, 0.15, 0.2, 1),
				}
			},
			"nothing is drawn at (0.15, 0.1) m",
		},
		"hole with air": {
			func(s *section.Section, _ *section.Options) {
				s.Pieces = []section.Piece{
					piece("", 0, 0.3, 0, 0.05, 1), piece("", 0, 0.1, 0.05, 0.15, 1), piece("", 0.2, 0.3, 0.05, 0.15, 1), piece("", 0, 0.3, 0.15, 0.2, 1),
				}
				s.Boundaries = append(s.Boundaries,
					faces("duct", 0.1, 0.05, 0.2, 0.05, 5, 0.1), faces("duct", 0.1, 0.15, 0.2, 0.15, 5, 0.1),
					faces("duct", 0.1, 0.05, 0.1, 0.15, 5, 0.1), faces("duct", 0.2, 0.05, 0.2, 0.15, 5, 0.1))
			},
			"an enclosed empty space at (0.15, 0.1) m",
		},
		"two parts": {
			func(s *section.Section, _ *section.Options) {
				s.Pieces[1].From.X = 0.2 * rvalue.Metre
				s.Boundaries = []section.Boundary{
					faces("", 0, 0, 0.1, 0, 20, 0.1), faces("", 0.2, 0, 0.3, 0, 0, 0.1), faces("", 0.1, 0, 0.1, 0.2, 0, 0.1), faces("", 0.2, 0, 0.2, 0.2, 0, 0.1),
				}
			},
			"not joined by any material",
		},
		"corner to corner": {
			func(s *section.Section, _ *section.Options) {
				s.Pieces = []section.Piece{piece("", 0, 0.1, 0, 0.1, 1), piece("", 0.1, 0.2, 0.1, 0.2, 1)}
				s.Boundaries = []section.Boundary{
					faces("", 0, 0, 0.1, 0, 20, 0.1), faces("", 0.1, 0.2, 0.2, 0.2, 0, 0.1), faces("", 0.1, 0, 0.1, 0.1, 0, 0.1),
					faces("", 0, 0.1, 0.1, 0.1, 0, 0.1), faces("", 0.1, 0.1, 0.1, 0.2, 0, 0.1), faces("", 0.1, 0.1, 0.2, 0.1, 0, 0.1),
				}
			},
			"meets only at the corner (0.1, 0.1) m",
		},
		"no boundaries": {func(s *section.Section, _ *section.Options) { s.Boundaries = nil }, "all adiabatic"},
		"all adiabatic": {func(s *section.Section, _ *section.Options) {
			s.Boundaries = []section.Boundary{{To: at(0.3, 0), Adiabatic: true}}
		}, "all adiabatic"},
		"one temperature": {func(s *section.Section, _ *section.Options) { s.Boundaries[1].Air = s.Boundaries[0].Air }, "nothing would flow"},
		"absolute zero":   {func(s *section.Section, _ *section.Options) { s.Boundaries[1].Air = 0 }, "above absolute zero"},
		"negative film":   {func(s *section.Section, _ *section.Options) { s.Boundaries[1].Film = rvalue.Resistance(-0.1) }, "0 or more"},
		"endless film":    {func(s *section.Section, _ *section.Options) { s.Boundaries[1].Film = rvalue.Resistance(inf) }, "0 or more"},
		"slanting":        {func(s *section.Section, _ *section.Options) { s.Boundaries[1].To.Y = 0.1 * rvalue.Metre }, "along x or along y"},
		"no length":       {func(s *section.Section, _ *section.Options) { s.Boundaries[1].To.X = 0 }, "needs a length"},
		"nobody reaches it": {func(s *section.Section, _ *section.Options) {
			s.Boundaries[1].From.Y, s.Boundaries[1].To.Y = 0.3*rvalue.Metre, 0.3*rvalue.Metre
		}, "nothing reaches it"},
		"inside the material": {func(s *section.Section, _ *section.Options) {
			s.Boundaries[1] = faces("outside", 0.1, 0, 0.1, 0.2, 0, 0.1)
		}, "nothing reaches it"},
		"twice": {func(s *section.Section, _ *section.Options) {
			s.Boundaries = append(s.Boundaries, faces("more", 0.1, 0.2, 0.2, 0.2, 0, 0.1))
		}, `boundary 3 "more" covers what boundary 2 "outside" covers already`},
		"adiabatic with film": {func(s *section.Section, _ *section.Options) { s.Boundaries[1].Adiabatic = true }, "leave one out"},
		"point outside":       {func(_ *section.Section, o *section.Options) { o.Points = []section.Point{at(0.1, 0.1), at(1, 1)} }, "point 2 at (1, 1) m lies in no piece"},
		"negative tolerance":  {func(_ *section.Section, o *section.Options) { o.Tolerance = -1 }, "a tolerance of -1"},
		"no tolerance at all": {func(_ *section.Section, o *section.Options) { o.Surface = nan }, "a surface tolerance of NaN"},
		"no unknowns":         {func(_ *section.Section, o *section.Options) { o.Unknowns = -5 }, "-5 unknowns are none"},
		"too few unknowns":    {func(_ *section.Section, o *section.Options) { o.Unknowns = 5 }, "more than the 5 allowed"},
	} {
		t.Run(name, func(t *testing.T) {
			s, o := plain(), section.Options{}
			tt.spoil(&s, &o)
			r, err := s.Solve(o)
			if err == nil || !strings.Contains(err.Error(), tt.want) || !strings.HasPrefix(err.Error(), "section: ") || r != nil {
				t.Errorf("error %v, want one with %q", err, tt.want)
			}
		})
	}
}

// TestStops: what a bound on the work leaves undone is remarked on, and the
// result stands with its bracket.
func TestStops(t *testing.T) {
	full := solve(t, roofEdge(), section.Options{Tolerance: 1e-6})
	r := solve(t, roofEdge(), section.Options{Tolerance: 1e-6, Unknowns: 2000})
	if len(r.Remarks) != 1 || r.Remarks[0].Code != "unknowns" || r.Unknowns > 2000 || r.Low > full.High || r.High < full.Low {
		t.Errorf("%v, %d unknowns, %v to %v W/m", r.Remarks, r.Unknowns, r.Low, r.High)
	}
	first := 0
	solve(t, roofEdge(), section.Options{Watch: func(p section.Progress) bool { first = p.Unknowns; return false }})
	r = solve(t, roofEdge(), section.Options{Tolerance: 1e-6, Unknowns: first}) // one mesh alone, the bound met to the last unknown
	if len(r.Remarks) != 1 || r.Unknowns != first || r.Solves != 1 || !math.IsInf(r.Moved, 1) || strings.Contains(r.Remarks[0].Text, "Inf") || !strings.Contains(r.Remarks[0].Text, "not known") {
		t.Errorf("%v, %d unknowns of %d, moved %v", r.Remarks, r.Unknowns, first, r.Moved)
	}
	calls := 0
	r = solve(t, roofEdge(), section.Options{Tolerance: 1e-6, Watch: func(p section.Progress) bool {
		calls++
		return calls < 2
	}})
	if calls != 2 || r.Solves != 2 || len(r.Remarks) != 1 || r.Remarks[0].Code != "stopped" {
		t.Errorf("stopped after %d calls and %d meshes, %v", calls, r.Solves, r.Remarks)
	}
}

// TestAdiabaticNotch: an outline inside the rectangle around a section may be
// adiabatic when it is said to be; the heat is that of the layers left.
func TestAdiabaticNotch(t *testing.T) {
	s := plain()
	s.Pieces[1] = piece("right", 0.1, 0.3, 0, 0.1, 1)
	s.Boundaries[1] = faces("outside", 0, 0.2, 0.1, 0.2, -5, 0.04)
	s.Boundaries = append(s.Boundaries,
		section.Boundary{Name: "cut", From: at(0.1, 0.1), To: at(0.3, 0.1), Adiabatic: true},
		section.Boundary{Name: "cut", From: at(0.1, 0.1), To: at(0.1, 0.2), Adiabatic: true})
	r := solve(t, s, section.Options{})
	straight := 0.1 * 25 / (0.13 + 0.2 + 0.04) // through the left part alone
	if r.Low < straight || r.Flows[2].Heat != 0 {
		t.Errorf("%v to %v W/m, at least %v", r.Low, r.High, straight)
	}
}

// TestPlainLayers: in plain layers the solution is exact at once.
func TestPlainLayers(t *testing.T) {
	s := section.Section{
		Pieces:     []section.Piece{piece("a", 0, 1, 0, 0.1, 0.5), piece("b", 0, 1, 0.1, 0.3, 0.04)},
		Boundaries: []section.Boundary{faces("in", 0, 0, 1, 0, 20, 0.13), faces("out", 0, 0.3, 1, 0.3, 0, 0.04)},
	}
	r := solve(t, s, section.Options{Points: []section.Point{at(0.5, 0.1)}})
	want := 0.13 + 0.1/0.5 + 0.2/0.04 + 0.04
	if got := r.R(1 * rvalue.Metre).SI(); math.Abs(got-want) > 1e-12*want || r.Remarks != nil {
		t.Errorf("R %v, want %v; %v", got, want, r.Remarks)
	}
	if got, want := r.Points[0].Temperature.Celsius(), 20-20*(0.13+0.2)/want; math.Abs(got-want) > 1e-11 {
		t.Errorf("%v °C between the layers, want %v", got, want)
	}
	if f := r.Flows[0].Factor; math.Abs(f-(1-0.13/want)) > 1e-12 {
		t.Errorf("fRsi %v, want 1 − Rsi/R", f)
	}
}
