package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/assembly/envelope"
	"github.com/coldseam/coldseam/assembly/house"
	"github.com/coldseam/coldseam/assembly/season"
	"github.com/coldseam/coldseam/climate"
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
	fmt.Fprintln(w, "\nhow the parts are summed:")
	for _, text := range summing(r) {
		wrap(w, "· ", text, textWidth)
	}
	if r.Season != nil {
		fmt.Fprintln(w, "\nthe year:")
		wrap(w, "· ", season.Method, textWidth)
		if r.Season.Weather != nil {
			wrap(w, "· ", "weather: "+climate.NormalsSource, textWidth)
		}
		for _, why := range r.Season.Year.Trust.Why {
			wrap(w, "· ", why, textWidth)
		}
		if r.Now != nil {
			wrap(w, "· ", "cold day: "+r.Now.How, textWidth)
		}
	}
	citations(w, keys)
}

// summing says by what the parts of this house are summed.
func summing(r *house.Report) []string {
	out := []string{"UA is U times the area that openings leave, and length times psi of a bridge; shares are of their sum"}
	ground, slab := false, false
	for _, p := range r.House.Parts {
		slab = slab || p.Kind == house.Slab
		ground = ground || p.Toward == house.ToGround && p.Kind != house.Slab
	}
	for _, b := range r.House.Buffers {
		ground = ground || len(b.ToGround) > 0
	}
	if slab {
		out = append(out, "heat of a slab's edge: "+envelope.SlabSource)
	}
	if ground {
		out = append(out, "walls and floors in the ground: "+envelope.GroundSource)
	}
	if len(r.House.Buffers) > 0 {
		out = append(out, "unheated spaces: "+envelope.BufferSource)
	}
	if r.Envelope.Leakage != nil {
		out = append(out, "heat of air that leaks: "+envelope.AirSource)
	}
	for _, w := range r.House.Windows {
		out = append(out, fmt.Sprintf("window %q: %s", w.Name, w.Source))
	}
	return out
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
				t.row("  "+read(p), p.R.In(u), p.Basis)
				keys = append(keys, p.Basis)
			}
		}
	}
	t.print(w)
	return keys
}

// read names a piece as it was written and, where that is another, as it was read.
func read(p assembly.Piece) string {
	if p.Material == "" || strings.HasPrefix(p.Name, p.Material) {
		return p.Name
	}
	return p.Name + ", read as " + p.Material
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
