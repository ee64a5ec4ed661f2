package material

import (
	"cmp"
	"slices"
	"strings"
)

// Search returns the materials whose name, aliases or class have any of the
// words, those that answer best first: a whole word counts more than the
// beginning of one, a name more than an alias, an alias more than the class.
// Those that answer fewer words than the best are left out. What answers equally
// well stays in the order of the table. Without a word it returns nothing.
func (c *Catalogue) Search(asked ...string) []*Material {
	ws := words(strings.Join(asked, " "))
	type hit struct {
		m            *Material
		count, score int
	}
	var hits []hit
	most := 0
	for _, m := range c.list {
		h := hit{m: m}
		for _, w := range ws {
			s := answer(w, words(m.Name), 4)
			for _, a := range m.Aliases {
				s = max(s, answer(w, words(a), 3))
			}
			if s = max(s, answer(w, words(m.Class.String()), 2)); s > 0 {
				h.count++
				h.score += s
			}
		}
		if most = max(most, h.count); h.count > 0 {
			hits = append(hits, h)
		}
	}
	hits = slices.DeleteFunc(hits, func(h hit) bool { return h.count < most })
	slices.SortStableFunc(hits, func(a, b hit) int { return cmp.Compare(b.score, a.score) })
	found := make([]*Material, len(hits))
	for i, h := range hits {
		found[i] = h.m
	}
	return found
}

// answer returns how well the words of a text answer one: worth for the word
// itself, half of that for one that begins with it, 0 otherwise. (The first
// letter alone begins too much.)
func answer(w string, text []string, worth int) int {
	switch {
	case slices.Contains(text, w):
		return 2 * worth
	case len(w) > 1 && slices.ContainsFunc(text, func(t string) bool { return strings.HasPrefix(t, w) }):
		return worth
	}
	return 0
}
