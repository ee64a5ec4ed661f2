package assembly

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/coldseam/coldseam/rvalue"
	"github.com/coldseam/coldseam/rvalue/material"
)

// Parse reads an assembly in the layer notation, indoors first, with the
// built-in catalogue of materials:
//
//	gypsum 1/2 in + 2x4 @ 16 in (fiberglass R-13) + osb 7/16 in + vinyl siding
//
// A layer is a material with its thickness, a material sold by the piece, a
// material with its label (fiberglass R-13), a bare R-5 or RSI 0.9, or an air
// space (air 3/4 in; bright for one foil face, bright both, emittance 0.1 or
// 0.1/0.9; slightly vented, vented). A framed layer names its members, their
// spacing or share of the area, and in brackets what stands between them:
// 2x6 @ 24 in (cellulose), 2x6 24 in o.c. (cellulose), fir 2x4 @ 16 in (air), 2x4 @ 16 in framing 18 % (empty), steel 3 1/2 in @
// 16 in (fiberglass R-13), RSI 0.77 25 % (RSI 2.30), 2x4 21 %, fir 3 1/2 in
// 4 % (fiberglass R-13). A second framed layer crosses the first, unless its
// members are aligned: 2x4 @ 16 in aligned (…).
//
// The error is a *SyntaxError.
func Parse(text string) (*Spec, error) {
	return Parser{}.Parse(text)
}

// Parser reads the layer notation with a catalogue of the caller's. Its zero
// value uses the built-in catalogue.
type Parser struct {
	Catalogue *material.Catalogue
}

// maxText bounds a notation; a wall takes some 100 bytes.
const maxText = 8 << 10

// Parse is like the function Parse, with the parser's own catalogue.
func (p Parser) Parse(text string) (*Spec, error) {
	if p.Catalogue == nil {
		p.Catalogue = material.Default()
	}
	n := notation{text: text, catalogue: p.Catalogue}
	if len(text) > maxText {
		return nil, &SyntaxError{Text: text[:40], Offset: 0, Msg: fmt.Sprintf("%d bytes are no list of layers, at most %d", len(text), maxText)}
	}
	plain, bad := readable(text)
	if bad >= 0 {
		return nil, n.fail(bad, "a control character or broken text; write plain text")
	}
	if !plain {
		n.text = sameLength.Replace(text)
	}
	pieces, err := n.split(span{0, len(text)}, '+')
	if err != nil {
		return nil, err
	}
	spec := &Spec{Text: text, Layers: make([]SpecLayer, len(pieces))}
	for i, piece := range pieces {
		if err := n.layer(&spec.Layers[i], piece); err != nil {
			return nil, err
		}
	}
	return spec, nil
}

// sameLength turns what word processors put in place of a blank and a hyphen
// into these, with as many bytes, so that places stay where they are.
var sameLength = strings.NewReplacer("\u00a0", "  ", "\u2011", "-  ")

// readable reports whether text is plain ASCII, and the offset of the first control
// character, one that turns the direction of writing included, or of what is not
// UTF-8, −1 if there is none.
func readable(text string) (plain bool, bad int) {
	plain = true
	for i := range len(text) {
		c := text[i]
		if c < ' ' && !isBlank(c) || c == 0x7f {
			return false, i
		}
		plain = plain && c < utf8.RuneSelf
	}
	if plain {
		return true, -1
	}
	for i, r := range text {
		if r >= utf8.RuneSelf && unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r) || r == utf8.RuneError {
			return false, i
		}
	}
	return false, -1
}

// span is a piece of the text, by byte offsets.
type span struct{ from, to int }

// notation is one text being read.
type notation struct {
	text      string
	catalogue *material.Catalogue
}

func (n *notation) fail(offset int, format string, args ...any) *SyntaxError {
	return &SyntaxError{Text: n.text, Offset: offset, Msg: fmt.Sprintf(format, args...)}
}

func (n *notation) str(s span) string { return n.text[s.from:s.to] }

// blanks separate words; Parse turns a no-break space, two bytes, into two of them.
const blanks = " \t\r\n"

func isBlank(c byte) bool { return c == ' ' || c == '\t' || c == '\r' || c == '\n' }

// trim drops blanks from both ends of s.
func (n *notation) trim(s span) span {
	for s.from < s.to && isBlank(n.text[s.from]) {
		s.from++
	}
	for s.from < s.to && isBlank(n.text[s.to-1]) {
		s.to--
	}
	return s
}

// split cuts s at each separator outside brackets.
func (n *notation) split(s span, sep byte) ([]span, error) {
	text := n.text[:s.to]
	out := make([]span, 0, 1+strings.Count(text[s.from:], string(sep)))
	open, from := -1, s.from
	for i := s.from; i < len(text); i++ {
		c := text[i]
		if c != sep && c != '(' && c != ')' {
			continue
		}
		switch {
		case c == '(' && open >= 0:
			return nil, n.fail(i, "a bracket inside a bracket; what stands between members cannot be framed itself, write it as a layer of its own")
		case c == '(':
			open = i
		case c == ')' && open < 0:
			return nil, n.fail(i, "this bracket was not opened")
		case c == ')':
			open = -1
		case open < 0:
			out = append(out, n.trim(span{from, i}))
			from = i + 1
		}
	}
	if open >= 0 {
		return nil, n.fail(open, "this bracket is not closed")
	}
	out = append(out, n.trim(span{from, s.to}))
	for _, piece := range out {
		if piece.from == piece.to {
			return nil, n.fail(min(piece.from, len(n.text)), "a layer is missing here; write a material and its thickness, such as gypsum 1/2 in")
		}
	}
	return out, nil
}

// layer reads one layer.
func (n *notation) layer(l *SpecLayer, s span) error {
	l.Offset, l.Text = s.from, oneLine(n.str(s))
	text := n.str(s)
	open := strings.IndexByte(text, '(')
	if open < 0 {
		if at, _ := distance(text); at >= 0 {
			return n.fail(s.to, "what stands between the members? write (empty), or a fill such as (fiberglass R-13)")
		}
		return n.item(&l.Item, s)
	}
	if !strings.HasSuffix(text, ")") {
		after := n.trim(span{s.from + strings.IndexByte(text, ')') + 1, s.to})
		if words := n.str(after); strings.HasSuffix(words, "%") || strings.EqualFold(words, "aligned") || strings.HasPrefix(words, "@") {
			return n.fail(after.from, "%s belongs to the members; write it before the bracket, such as 2x4 @ 16 in framing 18 %% (fiberglass R-13)", words)
		}
		return n.fail(after.from, "nothing may follow the bracket; join the next layer with +")
	}
	head := n.trim(span{s.from, s.from + open})
	fill := n.trim(span{s.from + open + 1, s.to - 1})
	if head.from == head.to {
		return n.fail(s.from, "a fill without members; write what frames it before the bracket, such as 2x4 @ 16 in, or drop the brackets")
	}
	if rest, ok := cutWord(n.str(head), "aligned"); ok {
		l.Aligned = true
		head = n.trim(span{head.from, head.from + rest})
	}
	if head.from == head.to {
		return n.fail(s.from, "members are missing before aligned; write them, such as 2x4 @ 16 in")
	}
	heads, err := n.split(head, ',')
	if err != nil {
		return err
	}
	l.Members = make([]Member, len(heads))
	for i, h := range heads {
		m := &l.Members[i]
		if err := n.member(m, h); err != nil {
			return err
		}
		if len(heads) > 1 && m.Share == 0 && m.Steel == 0 { // build refuses steel beside others
			return n.fail(h.to, "with several kinds of member each needs its share of the area, such as 2x4 21 %%")
		}
	}
	if fill.from == fill.to {
		return n.fail(fill.from, "what stands between the members? write empty, or a fill such as fiberglass R-13")
	}
	if f := n.str(fill); strings.EqualFold(f, "empty") || strings.EqualFold(f, "air") {
		return nil
	}
	items, err := n.split(fill, '+')
	if err != nil {
		return err
	}
	l.Fill = make([]Item, len(items))
	for i, it := range items {
		if err := n.item(&l.Fill[i], it); err != nil {
			return err
		}
	}
	return nil
}

// item reads a material with its thickness or label, a resistance, or air.
func (n *notation) item(it *Item, s span) error {
	it.Offset, it.Text = s.from, oneLine(n.str(s))
	text := n.str(s)
	if isAir(text) {
		return n.air(it, s)
	}
	if strings.EqualFold(text, "empty") {
		return n.fail(s.from, "empty stands alone in its brackets; write air with its thickness, such as air 1/2 in")
	}
	name, r, d, length := n.anatomy(s)
	if r.from < r.to {
		label, err := rvalue.ParseResistance(n.str(r))
		if err != nil {
			return n.quantityError(r.from, err)
		}
		it.Kind, it.R = Labelled, label
	}
	if it.Thickness = length; d.from < d.to && length == 0 {
		_, err := rvalue.ParseLength(n.str(d))
		return n.quantityError(d.from, err)
	}
	if name.from == name.to {
		if it.R == 0 {
			return n.fail(s.from, "a thickness without a material; write it before the thickness, such as gypsum %s", n.str(s))
		}
		return nil
	}
	m, err := n.find(name)
	if err != nil {
		return err
	}
	it.Material, it.Named = m, oneLine(n.str(name))
	if it.R == 0 {
		if it.Thickness == 0 && m.Conductivity > 0 {
			return nil // a fill takes the depth of its bay; build asks of others
		}
		if _, err := m.Resistance(it.Thickness); err != nil {
			return n.fail(s.from, "%s", plain(err))
		}
		return nil
	}
	if batts, err := material.FindBatt(m.Name, it.R); err == nil && len(batts) > 0 {
		it.Kind = Batt
	}
	return nil
}

// find looks a material up and points at it when it is unknown.
func (n *notation) find(name span) (*material.Material, error) {
	m, err := n.catalogue.Find(n.str(name))
	if err == nil {
		return m, nil
	}
	e := n.fail(name.from, "%s", plain(err))
	if unknown := (*material.UnknownError)(nil); errors.As(err, &unknown) {
		e.Near = unknown.Near
	}
	return nil, e
}

// quantityError moves the place of a quantity's error into the notation.
func (n *notation) quantityError(from int, err error) error {
	var q *rvalue.ParseError
	if errors.As(err, &q) {
		return n.fail(min(from+q.Offset, len(n.text)), "%s", q.Msg)
	}
	return n.fail(from, "%s", plain(err))
}

// plain drops the package's name from an error that is shown in a text of ours.
func plain(err error) string {
	s := err.Error()
	if pkg, rest, ok := strings.Cut(s, ": "); ok && (pkg == "material" || pkg == "rvalue" || pkg == "airspace" || pkg == "surface" || pkg == "assembly") {
		return rest
	}
	return s
}

// oneLine returns s, which has no blanks at its ends, with single spaces.
func oneLine(s string) string {
	for i := range len(s) {
		if c := s[i]; isBlank(c) && (c != ' ' || s[i+1] == ' ') {
			return strings.Join(strings.Fields(s), " ")
		}
	}
	return s
}

// cutWord cuts a last word off s and returns how many bytes stand before it.
func cutWord(s, word string) (before int, ok bool) {
	t := strings.TrimRight(s, blanks)
	if len(t) < len(word) || !strings.EqualFold(t[len(t)-len(word):], word) {
		return 0, false
	}
	before = len(t) - len(word)
	return before, before == 0 || strings.ContainsRune(blanks, rune(t[before-1]))
}

// percent reads the share at the end of s, "18 %" or "framing 18 %", and
// returns what stands before it.
func (n *notation) percent(s span) (rest span, share float64, err error) {
	text := n.str(s)
	number, ok := strings.CutSuffix(text, "%")
	if !ok {
		return s, 0, nil
	}
	number = strings.TrimRight(number, blanks)
	from := strings.LastIndexAny(number, blanks) + 1
	if number[from:] == "" {
		return s, 0, n.fail(s.to-1, "a percentage without a number; write it as 18 %%")
	}
	v, perr := strconv.ParseFloat(number[from:], 64)
	if perr != nil {
		return s, 0, n.fail(s.from+from, "%q is not a percentage; write it as 18 %%", number[from:])
	}
	if !(v > 0 && v < 100) {
		return s, 0, n.fail(s.from+from, "members cannot cover %v %% of the area; use a share above 0 and below 100 %%", number[from:])
	}
	rest = n.trim(span{s.from, s.from + from})
	if before, ok := cutWord(n.str(rest), "framing"); ok {
		rest = n.trim(span{rest.from, rest.from + before})
	}
	return rest, v / 100, nil
}
