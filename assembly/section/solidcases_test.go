package section_test

import (
	"github.com/coldseam/coldseam/assembly/section"
	"github.com/coldseam/coldseam/rvalue"
)

func spot(x, y, z float64) section.Place {
	return section.Place{X: rvalue.Length(x), Y: rvalue.Length(y), Z: rvalue.Length(z)}
}

// box fills x0…x1 by y0…y1 by z0…z1 (m) with a material of k W/(m·K).
func box(name string, x0, x1, y0, y1, z0, z1, k float64) section.Box {
	return section.Box{Name: name, From: spot(x0, y0, z0), To: spot(x1, y1, z1), Conductivity: rvalue.Conductivity(k)}
}

// room is air of celsius °C behind films of rs m²·K/W in x0…x1 by y0…y1 by z0…z1 (m).
func room(name string, x0, x1, y0, y1, z0, z1, celsius, rs float64) section.Room {
	return section.Room{Name: name, From: spot(x0, y0, z0), To: spot(x1, y1, z1), Air: rvalue.FromCelsius(celsius), Film: rvalue.Resistance(rs)}
}

// balcony is ISO 10211, case 3: the corner of a wall with a slab that runs out
// as a balcony.
func balcony() section.Solid {
	var s section.Solid
	s.Boxes = append(s.Boxes, box("slab", 0.05, 1.2, -0.7, 1.2, 1, 1.15, 2.5))
	wall := func(name string, from, to, k float64) {
		// An L of two strips, below and above the slab; beside it where it ends.
		for _, z := range [2][2]float64{{0, 1}, {1.15, 2.15}} {
			s.Boxes = append(s.Boxes,
				box(name, from, to, from, 1.2, z[0], z[1], k),
				box(name, to, 1.2, from, to, z[0], z[1], k))
		}
		if from < 0.05 { // leaf and insulation pass the slab on the side without balcony
			s.Boxes = append(s.Boxes, box(name, from, to, from, 1.2, 1, 1.15, k))
			if to > from && to <= 0.05 && from < 0 {
				s.Boxes = append(s.Boxes, box(name, to, 0.05, from, to, 1, 1.15, k))
			}
		}
	}
	wall("outer leaf", -0.1, 0, 1)
	wall("insulation", 0, 0.05, 0.04)
	wall("inner leaf", 0.05, 0.2, 0.7)
	s.Boxes = append(s.Boxes, box("screed", 0.2, 1.2, 0.2, 1.2, 1.15, 1.2, 1))
	const far = 1.0
	s.Rooms = []section.Room{
		room("alpha", 0.2, 1.2, 0.2, 1.2, 0, 1, 20, 0.2),
		room("beta", 0.2, 1.2, 0.2, 1.2, 1.2, 2.15, 15, 0.2),
		room("gamma", -far, 1.2, -far, -0.1, 0, 1, 0, 0.05),
		room("gamma", -far, 1.2, -far, -0.1, 1.15, 2.15, 0, 0.05),
		room("gamma", -far, 0.05, -far, -0.1, 1, 1.15, 0, 0.05),
		room("gamma", 0.05, 1.2, -far, -0.7, 1, 1.15, 0, 0.05),
		room("gamma", -far, -0.1, -0.1, 1.2, 0, 2.15, 0, 0.05),
	}
	return s
}

// ironBar is ISO 10211, case 4: an iron bar through insulation into the room.
// Outside is below z = 0.
func ironBar() section.Solid {
	return section.Solid{
		Boxes: []section.Box{
			box("bar", 0.45, 0.55, 0.475, 0.525, 0, 0.6, 50),
			box("insulation", 0, 0.45, 0, 1, 0, 0.2, 0.1),
			box("insulation", 0.55, 1, 0, 1, 0, 0.2, 0.1),
			box("insulation", 0.45, 0.55, 0, 0.475, 0, 0.2, 0.1),
			box("insulation", 0.45, 0.55, 0.525, 1, 0, 0.2, 0.1),
		},
		Rooms: []section.Room{
			room("inside", 0, 1, 0, 1, 0.2, 1, 1, 0.1),
			room("outside", 0, 1, 0, 1, -1, 0, 0, 0.1),
		},
	}
}
