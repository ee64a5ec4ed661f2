package assembly_test

import (
	"math"
	"testing"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/rvalue"
)

// steelWall is the wall of ASHRAE Handbook—Fundamentals 2021 (SI), ch. 27,
// example 5; what covers the studs outside is 51 mm thick together.
func steelWall() assembly.SteelFrame {
	return assembly.SteelFrame{
		Spacing: 0.406, Depth: 0.089, Flange: 0.038, Thickness: 0.001,
		Cavity:  rvalue.Resistance(0.089 * 23.92),
		Outside: []assembly.Cover{{Thickness: 0.0381, R: 1.325}, {Thickness: 0.0129, R: 0.145}},
		Inside:  []assembly.Cover{{Thickness: 0.00127, R: 0.043}},
	}
}

// Zones is the modified zone method with z_f = 2, and z_f = 0 leaves a zone of
// the flange's width.
func TestZoneFactors(t *testing.T) {
	f := steelWall()
	zone, err := f.Zones()
	if err != nil {
		t.Fatal(err)
	}
	two, err := f.ModifiedZones(2)
	if err != nil || two != zone {
		t.Errorf("ModifiedZones(2) = %v, %v, want Zones() = %v", two, err, zone)
	}
	if want := 0.038 + 2*0.051; !near(float64(zone.Width), want, 1e-12) {
		t.Errorf("zone method: width %v m, want %v", float64(zone.Width), want)
	}
	none, err := f.ModifiedZones(0)
	if err != nil || !near(float64(none.Width), 0.038, 1e-12) {
		t.Errorf("ModifiedZones(0): width %v, %v, want the flange", float64(none.Width), err)
	}
	last := math.Inf(1)
	for _, zf := range []float64{-0.5, 0, 0.5, 1, 1.71, 2, 3} {
		z, err := f.ModifiedZones(zf)
		if err != nil || !(float64(z.R) < last) {
			t.Errorf("ModifiedZones(%v).R = %v, %v, want below %v: a wider zone loses more", zf, float64(z.R), err, last)
		}
		last = float64(z.R)
	}
}

// Covers thinner than 1/2 in, or of no stated thickness, count 1/2 in: the zone
// method's own least, from memory.
func TestLeastCover(t *testing.T) {
	f := steelWall()
	f.Outside = []assembly.Cover{{R: 1.47}}
	z, err := f.Zones()
	if want := 0.038 + 2*0.0127; err != nil || !near(float64(z.Width), want, 1e-12) {
		t.Errorf("Zones().Width = %v, %v, want %v", float64(z.Width), err, want)
	}
}

// A zone wider than the spacing is all of the wall.
func TestZoneAsWideAsSpacing(t *testing.T) {
	f := steelWall()
	f.Outside[0].Thickness = 0.3
	z, err := f.Zones()
	if err != nil || z.Width != f.Spacing || !near(float64(z.R), float64(z.Framed), 1e-14) {
		t.Errorf("Zones() = %+v, %v, want the zone as wide as the spacing", z, err)
	}
}

// With steel that conducts as the fill does, the studs vanish.
func TestZonesWithoutContrast(t *testing.T) {
	f := steelWall()
	f.Steel = rvalue.Conductivity(1 / 23.92)
	z, err := f.Zones()
	if want := 1.325 + 0.145 + 0.043 + 0.089*23.92; err != nil || !near(float64(z.R), want, 1e-12) {
		t.Errorf("Zones().R = %v, %v, want the plain sum %v", float64(z.R), err, want)
	}
}

func TestZonesRefuse(t *testing.T) {
	nan := math.NaN()
	for name, change := range map[string]func(*assembly.SteelFrame){
		"spacing 0":           func(f *assembly.SteelFrame) { f.Spacing = 0 },
		"depth NaN":           func(f *assembly.SteelFrame) { f.Depth = rvalue.Length(nan) },
		"flange negative":     func(f *assembly.SteelFrame) { f.Flange = -0.04 },
		"sheet infinite":      func(f *assembly.SteelFrame) { f.Thickness = rvalue.Length(math.Inf(1)) },
		"empty cavity of 0":   func(f *assembly.SteelFrame) { f.Cavity = 0 },
		"steel negative":      func(f *assembly.SteelFrame) { f.Steel = -48 },
		"flanges meet":        func(f *assembly.SteelFrame) { f.Flange = 0.5 },
		"sheet as deep":       func(f *assembly.SteelFrame) { f.Thickness = 0.0445 },
		"cover of R 0":        func(f *assembly.SteelFrame) { f.Outside[0].R = 0 },
		"cover of thickness":  func(f *assembly.SteelFrame) { f.Inside[0].Thickness = -1 },
		"sheet as the flange": func(f *assembly.SteelFrame) { f.Flange = 0.001 },
	} {
		f := steelWall()
		change(&f)
		if z, err := f.Zones(); err == nil {
			t.Errorf("%s: Zones = %+v, want an error", name, z)
		}
	}
	for _, zf := range []float64{nan, -2, 5, -0.74} { // −0.74·51 mm leaves less than the web
		if z, err := steelWall().ModifiedZones(zf); err == nil {
			t.Errorf("ModifiedZones(%v) = %+v, want an error", zf, z)
		}
	}
}

func TestSteelWeighted(t *testing.T) {
	a := assembly.Assembly{Layers: []assembly.Layer{
		assembly.Plain("film", 0.03), assembly.Plain("EPS", 1.3),
		assembly.Framed("studs", 0.0077, 0.001, 2.11), assembly.Plain("gypsum", 0.098), assembly.Plain("film", 0.12),
	}}
	upper, lower := float64(a.ParallelPath()), float64(a.IsothermalPlanes())
	for _, c := range []struct {
		name     string
		spacing  rvalue.Length
		sheathed bool
		k1       float64 // NBC notes, from memory
	}{
		{"wide", 0.61, false, 0.50},
		{"wide and sheathed", 0.50, true, 0.50},
		{"close and sheathed", 0.406, true, 0.40},
		{"close", 0.406, false, 0.33},
	} {
		got, err := assembly.SteelWeighted(a, c.spacing, c.sheathed)
		if want := c.k1*upper + (1-c.k1)*lower; err != nil || !near(float64(got), want, 1e-14) {
			t.Errorf("%s: SteelWeighted = %v, %v, want %v", c.name, float64(got), err, want)
		}
	}
	for _, s := range []rvalue.Length{0, -1, rvalue.Length(math.NaN())} {
		if _, err := assembly.SteelWeighted(a, s, true); err == nil {
			t.Errorf("SteelWeighted with spacing %v: no error", s)
		}
	}
	if _, err := assembly.SteelWeighted(assembly.Assembly{}, 0.4, true); err == nil {
		t.Error("SteelWeighted of nothing: no error")
	}
}
