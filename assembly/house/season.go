package house

import (
	"errors"
	"fmt"

	"github.com/coldseam/coldseam/assembly/envelope"
	"github.com/coldseam/coldseam/assembly/season"
	"github.com/coldseam/coldseam/climate"
)

// Season is what a mean year of the house takes, and what its heater must give.
type Season struct {
	Year    *season.Year
	All     season.Saving    // what goes if all that is behind just met what is asked
	Weather *climate.Weather // the station; nil with the file's own months
	Fuel    bool             // the file names the fuel; else money and CO2 are for gas, and mean little
}

// season computes the year of a ranked house; nil if its place is not known.
func (r *Report) season() (*Season, error) {
	h := r.House
	prepared, weather, from, err := h.weather()
	if err != nil || prepared == nil {
		return nil, err
	}
	in := season.House{
		Ranking: r.Ranking, Weather: prepared, Indoors: h.Indoors.Temperature,
		Floor: h.Living.Floor, Bedrooms: h.Living.Bedrooms, From: from,
	}
	if h.Living.Gains != nil {
		in.Gains = &season.Gains{Internal: *h.Living.Gains}
	}
	if h.Cooling != nil {
		in.Cooling = &season.Cooling{SEER: h.Cooling.SEER}
	}
	if h.Fuel != nil {
		if in.Fuel, in.Plant, err = h.Fuel.supply(); err != nil {
			return nil, fmt.Errorf("house: fuel: %w", err)
		}
	}
	if h.Fuel != nil {
		in.Currency = h.Fuel.Currency
	}
	s := &Season{Weather: weather, Fuel: h.Fuel != nil}
	if s.Year, err = in.Year(); err != nil {
		if h.Fuel != nil {
			return nil, h.Fuel.at.fail("fuel", err)
		}
		return nil, fmt.Errorf("house: %w", err)
	}
	fixes, err := r.fixes(nil)
	if err != nil {
		return nil, err
	}
	if s.All, err = s.Year.After(fixes...); err != nil {
		return nil, fmt.Errorf("house: %w", err)
	}
	return s, nil
}

// heater computes what the heater must give, as the house is and once nothing is
// behind. Without a year the file's design temperature will do; without that either,
// nothing is known.
func (r *Report) heater() error {
	design := r.House.Outdoors.Design
	fixes, err := r.fixes(nil)
	if err != nil || r.Season == nil && design == 0 {
		return err
	}
	load := func(fixes ...envelope.Fix) (*season.Load, error) {
		if r.Season != nil {
			l, err := r.Season.Year.Load(design, fixes...)
			return &l, err
		}
		l, err := season.DesignLoad(r.Ranking, r.House.Indoors.Temperature, design, fixes...)
		return &l, err
	}
	now, err := load()
	if errors.Is(err, season.ErrWarm) {
		return nil
	}
	if err == nil {
		r.Now = now
		r.Then, err = load(fixes...)
	}
	if err != nil {
		return fmt.Errorf("house: outdoors.design: %w", err)
	}
	return nil
}

// fixes returns what brings rows to their targets; nil rows stands for all that
// are behind.
func (r *Report) fixes(rows []int) ([]envelope.Fix, error) {
	if rows == nil {
		for i := range r.Ranking.Rows {
			if r.Ranking.Rows[i].Behind > 0 {
				rows = append(rows, i)
			}
		}
	}
	fixes := make([]envelope.Fix, 0, len(rows))
	for _, i := range rows {
		fix, err := r.Ranking.ToTarget(i)
		if err != nil {
			return nil, fmt.Errorf("house: part %q: %w", r.Ranking.Rows[i].Name, err)
		}
		fixes = append(fixes, fix)
	}
	return fixes, nil
}

// weather returns the prepared normals of the house's place: its own months, or
// those of the station nearest to its county. All are nil if it has neither.
func (h *House) weather() (*climate.Prepared, *climate.Weather, season.From, error) {
	if h.Months != nil {
		n, err := climate.Given{Mean: h.Months, Elevation: h.Altitude}.Normals()
		if err != nil {
			return nil, nil, 0, fmt.Errorf("house: months: %w", err)
		}
		p, err := n.Prepare()
		return &p, nil, season.OwnStation, err
	}
	county, err := climate.Parse(h.Place)
	if err != nil {
		return nil, nil, 0, nil // the place is free text, and the zone stands in the file
	}
	spot := county.Spot()
	if h.Altitude != 0 {
		spot.Elevation, spot.ElevationKnown = h.Altitude, true
	}
	w, err := climate.Nearest(spot)
	if err != nil {
		return nil, nil, 0, fmt.Errorf("house: place: %w", err)
	}
	p, err := w.Normals.Prepare()
	return &p, &w, season.FromOf(w, spot.ElevationKnown), err
}
