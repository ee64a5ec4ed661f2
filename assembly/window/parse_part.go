package window

import (
	"strconv"
	"strings"

	"github.com/coldseam/coldseam/rvalue"
)

// paneWords are the words that a pane begins with or has; those that name what it is
// made of have their sheet.
var paneWords = map[string]Sheet{
	"glass": Glass, "laminated": Laminated, "acrylic": Acrylic, "polycarbonate": Polycarbonate,
	"storm": Glass, "tempered": Glass, "toughened": Glass, "low-e": Glass, "lowe": Glass, "interlayer": Glass,
}

// pane reads a pane with its coatings.
func (p *parser) pane(ws []word) error {
	var pane Pane
	described := false // by any word but a coating
	behind := false    // behind what it is made of or its thickness, where coatings are on its outer face
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
			if behind {
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
			pane.Storm, described = true, true
		case "tempered", "toughened":
			pane.Tempered, described = true, true
		case "glass":
			described, behind = true, true
		case "laminated", "acrylic", "polycarbonate":
			if pane.Sheet != Glass {
				return p.fail(w.from, "%s after %s: a pane is made of one of them", w.text, pane.Sheet)
			}
			pane.Sheet = paneWords[w.text]
			described, behind = true, true
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
			if !described {
				return p.fail(w.from, "a thickness without a pane; write what it is made of before it, such as glass %s", p.text[w.from:ws[len(ws)-1].to])
			}
			d, n, err := p.length(ws[i-1:])
			if err != nil {
				return err
			}
			pane.Thickness, behind = d, true
			i += n - 1
		}
	}
	last := ws[len(ws)-1]
	if !described {
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
	p.panes = append(p.panes, p.word(ws[0].from, last.to))
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
			number = strings.TrimSuffix(number, "%")
			v, err := strconv.ParseFloat(number+"e-2", 64) // rounded once
			if err != nil {
				return 0, p.fail(ws[1].from, "%q is no share of the gap; write it as 90 %%", p.text[ws[1].from:ws[1].to])
			}
			if !(v > 0 && v <= 1) {
				return 0, p.fail(ws[1].from, "a fill of %s %% is impossible; write above 0 to 100 %%", number)
			}
			share, n = v, width
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
	var err error
	if gap.Conductance, err = readConductance(text); err != nil {
		return p.quantityError(from, err)
	}
	if msg := gap.fault(); msg != "" {
		return p.fail(from, "%s", msg)
	}
	p.addGap(gap, ws)
	return nil
}

// readConductance reads what a gap conducts or resists.
func readConductance(text string) (rvalue.Transmittance, error) {
	if r, err := rvalue.ParseResistance(text); err == nil {
		return r.U(), nil
	}
	return rvalue.ParseTransmittance(text)
}
