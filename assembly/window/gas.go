package window

import (
	"fmt"

	"github.com/coldseam/coldseam/rvalue"
)

// Gas is what fills the gap between two panes.
type Gas uint8

// The gases of sealed units.
const (
	Air Gas = iota
	Argon
	Krypton
	Xenon
	SF6 // sulphur hexafluoride, in older sound-insulating units; no longer filled
)

const gasCount = int(SF6) + 1

// String returns the name of the gas in the notation.
func (g Gas) String() string {
	if int(g) < gasCount {
		return gases[g].name
	}
	return fmt.Sprintf("Gas(%d)", uint8(g))
}

// Conductivity returns that of the still gas at the temperature t, by the
// straight line of ISO 15099 (annex on properties of gases, from memory), which
// holds from −50 to 70 °C.
func (g Gas) Conductivity(t rvalue.Temperature) rvalue.Conductivity {
	k := &gases[g].hot.k
	return rvalue.Conductivity(k[0] + k[1]*t.Kelvins())
}

// properties are those of a gas or a mixture: density in kg/m³, viscosity in
// Pa·s, conductivity in W/(m·K), specific heat in J/(kg·K).
type properties struct{ rho, mu, k, c float64 }

// linear has what ISO 15099 needs for any temperature: constant and slope per K,
// molar mass in kg/kmol.
type linear struct {
	k, mu, c [2]float64
	molar    float64
}

// gases has each gas at 283 K as EN 673 (2011) table 1 prints it, and the
// coefficients of ISO 15099, annex on properties of gases; both from memory. All
// the 20 rows of EN 673 are in testdata/window_gas.csv, where the test holds both
// against them. SF6 is not in ISO 15099: its lines go through EN 673's own
// figures at −10 and 20 °C.
var gases = [gasCount]struct {
	name string
	at10 properties
	hot  linear
}{
	Air: {
		"air",
		properties{1.232, 1.761e-5, 2.496e-2, 1008},
		linear{k: [2]float64{2.873e-3, 7.760e-5}, mu: [2]float64{3.723e-6, 4.940e-8}, c: [2]float64{1002.737, 1.2324e-2}, molar: 28.97},
	},
	Argon: {
		"argon",
		properties{1.699, 2.164e-5, 1.684e-2, 519},
		linear{k: [2]float64{2.285e-3, 5.149e-5}, mu: [2]float64{3.379e-6, 6.451e-8}, c: [2]float64{521.9285, 0}, molar: 39.948},
	},
	Krypton: {
		"krypton",
		properties{3.560, 2.400e-5, 0.900e-2, 245},
		linear{k: [2]float64{9.443e-4, 2.826e-5}, mu: [2]float64{2.213e-6, 7.777e-8}, c: [2]float64{248.0907, 0}, molar: 83.80},
	},
	Xenon: {
		"xenon",
		properties{5.689, 2.226e-5, 0.529e-2, 161},
		linear{k: [2]float64{4.538e-4, 1.723e-5}, mu: [2]float64{1.069e-6, 7.414e-8}, c: [2]float64{158.3397, 0}, molar: 131.30},
	},
	SF6: {
		"sf6",
		properties{6.360, 1.459e-5, 1.275e-2, 614},
		linear{k: [2]float64{-9.4234e-3, 7.8333e-5}, mu: [2]float64{3.8303e-6, 3.800e-8}, c: [2]float64{614, 0}, molar: 146.06},
	},
}

// Fill is what a sealed gap holds: shares by volume from 0 to 1 of the gases
// that are not air. Air is the rest, so that the zero value is plain air.
type Fill struct{ Argon, Krypton, Xenon, SF6 float64 }

// shares returns the share of each gas, air included.
func (f Fill) shares() [gasCount]float64 {
	return [gasCount]float64{1 - f.sum(), f.Argon, f.Krypton, f.Xenon, f.SF6}
}

func (f Fill) sum() float64 { return f.Argon + f.Krypton + f.Xenon + f.SF6 }

// at10 returns the properties of the mixture at 283 K.
func (f Fill) at10() (p properties) {
	// EN 673, gas mixtures: each property is the mean by volume (from memory).
	for g, x := range f.shares() {
		q := &gases[g].at10
		p.rho += x * q.rho
		p.mu += x * q.mu
		p.k += x * q.k
		p.c += x * q.c
	}
	return p
}

// linear returns the coefficients of the mixture. A mean by volume of straight
// lines is a straight line, so that a solver mixes once. ISO 15099 mixes
// viscosity and conductivity by kinetic theory instead; for argon at 90 % in air
// the two differ by less than 1 % (TestMixing).
func (f Fill) linear() (m linear) {
	if f == (Fill{}) {
		return gases[Air].hot
	}
	heat := [2]float64{}
	for g, x := range f.shares() {
		q := &gases[g].hot
		for i := range 2 {
			m.k[i] += x * q.k[i]
			m.mu[i] += x * q.mu[i]
			heat[i] += x * q.molar * q.c[i]
		}
		m.molar += x * q.molar
	}
	// Heat goes by mass: a mean by volume of the molar heats.
	m.c = [2]float64{heat[0] / m.molar, heat[1] / m.molar}
	return m
}

// Constants of ISO 15099.
const (
	pressure  = 101325.0 // Pa
	universal = 8314.51  // J/(kmol·K)
	gravity   = 9.81     // m/s²
	sigma     = 5.67e-8  // W/(m²·K⁴), as EN 673 and ISO 15099 round it
)

// at returns the properties at t K.
func (m *linear) at(t float64) properties {
	return properties{
		rho: pressure * m.molar / (universal * t), // perfect gas
		mu:  m.mu[0] + m.mu[1]*t,
		k:   m.k[0] + m.k[1]*t,
		c:   m.c[0] + m.c[1]*t,
	}
}

// rayleigh returns the Rayleigh number of a gap or face s m across with a
// difference of dT K at a mean of t K.
func (p *properties) rayleigh(s, dT, t float64) float64 {
	// ISO 15099, 5.3.3: Ra = ρ²·s³·g·β·c·ΔT/(μ·λ), β = 1/T; EN 673: Gr·Pr, the same.
	return p.rho * p.rho * s * s * s * gravity * p.c * dT / (p.mu * p.k * t)
}
