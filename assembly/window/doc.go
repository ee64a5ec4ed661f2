// Package window computes windows from what is really in the opening: panes,
// coatings, gases, edge, frame and tilt.
//
// # What it computes
//
// [Parse] reads a [Glazing], indoors first. [Glazing.Declared] gives its U at the
// centre by the declared conditions of EN 673 and ISO 10292, what labels and
// tables print.
package window
