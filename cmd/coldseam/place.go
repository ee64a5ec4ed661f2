package main

import (
	"fmt"
	"io"

	"github.com/coldseam/coldseam/climate"
	"github.com/coldseam/coldseam/rvalue"
)

// place is what is known of a county's climate.
type place struct {
	county   climate.County
	altitude *rvalue.Length // nil: not given
	weather  climate.Weather
	year     climate.Prepared
	at65     climate.Year
	base     rvalue.Temperature // 0: not asked for
	atBase   climate.Year
	design   climate.DesignTemperature
}

// base65 is the base of published degree days.
var base65 = rvalue.FromFahrenheit(65)

// findPlace looks a county up, with the weather station nearest to it.
func findPlace(c command, text string) (place, error) {
	var p place
	var err error
	if p.county, err = climate.Parse(text); err != nil {
		return p, err
	}
	spot := p.county.Spot()
	if v := c.text("altitude"); v != "" {
		if spot.Elevation, err = climate.ParseElevation(v); err != nil {
			return p, usageError{"--altitude " + message(err)}
		}
		spot.ElevationKnown = true
		p.altitude = &spot.Elevation
	}
	if p.weather, err = climate.Nearest(spot); err != nil {
		return p, err
	}
	if p.year, err = p.weather.Normals.Prepare(); err != nil {
		return p, err
	}
	if p.at65, err = p.year.Year(base65); err != nil {
		return p, err
	}
	if v := c.text("base"); v != "" {
		if p.base, err = rvalue.ParseTemperature(v); err != nil {
			return p, usageError{"--base " + message(err)}
		}
		if p.atBase, err = p.year.Year(p.base); err != nil {
			return p, usageError{"--base " + message(err)}
		}
	}
	p.design = p.year.HeatingDesign()
	return p, nil
}

func placeText(w io.Writer, p place, u rvalue.Units) {
	fmt.Fprintf(w, "%s (FIPS %s)\n", p.county, p.county.Code())
	fmt.Fprintf(w, "zone %s in the code's editions of 2006 to 2018, zone %s since 2021\n\n", p.county.Zone15, p.county.Zone21)
	s := p.weather.Station
	carried := ""
	if p.altitude != nil {
		carried = ", carried to the altitude given, " + climate.Height(*p.altitude, u)
	}
	wrap(w, "", fmt.Sprintf("weather of %s, %s, at %s, %s from the middle of the county, normals of 1981 to 2010%s",
		s.Name, s.State, climate.Height(s.Elevation(), u), climate.Overland(p.weather.Distance, u), carried), textWidth)
	degreeDays := func(base rvalue.Temperature, y climate.Year) {
		fmt.Fprintf(w, "degree days at %s: heating %s, cooling %s\n", base.In(u), y.Heating.In(u), y.Cooling.In(u))
	}
	degreeDays(base65, p.at65)
	if p.base != 0 {
		degreeDays(p.base, p.atBase)
	}
	fmt.Fprintf(w, "a cold day for sizing a heater: %s, give or take %s\n", p.design.Temperature.In(u), p.design.Doubt.In(u))
	wrap(w, "  ", p.design.How, textWidth)
	for _, r := range append(p.weather.Remarks(u), p.county.Note) {
		if r != "" {
			wrap(w, "· ", r, textWidth)
		}
	}
	wrap(w, "· ", "zones: county table of PNNL report PNNL-33270 (2022); weather: "+climate.NormalsSource, textWidth)
	fmt.Fprintln(w)
}

type degreeDaysObject struct {
	Base    quantity `json:"base"`
	Heating quantity `json:"heating"`
	Cooling quantity `json:"cooling"`
}

func placeObject(p place, u rvalue.Units) any {
	type station struct {
		Name     string   `json:"name"`
		State    string   `json:"state"`
		Distance quantity `json:"distance"`
		Altitude quantity `json:"altitude"`
		Remarks  []string `json:"remarks"`
	}
	type design struct {
		Temperature quantity `json:"temperature"`
		Doubt       quantity `json:"doubt"`
		How         string   `json:"how"`
	}
	out := struct {
		County     string             `json:"county"`
		FIPS       string             `json:"fips"`
		Altitude   *quantity          `json:"altitude,omitempty"`
		Before2021 string             `json:"zone_until_2018"`
		Since2021  string             `json:"zone_since_2021"`
		Station    station            `json:"station"`
		DegreeDays []degreeDaysObject `json:"degree_days"`
		Design     design             `json:"heating_design"`
		Note       string             `json:"note,omitempty"`
	}{
		County: p.county.String(), FIPS: p.county.Code(),
		Before2021: p.county.Zone15.String(), Since2021: p.county.Zone21.String(),
		Station:    station{p.weather.Station.Name, p.weather.Station.State, q(p.weather.Distance), q(p.weather.Station.Elevation()), append([]string{}, p.weather.Remarks(u)...)},
		DegreeDays: []degreeDaysObject{{q(base65), q(p.at65.Heating), q(p.at65.Cooling)}},
		Design:     design{q(p.design.Temperature), q(p.design.Doubt), p.design.How}, Note: p.county.Note,
	}
	if p.altitude != nil {
		a := q(*p.altitude)
		out.Altitude = &a
	}
	if p.base != 0 {
		out.DegreeDays = append(out.DegreeDays, degreeDaysObject{q(p.base), q(p.atBase.Heating), q(p.atBase.Cooling)})
	}
	return out
}
