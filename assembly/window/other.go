package window

import "github.com/coldseam/coldseam/rvalue"

// Door is a door with lights of glass in it.
type Door struct {
	Width, Height           rvalue.Length        // of the door in its frame
	LeafU                   rvalue.Transmittance // of the opaque door in its frame
	Glazing                 Glazing              // without panes: an opaque door
	Spacer                  Spacer
	LightWidth, LightHeight rvalue.Length // of the glass that is seen in one light
	Lights                  int           // 0: one
}

// Declared returns the whole door by ISO 10077-1 with its glass as declared,
// upright: areas by their U, and the edge of the glass by the psi of wood and PVC
// frames. Frame in the answer is all that is opaque. The error names what in d
// cannot be.
func (d Door) Declared(s Standard) (Whole, error) {
	n := max(d.Lights, 1)
	total := d.Width.Times(d.Height)
	switch {
	case !(d.Width > 0 && d.Width <= maxSize) || !(d.Height > 0 && d.Height <= maxSize):
		return Whole{}, refuse("a door of %s x %s; each way it is above 0 to %s", said(d.Width), said(d.Height), said(maxSize))
	case !(d.LeafU > 0 && d.LeafU <= maxFrameU):
		return Whole{}, refuse("a door of U %s; give above 0 to %s", said(d.LeafU), said(maxFrameU))
	case d.Lights < 0 || n > maxLights || int(d.Spacer) >= spacerCount:
		return Whole{}, refuse("%d lights with %v; give 1 to %d and a spacer of the constants", d.Lights, d.Spacer, maxLights)
	}
	out := Whole{Area: total, FrameU: d.LeafU}
	if len(d.Glazing.Panes) > 0 {
		center, err := d.Glazing.Declared(s, Upright)
		if err != nil {
			return Whole{}, err
		}
		glass := rvalue.Area(float64(n) * float64(d.LightWidth.Times(d.LightHeight)))
		if !(d.LightWidth > 0 && d.LightWidth < d.Width && d.LightHeight > 0 && d.LightHeight < d.Height && glass < total) {
			return Whole{}, refuse("%d lights of %s x %s do not fit into a door of %s x %s", n, said(d.LightWidth), said(d.LightHeight), said(d.Width), said(d.Height))
		}
		out.CenterU, out.EdgeU, out.GlassArea = center.U, center.U, glass
		out.Lights, out.LightWidth, out.LightHeight = n, d.LightWidth, d.LightHeight
		out.GlassEdge = rvalue.Length(float64(n) * 2 * float64(d.LightWidth+d.LightHeight))
		out.Center = center.U.Times(glass)
		if d.Glazing.sealed() {
			out.EdgeU = max(d.Spacer.EdgeU(center.U), center.U)
			out.Edge = Wood.Psi(d.Glazing.coated(), d.Spacer).Times(out.GlassEdge)
		}
	}
	out.Frame = d.LeafU.Times(total - out.GlassArea)
	out.U = (out.Center + out.Edge + out.Frame).Over(total)
	return out, nil
}

// Faces returns the temperatures towards the room in the conditions c, as
// [Window.Faces]; Frame is the leaf, and so are all of an opaque door. The error names
// what in d or c cannot be.
func (d Door) Faces(c Conditions) (Inside, error) {
	if _, err := d.Declared(EN673); err != nil {
		return Inside{}, err
	}
	if c.alike() {
		return Inside{c.Indoors, c.Indoors, c.Indoors}, nil
	}
	c = c.filled()
	if err := c.check(); err != nil {
		return Inside{}, err
	}
	leaf, err := c.face(behind(d.LeafU, FaceFilm), frameEmissivity)
	in := Inside{Center: leaf, Edge: leaf, Frame: leaf}
	if err != nil || len(d.Glazing.Panes) == 0 {
		return in, err
	}
	solved, err := d.Glazing.Design(c)
	if err != nil {
		return Inside{}, err
	}
	in.Center, in.Edge, err = d.Glazing.faces(c, &solved, d.Spacer)
	return in, err
}

// Skylight is a window in a roof, on a curb that stands above it.
type Skylight struct {
	Window     Window
	CurbHeight rvalue.Length     // above the insulated roof; 0: none
	CurbR      rvalue.Resistance // of the curb's sides without films
}

// Design returns the skylight in real conditions, its curb with it: the U is per
// area of the window's outer size and counts what the curb's sides lose, which is
// added to Frame. Set the tilt in c. The error names what in s or c cannot be.
func (s Skylight) Design(c Conditions) (Whole, Solved, error) {
	out, solved, err := s.Window.Design(c)
	if err != nil || s.CurbHeight == 0 {
		return out, solved, err
	}
	if !(s.CurbHeight > 0 && s.CurbHeight <= 2*rvalue.Metre) || !(s.CurbR >= 0 && s.CurbR <= 20*rvalue.RSI) {
		return Whole{}, Solved{}, refuse("a curb of %s with %s; give a height above 0 to 2 m and what its sides resist, up to RSI 20", said(s.CurbHeight), said(s.CurbR))
	}
	side := rvalue.Length(2 * float64(s.Window.Width+s.Window.Height)).Times(s.CurbHeight)
	// ISO 6946, upright surfaces: 0.13 inside and 0.04 outside (seen)
	out.Frame += (s.CurbR + 0.17*rvalue.RSI).U().Times(side)
	out.U = (out.Center + out.Edge + out.Frame).Over(out.Area)
	return out, solved, nil
}

// GlassBlock is the default U of a wall of glass block.
const (
	GlassBlock       = 0.60 * rvalue.UIP
	GlassBlockSource = "IECC, table of default U-factors R303.1.3(1), from memory"
)

// GlassBlockSolar is the default solar heat gain factor of glass block: IECC, table
// R303.1.3(3), from memory.
const GlassBlockSolar = 0.6
