package house

import (
	"slices"
	"strings"

	solver "github.com/coldseam/coldseam/assembly/section"
	"github.com/coldseam/coldseam/rvalue"
)

// Junction returns one of our own sections, of package section's catalogue, as a drawing:
// its flanks by internal dimensions, and in its notes what it shows and rests on. It is
// nil if none has that name; case and blanks do not matter.
func Junction(name string) *Drawing {
	detail, ok := solver.FindDetail(name)
	if !ok {
		return nil
	}
	d := &Drawing{
		Name: detail.Name, Notes: detail.About + ": " + strings.Join(detail.Assumed, "; "),
		Section: detail.Section, sound: true, usual: detail.Usual, studs: detail.Studs,
	}
	for _, f := range detail.Flanks {
		d.Flanks = append(d.Flanks, &Flank{Name: "plain part", U: f.U, Internal: f.Length})
	}
	for _, b := range detail.Section.Boundaries {
		face := &Face{Name: b.Name, Film: b.Film, From: b.From, To: b.To, Adiabatic: b.Adiabatic}
		d.Faces = append(d.Faces, face)
		if !b.Adiabatic {
			face.Air = d.air(b.Name, b.Air)
		}
	}
	return d
}

// air returns the air of a temperature, under the name of the first face that has it.
func (d *Drawing) air(name string, t rvalue.Temperature) *Air {
	i := slices.IndexFunc(d.Airs, func(a *Air) bool { return a.Temperature == t })
	if i < 0 {
		i = len(d.Airs)
		d.Airs = append(d.Airs, &Air{Name: name, Temperature: t})
	}
	return d.Airs[i]
}

// Junctions returns the names of our own sections.
func Junctions() []string {
	var out []string
	for _, d := range solver.Catalogue() {
		out = append(out, d.Name)
	}
	return out
}

// Assumed returns what a section of our own shows and rests on; nothing of one that a file
// draws.
func (d *Drawing) Assumed() []string {
	if len(d.usual) == 0 {
		return nil
	}
	return []string{
		d.Notes, strings.Join(d.usual, "; "),
		"the temperatures of the air are assumed: psi and fRsi do not depend on them, humidities do",
	}
}
