package main

import (
	"encoding/json"
	"io"
	"math"
	"strconv"
)

// schemaVersion numbers the shape of all JSON output; it grows when a key
// changes its meaning or goes.
const schemaVersion = 1

// quantity is a physical quantity in both unit systems.
type quantity struct {
	SI number `json:"si"`
	IP number `json:"ip"`
}

// unitNames tells the units of the quantities, by what they are.
var unitNames = map[string][2]string{ // si, ip
	"r": {"m²·K/W", "h·ft²·°F/Btu"}, "u": {"W/(m²·K)", "Btu/(h·ft²·°F)"}, "ua": {"W/K", "Btu/(h·°F)"}, "conductivity": {"W/(m·K)", "Btu·in/(h·ft²·°F)"},
	"length": {"m", "ft"}, "area": {"m²", "ft²"}, "temperature": {"°C", "°F"}, "temperature difference": {"K", "°F"},
	"energy": {"kWh", "million Btu"}, "power": {"W", "Btu/h"}, "mass": {"kg", "lb"}, "degree days": {"K·d", "°F·d"},
}

// q returns the JSON form of a quantity.
func q[T interface {
	SI() float64
	IP() float64
}](v T) quantity {
	return quantity{number(v.SI()), number(v.IP())}
}

// number prints with six significant digits, more than any figure here has,
// and as null where there is none.
type number float64

func (n number) MarshalJSON() ([]byte, error) {
	v := float64(n)
	if math.Abs(v) < 1e-9 { // rounding about 0 °C
		v = 0
	}
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return []byte("null"), nil
	}
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 6, 64), 64)
	if err != nil {
		return nil, err
	}
	return json.Marshal(rounded)
}

// warning is a remark in JSON.
type warning struct {
	Code  string `json:"code"`
	Text  string `json:"text"`
	Place string `json:"place,omitempty"`
}

func writeJSON(w io.Writer, v any) error {
	e := json.NewEncoder(w)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	return e.Encode(v)
}
