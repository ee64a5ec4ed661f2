package section_test

import (
	"math"
	"testing"

	"github.com/coldseam/coldseam/assembly/section"
	"github.com/coldseam/coldseam/rvalue"
	"github.com/coldseam/coldseam/testdata"
)

// solve solves a section with points at which a table gives temperatures.
func solve(t *testing.T, s section.Section, o section.Options) *section.Result {
	t.Helper()
	r, err := s.Solve(o)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// rowsOf returns the rows of a case of ISO 10211.
func rowsOf(t *testing.T, name string) (rows []testdata.Row) {
	t.Helper()
	for _, row := range testdata.Read(t, "section_iso10211.csv", "case", "quantity", "x", "y", "z", "printed", "unit", "tolerance", "mark") {
		if row["case"] == name {
			rows = append(rows, row)
		}
	}
	return rows
}

// ours computes what the rows of a case ask for.
func ours(t *testing.T, name string, rows []testdata.Row) []float64 {
	t.Helper()
	switch name {
	case "1":
		return oursPlane(t, column(), rows)
	case "2":
		return oursPlane(t, roofEdge(), rows)
	case "3":
		return oursSolid(t, balcony(), rows)
	}
	return oursSolid(t, ironBar(), rows)
}

func oursPlane(t *testing.T, s section.Section, rows []testdata.Row) (out []float64) {
	t.Helper()
	var o section.Options
	for _, row := range rows {
		if row["quantity"] == "temperature" {
			o.Points = append(o.Points, at(row.Number(t, "x"), row.Number(t, "y")))
		}
	}
	r := solve(t, s, o)
	n := 0
	for _, row := range rows {
		if row["quantity"] == "temperature" {
			out = append(out, r.Points[n].Temperature.Celsius())
			n++
		} else {
			out = append(out, r.Heat)
		}
	}
	return out
}

// TestColumnSeries checks case 1 against its series, to 0.005 K at every point of
// the standard's grid: T = Σ over odd n of 80/(nπ) sin(nπx) sinh(nπy)/sinh(nπ).
func TestColumnSeries(t *testing.T) {
	var o section.Options
	for i := 1; i <= 4; i++ {
		for j := 1; j <= 7; j++ {
			o.Points = append(o.Points, at(float64(i)/8, float64(j)/8))
		}
	}
	r := solve(t, column(), o)
	for _, p := range r.Points {
		x, y := float64(p.At.X), float64(p.At.Y)
		want := 0.0
		for n := 1.0; n < 400; n += 2 {
			// sinh(nπy)/sinh(nπ) without overflow
			w := n * math.Pi
			want += 80 / w * math.Sin(w*x) * math.Exp(w*(y-1)) * -math.Expm1(-2*w*y) / -math.Expm1(-2*w)
		}
		if got := p.Temperature.Celsius(); math.Abs(got-want) > 0.005 {
			t.Errorf("at %v: %.5f °C, series %.5f °C", p.At, got, want)
		}
	}
}

// TestIndependent compares with cases solved by a general finite-element language.
func TestIndependent(t *testing.T) {
	cases := map[string]section.Section{"i": stud(), "ii": studWithBoard(), "iv": block(), "v": slabEdge()}
	points := map[string][]section.Point{}
	rows := testdata.Read(t, "section_ours.csv", "case", "quantity", "x", "y", "value", "tolerance", "mark")
	for _, row := range rows {
		if row["quantity"] == "temperature" {
			points[row["case"]] = append(points[row["case"]], at(row.Number(t, "x"), row.Number(t, "y")))
		}
	}
	for name, s := range cases {
		r := solve(t, s, section.Options{Points: points[name]})
		if r.High-r.Low > 2e-4*r.Heat || r.Balance > 1e-9 || r.Remarks != nil {
			t.Errorf("case %s: %.6f to %.6f W/m, balance %.2g, remarks %v", name, r.Low, r.High, r.Balance, r.Remarks)
		}
		width := s.Boundaries[0].To.X
		// The whole joint of case (v) is twice the half model.
		wall := section.Flank{U: 0.31736936 * rvalue.USI, Length: 1 * rvalue.Metre}
		outer := section.Flank{U: wall.U, Length: 1.1 * rvalue.Metre}
		n := 0
		for _, row := range rows {
			if row["case"] != name {
				continue
			}
			var got float64
			coldest := r.Flows[r.Coldest]
			switch row["quantity"] {
			case "flow":
				got = r.Heat
			case "U":
				got = r.U(width).SI()
			case "R":
				got = r.R(width).SI()
			case "coldest":
				got = coldest.Coldest.Temperature.Celsius()
			case "factor":
				got = coldest.Factor
			case "psi internal":
				got = 2 * r.Psi(wall).SI()
			case "psi external":
				got = 2 * r.Psi(outer).SI()
			case "temperature":
				got = r.Points[n].Temperature.Celsius()
				n++
			default:
				t.Fatalf("unknown quantity %q", row["quantity"])
			}
			if math.Abs(got-row.Number(t, "value")) > row.Number(t, "tolerance") {
				t.Errorf("case %s, %s (%s, %s): %.6f, want %s", name, row["quantity"], row["x"], row["y"], got, row["value"])
			}
		}
	}
}

// TestBracket checks that the bounds hold the converged flows of the same source,
// whose own bounds are given with them, at every tolerance.
func TestBracket(t *testing.T) {
	for _, tt := range []struct {
		name      string
		s         section.Section
		low, high float64 // W/m
	}{
		{"case 2 of ISO 10211", roofEdge(), 9.491443, 9.491452},
		{"(i)", stud(), 4.6303754 - 4e-8, 4.6303754 + 4e-8},
		{"(ii)", studWithBoard(), 3.0357030 - 2e-8, 3.0357030 + 2e-8},
		{"(iv)", block(), 17.475706 - 1.7e-6, 17.475706 + 1.7e-6},
		{"(v)", slabEdge(), 31.56958 - 8e-6, 31.56958 + 8e-6},
	} {
		for _, tolerance := range []float64{1e-1, 1e-2, 1e-3, 1e-4, 1e-5} {
			r := solve(t, tt.s, section.Options{Tolerance: tolerance})
			if r.Low > tt.high || r.High < tt.low || r.Low > r.High || (r.High-r.Low)/2 > tolerance*r.Heat {
				t.Errorf("%s to %g: %.8f to %.8f W/m, it is %.8f to %.8f", tt.name, tolerance, r.Low, r.High, tt.low, tt.high)
			}
		}
	}
}
