package material_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"github.com/coldseam/coldseam/rvalue"
	"github.com/coldseam/coldseam/rvalue/material"
)

func TestResistance(t *testing.T) {
	const half = 0.00005 // m²·K/W, of figures written with four decimals
	for _, c := range []struct {
		name string
		mm   float64
		want float64 // m²·K/W
		why  string
	}{
		{"gypsum board", 12.7, 0.0794, "conductivity"},
		{"OSB", 11.1125, 0.11, "7/16 in. is the 11 mm piece"},
		{"OSB", 12.7, 0.12, "a piece"},
		{"OSB", 11.85, 0.1150, "half way between two pieces"},
		{"OSB", 18.0, 0.1701, "in proportion above the thickest"},
		{"OSB", 6.35, 0.0635, "in proportion below the thinnest"},
		{"plywood", 15.875, 0.15, "5/8 in. is the 15.9 mm piece"},
		{"concrete block", 203.2, 0.185, "8 in. is the 200 mm piece"},
		{"concrete block", 304.8, 0.217, "12 in. is the 300 mm piece"},
		{"hollow clay tile", 101.6, 0.2, "4 in. is the 100 mm piece"},
		{"vinyl siding", 0, 0.11, "sold as a thing"},
		{"vinyl siding", 12.7, 0.11, "a thing whatever is said of its thickness"},
		{"wood bevel siding", 0, 0.14, "its usual piece"},
		{"wood bevel siding", 19.05, 0.18, "another piece"},
		{"plaster on metal lath", 19, 0.023, "the only piece"},
		{"rubber tile", 0, 0.06, "the only piece, without a thickness"},
		{"polyethylene", 0, 0.00045, "a conductivity with a usual sheet"},
		{"polyethylene", 0.33, 0.001, "the same by its thickness"},
	} {
		got, err := find(t, c.name).Resistance(rvalue.Length(c.mm) * rvalue.Millimetre)
		if err != nil || math.Abs(got.RSI()-c.want) > half {
			t.Errorf("%s %v mm: %v, %v, want %v (%s)", c.name, c.mm, got.RSI(), err, c.want, c.why)
		}
	}
	for _, c := range []struct {
		name string
		d    rvalue.Length
		says []string
	}{
		{"hollow clay tile", 7 * rvalue.Inch, []string{"7 in", "150 mm", "200 mm"}},
		{"hollow clay tile", 0, []string{"thickness", "100 mm"}},
		{"XPS", 0, []string{"thickness"}},
		{"plywood", 0, []string{"thickness"}},
		{"gypsum board", -1, []string{"thickness"}},
		{"gypsum board", rvalue.Length(math.NaN()), []string{"thickness"}},
		{"gypsum board", rvalue.Length(math.Inf(1)), []string{"thickness"}},
	} {
		r, err := find(t, c.name).Resistance(c.d)
		if err == nil {
			t.Errorf("%s of %v: %v, want an error", c.name, c.d, r)
			continue
		}
		for _, s := range c.says {
			if !strings.Contains(err.Error(), s) {
				t.Errorf("%s of %v says %q, want something of %q", c.name, c.d, err, s)
			}
		}
	}
}

// TestThickerResistsMore holds for every material that may be had in any
// thickness.
func TestThickerResistsMore(t *testing.T) {
	for m := range material.All() {
		last := rvalue.Resistance(0)
		for mm := 0.5; mm < 400; mm *= 1.01 {
			r, err := m.Resistance(rvalue.Length(mm) * rvalue.Millimetre)
			if err != nil {
				if m.Conductivity > 0 || m.Scalable {
					t.Errorf("%s %v mm: %v", m.Name, mm, err)
				}
				continue
			}
			if r < last {
				t.Errorf("%s resists less at %.4g mm than thinner: %v after %v", m.Name, mm, r.RSI(), last.RSI())
				break
			}
			last = r
		}
	}
}

func TestClassNames(t *testing.T) {
	seen := map[string]bool{}
	for c := material.Fibre; c <= material.Soil; c++ {
		if s := c.String(); s == "unsorted" || seen[s] {
			t.Errorf("Class(%d).String() = %q", c, s)
		} else {
			seen[s] = true
		}
	}
	if d := cmp.Diff([]string{"unsorted", "unsorted"}, []string{fmt.Sprint(material.Class(0)), fmt.Sprint(material.Class(200))}); d != "" {
		t.Error(d)
	}
}
