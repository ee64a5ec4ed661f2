package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"path/filepath"
	"slices"
	"strings"
	"unicode"

	"github.com/coldseam/coldseam/assembly/house"
	"github.com/coldseam/coldseam/assembly/section"
)

// sectionOf solves a drawn section, one of our own, or every framed assembly of a house.
func sectionOf(c command) error {
	if len(c.args) != 1 {
		return usageError{"section wants one file, a drawn section or a house, or one of our own such as 'rim joist, 2x6'"}
	}
	s := solving{command: c, picture: c.text("picture")}
	if err := s.picturing(); err != nil {
		return err
	}
	junction := house.Junction(c.args[0])
	if _, err := os.Stat(c.args[0]); err == nil {
		junction = nil // a file goes before a name of ours
	}
	var name string
	var data []byte
	if junction == nil {
		var err error
		if name, data, err = readHouse(c); err != nil {
			return err
		}
	}
	var stop context.CancelFunc
	s.context, stop = signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	context.AfterFunc(s.context, stop) // so that a second interrupt ends the program at once
	switch {
	case junction != nil:
		return s.answer(junction.Name, junction)
	case house.IsDrawing(data):
		return s.drawing(name, data)
	case empty(data):
		_, err := house.DecodeDrawing(name, data)
		return fmt.Errorf("%w\nor a house file: coldseam rank without a file shows one at work", err)
	}
	return s.house(name, data)
}

// empty reports whether a file says nothing but comments.
func empty(data []byte) bool {
	for line := range bytes.Lines(bytes.TrimPrefix(data, []byte("\ufeff"))) {
		if line = bytes.TrimSpace(line); len(line) > 0 && line[0] != '#' {
			return false
		}
	}
	return true
}

// solving is one run of section.
type solving struct {
	command
	context context.Context
	picture string   // the file to draw to, "" for none
	drawn   []string // the files of a house
}

func (s *solving) drawing(name string, data []byte) error {
	d, err := house.DecodeDrawing(name, data)
	if err != nil {
		return err
	}
	if !s.asked {
		s.units = d.Units
	}
	return s.answer(name, d)
}

// answer solves one section and prints it.
func (s *solving) answer(name string, d *house.Drawing) error {
	if s.picture != "" {
		if err := s.free(s.picture); err != nil {
			return err
		}
	}
	out, err := s.solve(d, s.picture)
	if err != nil {
		return s.told(name, err)
	}
	if s.is("json") {
		return writeJSON(s.stdout, out.object())
	}
	out.print(s.stdout, s.units)
	return nil
}

// solve solves a drawn section and draws its picture to a file, if there is one.
func (s *solving) solve(d *house.Drawing, file string) (*drawnAnswer, error) {
	r, err := d.Solve(section.Options{Watch: s.watch(d.Name)})
	if err := s.end(err); err != nil {
		return nil, err
	}
	out := &drawnAnswer{drawing: d, result: r, picture: file}
	if out.damp, err = dampOf(d, r); err != nil {
		return nil, err
	}
	if file != "" {
		err = draw(file, r.SVG(s.units))
	}
	return out, err
}

func (s *solving) house(name string, data []byte) error {
	h, err := house.Decode(name, data)
	if err != nil {
		return err
	}
	if !s.asked {
		s.units = h.Units
	}
	framed, err := h.Framed()
	if err != nil {
		return s.told(name, err)
	}
	var answers []*framedAnswer
	for _, f := range framed {
		a := &framedAnswer{Framed: f}
		if s.picture != "" && f.Bay != nil && f.Refused == nil {
			a.picture = s.fileFor(f.Assembly.Name)
		}
		answers = append(answers, a)
	}
	files := make([]string, len(h.Sections)) // of their pictures
	for i, d := range h.Sections {
		if s.picture != "" {
			files[i] = s.fileFor(d.Name)
		}
	}
	for _, file := range s.drawn { // before the work, not after it
		if err := s.free(file); err != nil {
			return err
		}
	}
	for _, a := range answers {
		if err := s.framed(a); err != nil {
			return s.told(name, within(fmt.Sprintf("assembly %q", a.Assembly.Name), err))
		}
	}
	var drawn []*drawnAnswer
	for i, d := range h.Sections {
		a, err := s.solve(d, files[i])
		if err != nil {
			return s.told(name, within(fmt.Sprintf("section %q", d.Name), err))
		}
		drawn = append(drawn, a)
	}
	if s.is("json") {
		return writeJSON(s.stdout, framedObject(h, answers, drawn))
	}
	wrap(s.stdout, "", fmt.Sprintf("the framed assemblies of %s, solved in their sections", h.Name), textWidth)
	wrap(s.stdout, "", solvedOnly+".", textWidth)
	if len(answers) == 0 {
		fmt.Fprintln(s.stdout, "\nno assembly of it has members, so that all methods agree")
	}
	for _, a := range answers {
		fmt.Fprintln(s.stdout)
		a.print(s.stdout, s.units)
	}
	for _, a := range drawn {
		fmt.Fprintln(s.stdout)
		a.print(s.stdout, s.units)
	}
	return nil
}

// framed solves one assembly, flat or in space.
func (s *solving) framed(a *framedAnswer) error {
	if a.Refused != nil {
		return nil
	}
	watch := s.watch(a.Assembly.Name)
	if a.Block != nil {
		r, err := a.Block.Solid.Solve(section.SolidOptions{Watch: watch})
		if err := s.end(err); err != nil {
			return err
		}
		l, low, high := r.Coupling()
		a.r, a.low, a.high = l.Over(a.Block.Area).R(), high.Over(a.Block.Area).R(), low.Over(a.Block.Area).R()
		room := r.Rooms[r.Coldest]
		a.coldest, a.factor, a.unknowns, a.balance = room.Coldest.Temperature, room.Factor, r.Unknowns, r.Balance
		a.remarks = append(a.remarks, r.Remarks...)
		if s.picture != "" {
			a.remarks = append(a.remarks, section.Remark{Code: "picture", Text: "members that cross fill a space, of which no flat picture is drawn"})
		}
		return nil
	}
	r, err := a.Bay.Section.Solve(section.Options{Watch: watch})
	if err := s.end(err); err != nil {
		return err
	}
	l, low, high := r.Coupling()
	a.r, a.low, a.high = l.Over(a.Bay.Width).R(), high.Over(a.Bay.Width).R(), low.Over(a.Bay.Width).R()
	face := r.Flows[r.Coldest]
	a.coldest, a.factor, a.unknowns, a.balance = face.Coldest.Temperature, face.Factor, r.Unknowns, r.Balance
	a.remarks = append(a.remarks, r.Remarks...)
	if a.picture != "" {
		return draw(a.picture, r.SVG(s.units))
	}
	return nil
}

// fileFor is the picture's file with a name in it, each another.
func (s *solving) fileFor(name string) string {
	ext := filepath.Ext(s.picture)
	plain := strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) {
			return r
		}
		return '-'
	}, name)
	stem := strings.TrimSuffix(s.picture, ext) + "-" + plain
	file := stem + ext
	for n := 2; slices.Contains(s.drawn, file); n++ {
		file = fmt.Sprintf("%s-%d%s", stem, n, ext)
	}
	s.drawn = append(s.drawn, file)
	return file
}

// watch shows how far a long solution is, if there is a terminal to show it on, and
// ends it on an interrupt.
func (s *solving) watch(name string) func(section.Progress) bool {
	show := isTerminal(s.stderr)
	return func(p section.Progress) bool {
		if show {
			fmt.Fprintf(s.stderr, "\r\x1b[K%s: %d unknowns, within %.2g %%", harmless(short(name, nameWidth)), p.Unknowns, 100*p.Error)
		}
		return s.context.Err() == nil
	}
}

// end wipes the progress away, and tells an interrupt from an end.
func (s *solving) end(err error) error {
	if isTerminal(s.stderr) {
		fmt.Fprint(s.stderr, "\r\x1b[K")
	}
	if err == nil && s.context.Err() != nil {
		return errors.New("section: stopped before it was done")
	}
	return err
}

func isTerminal(w io.Writer) bool {
	f, ok := w.(*os.File)
	if !ok {
		return false
	}
	info, err := f.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}

// within says of which thing in the file an error is.
func within(what string, err error) error {
	var other notOfInput
	if errors.As(err, &other) {
		return err
	}
	return fmt.Errorf("%s: %s", what, message(err))
}

// told puts the file's name before an error that does not say its place itself.
func (s *solving) told(name string, err error) error {
	var placed house.Errors
	var other notOfInput
	if errors.As(err, &placed) || errors.As(err, &other) {
		return err
	}
	text := err.Error()
	for _, pkg := range []string{"house: ", "section: "} {
		text = strings.TrimPrefix(text, pkg)
	}
	return fmt.Errorf("%s: %s", name, text)
}
