package material

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// UnknownError says that a name is that of no material, or of several.
type UnknownError struct {
	Name      string   // as asked for
	Near      []string // names that exist, the likeliest first
	Ambiguous bool     // each of Near fits equally well
}

// Error returns the message with the suggestions.
func (e *UnknownError) Error() string {
	switch {
	case e.Ambiguous:
		return fmt.Sprintf("material: %q could be any of %s", e.Name, strings.Join(e.Near, ", "))
	case len(e.Near) == 0:
		return fmt.Sprintf("material: unknown material %q; coldseam materials lists what there is", e.Name)
	case len(e.Near) == 1:
		return fmt.Sprintf("material: unknown material %q; did you mean %s?", e.Name, e.Near[0])
	}
	n := len(e.Near) - 1
	return fmt.Sprintf("material: unknown material %q; did you mean %s or %s?", e.Name, strings.Join(e.Near[:n], ", "), e.Near[n])
}

// Find looks a material up by its name or an alias. It forgives case, plurals,
// hyphens and other punctuation, the order of words, words run together or apart,
// British and American spelling, and a word such as "insulation" too many. A part
// of a name will do if it fits one material best; if it fits several equally, or
// none, the error is an *UnknownError with their names.
//
// A name or alias as the catalogue has it, or in lower case, is found without an
// allocation.
func (c *Catalogue) Find(name string) (*Material, error) {
	if m, ok := c.exact[name]; ok {
		return m, nil
	}
	asked, index := words(name), c.byWords()
	var rivals []string
	for _, ws := range [][]string{asked, withoutIdle(asked)} {
		if len(ws) == 0 {
			continue
		}
		if m, ok := index.bySet[key(ws)]; ok {
			return m, nil
		}
		if m, ok := index.joined[strings.Join(ws, "")]; ok {
			return m, nil
		}
		fits := c.fitting(ws)
		if len(fits) == 1 || len(fits) > 1 && fits[0].others < fits[1].others {
			return fits[0].m, nil
		}
		if rivals == nil {
			rivals = listed(fits, ws)
		}
	}
	if len(rivals) > 0 {
		return nil, &UnknownError{Name: name, Near: rivals, Ambiguous: true}
	}
	return nil, &UnknownError{Name: name, Near: c.near(asked)}
}

// Called reports whether name is the name or an alias of m, with all that Find
// forgives, but not a mere part of one, which might mean something else.
func (m *Material) Called(name string) bool {
	if strings.EqualFold(name, m.Name) || slices.ContainsFunc(m.Aliases, func(a string) bool { return strings.EqualFold(name, a) }) {
		return true
	}
	asked := words(name)
	bare := withoutIdle(asked)
	same := func(own string) bool {
		ws := words(own)
		for _, as := range [][]string{asked, bare} {
			if len(as) > 0 && (key(as) == key(ws) || strings.Join(as, "") == strings.Join(ws, "")) {
				return true
			}
		}
		return false
	}
	return same(m.Name) || slices.ContainsFunc(m.Aliases, same)
}

// mostRivals is how many materials are listed that a name fits equally well.
const mostRivals = 10

// listed names the rivals, those of the very class first: foams for "foam".
func listed(fits []fit, ws []string) []string {
	rank := func(f fit) int {
		if contains(sorted(words(f.m.Class.String())), ws) {
			return 0
		}
		return 1
	}
	slices.SortStableFunc(fits, func(a, b fit) int { return cmp.Compare(rank(a), rank(b)) })
	var names []string
	for _, f := range fits[:min(len(fits), mostRivals)] {
		names = append(names, f.m.Name)
	}
	return names
}

// fit is a material with the fewest words that one of its names has beside
// those asked for.
type fit struct {
	m      *Material
	others int
}

// fitting returns the materials a name of which has all the words ws, those with
// the fewest others first.
func (c *Catalogue) fitting(ws []string) []fit {
	set := sorted(ws)
	var fits []fit
	names := c.byWords().names
	for i := range names {
		e := &names[i]
		if !contains(e.set, set) {
			continue
		}
		others := len(e.set) - len(set)
		if at := slices.IndexFunc(fits, func(f fit) bool { return f.m == e.m }); at >= 0 {
			fits[at].others = min(fits[at].others, others)
		} else {
			fits = append(fits, fit{e.m, others})
		}
	}
	slices.SortStableFunc(fits, func(a, b fit) int { return cmp.Compare(a.others, b.others) })
	return fits
}

// contains reports whether the sorted set has all of the sorted part.
func contains(set, part []string) bool {
	for _, w := range part {
		if _, ok := slices.BinarySearch(set, w); !ok {
			return false
		}
	}
	return true
}
