package surface

import (
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
