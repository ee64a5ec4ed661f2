// Package testdata reads the tables of published values beside it. Only tests import it.
package testdata

import (
	"embed"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strconv"
	"testing"
)

//go:embed *.csv
var files embed.FS

// place is the key of a row's own file and line. No column has an empty name.
const place = ""

// Row is a line of a table: its cells by the names in the header.
type Row map[string]string

// Read returns the rows of the CSV file of that name, lines that begin with # left
// out. It ends the test when the table is empty, lacks one of the columns asked for,
// or has a column "mark" that a row leaves empty.
func Read(t testing.TB, name string, columns ...string) []Row {
	t.Helper()
	f, err := files.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := parse(f, name, columns)
	if err != nil {
		t.Fatal(err)
	}
	return rows
}

// parse reads a table; name is that of its file, for the errors.
func parse(f io.Reader, name string, columns []string) (rows []Row, err error) {
	r := csv.NewReader(f)
	r.Comment = '#'
	header, err := r.Read()
	if err != nil {
		return nil, fmt.Errorf("%s: header: %w", name, err)
	}
	known := map[string]bool{}
	for _, column := range header {
		if column == place || known[column] {
			return nil, fmt.Errorf("%s: column %q has no name or one used twice", name, column)
		}
		known[column] = true
	}
	for _, column := range columns {
		if !known[column] {
			return nil, fmt.Errorf("%s: no column %q", name, column)
		}
	}
	for {
		cells, err := r.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, fmt.Errorf("%s: %w", name, err) // names the line
		}
		line, _ := r.FieldPos(0)
		row := Row{place: fmt.Sprintf("%s:%d", name, line)}
		for i, column := range header {
			row[column] = cells[i]
		}
		if known["mark"] && row["mark"] == "" {
			return nil, fmt.Errorf("%s: row without a mark: %v", row[place], cells)
		}
		rows = append(rows, row)
	}
	if len(rows) == 0 {
		return nil, fmt.Errorf("%s: no rows", name)
	}
	return rows, nil
}

// Number reads the cell of a column that must hold a number. When it does not, or
// there is no such column, the test ends with the row's file and line.
func (r Row) Number(t testing.TB, column string) float64 {
	t.Helper()
	cell, ok := r[column]
	if !ok {
		t.Fatalf("%s: no column %q", r[place], column)
	}
	v, err := strconv.ParseFloat(cell, 64)
	if err != nil {
		t.Fatalf("%s: column %q: %v", r[place], column, err)
	}
	return v
}

// Number reads a number that stands alone, such as a part of a cell.
func Number(t testing.TB, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}
