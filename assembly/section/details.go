package section

import (
	"fmt"

	"github.com/coldseam/coldseam/rvalue"
)

// SlabEdge is a concrete floor slab of 8 in that runs through a brick wall of 8 in
// with 2 in of foam and gypsum board on its inside, behind edge of foam in the brick's
// plane, 0 for a bare edge.
func SlabEdge(edge rvalue.Length) (Detail, error) {
	if err := upTo("foam at the slab's edge", edge, 6*rvalue.Inch); err != nil {
		return Detail{}, err
	}
	const (
		brick, room = 8 * inch, 10.5 * inch
		low, high   = plainAlong, plainAlong + 8*inch
	)
	var s sketch
	s.piece("brick", 0, brick, 0, high+plainAlong, masonry)
	s.piece("foam board", brick, 10*inch, 0, high+plainAlong, foam)
	s.piece("gypsum board", 10*inch, room, 0, high+plainAlong, gypsum)
	s.piece("concrete slab", 0, room+plainAlong, low, high, concrete)
	if edge > 0 {
		s.piece("brick facing", 0, 1*inch, low, high, masonry)
		s.piece("foam at the edge", 1*inch, 1*inch+float64(edge), low, high, foam)
	}
	s.outside(filmWind, 0, 0, 0, high+plainAlong)
	s.inside(filmWall, room, room, 0, low)
	s.inside(filmCeiling, room, room+plainAlong, low, low)
	s.inside(filmFloor, room, room+plainAlong, high, high)
	s.inside(filmWall, room, room, high, high+plainAlong)
	u := rvalue.Resistance(filmWind + brick/masonry + 2*inch/foam + 0.5*inch/gypsum + filmWall).U()
	return Detail{
		About:   "a concrete floor through a brick wall insulated on its inside",
		Assumed: []string{"brick 8 in, foam 2 in, gypsum 1/2 in; slab 8 in", assumedRooms}, Usual: []string{assumedFilms, assumedInside},
		Section: s.section(), Flanks: []Flank{{u, plainAlong * rvalue.Metre}, {u, plainAlong * rvalue.Metre}},
	}, nil
}

// RimJoist is a wood floor on a stud wall, with foam behind its rim joist, 0 for a
// bare one.
func RimJoist(w StudWall, behind rvalue.Length) (Detail, error) {
	if err := w.check(); err != nil {
		return Detail{}, err
	}
	rim := w.stud() + 1.5*inch
	if most := rvalue.Length(w.room() - rim); behind > most {
		return Detail{}, fmt.Errorf("section: foam of %v m behind the rim joist, the wall has room for %.3g m", float64(behind), float64(most))
	}
	if err := upTo("foam behind the rim joist", behind, rvalue.Metre); err != nil {
		return Detail{}, err
	}
	const joist, floor = 9.25 * inch, 10 * inch
	hollow := rim + float64(behind)
	var s sketch
	s.wall(w, -plainAlong, 0)
	s.piece("top plates", w.stud(), w.lining(), -3*inch, 0, softwood)
	s.wall(w, floor, floor+plainAlong)
	s.piece("bottom plate", w.stud(), w.lining(), floor, floor+1.5*inch, softwood)
	s.piece("foam board", 0, w.board(), 0, floor, foam)
	s.piece("sheathing", w.board(), w.stud(), 0, floor, sheathing)
	s.piece("rim joist", w.stud(), rim, 0, joist, softwood)
	s.piece("foam behind it", rim, hollow, 0, joist, foam)
	s.piece("subfloor", w.stud(), w.room(), joist, floor, sheathing)
	s.outside(filmWind+siding, 0, 0, -plainAlong, floor+plainAlong)
	s.inside(filmWall, w.room(), w.room(), -plainAlong, 0)
	s.inside(filmFloor, hollow, w.room(), 0, 0)
	s.inside(filmWall, hollow, hollow, 0, joist)
	s.inside(filmCeiling, hollow, w.room(), joist, joist)
	s.inside(filmWall, w.room(), w.room(), joist, floor+plainAlong)
	return Detail{
		About:   "a wood floor of 2x10 joists on a stud wall, between the joists",
		Assumed: []string{"the hollow between the joists is as warm as the rooms", assumedRooms}, Usual: usual, Studs: studShare,
		Section: s.section(), Flanks: []Flank{w.flank(plainAlong), w.flank(plainAlong)},
	}, nil
}

// Where a window meets its opening.
const (
	frameDepth = 2.75 * inch
	frameWidth = 2.5 * inch
	liner      = 0.75 * inch
)

// windowEdge is a wood window in a stud wall whose opening is framed by a wood piece
// so wide.
func windowEdge(w StudWall, about, framing string, wide rvalue.Length) (Detail, error) {
	if err := w.check(); err != nil {
		return Detail{}, err
	}
	if w.room()-liner < frameDepth {
		return Detail{}, fmt.Errorf("section: a wall %.3g m thick, too thin for a window frame of %.3g m", w.room(), frameDepth)
	}
	if !(wide > 0) {
		return Detail{}, fmt.Errorf("section: a %s %v m wide, write one above 0", framing, float64(wide))
	}
	if err := upTo(framing, wide, 0.5*rvalue.Metre); err != nil {
		return Detail{}, err
	}
	var s sketch
	s.wall(w, 0, plainAlong)
	s.piece(framing, w.stud(), w.lining(), 0, float64(wide), softwood)
	s.piece("window frame", 0, frameDepth, -frameWidth, 0, softwood)
	s.piece("liner", frameDepth, w.room(), -liner, 0, softwood)
	s.outside(filmWind+siding, 0, 0, 0, plainAlong)
	s.outside(filmWind, 0, 0, -frameWidth, 0)
	s.inside(filmWall, frameDepth, frameDepth, -frameWidth, -liner)
	s.inside(filmWall, frameDepth, w.room(), -liner, -liner)
	s.inside(filmWall, w.room(), w.room(), -liner, plainAlong)
	frame := Flank{U: rvalue.Resistance(filmWind + frameDepth/softwood + filmWall).U(), Length: rvalue.Length(frameWidth)}
	return Detail{
		About: about,
		Assumed: []string{
			"a wood frame 2 3/4 in deep, flush with the sheathing and tight in its opening; the glass is cut off, the frame's own loss is the window's",
			"lengths from the opening in the framing",
		},
		Usual: []string{assumedStuds, assumedFilms, assumedSiding}, Studs: studShare,
		Section: s.section(), Flanks: []Flank{w.flank(plainAlong), frame},
	}, nil
}

// WindowHead is the upper edge of a wood window, below a header as deep as the studs.
func WindowHead(w StudWall, header rvalue.Length) (Detail, error) {
	return windowEdge(w, "the upper edge of a wood window, below a header as deep as the studs", "header", header)
}

// WindowJamb is the side of a wood window, beside two studs.
func WindowJamb(w StudWall) (Detail, error) {
	return windowEdge(w, "the side of a wood window, beside two studs", "studs", 3*rvalue.Inch)
}

// WindowSill is the lower edge of a wood window, on one plate.
func WindowSill(w StudWall) (Detail, error) {
	return windowEdge(w, "the lower edge of a wood window, on one plate", "plate", 1.5*rvalue.Inch)
}

// OuterCorner is where two stud walls meet at a post that fills the corner.
func OuterCorner(w StudWall) (Detail, error) {
	if err := w.check(); err != nil {
		return Detail{}, err
	}
	end := w.room() + plainAlong
	var s sketch
	// Layer by layer from the inside, so that the outer ones run around the corner.
	for _, l := range []struct {
		name     string
		from, to float64
		k        float64
	}{
		{"gypsum board", w.lining(), w.room(), gypsum},
		{"studs and fiberglass", w.stud(), w.lining(), w.mixed()},
		{"sheathing", w.board(), w.stud(), sheathing},
		{"foam board", 0, w.board(), foam},
	} {
		s.piece(l.name, l.from, l.to, l.from, end, l.k)
		s.piece(l.name, l.from, end, l.from, l.to, l.k)
	}
	s.piece("post", w.stud(), w.lining(), w.stud(), w.lining(), softwood)
	s.outside(filmWind+siding, 0, 0, 0, end)
	s.outside(filmWind+siding, 0, end, 0, 0)
	s.inside(filmWall, w.room(), w.room(), w.room(), end)
	s.inside(filmWall, w.room(), end, w.room(), w.room())
	return Detail{
		About:   "where two stud walls meet in an outer corner",
		Assumed: []string{"a solid post as deep as the studs"}, Usual: usual, Studs: studShare,
		Section: s.section(), Flanks: []Flank{w.flank(plainAlong), w.flank(plainAlong)},
	}, nil
}

// Parapet is the edge of a flat roof with insulation above its deck, at a stud wall
// that goes on so high above the deck.
func Parapet(w StudWall, above, insulation rvalue.Length) (Detail, error) {
	if err := w.check(); err != nil {
		return Detail{}, err
	}
	const deck = 0.75 * inch
	roof := deck + float64(insulation)
	top := float64(above)
	if !(insulation > 0) || !(top >= roof+2*inch && above <= 2*rvalue.Metre) {
		return Detail{}, fmt.Errorf("section: a parapet of %v m above a roof %v m thick, write one at least 2 in above it and up to 2 m", top, roof)
	}
	back := w.lining() + 7.0/16*inch // of the sheathing toward the roof
	end := w.room() + plainAlong
	var s sketch
	s.wall(w, -plainAlong, 0)
	s.piece("top plates", w.stud(), w.lining(), -3*inch, 0, softwood)
	s.piece("foam board", 0, w.board(), 0, top, foam)
	s.piece("sheathing", w.board(), w.stud(), 0, top, sheathing)
	s.piece("studs and fiberglass", w.stud(), w.lining(), 0, top, w.mixed())
	s.piece("sheathing", w.lining(), back, 0, top, sheathing)
	s.piece("plates", w.stud(), w.lining(), top-1.5*inch, top, softwood)
	s.piece("roof insulation", back, end, deck, roof, roofBoard)
	s.piece("roof deck", w.stud(), end, 0, deck, sheathing)
	s.outside(filmWind+siding, 0, 0, -plainAlong, top)
	s.outside(filmWind, 0, back, top, top)
	s.outside(filmWind, back, back, roof, top)
	s.outside(filmWind, back, end, roof, roof)
	s.inside(filmWall, w.room(), w.room(), -plainAlong, 0)
	s.inside(filmCeiling, w.room(), end, 0, 0)
	plain := rvalue.Resistance(filmCeiling + deck/sheathing + float64(insulation)/roofBoard + filmWind)
	return Detail{
		About:   "the edge of a flat roof with insulation above its deck",
		Assumed: []string{"the parapet's studs stand on the deck and are filled as the wall is", "no metal cap"}, Usual: usual, Studs: studShare,
		Section: s.section(), Flanks: []Flank{w.flank(plainAlong), {plain.U(), plainAlong * rvalue.Metre}},
	}, nil
}

// Eave is where an attic's insulation runs out above a stud wall: so deep on the
// ceiling, and so deep at its outer end, below a roof that rises 5 in 12.
func Eave(w StudWall, depth, heel rvalue.Length) (Detail, error) {
	if err := w.check(); err != nil {
		return Detail{}, err
	}
	if !(heel > 0 && heel <= depth && depth <= rvalue.Metre) {
		return Detail{}, fmt.Errorf("section: insulation %v m deep and %v m at its end, write no more at the end and up to 1 m", float64(depth), float64(heel))
	}
	const (
		steps = 4
		pitch = 5.0 / 12
	)
	ceiling := 0.5 * inch
	run := float64(depth-heel) / pitch
	end := max(w.room()+plainAlong, run+plainAlong)
	var s sketch
	s.wall(w, -plainAlong-ceiling, 0)
	s.piece("gypsum board", w.lining(), end, -ceiling, 0, gypsum)
	s.piece("top plates", w.stud(), w.lining(), -3*inch, 0, softwood)
	at, height := 0.0, float64(heel)
	s.outside(filmWind+siding, 0, 0, -plainAlong-ceiling, 0)
	s.outside(filmCeiling, 0, 0, 0, height)
	for n := range steps {
		next := run * float64(n+1) / steps
		s.piece("loose fill", at, next, 0, height, looseFill)
		s.outside(filmCeiling, at, next, height, height)
		rise := float64(depth-heel) / steps
		s.outside(filmCeiling, next, next, height, height+rise)
		at, height = next, height+rise
	}
	s.piece("loose fill", at, end, 0, height, looseFill)
	s.outside(filmCeiling, at, end, height, height)
	s.inside(filmWall, w.room(), w.room(), -plainAlong-ceiling, -ceiling)
	s.inside(filmCeiling, w.room(), end, -ceiling, -ceiling)
	plain := rvalue.Resistance(2*filmCeiling + 0.5*inch/gypsum + float64(depth)/looseFill)
	return Detail{
		About:   "where the insulation of an attic floor runs out above a stud wall",
		Assumed: []string{"the attic is as cold as outdoors; the slope of the insulation is drawn in four steps, ceiling joists are left out"}, Usual: usual, Studs: studShare,
		Section: s.section(), Flanks: []Flank{w.flank(plainAlong), {plain.U(), rvalue.Length(end - w.room())}},
	}, nil
}
