package envelope

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"github.com/coldseam/coldseam/rvalue"
)

// PlaceError says what is wrong with one part, opening, bridge, buffer or with
// the air leakage of an [Envelope].
type PlaceError struct {
	What    string // "part", "opening", "bridge", "buffer", "air leakage"
	Name    string // "" for the air leakage
	In      string // the part that an opening sits in
	Problem string
}

// Error returns such as `envelope: opening "sash" in "street wall": an area of
// NaN m², it must be positive and finite`.
func (e *PlaceError) Error() string {
	s := "envelope: " + e.What
	if e.Name != "" {
		s += fmt.Sprintf(" %q", e.Name)
	}
	if e.In != "" {
		s += fmt.Sprintf(" in %q", e.In)
	}
	return s + ": " + e.Problem
}

// Bounds of what Check believes.
const (
	lowestSite  = -500 * rvalue.Metre // below the shore of the Dead Sea
	highestSite = 6000 * rvalue.Metre // above the highest town
	mostAir     = 100                 // air changes per hour, of a buffer
	// areaSlack lets openings fill their part although both were rounded.
	areaSlack = 1e-9
	// shareSlack is for shares that were divided and added up.
	shareSlack = 1e-9
)

// findings collects what Check finds.
type findings []error

func (f *findings) add(what, name, in, format string, args ...any) {
	*f = append(*f, &PlaceError{What: what, Name: name, In: in, Problem: fmt.Sprintf(format, args...)})
}

// Check reports everything that makes the envelope impossible, each finding a
// *PlaceError where it has a place, joined: sizes that are not positive and
// finite, openings larger than their part, shares over 100 %, names that are
// missing or used twice, buffers that do not exist.
func (e Envelope) Check() error {
	var f findings
	if len(e.Parts) == 0 && len(e.Bridges) == 0 {
		f = append(f, errors.New("envelope: no parts, at least one is needed"))
	}
	if a := e.Altitude; !(a >= lowestSite && a <= highestSite) {
		f = append(f, fmt.Errorf("envelope: an altitude of %v m, use %v to %v m", float64(a), float64(lowestSite), float64(highestSite)))
	}
	for _, t := range [...]rvalue.Temperature{e.Indoors, e.Outdoors} {
		if t != 0 && !positive(float64(t)) {
			f = append(f, fmt.Errorf("envelope: a temperature of %v K, it must be above absolute zero and finite", float64(t)))
		}
	}
	for i := range e.Parts {
		e.checkPart(&f, i)
	}
	for i := range e.Bridges {
		e.checkBridge(&f, i)
	}
	for i := range e.Buffers {
		e.Buffers[i].check(&f)
		if e.buffer(e.Buffers[i].Name) < i {
			f.add("buffer", e.Buffers[i].Name, "", "there is another of that name")
		}
	}
	if e.Leakage != nil {
		e.Leakage.check(&f)
	}
	return errors.Join(f...)
}

func (e *Envelope) checkPart(f *findings, i int) {
	p := &e.Parts[i]
	checkArea(f, "part", p.Name, "", p.Kind, p.Area, p.U, p.Target, p.Detail)
	for j := range i {
		if e.Parts[j].Name == p.Name {
			f.add("part", p.Name, "", "there is another of that name")
			break
		}
	}
	if p.Toward != "" && e.buffer(p.Toward) < 0 {
		f.add("part", p.Name, "", "it faces the buffer %q, which does not exist%s", p.Toward, e.bufferNames())
	}
	for j := range p.Openings {
		o := &p.Openings[j]
		checkArea(f, "opening", o.Name, p.Name, o.Kind, o.Area, o.U, o.Target, o.Detail)
		if o.Count < 1 {
			f.add("opening", o.Name, p.Name, "a count of %d, it must be 1 or more", o.Count)
		}
		for k := range j {
			if p.Openings[k].Name == o.Name {
				f.add("opening", o.Name, p.Name, "there is another of that name")
				break
			}
		}
	}
	if open := p.open(); float64(open) > float64(p.Area)*(1+areaSlack) {
		f.add("part", p.Name, "", "its openings take %s (%s), the whole part has only %s (%s)",
			open.In(rvalue.IP), open.In(rvalue.SI), p.Area.In(rvalue.IP), p.Area.In(rvalue.SI))
	}
}

// checkArea checks what parts and openings have in common. Each comparison is
// written so that NaN fails it.
func checkArea(f *findings, what, name, in string, kind Kind, area rvalue.Area, u rvalue.Transmittance, target Target, detail []Piece) {
	if strings.TrimSpace(name) == "" {
		f.add(what, name, in, "it has no name")
	}
	if !kind.hasArea() {
		f.add(what, name, in, "%q is not a kind that has an area", kind)
	}
	if !positive(float64(area)) {
		f.add(what, name, in, "an area of %v m², it must be positive and finite", float64(area))
	}
	if !positive(float64(u)) {
		f.add(what, name, in, "a U-factor of %v W/(m²·K), it must be positive and finite", float64(u))
	}
	if t := float64(target.U); t != 0 && !positive(t) {
		f.add(what, name, in, "a target of %v W/(m²·K), it must be positive and finite, or 0 for none", t)
	}
	// Paths share out the heat and layers the temperature drop: either adds up
	// to a whole, and may be given in part.
	var paths, layers float64
	for i := range detail {
		d := &detail[i]
		if r := float64(d.R); !(d.Share >= 0 && d.Share <= 1+shareSlack) || !(r >= 0) || math.IsInf(r, 1) {
			f.add(what, name, in, "%q inside it has a share of %v and %v m²·K/W, use 0 to 1, and 0 or more", d.Name, d.Share, r)
		}
		if d.Layer {
			layers += d.Share
		} else {
			paths += d.Share
		}
	}
	if sum := max(paths, layers); sum > 1+shareSlack {
		f.add(what, name, in, "the shares inside it add up to %.4g %%", 100*sum)
	}
}

func (e *Envelope) checkBridge(f *findings, i int) {
	b := &e.Bridges[i]
	if strings.TrimSpace(b.Name) == "" {
		f.add("bridge", b.Name, "", "it has no name")
	}
	for j := range i {
		if e.Bridges[j].Name == b.Name {
			f.add("bridge", b.Name, "", "there is another of that name")
			break
		}
	}
	if k := b.kind(); k != ThermalBridge && k != Slab {
		f.add("bridge", b.Name, "", "%q is not a kind of edge, use %q or %q", k, ThermalBridge, Slab)
	}
	if !positive(float64(b.Length)) {
		f.add("bridge", b.Name, "", "a length of %v m, it must be positive and finite", float64(b.Length))
	}
	if psi := float64(b.Psi); math.IsNaN(psi) || math.IsInf(psi, 0) {
		f.add("bridge", b.Name, "", "a linear transmittance of %v W/(m·K), it must be finite", psi)
	}
	if t := float64(b.Target); t != 0 && !positive(t) {
		f.add("bridge", b.Name, "", "a target of %v W/(m·K), it must be positive and finite, or 0 for none", t)
	}
}

// bufferNames lists the buffers for an error.
func (e *Envelope) bufferNames() string {
	if len(e.Buffers) == 0 {
		return "; there are none"
	}
	names := make([]string, len(e.Buffers))
	for i := range e.Buffers {
		names[i] = fmt.Sprintf("%q", e.Buffers[i].Name)
	}
	return "; there is " + strings.Join(names, ", ")
}

// positive reports whether x is above 0 and finite.
func positive(x float64) bool { return x > 0 && !math.IsInf(x, 1) }
