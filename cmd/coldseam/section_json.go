package main

import (
	"maps"
	"math"

	"github.com/coldseam/coldseam/assembly/house"
	"github.com/coldseam/coldseam/assembly/section"
)

// sectionUnits are the units of the quantities that section prints.
func sectionUnits() map[string][2]string {
	out := maps.Clone(unitNames)
	out["heat by length"] = [2]string{"W/m", "Btu/(h·ft)"}
	out["linear transmittance"] = [2]string{"W/(m·K)", "Btu/(h·ft·°F)"}
	return out
}

// bracketed is a quantity and what it lies between.
type bracketed struct {
	quantity
	Low  bound `json:"low"`
	High bound `json:"high"`
}

// bound is a quantity with the digits that tell a lower bound from an upper one.
type bound struct {
	SI float64 `json:"si"`
	IP float64 `json:"ip"`
}

func bracketOf(v, low, high quantity) bracketed {
	exact := func(q quantity) bound { return bound{float64(q.SI), float64(q.IP)} }
	return bracketed{v, exact(low), exact(high)}
}

type spotObject struct {
	X quantity `json:"x"`
	Y quantity `json:"y"`
}

func spotOf(p section.Point) spotObject { return spotObject{q(p.X), q(p.Y)} }

type filledObject struct {
	Key   string `json:"key"`
	Value string `json:"value"`
	Why   string `json:"why"`
}

func psiObject(p *house.Psi) *bracketed {
	if p == nil {
		return nil
	}
	b := bracketOf(q(p.Psi), q(p.Low), q(p.High))
	return &b
}

func (a *drawnAnswer) object() any {
	type face struct {
		Name    string     `json:"name"`
		Air     string     `json:"air"`
		Film    quantity   `json:"film"`
		Length  quantity   `json:"length"`
		Heat    quantity   `json:"heat"`
		Coldest quantity   `json:"coldest"`
		At      spotObject `json:"coldest_at"`
		Warmest quantity   `json:"warmest"`
		Factor  number     `json:"temperature_factor"`
	}
	type point struct {
		Name        string     `json:"name"`
		At          spotObject `json:"at"`
		Temperature quantity   `json:"temperature"`
	}
	type flank struct {
		Name     string    `json:"name"`
		U        quantity  `json:"u"`
		Internal *quantity `json:"internal,omitempty"`
		External *quantity `json:"external,omitempty"`
	}
	type coldest struct {
		Face        string     `json:"face"`
		Air         string     `json:"air"`
		Temperature quantity   `json:"temperature"`
		At          spotObject `json:"at"`
		Factor      number     `json:"temperature_factor"`
		Sweats      number     `json:"humidity_sweats"`
		Mould       number     `json:"humidity_mould"`
	}
	d, r := a.drawing, a.result
	l, low, high := r.Coupling()
	internal, external := d.Psi(r)
	out := struct {
		Schema   int                  `json:"schema"`
		Units    map[string][2]string `json:"units"`
		Name     string               `json:"name"`
		Heat     *bracketed           `json:"heat,omitempty"`
		Coupling *bracketed           `json:"coupling,omitempty"`
		U        *quantity            `json:"u,omitempty"`
		Internal *bracketed           `json:"psi_internal,omitempty"`
		External *bracketed           `json:"psi_external,omitempty"`
		Coldest  *coldest             `json:"coldest,omitempty"`
		Faces    []face               `json:"faces"`
		Flanks   []flank              `json:"flanks"`
		Points   []point              `json:"points"`
		Balance  number               `json:"balance"`
		Unknowns int                  `json:"unknowns"`
		Meshes   int                  `json:"meshes"`
		Picture  string               `json:"picture,omitempty"`
		Filled   []filledObject       `json:"filled_in"`
		Warnings []warning            `json:"warnings"`
	}{
		Schema: schemaVersion, Units: sectionUnits(), Name: d.Name,
		Internal: psiObject(internal), External: psiObject(external),
		Faces: []face{}, Flanks: []flank{}, Points: []point{}, Filled: []filledObject{}, Warnings: []warning{},
		Balance: number(r.Balance), Unknowns: r.Unknowns, Meshes: r.Solves, Picture: a.picture,
	}
	if !math.IsInf(r.Heat, 0) {
		heat := bracketOf(heatOf(r.Heat), heatOf(r.Low), heatOf(r.High))
		out.Heat = &heat
	}
	if l != 0 && out.Heat != nil {
		coupling := bracketOf(q(l), q(low), q(high))
		out.Coupling = &coupling
	}
	if u, ok := d.U(r); ok {
		v := q(u)
		out.U = &v
	}
	if f := a.damp; f != nil {
		cold := r.Flows[r.Coldest]
		out.Coldest = &coldest{
			cold.Name, f.air.Name, q(cold.Coldest.Temperature), spotOf(cold.Coldest.At),
			number(cold.Factor), number(f.sweats), number(f.mould),
		}
	}
	for i, f := range r.Flows {
		if drawn := d.Faces[i]; !drawn.Adiabatic {
			out.Faces = append(out.Faces, face{
				f.Name, drawn.Air.Name, q(drawn.Film), q(f.Length), heatOf(f.Heat),
				q(f.Coldest.Temperature), spotOf(f.Coldest.At), q(f.Warmest.Temperature), number(f.Factor),
			})
		}
	}
	for _, f := range d.Flanks {
		o := flank{Name: f.Name, U: q(f.U)}
		if f.Internal > 0 {
			v := q(f.Internal)
			o.Internal = &v
		}
		if f.External > 0 {
			v := q(f.External)
			o.External = &v
		}
		out.Flanks = append(out.Flanks, o)
	}
	for i, p := range d.Points {
		out.Points = append(out.Points, point{p.Name, spotOf(p.At), q(r.Points[i].Temperature)})
	}
	for _, f := range d.Defaults {
		out.Filled = append(out.Filled, filledObject(f))
	}
	for _, m := range r.Remarks {
		out.Warnings = append(out.Warnings, warning{Code: m.Code, Text: m.Text})
	}
	for _, text := range d.Assumed() {
		out.Warnings = append(out.Warnings, warning{Code: "section", Text: text})
	}
	return out
}

func framedObject(h *house.House, answers []*framedAnswer, drawn []*drawnAnswer) any {
	type hand struct {
		methodObject
		Off number `json:"off"`
	}
	type numeric struct {
		methodObject
		Low  bound `json:"r_low"`
		High bound `json:"r_high"`
	}
	type one struct {
		Name     string          `json:"name"`
		Layers   string          `json:"notation"`
		Faces    string          `json:"faces"`
		Methods  map[string]hand `json:"methods"`
		Numeric  *numeric        `json:"numeric,omitempty"`
		Coldest  *quantity       `json:"coldest,omitempty"`
		Factor   number          `json:"temperature_factor,omitempty"`
		Balance  number          `json:"balance"`
		Unknowns int             `json:"unknowns"`
		Picture  string          `json:"picture,omitempty"`
		Warnings []warning       `json:"warnings"`
	}
	out := struct {
		Schema     int                  `json:"schema"`
		Units      map[string][2]string `json:"units"`
		Name       string               `json:"name"`
		Assemblies []one                `json:"assemblies"`
		Sections   []any                `json:"sections"`
	}{schemaVersion, sectionUnits(), h.Name, []one{}, []any{}}
	for _, a := range drawn {
		out.Sections = append(out.Sections, a.object())
	}
	for _, a := range answers {
		o := one{
			Name: a.Assembly.Name, Layers: a.Assembly.Layers.String(), Faces: a.Hand.Setting.Faces.String(),
			Methods: map[string]hand{}, Balance: number(a.balance), Unknowns: a.unknowns, Picture: a.picture, Warnings: []warning{},
		}
		if a.Refused != nil {
			o.Warnings = append(o.Warnings, warning{Code: "not-drawn", Text: drawnMessage(a.Refused)})
		} else {
			for _, m := range a.methods() {
				o.Methods[m.code] = hand{methodOf(m.r), number(m.off)}
			}
			r := bracketOf(q(a.r), q(a.low), q(a.high))
			o.Numeric = &numeric{methodOf(a.r), r.Low, r.High}
			cold := q(a.coldest)
			o.Coldest, o.Factor = &cold, number(a.factor)
		}
		for _, m := range a.said() {
			o.Warnings = append(o.Warnings, warning{Code: m.Code, Text: m.Text})
		}
		out.Assemblies = append(out.Assemblies, o)
	}
	return out
}
