package envelope_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/coldseam/coldseam/assembly/envelope"
	"github.com/coldseam/coldseam/rvalue"
)

// sums of up to some fifty UA of at most a few hundred W/K, done in another
// order, may part by this much.
const sumRounding = 1e-9

// random returns an envelope of n parts, some with openings, some toward a
// garage, with an edge and air leakage.
func random(rng *rand.Rand, n int) envelope.Envelope {
	e := envelope.Envelope{
		Indoors: rvalue.FromCelsius(20), Outdoors: rvalue.FromCelsius(-5),
		Bridges: []envelope.Bridge{{Name: "edge", Psi: rvalue.LinearTransmittance(rng.Float64()), Length: 30}},
		Buffers: []envelope.Buffer{{Name: "garage", ToOutdoors: rvalue.Conductance(5 + 100*rng.Float64()), Volume: 60, AirChange: rng.Float64()}},
		Leakage: &envelope.Leakage{Flow50: rvalue.AirFlow(0.1 + 0.5*rng.Float64()), Volume: 300, Target50: 3},
	}
	for i := range n {
		p := envelope.Part{
			Name: fmt.Sprint("part ", i), Kind: envelope.Kind(1 + rng.IntN(4)),
			Area: rvalue.Area(5 + 50*rng.Float64()), U: rvalue.Transmittance(0.1 + 3*rng.Float64()),
		}
		if rng.IntN(2) == 0 {
			p.Openings = []envelope.Opening{{
				Name: fmt.Sprint("window ", i), Kind: envelope.Window, Area: p.Area / 8, Count: 1 + rng.IntN(5),
				U: rvalue.Transmittance(1 + 4*rng.Float64()),
			}}
		}
		if rng.IntN(4) == 0 {
			p.Toward = "garage"
		}
		if rng.IntN(2) == 0 {
			p.Target = envelope.Target{U: rvalue.Transmittance(0.1 + rng.Float64())}
		}
		e.Parts = append(e.Parts, p)
	}
	return e
}

func TestPartsSumToTheWhole(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for range 500 {
		e := random(rng, 1+rng.IntN(60))
		r := must(e.Rank())(t)
		var ua, behind rvalue.Conductance
		var shares, intensity, area float64
		for i, row := range r.Rows {
			ua += row.UA
			behind += row.Behind // each by itself
			shares += row.Share
			intensity += row.Intensity * row.Area.SI()
			area += row.Area.SI()
			if i > 0 && row.UA > r.Rows[i-1].UA {
				t.Fatalf("row %d loses more than the one before it", i)
			}
			if row.Behind < 0 || row.Behind > row.UA {
				t.Fatalf("%s is %v behind of %v", row.Name, row.Behind, row.UA)
			}
		}
		if math.Float64bits(float64(ua)) != math.Float64bits(float64(r.Total.UA)) {
			t.Fatalf("rows sum to %v, the total is %v; they must agree to the last bit", ua, r.Total.UA)
		}
		if behind > r.Total.Behind+sumRounding {
			t.Fatalf("rows sum to %v behind, together %v; the garage they share must not make it less", behind, r.Total.Behind)
		}
		if n := float64(len(r.Rows)); math.Abs(shares-1) > 1e-15*n {
			t.Fatalf("shares of %v rows sum to %v", n, shares)
		}
		near(t, "mean intensity", intensity/area, 1, rounding)
		gross := 0.0
		for _, p := range e.Parts {
			gross += p.Area.SI()
		}
		near(t, "area of the parts", r.Total.Area.SI(), gross, sumRounding)
	}
}

// TestOrderDoesNotMatter: the same parts in another order give the same bits.
func TestOrderDoesNotMatter(t *testing.T) {
	rng := rand.New(rand.NewPCG(9, 10))
	for range 200 {
		e := random(rng, 12)
		e.Buffers, e.Parts = nil, slices.Clone(e.Parts) // a buffer's own sum follows the order of its parts
		for i := range e.Parts {
			e.Parts[i].Toward = ""
		}
		a := must(e.Rank())(t)
		rng.Shuffle(len(e.Parts), func(i, j int) { e.Parts[i], e.Parts[j] = e.Parts[j], e.Parts[i] })
		b := must(e.Rank())(t)
		if a.Total != b.Total || a.Weakest != b.Weakest {
			t.Fatalf("shuffled parts give %+v and %+v, were %+v and %+v", b.Total, b.Weakest, a.Total, a.Weakest)
		}
	}
}

// TestTiesKeepTheirOrder: equal rows stay as the envelope has them.
func TestTiesKeepTheirOrder(t *testing.T) {
	for _, n := range []int{40, 400} { // both ways of sorting
		var e envelope.Envelope
		for i := range n {
			// Two sizes by turns, the large ones first in the ranking.
			e.Parts = append(e.Parts, envelope.Part{Name: fmt.Sprint("part ", i), Kind: envelope.Wall, Area: rvalue.Area(10 + 10*(i%2)), U: 1})
		}
		for i, row := range must(e.Rank())(t).Rows {
			want := fmt.Sprint("part ", (2*i+1)%n) // 1, 3, 5 …
			if i >= n/2 {
				want = fmt.Sprint("part ", 2*i-n) // 0, 2, 4 …
			}
			if row.Name != want {
				t.Errorf("row %d of %d is %q, want %q", i, n, row.Name, want)
			}
		}
	}
}

func TestHalvingAPartChangesNothing(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	for range 200 {
		e := random(rng, 8)
		whole := must(e.Rank())(t)
		i := rng.IntN(len(e.Parts))
		half := e.Parts[i]
		half.Area /= 2
		half.Openings = slices.Clone(half.Openings)
		for j := range half.Openings {
			half.Openings[j].Area /= 2
		}
		e.Parts[i] = half
		half.Name += " again"
		e.Parts = append(e.Parts, half)
		halves := must(e.Rank())(t)
		near(t, "total", halves.Total.UA.SI(), whole.Total.UA.SI(), sumRounding)
		near(t, "behind", halves.Total.Behind.SI(), whole.Total.Behind.SI(), sumRounding)
		near(t, "mean U", halves.Total.U.SI(), whole.Total.U.SI(), sumRounding)
	}
}

// TestEveryStepTheRightWay: raising what loses heat raises the total.
func TestEveryStepTheRightWay(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	for i := range 600 {
		e := random(rng, 6)
		e.Parts[0].Openings = []envelope.Opening{{Name: "sash", Kind: envelope.Window, Area: 1, Count: 1, U: 9}}
		before := must(e.Rank())(t).Total.UA
		p := &e.Parts[rng.IntN(6)]
		change := []string{"U", "area", "leakage", "edge", "buffer", "sea level"}[i%6]
		switch change {
		case "U":
			p.U *= 2.0
		case "area":
			p.Area *= 2.0
		case "leakage":
			e.Leakage.Flow50 *= 2.0
		case "edge":
			e.Bridges[0].Length *= 2.0
		case "buffer":
			p.Toward = "garage"
			before = must(e.Rank())(t).Total.UA
			e.Buffers[0].ToOutdoors *= 2.0
		case "sea level":
			e.Altitude = 2000
			before = must(e.Rank())(t).Total.UA
			e.Altitude = 0
		}
		if after := must(e.Rank())(t).Total.UA; after <= before {
			t.Fatalf("more %s brought the total from %v to %v", change, before, after)
		}
	}
}

var sink *envelope.Ranking

// large returns a house of 20 parts with openings in half of them: walls, two
// ceilings and two floors.
func large() envelope.Envelope {
	e := random(rand.New(rand.NewPCG(7, 8)), 20)
	for i := range e.Parts {
		p := &e.Parts[i]
		switch p.Kind = envelope.Wall; i % 10 {
		case 4:
			p.Kind, p.U = envelope.Ceiling, 0.1
		case 9:
			p.Kind = envelope.Floor
		}
	}
	return e
}

// BenchmarkRank: the aim is less than 10 µs, and to allocate only what is
// returned.
func BenchmarkRank(b *testing.B) {
	e := large()
	b.ReportAllocs()
	for b.Loop() {
		r, err := e.Rank()
		if err != nil {
			b.Fatal(err)
		}
		sink = r
	}
}

// TestRankAllocatesWhatItReturns: without targets and remarks that is the
// ranking, its rows and its buffers.
func TestRankAllocatesWhatItReturns(t *testing.T) {
	e := large()
	e.Leakage.Target50 = 0
	for i := range e.Parts {
		e.Parts[i].Target = envelope.Target{}
	}
	if n := testing.AllocsPerRun(100, func() { sink, _ = e.Rank() }); n > 3 {
		t.Errorf("%v allocations, want the ranking, its rows and its buffers", n)
	}
}
