package material_test

import (
	"testing"

	"github.com/coldseam/coldseam/testdata"
)

// table reads a file of testdata.
func table(t *testing.T, name string) []testdata.Row {
	t.Helper()
	return testdata.Read(t, name)
}

// num reads a number of a row of testdata.
func num(t *testing.T, s string) float64 {
	t.Helper()
	return testdata.Number(t, s)
}
