package section_test

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/assembly/section"
	"github.com/coldseam/coldseam/rvalue"
	"github.com/coldseam/coldseam/testdata"
)

func solveSolid(t *testing.T, s section.Solid, o section.SolidOptions) *section.SolidResult {
	t.Helper()
	r, err := s.Solve(o)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// oursSolid computes what the rows of a case in space ask for.
func oursSolid(t *testing.T, s section.Solid, rows []testdata.Row) (out []float64) {
	t.Helper()
	place := func(row testdata.Row) section.Place {
		return spot(row.Number(t, "x"), row.Number(t, "y"), row.Number(t, "z"))
	}
	var o section.SolidOptions
	for _, row := range rows {
		if row["quantity"] == "temperature" {
			o.Points = append(o.Points, place(row))
		}
	}
	r := solveSolid(t, s, o)
	if r.Balance > 1e-9 || (r.High-r.Low)/2 > 0.01*r.Heat || r.Remarks != nil {
		t.Errorf("%.5f to %.5f W, balance %.2g, %v", r.Low, r.High, r.Balance, r.Remarks)
	}
	rooms := map[string]section.RoomFlow{}
	for _, room := range r.Rooms {
		rooms[room.Name] = room
	}
	air := map[string]int{"alpha": 0, "beta": 1, "gamma": 2} // by temperature
	n := 0
	for _, row := range rows {
		words := strings.Fields(row["quantity"])
		switch words[0] {
		case "flow":
			if len(words) == 1 {
				out = append(out, r.Heat)
			} else {
				out = append(out, r.Airs[air[words[1]]].Heat)
			}
		case "coldest", "warmest":
			s := rooms["outside"].Warmest
			if words[0] == "coldest" {
				s = rooms[words[1]].Coldest
			}
			if s.At != place(row) {
				t.Errorf("%s at %v, want %v", row["quantity"], s.At, place(row))
			}
			out = append(out, s.Temperature.Celsius())
		case "weight":
			out = append(out, rooms[words[3]].Coldest.Weights[air[words[1]]])
		case "L3D":
			out = append(out, r.Between[air[words[1]]][air[words[2]]])
		case "temperature":
			out = append(out, r.Points[n].Temperature.Celsius())
			n++
		default:
			t.Fatalf("unknown quantity %q", row["quantity"])
		}
	}
	return out
}

// TestExtruded: a plane section, drawn out into a solid, lets as much heat
// through per metre, whichever way it lies in space.
func TestExtruded(t *testing.T) {
	rng := rand.New(rand.NewPCG(1926, 11))
	for range 40 {
		g := randomGrid(rng)
		plane := g.solve(t, at)
		depth := 0.05 + rng.Float64()
		turn := rng.IntN(3)
		place := func(x, y, z float64) section.Place {
			c := [3]float64{x, y, z}
			return spot(c[turn], c[(turn+1)%3], c[(turn+2)%3])
		}
		var s section.Solid
		y, width := 0.0, sum(g.widths)
		for j, h := range g.heights {
			x := 0.0
			for i, w := range g.widths {
				s.Boxes = append(s.Boxes, section.Box{From: place(x, y, 0), To: place(x+w, y+h, depth), Conductivity: rvalue.Conductivity(g.k[j][i])})
				x += w
			}
			y += h
		}
		s.Rooms = []section.Room{
			{Name: "warm", From: place(0, -1, 0), To: place(width, 0, depth), Air: rvalue.FromCelsius(20), Film: rvalue.Resistance(g.rsi)},
			{Name: "cold", From: place(0, y, 0), To: place(width, y+1, depth), Air: rvalue.FromCelsius(-5), Film: rvalue.Resistance(g.rse)},
		}
		r := solveSolid(t, s, section.SolidOptions{Tolerance: 0.05, Surface: 0.05, Unknowns: 30000})
		if r.Low > plane.High*depth || r.High < plane.Low*depth || r.Low > r.High || r.Balance > 1e-8 {
			t.Fatalf("%v to %v W for %v m of %v to %v W/m, balance %v, with %+v", r.Low, r.High, depth, plane.Low, plane.High, r.Balance, g)
		}
	}
}

// TestSheetOfMetal: case 2, aluminium 1.5 mm thin beside insulation, drawn out
// into a solid, must be solved in as few iterations as others, and to the flow
// that the plane gives.
func TestSheetOfMetal(t *testing.T) {
	plane := solve(t, roofEdge(), section.Options{})
	var s section.Solid
	for _, q := range roofEdge().Pieces {
		s.Boxes = append(s.Boxes, box(q.Name, float64(q.From.X), float64(q.To.X), 0, 1, float64(q.From.Y), float64(q.To.Y), float64(q.Conductivity)))
	}
	s.Rooms = []section.Room{room("inside", 0, 0.5, 0, 1, -1, 0, 20, 0.11), room("outside", 0, 0.5, 0, 1, 0.0475, 1, 0, 0.06)}
	r := solveSolid(t, s, section.SolidOptions{Surface: 0.01})
	if r.Low > plane.High || r.High < plane.Low || math.Abs(r.Heat/plane.Heat-1) > 1e-3 {
		t.Errorf("%v (%v to %v) W, in the plane %v to %v W/m", r.Heat, r.Low, r.High, plane.Low, plane.High)
	}
	if r.Iterations > 80 {
		t.Errorf("%d iterations for %d unknowns", r.Iterations, r.Unknowns)
	}
}

// TestPlainWallSolid: in plain layers both bounds are exact, and what is left of
// a wall less its own U is nothing.
func TestPlainWallSolid(t *testing.T) {
	s := section.Solid{
		Boxes: []section.Box{box("a", 0, 2, 0, 3, 0, 0.1, 0.5), box("b", 0, 2, 0, 3, 0.1, 0.3, 0.04)},
		Rooms: []section.Room{room("in", 0, 2, 0, 3, -1, 0, 20, 0.13), room("out", 0, 2, 0, 3, 0.3, 1, -10, 0.04)},
	}
	r := solveSolid(t, s, section.SolidOptions{})
	resistance := 0.13 + 0.1/0.5 + 0.2/0.04 + 0.04
	if want := 6 * 30 / resistance; math.Abs(r.Low-want) > 1e-8*want || math.Abs(r.High-want) > 1e-8*want {
		t.Errorf("%v to %v W, want %v", r.Low, r.High, want)
	}
	u := rvalue.Transmittance(1 / resistance)
	if chi := r.Chi([]section.Patch{{U: u, Area: 6 * rvalue.SquareMetre}}, nil); math.Abs(float64(chi)) > 1e-8 {
		t.Errorf("a plain wall has a chi of %v", chi)
	}
	edge := []section.Edge{{Psi: 0.1 * rvalue.PsiSI, Length: 2 * rvalue.Metre}}
	if chi := r.Chi([]section.Patch{{U: u, Area: 6 * rvalue.SquareMetre}}, edge); math.Abs(float64(chi)+0.2) > 1e-8 {
		t.Errorf("a plain wall less an edge of 0.2 W/K has a chi of %v", chi)
	}
}

// TestSolidRefuses spoils a solid in every way that is known.
func TestSolidRefuses(t *testing.T) {
	for name, tt := range map[string]struct {
		spoil func(s *section.Solid, o *section.SolidOptions)
		want  string
	}{
		"nothing drawn":   {func(s *section.Solid, _ *section.SolidOptions) { s.Boxes = nil }, "no boxes"},
		"flat":            {func(s *section.Solid, _ *section.SolidOptions) { s.Boxes[0].To.Z = 0 }, "all sides must be longer"},
		"NaN":             {func(s *section.Solid, _ *section.SolidOptions) { s.Boxes[0].To.Z = rvalue.Length(math.NaN()) }, "must be numbers"},
		"no conductivity": {func(s *section.Solid, _ *section.SolidOptions) { s.Boxes[1].Conductivity = 0 }, "positive and finite"},
		"far apart": {func(s *section.Solid, _ *section.SolidOptions) {
			s.Boxes[1].Conductivity = 1e9 * rvalue.WattPerMetreKelvin
		}, "rounding would decide"},
		"overlap":         {func(s *section.Solid, _ *section.SolidOptions) { s.Boxes[1].To.X = 0.5 * rvalue.Metre }, `box 2 "insulation" overlaps box 1 "bar"`},
		"hole":            {func(s *section.Solid, _ *section.SolidOptions) { s.Boxes[1].To.X = 0.4 * rvalue.Metre }, "beside material that no room reaches"},
		"no rooms":        {func(s *section.Solid, _ *section.SolidOptions) { s.Rooms = nil }, "there are no rooms"},
		"one temperature": {func(s *section.Solid, _ *section.SolidOptions) { s.Rooms[0].Air = s.Rooms[1].Air }, "nothing would flow"},
		"negative film":   {func(s *section.Solid, _ *section.SolidOptions) { s.Rooms[0].Film = rvalue.Resistance(-1.0) }, "0 or more"},
		"absolute zero":   {func(s *section.Solid, _ *section.SolidOptions) { s.Rooms[0].Air = 0 }, "above absolute zero"},
		"far away": {func(s *section.Solid, _ *section.SolidOptions) {
			s.Rooms = append(s.Rooms, room("moon", 5, 6, 5, 6, 5, 6, 0, 0.1))
		}, `room "moon" touches no material`},
		"two rooms in one": {func(s *section.Solid, _ *section.SolidOptions) {
			s.Rooms = append(s.Rooms, room("more", 0, 1, 0, 1, 0.3, 1, 5, 0.1))
		}, `overlaps room "inside"`},
		"two airs": {func(s *section.Solid, _ *section.SolidOptions) {
			s.Rooms = append(s.Rooms, room("inside", 0, 1, 0, 1, 1, 2, 5, 0.1))
		}, "another air or film"},
		"two parts": {func(s *section.Solid, _ *section.SolidOptions) {
			s.Boxes = append(s.Boxes, box("lost", 2, 3, 0, 1, 0, 0.2, 1))
			s.Rooms = append(s.Rooms, room("outside", 1, 2, 0, 1, -1, 1, 0, 0.1), room("outside", 2, 3, 0, 1, 0.2, 1, 0, 0.1))
		}, "not joined"},
		"jump": {func(s *section.Solid, _ *section.SolidOptions) {
			s.Rooms[0].Film, s.Rooms[1].Film = 0, 0
			s.Rooms = append(s.Rooms, room("inside", -1, 0, 0, 1, 0, 1, 1, 0))
		}, "no bound holds the heat"},
		"point outside":    {func(_ *section.Solid, o *section.SolidOptions) { o.Points = []section.Place{spot(0.1, 0.1, 0.5)} }, "lies in no box"},
		"negative":         {func(_ *section.Solid, o *section.SolidOptions) { o.Tolerance = -1 }, "a tolerance of -1"},
		"no unknowns":      {func(_ *section.Solid, o *section.SolidOptions) { o.Unknowns = -1 }, "-1 unknowns are none"},
		"too few unknowns": {func(_ *section.Solid, o *section.SolidOptions) { o.Unknowns = 10 }, "more than the 10 allowed"},
	} {
		t.Run(name, func(t *testing.T) {
			s, o := ironBar(), section.SolidOptions{}
			tt.spoil(&s, &o)
			r, err := s.Solve(o)
			if err == nil || !strings.Contains(err.Error(), tt.want) || !strings.HasPrefix(err.Error(), "section: ") || r != nil {
				t.Errorf("error %v, want one with %q", err, tt.want)
			}
		})
	}
}
