// Package envelope sums what separates a house from outdoors and ranks it: the
// parts with their openings cut out, the edges that bridge them, the air that
// leaks, each as a conductance UA, and of each three answers that are never
// blurred: what loses most, what is leakiest for its size, and what is
// furthest behind the target it is asked to meet, which names the weakest
// link.
//
// An [Envelope] is plain data; [Envelope.Rank] does the rest. A part toward an
// unheated space counts with the help of that space, whose temperature follows
// from its own heat balance ([Buffer]). The ground is met by an edge's
// F-factor ([SlabEdge]) or by ISO 13370 ([GroundFloor]). Leaking air is known
// by a blower-door figure or a word ([Leakage]).
//
// # What it does not cover
//
// Heat storage, sunshine and the seasons; air that leaks differs from day to
// day and the seasonal figure is a convention; heat through the ground is the
// annual mean.
package envelope
