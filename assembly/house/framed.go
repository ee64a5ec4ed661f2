package house

import (
	"fmt"

	"github.com/coldseam/coldseam/assembly"
	solver "github.com/coldseam/coldseam/assembly/section"
)

// Framed is an assembly of the house with members in it, and the section that
// shows them.
type Framed struct {
	Assembly *Assembly
	Hand     *assembly.Result // by the hand methods
	Bay      *solver.Bay      // nil if it has a Block
	Block    *solver.Block    // where members cross
	Refused  error            // why it cannot be drawn; Bay and Block are nil then
}

// Framed returns the assemblies that have members, in the order of the file, each
// drawn as it faces the first part that it is made for, outdoors if there is none.
// An assembly that cannot be computed is an error.
func (h *House) Framed() ([]*Framed, error) {
	var out []*Framed
	for _, a := range h.Assemblies {
		if a.Layers == nil {
			return nil, fmt.Errorf("house: assembly %q has no layers", a.Name)
		}
		x := assembly.Open
		for _, p := range h.Parts {
			if p.Assembly == a {
				x = p.exposure()
				break
			}
		}
		r, err := a.Layers.Evaluate(h.hand(a, x))
		if err != nil {
			return nil, fmt.Errorf("house: assembly %q: %w", a.Name, err)
		}
		f := &Framed{Assembly: a, Hand: r}
		for _, l := range r.Assembly.Layers {
			if l.Bridged() {
				out = append(out, f)
				f.draw()
				break
			}
		}
	}
	return out, nil
}

// draw draws the assembly flat, or in space where its members cross.
func (f *Framed) draw() {
	if f.Bay, f.Refused = solver.NewBay(f.Assembly.Layers, f.Hand); f.Refused == nil {
		return
	}
	if block, err := solver.NewBlock(f.Assembly.Layers, f.Hand); err == nil {
		f.Block, f.Refused = block, nil
	}
}
