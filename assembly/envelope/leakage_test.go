package envelope_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/assembly/envelope"
	"github.com/coldseam/coldseam/rvalue"
)

// TestDivide rebuilds all cells of the table of divisors.
func TestDivide(t *testing.T) {
	const lastDigit = 0.05 + 1e-9 // half a digit; 23.25 is printed 23.2 and 13.95 as 14.0
	for _, row := range readCSV(t, "leakage_divisor.csv") {
		shelter := must(envelope.ParseShelter(row["shelter"]))(t)
		n := must(envelope.Divide(envelope.Region(num(t, row["region"])), num(t, row["storeys"]), shelter))(t)
		near(t, fmt.Sprintf("N of region %s, %s, %s storeys", row["region"], row["shelter"], row["storeys"]), n, num(t, row["n"]), lastDigit)
	}
	near(t, "default N", must(envelope.Divide(0, 0, 0))(t), envelope.DefaultDivisor, 0)
	near(t, "N of two and a half storeys", must(envelope.Divide(1, 2.5, 0))(t), 15.5*0.75, rounding)
	for _, c := range []struct {
		region  envelope.Region
		storeys float64
		shelter envelope.Shelter
	}{{5, 1, 0}, {-1, 1, 0}, {1, 4, 0}, {1, 0.5, 0}, {1, math.NaN(), 0}, {1, 1, 3}} {
		if n, err := envelope.Divide(c.region, c.storeys, c.shelter); err == nil {
			t.Errorf("Divide(%v) = %v, want an error", c, n)
		}
	}
}

// TestAltitude holds the density and the heat of a cubic foot a minute.
func TestAltitude(t *testing.T) {
	const lastDigit = 0.0005
	for _, row := range readCSV(t, "leakage_altitude.csv") {
		z := rvalue.Length(num(t, row["feet"])) * rvalue.Foot
		if row["density"] != "" {
			near(t, "relative density at "+row["feet"]+" ft", envelope.RelativeDensity(z), num(t, row["density"]), lastDigit)
		}
		near(t, "heat of 1 cfm at "+row["feet"]+" ft", envelope.AirConductance(1*rvalue.CubicFootPerMin, z).IP(), num(t, row["heat"]), lastDigit)
	}
	// Other forms of the same figure: 0.018 Btu/(ft³·°F) seen, 0.33 to 0.34
	// W·h/(m³·K).
	near(t, "heat of 1 ft³/h", envelope.AirConductance(envelope.ACH50(1, rvalue.CubicFoot), 0).IP(), 0.018, rounding)
	near(t, "heat of 1 m³/h in W/K", envelope.AirConductance(1*rvalue.CubicMetrePerHour, 0).SI(), 0.335, 0.005)
}

// TestLeakageArea: 1 cfm at 50 Pa is 0.0549 in², our arithmetic; 1 cm² passes
// 0.2582 L/s at 4 Pa, and 50/4 to the 0.65 times that at 50 Pa.
func TestLeakageArea(t *testing.T) {
	near(t, "leakage area of 1 cfm, in²", envelope.LeakageArea(1*rvalue.CubicFootPerMin).IP()*144, 0.0549, 5e-5)
	flow := rvalue.AirFlow(0.2582e-3 * math.Pow(12.5, 0.65))
	near(t, "leakage area, cm²", envelope.LeakageArea(flow).SI()*1e4, 1, 5e-4)
}

// TestBasicFlow recovers every coefficient of the model, in both systems.
func TestBasicFlow(t *testing.T) {
	for _, row := range readCSV(t, "leakage_basic.csv") {
		storeys, class := int(num(t, row["storeys"])), 3
		dT, wind := 1*rvalue.FahrenheitDegree, rvalue.Speed(0)
		if row["class"] != "stack" {
			class, dT, wind = int(num(t, row["class"])), 0, 1*rvalue.MilePerHour
		}
		name := fmt.Sprintf("coefficient of %s, %d storeys", row["class"], storeys)
		cfm := must(envelope.BasicFlow(rvalue.SquareFoot/144, dT, wind, storeys, class))(t).IP() // of 1 in²
		ip, si := num(t, row["ip"]), num(t, row["si"])
		if row["ours"] != "" {
			ip = num(t, row["ours"])
		}
		near(t, name+", IP", cfm*cfm, ip, 0.5e-4+ip*0.5e-6/si) // half the last digit of each figure
		if row["class"] == "stack" {
			dT = 1 * rvalue.Kelvin
		} else {
			wind = 1 * rvalue.MetrePerSecond
		}
		litres := must(envelope.BasicFlow(1e-4, dT, wind, storeys, class))(t).SI() / 3.6 // of 1 cm²
		near(t, name+", SI", litres*litres, si, rounding)
	}
	// 100 in², 40 °F, 10 mph, class 3: 111.8 cfm on one storey and 143.4 on two,
	// our arithmetic of the rounded IP coefficients; the SI ones differ by 0.4 %.
	for storeys, want := range map[int]float64{1: 111.8, 2: 143.4} {
		q := must(envelope.BasicFlow(100*rvalue.SquareFoot/144, 40*rvalue.FahrenheitDegree, 10*rvalue.MilePerHour, storeys, 3))(t)
		near(t, "flow in cfm", q.IP(), want, 0.004*want)
	}
	for _, bad := range []func() (rvalue.AirFlow, error){
		func() (rvalue.AirFlow, error) { return envelope.BasicFlow(1, 1, 1, 0, 3) },
		func() (rvalue.AirFlow, error) { return envelope.BasicFlow(1, 1, 1, 1, 6) },
		func() (rvalue.AirFlow, error) { return envelope.BasicFlow(-1, 1, 1, 1, 3) },
		func() (rvalue.AirFlow, error) { return envelope.BasicFlow(1, 1, rvalue.Speed(math.NaN()), 1, 3) },
	} {
		if q, err := bad(); err == nil {
			t.Errorf("nonsense gives a flow of %v", q)
		}
	}
}

func TestDescribed(t *testing.T) {
	before := 0.0
	for _, word := range []string{"snug", "Usual", "drafty", " very  drafty "} {
		n := must(envelope.Described(word))(t)
		if n <= before {
			t.Errorf("%q is %v, not leakier than %v before it", word, n, before)
		}
		before = n
	}
	if _, err := envelope.Described("breezy"); err == nil || !strings.Contains(err.Error(), `"breezy"`) || !strings.Contains(err.Error(), "very drafty") {
		t.Errorf("drafty gives %v, want it and the words that exist", err)
	}
	for _, s := range []envelope.Shelter{envelope.NormalShelter, envelope.WellSheltered, envelope.Exposed} {
		if got := must(envelope.ParseShelter(s.String()))(t); got != s {
			t.Errorf("%q reads back as %v", s, got)
		}
	}
	if got := must(envelope.ParseShelter("Well sheltered"))(t); got != envelope.WellSheltered {
		t.Errorf("well sheltered is %v", got)
	}
	if _, err := envelope.ParseShelter("windy"); err == nil {
		t.Error("windy is taken for a shelter")
	}
	if s := envelope.Shelter(9).String(); s != "unknown shelter" {
		t.Errorf("shelter 9 is %q", s)
	}
}

// ExampleLeakage is the house of the article "Measuring Natural Air Leakage":
// 2.75 air changes at 50 Pa, region 2, normal shelter, one storey, so 2.75 over
// 18.5, or 0.149 air changes per hour, here of 10 000 ft³.
func ExampleLeakage() {
	n, err := envelope.Divide(2, 1, envelope.NormalShelter)
	if err != nil {
		fmt.Println(err)
		return
	}
	const volume = 10_000 * rvalue.CubicFoot
	l := envelope.Leakage{Flow50: envelope.ACH50(2.75, volume), Volume: volume, Divisor: n}
	fmt.Printf("%.3f air changes per hour, UA %.1f Btu/(h·°F), at 5000 ft %.1f\n",
		2.75/n, l.UA(0).IP(), l.UA(5000*rvalue.Foot).IP())
	// Output: 0.149 air changes per hour, UA 26.8 Btu/(h·°F), at 5000 ft 22.3
}
