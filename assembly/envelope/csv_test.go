package envelope_test

import (
	"math"
	"testing"

	"github.com/coldseam/coldseam/testdata"
)

// readCSV reads a file of testdata, each row of which must have its mark.
func readCSV(t *testing.T, name string) []testdata.Row {
	t.Helper()
	return testdata.Read(t, name, "mark")
}

// num reads a cell; an empty one is 0.
func num(t *testing.T, s string) float64 {
	t.Helper()
	if s == "" {
		return 0
	}
	return testdata.Number(t, s)
}

// rounding is what a few conversions and sums may do to a value near 1.
const rounding = 1e-12

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s = %.6g, want %.6g ± %.2g", what, got, want, tolerance)
	}
}

// must returns v, or ends the test.
func must[T any](v T, err error) func(t *testing.T) T {
	return func(t *testing.T) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}
