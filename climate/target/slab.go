package target

import "github.com/coldseam/coldseam/rvalue"

const washingtonF = "Washington Administrative Code 51-11C-61061, Table A106.1"

// slabF reads an unheated slab edge as an F-factor, Btu/(h·ft·°F), insulated
// vertically at R-10. Seen in Washington's table for 2 ft and 4 ft; 3 ft is the
// mean of the two. R-0 is its uninsulated edge.
var slabF = [...]struct{ r, depth, f float64 }{
	{0, 0, 0.73},
	{10, 2, 0.54},
	{10, 3, 0.51},
	{10, 4, 0.48},
}

// A heated slab needs R-5 more at its edge (note d), in zones 1 to 3 down to
// the footing or 2 ft, the lesser.
const (
	heatedSlabR     = 5 // h·ft²·°F/Btu
	heatedSlabDepth = 2 // ft
)

// slabNotes applies note d and reads the row as an F-factor.
func (r *Requirement) slabNotes(row rRow, f Facts) {
	source := r.Edition.rTitle() + ", note d; " + pageBoise
	if f.HeatedSlab {
		r.Options = []Option{totalR(row.slab + heatedSlabR)}
		if row.depth == 0 {
			r.SlabDepth, r.Marks.Depth = heatedSlabDepth*rvalue.Foot, FromMemory
		}
	}
	r.note(f.HeatedSlab, "heated-slab", source, Seen, "a heated slab needs R-%d more at its edge than an unheated one", heatedSlabR)
	if r.Zone.band() <= band3 {
		r.note(f.HeatedSlab && row.depth == 0, "heated-slab-depth", r.Edition.rTitle()+", note d", FromMemory,
			"in zones 1 to 3 the insulation of a heated slab goes down to the footing or %d ft, whichever is less", heatedSlabDepth)
	}
	if f.HeatedSlab && r.Edition >= Edition2018 {
		r.note(false, "heated-slab-under", r.Edition.rTitle()+", note d", FromMemory,
			"from 2018 on the text may instead ask R-5 under the whole heated slab besides the edge R; read the edition that applies")
	}
	if f.HeatedSlab {
		return // the table of F-factors has no heated slab with an insulated edge only
	}
	for _, s := range slabF {
		if s.r == row.slab && s.depth == row.depth {
			r.F, r.Marks.F = rvalue.LinearTransmittance(s.f)*rvalue.PsiIP, Derived
			r.note(false, "f-factor", washingtonF, Derived,
				"the code gives R and depth only; the F-factor %.2f Btu/(h·ft·°F) is our reading of them, not the code's limit", s.f)
		}
	}
}
