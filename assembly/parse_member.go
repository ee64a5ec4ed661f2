package assembly

import (
	"strconv"
	"strings"

	"github.com/coldseam/coldseam/rvalue"
)

// isAir reports whether an item is an air space.
func isAir(text string) bool {
	word, rest, _ := strings.Cut(text, " ")
	return strings.EqualFold(word, "air") && !strings.EqualFold(rest, "barrier")
}

// air reads "air 3/4 in", and behind the thickness "bright" (one foil face),
// "bright both", "emittance 0.1" or "emittance 0.1/0.9", "slightly vented" or
// "vented".
func (n *notation) air(it *Item, s span) error {
	it.Kind, it.E1, it.E2 = Air, ordinaryEmittance, ordinaryEmittance
	rest := n.trim(span{s.from + len("air"), s.to})
	for {
		word := n.lastWords(rest)
		before, ok := cutWord(n.str(rest), word)
		if word == "" || !ok {
			break
		}
		switch word {
		case "vented":
			it.Vent = Vented
		case "slightly vented":
			it.Vent = SlightlyVented
		case "bright":
			it.E1 = brightEmittance
		case "bright both":
			it.E1, it.E2 = brightEmittance, brightEmittance
		default: // emittance …
			at := rest.from + before
			var err error
			if it.E1, it.E2, err = n.emittances(span{at, rest.to}); err != nil {
				return err
			}
		}
		rest = n.trim(span{rest.from, rest.from + before})
	}
	if rest.from == rest.to {
		return n.fail(min(s.to, len(n.text)), "how thick is the air space? write air 3/4 in")
	}
	d, err := rvalue.ParseLength(n.str(rest))
	if err != nil {
		return n.quantityError(rest.from, err)
	}
	it.Thickness = d
	return nil
}

// brightEmittance is that of clean foil in service: ASHRAE Handbook, aluminum
// foil, bright, 0.05.
const brightEmittance = 0.05

// lastWords returns the qualifier that ends s, in lower case, or "".
func (n *notation) lastWords(s span) string {
	text := strings.ToLower(n.str(s))
	if i := strings.LastIndex(text, "emittance"); i >= 0 && !strings.HasSuffix(text, "vented") {
		return text[i:]
	}
	for _, q := range []string{"slightly vented", "vented", "bright both", "bright"} {
		if _, ok := cutWord(text, q); ok {
			return q
		}
	}
	return ""
}

// emittances reads "emittance 0.1" or "emittance 0.1/0.9".
func (n *notation) emittances(s span) (e1, e2 float64, err error) {
	text := strings.TrimLeft(n.str(s)[len("emittance"):], blanks)
	first, second, two := strings.Cut(text, "/")
	e2 = ordinaryEmittance
	e1, err1 := strconv.ParseFloat(strings.TrimSpace(first), 64)
	var err2 error
	if two {
		e2, err2 = strconv.ParseFloat(strings.TrimSpace(second), 64)
	}
	if err1 != nil || err2 != nil || !(e1 > 0 && e1 <= 1) || !(e2 > 0 && e2 <= 1) {
		return 0, 0, n.fail(s.from, "%q: an emittance is a number above 0 and up to 1, such as emittance 0.05 or emittance 0.05/0.9", text)
	}
	return e1, e2, nil
}

// member reads what frames a layer: a size of lumber, a material and its
// depth, a steel stud or a resistance, then its spacing or its share.
func (n *notation) member(m *Member, s span) error {
	m.Offset, m.Text = s.from, oneLine(n.str(s))
	rest, share, err := n.percent(s)
	if err != nil {
		return err
	}
	m.Share = share
	if at, sign := distance(n.str(rest)); at >= 0 {
		where := n.trim(span{rest.from + at + sign, rest.to})
		if m.Spacing, err = n.spacing(where); err != nil {
			return err
		}
		rest = n.trim(span{rest.from, rest.from + at})
	}
	if m.Share == 0 && m.Spacing == 0 {
		return n.fail(s.to, "how far apart are the members? write @ 16 in, or their share of the area, such as 25 %%")
	}
	if rest.from == rest.to {
		return n.fail(s.from, "what are the members? write 2x4, steel 3 1/2 in, fir 6 in, 48 x 198 mm, or their resistance, such as RSI 0.77")
	}
	for _, noun := range []string{"studs", "stud", "joists", "joist", "rafters", "rafter", "straps", "strapping", "battens", "furring"} {
		if before, ok := cutWord(n.str(rest), noun); ok && before > 0 {
			rest = n.trim(span{rest.from, rest.from + before})
		}
	}
	m.Name = oneLine(n.str(rest))
	done, err := n.lumber(m, rest)
	if !done && err == nil {
		done, err = n.steel(m, rest)
	}
	if !done && err == nil {
		done, err = n.bareR(m, rest)
	}
	if !done && err == nil {
		done, err = n.lumberOf(m, rest)
	}
	if !done && err == nil {
		err = n.memberOf(m, rest)
	}
	return err
}

// distance finds what stands before a spacing, "@" or the word at, and its
// length; or, with no sign between, where the spacing of 2x6 16 in o.c. starts.
func distance(text string) (at, length int) {
	if at = strings.IndexByte(text, '@'); at >= 0 {
		return at, 1
	}
	if at = strings.Index(text, " at "); at >= 0 {
		return at, len(" at ")
	}
	before, ok := cutOnCentre(text)
	if !ok {
		return -1, 0
	}
	// The longest end that is a length: 19 1/5 in, not 1/5 in.
	for i := 1; i < before; i++ {
		if isBlank(text[i-1]) && !isBlank(text[i]) {
			if _, err := rvalue.ParseLength(strings.TrimRight(text[i:before], blanks)); err == nil {
				return i, 0
			}
		}
	}
	return -1, 0
}

// onCentre are the words for it, by their last letter.
var onCentre = map[byte][]string{
	'c': {"oc", "o.c"},
	'.': {"o.c.", "oc."},
	's': {"on centres", "on centers", "centres", "centers"},
	'e': {"on centre"},
	'r': {"on center"},
}

// cutOnCentre cuts the words for on centre off the end of a spacing, and returns
// how many bytes stand before them.
func cutOnCentre(text string) (before int, ok bool) {
	if text == "" {
		return 0, false
	}
	for _, word := range onCentre[text[len(text)-1]|' '] { // in lower case; the full stop has that bit
		if before, ok = cutWord(text, word); ok {
			return before, true
		}
		if before = len(text) - len(word); before > 0 && text[before-1] == '"' && strings.EqualFold(text[before:], word) { // 16"oc
			return before, true
		}
	}
	return 0, false
}

// spacing reads a distance on centre, "16 in", "400 mm o.c.".
func (n *notation) spacing(s span) (rvalue.Length, error) {
	if before, ok := cutOnCentre(n.str(s)); ok {
		s = n.trim(span{s.from, s.from + before})
	}
	if s.from == s.to {
		return 0, n.fail(s.from, "the spacing is missing; write @ 16 in")
	}
	d, err := rvalue.ParseLength(n.str(s))
	if err != nil {
		return 0, n.quantityError(s.from, err)
	}
	return d, nil
}

// lumber reads a nominal size, "2x4" or "2x4 flat", or an actual one,
// "48 x 198 mm" or "1 3/4 in x 3 3/4 in". Boards of nominal 1 in lie flat.
func (n *notation) lumber(m *Member, s span) (bool, error) {
	if !startsNumber(n.str(s)) {
		return false, nil
	}
	text := strings.ToLower(strings.ReplaceAll(n.str(s), "×", "x"))
	flat := false
	if before, ok := cutWord(text, "flat"); ok {
		flat, text = true, strings.TrimRight(text[:before], blanks)
	}
	a, b, ok := strings.Cut(text, "x")
	if !ok {
		return false, nil
	}
	a, b = strings.TrimSpace(a), strings.TrimSpace(b)
	w, err1 := strconv.Atoi(a)
	d, err2 := strconv.Atoi(b)
	if err1 == nil && err2 == nil {
		width, ok1 := dressed(w)
		depth, ok2 := dressed(d)
		if !ok1 || !ok2 {
			return true, n.fail(s.from, "%q is no nominal size of lumber; use such as 2x4, 2x6, 1x3, or the actual size with units, 48 x 198 mm", text)
		}
		m.Width, m.Depth = width, depth
		flat = flat || w == 1
	} else {
		depth, err := rvalue.ParseLength(b)
		if err != nil {
			return true, n.fail(s.from, "%q is no size of lumber; write 2x4, or the actual size with units, 48 x 198 mm", text)
		}
		width, err := rvalue.ParseLength(a)
		if err != nil { // the unit stands behind the second number: 48 x 198 mm
			unit := strings.TrimLeft(b, "0123456789./ ½¼¾⅛⅜⅝⅞")
			if width, err = rvalue.ParseLength(a + " " + unit); err != nil {
				return true, n.quantityError(s.from, err)
			}
		}
		m.Width, m.Depth = width, depth
	}
	if !flat && m.Width > m.Depth {
		return true, n.fail(s.from, "which side of %s is the depth of the bay? write the depth last, or flat behind it if it lies flat", n.str(s))
	}
	if flat {
		m.Width, m.Depth = max(m.Width, m.Depth), min(m.Width, m.Depth)
	}
	m.Timber = true
	return true, nil
}

// steel reads "steel 3 1/2 in", "steel stud 6 in 16 ga".
func (n *notation) steel(m *Member, s span) (bool, error) {
	text := n.str(s)
	word, _, _ := strings.Cut(text, " ")
	if !strings.EqualFold(word, "steel") && !strings.EqualFold(word, "metal") {
		return false, nil
	}
	rest := n.trim(span{s.from + len(word), s.to})
	for _, noun := range []string{"studs", "stud"} {
		if t := n.str(rest); len(t) > len(noun) && strings.EqualFold(t[:len(noun)], noun) && t[len(noun)] == ' ' {
			rest = n.trim(span{rest.from + len(noun), rest.to})
			break
		}
	}
	gauge := defaultGauge
	for _, unit := range []string{"gauge", "ga"} {
		before, ok := strings.CutSuffix(strings.ToLower(n.str(rest)), unit)
		if !ok {
			continue
		}
		before = strings.TrimRight(before, blanks)
		from := strings.LastIndexAny(before, blanks) + 1
		g, err := strconv.Atoi(before[from:])
		if err != nil {
			return true, n.fail(rest.from+from, "%q is no gauge; write 18 ga", before[from:])
		}
		gauge = g
		rest = n.trim(span{rest.from, rest.from + from})
		break
	}
	sheet, ok := steelThickness(gauge)
	if !ok {
		return true, n.fail(s.from, "no steel stud of %d ga; use 12, 14, 16, 18, 20 or 25 ga", gauge)
	}
	if rest.from == rest.to {
		return true, n.fail(s.to, "how deep is the steel stud? write steel 3 1/2 in")
	}
	d, err := rvalue.ParseLength(n.str(rest))
	if err != nil {
		return true, n.quantityError(rest.from, err)
	}
	if m.Spacing == 0 {
		return true, n.fail(s.to, "how far apart are the steel studs? a share is not enough for them, write @ 16 in")
	}
	m.Depth, m.Width, m.Steel = d, steelFlange, sheet
	return true, nil
}

// bareR reads a member known by its resistance, "RSI 0.77".
func (n *notation) bareR(m *Member, s span) (bool, error) {
	w := n.word(s, s.from)
	if !isLabel(n.str(w), n.text[w.to:s.to]) {
		return false, nil
	}
	r, err := rvalue.ParseResistance(n.str(s))
	if err != nil {
		return true, n.quantityError(s.from, err)
	}
	if m.Share == 0 {
		return true, n.fail(s.to, "a member known by its resistance alone has no spacing to go by; give its share of the area, such as 25 %%")
	}
	m.R = r
	return true, nil
}

// lumberOf reads a size of lumber of a catalogue material, "fir 2x4".
func (n *notation) lumberOf(m *Member, s span) (bool, error) {
	for w := n.word(s, n.word(s, s.from).to); w.from < w.to; w = n.word(s, w.to) {
		name, size := n.trim(span{s.from, w.from}), span{w.from, s.to}
		if !startsNumber(n.str(w)) || !n.known(name) {
			continue
		}
		if done, err := n.lumber(m, size); !done || err != nil {
			return done, err // fir 3 1/2 in: a depth, which memberOf reads
		}
		mat, err := n.find(name)
		if err != nil {
			return true, err
		}
		r, err := mat.Resistance(m.Depth)
		if err != nil {
			return true, n.fail(s.from, "%s", plain(err))
		}
		m.Timber, m.Of, m.R, m.Named = false, mat, r, oneLine(n.str(name))
		return true, nil
	}
	return false, nil
}

// memberOf reads a member of a catalogue material with its depth, "fir 3 1/2 in".
func (n *notation) memberOf(m *Member, s span) error {
	name, label, depth, length := n.anatomy(s)
	if label.from < label.to {
		return n.fail(label.from, "a member takes a depth, not a label; write such as fir 3 1/2 in, or its resistance alone, RSI 0.77 25 %%")
	}
	mat, err := n.find(name)
	if err != nil {
		return err
	}
	if depth.from == depth.to {
		return n.fail(s.to, "how deep is this member? write its depth, such as %s 3 1/2 in", n.str(name))
	}
	if m.Depth = length; length == 0 {
		_, err := rvalue.ParseLength(n.str(depth))
		return n.quantityError(depth.from, err)
	}
	r, err := mat.Resistance(m.Depth)
	if err != nil {
		return n.fail(s.from, "%s", plain(err))
	}
	m.Of, m.R, m.Named = mat, r, oneLine(n.str(name))
	return nil
}
