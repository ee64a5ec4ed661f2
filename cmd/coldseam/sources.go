package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/assembly/house"
	"github.com/coldseam/coldseam/rvalue"
	"github.com/coldseam/coldseam/rvalue/material"
)

// sourcesText traces every printed figure of a house to where it comes from.
func sourcesText(w io.Writer, r *house.Report, u rvalue.Units) {
	var keys []string
	for _, e := range r.Assemblies {
		fmt.Fprintf(w, "\nassembly %q, %s by %s: %s\n", e.Assembly.Name, e.Result.Effective.R.In(u), e.Result.Effective.Method, e.Result.Effective.Why)
		keys = append(keys, piecesText(w, e.Result, u)...)
	}
	fmt.Fprintln(w, "\nwhat is asked:")
	var asked []house.Remark
	for _, j := range r.Judgements {
		name := j.Part
		if j.Opening != "" {
			name = j.Opening
		}
		asked = append(asked, house.Remark{About: name, Text: j.Requirement.Source})
	}
	for _, text := range together(asked) {
		wrap(w, "· ", text, textWidth)
	}
	if r.Season != nil {
		fmt.Fprintln(w, "\nthe year:")
		for _, why := range r.Season.Year.Trust.Why {
			wrap(w, "· ", why, textWidth)
		}
		wrap(w, "· ", r.Now.How, textWidth)
		if r.Season.Weather != nil {
			for _, m := range r.Season.Weather.Remarks(u) {
				wrap(w, "· ", m, textWidth)
			}
		}
	}
	citations(w, keys)
}

// piecesText prints where the R of each piece of an assembly comes from, and
// returns the keys of the catalogue's sources among them.
func piecesText(w io.Writer, r *assembly.Result, u rvalue.Units) []string {
	var keys []string
	t := table{right: []bool{false, true}}
	for _, l := range r.Layers {
		if l.Offset < 0 && l.Shares[0].Pieces == nil {
			t.row("  "+l.Name, l.R.In(u), "surface films by "+r.Setting.Films.String())
		}
		for _, s := range l.Shares {
			for _, p := range s.Pieces {
				t.row("  "+p.Name, p.R.In(u), p.Basis)
				keys = append(keys, p.Basis)
			}
		}
	}
	t.print(w)
	return keys
}

// citations spells the sources out, each once.
func citations(w io.Writer, bases []string) {
	seen := map[string]bool{}
	fmt.Fprintln(w)
	for _, basis := range bases {
		for _, key := range strings.Split(basis, "+") {
			text, ok := material.Citation(key)
			if !ok || seen[key] {
				continue
			}
			seen[key] = true
			wrap(w, key+": ", text, textWidth)
		}
	}
}
