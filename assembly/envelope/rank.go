package envelope

import (
	"cmp"
	"fmt"
	"slices"

	"github.com/coldseam/coldseam/rvalue"
)

// Row is one part of a Ranking.
type Row struct {
	Name      string
	In        string // the part that an opening sits in
	Kind      Kind
	Area      rvalue.Area          // net; 0 for leakage and bridges
	U         rvalue.Transmittance // toward outdoors, a buffer's help counted; 0 without an area
	UA        rvalue.Conductance
	Share     float64 // of the whole UA
	Intensity float64 // U over the mean U; 0 without an area
	Behind    rvalue.Conductance
	Target    Target
	Factor    float64            // b of the buffer it faces, 1 toward outdoors
	At        rvalue.Temperature // of that buffer, else outdoors
	Detail    []Piece
}

// R returns the resistance 1/U, 0 without an area.
func (r *Row) R() rvalue.Resistance {
	if r.U == 0 {
		return 0
	}
	return r.U.R()
}

// Ranking is the answer for a whole envelope.
type Ranking struct {
	Rows  []Row // most heat first
	Total Total

	LosesMost int // index of the row with the largest UA
	Leakiest  int // with the largest U over the mean, −1 if no row has an area
	Furthest  int // with the largest UA above its target, −1 if none is behind

	Weakest Weakest
	Remarks []Remark
}

// Total is the sum over the rows.
type Total struct {
	UA     rvalue.Conductance   // of everything
	Area   rvalue.Area          // of the rows that have one
	U      rvalue.Transmittance // mean of those rows
	Behind rvalue.Conductance
}

// Weakest names the weakest link.
type Weakest struct {
	Row   int
	Piece string // path or layer inside it that carries most, "" if unknown
	Why   string
}

// Remark is something the reader of the ranking should know.
type Remark struct {
	Code, Text, Place string
}

// Rank computes every part's conductance toward outdoors, its share of the
// whole, its intensity and how far it is behind its target, and names the
// weakest link: the row furthest behind, or if none is behind the row that
// loses most. Rows are summed in their order before sorting, so that the sum
// of Row.UA in that order is the total to the last bit.
func (e Envelope) Rank() (*Ranking, error) {
	if err := e.Check(); err != nil {
		return nil, err
	}
	n := len(e.Parts) + len(e.Bridges) + 1
	for i := range e.Parts {
		n += len(e.Parts[i].Openings)
	}
	r := &Ranking{Rows: make([]Row, 0, n)}
	factors, at := e.balance()
	for i := range e.Parts {
		p := &e.Parts[i]
		factor, t := 1.0, e.Outdoors
		if b := e.buffer(p.Toward); p.Toward != "" {
			factor, t = factors[b], at[b]
		}
		r.area(Row{Name: p.Name, Kind: p.Kind, Area: p.Area - p.open(), U: p.U, Target: p.Target, Factor: factor, At: t, Detail: p.Detail})
		for j := range p.Openings {
			o := &p.Openings[j]
			r.area(Row{Name: o.Name, In: p.Name, Kind: o.Kind, Area: o.all(), U: o.U, Target: o.Target, Factor: factor, At: t, Detail: o.Detail})
		}
	}
	for i := range e.Bridges {
		b := &e.Bridges[i]
		row := Row{Name: b.Name, Kind: b.Kind, UA: b.Psi.Times(b.Length), Factor: 1, At: e.Outdoors}
		if b.Target > 0 {
			row.Behind = max(0, (b.Psi - b.Target).Times(b.Length))
			row.Target.Met = row.Behind == 0
			row.Target.Text = fmt.Sprintf("asked: %v", b.Target)
		}
		r.Rows = append(r.Rows, row)
	}
	if l := e.Leakage; l != nil {
		row := Row{Name: "air leakage", Kind: AirLeakage, UA: l.UA(e.Altitude), Behind: l.behind(e.Altitude), Factor: 1, At: e.Outdoors}
		if l.Target50 > 0 {
			row.Target = Target{Met: row.Behind == 0, Text: fmt.Sprintf("asked: %.3g air changes per hour at 50 Pa", l.Target50)}
		}
		r.Rows = append(r.Rows, row)
	}
	r.sum()
	if !(r.Total.UA > 0) {
		return nil, fmt.Errorf("envelope: the parts sum to %s, negative bridges outweigh the rest", r.Total.UA)
	}
	r.sort()
	r.name()
	r.remark()
	return r, nil
}

// balance solves each buffer's heat balance.
func (e *Envelope) balance() (factors []float64, at []rvalue.Temperature) {
	if len(e.Buffers) == 0 {
		return nil, nil
	}
	factors, at = make([]float64, len(e.Buffers)), make([]rvalue.Temperature, len(e.Buffers))
	for i, b := range e.Buffers {
		var inward rvalue.Conductance
		for j := range e.Parts {
			p := &e.Parts[j]
			if p.Toward != b.Name {
				continue
			}
			inward += p.U.Times(p.Area - p.open())
			for k := range p.Openings {
				o := &p.Openings[k]
				inward += o.U.Times(o.all())
			}
		}
		factors[i], at[i] = b.Balance(inward, e.Altitude, e.Indoors, e.Outdoors)
	}
	return factors, at
}

// area appends a row that has an area; U comes in without the buffer's help.
func (r *Ranking) area(row Row) {
	row.U = scale(row.U, row.Factor)
	row.UA = row.U.Times(row.Area)
	if row.Target.U > 0 && !row.Target.Met {
		row.Behind = max(0, row.UA-scale(row.Target.U, row.Factor).Times(row.Area))
	}
	r.Rows = append(r.Rows, row)
}

func scale(u rvalue.Transmittance, factor float64) rvalue.Transmittance {
	return rvalue.Transmittance(float64(u) * factor)
}

// sum fills in the totals, the shares and the intensities.
func (r *Ranking) sum() {
	var ua rvalue.Conductance
	for i := range r.Rows {
		r.Total.UA += r.Rows[i].UA
		r.Total.Area += r.Rows[i].Area
		r.Total.Behind += r.Rows[i].Behind
		if r.Rows[i].Area > 0 {
			ua += r.Rows[i].UA
		}
	}
	if r.Total.Area > 0 {
		r.Total.U = ua.Over(r.Total.Area)
	}
	for i := range r.Rows {
		row := &r.Rows[i]
		row.Share = float64(row.UA) / float64(r.Total.UA)
		if row.Area > 0 {
			row.Intensity = float64(row.U) / float64(r.Total.U)
		}
	}
}

// sort puts the rows with the most heat first, equals in their old order. It
// sorts indices, since rows are large to move and to compare.
func (r *Ranking) sort() {
	order := make([]int, len(r.Rows))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(a, b int) int {
		return cmp.Or(cmp.Compare(r.Rows[b].UA, r.Rows[a].UA), a-b)
	})
	sorted := make([]Row, len(order))
	for i, from := range order {
		sorted[i] = r.Rows[from]
	}
	r.Rows = sorted
}

// name finds the three answers and the weakest link. The rows are sorted.
func (r *Ranking) name() {
	r.Leakiest, r.Furthest = -1, -1
	for i := range r.Rows {
		row := &r.Rows[i]
		if row.Area > 0 && (r.Leakiest < 0 || row.Intensity > r.Rows[r.Leakiest].Intensity) {
			r.Leakiest = i
		}
		if row.Behind > 0 && (r.Furthest < 0 || row.Behind > r.Rows[r.Furthest].Behind) {
			r.Furthest = i
		}
	}
	w := Weakest{Row: r.Furthest, Why: "furthest behind what is asked: that much would go if it just met its target"}
	if r.Furthest < 0 {
		w = Weakest{Row: r.LosesMost, Why: "loses most; nothing is known to be behind a target"}
	}
	most := 0.0
	for _, p := range r.Rows[w.Row].Detail {
		if p.Share > most {
			most, w.Piece = p.Share, p.Name
		}
	}
	r.Weakest = w
}

// remark compares ceilings with the walls below them.
func (r *Ranking) remark() {
	var wall rvalue.Resistance
	name := ""
	for i := range r.Rows {
		if row := &r.Rows[i]; row.Kind == Wall && row.R() > wall {
			wall, name = row.R(), row.Name
		}
	}
	for i := range r.Rows {
		row := &r.Rows[i]
		if (row.Kind == Ceiling || row.Kind == Roof) && row.R() < wall {
			r.Remarks = append(r.Remarks, Remark{
				Code: "ceiling-below-wall", Place: row.Name,
				Text: fmt.Sprintf("%s resists less than %s; a ceiling should resist more than the walls below it (common practice, no source)", row.Name, name),
			})
		}
	}
}
