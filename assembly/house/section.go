package house

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/rvalue"
)

// section is one table being read. What is asked of it becomes the list of its
// keys; done refuses the others.
type section struct {
	d     *decoder
	t     *table
	where string // how messages name the table: `part "street wall"`; empty at the top
	known []string
}

func (s *section) path(key string) string {
	switch {
	case s.where == "":
		return key
	case strings.HasSuffix(s.where, "."):
		return s.where + key
	}
	return s.where + ": " + key
}

// get returns the entry of a key, nil if it is not there or unreadable.
func (s *section) get(key string) *entry {
	if !slices.Contains(s.known, key) {
		s.known = append(s.known, key)
	}
	e := s.t.index[key]
	if e == nil || e.value.kind == broken {
		return nil
	}
	return e
}

// has reports whether a key is written, be it unreadable. It does not count as
// asking for it.
func (s *section) has(key string) bool { return s.t.index[key] != nil }

// at returns where to point for a key: its value, else the table.
func (s *section) at(key string) int {
	if e := s.t.index[key]; e != nil {
		return e.value.at
	}
	return s.t.at
}

// fail reports a mistake in the value of a key.
func (s *section) fail(key, format string, args ...any) {
	s.d.fail(s.at(key), s.path(key), format, args...)
}

// missing reports a key that must be there. Where lines of the table could not
// be read it may stand in one of them.
func (s *section) missing(key, format string, args ...any) {
	if !s.t.partial && !s.has(key) {
		s.d.fail(s.t.at, strings.TrimSuffix(s.where, "."), format, args...)
	}
}

// done refuses every key that was not asked for.
func (s *section) done() {
	for _, e := range s.t.entries {
		if slices.Contains(s.known, e.key) {
			continue
		}
		msg := fmt.Sprintf("unknown key %q", e.key)
		if near := nearest(e.key, s.known); near != "" {
			msg += fmt.Sprintf("; did you mean %s?", near)
		} else {
			msg += "; here you can write " + list(s.known)
		}
		s.d.fail(e.at, strings.TrimSuffix(s.where, "."), "%s", msg)
	}
}

// text returns a text that is not blank.
func (s *section) text(key string) (string, bool) {
	e := s.get(key)
	if e == nil {
		return "", false
	}
	switch {
	case e.value.kind != text:
		s.fail(key, "%s, not a text; write it in quotes", e.value.is())
	case strings.TrimSpace(e.value.text) == "":
		s.fail(key, "an empty text; write something or leave the key out")
	case strings.ContainsFunc(e.value.text, func(r rune) bool { return controls(r) && r != '\t' && r != '\n' && r != '\r' }):
		s.fail(key, "a control character in %q; write plain text", e.value.text)
	default:
		return e.value.text, true
	}
	return "", false
}

// controls reports whether a character commands whoever prints it: a terminal, or the
// direction of the line.
func controls(r rune) bool { return unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r) }

// is says in words what a value is.
func (n *node) is() string {
	switch n.kind {
	case text:
		return fmt.Sprintf("the text %q", n.text)
	case integer, float:
		return "the number " + n.raw
	case boolean:
		return n.raw
	case date:
		return "the date " + n.raw
	case array, headedList:
		return "a list"
	}
	return "a table"
}

// quantity returns a text with a number and a unit as parse reads it. like is a
// value that would do.
func quantity[T ~float64](s *section, key, like string, parse func(string) (T, error)) (T, bool) {
	e := s.get(key)
	if e == nil {
		return 0, false
	}
	switch e.value.kind {
	case text:
		v, err := parse(e.value.text)
		if err == nil {
			return v, true
		}
		s.textError(key, err)
	case integer, float:
		s.fail(key, "%s without a unit; write it with its unit, in quotes: %s = %q", e.value.raw, key, withUnit(e.value.raw, like))
	default:
		s.fail(key, "%s; write a number with its unit, in quotes: %s = %q", e.value.is(), key, like)
	}
	return 0, false
}

// withUnit puts a number in the place of an example's.
func withUnit(number, like string) string {
	i := strings.LastIndexByte(like, ' ')
	if strings.Contains(like, " x ") {
		return number + " ft2"
	}
	if strings.HasPrefix(like, "U-") || strings.HasPrefix(like, "R-") {
		return like[:2] + number
	}
	if i < 0 {
		return like
	}
	return number + like[i:]
}

// textError reports an error in a text, at the character if the error knows it.
func (s *section) textError(key string, err error) {
	v := s.t.index[key].value
	at := v.at
	var q *rvalue.ParseError
	msg := plain(err)
	var syntax *assembly.SyntaxError
	if errors.As(err, &syntax) {
		s.d.fail(v.offset(syntax.Offset), s.path(key), "%s", syntax.Msg)
		return
	}
	if errors.As(err, &q) {
		at, msg = v.offset(q.Offset), q.Msg
		if text := quoted(v.text); !strings.HasPrefix(msg, text) {
			msg = text + ": " + msg
		}
	}
	s.d.fail(at, s.path(key), "%s", msg)
}

// plain drops the name of the package that an error comes from.
func plain(err error) string {
	pkg, rest, ok := strings.Cut(err.Error(), ": ")
	if ok && slices.Contains([]string{"rvalue", "material", "section", "surface", "airspace", "assembly", "envelope", "target", "season", "window", "climate"}, pkg) {
		return rest
	}
	return err.Error()
}

// number returns a plain number in [low, high].
func (s *section) number(key string, low, high float64) (float64, bool) {
	e := s.get(key)
	if e == nil {
		return 0, false
	}
	v, err := strconv.ParseFloat(strings.ReplaceAll(e.value.raw, "_", ""), 64)
	switch {
	case e.value.kind == text:
		s.fail(key, "%s; write a plain number without quotes", e.value.is())
	case e.value.kind != integer && e.value.kind != float || err != nil:
		s.fail(key, "%s; write a plain number", e.value.is())
	case math.IsNaN(v) || v < low || v > high:
		s.fail(key, "%s is out of range; write a number from %s to %s", e.value.raw, plainNumber(low), plainNumber(high))
	default:
		return v, true
	}
	return 0, false
}

func plainNumber(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// count returns a whole number from 1 up.
func (s *section) count(key string, most int) (int, bool) {
	e := s.get(key)
	if e == nil {
		return 0, false
	}
	v, err := strconv.Atoi(strings.ReplaceAll(e.value.raw, "_", ""))
	if e.value.kind != integer || err != nil || v < 1 || v > most {
		s.fail(key, "%s; write a whole number from 1 to %d, without quotes", e.value.is(), most)
		return 0, false
	}
	return v, true
}

// flag returns true or false.
func (s *section) flag(key string) (value, ok bool) {
	e := s.get(key)
	if e == nil {
		return false, false
	}
	if e.value.kind != boolean {
		s.fail(key, "%s; write true or false, without quotes", e.value.is())
		return false, false
	}
	return e.value.raw == "true", true
}

// choice returns the place of a text in a list of words.
func (s *section) choice(key string, words []string) (int, bool) {
	e := s.get(key)
	if e == nil {
		return 0, false
	}
	if e.value.kind != text {
		s.fail(key, "%s; write %s", e.value.is(), either(words))
		return 0, false
	}
	if i := slices.Index(words, e.value.text); i >= 0 {
		return i, true
	}
	msg := fmt.Sprintf("%q is not known", e.value.text)
	if near := nearest(e.value.text, words); near != "" {
		msg += fmt.Sprintf("; did you mean %q?", near)
	} else {
		msg += "; write " + either(words)
	}
	s.fail(key, "%s", msg)
	return 0, false
}
