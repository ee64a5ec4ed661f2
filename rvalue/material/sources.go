package material

import (
	"bytes"
	_ "embed"
	"encoding/csv"
	"sync"
)

//go:embed sources.csv
var sourcesCSV []byte

var citations = sync.OnceValue(func() map[string]string {
	r := csv.NewReader(bytes.NewReader(sourcesCSV))
	r.Comment, r.FieldsPerRecord = '#', 3
	rows, err := r.ReadAll()
	if err != nil {
		panic("material: the embedded sources: " + err.Error()) // the tests decode them
	}
	m := make(map[string]string, len(rows))
	for _, row := range rows[1:] {
		m[row[0]] = row[1] + " (" + row[2] + ")"
	}
	return m
})

// Citation returns the source that a key of Material.Source or Batt.Source stands
// for, and in brackets how it was read.
func Citation(key string) (string, bool) {
	s, ok := citations()[key]
	return s, ok
}
