package assembly

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"github.com/coldseam/coldseam/rvalue"
	"github.com/coldseam/coldseam/rvalue/surface"
)

// Use is the place an assembly has in the house. It decides the surface films,
// the direction of the heat in air spaces and the default framing factor.
type Use uint8

// The uses of an assembly.
const (
	Wall    Use = iota // upright, heat flows sideways
	Ceiling            // level, heat flows up, into an attic's still air
	Floor              // level, heat flows down
	Roof               // at a tilt, heat flows up, the outside in the wind
)

var useNames = [...]string{"wall", "ceiling", "floor", "roof"}

// String returns the use's name; "Use(9)" for one that there is not.
func (u Use) String() string {
	if int(u) >= len(useNames) {
		return fmt.Sprintf("Use(%d)", uint8(u))
	}
	return useNames[u]
}

// Facing is what an assembly faces: its use, and for a roof its tilt.
type Facing struct {
	Use  Use
	Tilt float64 // of a roof, degrees from level, 0 to 90
}

// ParseFacing reads "wall", "ceiling", "floor", "roof" (level), or a roof with
// its tilt: "roof 30°", "roof 30 deg", or its rise in twelve: "roof 6/12".
func ParseFacing(s string) (Facing, error) {
	fail := func() (Facing, error) {
		return Facing{}, fmt.Errorf("assembly: %q is nothing an assembly faces (use wall, ceiling, floor, roof, roof 30° or roof 6/12)", s)
	}
	word, rest, _ := strings.Cut(strings.ToLower(strings.TrimSpace(s)), " ")
	rest = strings.TrimSpace(rest)
	for u, name := range useNames {
		if word != name {
			continue
		}
		f := Facing{Use: Use(u)}
		if rest == "" {
			return f, nil
		}
		if f.Use != Roof {
			return fail()
		}
		if rise, run, ok := strings.Cut(rest, "/"); ok {
			a, err1 := strconv.ParseFloat(strings.TrimSpace(rise), 64)
			b, err2 := strconv.ParseFloat(strings.TrimSpace(run), 64)
			if err1 != nil || err2 != nil || !(a >= 0) || !(b > 0) || math.IsInf(a, 0) || math.IsInf(b, 0) {
				return fail()
			}
			f.Tilt = math.Atan2(a, b) * 180 / math.Pi
			return f, nil
		}
		for _, unit := range []string{"°", "degrees", "deg"} {
			if number, ok := strings.CutSuffix(rest, unit); ok {
				t, err := strconv.ParseFloat(strings.TrimSpace(number), 64)
				if err != nil || !(t >= 0 && t <= 90) {
					return fail()
				}
				f.Tilt = t
				return f, nil
			}
		}
	}
	return fail()
}

func (f Facing) String() string {
	if f.Use == Roof && f.Tilt > 0 {
		return fmt.Sprintf("roof %.4g°", f.Tilt)
	}
	return f.Use.String()
}

// tilt returns the angle of the assembly from level in degrees.
func (f Facing) tilt() float64 {
	switch f.Use {
	case Wall:
		return 90
	case Roof:
		return f.Tilt
	}
	return 0
}

// Exposure is the air or soil beyond the assembly's outer face.
type Exposure uint8

// The exposures of an outer face.
const (
	Open  Exposure = iota // the usual one of the use: wind, but for a ceiling its attic's still air
	Still                 // still air: a garage, an attic, a crawl space
	Soil                  // ground: no outer film
)

// Setting is what surrounds an assembly. Its zero value is a wall on a day of
// 68 °F inside and 32 °F outside in the handbook's winter wind.
type Setting struct {
	Faces    Facing
	Exposure Exposure
	Films    surface.Set        // surface.ASHRAE unless set
	Wind     rvalue.Speed       // 0: the set's own winter wind
	Indoors  rvalue.Temperature // 0: 68 °F
	Outdoors rvalue.Temperature // 0: 32 °F
	Method   Method             // Advised: what the handbook or the standard of the films advises
	Cold     bool               // conductivities at the layers' own mean temperatures
}

// Air temperatures of a Setting that gives none.
var (
	DefaultIndoors  = rvalue.FromFahrenheit(68)
	DefaultOutdoors = rvalue.FromFahrenheit(32)
)

func (s Setting) withDefaults() Setting {
	if s.Indoors == 0 {
		s.Indoors = DefaultIndoors
	}
	if s.Outdoors == 0 {
		s.Outdoors = DefaultOutdoors
	}
	return s
}

func (s Setting) check() error {
	for _, t := range []struct {
		name string
		t    rvalue.Temperature
	}{{"indoors", s.Indoors}, {"outdoors", s.Outdoors}} {
		if c := t.t.Celsius(); !(c >= -60 && c <= 60) {
			return fmt.Errorf("assembly: %s at %.4g °F (%.4g °C) is no air temperature of a house, use -76 °F to 140 °F (-60 °C to 60 °C)", t.name, t.t.Fahrenheit(), c)
		}
	}
	if !(s.Faces.Tilt >= 0 && s.Faces.Tilt <= 90) {
		return fmt.Errorf("assembly: a roof's tilt of %v° is impossible, use 0° to 90°", s.Faces.Tilt)
	}
	if s.Faces.Use > Roof || s.Exposure > Soil || s.Method > Numeric {
		return fmt.Errorf("assembly: unknown use, exposure or method in the setting")
	}
	return nil
}

// heatUp reports whether heat flows upward through the assembly.
func (s Setting) heatUp() bool {
	winter := s.Indoors >= s.Outdoors
	if s.Faces.Use == Floor {
		return !winter
	}
	return winter
}

// films returns the resistances of the inner and the outer surface film; an
// outer one of 0 means there is none.
func (s Setting) films() (inner, outer rvalue.Resistance, err error) {
	inner, err = surface.Still(s.Films, s.Faces.tilt(), s.heatUp(), ordinaryEmittance)
	if err != nil {
		return 0, 0, err
	}
	switch {
	case s.Exposure == Soil:
		return inner, 0, nil
	case s.Exposure == Still, s.Faces.Use == Ceiling:
		return inner, inner, nil
	}
	outer, err = surface.Outside(s.Films, s.Wind)
	return inner, outer, err
}

// ordinaryEmittance is that of paint, wood, brick and gypsum: ASHRAE Handbook
// and ISO 6946 both take 0.9.
const ordinaryEmittance = 0.9
