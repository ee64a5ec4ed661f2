package season

import (
	"fmt"

	"github.com/coldseam/coldseam/assembly/envelope"
	"github.com/coldseam/coldseam/rvalue"
)

// Gains is the heat that a house gets for nothing through the heating season: from
// people, lights and appliances, and from the sun through its windows, as means in W.
type Gains struct {
	Internal, Solar Power
}

// Sources of the default gains.
const (
	InternalSource = "IECC, internal gains of the simulated performance path, R405, from memory: " +
		"17900 Btu/day, 23.8 more per ft² of floor, 4104 more per bedroom"
	SolarSource = "20 W per m² of window through the heating season, " + noSource
)

// What a house is taken to be when it is not said, for its internal gains.
const (
	usualFloor    = 1500 * rvalue.SquareFoot
	usualBedrooms = 3
	solarPerArea  = 20.0 // W/m²: some 90 W/m² of sun on a mean wall, glass, frame, dirt and shade off
)

// InternalGains returns the mean heat of people, lights and appliances in a dwelling
// by its floor area, 10 to 10 000 m², and number of bedrooms, 0 to 50.
//
// Source: InternalSource.
func InternalGains(floor rvalue.Area, bedrooms int) (Power, error) {
	if a := floor.SI(); !(a >= 10 && a <= 10000) {
		return 0, fmt.Errorf("season: a floor area of %s m², give 10 to 10 000 m²", figure(a))
	}
	if bedrooms < 0 || bedrooms > 50 {
		return 0, fmt.Errorf("season: %d bedrooms, give 0 to 50", bedrooms)
	}
	// IECC, table of the standard reference design: IGain, in Btu/day
	perDay := 17900 + 23.8*floor.IP() + 4104*float64(bedrooms)
	return Power(perDay/24) * BtuPerHour, nil
}

// SolarGains returns the mean heat of the sun through windows over the heating season.
//
// Source: SolarSource.
func SolarGains(windows rvalue.Area) Power { return Power(solarPerArea*windows.SI()) * Watt }

// mostGains is more than any house has.
const mostGains = 100e3 * Watt

// gains returns what was given, or the defaults.
func (h *House) gains(defaults *[]Default) (Gains, error) {
	if h.Gains != nil {
		for _, p := range [...]Power{h.Gains.Internal, h.Gains.Solar} {
			if !(p >= 0 && p <= mostGains) {
				return Gains{}, fmt.Errorf("season: gains of %s W, give 0 to %s W", figure(p.SI()), figure(mostGains.SI()))
			}
		}
		return *h.Gains, nil
	}
	floor, bedrooms, value := h.Floor, h.Bedrooms, "by its floor and bedrooms"
	if floor == 0 {
		floor, value = usualFloor, "1500 ft² of floor"
	}
	if bedrooms == 0 {
		bedrooms = usualBedrooms
		value += ", 3 bedrooms"
	}
	internal, err := InternalGains(floor, bedrooms)
	if err != nil {
		return Gains{}, err
	}
	var windows rvalue.Area
	for i := range h.Ranking.Rows {
		if r := &h.Ranking.Rows[i]; r.Kind == envelope.Window || r.Kind == envelope.Skylight {
			windows += r.Area
		}
	}
	g := Gains{internal, SolarGains(windows)}
	*defaults = append(*defaults,
		Default{Code: "gains-internal", What: "heat of people and appliances", Value: g.Internal.In(rvalue.SI) + ", " + value, Source: InternalSource},
		Default{Code: "gains-solar", What: "heat of the sun through windows", Value: g.Solar.In(rvalue.SI), Source: SolarSource})
	return g, nil
}
