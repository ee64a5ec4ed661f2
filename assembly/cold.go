package assembly

import "github.com/coldseam/coldseam/rvalue"

// coldR sets the resistance of a piece at its own mean temperature.
func (p *Piece) coldR(mean rvalue.Temperature) {
	factor, basis, ok := p.of.Factor(mean)
	p.R = rvalue.Resistance(factor * float64(p.warm))
	if ok {
		p.cold = &coldness{mean: mean, factor: factor, basis: basis}
	}
}

// coldness is what temperature did to a piece.
type coldness struct {
	mean   rvalue.Temperature
	factor float64
	basis  string
}

// coldRemarks says which resistances follow their temperature.
func (b *builder) coldRemarks() {
	for i := range b.pieces {
		for _, pieces := range b.pieces[i] {
			for _, p := range pieces {
				if p.cold != nil {
					b.remark(b.offsets[i], "cold", "%s: R times %.3f at its mean of %s (%s)", p.Name, p.cold.factor, rvalue.Both(p.cold.mean), p.cold.basis)
				}
			}
		}
	}
}
