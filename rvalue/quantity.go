package rvalue

// Each quantity is a defined float64 in one SI unit, named in the first
// sentence of its comment. Enter by multiplying with a unit constant
// (13 * rvalue.RIP), leave by an accessor named for the unit (r.IP()). The
// parsers enter the same way, to the last bit; the way back rounds once more.
// The inch-pound constants are written as exact expressions of the
// international foot (0.3048 m), the International Table Btu
// (1055.05585262 J) and the avoirdupois pound, as in NIST SP 811, Appendix B.

const (
	foot       = 0.3048        // m, exact
	inch       = foot / 12     // m, exact
	btu        = 1055.05585262 // J, International Table, exact
	hour       = 3600.0        // s
	degreeF    = 5.0 / 9.0     // K per °F of difference, exact
	pound      = 0.45359237    // kg, exact
	grain      = pound / 7000  // kg, exact
	inchHg     = 3386.389      // Pa, conventional inch of mercury at 32 °F, NIST SP 811
	uPerIP     = btu / (hour * foot * foot * degreeF)
	nanopermSI = 1e-12 // kg per ng
)

// Resistance is a thermal resistance of unit area in m²·K/W.
type Resistance float64

// Units of thermal resistance.
const (
	RSI Resistance = 1          // 1 m²·K/W
	RIP Resistance = 1 / uPerIP // 1 h·ft²·°F/Btu, what R-1 means on a North American label
)

// RSI returns r in m²·K/W.
func (r Resistance) RSI() float64 { return float64(r) }

// SI returns r in m²·K/W.
func (r Resistance) SI() float64 { return float64(r) }

// IP returns r in h·ft²·°F/Btu.
func (r Resistance) IP() float64 { return float64(r / RIP) }

// U returns the transmittance 1/r. A zero resistance gives +Inf.
func (r Resistance) U() Transmittance { return Transmittance(1 / r) }

// Transmittance is a thermal transmittance, the U-factor, in W/(m²·K).
type Transmittance float64

// Units of thermal transmittance.
const (
	USI Transmittance = 1      // 1 W/(m²·K)
	UIP Transmittance = uPerIP // 1 Btu/(h·ft²·°F)
)

// SI returns u in W/(m²·K).
func (u Transmittance) SI() float64 { return float64(u) }

// IP returns u in Btu/(h·ft²·°F).
func (u Transmittance) IP() float64 { return float64(u / UIP) }

// R returns the resistance 1/u. A zero transmittance gives +Inf.
func (u Transmittance) R() Resistance { return Resistance(1 / u) }

// Times returns the conductance of an area a of transmittance u.
func (u Transmittance) Times(a Area) Conductance { return Conductance(float64(u) * float64(a)) }

// Conductivity is a thermal conductivity in W/(m·K).
type Conductivity float64

// Units of thermal conductivity.
const (
	WattPerMetreKelvin   Conductivity = 1             // 1 W/(m·K)
	BtuInchPerHourFoot2F Conductivity = uPerIP * inch // 1 Btu·in/(h·ft²·°F)
)

// SI returns k in W/(m·K).
func (k Conductivity) SI() float64 { return float64(k) }

// IP returns k in Btu·in/(h·ft²·°F).
func (k Conductivity) IP() float64 { return float64(k / BtuInchPerHourFoot2F) }

// Resistance returns d/k, the resistance of a slab of thickness d.
func (k Conductivity) Resistance(d Length) Resistance { return Resistance(float64(d) / float64(k)) }

// Length is a length in m.
type Length float64

// Units of length.
const (
	Millimetre Length = 0.001
	Metre      Length = 1
	Inch       Length = inch
	Foot       Length = foot
)

// SI returns l in m.
func (l Length) SI() float64 { return float64(l) }

// IP returns l in ft.
func (l Length) IP() float64 { return float64(l / Foot) }

// Millimetres returns l in mm.
func (l Length) Millimetres() float64 { return float64(l / Millimetre) }

// Inches returns l in in.
func (l Length) Inches() float64 { return float64(l / Inch) }

// Times returns the area of a rectangle of sides l and w.
func (l Length) Times(w Length) Area { return Area(float64(l) * float64(w)) }

// Area is an area in m².
type Area float64

// Units of area.
const (
	SquareMetre Area = 1
	SquareFoot  Area = foot * foot
)

// SI returns a in m².
func (a Area) SI() float64 { return float64(a) }

// IP returns a in ft².
func (a Area) IP() float64 { return float64(a / SquareFoot) }

// Volume is a volume in m³.
type Volume float64

// Units of volume.
const (
	CubicMetre Volume = 1
	CubicFoot  Volume = foot * foot * foot
)

// SI returns v in m³.
func (v Volume) SI() float64 { return float64(v) }

// IP returns v in ft³.
func (v Volume) IP() float64 { return float64(v / CubicFoot) }

// Temperature is an absolute temperature in K. Its zero value, absolute zero,
// is no room's temperature and serves as "not given". It has no unit constant,
// because a scale with an offset is not a multiple of a unit.
type Temperature float64

const (
	zeroCelsius = 273.15 // K, exact
	freezingF   = 32     // °F at 0 °C, exact
)

// FromCelsius returns the temperature t °C.
func FromCelsius(t float64) Temperature { return Temperature(t + zeroCelsius) }

// FromFahrenheit returns the temperature t °F.
// It goes by °C, so that 68 °F and 20 °C are the same to the last bit.
func FromFahrenheit(t float64) Temperature { return FromCelsius((t - freezingF) * 5 / 9) }

// SI returns t in °C, the unit in which people state it.
func (t Temperature) SI() float64 { return t.Celsius() }

// IP returns t in °F.
func (t Temperature) IP() float64 { return t.Fahrenheit() }

// Kelvins returns t in K.
func (t Temperature) Kelvins() float64 { return float64(t) }

// Celsius returns t in °C.
func (t Temperature) Celsius() float64 { return float64(t) - zeroCelsius }

// Fahrenheit returns t in °F.
func (t Temperature) Fahrenheit() float64 { return t.Celsius()*9/5 + freezingF }

// Sub returns t−o.
func (t Temperature) Sub(o Temperature) TemperatureDifference {
	return TemperatureDifference(float64(t) - float64(o))
}

// Add returns t+d.
func (t Temperature) Add(d TemperatureDifference) Temperature {
	return Temperature(float64(t) + float64(d))
}

// TemperatureDifference is a difference of two temperatures in K.
type TemperatureDifference float64

// Units of temperature difference.
const (
	Kelvin           TemperatureDifference = 1
	FahrenheitDegree TemperatureDifference = degreeF
)

// SI returns d in K.
func (d TemperatureDifference) SI() float64 { return float64(d) }

// IP returns d in °F of difference.
func (d TemperatureDifference) IP() float64 { return float64(d / FahrenheitDegree) }

// Conductance is the heat flow through a whole part per degree, its UA, in W/K.
type Conductance float64

// Units of conductance.
const (
	WattPerKelvin Conductance = 1
	BtuPerHourF   Conductance = btu / (hour * degreeF)
)

// SI returns c in W/K.
func (c Conductance) SI() float64 { return float64(c) }

// IP returns c in Btu/(h·°F).
func (c Conductance) IP() float64 { return float64(c / BtuPerHourF) }

// Over returns the transmittance of a part of area a and conductance c.
func (c Conductance) Over(a Area) Transmittance { return Transmittance(float64(c) / float64(a)) }

// LinearTransmittance is the heat flow along an edge per length and degree,
// the psi-value or F-factor, in W/(m·K). It is not a Conductivity, though the
// unit is the same.
type LinearTransmittance float64

// Units of linear transmittance.
const (
	PsiSI LinearTransmittance = 1             // 1 W/(m·K)
	PsiIP LinearTransmittance = uPerIP * foot // 1 Btu/(h·ft·°F)
)

// SI returns p in W/(m·K).
func (p LinearTransmittance) SI() float64 { return float64(p) }

// IP returns p in Btu/(h·ft·°F).
func (p LinearTransmittance) IP() float64 { return float64(p / PsiIP) }

// Times returns the conductance of an edge of length l.
func (p LinearTransmittance) Times(l Length) Conductance {
	return Conductance(float64(p) * float64(l))
}

// Over returns the transmittance of a part whose section is so wide, ψ/l.
func (p LinearTransmittance) Over(l Length) Transmittance {
	return Transmittance(float64(p) / float64(l))
}

// Permeance is a water-vapour permeance in kg/(Pa·s·m²).
type Permeance float64

// Units of vapour permeance.
const (
	NanogramPerPascalSecondMetre2 Permeance = nanopermSI
	Perm                          Permeance = grain / (hour * foot * foot * inchHg) // 1 gr/(h·ft²·inHg), 57.2 ng/(Pa·s·m²)
)

// SI returns p in ng/(Pa·s·m²), the unit in which tables state it.
func (p Permeance) SI() float64 { return float64(p / NanogramPerPascalSecondMetre2) }

// IP returns p in US perm.
func (p Permeance) IP() float64 { return float64(p / Perm) }

// AirFlow is a volume of air per time in m³/s.
type AirFlow float64

// Units of air flow.
const (
	CubicMetrePerHour AirFlow = 1 / hour
	CubicFootPerMin   AirFlow = foot * foot * foot / 60
)

// SI returns q in m³/h, the unit in which people state it.
func (q AirFlow) SI() float64 { return float64(q / CubicMetrePerHour) }

// IP returns q in ft³/min.
func (q AirFlow) IP() float64 { return float64(q / CubicFootPerMin) }

// Speed is a wind speed in m/s.
type Speed float64

// Units of speed.
const (
	MetrePerSecond Speed = 1
	MilePerHour    Speed = 5280 * foot / hour
)

// SI returns s in m/s.
func (s Speed) SI() float64 { return float64(s) }

// IP returns s in mph.
func (s Speed) IP() float64 { return float64(s / MilePerHour) }

// Density is a mass per volume in kg/m³.
type Density float64

// Units of density.
const (
	KilogramPerMetre3 Density = 1
	PoundPerFoot3     Density = pound / (foot * foot * foot)
)

// SI returns d in kg/m³.
func (d Density) SI() float64 { return float64(d) }

// IP returns d in lb/ft³.
func (d Density) IP() float64 { return float64(d / PoundPerFoot3) }

// Mass is a mass in kg.
type Mass float64

// Units of mass.
const (
	Kilogram Mass = 1
	Pound    Mass = pound // avoirdupois
)

// SI returns m in kg.
func (m Mass) SI() float64 { return float64(m) }

// IP returns m in lb.
func (m Mass) IP() float64 { return float64(m / Pound) }
