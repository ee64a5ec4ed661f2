package envelope

import "github.com/coldseam/coldseam/rvalue"

// Envelope is what separates a house's heated rooms from outdoors.
type Envelope struct {
	Parts    []Part
	Bridges  []Bridge
	Buffers  []Buffer
	Leakage  *Leakage           // nil: not known, and then not counted
	Altitude rvalue.Length      // above the sea; it thins the air that leaks
	Indoors  rvalue.Temperature // used for the temperature of buffers only,
	Outdoors rvalue.Temperature // which stays 0 unless both are given
}

// Kind is what a part of the envelope is. Its zero value is none of them.
type Kind uint8

// The kinds of part.
const (
	Wall Kind = iota + 1
	Ceiling
	Roof
	Floor
	Window
	Skylight
	Door
	Slab
	BasementWall
	BasementFloor
	CrawlWall
	ThermalBridge // of a Bridge
	AirLeakage    // of the Leakage
)

var kindNames = [...]string{
	"unknown kind", "wall", "ceiling", "roof", "floor", "window", "skylight", "door", "slab",
	"basement wall", "basement floor", "crawl wall", "thermal bridge", "air leakage",
}

// String returns the kind in words.
func (k Kind) String() string {
	if int(k) >= len(kindNames) {
		k = 0
	}
	return kindNames[k]
}

// hasArea reports whether k is a kind of Part or Opening.
func (k Kind) hasArea() bool { return k >= Wall && k <= CrawlWall }

// Part is an area of one assembly, or of windows, toward one boundary.
type Part struct {
	Name     string
	Kind     Kind
	Area     rvalue.Area          // gross: openings are cut out of it
	U        rvalue.Transmittance // air to air; of what lies on or in the ground, toward outdoors
	Toward   string               // the name of a Buffer; "" is outdoors or the ground
	Target   Target
	Detail   []Piece // how heat divides inside the part
	Openings []Opening
}

// Opening is a window or door, or several alike, in a part. It faces what its
// part faces.
type Opening struct {
	Name   string
	Kind   Kind
	Area   rvalue.Area // of one
	Count  int         // 1 or more
	U      rvalue.Transmittance
	Target Target
	Detail []Piece
}

// Target is what a part is asked to reach. The caller fills it in, from the
// tables of an energy code or from its own wish.
type Target struct {
	U    rvalue.Transmittance // 0: nothing is asked
	Met  bool                 // by another path than U, such as installed insulation
	Text string               // who asks, and how far it is met
}

// Piece is a path straight through a part, or one layer of it.
type Piece struct {
	Name  string
	Layer bool              // else a path
	Share float64           // of a path: of the part's heat; of a layer: of its temperature drop
	R     rvalue.Resistance // 0: unknown
}

// Bridge is an edge that loses heat along its length.
type Bridge struct {
	Name   string
	Kind   Kind                       // 0 is ThermalBridge; Slab for a slab's edge by its F-factor
	Psi    rvalue.LinearTransmittance // negative at some outer corners
	Length rvalue.Length
	Target rvalue.LinearTransmittance // 0: nothing is asked
}

// kind returns the bridge's kind, with its default.
func (b *Bridge) kind() Kind {
	if b.Kind == 0 {
		return ThermalBridge
	}
	return b.Kind
}

// open returns the area of the openings.
func (p *Part) open() rvalue.Area {
	var a rvalue.Area
	for i := range p.Openings {
		a += p.Openings[i].all()
	}
	return a
}

// net returns the area that the openings leave, 0 where rounding makes it less.
func (p *Part) net() rvalue.Area { return max(0, p.Area-p.open()) }

// all returns the area of all the openings alike.
func (o *Opening) all() rvalue.Area { return rvalue.Area(float64(o.Count) * float64(o.Area)) }

// buffer returns the index of the buffer of that name, -1 if there is none.
func (e *Envelope) buffer(name string) int {
	for i := range e.Buffers {
		if e.Buffers[i].Name == name {
			return i
		}
	}
	return -1
}
