package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestPictureNames: a picture is drawn to a new file or over one of ours, and over nothing
// else; nothing of the file that is read or of a stranger's is touched.
func TestPictureNames(t *testing.T) {
	slab, err := os.ReadFile("../../examples/slab-edge.toml")
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	in := func(name string) string { return filepath.Join(dir, name) }
	for name, text := range map[string]string{
		"slab.toml": string(slab), "input.svg": string(slab), "logo.svg": "<svg xmlns='…'><title>a logo</title></svg>", "empty.svg": "",
	} {
		if err := os.WriteFile(in(name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.Mkdir(in("folder.svg"), 0o700); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name, file, picture string
		code                int
		want                string
	}{
		{"over the drawing", "slab.toml", in("slab.toml"), 2, "ends in .svg"},
		{"over the drawing, ending as a picture", "input.svg", in("input.svg"), 1, "the file that is read"},
		{"no name", "slab.toml", "", 2, "name a file"},
		{"the output", "slab.toml", "-", 2, "name a file"},
		{"another kind", "slab.toml", in("slab.png"), 2, "ends in .svg"},
		{"over a stranger", "slab.toml", in("logo.svg"), 1, "is no picture of a section"},
		{"over a directory", "slab.toml", in("folder.svg"), 1, "a directory"},
		{"where there is no directory", "slab.toml", in("none/slab.svg"), 1, "picture " + in("none/slab.svg") + ": "},
		{"new", "slab.toml", in("new.svg"), 0, ""},
		{"over one of ours", "slab.toml", in("new.svg"), 0, ""},
		{"over an empty file", "slab.toml", in("empty.svg"), 0, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, stderr, code := call(t, "", "section", in(c.file), "--picture="+c.picture)
			if code != c.code || !strings.Contains(stderr, c.want) || strings.Contains(stderr, "slab.toml: picture") {
				t.Errorf("exit %d, %q", code, stderr)
			}
		})
	}
	for name, want := range map[string]string{"slab.toml": string(slab), "input.svg": string(slab), "logo.svg": "<svg xmlns='…'><title>a logo</title></svg>"} {
		if got, err := os.ReadFile(in(name)); err != nil || string(got) != want {
			t.Errorf("%s is changed: %v", name, err)
		}
	}
	if _, stderr, code := call(t, crossing, "section", "-", "--picture", in("house.svg")); code != 0 {
		t.Fatal(stderr)
	}
	if err := os.WriteFile(in("house-wall-a.svg"), []byte("a letter"), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, stderr, code := call(t, crossing, "section", "-", "--picture", in("house.svg")); code != 1 || !strings.Contains(stderr, "house-wall-a.svg: a file") {
		t.Errorf("a house, over a letter: exit %d, %q", code, stderr)
	}
}

// TestNamesCommandNothing: no name in a file gets a control character to the terminal, and
// what an argument says is shown as an escape.
func TestNamesCommandNothing(t *testing.T) {
	for name, file := range map[string]string{
		"air":      "air.\"x\\u001b[31m\" = { temperature = \"68 °F\", film = \"wall\" }\n",
		"material": "piece = []\n[material.\"a\\u202eb\"]\nconductivity = \"1 W/(m·K)\"\n",
		"text":     "piece = []\nname = \"a\\u202eb\"\n",
		"section":  "zone = \"6A\"\n[section.\"a\\u001b[31m\"]\n",
		"assembly": "zone = \"6A\"\n[assembly.\"a\\u009b31m\"]\n",
	} {
		_, stderr, code := call(t, file, "section", "-")
		if code != 1 || !strings.Contains(stderr, "control character") || strings.ContainsAny(stderr, "\x1b\u009b\u202e") {
			t.Errorf("%s: exit %d, %q", name, code, stderr)
		}
	}
	var b strings.Builder
	if _, err := (&checked{w: &b}).Write([]byte("a\x1b[31m\u202e\U000e0001 ö\n")); err != nil || b.String() != `a\u001b[31m\u202e\udb40\udc01 ö`+"\n" {
		t.Errorf("%v %q", err, b.String())
	}
}
