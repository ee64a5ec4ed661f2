package envelope

import (
	"errors"
	"fmt"
	"math"

	"github.com/coldseam/coldseam/rvalue"
)

// Envelope is what separates a house's heated rooms from outdoors.
type Envelope struct {
	Parts    []Part
	Bridges  []Bridge
	Buffers  []Buffer
	Leakage  *Leakage // nil if it is not known; it is then not ranked
	Altitude rvalue.Length
	Indoors  rvalue.Temperature // for the temperature of buffers only
	Outdoors rvalue.Temperature
}

// Kind is what a part of the envelope is.
type Kind uint8

// The kinds of part.
const (
	Wall Kind = iota
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
	ThermalBridge
	AirLeakage
)

var kindNames = [...]string{
	"wall", "ceiling", "roof", "floor", "window", "skylight", "door", "slab",
	"basement wall", "basement floor", "crawl wall", "thermal bridge", "air leakage",
}

func (k Kind) String() string { return kindNames[k] }

// Part is an area of one assembly, or of windows, toward one boundary.
type Part struct {
	Name     string
	Kind     Kind
	Area     rvalue.Area          // gross: openings are cut out of it
	U        rvalue.Transmittance // air to air; of a slab or basement, toward outdoors
	Toward   string               // the name of a Buffer; "" is outdoors or the ground
	Target   Target
	Detail   []Piece // how heat divides inside the part
	Openings []Opening
}

// Opening is a window or door, or several alike, in a part.
type Opening struct {
	Name   string
	Kind   Kind
	Area   rvalue.Area // of one
	Count  int         // 1 or more
	U      rvalue.Transmittance
	Target Target
	Detail []Piece
}

// Target is what a part is asked to reach.
type Target struct {
	U    rvalue.Transmittance // 0: nothing is asked
	Met  bool                 // by a path of its own, whatever U says
	Text string               // who asks, and how far it is met
}

// Piece is a path or layer inside a part.
type Piece struct {
	Name  string
	Share float64 // of the part's heat, or of its temperature drop
}

// Bridge is an edge that loses heat along its length.
type Bridge struct {
	Name   string
	Psi    rvalue.LinearTransmittance // may be negative at outer corners
	Length rvalue.Length
	Target rvalue.LinearTransmittance // 0: nothing is asked
	Kind   Kind                       // ThermalBridge, or Slab for a slab edge
}

// Check reports everything that makes the envelope impossible, joined.
func (e Envelope) Check() error {
	var errs []error
	fail := func(format string, args ...any) { errs = append(errs, fmt.Errorf("envelope: "+format, args...)) }
	if len(e.Parts) == 0 && len(e.Bridges) == 0 {
		fail("no parts, at least one is needed")
	}
	for _, p := range e.Parts {
		if !positive(float64(p.Area)) {
			fail("part %q has an area of %v m², it must be positive and finite", p.Name, float64(p.Area))
		}
		if !positive(float64(p.U)) {
			fail("part %q has a U of %v W/(m²·K), it must be positive and finite", p.Name, float64(p.U))
		}
		if p.Toward != "" && e.buffer(p.Toward) < 0 {
			fail("part %q faces the buffer %q, which does not exist", p.Name, p.Toward)
		}
		for _, o := range p.Openings {
			if !positive(float64(o.Area)) || !positive(float64(o.U)) {
				fail("opening %q in %q has an area of %v m² and a U of %v W/(m²·K), both must be positive and finite", o.Name, p.Name, float64(o.Area), float64(o.U))
			}
			if o.Count < 1 {
				fail("opening %q in %q counts %d, use 1 or more", o.Name, p.Name, o.Count)
			}
		}
		if open := p.open(); open >= p.Area {
			fail("the openings in %q take %v, the part has only %v and something must remain", p.Name, open, p.Area)
		}
	}
	for _, b := range e.Bridges {
		if !positive(float64(b.Length)) || math.IsNaN(float64(b.Psi)) || math.IsInf(float64(b.Psi), 0) {
			fail("bridge %q of %v W/(m·K) along %v m, the length must be positive and both finite", b.Name, float64(b.Psi), float64(b.Length))
		}
	}
	for i := range e.Buffers {
		if err := e.Buffers[i].check(); err != nil {
			errs = append(errs, err)
		}
	}
	if e.Leakage != nil {
		if err := e.Leakage.check(); err != nil {
			errs = append(errs, err)
		}
	}
	return errors.Join(errs...)
}

func positive(x float64) bool { return x > 0 && !math.IsInf(x, 1) }

// open returns the area of the openings.
func (p *Part) open() rvalue.Area {
	var a rvalue.Area
	for i := range p.Openings {
		a += p.Openings[i].all()
	}
	return a
}

// all returns the area of all openings alike.
func (o *Opening) all() rvalue.Area { return rvalue.Area(float64(o.Count) * float64(o.Area)) }

func (e *Envelope) buffer(name string) int {
	for i := range e.Buffers {
		if e.Buffers[i].Name == name {
			return i
		}
	}
	return -1
}
