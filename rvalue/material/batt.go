package material

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/coldseam/coldseam/rvalue"
)

// Batt is a fibrous batt sold by its label: Label is what it resists at its
// Thickness and a mean of 75 °F, without facing or air space (16 CFR 460.5).
type Batt struct {
	Fibre     string // fiberglass, mineral wool or cotton
	Label     rvalue.Resistance
	Thickness rvalue.Length
	Source    string // a key for Citation
}

// The fibres that batts are made of.
const (
	glassFibre  = "fiberglass"
	mineralWool = "mineral wool"
	cotton      = "cotton"
)

// battOf says which batts a material of the catalogue comes as.
var battOf = map[string]string{
	"fiberglass": glassFibre, "light fiberglass batt": glassFibre, "medium fiberglass batt": glassFibre, "high-density fiberglass batt": glassFibre,
	"mineral wool": mineralWool, "dense mineral wool batt": mineralWool,
	"cotton": cotton,
}

// batts are labels in h·ft²·°F/Btu with their thickness in inches; of one label
// the standard thickness stands before the high-density one. LAB rows agree on
// three labels or copies of labels (R-22 on two). MEM rows are from memory, CP rows are labels that
// the trade sells for the cavities of 2x4 and 2x6, without a source.
var batts = []struct {
	fibre         string
	label, inches float64
	source        string
}{
	{glassFibre, 8, 2.5, "LAB"},
	{glassFibre, 11, 3.5, "LAB"},
	{glassFibre, 12, 3.5, "CP"},
	{glassFibre, 13, 3.5, "LAB"},
	{glassFibre, 14, 3.5, "CP"},
	{glassFibre, 15, 3.5, "LAB"},
	{glassFibre, 19, 6.25, "LAB"},
	{glassFibre, 20, 5.5, "CP"},
	{glassFibre, 21, 5.5, "LAB"},
	{glassFibre, 22, 6.5, "LAB"},
	{glassFibre, 22, 5.5, "CP"},
	{glassFibre, 23, 5.5, "CP"},
	{glassFibre, 24, 5.5, "CP"},
	{glassFibre, 25, 8, "IHB"},
	{glassFibre, 26, 9, "LAB"},
	{glassFibre, 30, 10, "LAB"},
	{glassFibre, 30, 8.25, "LAB"},
	{glassFibre, 38, 12, "LAB"},
	{glassFibre, 38, 10, "LAB"},
	{glassFibre, 49, 14, "MEM"},
	{mineralWool, 13, 3.5, "CP"},
	{mineralWool, 14, 3.5, "CP"},
	{mineralWool, 15, 3.5, "MEM"},
	{mineralWool, 22, 5.5, "CP"},
	{mineralWool, 23, 5.5, "MEM"},
	{mineralWool, 24, 5.5, "CP"},
	{mineralWool, 30, 7.25, "MEM"},
	{cotton, 13, 3.5, "MEM"},
	{cotton, 19, 5.5, "MEM"},
}

// sameLabel is how far a label may be off and still be that one: half of the
// 4 % that the nearest labels differ by would be 2 %; 1.5 % covers
// the two decimals of a metric label, RSI 2.3 for R-13.
const sameLabel = 0.015

// FindBatt returns the batts of a material that carry a label, the standard, thickest
// one first: are sold in a high-density thickness too. A label is
// met within 1.5 %, so that a metric one finds its twin. The error says that the
// material is unknown (*UnknownError), comes as no batt, or which labels it has.
func FindBatt(name string, label rvalue.Resistance) ([]Batt, error) {
	m, err := Find(name)
	if err != nil {
		return nil, err
	}
	fibre, ok := battOf[m.Name]
	if !ok {
		return nil, fmt.Errorf("material: %s is not sold as batts by a label; fiberglass, mineral wool and cotton are", m.Name)
	}
	var found []Batt
	for _, b := range batts {
		if b.fibre != fibre {
			continue
		}
		r := rvalue.Resistance(b.label) * rvalue.RIP
		if math.Abs(float64(label-r)) <= sameLabel*float64(r) {
			found = append(found, Batt{fibre, r, rvalue.Length(b.inches) * rvalue.Inch, b.source})
		}
	}
	if len(found) == 0 {
		return nil, fmt.Errorf("material: no %s batt is labelled R-%.3g; known are %s", fibre, label.IP(), strings.Join(labels(fibre), ", "))
	}
	slices.SortStableFunc(found, func(a, b Batt) int { return cmp.Compare(b.Thickness, a.Thickness) })
	return found, nil
}

// labels lists the labels of a fibre's batts for an error.
func labels(fibre string) []string {
	var out []string
	for _, b := range batts {
		if s := fmt.Sprintf("R-%g", b.label); b.fibre == fibre && !slices.Contains(out, s) {
			out = append(out, s)
		}
	}
	return out
}
