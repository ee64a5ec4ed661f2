package house_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/pelletier/go-toml/v2"
	"github.com/santhosh-tekuri/jsonschema/v6"

	"github.com/coldseam/coldseam/assembly/house"
)

func compiled(t testing.TB) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(house.Schema()))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("house.schema.json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("house.schema.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// asJSON reads a file as the general-purpose decoder does, for the schema.
func asJSON(data []byte) (any, error) {
	var v map[string]any
	if err := toml.Unmarshal(bytes.TrimPrefix(data, []byte("\ufeff")), &v); err != nil {
		return nil, err
	}
	text, err := json.Marshal(v)
	if err != nil {
		return nil, err
	}
	return jsonschema.UnmarshalJSON(bytes.NewReader(text))
}

// TestSchema holds the schema against the decoder: what Decode takes the schema
// takes, what is wrong in structure both refuse, what is wrong in meaning only
// Decode refuses, what is no TOML the general-purpose decoder refuses too.
func TestSchema(t *testing.T) {
	s := compiled(t)
	valid := func(name string) error {
		v, err := asJSON(read(t, name))
		if err != nil {
			t.Errorf("%s is no TOML: %v", name, err)
			return nil
		}
		return s.Validate(v)
	}
	for _, name := range append(examples(t), files(t, "good/*.toml")...) {
		if err := valid(name); err != nil {
			t.Errorf("the schema refuses %s: %v", name, err)
		}
	}
	for _, name := range files(t, "bad/structure/*.toml") {
		if valid(name) == nil {
			t.Errorf("the schema takes %s", name)
		}
	}
	for _, name := range files(t, "bad/meaning/*.toml") {
		if err := valid(name); err != nil {
			t.Errorf("the schema refuses %s, which is wrong in meaning only: %v", name, err)
		}
	}
	for _, name := range files(t, "bad/notation/*.toml") {
		if _, err := asJSON(read(t, name)); err == nil {
			t.Errorf("%s is TOML after all", name)
		}
	}
}

// TestSchemaSubset keeps the schema to what editors of draft 4 know as well.
func TestSchemaSubset(t *testing.T) {
	for _, word := range []string{`"$defs"`, `"const"`, `"if"`, `"then"`, `"examples"`, `"contains"`, `"propertyNames"`} {
		if bytes.Contains(house.Schema(), []byte(word)) {
			t.Errorf("the schema uses %s", word)
		}
	}
}

// TestSchemaKeys compares the keys of each table in the schema with those that
// the decoder names when it meets an unknown one.
func TestSchemaKeys(t *testing.T) {
	var schema struct {
		Properties  map[string]object
		Definitions map[string]object
	}
	if err := json.Unmarshal(house.Schema(), &schema); err != nil {
		t.Fatal(err)
	}
	p, d := schema.Properties, schema.Definitions
	for _, tt := range []struct {
		name, file string
		want       map[string]object
	}{
		{"top", "qqqqqqqq = 1", p},
		{"indoors", "[indoors]\nqqqqqqqq = 1", p["indoors"].Properties},
		{"outdoors", "[outdoors]\nqqqqqqqq = 1", p["outdoors"].Properties},
		{"leakage", "[leakage]\nqqqqqqqq = 1", p["leakage"].Properties},
		{"fuel", "[fuel]\nqqqqqqqq = 1", p["fuel"].Properties},
		{"material", "[material.x]\nqqqqqqqq = 1", d["material"].Properties},
		{"assembly", "[assembly.x]\nqqqqqqqq = 1", d["assembly"].Properties},
		{"window", "[window.x]\nqqqqqqqq = 1", d["window"].Properties},
		{"buffer", "[buffer.x]\nqqqqqqqq = 1", d["buffer"].Properties},
		{"buffer's surface", "[[buffer.x.to_outdoors]]\nqqqqqqqq = 1", d["buffer"].Properties["to_outdoors"].Items.Properties},
		{"part", "[[part]]\nqqqqqqqq = 1", d["part"].Properties},
		{"edge", "[[part]]\n[part.edge]\nqqqqqqqq = 1", d["part"].Properties["edge"].Properties},
		{"opening", "[[part]]\n[[part.openings]]\nqqqqqqqq = 1", d["opening"].Properties},
		{"heat pump's point", "[[fuel.cop_at]]\nqqqqqqqq = 1", p["fuel"].Properties["cop_at"].Items.Properties},
		{"buffer in the ground", "[[buffer.x.to_ground]]\nqqqqqqqq = 1", d["buffer"].Properties["to_ground"].Items.Properties},
		{"measured", "[[part]]\n[[part.openings]]\n[part.openings.measured]\nqqqqqqqq = 1", d["opening"].Properties["measured"].Properties},
		{"site", "[[part]]\n[[part.openings]]\n[part.openings.site]\nqqqqqqqq = 1", d["opening"].Properties["site"].Properties},
		{"escape", "[[part]]\n[[part.openings]]\n[part.openings.escape]\nqqqqqqqq = 1", d["opening"].Properties["escape"].Properties},
		{"bridge", "[[bridge]]\nqqqqqqqq = 1", d["bridge"].Properties},
		{"section", "[section.x]\nqqqqqqqq = 1", d["section"].Properties},
		{"section's flank", "[[section.x.flank]]\nqqqqqqqq = 1", d["flank"].Properties},
	} {
		_, err := house.Decode("f", []byte(tt.file))
		sameKeys(t, tt.name, err, tt.want)
	}
}

// sameKeys holds the keys that a message on an unknown one lists against those of the
// schema, each of which is described.
func sameKeys(t *testing.T, name string, err error, schema map[string]object) {
	t.Helper()
	m := regexp.MustCompile(`unknown key "qqqqqqqq"; here you can write (.*)`).FindStringSubmatch(fmt.Sprint(err))
	if m == nil {
		t.Errorf("%s: no list of keys in %v", name, err)
		return
	}
	got := strings.Split(strings.ReplaceAll(m[1], " and ", ", "), ", ")
	var want []string
	for k, v := range schema {
		want = append(want, k)
		if v.Description == "" {
			t.Errorf("%s: key %s has no description", name, k)
		}
	}
	slices.Sort(got)
	slices.Sort(want)
	if !slices.Equal(got, want) {
		t.Errorf("%s: the decoder knows %v, the schema %v", name, got, want)
	}
}

type object struct {
	Description string
	Properties  map[string]object
	Items       *object
}

// FuzzDecode checks that no input makes Decode panic, that mistakes point into
// the file, and that what Decode takes is TOML to the general-purpose decoder,
// obeys the schema, and can be ranked.
func FuzzDecode(f *testing.F) {
	for _, pattern := range []string{"../../examples/*.toml", testdata + "good/*.toml", testdata + "bad/*/*.toml"} {
		names, _ := filepath.Glob(pattern)
		for _, name := range names {
			f.Add(read(f, name))
		}
	}
	for _, tt := range noFiles {
		if len(tt.data) < 1000 {
			f.Add([]byte(tt.data))
		}
	}
	s := compiled(f)
	f.Fuzz(func(t *testing.T, data []byte) {
		h, err := house.Decode("f", data)
		if err != nil {
			lines := bytes.Count(data, []byte("\n")) + 1
			for _, e := range err.(house.Errors) {
				if e.Line < 1 || e.Line > lines || e.Column < 1 || e.Column > len(e.Source)+1 && e.Source != "" {
					t.Errorf("mistake at %d:%d of %d lines, in %q", e.Line, e.Column, lines, e.Source)
				}
				if e.Error() == "" {
					t.Error("an empty message")
				}
			}
			return
		}
		v, err := asJSON(data)
		if err != nil {
			t.Fatalf("Decode takes what is no TOML: %v", err)
		}
		if err := s.Validate(v); err != nil {
			t.Fatalf("Decode takes what the schema refuses: %v", err)
		}
		if _, err := h.Rank(); err != nil && !strings.Contains(err.Error(), "more than all parts lose together") {
			t.Fatalf("a house that Decode takes cannot be ranked: %v", err)
		}
	})
}
