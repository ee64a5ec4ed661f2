package envelope_test

import (
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/coldseam/coldseam/assembly/envelope"
	"github.com/coldseam/coldseam/rvalue"
)

// refit returns the envelope with every part and opening of those names at its target.
func refit(e envelope.Envelope, names map[string]bool) envelope.Envelope {
	e.Parts = append([]envelope.Part(nil), e.Parts...)
	for i := range e.Parts {
		p := &e.Parts[i]
		if names[p.Name] {
			p.U = p.Target.U
		}
		p.Openings = append([]envelope.Opening(nil), p.Openings...)
		for j := range p.Openings {
			if o := &p.Openings[j]; names[o.Name] {
				o.U = o.Target.U
			}
		}
	}
	if names["air leakage"] {
		l := *e.Leakage
		l.Flow50 = envelope.ACH50(l.Target50, l.Volume)
		e.Leakage = &l
	}
	return e
}

// What being behind is said to cost is what goes when the house is built so and
// ranked anew, whatever faces the garage.
func TestBehindIsWhatGoes(t *testing.T) {
	rng := rand.New(rand.NewPCG(21, 22))
	toward := 0
	for range 200 {
		e := random(rng, 1+rng.IntN(12))
		r := must(e.Rank())(t)
		all := map[string]bool{}
		var fixes []envelope.Fix
		for i, row := range r.Rows {
			if row.Behind == 0 {
				continue
			}
			if row.Toward != "" {
				toward++
			}
			all[row.Name] = true
			fix := must(r.ToTarget(i))(t)
			fixes = append(fixes, fix)
			then := must(refit(e, map[string]bool{row.Name: true}).Rank())(t)
			near(t, "behind of "+row.Name, row.Behind.SI(), (r.Total.UA - then.Total.UA).SI(), sumRounding)
			near(t, "alone "+row.Name, sum(must(r.Fixed(fix))(t)), then.Total.UA.SI(), sumRounding)
		}
		then := must(refit(e, all).Rank())(t)
		near(t, "behind in all", r.Total.Behind.SI(), (r.Total.UA - then.Total.UA).SI(), sumRounding)
		fixed := must(r.Fixed(fixes...))(t)
		for i, row := range r.Rows {
			for _, after := range then.Rows {
				if after.Name == row.Name {
					near(t, row.Name+" with all fixes", fixed[i].SI(), after.UA.SI(), sumRounding)
				}
			}
		}
	}
	if toward == 0 {
		t.Error("nothing behind faced the garage")
	}
}

func sum(rows []rvalue.Conductance) (all float64) {
	for _, ua := range rows {
		all += ua.SI()
	}
	return all
}

// A wall of 40 W/K to a porch that loses 10 W/K: b = 0.2, 8 W/K. At a quarter of
// that, 10 W/K, b = 0.5 and 5 W/K: the porch gets colder, and three quarters of the
// wall's own saving shrink to three eighths.
func TestFixedByHand(t *testing.T) {
	e := envelope.Envelope{
		Parts:   []envelope.Part{{Name: "stair wall", Kind: envelope.Wall, Area: 20, U: 2, Toward: "porch", Target: envelope.Target{U: 0.5}}},
		Buffers: []envelope.Buffer{{Name: "porch", ToOutdoors: 10}},
	}
	r := must(e.Rank())(t)
	near(t, "now", r.Total.UA.SI(), 8, rounding)
	near(t, "behind", r.Rows[0].Behind.SI(), 3, rounding)
	near(t, "behind in all", r.Total.Behind.SI(), 3, rounding)
	near(t, "then", must(r.Fixed(must(r.ToU(0, 0.5))(t)))(t)[0].SI(), 5, rounding)
}

func TestFixErrors(t *testing.T) {
	r := must(house().Rank())(t)
	for _, c := range []struct {
		name, want string
		err        error
	}{
		{"no row", "no row 9", second(r.ToU(9, 1))},
		{"no area", "give its UA", second(r.ToU(3, 1))},
		{"no U", "must be positive", second(r.ToU(0, 0))},
		{"nothing asked", "nothing is asked", second(r.ToTarget(2))},
		{"twice", "fixed twice", second(r.Fixed(envelope.Fix{Row: 0, UA: 1}, envelope.Fix{Row: 0, UA: 2}))},
		{"negative", "must be 0 or more", second(r.Fixed(envelope.Fix{Row: 0, UA: -1}))},
	} {
		if c.err == nil || !strings.Contains(c.err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", c.name, c.err, c.want)
		}
	}
}

func second[T any](_ T, err error) error { return err }
