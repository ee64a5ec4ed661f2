package house

import (
	"fmt"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/rvalue"
	"github.com/coldseam/coldseam/rvalue/material"
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
	r, err := a.Layers.Evaluate(v.h.setting(a, x))
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

// setting is what surrounds an assembly in this house.
func (h *House) setting(a *Assembly, x assembly.Exposure) assembly.Setting {
	return assembly.Setting{
		Faces: a.Faces, Exposure: x, Films: h.Films, Method: a.Method, Cold: h.Cold,
		Wind: h.Outdoors.Wind, Indoors: h.Indoors.Temperature, Outdoors: h.Outdoors.Temperature,
	}
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
					_, err = s.Evaluate(sound.setting(a, x))
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

// insulation returns what an assembly has of it as installed: between the
// members, and right across.
func insulation(s *assembly.Spec, r *assembly.Result) (cavity, continuous rvalue.Resistance) {
	for _, l := range s.Layers {
		for i := range r.Layers {
			if r.Layers[i].Offset != l.Offset {
				continue
			}
			if len(l.Members) == 0 {
				if insulates(l.Item) {
					continuous += r.Layers[i].R
				}
				continue
			}
			for _, share := range r.Layers[i].Shares {
				if share.Member || len(share.Pieces) < len(l.Fill) {
					continue
				}
				for j, fill := range l.Fill {
					if insulates(fill) {
						cavity += share.Pieces[j].R
					}
				}
			}
		}
	}
	return cavity, continuous
}

// insulates reports whether the energy code would count a piece as insulation.
// A bare resistance counts: whoever writes one means it.
func insulates(it assembly.Item) bool {
	if it.Material == nil {
		return it.Kind == assembly.Labelled
	}
	switch it.Material.Class {
	case material.Fibre, material.LooseFill, material.Foam, material.SprayFoam, material.InsulationBoard:
		return true
	}
	return it.Kind == assembly.Batt
}
