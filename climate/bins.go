package climate

import (
	"errors"
	"fmt"
	"math"

	"github.com/coldseam/coldseam/rvalue"
)

// Bin is the part of a year that the outdoor temperature spends between two edges.
// The first bin of a list also holds all that is colder, the last all that is warmer.
type Bin struct {
	From, To rvalue.Temperature
	Mean     rvalue.Temperature // mean over the hours of the bin
	Hours    float64            // a year; those of a list add up to 8760
}

// Bins sorts the days of a year by their mean temperature into bins of a width, 0.1
// to 20 K, one edge of which lies at edge. With edge at the balance temperature of a
// house the bins below it sum to its heating degree days.
func (p *Prepared) Bins(edge rvalue.Temperature, width rvalue.TemperatureDifference) ([]Bin, error) {
	return bins(p.daily(), edge, width)
}

// HourBins sorts the hours of a year by their temperature, as [Prepared.Bins] sorts
// its days: every month's mean day, shaped as Erbs, Klein and Beckman (1983) found it,
// about daily means that are spread as for degree days. It needs the daily swing.
func (p *Prepared) HourBins(edge rvalue.Temperature, width rvalue.TemperatureDifference) ([]Bin, error) {
	if p.swing == [12]float64{} {
		return nil, errors.New("hourly bins need the daily swing of each month, the mean maximum less the mean minimum")
	}
	return bins(p.hourly(0), edge, width)
}

// cloud is hours spread normally about a temperature.
type cloud struct{ hours, mean, spread float64 }

// daily returns the clouds of the daily means, one a month.
func (p *Prepared) daily() []cloud {
	out := make([]cloud, 12)
	for i := range out {
		out[i] = cloud{24 * days[i], p.mean[i], p.spread[i]}
	}
	return out
}

// hourly returns the clouds of the hours, 24 a month. A swing that is unknown is
// taken to be assumed.
func (p *Prepared) hourly(assumed float64) []cloud {
	var shape [24]float64
	for h := range shape {
		// Erbs, Klein and Beckman 1983, mean day of a month; A is close to maximum
		// less minimum. From memory; its extremes are 0.98 apart and it sums to zero.
		t := 2 * math.Pi * float64(h) / 24 // the first hour is one o'clock
		shape[h] = 0.4632*math.Cos(t-3.805) + 0.0984*math.Cos(2*t-0.360) +
			0.0168*math.Cos(3*t-0.822) + 0.0138*math.Cos(4*t-3.513)
	}
	out := make([]cloud, 0, 12*24)
	for i := range days {
		swing := p.swing[i]
		if swing == 0 {
			swing = assumed
		}
		for _, s := range shape {
			out = append(out, cloud{days[i], p.mean[i] + s*swing, p.spread[i]})
		}
	}
	return out
}

// below returns the hours colder than t, and the sum of their temperatures.
func below(clouds []cloud, t float64) (hours, sum float64) {
	for _, c := range clouds {
		z := (t - c.mean) / c.spread
		f, density := tail(math.Abs(z))
		if z > 0 {
			f = 1 - f
		}
		hours += c.hours * f
		sum += c.hours * (c.mean*f - c.spread*density)
	}
	return hours, sum
}

// few is how many hours a year there must be beyond an edge for a bin of their own.
const few = 0.05

func bins(clouds []cloud, edge rvalue.Temperature, width rvalue.TemperatureDifference) ([]Bin, error) {
	w, e := width.SI(), edge.Celsius()
	if !(w >= 0.1 && w <= 20) {
		return nil, fmt.Errorf("width of a bin is %.4g K; give one from 0.1 to 20 K", w)
	}
	if !(e >= lowestBase && e <= highestBase) {
		return nil, fmt.Errorf("edge of a bin is %.4g °C; give one from %d to %d °C", e, lowestBase, highestBase)
	}
	lo, hi, whole := math.Inf(1), math.Inf(-1), 0.0
	for _, c := range clouds {
		lo, hi = min(lo, c.mean-6*c.spread), max(hi, c.mean+6*c.spread)
		whole += c.hours * c.mean
	}
	// The first bin is the lowest below whose upper edge there are a few hours.
	k := math.Floor((lo - e) / w)
	for {
		if h, _ := below(clouds, e+(k+1)*w); h >= few {
			break
		}
		k++
	}
	var out []Bin
	hours, sum := 0.0, 0.0 // up to the bin's lower edge
	for ; ; k++ {
		from, to := e+k*w, e+(k+1)*w
		h, s := below(clouds, to)
		last := hoursPerYear-h < few || to > hi
		if last {
			h, s = hoursPerYear, whole
		}
		mean := (from + to) / 2
		if h-hours > 1e-6 { // else the quotient is of rounding errors
			mean = (s - sum) / (h - hours)
		}
		out = append(out, Bin{
			From: rvalue.FromCelsius(from), To: rvalue.FromCelsius(to), Mean: rvalue.FromCelsius(mean), Hours: h - hours,
		})
		if last {
			return out, nil
		}
		hours, sum = h, s
	}
}
