package main

import (
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"github.com/coldseam/coldseam/assembly/house"
	"github.com/coldseam/coldseam/assembly/season"
	"github.com/coldseam/coldseam/climate"
	"github.com/coldseam/coldseam/rvalue"
)

// yearHeads heads the columns of a year, if there is one.
func yearHeads(s *house.Season, u rvalue.Units) []string {
	if s == nil {
		return nil
	}
	heads := []string{map[rvalue.Units]string{rvalue.IP: "MMBtu/yr", rvalue.SI: "kWh/yr"}[u]}
	if s.Fuel && s.Year.MoneyKnown {
		heads = append(heads, s.Year.Currency+"/yr")
	}
	return heads
}

// yearOf fills the columns of a year for a row of the ranking, -1 for the whole.
func yearOf(s *house.Season, row int, u rvalue.Units) []string {
	if s == nil {
		return nil
	}
	use := s.Year.Heating
	if row >= 0 {
		use = s.Year.Rows[row].Heating
	}
	cells := []string{figure(use.Heat, u)}
	if s.Fuel && s.Year.MoneyKnown {
		cells = append(cells, fmt.Sprintf("%.0f", use.Money))
	}
	return cells
}

func money(amount float64, currency string) string {
	return currency + about(fmt.Sprintf("%.0f", amount))
}

// about rounds the number that a text starts with to three significant digits,
// more than an estimate of a year deserves.
func about(text string) string {
	number, unit, _ := strings.Cut(text, " ")
	v, err := strconv.ParseFloat(number, 64)
	if err != nil || math.Abs(v) < 100 {
		return text
	}
	v, err = strconv.ParseFloat(strconv.FormatFloat(v, 'e', 2, 64), 64)
	if err != nil {
		return text
	}
	return strings.TrimSpace(strconv.FormatFloat(v, 'f', 0, 64) + " " + unit)
}

// seasonText says what a mean year takes and what the heater must give.
func seasonText(w io.Writer, s *house.Season, u rvalue.Units) {
	y := s.Year
	fmt.Fprintln(w)
	text := about(y.Heating.Heat.In(u)) + " of heat"
	if s.Fuel {
		text += fmt.Sprintf(", which takes %s %s of %s", about(fmt.Sprintf("%.3g", y.Heating.Units)), y.Unit, y.Fuel)
		if y.MoneyKnown {
			text += ", " + money(y.Heating.Money, y.Currency)
		}
		if y.CO2Known {
			text += ", " + about(y.Heating.CO2.In(u)) + " of CO2"
		}
	}
	text += fmt.Sprintf("; the truth is likely between %.2f and %.2f times that", y.Trust.Low, y.Trust.High)
	wrap(w, "a mean year:            ", text, textWidth)
	text = fmt.Sprintf("below %s outside, where the free heat of people, appliances and sun no longer does: %s", y.Balance.In(u), about(y.DegreeDays.In(u)))
	if s.Weather != nil {
		text += fmt.Sprintf(" by the weather of %s, %s, %s away", s.Weather.Station.Name, s.Weather.Station.State, climate.Overland(s.Weather.Distance, u))
	}
	wrap(w, "it is heated:           ", text, textWidth)
	if y.Cooling.Heat > 0 {
		text := fmt.Sprintf("%s taken out through the envelope alone, without sun and damp", about(y.Cooling.Heat.In(u)))
		if y.MoneyKnown && s.Fuel {
			text += ", " + money(y.Cooling.Money, y.Currency)
		}
		wrap(w, "it is cooled:           ", text, textWidth)
	}
	if saved := s.All.Heating.Heat; saved > 0 {
		text := fmt.Sprintf("%s less a year if all that is behind just met what is asked; count on %s to %s of that, since in measured houses %s of what was predicted came true", about(saved.In(u)), percent(s.All.Trust.Low), percent(s.All.Trust.High), percent(season.Realisation))
		wrap(w, "it could be:            ", text, textWidth)
	}
	text = fmt.Sprintf("%s (%.1f tons) at %s outside", about(s.Now.Loss.In(u)), s.Now.Tons(), s.Now.Outdoors.In(u))
	if s.Now.Estimate {
		text += fmt.Sprintf(", an estimate: from %s to %s; the building department knows the local design temperature", about(s.Now.Low.In(u)), about(s.Now.High.In(u)))
	}
	if s.Then.Loss < s.Now.Loss {
		text += fmt.Sprintf("; %s (%.1f tons) once nothing is behind", about(s.Then.Loss.In(u)), s.Then.Tons())
	}
	wrap(w, "the heater must give:   ", text, textWidth)
	if len(y.Defaults) > 0 {
		fmt.Fprintln(w, "\nfilled in for the year:")
		for _, d := range y.Defaults {
			if !s.Fuel && !strings.HasPrefix(d.Code, "gains") && d.Code != "indoors" && !strings.Contains(d.Code, "cooling") {
				continue // of a fuel that nobody named
			}
			date := ""
			if d.Date != "" {
				date = ", " + d.Date
			}
			wrap(w, "· ", fmt.Sprintf("%s = %s (%s%s)", d.What, d.Value, d.Source, date), textWidth)
		}
	}
	for _, m := range y.Remarks {
		wrap(w, "· ", m.Text, textWidth)
	}
}

// yearUse is a year's use in JSON.
type yearUse struct {
	Heat   quantity `json:"heat"`
	Bought quantity `json:"bought"`
	Units  number   `json:"units"`
	Money  *number  `json:"money"`
	CO2    quantity `json:"co2"`
}

func useOf(s *house.Season, u season.Use) *yearUse {
	out := &yearUse{Heat: q(u.Heat), Bought: q(u.Bought), Units: number(u.Units), CO2: q(u.CO2)}
	if s.Fuel && s.Year.MoneyKnown {
		m := number(u.Money)
		out.Money = &m
	}
	return out
}

func seasonObject(s *house.Season) any {
	type trust struct {
		Low  number   `json:"low"`
		High number   `json:"high"`
		Why  []string `json:"why"`
	}
	type load struct {
		Outdoors quantity `json:"outdoors"`
		Estimate bool     `json:"estimate"`
		Loss     quantity `json:"loss"`
		Low      quantity `json:"low"`
		High     quantity `json:"high"`
		Tons     number   `json:"tons"`
	}
	type filled struct {
		Code   string `json:"code"`
		What   string `json:"what"`
		Value  string `json:"value"`
		Source string `json:"source"`
		Date   string `json:"date,omitempty"`
	}
	type weather struct {
		Station  string   `json:"station"`
		State    string   `json:"state"`
		Distance quantity `json:"distance"`
	}
	y := s.Year
	loadOf := func(l season.Load) load {
		return load{q(l.Outdoors), l.Estimate, q(l.Loss), q(l.Low), q(l.High), number(l.Tons())}
	}
	out := struct {
		Heating    *yearUse  `json:"heating"`
		Cooling    *yearUse  `json:"cooling"`
		Saving     *yearUse  `json:"saving_of_all"`
		Realised   trust     `json:"saving_trust"`
		Trust      trust     `json:"trust"`
		Balance    quantity  `json:"balance_temperature"`
		DegreeDays quantity  `json:"degree_days"`
		Fuel       string    `json:"fuel"`
		FuelGiven  bool      `json:"fuel_given"`
		Unit       string    `json:"unit"`
		Currency   string    `json:"currency"`
		Now        load      `json:"load_now"`
		Then       load      `json:"load_once_nothing_is_behind"`
		Weather    *weather  `json:"weather,omitempty"`
		Defaults   []filled  `json:"defaults"`
		Warnings   []warning `json:"warnings"`
	}{
		Heating: useOf(s, y.Heating), Cooling: useOf(s, y.Cooling), Saving: useOf(s, s.All.Heating),
		Trust:    trust{number(y.Trust.Low), number(y.Trust.High), y.Trust.Why},
		Realised: trust{number(s.All.Trust.Low), number(s.All.Trust.High), s.All.Trust.Why},
		Balance:  q(y.Balance), DegreeDays: q(y.DegreeDays), Fuel: y.Fuel.String(), FuelGiven: s.Fuel, Unit: y.Unit.String(), Currency: y.Currency,
		Now: loadOf(s.Now), Then: loadOf(s.Then), Defaults: []filled{}, Warnings: []warning{},
	}
	if s.Weather != nil {
		out.Weather = &weather{s.Weather.Station.Name, s.Weather.Station.State, q(s.Weather.Distance)}
	}
	for _, d := range y.Defaults {
		out.Defaults = append(out.Defaults, filled(d))
	}
	for _, m := range y.Remarks {
		out.Warnings = append(out.Warnings, warning{m.Code, m.Text, m.Place})
	}
	return out
}
