package main

import (
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/assembly/house"
	"github.com/coldseam/coldseam/assembly/section"
	"github.com/coldseam/coldseam/rvalue"
)

// drawnAnswer is what a drawn section does.
type drawnAnswer struct {
	drawing *house.Drawing
	result  *section.Result
	damp    *damp // nil if no face is in a room
	picture string
}

// damp is the room in whose air the coldest spot lies, and from which humidity of it
// the spot sweats and can grow mould.
type damp struct {
	air           *house.Air
	film          rvalue.Resistance
	sweats, mould float64
}

func dampOf(d *house.Drawing, r *section.Result) (*damp, error) {
	if r.Coldest < 0 {
		return nil, nil
	}
	face := d.Faces[r.Coldest]
	out := &damp{air: face.Air, film: face.Film}
	var err error
	out.sweats, out.mould, err = house.Damp(face.Air.Temperature, r.Flows[r.Coldest].Coldest.Temperature)
	return out, err
}

// perLength prints heat by length of the part.
func perLength(heat float64, u rvalue.Units) string {
	if math.IsNaN(heat) {
		return "no bound"
	}
	if math.Abs(heat) < leastHeat {
		heat = 0
	}
	if u == rvalue.IP {
		return fmt.Sprintf("%.4g Btu/(h·ft)", float64(heatOf(heat).IP))
	}
	return fmt.Sprintf("%.4g W/m", heat)
}

// drawnWidth is where the names of faces and points are cut, so that their tables fit.
const drawnWidth = 40

const leastHeat = 1e-9 // W/m, rounding about nothing

// solvedOnly says how much the bounds of a solution say.
const solvedOnly = "Solved between: for just what is drawn. Conductivities, contacts and films are seldom known to better than a few per cent (common practice, no source), and no figure here is better than they are"

// between prints what a figure lies between, with as many digits as tell both apart.
func between(low, high float64) string {
	for digits := 4; digits < 12; digits++ {
		l, h := strconv.FormatFloat(low, 'g', digits, 64), strconv.FormatFloat(high, 'g', digits, 64)
		if l != h {
			return "solved between " + l + " and " + h
		}
	}
	return "to all digits"
}

// either of the two systems' figures of a quantity.
func either(v quantity, u rvalue.Units) float64 {
	if u == rvalue.IP {
		return float64(v.IP)
	}
	return float64(v.SI)
}

// degrees prints a temperature to a tenth of a degree.
func degrees(t rvalue.Temperature, u rvalue.Units) string {
	if u == rvalue.IP {
		return fmt.Sprintf("%.1f °F", t.Fahrenheit())
	}
	return fmt.Sprintf("%.1f °C", t.Celsius())
}

// closes says how well a heat balance closes.
func closes(balance float64) string {
	if math.Abs(balance) < 1e-12 {
		return "to better than 1e-12"
	}
	return fmt.Sprintf("to %.0e", math.Abs(balance))
}

// heatOf returns W/m in both systems of units.
func heatOf(heat float64) quantity {
	const fahrenheit = 1.8 // °F in a kelvin
	return quantity{number(heat), number(fahrenheit * rvalue.LinearTransmittance(heat).IP())}
}

func spotText(at section.Point, u rvalue.Units) string {
	return fmt.Sprintf("x = %s, y = %s", at.X.In(u), at.Y.In(u))
}

func (a *drawnAnswer) print(w io.Writer, u rvalue.Units) {
	d, r := a.drawing, a.result
	wrap(w, "", d.Name, textWidth)
	var airs []string
	for _, air := range d.Airs {
		airs = append(airs, fmt.Sprintf("%s %s", air.Temperature.In(u), air.Name))
	}
	wrap(w, "", strings.Join(airs, ", "), textWidth)
	fmt.Fprintln(w)
	line := func(head, format string, args ...any) {
		wrap(w, fmt.Sprintf("%-16s ", head), fmt.Sprintf(format, args...), textWidth)
	}
	if math.IsInf(r.Heat, 0) {
		line("heat flow", "without a bound, see below")
	} else {
		line("heat flow", "%s, %s", perLength(r.Heat, u), between(either(heatOf(r.Low), u), either(heatOf(r.High), u)))
		if l, low, high := r.Coupling(); l != 0 {
			line("coupling, L2D", "%s, %s", l.In(u), between(either(q(low), u), either(q(high), u)))
		}
		if v, ok := d.U(r); ok {
			line("as a plain part", "%s, %s", v.R().In(u), v.In(u))
		}
		a.psi(line, u)
	}
	if f := a.damp; f != nil {
		cold := r.Flows[r.Coldest]
		line("coldest inside", "%s at %s, face %q; fRsi %.3f", degrees(cold.Coldest.Temperature, u), spotText(cold.Coldest.At, u), cold.Name, cold.Factor)
		line("it sweats", "once the air there (%s, %s) has %s humidity", f.air.Name, f.air.Temperature.In(u), percent(f.sweats))
		line("mould can grow", "if it has %s for long: 80 %% at the surface (ISO 13788)", percent(f.mould))
	} else {
		line("coldest inside", "not asked: without a film a face has the temperature that it is held at, and does not say when it sweats")
	}
	fmt.Fprintln(w)
	a.faces(w, u)
	if len(d.Points) > 0 {
		fmt.Fprintln(w)
		t := table{right: []bool{false, false, true}}
		t.row("point", "at", "temperature")
		for i, p := range d.Points {
			t.row(short(p.Name, drawnWidth), spotText(p.At, u), degrees(r.Points[i].Temperature, u))
		}
		t.print(w)
	}
	fmt.Fprintln(w)
	text := "heat: into the section, per length of the part. "
	if !math.IsInf(r.Heat, 0) {
		text += fmt.Sprintf("Its balance closes %s; ", closes(r.Balance))
	}
	text += fmt.Sprintf("%d unknowns, %d meshes", r.Unknowns, r.Solves)
	if !math.IsInf(r.Moved, 0) {
		text += fmt.Sprintf("; temperatures moved by %.1g K at the last", r.Moved)
	}
	wrap(w, "", text+". "+solvedOnly+".", textWidth)
	for _, m := range r.Remarks {
		wrap(w, "· ", m.Text, textWidth)
	}
	if f := a.damp; f != nil && f.film < mouldFilm {
		wrap(w, "· ", fmt.Sprintf("the air at that spot resists %s here; where furniture or curtains stand before it, ISO 13788 takes RSI 0.25 for mould: write that film to check", f.film.In(u)), textWidth)
	}
	for _, text := range d.Assumed() {
		wrap(w, "· ", text, textWidth)
	}
	if len(d.Defaults) > 0 {
		fmt.Fprintln(w, "\nfilled in, and taken from the catalogue:")
		for _, f := range d.Defaults {
			wrap(w, "· ", fmt.Sprintf("%s = %s (%s)", f.Key, f.Value, f.Why), textWidth)
		}
	}
	if a.picture != "" {
		fmt.Fprintf(w, "\npicture: %s\n", a.picture)
	}
}

// mouldFilm is what ISO 13788 takes at opaque surfaces for mould, from memory.
const mouldFilm = 0.25 * rvalue.RSI

func (a *drawnAnswer) psi(line func(head, format string, args ...any), u rvalue.Units) {
	internal, external := a.drawing.Psi(a.result)
	for _, p := range []struct {
		by  string
		psi *house.Psi
	}{{"internal", internal}, {"external", external}} {
		if p.psi != nil {
			line("psi, "+p.by, "%s, %s", p.psi.Psi.In(u), between(either(q(p.psi.Low), u), either(q(p.psi.High), u)))
		}
	}
	for _, f := range a.drawing.Flanks {
		var lengths []string
		if f.Internal > 0 {
			lengths = append(lengths, f.Internal.In(u)+" internal")
		}
		if f.External > 0 {
			lengths = append(lengths, f.External.In(u)+" external")
		}
		line("  beside", "%s, %s, %s", f.Name, f.U.In(u), strings.Join(lengths, ", "))
	}
}

func (a *drawnAnswer) faces(w io.Writer, u rvalue.Units) {
	t := table{right: []bool{false, true, true, true, true}}
	t.row("face", "length", "heat", "coldest", "warmest")
	for i, f := range a.result.Flows {
		if a.drawing.Faces[i].Adiabatic {
			continue
		}
		t.row(short(f.Name, drawnWidth), f.Length.In(u), perLength(f.Heat, u), degrees(f.Coldest.Temperature, u), degrees(f.Warmest.Temperature, u))
	}
	t.print(w)
}

// framedAnswer is what an assembly's section says beside the hand methods.
type framedAnswer struct {
	*house.Framed
	r, low, high rvalue.Resistance
	coldest      rvalue.Temperature
	factor       float64
	unknowns     int
	balance      float64
	picture      string
	remarks      []section.Remark
}

func (a *framedAnswer) print(w io.Writer, u rvalue.Units) {
	h := a.Hand
	wrap(w, "", fmt.Sprintf("%s: %s, %s inside, %s outside, films by %s", a.Assembly.Name, h.Setting.Faces, h.Setting.Indoors.In(u), h.Setting.Outdoors.In(u), h.Setting.Films), textWidth)
	wrap(w, "  ", a.Assembly.Layers.String(), textWidth)
	if a.Refused != nil {
		wrap(w, "  ", "it cannot be drawn: "+drawnMessage(a.Refused), textWidth)
		return
	}
	t := table{right: []bool{false, true, true, true}}
	t.row("  method", "R", "U", "R is off")
	for _, m := range a.methods() {
		t.row("  "+m.name, m.r.In(u), m.r.U().In(u), fmt.Sprintf("%+.1f %%", 100*m.off))
	}
	t.row("  numeric", a.r.In(u), a.r.U().In(u), fmt.Sprintf("±%.1g %%", 100*a.doubt()))
	t.print(w)
	label := map[rvalue.Units]string{rvalue.IP: "R", rvalue.SI: "RSI"}[u]
	wrap(w, "  ", fmt.Sprintf("numeric: %s %s; coldest inside %s, fRsi %.3f; %d unknowns; the heat balance closes %s",
		label, between(either(q(a.low), u), either(q(a.high), u)), degrees(a.coldest, u), a.factor, a.unknowns, closes(a.balance)), textWidth)
	for _, m := range a.said() {
		wrap(w, "  · ", m.Text, textWidth)
	}
	if a.picture != "" {
		fmt.Fprintf(w, "  picture: %s\n", a.picture)
	}
}

// drawnMessage is an error of an assembly's drawing without its package's name or
// the text that it points into, which stands above.
func drawnMessage(err error) string {
	var at *assembly.SyntaxError
	if errors.As(err, &at) {
		return at.Msg
	}
	return message(err)
}

// doubt is half the bracket of the numeric R, as a part of it.
func (a *framedAnswer) doubt() float64 { return float64(a.high-a.low) / float64(2*a.r) }

// method is a hand method beside the numeric answer.
type method struct {
	name, code string
	r          rvalue.Resistance
	off        float64 // of R, as a part of the numeric one
}

func (a *framedAnswer) methods() []method {
	out := []method{
		{name: "parallel path", code: "parallel_path", r: a.Hand.ParallelPath},
		{name: "isothermal planes", code: "isothermal_planes", r: a.Hand.IsothermalPlanes},
		{name: "combined", code: "combined", r: a.Hand.Combined.R},
	}
	if a.Hand.Zone > 0 {
		out = append(out, method{name: "for steel studs", code: "zone", r: a.Hand.Zone})
	}
	for i := range out {
		out[i].off = float64(out[i].r)/float64(a.r) - 1
	}
	return out
}

// said is what had to be assumed and what came of the solution.
func (a *framedAnswer) said() []section.Remark {
	var drawn []assembly.Remark
	switch {
	case a.Block != nil:
		drawn = a.Block.Remarks
	case a.Bay != nil:
		drawn = a.Bay.Remarks
	}
	var out []section.Remark
	for _, m := range drawn {
		out = append(out, section.Remark{Code: m.Code, Text: m.Text})
	}
	out = append(out, a.remarks...)
	return out
}
