package envelope

import (
	"fmt"
	"math"
	"strings"

	"github.com/coldseam/coldseam/rvalue"
)

// Leakage is the air that leaks through the envelope, by a blower door.
type Leakage struct {
	Flow50   rvalue.AirFlow // at 50 Pa
	Volume   rvalue.Volume  // of the heated rooms; needed for air changes and their target
	Divisor  float64        // N: flow at 50 Pa over the season's mean flow; 0: Divide's default
	Target50 float64        // air changes per hour at 50 Pa that are asked, 0: nothing
	Text     string         // where the figure comes from
}

// ACH50 returns the flow at 50 Pa of n air changes per hour of a volume.
func ACH50(n float64, volume rvalue.Volume) rvalue.AirFlow {
	return rvalue.AirFlow(n*float64(volume)) * rvalue.CubicMetrePerHour
}

func (l Leakage) check() error {
	if f := float64(l.Flow50); !(f >= 0) || math.IsInf(f, 1) {
		return fmt.Errorf("envelope: air leakage of %v m³/s at 50 Pa", f)
	}
	if v := float64(l.Volume); !(v >= 0) || math.IsInf(v, 1) {
		return fmt.Errorf("envelope: a heated volume of %v m³", v)
	}
	if l.Divisor != 0 && !(l.Divisor >= 5 && l.Divisor <= 40) {
		return fmt.Errorf("envelope: a leakage divisor of %v, use 5 to 40", l.Divisor)
	}
	return nil
}

// tightness ties the words for how tight a house is to air changes at 50 Pa.
var tightness = []struct {
	word  string
	ach50 float64
}{
	{"tight", 3}, {"average", 7}, {"leaky", 12}, {"very leaky", 18},
}

// TightnessSource says where the figures of Described come from.
const TightnessSource = "common practice, no source; a blower-door test costs little against what it tells"

// Described returns the air changes per hour at 50 Pa that a word stands for:
// tight 3, average 7, leaky 12, very leaky 18 (common practice, no source).
func Described(word string) (ach50 float64, err error) {
	want := strings.ToLower(strings.Join(strings.Fields(word), " "))
	var words []string
	for _, t := range tightness {
		if t.word == want {
			return t.ach50, nil
		}
		words = append(words, t.word)
	}
	return 0, fmt.Errorf("envelope: %q is no word for tightness (use %s)", word, strings.Join(words, ", "))
}

// Shelter is how far the wind is kept from a house.
type Shelter uint8

// The shelters.
const (
	NormalShelter Shelter = iota
	WellSheltered
	Exposed
)

// ParseShelter reads "normal", "sheltered" or "exposed".
func ParseShelter(s string) (Shelter, error) {
	switch strings.ToLower(strings.TrimSpace(s)) {
	case "normal":
		return NormalShelter, nil
	case "sheltered", "well sheltered":
		return WellSheltered, nil
	case "exposed":
		return Exposed, nil
	}
	return 0, fmt.Errorf("envelope: %q is no shelter (use sheltered, normal or exposed)", s)
}

// Region is a belt of the North American map of the leakage divisor, 1 (windy
// and cold) to 4 (mild).
type Region int

// Divide returns N, by which the flow at 50 Pa is divided to get the mean flow
// of the heating season: N = C·H·S, with C by climate region 1 to 4 (0: region
// 2, 18.5, about the rule of thumb of 20), H by storeys (1 to 3; 0: 1) and S
// by shelter.
//
// Source: the Lawrence Berkeley infiltration factor, from memory; that it is
// looked up by region, shielding and storeys was seen. The product form
// rebuilds every cell of the table to its last printed digit.
func Divide(region Region, storeys float64, shelter Shelter) (float64, error) {
	if region < 0 || region > 4 {
		return 0, fmt.Errorf("envelope: no leakage region %d, use 1 to 4", region)
	}
	c := [...]float64{18.5, 15.5, 18.5, 21.5, 24.5}[region]
	if storeys == 0 {
		storeys = 1
	}
	if !(storeys >= 1 && storeys <= 3) {
		return 0, fmt.Errorf("envelope: %v storeys, the table knows 1 to 3", storeys)
	}
	h := 1.0 // 1, 0.9, 0.8, 0.7 at 1, 1½, 2, 3 storeys
	if storeys <= 2 {
		h = 1 - 0.2*(storeys-1)
	} else {
		h = 0.8 - 0.1*(storeys-2)
	}
	s := [...]float64{NormalShelter: 1, WellSheltered: 1.2, Exposed: 0.9}[shelter]
	return c * h * s, nil
}

// defaultDivisor is Divide's for region 2, one storey, normal shelter.
const defaultDivisor = 18.5

// UA returns the conductance of the air that leaks over the season.
func (l Leakage) UA(altitude rvalue.Length) rvalue.Conductance {
	n := l.Divisor
	if n == 0 {
		n = defaultDivisor
	}
	return AirConductance(rvalue.AirFlow(float64(l.Flow50)/n), altitude)
}

// behind returns how much UA would go if the leakage met its target.
func (l Leakage) behind(altitude rvalue.Length) rvalue.Conductance {
	if l.Target50 == 0 || l.Volume == 0 {
		return 0
	}
	allowed := l
	allowed.Flow50 = ACH50(l.Target50, l.Volume)
	return max(0, l.UA(altitude)-allowed.UA(altitude))
}

// airHeat is the heat capacity of air at sea level in J/(m³·K):
// 0.075 lb/ft³ · 0.24 Btu/(lb·°F), so that 1 cfm carries 1.08 Btu/(h·°F),
// ASHRAE Handbook—Fundamentals.
const airHeat = 0.075 * 0.24 * float64(rvalue.BtuPerHourF) * 3600 / float64(rvalue.CubicFoot)

// AirConductance returns the heat that a flow of outdoor air takes per degree,
// at the density of the site's altitude.
func AirConductance(flow rvalue.AirFlow, altitude rvalue.Length) rvalue.Conductance {
	return rvalue.Conductance(float64(flow) * airHeat * RelativeDensity(altitude))
}

func airConductance(changes float64, volume rvalue.Volume, altitude rvalue.Length) rvalue.Conductance {
	return AirConductance(ACH50(changes, volume), altitude)
}

// RelativeDensity returns the density of air at an altitude over that at sea
// level at the same temperature: (1 − 6.8754e-6·Z[ft])^5.2559.
//
// Source: U.S. Standard Atmosphere, as ASHRAE Handbook—Fundamentals gives it.
// Below sea level and up to 20 000 ft.
func RelativeDensity(altitude rvalue.Length) float64 {
	return math.Pow(1-6.8754e-6*altitude.IP(), 5.2559)
}

// LeakageArea returns the effective leakage area at 4 Pa of a flow at 50 Pa,
// with a flow exponent of 0.65 and a discharge coefficient of 1.
//
// Source: ASHRAE Handbook—Fundamentals, ventilation and infiltration.
func LeakageArea(flow50 rvalue.AirFlow) rvalue.Area {
	const density = 1.2 // kg/m³
	flow4 := float64(flow50) * math.Pow(4.0/50, 0.65)
	return rvalue.Area(flow4 / math.Sqrt(2*4/density))
}

// BasicFlow returns the flow through a leakage area by the handbook's basic
// model, Q = A·√(C_s·Δt + C_w·v²), for 1, 2 or 3 storeys and a shelter class
// from 1 (none) to 5 (dense); class 3 is the typical suburb.
//
// Source: Sherman and Grimsrud; ASHRAE Handbook—Fundamentals, coefficients
// from memory.
func BasicFlow(area rvalue.Area, dT rvalue.TemperatureDifference, wind rvalue.Speed, storeys, class int) (rvalue.AirFlow, error) {
	if storeys < 1 || storeys > 3 || class < 1 || class > 5 {
		return 0, fmt.Errorf("envelope: %d storeys and shelter class %d, the model knows 1 to 3 and 1 to 5", storeys, class)
	}
	if !(area >= 0) || math.IsInf(float64(area), 1) || math.IsNaN(float64(dT)) || math.IsInf(float64(dT), 0) || !(wind >= 0) || math.IsInf(float64(wind), 1) {
		return 0, fmt.Errorf("envelope: a leakage area of %v m², %v K and a wind of %v m/s; all must be finite, area and wind not negative", float64(area), float64(dT), float64(wind))
	}
	stack := [...]float64{0.000145, 0.000290, 0.000435}[storeys-1] // (L/s)²/(cm⁴·K)
	gust := [5][3]float64{                                         // (L/s)²/(cm⁴·(m/s)²)
		{0.000319, 0.000420, 0.000494},
		{0.000246, 0.000325, 0.000382},
		{0.000174, 0.000231, 0.000271},
		{0.000104, 0.000137, 0.000161},
		{0.000032, 0.000042, 0.000049},
	}[class-1][storeys-1]
	cm2 := float64(area) * 1e4
	litres := cm2 * math.Sqrt(stack*math.Abs(float64(dT))+gust*float64(wind)*float64(wind))
	return rvalue.AirFlow(litres / 1000), nil
}
