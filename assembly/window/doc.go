// Package window computes windows from what is really in the opening: panes,
// coatings, gases, edge, frame and tilt.
//
// # What it computes
//
// A [Glazing] is a stack of panes and gaps, indoors first. Its U at the centre of
// glass comes by two routes that must not be mixed:
//
//   - [Glazing.Declared]: the fixed conditions of EN 673 and ISO 10292, what labels
//     and tables print.
//   - [Glazing.Design]: real temperatures, wind and tilt, with the temperatures of
//     the panes found so that each film, gap and pane passes the same heat.
//
// How near both come to published tables is recorded in testdata/window_SCORE.md.
package window
