package house

import (
	"errors"
	"fmt"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"
)

// The TOML of a file becomes a tree whose every key and value knows where it
// stands, so that a mistake found later still points at its character. Only
// this file and recover.go know the parser.

// kind is what a value is.
type kind uint8

const (
	text kind = iota
	integer
	float
	boolean
	date
	array
	inline     // a table in braces
	headed     // a table under a header, or made by a dotted key
	headedList // tables under [[headers]]
	broken     // unreadable; its mistake has been reported
)

// node is a value with its place.
type node struct {
	kind  kind
	at    int    // offset of its first byte; of an array's the bracket
	raw   string // the source of a scalar, quotes included
	text  string // of a text: what it says
	items []*node
	table *table
}

// table is a table of any kind.
type table struct {
	at      int // offset of its header's name, its brace or its first key
	entries []*entry
	index   map[string]*entry

	defined bool // by a header of its own
	dotted  bool // by a dotted key
	partial bool // a part of it could not be read: what is missing may stand there
}

// entry is a key with its value.
type entry struct {
	key   string
	at    int // offset of the key
	value *node
}

func newTable(at int) *table { return &table{at: at, index: map[string]*entry{}} }

func (t *table) add(key string, at int, v *node) {
	e := &entry{key: key, at: at, value: v}
	t.entries = append(t.entries, e)
	t.index[key] = e
}

// builder builds the tree of a file.
type builder struct {
	d       *decoder
	parser  unstable.Parser
	text    []byte // of the file, unreadable values blanked out
	base    int    // offset in the file of the parser's text
	read    int    // offset behind what was read last
	root    *table
	current *table
	blanked map[int]bool // offsets of the values blanked out
}

// build reads the whole file. After a mistake in the notation it goes on where
// the next line or table can be told apart.
func (d *decoder) build() *table {
	b := &builder{d: d, root: newTable(0), text: d.src.text}
	b.current = b.root
	for b.base < len(b.text) && !d.full() {
		b.parser.Reset(b.text[b.base:])
		for b.parser.NextExpression() {
			b.expression(b.parser.Expression())
		}
		err := b.parser.Error()
		if err == nil {
			break
		}
		at := len(b.text)
		var perr *unstable.ParserError
		if errors.As(err, &perr) {
			at = b.offset(b.parser.Range(perr.Highlight))
		}
		b.recover(at, err.Error())
	}
	return b.root
}

func (b *builder) offset(r unstable.Range) int { return b.base + int(r.Offset) }

// expression takes in a header or a line with a key.
func (b *builder) expression(e *unstable.Node) {
	switch e.Kind {
	case unstable.KeyValue:
		b.keyValue(b.current, e)
		b.read = b.offset(e.Raw) + int(e.Raw.Length)
	case unstable.Table, unstable.ArrayTable:
		keys := b.keys(e)
		b.header(keys, e.Kind == unstable.ArrayTable)
		b.read = keys[len(keys)-1].at + 1
	}
}

// name is one piece of a dotted key.
type name struct {
	text string
	at   int
}

func (b *builder) keys(e *unstable.Node) []name {
	var out []name
	for it := e.Key(); it.Next(); {
		k := it.Node()
		out = append(out, name{string(k.Data), b.offset(k.Raw)})
	}
	return out
}

// header opens a table: [a.b] or [[a.b]].
func (b *builder) header(keys []name, list bool) {
	last := keys[len(keys)-1]
	// What stands under a header that is refused is read all the same, into a
	// table of its own that nobody looks at.
	b.current = newTable(last.at)
	t := b.root
	for _, k := range keys[:len(keys)-1] {
		e, ok := t.index[k.text]
		switch {
		case !ok:
			next := newTable(k.at)
			t.add(k.text, k.at, &node{kind: headed, at: k.at, table: next})
			t = next
		case e.value.kind == headed:
			t = e.value.table
		case e.value.kind == headedList:
			t = e.value.items[len(e.value.items)-1].table
		case e.value.kind == broken:
			return
		default:
			b.d.fail(k.at, "", "%s has a value already, on line %d, and cannot be a table too", quoted(k.text), b.line(e))
			return
		}
	}
	e, ok := t.index[last.text]
	switch {
	case !ok:
		b.current.defined = true
		n := &node{kind: headed, at: last.at, table: b.current}
		if list {
			n = &node{kind: headedList, at: last.at, items: []*node{n}}
		}
		t.add(last.text, last.at, n)
	case e.value.kind == broken:
	case list && e.value.kind == headedList:
		b.current.defined = true
		e.value.items = append(e.value.items, &node{kind: headed, at: last.at, table: b.current})
	case list:
		b.d.fail(last.at, "", "%s is no list of [[%s]] tables, see line %d", quoted(last.text), join(keys), b.line(e))
	case e.value.kind == headed && !e.value.table.defined && !e.value.table.dotted:
		// [a.b] came before [a].
		b.current = e.value.table
		b.current.defined, b.current.at = true, last.at
	case e.value.kind == headedList:
		b.d.fail(last.at, "", "write [[%s]], with two brackets, as on line %d", join(keys), b.line(e))
	default:
		b.d.fail(last.at, "", "%s is described twice, first on line %d; give one of them another name", join(keys), b.line(e))
	}
}

func (b *builder) line(e *entry) int { return b.d.src.lineOf(e.at) + 1 }

// keyValue adds a line of a table, or a key of an inline table.
func (b *builder) keyValue(t *table, e *unstable.Node) {
	keys := b.keys(e)
	b.put(t, keys, b.value(e.Value(), keys[0].at))
}

// put stores a value under a key, which may be dotted.
func (b *builder) put(t *table, keys []name, v *node) {
	for _, k := range keys[:len(keys)-1] {
		e, ok := t.index[k.text]
		switch {
		case !ok:
			next := newTable(k.at)
			next.dotted = true
			t.add(k.text, k.at, &node{kind: headed, at: k.at, table: next})
			t = next
		case e.value.kind == headed && e.value.table.dotted:
			t = e.value.table
		case e.value.kind == broken:
			return
		default:
			b.d.fail(k.at, "", "%s is given already, on line %d; put this key there", quoted(k.text), b.line(e))
			return
		}
	}
	last := keys[len(keys)-1]
	e, ok := t.index[last.text]
	if !ok {
		t.add(last.text, last.at, v)
		return
	}
	switch {
	case e.value.kind == headed && v.kind == inline:
		b.d.fail(last.at, "", "%s is described twice, first on line %d", join(keys), b.line(e))
	case e.value.kind != broken:
		b.d.fail(last.at, "", "%s is given twice, first on line %d; remove one", join(keys), b.line(e))
	}
}

// value converts a value and what it holds. The parser does not tell where an
// array starts; it counts as standing at its key.
func (b *builder) value(v *unstable.Node, key int) *node {
	n := &node{}
	switch v.Kind {
	case unstable.Array:
		n.kind, n.at = array, key
		for it := v.Children(); it.Next(); {
			n.items = append(n.items, b.value(it.Node(), key))
		}
		return n
	case unstable.InlineTable:
		n.kind, n.at = inline, b.offset(v.Raw)
		n.table = newTable(n.at)
		n.table.defined = true
		for it := v.Children(); it.Next(); {
			b.keyValue(n.table, it.Node())
		}
		return n
	case unstable.String:
		n.kind, n.text = text, string(v.Data)
	case unstable.Integer:
		n.kind = integer
	case unstable.Float:
		n.kind = float
	case unstable.Bool:
		n.kind = boolean
	default:
		n.kind = date
	}
	n.at, n.raw = b.offset(v.Raw), string(b.parser.Raw(v.Raw))
	if b.blanked[n.at] {
		n.kind = broken
	}
	return n
}

func join(keys []name) string {
	texts := make([]string, len(keys))
	for i, k := range keys {
		texts[i] = k.text
		if strings.ContainsFunc(k.text, notBare) || k.text == "" {
			texts[i] = fmt.Sprintf("%q", k.text)
		}
	}
	return strings.Join(texts, ".")
}

// notBare reports whether a key with this character needs quotes.
func notBare(r rune) bool {
	return !(r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '-' || r == '_')
}

func quoted(s string) string { return fmt.Sprintf("%q", s) }
