package material

import (
	"bytes"
	_ "embed"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"

	"github.com/coldseam/coldseam/rvalue"
)

// catalogueCSV is the table: conductivity in W/(m·K), pieces as "mm:m²·K/W"
// with - for a layer of unstated thickness, density in kg/m³, permeance in
// ng/(Pa·s·m²).
//
//go:embed catalogue.csv
var catalogueCSV []byte

// The columns of the table.
const (
	colName = iota
	colAliases
	colClass
	colDensity
	colK
	colSizes
	colScalable
	colSpread
	colMu
	colPermeance
	colCold
	colSource
	colNote
	colCaution
	columns
)

// header is the table's first line.
const header = "name,aliases,class,density,k,sizes,scalable,spread,mu,permeance,cold,source,note,caution"

// decode reads a table of materials; lines that start with # are remarks.
func decode(table []byte) ([]*Material, error) {
	r := csv.NewReader(bytes.NewReader(table))
	r.Comment, r.FieldsPerRecord = '#', columns
	rows, err := r.ReadAll()
	if err != nil {
		return nil, err
	}
	if len(rows) == 0 || strings.Join(rows[0], ",") != header {
		return nil, fmt.Errorf("material: the first line must be %q", header)
	}
	list := make([]*Material, 0, len(rows)-1)
	for _, row := range rows[1:] {
		m, err := decodeRow(row)
		if err == nil {
			err = m.check()
		}
		if err != nil {
			return nil, fmt.Errorf("material: row %q: %w", row[colName], err)
		}
		list = append(list, m)
	}
	return list, nil
}

func decodeRow(row []string) (*Material, error) {
	d := fields{row: row}
	class, ok := classNamed(row[colClass])
	if !ok {
		return nil, fmt.Errorf("unknown class %q", row[colClass])
	}
	cold, ok := coldNames[row[colCold]]
	if !ok {
		return nil, fmt.Errorf("unknown law of cold %q", row[colCold])
	}
	lo, hi, isRange := strings.Cut(row[colDensity], "-")
	if !isRange {
		hi = lo
	}
	m := &Material{
		Name: row[colName], Aliases: list(row[colAliases]), Class: class,
		Density:      [2]rvalue.Density{rvalue.Density(d.number(lo)) * rvalue.KilogramPerMetre3, rvalue.Density(d.number(hi)) * rvalue.KilogramPerMetre3},
		Conductivity: rvalue.Conductivity(d.number(row[colK])) * rvalue.WattPerMetreKelvin,
		Scalable:     row[colScalable] == "yes",
		Spread:       d.number(row[colSpread]),
		Mu:           d.number(row[colMu]),
		Permeance:    rvalue.Permeance(d.number(row[colPermeance])) * rvalue.NanogramPerPascalSecondMetre2,
		Cold:         cold, Source: row[colSource], Note: row[colNote], Caution: row[colCaution],
	}
	for _, piece := range list(row[colSizes]) {
		mm, rsi, ok := strings.Cut(piece, ":")
		if !ok {
			return nil, fmt.Errorf("%q is no piece, write it as 12.7:0.12", piece)
		}
		if mm == "-" {
			mm = ""
		}
		m.Sizes = append(m.Sizes, size(d.number(mm), d.number(rsi)))
	}
	return m, d.err
}

// fields reads the numbers of a row and keeps the first error.
type fields struct {
	row []string
	err error
}

// number reads a plain number, 0 if there is none.
func (d *fields) number(s string) float64 {
	if s == "" {
		return 0
	}
	v, err := strconv.ParseFloat(s, 64)
	if err != nil && d.err == nil {
		d.err = err
	}
	return v
}

// list parts what stands in one field with semicolons.
func list(s string) []string {
	if s == "" {
		return nil
	}
	parts := strings.Split(s, ";")
	for i := range parts {
		parts[i] = strings.TrimSpace(parts[i])
	}
	return parts
}

// size builds a piece from the units of the table.
func size(mm, rsi float64) Size {
	return Size{Thickness: rvalue.Length(mm) * rvalue.Millimetre, R: rvalue.Resistance(rsi) * rvalue.RSI}
}
