package assembly

import (
	"math"

	"github.com/coldseam/coldseam/rvalue"
)

// division is how heat and temperature drop divide inside an assembly by one
// method. In every layer the shares of heat average the shares' resistances to
// what the layer adds to the whole: Σ heat·R(share) = R(layer). For the parallel
// path and for isothermal planes that follows from their definitions; it is what
// makes a share of heat out of a resistance that comes without one.
//
// Where isothermal planes cut a layer into slabs, that holds in each of them, heat
// crosses over at the planes, and the layer's shares of heat are the means of the
// slabs', weighed by the temperature drop in each.
type division struct {
	layers []rvalue.Resistance   // by layer: what it adds to the air-to-air resistance
	slabs  [][]rvalue.Resistance // by layer: of that, each slab; nil if it is not cut
	heat   [][]float64           // by layer and share, of all heat
}

// divisionOf makes room for a division of a.
func divisionOf(a Assembly) division {
	return division{make([]rvalue.Resistance, len(a.Layers)), make([][]rvalue.Resistance, len(a.Layers)), a.heat()}
}

// divide returns the division by one method, and the air-to-air resistance.
func (b *builder) divide(m Method, a Assembly) (division, rvalue.Resistance, error) {
	switch m {
	case Isothermal:
		return a.acrossPlanes(), a.IsothermalPlanes(), nil
	case Mean:
		return a.between(), a.Combined().R, nil
	case Zone:
		z, err := b.zone(a)
		if err != nil {
			return division{}, 0, err
		}
		return b.aroundSteel(a, z), z.r, nil
	}
	return a.alongPaths(), a.ParallelPath(), nil
}

// alongPaths divides by the parallel path. A layer's drop is the mean over the
// area, over the whole drop Σ(fraction·R(share)/R(path)), so that what it adds
// to the whole, drop times R, is Σ(heat·R(share)). Heat keeps to its share, so
// that slabs of a layer divide it alike.
func (a Assembly) alongPaths() division {
	d := divisionOf(a)
	paths := a.Paths()
	u := 0.0
	for _, p := range paths {
		u += p.Fraction / float64(p.R)
	}
	for _, p := range paths {
		heat := p.Fraction / float64(p.R) / u
		for i, s := range p.Shares {
			d.heat[i][s] += heat
		}
	}
	for i, l := range a.Layers {
		d.layers[i] = l.average(d.heat[i])
		if slabs := l.slabs(); slabs > 1 {
			d.slabs[i] = make([]rvalue.Resistance, slabs)
			for n := range slabs {
				for s, share := range l.Shares {
					d.slabs[i][n] += rvalue.Resistance(d.heat[i][s] * share.in(n, slabs))
				}
			}
		}
	}
	return d
}

// acrossPlanes divides by isothermal planes: each slab by itself.
func (a Assembly) acrossPlanes() division {
	d := divisionOf(a)
	for i, l := range a.Layers {
		d.layers[i] = l.Mixed()
		slabs := l.slabs()
		if slabs > 1 {
			d.slabs[i] = make([]rvalue.Resistance, slabs)
		}
		for n := range slabs {
			r := l.slab(n, slabs)
			if slabs > 1 {
				d.slabs[i][n] = r
			}
			for s, share := range l.Shares {
				heat := share.Fraction * float64(r) / share.in(n, slabs)
				d.heat[i][s] += heat * float64(r/d.layers[i])
			}
		}
	}
	return d
}

// between divides by ISO 6946's combined method: half way between its limits,
// as its resistance is.
func (a Assembly) between() division {
	d, planes := a.alongPaths(), a.acrossPlanes()
	for i := range a.Layers {
		for s := range d.heat[i] {
			d.heat[i][s] = (d.heat[i][s] + planes.heat[i][s]) / 2
		}
		d.layers[i] = (d.layers[i] + planes.layers[i]) / 2
		for n := range d.slabs[i] {
			d.slabs[i][n] = (d.slabs[i][n] + planes.slabs[i][n]) / 2
		}
	}
	return d
}

// heat makes room for a number by layer and share.
func (a Assembly) heat() [][]float64 {
	n := 0
	for _, l := range a.Layers {
		n += len(l.Shares)
	}
	all, out := make([]float64, n), make([][]float64, len(a.Layers))
	for i, l := range a.Layers {
		out[i], all = all[:len(l.Shares):len(l.Shares)], all[len(l.Shares):]
	}
	return out
}

// average weighs the shares' resistances by their heat.
func (l Layer) average(heat []float64) rvalue.Resistance {
	if len(l.Shares) == 1 {
		return l.Shares[0].R
	}
	sum := 0.0
	for s, share := range l.Shares {
		sum += heat[s] * float64(share.R)
	}
	return rvalue.Resistance(sum)
}

// aroundSteel divides by a method for steel studs. The studs carry what the fill
// does not, if the layer of both adds what the method says.
func (b *builder) aroundSteel(a Assembly, z steelResult) division {
	d := z.whole.acrossPlanes()
	if z.published {
		d = z.whole.alongPaths()
	}
	studs := a.Layers[b.steel.layer].Shares
	stud := memberHeat(studs[0], studs[1].R, z.layer)
	d.heat[b.steel.layer] = []float64{stud, 1 - stud}
	return d
}

// memberHeat returns the share of a layer's heat that a member carries if it
// and the fill beside it resist r together: heat·R(member) + (1 − heat)·R(fill) = r.
func memberHeat(member Share, fill, r rvalue.Resistance) float64 {
	if !(fill > member.R) {
		return member.Fraction // no bridge: heat has no reason to gather
	}
	return min(max(float64(fill-r)/float64(fill-member.R), 0), 1)
}

// gains returns by layer and share how much resistance the whole assembly
// gains per resistance added to that share alone: the derivative of the
// method's result, NaN where it has none.
func (b *builder) gains(m Method, a Assembly) ([][]float64, error) {
	out := a.heat()
	var parallel [][]float64
	if m == Parallel || m == Mean {
		parallel = a.parallelGains()
	}
	for i, l := range a.Layers {
		slabs := l.slabs()
		for s, share := range l.Shares {
			// d(1/Σ(f/r))/dr = f·(mixed/r)², in every slab by its part of r
			planes := 0.0
			for n := range slabs {
				r := share.in(n, slabs)
				mixed := float64(l.slab(n, slabs)) / r
				planes += share.Fraction * mixed * mixed * r / float64(share.R)
			}
			switch m {
			case Isothermal:
				out[i][s] = planes
			case Mean:
				out[i][s] = (parallel[i][s] + planes) / 2
			case Zone:
				g, err := b.zoneGain(a, i, s)
				if err != nil {
					return nil, err
				}
				out[i][s] = g
			default:
				out[i][s] = parallel[i][s]
			}
		}
	}
	return out, nil
}

// parallelGains returns the derivatives of ParallelPath: with U = Σ f/R over
// the paths, d(1/U)/dr = Σ f/R² over the paths that cross r, times 1/U².
func (a Assembly) parallelGains() [][]float64 {
	out := a.heat()
	u := 0.0
	for _, p := range a.Paths() {
		r := float64(p.R)
		u += p.Fraction / r
		for i, s := range p.Shares {
			out[i][s] += p.Fraction / (r * r)
		}
	}
	for i := range out {
		for s := range out[i] {
			out[i][s] /= u * u
		}
	}
	return out
}

// gainStep is the relative step of the numeric derivative in zoneGain: small
// against the curvature, large against rounding.
const gainStep = 1e-5

// zoneGain returns the derivative of zone's result by one share's resistance,
// by a central difference. The published table goes by the label and knows no other
// studs: there is none in their layer.
func (b *builder) zoneGain(a Assembly, layer, share int) (float64, error) {
	z, err := b.zone(a)
	if err != nil {
		return 0, err
	}
	if z.published && layer == b.steel.layer {
		return math.NaN(), nil
	}
	at := func(r rvalue.Resistance) (rvalue.Resistance, error) {
		c := Assembly{Layers: append([]Layer(nil), a.Layers...)}
		c.Layers[layer].Shares = append([]Share(nil), c.Layers[layer].Shares...)
		c.Layers[layer].Shares[share].R = r
		z, err := b.zone(c)
		return z.r, err
	}
	r := float64(a.Layers[layer].Shares[share].R)
	high, err := at(rvalue.Resistance(r * (1 + gainStep)))
	if err != nil {
		return 0, err
	}
	low, err := at(rvalue.Resistance(r * (1 - gainStep)))
	if err != nil {
		return 0, err
	}
	return float64(high-low) / (2 * gainStep * r), nil
}
