package airspace_test

import (
	"fmt"

	"github.com/coldseam/coldseam/rvalue"
	"github.com/coldseam/coldseam/rvalue/airspace"
)

// An empty 3 1/2 in stud bay. The handbook's table prints R-1.01 (Serway and
// Beichner's physics textbook repeats it).
func Example() {
	bay := airspace.Space{Thickness: 3.5 * rvalue.Inch, Tilt: 90}
	r, err := bay.Resistance(airspace.Correlated, rvalue.FromFahrenheit(50), 10*rvalue.FahrenheitDegree)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("R-%.2f\n", r.IP())
	// Output: R-1.01
}

// A 3/4 in space under a floor, bright foil on one face: how much the direction
// of the heat matters, and how little is left if both faces are ordinary.
func ExampleSpace_Resistance() {
	mean, dT := rvalue.FromFahrenheit(50), 10*rvalue.FahrenheitDegree
	for _, row := range []struct {
		name  string
		space airspace.Space
	}{
		{"bright, heat down", airspace.Space{Thickness: 0.75 * rvalue.Inch, E1: 0.05}},
		{"bright, heat up", airspace.Space{Thickness: 0.75 * rvalue.Inch, E1: 0.05, Up: true}},
		{"ordinary, heat down", airspace.Space{Thickness: 0.75 * rvalue.Inch}},
	} {
		r, err := row.space.Resistance(airspace.Correlated, mean, dT)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%-20s R-%.1f\n", row.name, r.IP())
	}
	// Output:
	// bright, heat down    R-3.6
	// bright, heat up      R-2.2
	// ordinary, heat down  R-1.0
}

// A space between a warm and a cold board, each with the film beside it R-1: its
// difference and its resistance depend on each other and settle in a few passes.
func ExampleSpace_Resistance_settled() {
	space := airspace.Space{Thickness: 1.5 * rvalue.Inch, Tilt: 90, E1: 0.05}
	total, beside := 40*rvalue.FahrenheitDegree, 2*rvalue.RIP
	r := rvalue.RIP
	for range 10 {
		var err error
		dT := total * rvalue.TemperatureDifference(r/(r+beside))
		if r, err = space.Resistance(airspace.Correlated, rvalue.FromFahrenheit(50), dT); err != nil {
			fmt.Println(err)
			return
		}
	}
	fmt.Printf("R-%.2f\n", r.IP())
	// Output: R-2.67
}

// The same layer of 25 mm by the international standard.
func ExampleMethod() {
	layer := airspace.Space{Thickness: 25 * rvalue.Millimetre, Tilt: 90}
	r, err := layer.Resistance(airspace.ISO6946, rvalue.FromCelsius(10), 5)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.2f m²·K/W\n", r.RSI())
	// Output: 0.18 m²·K/W
}
