package assembly_test

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"github.com/coldseam/coldseam/assembly"
	"github.com/coldseam/coldseam/rvalue"
)

// units of the printed numbers, in SI.
var units = map[string]float64{
	"1": 1, "%": 0.01, "°C": 1, "m": 1, "W": 1, "K/W": 1,
	"m²·K/W": float64(rvalue.RSI), "W/(m²·K)": float64(rvalue.USI),
	"h·ft²·°F/Btu": float64(rvalue.RIP), "Btu/(h·ft²·°F)": float64(rvalue.UIP),
}

// evaluate computes a published value in the unit that its row names.
func evaluate(v value) (float64, error) {
	unit, ok := units[v.unit]
	if !ok {
		return 0, fmt.Errorf("unknown unit %q", v.unit)
	}
	if v.how == "layers" {
		a, scale, err := parseLayers(v.given)
		if err != nil {
			return 0, err
		}
		if err := a.Check(); err != nil {
			return 0, err
		}
		got, err := layersQuantity(a, scale, v.quantity)
		return got / unit, err
	}
	f, ok := evaluators[v.how]
	if !ok {
		return 0, fmt.Errorf("nothing computes %q", v.how)
	}
	in, err := parsePairs(v.given)
	if err != nil {
		return 0, err
	}
	results, err := f(in)
	if err != nil {
		return 0, err
	}
	got, ok := results[v.quantity]
	if !ok {
		return 0, fmt.Errorf("%q gives no such quantity", v.how)
	}
	return got / unit, nil
}

// number computes a sum of products and quotients, as books write them:
// "2*0.032*0.70", "0.04+0.38", "3*25/395".
func number(s string) (float64, error) {
	sum := 0.0
	for term := range strings.SplitSeq(strings.ReplaceAll(s, " ", ""), "+") {
		product := 1.0
		for i, factor := range strings.Split(term, "*") {
			for j, part := range strings.Split(factor, "/") {
				x, err := strconv.ParseFloat(part, 64)
				if err != nil {
					return 0, fmt.Errorf("%q in %q is no number", part, s)
				}
				switch {
				case i == 0 && j == 0:
					product = x
				case j == 0:
					product *= x
				default:
					product /= x
				}
			}
		}
		sum += product
	}
	return sum, nil
}

// parseLayers reads "RSI 0.12; 0.75: 2.30 | rest: 0.77; 0.03": a unit, then
// layers from indoors to outdoors, the shares of a layer with their fractions.
func parseLayers(s string) (a assembly.Assembly, scale rvalue.Resistance, err error) {
	unit, rest, _ := strings.Cut(s, " ")
	switch unit {
	case "RSI":
		scale = rvalue.RSI
	case "R":
		scale = rvalue.RIP
	default:
		return a, 0, fmt.Errorf("layers in %q, want RSI or R", unit)
	}
	for text := range strings.SplitSeq(rest, ";") {
		layer := assembly.Layer{Name: strings.TrimSpace(text)}
		left := 1.0
		for share := range strings.SplitSeq(text, "|") {
			fraction, r, ok := strings.Cut(share, ":")
			f := left
			switch {
			case !ok:
				r = fraction
			case strings.TrimSpace(fraction) != "rest":
				if f, err = number(fraction); err != nil {
					return a, 0, err
				}
			}
			x, err := number(r)
			if err != nil {
				return a, 0, err
			}
			left -= f
			layer.Shares = append(layer.Shares, assembly.Share{Fraction: f, R: rvalue.Resistance(x) * scale})
		}
		a.Layers = append(a.Layers, layer)
	}
	return a, scale, nil
}

// layersQuantity computes a quantity of an assembly in SI.
func layersQuantity(a assembly.Assembly, scale rvalue.Resistance, quantity string) (float64, error) {
	var i, j int
	var x, y float64
	scan := func(format string, args ...any) bool {
		n, err := fmt.Sscanf(quantity, format, args...)
		return err == nil && n == len(args)
	}
	parallel, planes := float64(a.ParallelPath()), float64(a.IsothermalPlanes())
	switch {
	case quantity == "error combined":
		return a.Combined().Error, nil
	case quantity == "R averaged wrongly":
		for _, s := range a.Layers[0].Shares {
			x += s.Fraction * float64(s.R)
		}
		return x, nil
	case scan("fraction %d.%d", &i, &j):
		return a.Layers[i-1].Shares[j-1].Fraction, nil
	case scan("T %d from %f to %f", &i, &x, &y):
		// The plane behind layer i, by the resistances on either side of it.
		return x - (x-y)*between(a, 1, i)/between(a, 1, len(a.Layers)), nil
	case scan("heat %f %f", &x, &y):
		return x * y / parallel, nil
	case scan("isothermal over %f", &x):
		return planes / x, nil
	case scan("loss from %f", &x):
		return 1 - parallel/(x*float64(scale)), nil
	case scan("bracketed %f", &x):
		if planes <= x && x <= parallel {
			return 1, nil
		}
		return 0, nil
	case scan("R weighted at %f", &x):
		r, err := assembly.SteelWeighted(a, rvalue.Length(x), strings.HasSuffix(quantity, " sheathed"))
		return float64(r), err
	}
	symbol, of, _ := strings.Cut(quantity, " ")
	r, err := resistanceOf(a, of)
	switch {
	case err != nil:
		return 0, err
	case symbol == "R":
		return r, nil
	case symbol == "U":
		return 1 / r, nil
	}
	return 0, fmt.Errorf("nothing computes %q of layers", quantity)
}

// resistanceOf returns the resistance of the whole by a method, or of a part.
// Layers, shares and paths are counted from 1.
func resistanceOf(a assembly.Assembly, of string) (float64, error) {
	switch of {
	case "parallel":
		return float64(a.ParallelPath()), nil
	case "isothermal":
		return float64(a.IsothermalPlanes()), nil
	case "combined":
		return float64(a.Combined().R), nil
	}
	var i, j int
	if n, _ := fmt.Sscanf(of, "path %d", &i); n == 1 {
		return float64(a.Paths()[i-1].R), nil
	}
	if n, _ := fmt.Sscanf(of, "layer %d", &i); n == 1 {
		return float64(a.Layers[i-1].Mixed()), nil
	}
	if n, _ := fmt.Sscanf(of, "share %d.%d", &i, &j); n == 2 {
		return float64(a.Layers[i-1].Shares[j-1].R), nil
	}
	if n, _ := fmt.Sscanf(of, "%d-%d", &i, &j); n == 2 {
		return between(a, i, j), nil
	}
	return 0, fmt.Errorf("no resistance of %q", of)
}

// between sums the mixed resistances of layers from to to, counted from 1.
func between(a assembly.Assembly, from, to int) float64 {
	return float64(assembly.Assembly{Layers: a.Layers[from-1 : to]}.IsothermalPlanes())
}

// inputs are the named numbers of a case that is not made of layers. A cover
// is written thickness:resistance.
type inputs struct {
	numbers map[string]float64
	covers  map[string]assembly.Cover
}

// take returns a number, 0 if it is not given.
func (in inputs) take(name string) float64 { return in.numbers[name] }

func parsePairs(s string) (inputs, error) {
	in := inputs{numbers: map[string]float64{}, covers: map[string]assembly.Cover{}}
	for pair := range strings.SplitSeq(s, ";") {
		name, text, ok := strings.Cut(strings.TrimSpace(pair), "=")
		if !ok {
			return in, fmt.Errorf("%q is no name=number", pair)
		}
		if d, r, ok := strings.Cut(text, ":"); ok {
			thickness, err1 := number(d)
			resistance, err2 := number(r)
			if err := errors.Join(err1, err2); err != nil {
				return in, err
			}
			in.covers[name] = assembly.Cover{Thickness: rvalue.Length(thickness), R: rvalue.Resistance(resistance)}
			continue
		}
		x, err := number(text)
		if err != nil {
			return in, err
		}
		in.numbers[name] = x
	}
	return in, nil
}

// results are quantities in SI by name.
type results map[string]float64

// evaluators compute the cases that are not layers, in SI.
var evaluators = map[string]func(inputs) (results, error){
	"zones": func(in inputs) (results, error) {
		z, err := assembly.SteelFrame{
			Spacing: rvalue.Length(in.take("spacing")), Depth: rvalue.Length(in.take("depth")),
			Flange: rvalue.Length(in.take("flange")), Thickness: rvalue.Length(in.take("sheet")),
			Cavity: rvalue.Resistance(in.take("cavity")),
			Inside: []assembly.Cover{in.covers["inside"]}, Outside: []assembly.Cover{in.covers["outside"]},
		}.ModifiedZones(in.take("zf"))
		return results{
			"width": float64(z.Width), "web": float64(z.Web), "flange": float64(z.Flange),
			"framed": float64(z.Framed), "clear": float64(z.Clear), "R": float64(z.R), "U": float64(z.R.U()),
		}, err
	},
	"steel": func(in inputs) (results, error) { // sizes in inches, R in h·ft²·°F/Btu
		rated := rvalue.Resistance(in.take("rated")) * rvalue.RIP
		r, _, _, err := assembly.SteelLayer(rvalue.Length(in.take("depth"))*rvalue.Inch, rvalue.Length(in.take("spacing"))*rvalue.Inch, rated)
		return results{"effective": float64(r), "effective over rated": float64(r / rated)}, err
	},
	"steel sum": steelSum,
	"voids": func(in inputs) (results, error) {
		return corrected(in)(assembly.AirVoids(int(in.take("level")), rvalue.Resistance(in.take("r1")), rvalue.Resistance(in.take("rt"))))
	},
	"fasteners": func(in inputs) (results, error) {
		out, err := corrected(in)(fasteners(in).Correction(rvalue.Resistance(in.take("r1")), rvalue.Resistance(in.take("rt"))))
		return out, err
	},
	"roof fixings 1997": func(in inputs) (results, error) { return corrected(in)(fasteners(in).RoofFixings1997()) },
	"inverted": func(in inputs) (results, error) {
		return corrected(in)(assembly.InvertedRoof(rvalue.Length(in.take("rain"))*rvalue.Millimetre, in.take("fx"), rvalue.Resistance(in.take("r1")), rvalue.Resistance(in.take("rt"))))
	},
	"taper": func(in inputs) (results, error) {
		u, err := assembly.TaperedPart{Shape: assembly.Taper(in.take("shape")), Fixed: rvalue.Resistance(in.take("r0")), Tapered: rvalue.Resistance(in.take("r1"))}.U()
		return results{"U": float64(u)}, err
	},
	"unheated": func(in inputs) (results, error) {
		r, err := assembly.UnheatedSpace(rvalue.Area(in.take("inner")), rvalue.Conductance(in.take("outer")), in.take("ach"), rvalue.Volume(in.take("volume")))
		return results{"R": float64(r)}, err
	},
}

func fasteners(in inputs) assembly.Fasteners {
	return assembly.Fasteners{
		Conductivity: rvalue.Conductivity(in.take("k")), Section: rvalue.Area(in.take("section")),
		PerSquareMetre: in.take("number"), Insulation: rvalue.Length(in.take("thick")),
	}
}

// corrected gives the quantities of a correction, and with a U those of the
// corrected one.
func corrected(in inputs) func(rvalue.Transmittance, error) (results, error) {
	return func(dU rvalue.Transmittance, err error) (results, error) {
		out := results{"dU": float64(dU), "rt": in.take("rt")}
		if u := rvalue.Transmittance(in.take("u")); err == nil && u > 0 {
			out["dU of U"] = float64(dU / u)
			var uc rvalue.Transmittance
			uc, _, err = assembly.Corrected(u, dU)
			out["U corrected"] = float64(uc)
		}
		return out, err
	}
}

// steelSum adds a layer of steel studs to the rest of a wall, by the printed
// correction factor and by the printed effective resistance.
func steelSum(in inputs) (results, error) {
	depth, spacing := rvalue.Length(in.take("depth")), rvalue.Length(in.take("spacing"))
	rated, rest := rvalue.Resistance(in.take("rated")), in.take("rest")
	fc, _, _, err := assembly.SteelCorrection(depth, spacing, rated)
	if err != nil {
		return nil, err
	}
	effective, _, _, err := assembly.SteelLayer(depth, spacing, rated)
	r := rest + float64(effective)
	out := results{"R rated": rest + fc*float64(rated), "R effective": r, "U effective": 1 / r}
	if from := in.take("from"); from > 0 {
		out["loss"] = 1 - r/from
	}
	return out, err
}
