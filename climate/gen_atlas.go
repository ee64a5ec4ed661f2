//go:build ignore

// The outlines of counties, read for gen.go from a topology file.
package main

import (
	"encoding/json"
	"math"
	"os"
)

// outline is a county's rings of (longitude, latitude) in degrees.
type outline struct{ rings [][][2]float64 }

// readAtlas decodes the arcs of a TopoJSON file: integers, each a step from the
// one before, scaled and shifted; a ring is a list of arcs, reversed where negative.
func readAtlas(path string) map[string]*outline {
	raw, err := os.ReadFile(path)
	check(err)
	var t struct {
		Transform struct{ Scale, Translate [2]float64 }
		Arcs      [][][2]int
		Objects   map[string]struct {
			Geometries []struct {
				Type, ID string
				Arcs     json.RawMessage
			}
		}
	}
	check(json.Unmarshal(raw, &t))
	arcs := make([][][2]float64, len(t.Arcs))
	for i, arc := range t.Arcs {
		var x [2]int
		for _, step := range arc {
			var p [2]float64
			for k := range 2 {
				x[k] += step[k]
				p[k] = float64(x[k])*t.Transform.Scale[k] + t.Transform.Translate[k]
			}
			arcs[i] = append(arcs[i], p)
		}
	}
	out := map[string]*outline{}
	for _, g := range t.Objects["counties"].Geometries {
		polygons := make([][][]int, 1)
		if g.Type == "Polygon" {
			check(json.Unmarshal(g.Arcs, &polygons[0]))
		} else {
			check(json.Unmarshal(g.Arcs, &polygons))
		}
		o := &outline{}
		for _, polygon := range polygons {
			for _, refs := range polygon {
				var ring [][2]float64
				for _, ref := range refs {
					if ref >= 0 {
						ring = append(ring, arcs[ref]...)
						continue
					}
					for k := len(arcs[^ref]) - 1; k >= 0; k-- {
						ring = append(ring, arcs[^ref][k])
					}
				}
				for i := range ring { // the Aleutians cross the date line
					if g.ID == "02016" && ring[i][0] > 0 {
						ring[i][0] -= 360
					}
				}
				o.rings = append(o.rings, ring)
			}
		}
		out[g.ID] = o
	}
	return out
}

// sides calls f for each side of the outline.
func (o *outline) sides(f func(a, b [2]float64)) {
	for _, ring := range o.rings {
		for i := range ring {
			f(ring[i], ring[(i+1)%len(ring)])
		}
	}
}

// middle returns the centroid of the area, in degrees.
func (o *outline) middle() (lat, lon float64) {
	var area, x, y float64
	o.sides(func(a, b [2]float64) {
		k := a[0]*b[1] - b[0]*a[1]
		area += k
		x += (a[0] + b[0]) * k
		y += (a[1] + b[1]) * k
	})
	if lat, lon = y/(3*area), x/(3*area); area == 0 {
		// Falls Church is so small that its outline shrank to a line.
		lat, lon = o.rings[0][0][1], o.rings[0][0][0]
	}
	if lon < -180 {
		lon += 360
	}
	return lat, lon
}

// distance returns 0 inside the outline, outside it the distance to its nearest
// corner in km, near enough to tell which county a shore belongs to.
func (o *outline) distance(lat, lon float64) float64 {
	inside, best := false, math.Inf(1)
	o.sides(func(a, b [2]float64) {
		if (a[1] > lat) != (b[1] > lat) && lon < (b[0]-a[0])*(lat-a[1])/(b[1]-a[1])+a[0] {
			inside = !inside
		}
		best = min(best, math.Hypot(a[1]-lat, (a[0]-lon)*math.Cos(lat*math.Pi/180)))
	})
	if inside {
		return 0
	}
	return best * 111.2 // km per degree
}
