// Package surface gives the thermal resistance of the air film at a surface,
// by the direction of the heat, the tilt, the emittance and the wind.
//
// # What it computes
//
// [Still] is the film of a surface in still air: the inner face of any part,
// an outer face in an attic, a crawl space or a garage, or the wall behind a
// well-ventilated cladding (ISO 6946 gives such an outer face the inside value).
// [Outside] is the film of an outer face in the wind.
//
// # By which source
//
// [Set] chooses between two sets that must not be mixed in one assembly:
//
//   - [ASHRAE], the default: ASHRAE Handbook—Fundamentals, surface film
//     resistances by position and emittance. From memory, but for,
//     which were seen in Washington Administrative Code
//     51-11-0526. The printed resistances come back as printed; between them the
//     film's conductance is interpolated, in tilt and in emittance.
//   - [ISO6946]: the design values 0.10, 0.13 and 0.17 m²·K/W inside and 0.04
//     outside (seen), and for other emittances or winds the formulas of its annex
//     on surface resistances (from memory).
//
// # Assumptions
//
// Films are taken at room temperature (a surface a few degrees from its air, as
// the tables are). The outer film in the wind belongs to ordinary, not bright,
// surfaces.
//
// # What it does not cover
//
// The film at glass (package window has its own), the films of moisture checks
// (which are higher on purpose), forced air from a register, sun on the surface.
package surface
