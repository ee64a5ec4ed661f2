package material

import (
	"cmp"
	"fmt"
	"iter"
	"slices"
	"strings"
	"sync"
)

// Catalogue is a list of materials that can be looked up by name. It does not
// change, so that any number of goroutines may use it. Its zero value is empty.
type Catalogue struct {
	list  []*Material
	exact map[string]*Material // by a name or alias, as written and in lower case
	loose func() *looseIndex   // made when a name is asked for that is not exact
}

// looseIndex finds names that are not written as the catalogue has them.
type looseIndex struct {
	names  []entry              // every name and alias, in order of the list
	bySet  map[string]*Material // by the sorted words of a name
	joined map[string]*Material // by the words of a name run together: housewrap
}

// byWords returns the index of names by their words.
func (c *Catalogue) byWords() *looseIndex {
	if c.loose == nil {
		return &looseIndex{}
	}
	return c.loose()
}

// entry is one name of a material, taken apart.
type entry struct {
	m    *Material
	name string   // as written
	set  []string // sorted words
	run  string   // the words in order, run together
}

var builtIn = sync.OnceValue(func() *Catalogue {
	list, err := decode(catalogueCSV)
	if err == nil {
		c := &Catalogue{list: list}
		if c.exact, err = exactIndex(list); err == nil {
			c.loose = sync.OnceValue(func() *looseIndex {
				loose, err := newLooseIndex(list)
				if err != nil {
					panic("material: the embedded catalogue: " + err.Error()) // the tests index it
				}
				return loose
			})
			return c
		}
	}
	panic("material: the embedded catalogue: " + err.Error()) // the tests decode it
})

// Default returns the built-in catalogue. It is decoded at the first call.
func Default() *Catalogue { return builtIn() }

// All goes through the built-in catalogue in the order of its table.
func All() iter.Seq[*Material] { return Default().All() }

// Find looks a material up in the built-in catalogue; see Catalogue.Find.
func Find(name string) (*Material, error) { return Default().Find(name) }

// Search looks words up in the built-in catalogue; see Catalogue.Search.
func Search(words ...string) []*Material { return Default().Search(words...) }

// All goes through the catalogue in the order of its table.
func (c *Catalogue) All() iter.Seq[*Material] { return slices.Values(c.list) }

// With returns a catalogue that has the extra materials too. One whose name is
// that of a known material, in any spelling that Find forgives, takes its place
// and, beside its own aliases, all its names, and keeps that one's class, cold law
// and caution where it has none of its own. Any other name or alias of an extra
// material is taken from the material that had it as an alias. The materials are
// copied. An error says which of them lacks a name, a conductivity or pieces, or a
// source ("label" is one), has a figure that cannot be, or claims the name of
// another.
func (c *Catalogue) With(extra ...Material) (*Catalogue, error) {
	if len(extra) == 0 {
		return c, nil
	}
	list := slices.Clone(c.list)
	for i := range extra {
		m := extra[i]
		if err := m.check(); err != nil {
			return nil, err
		}
		for j := range i {
			if sameName(extra[j].Name, m.Name) {
				return nil, fmt.Errorf("material: %q is described twice", m.Name)
			}
		}
		m.Aliases, m.Sizes = slices.Clone(m.Aliases), slices.Clone(m.Sizes)
		at := named(list, m.Name)
		if at < 0 {
			list = append(list, &m)
			continue
		}
		was := list[at]
		m.Class, m.Cold, m.Caution = cmp.Or(m.Class, was.Class), cmp.Or(m.Cold, was.Cold), cmp.Or(m.Caution, was.Caution)
		for _, n := range append([]string{was.Name}, was.Aliases...) {
			if !m.claims(n) {
				m.Aliases = append(m.Aliases, n)
			}
		}
		list[at] = &m
	}
	for i, o := range list {
		changed := *o
		changed.Aliases = slices.DeleteFunc(slices.Clone(o.Aliases), func(alias string) bool {
			return slices.ContainsFunc(extra, func(m Material) bool {
				return !sameName(m.Name, o.Name) && m.claims(alias)
			})
		})
		if len(changed.Aliases) < len(o.Aliases) {
			list[i] = &changed
		}
	}
	exact, err := exactIndex(list)
	if err != nil {
		return nil, err
	}
	loose, err := newLooseIndex(list)
	if err != nil {
		return nil, err
	}
	return &Catalogue{list: list, exact: exact, loose: func() *looseIndex { return loose }}, nil
}

// Replaced returns the material whose place one of that name would take in With, nil
// if there is none.
func (c *Catalogue) Replaced(name string) *Material {
	if at := named(c.list, name); at >= 0 {
		return c.list[at]
	}
	return nil
}

// named returns the index of the material of that name, -1 if it is none's. Aliases do
// not count.
func named(list []*Material, name string) int {
	return slices.IndexFunc(list, func(o *Material) bool { return sameName(o.Name, name) })
}

// sameName reports whether two names have the same words, in any order, or run
// together to the same.
func sameName(a, b string) bool {
	x, y := words(a), words(b)
	return key(x) == key(y) || strings.Join(x, "") == strings.Join(y, "")
}

// claims reports whether name is one of m's.
func (m *Material) claims(name string) bool {
	return sameName(m.Name, name) || slices.ContainsFunc(m.Aliases, func(a string) bool { return sameName(a, name) })
}

// key makes a set of words comparable.
func key(ws []string) string { return strings.Join(sorted(ws), " ") }

// put enters a name, which no two materials may share.
func put(at map[string]*Material, name string, m *Material) error {
	if o, ok := at[name]; ok && o != m {
		return fmt.Errorf("material: %q names both %s and %s", name, o.Name, m.Name)
	}
	at[name] = m
	return nil
}

// exactIndex enters every name and alias as written and in lower case.
func exactIndex(list []*Material) (map[string]*Material, error) {
	exact := make(map[string]*Material, 8*len(list))
	for _, m := range list {
		for i := -1; i < len(m.Aliases); i++ {
			n := m.Name
			if i >= 0 {
				n = m.Aliases[i]
			}
			if err := put(exact, n, m); err != nil {
				return nil, err
			}
			if err := put(exact, strings.ToLower(n), m); err != nil {
				return nil, err
			}
		}
	}
	return exact, nil
}

// newLooseIndex enters every name and alias by its words.
func newLooseIndex(list []*Material) (*looseIndex, error) {
	x := &looseIndex{bySet: map[string]*Material{}, joined: map[string]*Material{}}
	for _, m := range list {
		for _, n := range append([]string{m.Name}, m.Aliases...) {
			ws := words(n)
			e := entry{m, n, sorted(ws), strings.Join(ws, "")}
			x.names = append(x.names, e)
			if err := put(x.bySet, key(ws), m); err != nil {
				return nil, err
			}
			if err := put(x.joined, e.run, m); err != nil {
				return nil, err
			}
		}
	}
	return x, nil
}
