package window

import (
	"errors"
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/rvalue"
	"github.com/coldseam/coldseam/rvalue/spelling"
)

// Parse reads a glazing, indoors first like the layers of an assembly, its panes
// and gaps joined by a plus sign:
//
//	glass 4 mm + argon 90 % 16 mm + low-e 0.04 glass 4 mm
//
// A pane is glass, laminated, acrylic or polycarbonate with its thickness:
// "laminated 6.8 mm" (interlayer 0.76 mm, or "interlayer 1.52 mm" behind it),
// "tempered glass 6 mm". A coating is low-e with its normal emissivity, written on
// the side that it is on: before the pane on the face towards indoors, behind it on
// the face towards outdoors. "storm 3 mm" is a storm window, or first in the text a
// secondary pane on the room side; its gap is not sealed.
//
// A gap is air or gases with their share and the thickness: "air 1/2 in", "argon
// 90 % 16 mm", "argon 60 % krypton 30 % 10 mm" (air is the rest; a single gas
// without a share is taken at 90 %), or vacuum or aerogel with its declared
// conductance or resistance: "vacuum 0.2 mm 0.6 W/(m²·K)", "aerogel 15 mm R-6". The
// thickness of the whole may stand at the end, and a gap's be left out:
// "glass 4 mm + argon + low-e 0.04 glass 4 mm = 24 mm".
//
// The remarks say what was assumed and what is unusual. The error is an
// *assembly.SyntaxError that points into the text.
func Parse(text string) (Glazing, []assembly.Remark, error) {
	p := parser{text: text}
	if len(text) > maxText {
		return Glazing{}, nil, &assembly.SyntaxError{Text: text[:40], Msg: fmt.Sprintf("%d bytes are no glazing, at most %d", len(text), maxText)}
	}
	for i, c := range text {
		if c == utf8.RuneError || unicode.IsControl(c) && !unicode.IsSpace(c) {
			return Glazing{}, nil, p.fail(i, "a control character or broken text; write plain text")
		}
	}
	if err := p.glazing(); err != nil {
		return Glazing{}, nil, err
	}
	return p.g, p.remarks, nil
}

// maxText bounds a notation; a triple glazing takes some 100 bytes.
const maxText = 2 << 10

const example = "glass 4 mm + air 12 mm + glass 4 mm"

type parser struct {
	text    string
	g       Glazing
	remarks []assembly.Remark
	panes   []word // where each pane stands
	gaps    []word // where each gap does
}

// word is a piece of the text between blanks, or any piece of it.
type word struct {
	text string // in lower case
	from int
	to   int
}

func (p *parser) fail(offset int, format string, args ...any) error {
	return &assembly.SyntaxError{Text: p.text, Offset: offset, Msg: fmt.Sprintf(format, args...)}
}

func (p *parser) remark(offset int, code, format string, args ...any) {
	p.remarks = append(p.remarks, assembly.Remark{Code: code, Text: fmt.Sprintf(format, args...), Offset: offset})
}

// words cuts the text between two offsets at blanks.
func (p *parser) words(from, to int) (out []word) {
	start := -1
	for i, c := range p.text[from:to] {
		switch blank := unicode.IsSpace(c); {
		case blank && start >= 0:
			out = append(out, p.word(from+start, from+i))
			start = -1
		case !blank && start < 0:
			start = i
		}
	}
	if start >= 0 {
		out = append(out, p.word(from+start, to))
	}
	return out
}

func (p *parser) word(from, to int) word {
	return word{strings.ToLower(p.text[from:to]), from, to}
}

// glazing reads the whole text.
func (p *parser) glazing() error {
	body, total := len(p.text), rvalue.Length(0)
	var whole []word
	if i := strings.IndexByte(p.text, '='); i >= 0 {
		body = i
		if whole = p.words(i+1, len(p.text)); len(whole) == 0 {
			return p.fail(len(p.text), "how thick is the whole? write it behind the sign, such as = 24 mm")
		}
		var n int
		var err error
		if total, n, err = p.length(whole); err != nil {
			return err
		}
		if n < len(whole) {
			return p.fail(whole[n].from, "nothing may follow the thickness of the whole")
		}
	}
	for from := 0; from <= body; {
		to := body
		if i := strings.IndexByte(p.text[from:body], '+'); i >= 0 {
			to = from + i
		}
		if err := p.part(p.words(from, to), to); err != nil {
			return err
		}
		from = to + 1
	}
	if len(p.g.Gaps) == len(p.g.Panes) {
		return p.fail(body, "a pane is missing behind the last gap; write such as + glass 4 mm")
	}
	if err := p.whole(whole, total); err != nil {
		return err
	}
	return p.judge()
}

// part reads a pane or a gap, whichever its words say.
func (p *parser) part(ws []word, end int) error {
	if len(ws) == 0 {
		return p.fail(end, "a pane or a gap is missing here; write such as %s", example)
	}
	between := len(p.g.Panes) > len(p.g.Gaps)
	gap := false
	for _, w := range ws {
		_, isGas := gasNamed(w.text)
		gap = gap || isGas || w.text == "vacuum" || w.text == "aerogel"
	}
	switch {
	case gap && !between && len(p.g.Panes) == 0:
		return p.fail(ws[0].from, "a gap with no pane on its indoor side; write the inmost pane first, such as glass 4 mm")
	case gap && !between:
		return p.fail(ws[0].from, "two gaps with no pane between; write one, such as glass 4 mm, or mix the gases in one gap: argon 60 %% krypton 30 %% 10 mm")
	case gap:
		return p.gap(ws)
	case between:
		if beginsNumber(ws[0].text) {
			return p.fail(ws[0].from, "a gap of what? write the gas before its thickness, such as air %s", p.text[ws[0].from:ws[len(ws)-1].to])
		}
		if _, isPane := paneWords[ws[0].text]; !isPane && ws[0].text != "low" {
			return p.unknown(ws[0])
		}
		return p.fail(ws[0].from, "two panes with nothing between; write the gap, such as air 12 mm, or one laminated pane")
	case len(p.g.Panes) == MaxPanes:
		return p.fail(ws[0].from, "more than %d panes; nobody makes such a window", MaxPanes)
	}
	return p.pane(ws)
}

func (p *parser) unknown(w word) error {
	if near := nearest(w.text); near != "" {
		return &assembly.SyntaxError{
			Text: p.text, Offset: w.from, Near: []string{near},
			Msg: fmt.Sprintf("%q is neither a pane nor a gap; did you mean %s?", p.text[w.from:w.to], near),
		}
	}
	return p.fail(w.from, "%q is neither a pane (glass, laminated, acrylic, polycarbonate, storm, each with its thickness) nor a gap (air, argon, krypton, xenon, vacuum, aerogel); write such as %s", p.text[w.from:w.to], example)
}

// nearest returns the word of the notation that a misspelt one is likely to be.
func nearest(s string) string {
	const longest = 20 // of a word worth comparing
	if len(s) > longest {
		return ""
	}
	best, least := "", 3 // more than two letters off is another word
	for _, known := range [...]string{
		"glass", "laminated", "acrylic", "polycarbonate", "storm", "tempered", "low-e", "interlayer",
		"air", "argon", "krypton", "xenon", "vacuum", "aerogel",
	} {
		if d := spelling.Distance(s, known); d < least && 3*d <= len(known) {
			best, least = known, d
		}
	}
	return best
}

// length reads the longest run of words that is a length, and returns how many.
func (p *parser) length(ws []word) (rvalue.Length, int, error) {
	const longest = 6 // 5 ft 4 1/2 in
	for n := min(len(ws), longest); n > 0; n-- {
		if l, err := rvalue.ParseLength(p.text[ws[0].from:ws[n-1].to]); err == nil {
			return l, n, nil
		}
	}
	if strings.Trim(ws[0].text, "0.m") == "" && len(ws) <= 2 { // "0 mm"
		return 0, 0, p.fail(ws[0].from, "a thickness of 0; %s", "a pane or a gap that is there has one, such as 4 mm, and a gap of nothing holds no gas")
	}
	_, err := rvalue.ParseLength(p.text[ws[0].from:ws[min(len(ws), longest)-1].to])
	return 0, 0, p.quantityError(ws[0].from, err)
}

// lengthAt is length for words that may be missing.
func (p *parser) lengthAt(ws []word, i, end int, missing string) (rvalue.Length, int, error) {
	if i == len(ws) || !beginsNumber(ws[i].text) {
		return 0, 0, p.fail(end, "%s", missing)
	}
	return p.length(ws[i:])
}

// quantityError moves the place of a quantity's error into the text.
func (p *parser) quantityError(from int, err error) error {
	var q *rvalue.ParseError
	if errors.As(err, &q) {
		return p.fail(min(from+q.Offset, len(p.text)), "%s", q.Msg)
	}
	return p.fail(from, "%s", err)
}

func beginsNumber(s string) bool {
	c, _ := utf8.DecodeRuneInString(s)
	return c >= '0' && c <= '9' || c == '.' || c == '-' || c == '−' || strings.ContainsRune("½¼¾⅛⅜⅝⅞", c)
}

// measured is how far a thickness taken at the edge of a unit may be from the sum
// of what it is made of.
const measured = 0.5 * rvalue.Millimetre

// subtraction is what rounding may leave of a difference of thicknesses.
const subtraction = 1e-9 * rvalue.Millimetre

// whole gives gaps that are written without a thickness what the whole leaves
// them, or checks the whole.
func (p *parser) whole(at []word, total rvalue.Length) error {
	var sum, panes rvalue.Length
	open := 0
	for i := range p.g.Panes {
		panes += p.g.Panes[i].Thickness
	}
	sum = panes
	for i := range p.g.Gaps {
		sum += p.g.Gaps[i].Thickness
		if p.g.Gaps[i].Thickness == 0 {
			open++
			if at == nil {
				return p.fail(p.gaps[i].to, "how wide is the gap? write such as argon 90 %% 16 mm, or the thickness of the whole at the end, such as = 24 mm")
			}
		}
	}
	if at == nil {
		return nil
	}
	switch {
	case panes > total+measured || panes >= total && len(p.g.Gaps) > 0:
		return p.fail(at[0].from, "the panes alone are %s thick, the whole only %s; correct one of them", said(panes), said(total))
	case open == 0 && (sum > total+measured || sum < total-measured):
		return p.fail(at[0].from, "panes and gaps add up to %s, the whole is %s; correct one, or leave the thickness of a gap out to have it computed", said(sum), said(total))
	case open > 0 && sum >= total:
		return p.fail(at[0].from, "panes and gaps already add up to %s, which leaves nothing of %s for the gap without a thickness", said(sum), said(total))
	}
	for i := range p.g.Gaps {
		if gap := &p.g.Gaps[i]; gap.Thickness == 0 {
			gap.Thickness = rvalue.Length(float64(total-sum) / float64(open))
			if _, plain := written(gap.Thickness, subtraction); plain > 0 {
				gap.Thickness = plain
			}
			if msg := gap.fault(); msg != "" {
				return p.fail(p.gaps[i].from, "%s", msg)
			}
		}
	}
	return nil
}

// judge refuses and remarks on what only the whole shows.
func (p *parser) judge() error {
	g := &p.g
	for i := range g.Gaps {
		beside := g.Panes[i].Storm || g.Panes[i+1].Storm
		if beside && (g.Gaps[i].Kind != Filled || g.Gaps[i].Fill != Fill{}) {
			return p.fail(p.gaps[i].from, stormGap)
		}
		if beside {
			p.remark(p.gaps[i].from, "storm-gap", "the gap beside a storm or secondary pane is counted as closed; one that breathes loses more, 0.1 W/(m²·K) by a French rule")
		}
	}
	if last := &g.Panes[len(g.Panes)-1]; last.Outer != 0 {
		p.remark(p.panes[len(p.panes)-1].from, "coating-outdoors", "a coating on the face towards outdoors gets wet and dirty and saves next to nothing; a declared U does not count it")
	}
	if g.Panes[0].Inner != 0 {
		text := "a coating on the face towards the room counts as long as it is clean and dry, and makes that face colder, so that it sweats earlier"
		if len(g.Gaps) > 0 {
			text += "; if it is in the gap, write it behind its pane: glass 4 mm low-e 0.04"
		}
		p.remark(p.panes[0].from, "coating-room", "%s", text)
	}
	return nil
}
