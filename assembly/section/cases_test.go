package section_test

import (
	"github.com/coldseam/coldseam/assembly/section"
	"github.com/coldseam/coldseam/rvalue"
)

func at(x, y float64) section.Point {
	return section.Point{X: rvalue.Length(x), Y: rvalue.Length(y)}
}

// piece fills x0…x1 by y0…y1 (m) with a material of k W/(m·K).
func piece(name string, x0, x1, y0, y1, k float64) section.Piece {
	return section.Piece{Name: name, From: at(x0, y0), To: at(x1, y1), Conductivity: rvalue.Conductivity(k)}
}

// faces is a boundary to air of celsius °C behind a film of rs m²·K/W.
func faces(name string, x0, y0, x1, y1, celsius, rs float64) section.Boundary {
	return section.Boundary{Name: name, From: at(x0, y0), To: at(x1, y1), Air: rvalue.FromCelsius(celsius), Film: rvalue.Resistance(rs)}
}

// column is ISO 10211, case 1: half of a square column, one side held at 20 °C
// and three at 0 °C. The standard leaves its size open; here it is 1 m.
func column() section.Section {
	return section.Section{
		Pieces: []section.Piece{piece("column", 0, 0.5, 0, 1, 1)},
		Boundaries: []section.Boundary{
			faces("top", 0, 1, 0.5, 1, 20, 0), faces("side", 0, 0, 0, 1, 0, 0), faces("bottom", 0, 0, 0.5, 0, 0, 0),
		},
	}
}

// roofEdge is ISO 10211, case 2: aluminium, wood and insulation under concrete.
func roofEdge() section.Section {
	return section.Section{
		Pieces: []section.Piece{
			piece("concrete", 0, 0.5, 0.0415, 0.0475, 1.15),
			piece("wood", 0, 0.015, 0.0365, 0.0415, 0.12),
			piece("flange", 0, 0.015, 0.035, 0.0365, 230),
			piece("web", 0, 0.0015, 0.0015, 0.035, 230),
			piece("skin", 0, 0.5, 0, 0.0015, 230),
			piece("insulation", 0.0015, 0.5, 0.0015, 0.035, 0.029),
			piece("insulation", 0.015, 0.5, 0.035, 0.0415, 0.029),
		},
		Boundaries: []section.Boundary{
			faces("inside", 0, 0, 0.5, 0, 20, 0.11), faces("outside", 0, 0.0475, 0.5, 0.0475, 0, 0.06),
		},
	}
}

// stud is our case (i), a 2x6 stud at 16 in between gypsum and sheathing.
func stud() section.Section {
	return section.Section{
		Pieces: []section.Piece{
			piece("gypsum", 0, 0.4064, 0, 0.0127, 0.16),
			piece("batt", 0, 0.1842, 0.0127, 0.1527, 0.038),
			piece("stud", 0.1842, 0.2222, 0.0127, 0.1527, 0.12),
			piece("batt", 0.2222, 0.4064, 0.0127, 0.1527, 0.038),
			piece("osb", 0, 0.4064, 0.1527, 0.1638, 0.13),
		},
		Boundaries: []section.Boundary{
			faces("inside", 0, 0, 0.4064, 0, 21, 0.12), faces("outside", 0, 0.1638, 0.4064, 0.1638, -18, 0.03),
		},
	}
}

// studWithBoard is our case (ii), the same with 2 in of insulation outside.
func studWithBoard() section.Section {
	s := stud()
	s.Pieces = append(s.Pieces, piece("board", 0, 0.4064, 0.1638, 0.2146, 0.0288))
	s.Boundaries[1] = faces("outside", 0, 0.2146, 0.4064, 0.2146, -18, 0.03)
	return s
}

// block is our case (iv), a concrete block with two filled cores.
func block() section.Section {
	const concrete, core = 0.8, 0.055
	return section.Section{
		Pieces: []section.Piece{
			piece("face", 0, 0.4, 0, 0.032, concrete),
			piece("web", 0, 0.03, 0.032, 0.158, concrete),
			piece("core", 0.03, 0.185, 0.032, 0.158, core),
			piece("web", 0.185, 0.215, 0.032, 0.158, concrete),
			piece("core", 0.215, 0.37, 0.032, 0.158, core),
			piece("web", 0.37, 0.4, 0.032, 0.158, concrete),
			piece("face", 0, 0.4, 0.158, 0.19, concrete),
		},
		Boundaries: []section.Boundary{
			faces("inside", 0, 0, 0.4, 0, 21, 0.12), faces("outside", 0, 0.19, 0.4, 0.19, -18, 0.03),
		},
	}
}

// slabEdge is our case (v), the upper half of a wall on the flush edge of a slab.
func slabEdge() section.Section {
	return section.Section{
		Pieces: []section.Piece{
			piece("half slab", 0, 1.2125, 0, 0.1, 2.0),
			piece("masonry", 0, 0.1, 0.1, 1.1, 0.8),
			piece("insulation", 0.1, 0.2, 0.1, 1.1, 0.036),
			piece("gypsum", 0.2, 0.2125, 0.1, 1.1, 0.16),
		},
		Boundaries: []section.Boundary{
			faces("outside", 0, 0, 0, 1.1, -18, 0.04),
			faces("wall", 0.2125, 0.1, 0.2125, 1.1, 21, 0.13),
			faces("floor", 0.2125, 0.1, 1.2125, 0.1, 21, 0.13),
		},
	}
}
