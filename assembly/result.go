package assembly

import (
	"fmt"
	"strings"

	"github.com/coldseam/coldseam/rvalue"
)

// Result is what an assembly resists, by each method, and where.
type Result struct {
	Setting  Setting
	Assembly Assembly // films included, air spaces at their own temperatures

	ParallelPath     rvalue.Resistance
	IsothermalPlanes rvalue.Resistance
	Combined         Combined
	Zone             rvalue.Resistance // 0 without steel studs
	Effective        Effective

	Layers  []LayerResult // indoors to outdoors, films included
	Paths   []PathResult  // members before what stands between them
	Remarks []Remark
}

// Effective is the one figure to use for the assembly.
type Effective struct {
	R      rvalue.Resistance // air to air
	Method Method
	Why    string
}

// U returns the transmittance 1/R.
func (e Effective) U() rvalue.Transmittance { return e.R.U() }

// LayerResult is one layer of a Result.
type LayerResult struct {
	Name      string
	Offset    int               // in the written assembly, -1 for a film
	Thickness rvalue.Length     // 0 if unknown
	R         rvalue.Resistance // mixed over its shares
	Drop      float64           // of the whole temperature drop, weighted by heat
	Inner     rvalue.Temperature
	Outer     rvalue.Temperature // faces, on the average over the area
	Shares    []ShareResult
}

// ShareResult is one share of a layer of a Result.
type ShareResult struct {
	Name     string
	Fraction float64 // of the area
	Member   bool
	R        rvalue.Resistance
	Heat     float64 // of all heat through the assembly
	Gain     float64 // resistance the assembly gains per resistance added here
	Pieces   []Piece // what it is made of, indoors first; none for a film
}

// PathResult is one way straight through the assembly.
type PathResult struct {
	Name     string // the bridged shares it crosses
	Fraction float64
	R        rvalue.Resistance
	Heat     float64              // of all heat, by the parallel path
	Planes   []rvalue.Temperature // inside air, each plane between layers, outside air
}

// Evaluate computes the assembly in its setting: it lays out the layers with
// their films, finds the temperatures of the air spaces, and applies every
// method. An error that lies in the text is a *SyntaxError.
func (s *Spec) Evaluate(setting Setting) (*Result, error) {
	setting = setting.withDefaults()
	if err := setting.check(); err != nil {
		return nil, err
	}
	b := builder{spec: s, setting: setting}
	if err := b.build(); err != nil {
		return nil, err
	}
	if n := pathCount(b.layers); n > maxPaths {
		return nil, b.fail(0, "%d crossing paths are more than this program follows, %d; mark layers aligned, or give some as a resistance", n, maxPaths)
	}
	if err := b.settle(); err != nil {
		return nil, err
	}
	b.coldRemarks()
	a := Assembly{Layers: b.layers}
	if err := a.Check(); err != nil {
		return nil, err
	}
	return b.result(a)
}

// maxPaths bounds the work that a text can ask for: six crossing layers of
// two shares make 64.
const maxPaths = 4096

func pathCount(layers []Layer) int {
	n := 1
	for _, l := range layers {
		if n *= len(l.Shares); n > maxPaths {
			break
		}
	}
	return n
}

func (b *builder) result(a Assembly) (*Result, error) {
	r := &Result{
		Setting: b.setting, Assembly: a,
		ParallelPath: a.ParallelPath(), IsothermalPlanes: a.IsothermalPlanes(), Combined: a.Combined(),
	}
	if b.steel != nil {
		zone, why, err := b.zone(a)
		if err != nil {
			return nil, err
		}
		r.Zone = zone
		b.remark(b.offsets[b.steel.layer], "steel", "%s", why)
	}
	if b.setting.Method == Zone && b.steel == nil {
		return nil, fmt.Errorf("assembly: the zone method is made for steel studs, and there are none here; ask for another method or none")
	}
	method, why := b.advise(a)
	effective, err := b.by(method, a)
	if err != nil {
		return nil, err
	}
	r.Effective = Effective{R: effective, Method: method, Why: why}
	if method == Mean && (!r.Combined.Valid || b.steel != nil) {
		b.remark(-1, "combined-invalid", "ISO 6946 refuses its combined method here (upper over lower limit %.2f, bound 1.5; metal through insulation); ask for a numeric answer", float64(r.ParallelPath)/float64(r.IsothermalPlanes))
	}
	gains, err := b.gains(method, a)
	if err != nil {
		return nil, err
	}
	b.pathResults(r)
	b.layerResults(r, gains)
	r.Remarks = b.remarks
	return r, nil
}

// pathResults fills in the paths, in the order of Assembly.Paths.
func (b *builder) pathResults(r *Result) {
	ti, dT := float64(b.setting.Indoors), float64(b.setting.Indoors.Sub(b.setting.Outdoors))
	u := 1 / float64(r.ParallelPath)
	for _, p := range r.Assembly.Paths() {
		res := PathResult{
			Name: b.pathName(p), Fraction: p.Fraction, R: p.R,
			Heat:   p.Fraction / float64(p.R) / u,
			Planes: make([]rvalue.Temperature, 0, len(p.Shares)+1),
		}
		res.Planes = append(res.Planes, b.setting.Indoors)
		before := 0.0
		for i, s := range p.Shares {
			before += float64(r.Assembly.Layers[i].Shares[s].R)
			res.Planes = append(res.Planes, rvalue.Temperature(ti-dT*before/float64(p.R)))
		}
		r.Paths = append(r.Paths, res)
	}
}

// pathName names the shares that set a path apart.
func (b *builder) pathName(p Path) string {
	var names []string
	for i, s := range p.Shares {
		if b.layers[i].Bridged() {
			names = append(names, b.layers[i].Shares[s].Name)
		}
	}
	if names == nil {
		return "all over"
	}
	return strings.Join(names, ", ")
}

// layerResults fills in the layers. Heat and drop follow the paths where the
// effective method does, else each layer's own mixture.
func (b *builder) layerResults(r *Result, gains [][]float64) {
	along := r.Effective.Method == Parallel || r.Effective.Method == Mean
	paths := r.Assembly.Paths()
	at := b.setting.Indoors
	dT := float64(b.setting.Indoors.Sub(b.setting.Outdoors))
	for i, l := range r.Assembly.Layers {
		mixed := l.Mixed()
		res := LayerResult{Name: l.Name, Offset: b.offsets[i], Thickness: b.thickness(i), R: mixed, Shares: make([]ShareResult, len(l.Shares))}
		res.Drop = float64(res.R) / float64(r.IsothermalPlanes)
		if r.Effective.Method == Zone {
			// What the studs' layer resists is what the method leaves for it.
			if i == b.steel.layer {
				res.R = r.Effective.R - (r.IsothermalPlanes - mixed)
			}
			res.Drop = float64(res.R) / float64(r.Effective.R)
		}
		if along {
			res.Drop = 0
		}
		for s, share := range l.Shares {
			sr := ShareResult{
				Name: share.Name, Fraction: share.Fraction, Member: share.Member, R: share.R, Gain: gains[i][s],
				Heat: share.Fraction * float64(mixed) / float64(share.R),
			}
			if along {
				sr.Heat = 0
			}
			if b.pieces[i] != nil {
				sr.Pieces = b.pieces[i][s]
			}
			res.Shares[s] = sr
		}
		if along {
			for n, p := range paths {
				share := &res.Shares[p.Shares[i]]
				share.Heat += r.Paths[n].Heat
				res.Drop += r.Paths[n].Heat * float64(share.R) / float64(p.R)
			}
		}
		res.Inner = at
		at = at.Add(rvalue.TemperatureDifference(-res.Drop * dT))
		res.Outer = at
		r.Layers = append(r.Layers, res)
	}
}
