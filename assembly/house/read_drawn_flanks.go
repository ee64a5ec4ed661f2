package house

import (
	"fmt"
	"slices"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/rvalue"
)

// flank reads a plain part beside the bridge.
func (d *decoder) flank(s *section, dr *Drawing, name string, o *overlay) {
	f := &Flank{Name: name}
	dr.Flanks = append(dr.Flanks, f)
	f.U, _ = quantity(s, "u", "U-0.060", someU)
	x, okX := s.span("x")
	y, okY := s.span("y")
	text, layered := s.text("layers")
	facing, faced := s.text("faces")
	ways := []string{"u", "layers", "x", "y"}
	if d.what == "house" {
		ways = append(ways, "assembly")
		d.flankAssembly(s, f)
	}
	s.oneOf("what it lets through", ways)
	switch {
	case layered:
		s.missing("faces", `what it faces is missing, which decides its films; write faces = "wall", "ceiling", "floor" or "roof"`)
		if faced {
			d.flankLayers(s, dr, f, text, facing)
		}
	case faced:
		s.fail("faces", "this goes with layers; leave it out")
	case o == nil: // mistakes are known
	case okX && len(x) == 1:
		d.flankCut(s, "x", x[0], dr, f, o)
	case okY && len(y) == 1:
		d.flankCut(s, "y", y[0], dr, f, o)
	case okX || okY:
		key := "x"
		if okY {
			key = "y"
		}
		s.fail(key, `a straight cut is at a single place, such as %s = "8 in"`, key)
	}
	f.Internal, _ = quantity(s, "internal", "4 ft", rvalue.ParseLength)
	f.External, _ = quantity(s, "external", "4 ft 6 in", rvalue.ParseLength)
	if !s.has("internal") && !s.has("external") {
		s.missing("", `its length in the section is missing; write internal = "4 ft" or external = "4 ft 6 in", by the dimensions that areas are taken with, or both`)
	}
	if o != nil && len(airsOf(dr)) > 2 {
		d.fail(s.t.at, s.where, "a linear transmittance is between two temperatures, and the faces here have %d; leave the flanks out", len(airsOf(dr)))
	}
}

// airsOf returns the temperatures that faces have.
func airsOf(dr *Drawing) []rvalue.Temperature {
	var out []rvalue.Temperature
	for _, f := range dr.Faces {
		if f.Air != nil && !slices.Contains(out, f.Air.Temperature) {
			out = append(out, f.Air.Temperature)
		}
	}
	return out
}

func (d *decoder) flankLayers(s *section, dr *Drawing, f *Flank, text, facing string) {
	set := assembly.Setting{Films: dr.Films}
	var err error
	if set.Faces, err = assembly.ParseFacing(facing); err != nil {
		s.fail("faces", "%s", plain(err))
		return
	}
	spec, err := assembly.Parser{Catalogue: d.catalogue}.Parse(text)
	if err != nil {
		s.textError("layers", err)
		return
	}
	r, err := spec.Evaluate(set)
	if err != nil {
		s.textError("layers", err)
		return
	}
	f.U = r.Effective.U()
	d.filled(s.path("u"), rvalue.Both(f.U), fmt.Sprintf("of its layers, by %s, with the films of a %s by %s", r.Effective.Method, set.Faces, set.Films))
}

// flankCut sums the pieces and films on a straight cut.
func (d *decoder) flankCut(s *section, key string, at rvalue.Length, dr *Drawing, f *Flank, o *overlay) {
	r, msg := o.through(key == "x", at, dr)
	if msg != "" {
		s.fail(key, "%s", msg)
		return
	}
	f.U = r.U()
	d.filled(s.path("u"), rvalue.Both(f.U), fmt.Sprintf("of the pieces and films at %s = %s", key, rvalue.Both(at)))
}

// through returns the resistance from air to air along a straight cut, or what is
// wrong with it.
func (o *overlay) through(upright bool, at rvalue.Length, dr *Drawing) (rvalue.Resistance, string) {
	across, along := o.ys, o.xs // edges that the cut lies between, and that it crosses
	if upright {
		across, along = o.xs, o.ys
	}
	field := func(i, j int) int {
		if upright {
			return o.at(j, i)
		}
		return o.at(i, j)
	}
	strip := func(j int) []int {
		out := make([]int, len(along)-1)
		for i := range out {
			out[i] = field(i, j)
		}
		return out
	}
	v := float64(at)
	var strips [][]int
	for j := range len(across) - 1 {
		if v >= across[j]-edge && v <= across[j+1]+edge {
			strips = append(strips, strip(j))
		}
	}
	if len(strips) == 0 {
		return 0, "no piece is there; cut the drawing where it shows the plain part"
	}
	if len(strips) == 2 && !slices.Equal(strips[0], strips[1]) {
		return 0, "pieces end right there; cut the drawing beside that, where it shows the plain part"
	}
	row := strips[0]
	from := slices.IndexFunc(row, func(n int) bool { return n >= 0 })
	if from < 0 {
		return 0, "no piece is there; cut the drawing where it shows the plain part"
	}
	to := from
	r := 0.0
	for to < len(row) && row[to] >= 0 {
		r += (along[to+1] - along[to]) / float64(dr.Pieces[row[to]].Conductivity)
		to++
	}
	if slices.ContainsFunc(row[to:], func(n int) bool { return n >= 0 }) {
		return 0, "the cut leaves the material and enters it again; cut the drawing where it shows the plain part alone"
	}
	var ends [2]*Face
	for n, edge := range []float64{along[from], along[to]} {
		for _, f := range dr.Faces {
			if f.meets(upright, at, rvalue.Length(edge)) {
				ends[n] = f
			}
		}
		if ends[n] == nil || ends[n].Air == nil {
			return 0, "the cut does not go from one face to another; cut the drawing where it shows the plain part"
		}
	}
	if ends[0].Air.Temperature == ends[1].Air.Temperature {
		return 0, "the cut goes from one air to the same; cut the drawing where it shows the plain part"
	}
	return rvalue.Resistance(r) + ends[0].Film + ends[1].Film, ""
}

// meets reports whether a cut at a place ends on the face, at an edge.
func (f *Face) meets(upright bool, at, end rvalue.Length) bool {
	from, to := f.From, f.To
	if upright { // the cut runs along y
		return near(float64(from.Y), float64(to.Y)) && near(float64(from.Y), float64(end)) && at >= from.X-edge*rvalue.Metre && at <= to.X+edge*rvalue.Metre
	}
	return near(float64(from.X), float64(to.X)) && near(float64(from.X), float64(end)) && at >= from.Y-edge*rvalue.Metre && at <= to.Y+edge*rvalue.Metre
}
