package main

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/coldseam/coldseam/climate/target"
	"github.com/coldseam/coldseam/rvalue"
)

// zone prints what each edition of the code asks in a climate zone or a county,
// and what the retrofit advice says; of a county also its climate.
func zone(c command) error {
	if len(c.args) == 0 {
		return usageError{"zone wants a county, such as 'St. Louis County, MN', or a climate zone, such as 6A"}
	}
	text := strings.Join(c.args, " ")
	var where *place
	var facts target.Facts
	zones, err := sameZone(text)
	if err != nil {
		p, perr := findPlace(c, text)
		switch {
		case perr != nil && likeZone(text):
			return fmt.Errorf("%w; or a county with its state, such as 'St. Louis County, MN'", err)
		case perr != nil:
			return perr
		}
		where = &p
		if p.altitude != nil {
			facts.Altitude = *p.altitude
		}
		zones = func(e target.Edition) (target.Zone, error) {
			z, err := p.county.Zone(int(e))
			return target.Zone(z), err
		}
	}
	for _, name := range []string{"base", "altitude"} {
		if where == nil && c.text(name) != "" {
			return usageError{fmt.Sprintf("a climate zone has no weather of its own, so --%s says nothing about %q; name a county, such as 'St. Louis County, MN'", name, text)}
		}
	}
	editions := target.Editions()
	if v := c.text("edition"); v != "" {
		e, err := target.ParseEdition(v)
		if err != nil {
			return usageError{"--edition " + message(err)}
		}
		editions = []target.Edition{e}
	}
	if c.is("json") {
		out, err := zoneObject(text, where, zones, editions, facts, c.units)
		if err != nil {
			return err
		}
		return writeJSON(c.stdout, out)
	}
	if where != nil {
		placeText(c.stdout, *where, c.units)
	}
	if err := zoneText(c.stdout, zones, editions, facts, c.units); err != nil || !c.is("sources") {
		return err
	}
	return zoneSources(c.stdout, zones, editions, facts)
}

// zoneSources says of every figure that is asked where it comes from.
func zoneSources(w io.Writer, zones zonesBy, editions []target.Edition, facts target.Facts) error {
	fmt.Fprintln(w, "\nwhere the figures come from")
	for _, e := range editions {
		z, err := zones(e)
		if err != nil {
			return err
		}
		parts := map[string][]string{}
		var sources []string // in the order of the parts
		for r, err := range target.All(z, e, facts) {
			if err != nil {
				return err
			}
			if parts[r.Source] == nil {
				sources = append(sources, r.Source)
			}
			parts[r.Source] = append(parts[r.Source], r.Component.String())
		}
		for _, source := range sources {
			wrap(w, "· ", strings.Join(parts[source], ", ")+": "+source, textWidth)
		}
	}
	return nil
}

// zonesBy tells the zone by each edition of the code.
type zonesBy func(target.Edition) (target.Zone, error)

// sameZone reads a zone, which is the same by every edition.
func sameZone(text string) (zonesBy, error) {
	z, err := target.ParseZone(text)
	return func(target.Edition) (target.Zone, error) { return z, nil }, err
}

// likeZone reports whether a text that names neither a zone nor a county was rather
// meant for a zone: "9Z", "zone six".
func likeZone(text string) bool {
	digits := 0
	for _, c := range text {
		if c >= '0' && c <= '9' {
			digits++
		}
	}
	return digits == 1 || digits == 2 || strings.Contains(strings.ToLower(text), "zone")
}

// advised are the states of an old house on which the advice speaks.
var advised = []struct {
	component target.Component
	state     target.Existing
}{
	{target.Ceiling, target.Bare},
	{target.Ceiling, target.ThreeToFourInches},
	{target.Wall, target.Bare},
	{target.Wall, target.InsulatedWall},
	{target.Floor, target.Bare},
	{target.BasementWall, target.Bare},
	{target.CrawlWall, target.Bare},
}

func zoneText(w io.Writer, zones zonesBy, editions []target.Edition, facts target.Facts, u rvalue.Units) error {
	fmt.Fprintln(w, "the most heat that may pass (U), or the R-values of which one suffices")
	fmt.Fprintln(w)
	var notes footnotes
	for _, e := range editions {
		z, err := zones(e)
		if err != nil {
			return err
		}
		ach, note := target.Tightness(z, e)
		notes.add(footnote{text: note, editions: []target.Edition{e}})
		fmt.Fprintf(w, "%s, zone %s, blower door at most %.3g air changes per hour at 50 Pa\n", e, z, ach)
		if why, low := e.LowConfidence(); low {
			wrap(w, "  low confidence: ", why, 100)
		}
		t := table{right: []bool{false, true}}
		for r, err := range target.All(z, e, facts) {
			if err != nil {
				return err
			}
			t.row("  "+r.Component.String(), umax(r, u), options(r, u))
			notes.of(r)
		}
		t.print(w)
		fmt.Fprintln(w)
	}
	notes.print(w)
	fmt.Fprintln(w, "what the government advises to add to an older wood-framed house")
	z, err := zones(target.Default)
	if err != nil {
		return err
	}
	source := ""
	for _, a := range advised {
		advice, err := target.Advise(z, a.component, a.state)
		if errors.Is(err, target.ErrNoAdvice) {
			continue
		}
		if err != nil {
			return err
		}
		source = advice.Source
		wrap(w, fmt.Sprintf("  %s, %s: ", a.component, a.state), advice.Text, textWidth)
	}
	fmt.Fprintln(w)
	wrap(w, "· ", source, 100)
	if u == rvalue.SI {
		wrap(w, "· ", "labels, footnotes and advice are in inch-pound as published: R-1 is 0.176 m²·K/W, a U-factor of 1 is 5.678 W/(m²·K), 1 ft is 0.305 m, 1 in is 25 mm", textWidth)
	}
	wrap(w, "· ", "U-factors come from memory of the code's tables, R-values of 2009 to 2021 from a page seen; states and cities amend the code, and the local code official decides.", 100)
	return nil
}

func umax(r target.Requirement, u rvalue.Units) string {
	if r.U == 0 {
		return "-"
	}
	if u == rvalue.SI {
		return r.U.In(u)
	}
	return fmt.Sprintf("%.*f Btu/(h·ft²·°F)", r.Component.UDecimals(), r.U.IP())
}

// options lists the R-value path.
func options(r target.Requirement, u rvalue.Units) string {
	if r.NotRequired {
		return "nothing asked by R"
	}
	var parts []string
	for _, o := range r.Options {
		parts = append(parts, o.String())
	}
	text := strings.Join(parts, " or ")
	if r.SlabDepth > 0 {
		text += ", " + depth(r.SlabDepth, u) + " deep"
	}
	if r.SHGC > 0 {
		text += fmt.Sprintf("solar heat gain at most %.2f", r.SHGC)
	}
	return text
}

// depth writes the reach of insulation, which the tables give in whole feet.
func depth(d rvalue.Length, u rvalue.Units) string {
	if u == rvalue.IP {
		return d.In(u)
	}
	return fmt.Sprintf("%.2f m", d.SI())
}

func zoneObject(asked string, where *place, zones zonesBy, editions []target.Edition, facts target.Facts, u rvalue.Units) (any, error) {
	type note struct {
		Code    string `json:"code"`
		Text    string `json:"text"`
		Applied bool   `json:"applied"`
		Source  string `json:"source"`
		Seen    string `json:"was"`
	}
	type requirement struct {
		Component string    `json:"component"`
		U         *quantity `json:"u,omitempty"`
		Options   []string  `json:"options"`
		SHGC      number    `json:"shgc,omitempty"`
		SlabDepth *quantity `json:"slab_depth,omitempty"`
		Seen      string    `json:"u_was"`
		Source    string    `json:"source"`
		Notes     []note    `json:"notes"`
	}
	type edition struct {
		Edition       int           `json:"edition"`
		Zone          string        `json:"zone"`
		ACH50         number        `json:"ach50"`
		ACH50Note     string        `json:"ach50_note"`
		LowConfidence string        `json:"low_confidence,omitempty"`
		Requirements  []requirement `json:"requirements"`
	}
	type advice struct {
		Component string `json:"component"`
		Existing  string `json:"existing"`
		Text      string `json:"text"`
		Source    string `json:"source"`
	}
	out := struct {
		Schema   int                  `json:"schema"`
		Units    map[string][2]string `json:"units"`
		Asked    string               `json:"asked"`
		Place    any                  `json:"place,omitempty"`
		Editions []edition            `json:"editions"`
		Advice   []advice             `json:"advice"`
	}{Schema: schemaVersion, Units: unitNames, Asked: asked, Advice: []advice{}}
	if where != nil {
		out.Place = placeObject(*where, u)
	}
	for _, e := range editions {
		z, err := zones(e)
		if err != nil {
			return nil, err
		}
		ach, remark := target.Tightness(z, e)
		why, _ := e.LowConfidence()
		o := edition{Edition: int(e), Zone: z.String(), ACH50: number(ach), ACH50Note: remark, LowConfidence: why}
		for r, err := range target.All(z, e, facts) {
			if err != nil {
				return nil, err
			}
			ro := requirement{Component: r.Component.String(), Options: []string{}, SHGC: number(r.SHGC), Seen: r.Marks.U.String(), Source: r.Source, Notes: []note{}}
			if r.U > 0 {
				u := q(r.U)
				ro.U = &u
			}
			if r.SlabDepth > 0 {
				d := q(r.SlabDepth)
				ro.SlabDepth = &d
			}
			for _, op := range r.Options {
				ro.Options = append(ro.Options, op.String())
			}
			for _, n := range r.Notes {
				ro.Notes = append(ro.Notes, note{n.Code, n.Text, n.Applied, n.Source, n.Mark.String()})
			}
			o.Requirements = append(o.Requirements, ro)
		}
		out.Editions = append(out.Editions, o)
	}
	z, err := zones(target.Default)
	if err != nil {
		return nil, err
	}
	for _, a := range advised {
		adv, err := target.Advise(z, a.component, a.state)
		if errors.Is(err, target.ErrNoAdvice) {
			continue
		}
		if err != nil {
			return nil, err
		}
		out.Advice = append(out.Advice, advice{a.component.String(), a.state.String(), adv.Text, adv.Source})
	}
	return out, nil
}
