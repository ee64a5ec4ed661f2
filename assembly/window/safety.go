package window

import (
	"fmt"
	"math"
	"slices"

	"github.com/coldseam/coldseam/rvalue"
)

// Place is where a pane is, for what the International Residential Code says of
// it. Its zero value is a pane that begins at the floor beside a walking surface, so
// that what is left out counts as hazardous.
type Place struct {
	Width, Height rvalue.Length // of the glass that is exposed in one pane
	Bottom        rvalue.Length // its lowest edge above the floor
	Walking       rvalue.Length // horizontally to the nearest walking surface
	Lean          float64       // degrees from upright; 90 is a level skylight

	// What is not known of them: without Bottom the rules that hang on it alone, beside
	// doors and in large panes, are not asked; without Walking one may walk right there.
	BottomUnknown, WalkingUnknown bool

	Glazing Glazing // without panes: not known

	Door       bool // in a swinging, sliding or bifold door
	Guard      bool // in a guard or railing
	Decorative bool // art glass, which most rules leave out
	Rail       bool // a rail 34 to 38 in high and 1 1/2 in deep that bears 50 lb/ft stands before the glass

	BesideDoor *BesideDoor // nil: no door near
	Wet        *Wet        // nil: no tub, shower, spa or pool near
	Stair      *Stair      // nil: no stairs, landing between flights or ramp near
	Landing    *Stair      // nil: no landing at the bottom of stairs near
}

// BesideDoor is how a pane stands to a door.
type BesideDoor struct {
	Distance      rvalue.Length // from the door's edge
	Perpendicular bool          // in a wall at a right angle to the closed door
	HingeSide     bool          // of such a wall: on the side of the hinges of a door that swings in
	Barrier       bool          // a wall or other permanent barrier stands between
	Closet        bool          // the door leads to a closet or store at most 3 ft deep
	FixedPanel    bool          // it is the fixed panel of a patio door
}

// Wet is how a pane stands to a tub, shower, spa or pool.
type Wet struct {
	Distance rvalue.Length // horizontally from the water's edge or the shower
	Above    rvalue.Length // its lowest edge above the surface that one stands on
	Facing   bool          // it faces the water, rather than being beside it
}

// Stair is how a pane stands to stairs or a landing.
type Stair struct {
	Distance rvalue.Length // horizontally from the walking surface, of a Landing from the bottom tread
	Above    rvalue.Length // its lowest edge above that surface; of a landing before 2012 above the tread's nose
	Guarded  bool          // a guard stands between, the glass more than 18 in behind it
}

// Flag is a rule that a place falls under, or one that an opening fails.
type Flag struct {
	Clause string // of the International Residential Code
	Fact   string // what tripped it
	Need   string // what would do
	Met    bool   // the glazing of the place is of that kind; its marks remain to be seen
	Basis  string // edition, and whether its text was seen
}

// editions of the International Residential Code that differ here or are in force.
var editions = [...]int{2006, 2009, 2012, 2015, 2018, 2021, 2024}

// Editions returns the editions of the International Residential Code that
// [Safety] and [Escape.Check] know, oldest first.
func Editions() []int { return slices.Clone(editions[:]) }

func checkEdition(edition int) error {
	if !slices.Contains(editions[:], edition) {
		return refuse("edition %d of the residential code is not known here, use one of %v", edition, editions)
	}
	return nil
}

// Limits of section R308.4 and R308.6.
const (
	sphere    = 3 * rvalue.Inch
	nearDoor  = 24 * rvalue.Inch
	lowBeside = 60 * rvalue.Inch
	large     = 9 * rvalue.SquareFoot
	lowBottom = 18 * rvalue.Inch
	highTop   = 36 * rvalue.Inch
	stride    = 36 * rvalue.Inch
	wetReach  = 60 * rvalue.Inch
	lowWet    = 60 * rvalue.Inch
	lowOld    = 60 * rvalue.Inch // stairs and landings before 2012
	lowStair  = 36 * rvalue.Inch
	landing   = 60 * rvalue.Inch
	sloped    = 15.0 // degrees from upright
	thinPane  = 16 * rvalue.SquareFoot
	lowSloped = 12 * rvalue.Foot
)

// exactly is how near, relatively, two sizes are the same: sums and products of
// inches are not exact, and 36 x 36 in is not more than 9 ft².
const exactly = 1e-9

func more[T ~float64](a, b T) bool { return float64(a) > float64(b)*(1+exactly) }
func less[T ~float64](a, b T) bool { return float64(a) < float64(b)*(1-exactly) }

// Safety returns the rules of IRC R308 under which glass in the place must be
// safety glass, none if there are none. It is an orientation: the local code decides,
// and its text has exceptions that are not asked for here.
//
// The error names an edition that is not known, or a size that cannot be.
func Safety(edition int, p Place) ([]Flag, error) {
	if err := checkEdition(edition); err != nil {
		return nil, err
	}
	if err := p.check(); err != nil {
		return nil, err
	}
	f := flags{edition: edition}
	f.need, f.met = p.Glazing.safety()
	if p.Door && !p.Decorative && !less(min(p.Width, p.Height), sphere) {
		f.add("R308.4.1", seen, "the glass is in a door, and a 3 in sphere passes its opening")
	}
	p.besideDoor(&f)
	p.largePane(&f)
	if p.Guard {
		f.add("R308.4.4", seen, "the glass is in a guard or railing, at any size and height")
	}
	p.wet(&f)
	p.stairs(&f)
	if p.Lean >= sloped*(1-exactly) {
		p.sloping(&f)
	}
	return f.out, nil
}

// safety returns what a rule asks of the glazing, and whether it is so: IRC R308.1 and
// R308.3, of each pane, from memory.
func (g Glazing) safety() (need string, met bool) {
	const kind = "safety glass with a permanent mark: tempered or laminated"
	isTempered, isLaminated, other := 0, 0, 0
	for i := range g.Panes {
		switch p := &g.Panes[i]; {
		case p.Sheet == Laminated:
			isLaminated++
		case p.Sheet == Glass && p.Tempered:
			isTempered++
		case other == 0:
			other = i + 1
		}
	}
	what := "tempered and laminated"
	switch {
	case isTempered+isLaminated == 0:
		return kind, false
	case other > 0:
		return fmt.Sprintf("%s; pane %d from indoors is neither", kind, other), false
	case isLaminated == 0:
		what = "tempered"
	case isTempered == 0:
		what = "laminated"
	}
	return "no other glass, it is " + what + ": have each pane marked permanently, by CPSC 16 CFR 1201 or ANSI Z97.1", true
}

// largePane is R308.4.3.
func (p *Place) largePane(f *flags) {
	area, top := p.Width.Times(p.Height), p.top()
	if p.BottomUnknown || p.Decorative || p.Rail || !more(area, large) || !less(p.Bottom, lowBottom) || !more(top, highTop) || !p.WalkingUnknown && more(p.Walking, stride) {
		return
	}
	walking := "where one walks is not known, and counts as within 36 in"
	if !p.WalkingUnknown {
		walking = "one walks within 36 in, " + at(p.Walking) + " away"
	}
	f.add("R308.4.3", seen, "all four of: a pane of %s is more than 9 ft²; its bottom at %s is less than 18 in above the floor; its top at %s is more than 36 in; %s",
		area.In(rvalue.IP), at(p.Bottom), at(top), walking)
}

func (p *Place) check() error {
	if !(p.Width > 0 && p.Width <= maxSize && p.Height > 0 && p.Height <= maxSize) {
		return refuse("a pane of %s x %s; each way it is above 0 to %s", said(p.Width), said(p.Height), said(maxSize))
	}
	if !(p.Lean >= 0 && p.Lean <= 90) {
		return refuse("glass leans %g° from upright; give 0 (upright) to 90 (level)", p.Lean)
	}
	type size struct {
		of string
		l  rvalue.Length
	}
	sizes := []size{{"bottom", p.Bottom}, {"distance to where one walks", p.Walking}}
	if p.BesideDoor != nil {
		sizes = append(sizes, size{"distance to the door", p.BesideDoor.Distance})
	}
	if p.Wet != nil {
		sizes = append(sizes, size{"distance to the water", p.Wet.Distance}, size{"height above the wet floor", p.Wet.Above})
	}
	for _, s := range []*Stair{p.Stair, p.Landing} {
		if s != nil {
			sizes = append(sizes, size{"distance to the stairs", s.Distance}, size{"height above the stairs", s.Above})
		}
	}
	for _, s := range sizes {
		if !(s.l >= 0 && !math.IsInf(float64(s.l), 0)) {
			return refuse("%s: %s is impossible, give 0 or more", s.of, said(s.l))
		}
	}
	return nil
}

// top returns the height of the pane's highest edge above the floor.
func (p *Place) top() rvalue.Length {
	return p.Bottom + rvalue.Length(float64(p.Height)*math.Cos(p.Lean*math.Pi/180))
}

// besideDoor is R308.4.2.
func (p *Place) besideDoor(f *flags) {
	d := p.BesideDoor
	if d == nil || p.BottomUnknown || p.Decorative || d.Barrier || d.Closet || d.FixedPanel || !less(p.Bottom, lowBeside) || more(d.Distance, nearDoor) {
		return
	}
	switch {
	case !d.Perpendicular:
		f.add("R308.4.2", seen, "within 24 in of the edge of a door, %s away, and its bottom at %s is less than 60 in above the floor", at(d.Distance), at(p.Bottom))
	case d.HingeSide || f.edition < 2012:
		f.add("R308.4.2", seen, "in a wall at a right angle to a door, within 24 in of it, %s away, on the side of its hinges, and its bottom at %s is less than 60 in above the floor", at(d.Distance), at(p.Bottom))
	}
}

// wet is R308.4.5.
func (p *Place) wet(f *flags) {
	w := p.Wet
	if w == nil || more(w.Distance, wetReach) || !less(w.Above, lowWet) || !w.Facing && f.edition < 2021 {
		return
	}
	side := "faces"
	if !w.Facing {
		side = "is beside"
	}
	f.add("R308.4.5", seen, "it %s a tub, shower, spa or pool within 60 in, %s away, and its bottom at %s is less than 60 in above where one stands", side, at(w.Distance), at(w.Above))
}

// stairs is R308.4.6 and R308.4.7, whose editions differ.
func (p *Place) stairs(f *flags) {
	old := f.edition < 2012
	low, basis := lowStair, memory
	if old {
		low, basis = lowOld, seen
	}
	if s := p.Stair; s != nil && !s.Guarded && less(s.Above, low) && (less(s.Distance, stride) || old && !more(s.Distance, stride)) {
		f.add("R308.4.6", basis, "within 36 in of stairs, a landing or a ramp, %s away, and its bottom at %s is less than %s above it", at(s.Distance), at(s.Above), low.In(rvalue.IP))
	}
	if s := p.Landing; s != nil && !s.Guarded && less(s.Above, low) && !more(s.Distance, landing) {
		f.add("R308.4.7", basis, "within 60 in of the bottom tread of stairs, %s away, and its bottom at %s is less than %s above the landing", at(s.Distance), at(s.Above), low.In(rvalue.IP))
	}
}

// sloping is R308.6: the pane towards the room must hold when it breaks.
func (p *Place) sloping(f *flags) {
	// Foils of 0.015 and 0.030 in are sold as 0.38 and 0.76 mm.
	foil, least := 0.030, 0.76*rvalue.Millimetre
	area, top := p.Width.Times(p.Height), p.top()
	if !p.BottomUnknown && !more(area, thinPane) && !more(top, lowSloped) {
		foil, least = 0.015, 0.38*rvalue.Millimetre
	}
	f.add("R308.6", seen, "it leans %.3g° from upright, 15° or more", p.Lean)
	flag := &f.out[len(f.out)-1]
	if f.met {
		if inner := &p.Glazing.Panes[0]; inner.Sheet == Laminated && inner.Interlayer != 0 && !less(inner.Interlayer, least) {
			return
		}
	}
	flag.Met = false
	height := "its height above the floor not known"
	if !p.BottomUnknown {
		height = "its highest edge " + at(top) + " above the floor"
	}
	flag.Need = fmt.Sprintf("laminated glass on the room side with an interlayer of %.3f in or more (%s of glass, %s), or tempered glass with a screen below where the code asks for one", foil, area.In(rvalue.IP), height)
}

// at writes a height or distance as a tape shows it; zero is on the spot.
func at(l rvalue.Length) string {
	if l == 0 {
		return "0 in"
	}
	return l.In(rvalue.IP)
}

// Whether a rule's text was seen.
const (
	seen   = "text seen"
	memory = "from memory"
)

// flags gathers what was tripped.
type flags struct {
	edition int
	need    string
	met     bool
	out     []Flag
}

func (f *flags) add(clause, basis, format string, args ...any) {
	f.out = append(f.out, Flag{
		Clause: clause, Fact: fmt.Sprintf(format, args...), Need: f.need, Met: f.met,
		Basis: fmt.Sprintf("International Residential Code %d, %s; the local code decides", f.edition, basis),
	})
}
