package house

import (
	"slices"
	"strconv"
	"strings"

	"github.com/coldseam/coldseam/assembly/season"
	"github.com/coldseam/coldseam/rvalue"
)

var (
	fuelKinds  = []string{"gas", "propane", "oil", "electricity", "heat pump", "wood", "pellets", "district heat"}
	fuelUnits  = []string{"therm", "ccf", "mcf", "kWh", "MJ", "GJ", "gallon", "litre", "m3", "cord", "ton", "kg", "million Btu"}
	plantKinds = []string{"furnace", "boiler", "stove", "resistance", "heat pump", "heat exchanger"}
)

// season reads what a year of heat depends on: fuel and plant, the people in the
// house, cooling, and the months of a place that no list has.
func (d *decoder) season(s *section) {
	d.fuel(s)
	if l := s.sub("living"); l != nil {
		d.h.Living.Floor, _ = quantity(l, "floor", "1240 ft2", rvalue.ParseArea)
		d.h.Living.Bedrooms, _ = l.count("bedrooms", 50)
		d.h.Living.Gains, _ = quantity(l, "gains", "2000 Btu/h", power)
		l.done()
	}
	if c := s.sub("cooling"); c != nil {
		d.h.Cooling = &Cooling{}
		d.h.Cooling.SEER, _ = c.number("seer", 4, 40)
		c.done()
	}
	d.months(s)
}

func (d *decoder) fuel(s *section) {
	f := s.sub("fuel")
	if f == nil {
		return
	}
	r := &Fuel{}
	d.h.Fuel = r
	if i, ok := f.choice("kind", fuelKinds); ok {
		r.Kind = fuelKinds[i]
	}
	f.missing("kind", "the kind of fuel is missing; write kind = %s", either(fuelKinds))
	if i, ok := f.choice("plant", plantKinds); ok {
		r.Plant = plantKinds[i]
	}
	r.Price, _ = f.number("price", 0, 1e6)
	if i, ok := f.choice("per", fuelUnits); ok {
		r.Per = fuelUnits[i]
	}
	if f.has("price") != f.has("per") {
		f.fail("price", "a price goes with what it is paid for; write such as price = 1.40, per = \"therm\"")
	}
	r.Efficiency, _ = quantity(f, "efficiency", "80 %", efficiency)
	r.COP, _ = f.number("cop", 1, 12)
	r.HSPF, _ = f.number("hspf", 3.42, 40)
	r.HSPF2, _ = f.number("hspf2", 3.42, 40)
	given := 0
	for _, key := range []string{"efficiency", "cop", "hspf", "hspf2"} {
		if f.has(key) {
			if given++; given > 1 {
				f.fail(key, "efficiency, cop, hspf and hspf2 say the same thing; write one of them")
			}
		}
	}
	pump := r.Kind == "heat pump" || r.Plant == "heat pump"
	switch {
	case r.Efficiency > 1 && !pump:
		f.fail("efficiency", "%.4g %% is more heat than the fuel has; write up to 100 %%, or plant = \"heat pump\"", 100*r.Efficiency)
	case r.Efficiency > 0 && r.Efficiency < 1 && pump:
		f.fail("efficiency", "%.4g %% is less than a heat pump gives; write from 100 %%, or its hspf or cop", 100*r.Efficiency)
	case !pump && (r.COP > 0 || r.HSPF > 0 || r.HSPF2 > 0):
		f.fail("kind", "cop, hspf and hspf2 are a heat pump's; write plant = \"heat pump\" or an efficiency")
	}
	if r.Plant != "" && r.Kind != "" && !slices.Contains(plantsFor(r.Kind), r.Plant) {
		f.fail("plant", "a %s does not run on %s; write plant = %s", r.Plant, r.Kind, either(plantsFor(r.Kind)))
	}
	f.done()
}

// plantsFor lists the plants that a kind of fuel runs.
func plantsFor(kind string) []string {
	switch kind {
	case "electricity":
		return []string{"resistance", "heat pump"}
	case "heat pump":
		return []string{"heat pump"}
	case "district heat":
		return []string{"heat exchanger"}
	}
	return []string{"furnace", "boiler", "stove"}
}

// efficiency reads "80 %"; a heat pump gives up to twelve times what it takes.
func efficiency(text string) (float64, error) {
	number, ok := strings.CutSuffix(strings.TrimSpace(text), "%")
	v, err := strconv.ParseFloat(strings.TrimSpace(number), 64)
	if !ok || err != nil || !(v >= 10 && v <= 1200) {
		return 0, &rvalue.ParseError{Text: text, Msg: `no efficiency, write such as "80 %" (a heat pump's may be above 100 %)`}
	}
	return v / 100, nil
}

// power reads a heat flow, "2000 Btu/h" or "600 W".
func power(text string) (season.Power, error) {
	fail := &rvalue.ParseError{Text: text, Msg: `no heat flow, write such as "2000 Btu/h" or "600 W"`}
	trimmed := strings.TrimSpace(text)
	for _, u := range []struct {
		name string
		unit season.Power
	}{{"Btu/h", season.BtuPerHour}, {"kW", 1000 * season.Watt}, {"W", season.Watt}} {
		number, ok := strings.CutSuffix(trimmed, u.name)
		if !ok {
			continue
		}
		v, err := strconv.ParseFloat(strings.TrimSpace(number), 64)
		if err != nil || !(v >= 0 && v <= 1e6) {
			return 0, fail
		}
		return season.Power(v * float64(u.unit)), nil
	}
	return 0, fail
}

// months reads twelve monthly mean temperatures, January first.
func (d *decoder) months(s *section) {
	e := s.get("months")
	if e == nil {
		return
	}
	if e.value.kind != array {
		s.fail("months", "%s; write twelve monthly mean temperatures, January first: months = [ \"12 °F\", … ]", e.value.is())
		return
	}
	if n := len(e.value.items); n != 12 {
		s.fail("months", "%d monthly temperatures; a year has 12, January first", n)
		return
	}
	for _, item := range e.value.items {
		if item.kind == broken {
			continue
		}
		if item.kind != text {
			d.fail(item.at, "months", "%s; write a temperature with its unit, in quotes", item.is())
			continue
		}
		t, err := rvalue.ParseTemperature(item.text)
		if err != nil {
			d.fail(item.at, "months", "%s", plain(err))
			continue
		}
		if c := t.Celsius(); c < -60 || c > 50 {
			d.fail(item.at, "months", "%q is no monthly mean of a place where people live; write one from -60 °C to 50 °C", item.text)
			continue
		}
		d.h.Months = append(d.h.Months, t)
	}
}

// supply turns the file's words into package season's.
func (f *Fuel) supply() (season.Fuel, season.Plant, error) {
	var fuel season.Fuel
	var plant season.Plant
	var err error
	kind := f.Kind
	if kind == "heat pump" {
		kind, plant.Kind = "electricity", season.HeatPump
	}
	if kind != "" {
		if fuel.Kind, err = season.ParseFuel(kind); err != nil {
			return fuel, plant, err
		}
	}
	if f.Plant != "" {
		if plant.Kind, err = season.ParsePlant(f.Plant); err != nil {
			return fuel, plant, err
		}
	}
	if f.Per != "" {
		price := season.Price{Amount: f.Price}
		if price.Per, err = season.ParseUnit(f.Per); err != nil {
			return fuel, plant, err
		}
		fuel.Price = &price
	}
	plant.COP, plant.HSPF, plant.HSPF2 = f.COP, f.HSPF, f.HSPF2
	if plant.Kind == season.HeatPump {
		plant.COP = max(plant.COP, f.Efficiency)
	} else {
		plant.Efficiency = f.Efficiency
	}
	return fuel, plant, nil
}
