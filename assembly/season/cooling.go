package season

import (
	"fmt"

	"github.com/coldseam/coldseam/rvalue"
)

// Cooling is what keeps a house cool, always by electricity. It counts the warmth
// that comes through the envelope by the difference in temperature and nothing else:
// neither the sun through windows and on the roof nor the moisture of the air, which
// often are the larger part. A ground floor counts as if it faced the air.
type Cooling struct {
	SEER float64 // or SEER2: heat taken out over electricity through the season, Btu/Wh
	EER  float64 // the same on a hot day, in place of SEER; with neither SEER is 13

	// Base is the outdoor mean of a day above which cooling runs; 0: 65 °F, that of
	// published cooling degree days.
	Base rvalue.Temperature

	Electricity Fuel // price and CO2; its zero value is the heating's, if that is electricity, else the default
}

const (
	usualSEER = 13.0
	// mostEER is Carnot's bound between 80 °F indoors and 95 °F outdoors, the rating
	// point of EER (from memory), rounded down: 299.8 K / 8.33 K · 3.412 Btu/Wh.
	mostEER = 122.0
	// highSEER is over what is sold.
	highSEER = 45.0
)

// usualCoolingBase is the base of published cooling degree days.
var usualCoolingBase = rvalue.FromFahrenheit(65)

// ratio returns the heat taken out over the electricity.
func (c *Cooling) ratio() float64 { return COPFrom(c.SEER + c.EER) }

// fillCooling checks the cooling of h and puts in what was left out.
func (y *Year) fillCooling(h *House) error {
	if h.Cooling == nil {
		return nil
	}
	c := *h.Cooling
	h.Cooling = &c
	if c.SEER != 0 && c.EER != 0 {
		return fmt.Errorf("season: both SEER %s and EER %s; give one", figure(c.SEER), figure(c.EER))
	}
	if c.SEER == 0 && c.EER == 0 {
		c.SEER = usualSEER
		y.Defaults = append(y.Defaults, Default{Code: "efficiency-cooling", What: "efficiency of the cooling", Value: "SEER 13 Btu/Wh", Source: "US federal minimum of 2006, from memory"})
	}
	if e := c.SEER + c.EER; !(e >= btuPerWh && e <= mostEER) {
		return fmt.Errorf("season: cooling of %s Btu/Wh, give %s (a COP of 1) to %s (Carnot's bound on a hot day)", figure(e), figure(btuPerWh), figure(mostEER))
	} else if e > highSEER {
		y.remark("seer-high", fmt.Sprintf("cooling of %s Btu/Wh is more than machines on sale reach (%s); check the figure", figure(e), noSource))
	}
	if c.Base == 0 {
		c.Base = usualCoolingBase
		y.Defaults = append(y.Defaults, Default{Code: "cooling-base", What: "base of the cooling", Value: "65 °F", Source: "the base of published cooling degree days; " + noSource})
	}
	if t := c.Base.Celsius(); !(t >= 0 && t <= 40) {
		return fmt.Errorf("season: a base of cooling of %s °C, give 0 to 40 °C", figure(t))
	}
	if c.Electricity == (Fuel{}) {
		c.Electricity.Kind = Electricity
		if h.Fuel.Kind == Electricity {
			y.power = y.supply
		}
	}
	if c.Electricity.Kind != Electricity {
		return fmt.Errorf("season: cooling by %v, only electricity will do", c.Electricity.Kind)
	}
	if y.power.kind == 0 {
		var err error
		if y.power, err = c.Electricity.supply(y.Currency, &y.Defaults, y.remark); err != nil {
			return err
		}
	}
	y.remark("cooling-partial", "cooling leaves out the sun and the moisture of the air, which often are the larger part")
	return nil
}
