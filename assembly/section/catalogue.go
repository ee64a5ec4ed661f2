package section

import (
	"fmt"
	"strings"

	"github.com/coldseam/coldseam/rvalue"
)

// Detail is one of our own sections of a usual junction, drawn and not tabulated:
// Solve it, and Result.Psi of its flanks is the junction's own loss by internal
// dimensions, the rooms' own heights and widths.
type Detail struct {
	Name    string
	About   string   // what it shows
	Assumed []string // what its figures rest on, and no other's
	Usual   []string // what they rest on as others' do

	// Studs is the share that studs take of its walls: those at their spacing alone, since
	// plates, posts and headers are drawn and stand in psi. A house whose walls' U has them
	// too counts them twice. 0: it has no stud wall.
	Studs float64

	Section Section
	Flanks  []Flank // by internal dimensions
}

// Conductivities of the catalogue's sections, W/(m·K): those of package material
// for these things.
const (
	softwood   = 0.12
	gypsum     = 0.16
	sheathing  = 0.13 // oriented strand board, plywood
	foam       = 0.029
	masonry    = 0.70
	concrete   = 2.3
	looseFill  = 0.040
	roofBoard  = 0.026 // polyiso
	plainAlong = 1.0   // m of plain part beside the junction, beyond which nothing changes
)

// Surface films of the ASHRAE Handbook, m²·K/W, seen or from memory as package
// surface says, and of vinyl siding, which counts with the outer one.
const (
	filmWall    = 0.120
	filmCeiling = 0.107 // heat up
	filmFloor   = 0.162 // heat down
	filmWind    = 0.030
	siding      = 0.109
)

// What the catalogue's framing takes of a wall: studs of 1 1/2 in at 16 in alone,
// since plates and posts are drawn.
const studShare = 1.5 / 16

// StudWall is a wood-framed wall of the catalogue: gypsum board 1/2 in, studs at
// 16 in with fiberglass between, sheathing 7/16 in, foam board, vinyl siding.
type StudWall struct {
	Stud rvalue.Length       // depth of the studs
	Fill rvalue.Conductivity // of what is between them
	Foam rvalue.Length       // thickness of the foam board, 0 for none
}

// The usual ones: 2x4 with R-13 and 2x6 with R-21.
var (
	usual2x4 = StudWall{Stud: 3.5 * rvalue.Inch, Fill: 0.0388 * rvalue.WattPerMetreKelvin}
	usual2x6 = StudWall{Stud: 5.5 * rvalue.Inch, Fill: 0.0378 * rvalue.WattPerMetreKelvin}
)

const inch = float64(rvalue.Inch)

// Depths of a StudWall from outside, in m.
func (w StudWall) board() float64  { return float64(w.Foam) }            // where the sheathing starts
func (w StudWall) stud() float64   { return w.board() + 7.0/16*inch }    // where the studs start
func (w StudWall) lining() float64 { return w.stud() + float64(w.Stud) } // where the gypsum starts
func (w StudWall) room() float64   { return w.lining() + 0.5*inch }      // its inner face

// mixed is the conductivity of studs and fill side by side.
func (w StudWall) mixed() float64 { return studShare*softwood + (1-studShare)*float64(w.Fill) }

// r is what the wall resists, films included.
func (w StudWall) r() float64 {
	return filmWind + siding + float64(w.Foam)/foam + 7.0/16*inch/sheathing + float64(w.Stud)/w.mixed() + 0.5*inch/gypsum + filmWall
}

func (w StudWall) flank(length float64) Flank {
	return Flank{U: rvalue.Resistance(w.r()).U(), Length: rvalue.Length(length)}
}

func (w StudWall) check() error {
	if !(w.Stud > 0 && w.Stud <= 0.5*rvalue.Metre) {
		return fmt.Errorf("section: studs %v deep, write more than nothing and up to 0.5 m", float64(w.Stud))
	}
	if !(w.Fill > 0 && w.Fill <= 5*rvalue.WattPerMetreKelvin) {
		return fmt.Errorf("section: a fill that conducts %v W/(m·K), write one above 0", float64(w.Fill))
	}
	return upTo("foam", w.Foam, 0.5*rvalue.Metre)
}

func upTo(what string, v, most rvalue.Length) error {
	if !(v >= 0 && v <= most) {
		return fmt.Errorf("section: %s of %v m, write 0 to %v m", what, float64(v), float64(most))
	}
	return nil
}

// Temperatures of the catalogue's airs; psi does not depend on them.
var (
	warm = rvalue.FromCelsius(20)
	cold = rvalue.FromCelsius(0)
)

// sketch is a detail in the making, in m; pieces may lie over each other.
type sketch struct {
	pieces     []Piece
	boundaries []Boundary
}

func (s *sketch) piece(name string, x0, x1, y0, y1, k float64) {
	if x1-x0 <= snap || y1-y0 <= snap {
		return
	}
	s.pieces = append(s.pieces, Piece{
		Name: name, From: Point{rvalue.Length(x0), rvalue.Length(y0)}, To: Point{rvalue.Length(x1), rvalue.Length(y1)}, Conductivity: rvalue.Conductivity(k),
	})
}

func (s *sketch) face(name string, air rvalue.Temperature, film, x0, x1, y0, y1 float64) {
	if x1-x0 <= snap && y1-y0 <= snap {
		return
	}
	s.boundaries = append(s.boundaries, Boundary{
		Name: name, From: Point{rvalue.Length(x0), rvalue.Length(y0)}, To: Point{rvalue.Length(x1), rvalue.Length(y1)}, Air: air, Film: rvalue.Resistance(film),
	})
}

func (s *sketch) inside(film, x0, x1, y0, y1 float64) { s.face("inside", warm, film, x0, x1, y0, y1) }

func (s *sketch) outside(film, x0, x1, y0, y1 float64) { s.face("outside", cold, film, x0, x1, y0, y1) }

// wall draws a wall upright from y0 to y1, its outside at x = 0.
func (s *sketch) wall(w StudWall, y0, y1 float64) {
	s.piece("foam board", 0, w.board(), y0, y1, foam)
	s.piece("sheathing", w.board(), w.stud(), y0, y1, sheathing)
	s.piece("studs and fiberglass", w.stud(), w.lining(), y0, y1, w.mixed())
	s.piece("gypsum board", w.lining(), w.room(), y0, y1, gypsum)
}

func (s *sketch) section() Section {
	pieces, _ := Overlay(s.pieces)
	return Section{Pieces: pieces, Boundaries: s.boundaries}
}

const (
	assumedStuds  = "studs of 1 1/2 in at 16 in are mixed with what is between them; plates, posts and headers are drawn"
	assumedFilms  = "films of the ASHRAE Handbook"
	assumedSiding = "vinyl siding counts with the outer film"
	assumedRooms  = "the rooms on either side are heated alike"
	assumedInside = "lengths by internal dimensions"
)

var usual = []string{assumedStuds, assumedFilms, assumedSiding, assumedInside}

// Catalogue returns the sections of the catalogue, with usual dimensions.
func Catalogue() []Detail {
	var out []Detail
	add := func(name string, d Detail, err error) {
		if err != nil {
			panic(err) // the dimensions are ours; a test goes through them all
		}
		d.Name = name
		out = append(out, d)
	}
	d, err := SlabEdge(0)
	add("slab edge, bare", d, err)
	d, err = SlabEdge(3 * rvalue.Inch)
	add("slab edge, 3 in foam", d, err)
	for _, f := range []struct {
		of   string
		wall StudWall
		rim  rvalue.Length
	}{{"2x4", usual2x4, 2 * rvalue.Inch}, {"2x6", usual2x6, 2 * rvalue.Inch}} {
		d, err = RimJoist(f.wall, 0)
		add("rim joist, "+f.of, d, err)
		d, err = RimJoist(f.wall, f.rim)
		add("rim joist with 2 in foam, "+f.of, d, err)
		d, err = WindowHead(f.wall, 9.25*rvalue.Inch)
		add("window head, "+f.of, d, err)
		d, err = WindowJamb(f.wall)
		add("window jamb, "+f.of, d, err)
		d, err = WindowSill(f.wall)
		add("window sill, "+f.of, d, err)
		d, err = OuterCorner(f.wall)
		add("outer corner, "+f.of, d, err)
		d, err = Parapet(f.wall, 24*rvalue.Inch, 4*rvalue.Inch)
		add("parapet, "+f.of, d, err)
		d, err = Eave(f.wall, 14*rvalue.Inch, 4*rvalue.Inch)
		add("eave, "+f.of, d, err)
	}
	return out
}

// FindDetail returns the section of the catalogue of that name; case and blanks do
// not matter.
func FindDetail(name string) (Detail, bool) {
	plain := func(s string) string { return strings.ToLower(strings.Join(strings.Fields(s), " ")) }
	for _, d := range Catalogue() {
		if plain(d.Name) == plain(name) {
			return d, true
		}
	}
	return Detail{}, false
}
