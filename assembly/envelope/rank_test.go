package envelope_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/assembly/envelope"
	"github.com/coldseam/coldseam/rvalue"
)

// house is a small invented house whose sums are done by hand: 100 m² of wall
// at U 1 with 10 m² of windows at U 5, 50 m² of ceiling at U 0.5 under an
// attic that has 75 W/K to outdoors, 20 m of edge at 0.5 W/(m·K), and
// 0.1 m³/s at 50 Pa over N = 20.
func house() envelope.Envelope {
	return envelope.Envelope{
		Indoors: rvalue.FromCelsius(20), Outdoors: rvalue.FromCelsius(0),
		Parts: []envelope.Part{
			{
				Name: "walls", Kind: envelope.Wall, Area: 100, U: 1, Target: envelope.Target{U: 0.4},
				Detail:   []envelope.Piece{{Name: "studs", Share: 0.2}, {Name: "bays", Share: 0.8}},
				Openings: []envelope.Opening{{Name: "windows", Kind: envelope.Window, Area: 2.5, Count: 4, U: 5, Target: envelope.Target{U: 1.5}}},
			},
			{Name: "ceiling", Kind: envelope.Ceiling, Area: 50, U: 0.5, Toward: "attic"},
		},
		Bridges: []envelope.Bridge{{Name: "rim", Psi: 0.5, Length: 20, Kind: envelope.ThermalBridge}},
		Buffers: []envelope.Buffer{{Name: "attic", ToOutdoors: 75}},
		Leakage: &envelope.Leakage{Flow50: 0.1, Divisor: 20},
	}
}

func TestRankByHand(t *testing.T) {
	r, err := house().Rank()
	if err != nil {
		t.Fatal(err)
	}
	// The attic: 25 W/K in, 75 W/K out, so b = 0.75 and 20 − 0.75·20 = 5 °C.
	leak := 0.1 / 20 * 1.08 / float64(rvalue.CubicFootPerMin) * float64(rvalue.BtuPerHourF)
	want := map[string]float64{"walls": 90, "windows": 50, "ceiling": 0.75 * 0.5 * 50, "rim": 10, "air leakage": leak}
	total := 0.0
	for _, ua := range want {
		total += ua
	}
	shares := 0.0
	for _, row := range r.Rows {
		near(t, "UA of "+row.Name, row.UA.SI(), want[row.Name], 1e-9)
		near(t, "share of "+row.Name, row.Share, want[row.Name]/total, 1e-12)
		shares += row.Share
		if row.Name == "ceiling" {
			near(t, "attic temperature", row.At.Celsius(), 5, 1e-9)
			near(t, "attic factor", row.Factor, 0.75, 1e-12)
		}
	}
	near(t, "sum of shares", shares, 1, 1e-14)
	near(t, "total", r.Total.UA.SI(), total, 1e-9)
	// Behind: walls 90·(1 − 0.4) = 54, windows 10·(5 − 1.5) = 35.
	near(t, "behind of the weakest link", r.Rows[r.Furthest].Behind.SI(), 54, 1e-9)
	got := fmt.Sprint(r.Rows[r.LosesMost].Name, "; ", r.Rows[r.Leakiest].Name, "; ", r.Rows[r.Furthest].Name, "; ", r.Rows[r.Weakest.Row].Name, "; ", r.Weakest.Piece)
	if want := "walls; windows; walls; walls; bays"; got != want {
		t.Errorf("answers are %q, want %q", got, want)
	}
}

func TestNothingBehindFallsBackToLosesMost(t *testing.T) {
	e := house()
	e.Parts[0].Target, e.Parts[0].Openings[0].Target = envelope.Target{}, envelope.Target{U: 1, Met: true}
	r, err := e.Rank()
	if err != nil {
		t.Fatal(err)
	}
	if r.Furthest != -1 || r.Weakest.Row != r.LosesMost || !strings.Contains(r.Weakest.Why, "loses most") {
		t.Errorf("weakest link is %+v with %d furthest behind, want the one that loses most", r.Weakest, r.Furthest)
	}
}

func TestCeilingBelowWallIsRemarked(t *testing.T) {
	e := house()
	e.Parts[0].U, e.Parts[1].U = 0.3, 0.6
	r, err := e.Rank()
	if err != nil {
		t.Fatal(err)
	}
	if len(r.Remarks) != 1 || r.Remarks[0].Code != "ceiling-below-wall" || r.Remarks[0].Place != "ceiling" {
		t.Errorf("remarks are %+v, want one of ceiling-below-wall", r.Remarks)
	}
}

// random returns an envelope of n parts, some with openings.
func random(rng *rand.Rand, n int) envelope.Envelope {
	e := envelope.Envelope{Indoors: rvalue.FromCelsius(20), Outdoors: rvalue.FromCelsius(-5)}
	for i := range n {
		p := envelope.Part{Name: fmt.Sprint("part ", i), Area: rvalue.Area(5 + 50*rng.Float64()), U: rvalue.Transmittance(0.1 + 3*rng.Float64())}
		if rng.IntN(2) == 0 {
			p.Openings = []envelope.Opening{{Name: fmt.Sprint("window ", i), Kind: envelope.Window, Area: p.Area / 8, Count: 1 + rng.IntN(5), U: rvalue.Transmittance(1 + 4*rng.Float64())}}
		}
		if rng.IntN(2) == 0 {
			p.Target = envelope.Target{U: rvalue.Transmittance(0.1 + rng.Float64())}
		}
		e.Parts = append(e.Parts, p)
	}
	e.Bridges = []envelope.Bridge{{Name: "edge", Psi: rvalue.LinearTransmittance(rng.Float64()), Length: 30}}
	e.Leakage = &envelope.Leakage{Flow50: rvalue.AirFlow(0.5 * rng.Float64()), Volume: 300, Target50: 3}
	return e
}

func TestPartsSumToTheWhole(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for range 500 {
		e := random(rng, 1+rng.IntN(30))
		r, err := e.Rank()
		if err != nil {
			t.Fatal(err)
		}
		byName := map[string]rvalue.Conductance{}
		shares := 0.0
		for _, row := range r.Rows {
			byName[row.Name] = row.UA
			shares += row.Share
		}
		var sum rvalue.Conductance // in the order of the envelope, as Rank sums
		for _, p := range e.Parts {
			sum += byName[p.Name]
			for _, o := range p.Openings {
				sum += byName[o.Name]
			}
		}
		sum += byName["edge"]
		sum += byName["air leakage"]
		if math.Float64bits(float64(sum)) != math.Float64bits(float64(r.Total.UA)) {
			t.Fatalf("parts sum to %v, the total is %v; they must agree to the last bit", sum, r.Total.UA)
		}
		if n := float64(len(r.Rows)); math.Abs(shares-1) > 1e-15*n {
			t.Fatalf("shares of %v rows sum to %v", n, shares)
		}
	}
}

func TestHalvingAPartChangesNothing(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	for range 200 {
		e := random(rng, 8)
		whole, err := e.Rank()
		if err != nil {
			t.Fatal(err)
		}
		i := rng.IntN(len(e.Parts))
		half := e.Parts[i]
		half.Area /= 2
		half.Openings = nil
		for _, o := range e.Parts[i].Openings {
			o.Area /= 2
			half.Openings = append(half.Openings, o)
		}
		e.Parts[i] = half
		half.Name += " again"
		e.Parts = append(e.Parts, half)
		halves, err := e.Rank()
		if err != nil {
			t.Fatal(err)
		}
		near(t, "total", halves.Total.UA.SI(), whole.Total.UA.SI(), 1e-9)
		near(t, "behind", halves.Total.Behind.SI(), whole.Total.Behind.SI(), 1e-9)
	}
}

func TestMoreResistanceNeverLosesMore(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	for range 200 {
		e := random(rng, 6)
		before, err := e.Rank()
		if err != nil {
			t.Fatal(err)
		}
		e.Parts[rng.IntN(6)].U *= rvalue.Transmittance(0.5)
		after, err := e.Rank()
		if err != nil {
			t.Fatal(err)
		}
		if after.Total.UA >= before.Total.UA {
			t.Fatalf("halving a U raised the total from %v to %v", before.Total.UA, after.Total.UA)
		}
	}
}

func TestCheckReportsEverything(t *testing.T) {
	e := house()
	e.Parts[0].Openings[0].Count = 40
	e.Parts[1].U = rvalue.Transmittance(math.NaN())
	e.Parts[1].Toward = "cellar"
	e.Bridges[0].Length = -1
	e.Buffers[0].ToOutdoors = 0
	e.Leakage.Divisor = 1
	err := e.Check()
	if err == nil {
		t.Fatal("an envelope with six mistakes passes")
	}
	for _, want := range []string{`openings in "walls"`, `"ceiling" has a U`, `"cellar"`, `bridge "rim"`, `buffer "attic"`, "divisor"} {
		if !strings.Contains(err.Error(), want) {
			t.Errorf("Check says nothing of %s:\n%v", want, err)
		}
	}
}

func TestDescribedAndParse(t *testing.T) {
	if n, err := envelope.Described(" Very  leaky "); err != nil || n != 18 {
		t.Errorf("very leaky is %v, %v", n, err)
	}
	if _, err := envelope.Described("drafty"); err == nil || !strings.Contains(err.Error(), "leaky") {
		t.Errorf("drafty gives %v, want the words that exist", err)
	}
	if _, err := envelope.ParseShelter("windy"); err == nil {
		t.Error("windy is taken for a shelter")
	}
	if _, _, err := envelope.DefaultWindow("quintuple", "wood", false); err == nil || !strings.Contains(err.Error(), "double low-e") {
		t.Errorf("quintuple glass gives %v, want the glazings that exist", err)
	}
	if _, err := envelope.SlabEdge("3 ft up", 1); err == nil || !strings.Contains(err.Error(), "vertical") {
		t.Errorf("an unknown reach gives %v, want those that exist", err)
	}
}

func ExampleEnvelope_Rank() {
	r, err := house().Rank()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, row := range r.Rows {
		fmt.Printf("%-11s %5.1f W/K %3.0f %%\n", row.Name, row.UA.SI(), 100*row.Share)
	}
	fmt.Println("weakest link:", r.Rows[r.Weakest.Row].Name, "through the", r.Weakest.Piece)
	// Output:
	// walls        90.0 W/K  51 %
	// windows      50.0 W/K  29 %
	// ceiling      18.8 W/K  11 %
	// rim          10.0 W/K   6 %
	// air leakage   6.0 W/K   3 %
	// weakest link: walls through the bays
}

var sink *envelope.Ranking

func BenchmarkRank(b *testing.B) {
	e := random(rand.New(rand.NewPCG(7, 8)), 20)
	b.ReportAllocs()
	for b.Loop() {
		r, err := e.Rank()
		if err != nil {
			b.Fatal(err)
		}
		sink = r
	}
}
