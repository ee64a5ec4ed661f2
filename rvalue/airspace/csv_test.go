package airspace

import (
	"encoding/csv"
	"os"
	"strconv"
	"testing"

	"github.com/coldseam/coldseam/rvalue"
)

// readCSV reads a file of testdata into one map a row, keyed by column name. It
// refuses an empty table and a row without its mark.
func readCSV(t *testing.T, name string) (rows []map[string]string) {
	t.Helper()
	f, err := os.Open("../../testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	lines, err := r.ReadAll()
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	for _, line := range lines[1:] {
		row := map[string]string{}
		for i, key := range lines[0] {
			row[key] = line[i]
		}
		if row["mark"] == "" {
			t.Fatalf("%s: row without a mark: %v", name, line)
		}
		rows = append(rows, row)
	}
	if len(rows) == 0 {
		t.Fatalf("%s: no rows", name)
	}
	return rows
}

func num(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
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
			position: position{num(t, r["tilt"]), r["flow"]},
			mean:     rvalue.FromFahrenheit(num(t, r["mean"])),
			dT:       rvalue.TemperatureDifference(num(t, r["difference"])) * rvalue.FahrenheitDegree,
			fit:      r["use"] == "fit",
		}
		p.space = Space{Thickness: rvalue.Length(num(t, r["thickness"])) * rvalue.Inch, Tilt: p.position.tilt, Up: p.position.flow == "up"}
		for i, col := range [5]string{"E0.03", "E0.05", "E0.2", "E0.5", "E0.82"} {
			p.printed[i] = num(t, r[col])
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
