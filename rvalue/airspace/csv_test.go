package airspace

import (
	"testing"

	"github.com/coldseam/coldseam/rvalue"
	"github.com/coldseam/coldseam/testdata"
)

// readCSV reads a file of testdata, each row of which must have its mark.
func readCSV(t *testing.T, name string) []testdata.Row {
	t.Helper()
	return testdata.Read(t, name, "mark")
}

func num(t *testing.T, s string) float64 {
	t.Helper()
	return testdata.Number(t, s)
}

// planeRow is a row of the plane-air-space table, in SI but for the printed
// resistances.
type planeRow struct {
	position position
	space    Space // emittances not set
	mean     rvalue.Temperature
	dT       rvalue.TemperatureDifference
	printed  [5]float64 // h·ft²·°F/Btu, at planeE
	fit      bool       // the curves were fitted to it
}

// position is one of the five of the table.
type position struct {
	tilt float64
	flow string
}

var (
	positions = []position{{0, "up"}, {45, "up"}, {90, "horizontal"}, {45, "down"}, {0, "down"}}
	planeE    = [5]float64{0.03, 0.05, 0.2, 0.5, 0.82}
)

// planeTable reads the table and checks that it is whole: 700 cells.
func planeTable(t *testing.T) (rows []planeRow) {
	t.Helper()
	for _, r := range readCSV(t, "airspace_plane.csv") {
		p := planeRow{
			position: position{r.Number(t, "tilt"), r["flow"]},
			mean:     rvalue.FromFahrenheit(r.Number(t, "mean")),
			dT:       rvalue.TemperatureDifference(r.Number(t, "difference")) * rvalue.FahrenheitDegree,
			fit:      r["use"] == "fit",
		}
		p.space = Space{Thickness: rvalue.Length(r.Number(t, "thickness")) * rvalue.Inch, Tilt: p.position.tilt, Up: p.position.flow == "up"}
		for i, col := range [5]string{"E0.03", "E0.05", "E0.2", "E0.5", "E0.82"} {
			p.printed[i] = r.Number(t, col)
		}
		rows = append(rows, p)
	}
	if len(rows) != 140 {
		t.Fatalf("%d rows, want 140", len(rows))
	}
	return rows
}

// withE returns the space with faces of effective emittance e.
func (s Space) withE(e float64) Space {
	s.E1, s.E2 = 1, e
	return s
}
