package assembly

import (
	"fmt"
	"math"

	"github.com/coldseam/coldseam/rvalue"
)

// Prepared is an assembly laid out for many evaluations: an optimiser that
// tries thicknesses, a screening of a list of walls. Its methods allocate
// nothing. It is safe for concurrent reading, not for SetR.
type Prepared struct {
	fractions []float64 // by path
	crossed   []int32   // by path and bridged layer: index into r
	bridged   int       // bridged layers
	plain     []float64 // resistances of the plain layers
	r         []float64 // resistances of the shares of the bridged layers
	at        [][]int32 // by layer and share: index into r, or into plain for a plain layer
}

// Prepare checks the assembly and lays out its paths.
func (a Assembly) Prepare() (*Prepared, error) {
	if err := a.Check(); err != nil {
		return nil, err
	}
	p := &Prepared{at: make([][]int32, len(a.Layers))}
	for i, l := range a.Layers {
		p.at[i] = make([]int32, len(l.Shares))
		if !l.Bridged() {
			p.at[i][0] = int32(len(p.plain))
			p.plain = append(p.plain, float64(l.Shares[0].R))
			continue
		}
		p.bridged++
		for s, share := range l.Shares {
			p.at[i][s] = int32(len(p.r))
			p.r = append(p.r, float64(share.R))
		}
	}
	for _, path := range a.Paths() {
		p.fractions = append(p.fractions, path.Fraction)
		for i, s := range path.Shares {
			if a.Layers[i].Bridged() {
				p.crossed = append(p.crossed, p.at[i][s])
			}
		}
	}
	return p, nil
}

// SetR changes the resistance of one share, by the indices of its layer and
// itself in the assembly that was prepared.
func (p *Prepared) SetR(layer, share int, r rvalue.Resistance) error {
	if layer < 0 || layer >= len(p.at) || share < 0 || share >= len(p.at[layer]) {
		return fmt.Errorf("assembly: no share %d in layer %d of the prepared assembly", share, layer)
	}
	if v := float64(r); !(v > 0) || math.IsInf(v, 0) {
		return fmt.Errorf("assembly: a resistance of %v m²·K/W, it must be positive and finite", v)
	}
	if i := p.at[layer][share]; len(p.at[layer]) == 1 {
		p.plain[i] = float64(r)
	} else {
		p.r[i] = float64(r)
	}
	return nil
}

// ParallelPath returns what Assembly.ParallelPath does, to rounding.
func (p *Prepared) ParallelPath() rvalue.Resistance {
	common := 0.0
	for _, r := range p.plain {
		common += r
	}
	u, crossed := 0.0, p.crossed
	for _, f := range p.fractions {
		r := common
		for _, i := range crossed[:p.bridged] {
			r += p.r[i]
		}
		crossed = crossed[p.bridged:]
		u += f / r // ASHRAE Handbook—Fundamentals 2021, ch. 27, parallel path
	}
	return rvalue.Resistance(1 / u)
}
