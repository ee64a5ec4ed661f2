package house

import (
	"cmp"
	"fmt"
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

// season reads what a year of heat depends on besides the place: fuel and plant, the
// people in the house, cooling.
func (d *decoder) season(s *section) {
	d.fuel(s)
	if l := s.sub("living"); l != nil {
		d.h.Living.Floor, _ = quantity(l, "floor", "1240 ft2", floorArea)
		d.h.Living.Bedrooms, _ = l.count("bedrooms", 50)
		if gains, ok := quantity(l, "gains", "2000 Btu/h", power); ok {
			d.h.Living.Gains = &gains
		}
		l.done()
	}
	if c := s.sub("cooling"); c != nil {
		d.h.Cooling = &Cooling{}
		d.h.Cooling.SEER, _ = c.number("seer", 4, 40)
		c.done()
	}
}

func (d *decoder) fuel(s *section) {
	f := s.sub("fuel")
	if f == nil {
		return
	}
	mistakes := len(d.errs)
	r := &Fuel{at: place{d.src, f.t}}
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
	r.Currency, _ = f.text("currency")
	if f.has("price") != f.has("per") {
		f.fail("price", "a price goes with what it is paid for; write such as price = 1.40, per = \"therm\"")
	}
	if e := f.t.index["efficiency"]; e != nil && (e.value.kind == float || e.value.kind == integer) {
		f.get("efficiency")
		f.fail("efficiency", "%s is no share; write it in per cent, in quotes: efficiency = \"80 %%\"", e.value.raw)
	} else {
		r.Efficiency, _ = quantity(f, "efficiency", "80 %", efficiency)
	}
	r.COP, _ = f.number("cop", 1, 12)
	r.HSPF, _ = f.number("hspf", 3.42, 40)
	r.HSPF2, _ = f.number("hspf2", 3.42, 40)
	r.Line = d.copLine(f)
	given := 0
	for _, key := range []string{"efficiency", "cop", "hspf", "hspf2", "cop_at"} {
		if f.has(key) {
			if given++; given > 1 {
				f.fail(key, "efficiency, cop, hspf, hspf2 and cop_at say the same thing; write one of them")
			}
		}
	}
	pump := r.Kind == "heat pump" || r.Plant == "heat pump"
	switch {
	case r.Efficiency > 1 && !pump:
		f.fail("efficiency", "%.4g %% is more heat than the fuel has; write up to 100 %%, or plant = \"heat pump\"", 100*r.Efficiency)
	case r.Efficiency > 0 && r.Efficiency < 1 && pump:
		f.fail("efficiency", "%.4g %% is less than a heat pump gives; write from 100 %%, or its hspf or cop", 100*r.Efficiency)
	case !pump && (r.COP > 0 || r.HSPF > 0 || r.HSPF2 > 0 || len(r.Line) > 0):
		f.fail("kind", "cop, hspf, hspf2 and cop_at are a heat pump's; write plant = \"heat pump\" or an efficiency")
	}
	if r.Plant != "" && r.Kind != "" && !slices.Contains(plantsFor(r.Kind), r.Plant) {
		f.fail("plant", "a %s does not run on %s; write plant = %s", r.Plant, r.Kind, either(plantsFor(r.Kind)))
	}
	f.done()
	if len(d.errs) > mistakes || f.t.partial {
		return
	}
	fuel, plant, err := r.supply()
	if err == nil {
		err = season.CheckSupply(fuel, plant)
	}
	if err == nil {
		return
	}
	var units []string
	for _, unit := range fuelUnits {
		other := *r
		if other.Per = unit; r.Per != "" {
			if fuel, plant, err := other.supply(); err == nil && season.CheckSupply(fuel, plant) == nil {
				units = append(units, unit)
			}
		}
	}
	if len(units) > 0 { // the unit alone is wrong
		f.fail("per", "%s is not priced by the %s; write per = %s", r.Kind, r.Per, either(units))
		return
	}
	s.fail("fuel", "%s", plain(err))
}

// copLine reads how well a heat pump does by outdoor temperature, in any order.
func (d *decoder) copLine(f *section) []season.Point {
	var line []season.Point
	var at []*section
	for i, t := range f.tables("cop_at") {
		p := &section{d: d, t: t, where: fmt.Sprintf("fuel: cop_at %d", i+1)}
		var point season.Point
		var ok bool
		if point.Outdoors, ok = quantity(p, "outdoors", "17 °F", rvalue.ParseTemperature); ok {
			point.Outdoors = p.within("outdoors", point.Outdoors, -60, 60)
		}
		p.missing("outdoors", `the outdoor temperature is missing; write such as outdoors = "17 °F"`)
		point.COP, _ = p.number("cop", 1, 12)
		p.missing("cop", "the COP at that temperature is missing; write such as cop = 2.4")
		point.Capacity, _ = quantity(p, "capacity", "24000 Btu/h", power)
		p.done()
		line, at = append(line, point), append(at, p)
	}
	for i := range line {
		for j := range i {
			if line[j].Outdoors == line[i].Outdoors {
				at[i].fail("outdoors", "%s is there twice; give each temperature once", rvalue.Both(line[i].Outdoors))
			}
		}
		if (line[i].Capacity == 0) != (line[0].Capacity == 0) {
			at[i].fail("capacity", "a capacity at some temperatures only; give it at all of them or at none")
			break
		}
	}
	slices.SortFunc(line, func(a, b season.Point) int { return cmp.Compare(a.Outdoors, b.Outdoors) })
	return line
}

// floorArea reads a heated floor.
func floorArea(text string) (rvalue.Area, error) {
	a, err := rvalue.ParseArea(text)
	if err != nil {
		return 0, err
	}
	if _, err := season.InternalGains(a, 0); err != nil {
		return 0, &rvalue.ParseError{Text: text, Msg: "no heated floor of a dwelling; write one from 110 ft2 to 100 000 ft2 (10 m2 to 10 000 m2)"}
	}
	return a, nil
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
		if c := t.Celsius(); c < -60 || c > 45 {
			d.fail(item.at, "months", "%q is no monthly mean of a place where people live; write one from -60 °C to 45 °C", item.text)
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
	plant.COP, plant.HSPF, plant.HSPF2, plant.Line = f.COP, f.HSPF, f.HSPF2, f.Line
	if plant.Kind == season.HeatPump {
		plant.COP = max(plant.COP, f.Efficiency)
	} else {
		plant.Efficiency = f.Efficiency
	}
	return fuel, plant, nil
}
