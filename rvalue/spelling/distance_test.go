package spelling

import (
	"math/rand/v2"
	"strings"
	"testing"
)

func TestDistance(t *testing.T) {
	for _, row := range []struct {
		a, b, why string
		want      int
	}{
		{"gypsum", "gypsum", "the same", 0},
		{"gypsm", "gypsum", "a letter dropped", 1},
		{"gypsuum", "gypsum", "a letter too many", 1},
		{"gipsum", "gypsum", "another letter", 1},
		{"gyspum", "gypsum", "two neighbours swapped", 1},
		{"", "gypsum", "all of it", 6},
		{"kitten", "sitting", "the textbook pair of Levenshtein's distance", 3},
		{"ca", "abc", "2 if a swapped pair could be parted, which this distance does not do (Boytsov 2011)", 3},
		{"doña", "dona", "an accented letter is one letter", 1},
		{strings.Repeat("a", 100), strings.Repeat("a", 99) + "b", "longer than the room set aside", 1},
	} {
		if got := Distance(row.a, row.b); got != row.want {
			t.Errorf("Distance(%q, %q) = %d, want %d: %s", row.a, row.b, got, row.want, row.why)
		}
	}
}

// TestDistanceLaws: nothing but equal words is 0 apart, the way back is as long, and an
// edit leads no farther than one step.
func TestDistanceLaws(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 7))
	word := func() string {
		b := make([]byte, r.IntN(8))
		for i := range b {
			b[i] = "abc"[r.IntN(3)]
		}
		return string(b)
	}
	for range 2000 {
		a, b := word(), word()
		d := Distance(a, b)
		if d != Distance(b, a) || (d == 0) != (a == b) || d > max(len(a), len(b)) || d < max(len(a), len(b))-min(len(a), len(b)) {
			t.Fatalf("Distance(%q, %q) = %d, back %d", a, b, d, Distance(b, a))
		}
		if near := Distance(a, b+"c"); near < d-1 || near > d+1 {
			t.Fatalf("Distance(%q, %q) = %d, and %d with a letter more", a, b, d, near)
		}
	}
}

func BenchmarkDistance(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if Distance("fibreglas batt", "fiberglass batt") == 0 {
			b.Fatal("these words differ")
		}
	}
}
