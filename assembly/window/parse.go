package window

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/rvalue"
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
	gaps    []word // where each gap stands
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
	return p.fail(w.from, "%q is neither a pane (glass, laminated, acrylic, polycarbonate, storm, each with its thickness) nor a gap (air, argon, krypton, xenon, vacuum, aerogel); write such as %s", p.text[w.from:w.to], example)
}

// paneWords are the words of a pane; those that name a sheet have it.
var paneWords = map[string]Sheet{
	"glass": Glass, "laminated": Laminated, "acrylic": Acrylic, "polycarbonate": Polycarbonate,
	"storm": Glass, "tempered": Glass, "toughened": Glass, "low-e": Glass, "lowe": Glass, "interlayer": Glass,
}

// pane reads a pane with its coatings.
func (p *parser) pane(ws []word) error {
	var pane Pane
	named := false // whether what it is made of has been read, so that coatings are on its outer face
	for i := 0; i < len(ws); {
		w := ws[i]
		i++
		switch w.text {
		case "low", "low-e", "lowe":
			if w.text == "low" && i < len(ws) && ws[i].text == "e" {
				w = p.word(w.from, ws[i].to)
				i++
			} else if w.text == "low" {
				return p.unknown(w)
			}
			face, side := &pane.Inner, "indoors"
			if named {
				face, side = &pane.Outer, "outdoors"
			}
			if *face != 0 {
				return p.fail(w.from, "two coatings on the face towards %s; a face has one. A coating before the pane is on its face towards indoors, one behind it towards outdoors", side)
			}
			e, err := p.emissivity(ws, i, w)
			if err != nil {
				return err
			}
			*face = e
			i++
		case "storm":
			pane.Storm = true
			named = true
		case "tempered", "toughened":
			pane.Tempered = true
			named = true
		case "glass":
			named = true
		case "laminated", "acrylic", "polycarbonate":
			if pane.Sheet != Glass {
				return p.fail(w.from, "%s after %s: a pane is made of one of them", w.text, pane.Sheet)
			}
			pane.Sheet = paneWords[w.text]
			named = true
		case "interlayer":
			if pane.Sheet != Laminated {
				return p.fail(w.from, "only laminated glass has an interlayer; write such as laminated 6.8 mm interlayer 0.76 mm")
			}
			d, n, err := p.lengthAt(ws, i, w.to, "how thick is the interlayer? write interlayer 0.76 mm")
			if err != nil {
				return err
			}
			pane.Interlayer = d
			i += n
		default:
			if !beginsNumber(w.text) {
				return p.unknown(w)
			}
			if pane.Thickness != 0 {
				return p.fail(w.from, "a second thickness for this pane; join the next part with +")
			}
			if !named {
				return p.fail(w.from, "a thickness without a pane; write what it is made of before it, such as glass %s", p.text[w.from:ws[len(ws)-1].to])
			}
			d, n, err := p.length(ws[i-1:])
			if err != nil {
				return err
			}
			pane.Thickness = d
			i += n - 1
		}
	}
	last := ws[len(ws)-1]
	if !named {
		return p.fail(last.to, "a coating on what? write the pane behind it, such as low-e 0.04 glass 4 mm")
	}
	if pane.Thickness == 0 {
		return p.fail(last.to, "how thick is the pane? write such as glass 4 mm or glass 1/8 in")
	}
	if msg := pane.fault(); msg != "" {
		return p.fail(ws[0].from, "%s", msg)
	}
	if pane.Sheet == Laminated && pane.Interlayer == 0 {
		p.remark(ws[0].from, "interlayer-assumed", "laminated glass is taken with an interlayer of %s; another is written behind it, such as interlayer 1.52 mm", said(usualInterlayer))
	}
	p.g.Panes = append(p.g.Panes, pane)
	return nil
}

// emissivity reads the number behind low-e.
func (p *parser) emissivity(ws []word, i int, coating word) (float64, error) {
	if i == len(ws) || !beginsNumber(ws[i].text) {
		return 0, p.fail(coating.to, "how low? write the normal emissivity behind it: about 0.04 for a soft coat inside a sealed unit, 0.15 for a hard one that may be touched")
	}
	e, err := strconv.ParseFloat(ws[i].text, 64)
	if err != nil {
		return 0, p.fail(ws[i].from, "%q is no emissivity; write a number such as 0.04", p.text[ws[i].from:ws[i].to])
	}
	if !emissivity(e) {
		return 0, p.fail(ws[i].from, "%s", badEmissivity(e))
	}
	return e, nil
}

// gap reads a gap.
func (p *parser) gap(ws []word) error {
	var gap Gap
	first := ws[0]
	i := 0
	if first.text == "vacuum" || first.text == "aerogel" {
		gap.Kind = Vacuum
		if first.text == "aerogel" {
			gap.Kind = Aerogel
		}
		i = 1
	}
	seen := [gasCount]bool{}
	for gap.Kind == Filled && i < len(ws) {
		gas, ok := gasNamed(ws[i].text)
		if !ok {
			break
		}
		if seen[gas] {
			return p.fail(ws[i].from, "%s twice in one gap", gas)
		}
		seen[gas] = true
		n, err := p.fill(&gap.Fill, gas, ws[i:], i > 0)
		if err != nil {
			return err
		}
		i += n
	}
	if i == 0 {
		return p.unknown(first)
	}
	if i < len(ws) {
		if !beginsNumber(ws[i].text) {
			return p.unknown(ws[i])
		}
		d, n, err := p.length(ws[i:])
		if err != nil {
			return err
		}
		gap.Thickness = d
		i += n
	}
	if gap.Kind != Filled {
		return p.declaredGap(gap, ws, i)
	}
	if i < len(ws) {
		return p.fail(ws[i].from, "nothing may follow the thickness of a gap; join the next part with +")
	}
	if gap.Thickness != 0 {
		if msg := gap.fault(); msg != "" {
			return p.fail(first.from, "%s", msg)
		}
	}
	p.addGap(gap, ws)
	return nil
}

func (p *parser) addGap(gap Gap, ws []word) {
	p.g.Gaps = append(p.g.Gaps, gap)
	p.gaps = append(p.gaps, p.word(ws[0].from, ws[len(ws)-1].to))
}

// fill reads a gas and its share, and returns how many words they took.
func (p *parser) fill(f *Fill, gas Gas, ws []word, mixed bool) (n int, err error) {
	n = 1
	share := -1.0
	if len(ws) > 1 && beginsNumber(ws[1].text) {
		number, width := ws[1].text, 2
		percent := strings.HasSuffix(number, "%")
		if !percent && len(ws) > 2 && ws[2].text == "%" {
			percent, width = true, 3
		}
		if percent {
			v, err := strconv.ParseFloat(strings.TrimSuffix(number, "%"), 64)
			if err != nil {
				return 0, p.fail(ws[1].from, "%q is no share of the gap; write it as 90 %%", p.text[ws[1].from:ws[1].to])
			}
			if !(v > 0 && v <= 100) {
				return 0, p.fail(ws[1].from, "a fill of %v %% is impossible; write above 0 to 100 %%", v)
			}
			share, n = v/100, width
		}
	}
	if gas == Air {
		if mixed || share >= 0 && share != 1 {
			return 0, p.fail(ws[0].from, "air is what the other gases leave; write only these, such as argon 90 %% 16 mm")
		}
		return n, nil
	}
	if share < 0 {
		another := false
		if len(ws) > 1 {
			_, another = gasNamed(ws[1].text)
		}
		if mixed || another {
			return 0, p.fail(ws[0].to, "how much %s? with several gases each needs its share, such as %s 30 %%", gas, gas)
		}
		share = usualFill
		p.remark(ws[0].from, "fill-assumed", "%s is taken to fill %g %% of its gap, what a new unit is filled to (common practice; the tables of ISO 10077-1 come out with it); write the share behind it if another is known", gas, 100*usualFill)
	}
	if f.sum()+share > 1+fillSlack {
		return 0, p.fail(ws[0].from, "the gases fill %.4g %%, more than the gap; they may sum to 100 %%, air is the rest", 100*(f.sum()+share))
	}
	switch gas {
	case Argon:
		f.Argon = share
	case Krypton:
		f.Krypton = share
	case Xenon:
		f.Xenon = share
	case SF6:
		f.SF6 = share
	}
	return n, nil
}

// usualFill is the share of a gas whose text gives none.
const usualFill = 0.9

func gasNamed(s string) (Gas, bool) {
	for g := range gases {
		if s == gases[g].name {
			return Gas(g), true
		}
	}
	return 0, false
}

// declaredGap reads the conductance or resistance of a gap with vacuum or aerogel.
func (p *parser) declaredGap(gap Gap, ws []word, i int) error {
	if gap.Thickness == 0 {
		return p.fail(ws[i-1].to, "how thick is the %s? write such as %s 0.2 mm 0.6 W/(m²·K)", gap.Kind, gap.Kind)
	}
	if i == len(ws) {
		return p.fail(ws[i-1].to, "what does the %s conduct? its maker declares it; write it from face to face, such as 0.6 W/(m²·K), or what it resists, such as R-9", gap.Kind)
	}
	from, text := ws[i].from, p.text[ws[i].from:ws[len(ws)-1].to]
	if r, err := rvalue.ParseResistance(text); err == nil {
		gap.Conductance = r.U()
	} else if gap.Conductance, err = rvalue.ParseTransmittance(text); err != nil {
		return p.quantityError(from, err)
	}
	if msg := gap.fault(); msg != "" {
		return p.fail(from, "%s", msg)
	}
	p.addGap(gap, ws)
	return nil
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
		p.remark(-1, "coating-outdoors", "a coating on the face towards outdoors gets wet and dirty and saves next to nothing; a declared U does not count it")
	}
	if g.Panes[0].Inner != 0 {
		text := "a coating on the face towards the room counts as long as it is clean and dry, and makes that face colder, so that it sweats earlier"
		if len(g.Gaps) > 0 {
			text += "; if it is in the gap, write it behind its pane: glass 4 mm low-e 0.04"
		}
		p.remark(-1, "coating-room", "%s", text)
	}
	return nil
}
