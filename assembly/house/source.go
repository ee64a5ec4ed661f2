package house

import (
	"bytes"
	"slices"
	"unicode/utf8"
)

// source is the text of a file with the places of its lines. Offsets are in
// bytes from the start of the text, a byte-order mark left out.
type source struct {
	name  string
	text  []byte
	lines []int // offset of each line's first byte
}

func newSource(name string, text []byte) *source {
	s := &source{name: name, text: text, lines: []int{0}}
	for i := 0; ; {
		n := bytes.IndexByte(text[i:], '\n')
		if n < 0 {
			return s
		}
		i += n + 1
		s.lines = append(s.lines, i)
	}
}

// place returns the line and the column of an offset, both from 1. A column
// counts characters, a tab as one.
func (s *source) place(offset int) Place {
	line := s.lineOf(offset)
	return Place{Line: line + 1, Column: utf8.RuneCount(s.text[s.lines[line]:offset]) + 1}
}

// lineOf returns the line of an offset, from 0.
func (s *source) lineOf(offset int) int {
	line, found := slices.BinarySearch(s.lines, offset)
	if !found {
		line--
	}
	return line
}

// end returns the offset of the end of a line, without its line break.
func (s *source) end(line int) int {
	if line+1 == len(s.lines) {
		return len(s.text)
	}
	end := s.lines[line+1] - 1
	if end > s.lines[line] && s.text[end-1] == '\r' {
		end--
	}
	return end
}

// line returns the text of a line, without its line break.
func (s *source) line(line int) string { return string(s.text[s.lines[line]:s.end(line)]) }

// Place is a place in a file. The zero Place is none.
type Place struct {
	Line   int // from 1
	Column int // from 1, in characters; a tab counts as one
}
