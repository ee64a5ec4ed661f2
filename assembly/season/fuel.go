package season

import (
	"errors"
	"fmt"
	"math"

	"github.com/coldseam/coldseam/rvalue"
)

// FuelKind is what is bought to heat with. Its zero value is none of them.
type FuelKind uint8

// The fuels.
const (
	NaturalGas FuelKind = iota + 1
	Propane
	HeatingOil
	Electricity
	Wood
	Pellets
	DistrictHeat
)

var fuelNames = []string{"no fuel", "gas", "propane", "oil", "electricity", "wood", "pellets", "district heat"}

// String returns the fuel as ParseFuel reads it.
func (k FuelKind) String() string { return nameOf(int(k), "fuel", fuelNames) }

// ParseFuel reads "gas", "propane", "oil", "electricity", "wood", "pellets" or
// "district heat". The error is a *NameError.
func ParseFuel(s string) (FuelKind, error) {
	i, err := lookUp(s, "fuel", fuelNames)
	return FuelKind(i), err
}

// Unit is a unit in which fuel is sold. Its zero value is none of them.
type Unit uint8

// The units. The first five are energies, the others hold what heat the fuel has.
const (
	PerTherm Unit = iota + 1
	PerKWh
	PerMMBtu
	PerMJ
	PerGJ
	PerCcf // 100 ft³
	PerMcf // 1000 ft³
	PerCubicMetre
	PerGallon // US
	PerLitre
	PerCord
	PerTon // short, 2000 lb
	PerKilogram
)

var unitNames = []string{
	"no unit", "therm", "kWh", "million Btu", "MJ", "GJ", "ccf", "mcf", "m3", "gallon", "litre", "cord", "ton", "kg",
}

// String returns the unit as ParseUnit reads it.
func (u Unit) String() string { return nameOf(int(u), "unit", unitNames) }

// ParseUnit reads "therm", "kWh", "million Btu", "MJ", "GJ", "ccf", "mcf", "m3",
// "gallon", "litre", "cord", "ton" or "kg", in upper or lower case. The error is a
// *NameError.
func ParseUnit(s string) (Unit, error) {
	i, err := lookUp(s, "unit of fuel", unitNames)
	return Unit(i), err
}

// energy returns the heat in a unit that is itself an energy, 0 for the others.
func (u Unit) energy() Energy {
	switch u {
	case PerTherm:
		return Therm
	case PerKWh:
		return KilowattHour
	case PerMMBtu:
		return MMBtu
	case PerMJ:
		return 1e6 * Joule
	case PerGJ:
		return 1e9 * Joule
	}
	return 0
}

// Price is what a unit of fuel costs.
type Price struct {
	Amount float64 // in House.Currency, 0 or more
	Per    Unit
}

// Fuel is what a plant burns or takes, with what is known of it.
type Fuel struct {
	Kind  FuelKind
	Price *Price    // nil: the default of the kind, if there is one
	Heat  Energy    // in one unit of Price, higher heating value; 0: the default of the kind
	CO2   *Emission // nil: the default of the kind, if there is one
}

// Default is a figure that was filled in because none was given.
type Default struct {
	Code   string // stable: "price", "heat-content", "co2", "gains", "efficiency" …
	What   string // "price of gas"
	Value  string // "14.85 $ per mcf"
	Source string // where it is from, or "common practice, no source"
	Date   string // of a price or a factor, "" where it does not age
}

// supply is a fuel with everything filled in.
type supply struct {
	kind       FuelKind
	perJoule   float64 // money
	unit       Unit
	heat       Energy // in one unit
	co2        Emission
	moneyKnown bool
	co2Known   bool
}

// use returns what comes of heat that a plant of that performance delivers.
func (s *supply) use(heat Energy, performance float64) Use {
	bought := Energy(float64(heat) / performance)
	return Use{
		Heat: heat, Bought: bought, Units: float64(bought) / float64(s.heat),
		Money: float64(bought) * s.perJoule, CO2: s.co2.Of(bought),
	}
}

// mostPrice keeps what is computed from a price finite.
const mostPrice = 1e9

// supply fills in f and lists the defaults that it took.
func (f Fuel) supply(currency string, defaults *[]Default, remark func(code, text string)) (supply, error) {
	if f.Kind < NaturalGas || f.Kind > DistrictHeat {
		return supply{}, &NameError{Name: f.Kind.String(), What: "fuel", Known: fuelNames[1:]}
	}
	d := &fuelDefaults[f.Kind]
	s := supply{kind: f.Kind, unit: d.unit, moneyKnown: true, co2Known: true}
	amount := d.price
	switch {
	case f.Price != nil:
		amount, s.unit = f.Price.Amount, f.Price.Per
		if !(amount >= 0 && amount <= mostPrice) {
			return supply{}, fmt.Errorf("season: a price of %v for %v, it must be 0 or more, and finite", amount, f.Kind)
		}
		if s.unit < PerTherm || s.unit > PerKilogram {
			return supply{}, &NameError{Name: s.unit.String(), What: "unit of fuel", Known: unitNames[1:]}
		}
	case d.priceSource == "":
		s.moneyKnown = false
		remark("price-missing", fmt.Sprintf("no default price for %v is known; give one, such as what the last bill says", f.Kind))
	case currency != dollar:
		s.moneyKnown = false
		remark("price-missing", fmt.Sprintf("the default price of %v is in US dollars, not in %q; give one", f.Kind, currency))
	default:
		*defaults = append(*defaults, Default{
			Code: "price", What: d.priceOf, Value: d.priceText, Source: d.priceSource, Date: d.priceDate,
		})
	}
	if err := f.fillHeat(&s, d, defaults); err != nil {
		return supply{}, err
	}
	if s.moneyKnown {
		s.perJoule = amount / float64(s.heat)
		if perKWh := s.perJoule * float64(KilowattHour); currency == dollar && perKWh > dearest {
			remark("price-high", fmt.Sprintf("a price of %s $ per %v of %v is %.3g $ per kWh of its heat, several times what any fuel costs; cents written as dollars?", figure(amount), s.unit, f.Kind, perKWh))
		}
	}
	switch {
	case f.CO2 != nil:
		if s.co2 = *f.CO2; !(s.co2 >= 0) || math.IsInf(float64(s.co2), 1) {
			return supply{}, fmt.Errorf("season: %v of carbon dioxide from %v, it must be 0 or more, and finite", s.co2, f.Kind)
		}
	case d.co2Source == "":
		s.co2Known = false
		remark("co2-missing", fmt.Sprintf("no default for the carbon dioxide of %v is known; its supplier has it", f.Kind))
	default:
		s.co2 = d.co2
		*defaults = append(*defaults, Default{Code: "co2", What: d.co2Of, Value: d.co2Text + " (" + s.co2.In(rvalue.SI) + ")", Source: d.co2Source, Date: d.co2Date})
	}
	if f.Kind == Wood || f.Kind == Pellets {
		remark("co2-wood", "the carbon dioxide of wood is what leaves the chimney; what grows again takes it up over decades")
	}
	return s, nil
}

// dearest is a price in dollars per kWh that no fuel for a house comes near.
const dearest = 1.0

// fillHeat finds the heat in one unit of the price.
func (f Fuel) fillHeat(s *supply, d *fuelDefault, defaults *[]Default) error {
	if f.Heat != 0 && f.Price == nil {
		return fmt.Errorf("season: a heat content of %v for %v without a price whose unit it is of; give the price too", f.Heat, f.Kind)
	}
	if f.Kind == Electricity && s.unit != PerKWh && s.unit.energy() == 0 {
		return fmt.Errorf("season: electricity is not sold by the %v; give its price per %v", s.unit, PerKWh)
	}
	if e := s.unit.energy(); e != 0 {
		if f.Heat != 0 {
			return fmt.Errorf("season: a heat content of %v for one %v of %v, which is an energy itself; leave it out", f.Heat, s.unit, f.Kind)
		}
		s.heat = e
		return nil
	}
	if f.Heat != 0 {
		s.heat = f.Heat
		if v := float64(f.Heat); !(v > 0) || !finite(v) {
			return fmt.Errorf("season: a heat content of %v for one %v of %v, it must be positive and finite", f.Heat, s.unit, f.Kind)
		}
		return nil
	}
	for _, h := range d.heat {
		if share := ratio(s.unit, h.unit); share != 0 {
			s.heat = Energy(share * float64(h.heat))
			*defaults = append(*defaults, Default{Code: "heat-content", What: d.heatOf, Value: h.text, Source: h.source, Date: h.date})
			return nil
		}
	}
	return errors.New("season: " + fmt.Sprintf("no heat content of %v by the %v is known; give it, or a price per %v", f.Kind, s.unit, d.unit))
}

// Sizes of what fuel is sold in, exact.
const (
	foot3  = 0.3048 * 0.3048 * 0.3048 // m³
	gallon = 3.785411784              // litres
)

// ratio returns how many of one unit another holds, 0 if they are not alike.
func ratio(u, of Unit) float64 {
	size := func(u Unit) (kind byte, v float64) {
		switch u {
		case PerCcf:
			return 'v', 100 * foot3
		case PerMcf:
			return 'v', 1000 * foot3
		case PerCubicMetre:
			return 'v', 1
		case PerGallon:
			return 'l', gallon
		case PerLitre:
			return 'l', 1
		case PerTon:
			return 'm', 2000 * pound
		case PerKilogram:
			return 'm', 1
		case PerCord:
			return 'c', 1
		}
		return 0, 0
	}
	a, x := size(u)
	b, y := size(of)
	if a != b || a == 0 {
		return 0
	}
	return x / y
}
