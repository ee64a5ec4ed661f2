package assembly

import (
	"errors"
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
	Numeric          *Solution         // nil: not solved
	Effective        Effective

	Layers  []LayerResult // indoors to outdoors, films included
	Paths   []PathResult  // members before what stands between them; none if heat spreads sideways between several bridged layers
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

// LayerResult is one layer of a Result. R, Drop and the temperatures are those
// of the effective method, and over the layers they sum to the whole.
type LayerResult struct {
	Name      string
	Offset    int                // in the written assembly, -1 for a film and for what counts beyond a slightly vented space
	Thickness rvalue.Length      // 0 if unknown
	R         rvalue.Resistance  // what it adds to the effective R: its own, or if it is bridged what the method leaves for it
	Drop      float64            // of the whole temperature drop, the mean over the area
	Inner     rvalue.Temperature // of its faces, the mean over the area
	Outer     rvalue.Temperature
	Shares    []ShareResult
}

// ShareResult is one share of a layer of a Result.
type ShareResult struct {
	Name     string
	Fraction float64 // of the area
	Member   bool
	R        rvalue.Resistance
	Heat     float64 // of all heat through the assembly, by the effective method; their mean of the shares' R is the layer's, unless heat crosses over between pieces of a bay
	Gain     float64 // resistance the assembly gains per resistance added here; NaN in steel studs by the published table, which goes by labels
	Pieces   []Piece // what it is made of, indoors first; none for a film
}

// PathResult is one way through the assembly. By the parallel path heat runs
// straight through, and each path has a resistance and temperatures of its own.
// By every other effective method it spreads sideways, and a path is a share of
// the one layer that divides it: the bridged one, or that of the steel studs.
type PathResult struct {
	Name     string // the bridged shares it crosses
	Fraction float64
	R        rvalue.Resistance    // 0 where heat spreads sideways
	Heat     float64              // of all heat
	Planes   []rvalue.Temperature // inside air, each plane between layers, outside air; nil where heat spreads sideways
}

// Evaluate computes the assembly in its setting: it lays out the layers with
// their films, finds the temperatures of the air spaces, and applies every
// method. An error that lies in the text is a *SyntaxError.
func (s *Spec) Evaluate(setting Setting) (*Result, error) {
	setting = setting.withDefaults()
	if err := setting.check(); err != nil {
		return nil, err
	}
	if err := s.check(); err != nil {
		return nil, err
	}
	b := builder{spec: s, setting: setting}
	if err := b.build(); err != nil {
		return nil, err
	}
	if err := b.countPaths(); err != nil {
		return nil, err
	}
	if setting.Method == Numeric {
		return nil, errors.New("assembly: the numeric answer is not a hand method; section.Evaluate finds it")
	}
	if setting.Method == Zone && b.steel == nil {
		return nil, fmt.Errorf("assembly: the zone method is made for steel studs, and there are none here; ask for another method or none")
	}
	kept := len(b.remarks)
	effective := Effective{}
	effective.Method, effective.Why = b.advise()
	if err := b.settle(effective.Method); err != nil {
		return nil, err
	}
	if setting.Cold { // what stands side by side has changed
		b.remarks = b.remarks[:kept]
		effective.Method, effective.Why = b.advise()
		if err := b.settle(effective.Method); err != nil {
			return nil, err
		}
	}
	b.coldRemarks()
	a := Assembly{Layers: b.layers}
	if err := a.Check(); err != nil {
		return nil, err
	}
	return b.result(a, effective)
}

// Bounds of the work that a text can ask for. Twelve crossing layers of two
// shares make 4096 paths; walls have some ten layers.
const (
	maxPaths  = 4096
	maxLayers = 64
)

// countPaths refuses more paths than maxPaths, at the layer that makes them too
// many.
func (b *builder) countPaths() error {
	most := 1 // if all layers crossed
	for _, l := range b.layers {
		most = min(most*len(l.Shares), maxPaths+1)
	}
	if most <= maxPaths {
		return nil
	}
	a := Assembly{b.layers}
	paths := 1
	for i := range a.Layers {
		if together := a.together(i); together != nil {
			paths *= len(a.strips(together))
		}
		if paths > maxPaths {
			return b.fail(b.offsets[i], "with this layer the crossing members make %d paths, more than the %d that this program follows; mark layers aligned, or give some as a resistance", paths, maxPaths)
		}
	}
	return nil
}

// result computes the assembly by every method and in detail by the effective
// one, whose R is still to be found.
func (b *builder) result(a Assembly, effective Effective) (*Result, error) {
	d, whole, err := b.divide(effective.Method, a)
	if err != nil {
		return nil, err
	}
	effective.R = whole
	r := &Result{
		Setting: b.setting, Assembly: a, Effective: effective,
		ParallelPath: a.ParallelPath(), IsothermalPlanes: a.IsothermalPlanes(), Combined: a.Combined(),
	}
	if b.steel != nil {
		z, err := b.zone(a)
		if err != nil {
			return nil, err
		}
		r.Zone = z.r
		b.remark(b.offsets[b.steel.layer], "steel", "%s", z.why)
		if z.published {
			b.beyondTable()
		} else {
			b.bareCovers()
			b.apartRemark(z.apart)
		}
	}
	if effective.Method == Mean && (!r.Combined.Valid || b.steel != nil) {
		b.remark(-1, "combined-invalid", "ISO 6946 refuses its combined method here (upper over lower limit %.2f, bound 1.5; metal through insulation); ask for a numeric answer", float64(r.ParallelPath)/float64(r.IsothermalPlanes))
	}
	gains, err := b.gains(effective.Method, a)
	if err != nil {
		return nil, err
	}
	b.pathResults(r, d)
	b.layerResults(r, d, gains)
	r.Remarks = b.remarks
	return r, nil
}

// pathResults fills in the paths, in the order of Assembly.Paths.
func (b *builder) pathResults(r *Result, d division) {
	divides, bridged := 0, 0
	for i, l := range r.Assembly.Layers {
		if l.Bridged() {
			divides = i
			bridged++
		}
	}
	if r.Effective.Method == Zone {
		divides, bridged = b.steel.layer, 1
	}
	switch {
	case bridged == 0 || r.Effective.Method == Parallel:
		b.straightPaths(r)
	case bridged == 1:
		for s, share := range r.Assembly.Layers[divides].Shares {
			r.Paths = append(r.Paths, PathResult{Name: share.Name, Fraction: share.Fraction, Heat: d.heat[divides][s]})
		}
	}
}

// straightPaths fills in the paths of heat that runs straight through.
func (b *builder) straightPaths(r *Result) {
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

// layerResults fills in the layers.
func (b *builder) layerResults(r *Result, d division, gains [][]float64) {
	at := b.setting.Indoors
	dT := float64(b.setting.Indoors.Sub(b.setting.Outdoors))
	r.Layers = make([]LayerResult, 0, len(r.Assembly.Layers))
	for i, l := range r.Assembly.Layers {
		res := LayerResult{
			Name: l.Name, Offset: b.offsets[i], Thickness: b.thickness(i),
			R: d.layers[i], Drop: float64(d.layers[i] / r.Effective.R), Shares: make([]ShareResult, len(l.Shares)),
		}
		for s, share := range l.Shares {
			res.Shares[s] = ShareResult{
				Name: share.Name, Fraction: share.Fraction, Member: share.Member, R: share.R,
				Heat: d.heat[i][s], Gain: gains[i][s],
			}
			if b.pieces[i] != nil {
				res.Shares[s].Pieces = b.pieces[i][s]
			}
		}
		res.Inner = at
		at = at.Add(rvalue.TemperatureDifference(-res.Drop * dT))
		res.Outer = at
		r.Layers = append(r.Layers, res)
	}
}
