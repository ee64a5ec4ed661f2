package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"

	"github.com/coldseam/coldseam/assembly/envelope"
	"github.com/coldseam/coldseam/assembly/house"
	"github.com/coldseam/coldseam/examples"
	"github.com/coldseam/coldseam/rvalue"
)

// rank ranks the parts of a house.
func rank(c command) error {
	name, data, err := readHouse(c)
	if err != nil {
		return err
	}
	r, u, err := rankHouse(c, name, data)
	if err != nil {
		return err
	}
	if c.is("json") {
		out, err := rankObject(r, name, len(c.args) == 0)
		if err != nil {
			return err
		}
		return writeJSON(c.stdout, out)
	}
	if len(c.args) == 0 {
		fmt.Fprintf(c.stdout, builtIn+", %s\n\n", name)
	}
	if err := rankText(c.stdout, r, u); err != nil {
		return err
	}
	if c.is("sources") {
		sourcesText(c.stdout, r, u)
	}
	return nil
}

// rankHouse ranks a house file, and tells the units to print in.
func rankHouse(c command, name string, data []byte) (*house.Report, rvalue.Units, error) {
	h, err := house.Decoder{Numeric: c.is("numeric")}.Decode(name, data)
	if err != nil {
		return nil, 0, err
	}
	r, err := h.Rank()
	var placed house.Errors
	switch {
	case errors.As(err, &placed):
		return nil, 0, err
	case err != nil:
		text := err.Error()
		for _, pkg := range []string{"house: ", "season: ", "envelope: "} {
			text = strings.TrimPrefix(text, pkg)
		}
		return nil, 0, fmt.Errorf("%s: %s", name, text)
	case !c.asked:
		return r, h.Units, nil
	}
	return r, c.units, nil
}

const builtIn = "no house file was given, so this is the built-in example"

// readHouse reads the house file that the arguments name.
func readHouse(c command) (name string, data []byte, err error) {
	switch {
	case len(c.args) == 0:
		return examples.HouseName, examples.House, nil
	case len(c.args) > 1:
		return "", nil, usageError{fmt.Sprintf("%s wants one house file, not %d", c.name, len(c.args))}
	case c.args[0] == "-":
		data, err = io.ReadAll(io.LimitReader(c.stdin, readLimit))
		return "standard input", data, err
	}
	name = c.args[0]
	f, err := os.Open(name)
	if errors.Is(err, os.ErrNotExist) {
		if c.name == "section" { // has no example of its own
			return "", nil, fmt.Errorf("there is no file %s, and no section of our own of that name (%s); coldseam schema section says what a drawing may hold", name, strings.Join(house.Junctions(), "; "))
		}
		return "", nil, fmt.Errorf("there is no file %s; coldseam %s without a file shows the built-in example", name, c.name)
	}
	if err != nil {
		return "", nil, err
	}
	defer f.Close()
	if info, err := f.Stat(); err == nil && info.IsDir() {
		return "", nil, fmt.Errorf("%s is a directory, a house file is wanted", name)
	}
	data, err = io.ReadAll(io.LimitReader(f, readLimit))
	return name, data, err
}

// readLimit is beyond what the decoder accepts, so that it can say so.
const readLimit = 2 << 20

const textWidth = 100

func rankText(w io.Writer, r *house.Report, u rvalue.Units) error {
	h, k := r.House, r.Ranking
	fmt.Fprintln(w, h.Name)
	fmt.Fprintf(w, "zone %s; what is asked is that of %s; %s inside, %s outside\n\n", h.Zone, h.Edition, h.Indoors.Temperature.In(u), h.Outdoors.Temperature.In(u))

	t := table{right: []bool{false, true, false, true, true, true, true, true, true, true, true}}
	t.row(append([]string{"part", "share", "", "area", "R", "U", "UA", "per size", "behind"}, yearHeads(r.Season, u)...)...)
	buffered := false
	for i := range k.Rows {
		row := &k.Rows[i]
		name := row.Name
		if row.In != "" && shared(k.Rows, i) {
			name += ", in " + row.In
		}
		name = apart(name, k.Rows, nameWidth)
		if row.Factor < 1 {
			name += fmt.Sprintf(" *%.2f", row.Factor)
			buffered = true
		}
		area, res, tr, size := "", "", "", ""
		if row.Area > 0 {
			area, res, tr, size = figure(row.Area, u), figure(row.R(), u), figure(row.U, u), fmt.Sprintf("×%.1f", row.Intensity)
		}
		t.row(append([]string{name, percent(row.Share), bar(row.Share, 20), area, res, tr, figure(row.UA, u), size, behind(row, u)}, yearOf(r.Season, i, u)...)...)
	}
	t.row(append([]string{"the whole", "100 %", "", figure(k.Total.Area, u), "", figure(k.Total.U, u), figure(k.Total.UA, u), "", figure(k.Total.Behind, u)}, yearOf(r.Season, -1, u)...)...)
	t.print(w)
	fmt.Fprintln(w)
	wrap(w, "", map[rvalue.Units]string{
		rvalue.IP: "area in ft², R in h·ft²·°F/Btu, U in Btu/(h·ft²·°F), UA and behind in Btu/(h·°F); ",
		rvalue.SI: "area in m², R in m²·K/W, U in W/(m²·K), UA and behind in W/K; ",
	}[u]+"per size: U over the mean U of what has an area; behind: the UA that would go away if the part alone just met what its zone asks, or if all did (met: nothing, -: nothing is asked)"+yearLegend(r.Season, u)+".", textWidth)
	if buffered {
		wrap(w, "*", "the part faces an unheated space, which is warmer than outdoors: UA and per size count so much of its U.", textWidth)
	}
	fmt.Fprintln(w)

	weakest := &k.Rows[k.Weakest.Row]
	steps, err := r.Order()
	if err != nil {
		return err
	}
	wrap(w, "weakest link:           ", weakestText(r, steps, u), textWidth)
	wrap(w, "loses most:             ", fmt.Sprintf("%s, %s of the heat", k.Rows[k.LosesMost].Name, percent(k.Rows[k.LosesMost].Share)), textWidth)
	if k.Leakiest >= 0 {
		row := &k.Rows[k.Leakiest]
		wrap(w, "leakiest for its size:  ", fmt.Sprintf("%s, %.1f times the mean", row.Name, row.Intensity), textWidth)
	}
	if weakest.Target.Text != "" {
		wrap(w, "what is asked of it:    ", asked(weakest, u), textWidth)
	}

	orderText(w, r, steps, u)
	seasonText(w, r, u)
	if len(r.Defaults) > 0 {
		fmt.Fprintln(w, "\nfilled in, since the file does not say:")
		for _, d := range r.Defaults {
			wrap(w, "· ", fmt.Sprintf("%s = %s (%s)", d.Key, d.Value, d.Why), textWidth)
		}
	}
	all := slices.Clone(r.Remarks)
	if r.Season != nil {
		for _, m := range r.Season.Year.Remarks {
			all = append(all, house.Remark{Code: m.Code, Text: m.Text})
		}
		if r.Season.Weather != nil {
			for _, text := range r.Season.Weather.Remarks(u) {
				all = append(all, house.Remark{Code: "weather", Text: text})
			}
		}
	}
	exceptions, remarks := parted(all, func(m house.Remark) bool { return m.Code == "code-exception" })
	for _, group := range []struct {
		head    string
		remarks []house.Remark
	}{
		{"exceptions of the code that nothing here claims:", exceptions},
		{"remarks:", remarks},
	} {
		if len(group.remarks) > 0 {
			fmt.Fprintln(w, "\n"+group.head)
		}
		for _, text := range together(group.remarks) {
			wrap(w, "· ", text, textWidth)
		}
	}
	fmt.Fprintln(w)
	for _, line := range cautions(r) {
		wrap(w, "! ", line, textWidth)
	}
	return nil
}

// orderText says what to work on, in the order of what would go away.
func orderText(w io.Writer, r *house.Report, steps []house.Step, u rvalue.Units) {
	if len(steps) == 0 {
		return
	}
	fmt.Fprintln(w, "\nin this order, by what would go away if each make just met what is asked (costs are not counted):")
	for i, s := range steps {
		text := s.Make
		if len(s.Parts) > 1 || s.Parts[0] != s.Make {
			text += " (" + strings.Join(s.Parts, ", ") + ")"
		}
		text += fmt.Sprintf(": %s, %s of all heat", about(s.Behind.In(u)), percent(s.Share))
		if s.Saving != nil {
			text += fmt.Sprintf(", %s of heat", heatCellText(s.Saving.Heating.Heat, u))
			if r.Season.Fuel && r.Season.Year.MoneyKnown {
				text += fmt.Sprintf(" or %s", money(s.Saving.Money, r.Season.Year.Currency))
			}
			text += " a year"
		}
		wrap(w, fmt.Sprintf("%2d. ", i+1), text, textWidth)
	}
}

// parted parts a list in two, each in its order.
func parted[T any](list []T, is func(T) bool) (yes, no []T) {
	for _, v := range list {
		if is(v) {
			yes = append(yes, v)
		} else {
			no = append(no, v)
		}
	}
	return yes, no
}

// together joins remarks of one text, naming all that they are about.
func together(remarks []house.Remark) []string {
	about := map[string][]string{}
	var texts []string
	for _, m := range remarks {
		if _, ok := about[m.Text]; !ok {
			texts = append(texts, m.Text)
			about[m.Text] = nil
		}
		if m.About != "" && !slices.Contains(about[m.Text], m.About) {
			about[m.Text] = append(about[m.Text], m.About)
		}
	}
	for i, text := range texts {
		if names := about[text]; len(names) > 0 {
			texts[i] = strings.Join(names, ", ") + ": " + text
		}
	}
	return texts
}

// asked says what is asked of a row. The code's own text is in inch-pound.
func asked(row *envelope.Row, u rvalue.Units) string {
	text := strings.TrimPrefix(row.Target.Text, "asked: ")
	if u == rvalue.SI && row.Target.U > 0 {
		text += fmt.Sprintf(" (%s, at most %s)", row.U.In(u), row.Target.U.In(u))
	}
	return text
}

// nameWidth is where long names are cut, so that the table fits a screen.
const nameWidth = 23

// shared reports whether another row has the name of the i-th.
func shared(rows []envelope.Row, i int) bool {
	for j := range rows {
		if j != i && rows[j].Name == rows[i].Name {
			return true
		}
	}
	return false
}

// apart cuts a long name as short does, but in its middle where another row would look
// the same.
func apart(name string, rows []envelope.Row, most int) string {
	cut := short(name, most)
	for i := range rows {
		if rows[i].Name != name && cut != name && short(rows[i].Name, most) == cut {
			r := []rune(name)
			tail := most / 3
			return string(r[:most-1-tail]) + "…" + string(r[len(r)-tail:])
		}
	}
	return cut
}

func short(name string, most int) string {
	if r := []rune(name); len(r) > most {
		return string(r[:most-1]) + "…"
	}
	return name
}

func behind(row *envelope.Row, u rvalue.Units) string {
	switch {
	case row.Behind > 0:
		return figure(row.Behind, u)
	case row.Target.Met:
		return "met"
	}
	return "-"
}

func weakestText(r *house.Report, steps []house.Step, u rvalue.Units) string {
	k := r.Ranking
	row := &k.Rows[k.Weakest.Row]
	text := row.Name
	if row.Behind > 0 {
		text += fmt.Sprintf(", of all parts the furthest behind: %s above what is asked, %s of the whole house's heat", about(row.Behind.In(u)), percent(float64(row.Behind)/float64(k.Total.UA)))
	} else {
		text += ", which " + k.Weakest.Why
	}
	if k.Weakest.Piece != "" {
		verb := "most of its heat goes by"
		if k.Weakest.PieceLayer {
			verb = "most of what it resists is"
		}
		text += fmt.Sprintf("; inside it, %s (%s): %s", verb, percent(k.Weakest.PieceShare), k.Weakest.Piece)
	}
	if len(steps) > 0 && steps[0].Behind > row.Behind && !slices.Contains(steps[0].Rows, k.Weakest.Row) {
		text += fmt.Sprintf("; %s, in %d parts, is further behind when these are taken together, see the order below", steps[0].Make, len(steps[0].Parts))
	}
	return text
}

// cautions are the usual ones where a result leads someone to work that can
// hurt.
func cautions(r *house.Report) []string {
	out := []string{"Local codes and licensed trades decide. A house made tighter needs its combustion appliances tested for draft and carbon monoxide, and its damp air let out."}
	glass := false
	for _, row := range r.Ranking.Rows {
		glass = glass || row.Kind == envelope.Window || row.Kind == envelope.Skylight
	}
	if glass {
		out = append(out, "Glass cuts and ladders tip: gloves, glasses, two people for a large pane, never lean on glass.")
	}
	return append(out, "Before 1978 paint may hold lead, and old board, siding and vermiculite asbestos: test before you cut, sand or pull. Old knob-and-tube wiring must not be buried in insulation.")
}

// schema prints the JSON Schema of the house file.
func schema(c command) error {
	text := house.Schema()
	switch {
	case len(c.args) == 0:
	case len(c.args) == 1 && c.args[0] == "section":
		text = house.DrawingSchema()
	default:
		return usageError{fmt.Sprintf("schema %s: leave it out for the house file, or write section", strings.Join(c.args, " "))}
	}
	_, err := c.stdout.Write(text)
	return err
}
