package assembly

import (
	"math"

	"github.com/coldseam/coldseam/rvalue"
)

// settled is the relative change of the resistances at which the air spaces
// count as having found their temperatures: far below what any table prints.
const settled = 1e-9

// settle finds the temperatures of the air spaces, and of the layers whose
// conductivity follows theirs, by iteration: the resistances set the
// temperatures by the effective method, which set the resistances. An air
// space's resistance depends weakly on its temperatures, so that a few passes
// suffice.
func (b *builder) settle(m Method) error {
	var following [][2]int // layer and share
	for i := range b.pieces {
		for s, pieces := range b.pieces[i] {
			if b.follows(pieces) {
				following = append(following, [2]int{i, s})
			}
		}
	}
	if following == nil {
		return nil
	}
	var faces facing
	a := Assembly{b.layers}
	paths := a.Paths()
	for range 100 {
		if m == Parallel {
			faces = func(layer, share int) (inner, drop float64, slabs []rvalue.Resistance) {
				inner, drop = b.straight(paths, layer, share)
				return inner, drop, nil
			}
		} else {
			d, whole, err := b.divide(m, a)
			if err != nil {
				return err
			}
			faces = func(layer, _ int) (inner, drop float64, slabs []rvalue.Resistance) {
				inner, drop = b.spread(d, whole, layer)
				return inner, drop, d.slabs[layer]
			}
		}
		change := 0.0
		for _, f := range following {
			c, err := b.settleShare(f[0], f[1], faces)
			if err != nil {
				return err
			}
			change = max(change, c)
		}
		for n := range paths {
			paths[n].R = 0
			for i, s := range paths[n].Shares {
				paths[n].R += b.layers[i].Shares[s].R
			}
		}
		if change < settled {
			return nil
		}
	}
	return b.fail(0, "the resistances that follow the temperature do not settle in this assembly; give the layer in doubt as one resistance, such as R-13")
}

// facing returns the temperature of a share's inner face, the drop across it, and
// in what proportion slabs divide that; nil if it goes by the pieces' R.
type facing func(layer, share int) (inner, drop float64, slabs []rvalue.Resistance)

// straight returns the temperature of a share's inner face and the drop across
// it, the mean by area over the paths that cross it.
func (b *builder) straight(paths []Path, layer, share int) (inner, drop float64) {
	var area float64
	ti, dT := float64(b.setting.Indoors), float64(b.setting.Indoors.Sub(b.setting.Outdoors))
	for _, p := range paths {
		if p.Shares[layer] != share {
			continue
		}
		before := 0.0
		for i, s := range p.Shares[:layer] {
			before += float64(b.layers[i].Shares[s].R)
		}
		area += p.Fraction
		inner += p.Fraction * (ti - dT*before/float64(p.R))
		drop += p.Fraction * dT * float64(b.layers[layer].Shares[share].R) / float64(p.R)
	}
	return inner / area, drop / area
}

// spread is the same where heat spreads sideways: all shares of a layer have
// its faces.
func (b *builder) spread(d division, whole rvalue.Resistance, layer int) (inner, drop float64) {
	var before rvalue.Resistance
	for _, r := range d.layers[:layer] {
		before += r
	}
	ti, dT := float64(b.setting.Indoors), float64(b.setting.Indoors.Sub(b.setting.Outdoors))
	return ti - dT*float64(before/whole), dT * float64(d.layers[layer]/whole)
}

// follows reports whether any of the pieces changes with temperature.
func (b *builder) follows(pieces []Piece) bool {
	for _, p := range pieces {
		if p.space != nil || b.setting.Cold && p.of != nil {
			return true
		}
	}
	return false
}

// settleShare corrects the pieces of one share to its present temperatures and
// returns the greatest relative change.
func (b *builder) settleShare(layer, share int, faces facing) (change float64, err error) {
	start, drop, slabs := faces(layer, share)
	total := b.layers[layer].Shares[share].R
	if len(slabs) != len(b.pieces[layer][share]) { // a member, one piece through all slabs
		slabs = nil
	}
	var across rvalue.Resistance
	for _, r := range slabs {
		across += r
	}
	var sum rvalue.Resistance
	for n := range b.pieces[layer][share] {
		p := &b.pieces[layer][share][n]
		old := p.R
		d := drop * float64(old/total)
		if slabs != nil {
			d = drop * float64(slabs[n]/across)
		}
		mean := rvalue.Temperature(start - d/2)
		start -= d
		switch {
		case p.space != nil:
			if err := p.airR(b.setting, mean, rvalue.TemperatureDifference(d)); err != nil {
				return 0, b.fail(max(b.offsets[layer], 0), "%s", plain(err))
			}
		case b.setting.Cold && p.of != nil:
			p.coldR(mean)
		}
		sum += p.R
		change = max(change, math.Abs(float64(p.R-old))/float64(p.R))
	}
	s := &b.layers[layer].Shares[share]
	s.R = sum
	if pieces := b.pieces[layer][share]; len(s.Parts) == len(pieces) {
		s.Parts = portions(pieces)
	}
	return change, nil
}
