package envelope

import "fmt"

// Weakest names the weakest link of an envelope.
type Weakest struct {
	Row   int    // index in Ranking.Rows
	Part  string // name of that row
	Piece string // path or layer inside it that carries or withholds most, "" if unknown
	Why   string
}

// name finds the three answers and the weakest link. The rows are sorted.
func (r *Ranking) name() {
	r.Leakiest, r.Furthest = -1, -1
	asked := false
	for i := range r.Rows {
		row := &r.Rows[i]
		asked = asked || row.HasTarget
		if row.Area > 0 && (r.Leakiest < 0 || row.Intensity > r.Rows[r.Leakiest].Intensity) {
			r.Leakiest = i
		}
		if row.Behind > 0 && (r.Furthest < 0 || row.Behind > r.Rows[r.Furthest].Behind) {
			r.Furthest = i
		}
	}
	w := Weakest{Row: r.LosesMost}
	switch {
	case r.Furthest >= 0:
		w.Row = r.Furthest
		w.Why = fmt.Sprintf("furthest behind what is asked: if it just met its target, the house would lose %.0f %% less",
			100*float64(r.Rows[w.Row].Behind)/float64(r.Total.UA))
	case asked:
		w.Why = "loses most; everything that has a target meets it"
	default:
		w.Why = "loses most; nothing has a target to be behind"
	}
	row := &r.Rows[w.Row]
	w.Part = row.Name
	if d, ok := decisive(row.Detail); ok {
		w.Piece = d.Name
		if d.Layer {
			w.Why += fmt.Sprintf("; inside it %q withholds most, %.0f %% of the temperature drop", d.Name, 100*d.Share)
		} else {
			w.Why += fmt.Sprintf("; inside it %q carries most, %.0f %% of its heat", d.Name, 100*d.Share)
		}
	}
	r.Weakest = w
}

// decisive picks the path that carries most heat, or where there is no more
// than one way through, the layer that withholds most.
func decisive(detail []Piece) (piece Piece, ok bool) {
	var path, layer Piece
	paths := 0
	for i := range detail {
		switch d := &detail[i]; {
		case d.Layer && d.Share > layer.Share:
			layer = *d
		case !d.Layer:
			paths++
			if d.Share > path.Share {
				path = *d
			}
		}
	}
	if paths > 1 || layer.Share == 0 {
		return path, path.Share > 0
	}
	return layer, true
}

// remark adds what the reader should know: ceilings that resist less than a
// wall below them, buffers that nothing faces, leakage that is not counted.
func (r *Ranking) remark(e *Envelope) {
	var wall *Row
	for i := range r.Rows {
		if row := &r.Rows[i]; row.Kind == Wall && (wall == nil || row.U < wall.U) {
			wall = row
		}
	}
	for i := range r.Rows {
		row := &r.Rows[i]
		if wall != nil && (row.Kind == Ceiling || row.Kind == Roof) && row.U > wall.U {
			r.Remarks = append(r.Remarks, Remark{
				Code: "ceiling-below-wall", Place: row.Name,
				Text: row.Name + " resists less than " + wall.Name + " below it; a ceiling should resist more than the walls (common practice, no source)",
			})
		}
	}
	for i := range e.Buffers {
		if !e.faced(e.Buffers[i].Name) {
			r.Remarks = append(r.Remarks, Remark{
				Code: "buffer-unused", Place: e.Buffers[i].Name,
				Text: "no part faces this unheated space, so it counts for nothing",
			})
		}
	}
	if e.Leakage == nil {
		r.Remarks = append(r.Remarks, Remark{
			Code: "leakage-unknown",
			Text: "air leakage is not known and not counted; in an old house it is often among the largest losses (common practice, no source), and a blower-door test measures it",
		})
	}
}

// faced reports whether a part faces the buffer of that name.
func (e *Envelope) faced(name string) bool {
	for i := range e.Parts {
		if e.Parts[i].Toward == name {
			return true
		}
	}
	return false
}
