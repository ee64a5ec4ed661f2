package envelope

import (
	"math"
	"strconv"

	"github.com/coldseam/coldseam/rvalue"
)

// Leakage is the air that leaks through the envelope, as a blower door
// measures it: the flow at 50 Pa. For a figure in air changes per hour use
// [ACH50], for a word [Described]. The mean flow of the heating season is that
// flow over a divisor ([Divide]), or what [BasicFlow] gives for a temperature
// and a wind: then the divisor is the one flow over the other.
type Leakage struct {
	Flow50   rvalue.AirFlow // at 50 Pa
	Volume   rvalue.Volume  // of the heated rooms; 0: not known, then no target is judged
	Divisor  float64        // N: flow at 50 Pa over the season's mean flow, 5 to 40; 0: DefaultDivisor
	Target50 float64        // air changes per hour at 50 Pa that are asked, 0: nothing
	Text     string         // where the figure comes from
}

// ACH50 returns the flow of n air changes per hour of a volume.
func ACH50(n float64, volume rvalue.Volume) rvalue.AirFlow {
	// In m³/s; the flow is in the same unit and so only the hour is converted.
	return rvalue.AirFlow(n * float64(volume) * float64(rvalue.CubicMetrePerHour))
}

// leakageName is the name of the leakage's row and the place of its remarks.
const leakageName = "air leakage"

// Bounds of the divisor: the table's are 9.8 to 29.4.
const (
	leastDivisor = 5
	mostDivisor  = 40
)

func (l *Leakage) check(f *findings) {
	add := func(format string, args ...any) { f.add(leakageName, "", "", format, args...) }
	if q := float64(l.Flow50); !positive(q) {
		add("%v m³/s at 50 Pa, it must be positive and finite", q)
	}
	if v := float64(l.Volume); !(v >= 0) || math.IsInf(v, 1) {
		add("a heated volume of %v m³, it must be positive and finite", v)
	}
	if n := l.Divisor; n != 0 && !(n >= leastDivisor && n <= mostDivisor) {
		add("a divisor of %v, use %d to %d", n, leastDivisor, mostDivisor)
	}
	if t := l.Target50; t != 0 && !positive(t) {
		add("a target of %v air changes per hour at 50 Pa, it must be positive and finite, or 0 for none", t)
	}
}

// UA returns the conductance of the air that leaks over the season.
func (l Leakage) UA(altitude rvalue.Length) rvalue.Conductance {
	n := l.Divisor
	if n == 0 {
		n = DefaultDivisor
	}
	return AirConductance(rvalue.AirFlow(float64(l.Flow50)/n), altitude)
}

// fill makes the leakage's row but for its temperature; its UA is set.
func (l *Leakage) fill(row *Row, altitude rvalue.Length) {
	row.Name, row.Kind, row.Factor, row.Source = leakageName, AirLeakage, 1, l.Text
	if l.Target50 == 0 || l.Volume == 0 {
		return
	}
	allowed := *l
	allowed.Flow50 = ACH50(l.Target50, l.Volume)
	row.HasTarget = true
	row.Behind = max(0, row.UA-allowed.UA(altitude))
	row.Target = Target{
		Met:  row.Behind == 0,
		Text: "asked: " + short(l.Target50) + " air changes per hour at 50 Pa, has " + short(l.Flow50.SI()/l.Volume.SI()),
	}
}

// short prints three significant digits.
func short(v float64) string { return strconv.FormatFloat(v, 'g', 3, 64) }

// tightness ties the words for how tight a house is to air changes at 50 Pa.
var tightness = [...]struct {
	word  string
	ach50 float64
}{
	{"snug", 3}, {"usual", 7}, {"drafty", 12}, {"very drafty", 18},
}

// TightnessSource says where the figures of Described come from.
const TightnessSource = "common practice, no source; a blower-door test costs little against what it tells"

// Tightnesses returns the words that Described reads, the tightest first.
func Tightnesses() []string {
	words := make([]string, len(tightness))
	for i, t := range tightness {
		words[i] = t.word
	}
	return words
}

// Described returns the air changes per hour at 50 Pa that a word stands for:
// snug 3, usual 7, drafty 12, very drafty 18 (common practice, no source).
// The error is a *NameError.
func Described(word string) (ach50 float64, err error) {
	for _, t := range tightness {
		if t.word == oneLine(word) {
			return t.ach50, nil
		}
	}
	return 0, &NameError{Name: word, What: "no word for tightness", Known: Tightnesses()}
}
