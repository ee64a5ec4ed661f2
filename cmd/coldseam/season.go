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
	heads := []string{heatPerYear[u]}
	if s.Fuel && s.Year.MoneyKnown {
		heads = append(heads, s.Year.Currency+"/yr")
	}
	return heads
}

var heatPerYear = map[rvalue.Units]string{rvalue.IP: "MMBtu/yr", rvalue.SI: "kWh/yr"}

// yearLegend says what the columns of a year are.
func yearLegend(s *house.Season, u rvalue.Units) string {
	if s == nil {
		return ""
	}
	text := "; " + heatPerYear[u] + ": the heat that goes by it in a mean year"
	if s.Fuel && s.Year.MoneyKnown {
		text += "; " + s.Year.Currency + "/yr: what that costs"
		if s.Year.Cooling.Heat > 0 {
			text += ", cooling included"
		}
	}
	return text
}

// yearOf fills the columns of a year for a row of the ranking, -1 for the whole.
func yearOf(s *house.Season, row int, u rvalue.Units) []string {
	if s == nil {
		return nil
	}
	heating, cooling := s.Year.Heating, s.Year.Cooling
	if row >= 0 {
		heating, cooling = s.Year.Rows[row].Heating, s.Year.Rows[row].Cooling
	}
	cells := []string{heatCell(heating.Heat, u)}
	if s.Fuel && s.Year.MoneyKnown {
		cells = append(cells, fmt.Sprintf("%.0f", heating.Money+cooling.Money))
	}
	return cells
}

// heatCell prints a year's heat, next to none as 0.
func heatCell(heat season.Energy, u rvalue.Units) string {
	if heat < season.KilowattHour && heat > -season.KilowattHour {
		return "0"
	}
	return figure(heat, u)
}

// counted says an amount of fuel: "999 therms", "1 gallon", "18200 kWh".
func counted(amount float64, unit season.Unit) string {
	if amount < 0.005 && amount > -0.005 {
		return "next to nothing"
	}
	number, name := about(fmt.Sprintf("%.3g", amount)), unit.String()
	switch unit {
	case season.PerTherm, season.PerGallon, season.PerLitre, season.PerCord, season.PerTon:
		if number != "1" {
			name += "s"
		}
	}
	return number + " " + name
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

// noYear says what is missing for a year of heat.
const noYear = "not known: a climate zone does not say how long and cold the winter is; write the county and state in place, or twelve monthly means in months"

// seasonText says what a mean year takes and what the heater must give.
func seasonText(w io.Writer, r *house.Report, u rvalue.Units) {
	fmt.Fprintln(w)
	s := r.Season
	if s == nil {
		wrap(w, "a mean year:            ", noYear, textWidth)
		heaterText(w, r, u)
		return
	}
	y := s.Year
	text := heatCellText(y.Heating.Heat, u) + " of heat"
	if s.Fuel {
		text += fmt.Sprintf(", which takes %s of %s", counted(y.Heating.Units, y.Unit), y.Fuel)
		if y.MoneyKnown {
			text += ", " + money(y.Heating.Money, y.Currency)
		}
		if y.CO2Known {
			text += ", " + about(y.Heating.CO2.In(u)) + " of CO2"
		}
	}
	wrap(w, "a mean year:            ", text+"; "+trusted(y.Trust), textWidth)
	text = fmt.Sprintf("below %s outside, where the free heat of people, appliances and sun no longer does: %s", y.Balance.In(u), about(y.DegreeDays.In(u)))
	if s.Weather != nil {
		text += fmt.Sprintf(" by the weather of %s, %s, %s from the middle of the county", s.Weather.Station.Name, s.Weather.Station.State, climate.Overland(s.Weather.Distance, u))
	} else {
		text += " by the months that the file gives"
	}
	wrap(w, "it is heated:           ", text, textWidth)
	if y.Cooling.Heat > 0 {
		text := fmt.Sprintf("%s taken out through the envelope alone, without sun and damp", heatCellText(y.Cooling.Heat, u))
		if y.MoneyKnown && s.Fuel {
			text += ", " + money(y.Cooling.Money, y.Currency)
		}
		wrap(w, "it is cooled:           ", text, textWidth)
	}
	if saved := s.All.Heating.Heat; saved > season.KilowattHour {
		text := about(saved.In(u)) + " less a year"
		if y.MoneyKnown && s.Fuel {
			text += ", " + money(s.All.Money, y.Currency)
		}
		text += fmt.Sprintf(", if all that is behind just met what is asked; count on %s to %s of that, since in measured houses %s of what was predicted came true", percent(s.All.Trust.Low), percent(s.All.Trust.High), percent(season.Realisation))
		wrap(w, "it could be:            ", text, textWidth)
	}
	heaterText(w, r, u)
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
}

// hopeless is how many times too large the truth may be before a range says nothing.
const hopeless = 3

// trusted says between what the truth is.
func trusted(t season.Trust) string {
	switch {
	case t.High > hopeless || t.Low == 0 && t.High == 1:
		return "so little that the method cannot tell it from none"
	case t.Low <= 0:
		return fmt.Sprintf("the truth is likely below %.2f times that", t.High)
	}
	return fmt.Sprintf("the truth is likely between %.2f and %.2f times that", t.Low, t.High)
}

func heatCellText(heat season.Energy, u rvalue.Units) string {
	if heatCell(heat, u) == "0" {
		return "next to none"
	}
	return about(heat.In(u))
}

// heaterText says what the heater must give.
func heaterText(w io.Writer, r *house.Report, u rvalue.Units) {
	now, then := r.Now, r.Then
	if now == nil {
		return
	}
	text := fmt.Sprintf("%s of heat into the rooms at %s outside", power(now.Loss, u), now.Outdoors.In(u))
	if now.Estimate {
		text += fmt.Sprintf(", an estimate: from %s to %s by the doubt in that temperature; the building department knows the local one", about(now.Low.In(u)), about(now.High.In(u)))
	}
	if then.Loss < now.Loss {
		text += fmt.Sprintf("; %s once nothing is behind", power(then.Loss, u))
	}
	wrap(w, "the heater must give:   ", text+". Drafts count at the winter's mean and are stronger on such a day; catching up after a cool night, and ducts outside the rooms, are not counted", textWidth)
}

// power prints a heat flow, by the ton too where that is a unit.
func power(p season.Power, u rvalue.Units) string {
	if u == rvalue.IP {
		return fmt.Sprintf("%s (%.1f tons)", about(p.In(u)), p.Tons())
	}
	return about(p.In(u))
}

// yearUse is a year's use in JSON; what depends on a fuel is null where none is named.
type yearUse struct {
	Heat   quantity  `json:"heat"`
	Bought *quantity `json:"bought"`
	Amount *number   `json:"amount"` // in the unit of the season
	Money  *number   `json:"money"`
	CO2    *quantity `json:"co2"`
}

// yearUses are heating and cooling, and the money of both.
type yearUses struct {
	Heating *yearUse `json:"heating"`
	Cooling *yearUse `json:"cooling"` // null where nothing cools
	Money   *number  `json:"money"`
}

func usesOf(s *house.Season, heating, cooling season.Use) *yearUses {
	one := func(u season.Use) *yearUse {
		out := &yearUse{Heat: q(u.Heat)}
		if !s.Fuel {
			return out
		}
		bought, amount := q(u.Bought), number(u.Units)
		out.Bought, out.Amount = &bought, &amount
		if s.Year.MoneyKnown {
			m := number(u.Money)
			out.Money = &m
		}
		if s.Year.CO2Known {
			c := q(u.CO2)
			out.CO2 = &c
		}
		return out
	}
	out := &yearUses{Heating: one(heating)}
	if s.Year.CoolingUnit != 0 {
		out.Cooling = one(cooling)
	}
	if s.Fuel && s.Year.MoneyKnown {
		m := number(heating.Money + cooling.Money)
		out.Money = &m
	}
	return out
}

// loadObject is what a heater must give in JSON.
type loadObject struct {
	Outdoors quantity `json:"outdoors"`
	Estimate bool     `json:"estimate"`
	Loss     quantity `json:"loss"`
	Low      quantity `json:"low"`
	High     quantity `json:"high"`
	Tons     number   `json:"tons"`
}

func loadOf(l *season.Load) *loadObject {
	if l == nil {
		return nil
	}
	return &loadObject{q(l.Outdoors), l.Estimate, q(l.Loss), q(l.Low), q(l.High), number(l.Tons())}
}

func seasonObject(s *house.Season) any {
	type trust struct {
		Low  number   `json:"low"`
		High number   `json:"high"`
		Why  []string `json:"why"`
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
	out := struct {
		Year       *yearUses `json:"year"`
		Saving     *yearUses `json:"saving_of_all"`
		Realised   trust     `json:"saving_trust"`
		Trust      trust     `json:"trust"`
		Balance    quantity  `json:"balance_temperature"`
		DegreeDays quantity  `json:"degree_days"`
		Fuel       *string   `json:"fuel"` // null: none is named
		Unit       *string   `json:"unit"`
		Currency   string    `json:"currency"`
		Weather    *weather  `json:"weather"` // null: the months of the file
		Defaults   []filled  `json:"defaults"`
		Warnings   []warning `json:"warnings"`
	}{
		Year: usesOf(s, y.Heating, y.Cooling), Saving: usesOf(s, s.All.Heating, s.All.Cooling),
		Trust:    trust{number(y.Trust.Low), number(y.Trust.High), y.Trust.Why},
		Realised: trust{number(s.All.Trust.Low), number(s.All.Trust.High), s.All.Trust.Why},
		Balance:  q(y.Balance), DegreeDays: q(y.DegreeDays), Currency: y.Currency,
		Defaults: []filled{}, Warnings: []warning{},
	}
	if s.Fuel {
		fuel, unit := y.Fuel.String(), y.Unit.String()
		out.Fuel, out.Unit = &fuel, &unit
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
