package envelope_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/assembly/envelope"
	"github.com/coldseam/coldseam/rvalue"
)

// TestCheck: each mistake is refused with its place and its figure.
func TestCheck(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	if err := house().Check(); err != nil {
		t.Fatalf("the house by hand is refused: %v", err)
	}
	for _, c := range []struct {
		name   string
		change func(*envelope.Envelope)
		want   string
	}{
		{"no parts", func(e *envelope.Envelope) { *e = envelope.Envelope{} }, "no parts"},
		{"no area", func(e *envelope.Envelope) { e.Parts[1].Area = 0 }, `part "ceiling": an area of 0 m²`},
		{"negative area", func(e *envelope.Envelope) { e.Parts[1].Area = -3 }, `part "ceiling": an area of -3 m²`},
		{"infinite area", func(e *envelope.Envelope) { e.Parts[1].Area = rvalue.Area(inf) }, "+Inf m²"},
		{"no U", func(e *envelope.Envelope) { e.Parts[1].U = 0 }, `part "ceiling": a U-factor of 0`},
		{"U is NaN", func(e *envelope.Envelope) { e.Parts[1].U = rvalue.Transmittance(nan) }, "U-factor of NaN"},
		{"target", func(e *envelope.Envelope) { e.Parts[1].Target.U = -1 }, `part "ceiling": a target of -1`},
		{"no name", func(e *envelope.Envelope) { e.Parts[1].Name = " " }, "it has no name"},
		{"same name", func(e *envelope.Envelope) { e.Parts[1].Name = "walls" }, `part "walls": there is another`},
		{"no kind", func(e *envelope.Envelope) { e.Parts[1].Kind = 0 }, `"unknown kind" is not a kind`},
		{"kind of an edge", func(e *envelope.Envelope) { e.Parts[1].Kind = envelope.ThermalBridge }, `"thermal bridge" is not a kind`},
		{"no buffer", func(e *envelope.Envelope) { e.Parts[1].Toward = "cellar" }, `faces the buffer "cellar", which does not exist; there is "attic"`},
		{"openings too large", func(e *envelope.Envelope) { e.Parts[0].Openings[0].Count = 41 }, `part "walls": its openings take 1103.3 ft² (102.5 m²), the whole part has only 1076.4 ft² (100.0 m²)`},
		{"no count", func(e *envelope.Envelope) { e.Parts[0].Openings[0].Count = 0 }, `opening "windows" in "walls": a count of 0`},
		{"opening's area", func(e *envelope.Envelope) { e.Parts[0].Openings[0].Area = rvalue.Area(nan) }, `opening "windows" in "walls": an area of NaN`},
		{"same opening", func(e *envelope.Envelope) {
			e.Parts[0].Openings = append(e.Parts[0].Openings, e.Parts[0].Openings[0])
		}, `opening "windows" in "walls": there is another`},
		{"share over 100 %", func(e *envelope.Envelope) { e.Parts[0].Detail[0].Share = 1.2 }, `"studs" inside it has a share of 1.2`},
		{"shares over 100 %", func(e *envelope.Envelope) { e.Parts[0].Detail[0].Share = 0.4 }, "add up to 120 %"},
		{"piece's R", func(e *envelope.Envelope) { e.Parts[0].Detail[0].R = -1 }, "-1 m²·K/W"},
		{"bridge's length", func(e *envelope.Envelope) { e.Bridges[0].Length = 0 }, `bridge "rim": a length of 0 m`},
		{"bridge's psi", func(e *envelope.Envelope) { e.Bridges[0].Psi = rvalue.LinearTransmittance(nan) }, "transmittance of NaN"},
		{"bridge's target", func(e *envelope.Envelope) { e.Bridges[0].Target = rvalue.LinearTransmittance(inf) }, "target of +Inf"},
		{"bridge's kind", func(e *envelope.Envelope) { e.Bridges[0].Kind = envelope.Door }, `"door" is not a kind of edge`},
		{"bridge's name", func(e *envelope.Envelope) { e.Bridges[0].Name = "" }, "bridge: it has no name"},
		{"same bridge", func(e *envelope.Envelope) { e.Bridges = append(e.Bridges, e.Bridges[0]) }, `bridge "rim": there is another`},
		{"buffer that loses nothing", func(e *envelope.Envelope) { e.Buffers[0].ToOutdoors = 0 }, `buffer "attic": it loses nothing`},
		{"buffer's conductance", func(e *envelope.Envelope) { e.Buffers[0].ToOutdoors = -1 }, "-1 W/K"},
		{"buffer's volume", func(e *envelope.Envelope) { e.Buffers[0].Volume = -1 }, "a volume of -1 m³"},
		{"buffer's air", func(e *envelope.Envelope) { e.Buffers[0].AirChange = 101 }, "101 air changes"},
		{"buffer's name", func(e *envelope.Envelope) { e.Buffers[0].Name = "" }, "buffer: it has no name"},
		{"same buffer", func(e *envelope.Envelope) { e.Buffers = append(e.Buffers, e.Buffers[0]) }, `buffer "attic": there is another`},
		{"no flow", func(e *envelope.Envelope) { e.Leakage.Flow50 = 0 }, "air leakage: 0 m³/s at 50 Pa"},
		{"leakage's volume", func(e *envelope.Envelope) { e.Leakage.Volume = rvalue.Volume(nan) }, "volume of NaN"},
		{"divisor", func(e *envelope.Envelope) { e.Leakage.Divisor = 1 }, "a divisor of 1, use 5 to 40"},
		{"tightness asked", func(e *envelope.Envelope) { e.Leakage.Target50 = -3 }, "a target of -3"},
		{"altitude", func(e *envelope.Envelope) { e.Altitude = 30000 }, "an altitude of 30000 m, use -500 to 6000 m"},
		{"altitude is NaN", func(e *envelope.Envelope) { e.Altitude = rvalue.Length(nan) }, "an altitude of NaN"},
		{"temperature", func(e *envelope.Envelope) { e.Indoors = -20 }, "a temperature of -20 K"},
	} {
		e := house()
		c.change(&e)
		if err := e.Check(); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: Check gives %v, want %q", c.name, err, c.want)
		}
		if r, err := e.Rank(); err == nil || r != nil {
			t.Errorf("%s: Rank takes it", c.name)
		}
	}
}

// TestCheckReportsEverything: all mistakes at once, with their places.
func TestCheckReportsEverything(t *testing.T) {
	e := house()
	e.Parts[0].Openings[0].Count = 41
	e.Parts[1].U = rvalue.Transmittance(math.NaN())
	e.Parts[1].Toward = "cellar"
	e.Bridges[0].Length = -1
	e.Buffers[0].ToOutdoors = -1
	e.Leakage.Divisor = 1
	joined, ok := e.Check().(interface{ Unwrap() []error })
	if !ok {
		t.Fatal("Check does not join its findings")
	}
	var places []string
	for _, err := range joined.Unwrap() {
		var place *envelope.PlaceError
		if !errors.As(err, &place) {
			t.Fatalf("%v has no place", err)
		}
		places = append(places, place.What+" "+place.Name)
	}
	if got, want := strings.Join(places, "; "), "part walls; part ceiling; part ceiling; bridge rim; buffer attic; air leakage "; got != want {
		t.Errorf("findings are at %s,\nwant %s", got, want)
	}
}
