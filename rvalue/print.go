package rvalue

// What In prints is rounded for people; MarshalText keeps every digit.

// In returns r as "R-13.0" or "RSI 2.29".
func (r Resistance) In(u Units) string {
	if u == IP {
		return "R-" + figure(r.IP(), rounding{2, 1, 4})
	}
	return "RSI " + figure(r.RSI(), rounding{2, 2, 4})
}

// In returns u as "0.0639 Btu/(h·ft²·°F)" or "0.363 W/(m²·K)".
func (u Transmittance) In(s Units) string {
	return in(s, u.IP(), rounding{3, 0, 4}, " Btu/(h·ft²·°F)", u.SI(), rounding{3, 0, 4}, " W/(m²·K)")
}

// In returns k as "0.277 Btu·in/(h·ft²·°F)" or "0.040 W/(m·K)".
func (k Conductivity) In(u Units) string {
	return in(u, k.IP(), rounding{3, 0, 3}, " Btu·in/(h·ft²·°F)", k.SI(), rounding{3, 0, 3}, " W/(m·K)")
}

// In returns a as "263.5 ft²" or "24.5 m²".
func (a Area) In(u Units) string {
	return in(u, a.IP(), rounding{3, 1, 2}, " ft²", a.SI(), rounding{3, 1, 2}, " m²")
}

// In returns v as "7400 ft³" or "209.5 m³".
func (v Volume) In(u Units) string {
	return in(u, v.IP(), rounding{3, 0, 2}, " ft³", v.SI(), rounding{3, 1, 2}, " m³")
}

// In returns t as "68 °F" or "20.0 °C". Absolute zero, which stands for "not
// given", is "0 K" in both.
func (t Temperature) In(u Units) string {
	switch {
	case t == 0:
		return "0 K"
	case u == IP:
		return fixed(t.Fahrenheit(), 0) + " °F"
	}
	return fixed(t.Celsius(), 1) + " °C"
}

// In returns d as "18.0 °F" or "10.0 K".
func (d TemperatureDifference) In(u Units) string {
	return in(u, d.IP(), rounding{2, 1, 3}, " °F", d.SI(), rounding{2, 1, 3}, " K")
}

// In returns c as "52.1 Btu/(h·°F)" or "27.5 W/K".
func (c Conductance) In(u Units) string {
	return in(u, c.IP(), rounding{3, 1, 2}, " Btu/(h·°F)", c.SI(), rounding{3, 1, 2}, " W/K")
}

// In returns p as "0.730 Btu/(h·ft·°F)" or "1.26 W/(m·K)".
func (p LinearTransmittance) In(u Units) string {
	return in(u, p.IP(), rounding{3, 0, 3}, " Btu/(h·ft·°F)", p.SI(), rounding{3, 0, 3}, " W/(m·K)")
}

// In returns p as "5.0 perm" or "286 ng/(Pa·s·m²)".
func (p Permeance) In(u Units) string {
	return in(u, p.IP(), rounding{2, 0, 3}, " perm", p.SI(), rounding{3, 0, 2}, " ng/(Pa·s·m²)")
}

// In returns q as "1200 cfm" or "2039 m³/h".
func (q AirFlow) In(u Units) string {
	return in(u, q.IP(), rounding{3, 0, 2}, " cfm", q.SI(), rounding{3, 0, 2}, " m³/h")
}

// In returns s as "15.0 mph" or "6.7 m/s".
func (s Speed) In(u Units) string {
	return in(u, s.IP(), rounding{2, 1, 2}, " mph", s.SI(), rounding{2, 1, 2}, " m/s")
}

// In returns d as "2.2 lb/ft³" or "35 kg/m³".
func (d Density) In(u Units) string {
	return in(u, d.IP(), rounding{2, 1, 2}, " lb/ft³", d.SI(), rounding{2, 0, 2}, " kg/m³")
}

// In returns m as "49.2 lb" or "22.3 kg".
func (m Mass) In(u Units) string {
	return in(u, m.IP(), rounding{3, 0, 1}, " lb", m.SI(), rounding{3, 0, 1}, " kg")
}

// String returns r as In(SI) does.
func (r Resistance) String() string { return r.In(SI) }

// String returns u as In(SI) does.
func (u Transmittance) String() string { return u.In(SI) }

// String returns k as In(SI) does.
func (k Conductivity) String() string { return k.In(SI) }

// String returns l as In(SI) does.
func (l Length) String() string { return l.In(SI) }

// String returns a as In(SI) does.
func (a Area) String() string { return a.In(SI) }

// String returns v as In(SI) does.
func (v Volume) String() string { return v.In(SI) }

// String returns t as In(SI) does.
func (t Temperature) String() string { return t.In(SI) }

// String returns d as In(SI) does.
func (d TemperatureDifference) String() string { return d.In(SI) }

// String returns c as In(SI) does.
func (c Conductance) String() string { return c.In(SI) }

// String returns p as In(SI) does.
func (p LinearTransmittance) String() string { return p.In(SI) }

// String returns p as In(SI) does.
func (p Permeance) String() string { return p.In(SI) }

// String returns q as In(SI) does.
func (q AirFlow) String() string { return q.In(SI) }

// String returns s as In(SI) does.
func (s Speed) String() string { return s.In(SI) }

// String returns d as In(SI) does.
func (d Density) String() string { return d.In(SI) }

// String returns m as In(SI) does.
func (m Mass) String() string { return m.In(SI) }

// Both writes a quantity in inch-pound and, in brackets, in metric units, for texts that
// cannot know which ones their reader asked for: "R-13.0 (RSI 2.29)".
func Both[T interface{ In(Units) string }](v T) string {
	return v.In(IP) + " (" + v.In(SI) + ")"
}
