package assembly_test

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/rvalue"
)

func TestPreparedIsTheParallelPath(t *testing.T) {
	each(t, func(t *testing.T, rng *rand.Rand, a assembly.Assembly) {
		p, err := a.Prepare()
		if err != nil {
			t.Fatal(err)
		}
		same(t, "prepared parallel path", float64(p.ParallelPath()), float64(a.ParallelPath()))
		layer := rng.IntN(len(a.Layers))
		share := rng.IntN(len(a.Layers[layer].Shares))
		changed := clone(a)
		changed.Layers[layer].Shares[share].R = randomR(rng)
		if err := p.SetR(layer, share, changed.Layers[layer].Shares[share].R); err != nil {
			t.Fatal(err)
		}
		same(t, "after SetR", float64(p.ParallelPath()), float64(changed.ParallelPath()))
	})
}

func TestPreparedRefuses(t *testing.T) {
	p, err := benchWall().Prepare()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		layer, share int
		r            rvalue.Resistance
		says         string
	}{
		{-1, 0, rvalue.RSI, "no share"},
		{8, 0, rvalue.RSI, "no share"},
		{3, 2, rvalue.RSI, "no share"},
		{3, 1, 0, "positive"},
		{3, 1, rvalue.Resistance(math.NaN()), "positive"},
		{3, 1, rvalue.Resistance(math.Inf(1)), "positive"},
	} {
		if err := p.SetR(c.layer, c.share, c.r); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("SetR(%d, %d, %v) = %v, want an error of %q", c.layer, c.share, float64(c.r), err, c.says)
		}
	}
	if _, err := (assembly.Assembly{}).Prepare(); err == nil {
		t.Error("an assembly without layers can be prepared")
	}
}

func TestPreparedAllocatesNothing(t *testing.T) {
	p, err := benchWall().Prepare()
	if err != nil {
		t.Fatal(err)
	}
	if n := testing.AllocsPerRun(100, func() { sink = p.ParallelPath() }); n != 0 {
		t.Errorf("the prepared parallel path allocates %v times", n)
	}
}

func BenchmarkPrepared(b *testing.B) {
	p, err := benchWall().Prepare()
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		sink = p.ParallelPath()
	}
}
