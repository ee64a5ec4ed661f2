package envelope

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"github.com/coldseam/coldseam/rvalue"
)

// Row is one part of a Ranking: a part without its openings, an opening, a
// bridge, or the air leakage.
type Row struct {
	Name      string
	In        string // the part that an opening sits in
	Toward    string // the buffer that it faces, "" for outdoors and the ground
	Kind      Kind
	Area      rvalue.Area          // net; 0 for leakage and bridges
	U         rvalue.Transmittance // the part's own, air to air; 0 for leakage and bridges
	Factor    float64              // b of the buffer that it faces, 1 toward outdoors
	At        rvalue.Temperature   // of that buffer, else outdoors; 0 if not known
	UA        rvalue.Conductance   // toward outdoors: U·Area·Factor
	Share     float64              // of the whole UA
	Intensity float64              // U·Factor over the mean U; 0 without an area
	Behind    rvalue.Conductance   // UA that would go if it alone just met its target
	HasTarget bool                 // anything is asked of it
	Target    Target               // of parts and openings; of the others its text and whether it is met
	Detail    []Piece
	Source    string // of the air leakage: where its figure comes from
}

// R returns the resistance 1/U, 0 where there is no U.
func (r Row) R() rvalue.Resistance {
	if r.U == 0 {
		return 0
	}
	return r.U.R()
}

// Ranking is the answer for a whole envelope: three answers that are not the
// same, and the weakest link.
type Ranking struct {
	Rows    []Row      // most heat first; equals in the order of the envelope
	Buffers []Balanced // in the order of the envelope
	Total   Total

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
	U      rvalue.Transmittance // mean of those rows, toward outdoors
	Behind rvalue.Conductance   // what would go if all of them just met their targets
}

// Remark is something the reader of a ranking should know.
type Remark struct {
	Code, Text string
	Place      string // the part or buffer, "" for the whole
}

// usualRows is how many rows Rank sorts without a heap.
const usualRows = 64

// key stands for a row while rows are sorted, since they are large to move.
type key struct {
	ua            rvalue.Conductance
	part, opening int32 // in Parts and Openings, or Bridges; -1 is the part itself
	kind          Kind
}

// sortKeys puts most heat first and leaves equals as they were. The few rows of
// a house are inserted one by one: a sort that calls a function for every
// comparison took a quarter of Rank's time.
func sortKeys(keys []key) {
	if len(keys) > usualRows {
		slices.SortStableFunc(keys, func(a, b key) int { return cmp.Compare(b.ua, a.ua) })
		return
	}
	for i, k := range keys {
		for ; i > 0 && keys[i-1].ua < k.ua; i-- {
			keys[i] = keys[i-1]
		}
		keys[i] = k
	}
}

// Rank computes every part's conductance toward outdoors, its share of the
// whole, its intensity and how far it is behind its target, and names the
// weakest link: the row furthest behind, or if none is behind the row that
// loses most.
//
// Total.UA is the plain sum of Row.UA in the order of Rows, so that whoever
// adds the rows up gets the total to the last bit, in whatever order the
// envelope was given. Total.Behind is more than the sum of Row.Behind where
// several rows face one buffer: see Fixed. The error is what Check finds, or says that the sum is
// not positive or beyond all range.
func (e Envelope) Rank() (*Ranking, error) {
	if err := e.Check(); err != nil {
		return nil, err
	}
	// The room stays on the stack, so that only the ranking is allocated.
	var keyRoom [usualRows]key
	solved := e.balance(make([]Balanced, 0, len(e.Buffers)))
	keys := e.keys(keyRoom[:0], solved)
	sortKeys(keys)

	r := &Ranking{Rows: make([]Row, len(keys)), Buffers: solved}
	for i, k := range keys {
		e.fill(&r.Rows[i], k, solved)
	}
	r.sum()
	if ua := float64(r.Total.UA); !(ua > 0) || math.IsInf(ua, 1) {
		return nil, e.noSum(ua)
	}
	r.name()
	r.remark(&e)
	return r, nil
}

// noSum says that the rows do not add up to something positive and finite, and why.
func (e *Envelope) noSum(ua float64) error {
	var worst *Bridge
	for i := range e.Bridges {
		if b := &e.Bridges[i]; b.Psi < 0 && (worst == nil || b.Psi.Times(b.Length) < worst.Psi.Times(worst.Length)) {
			worst = b
		}
	}
	if worst == nil || ua > 0 {
		return fmt.Errorf("envelope: the parts add up to %v W/K, which is beyond all range; look for a unit or a zero too many in their areas and U-factors", ua)
	}
	return &PlaceError{
		What: "bridge", Name: worst.Name,
		Problem: fmt.Sprintf("it takes off %s, more than all parts lose together; a negative psi is that of an outer corner, check it and the length, or give the parts beside it", rvalue.Both(-worst.Psi.Times(worst.Length))),
	}
}

// keys appends the UA of every row, in the order of the envelope.
func (e *Envelope) keys(keys []key, solved []Balanced) []key {
	add := func(ua rvalue.Conductance, part, opening int, kind Kind) {
		keys = append(keys, key{ua, int32(part), int32(opening), kind})
	}
	for i := range e.Parts {
		p := &e.Parts[i]
		factor := 1.0
		if b := e.faces(p, solved); b != nil {
			factor = b.Factor
		}
		add(scale(p.U.Times(p.net()), factor), i, -1, p.Kind)
		for j := range p.Openings {
			o := &p.Openings[j]
			add(scale(o.U.Times(o.all()), factor), i, j, o.Kind)
		}
	}
	// A key's kind says in which of the envelope's lists its place is to be
	// found, so a bridge counts as one whatever Row.Kind will be.
	for i := range e.Bridges {
		add(e.Bridges[i].Psi.Times(e.Bridges[i].Length), i, -1, ThermalBridge)
	}
	if e.Leakage != nil {
		add(e.Leakage.UA(e.Altitude), 0, -1, AirLeakage)
	}
	return keys
}

// faces returns the buffer that a part faces, nil toward outdoors and the ground.
func (e *Envelope) faces(p *Part, solved []Balanced) *Balanced {
	if p.Toward == "" {
		return nil
	}
	return &solved[e.buffer(p.Toward)]
}

// fill makes the row of a key, but for what needs the total.
func (e *Envelope) fill(row *Row, k key, solved []Balanced) {
	row.UA = k.ua
	switch k.kind {
	case ThermalBridge:
		b := &e.Bridges[k.part]
		row.Name, row.Kind, row.Factor, row.At = b.Name, b.kind(), 1, e.Outdoors
		if b.Target > 0 {
			row.HasTarget = true
			row.Behind = max(0, (b.Psi - b.Target).Times(b.Length))
			row.Target = Target{Met: row.Behind == 0, Text: fmt.Sprintf("asked: %s (%s)", b.Target.In(rvalue.IP), b.Target.In(rvalue.SI))}
		}
		return
	case AirLeakage:
		e.Leakage.fill(row, e.Altitude)
		row.At = e.Outdoors
		return
	}
	p := &e.Parts[k.part]
	buffer := e.faces(p, solved)
	row.Toward, row.Factor, row.At = p.Toward, 1, e.Outdoors
	if buffer != nil {
		row.Factor, row.At = buffer.Factor, buffer.At
	}
	if k.opening < 0 {
		row.Name, row.Kind, row.Area, row.U, row.Target, row.Detail = p.Name, p.Kind, p.net(), p.U, p.Target, p.Detail
	} else {
		o := &p.Openings[k.opening]
		row.Name, row.In, row.Kind, row.Area, row.U, row.Target, row.Detail = o.Name, p.Name, o.Kind, o.all(), o.U, o.Target, o.Detail
	}
	// The target is held against the part's own U, since that is what codes
	// speak of; a buffer's help lessens what being behind costs.
	row.HasTarget = row.Target.U > 0 || row.Target.Met
	if !row.HasTarget || row.Target.Met {
		return
	}
	if row.U <= row.Target.U {
		row.Target.Met = true
		return
	}
	row.Behind = (row.U - row.Target.U).Times(row.Area)
	if buffer != nil {
		row.Behind = buffer.saved(row.Behind)
	}
}

// saved returns how much less goes from the rooms through the buffer to outdoors
// when the conductance from the rooms falls by so much, the buffer being colder then.
func (b *Balanced) saved(less rvalue.Conductance) rvalue.Conductance {
	// H_iu·b − (H_iu − less)·b′ = less·b·b′, with b = H_ue/(H_iu + H_ue)
	return scale(less, b.Factor*b.factor(-less))
}

func scale(ua rvalue.Conductance, factor float64) rvalue.Conductance {
	return rvalue.Conductance(float64(ua) * factor)
}

// sum fills in the totals, the shares and the intensities.
func (r *Ranking) sum() {
	var ua rvalue.Conductance
	for i := range r.Rows {
		row := &r.Rows[i]
		r.Total.UA += row.UA
		if row.Toward == "" {
			r.Total.Behind += row.Behind
		}
		if row.Area > 0 {
			r.Total.Area += row.Area
			ua += row.UA
		}
	}
	if r.Total.Area > 0 {
		r.Total.U = ua.Over(r.Total.Area)
	}
	for i := range r.Buffers {
		var less rvalue.Conductance
		for j := range r.Rows {
			if row := &r.Rows[j]; row.Toward == r.Buffers[i].Name && row.Behind > 0 {
				less += (row.U - row.Target.U).Times(row.Area)
			}
		}
		r.Total.Behind += r.Buffers[i].saved(less)
	}
	for i := range r.Rows {
		row := &r.Rows[i]
		row.Share = float64(row.UA) / float64(r.Total.UA)
		if row.Area > 0 {
			row.Intensity = float64(row.U) * row.Factor / float64(r.Total.U)
		}
	}
}
