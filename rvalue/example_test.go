package rvalue_test

import (
	"errors"
	"fmt"
	"strings"

	"github.com/coldseam/coldseam/rvalue"
)

// A batt by its North American label and a board by its metric one, in series.
func Example() {
	batt := 13 * rvalue.RIP
	board := 0.9 * rvalue.RSI
	wall := batt + board
	fmt.Println(wall.In(rvalue.IP), "or", wall.In(rvalue.SI))
	fmt.Println(wall.U().In(rvalue.IP), "or", wall.U())
	// Output:
	// R-18.1 or RSI 3.19
	// 0.0552 Btu/(h·ft²·°F) or 0.314 W/(m²·K)
}

func ExampleParseLength() {
	for _, s := range []string{"90 mm", "3½ in", `5'-4 1/2"`, "8 ft 6 in"} {
		l, err := rvalue.ParseLength(s)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Printf("%s is %s or %s\n", s, l.In(rvalue.SI), l.In(rvalue.IP))
	}
	// Output:
	// 90 mm is 90 mm or 3.54 in
	// 3½ in is 88.9 mm or 3 1/2 in
	// 5'-4 1/2" is 1.638 m or 5 ft 4 1/2 in
	// 8 ft 6 in is 2.591 m or 8 ft 6 in
}

func ExampleParseResistance() {
	for _, s := range []string{"R-13", "RSI 2.3", "13", "R-0", "0.3 W/(m²·K)"} {
		r, err := rvalue.ParseResistance(s)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println(r.In(rvalue.IP), "or", r)
	}
	// Output:
	// R-13.0 or RSI 2.29
	// R-13.1 or RSI 2.30
	// rvalue: "13": a bare number without its unit: 13 what? use R-13, RSI 2.3, m²·K/W or h·ft²·°F/Btu
	// rvalue: "R-0": "R-0" is zero, a layer that resists nothing needs no entry
	// rvalue: "0.3 W/(m²·K)": "W/(m²·K)" is a unit of thermal transmittance, a thermal resistance is needed (use R-13, RSI 2.3, m²·K/W or h·ft²·°F/Btu)
}

func ExampleParseArea() {
	for _, s := range []string{"31 ft x 8 ft 6 in", "2.4 m × 3 m", "30 x 60 in", "263 sq ft"} {
		a, err := rvalue.ParseArea(s)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println(a.In(rvalue.IP), "or", a)
	}
	// Output:
	// 263.5 ft² or 24.5 m²
	// 77.5 ft² or 7.20 m²
	// 12.5 ft² or 1.16 m²
	// 263.0 ft² or 24.4 m²
}

// A program that shows the text itself needs the place and the message alone.
func ExampleParseError() {
	_, err := rvalue.ParseConductivity("0,04 W/(m·K)")
	if e, ok := errors.AsType[*rvalue.ParseError](err); ok {
		fmt.Println(e.Text)
		fmt.Println(strings.Repeat(" ", e.Offset)+"^", e.Msg)
	}
	// Output:
	// 0,04 W/(m·K)
	//  ^ a comma is no decimal sign here, write 0.04
}

// The heat that a wall lets through per degree, and what a room loses by it.
func ExampleTransmittance_Times() {
	u := (20 * rvalue.RIP).U()
	area := (31 * rvalue.Foot).Times(8.5 * rvalue.Foot)
	ua := u.Times(area)
	between := rvalue.FromFahrenheit(68).Sub(rvalue.FromFahrenheit(-10))
	fmt.Println(ua.In(rvalue.IP))
	fmt.Printf("%.0f Btu/h at %s of difference\n", ua.IP()*between.IP(), between.In(rvalue.IP))
	// Output:
	// 13.2 Btu/(h·°F)
	// 1028 Btu/h at 78.0 °F of difference
}
