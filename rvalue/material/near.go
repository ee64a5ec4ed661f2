package material

import (
	"cmp"
	"slices"
	"strings"

	"github.com/coldseam/coldseam/rvalue/spelling"
)

const (
	mostNear   = 4   // suggestions shown
	nearEnough = 0.6 // likeness from which a name is suggested, by trial on the misspellings of the tests
	longName   = 60  // bytes run together beyond which a text is no misspelt name
)

// near returns names like the words asked for, the likeliest first, one a material.
func (c *Catalogue) near(asked []string) []string {
	run := strings.Join(asked, "")
	if run == "" || len(run) > longName {
		return nil
	}
	type hit struct {
		e     *entry
		score float64
	}
	var hits []hit
	known := c.byWords().names
	for i := range known {
		e := &known[i]
		if s := max(likeness(run, e.run), wordwise(asked, e.set)); s >= nearEnough {
			hits = append(hits, hit{e, s})
		}
	}
	slices.SortStableFunc(hits, func(a, b hit) int { return cmp.Compare(b.score, a.score) })
	var names []string
	seen := map[*Material]bool{}
	for _, h := range hits {
		if !seen[h.e.m] && len(names) < mostNear {
			seen[h.e.m] = true
			names = append(names, h.e.name)
		}
	}
	return names
}

// wordwise returns how well a set of words answers those asked for: the mean of
// each word's best likeness over the longer of the two.
func wordwise(asked, set []string) float64 {
	var sum float64
	for _, a := range asked {
		best := 0.0
		for _, w := range set {
			best = max(best, likeness(a, w))
		}
		sum += best
	}
	return sum / float64(max(len(asked), len(set)))
}

// alike is the share of equal letters below which two texts have no likeness.
const alike = 0.5

// likeness returns 1 for equal texts, less by the share of letters that need an
// edit, and 0 below alike.
func likeness(a, b string) float64 {
	long, short := float64(max(len(a), len(b))), float64(min(len(a), len(b)))
	if short < alike*long { // so many letters must be put in
		return 0
	}
	if s := 1 - float64(spelling.Distance(a, b))/long; s >= alike {
		return s
	}
	return 0
}
