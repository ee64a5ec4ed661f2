package section_test

import (
	"math"
	"testing"

	"github.com/coldseam/coldseam/assembly/section"
	"github.com/coldseam/coldseam/rvalue"
)

func psiOf(t *testing.T, d section.Detail, err error) float64 {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
	r, err := d.Section.Solve(section.Options{})
	if err != nil {
		t.Fatalf("%s: %v", d.About, err)
	}
	return r.Psi(d.Flanks...).SI()
}

// TestCatalogue: every section can be solved and is found by its name, is a bridge,
// says what it assumes, and has nothing left of the junction at its cuts: the surface
// at the far end of each inner face is as warm as the flank alone would have it.
func TestCatalogue(t *testing.T) {
	for _, d := range section.Catalogue() {
		t.Run(d.Name, func(t *testing.T) {
			if found, ok := section.FindDetail(" " + d.Name); !ok || found.Name != d.Name || d.About == "" || len(d.Assumed) == 0 {
				t.Errorf("found %q", found.Name)
			}
			// Inner faces of plain parts are a metre long and more.
			var ends []section.Point
			var films []rvalue.Resistance
			for _, b := range d.Section.Boundaries {
				long := math.Hypot(float64(b.To.X-b.From.X), float64(b.To.Y-b.From.Y)) > 0.9
				if b.Name == "inside" && long {
					end := b.To
					if b.From.Y < -0.9*rvalue.Metre || b.From.Y == 0 && b.To.Y == rvalue.Metre {
						end = b.From // what lies below has its cut there
					}
					ends, films = append(ends, end), append(films, b.Film)
				}
			}
			r, err := d.Section.Solve(section.Options{Points: ends})
			if err != nil {
				t.Fatal(err)
			}
			for i, p := range r.Points {
				best := math.Inf(1)
				for _, f := range d.Flanks {
					best = min(best, math.Abs(p.Temperature.Celsius()-(20-20*float64(f.U)*float64(films[i]))))
				}
				// The floor slab of the slab edge is no flank: rooms on both sides.
				if plain := math.Abs(p.Temperature.Celsius() - 20); best > 0.02 && plain > 0.15 {
					t.Errorf("at %v %.3f °C, %.3f K from any flank's", ends[i], p.Temperature.Celsius(), best)
				}
			}
			if psi := r.Psi(d.Flanks...).SI(); !(psi > 0.01 && psi < 1.1) {
				t.Errorf("psi %.3f W/(m·K)", psi)
			}
		})
	}
	if _, ok := section.FindDetail("rim joist"); ok {
		t.Error("a name in part is taken")
	}
}

// TestCatalogueLaws: insulation at the junction lowers psi, what conducts raises it.
func TestCatalogueLaws(t *testing.T) {
	wall := section.StudWall{Stud: 5.5 * rvalue.Inch, Fill: 0.0378 * rvalue.WattPerMetreKelvin}
	boarded := wall
	boarded.Foam = 2 * rvalue.Inch
	for _, c := range []struct {
		name    string
		falling bool
		psi     func(at rvalue.Length) (section.Detail, error)
		at      []rvalue.Length
	}{
		{"foam at a slab's edge", true, section.SlabEdge, []rvalue.Length{0, 1 * rvalue.Inch, 2 * rvalue.Inch, 5 * rvalue.Inch}},
		{"foam behind a rim joist", true, func(l rvalue.Length) (section.Detail, error) { return section.RimJoist(wall, l) }, []rvalue.Length{0, 1 * rvalue.Inch, 3 * rvalue.Inch}},
		{"height of a header", false, func(l rvalue.Length) (section.Detail, error) { return section.WindowHead(wall, l) }, []rvalue.Length{1.5 * rvalue.Inch, 3.5 * rvalue.Inch, 9.25 * rvalue.Inch}},
		{"heel of an eave", true, func(l rvalue.Length) (section.Detail, error) { return section.Eave(wall, 14*rvalue.Inch, l) }, []rvalue.Length{3 * rvalue.Inch, 6 * rvalue.Inch, 12 * rvalue.Inch}},
	} {
		before := math.NaN()
		for _, at := range c.at {
			d, err := c.psi(at)
			psi := psiOf(t, d, err)
			if before < psi == c.falling && !math.IsNaN(before) {
				t.Errorf("%s: psi %.4f at %v, %.4f before", c.name, psi, at, before)
			}
			before = psi
		}
	}
	for name, of := range map[string]func(section.StudWall) (section.Detail, error){
		"rim joist": func(w section.StudWall) (section.Detail, error) { return section.RimJoist(w, 0) },
		"sill":      section.WindowSill, "jamb": section.WindowJamb, "corner": section.OuterCorner,
	} {
		d, err := of(wall)
		bare := psiOf(t, d, err)
		d, err = of(boarded)
		if name != "sill" && name != "jamb" { // there the frame stands before the boards' edge
			if psi := psiOf(t, d, err); psi >= bare {
				t.Errorf("%s: psi %.4f with foam all over, %.4f without", name, psi, bare)
			}
		} else if err != nil {
			t.Error(err)
		}
	}
}

// TestParapetIsAFin: heat does not climb far in a filled parapet, so that what stands more
// than a foot above the deck changes nothing that counts.
func TestParapetIsAFin(t *testing.T) {
	wall := section.StudWall{Stud: 5.5 * rvalue.Inch, Fill: 0.0378 * rvalue.WattPerMetreKelvin}
	d, err := section.Parapet(wall, 18*rvalue.Inch, 4*rvalue.Inch)
	low := psiOf(t, d, err)
	d, err = section.Parapet(wall, 48*rvalue.Inch, 4*rvalue.Inch)
	if high := psiOf(t, d, err); math.Abs(high/low-1) > 0.002 {
		t.Errorf("psi %.5f at 18 in, %.5f at 48 in", low, high)
	}
}

// TestCornerIsSymmetric: both walls of a corner give the same heat.
func TestCornerIsSymmetric(t *testing.T) {
	d, err := section.OuterCorner(section.StudWall{Stud: 3.5 * rvalue.Inch, Fill: 0.0388 * rvalue.WattPerMetreKelvin})
	if err != nil {
		t.Fatal(err)
	}
	r, err := d.Section.Solve(section.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if a, b := r.Flows[2].Heat, r.Flows[3].Heat; math.Abs(a-b) > 1e-6*a {
		t.Errorf("%v and %v W/m", a, b)
	}
}

// TestCatalogueAgainstDefaults: the default values of ISO 14683 (from memory) are meant
// to lie above what is computed: 1.05 W/(m·K) by internal dimensions for an
// intermediate floor that interrupts insulation inside, 0.10 for the outer corner
// of a light wall.
func TestCatalogueAgainstDefaults(t *testing.T) {
	for name, most := range map[string]float64{"slab edge, bare": 1.05, "outer corner, 2x4": 0.10, "outer corner, 2x6": 0.10} {
		d, ok := section.FindDetail(name)
		if !ok {
			t.Fatal(name)
		}
		if psi := psiOf(t, d, nil); psi > most || psi < most/4 {
			t.Errorf("%s: psi %.3f, the default is %.2f W/(m·K)", name, psi, most)
		}
	}
}

// TestPlainCorner: of a homogeneous corner between two surface temperatures psi by internal
// dimensions is k(1 − 2 ln 2/π) = 0.559 k (conformal mapping); handbooks of heat transfer
// print 0.54 as the shape factor of an edge (Incropera et al., table of shape factors, from
// memory), measured by Langmuir in 1913.
func TestPlainCorner(t *testing.T) {
	s := section.Section{
		Pieces: []section.Piece{
			{To: section.Point{X: 0.2 * rvalue.Metre, Y: 1.2 * rvalue.Metre}, Conductivity: 1 * rvalue.WattPerMetreKelvin},
			{From: section.Point{X: 0.2 * rvalue.Metre}, To: section.Point{X: 1.2 * rvalue.Metre, Y: 0.2 * rvalue.Metre}, Conductivity: 1 * rvalue.WattPerMetreKelvin},
		},
		Boundaries: []section.Boundary{
			{To: section.Point{Y: 1.2 * rvalue.Metre}, Air: rvalue.FromCelsius(0)},
			{To: section.Point{X: 1.2 * rvalue.Metre}, Air: rvalue.FromCelsius(0)},
			{From: section.Point{X: 0.2 * rvalue.Metre, Y: 0.2 * rvalue.Metre}, To: section.Point{X: 0.2 * rvalue.Metre, Y: 1.2 * rvalue.Metre}, Air: rvalue.FromCelsius(20)},
			{From: section.Point{X: 0.2 * rvalue.Metre, Y: 0.2 * rvalue.Metre}, To: section.Point{X: 1.2 * rvalue.Metre, Y: 0.2 * rvalue.Metre}, Air: rvalue.FromCelsius(20)},
		},
	}
	r, err := s.Solve(section.Options{Tolerance: 1e-6})
	if err != nil {
		t.Fatal(err)
	}
	flank := section.Flank{U: 5 * rvalue.USI, Length: 1 * rvalue.Metre}
	// The cuts are five thicknesses from the corner, of which e^-5π is left.
	if got, want := r.Psi(flank, flank).SI(), 1-2*math.Ln2/math.Pi; math.Abs(got-want) > 2e-5 {
		t.Errorf("psi %.6f, want %.6f", got, want)
	}
}

// TestDetailsRefuse: dimensions that cannot be are refused, not drawn.
func TestDetailsRefuse(t *testing.T) {
	wall := section.StudWall{Stud: 3.5 * rvalue.Inch, Fill: 0.0388 * rvalue.WattPerMetreKelvin}
	nan := rvalue.Length(math.NaN())
	for name, f := range map[string]func() (section.Detail, error){
		"thick foam at a slab":   func() (section.Detail, error) { return section.SlabEdge(8 * rvalue.Inch) },
		"foam that is no number": func() (section.Detail, error) { return section.SlabEdge(nan) },
		"no studs":               func() (section.Detail, error) { return section.OuterCorner(section.StudWall{Fill: wall.Fill}) },
		"no fill":                func() (section.Detail, error) { return section.WindowJamb(section.StudWall{Stud: wall.Stud}) },
		"foam past the wall":     func() (section.Detail, error) { return section.RimJoist(wall, 3*rvalue.Inch) },
		"foam of nothing":        func() (section.Detail, error) { return section.RimJoist(wall, nan) },
		"no header":              func() (section.Detail, error) { return section.WindowHead(wall, 0) },
		"a parapet in the roof":  func() (section.Detail, error) { return section.Parapet(wall, 4*rvalue.Inch, 4*rvalue.Inch) },
		"a heel above the fill":  func() (section.Detail, error) { return section.Eave(wall, 4*rvalue.Inch, 5*rvalue.Inch) },
		"thin walls": func() (section.Detail, error) {
			return section.WindowSill(section.StudWall{Stud: 0.5 * rvalue.Inch, Fill: wall.Fill})
		},
	} {
		if _, err := f(); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}

// TestOverlay: later pieces hide earlier ones, and nothing else changes.
func TestOverlay(t *testing.T) {
	at := func(x, y float64) section.Point { return section.Point{X: rvalue.Length(x), Y: rvalue.Length(y)} }
	seen, of := section.Overlay([]section.Piece{
		{Name: "below", From: at(3, 2), To: at(0, 0)}, {Name: "hidden", To: at(1, 1)}, {Name: "above", From: at(1, 0), To: at(2, 1)}, {Name: "over hidden", To: at(1, 1)},
	})
	area := map[string]float64{}
	for i, p := range seen {
		area[p.Name] += float64(p.To.X-p.From.X) * float64(p.To.Y-p.From.Y)
		if of[i] == 1 {
			t.Error("a hidden piece is seen")
		}
	}
	if len(seen) != 4 || area["below"] != 4 || area["above"] != 1 || area["over hidden"] != 1 {
		t.Errorf("%d pieces, %v", len(seen), area)
	}
	if seen, _ := section.Overlay(nil); len(seen) > 0 {
		t.Error("nothing is seen of something")
	}
}
