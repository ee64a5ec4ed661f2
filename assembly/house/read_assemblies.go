package house

import (
	"errors"
	"fmt"
	"strings"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/assembly/envelope"
	"github.com/coldseam/coldseam/assembly/window"
	"github.com/coldseam/coldseam/rvalue"
)

// assemblies reads the [assembly.NAME] tables.
func (d *decoder) assemblies(s *section) {
	parser := assembly.Parser{Catalogue: d.catalogue}
	for _, e := range s.named("assembly") {
		a := &Assembly{Name: e.key, at: place{d.src, e.value.table}}
		d.h.Assemblies = append(d.h.Assemblies, a)
		t := &section{d: d, t: e.value.table, where: fmt.Sprintf("assembly %q", e.key)}
		if text, ok := t.text("faces"); ok {
			var err error
			if a.Faces, err = assembly.ParseFacing(text); err != nil {
				t.fail("faces", "%s", plain(err))
			}
			a.facing = err == nil
		}
		t.missing("faces", `what it faces is missing; write faces = "wall", "ceiling", "floor", "roof" or such as "roof 30°"`)
		if text, ok := t.text("layers"); ok {
			a.layers = t.t.index["layers"].value
			a.Layers = d.layers(a, text, parser.Parse)
		}
		t.missing("layers", `the layers are missing; write them from indoors to outdoors, such as layers = "plaster 3/4 in + 2x4 @ 16 in (empty) + board sheathing 3/4 in + wood bevel siding"`)
		if text, ok := t.text("method"); ok {
			var err error
			if a.Method, err = assembly.ParseMethod(strings.TrimSpace(text)); err != nil {
				t.fail("method", "%s", plain(err))
			}
		}
		t.done()
	}
}

// layers reads a layer text and reports its mistakes, each at its character:
// after one, the piece it is in is taken for a plain resistance and the rest
// is looked at.
func (d *decoder) layers(a *Assembly, text string, parse func(string) (*assembly.Spec, error)) *assembly.Spec {
	spec, err := parse(text)
	for whole := spec; err != nil; {
		var s *assembly.SyntaxError
		if !errors.As(err, &s) {
			d.fail(a.layers.at, a.key(), "%s", plain(err))
			return nil
		}
		d.fail(a.layers.offset(s.Offset), a.key(), "%s", s.Msg)
		next, ok := withoutPiece(text, s.Offset)
		if !ok || next == text {
			return nil
		}
		before := s.Offset
		text = next
		if _, err = parse(text); err != nil && errors.As(err, &s) && s.Offset <= before {
			return nil // a consequence of what was left out
		}
		spec = whole
	}
	return spec
}

func (a *Assembly) key() string { return fmt.Sprintf("assembly %q: layers", a.Name) }

// withoutPiece puts a plain resistance in the place of the layer, or the piece
// of a fill, that holds an offset; everything else stays where it is.
func withoutPiece(text string, offset int) (string, bool) {
	depth, from, fill := 0, 0, 0
	for i := 0; i < min(offset, len(text)); i++ {
		switch text[i] {
		case '(':
			depth++
			fill = i + 1
		case ')':
			depth--
		case '+':
			if depth == 0 {
				from = i + 1
			}
			fill = i + 1
		}
	}
	to, ends := offset, "+"
	if depth > 0 {
		from, ends = fill, "+)"
	}
	for inner := 0; to < len(text); to++ {
		c := text[to]
		if inner == 0 && strings.IndexByte(ends, c) >= 0 {
			break
		}
		if c == '(' {
			inner++
		}
		if c == ')' {
			inner--
		}
	}
	const plain = " R-1 "
	if depth < 0 || depth > 1 || to-from < len(plain) {
		return text, false
	}
	return text[:from] + plain + strings.Repeat(" ", to-from-len(plain)) + text[to:], true
}

var (
	windowKinds = []string{"window", "skylight", "door"}
	windowKind  = []envelope.Kind{envelope.Window, envelope.Skylight, envelope.Door}
)

// windows reads the [window.NAME] tables.
func (d *decoder) windows(s *section) {
	for _, e := range s.named("window") {
		t := &section{d: d, t: e.value.table, where: fmt.Sprintf("window %q", e.key)}
		d.h.Windows = append(d.h.Windows, d.window(t, e.key))
		t.done()
	}
}

func (d *decoder) window(t *section, name string) *Window {
	w := &Window{Name: name, Kind: envelope.Window, Operable: true, at: place{d.src, t.t}}
	if i, ok := t.choice("kind", windowKinds); ok {
		w.Kind = windowKind[i]
	}
	var ok bool
	var err error
	if w.U, ok = quantity(t, "u", "U-0.30", someU); ok {
		w.Source = "as given"
	}
	w.Glass, _ = t.text("glass")
	glazing, built := t.text("glazing")
	if !t.has("glazing") {
		w.Frame, _ = t.text("frame")
	}
	w.Leaf, _ = t.text("leaf")
	if v, ok := t.flag("operable"); ok {
		w.Operable = v
	}
	if t.has("leaf") && w.Kind != envelope.Door && !(t.has("kind") && t.get("kind") == nil) {
		t.fail("leaf", `a leaf is that of a door; write kind = "door" too`)
		return w
	}
	if !t.has("glazing") {
		for _, key := range builtKeys {
			if t.get(key) != nil {
				t.fail(key, `this goes with the glass of which the U-factor is computed; write such as glazing = "glass 3 mm + air 12 mm + glass 3 mm" too, or leave it out`)
			}
		}
	}
	if !(t.has("glazing") && t.has("leaf")) { // a door with lights in it
		t.oneOf("its U-factor", []string{"u", "glass", "glazing", "leaf"})
	}
	switch {
	case w.U > 0:
		for _, key := range []string{"frame", "operable"} {
			if t.has(key) && !t.has("glass") {
				t.fail(key, "with a U-factor of the whole window this does nothing; leave it out")
			}
		}
	case t.has("u"):
	case built:
		if w.Leaf != "" {
			if w.U, w.Source, err = envelope.DefaultDoor(w.Leaf); err != nil {
				t.fail("leaf", "%s", plain(err))
				return w
			}
		}
		d.glazing(t, w, glazing)
	case t.has("glazing"):
	case w.Glass != "":
		d.glass(t, w)
	case w.Leaf != "":
		if w.U, w.Source, err = envelope.DefaultDoor(w.Leaf); err != nil {
			t.fail("leaf", "%s", plain(err))
		} else {
			d.filled(t.path("u"), rvalue.Both(w.U), fmt.Sprintf("for a door of %s: %s", w.Leaf, w.Source))
		}
	}
	return w
}

// glass looks up the U-factor of a window by its glass and frame.
func (d *decoder) glass(t *section, w *Window) {
	if block := strings.ToLower(strings.Join(strings.Fields(w.Glass), " ")); block == "glass block" || block == "glass blocks" {
		w.U, w.Source = window.GlassBlock, window.GlassBlockSource
		d.filled(t.path("u"), rvalue.Both(w.U), "for "+block+": "+w.Source)
		return
	}
	t.missing("frame", `the frame is missing; write such as frame = "wood"`)
	if w.Frame == "" {
		return
	}
	var u rvalue.Transmittance
	var source string
	var err error
	if w.Kind == envelope.Skylight {
		u, source, err = envelope.DefaultSkylight(w.Glass, w.Frame)
	} else {
		u, source, err = envelope.DefaultWindow(w.Glass, w.Frame, w.Operable)
	}
	if err != nil {
		key := "glass"
		var unknown *envelope.NameError
		if errors.As(err, &unknown) && unknown.Name == w.Frame {
			key = "frame"
		}
		t.fail(key, "%s", plain(err))
		return
	}
	w.U, w.Source = u, source
	if !t.has("operable") && w.Kind != envelope.Skylight {
		d.filled(t.path("operable"), "true", "most windows of older houses open")
	}
	d.filled(t.path("u"), rvalue.Both(u), fmt.Sprintf("for glass %q in frame %q: %s", w.Glass, w.Frame, source))
}
