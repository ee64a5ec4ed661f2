package window

import (
	"fmt"
	"math"

	"github.com/coldseam/coldseam/rvalue"
)

// MaxPanes is how many panes a glazing may have.
const MaxPanes = 6

// Glazing is a stack of panes with a gap between each two, indoors first.
// [Parse] reads one from text.
type Glazing struct {
	Panes []Pane
	Gaps  []Gap // Gaps[i] lies between Panes[i] and Panes[i+1]
}

// Pane is one sheet, or sheets laminated together.
type Pane struct {
	Sheet      Sheet
	Thickness  rvalue.Length // of the whole, above 0 to 60 mm
	Interlayer rvalue.Length // of a Laminated pane, the part of its thickness that is not glass; 0: 0.76 mm
	Tempered   bool
	Storm      bool // of a storm window or a secondary pane: set apart, its gap not sealed

	// Normal emissivity of a coating on the face towards indoors and on the one
	// towards outdoors, above 0 to 0.89; 0: no coating.
	Inner, Outer float64
}

// Sheet is what a pane is made of.
type Sheet uint8

// The sheets.
const (
	Glass Sheet = iota
	Laminated
	Acrylic
	Polycarbonate
)

var sheets = [...]struct {
	name string
	k    float64 // W/(m·K)
	e    float64 // corrected emissivity of a bare face
}{
	Glass:         {"glass", 1.0, bareGlass}, // EN 673, soda-lime glass, from memory
	Laminated:     {"laminated", 1.0, bareGlass},
	Acrylic:       {"acrylic", 0.18, 0.90},       // ISO 10077-2, from memory, as package material has it; emissivity of most plastics
	Polycarbonate: {"polycarbonate", 0.20, 0.90}, // the same
}

// String returns the name of the sheet in the notation.
func (s Sheet) String() string {
	if int(s) < len(sheets) {
		return sheets[s].name
	}
	return fmt.Sprintf("Sheet(%d)", uint8(s))
}

const (
	// bareGlass is the corrected emissivity of uncoated soda-lime glass, whose
	// normal emissivity is 0.89: EN 673, from memory. American sources have 0.84 (seen).
	bareGlass       = 0.837
	bareGlassNormal = 0.89

	// interlayerK is the conductivity of polyvinyl butyral in W/(m·K), and
	// usualInterlayer two foils of 0.38 mm: common practice, no source.
	interlayerK     = 0.22
	usualInterlayer = 0.76 * rvalue.Millimetre
)

// Gap is what lies between two panes.
type Gap struct {
	Kind      GapKind
	Thickness rvalue.Length // above 0 to 300 mm
	Fill      Fill          // of a Filled gap

	// Conductance from face to face, radiation included, as declared for a Vacuum
	// or Aerogel gap. A Filled gap is computed.
	Conductance rvalue.Transmittance
}

// GapKind tells computed gaps from those whose conductance is declared.
type GapKind uint8

// The kinds of gap.
const (
	Filled  GapKind = iota // with air or a gas
	Vacuum                 // held open by small pillars
	Aerogel                // filled with aerogel
)

var gapNames = [...]string{"filled", "vacuum", "aerogel"}

// String returns "filled", "vacuum" or "aerogel".
func (k GapKind) String() string {
	if int(k) < len(gapNames) {
		return gapNames[k]
	}
	return fmt.Sprintf("GapKind(%d)", uint8(k))
}

// correction is EN 673 table A.2 and EN 12898, from memory: the corrected
// (hemispherical) over the normal emissivity. Below its first entry the ratio stays.
var correction = [...][2]float64{
	{0.03, 1.22},
	{0.05, 1.18},
	{0.1, 1.14},
	{0.2, 1.10},
	{0.3, 1.06},
	{0.4, 1.03},
	{0.5, 1.00},
	{0.6, 0.98},
	{0.7, 0.96},
	{0.8, 0.95},
	{0.89, 0.94},
}

// CorrectedEmissivity returns the hemispherical emissivity that heat exchange
// goes by, from the normal one that makers declare, above 0 to 0.89: EN 673
// table A.2, from memory, between its entries along a straight line. Outside that
// range it returns NaN.
func CorrectedEmissivity(normal float64) float64 {
	if !emissivity(normal) {
		return math.NaN()
	}
	if normal <= correction[0][0] {
		return normal * correction[0][1]
	}
	i := 1
	for i < len(correction)-1 && normal > correction[i][0] {
		i++
	}
	low, high := correction[i-1], correction[i]
	return normal * (low[1] + (high[1]-low[1])*(normal-low[0])/(high[0]-low[0]))
}

// emissivity reports whether e is that of a coating, no higher than bare glass.
func emissivity(e float64) bool { return e > 0 && e <= bareGlassNormal }

// inner and outer return the corrected emissivity of a face.
func (p *Pane) inner() float64 { return p.face(p.Inner) }
func (p *Pane) outer() float64 { return p.face(p.Outer) }

func (p *Pane) face(coating float64) float64 {
	if coating == 0 {
		return sheets[p.Sheet].e
	}
	return CorrectedEmissivity(coating)
}

// resistance returns what the pane itself resists, in m²·K/W.
func (p *Pane) resistance() float64 {
	d, foil := p.Thickness.SI(), 0.0
	if p.Sheet == Laminated {
		foil = p.interlayer().SI()
	}
	return (d-foil)/sheets[p.Sheet].k + foil/interlayerK
}

func (p *Pane) interlayer() rvalue.Length {
	if p.Interlayer == 0 {
		return usualInterlayer
	}
	return p.Interlayer
}

// Limits of what a glazing may be made of.
const (
	maxPane        = 60 * rvalue.Millimetre
	maxGap         = 300 * rvalue.Millimetre // beyond it is a room
	maxConductance = 50 * rvalue.USI
)

// check returns an error on the first thing in g that cannot be.
func (g Glazing) check() error {
	switch n := len(g.Panes); {
	case n == 0:
		return refuse("a glazing without a pane; give at least one")
	case n > MaxPanes:
		return refuse("%d panes, at most %d can be solved", n, MaxPanes)
	case len(g.Gaps) != n-1:
		return refuse("%d panes with %d gaps between; give %d", n, len(g.Gaps), n-1)
	}
	for i := range g.Panes {
		if msg := g.Panes[i].fault(); msg != "" {
			return refuse("pane %d from indoors: %s", i+1, msg)
		}
	}
	for i := range g.Gaps {
		msg := g.Gaps[i].fault()
		if msg == "" && g.Gaps[i] != (Gap{Thickness: g.Gaps[i].Thickness}) && (g.Panes[i].Storm || g.Panes[i+1].Storm) {
			msg = stormGap
		}
		if msg != "" {
			return refuse("gap %d from indoors: %s", i+1, msg)
		}
	}
	return nil
}

const stormGap = "the gap beside a storm or secondary pane is not sealed and holds air; write air and its thickness"

// fault says what cannot be about a pane, "" if nothing.
func (p *Pane) fault() string {
	switch {
	case p.Sheet > Polycarbonate:
		return fmt.Sprintf("sheet %d is unknown, use Glass, Laminated, Acrylic or Polycarbonate", uint8(p.Sheet))
	case !(p.Thickness > 0 && p.Thickness <= maxPane):
		return fmt.Sprintf("a thickness of %s is no pane's, use above 0 to %s", said(p.Thickness), said(maxPane))
	case p.Interlayer != 0 && p.Sheet != Laminated:
		return "only laminated glass has an interlayer"
	case p.Sheet == Laminated && !(p.interlayer() > 0 && p.interlayer() < p.Thickness):
		return fmt.Sprintf("an interlayer of %s does not fit into %s of laminated glass", said(p.interlayer()), said(p.Thickness))
	case p.Inner != 0 && !emissivity(p.Inner):
		return badEmissivity(p.Inner)
	case p.Outer != 0 && !emissivity(p.Outer):
		return badEmissivity(p.Outer)
	}
	return ""
}

func badEmissivity(e float64) string {
	return fmt.Sprintf("an emissivity of %g is no coating's, use above 0 to 0.89, which is bare glass; about 0.04 for a soft coat, 0.15 for a hard one", e)
}

// fault says what cannot be about a gap, "" if nothing.
func (g *Gap) fault() string {
	f := g.Fill
	for _, x := range [...]float64{f.Argon, f.Krypton, f.Xenon, f.SF6} {
		if !(x >= 0 && x <= 1) {
			return fmt.Sprintf("a fill of %g %% is impossible, use above 0 to 100 %%", 100*x)
		}
	}
	switch {
	case g.Kind > Aerogel:
		return fmt.Sprintf("kind %d is unknown, use Filled, Vacuum or Aerogel", uint8(g.Kind))
	case g.Thickness == 0:
		return "a gap of 0 mm has no room for a gas; give its thickness, or leave the gap out by laminating the panes"
	case !(g.Thickness > 0 && g.Thickness <= maxGap):
		return fmt.Sprintf("a gap of %s is out of range, use above 0 to %s", said(g.Thickness), said(maxGap))
	case f.sum() > 1+fillSlack:
		return fmt.Sprintf("the gases fill %.4g %%, more than the gap; they may sum to 100 %%, air is the rest", 100*f.sum())
	case g.Kind == Filled && g.Conductance != 0:
		return "the conductance of a gap with gas is computed; declare it for vacuum or aerogel only"
	case g.Kind != Filled && !(g.Conductance > 0 && g.Conductance <= maxConductance):
		return fmt.Sprintf("the conductance of %s is declared by its maker; give it from face to face, above 0 to %s", g.Kind, said(maxConductance))
	case g.Kind != Filled && f != Fill{}:
		return fmt.Sprintf("a gap with %s holds no other gas", g.Kind)
	}
	return ""
}

// fillSlack is what rounding may add to a sum of shares.
const fillSlack = 1e-9

// Thickness returns that of the whole, from the inmost to the outmost face.
func (g Glazing) Thickness() rvalue.Length {
	var sum rvalue.Length
	for i := range g.Panes {
		sum += g.Panes[i].Thickness
	}
	for i := range g.Gaps {
		sum += g.Gaps[i].Thickness
	}
	return sum
}

func refuse(format string, args ...any) error {
	return fmt.Errorf("window: "+format, args...)
}

// said writes a quantity in both systems of units, for texts that cannot know
// which one the reader asked for.
func said[T interface{ In(rvalue.Units) string }](v T) string {
	return v.In(rvalue.SI) + " (" + v.In(rvalue.IP) + ")"
}
