package main

import (
	"slices"
	"strings"

	"github.com/coldseam/coldseam/assembly/house"
	"github.com/coldseam/coldseam/assembly/window"
)

func sheetObject(r *house.Report, s *house.Sheet, file string, isBuiltIn bool) (any, error) {
	type blocks struct {
		Count  int      `json:"count"`
		Length quantity `json:"length"`
		Width  quantity `json:"width"`
		Height quantity `json:"height"`
		From   quantity `json:"from_corner"`
	}
	type piece struct { // bead, sealant and cartridges are those of one
		Glazing   string   `json:"glazing"`
		Count     int      `json:"count"`
		Measured  bool     `json:"measured"`
		Width     quantity `json:"width"`
		Height    quantity `json:"height"`
		Thickness quantity `json:"thickness"`
		Mass      quantity `json:"mass"`
		United    number   `json:"united_inches"`
		Skew      quantity `json:"out_of_square"`
		Clearance quantity `json:"clearance"`
		People    int      `json:"people"`
		Lift      bool     `json:"lift"`
		Blocks    blocks   `json:"setting_blocks"`
		Bead      quantity `json:"bead"`
		Seal      quantity `json:"sealant_length"`
		Cartridge int      `json:"cartridges"`
	}
	type flag struct {
		Clause string `json:"clause"`
		Fact   string `json:"fact"`
		Need   string `json:"need"`
		Met    bool   `json:"met"`
		Basis  string `json:"basis"`
	}
	type opening struct {
		Name      string            `json:"name"`
		In        string            `json:"in"`
		Window    string            `json:"window"`
		Glazing   *string           `json:"glazing"` // null: its U is declared or a table's
		Count     int               `json:"count"`
		U         quantity          `json:"u"`
		Draft     quantity          `json:"draft"` // of all of them, an estimate; 0: none or not known
		Upright   *quantity         `json:"u_upright"`
		Shares    map[string]number `json:"shares"`
		Sweats    map[string]number `json:"sweats_from"`
		Steps     []stepObject      `json:"steps"`
		Order     []piece           `json:"order"`
		SiteGiven bool              `json:"site_given"`
		Safety    []flag            `json:"safety_glass"`
		Escape    *[]flag           `json:"escape_failures"` // null: not asked
	}
	flags := func(from []window.Flag) []flag {
		out := []flag{}
		for _, f := range from {
			out = append(out, flag(f))
		}
		return out
	}
	out := struct {
		Schema   int                  `json:"schema"`
		Units    map[string][2]string `json:"units"`
		File     string               `json:"file"`
		Name     string               `json:"name"`
		Indoors  quantity             `json:"indoors"`
		Outdoors quantity             `json:"outdoors"`
		Edition  int                  `json:"edition"`
		Openings []opening            `json:"openings"`
		Warnings []warning            `json:"warnings"`
		Cautions []string             `json:"cautions"`
	}{
		Schema: schemaVersion, Units: unitNames, File: file, Name: r.House.Name, Indoors: q(s.Indoors), Outdoors: q(s.Outdoors), Edition: s.Edition,
		Openings: []opening{}, Warnings: []warning{}, Cautions: slices.Clone(glassCautions),
	}
	if isBuiltIn {
		out.Warnings = append(out.Warnings, warning{"built-in", builtIn, file})
	}
	for i := range s.Fitted {
		f := &s.Fitted[i]
		o := opening{
			Name: f.Name, In: f.Part, Window: f.Window.Name, Count: f.Count, U: q(f.U), Draft: q(f.Draft),
			Sweats: map[string]number{"center": number(f.Sweats.Center), "edge": number(f.Sweats.Edge), "frame": number(f.Sweats.Frame)},
			Steps:  []stepObject{}, Order: []piece{}, SiteGiven: f.Opening.Site != nil, Safety: flags(f.Safety),
		}
		if b := f.Window.Built; b != nil {
			text := b.Window.Glazing.String()
			o.Glazing = &text
			all := float64(f.Whole.Center + f.Whole.Edge + f.Whole.Frame)
			o.Shares = map[string]number{"glass": number(float64(f.Whole.Center) / all), "edge": number(float64(f.Whole.Edge) / all), "frame": number(float64(f.Whole.Frame) / all)}
		}
		if f.Upright > 0 {
			v := q(f.Upright)
			o.Upright = &v
		}
		steps, err := sheetSteps(s, f)
		if err != nil {
			return nil, err
		}
		o.Steps = append(o.Steps, stepsOf(steps)...)
		for _, p := range f.Pieces {
			o.Order = append(o.Order, piece{
				p.Glazing.String(), f.Count * p.Lights, p.Measured, q(p.Width), q(p.Height), q(p.Thickness), q(p.Mass), number(p.UnitedInches),
				q(p.Skew), q(p.Clearance), p.People, p.Lift,
				blocks{p.Blocks.Count, q(p.Blocks.Length), q(p.Blocks.Width), q(p.Blocks.Height), q(p.Blocks.From)},
				q(p.Bead), q(p.Seal), p.Cartridges,
			})
		}
		if f.Opening.Escape != nil {
			e := flags(f.Escape)
			o.Escape = &e
		}
		out.Openings = append(out.Openings, o)
	}
	for _, m := range r.Remarks {
		if strings.HasPrefix(m.About, "window ") {
			out.Warnings = append(out.Warnings, warning{m.Code, m.Text, m.About})
		}
	}
	return out, nil
}
