package season

import (
	"math"
	"strconv"

	"github.com/coldseam/coldseam/rvalue"
)

// Exact factors, as in NIST SP 811, Appendix B.
const (
	btu   = 1055.05585262 // J, International Table
	hour  = 3600.0        // s
	pound = 0.45359237    // kg
)

// Energy is an amount of heat or electricity in J.
type Energy float64

// Units of energy. The therm is 100 000 International Table Btu; gas is billed in
// therms that are 0.02 % smaller, of the Btu at 59 °F.
const (
	Joule        Energy = 1
	Btu          Energy = btu
	KilowattHour Energy = 1000 * hour
	Therm        Energy = 1e5 * btu
	MMBtu        Energy = 1e6 * btu // a million Btu
)

// KWh returns e in kWh.
func (e Energy) KWh() float64 { return float64(e / KilowattHour) }

// Btu returns e in Btu.
func (e Energy) Btu() float64 { return float64(e / Btu) }

// Therms returns e in therm.
func (e Energy) Therms() float64 { return float64(e / Therm) }

// MMBtu returns e in million Btu.
func (e Energy) MMBtu() float64 { return float64(e / MMBtu) }

// SI returns e in kWh, the unit in which people state it.
func (e Energy) SI() float64 { return e.KWh() }

// IP returns e in million Btu.
func (e Energy) IP() float64 { return e.MMBtu() }

// In returns e as "62.3 MMBtu" or "18259 kWh".
func (e Energy) In(u rvalue.Units) string {
	if u == rvalue.IP {
		return figure(e.IP()) + " MMBtu"
	}
	return figure(e.SI()) + " kWh"
}

// String returns e as In(rvalue.SI) does.
func (e Energy) String() string { return e.In(rvalue.SI) }

// Power is a flow of heat in W.
type Power float64

// Units of power.
const (
	Watt       Power = 1
	BtuPerHour Power = btu / hour
	Ton        Power = 12000 * btu / hour // of refrigeration, as the trade sizes heat pumps
)

// SI returns p in W.
func (p Power) SI() float64 { return float64(p) }

// IP returns p in Btu/h.
func (p Power) IP() float64 { return float64(p / BtuPerHour) }

// Tons returns p in tons of refrigeration of 12 000 Btu/h.
func (p Power) Tons() float64 { return float64(p / Ton) }

// In returns p as "42300 Btu/h" or "12397 W".
func (p Power) In(u rvalue.Units) string {
	if u == rvalue.IP {
		return figure(p.IP()) + " Btu/h"
	}
	return figure(p.SI()) + " W"
}

// String returns p as In(rvalue.SI) does.
func (p Power) String() string { return p.In(rvalue.SI) }

// Mass is a mass of carbon dioxide in kg.
type Mass float64

// Units of mass.
const (
	Kilogram Mass = 1
	Pound    Mass = pound
)

// SI returns m in kg.
func (m Mass) SI() float64 { return float64(m) }

// IP returns m in lb.
func (m Mass) IP() float64 { return float64(m / Pound) }

// In returns m as "9080 lb" or "4119 kg".
func (m Mass) In(u rvalue.Units) string {
	if u == rvalue.IP {
		return figure(m.IP()) + " lb"
	}
	return figure(m.SI()) + " kg"
}

// String returns m as In(rvalue.SI) does.
func (m Mass) String() string { return m.In(rvalue.SI) }

// Emission is a mass of carbon dioxide per energy bought, in kg/J.
type Emission float64

// Units of emission.
const (
	KilogramPerMMBtu Emission = 1 / (1e6 * btu)
	PoundPerMMBtu    Emission = pound / (1e6 * btu)
	KilogramPerKWh   Emission = 1 / (1000 * hour)
	PoundPerKWh      Emission = pound / (1000 * hour)
)

// SI returns e in kg/kWh.
func (e Emission) SI() float64 { return float64(e / KilogramPerKWh) }

// IP returns e in lb per million Btu.
func (e Emission) IP() float64 { return float64(e / PoundPerMMBtu) }

// In returns e as "117 lb/MMBtu" or "0.181 kg/kWh".
func (e Emission) In(u rvalue.Units) string {
	if u == rvalue.IP {
		return figure(e.IP()) + " lb/MMBtu"
	}
	return figure(e.SI()) + " kg/kWh"
}

// String returns e as In(rvalue.SI) does.
func (e Emission) String() string { return e.In(rvalue.SI) }

// Of returns what comes of an energy bought.
func (e Emission) Of(bought Energy) Mass { return Mass(float64(e) * float64(bought)) }

// figure prints three digits, more before the decimal point, and no zeros behind
// them that say nothing.
func figure(v float64) string {
	if v == 0 || math.IsNaN(v) || math.IsInf(v, 0) {
		return strconv.FormatFloat(v, 'g', -1, 64)
	}
	decimals := min(max(0, 2-int(math.Floor(math.Log10(math.Abs(v))))), 9)
	return strconv.FormatFloat(v, 'f', decimals, 64)
}

// finite reports whether v is neither NaN nor infinite.
func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }
