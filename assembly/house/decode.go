package house

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/coldseam/coldseam/rvalue/material"
)

// maxFile bounds a house file; a large house takes some 20 KB.
const maxFile = 1 << 20

// maxMistakes bounds how many mistakes are collected: whoever has more did not
// mean to write a house file.
const maxMistakes = 100

// Bounds of how much a file may describe, so that none can keep the program
// busy for long.
const (
	maxItems = 500 // parts, openings of a part, bridges
	maxNamed = 100 // assemblies, windows, materials, buffers
)

// least is the smallest house; the message about an empty file shows it.
const least = `zone = "6A"
assembly.wall = { faces = "wall", layers = "gypsum 1/2 in + 2x4 @ 16 in (empty) + board sheathing 3/4 in + vinyl siding" }
[[part]]
name = "outside walls"
assembly = "wall"
area = "120 ft x 8 ft"`

// Decoder reads house files. Its zero value is what Decode uses.
type Decoder struct {
	// Numeric has assemblies of no method of their own solved in their sections, as
	// numeric = true in the file does: those that psi rests on too.
	Numeric bool
}

// Decode reads a house file, TOML in UTF-8 with or without a byte-order mark.
// The name is for messages only. The error is an [Errors] of every mistake in
// the file, in the order in which they stand there; a mistake inside a layer
// text points at its character.
func Decode(name string, data []byte) (*House, error) { return Decoder{}.Decode(name, data) }

// Decode reads a house file as [Decode] does.
func (o Decoder) Decode(name string, data []byte) (*House, error) {
	d := newDecoder(name, data)
	d.h.Numeric = o.Numeric
	if d.isText() {
		if root := d.build(); len(root.entries) == 0 && len(d.errs) == 0 {
			d.fail(0, "", "nothing is in this file; a house needs a zone, an assembly and a part at least, such as\n%s", least)
		} else {
			d.house(root)
		}
	}
	if len(d.errs) > 0 {
		d.errs.sort()
		return nil, d.errs
	}
	return d.h, nil
}

func newDecoder(name string, data []byte) *decoder {
	src := newSource(name, slices.Clip(bytes.TrimPrefix(data, []byte("\ufeff"))))
	return &decoder{src: src, what: "house", h: &House{}}
}

// decoder collects the mistakes of one file.
type decoder struct {
	src       *source
	what      string // the file describes
	errs      Errors
	quiet     bool // a mistake is known and its consequences are not reported
	h         *House
	catalogue *material.Catalogue
}

// full reports whether enough mistakes have been found.
func (d *decoder) full() bool { return len(d.errs) >= maxMistakes }

// fail records a mistake at an offset of the file.
func (d *decoder) fail(at int, key, format string, args ...any) {
	if d.quiet || d.full() {
		return
	}
	at = min(max(at, 0), len(d.src.text))
	line := d.src.lineOf(at)
	at = min(at, d.src.end(line)) // a line break counts as the end of its line
	p := d.src.place(at)
	d.errs = append(d.errs, &Error{
		File: d.src.name, Line: p.Line, Column: p.Column,
		Key: short(key, maxKey), Source: d.src.line(line), Msg: short(fmt.Sprintf(format, args...), maxMessage),
	})
	if d.full() {
		d.errs[len(d.errs)-1].Msg += fmt.Sprintf("; %d mistakes, the rest of the file is not looked at", maxMistakes)
	}
}

// Bounds of what a mistake prints, in bytes, against texts that are no names
// and no sizes.
const (
	maxKey     = 200
	maxMessage = 1000
)

// short cuts a text that is longer than most bytes.
func short(text string, most int) string {
	if len(text) <= most {
		return text
	}
	for most > 0 && !utf8.RuneStart(text[most]) {
		most--
	}
	return text[:most] + "…"
}

// isText refuses what is no text before the parser meets it.
func (d *decoder) isText() bool {
	t := d.src.text
	switch {
	case len(t) > maxFile:
		d.fail(0, "", "more than 1 MB; a %s file is text, and a large %s takes some 20 KB", d.what, d.what)
	case bytes.HasPrefix(t, []byte("\xff\xfe")), bytes.HasPrefix(t, []byte("\xfe\xff")):
		d.fail(0, "", "this is UTF-16; save the file as UTF-8")
	case bytes.IndexByte(t, 0) >= 0:
		d.fail(0, "", "this is no text file; a %s file is TOML, as any editor writes it", d.what)
	case !utf8.Valid(t):
		at := 0
		for {
			r, n := utf8.DecodeRune(t[at:])
			if r == utf8.RuneError && n == 1 {
				break
			}
			at += n
		}
		d.fail(at, "", "byte 0x%02X is not UTF-8; save the file as UTF-8", t[at])
	default:
		return true
	}
	for _, e := range d.errs {
		e.Source = strings.ToValidUTF8(e.Source, "\ufffd")
		if strings.ContainsRune(e.Source, 0) || len(e.Source) > maxFile/2 {
			e.Source = ""
		}
	}
	return false
}
