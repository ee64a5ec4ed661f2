package rvalue

// ParseResistance reads a thermal resistance: "R-13", "R13", "R 13" in
// h·ft²·°F/Btu as on a North American label, "RSI 2.3" in m²·K/W, or a number
// with its unit, "2.3 m²·K/W", "13 h·ft²·°F/Btu". With a unit behind it, a
// bare R is only a name. Zero and below is refused.
func ParseResistance(s string) (Resistance, error) {
	v, err := parse(&resistanceKind, s)
	return Resistance(v), err
}

// ParseTransmittance reads a thermal transmittance: "U-0.30", "U 0.30" in
// Btu/(h·ft²·°F) as on a North American window label, "USI 1.7" in W/(m²·K),
// or a number with its unit, "0.36 W/(m²·K)", "0.064 Btu/(h·ft²·°F)". Zero
// and below is refused.
func ParseTransmittance(s string) (Transmittance, error) {
	v, err := parse(&transmittanceKind, s)
	return Transmittance(v), err
}

// ParseConductivity reads a conductivity above zero in W/(m·K),
// Btu·in/(h·ft²·°F) or Btu/(h·ft·°F).
func ParseConductivity(s string) (Conductivity, error) {
	v, err := parse(&conductivityKind, s)
	return Conductivity(v), err
}

// ParseTemperatureDifference reads a difference of temperatures of any sign:
// "10 K", "10 °C", "18 °F". No zero point is added.
func ParseTemperatureDifference(s string) (TemperatureDifference, error) {
	v, err := parse(&differenceKind, s)
	return TemperatureDifference(v), err
}

// ParseConductance reads a conductance of zero or more in W/K or Btu/(h·°F).
func ParseConductance(s string) (Conductance, error) {
	v, err := parse(&conductanceKind, s)
	return Conductance(v), err
}

// ParseLinearTransmittance reads a linear transmittance in W/(m·K) or
// Btu/(h·ft·°F). It may be negative, as the psi-value of an outer corner is
// that is counted by outside dimensions.
func ParseLinearTransmittance(s string) (LinearTransmittance, error) {
	v, err := parse(&linearKind, s)
	return LinearTransmittance(v), err
}

// ParsePermeance reads a vapour permeance of zero or more in perm (the US one)
// or ng/(Pa·s·m²).
func ParsePermeance(s string) (Permeance, error) {
	v, err := parse(&permeanceKind, s)
	return Permeance(v), err
}

// ParseAirFlow reads an air flow of zero or more in cfm, ft³/min, m³/h, m³/s or L/s.
func ParseAirFlow(s string) (AirFlow, error) {
	v, err := parse(&airFlowKind, s)
	return AirFlow(v), err
}

// ParseSpeed reads a speed of zero or more in mph, m/s or km/h.
func ParseSpeed(s string) (Speed, error) {
	v, err := parse(&speedKind, s)
	return Speed(v), err
}

// ParseDensity reads a density above zero in kg/m³ or lb/ft³.
func ParseDensity(s string) (Density, error) {
	v, err := parse(&densityKind, s)
	return Density(v), err
}

// ParseMass reads a mass above zero in kg or lb.
func ParseMass(s string) (Mass, error) {
	v, err := parse(&massKind, s)
	return Mass(v), err
}
