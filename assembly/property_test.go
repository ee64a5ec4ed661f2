package assembly_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/rvalue"
)

const (
	rounds = 2000 // random assemblies per law
	// rounding is the relative slack for results that are equal in exact
	// arithmetic: sums of up to some hundred terms of doubles.
	rounding = 1e-12
)

// methods are the hand methods under test.
var methods = []struct {
	name string
	r    func(assembly.Assembly) float64
}{
	{"parallel path", func(a assembly.Assembly) float64 { return float64(a.ParallelPath()) }},
	{"combined", func(a assembly.Assembly) float64 { return float64(a.Combined().R) }},
	{"isothermal planes", func(a assembly.Assembly) float64 { return float64(a.IsothermalPlanes()) }},
}

// each calls law with random assemblies, the same ones on every run.
func each(t *testing.T, law func(t *testing.T, rng *rand.Rand, a assembly.Assembly)) {
	t.Helper()
	rng := rand.New(rand.NewPCG(1926, 9))
	for range rounds {
		a := randomAssembly(rng)
		if err := a.Check(); err != nil {
			t.Fatalf("the generator made %+v: %v", a, err)
		}
		law(t, rng, a)
		if t.Failed() {
			t.Fatalf("with %+v", a)
		}
	}
}

// randomAssembly makes one to eight layers, at most four of them bridged by up
// to four shares, some in line with others, some cut by planes. Resistances span
// those of a steel web and of an attic's insulation.
func randomAssembly(rng *rand.Rand) assembly.Assembly {
	var a assembly.Assembly
	bridged := 0
	for range 1 + rng.IntN(8) {
		if bridged == 4 || rng.IntN(2) == 0 {
			a.Layers = append(a.Layers, assembly.Plain("plain", randomR(rng)))
			continue
		}
		bridged++
		l := assembly.Layer{Name: "bridged", Line: rng.IntN(3)}
		l.Shares = randomShares(rng, 2+rng.IntN(3))
		if rng.IntN(2) == 0 {
			cutAtRandom(rng, l.Shares)
		}
		a.Layers = append(a.Layers, l)
	}
	return a
}

func randomR(rng *rand.Rand) rvalue.Resistance {
	return rvalue.Resistance(math.Exp(math.Log(1e-3) + rng.Float64()*math.Log(1e4))) // 0.001 to 10 m²·K/W
}

func randomShares(rng *rand.Rand, n int) []assembly.Share {
	shares := make([]assembly.Share, n)
	sum := 0.0
	for i := range shares {
		shares[i] = assembly.Share{Fraction: 0.02 + rng.Float64(), R: randomR(rng)}
		sum += shares[i].Fraction
	}
	for i := range shares {
		shares[i].Fraction /= sum
	}
	return shares
}

// cutAtRandom gives the shares of a layer two to four parts of their resistance.
func cutAtRandom(rng *rand.Rand, shares []assembly.Share) {
	n := 2 + rng.IntN(3)
	for s := range shares {
		shares[s].Parts = make([]float64, n)
		sum := 0.0
		for i := range n {
			shares[s].Parts[i] = 0.01 + rng.Float64()
			sum += shares[s].Parts[i]
		}
		for i := range n {
			shares[s].Parts[i] /= sum
		}
	}
}

// clone copies an assembly down to its shares.
func clone(a assembly.Assembly) assembly.Assembly {
	layers := slices.Clone(a.Layers)
	for i := range layers {
		layers[i].Shares = slices.Clone(layers[i].Shares)
	}
	return assembly.Assembly{Layers: layers}
}

func same(t *testing.T, what string, got, want float64) {
	t.Helper()
	if !near(got, want, rounding) {
		t.Errorf("%s: %.17g, want %.17g", what, got, want)
	}
}

func TestMethodsAreOrdered(t *testing.T) {
	each(t, func(t *testing.T, _ *rand.Rand, a assembly.Assembly) {
		upper, middle, lower := methods[0].r(a), methods[1].r(a), methods[2].r(a)
		if upper < middle*(1-rounding) || middle < lower*(1-rounding) {
			t.Errorf("parallel path %v, combined %v, isothermal planes %v are not in this order", upper, middle, lower)
		}
		c := a.Combined()
		if c.Valid != (upper <= 1.5*lower) || !near(float64(c.R)*(1+c.Error), upper, rounding) || !near(float64(c.R)*(1-c.Error), lower, rounding) {
			t.Errorf("combined %+v does not span %v to %v", c, lower, upper)
		}
	})
}

func TestMoreResistanceNeverRaisesU(t *testing.T) {
	each(t, func(t *testing.T, rng *rand.Rand, a assembly.Assembly) {
		for i, l := range a.Layers {
			for s := range l.Shares {
				b := clone(a)
				b.Layers[i].Shares[s].R += randomR(rng)
				for _, m := range methods {
					if before, after := m.r(a), m.r(b); after < before*(1-rounding) {
						t.Errorf("%s: more R in layer %d share %d took R from %v to %v", m.name, i, s, before, after)
					}
				}
			}
		}
		b := assembly.Assembly{Layers: append(clone(a).Layers, assembly.Plain("one more", randomR(rng)))}
		for _, m := range methods {
			if before, after := m.r(a), m.r(b); after <= before {
				t.Errorf("%s: one more layer took R from %v to %v", m.name, before, after)
			}
		}
	})
}

// Series resistances commute; which of the layers in line comes first does not
// matter either.
func TestOrderOfLayersDoesNotMatter(t *testing.T) {
	each(t, func(t *testing.T, rng *rand.Rand, a assembly.Assembly) {
		b := clone(a)
		rng.Shuffle(len(b.Layers), func(i, j int) { b.Layers[i], b.Layers[j] = b.Layers[j], b.Layers[i] })
		for _, m := range methods {
			same(t, m.name+" after shuffling", m.r(b), m.r(a))
		}
	})
}

func TestSplittingALayerChangesNothing(t *testing.T) {
	each(t, func(t *testing.T, rng *rand.Rand, a assembly.Assembly) {
		i := rng.IntN(len(a.Layers))
		part := rng.Float64()*0.98 + 0.01
		b := clone(a)
		if b.Layers[i].Line == 0 {
			b.Layers[i].Line = 99 // both pieces stand in one line of their own
		}
		b.Layers = slices.Insert(b.Layers, i, clone(b).Layers[i])
		for s := range a.Layers[i].Shares {
			r := a.Layers[i].Shares[s].R
			b.Layers[i].Shares[s].R = r * rvalue.Resistance(part)
			b.Layers[i+1].Shares[s].R = r * rvalue.Resistance(1-part)
		}
		for _, m := range methods {
			// The isothermal planes of two pieces are those of one: they scale alike.
			same(t, m.name+" after splitting", m.r(b), m.r(a))
		}
	})
}

// What isothermal planes allow to differ: pieces of unlike proportions let heat
// cross over between them, so that they never resist more than the layer whole.
func TestPlanesBetweenUnlikePiecesNeverRaiseR(t *testing.T) {
	each(t, func(t *testing.T, rng *rand.Rand, a assembly.Assembly) {
		i := rng.IntN(len(a.Layers))
		b := clone(a)
		if b.Layers[i].Line == 0 {
			b.Layers[i].Line = 99
		}
		b.Layers = slices.Insert(b.Layers, i, clone(b).Layers[i])
		for s := range a.Layers[i].Shares {
			part := rvalue.Resistance(rng.Float64()*0.98 + 0.01)
			b.Layers[i].Shares[s].R *= part
			b.Layers[i+1].Shares[s].R *= 1 - part
		}
		same(t, "parallel path after splitting unevenly", methods[0].r(b), methods[0].r(a))
		if whole, pieces := methods[2].r(a), methods[2].r(b); pieces > whole*(1+rounding) {
			t.Errorf("isothermal planes: the pieces resist %v, the layer whole %v", pieces, whole)
		}
	})
}

// A layer that planes cut is what its slabs are as layers of one line.
func TestSlabsAreLayersInLine(t *testing.T) {
	each(t, func(t *testing.T, _ *rand.Rand, a assembly.Assembly) {
		var b assembly.Assembly
		for i, l := range a.Layers {
			slabs := len(l.Shares[0].Parts)
			if slabs == 0 {
				b.Layers = append(b.Layers, l)
				continue
			}
			if l.Line == 0 {
				l.Line = 100 + i
			}
			for n := range slabs {
				slab := assembly.Layer{Name: l.Name, Line: l.Line}
				for _, s := range l.Shares {
					slab.Shares = append(slab.Shares, assembly.Share{Name: s.Name, Fraction: s.Fraction, R: s.R * rvalue.Resistance(s.Parts[n])})
				}
				b.Layers = append(b.Layers, slab)
			}
		}
		for _, m := range methods {
			same(t, m.name+" of the slabs as layers", m.r(b), m.r(a))
		}
	})
}

func TestPathsCoverTheArea(t *testing.T) {
	each(t, func(t *testing.T, _ *rand.Rand, a assembly.Assembly) {
		area := 0.0
		crossed := make([][]float64, len(a.Layers))
		for i, l := range a.Layers {
			crossed[i] = make([]float64, len(l.Shares))
		}
		for _, p := range a.Paths() {
			if !(p.Fraction > 0) {
				t.Errorf("a path of fraction %v", p.Fraction)
			}
			area += p.Fraction
			r := 0.0
			for i, s := range p.Shares {
				crossed[i][s] += p.Fraction
				r += float64(a.Layers[i].Shares[s].R)
			}
			same(t, "R of a path", float64(p.R), r)
		}
		same(t, "area of all paths", area, 1)
		for i, l := range a.Layers {
			for s, share := range l.Shares {
				same(t, "area of the paths through a share", crossed[i][s], share.Fraction)
			}
		}
	})
}

func TestLayersInLineOfEqualSharesAreOne(t *testing.T) {
	each(t, func(t *testing.T, rng *rand.Rand, a assembly.Assembly) {
		one := randomShares(rng, 2+rng.IntN(3))
		other, both := slices.Clone(one), slices.Clone(one)
		for s := range one {
			other[s].R = randomR(rng)
			both[s].R += other[s].R
		}
		two := assembly.Assembly{Layers: append(clone(a).Layers,
			assembly.Layer{Shares: one, Line: 99}, assembly.Layer{Shares: other, Line: 99})}
		merged := assembly.Assembly{Layers: append(clone(a).Layers, assembly.Layer{Shares: both})}
		same(t, "parallel path of two in line", methods[0].r(two), methods[0].r(merged))
		if got, want := len(two.Paths()), len(merged.Paths()); got != want {
			t.Errorf("two layers in line make %d paths, merged %d", got, want)
		}
	})
}

// Members behind members lose most, members behind the other layer's fill
// least, and crossing members lie between: 1/R is convex, so that among all ways
// to lay two layers over each other the sorted one has the largest mean U.
func TestCrossingLiesBetweenAlignedAndStaggered(t *testing.T) {
	each(t, func(t *testing.T, rng *rand.Rand, a assembly.Assembly) {
		byR := func(x, y assembly.Share) int { return int(math.Copysign(1, float64(x.R-y.R))) }
		first, second := randomShares(rng, 2+rng.IntN(3)), randomShares(rng, 2+rng.IntN(3))
		slices.SortFunc(first, byR)
		slices.SortFunc(second, byR)
		staggered := slices.Clone(second)
		slices.Reverse(staggered)
		// Only plain layers of the random assembly go with them: others would
		// bring lines of their own.
		var plain []assembly.Layer
		for _, l := range a.Layers {
			if !l.Bridged() {
				plain = append(plain, l)
			}
		}
		r := func(line int, second []assembly.Share) float64 {
			return methods[0].r(assembly.Assembly{Layers: append(slices.Clone(plain),
				assembly.Layer{Shares: first, Line: line}, assembly.Layer{Shares: second, Line: line})})
		}
		aligned, crossing, apart := r(1, second), r(0, second), r(1, staggered)
		if aligned > crossing*(1+rounding) || crossing > apart*(1+rounding) {
			t.Errorf("R aligned %v, crossing %v, staggered %v are not in this order", aligned, crossing, apart)
		}
	})
}

func TestEqualSharesAreAPlainLayer(t *testing.T) {
	each(t, func(t *testing.T, rng *rand.Rand, a assembly.Assembly) {
		i := rng.IntN(len(a.Layers))
		r := randomR(rng)
		shares := randomShares(rng, 2+rng.IntN(3))
		for s := range shares {
			shares[s].R = r
		}
		plain, bridged := clone(a), clone(a)
		plain.Layers[i] = assembly.Plain("plain", r)
		bridged.Layers[i] = assembly.Layer{Shares: shares}
		for _, m := range methods {
			same(t, m.name+" with equal shares", m.r(bridged), m.r(plain))
		}
	})
}

// Without bridges all methods are the sum of the layers.
func TestPlainAssembliesAreSums(t *testing.T) {
	each(t, func(t *testing.T, _ *rand.Rand, a assembly.Assembly) {
		sum := 0.0
		b := clone(a)
		for i, l := range b.Layers {
			b.Layers[i] = assembly.Plain("plain", l.Shares[0].R)
			sum += float64(l.Shares[0].R)
		}
		for _, m := range methods {
			same(t, m.name, m.r(b), sum)
		}
		if c := b.Combined(); !c.Valid || math.Abs(c.Error) > rounding {
			t.Errorf("combined of plain layers: %+v, want no error", c)
		}
	})
}

// The Canadian rule for steel lies between the methods it is a mean of.
func TestSteelWeightedLiesBetween(t *testing.T) {
	each(t, func(t *testing.T, rng *rand.Rand, a assembly.Assembly) {
		r, err := assembly.SteelWeighted(a, rvalue.Length(0.3+0.4*rng.Float64()), rng.IntN(2) == 0)
		if err != nil {
			t.Fatal(err)
		}
		if upper, lower := methods[0].r(a), methods[2].r(a); float64(r) > upper*(1+rounding) || float64(r) < lower*(1-rounding) {
			t.Errorf("SteelWeighted %v is not between %v and %v", float64(r), lower, upper)
		}
	})
}
