// Package window computes windows from what is really in the opening: panes,
// coatings, gases, edge, frame and tilt; and what to order for it.
//
// # Glass
//
// A [Glazing] is a stack of panes and gaps, indoors first like the layers of an
// assembly; [Parse] reads one from text. Its U at the centre comes by two routes
// that must not be mixed:
//
//   - [Glazing.Declared]: the fixed conditions of EN 673 and ISO 10292, what labels
//     and tables print.
//   - [Glazing.Design]: real temperatures, wind and tilt, with the temperatures of
//     the panes found so that each film, gap and pane passes the same heat. Gaps by
//     ISO 15099 clause 5.3.3 at any tilt, the heat flowing up or down.
//
// # Whole windows
//
// A [Window] weighs glass, edge and frame by the areas that its size, frame, lights
// and bars make: [Window.Declared] by ISO 10077-1, [Window.Design] by the handbook's
// centre, edge and frame. [Door], [Skylight] and [GlassBlock] go beside it.
// [Window.Faces] tells how cold each is towards the room, [Window.Steps] what a
// renovator can do to the glass and what each step gains.
//
// # Orders
//
// [Glazing.Order] turns readings of an opening into a size to order with its weight,
// blocks, bead and sealant. [Safety] and [Escape] are the rules of the International
// Residential Code on safety glass and escape openings, by edition, each with the
// fact that tripped it. The local code decides.
//
// # How right it is
//
// testdata/window_SCORE.md has every published table at hand with the cells that are
// met, and the reason for each that is not. Standards' formulas are from memory where
// the comment on them says so.
//
// # Assumptions
//
// No sun on the glass, and surroundings at air temperature outside: a clear sky takes
// more from glass that faces it. Gaps are closed and of even width. The published U of
// frames and edges are those of upright windows in winter, and serve at any tilt.
// Solar gain factors are looked up, not computed.
//
// # What it does not cover
//
// Draughts, blinds and shutters, sealed units bowed by altitude or cold, the edge of a
// vacuum unit (whose figures of the edge are those of any unit here, and too good), the
// strength of glass against wind and snow.
package window
