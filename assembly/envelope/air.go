package envelope

import (
	"fmt"
	"math"

	"github.com/coldseam/coldseam/rvalue"
)

// airHeat is the heat capacity of air at sea level in J/(m³·K):
// 0.075 lb/ft³ · 0.24 Btu/(lb·°F), so that 1 cfm carries 1.08 Btu/(h·°F).
// The derivation was seen; another handbook page prints 0.019 for the 0.018
// Btu/(ft³·°F) of this product.
const airHeat = 0.075 * 0.24 * float64(rvalue.BtuPerHourF) * 3600 / float64(rvalue.CubicFoot)

// AirSource says what AirConductance goes by.
const AirSource = "1.08 Btu/h for each cubic foot a minute and °F, of air of 0.075 lb/ft³ and 0.24 Btu/(lb·°F) (ASHRAE Handbook—Fundamentals), thinner by the altitude (U.S. Standard Atmosphere); of a flow at 50 Pa the part that flows through a winter (Lawrence Berkeley)"

// AirConductance returns the heat that a flow of outdoor air takes per degree,
// at the density of the site's altitude.
func AirConductance(flow rvalue.AirFlow, altitude rvalue.Length) rvalue.Conductance {
	return rvalue.Conductance(float64(flow) * airHeat * RelativeDensity(altitude))
}

// RelativeDensity returns the density of air at an altitude over that at sea
// level, at the same temperature. It is meant for the altitudes of houses, and
// is NaN above 145 000 ft.
//
// Source: U.S. Standard Atmosphere, pressure by altitude.
func RelativeDensity(altitude rvalue.Length) float64 {
	// (1 − 6.8754e-6·Z)^5.2559, Z in ft
	return math.Pow(1-6.8754e-6*altitude.IP(), 5.2559)
}

// What LeakageArea assumes.
const (
	flowExponent    = 0.65 // of pressure; of most houses, ASHRAE Handbook—Fundamentals
	standardDensity = 1.2  // kg/m³
	areaPressure    = 4.0  // Pa, at which the area is stated
	doorPressure    = 50.0 // Pa, of the blower door
)

// LeakageArea returns the effective leakage area at 4 Pa of a flow at 50 Pa,
// with a flow exponent of 0.65 and a discharge coefficient of 1. It is as
// large as a hole through which as much air would flow.
//
// Source: ASHRAE Handbook—Fundamentals, ventilation and infiltration.
func LeakageArea(flow50 rvalue.AirFlow) rvalue.Area {
	// Q = C·ΔP^n, A = Q_4/√(2·ΔP/ρ)
	flow4 := float64(flow50) * math.Pow(areaPressure/doorPressure, flowExponent)
	return rvalue.Area(flow4 / math.Sqrt(2*areaPressure/standardDensity))
}

// The coefficients of the basic model by storeys 1 to 3, and of wind by
// shelter class 1 to 5: ASHRAE Handbook—Fundamentals, from memory.
var (
	stackFactor = [3]float64{0.000145, 0.000290, 0.000435} // (L/s)²/(cm⁴·K)
	windFactor  = [5][3]float64{                           // (L/s)²/(cm⁴·(m/s)²)
		{0.000319, 0.000420, 0.000494},
		{0.000246, 0.000325, 0.000382},
		{0.000174, 0.000231, 0.000271},
		{0.000104, 0.000137, 0.000161},
		{0.000032, 0.000042, 0.000049},
	}
)

// BasicFlow returns the flow of outdoor air through a leakage area (of
// [LeakageArea]) at one temperature difference and wind, Q = A·√(C_s·Δt +
// C_w·v²), for 1, 2 or 3 storeys and a shelter class from 1 (none) to 5
// (dense); 3 is the typical suburb. The wind is the weather station's. It is
// an alternative to [Divide] where the season is known.
//
// Source: Sherman and Grimsrud's basic model; ASHRAE Handbook—Fundamentals.
func BasicFlow(area rvalue.Area, dT rvalue.TemperatureDifference, wind rvalue.Speed, storeys, class int) (rvalue.AirFlow, error) {
	if storeys < 1 || storeys > len(stackFactor) || class < 1 || class > len(windFactor) {
		return 0, fmt.Errorf("envelope: %d storeys and shelter class %d, the model knows 1 to %d and 1 to %d", storeys, class, len(stackFactor), len(windFactor))
	}
	if !(area >= 0) || math.IsInf(float64(area), 1) || math.IsNaN(float64(dT)) || math.IsInf(float64(dT), 0) || !(wind >= 0) || math.IsInf(float64(wind), 1) {
		return 0, fmt.Errorf("envelope: a leakage area of %v m², %v K and a wind of %v m/s; all must be finite, area and wind not negative", float64(area), float64(dT), float64(wind))
	}
	const cm2, litre = 1e4, 1e-3 // per m²; in m³
	v := float64(wind)
	root := math.Sqrt(stackFactor[storeys-1]*math.Abs(float64(dT)) + windFactor[class-1][storeys-1]*v*v)
	return rvalue.AirFlow(float64(area) * cm2 * root * litre), nil
}
