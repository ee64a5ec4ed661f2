package main

func (s *glassAnswer) object(text string) any {
	type gap struct {
		Between [2]int   `json:"between_panes"`
		Width   quantity `json:"width"`
		U       quantity `json:"u_center"`
	}
	type solar struct {
		Low    number `json:"low"`
		High   number `json:"high"`
		Source string `json:"source"`
	}
	faces := s.inside
	out := struct {
		Schema    int                  `json:"schema"`
		Units     map[string][2]string `json:"units"`
		Glazing   string               `json:"glazing"`
		Canonical string               `json:"read_as"`
		U         quantity             `json:"u"`
		Shares    map[string]number    `json:"shares"`
		Upright   *quantity            `json:"u_upright"`
		Center    quantity             `json:"u_center"`
		Declared  quantity             `json:"u_center_en673"`
		ISO       quantity             `json:"u_iso10077"`
		Inside    map[string]quantity  `json:"inside"`
		Faces     []quantity           `json:"faces"` // of each pane, indoors first
		Steps     []stepObject         `json:"steps"`
		Best      []gap                `json:"best_gaps"`
		Failed    *quantity            `json:"u_seal_failed"`
		Corroded  *quantity            `json:"u_coatings_lost"`
		Solar     *solar               `json:"solar"`
		Warnings  []warning            `json:"warnings"`
		Cautions  []string             `json:"cautions"`
	}{
		Schema: schemaVersion, Units: unitNames, Glazing: text, Canonical: s.window.Glazing.String(),
		U: q(s.whole.U), Center: q(s.solved.U), Declared: q(s.declared.U), ISO: q(s.iso.U),
		Inside: map[string]quantity{"center": q(faces.Center), "edge": q(faces.Edge), "frame": q(faces.Frame)},
		Steps:  []stepObject{}, Best: []gap{}, Warnings: append([]warning{}, s.remarks...), Cautions: glassCautions,
	}
	all := float64(s.whole.Center + s.whole.Edge + s.whole.Frame)
	out.Shares = map[string]number{"glass": number(float64(s.whole.Center) / all), "edge": number(float64(s.whole.Edge) / all), "frame": number(float64(s.whole.Frame) / all)}
	for i := range 2 * s.solved.Panes {
		out.Faces = append(out.Faces, q(s.solved.Faces[i]))
	}
	if s.upright > 0 {
		v := q(s.upright)
		out.Upright = &v
	}
	out.Steps = append(out.Steps, stepsOf(s.steps)...)
	for _, b := range s.best {
		out.Best = append(out.Best, gap{[2]int{b.gap + 1, b.gap + 2}, q(b.width), q(b.u)})
	}
	if s.failed != nil {
		v := q(*s.failed)
		out.Failed = &v
	}
	if s.corroded != nil {
		v := q(*s.corroded)
		out.Corroded = &v
	}
	if s.solar != nil {
		out.Solar = &solar{number(s.solar.Low), number(s.solar.High), s.solar.Source}
	}
	return out
}

// stepObject is a step to better glass in JSON.
type stepObject struct {
	Name   string   `json:"name"`
	From   int      `json:"from"` // index of the step it builds on, −1 for the first
	What   string   `json:"what"`
	Glass  string   `json:"glazing"`
	U      quantity `json:"u"`
	Gain   quantity `json:"gain"`
	Saved  number   `json:"saved"`
	Sweats number   `json:"sweats_from"`
	Where  string   `json:"sweats_at"`
}

func stepsOf(steps []glassStep) []stepObject {
	var out []stepObject
	for _, st := range steps {
		out = append(out, stepObject{st.Name, st.From, st.What, st.Window.Glazing.String(), q(st.Whole.U), q(st.Gain), number(st.Saved), number(st.sweats), st.where})
	}
	return out
}
