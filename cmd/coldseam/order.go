package main

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"github.com/coldseam/coldseam/assembly/house"
	"github.com/coldseam/coldseam/assembly/window"
	"github.com/coldseam/coldseam/rvalue"
)

// order prints what the windows of a house let through, when they sweat, what better
// glass gains, and what to order for them.
func order(c command) error {
	name, data, err := readHouse(c)
	if err != nil {
		return err
	}
	r, u, err := rankHouse(c, name, data)
	if err != nil {
		return err
	}
	s, err := r.Sheet()
	if err != nil {
		return fmt.Errorf("%s: %s", name, message(err))
	}
	if c.is("json") {
		out, err := sheetObject(r, s, name, len(c.args) == 0)
		if err != nil {
			return err
		}
		return writeJSON(c.stdout, out)
	}
	if len(c.args) == 0 {
		fmt.Fprintf(c.stdout, builtIn+", %s\n\n", name)
	}
	return sheetText(c.stdout, r, s, u)
}

func sheetText(w io.Writer, r *house.Report, s *house.Sheet, u rvalue.Units) error {
	h := r.House
	fmt.Fprintf(w, "the windows of %s\n", h.Name)
	humidity := ""
	if h.Indoors.Humidity > 0 {
		humidity = fmt.Sprintf(" and %s humidity", percent(h.Indoors.Humidity))
	}
	if r.Now != nil {
		fmt.Fprintf(w, "%s%s inside, %s outside on a cold day\n", s.Indoors.In(u), humidity, s.Outdoors.In(u))
	} else {
		wrap(w, "", fmt.Sprintf("%s%s inside, %s outside: that is no cold day but the file's outdoors.temperature, or what stands in for it; write the place's county, or outdoors.design, to know when windows sweat", s.Indoors.In(u), humidity, s.Outdoors.In(u)), textWidth)
	}
	if len(s.Fitted) == 0 {
		fmt.Fprintln(w, "\nthe house file has no windows")
		return nil
	}
	done := map[*house.Window]bool{}
	for i := range s.Fitted {
		f := &s.Fitted[i]
		fmt.Fprintln(w)
		if err := fittedText(w, s, f, h.Indoors.Humidity, u); err != nil {
			return err
		}
		if len(f.Steps) > 1 && !done[f.Window] {
			done[f.Window] = true
			steps, err := sheetSteps(s, f)
			if err != nil {
				return err
			}
			wrap(w, "  ", fmt.Sprintf("what can be done to window %q, U at this size by the handbook on its winter night, sweats on this cold day:", f.Window.Name), textWidth)
			stepsTable(w, "  ", steps, u)
		}
	}
	if notes := windowNotes(r); len(notes) > 0 {
		fmt.Fprintln(w)
		for _, text := range notes {
			wrap(w, "· ", text, textWidth)
		}
	}
	fmt.Fprintln(w)
	wrap(w, "", "U in "+map[rvalue.Units]string{rvalue.IP: "Btu/(h·ft²·°F)", rvalue.SI: "W/(m²·K)"}[u]+"; gains: over the step before; saves: of the window's heat as it is; a step with dots is on top of the one above it.", textWidth)
	wrap(w, "", fmt.Sprintf("Safety glass and ways out by the International Residential Code, edition %d; local code decides, and it has exceptions that are not asked for here.", s.Edition), textWidth)
	for _, text := range glassCautions {
		wrap(w, "! ", text, textWidth)
	}
	return nil
}

// windowNotes are the remarks on windows, and what was filled in for them.
func windowNotes(r *house.Report) []string {
	var remarks []house.Remark
	names := map[string]bool{}
	for _, p := range r.House.Parts {
		for _, o := range p.Openings {
			names[o.Name] = true
		}
	}
	for _, m := range r.Remarks {
		if m.Code != "code-note" && m.Code != "code-exception" && (strings.HasPrefix(m.About, "window ") || names[m.About]) {
			remarks = append(remarks, m)
		}
	}
	out := together(remarks)
	for _, d := range r.Defaults {
		if strings.HasPrefix(d.Key, "window ") || strings.Contains(d.Key, "opening ") {
			out = append(out, fmt.Sprintf("filled in: %s = %s (%s)", d.Key, d.Value, d.Why))
		}
	}
	return out
}

// sheetSteps adds to the steps of an opening when each sweats on the house's cold day.
func sheetSteps(s *house.Sheet, f *house.Fitted) ([]glassStep, error) {
	var out []glassStep
	for _, step := range f.Steps {
		rh, where, err := sweatsFirst(step.Window, s.Cold(f))
		if err != nil {
			return nil, err
		}
		out = append(out, glassStep{step, rh, where})
	}
	return out, nil
}

func fittedText(w io.Writer, s *house.Sheet, f *house.Fitted, humidity float64, u rvalue.Units) error {
	title := f.Name
	if f.Count > 1 {
		title = fmt.Sprintf("%d %s", f.Count, f.Name)
	}
	if f.Part != f.Name {
		title += ", in " + f.Part
	}
	if f.Width > 0 {
		title += fmt.Sprintf(": %s x %s", inches(f.Width, u), inches(f.Height, u))
	}
	fmt.Fprintln(w, title)
	line := func(head, format string, args ...any) {
		wrap(w, fmt.Sprintf("  %-8s ", head), fmt.Sprintf(format, args...), textWidth)
	}
	if b := f.Window.Built; b != nil {
		line("glass", "%s (window %q)", b.Window.Glazing, f.Window.Name)
	} else if f.Window.Leaf != "" {
		line("leaf", "%s, no glass (window %q)", f.Window.Leaf, f.Window.Name)
	} else {
		line("glass", "not described (window %q: %s); write its glazing for the steps and the order", f.Window.Name, f.Window.Source)
	}
	text := f.U.In(u)
	if f.Whole != nil {
		text += " by " + f.Method
		all := float64(f.Whole.Center + f.Whole.Edge + f.Whole.Frame)
		text += fmt.Sprintf("; of its heat %s by the glass, %s by its edge, %s by the frame", percent(float64(f.Whole.Center)/all), percent(float64(f.Whole.Edge)/all), percent(float64(f.Whole.Frame)/all))
	}
	if f.Upright > 0 {
		text += fmt.Sprintf("; upright it would be %s", f.Upright.In(u))
	}
	line("U", "%s", text)
	if f.Draft > 0 {
		line("draft", "%s", draftText(f, u))
	}
	line("sweats", "%s", sweatText(s, f, humidity, u))
	for _, p := range f.Pieces {
		line("order", "%s", orderedText(&p, f.Count, u))
	}
	if f.Window.Built != nil && slices.ContainsFunc(f.Window.Built.Window.Glazing.Panes, func(p window.Pane) bool { return p.Storm }) {
		line("storm", "has a frame of its own: measure where it goes, three times each way")
	}
	if f.Window.Leaf == "" && f.Opening.Site == nil && len(f.Safety) == 0 {
		line("safety", "where it is in the room is not given (site): glass in or near doors, near baths and stairs, or in a large pane near the floor must be safety glass")
	}
	for _, flag := range f.Safety {
		line("safety", "%s: %s. Needs %s (%s)", flag.Clause, flag.Fact, flag.Need, flag.Basis)
	}
	if f.Opening.Site != nil && len(f.Safety) == 0 {
		line("safety", "no rule that was asked for calls for safety glass here")
	}
	for _, flag := range f.Escape {
		line("way out", "no: %s, %s. Needs %s (%s)", flag.Clause, flag.Fact, flag.Need, flag.Basis)
	}
	if f.Opening.Escape != nil && len(f.Escape) == 0 {
		line("way out", "its clear opening is large enough and low enough; it must also open from inside without key or tool")
	}
	return nil
}

// draftText says what leaks by the joints of a window, and where it loses most.
func draftText(f *house.Fitted, u rvalue.Units) string {
	width, height := f.Width, f.Height
	text := fmt.Sprintf("some %s by its joints, ", about(f.Draft.In(u)))
	if width > 0 {
		through := f.U.Times(width.Times(height))
		all := float64(f.Count) * float64(through)
		text += fmt.Sprintf("%s of all that it loses; ", percent(float64(f.Draft)/(all+float64(f.Draft))))
		if f.Whole != nil {
			most, where := f.Whole.Center, "the glass"
			if f.Whole.Edge > most {
				most, where = f.Whole.Edge, "the edge"
			}
			if f.Whole.Frame > most {
				most, where = f.Whole.Frame, "the frame"
			}
			if float64(f.Draft) > float64(f.Count)*float64(most) {
				where = "the draft"
			}
			text += where + " loses most; "
		}
	}
	return text + fmt.Sprintf("an estimate: %s of a house's leaks are windows and doors (6 to 22 %% where it was measured, ASHRAE, from memory), shared by the length of the joints", percent(house.DraftShare))
}

// sweatText says when a window sweats, and whether it does in the house's air.
func sweatText(s *house.Sheet, f *house.Fitted, humidity float64, u rvalue.Units) string {
	first, where := f.Sweats.Center, "glass"
	if f.Whole == nil {
		where = f.Window.Kind.String() + ", by the mean of its face"
	}
	if f.Sweats.Edge < first {
		first, where = f.Sweats.Edge, "edge"
	}
	if f.Sweats.Frame < first {
		first, where = f.Sweats.Frame, "frame"
	}
	text := fmt.Sprintf("from %s humidity, first at the %s, at %s", percent(first), where, f.Inside.Coldest().In(u))
	if f.Whole != nil {
		text += fmt.Sprintf(" (glass %s, edge %s, frame %s)", percent(f.Sweats.Center), percent(f.Sweats.Edge), percent(f.Sweats.Frame))
	}
	switch {
	case humidity == 0:
	case humidity >= first:
		text += fmt.Sprintf("; at the %s of this house it does", percent(humidity))
	case f.Whole == nil:
		text += fmt.Sprintf("; at the %s of this house that stays dry, but glass and edge are colder than the mean", percent(humidity))
	default:
		text += fmt.Sprintf("; at the %s of this house it stays dry", percent(humidity))
	}
	return text
}

// orderedText says what to order.
func orderedText(p *house.Ordered, count int, u rvalue.Units) string {
	n := count * p.Lights
	text := fmt.Sprintf("%d of %s, width by height %s x %s", n, p.Glazing, inches(p.Width, u), inches(p.Height, u))
	if len(p.Glazing.Gaps) > 0 {
		text += fmt.Sprintf(", unit %.3g mm (%s) thick", p.Thickness.Millimetres(), nearestInch(p.Thickness, rvalue.IP))
	}
	if !p.Measured {
		text = "about " + text + " (a guess from the size of the window: measure three widths, three heights and both diagonals before you order)"
	} else {
		text += fmt.Sprintf(": the least of three readings each way, less %.1f mm all round", p.Clearance.Millimetres())
		if p.Skew > 0 {
			text += fmt.Sprintf(" and %.1f mm of the width, by which it is out of square", p.Skew.Millimetres())
		}
		if p.Spread > 0 {
			text += fmt.Sprintf("; the readings of one way differ by %.1f mm", p.Spread.Millimetres())
		}
	}
	text += fmt.Sprintf("; each %s, %.0f united inches", about(p.Mass.In(u)), p.UnitedInches)
	switch {
	case p.Lift:
		text += ", too heavy to carry: a lifting device"
	case p.People > 1:
		text += fmt.Sprintf(", %d people", p.People)
	default:
		text += ", one person"
	}
	if b := p.Blocks; b.Count > 0 {
		text += fmt.Sprintf("; on %d setting blocks of %s, at least %s wide, their middles %s from the corners", b.Count, nearestInch(b.Length, u), nearestInch(b.Width, u), nearestInch(b.From, u))
	}
	all := float64(n)
	tubes := window.Cartridges(rvalue.Volume(all * float64(p.Sealant)))
	return text + fmt.Sprintf("; for all of them bead %s, sealant round both faces %s, %s of 300 mL", byLength(rvalue.Length(all*float64(p.Bead)), u), byLength(rvalue.Length(all*float64(p.Seal)), u), cartridges(tubes))
}

// byLength prints a length that is bought by the foot or the metre.
func byLength(l rvalue.Length, u rvalue.Units) string {
	if u == rvalue.SI {
		return fmt.Sprintf("%.1f m", l.SI())
	}
	return fmt.Sprintf("%.1f ft", l.IP())
}

func cartridges(n int) string {
	if n == 1 {
		return "1 cartridge"
	}
	return fmt.Sprintf("%d cartridges", n)
}

// nearestInch prints a length to the nearest sixteenth of an inch or millimetre.
func nearestInch(l rvalue.Length, u rvalue.Units) string {
	if u == rvalue.SI {
		return inches(l+rvalue.Millimetre/2, u)
	}
	return inches(l+rvalue.Inch/32, u)
}

// inches prints a length of glass as its trade does, inches without feet, to the
// sixteenth below, so that what is ordered fits; or millimetres.
func inches(l rvalue.Length, u rvalue.Units) string {
	if u == rvalue.SI {
		return fmt.Sprintf("%.0f mm", math.Floor(l.Millimetres()+1e-6))
	}
	sixteenths := int(l.Inches()*16 + 1e-6)
	whole, part := sixteenths/16, sixteenths%16
	if part == 0 {
		return fmt.Sprintf("%d in", whole)
	}
	of := 16
	for part%2 == 0 {
		part, of = part/2, of/2
	}
	if whole == 0 {
		return fmt.Sprintf("%d/%d in", part, of)
	}
	return fmt.Sprintf("%d %d/%d in", whole, part, of)
}
