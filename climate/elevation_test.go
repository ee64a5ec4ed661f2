package climate

import (
	"errors"
	"math"
	"testing"

	"github.com/coldseam/coldseam/rvalue"
)

func TestParseElevation(t *testing.T) {
	for _, row := range [...]struct {
		text   string
		metres float64
	}{
		{"1610 m", 1610},
		{"5280 ft", 1609.344},
		{"-282 ft", -85.9536}, // Badwater, the lowest place of North America
		{" −86 m", -86},       // with the minus of print
		{"0 ft", 0},
		{"-430 m", -430},
		{"9000 m", 9000},
	} {
		got, err := ParseElevation(row.text)
		if err != nil || math.Abs(got.SI()-row.metres) > 1e-9 {
			t.Errorf("ParseElevation(%q) = %v m, %v; want %v m", row.text, got.SI(), err, row.metres)
		}
	}
	for _, text := range [...]string{"", "-", "high", "1610", "-431 m", "9001 m", "30000 ft", "--5 m", "5 °F", "1e999 m"} {
		got, err := ParseElevation(text)
		var place *rvalue.ParseError
		if !errors.As(err, &place) || place.Text != text || place.Offset > len(text) {
			t.Errorf("ParseElevation(%q) = %v, %#v; want an error in that text", text, got, err)
		}
	}
}

func FuzzParseElevation(f *testing.F) {
	for _, text := range []string{"5280 ft", "-282 ft", " −86 m", "0 m", "-", "--5 m", "1e999 m", "5'-4 1/2\""} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		v, err := ParseElevation(text)
		var place *rvalue.ParseError
		switch {
		case err == nil && !(v >= lowest && v <= highest):
			t.Errorf("ParseElevation(%q) = %v", text, v)
		case err != nil && (!errors.As(err, &place) || place.Offset < 0 || place.Offset > len(text)):
			t.Errorf("ParseElevation(%q): %#v", text, err)
		}
	})
}

func TestOverland(t *testing.T) {
	for _, row := range [...]struct {
		km     float64
		ip, si string
	}{
		{87.3, "54 miles", "87 km"},
		{1.6, "1 mile", "2 km"},
		{0.2, "0 miles", "0 km"},
	} {
		d := rvalue.Length(row.km*1000) * rvalue.Metre
		if ip, si := Overland(d, rvalue.IP), Overland(d, rvalue.SI); ip != row.ip || si != row.si {
			t.Errorf("Overland(%g km) = %q, %q; want %q, %q", row.km, ip, si, row.ip, row.si)
		}
	}
}
