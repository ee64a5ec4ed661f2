package section_test

import (
	"encoding/xml"
	"errors"
	"io"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/assembly/section"
	"github.com/coldseam/coldseam/rvalue"
)

// TestPicture reads a picture back: it is well-formed, says what it shows, and
// its isotherms run where the section has their temperature.
func TestPicture(t *testing.T) {
	const close = 0.15 // K; the lines run straight through squares of the picture's raster
	s := slabEdge()
	s.Pieces[0].Name = `slab <"A & B">`
	r := solve(t, s, section.Options{})
	picture := r.SVG(rvalue.SI)
	if picture != r.SVG(rvalue.SI) {
		t.Error("two pictures of one result differ")
	}
	var points []section.Point
	heat, text := 0, ""
	// The section is 1.2125 by 1.1 m; its corners are those of the rectangles.
	left, topEdge, right := math.Inf(1), math.Inf(1), math.Inf(-1)
	var chains [][][2]float64
	for d := xml.NewDecoder(strings.NewReader(picture)); ; {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatal(err)
		}
		switch e := token.(type) {
		case xml.CharData:
			text += string(e)
		case xml.StartElement:
			at := map[string]string{}
			for _, a := range e.Attr {
				at[a.Name.Local] = a.Value
			}
			number := func(name string) float64 {
				v, err := strconv.ParseFloat(at[name], 64)
				if err != nil {
					t.Fatal(err)
				}
				return v
			}
			switch {
			case e.Name.Local == "rect" && at["x"] != "" && number("height") > 16:
				left, right = min(left, number("x")), max(right, number("x")+number("width"))
				topEdge = min(topEdge, number("y"))
			case at["class"] == "heat":
				heat++
			case at["class"] == "isotherm":
				var chain [][2]float64
				for _, p := range strings.Fields(at["points"]) {
					x, y, _ := strings.Cut(p, ",")
					a, _ := strconv.ParseFloat(x, 64)
					b, _ := strconv.ParseFloat(y, 64)
					chain = append(chain, [2]float64{a, b})
				}
				chains = append(chains, chain)
			}
		}
	}
	for _, want := range []string{`slab <"A & B"> 2.00 W/(m·K)`, "outside -18.0 °C", "31.57 W per metre", "fRsi 0.65"} {
		if !strings.Contains(text, want) {
			t.Errorf("the picture does not say %q", want)
		}
	}
	if heat < 10 || len(chains) < 7 {
		t.Errorf("%d heat-flow lines, %d isotherms", heat, len(chains))
	}
	scale := (right - left) / 1.2125
	for _, chain := range chains {
		for _, p := range chain {
			x, y := (p[0]-left)/scale, 1.1-(p[1]-topEdge)/scale
			// A tenth of a pixel must not lead out of the material.
			points = append(points, at(min(max(x, 0), 1.2125), min(max(y, 0), 1.1)))
		}
	}
	inside := points[:0]
	for _, p := range points {
		if p.X < 0.2120 || p.Y < 0.0995 {
			inside = append(inside, p)
		}
	}
	far := 0
	for _, p := range solve(t, s, section.Options{Points: inside}).Points {
		c := p.Temperature.Celsius()
		if math.Abs(c-5*math.Round(c/5)) > close {
			far++
		}
	}
	// Through 0.1 m of insulation run 35 K: a tenth of a pixel is 0.06 K there,
	// and at its faces the lines bend within a square.
	if far > len(inside)/20 {
		t.Errorf("%d of %d points of isotherms are off by more than %v K", far, len(inside), close)
	}
}
