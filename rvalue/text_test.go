package rvalue_test

import (
	"encoding"
	"encoding/json"
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/rvalue"
)

// kind is one quantity type as the round-trip tests see it.
type kind struct {
	name  string
	of    func(float64) quantity // the value of so much in the kind's own SI unit
	parse func(string) (float64, error)
	read  func(text []byte) (float64, error) // UnmarshalText
	sign  bool                               // may be negative
}

func kindOf[T interface {
	~float64
	quantity
}, P interface {
	*T
	encoding.TextUnmarshaler
}](name string, sign bool) kind {
	return kind{
		name: name, sign: sign, parse: parsers[name],
		of: func(v float64) quantity { return T(v) },
		read: func(text []byte) (float64, error) {
			var v T
			err := P(&v).UnmarshalText(text)
			return float64(v), err
		},
	}
}

var kinds = []kind{
	kindOf[rvalue.Resistance]("Resistance", false),
	kindOf[rvalue.Transmittance]("Transmittance", false),
	kindOf[rvalue.Conductivity]("Conductivity", false),
	kindOf[rvalue.Length]("Length", false),
	kindOf[rvalue.Area]("Area", false),
	kindOf[rvalue.Volume]("Volume", false),
	kindOf[rvalue.Temperature]("Temperature", false),
	kindOf[rvalue.TemperatureDifference]("TemperatureDifference", true),
	kindOf[rvalue.Conductance]("Conductance", false),
	kindOf[rvalue.LinearTransmittance]("LinearTransmittance", true),
	kindOf[rvalue.Permeance]("Permeance", false),
	kindOf[rvalue.AirFlow]("AirFlow", false),
	kindOf[rvalue.Speed]("Speed", false),
	kindOf[rvalue.Density]("Density", false),
	kindOf[rvalue.Mass]("Mass", false),
}

// values yields n values of a kind between 10^-decades and 10^decades, with
// every bit of the mantissa in play.
func values(k kind, n int, decades float64, yield func(v float64)) {
	r := rand.New(rand.NewPCG(1, 7))
	for range n {
		v := math.Pow(10, decades*(2*r.Float64()-1))
		if k.sign && r.IntN(2) == 0 {
			v = -v
		}
		yield(v)
	}
}

// TestMarshalReadsBack holds that what is written for programs loses no bit.
func TestMarshalReadsBack(t *testing.T) {
	for _, k := range kinds {
		values(k, 2000, 29, func(v float64) {
			text, err := k.of(v).MarshalText()
			if err != nil {
				t.Fatal(err)
			}
			for name, parse := range map[string]func([]byte) (float64, error){
				"Parse":         func(b []byte) (float64, error) { return k.parse(string(b)) },
				"UnmarshalText": k.read,
			} {
				if got, err := parse(text); err != nil || got != v {
					t.Fatalf("%s(%v) is written as %q, and %s reads %v, %v", k.name, v, text, name, got, err)
				}
			}
		})
	}
}

// TestInReadsBack holds that what is printed for people can be typed in again
// and means the same, as far as two significant digits go.
func TestInReadsBack(t *testing.T) {
	const twoDigits = 0.05 // half of the last of 1.0, the worst case
	for _, k := range kinds {
		values(k, 2000, 5, func(v float64) {
			// Temperatures are printed to 1 °F or 0.1 °C; other kinds to a share of themselves.
			tolerance := twoDigits * math.Abs(v)
			if k.name == "Temperature" {
				tolerance = 0.5*5/9 + 1e-6*v
			}
			for _, u := range []rvalue.Units{rvalue.SI, rvalue.IP} {
				text := k.of(v).In(u)
				got, err := k.parse(text)
				if k.name == "Temperature" && v < tolerance {
					continue // -273.2 °C is no temperature
				}
				if err != nil || !(math.Abs(got-v) <= tolerance) {
					t.Fatalf("%s %v is printed as %q, which is read as %v, %v", k.name, v, text, got, err)
				}
			}
		})
	}
}

// TestTapeReadsBack holds that every sixteenth of an inch up to 100 ft prints
// as such and reads back as itself.
func TestTapeReadsBack(t *testing.T) {
	for n := 1; n <= 16*12*100; n++ {
		l := rvalue.Length(float64(n)/16) * rvalue.Inch
		text := l.In(rvalue.IP)
		if strings.Contains(text, ".") {
			t.Fatalf("%d/16 in is printed as %q", n, text)
		}
		got, err := rvalue.ParseLength(text)
		// Whole feet are counted in feet, whose constant rounds otherwise than 12 in.
		if feet := rvalue.Length(float64(n)/192) * rvalue.Foot; err != nil || got != l && got != feet {
			t.Fatalf("%d/16 in is printed as %q, which is read as %v, %v, want %v", n, text, float64(got), err, float64(l))
		}
	}
}

// TestParsedIsMultiplied holds the promise that a parsed number is multiplied
// with the unit constant and nothing else.
func TestParsedIsMultiplied(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 7))
	for range 2000 {
		n := float64(r.IntN(100_000)+1) / 1000
		number := strconv.FormatFloat(n, 'f', -1, 64)
		if got, err := rvalue.ParseResistance("R-" + number); err != nil || got != rvalue.Resistance(n)*rvalue.RIP {
			t.Fatalf("R-%s is read as %v, %v", number, float64(got), err)
		}
		if got, err := rvalue.ParseLength(number + " in"); err != nil || got != rvalue.Length(n)*rvalue.Inch {
			t.Fatalf("%s in is read as %v, %v", number, float64(got), err)
		}
		if got, err := rvalue.ParseTemperature(number + " °F"); err != nil || got != rvalue.FromFahrenheit(n) {
			t.Fatalf("%s °F is read as %v, %v", number, float64(got), err)
		}
	}
}

func TestMarshalRefuses(t *testing.T) {
	for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		for _, k := range kinds {
			if text, err := k.of(v).MarshalText(); err == nil {
				t.Errorf("%s(%v) is written as %q, want an error", k.name, v, text)
			}
		}
	}
}

// TestUnmarshalRefuses holds that reading uses the parsers, with their errors
// and ranges, and leaves the value alone on failure.
func TestUnmarshalRefuses(t *testing.T) {
	for _, text := range []string{"0 in", "13", "nothing"} {
		l := 3 * rvalue.Inch
		if err := l.UnmarshalText([]byte(text)); err == nil || l != 3*rvalue.Inch {
			t.Errorf("UnmarshalText(%q) = %v and leaves %v, want an error and 3 in", text, err, l)
		}
	}
}

func TestJSON(t *testing.T) {
	type layer struct {
		Thickness rvalue.Length     `json:"thickness"`
		R         rvalue.Resistance `json:"r"`
	}
	var got layer
	if err := json.Unmarshal([]byte(`{"thickness": "3 1/2 in", "r": "R-13"}`), &got); err != nil {
		t.Fatal(err)
	}
	if want := (layer{3.5 * rvalue.Inch, 13 * rvalue.RIP}); got != want {
		t.Errorf("read %v, want %v", got, want)
	}
	text, err := json.Marshal(layer{rvalue.Length(0.25), rvalue.Resistance(2.5)})
	if want := `{"thickness":"0.25 m","r":"RSI 2.5"}`; err != nil || string(text) != want {
		t.Errorf("wrote %s, %v, want %s", text, err, want)
	}
	if err := json.Unmarshal([]byte(`{"r": 13}`), &got); err == nil {
		t.Error("a bare JSON number was read as a resistance")
	}
}
