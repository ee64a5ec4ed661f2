package target

import (
	"errors"
	"fmt"

	"github.com/coldseam/coldseam/rvalue"
)

// Existing says what insulation a part of an old house has now.
type Existing uint8

const (
	// Bare is uninsulated.
	Bare Existing = iota
	// ThreeToFourInches of old insulation lie on an attic floor.
	ThreeToFourInches
	// InsulatedWall is a wood-frame wall with insulation in its 2x4 cavities.
	InsulatedWall
)

// String returns the plain words for x.
func (x Existing) String() string {
	switch x {
	case Bare:
		return "uninsulated"
	case ThreeToFourInches:
		return "3 to 4 in of insulation"
	case InsulatedWall:
		return "insulated 2x4 wall"
	}
	return fmt.Sprintf("Existing(%d)", uint8(x))
}

// Addition is an R-value to add: from Min to Max, which are equal where the
// advice gives one number.
type Addition struct {
	Min, Max   rvalue.Resistance
	Continuous bool // across the framing: sheathing, or boards on a basement wall
}

// String prints "R-49", "R-30 to R-49", "R-5ci".
func (a Addition) String() string {
	unit := ""
	if a.Continuous {
		unit = "ci"
	}
	s := "R-" + number(a.Min) + unit
	if a.Max > a.Min {
		s += " to R-" + number(a.Max) + unit
	}
	return s
}

// Advice is what the government advises an owner to add to an existing part.
type Advice struct {
	// Add lists alternatives: any one. Empty where nothing (more) is advised,
	// or where filling the cavity is all.
	Add []Addition
	// FillCavity asks to blow the empty wall cavities full, besides Add.
	FillCavity bool
	Text       string
	Source     string
	Mark       Mark
	Notes      []Note
}

// ErrNoAdvice is wrapped by the error of a component, or of an existing state of
// it, on which the advice is silent.
var ErrNoAdvice = errors.New("the advice does not cover this")

const (
	adviceSource = "ENERGY STAR, \"Recommended Home Insulation R-Values\" (based on the 2021 code)"
	olderSource  = "DOE and ENERGY STAR advice from before the 2021 code, quoted alike by an insulation maker's installation guide and a contractor's page"
	olderWalls   = "DOE and ENERGY STAR advice from before the 2021 code"
)

// span is a range of R in h·ft²·°F/Btu.
type span struct{ min, max float64 }

// adviceRow is one zone band of the current advice. The advice groups 4C with 5
// for floors, basements and crawl spaces, as the code's bands do; attics are the same from 4 to 8.
type adviceRow struct {
	attic, onTop    float64 // add to a bare attic; on top of 3 to 4 in
	floor           float64
	belowCI, below  float64 // basement or crawl-space wall: continuous, or batt
	sheathing       span    // beneath new siding of an uninsulated wall
	sheathInsulated float64 // beneath new siding of an insulated 2x4 wall
}

// currentAdvice, seen on the ENERGY STAR page.
var currentAdvice = [bands]adviceRow{
	band1:  {30, 25, 13, 0, 0, span{}, 0},
	band2:  {49, 38, 13, 0, 0, span{}, 0},
	band3:  {49, 38, 19, 5, 13, span{5, 5}, 0},
	band4:  {60, 49, 19, 10, 13, span{5, 10}, 10},
	band5:  {60, 49, 30, 15, 19, span{5, 10}, 10},
	band6:  {60, 49, 30, 15, 19, span{5, 10}, 10},
	band78: {60, 49, 38, 15, 19, span{5, 10}, 10},
}

// olderRow is one zone of the older advice, which did not set 4C apart.
type olderRow struct {
	attic, onTop, floor span
	sheathing           span    // from memory
	sheathInsulated     float64 // from memory
}

// olderAdvice by thermal zone 1 to 5; 5 stands for 5 to 8. Attic and floor
// columns seen on two pages with identical numbers; walls from memory.
var olderAdvice = [...]olderRow{
	{span{30, 49}, span{25, 30}, span{13, 13}, span{}, 0},
	{span{30, 60}, span{25, 38}, span{13, 19}, span{}, 0},
	{span{30, 60}, span{25, 38}, span{19, 25}, span{5, 5}, 0},
	{span{38, 60}, span{38, 38}, span{25, 30}, span{5, 5}, 5},
	{span{49, 60}, span{38, 49}, span{25, 30}, span{5, 6}, 5},
}

// Advise returns the current advice for component c of an existing wood-framed
// house. It covers Ceiling (Bare or ThreeToFourInches), Wall (Bare or
// InsulatedWall, when the siding is off anyway), and Bare Floor, BasementWall
// and CrawlWall; for anything else the error wraps ErrNoAdvice.
//
// Marine zone 4 reads with zone 5, which matters for floors (R-30, not R-19)
// and basement walls (15 or 19, not 10 or 13). Zone 0 reads with zone 1.
func Advise(z Zone, c Component, existing Existing) (Advice, error) {
	if err := checkAdvice(z, c, existing); err != nil {
		return Advice{}, fmt.Errorf("target: %w", err)
	}
	row := currentAdvice[z.band()]
	a := Advice{Source: adviceSource, Mark: Seen}
	switch c {
	case Ceiling:
		r := row.attic
		if existing == ThreeToFourInches {
			r = row.onTop
		}
		a.attic(span{r, r})
	case Floor:
		a.floor(span{row.floor, row.floor})
	case BasementWall, CrawlWall:
		if row.belowCI == 0 {
			a.Text = "nothing is advised in this zone"
			break
		}
		a.Add = []Addition{addition(span{row.belowCI, row.belowCI}, true), addition(span{row.below, row.below}, false)}
		a.Text = fmt.Sprintf("insulate with %v or %v batts", a.Add[0], a.Add[1])
	case Wall:
		a.wall(existing, row.sheathing, row.sheathInsulated)
	}
	// Attics and walls read alike in 4A, 4B and 4C.
	if z.Number == 4 && z.Moisture == 0 && c != Ceiling && c != Wall {
		a.Notes = append(a.Notes, Note{
			Code: "marine-unknown", Source: adviceSource, Mark: Seen,
			Text: "zone 4 was given without a moisture letter and is taken as not marine; marine 4 (4C) reads with zone 5",
		})
	}
	if z.Number == 0 {
		a.Notes = append(a.Notes, zoneZeroAdvice)
	}
	return a, nil
}

// AdviseBefore2021 returns what the same advice said before the 2021 code, for
// comparison with an older plan. It gives ranges, does not set marine zone 4
// apart, and has no figure for basement and crawl-space walls.
func AdviseBefore2021(z Zone, c Component, existing Existing) (Advice, error) {
	if err := checkAdvice(z, c, existing); err != nil {
		return Advice{}, fmt.Errorf("target: %w", err)
	}
	if c == BasementWall || c == CrawlWall {
		return Advice{}, fmt.Errorf("target: %v before 2021: %w; no figure was found", c, ErrNoAdvice)
	}
	row := olderAdvice[min(max(int(z.Number), 1), len(olderAdvice))-1]
	a := Advice{Source: olderSource, Mark: Seen}
	switch c {
	case Ceiling:
		r := row.attic
		if existing == ThreeToFourInches {
			r = row.onTop
		}
		a.attic(r)
	case Floor:
		a.floor(row.floor)
	case Wall:
		a.Source, a.Mark = olderWalls, FromMemory
		a.wall(existing, row.sheathing, row.sheathInsulated)
	}
	if z.Number == 0 {
		a.Notes = append(a.Notes, zoneZeroAdvice)
	}
	return a, nil
}

var zoneZeroAdvice = Note{Code: "zone-0", Applied: true, Source: "the advice begins at zone 1", Mark: Derived, Text: "zone 0 reads with zone 1"}

func (a *Advice) attic(r span) {
	a.Add = []Addition{addition(r, false)}
	a.Text = fmt.Sprintf("add %v to the attic", a.Add[0])
}

func (a *Advice) floor(r span) {
	a.Add = []Addition{addition(r, false)}
	a.Text = fmt.Sprintf("insulate the floor to %v", a.Add[0])
}

// wall words the advice for walls, which all hangs on the siding being off.
func (a *Advice) wall(existing Existing, sheathing span, insulated float64) {
	if existing == InsulatedWall {
		if insulated == 0 {
			a.Text = "nothing more is advised in this zone"
			return
		}
		a.Add = []Addition{addition(span{insulated, insulated}, true)}
		a.Text = fmt.Sprintf("when the siding is off anyway, add %v insulating sheathing beneath the new siding", a.Add[0])
		return
	}
	a.FillCavity = true
	a.Text = "when the siding is off anyway, blow the empty cavities full through the sheathing"
	if sheathing.max > 0 {
		a.Add = []Addition{addition(sheathing, true)}
		a.Text += fmt.Sprintf(" and add %v insulating sheathing beneath the new siding", a.Add[0])
	}
}

func addition(r span, continuous bool) Addition {
	return Addition{Min: rvalue.Resistance(r.min) * rvalue.RIP, Max: rvalue.Resistance(r.max) * rvalue.RIP, Continuous: continuous}
}

// checkAdvice reports what the advice does not cover.
func checkAdvice(z Zone, c Component, existing Existing) error {
	if err := z.check(); err != nil {
		return fmt.Errorf("climate zone: %w", err)
	}
	if err := c.check(); err != nil {
		return err
	}
	allowed := map[Component]Existing{Ceiling: ThreeToFourInches, Wall: InsulatedWall, Floor: Bare, BasementWall: Bare, CrawlWall: Bare}
	other, covered := allowed[c]
	switch {
	case !covered:
		return fmt.Errorf("%v: %w; it covers attics, wood-frame walls, floors, basement and crawl-space walls", c, ErrNoAdvice)
	case existing == Bare || existing == other:
		return nil
	case other == Bare:
		return fmt.Errorf("%v with %q: %w; it covers an uninsulated one only", c, existing, ErrNoAdvice)
	}
	return fmt.Errorf("%v with %q: %w; it covers %q and %q", c, existing, ErrNoAdvice, Bare, other)
}
