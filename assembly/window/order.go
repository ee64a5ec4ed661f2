package window

import (
	"math"

	"github.com/coldseam/coldseam/rvalue"
)

// Opening is where a pane or sealed unit goes, measured between the faces that it
// would touch (the tight size).
type Opening struct {
	Widths, Heights [3]rvalue.Length // near both ends and in the middle
	Diagonals       [2]rvalue.Length // both, or zero for not measured

	// Clearance is what stays free all round; 0: 3 mm, and 5 mm for a side of more
	// than 2 m. A slim unit in a 7 mm rebate has 1 to 1.5 mm (seen).
	Clearance rvalue.Length
}

// Order is what to ask a glass shop for, and what its work takes. Width comes
// before height.
type Order struct {
	Width, Height rvalue.Length
	Thickness     rvalue.Length // of the pane or unit
	Area          rvalue.Area
	Mass          rvalue.Mass
	UnitedInches  float64       // width and height together, in
	Clearance     rvalue.Length // all round

	// Skew is how far the opening's top stands off its bottom, sideways, and is
	// taken off the width; 0 if the diagonals are equal or not measured. Spread is by
	// how much the readings of one way differ at most.
	Skew, Spread rvalue.Length

	People int  // to carry it
	Lift   bool // too heavy or large to carry: a lifting device

	Blocks     Blocks
	Bead       rvalue.Length // of glazing bead: once round the opening, a tenth more for cuts
	Seal       rvalue.Length // of sealant or tape: round both faces
	Sealant    rvalue.Volume // in a bead of 5 x 5 mm
	Cartridges int           // of 300 mL
}

// Blocks are the setting blocks that a pane stands on.
type Blocks struct {
	Count  int           // 0: none needed
	Length rvalue.Length // of each
	Width  rvalue.Length // at least: both panes of a unit stand on it
	Height rvalue.Length // at least
	From   rvalue.Length // of each block's middle from the nearer corner, a quarter of the width
}

// What an order is reckoned with.
const (
	usualClearance = 3 * rvalue.Millimetre // a glass merchant's advice: the tight opening less 6 mm each way, seen
	largeClearance = 5 * rvalue.Millimetre // UK practice, from memory
	largeSide      = 2 * rvalue.Metre

	perPerson = 23 * rvalue.Kilogram // NIOSH lifting equation, load constant (51 lb), from memory
	onePerson = 1 * rvalue.Metre     // longest side for one pair of arms: common practice, no source
	mostHands = 4                    // more do not find room round a pane: common practice, no source

	blockFrom     = 50                // united inches from which single glass needs blocks (a maker of glazing rubber, seen)
	blockLeast    = 4 * rvalue.Inch   // Glass Magazine 12/2008, seen
	blockPerFoot2 = 0.1 * rvalue.Inch // per ft² of glass, the same

	beadWaste   = 1.10
	sealantBead = 5 * rvalue.Millimetre
	cartridge   = 300e-6 * rvalue.CubicMetre

	// diagonalSlack is how far, relatively, diagonals may be from what the sides say;
	// a reading that is off by more is a slip.
	diagonalSlack = 0.02

	// readings of one way may differ by the less of the two; common practice, no source.
	readingSlack = 1 * rvalue.Inch
	readingShare = 0.05
)

// Densities in kg/m³: float glass 2500 (seen), plastics as in package material, the
// interlayer's polyvinyl butyral common practice, no source.
var densities = [...]float64{Glass: 2500, Laminated: 2500, Acrylic: 1180, Polycarbonate: 1200}

const interlayerDensity = 1070

// Mass returns that of the panes over an area, 2.5 kg/m² per mm of glass. Spacers
// and sealant are left out.
func (g Glazing) Mass(a rvalue.Area) rvalue.Mass {
	sum := 0.0
	for i := range g.Panes {
		p := &g.Panes[i]
		d, foil := p.Thickness.SI(), 0.0
		if p.Sheet == Laminated {
			foil = p.interlayer().SI()
		}
		if int(p.Sheet) < len(densities) {
			sum += (d-foil)*densities[p.Sheet] + foil*interlayerDensity
		}
	}
	return rvalue.Mass(sum * a.SI())
}

// Units returns what is ordered apart: a storm or secondary pane is a piece of its
// own, and so is what stands between two of them.
func (g Glazing) Units() []Glazing {
	var out []Glazing
	from := 0
	for i := range g.Panes {
		if i < len(g.Gaps) && !g.Panes[i].Storm && !g.Panes[i+1].Storm {
			continue
		}
		out = append(out, Glazing{Panes: g.Panes[from : i+1], Gaps: g.Gaps[from:max(i, from)]})
		from = i + 1
	}
	return out
}

// Order returns what to order for an opening: a rectangle that fits between the
// smallest readings with the clearance all round. Measure three times each way and
// both diagonals. The error names a reading that cannot be, or that is more than 1 in or
// 5 %, whichever is less, from another of its way; diagonals that do not belong to the
// sides; or a glazing of more than one piece, see [Glazing.Units].
func (g Glazing) Order(o Opening) (Order, error) {
	if err := g.check(); err != nil {
		return Order{}, err
	}
	if n := len(g.Units()); n != 1 {
		return Order{}, refuse("%s is made of %d pieces; order each by itself", g, n)
	}
	width, spread, err := readings("width", o.Widths)
	if err != nil {
		return Order{}, err
	}
	height, spread2, err := readings("height", o.Heights)
	if err != nil {
		return Order{}, err
	}
	out := Order{Thickness: g.Thickness(), Spread: max(spread, spread2), Clearance: o.Clearance}
	if out.Clearance == 0 {
		out.Clearance = usualClearance
		if max(width, height) > largeSide {
			out.Clearance = largeClearance
		}
	}
	if out.Skew, err = o.skew(); err != nil {
		return Order{}, err
	}
	out.Width, out.Height = width-out.Skew-2*out.Clearance, height-2*out.Clearance
	if !(out.Clearance > 0 && out.Width > 0 && out.Height > 0) {
		return Order{}, refuse("an opening of %s x %s, out of square by %s, leaves nothing inside a clearance of %s all round", said(width), said(height), said(out.Skew), said(out.Clearance))
	}
	out.Area = out.Width.Times(out.Height)
	out.Mass = g.Mass(out.Area)
	out.UnitedInches = (out.Width + out.Height).Inches()
	out.People, out.Lift = hands(out.Mass, max(out.Width, out.Height))
	out.Blocks = g.blocks(&out)
	around := 2 * (width + height)
	out.Bead, out.Seal = beadWaste*around, 2*around
	out.Sealant = rvalue.Volume(float64(sealantBead.Times(sealantBead)) * out.Seal.SI())
	out.Cartridges = Cartridges(out.Sealant)
	return out, nil
}

// Cartridges returns how many cartridges of 300 mL hold so much sealant.
func Cartridges(sealant rvalue.Volume) int { return int(math.Ceil(float64(sealant / cartridge))) }

// readings returns the smallest of three and how far they are apart, which is little
// unless one is a slip.
func readings(of string, three [3]rvalue.Length) (least, spread rvalue.Length, err error) {
	for i, l := range three {
		if !(l > 0 && l <= maxSize) {
			return 0, 0, refuse("reading %d of the %s is %s; measure at three places, above 0 to %s", i+1, of, said(l), said(maxSize))
		}
	}
	least, most := min(three[0], three[1], three[2]), max(three[0], three[1], three[2])
	spread = most - least
	if slack := min(readingSlack, rvalue.Length(readingShare*float64(most))); more(spread, slack) {
		return 0, 0, refuse("readings %s, %s and %s of the %s differ by %s, more than %s: a slip of the tape, measure again; an opening that is really so needs a template",
			said(three[0]), said(three[1]), said(three[2]), of, said(spread), said(slack))
	}
	return least, spread, nil
}

// skew returns how far the opening leans sideways, from its diagonals.
func (o Opening) skew() (rvalue.Length, error) {
	a, b := o.Diagonals[0].SI(), o.Diagonals[1].SI()
	if a == 0 && b == 0 {
		return 0, nil
	}
	if !(a > 0 && b > 0) {
		return 0, refuse("diagonals of %s and %s; measure both, or leave both out", said(o.Diagonals[0]), said(o.Diagonals[1]))
	}
	width, height := mean(o.Widths), mean(o.Heights)
	// Of a parallelogram a² + b² = 2·(w² + h²), and a² − b² = 4·w·x with x how far
	// its top stands off its bottom.
	whole := math.Sqrt((a*a + b*b) / 2)
	if should := math.Hypot(width, height); !(math.Abs(whole-should) <= diagonalSlack*should) {
		return 0, refuse("diagonals of %s and %s do not belong to sides of %s x %s, which have %s; measure again", said(o.Diagonals[0]), said(o.Diagonals[1]), said(rvalue.Length(width)), said(rvalue.Length(height)), said(rvalue.Length(should)))
	}
	return rvalue.Length(math.Abs(a*a-b*b) / (4 * width)), nil
}

// mean returns the mean of three readings in m.
func mean(three [3]rvalue.Length) float64 { return float64(three[0]+three[1]+three[2]) / 3 }

// hands returns how many people carry a pane, and whether it wants a lift instead.
func hands(m rvalue.Mass, longest rvalue.Length) (people int, lift bool) {
	people = int(math.Ceil(float64(m / perPerson)))
	if longest > onePerson {
		people = max(people, 2)
	}
	return people, people > mostHands
}

// blocks returns the setting blocks of an order.
func (g Glazing) blocks(o *Order) Blocks {
	if len(g.Gaps) == 0 && !(o.UnitedInches > blockFrom) {
		return Blocks{}
	}
	return Blocks{
		Count: 2, Length: max(blockLeast, rvalue.Length(o.Area.IP())*blockPerFoot2),
		Width: o.Thickness, Height: o.Clearance, From: o.Width / 4,
	}
}
