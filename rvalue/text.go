package rvalue

import (
	"fmt"
	"math"
	"strconv"
)

// marshal writes the shortest text that reads back as the same bits.
func marshal(v float64, before, after string) ([]byte, error) {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return nil, fmt.Errorf("rvalue: %v%s cannot be written, only finite values can", v, after)
	}
	b := strconv.AppendFloat([]byte(before), v, 'g', -1, 64)
	return append(b, after...), nil
}

func unmarshal[T any](to *T, text []byte, parse func(string) (T, error)) error {
	v, err := parse(string(text))
	if err != nil {
		return err
	}
	*to = v
	return nil
}

// MarshalText writes r as "RSI 1.5", to the last bit.
func (r Resistance) MarshalText() ([]byte, error) { return marshal(float64(r), "RSI ", "") }

// UnmarshalText reads what ParseResistance reads.
func (r *Resistance) UnmarshalText(text []byte) error { return unmarshal(r, text, ParseResistance) }

// MarshalText writes u as "1.5 W/(m²·K)", to the last bit.
func (u Transmittance) MarshalText() ([]byte, error) { return marshal(float64(u), "", " W/(m²·K)") }

// UnmarshalText reads what ParseTransmittance reads.
func (u *Transmittance) UnmarshalText(text []byte) error {
	return unmarshal(u, text, ParseTransmittance)
}

// MarshalText writes k as "1.5 W/(m·K)", to the last bit.
func (k Conductivity) MarshalText() ([]byte, error) { return marshal(float64(k), "", " W/(m·K)") }

// UnmarshalText reads what ParseConductivity reads.
func (k *Conductivity) UnmarshalText(text []byte) error { return unmarshal(k, text, ParseConductivity) }

// MarshalText writes l as "1.5 m", to the last bit.
func (l Length) MarshalText() ([]byte, error) { return marshal(float64(l), "", " m") }

// UnmarshalText reads what ParseLength reads.
func (l *Length) UnmarshalText(text []byte) error { return unmarshal(l, text, ParseLength) }

// MarshalText writes a as "1.5 m²", to the last bit.
func (a Area) MarshalText() ([]byte, error) { return marshal(float64(a), "", " m²") }

// UnmarshalText reads what ParseArea reads.
func (a *Area) UnmarshalText(text []byte) error { return unmarshal(a, text, ParseArea) }

// MarshalText writes v as "1.5 m³", to the last bit.
func (v Volume) MarshalText() ([]byte, error) { return marshal(float64(v), "", " m³") }

// UnmarshalText reads what ParseVolume reads.
func (v *Volume) UnmarshalText(text []byte) error { return unmarshal(v, text, ParseVolume) }

// MarshalText writes t as "1.5 K", to the last bit.
func (t Temperature) MarshalText() ([]byte, error) { return marshal(float64(t), "", " K") }

// UnmarshalText reads what ParseTemperature reads.
func (t *Temperature) UnmarshalText(text []byte) error { return unmarshal(t, text, ParseTemperature) }

// MarshalText writes d as "1.5 K", to the last bit.
func (d TemperatureDifference) MarshalText() ([]byte, error) { return marshal(float64(d), "", " K") }

// UnmarshalText reads what ParseTemperatureDifference reads.
func (d *TemperatureDifference) UnmarshalText(text []byte) error {
	return unmarshal(d, text, ParseTemperatureDifference)
}

// MarshalText writes c as "1.5 W/K", to the last bit.
func (c Conductance) MarshalText() ([]byte, error) { return marshal(float64(c), "", " W/K") }

// UnmarshalText reads what ParseConductance reads.
func (c *Conductance) UnmarshalText(text []byte) error { return unmarshal(c, text, ParseConductance) }

// MarshalText writes p as "1.5 W/(m·K)", to the last bit.
func (p LinearTransmittance) MarshalText() ([]byte, error) {
	return marshal(float64(p), "", " W/(m·K)")
}

// UnmarshalText reads what ParseLinearTransmittance reads.
func (p *LinearTransmittance) UnmarshalText(text []byte) error {
	return unmarshal(p, text, ParseLinearTransmittance)
}

// MarshalText writes p as "1.5 kg/(Pa·s·m²)", to the last bit.
func (p Permeance) MarshalText() ([]byte, error) { return marshal(float64(p), "", " kg/(Pa·s·m²)") }

// UnmarshalText reads what ParsePermeance reads.
func (p *Permeance) UnmarshalText(text []byte) error { return unmarshal(p, text, ParsePermeance) }

// MarshalText writes q as "1.5 m³/s", to the last bit.
func (q AirFlow) MarshalText() ([]byte, error) { return marshal(float64(q), "", " m³/s") }

// UnmarshalText reads what ParseAirFlow reads.
func (q *AirFlow) UnmarshalText(text []byte) error { return unmarshal(q, text, ParseAirFlow) }

// MarshalText writes s as "1.5 m/s", to the last bit.
func (s Speed) MarshalText() ([]byte, error) { return marshal(float64(s), "", " m/s") }

// UnmarshalText reads what ParseSpeed reads.
func (s *Speed) UnmarshalText(text []byte) error { return unmarshal(s, text, ParseSpeed) }

// MarshalText writes d as "1.5 kg/m³", to the last bit.
func (d Density) MarshalText() ([]byte, error) { return marshal(float64(d), "", " kg/m³") }

// UnmarshalText reads what ParseDensity reads.
func (d *Density) UnmarshalText(text []byte) error { return unmarshal(d, text, ParseDensity) }

// MarshalText writes m as "1.5 kg", to the last bit.
func (m Mass) MarshalText() ([]byte, error) { return marshal(float64(m), "", " kg") }

// UnmarshalText reads what ParseMass reads.
func (m *Mass) UnmarshalText(text []byte) error { return unmarshal(m, text, ParseMass) }
