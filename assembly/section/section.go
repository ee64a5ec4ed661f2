package section

import (
	"github.com/coldseam/coldseam/rvalue"
)

// Point is a place in a section.
type Point struct {
	X, Y rvalue.Length
}

// Piece is a rectangle of one material between two opposite corners.
type Piece struct {
	Name         string
	From, To     Point
	Conductivity rvalue.Conductivity
}

// Boundary is a straight part of the outline, along x or along y, and what it
// faces. What no boundary covers of the outline lets no heat through: it is a
// plane of symmetry or a cut far enough from any bridge.
type Boundary struct {
	Name     string
	From, To Point
	Air      rvalue.Temperature
	Film     rvalue.Resistance // of the surface; 0 holds the surface itself at Air

	// Adiabatic says that no heat passes here; Air and Film are not given then.
	// It is needed only off the rectangle around the whole section, where an
	// outline without a boundary would rather be a piece forgotten.
	Adiabatic bool
}

// Section is a plane cut through a building part that runs on unchanged across
// the cut: pieces side by side, without gaps or overlaps, and what they face.
type Section struct {
	Pieces     []Piece
	Boundaries []Boundary
}

// Options say how well a section is solved. The zero value is the default.
type Options struct {
	// Tolerance is how far, at most, the heat flow may lie from the true one, as
	// a part of itself: half the width of its bracket. 0: 0.0001, where ISO 10211
	// asks for a change of no more than 1 % on doubling the mesh.
	Tolerance float64

	// Surface is how far, at most, the coldest and warmest spots of the surfaces
	// and the Points may still move on the last refinement, as a part of the
	// difference of the air temperatures; 1 asks nothing of them. It is no bound:
	// near a corner of great contrast a temperature may be a few times farther off.
	// 0: 0.0001.
	Surface float64

	// Unknowns bounds the size of the largest mesh, both problems counted. 0: 600 000,
	// some 500 MB.
	Unknowns int

	// Points are places whose temperatures are wanted.
	Points []Point

	// Watch, if set, is called after each mesh that does not meet the tolerance
	// yet; false stops the refinement there.
	Watch func(Progress) bool
}

const (
	defaultTolerance = 1e-4 // of Tolerance and Surface
	defaultUnknowns  = 600_000
	leastTolerance   = 1e-9 // below it rounding decides
)
