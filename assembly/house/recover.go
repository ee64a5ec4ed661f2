package house

import (
	"bytes"
	"fmt"
	"strings"
)

// recover reports a mistake in the notation and arranges that reading goes on
// behind it, so that one slip does not hide the others. A value that cannot be
// read is blanked out in the parser's text and counts as broken; anything else
// costs its line, or all up to the next header if a bracket is open.
func (b *builder) recover(at int, msg string) {
	text := b.d.src.text
	start := b.start(at)
	line := b.d.src.lineOf(at)
	end := b.d.src.end(line)
	head := strings.TrimSpace(string(text[start:at]))
	switch from, to, ok := b.unreadable(start, at); {
	case text[start] == '[':
		b.brokenHeader(start, at, end)
		b.skip(line + 1)
	case ok && b.comma(from, to):
		b.base = start
	case ok:
		key := b.lastKey(start, from)
		b.d.fail(from, key, "%s", valueAdvice(string(text[from:to]), key, msg))
		b.blank(from, to)
		b.base = start
	default:
		b.d.fail(at, "", "%s", keyAdvice(head, msg))
		b.current.partial = true
		if b.open(start, end) {
			b.skipToHeader(line + 1)
		} else {
			b.skip(line + 1)
		}
	}
}

// start returns the offset of the first character of the line or construct in
// which the parser met a mistake.
func (b *builder) start(at int) int {
	s := b.d.src
	line := s.lineOf(max(b.read, b.base))
	for ; line < s.lineOf(at); line++ {
		from := max(s.lines[line], b.base)
		if from < b.read {
			continue // what was read last ends on this line
		}
		trimmed := strings.TrimLeft(string(s.text[from:s.end(line)]), " \t\r")
		if trimmed != "" && trimmed[0] != '#' {
			break
		}
	}
	from := max(s.lines[line], b.base)
	for from < at && (s.text[from] == ' ' || s.text[from] == '\t') {
		from++
	}
	return from
}

// unreadable returns the value around the mistake at an offset, if the mistake
// lies in one that can be told apart on its line.
func (b *builder) unreadable(start, at int) (from, to int, ok bool) {
	text, s := b.d.src.text, b.d.src
	line := s.lineOf(at)
	from = max(start, s.lines[line])
	eq := lastEquals(text[from:at])
	if eq < 0 {
		return 0, 0, false
	}
	from += eq + 1
	for from < at && (text[from] == ' ' || text[from] == '\t') {
		from++
	}
	if from < len(text) && (text[from] == '[' || text[from] == '{') {
		return 0, 0, false // the mistake lies between values, not in one
	}
	stop := "\n"
	if b.open(start, from) {
		stop = ",}]\n"
	}
	to = at
	if n := bytes.IndexAny(text[at:], stop); n >= 0 {
		to = at + n
	} else {
		to = len(text)
	}
	if stop == "\n" {
		to = from + len(trimComment(string(text[from:to])))
	}
	to = from + len(bytes.TrimRight(text[from:to], " \t\r"))
	// Two characters at least are needed to stand a quoted blank in their place.
	return from, to, to-from >= 2 && to >= at-1 && !b.blanked[from]
}

// lastEquals finds the last equals sign of a line that is in no string.
func lastEquals(line []byte) int {
	last, in := -1, byte(0)
	for i, c := range line {
		switch {
		case in != 0 && c == in:
			in = 0
		case in == 0 && (c == '"' || c == '\''):
			in = c
		case in == 0 && c == '=':
			last = i
		}
	}
	return last
}

// trimComment drops a comment behind a value.
func trimComment(value string) string {
	if i := strings.Index(value, " #"); i >= 0 && strings.Count(value[:i], `"`)%2 == 0 {
		return value[:i]
	}
	return value
}

// comma puts a comma behind a text that is followed by another key on its line.
func (b *builder) comma(from, to int) bool {
	text := b.d.src.text
	end := closing(text[from:to])
	if end < 0 || from+end+1 >= to || text[from+end] != ' ' || lastEquals(text[from+end:to]) < 0 {
		return false
	}
	b.d.fail(from+end, "", "a comma is missing behind %s", text[from:from+end])
	b.patch()
	b.text[from+end] = ','
	return true
}

// closing returns the length of the text in quotes that a value starts with,
// -1 if there is none.
func closing(value []byte) int {
	if len(value) < 2 || value[0] != '"' && value[0] != '\'' {
		return -1
	}
	n := bytes.IndexByte(value[1:], value[0])
	if n < 0 {
		return -1
	}
	return n + 2
}

// patch makes the parser's text one that may be changed; the source lines that
// messages print stay as written.
func (b *builder) patch() {
	if b.blanked == nil {
		b.blanked = map[int]bool{}
		b.text = bytes.Clone(b.d.src.text)
	}
}

// blank puts a quoted nothing in the place of an unreadable value.
func (b *builder) blank(from, to int) {
	b.patch()
	b.blanked[from] = true
	for i := from + 1; i < to-1; i++ {
		b.text[i] = '.'
	}
	b.text[from], b.text[to-1] = '"', '"'
}

// open reports whether a bracket or brace opened at start is open at end.
func (b *builder) open(start, end int) bool {
	depth, in := 0, byte(0)
	for _, c := range b.d.src.text[start:end] {
		switch {
		case c == '\n':
			in = 0
		case in != 0 && c == in:
			in = 0
		case in != 0:
		case c == '"' || c == '\'':
			in = c
		case c == '[' || c == '{':
			depth++
		case c == ']' || c == '}':
			depth--
		}
	}
	return depth > 0
}

// brokenHeader reports a header that cannot be read and opens the table it
// seems to name.
func (b *builder) brokenHeader(start, at, end int) {
	text := strings.TrimSpace(trimComment(string(b.d.src.text[start:end])))
	list := strings.HasPrefix(text, "[[")
	var keys []name
	var want []string
	for _, k := range strings.Split(strings.Trim(text, "[] \t\r"), ".") {
		k = strings.Trim(strings.TrimSpace(k), `"'`)
		keys = append(keys, name{k, start})
		want = append(want, join([]name{{k, 0}}))
	}
	form := "[" + strings.Join(want, ".") + "]"
	if list {
		form = "[" + form + "]"
	}
	b.d.fail(at, "", "this header cannot be read; write it as %s, alone on its line", form)
	b.d.quiet = true
	b.header(keys, list)
	b.d.quiet = false
	b.current.partial = true
}

func (b *builder) skip(line int) {
	b.base = len(b.d.src.text)
	if line < len(b.d.src.lines) {
		b.base = b.d.src.lines[line]
	}
	b.read = b.base
}

// skipToHeader goes on at the next line that looks like a header.
func (b *builder) skipToHeader(line int) {
	for ; line < len(b.d.src.lines); line++ {
		if isHeader(strings.TrimSpace(b.d.src.line(line))) {
			break
		}
	}
	b.skip(line)
}

func isHeader(line string) bool {
	rest := strings.TrimLeft(line, "[")
	return rest != line && rest != "" && !strings.ContainsAny(rest, "{=,") && strings.Contains(rest, "]")
}

// lastKey returns the key whose value starts at an offset, as it is written.
func (b *builder) lastKey(start, from int) string {
	before := strings.TrimRight(string(b.d.src.text[start:from]), " \t=")
	return before[strings.LastIndexAny(before, " \t\n,{")+1:]
}

// valueAdvice says how to write an unreadable value.
func valueAdvice(value, key, msg string) string {
	first := value[0]
	inner := strings.TrimPrefix(value, string(first))
	inner = strings.TrimSuffix(inner, string(first))
	double, single := strings.Contains(inner, `"`), strings.Contains(inner, "'")
	switch end := closing([]byte(value)); {
	case strings.Trim(value, "0123456789._+-eE") == "":
		return value + " is no number; a size goes in quotes, with its unit"
	case first != '"' && first != '\'':
		if strings.Contains(value, `"`) {
			return fmt.Sprintf("this goes in quotes, here single ones: %s = '%s'", key, value)
		}
		return fmt.Sprintf("this goes in quotes: %s = \"%s\"", key, value)
	case strings.Contains(msg, "escape"):
		return `a backslash stands for something else in double quotes; write single quotes, or \\ for a backslash`
	case end > 0 && strings.HasPrefix(strings.TrimLeft(value[end:], " "), string(first)) && end < len(value)-1:
		return "two texts stand here; write one"
	case double && single:
		return "a text with both kinds of quotation mark in it; write in and ft for the marks of inches and feet"
	case first == '"' && double:
		return fmt.Sprintf("a text with inch marks in it goes in single quotes: %s = '%s'", key, inner)
	case first == '\'' && single:
		return fmt.Sprintf(`a text with foot marks in it goes in double quotes: %s = "%s"`, key, inner)
	case end < 0:
		return fmt.Sprintf("this text is not closed; add %c at its end", first)
	}
	return "this cannot be read: " + msg
}

// keyAdvice says how to write a line that is none.
func keyAdvice(head, msg string) string {
	switch {
	case strings.HasSuffix(head, "="):
		return "a value is missing behind ="
	case strings.Contains(msg, "'=' after key"):
		return `a key is followed by = and its value; a key of several words goes in quotes, "street wall"`
	case strings.Contains(msg, "at start of key"), strings.Contains(msg, "expected key"):
		return `here stands a key with its value, such as name = "street wall", or a [table]`
	}
	return msg
}
