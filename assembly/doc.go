// Package assembly computes what a layered and framed building assembly
// resists, air to air: a wall of studs, batts and sheathing with its surface
// films, a ceiling, a floor, a roof.
//
// # Two levels
//
// An [Assembly] is the plain model: layers from indoors to outdoors, each of
// one or more shares of area side by side with a resistance each. The hand
// methods are a few lines on it ([Assembly.ParallelPath],
// [Assembly.IsothermalPlanes], [Assembly.Combined]), and [Assembly.Prepare]
// makes the parallel path fit for a loop.
//
// A [Spec] is the same as somebody writes it, in the layer notation that
// [Parse] reads:
//
//	gypsum 1/2 in + 2x4 @ 16 in (fiberglass R-13) + osb 7/16 in + vinyl siding
//
// [Spec.Evaluate] puts it into a [Setting]: it adds the surface films, looks
// up framing factors, squeezes batts into their bays, lets air spaces find
// their own temperatures, and returns a [Result] with every method, the one
// that is called effective and why, and by layer and path the resistance, the
// share of the heat, the temperatures, and what one more unit of resistance
// there would gain.
//
// # Sources
//
// ASHRAE Handbook—Fundamentals 2021, chapter 27 (parallel path, isothermal
// planes, zone methods and when each is advised) and ISO 6946 (combined
// method, corrections, tapered layers, unheated spaces). Each function names
// its own.
//
// # What it does not cover
//
// Heat storage, air moving through the assembly, moisture, sunshine, and the
// edges where assemblies meet; thermal bridges of metal beyond studs need a
// numeric answer.
package assembly
