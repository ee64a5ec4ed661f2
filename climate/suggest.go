package climate

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"github.com/coldseam/coldseam/rvalue/spelling"
)

// PlaceError says why a place has no one county, and what to write instead.
type PlaceError struct {
	Text      string   // the place asked for
	Problem   string   // "no such county in Minnesota"
	Choices   []string // names that [Parse] reads, nearest first
	Ambiguous bool     // any of the choices may be meant
}

// Error returns `place "Minneapols, MN": …; nearest are "…"`.
func (e *PlaceError) Error() string {
	s := fmt.Sprintf("place %q: %s", e.Text, e.Problem)
	if len(e.Choices) == 0 {
		return s
	}
	quoted := make([]string, len(e.Choices))
	for i, c := range e.Choices {
		quoted[i] = fmt.Sprintf("%q", c)
	}
	lead := "; nearest: "
	switch {
	case e.Ambiguous && len(e.Choices) == 1:
		lead = "; write "
	case e.Ambiguous:
		lead = "; write one of "
	}
	return s + lead + strings.Join(quoted, ", ")
}

// most is how many choices an error lists at most.
const most = 6

// ambiguous lists the counties named k, and the county of a town of that name.
func (s *state) ambiguous(k key) *PlaceError {
	e := &PlaceError{Problem: "more than one place has that name", Ambiguous: true}
	t, isTown := s.town(&k)
	if isTown {
		c, _ := byNumber(t.fips)
		e.Choices = append(e.Choices, c.String())
		if c.Name != t.name {
			e.Problem += "; the town of " + t.name + " is in " + c.String()
		}
	}
	s.each(func(c County, folded *key) {
		if folded.compare(&k) == 0 && !slices.Contains(e.Choices, c.String()) {
			e.Choices = append(e.Choices, c.String())
		}
	})
	return e
}

// unknown lists the counties and towns of s that are spelt most like k, and failing
// these the counties of that name in other states.
func (s *state) unknown(k key) *PlaceError {
	e := &PlaceError{Problem: "no such county in " + s.name}
	bare, _ := k.withoutKind()
	var near ranking
	s.each(func(c County, folded *key) { near.add(c.String(), folded, &bare) })
	for _, t := range towns {
		if t.state == s.code {
			folded := fold(t.name)
			near.add(t.String(), &folded, &bare)
		}
	}
	if e.Choices = near.names(); len(e.Choices) == 0 {
		if names := named(bare); len(names) > 0 {
			e.Problem += ", but elsewhere"
			e.Choices = names[:min(len(names), most)]
		}
	}
	return e
}

// stateMissing answers a place without a state by the counties and towns of that
// name, and failing these by those that are spelt most like it.
func stateMissing(text string, k key) error {
	bare, _ := k.withoutKind()
	if names := named(bare); len(names) > 0 {
		e := &PlaceError{Text: text, Problem: "a state is missing", Ambiguous: true}
		if e.Choices = names[:min(len(names), most)]; len(names) > most {
			e.Problem += fmt.Sprintf("; %d places have that name", len(names))
		}
		return e
	}
	if s := stateOf(&k); s != nil {
		return &PlaceError{Text: text, Problem: fmt.Sprintf(`that is a state, and a county is missing; write "COUNTY, %s"`, s.code)}
	}
	var near ranking
	for i := range states {
		states[i].each(func(c County, folded *key) { near.add(c.String(), folded, &bare) })
	}
	for _, t := range towns {
		folded := fold(t.name)
		near.add(t.String(), &folded, &bare)
	}
	return &PlaceError{Text: text, Problem: `no such county or town, and a state is missing; write "COUNTY, ST"`, Choices: near.names()}
}

// stateUnknown lists the states that are spelt most like k.
func stateUnknown(text, name string, k key) error {
	if k.n == 0 {
		return &PlaceError{Text: text, Problem: `a state is missing; write "COUNTY, ST"`}
	}
	e := &PlaceError{Text: text, Problem: fmt.Sprintf("%q is not a state; write its postal code, as MN, or its name in full", strings.TrimSpace(name))}
	var near ranking
	for _, s := range states {
		folded := fold(s.name)
		near.add(s.name, &folded, &k)
		if k.n == 2 {
			folded = fold(s.code)
			near.add(s.code, &folded, &k)
		}
	}
	e.Choices = near.names()
	return e
}

// named lists the counties and towns of the country named k.
func named(k key) []string {
	var out []string
	for i := range states {
		states[i].each(func(c County, folded *key) {
			if folded.compare(&k) == 0 {
				out = append(out, c.String())
			}
		})
	}
	for _, t := range towns {
		if folded := fold(t.name); folded.compare(&k) == 0 {
			if c, _ := byNumber(t.fips); !slices.Contains(out, c.String()) {
				out = append(out, t.String())
			}
		}
	}
	return out
}

// each calls f for every county of s, with its folded name.
func (s *state) each(f func(c County, folded *key)) {
	for row := range strings.SplitSeq(strings.Trim(s.rows, "\n"), "\n") {
		c := s.decode(row)
		folded := fold(c.Name)
		f(c, &folded)
	}
}

// ranking collects names by how far their spelling is from the one wanted.
type ranking []ranked

type ranked struct {
	name string
	far  int
}

// add takes name in if its spelling differs by a third of its letters or less.
func (r *ranking) add(name string, folded, want *key) {
	limit := max(1, want.n/3)
	if more := folded.n - want.n; more > limit || -more > limit {
		return // so many letters must be put in or dropped
	}
	if far := spelling.Distance(string(folded.bytes()), string(want.bytes())); far <= limit {
		*r = append(*r, ranked{name, far})
	}
}

func (r ranking) names() []string {
	slices.SortStableFunc(r, func(a, b ranked) int { return cmp.Compare(a.far, b.far) })
	var out []string
	for _, c := range r[:min(len(r), most)] {
		out = append(out, c.name)
	}
	return out
}
