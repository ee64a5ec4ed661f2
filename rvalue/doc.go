// Package rvalue holds the quantities of building heat loss: thermal
// resistance and transmittance, conductivity, length, area, volume,
// temperature, conductance, linear transmittance, vapour permeance, air flow,
// speed, density and mass. It reads them as people write them, in SI or inch-pound
// units, and prints them in either.
//
// # A quantity is a number with a type
//
// Every quantity is a defined float64 in one SI unit, made by multiplying with
// a unit constant and read by a method that names the unit:
//
//	batt := 13 * rvalue.RIP          // R-13, in h·ft²·°F/Btu
//	board := 0.9 * rvalue.RSI        // RSI 0.9, in m²·K/W
//	wall := batt + board             // units mix freely, kinds do not
//	fmt.Println(wall.IP())           // 18.11…
//	fmt.Println(wall.U().In(rvalue.SI)) // 0.314 W/(m²·K)
//
// The compiler refuses to add a resistance to a transmittance or to hand a
// conductivity to what wants a resistance. From one kind to another leads a
// method that is the formula: [Resistance.U], [Conductivity.Resistance],
// [Transmittance.Times], [Length.Times]. W/(m·K) is the unit of two kinds,
// [Conductivity] and [LinearTransmittance], which are two types. A temperature
// and a difference of temperatures are two types as well, and the former has
// no unit constant, since 20 times a degree is no temperature:
// use [FromCelsius] and [FromFahrenheit].
//
// # Text
//
// The Parse functions read "R-13", "RSI 2.3", "3 1/2 in", `5'-4 1/2"`,
// "31 ft x 8 ft 6 in", "0.26 Btu·in/(h·ft²·°F)" and their many spellings. A bare
// number is refused with an error that says which units would do, and so are
// the unit of another kind, a decimal comma, a value out of the kind's range,
// and anything not finite. Errors are a *[ParseError], which points at the
// character. What is accepted is the number times the unit constant and
// nothing else, so that the text "R-13" and the expression 13 * rvalue.RIP are
// equal to the last bit. Magnitudes are kept between 1e-30 and 1e30 in SI
// units, within which arithmetic on what a person wrote does not overflow.
//
// In rounds for people, and String is In(SI), always with the unit.
// MarshalText keeps every bit: what it writes, the parser reads back as the same value.
// A zero that stands for "not given" is written too, but where the kind has no
// zero it is refused on reading; leave it out with omitzero.
//
// Inch-pound constants are exact expressions of the international foot and
// pound and of the International Table Btu, as in NIST SP 811, Appendix B. The
// perm is the one at 0 °C. A U-factor with a bare U before it, U-0.30, is in
// Btu/(h·ft²·°F), as North American window labels print it, and R-13 is in
// h·ft²·°F/Btu; the metric labels are RSI and USI.
//
// # What the types do not catch
//
// An untyped constant takes any type silently: with var r Resistance = 13 an
// inch-pound 13 becomes RSI 13, more than five times too much. The product of
// two resistances has type Resistance, and so has their ratio; 1/r is a
// Resistance too, though it should be a transmittance. A conversion such as
// Resistance(u) says whatever its writer says. And nothing stops the area of
// the wrong wall. A test here walks the whole module and fails on the first
// two of these, an implicit constant and a product or ratio that keeps its
// type (guard_test.go); code outside the module is on its own.
//
// # Not covered
//
// Nominal sizes (2x4), names and framing belong to package assembly; materials,
// surface films and air spaces to the packages below this one. Specific heat,
// energy, power, money and angles have no type here yet.
package rvalue
