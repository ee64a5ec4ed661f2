// Package section computes steady heat conduction through building parts as they
// are drawn: rectangles of material on a plane (Section), boxes in space
// (Solid). It gives the heat flow, U, linear and point transmittances, the
// coldest spots of the surfaces and the temperature anywhere, for one part or
// straight from an assembly of the layer notation (NewBay, NewBlock).
//
//	s := section.Section{
//		Pieces: []section.Piece{
//			{Name: "stud", To: section.Point{X: 19 * rvalue.Millimetre, Y: 140 * rvalue.Millimetre}, Conductivity: 0.12 * rvalue.WattPerMetreKelvin},
//			…
//		},
//		Boundaries: []section.Boundary{
//			{Name: "inside", To: section.Point{X: 203 * rvalue.Millimetre}, Air: rvalue.FromCelsius(21), Film: 0.12 * rvalue.RSI},
//			…
//		},
//	}
//	r, err := s.Solve(section.Options{})
//
// Overlay turns pieces drawn over each other into pieces side by side, and
// Catalogue has usual junctions drawn: slab edge, rim joist, window, corner,
// parapet, eave.
//
// # Two bounds
//
// Every result is a bracket. A temperature field that fits together gives more
// heat than really flows (Dirichlet's principle), a flow without sources or
// sinks less (Thomson's): the section is solved for both, the true flow lies
// between, rounding apart, and Heat is the mean, whose error is far smaller than
// the half width. The hand methods are crude cases of the same: isothermal planes
// an admissible temperature, the parallel path an admissible flow, which is why
// R lies between theirs.
//
// In the plane both fields are polynomials of degree 2 to 14 on a grid of
// rectangles graded toward every corner, the flow by its stream function; the
// interiors are condensed away in closed form, what is left is solved directly
// by nested dissection, and the residual mended to the last bits. In space the
// temperature is trilinear on bricks and the flow that of finite volumes, both
// by conjugate gradients with a multigrid. What the two fields disagree by in an
// element is its part of the gap, exactly, and tells where to refine. Meshes are
// refined until the bracket and the surface temperatures meet the tolerance.
//
// # What it rests on
//
// The procedure, the terms and the validation cases are those of ISO 10211
// (cases 1 to 4 are tests here, testdata/section_iso10211.csv); temperature
// factors those of ISO 13788. Conductivities do not change with temperature,
// contacts are perfect, air spaces are solids of an equivalent conductivity, and
// surface resistances are as given: which ones belong where, 0.13 m²·K/W for a
// flow or 0.25 for mould in a corner, is for the caller to know.
//
// # Not covered
//
// Slanting and round shapes, conductivities that differ by direction, heat that
// is stored or made, air and moisture that move, radiation across open cavities.
// Empty spaces enclosed by a section are refused, and so are surfaces of a solid
// held at two temperatures that touch.
package section
