// Package envelope sums what separates a house from outdoors and ranks it: the
// parts with their openings cut out, the edges that bridge them, the air that
// leaks, each as a conductance UA toward outdoors.
//
// # Three answers
//
// An [Envelope] is plain data; [Envelope.Check] says all that is wrong with it
// and [Envelope.Rank] makes a [Ranking], whose rows carry three answers that
// are never blurred:
//
//   - what loses most: its share of the whole UA;
//   - what is leakiest for its size: its U over the mean U;
//   - what is furthest behind: the UA that would go if it just met its target.
//     This one names the weakest link, and inside it the path that carries most
//     heat or the layer that withholds most. Where nothing is behind, what
//     loses most is named instead, and the ranking says so.
//
// Targets come from the caller: this package knows no climate and no code.
// Rows are summed in the order in which they stand, so that adding them up
// gives the total to the last bit.
//
// # What a part faces
//
//   - Outdoors: nothing is to be done.
//   - An unheated space: name a [Buffer]. Its temperature follows from its own
//     heat balance (ISO 13789), and the part counts with the factor b that
//     comes of it. [Row] keeps the part's own U, b, and UA = U·A·b.
//   - The ground: U is toward outdoors, from [GroundFloor] or [SuspendedFloor]
//     (ISO 13370), or from a slab edge's F-factor ([SlabEdge], [HeatedSlab];
//     Washington State Energy Code). A slab by its F-factor is either a part,
//     with F·perimeter/area for U, or a [Bridge] of kind Slab.
//
// # Air leakage
//
// [Leakage] is a blower-door figure: a flow, air changes ([ACH50]) or a word
// ([Described]). The flow over the heating season is that divided by a figure
// for region, height and shelter ([Divide], Lawrence Berkeley); where the
// temperature and the wind are known, [LeakageArea] and [BasicFlow] (Sherman
// and Grimsrud, ASHRAE Handbook—Fundamentals) do better. Air is thinner at
// altitude and then carries less ([RelativeDensity]).
//
// # Windows and doors without a label
//
// [DefaultWindow], [DefaultSkylight] and [DefaultDoor] look up what glass and
// frame are worth, with the source. A label is better whenever there is one.
//
// # What it does not cover
//
// Heat storage, sunshine and the seasons; how air that leaks and heat in the
// same part help each other; air between rooms and a buffer; a crawl space
// deeper than half a metre and an unheated basement other than as a Buffer.
// Leakage differs from day to day and the seasonal figure is a convention;
// heat through the ground is the annual mean.
package envelope
