package material_test

import (
	"fmt"

	"github.com/coldseam/coldseam/rvalue"
	"github.com/coldseam/coldseam/rvalue/material"
)

func ExampleFind() {
	m, err := material.Find("Plaster Board")
	if err != nil {
		fmt.Println(err)
		return
	}
	r, err := m.Resistance(rvalue.Inch / 2)
	fmt.Println(m.Name, r.In(rvalue.IP), err)

	_, err = material.Find("gypsm")
	fmt.Println(err)
	_, err = material.Find("spray foam")
	fmt.Println(err)
	// Output:
	// gypsum board R-0.45 <nil>
	// material: unknown material "gypsm"; did you mean gypsum?
	// material: "spray foam" could be any of open-cell spray foam, closed-cell spray foam
}

func ExampleMaterial_Resistance() {
	m, err := material.Find("hollow clay tile")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(m.Resistance(8 * rvalue.Inch))
	_, err = m.Resistance(7 * rvalue.Inch)
	fmt.Println(err)
	// Output:
	// RSI 0.33 <nil>
	// material: hollow clay tile of 7 in (177.8 mm) is not in the catalogue, which has 2.95 in (75 mm), 3 15/16 in (100 mm), 5.91 in (150 mm), 7.87 in (200 mm), 9.84 in (250 mm) and 11.81 in (300 mm)
}

// A batt of 6 1/4 in. loses R-1 in a bay of 5 1/2 in., which its label says in a
// footnote, and more in 3 1/2 in.
func ExampleSqueeze() {
	batts, err := material.FindBatt("fiberglass", 19*rvalue.RIP)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, depth := range []rvalue.Length{5.5 * rvalue.Inch, 4.5 * rvalue.Inch, 3.5 * rvalue.Inch} {
		s, err := material.Squeeze(batts[0], depth)
		fmt.Println(s.From.In(rvalue.IP), "in", s.To.In(rvalue.IP), s.R.In(rvalue.IP), s.Basis, err)
	}
	// Output:
	// 6 1/4 in in 5 1/2 in R-18.0 chart <nil>
	// 6 1/4 in in 4 1/2 in R-15.9 fit <nil>
	// 6 1/4 in in 3 1/2 in R-14.0 chart <nil>
}

func ExampleCatalogue_With() {
	mine, err := material.Default().With(material.Material{
		Name: "attic fluff", Conductivity: 0.05 * rvalue.WattPerMetreKelvin, Source: "label",
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	m, err := mine.Find("fluff")
	fmt.Println(m.Name, m.Conductivity.In(rvalue.SI), err)
	// Output:
	// attic fluff 0.050 W/(m·K) <nil>
}

func ExampleMaterial_Factor() {
	for _, name := range []string{"xps", "polyiso"} {
		m, err := material.Find(name)
		if err != nil {
			fmt.Println(err)
			return
		}
		f, _, _ := m.Factor(rvalue.FromFahrenheit(25))
		fmt.Printf("%s at a mean of 25 °F: R times %.2f\n", m.Name, f)
	}
	// Output:
	// XPS at a mean of 25 °F: R times 1.11
	// polyiso at a mean of 25 °F: R times 0.80
}
