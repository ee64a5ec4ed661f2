package season

import (
	"fmt"
	"math"

	"github.com/coldseam/coldseam/climate"
	"github.com/coldseam/coldseam/rvalue"
)

// Trust says between what the truth is likely to be: from Low to High times the
// figure that it goes with. Why lists what was counted, and what was not.
type Trust struct {
	Low, High float64
	Why       []string
}

// Realisation is the share of predicted savings that was measured in the trial that
// RealisationSource names.
const Realisation = 0.39

// RealisationSource names the trial.
const RealisationSource = "randomised trial of weatherised houses in Michigan, 2015, read in a summary: about $5000 spent a house, savings 39 % of those predicted"

// From says how near the weather is to the house, which decides how far its degree
// days can be trusted.
type From uint8

// Where weather is from.
const (
	NearestStation     From = iota // by Nearest, the house's own elevation unknown
	NearestAtElevation             // by Nearest, with the house's elevation known
	OwnStation                     // of the place itself, or stated by the user
)

// nearby is a distance within which a station counts as the place's own, if it is
// about as high: our own judgement, towns and their airports are that far apart.
const (
	nearby     = 25e3 * rvalue.Metre
	aboutLevel = 100 * rvalue.Metre
)

// FromOf judges the weather that climate.Nearest found for a spot.
func FromOf(w climate.Weather, elevationKnown bool) From {
	switch {
	case w.Distance <= nearby && elevationKnown && w.Climb <= aboutLevel && w.Climb >= -aboutLevel:
		return OwnStation
	case elevationKnown:
		return NearestAtElevation
	}
	return NearestStation
}

// What package climate measured, see testdata/climate_SCORE.md.
const (
	// methodRMS is the error of degree days at 65 °F from monthly means at the 270
	// stations, root mean square; the house's own base is not checked as well.
	methodRMS = 51 * climate.FahrenheitDay
	// Nine in ten stations are within these shares of their own HDD65 when the best
	// other station stands for them.
	doubtNearest     = 0.244
	doubtAtElevation = 0.204
)

// gainsDoubt is how far default gains may be off, a judgement of ours.
const gainsDoubt = 0.5

// Reasons of a Trust, ready-made since they are the same for every house.
const (
	whyMethod    = "degree days from monthly means: ± twice 51 °F·d (28 K·d), the error measured at 270 stations (rms)"
	whyNearest   = "weather of the nearest station: ± 24 %, within which nine in ten stations are when another stands for them"
	whyElevation = "weather of the nearest station carried to the elevation: ± 20 %, within which nine in ten stations are when another stands for them"
	whyGains     = "gains not given: the default may be off by half (our own judgement)"
	whyLeftOut   = "not counted: how well the parts themselves are known, habits, winters that are not the mean one (the normals are of 1981 to 2010, the years since are warmer)"
)

// trust bounds the seasonal heat of a state. The doubts are independent of each
// other and add up as the root of their squares.
func (y *Year) trust(s *state) (Trust, error) {
	t := Trust{Why: make([]string, 0, 4)}
	if s.heating < climate.KelvinDay {
		t.High = 1
		t.Why = append(t.Why, "hardly any heating is needed, so that no share of it can be trusted")
		return t, nil
	}
	method := 2 * float64(methodRMS) / float64(s.heating)
	low, high := method*method, method*method
	t.Why = append(t.Why, whyMethod)
	switch y.house.From {
	case NearestStation:
		low, high = low+doubtNearest*doubtNearest, high+doubtNearest*doubtNearest
		t.Why = append(t.Why, whyNearest)
	case NearestAtElevation:
		low, high = low+doubtAtElevation*doubtAtElevation, high+doubtAtElevation*doubtAtElevation
		t.Why = append(t.Why, whyElevation)
	}
	if y.house.Gains == nil {
		all := y.Gains.Internal + y.Gains.Solar
		for _, side := range [...]float64{-1, 1} { // less gains, more heat
			base := balance(y.house.Indoors, s.ua, Power(1+side*gainsDoubt)*all)
			dd, err := y.house.Weather.Year(base)
			if err != nil {
				return Trust{}, err
			}
			off := float64(dd.Heating)/float64(s.heating) - 1
			if side < 0 {
				high += off * off
			} else {
				low += off * off
			}
		}
		t.Why = append(t.Why, whyGains)
	}
	t.Low, t.High = max(0, 1-math.Sqrt(low)), 1+math.Sqrt(high)
	t.Why = append(t.Why, whyLeftOut)
	return t, nil
}

// ofSaving turns the trust in a house's heat into that in a predicted saving.
func (t Trust) ofSaving() Trust {
	return Trust{
		Low: Realisation * t.Low, High: t.High,
		Why: append([]string{fmt.Sprintf("of predicted savings %.0f %% were measured (%s)", 100*Realisation, RealisationSource)}, t.Why...),
	}
}
