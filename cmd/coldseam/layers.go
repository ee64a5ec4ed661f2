package main

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/assembly/section"
	"github.com/coldseam/coldseam/rvalue"
	"github.com/coldseam/coldseam/rvalue/surface"
)

// layers computes one assembly given in the layer notation.
func layers(c command) error {
	if len(c.args) == 0 {
		return usageError{"layers wants an assembly in quotes, indoors first, such as 'gypsum 1/2 in + 2x4 @ 16 in (fiberglass R-13) + osb 7/16 in + vinyl siding'"}
	}
	setting, err := settingOf(c)
	if err != nil {
		return err
	}
	spec, err := assembly.Parse(strings.Join(c.args, " "))
	if err != nil {
		return err
	}
	res, err := section.Evaluate(spec, setting)
	if err != nil {
		return err
	}
	if res.Numeric == nil { // not the effective one, but worth standing beside the others
		if s, _, err := section.Solve(spec, res); err == nil {
			res.Numeric = &s
		}
	}
	if c.is("json") {
		return writeJSON(c.stdout, layersObject(spec, res))
	}
	layersText(c.stdout, spec, res, c.units)
	if c.is("sources") {
		fmt.Fprintln(c.stdout)
		citations(c.stdout, piecesText(c.stdout, res, c.units))
	}
	return nil
}

// settingOf reads the options that say what surrounds the assembly.
func settingOf(c command) (assembly.Setting, error) {
	var s assembly.Setting
	var err error
	if s.Faces, err = assembly.ParseFacing(c.text("faces")); err != nil {
		return s, usageError{"--faces " + message(err)}
	}
	switch c.text("beyond") {
	case "open":
	case "still":
		s.Exposure = assembly.Still
	case "soil":
		s.Exposure = assembly.Soil
	default:
		return s, usageError{fmt.Sprintf("--beyond %s: use open, still or soil", c.text("beyond"))}
	}
	if s.Films, err = surface.ParseSet(c.text("films")); err != nil {
		return s, usageError{"--films " + message(err)}
	}
	if v := c.text("method"); v != "" {
		if s.Method, err = assembly.ParseMethod(v); err != nil {
			return s, usageError{"--method " + message(err)}
		}
	}
	for _, t := range []struct {
		name string
		to   *rvalue.Temperature
	}{{"indoors", &s.Indoors}, {"outdoors", &s.Outdoors}} {
		if v := c.text(t.name); v != "" {
			if *t.to, err = rvalue.ParseTemperature(v); err != nil {
				return s, usageError{"--" + t.name + " " + message(err)}
			}
		}
	}
	if v := c.text("wind"); v != "" {
		if s.Wind, err = rvalue.ParseSpeed(v); err != nil {
			return s, usageError{"--wind " + message(err)}
		}
		if s.Wind == 0 { // which Setting takes as not given
			return s, usageError{fmt.Sprintf("--wind %s: no wind at all; write --beyond still for still air, or a wind above 0", v)}
		}
	}
	s.Cold = c.is("cold")
	return s, nil
}

// message drops the package's name from an error.
func message(err error) string {
	_, rest, ok := strings.Cut(err.Error(), ": ")
	if !ok {
		return err.Error()
	}
	return rest
}

func layersText(w io.Writer, spec *assembly.Spec, r *assembly.Result, u rvalue.Units) {
	s := r.Setting
	wrap(w, "", spec.String(), textWidth)
	fmt.Fprintf(w, "%s, %s inside, %s outside, films by %s\n\n", s.Faces, s.Indoors.In(u), s.Outdoors.In(u), s.Films)
	fmt.Fprintf(w, "effective  %s   %s\n", r.Effective.R.In(u), r.Effective.U().In(u))
	wrap(w, "by         ", r.Effective.Method.String()+": "+r.Effective.Why, 100)
	fmt.Fprintln(w)
	m := table{right: []bool{false, true, true, true}}
	off := func(v rvalue.Resistance) string {
		if r.Numeric == nil || v == r.Numeric.R {
			return ""
		}
		return fmt.Sprintf("%+.1f %%", 100*(float64(v)/float64(r.Numeric.R)-1))
	}
	row := func(name string, v rvalue.Resistance) { m.row(name, v.In(u), v.U().In(u), off(v)) }
	if r.Numeric != nil && off(r.ParallelPath) != "" {
		m.row("method", "R", "U", "R is off")
	} else {
		m.row("method", "R", "U")
	}
	least, most := "no less heat than this", "no more heat than this"
	if r.Zone > 0 { // bounds of the model, which knows no flanges
		least, most = "the webs of the studs alone", "the webs of the studs alone"
	}
	row("parallel path ("+least+")", r.ParallelPath)
	row("isothermal planes ("+most+")", r.IsothermalPlanes)
	row(fmt.Sprintf("combined (%s%.1f %%)", map[bool]string{true: "within ", false: "refused: limits apart by "}[r.Combined.Valid], 100*max(r.Combined.Error, 0)), r.Combined.R)
	if r.Zone > 0 {
		row("for steel studs", r.Zone)
	}
	if n := r.Numeric; n != nil {
		row(fmt.Sprintf("numeric (within %.2g %%)", max(leastDoubt, 100*n.Doubt())), n.R)
	}
	m.print(w)
	fmt.Fprintln(w)
	t := table{right: []bool{false, true, true, true, true, true, true}}
	t.row("layer, indoors first", "area", "R", "heat", "drop", "outer face", "gain per R")
	for _, l := range r.Layers {
		name := short(l.Name, layerWidth)
		if len(l.Shares) == 1 {
			t.row(name, "", l.R.In(u), "", percent(l.Drop), l.Outer.In(u), gain(l.Shares[0].Gain))
			continue
		}
		t.row(name, "", l.R.In(u), "", percent(l.Drop), l.Outer.In(u), "")
		for _, sh := range l.Shares {
			t.row("  "+short(sh.Name, layerWidth-2), percent(sh.Fraction), sh.R.In(u), percent(sh.Heat), "", "", gain(sh.Gain))
		}
	}
	t.print(w)
	if len(r.Paths) > 1 {
		fmt.Fprintln(w)
		p := table{right: []bool{false, true, true, true}}
		head := []string{"way through", "area", "heat", "R"}
		if r.Paths[0].R == 0 {
			head = head[:3]
		}
		p.row(head...)
		for _, path := range r.Paths {
			row := []string{path.Name, percent(path.Fraction), percent(path.Heat), path.R.In(u)}
			p.row(row[:len(head)]...)
		}
		p.print(w)
	}
	if names := readAs(r); names != "" {
		fmt.Fprintln(w)
		wrap(w, "read as    ", names, textWidth)
	}
	fmt.Fprintln(w)
	wrap(w, "", "all by the effective method. R of a framed layer: what the method leaves for it, so that the layers sum to the effective R. outer face: the mean over the area. gain per R: what the whole assembly gains per unit of R added in that place alone, by a hand method.", 100)
	remarks(w, r.Remarks)
}

// leastDoubt is the finest per cent that the doubt of a solution is printed to: what an
// assembly is made of is never known as well.
const leastDoubt = 0.01

// layerWidth is where the text of a layer is cut, so that its table fits a screen; the
// whole text stands at the top.
const layerWidth = 38

func remarks(w io.Writer, rs []assembly.Remark) {
	said := map[string]bool{}
	for _, r := range rs {
		if !said[r.Text] {
			said[r.Text] = true
			wrap(w, "· ", r.Text, textWidth)
		}
	}
}

// readAs lists what was taken from the catalogue by another name than written.
func readAs(r *assembly.Result) string {
	var names []string
	for _, l := range r.Layers {
		for _, s := range l.Shares {
			for _, p := range s.Pieces {
				text := p.Name + ": " + p.Material
				if p.Material != "" && !strings.Contains(strings.ToLower(p.Name), strings.ToLower(p.Material)) && !slices.Contains(names, text) {
					names = append(names, text)
				}
			}
		}
	}
	return strings.Join(names, "; ")
}

// gain prints a gain, and nothing where the method does not say one.
func gain(g float64) string {
	if math.IsNaN(g) {
		return ""
	}
	return fmt.Sprintf("%.2f", g)
}

type methodObject struct {
	R quantity `json:"r"`
	U quantity `json:"u"`
}

func methodOf(r rvalue.Resistance) methodObject { return methodObject{q(r), q(r.U())} }

func layersObject(spec *assembly.Spec, r *assembly.Result) any {
	type numeric struct {
		methodObject
		Low  quantity `json:"r_low"`
		High quantity `json:"r_high"`
	}
	type combined struct {
		methodObject
		Error number `json:"error"`
		Valid bool   `json:"valid"`
	}
	type methods struct {
		Parallel   methodObject  `json:"parallel_path"`
		Isothermal methodObject  `json:"isothermal_planes"`
		Combined   combined      `json:"combined"`
		Zone       *methodObject `json:"zone,omitempty"`
		Numeric    *numeric      `json:"numeric,omitempty"`
	}
	type effective struct {
		methodObject
		Method string `json:"method"`
		Why    string `json:"why"`
	}
	type piece struct {
		Name      string   `json:"name"`
		Thickness quantity `json:"thickness"`
		R         quantity `json:"r"`
		Basis     string   `json:"basis"`
		Material  string   `json:"material,omitempty"`
	}
	type share struct {
		Name     string   `json:"name"`
		Fraction number   `json:"fraction"`
		Member   bool     `json:"member"`
		R        quantity `json:"r"`
		Heat     number   `json:"heat"`
		Gain     number   `json:"gain"`
		Pieces   []piece  `json:"pieces"`
	}
	type layer struct {
		Name  string   `json:"name"`
		R     quantity `json:"r"`
		Drop  number   `json:"drop"`
		Inner quantity `json:"inner"`
		Outer quantity `json:"outer"`
		Share []share  `json:"shares"`
	}
	type path struct {
		Name     string     `json:"name"`
		Fraction number     `json:"fraction"`
		R        *quantity  `json:"r,omitempty"` // with the temperatures, where heat runs straight through
		Heat     number     `json:"heat"`
		Planes   []quantity `json:"temperatures,omitempty"`
	}
	out := struct {
		Schema    int                  `json:"schema"`
		Units     map[string][2]string `json:"units"`
		Layers    string               `json:"notation"`
		Faces     string               `json:"faces"`
		Indoors   quantity             `json:"indoors"`
		Outdoors  quantity             `json:"outdoors"`
		Films     string               `json:"films"`
		Methods   methods              `json:"methods"`
		Effective effective            `json:"effective"`
		Detail    []layer              `json:"layers"`
		Paths     []path               `json:"paths"`
		Warnings  []warning            `json:"warnings"`
	}{
		Schema: schemaVersion, Units: unitNames, Layers: spec.String(), Faces: r.Setting.Faces.String(),
		Indoors: q(r.Setting.Indoors), Outdoors: q(r.Setting.Outdoors), Films: r.Setting.Films.String(),
		Methods: methods{
			Parallel: methodOf(r.ParallelPath), Isothermal: methodOf(r.IsothermalPlanes),
			Combined: combined{methodOf(r.Combined.R), number(r.Combined.Error), r.Combined.Valid},
		},
		Effective: effective{methodOf(r.Effective.R), r.Effective.Method.String(), r.Effective.Why},
		Paths:     []path{},
		Warnings:  []warning{},
	}
	if r.Zone > 0 {
		z := methodOf(r.Zone)
		out.Methods.Zone = &z
	}
	if n := r.Numeric; n != nil {
		out.Methods.Numeric = &numeric{methodOf(n.R), q(n.Low), q(n.High)}
	}
	for _, l := range r.Layers {
		o := layer{Name: l.Name, R: q(l.R), Drop: number(l.Drop), Inner: q(l.Inner), Outer: q(l.Outer)}
		for _, s := range l.Shares {
			so := share{Name: s.Name, Fraction: number(s.Fraction), Member: s.Member, R: q(s.R), Heat: number(s.Heat), Gain: number(s.Gain), Pieces: []piece{}}
			for _, p := range s.Pieces {
				so.Pieces = append(so.Pieces, piece{p.Name, q(p.Thickness), q(p.R), p.Basis, p.Material})
			}
			o.Share = append(o.Share, so)
		}
		out.Detail = append(out.Detail, o)
	}
	for _, p := range r.Paths {
		o := path{Name: p.Name, Fraction: number(p.Fraction), Heat: number(p.Heat)}
		if p.R > 0 {
			r := q(p.R)
			o.R = &r
		}
		for _, t := range p.Planes {
			o.Planes = append(o.Planes, q(t))
		}
		out.Paths = append(out.Paths, o)
	}
	for _, w := range r.Remarks {
		place := ""
		if w.Offset >= 0 {
			place = fmt.Sprintf("column %d", len([]rune(spec.Text[:w.Offset]))+1)
		}
		out.Warnings = append(out.Warnings, warning{w.Code, w.Text, place})
	}
	return out
}
