package main

import (
	"cmp"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/coldseam/coldseam/climate/target"
)

// footnotes gathers the notes on the requirements of many editions, each text once.
type footnotes []footnote

type footnote struct {
	text     string
	mark     target.Mark        // of the oldest edition
	counted  bool               // it is in the figures already
	about    []target.Component // none: the blower door
	editions []target.Edition
}

// of takes in the notes on r, but for that on the edition as a whole, which stands
// at its table and weakens every note there alike.
func (f *footnotes) of(r target.Requirement) {
	for _, n := range r.Notes {
		if n.Code != "low-confidence" {
			f.add(footnote{n.Text, n.Mark, n.Applied, []target.Component{r.Component}, []target.Edition{r.Edition}})
		}
	}
}

func (f *footnotes) add(n footnote) {
	i := slices.IndexFunc(*f, func(o footnote) bool {
		return o.text == n.text && o.counted == n.counted && slices.Equal(o.about, n.about)
	})
	if i < 0 {
		*f = append(*f, n)
	} else {
		(*f)[i].editions = append((*f)[i].editions, n.editions...)
	}
}

// print writes a line a note, in the order of the parts that it is about.
func (f footnotes) print(w io.Writer) {
	var lines footnotes
	for _, n := range f {
		i := slices.IndexFunc(lines, func(l footnote) bool {
			return l.text == n.text && l.counted == n.counted && slices.Equal(l.editions, n.editions)
		})
		if i < 0 {
			lines = append(lines, n)
		} else {
			lines[i].about = append(lines[i].about, n.about...)
		}
	}
	slices.SortStableFunc(lines, func(a, b footnote) int { return cmp.Compare(a.part(), b.part()) })
	fmt.Fprintln(w, "footnotes of these tables, and remarks (*: counted in the figures already)")
	for _, n := range lines {
		head, text := "  · ", n.text
		if n.counted {
			head = "  * "
		}
		if n.mark == target.FromMemory {
			text += " (from memory)"
		}
		wrap(w, head, n.names()+", "+span(n.editions)+": "+text, textWidth)
	}
	fmt.Fprintln(w)
}

// part returns the first part that n is about; the blower door comes last.
func (n footnote) part() target.Component {
	if len(n.about) == 0 {
		return target.Door + 1
	}
	return n.about[0]
}

func (n footnote) names() string {
	switch len(n.about) {
	case 0:
		return "blower door"
	case int(target.Door):
		return "every part"
	}
	var names []string
	for _, c := range n.about {
		names = append(names, c.String())
	}
	return strings.Join(names, ", ")
}

// span writes editions that follow each other as "2009 to 2018".
func span(editions []target.Edition) string {
	all := target.Editions()
	var runs []string
	for i := 0; i < len(editions); {
		last, at := i, slices.Index(all, editions[i])
		for last+1 < len(editions) && at+1 < len(all) && editions[last+1] == all[at+1] {
			last, at = last+1, at+1
		}
		run := fmt.Sprint(int(editions[i]))
		if last > i {
			run += fmt.Sprintf(" to %d", int(editions[last]))
		}
		runs = append(runs, run)
		i = last + 1
	}
	return strings.Join(runs, ", ")
}
