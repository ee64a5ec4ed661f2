package window

import (
	"github.com/coldseam/coldseam/rvalue"
)

// Window is a whole window: glass in a frame. Its zero fields take the usual.
type Window struct {
	Glazing  Glazing
	Frame    Frame
	FrameU   rvalue.Transmittance // as declared; 0: Frame.U
	Spacer   Spacer
	Operable bool

	Width, Height rvalue.Length // of the frame's outside
	Face          rvalue.Length // width that is seen of the frame; 0: Frame.Face
	Across, Down  int           // lights side by side and one above the other, each a pane of its own; 0: one
	Bar           rvalue.Length // width of the bars (muntins, a meeting rail) between lights; 0: 3/4 in
}

// usualBar is the width of a muntin: common practice, no source.
const usualBar = 0.75 * rvalue.Inch

const (
	maxSize   = 20 * rvalue.Metre
	maxLights = 100 // each way
)

// Whole is what a whole window lets through, and where. Center, Edge and Frame sum
// to it.
type Whole struct {
	U       rvalue.Transmittance
	Area    rvalue.Area
	CenterU rvalue.Transmittance // of the glass away from its edge
	EdgeU   rvalue.Transmittance // of the glass beside the sight line, by the handbook's rule; that of the centre without a spacer
	FrameU  rvalue.Transmittance

	Center, Edge, Frame rvalue.Conductance // by ISO 10077-1 the centre is all glass and the edge what its spacer adds

	GlassArea rvalue.Area   // seen, edge included
	GlassEdge rvalue.Length // its perimeter, of all lights

	Lights                  int // panes or units beside and above each other
	LightWidth, LightHeight rvalue.Length
}

// Declared returns the whole window by ISO 10077-1: glass as declared (see
// [Glazing.Declared]), frame, and the length of the glass edge times psi.
//
// The frame's U is that of an upright window at any tilt. The error names what in w,
// or the tilt, cannot be.
func (w Window) Declared(s Standard, tilt float64) (Whole, error) {
	center, err := w.Glazing.Declared(s, tilt)
	if err != nil {
		return Whole{}, err
	}
	return w.iso(center.U)
}

// Design returns the whole window in real conditions by the handbook's weighting:
// centre (see [Glazing.Design]), edge and frame by their areas.
//
// A height of 0 in c is 1 m for every window, as the handbook's table has it, so that
// windows compare. The frame's U is the published one, of an upright window in winter,
// whatever c is. The error names what in w or c cannot be.
func (w Window) Design(c Conditions) (Whole, Solved, error) {
	p, err := w.plan()
	if err != nil {
		return Whole{}, Solved{}, err
	}
	solved, err := w.Glazing.Design(c)
	if err != nil {
		return Whole{}, Solved{}, err
	}
	return w.handbook(&p, solved.U), solved, nil
}

// plan is a window's areas.
type plan struct {
	width, height          rvalue.Length // of one light
	lights                 float64
	total, glass, centered rvalue.Area
	edge                   rvalue.Length
}

// plan lays out lights and frame.
func (w *Window) plan() (plan, error) {
	across, down, face, bar := max(w.Across, 1), max(w.Down, 1), w.Face, w.Bar
	if face == 0 {
		face = w.Frame.Face(w.Operable)
	}
	if bar == 0 {
		bar = usualBar
	}
	switch {
	case int(w.Frame) >= FrameCount || int(w.Spacer) >= spacerCount:
		return plan{}, refuse("%v with %v is no frame with a spacer; use the constants", w.Frame, w.Spacer)
	case !(w.Width > 0 && w.Width <= maxSize) || !(w.Height > 0 && w.Height <= maxSize):
		return plan{}, refuse("a window of %s x %s; each way it is above 0 to %s", said(w.Width), said(w.Height), said(maxSize))
	case !(face > 0 && face <= maxSize) || !(bar > 0 && bar <= maxSize):
		return plan{}, refuse("a frame of %s or a bar of %s; give widths above 0", said(face), said(bar))
	case across > maxLights || down > maxLights || w.Across < 0 || w.Down < 0:
		return plan{}, refuse("%d by %d lights; give 1 to %d each way", w.Across, w.Down, maxLights)
	case w.FrameU != 0 && !(w.FrameU > 0 && w.FrameU <= maxFrameU):
		return plan{}, refuse("a frame of U %s; give above 0 to %s", said(w.FrameU), said(maxFrameU))
	}
	p := plan{lights: float64(across * down)}
	p.width = rvalue.Length((float64(w.Width-2*face) - float64(across-1)*float64(bar)) / float64(across))
	p.height = rvalue.Length((float64(w.Height-2*face) - float64(down-1)*float64(bar)) / float64(down))
	if !(p.width > 0 && p.height > 0) {
		return plan{}, refuse("an opening of %s x %s is smaller than its frame: %s all round and %d by %d lights with bars of %s leave no glass", said(w.Width), said(w.Height), said(face), across, down, said(bar))
	}
	inner := max(p.width-2*EdgeBand, 0).Times(max(p.height-2*EdgeBand, 0))
	p.total = w.Width.Times(w.Height)
	p.glass = rvalue.Area(p.lights * float64(p.width.Times(p.height)))
	p.centered = rvalue.Area(p.lights * float64(inner))
	p.edge = rvalue.Length(p.lights * 2 * float64(p.width+p.height))
	return p, nil
}

// maxFrameU is above that of any metal frame.
const maxFrameU = 20 * rvalue.USI

func (w *Window) frameU() rvalue.Transmittance {
	if w.FrameU != 0 {
		return w.FrameU
	}
	return w.Frame.U(len(w.Glazing.Panes), w.Operable, w.Spacer)
}

// sealed reports whether some gap has a spacer; that of a storm window has none.
func (g Glazing) sealed() bool {
	for i := range g.Gaps {
		if !g.Panes[i].Storm && !g.Panes[i+1].Storm {
			return true
		}
	}
	return false
}

// coated reports whether a gap has a coating on one of its faces, or vacuum or
// aerogel in it: what ISO 10077-1 tells from plain multiple glazing.
func (g Glazing) coated() bool {
	for i := range g.Gaps {
		if g.Panes[i].Outer != 0 || g.Panes[i+1].Inner != 0 || g.Gaps[i].Kind != Filled {
			return true
		}
	}
	return false
}

// iso weighs by ISO 10077-1.
func (w *Window) iso(center rvalue.Transmittance) (Whole, error) {
	p, err := w.plan()
	if err != nil {
		return Whole{}, err
	}
	out := w.whole(&p, center)
	var psi rvalue.LinearTransmittance // 0 for single glazing, seen
	if w.Glazing.sealed() {
		psi = w.Frame.Psi(w.Glazing.coated(), w.Spacer)
	}
	// ISO 10077-1: Uw = (ΣAg·Ug + ΣAf·Uf + Σlg·ψg)/(ΣAg + ΣAf), seen
	out.Center, out.Edge = center.Times(p.glass), psi.Times(p.edge)
	out.U = (out.Center + out.Edge + out.Frame).Over(p.total)
	return out, nil
}

// handbook weighs by the areas of centre, edge and frame.
func (w *Window) handbook(p *plan, center rvalue.Transmittance) Whole {
	out := w.whole(p, center)
	// ASHRAE Handbook—Fundamentals, fenestration: U = (Ucg·Acg + Ueg·Aeg + Uf·Af)/ΣA
	out.Center, out.Edge = center.Times(p.centered), out.EdgeU.Times(p.glass-p.centered)
	out.U = (out.Center + out.Edge + out.Frame).Over(p.total)
	return out
}

// whole fills in what both ways share.
func (w *Window) whole(p *plan, center rvalue.Transmittance) Whole {
	out := Whole{
		Area: p.total, CenterU: center, EdgeU: center, FrameU: w.frameU(),
		GlassArea: p.glass, GlassEdge: p.edge,
		Lights: int(p.lights), LightWidth: p.width, LightHeight: p.height,
	}
	if w.Glazing.sealed() {
		out.EdgeU = max(w.Spacer.EdgeU(center), center)
	}
	out.Frame = out.FrameU.Times(p.total - p.glass)
	return out
}
