package main

import (
	"fmt"

	"github.com/coldseam/coldseam/assembly/house"
)

func rankObject(r *house.Report, file string, isBuiltIn bool) (any, error) {
	type piece struct {
		Name  string `json:"name"`
		Kind  string `json:"kind"` // "path": share of the heat; "layer": of the temperature drop
		Share number `json:"share"`
	}
	type note struct {
		Code    string `json:"code"`
		Text    string `json:"text"`
		Applied bool   `json:"applied"`
		Source  string `json:"source"`
	}
	type part struct {
		Name      string    `json:"name"`
		In        string    `json:"in,omitempty"`
		Kind      string    `json:"kind"`
		Area      *quantity `json:"area"`
		R         *quantity `json:"r"`
		U         *quantity `json:"u"`
		UA        quantity  `json:"ua"`
		Share     number    `json:"share"`
		Intensity *number   `json:"intensity"`
		Behind    quantity  `json:"behind"`
		TargetU   *quantity `json:"target_u"`
		Met       bool      `json:"met"`
		Asked     string    `json:"asked"`
		Buffer    number    `json:"buffer_factor"`
		Year      *yearUses `json:"year,omitempty"`
		Pieces    []piece   `json:"pieces"`
		Notes     []note    `json:"notes"` // footnotes of the code
	}
	type total struct {
		UA     quantity `json:"ua"`
		Area   quantity `json:"area"`
		U      quantity `json:"u"`
		Behind quantity `json:"behind"`
	}
	type link struct {
		Part  string `json:"part"`
		In    string `json:"in,omitempty"`
		Piece *piece `json:"piece"`
		Why   string `json:"why"`
	}
	type step struct {
		Make   string    `json:"make"`
		Parts  []string  `json:"parts"`
		Behind quantity  `json:"behind"`
		Share  number    `json:"share"`
		Saving *yearUses `json:"saving,omitempty"`
	}
	type filled struct {
		Key   string `json:"key"`
		Value string `json:"value"`
		Why   string `json:"why"`
	}
	h, k := r.House, r.Ranking
	weakest := &k.Rows[k.Weakest.Row]
	out := struct {
		Schema    int                  `json:"schema"`
		Units     map[string][2]string `json:"units"`
		File      string               `json:"file"`
		Name      string               `json:"name"`
		Zone      string               `json:"zone"`
		Edition   int                  `json:"edition"`
		Parts     []part               `json:"parts"`
		Total     total                `json:"total"`
		Weakest   link                 `json:"weakest_link"`
		LosesMost string               `json:"loses_most"`
		Leakiest  string               `json:"leakiest_for_its_size"`
		Order     []step               `json:"order"`
		Season    any                  `json:"season"` // null: neither a county nor months are given
		Now       *loadObject          `json:"load_now"`
		Then      *loadObject          `json:"load_once_nothing_is_behind"`
		Defaults  []filled             `json:"defaults"`
		Warnings  []warning            `json:"warnings"`
		Cautions  []string             `json:"cautions"`
	}{
		Schema: schemaVersion, Units: unitNames, File: file, Name: h.Name, Zone: h.Zone.String(), Edition: int(h.Edition),
		Total:     total{q(k.Total.UA), q(k.Total.Area), q(k.Total.U), q(k.Total.Behind)},
		Weakest:   link{Part: weakest.Name, In: weakest.In, Why: k.Weakest.Why},
		LosesMost: k.Rows[k.LosesMost].Name,
		Order:     []step{}, Now: loadOf(r.Now), Then: loadOf(r.Then),
		Defaults: []filled{}, Warnings: []warning{}, Cautions: cautions(r),
	}
	if w := k.Weakest; w.Piece != "" {
		out.Weakest.Piece = &piece{w.Piece, pieceKind(w.PieceLayer), number(w.PieceShare)}
	}
	notes := map[[2]string][]note{}
	for _, j := range r.Judgements {
		at := [2]string{"", j.Part}
		if j.Opening != "" {
			at = [2]string{j.Part, j.Opening}
		}
		for _, n := range j.Requirement.Notes {
			notes[at] = append(notes[at], note{n.Code, n.Text, n.Applied, n.Source})
		}
	}
	if k.Leakiest >= 0 {
		out.Leakiest = k.Rows[k.Leakiest].Name
	}
	for i := range k.Rows {
		row := &k.Rows[i]
		p := part{
			Name: row.Name, In: row.In, Kind: row.Kind.String(), UA: q(row.UA), Share: number(row.Share), Behind: q(row.Behind),
			Met: row.Target.Met, Asked: row.Target.Text, Buffer: number(row.Factor), Pieces: []piece{}, Notes: append([]note{}, notes[[2]string{row.In, row.Name}]...),
		}
		if row.Area > 0 {
			area, res, tr, size := q(row.Area), q(row.R()), q(row.U), number(row.Intensity)
			p.Area, p.R, p.U, p.Intensity = &area, &res, &tr, &size
		}
		if row.Target.U > 0 {
			t := q(row.Target.U)
			p.TargetU = &t
		}
		if r.Season != nil {
			p.Year = usesOf(r.Season, r.Season.Year.Rows[i].Heating, r.Season.Year.Rows[i].Cooling)
		}
		for _, d := range row.Detail {
			p.Pieces = append(p.Pieces, piece{d.Name, pieceKind(d.Layer), number(d.Share)})
		}
		out.Parts = append(out.Parts, p)
	}
	steps, err := r.Order()
	if err != nil {
		return nil, err
	}
	for _, st := range steps {
		o := step{Make: st.Make, Parts: st.Parts, Behind: q(st.Behind), Share: number(st.Share)}
		if st.Saving != nil {
			o.Saving = usesOf(r.Season, st.Saving.Heating, st.Saving.Cooling)
		}
		out.Order = append(out.Order, o)
	}
	if r.Season != nil {
		out.Season = seasonObject(r.Season)
	}
	for _, d := range r.Defaults {
		out.Defaults = append(out.Defaults, filled(d))
	}
	if isBuiltIn {
		out.Warnings = append(out.Warnings, warning{"built-in", builtIn, file})
	}
	for _, m := range r.Remarks {
		place := m.About
		if m.Place.Line > 0 {
			place = fmt.Sprintf("%s:%d:%d", file, m.Place.Line, m.Place.Column)
		}
		out.Warnings = append(out.Warnings, warning{m.Code, m.Text, place})
	}
	return out, nil
}

// pieceKind says what a piece of a part is.
func pieceKind(layer bool) string {
	if layer {
		return "layer"
	}
	return "path"
}
