package window_test

import (
	"fmt"

	"github.com/coldseam/coldseam/assembly/window"
	"github.com/coldseam/coldseam/climate"
	"github.com/coldseam/coldseam/rvalue"
)

// A whole window, what in it loses most, and when it sweats.
func ExampleWindow_Design() {
	glass, _, err := window.Parse("glass 1/8 in + air 1/2 in + glass 1/8 in")
	if err != nil {
		fmt.Println(err)
		return
	}
	w := window.Window{Glazing: glass, Frame: window.Wood, Operable: true, Width: 30 * rvalue.Inch, Height: 60 * rvalue.Inch}
	c := window.Winter()
	whole, _, err := w.Design(c)
	if err != nil {
		fmt.Println(err)
		return
	}
	all := whole.Center + whole.Edge + whole.Frame
	fmt.Printf("U-%.2f: centre %.0f %%, edge %.0f %%, frame %.0f %% of the heat\n", whole.U.IP(),
		100*float64(whole.Center)/float64(all), 100*float64(whole.Edge)/float64(all), 100*float64(whole.Frame)/float64(all))
	faces, err := w.Faces(c)
	if err != nil {
		fmt.Println(err)
		return
	}
	coldest := faces.Coldest()
	air, err := climate.AirOfDewPoint(c.Indoors, coldest, climate.SeaLevel)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("coldest %.0f °F inside: it sweats from %.0f %% humidity\n", coldest.Fahrenheit(), 100*air.RelativeHumidity())
	// Output:
	// U-0.51: centre 50 %, edge 24 %, frame 26 % of the heat
	// coldest 38 °F inside: it sweats from 31 % humidity
}

// The same window upright and in a roof.
func ExampleWindow_Declared() {
	glass, _, err := window.Parse("glass 4 mm + argon 90 % 16 mm + low-e 0.04 glass 4 mm")
	if err != nil {
		fmt.Println(err)
		return
	}
	w := window.Window{Glazing: glass, Frame: window.Wood, Width: 1230 * rvalue.Millimetre, Height: 1480 * rvalue.Millimetre}
	for _, tilt := range []float64{window.Upright, 45} {
		whole, err := w.Declared(window.EN673, tilt)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("at %2.0f°: U %.2f W/(m²·K)\n", tilt, whole.U.SI())
	}
	// Output:
	// at 90°: U 1.57 W/(m²·K)
	// at 45°: U 1.89 W/(m²·K)
}

// From single glass to the best affordable step.
func ExampleWindow_Steps() {
	glass, _, err := window.Parse("glass 1/8 in")
	if err != nil {
		fmt.Println(err)
		return
	}
	w := window.Window{Glazing: glass, Frame: window.Wood, Operable: true, Width: 30 * rvalue.Inch, Height: 60 * rvalue.Inch}
	steps, err := w.Steps(window.Winter())
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range steps {
		on := ""
		if s.From > 0 {
			on = " on top of " + steps[s.From].Name
		}
		fmt.Printf("U-%.2f  gains %.2f, saves %2.0f %%  %s%s\n", s.Whole.U.IP(), s.Gain.IP(), 100*s.Saved, s.Name, on)
	}
	// Output:
	// U-0.93  gains 0.00, saves  0 %  as it is
	// U-0.50  gains 0.43, saves 46 %  storm window
	// U-0.40  gains 0.10, saves 57 %  coated storm window on top of storm window
	// U-0.51  gains 0.42, saves 45 %  second pane
	// U-0.39  gains 0.13, saves 58 %  coating on top of second pane
	// U-0.36  gains 0.03, saves 62 %  argon on top of coating
	// U-0.33  gains 0.03, saves 65 %  warm spacer on top of argon
	// U-0.22  gains 0.11, saves 77 %  third pane on top of warm spacer
}

// The gap that is best for a gas on the handbook's winter night.
func ExampleGlazing_BestGap() {
	for _, gas := range []string{"air", "argon 90 %", "krypton 90 %"} {
		g, _, err := window.Parse("glass 4 mm + " + gas + " 16 mm + low-e 0.04 glass 4 mm")
		if err != nil {
			fmt.Println(err)
			return
		}
		best, err := g.BestGap(0, window.Winter())
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%-12s %4.1f mm, U %.2f W/(m²·K)\n", gas, best.Width.Millimetres(), best.U.SI())
	}
	// Output:
	// air          12.5 mm, U 1.70 W/(m²·K)
	// argon 90 %   11.5 mm, U 1.43 W/(m²·K)
	// krypton 90 %  8.0 mm, U 1.30 W/(m²·K)
}

// What to order for an opening that was measured three times each way and across.
func ExampleGlazing_Order() {
	glass, _, err := window.Parse("glass 4 mm + argon 90 % 16 mm + low-e 0.04 glass 4 mm")
	if err != nil {
		fmt.Println(err)
		return
	}
	in := func(a, b, c float64) [3]rvalue.Length {
		return [3]rvalue.Length{rvalue.Length(a) * rvalue.Inch, rvalue.Length(b) * rvalue.Inch, rvalue.Length(c) * rvalue.Inch}
	}
	o, err := glass.Order(window.Opening{
		Widths: in(30.25, 30.125, 30.25), Heights: in(46.5, 46.5, 46.375),
		Diagonals: [2]rvalue.Length{55.5 * rvalue.Inch, 55.25 * rvalue.Inch},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("order %.0f x %.0f mm, %v thick, %s (%s)\n", o.Width.Millimetres(), o.Height.Millimetres(), o.Thickness, o.Mass.In(rvalue.SI), o.Mass.In(rvalue.IP))
	fmt.Printf("out of square by %.1f mm, %d people, %d blocks of %s\n", o.Skew.Millimetres(), o.People, o.Blocks.Count, o.Blocks.Length.In(rvalue.IP))
	// Output:
	// order 753 x 1172 mm, 24 mm thick, 17.7 kg (38.9 lb)
	// out of square by 5.8 mm, 2 people, 2 blocks of 4 in
}

// A pane near the floor beside a walkway.
func ExampleSafety() {
	flags, err := window.Safety(2021, window.Place{
		Width: 36 * rvalue.Inch, Height: 60 * rvalue.Inch, Bottom: 12 * rvalue.Inch, Walking: 24 * rvalue.Inch,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, f := range flags {
		fmt.Println(f.Clause+":", f.Fact)
	}
	// Output:
	// R308.4.3: all four of: a pane of 15.0 ft² is more than 9 ft²; its bottom at 12 in is less than 18 in above the floor; its top at 6 ft is more than 36 in; one walks within 36 in, 24 in away
}

// A bedroom window that is too small to climb out of.
func ExampleEscape_Check() {
	flags, err := window.Escape{Width: 34 * rvalue.Inch, Height: 24 * rvalue.Inch, Sill: 40 * rvalue.Inch}.Check(2021)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, f := range flags {
		fmt.Println(f.Clause+":", f.Fact)
		fmt.Println("wanted:", f.Need)
	}
	// Output:
	// R310.2.1: 5.67 ft² clear is less than the 5.7 ft² of an opening
	// wanted: at least 5.7 ft² clear: 2 ft 1/4 in high at this width, or 2 ft 10 1/4 in wide at this height
}
