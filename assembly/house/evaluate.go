package house

import (
	"fmt"
	"slices"

	"github.com/coldseam/coldseam/assembly"
	solver "github.com/coldseam/coldseam/assembly/section"
	"github.com/coldseam/coldseam/rvalue"
)

// Evaluated is one assembly as it is computed for the parts that are made of it.
type Evaluated struct {
	Assembly *Assembly
	Exposure assembly.Exposure // Open: outdoors; Still: a buffer; Soil: the ground
	Result   *assembly.Result
	Of       []string // names of the parts, and of buffers whose outer shell it is
}

// evaluator computes each assembly once for each exposure.
type evaluator struct {
	h    *House
	done map[evaluatorKey]*Evaluated
	all  []*Evaluated // in the order of first use
}

type evaluatorKey struct {
	a *Assembly
	x assembly.Exposure
}

func (v *evaluator) evaluate(a *Assembly, x assembly.Exposure, of string) (*assembly.Result, error) {
	key := evaluatorKey{a, x}
	if e, ok := v.done[key]; ok {
		e.Of = append(e.Of, of)
		return e.Result, nil
	}
	if a.Layers == nil {
		return nil, fmt.Errorf("house: assembly %q has no layers", a.Name)
	}
	r, err := v.h.solved(a, x)
	if err != nil {
		return nil, fmt.Errorf("house: assembly %q: %w", a.Name, err)
	}
	if v.done == nil {
		v.done = map[evaluatorKey]*Evaluated{}
	}
	e := &Evaluated{Assembly: a, Exposure: x, Result: r, Of: []string{of}}
	v.done[key] = e
	v.all = append(v.all, e)
	return r, nil
}

// solved evaluates an assembly as the house has it.
func (h *House) solved(a *Assembly, x assembly.Exposure) (*assembly.Result, error) {
	if h.Numeric {
		return solver.Prefer(a.Layers, h.setting(a, x))
	}
	return solver.Evaluate(a.Layers, h.setting(a, x))
}

// setting is what surrounds an assembly in this house.
func (h *House) setting(a *Assembly, x assembly.Exposure) assembly.Setting {
	return assembly.Setting{
		Faces: a.Faces, Exposure: x, Films: h.Films, Method: a.Method, Cold: h.Cold,
		Wind: h.Outdoors.Wind, Indoors: h.Indoors.Temperature, Outdoors: h.Outdoors.Temperature,
	}
}

// hand is the setting for the hand methods alone: the numeric answer is not theirs.
func (h *House) hand(a *Assembly, x assembly.Exposure) assembly.Setting {
	s := h.setting(a, x)
	if s.Method == assembly.Numeric {
		s.Method = assembly.Advised
	}
	return s
}

// exposure is what a part's outer face meets.
func (p *Part) exposure() assembly.Exposure {
	return [...]assembly.Exposure{ToOutdoors: assembly.Open, ToBuffer: assembly.Still, ToGround: assembly.Soil}[p.Toward]
}

// tryAll evaluates every assembly as it will be, to find the mistakes in layer
// texts that only show then: a fill deeper than its bay.
func (d *decoder) tryAll() {
	sound := *d.h
	if len(d.errs) > 0 { // of the mistakes in the temperatures too
		sound.Indoors, sound.Outdoors = Indoors{}, Outdoors{}
	}
	exposures := map[evaluatorKey]bool{}
	for _, p := range d.h.Parts {
		if p.Assembly != nil {
			exposures[evaluatorKey{p.Assembly, p.exposure()}] = true
		}
	}
	for _, a := range d.h.Assemblies {
		if a.Layers == nil {
			continue
		}
		for _, x := range []assembly.Exposure{assembly.Open, assembly.Still, assembly.Soil} {
			if x != assembly.Open && !exposures[evaluatorKey{a, x}] {
				continue
			}
			mistakes := len(d.errs)
			d.layers(a, a.Layers.Text, func(text string) (*assembly.Spec, error) {
				s, err := assembly.Parser{Catalogue: d.catalogue}.Parse(text)
				if err == nil {
					_, err = s.Evaluate(sound.hand(a, x)) // a section shows no other mistakes
				}
				return s, err
			})
			if len(d.errs) > mistakes {
				break
			}
		}
	}
}

// film returns the resistance of the inside film of a result.
func film(r *assembly.Result) rvalue.Resistance { return r.Layers[0].R }

// installed is one piece of insulation in an assembly.
type installed struct {
	layer   int  // of Spec.Layers
	between bool // members
	r       rvalue.Resistance
}

// insulation lists what an assembly has of it, as installed.
func insulation(s *assembly.Spec, r *assembly.Result) (all []installed) {
	for n, l := range s.Layers {
		for i := range r.Layers {
			if r.Layers[i].Offset != l.Offset {
				continue
			}
			if len(l.Members) == 0 {
				if insulates(l.Item) {
					all = append(all, installed{n, false, r.Layers[i].R})
				}
				continue
			}
			for _, share := range r.Layers[i].Shares {
				for _, piece := range share.Pieces {
					written := func(fill assembly.Item) bool { return fill.Offset == piece.Offset && insulates(fill) }
					if slices.ContainsFunc(l.Fill, written) {
						all = append(all, installed{n, true, piece.R})
					}
				}
			}
		}
	}
	return all
}

// offered sums insulation between the members and right across.
func offered(all []installed) (cavity, continuous rvalue.Resistance) {
	for _, in := range all {
		if in.between {
			cavity += in.r
		} else {
			continuous += in.r
		}
	}
	return cavity, continuous
}

// insideOfMass reports whether more than half of the insulation lies on the room side
// of the first layer of masonry, concrete, stone or earth.
func insideOfMass(s *assembly.Spec, all []installed) bool {
	mass := slices.IndexFunc(s.Layers, func(l assembly.SpecLayer) bool { return l.Item.Material != nil && heavy(l.Item.Material) })
	var inside, whole rvalue.Resistance
	for _, in := range all {
		whole += in.r
		if in.layer < mass {
			inside += in.r
		}
	}
	return inside > whole/2
}

// filled reports whether insulation alone fills the bays of every framed layer that
// has any. Of a fill without a thickness that is not known, and not claimed.
func filled(s *assembly.Spec, r *assembly.Result) bool {
	const slack = 3 * rvalue.Millimetre // of what a saw and a label leave
	some := false
	for _, l := range s.Layers {
		insulating := 0
		for _, it := range l.Fill {
			if insulates(it) {
				insulating++
			}
		}
		if len(l.Members) == 0 || insulating == 0 {
			continue
		}
		if insulating < len(l.Fill) {
			return false
		}
		some = true
		for i := range r.Layers {
			if r.Layers[i].Offset != l.Offset {
				continue
			}
			for _, share := range r.Layers[i].Shares {
				var deep rvalue.Length
				for _, piece := range share.Pieces {
					deep += piece.Thickness
				}
				if !share.Member && deep < l.Members[0].Depth-slack {
					return false
				}
			}
		}
	}
	return some
}

// insulates reports whether the energy code would count a piece as insulation.
// A bare resistance counts: whoever writes one means it.
func insulates(it assembly.Item) bool {
	if it.Material == nil {
		return it.Kind == assembly.Labelled
	}
	return it.Kind == assembly.Batt || it.Material.Class.Insulates()
}
