package house

import (
	"fmt"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/assembly/envelope"
	"github.com/coldseam/coldseam/assembly/season"
	solver "github.com/coldseam/coldseam/assembly/section"
	"github.com/coldseam/coldseam/assembly/window"
	"github.com/coldseam/coldseam/climate/target"
	"github.com/coldseam/coldseam/rvalue"
	"github.com/coldseam/coldseam/rvalue/material"
	"github.com/coldseam/coldseam/rvalue/surface"
)

// House is a house as its file describes it, checked, with defaults filled in.
// Decode makes one.
type House struct {
	Name     string
	Place    string // as written: a county and state, a town
	Zone     target.Zone
	Edition  target.Edition
	Altitude rvalue.Length // 0: sea level, or not given
	Units    rvalue.Units  // to print in, unless the reader asks for others
	Films    surface.Set
	Soil     rvalue.Conductivity // of the ground; 0: no part needs it
	Numeric  bool                // assemblies of no method of their own are solved in their sections; psi of a section rests on it too and is computed by Decode
	Cold     bool                // conductivities at the layers' own mean temperatures
	Notes    string

	Indoors  Indoors
	Outdoors Outdoors
	Leakage  *Leakage // nil: not known
	Fuel     *Fuel    // nil: not given
	Living   Living
	Cooling  *Cooling             // nil: none
	Months   []rvalue.Temperature // twelve monthly means, January first; nil: those of the place

	Materials  []*material.Material // the file's own
	Assemblies []*Assembly
	Windows    []*Window
	Buffers    []*Buffer
	Parts      []*Part
	Sections   []*Drawing // for bridges, and for whoever wants them solved
	Bridges    []*Bridge

	Defaults []Default // what was filled in, in the order of the file
}

// Indoors is the air in the rooms.
type Indoors struct {
	Temperature rvalue.Temperature
	Humidity    float64 // relative, 0 to 1; 0: not given
}

// Outdoors is the air outside for which temperatures are computed.
type Outdoors struct {
	Temperature rvalue.Temperature
	Wind        rvalue.Speed       // 0: the winter wind of the surface films
	Design      rvalue.Temperature // for the size of the heater; 0: estimated
}

// Leakage is the air that leaks, by one of three figures.
type Leakage struct {
	Volume    rvalue.Volume  // of the heated rooms; 0: not given, with Flow50
	ACH50     float64        // air changes per hour at 50 Pa, else 0
	Flow50    rvalue.AirFlow // at 50 Pa, else 0
	Tightness string         // a word, else ""
	Storeys   float64        // 1 to 3
	Shelter   envelope.Shelter
}

// Fuel is what heats the house.
type Fuel struct {
	Kind       string
	Plant      string  // "": what mostly goes with the fuel
	Price      float64 // money per Per
	Per        string
	Currency   string  // of the price, "": dollars
	Efficiency float64 // of the heating plant, 0.8 is 80 %; a heat pump's is above 1; 0: not given

	COP, HSPF, HSPF2 float64        // of a heat pump; 0: not given
	Line             []season.Point // COP by outdoor temperature, coldest first

	at place
}

// Living is what gives heat for nothing: the people and what they use.
type Living struct {
	Floor    rvalue.Area   // heated, 0: not given
	Bedrooms int           // 0: not given
	Gains    *season.Power // of people, appliances and sun together; nil: by the others
}

// Cooling is what keeps the house cool.
type Cooling struct {
	SEER float64 // 0: a usual one
}

// Assembly is a named build-up of layers.
type Assembly struct {
	Name   string
	Faces  assembly.Facing
	Layers *assembly.Spec
	Method assembly.Method // Advised unless the file names one

	at     place
	facing bool  // Faces could be read
	layers *node // the text, for places in it
}

// Window is a named kind of window, skylight or door.
type Window struct {
	Name     string
	Kind     envelope.Kind // Window, Skylight or Door
	U        rvalue.Transmittance
	Source   string // of U: "label", or whose table
	Glass    string // as written, "" if U is the label's
	Frame    string
	Leaf     string // of a door: what it is made of
	Operable bool
	Built    *Built // described by its glass: U depends on the opening then, and is 0 here

	at      place
	remarks []Remark // on the glazing's text
}

// Buffer is a named unheated space between the rooms and outdoors.
type Buffer struct {
	Name       string
	ToOutdoors []Surface
	ToGround   []*Part       // what of it lies in the ground
	Volume     rvalue.Volume // 0: its own air change is left out
	AirChange  float64       // of outdoor air, per hour
}

// Surface is an area that a buffer has toward outdoors.
type Surface struct {
	Area rvalue.Area
	Construction
}

// Construction is what an area is made of: one of the three.
type Construction struct {
	Assembly *Assembly
	Window   *Window
	U        rvalue.Transmittance // declared
}

// Part is an area of the envelope.
type Part struct {
	Name string
	Kind Kind
	Construction
	Area     rvalue.Area // gross, openings included
	Openings []*Opening
	Toward   Boundary
	Buffer   *Buffer // if Toward is ToBuffer

	Perimeter rvalue.Length // of a slab or basement floor: the exposed edge
	Depth     rvalue.Length // of a basement's or crawl space's floor below ground
	Edge      Edge          // of a slab
}

// Opening is a window or door, or several alike, in a part.
type Opening struct {
	Name   string
	Window *Window
	Area   rvalue.Area // of one
	Count  int

	Width, Height rvalue.Length   // 0: only the area is given
	Measured      *window.Opening // the place of one pane or unit; nil: not measured
	Site          *window.Place   // where it is in the room; nil: not given
	Escape        *window.Escape  // a way out, to be held against the code; nil: not asked
}

// Edge is the insulation at the edge of a slab.
type Edge struct {
	Reach string        // "none", "2 ft vertical" and so on
	Depth rvalue.Length // of that
	R     rvalue.Resistance
}

// Bridge is an edge that loses heat along its length.
type Bridge struct {
	Name   string
	Psi    rvalue.LinearTransmittance
	Length rvalue.Length

	Section  *Drawing // that Psi was computed from; nil if Psi is given
	External bool     // by external dimensions of the section
	Bracket  *Psi     // what Psi lies between; nil if it is given

	solved []solver.Remark // on the drawing and its solution
	at     place
}

// Default is a value that was filled in because the file does not give it.
type Default struct {
	Key   string // what was left out, such as "outdoors.temperature"
	Value string
	Why   string // where the value comes from
}

// Boundary is what a part faces.
type Boundary uint8

// The boundaries.
const (
	ToOutdoors Boundary = iota
	ToGround
	ToBuffer
)

// String returns "outdoors", "ground" or "buffer".
func (b Boundary) String() string {
	if b > ToBuffer {
		return fmt.Sprintf("Boundary(%d)", uint8(b))
	}
	return [...]string{"outdoors", "ground", "buffer"}[b]
}

// Kind is what a part is.
type Kind uint8

// The kinds of part.
const (
	Wall Kind = iota
	MassWall
	Ceiling // under an attic
	Roof    // with rooms right below it
	Floor
	BasementWall
	CrawlWall
	BasementFloor
	Slab
	Glazing // a part that is a window, skylight or door itself
)

var kindNames = []string{
	"wall", "mass wall", "ceiling", "roof", "floor", "basement wall", "crawl wall", "basement floor", "slab", "glazing",
}

// String returns the kind as the file writes it.
func (k Kind) String() string {
	if int(k) >= len(kindNames) {
		return fmt.Sprintf("Kind(%d)", uint8(k))
	}
	return kindNames[k]
}

// place is where something stands in its file. Its zero value is nowhere.
type place struct {
	src *source
	t   *table
}

// fail returns an error of the thing that stands there.
func (p place) fail(key string, err error) error {
	if p.src == nil {
		return fmt.Errorf("house: %s: %w", key, err)
	}
	line := p.src.lineOf(p.t.at)
	at := p.src.place(p.t.at)
	return Errors{&Error{File: p.src.name, Line: at.Line, Column: at.Column, Key: key, Source: p.src.line(line), Msg: plain(err)}}
}

// start returns where the table starts.
func (p place) start() Place {
	if p.src == nil {
		return Place{}
	}
	return p.src.place(p.t.at)
}
