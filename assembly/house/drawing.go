package house

import (
	"bytes"
	"fmt"
	"math"
	"slices"

	solver "github.com/coldseam/coldseam/assembly/section"
	"github.com/coldseam/coldseam/climate"
	"github.com/coldseam/coldseam/rvalue"
	"github.com/coldseam/coldseam/rvalue/material"
	"github.com/coldseam/coldseam/rvalue/surface"
)

// Drawing is a plane section as its file draws it, checked, with defaults filled
// in. DecodeDrawing makes one; a house file may hold some too.
type Drawing struct {
	Name  string
	Notes string
	Units rvalue.Units // to print in, unless the reader asks for others
	Films surface.Set  // of the films given as words

	Airs      []*Air
	Materials []*material.Material // the file's own
	Pieces    []*DrawnPiece        // in the order of the file: later ones lie over earlier ones
	Faces     []*Face
	Flanks    []*Flank
	Points    []*DrawnPoint

	// Section is what is solved: the pieces, cut into rectangles where a later
	// one lies over them, and Faces in their order.
	Section  solver.Section
	Remarks  []solver.Remark // on what is drawn
	Defaults []Default       // what was filled in, in the order of the file; of a house's section those are the house's

	sound bool     // no mistake was found in it
	usual []string // of one of our own: what it rests on as others do
	studs float64  // of one of our own: what studs alone take of its walls, 0 if it has none
}

// Air is the air that faces of a section are exposed to.
type Air struct {
	Name        string
	Temperature rvalue.Temperature
	Film        rvalue.Resistance // of its faces, unless they have their own

	filmed bool // Film is given, be it 0
}

// DrawnPiece is a rectangle of one material, as drawn.
type DrawnPiece struct {
	Name         string
	From, To     solver.Point // lower left, upper right
	Conductivity rvalue.Conductivity
	Basis        string // where the conductivity comes from

	at int // offset in the file
}

// Face is a straight line of the surface, and what it faces.
type Face struct {
	Name      string
	Air       *Air // nil if no heat passes
	Film      rvalue.Resistance
	From, To  solver.Point
	Adiabatic bool
}

// Flank is a plain part beside the bridge that a section shows.
type Flank struct {
	Name string
	U    rvalue.Transmittance

	// How long it is in the section, by either kind of dimensions; 0: not given.
	Internal, External rvalue.Length
}

// DrawnPoint is a place whose temperature is wanted.
type DrawnPoint struct {
	Name string
	At   solver.Point
}

// leastDrawing is the smallest drawing; the message about an empty file shows it.
const leastDrawing = `air.indoors = { temperature = "68 °F", film = "wall" }
air.outdoors = { temperature = "0 °F", film = "wind" }
piece = [ { material = "brick", x = ["0 in", "40 in"], y = ["0 in", "8 in"] } ]
face = [
  { air = "indoors", x = ["0 in", "40 in"], y = "0 in" },
  { air = "outdoors", x = ["0 in", "40 in"], y = "8 in" },
]`

// DecodeDrawing reads a drawn section, TOML in UTF-8 as Decode reads it, with
// the same kind of error: an [Errors] of every mistake in the file.
//
//	name, notes, units, films, [material.NAME]   as in the house file
//	[air.NAME]   temperature; film, a resistance or a word: "wall", "ceiling",
//	             "floor" for still air at one, "wind" for outdoors, "none"
//	[[piece]]    a rectangle: name, x and y, each from and to; material,
//	             conductivity, resistance (across its shorter side) or
//	             air_space, the way that heat crosses it: "sideways" (across
//	             its shorter side), "up" or "down"
//	[[face]]     a straight line of the surface, one of x and y a single place:
//	             name, air, film of its own; or adiabatic = true
//	[[flank]]    a plain part beside the bridge: name; its u, or layers and
//	             faces, or the x or y of a straight cut through the drawing
//	             whose pieces give it; internal and external, its length by
//	             either kind of dimensions
//	[[point]]    name, x, y
//
// x runs to the right, y upwards. A piece drawn later lies over those before
// it, which are cut back: draw the large first. An outline without a face lets
// no heat through, as a plane of symmetry or a cut far from the bridge does.
func DecodeDrawing(name string, data []byte) (*Drawing, error) {
	d := newDecoder(name, data)
	d.what = "drawing"
	dr := &Drawing{}
	if d.isText() {
		if root := d.build(); len(root.entries) == 0 && len(d.errs) == 0 {
			d.fail(0, "", "nothing is in this file; a drawing needs air, pieces and faces, such as\n%s", leastDrawing)
		} else {
			d.drawing(dr, root)
		}
	}
	if len(d.errs) > 0 {
		d.errs.sort()
		return nil, d.errs
	}
	return dr, nil
}

// IsDrawing reports whether a file is rather a drawn section than a house: it has
// pieces, faces or named air, and no parts.
func IsDrawing(data []byte) bool {
	if len(data) > maxFile || bytes.IndexByte(data, 0) >= 0 {
		return false
	}
	d := newDecoder("", data)
	root := d.build()
	return root.index["part"] == nil && slices.ContainsFunc([]string{"piece", "face", "air"}, func(key string) bool { return root.index[key] != nil })
}

// Solve computes the section, and the temperatures at its points in their order. The
// result's remarks have those on the drawing too.
func (d *Drawing) Solve(o solver.Options) (*solver.Result, error) {
	o.Points = nil
	for _, p := range d.Points {
		o.Points = append(o.Points, p.At)
	}
	r, err := d.Section.Solve(o)
	if err == nil {
		r.Remarks = append(r.Remarks, append(slices.Clip(d.Remarks), d.flanksExceed(r)...)...)
	}
	return r, err
}

// Psi is the linear transmittance of a bridge; the true one lies between Low and
// High.
type Psi struct {
	Psi, Low, High rvalue.LinearTransmittance
}

// Psi returns the linear transmittance of the bridge between the flanks by
// internal and by external dimensions (ISO 10211, L2D − ΣU·l); nil where a flank
// has no such length, or there are no flanks.
func (d *Drawing) Psi(r *solver.Result) (internal, external *Psi) {
	by := func(length func(*Flank) rvalue.Length) *Psi {
		if len(d.Flanks) == 0 {
			return nil
		}
		l, low, high := r.Coupling()
		p := &Psi{l, low, high}
		for _, f := range d.Flanks {
			if length(f) == 0 {
				return nil
			}
			plain := rvalue.LinearTransmittance(float64(f.U) * float64(length(f)))
			p.Psi, p.Low, p.High = p.Psi-plain, p.Low-plain, p.High-plain
		}
		if math.Abs(float64(p.Psi)) < nothing*math.Abs(float64(l)) {
			p.Psi = 0
		}
		return p
	}
	return by(func(f *Flank) rvalue.Length { return f.Internal }), by(func(f *Flank) rvalue.Length { return f.External })
}

// nothing is the part of a coupling below which a psi is rounding.
const nothing = 1e-12

// U returns the mean transmittance of a section that is a plain part: each of the
// two airs has one straight face, both the same way and as long. Of other
// sections, whose area is a matter of definition, ok is false.
func (d *Drawing) U(r *solver.Result) (u rvalue.Transmittance, ok bool) {
	var warm []*Face
	for _, f := range d.Faces {
		if !f.Adiabatic {
			warm = append(warm, f)
		}
	}
	if len(warm) != 2 || len(r.Airs) != 2 {
		return 0, false
	}
	a, b := warm[0], warm[1]
	along := func(f *Face) (x, y rvalue.Length) { return f.To.X - f.From.X, f.To.Y - f.From.Y }
	ax, ay := along(a)
	bx, by := along(b)
	if !near(float64(ax), float64(bx)) || !near(float64(ay), float64(by)) || !near(float64(a.From.X), float64(b.From.X)) && !near(float64(a.From.Y), float64(b.From.Y)) {
		return 0, false
	}
	return r.U(max(ax, ay)), true
}

// Damp returns the relative humidities of the air in a room from which a surface
// sweats, 100 % at the surface, and from which mould can grow on it in the long
// run, 80 % (ISO 13788).
func Damp(air, surface rvalue.Temperature) (sweats, mould float64, err error) {
	room, err := climate.SaturationPressure(air)
	if err != nil {
		return 0, 0, fmt.Errorf("house: %w", err)
	}
	at, err := climate.SaturationPressure(surface)
	if err != nil {
		return 0, 0, fmt.Errorf("house: %w", err)
	}
	return min(1, at/room), min(1, 0.8*at/room), nil
}
