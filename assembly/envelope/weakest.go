package envelope

import "strconv"

// Weakest names the weakest link of an envelope.
type Weakest struct {
	Row  int    // index in Ranking.Rows
	Part string // name of that row
	Why  string // why it is that row

	Piece      string  // path inside it that carries most heat, or layer that withholds most; "" if unknown
	PieceLayer bool    // it is a layer
	PieceShare float64 // of the row's heat, or of its temperature drop
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
		less, digits := 100*float64(r.Rows[w.Row].Behind)/float64(r.Total.UA), 0
		if less < 10 { // "0 % less" would read as nothing
			digits = 1
		}
		w.Why = "furthest behind what is asked: if it just met its target, the house would lose " + strconv.FormatFloat(less, 'f', digits, 64) + " % less"
	case asked:
		w.Why = "loses most; everything that has a target meets it"
	default:
		w.Why = "loses most; nothing has a target to be behind"
	}
	row := &r.Rows[w.Row]
	w.Part = row.Name
	d := decisive(row.Detail)
	w.Piece, w.PieceLayer, w.PieceShare = d.Name, d.Layer, d.Share
	r.Weakest = w
}

// decisive picks the path that carries most heat, or where there is no more
// than one way through, the layer that withholds most: what a single way
// carries is everything and says nothing. Without detail it is the zero Piece.
func decisive(detail []Piece) Piece {
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
		return path
	}
	return layer
}

// remark adds what the reader should know: ceilings that resist less than a
// wall below them, buffers that nothing faces, leakage that is not counted or
// cannot be judged.
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
				Text: "it resists less than " + wall.Name + " below it; a ceiling should resist more than the walls (common practice, no source)",
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
	switch l := e.Leakage; {
	case l == nil:
		r.Remarks = append(r.Remarks, Remark{
			Code: "leakage-unknown",
			Text: "air leakage is not known and not counted; in an old house it is often among the largest losses (common practice, no source), and a blower-door test measures it",
		})
	case l.Target50 > 0 && l.Volume == 0:
		r.Remarks = append(r.Remarks, Remark{
			Code: "leakage-unjudged", Place: leakageName,
			Text: "what is asked of the air leakage is in air changes, and without the heated volume it cannot be judged",
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
