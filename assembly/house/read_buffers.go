package house

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/rvalue"
)

// buffers reads the [buffer.NAME] tables.
func (d *decoder) buffers(s *section) {
	for _, e := range s.named("buffer") {
		b := &Buffer{Name: e.key}
		d.h.Buffers = append(d.h.Buffers, b)
		t := &section{d: d, t: e.value.table, where: fmt.Sprintf("buffer %q", e.key)}
		tables := t.tables("to_outdoors")
		for i, one := range tables {
			a := &section{d: d, t: one, where: fmt.Sprintf("buffer %q: surface %d", e.key, i+1)}
			r := Surface{Construction: d.construction(a, false)}
			r.Area, _ = quantity(a, "area", "200 ft2", rvalue.ParseArea)
			a.missing("area", `its area is missing; write such as area = "200 ft2"`)
			a.done()
			b.ToOutdoors = append(b.ToOutdoors, r)
		}
		d.buried(t, b)
		t.missing("to_outdoors", `what separates it from outdoors is missing; write such as to_outdoors = [ { area = "200 ft2", u = "U-0.30" } ]`)
		if t.has("to_outdoors") && len(tables) == 0 && t.get("to_outdoors") != nil && t.get("to_outdoors").value.kind == array {
			t.fail("to_outdoors", "an empty list; something separates the space from outdoors")
		}
		d.airChange(t, b)
		t.done()
	}
}

// buried reads what of a buffer lies in the ground: the walls and the floor of a cellar.
func (d *decoder) buried(t *section, b *Buffer) {
	kinds := []Kind{BasementWall, CrawlWall, BasementFloor}
	var words []string
	for _, k := range kinds {
		words = append(words, k.String())
	}
	for i, one := range t.tables("to_ground") {
		a := &section{d: d, t: one, where: fmt.Sprintf("%s: to_ground %d", t.where, i+1)}
		p := &Part{Name: fmt.Sprintf("%s, in the ground %d", b.Name, i+1), Kind: BasementWall, Toward: ToGround}
		if i, ok := a.choice("kind", words); ok {
			p.Kind = kinds[i]
		}
		a.missing("kind", "what it is is missing; write kind = %s", either(words))
		p.Assembly = lookup(a, "assembly", "assembly", d.h.Assemblies, func(a *Assembly) string { return a.Name })
		p.U, _ = quantity(a, "u", "U-0.30", someU)
		if p.Kind != BasementFloor || a.has("assembly") || a.has("u") {
			a.oneOf("what it is made of", []string{"assembly", "u"})
		}
		p.Area, _ = quantity(a, "area", "200 ft2", areas)
		a.missing("area", `its area is missing; write such as area = "30 ft x 6 ft"`)
		d.below(a, p)
		a.done()
		b.ToGround = append(b.ToGround, p)
	}
}

// airChange reads the volume and the air change of a buffer.
func (d *decoder) airChange(t *section, b *Buffer) {
	var given bool
	b.Volume, given = quantity(t, "volume", "3600 ft3", rvalue.ParseVolume)
	e := t.get("air_change")
	switch {
	case e == nil && t.has("air_change"):
	case e == nil && given:
		b.AirChange = assembly.UnknownAirChanges
		d.filled(t.path("air_change"), fmt.Sprintf("%v per hour", b.AirChange), "ISO 6946 for an unheated space of which nothing is known, from memory")
	case e == nil:
		if !t.has("volume") {
			d.filled(t.path("air_change"), "left out", "without the volume of the space its air change is not known")
		}
	case e.value.kind == text:
		n, err := perHour(e.value.text)
		if err != nil {
			t.textError("air_change", err)
		}
		b.AirChange = n
	case e.value.kind != integer && e.value.kind != float:
		t.fail("air_change", "%s; write such as \"1 per hour\"", e.value.is())
		return
	default:
		b.AirChange, _ = t.number("air_change", 0, 100)
	}
	if e != nil && !t.has("volume") {
		t.fail("air_change", "an air change is that of a volume; write such as volume = \"3600 ft3\" too")
	}
}

// perHour reads "1 per hour" or "1/h".
func perHour(text string) (float64, error) {
	number := strings.ToLower(strings.TrimSpace(text))
	ok := false
	for _, unit := range []string{"per hour", "an hour", "/h", "ach"} {
		if number, ok = strings.CutSuffix(number, unit); ok {
			break
		}
	}
	v, err := strconv.ParseFloat(strings.TrimSpace(number), 64)
	if !ok || err != nil || !(v >= 0 && v <= 100) {
		return 0, &rvalue.ParseError{Text: text, Msg: `no air change, write such as "1 per hour", from 0 to 100`}
	}
	return v, nil
}

// mostPsi is several times what a bare balcony slab of concrete loses.
const mostPsi = 5 * rvalue.PsiSI

// somePsi reads a heat per length that an edge can have.
func somePsi(text string) (rvalue.LinearTransmittance, error) {
	psi, err := rvalue.ParseLinearTransmittance(text)
	if err == nil && (psi > mostPsi || psi < -mostPsi) {
		return 0, &rvalue.ParseError{Text: text, Msg: fmt.Sprintf("no edge loses %s; a bare balcony slab of concrete has some 1 W/(m·K)", rvalue.Both(psi))}
	}
	return psi, err
}
