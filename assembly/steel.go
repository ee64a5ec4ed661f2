package assembly

import (
	"fmt"
	"math"

	"github.com/coldseam/coldseam/rvalue"
)

// steelResistivity is that of stud steel in m·K/W, 48 W/(m·K):
// ASHRAE Handbook—Fundamentals 2021, ch. 27, example 5.
const steelResistivity = 0.0208

// zoneFactor is z_f of the zone method: the zone that a flange gathers heat
// from is wider than the flange by the cover's thickness on either side.
const zoneFactor = 2.0

// leastCover is the least thickness of the thicker cover that the zone method
// counts: ASHRAE Handbook—Fundamentals, ch. 27, zone method, from memory.
const leastCover = 0.5 * rvalue.Inch

// SteelFrame is a layer of steel studs with what covers it on both sides.
type SteelFrame struct {
	Spacing   rvalue.Length       // on centre
	Depth     rvalue.Length       // of the stud and its cavity
	Flange    rvalue.Length       // width, 1 5/8 in nominal
	Thickness rvalue.Length       // of the sheet
	Steel     rvalue.Conductivity // 0: 48 W/(m·K)
	Cavity    rvalue.Resistance   // of what fills the cavity, over its whole depth
	Inside    []Cover             // layers on the room's side, in any order, the film one of them
	Outside   []Cover             // layers toward outdoors
}

// Cover is a plain layer over studs: a board, a film (of no thickness).
type Cover struct {
	Thickness rvalue.Length
	R         rvalue.Resistance
}

// SteelZones is the result of the zone methods, with the steps between.
type SteelZones struct {
	R      rvalue.Resistance // air to air, if the covers include the films
	Width  rvalue.Length     // of the zone around each stud, W
	Web    rvalue.Resistance // layer of web and fill in the zone, R_I
	Flange rvalue.Resistance // layer of one flange and fill in the zone, R_II
	Framed rvalue.Resistance // through the zone, ΣR_W
	Clear  rvalue.Resistance // beside it, ΣR_cav
}

// Zones returns the resistance by the zone method: around each stud a zone of
// the flange and twice the thickness of the thicker cover, at least 1/2 in, within
// which every layer is mixed; beside it the clear wall, parallel to it. A zone
// wider than the spacing is taken as the spacing. It refuses sizes and resistances that
// are not positive and finite, and a stud that does not fit its spacing.
//
// Source: ASHRAE Handbook—Fundamentals 2021, ch. 27, example 5, z_f = 2.
func (f SteelFrame) Zones() (SteelZones, error) { return f.ModifiedZones(zoneFactor) }

// ModifiedZones returns the resistance by the modified zone method, whose zone
// factor zf comes from the handbook's chart of the resistivities of cover and
// fill, stud size and cover thickness. The chart is not part of this package:
// the factor is the caller's, from −1 to 4. 0 makes the zone as wide as the
// flange, 2 gives Zones.
//
// Source: ASHRAE Handbook—Fundamentals 2021, ch. 27, example 5.
func (f SteelFrame) ModifiedZones(zf float64) (SteelZones, error) {
	if !(zf >= -1 && zf <= 4) {
		return SteelZones{}, fmt.Errorf("assembly: a zone factor of %v, use -1 to 4", zf)
	}
	if err := f.check(); err != nil {
		return SteelZones{}, err
	}
	rA, dA, err := sumCovers(f.Outside)
	if err != nil {
		return SteelZones{}, err
	}
	rB, dB, err := sumCovers(f.Inside)
	if err != nil {
		return SteelZones{}, err
	}
	resistivity := steelResistivity
	if f.Steel > 0 {
		resistivity = 1 / float64(f.Steel)
	}
	s, d, l, t := float64(f.Spacing), float64(f.Depth), float64(f.Flange), float64(f.Thickness)

	// ASHRAE Handbook—Fundamentals 2021, ch. 27, example 5:
	// W = L + z_f Σd of the thicker side
	w := min(l+zf*max(dA, dB, float64(leastCover)), s)
	if w <= t {
		return SteelZones{}, fmt.Errorf("assembly: a zone factor of %v leaves a zone %v m wide, no wider than the web; use a larger factor", zf, w)
	}
	// 1/R_I = [(W − t)/W]/R_ins,I + [t/W]/R_met,I, the web between the flanges
	deep := d - 2*t
	insI, metI := float64(f.Cavity)*deep/d, deep*resistivity
	rI := 1 / ((w-t)/w/insI + t/w/metI)
	// 1/R_II = [(W − L)/W]/R_ins,II + [L/W]/R_met,II, either flange
	flange := min(l, w)
	insII, metII := float64(f.Cavity)*t/d, t*resistivity
	rII := 1 / ((w-flange)/w/insII + flange/w/metII)
	// 1/R = (W/s)/ΣR_W + (1 − W/s)/ΣR_cav
	framed := rA + rB + rI + 2*rII
	clear := rA + rB + float64(f.Cavity)
	u := w/s/framed + (1-w/s)/clear
	return SteelZones{
		R: rvalue.Resistance(1 / u), Width: rvalue.Length(w),
		Web: rvalue.Resistance(rI), Flange: rvalue.Resistance(rII),
		Framed: rvalue.Resistance(framed), Clear: rvalue.Resistance(clear),
	}, nil
}

func (f SteelFrame) check() error {
	for _, v := range []struct {
		name  string
		value float64
	}{
		{"spacing in m", float64(f.Spacing)},
		{"depth in m", float64(f.Depth)},
		{"flange width in m", float64(f.Flange)},
		{"sheet thickness in m", float64(f.Thickness)},
		{"cavity resistance in m²·K/W", float64(f.Cavity)},
	} {
		if !usable(v.value) {
			return fmt.Errorf("assembly: steel studs with a %s of %v, it must be positive and finite", v.name, v.value)
		}
	}
	if k := float64(f.Steel); !(k >= 0) || math.IsInf(k, 0) {
		return fmt.Errorf("assembly: steel of %v W/(m·K), use a positive conductivity or 0 for the default", k)
	}
	if f.Flange >= f.Spacing {
		return fmt.Errorf("assembly: steel flanges of %v m do not stand %v m apart", float64(f.Flange), float64(f.Spacing))
	}
	if 2*f.Thickness >= f.Depth || f.Thickness >= f.Flange {
		return fmt.Errorf("assembly: sheet of %v m makes no stud %v m deep with flanges of %v m", float64(f.Thickness), float64(f.Depth), float64(f.Flange))
	}
	return nil
}

// sumCovers returns the resistance and the thickness of covers.
func sumCovers(covers []Cover) (r, d float64, err error) {
	for _, c := range covers {
		if !usable(float64(c.R)) || !(c.Thickness >= 0) || math.IsInf(float64(c.Thickness), 0) {
			return 0, 0, fmt.Errorf("assembly: a cover of %v m²·K/W and %v m, its resistance must be positive and its thickness 0 or more", float64(c.R), float64(c.Thickness))
		}
		r += float64(c.R)
		d += float64(c.Thickness)
	}
	return r, d, nil
}

// Weights of the Canadian rule for steel framing.
const (
	wideStuds        = 500 * rvalue.Millimetre // spacing from which one pair of weights holds
	wideWeight       = 0.50
	sheathedWeight   = 0.40
	unsheathedWeight = 0.33
)

// SteelWeighted returns the effective resistance of an assembly with steel
// studs by the rule of the Canadian building code: a mean of the parallel path
// and isothermal planes, weighted by the spacing and by whether insulating
// sheathing covers the studs. The studs are shares of the assembly, the web's
// thickness over the spacing wide. It refuses what Check refuses and a spacing
// that is not positive.
//
// Source: National Building Code of Canada, 9.36 and its notes, from memory;
// the equal weights at 500 mm and more also in a foam-board maker's sheet, seen.
func SteelWeighted(a Assembly, spacing rvalue.Length, sheathed bool) (rvalue.Resistance, error) {
	// NBC notes: RSI_eff = K1 RSI_T1 + K2 (RSI_T2 + RSI_T3), T1 by parallel
	// path, T2 the framed layer mixed, T3 all others
	if err := a.Check(); err != nil {
		return 0, err
	}
	if !usable(float64(spacing)) {
		return 0, fmt.Errorf("assembly: steel studs %v m apart, the spacing must be positive and finite", float64(spacing))
	}
	k1 := unsheathedWeight
	switch {
	case spacing >= wideStuds:
		k1 = wideWeight
	case sheathed:
		k1 = sheathedWeight
	}
	return rvalue.Resistance(k1*float64(a.ParallelPath()) + (1-k1)*float64(a.IsothermalPlanes())), nil
}
