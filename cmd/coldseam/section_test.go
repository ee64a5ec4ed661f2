package main

import (
	"bytes"
	"context"
	"encoding/json"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/assembly/section"
)

// TestSectionJSON: the bracket holds the heat, the faces' heat sums to nothing, psi
// differs by what the flanks are longer outside.
func TestSectionJSON(t *testing.T) {
	out, stderr, code := call(t, "", "section", "../../examples/slab-edge.toml", "--json")
	if code != 0 {
		t.Fatal(stderr)
	}
	type quantity struct{ SI, IP float64 }
	type bracketed struct {
		quantity
		Low, High quantity
	}
	var got struct {
		Heat, Coupling bracketed
		Internal       bracketed `json:"psi_internal"`
		External       bracketed `json:"psi_external"`
		Coldest        struct {
			Temperature quantity
			Factor      float64 `json:"temperature_factor"`
			Sweats      float64 `json:"humidity_sweats"`
			Mould       float64 `json:"humidity_mould"`
		}
		Faces  []struct{ Heat quantity }
		Flanks []struct{ U, Internal, External quantity }
		Points []struct{ Name string }
		Filled []struct{ Key, Value, Why string } `json:"filled_in"`
	}
	if err := json.Unmarshal([]byte(out), &got); err != nil {
		t.Fatal(err)
	}
	sum := 0.0
	for _, f := range got.Faces {
		sum += f.Heat.SI
	}
	if math.Abs(sum) > 1e-3 { // six digits of each
		t.Errorf("the faces' heat sums to %g W/m", sum)
	}
	longer := 0.0
	for _, f := range got.Flanks {
		longer += f.U.SI * (f.External.SI - f.Internal.SI)
	}
	if d := got.Internal.SI - got.External.SI - longer; math.Abs(d) > 1e-5 {
		t.Errorf("psi differ by %g more than the flanks do", d)
	}
	if h := got.Heat; !(h.Low.SI < h.High.SI && h.Low.SI <= h.SI*(1+1e-6) && h.SI*(1-1e-6) <= h.High.SI) || math.Abs(h.IP/h.SI-1.040) > 0.0005 {
		t.Errorf("heat %v", h)
	}
	if c := got.Coldest; math.Abs(c.Mould/c.Sweats-0.8) > 1e-4 || c.Factor <= 0 || c.Factor >= 1 || len(got.Points) != 2 || len(got.Filled) == 0 {
		t.Errorf("coldest %+v, %d points, %d filled in", c, len(got.Points), len(got.Filled))
	}
}

// TestSectionHouseJSON: each hand method's error is what its R and the numeric R say, and the
// bracket holds the numeric R.
func TestSectionHouseJSON(t *testing.T) {
	out, stderr, code := call(t, "", "section", "../../examples/split-1978.toml", "--json")
	if code != 0 {
		t.Fatal(stderr)
	}
	type method struct {
		R   struct{ SI float64 }
		Off float64
	}
	var got struct {
		Assemblies []struct {
			Name    string
			Methods map[string]method
			Numeric struct {
				method
				Low  struct{ SI float64 } `json:"r_low"`
				High struct{ SI float64 } `json:"r_high"`
			}
		}
	}
	if err := json.Unmarshal([]byte(out), &got); err != nil {
		t.Fatal(err)
	}
	steel := false
	for _, a := range got.Assemblies {
		if n := a.Numeric; !(n.Low.SI < n.High.SI && n.Low.SI <= n.R.SI*(1+1e-5) && n.R.SI*(1-1e-5) <= n.High.SI) {
			t.Errorf("%s: R %v between %v and %v", a.Name, n.R.SI, n.Low.SI, n.High.SI)
		}
		for name, m := range a.Methods {
			if math.Abs(m.R.SI/a.Numeric.R.SI-1-m.Off) > 1e-5 {
				t.Errorf("%s: %s is said to be off by %v", a.Name, name, m.Off)
			}
			steel = steel || name == "zone"
		}
	}
	if len(got.Assemblies) < 5 || !steel {
		t.Errorf("%d assemblies, with steel: %v", len(got.Assemblies), steel)
	}
}

// crossing is a house whose strapping crosses its studs, with names that a file can not have.
const crossing = `zone = "6A"
assembly."wall/a" = { faces = "wall", layers = "gypsum 1/2 in + 2x2 @ 24 in (empty) + 2x4 @ 16 in (fiberglass R-13) + vinyl siding" }
assembly."wall-a" = { faces = "wall", layers = "gypsum 1/2 in + 2x4 @ 16 in (fiberglass R-13) + vinyl siding" }
assembly."wall a" = { faces = "wall", layers = "gypsum 1/2 in + 2x4 @ 24 in (fiberglass R-13) + vinyl siding" }
[[part]]
name = "wall"
assembly = "wall-a"
area = "40 ft2"
`

// TestSectionPictures: a picture is one XML document; of a house each assembly has its own
// file, but for members that cross, of which there is none.
func TestSectionPictures(t *testing.T) {
	dir := t.TempDir()
	well := func(name string) {
		data, err := os.ReadFile(filepath.Join(dir, name))
		if err != nil {
			t.Error(err)
			return
		}
		d := xml.NewDecoder(bytes.NewReader(data))
		for err == nil {
			_, err = d.Token()
		}
		if !errors.Is(err, io.EOF) || !bytes.Contains(data, []byte("isotherm")) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, stderr, code := call(t, "", "section", "../../examples/slab-edge.toml", "--picture", filepath.Join(dir, "slab.svg")); code != 0 {
		t.Fatal(stderr)
	}
	well("slab.svg")
	out, stderr, code := call(t, crossing, "section", "-", "--picture", filepath.Join(dir, "house.svg"))
	if code != 0 {
		t.Fatal(stderr)
	}
	well("house-wall-a.svg")
	well("house-wall-a-2.svg")
	files, _ := filepath.Glob(filepath.Join(dir, "*"))
	if len(files) != 3 || !strings.Contains(out, "members that cross") {
		t.Errorf("%d files, and\n%s", len(files), out)
	}
}

// TestSectionStops: an interrupt ends a solution at its next mesh, and is no success.
func TestSectionStops(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	var stderr bytes.Buffer
	s := solving{context: ctx, command: command{stderr: &stderr}}
	watch := s.watch("wall")
	if !watch(section.Progress{}) || s.end(nil) != nil {
		t.Error("stops without an interrupt")
	}
	cancel()
	if watch(section.Progress{}) || s.end(nil) == nil {
		t.Error("goes on after an interrupt")
	}
	if stderr.Len() > 0 { // no terminal
		t.Errorf("shows its progress to what is no terminal: %q", stderr.String())
	}
}
