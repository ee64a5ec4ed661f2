package assembly

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/coldseam/coldseam/rvalue"
	"github.com/coldseam/coldseam/rvalue/material"
)

// Spec is an assembly as somebody wrote it: layers from indoors to outdoors,
// each of a material, a labelled resistance, air, or members with a fill.
// Parse makes one; Evaluate computes it.
type Spec struct {
	Text   string // as written
	Layers []SpecLayer
}

// SpecLayer is one written layer: a plain item, or members with their fill.
type SpecLayer struct {
	Item    Item     // the layer, when Members is empty
	Members []Member // what frames it
	Fill    []Item   // what stands between the members; empty: an air space
	Aligned bool     // members stand behind those of the framed layer before

	Offset int    // byte offset of the layer in Spec.Text
	Text   string // as written, with single spaces
}

// Item is a written piece of a layer.
type Item struct {
	Kind      ItemKind
	Material  *material.Material // of a Slab or a Batt, or of a Labelled piece
	Named     string             // the material's name as written
	Thickness rvalue.Length      // 0 if not written
	R         rvalue.Resistance  // of a Labelled piece or a Batt: the label
	E1, E2    float64            // of Air: emittances of its faces
	Vent      Ventilation        // of Air

	Offset int    // byte offset in Spec.Text
	Text   string // as written, with single spaces
}

// ItemKind tells the written pieces apart.
type ItemKind uint8

// The kinds of item.
const (
	Slab     ItemKind = iota // a material of some thickness
	Batt                     // a fibrous batt sold by its label
	Labelled                 // a resistance, with or without a material's name
	Air                      // an air space
)

// Ventilation is how far an air space is open to the outdoors.
type Ventilation uint8

// The states of an air space: ISO 6946, unventilated, slightly ventilated and
// well-ventilated air layers.
const (
	Closed         Ventilation = iota
	SlightlyVented             // counts half, and what lies beyond it 0.15 m²·K/W at most
	Vented                     // what lies beyond it does not count
)

// Member is what frames a layer.
type Member struct {
	Name    string
	R       rvalue.Resistance  // through its depth, when written as such
	Depth   rvalue.Length      // 0 if only R is written
	Width   rvalue.Length      // across the wall, 0 if unknown
	Timber  bool               // lumber of the default resistivity
	Steel   rvalue.Length      // sheet thickness of a steel stud, else 0
	Of      *material.Material // else what it is made of
	Named   string             // the material's name as written
	Spacing rvalue.Length      // on centre, 0 if not written
	Share   float64            // of the area, 0 if not written

	Offset int
	Text   string
}

// String returns the notation with single spaces; Parse reads it back to the
// same layers.
func (s *Spec) String() string {
	texts := make([]string, len(s.Layers))
	for i, l := range s.Layers {
		texts[i] = l.Text
	}
	return strings.Join(texts, " + ")
}

// check refuses what Parse makes none of and a Spec made by hand may have.
func (s *Spec) check() error {
	for i := range s.Layers {
		l := &s.Layers[i]
		if len(l.Members) == 0 {
			if err := l.Item.check(); err != nil {
				return fmt.Errorf("assembly: layer %d: %w", i+1, err)
			}
		}
		for j := range l.Fill {
			if err := l.Fill[j].check(); err != nil {
				return fmt.Errorf("assembly: layer %d, piece %d of its fill: %w", i+1, j+1, err)
			}
		}
	}
	return nil
}

func (it *Item) check() error {
	switch {
	case it.Kind > Air:
		return fmt.Errorf("an item of kind %d, use Slab, Batt, Labelled or Air", it.Kind)
	case it.Vent > Vented:
		return fmt.Errorf("a ventilation of %d, use Closed, SlightlyVented or Vented", it.Vent)
	case it.Material == nil && (it.Kind == Slab || it.Kind == Batt):
		return errors.New("a slab or batt without a material; set Material")
	}
	return nil
}

// SyntaxError is a mistake in a written assembly, with its place.
type SyntaxError struct {
	Text   string   // the whole notation
	Offset int      // byte offset of the mistake
	Msg    string   // what is wrong and what would do
	Near   []string // known names like an unknown one, which Msg names too
}

// Error returns the message, the text and a caret under the mistake. What cannot
// be printed, a control character first of all, is shown as an escape.
func (e *SyntaxError) Error() string {
	at := min(max(e.Offset, 0), len(e.Text)) // a Spec made by hand may have no text
	before := printable(e.Text[:at])
	return fmt.Sprintf("assembly: %s\n  %s%s\n  %s^", printable(e.Msg), before, printable(e.Text[at:]), strings.Repeat(" ", utf8.RuneCountInString(before)))
}

// printable returns s in one line, with escapes for what does not print: what a
// text holds must not command the reader's terminal.
func printable(s string) string {
	if !strings.ContainsFunc(s, func(r rune) bool { return !unicode.IsPrint(r) || r == utf8.RuneError }) {
		return s
	}
	var out strings.Builder
	for i, r := range s {
		_, n := utf8.DecodeRuneInString(s[i:])
		switch {
		case r < utf8.RuneSelf && isBlank(byte(r)), r == '\u00a0': // a line break, a no-break space
			out.WriteByte(' ')
		case r == utf8.RuneError && n == 1:
			fmt.Fprintf(&out, "\\x%02x", s[i])
		case !unicode.IsPrint(r):
			quoted := strconv.QuoteRuneToASCII(r)
			out.WriteString(quoted[1 : len(quoted)-1])
		default:
			out.WriteRune(r)
		}
	}
	return out.String()
}
