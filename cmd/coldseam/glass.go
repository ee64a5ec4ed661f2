package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/coldseam/coldseam/assembly/envelope"
	"github.com/coldseam/coldseam/assembly/window"
	"github.com/coldseam/coldseam/climate"
	"github.com/coldseam/coldseam/rvalue"
)

// glass tells what one glazing and the window around it let through, when it sweats,
// and what each step to better glass gains.
func glass(c command) error {
	if len(c.args) != 1 {
		return usageError{"glass wants one glazing in quotes, indoors first, such as 'glass 3 mm + air 12 mm + glass 3 mm'"}
	}
	g, remarks, err := window.Parse(c.args[0])
	if err != nil {
		return err
	}
	w := window.Window{Glazing: g, Operable: !c.is("fixed"), Width: 30 * rvalue.Inch, Height: 48 * rvalue.Inch}
	if v := c.text("size"); v != "" {
		if w.Width, w.Height, err = rvalue.ParseSize(v); err != nil {
			return usageError{"--size " + message(err)}
		}
	}
	if w.Frame, err = envelope.ParseFrame(c.text("frame")); err != nil {
		return usageError{"--frame " + message(err)}
	}
	if w.Spacer, err = window.ParseSpacer(c.text("spacer")); err != nil {
		return usageError{"--spacer " + message(err)}
	}
	conditions := window.Winter()
	for _, o := range []struct {
		name string
		to   *rvalue.Temperature
	}{{"indoors", &conditions.Indoors}, {"outdoors", &conditions.Outdoors}} {
		if v := c.text(o.name); v != "" {
			if *o.to, err = rvalue.ParseTemperature(v); err != nil {
				return usageError{fmt.Sprintf("--%s %s", o.name, message(err))}
			}
		}
	}
	if v := c.text("wind"); v != "" {
		if conditions.Wind, err = rvalue.ParseSpeed(v); err != nil {
			return usageError{"--wind " + message(err)}
		}
		if conditions.Wind == 0 {
			return usageError{"--wind 0: the outer film is that of moving air; write such as '1 mph', or leave it out for 15 mph"}
		}
	}
	if v := c.text("tilt"); v != "" {
		if conditions.Tilt, err = window.ParseTilt(v); err != nil {
			return usageError{"--tilt " + message(err)}
		}
	}
	s, err := solveGlass(w, conditions)
	if err != nil {
		return err
	}
	s.frame = c.text("frame")
	for _, m := range remarks {
		s.remarks = append(s.remarks, warning{Code: m.Code, Text: m.Text})
	}
	if c.is("json") {
		return writeJSON(c.stdout, s.object(c.args[0]))
	}
	s.print(c.stdout, c.units)
	return nil
}

// glassAnswer is all that glass computes.
type glassAnswer struct {
	frame      string // as asked for
	window     window.Window
	conditions window.Conditions
	whole      window.Whole
	solved     window.Solved
	inside     window.Inside
	upright    rvalue.Transmittance // of the whole, 0 if it is
	declared   window.Center        // EN 673 at that tilt
	iso        window.Whole         // ISO 10077-1
	steps      []glassStep
	best       []bestGap
	failed     *rvalue.Transmittance // the whole with its seals failed
	corroded   *rvalue.Transmittance // and its coatings gone with them
	solar      *window.Solar
	remarks    []warning
}

type glassStep struct {
	window.Step
	sweats float64 // relative humidity of the room
	where  string  // the coldest face
}

type bestGap struct {
	gap   int
	width rvalue.Length
	u     rvalue.Transmittance // centre of glass with it
	limit bool                 // of what was tried
}

func solveGlass(w window.Window, c window.Conditions) (*glassAnswer, error) {
	s := &glassAnswer{window: w, conditions: c}
	var err error
	if s.whole, s.solved, err = w.Design(c); err != nil {
		return nil, err
	}
	if s.inside, err = w.Faces(c); err != nil {
		return nil, err
	}
	if s.declared, err = w.Glazing.Declared(window.EN673, c.Tilt); err != nil {
		return nil, err
	}
	if s.iso, err = w.Declared(window.EN673, c.Tilt); err != nil {
		return nil, err
	}
	if c.Tilt != window.Upright {
		up := c
		up.Tilt = window.Upright
		whole, _, err := w.Design(up)
		if err != nil {
			return nil, err
		}
		s.upright = whole.U
	}
	steps, err := w.Steps(c)
	if err != nil {
		return nil, err
	}
	for _, step := range steps {
		rh, where, err := sweatsFirst(step.Window, c)
		if err != nil {
			return nil, err
		}
		s.steps = append(s.steps, glassStep{step, rh, where})
	}
	for i, gap := range w.Glazing.Gaps {
		if gap.Kind != window.Filled || w.Glazing.Panes[i].Storm || w.Glazing.Panes[i+1].Storm {
			continue
		}
		best, err := w.Glazing.BestGap(i, c)
		if err != nil {
			return nil, err
		}
		s.best = append(s.best, bestGap{i, best.Width, best.U, best.AtLimit})
	}
	if failed := w.Glazing.SealFailed(); failed.String() != w.Glazing.String() {
		w.Glazing = failed
		whole, _, err := w.Design(c)
		if err != nil {
			return nil, err
		}
		s.failed = &whole.U
		if lost := failed.CoatingsLost(); lost.String() != failed.String() {
			w.Glazing = lost
			whole, _, err := w.Design(c)
			if err != nil {
				return nil, err
			}
			s.corroded = &whole.U
		}
	}
	if solar, ok := s.window.Glazing.Solar(); ok {
		s.solar = &solar
	}
	return s, nil
}

// sweatsFirst returns the relative humidity of the room at which the coldest face of a
// window sweats, at sea level, and which face it is.
func sweatsFirst(w window.Window, c window.Conditions) (humidity float64, where string, err error) {
	faces, err := w.Faces(c)
	if err != nil {
		return 0, "", err
	}
	where = "glass"
	switch coldest := faces.Coldest(); {
	case coldest < faces.Center && coldest == faces.Edge:
		where = "edge"
	case coldest < faces.Center:
		where = "frame"
	}
	if faces.Coldest() >= c.Indoors {
		return 1, where, nil
	}
	air, err := climate.AirOfDewPoint(c.Indoors, faces.Coldest(), climate.SeaLevel)
	if err != nil {
		return 0, "", err
	}
	return air.RelativeHumidity(), where, nil
}

func (s *glassAnswer) print(w io.Writer, u rvalue.Units) {
	win, c := &s.window, s.conditions
	opens := "opens"
	if !win.Operable {
		opens = "fixed"
	}
	fmt.Fprintf(w, "%s\n", win.Glazing)
	fmt.Fprintf(w, "indoors first, %s thick; %s frame, %s, %s x %s\n", win.Glazing.Thickness().In(u), frameText(s), opens, inches(win.Width, u), inches(win.Height, u))
	fmt.Fprintf(w, "%s inside, %s outside, wind %s, tilt %g° (90° is upright)\n\n", c.Indoors.In(u), c.Outdoors.In(u), windOf(c).In(u), c.Tilt)

	all := float64(s.whole.Center + s.whole.Edge + s.whole.Frame)
	part := func(ua rvalue.Conductance) string { return percent(float64(ua) / all) }
	wrap(w, "whole window:    ", fmt.Sprintf("%s; %s of its heat goes by the glass, %s by its edge, %s by the frame", s.whole.U.In(u), part(s.whole.Center), part(s.whole.Edge), part(s.whole.Frame)), textWidth)
	if s.upright > 0 {
		wrap(w, "upright:         ", fmt.Sprintf("%s; the tilt makes it %+.0f %%", s.upright.In(u), 100*(float64(s.whole.U)/float64(s.upright)-1)), textWidth)
	}
	wrap(w, "centre of glass: ", fmt.Sprintf("%s here; %s as declared by EN 673, %s for the whole window by ISO 10077-1", s.solved.U.In(u), s.declared.U.In(u), s.iso.U.In(u)), textWidth)
	faces := s.inside
	middle := ""
	if faces.Coldest() < faces.Center {
		middle = ", " + faces.Center.In(u) + " at the middle of the glass"
	}
	wrap(w, "coldest inside:  ", fmt.Sprintf("%s at the %s%s; it sweats once the room's air has %s humidity", faces.Coldest().In(u), s.steps[0].where, middle, percent(s.steps[0].sweats)), textWidth)
	if s.solar != nil {
		wrap(w, "sun let in:      ", solarText(s.solar), textWidth)
	}
	for _, b := range s.best {
		text := fmt.Sprintf("%s between panes %d and %d, with %s at the centre of glass", inches(b.width, u), b.gap+1, b.gap+2, b.u.In(u))
		if b.limit {
			text += ", the widest or narrowest that was tried"
		}
		wrap(w, "best gap:        ", text, textWidth)
	}
	if s.failed != nil {
		text := fmt.Sprintf("%s, with air in place of what filled it", s.failed.In(u))
		if s.corroded != nil {
			text += fmt.Sprintf("; %s once its coatings have corroded too", s.corroded.In(u))
		}
		wrap(w, "seal failed:     ", text, textWidth)
	}

	if len(s.steps) > 1 {
		fmt.Fprintln(w)
		stepsText(w, s.steps, u)
	}
	fmt.Fprintln(w)
	for _, m := range s.remarks {
		wrap(w, "· ", m.Text, textWidth)
	}
	wrap(w, "· ", "no sun, and no draft: a loose sash may lose more by air than by its glass", textWidth)
	wrap(w, "· ", "sources: glass by ISO 15099 from memory, edge and frame by ASHRAE Handbook—Fundamentals from memory, each checked against printed tables (testdata/window_SCORE.md)", textWidth)
	for _, text := range glassCautions {
		wrap(w, "! ", text, textWidth)
	}
}

// frameText names the frame as asked for, and as what it is computed where that is
// another.
func frameText(s *glassAnswer) string {
	if name := s.window.Frame.String(); !strings.EqualFold(name, s.frame) {
		return fmt.Sprintf("%s (computed as %s)", s.frame, name)
	}
	return s.frame
}

// stepsText prints what can be done to a window, each step under the one it builds on.
func stepsText(w io.Writer, steps []glassStep, u rvalue.Units) {
	stepsTable(w, "", steps, u)
	unit := map[rvalue.Units]string{rvalue.IP: "Btu/(h·ft²·°F)", rvalue.SI: "W/(m²·K)"}[u]
	wrap(w, "", "U and what it gains over the step before, in "+unit+"; saves: of the window's heat as it is; a step with dots is on top of the one above it; sweats from: humidity of the room, and where first", textWidth)
}

func stepsTable(w io.Writer, indent string, steps []glassStep, u rvalue.Units) {
	depth := make([]int, len(steps))
	t := table{right: []bool{false, true, true, true, true}}
	t.row(indent+"step", "U", "gains", "saves", "sweats from")
	for i, s := range steps {
		name := s.Name
		gains, saves := "", ""
		if s.From >= 0 {
			depth[i] = depth[s.From] + 1
			for range depth[i] - 1 {
				name = "· " + name
			}
			gains, saves = figure(s.Gain, u), percent(s.Saved)
		}
		t.row(indent+name, figure(s.Whole.U, u), gains, saves, fmt.Sprintf("%s (%s)", percent(s.sweats), s.where))
	}
	t.print(w)
	var what []string
	for _, s := range steps {
		if s.What != "" {
			what = append(what, s.Name+": "+s.What)
		}
	}
	wrap(w, indent, strings.Join(what, "; "), textWidth)
}

// glassCautions are those for work on windows.
var glassCautions = []string{
	"Glass cuts: gloves, glasses, long sleeves; two people for a large pane, and no wind. Ladders tip: never lean on glass.",
	"Paint from before 1978 may hold lead, old putty asbestos: test before you scrape or sand.",
	"Close the opening the same day, or have a board cut to size and ready before you take the old glass out.",
	"Thickness against wind, size and anyone who leans or walks on it is for the glass shop to check.",
	"Sealant that smells of vinegar eats the seal of a double unit. Local codes and licensed trades decide.",
}

func solarText(s *window.Solar) string {
	if s.Low == s.High {
		return fmt.Sprintf("%.2f of it at the centre of glass (%s)", s.Low, s.Source)
	}
	return fmt.Sprintf("%.2f to %.2f of it at the centre of glass (%s)", s.Low, s.High, s.Source)
}

func windOf(c window.Conditions) rvalue.Speed {
	if c.Wind == 0 {
		return 15 * rvalue.MilePerHour
	}
	return c.Wind
}
