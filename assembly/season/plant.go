package season

import (
	"fmt"

	"github.com/coldseam/coldseam/rvalue"
)

// PlantKind is a kind of heating plant. Its zero value is none of them.
type PlantKind uint8

// The plants.
const (
	Furnace       PlantKind = iota + 1 // burns, heats air
	Boiler                             // burns, heats water
	Stove                              // burns in the room
	Resistance                         // electric: baseboards, electric furnace or boiler
	HeatPump                           // electric, from outdoor air
	HeatExchanger                      // takes over district heat
)

var plantNames = []string{"no plant", "furnace", "boiler", "stove", "resistance", "heat pump", "heat exchanger"}

// String returns the plant as ParsePlant reads it.
func (k PlantKind) String() string { return nameOf(int(k), "plant", plantNames) }

// ParsePlant reads "furnace", "boiler", "stove", "resistance", "heat pump" or "heat
// exchanger". The error is a *NameError.
func ParsePlant(s string) (PlantKind, error) {
	i, err := lookUp(s, "heating plant", plantNames)
	return PlantKind(i), err
}

// burns reports whether the plant burns fuel.
func (k PlantKind) burns() bool { return k == Furnace || k == Boiler || k == Stove }

// Plant turns what is bought into heat. A zero Kind is taken from the fuel. At most
// one of the figures is given, one that fits the kind; with none the kind has a
// default, which is listed.
type Plant struct {
	Kind PlantKind

	// Efficiency is the share of the fuel's heat that becomes heat in the house over
	// the season: AFUE of a furnace or boiler, 0.1 to 1. Not of a heat pump.
	Efficiency float64

	COP   float64 // of a heat pump: heat over electricity through the season
	HSPF  float64 // the same in Btu/Wh, by the test until 2022
	HSPF2 float64 // the same in Btu/Wh, by the test since 2023
	Line  []Point // the same by outdoor temperature, coldest first
}

// Point is one point of a heat pump's rating, at an outdoor temperature.
type Point struct {
	Outdoors rvalue.Temperature
	COP      float64
	Capacity Power // that it delivers at most; 0 at all points: enough
}

// btuPerWh is 1 W in Btu/h, by which HSPF, SEER and EER become a COP.
const btuPerWh = float64(Watt / BtuPerHour)

// COPFrom returns the coefficient of performance that an HSPF, HSPF2, SEER or EER
// in Btu/Wh stands for, the figure over 3.412.
func COPFrom(btuPerWattHour float64) float64 { return btuPerWattHour / btuPerWh }

const (
	leastEfficiency = 0.1
	defaultHSPF2    = 7.5
	// highCOP is a seasonal figure over that of any heat pump that is sold.
	highCOP = 5
)

// plantDefaults are the efficiencies of plants that burn, 0 where there is none.
var plantDefaults = [...]struct {
	efficiency   float64
	text, source string
}{
	Furnace: {0.78, "AFUE 78 %", "US federal minimum of 1992; furnaces from before have 56 to 70 %"},
	Boiler:  {0.80, "AFUE 80 %", "US federal minimum of 1992, from memory; boilers from before have less"},
	Stove:   {0.65, "65 %", noSource},
}

// plantOf is the plant that goes with a fuel when none is named.
var plantOf = [...]PlantKind{
	NaturalGas: Furnace, Propane: Furnace, HeatingOil: Furnace,
	Electricity: Resistance, Wood: Stove, Pellets: Stove, DistrictHeat: HeatExchanger,
}

// CheckSupply says what is wrong with a fuel and a plant by themselves, before there is
// a house or a place: a unit that the fuel is not sold by, a plant that does not run on
// it, an efficiency that cannot be.
func CheckSupply(f Fuel, p Plant) error {
	var defaults []Default
	quiet := func(code, text string) {}
	if _, err := f.supply(dollar, &defaults, quiet); err != nil {
		return err
	}
	_, err := p.fill(f.Kind, &defaults, quiet)
	return err
}

// fill checks p against the fuel, and puts in what was left out.
func (p Plant) fill(fuel FuelKind, defaults *[]Default, remark func(code, text string)) (Plant, error) {
	if p.Kind > HeatExchanger {
		return p, &NameError{Name: p.Kind.String(), What: "heating plant", Known: plantNames[1:]}
	}
	if p.Kind == 0 {
		p.Kind = plantOf[fuel]
		if p.COP != 0 || p.HSPF != 0 || p.HSPF2 != 0 || len(p.Line) > 0 {
			p.Kind = HeatPump
		}
		*defaults = append(*defaults, Default{Code: "plant", What: "heating plant", Value: p.Kind.String(), Source: "what mostly goes with the fuel, " + noSource})
	}
	if !p.takes(fuel) {
		return p, fmt.Errorf("season: a %v does not run on %v", p.Kind, fuel)
	}
	given := 0
	for _, set := range [...]bool{p.Efficiency != 0, p.COP != 0, p.HSPF != 0, p.HSPF2 != 0, len(p.Line) > 0} {
		if set {
			given++
		}
	}
	if given > 1 {
		return p, fmt.Errorf("season: a %v has more than one efficiency; give one figure", p.Kind)
	}
	if p.Kind == HeatPump {
		return p.fillPump(given, defaults, remark)
	}
	if given == 1 && p.Efficiency == 0 {
		return p, fmt.Errorf("season: a %v has an efficiency of 0 to 100 %%, COP and HSPF are a heat pump's", p.Kind)
	}
	if given == 0 {
		p.Efficiency = 1
		if p.Kind.burns() {
			d := &plantDefaults[p.Kind]
			p.Efficiency = d.efficiency
			*defaults = append(*defaults, Default{Code: "efficiency", What: "efficiency of the " + p.Kind.String(), Value: d.text, Source: d.source})
		}
	}
	if e := p.Efficiency; !(e >= leastEfficiency && e <= 1) {
		return p, fmt.Errorf("season: a %v at an efficiency of %s %%, give 10 to 100 %% (as a share, 0.1 to 1): no more heat comes out than is in what was bought",
			p.Kind, figure(100*e))
	}
	return p, nil
}

// takes reports whether the plant can run on a fuel.
func (p Plant) takes(fuel FuelKind) bool {
	switch fuel {
	case Electricity:
		return p.Kind == Resistance || p.Kind == HeatPump
	case DistrictHeat:
		return p.Kind == HeatExchanger
	}
	return p.Kind.burns()
}
