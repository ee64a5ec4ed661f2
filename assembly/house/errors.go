package house

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode"
)

// Error is one mistake in a house file or a drawn section.
type Error struct {
	File   string // as given to Decode
	Line   int    // from 1
	Column int    // from 1, in characters; a tab counts as one
	Key    string // whose value is wrong, such as `part "street wall": area`; empty for the file as a whole
	Source string // the line of the file
	Msg    string // what is wrong, and what would do
}

// Error returns the mistake with its place, its source line and a caret under
// the character it is about.
func (e *Error) Error() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s:%d:%d: ", harmless(e.File), e.Line, e.Column)
	if e.Key != "" {
		b.WriteString(harmless(e.Key) + ": ")
	}
	b.WriteString(harmless(e.Msg))
	if strings.TrimSpace(e.Source) == "" {
		return b.String()
	}
	shown, column := excerpt([]rune(harmless(e.Source)), e.Column)
	fmt.Fprintf(&b, "\n  %s\n  %s^", string(shown), caretIndent(shown[:column-1]))
	return b.String()
}

// harmless puts a sign in the place of each character that a terminal would act on.
func harmless(text string) string {
	return strings.Map(func(r rune) rune {
		if controls(r) && r != '\t' && r != '\n' {
			return unicode.ReplacementChar
		}
		return r
	}, text)
}

// shownLine is how many characters of a long source line are printed.
const shownLine = 160

// excerpt cuts a long line to the surroundings of the column and returns the
// column in the cut.
func excerpt(line []rune, column int) ([]rune, int) {
	column = min(max(column, 1), len(line)+1)
	if len(line) <= shownLine {
		return line, column
	}
	from := min(max(column-1-shownLine/2, 0), len(line)-shownLine)
	return line[from : from+shownLine], column - from
}

// caretIndent returns blanks as wide as the text, its tabs kept, so that what
// follows stands under the character behind it.
func caretIndent(text []rune) string {
	out := make([]rune, len(text))
	for i, r := range text {
		out[i] = ' '
		if r == '\t' {
			out[i] = r
		}
	}
	return string(out)
}

// Errors are the mistakes of a file, sorted by line and column.
type Errors []*Error

// Error returns every mistake, one after the other.
func (e Errors) Error() string {
	texts := make([]string, len(e))
	for i, one := range e {
		texts[i] = one.Error()
	}
	return strings.Join(texts, "\n")
}

// Unwrap returns the mistakes one by one, for errors.As.
func (e Errors) Unwrap() []error {
	out := make([]error, len(e))
	for i, one := range e {
		out[i] = one
	}
	return out
}

func (e Errors) sort() {
	slices.SortStableFunc(e, func(a, b *Error) int {
		return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
	})
}
