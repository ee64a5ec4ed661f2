package section

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/coldseam/coldseam/rvalue"
)

// How a picture is laid out, in pixels, and drawn. The look is our own: the
// darker a material, the better it conducts, so that heat bridges stand out in
// black and white.
const (
	pictureWidth  = 880.0
	pictureHeight = 560.0 // of the section, at most
	pictureMargin = 64.0
	rasterCells   = 180 // along the longer side
	heatBands     = 12  // between heat-flow lines
	tagSize       = 18  // the least side of a piece that bears its number
)

// SVG draws the section: its materials, lines of equal temperature (full, with
// their temperature), heat-flow lines (dashed, with an arrow; between two of
// them flows the same heat), what it faces, and the coldest spot of the surfaces
// that do not face the coldest air. Temperatures are in °C or °F.
func (r *Result) SVG(units rvalue.Units) string {
	d := drawing{r: r, plan: r.pair.m.plan, units: units}
	d.place()
	d.materials()
	d.lines()
	d.surroundings()
	d.legend()
	head := fmt.Sprintf(`<svg xmlns="http://www.w3.org/2000/svg" width="%.0f" height="%.0f" viewBox="0 0 %.0f %.0f" role="img" font-family="sans-serif" font-size="12">`+"\n", d.width, d.height, d.width, d.height)
	return head + "<title>Section with isotherms and heat-flow lines</title>\n" +
		fmt.Sprintf(`<rect width="%.0f" height="%.0f" fill="#fff"/>`+"\n", d.width, d.height) + d.b.String() + "</svg>\n"
}

// drawing is a picture in the making.
type drawing struct {
	r             *Result
	plan          *plan
	units         rvalue.Units
	b             strings.Builder
	scale         float64 // pixels per m
	width, height float64
	below         float64    // where the legend starts
	kinds         []material // in the order of their first piece
	band          float64    // heat between two heat-flow lines, W/m
}

// material is what pieces of one name and conductivity share.
type material struct {
	name string
	k    float64
}

func (d *drawing) place() {
	xs, ys := d.plan.xs, d.plan.ys
	w, h := xs[len(xs)-1]-xs[0], ys[len(ys)-1]-ys[0]
	d.scale = min((pictureWidth-2*pictureMargin)/w, pictureHeight/h)
	d.width = pictureWidth
	d.below = h*d.scale + 2*pictureMargin
	for _, q := range d.plan.section.Pieces {
		if m := (material{q.Name, float64(q.Conductivity)}); !slices.Contains(d.kinds, m) {
			d.kinds = append(d.kinds, m)
		}
	}
	d.height = d.below + 22*float64(len(d.kinds)+2) + 14
}

// x and y turn a place into pixels; y grows upward in a section.
func (d *drawing) x(v rvalue.Length) float64 {
	xs := d.plan.xs
	left := (d.width - (xs[len(xs)-1]-xs[0])*d.scale) / 2
	return left + (float64(v)-xs[0])*d.scale
}

func (d *drawing) y(v rvalue.Length) float64 {
	ys := d.plan.ys
	return pictureMargin + (ys[len(ys)-1]-float64(v))*d.scale
}

// tone is the grey of a conductivity: white at 0.01, dark at 100 W/(m·K) and
// beyond, never so dark that a line is lost on it.
func tone(k float64) string {
	part := min(1, max(0, (math.Log10(k)+2)/4))
	g := int(math.Round(255 - 135*part))
	return fmt.Sprintf("#%02x%02x%02x", g, g, g)
}

func (d *drawing) materials() {
	d.b.WriteString(`<g stroke="#000" stroke-width="0.6">` + "\n")
	for _, q := range d.plan.section.Pieces {
		x, y, w, h := d.rectangle(q)
		fmt.Fprintf(&d.b, `<rect x="%.2f" y="%.2f" width="%.2f" height="%.2f" fill="%s"/>`+"\n", x, y, w, h, tone(float64(q.Conductivity)))
	}
	d.b.WriteString("</g>\n")
}

func (d *drawing) rectangle(q Piece) (x, y, w, h float64) {
	x, y = d.x(min(q.From.X, q.To.X)), d.y(max(q.From.Y, q.To.Y))
	return x, y, math.Abs(float64(q.To.X-q.From.X)) * d.scale, math.Abs(float64(q.To.Y-q.From.Y)) * d.scale
}

// lines draws isotherms and heat-flow lines, and over them the pieces' numbers.
func (d *drawing) lines() {
	f := d.r.pair.raster()
	low, high := math.Inf(1), math.Inf(-1)
	for i, v := range f.psi {
		if !math.IsNaN(f.t[i]) {
			low, high = min(low, v), max(high, v)
		}
	}
	d.band = (high - low) / heatBands
	d.b.WriteString(`<g fill="none" stroke="#000" stroke-width="0.8" stroke-dasharray="5 3">` + "\n")
	var arrows strings.Builder
	for n := range heatBands {
		for _, chain := range f.contour(f.psi, low+(float64(n)+0.5)*d.band) {
			d.polyline(chain, "heat")
			d.arrow(&arrows, chain)
		}
	}
	d.b.WriteString("</g>\n" + `<g fill="#000">` + "\n" + arrows.String() + "</g>\n")
	d.b.WriteString(`<g fill="none" stroke="#000" stroke-width="1.4">` + "\n")
	var labels strings.Builder
	for n, level := range d.levels() {
		name := fmt.Sprintf("%g", math.Round(level*100)/100)
		for _, chain := range f.contour(f.t, d.kelvins(level)) {
			d.polyline(chain, "isotherm")
			// Labels of neighbours stand apart.
			_, part := math.Modf(float64(n) * 0.618)
			at := chain[int(float64(len(chain))*(0.25+0.5*part))]
			fmt.Fprintf(&labels, `<text x="%.1f" y="%.1f">%s</text>`+"\n", d.x(at.X), d.y(at.Y)+4, name)
		}
	}
	d.b.WriteString("</g>\n" + `<g text-anchor="middle" font-size="11" stroke="#fff" stroke-width="3" paint-order="stroke">` + "\n" + labels.String())
	for _, q := range d.plan.section.Pieces {
		x, y, w, h := d.rectangle(q)
		if w < tagSize || h < tagSize {
			continue
		}
		n := slices.Index(d.kinds, material{q.Name, float64(q.Conductivity)})
		fmt.Fprintf(&d.b, `<text x="%.1f" y="%.1f" font-weight="bold">%s</text>`+"\n", x+w/2, y+h/2+4, tag(n))
	}
	d.b.WriteString("</g>\n")
}

// tag is the letter of a material in the picture: A, B … Z, A2 …
func tag(n int) string {
	s := string(rune('A' + n%26))
	if n >= 26 {
		s += fmt.Sprint(n/26 + 1)
	}
	return s
}

func (d *drawing) polyline(chain []Point, class string) {
	fmt.Fprintf(&d.b, `<polyline class="%s" points="`, class)
	for i, p := range chain {
		if i > 0 {
			d.b.WriteByte(' ')
		}
		fmt.Fprintf(&d.b, "%.1f,%.1f", d.x(p.X), d.y(p.Y))
	}
	d.b.WriteString("\"/>\n")
}

// arrow puts a head in the middle of a heat-flow line, toward the cold.
func (d *drawing) arrow(b *strings.Builder, chain []Point) {
	if len(chain) < 3 {
		return
	}
	var v evaluator
	p := d.r.pair
	if p.point(&v, chain[0]).Temperature < p.point(&v, chain[len(chain)-1]).Temperature {
		slices.Reverse(chain)
	}
	n := len(chain) / 2
	a, c := chain[n-1], chain[n+1]
	x, y := d.x(chain[n].X), d.y(chain[n].Y)
	dx, dy := d.x(c.X)-d.x(a.X), d.y(c.Y)-d.y(a.Y)
	l := math.Hypot(dx, dy)
	if l == 0 {
		return
	}
	dx, dy = dx/l, dy/l
	fmt.Fprintf(b, `<path d="M%.1f %.1fL%.1f %.1fL%.1f %.1fz"/>`+"\n", x+5*dx, y+5*dy, x-3*dx+3*dy, y-3*dy-3*dx, x-3*dx-3*dy, y-3*dy+3*dx)
}

// degrees is a temperature in the picture's unit, kelvins the way back.
func (d *drawing) degrees(k float64) float64 {
	if t := rvalue.Temperature(k); d.units == rvalue.IP {
		return t.Fahrenheit()
	}
	return rvalue.Temperature(k).Celsius()
}

func (d *drawing) kelvins(v float64) float64 {
	if d.units == rvalue.IP {
		return float64(rvalue.FromFahrenheit(v))
	}
	return float64(rvalue.FromCelsius(v))
}

// levels are the temperatures of the isotherms: round, about ten between the
// coldest and the warmest air.
func (d *drawing) levels() (out []float64) {
	airs := d.plan.airs
	low, high := d.degrees(airs[len(airs)-1]), d.degrees(airs[0])
	raw := (high - low) / 10
	step := math.Pow(10, math.Floor(math.Log10(raw)))
	for _, f := range []float64{1, 2, 5, 10} {
		if f*step >= raw {
			step *= f
			break
		}
	}
	for n := math.Ceil(low / step); n*step <= high; n++ {
		out = append(out, n*step)
	}
	return out
}

func (d *drawing) say(k float64) string {
	return rvalue.Temperature(k).In(d.units)
}

// surroundings draws the air along each boundary and marks the coldest spot.
func (d *drawing) surroundings() {
	const off = 4.0
	d.b.WriteString(`<g stroke="#000" stroke-width="2.5" text-anchor="middle">` + "\n")
	var words strings.Builder
	for n, b := range d.plan.section.Boundaries {
		if b.Adiabatic {
			continue
		}
		x0, y0, x1, y1 := d.x(b.From.X), d.y(b.From.Y), d.x(b.To.X), d.y(b.To.Y)
		nx, ny := d.outward(n)
		fmt.Fprintf(&d.b, `<line x1="%.1f" y1="%.1f" x2="%.1f" y2="%.1f"/>`+"\n", x0+off*nx, y0+off*ny, x1+off*nx, y1+off*ny)
		x, y := (x0+x1)/2+22*nx, (y0+y1)/2+22*ny+4
		turn := ""
		if nx != 0 {
			turn = fmt.Sprintf(` transform="rotate(-90 %.1f %.1f)"`, x, y)
		}
		fmt.Fprintf(&words, `<text x="%.1f" y="%.1f"%s>%s</text>`+"\n", x, y, turn, escape(strings.TrimSpace(b.Name+" "+d.say(float64(b.Air)))))
	}
	d.b.WriteString("</g>\n" + `<g text-anchor="middle">` + "\n" + words.String() + "</g>\n")
	if d.r.Coldest < 0 {
		return
	}
	at := d.r.Flows[d.r.Coldest].Coldest.At
	fmt.Fprintf(&d.b, `<circle cx="%.1f" cy="%.1f" r="5" fill="#fff" stroke="#000" stroke-width="2"/>`+"\n", d.x(at.X), d.y(at.Y))
}

// outward returns the direction away from the material at a boundary, in pixels.
func (d *drawing) outward(n int) (x, y float64) {
	p := d.plan
	for l := range len(p.ys) {
		for i := range p.columns() {
			if p.flatAt(i, l) == n {
				if p.at(i, l) >= 0 {
					return 0, 1 // material above, so outward is down
				}
				return 0, -1
			}
		}
	}
	for j := range p.rows() {
		for l := range len(p.xs) {
			if p.uprightAt(l, j) == n {
				if p.at(l, j) >= 0 {
					return -1, 0
				}
				return 1, 0
			}
		}
	}
	return 0, 0
}

// legend says what the letters, the lines and the circle mean.
func (d *drawing) legend() {
	y := d.below
	for n, m := range d.kinds {
		fmt.Fprintf(&d.b, `<rect x="%.0f" y="%.1f" width="26" height="15" fill="%s" stroke="#000" stroke-width="0.6"/>`+"\n", pictureMargin, y, tone(m.k))
		fmt.Fprintf(&d.b, `<text x="%.0f" y="%.1f"><tspan font-weight="bold">%s</tspan> %s</text>`+"\n", pictureMargin+36, y+12, tag(n),
			escape(strings.TrimSpace(m.name+" "+rvalue.Conductivity(m.k).In(d.units))))
		y += 22
	}
	text := "Full lines: equal temperature. Dashed lines: the way of the heat"
	if !math.IsInf(d.r.Heat, 0) {
		// Heat by length is to psi what heat is to a conductance: the same units.
		unit, by := "W per metre", 1.0
		if d.units == rvalue.IP {
			unit, by = "Btu/h per foot", rvalue.Foot.SI()/(rvalue.BtuPerHourF.SI()*rvalue.FahrenheitDegree.SI())
		}
		text += fmt.Sprintf(", %.3g %s between two of them; %.4g %s in all", d.band*by, unit, d.r.Heat*by, unit)
	}
	fmt.Fprintf(&d.b, `<text x="%.0f" y="%.1f">%s.</text>`+"\n", pictureMargin, y+12, text)
	if d.r.Coldest >= 0 {
		f := d.r.Flows[d.r.Coldest]
		fmt.Fprintf(&d.b, `<text x="%.0f" y="%.1f">Circle: the coldest spot indoors, %s, fRsi %.2f.</text>`+"\n", pictureMargin, y+34, f.Coldest.Temperature.In(d.units), f.Factor)
	}
}

var escaper = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;")

func escape(s string) string { return escaper.Replace(s) }

// raster samples both solutions on lines that hold every edge of the section.
func (p *pair) raster() *raster {
	pl := p.m.plan
	longest := max(pl.xs[len(pl.xs)-1]-pl.xs[0], pl.ys[len(pl.ys)-1]-pl.ys[0])
	cut := func(lines []float64) (at []float64, of []int) {
		for i := range len(lines) - 1 {
			n := max(4, int(math.Ceil((lines[i+1]-lines[i])/longest*rasterCells)))
			for q := range n {
				at, of = append(at, lines[i]+(lines[i+1]-lines[i])*float64(q)/float64(n)), append(of, i)
			}
		}
		return append(at, lines[len(lines)-1]), of
	}
	xs, ofX := cut(pl.xs)
	ys, ofY := cut(pl.ys)
	r := &raster{xs: xs, ys: ys, solid: make([]bool, len(ofX)*len(ofY))}
	for j, row := range ofY {
		for i, column := range ofX {
			r.solid[j*len(ofX)+i] = pl.at(column, row) >= 0
		}
	}
	n := len(xs) * len(ys)
	r.t, r.psi = make([]float64, n), make([]float64, n)
	var v evaluator
	excess := p.excess()
	cold := pl.airs[len(pl.airs)-1]
	ex, ey := intervals(p.m.x.at, xs), intervals(p.m.y.at, ys)
	for j, y := range ys {
		for i, x := range xs {
			a, b, ok := p.m.near(ex[i], ey[j], x, y)
			q := j*len(xs) + i
			if !ok {
				r.t[q] = math.NaN()
				continue
			}
			xi, eta := 2*(x-p.m.x.at[a])/p.m.x.size(a)-1, 2*(y-p.m.y.at[b])/p.m.y.size(b)-1
			r.t[q] = cold
			for e, w := range excess {
				v.c.set(p.m, a, b, false)
				v.ids, v.u = p.temp.gather(a, b, e, p.t[e], v.ids, v.u)
				r.t[q] += w * v.value(v.u, xi, eta)
				v.c.set(p.m, a, b, true)
				v.ids, v.u = p.flow.gather(a, b, e, p.psi[e], v.ids, v.u)
				r.psi[q] += w * v.value(v.u, xi, eta)
			}
		}
	}
	return r
}

// intervals returns for each rising value the interval of at that it lies in.
func intervals(at, values []float64) []int {
	out := make([]int, len(values))
	i := 0
	for n, v := range values {
		for i < len(at)-2 && v >= at[i+1] {
			i++
		}
		out[n] = i
	}
	return out
}

// near returns an element of the material at a point, of element (i, j) or of
// those that share the edge on which the point lies.
func (m *mesh) near(i, j int, x, y float64) (a, b int, ok bool) {
	for b := j; b >= max(0, j-1); b-- {
		for a := i; a >= max(0, i-1); a-- {
			onX := a == i || x <= m.x.at[i]
			onY := b == j || y <= m.y.at[j]
			if onX && onY && m.kAt(a, b) > 0 {
				return a, b, true
			}
		}
	}
	return 0, 0, false
}
