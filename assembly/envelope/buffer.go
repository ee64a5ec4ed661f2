package envelope

import (
	"math"
	"strings"

	"github.com/coldseam/coldseam/rvalue"
)

// BufferSource says what Balance goes by.
const BufferSource = "the steady balance of what enters from the rooms and leaves to outdoors, ISO 13789, adjustment for unheated spaces, from memory"

// Buffer is an unheated space between the rooms and outdoors: a garage, an
// attic, a porch. Its temperature follows from its own steady balance of heat;
// several parts may face it.
type Buffer struct {
	Name       string
	ToOutdoors rvalue.Conductance // ΣU·A of what separates it from outdoors
	Volume     rvalue.Volume      // 0: its own air change is left out
	AirChange  float64            // of outdoor air, 1/h, 0 to 100
}

func (b *Buffer) check(f *findings) {
	if strings.TrimSpace(b.Name) == "" {
		f.add("buffer", b.Name, "", "it has no name")
	}
	if h := float64(b.ToOutdoors); !(h >= 0) || math.IsInf(h, 1) {
		f.add("buffer", b.Name, "", "a conductance to outdoors of %v W/K, it must be 0 or more and finite", h)
	}
	if v := float64(b.Volume); !(v >= 0) || math.IsInf(v, 1) {
		f.add("buffer", b.Name, "", "a volume of %v m³, it must be 0 or more and finite", v)
	}
	if n := b.AirChange; !(n >= 0 && n <= mostAir) {
		f.add("buffer", b.Name, "", "%v air changes per hour, use 0 to %d", n, mostAir)
	}
	if b.ToOutdoors == 0 && float64(b.Volume)*b.AirChange == 0 {
		f.add("buffer", b.Name, "", "it loses nothing to outdoors; give what separates it from outdoors, or its volume and air change")
	}
}

// Outward returns the conductance from the buffer to outdoors, that of its air
// change included.
func (b Buffer) Outward(altitude rvalue.Length) rvalue.Conductance {
	// ISO 13789, unheated spaces: H_ue = H_T,ue + H_V,ue
	return b.ToOutdoors + AirConductance(ACH50(b.AirChange, b.Volume), altitude)
}

// Balance returns the factor by which heat toward the buffer is less than
// toward outdoors, b = H_ue/(H_iu + H_ue), and the temperature of the buffer.
// inward is H_iu, the conductance between the rooms and the buffer. The
// buffer's air is exchanged with outdoors only, not with the rooms.
//
// Source: ISO 13789, adjustment for unheated spaces, from memory. It is the
// same as the added resistance of ISO 6946 where one area faces the buffer.
func (b Buffer) Balance(inward rvalue.Conductance, altitude rvalue.Length, indoors, outdoors rvalue.Temperature) (factor float64, at rvalue.Temperature) {
	out := b.Outward(altitude)
	factor = float64(out) / float64(inward+out)
	return factor, indoors.Add(rvalue.TemperatureDifference(-factor * float64(indoors.Sub(outdoors))))
}

// Balanced is a buffer with its heat balance solved.
type Balanced struct {
	Name    string
	Inward  rvalue.Conductance // H_iu: from the rooms
	Outward rvalue.Conductance // H_ue: to outdoors, air change included
	Factor  float64            // b
	At      rvalue.Temperature // 0 unless both temperatures are given
}

// factor returns b once the conductance from the rooms has changed by so much.
func (b *Balanced) factor(change rvalue.Conductance) float64 {
	// ISO 13789, unheated spaces: b = H_ue/(H_iu + H_ue)
	return float64(b.Outward) / float64(b.Inward+change+b.Outward)
}

// balance solves the heat balance of every buffer, onto solved.
func (e *Envelope) balance(solved []Balanced) []Balanced {
	for i := range e.Buffers {
		b := &e.Buffers[i]
		var inward rvalue.Conductance
		for j := range e.Parts {
			p := &e.Parts[j]
			if p.Toward != b.Name {
				continue
			}
			inward += p.U.Times(p.net())
			for k := range p.Openings {
				inward += p.Openings[k].U.Times(p.Openings[k].all())
			}
		}
		factor, at := b.Balance(inward, e.Altitude, e.Indoors, e.Outdoors)
		if e.Indoors == 0 || e.Outdoors == 0 {
			at = 0
		}
		solved = append(solved, Balanced{b.Name, inward, b.Outward(e.Altitude), factor, at})
	}
	return solved
}
