// Package target says what the energy code, or the government's advice for
// older houses, asks of one part of an envelope, and by how much a part misses.
//
// # What it computes
//
// [For] returns the [Requirement] of a component in a climate zone and an
// edition of the residential International Energy Conservation Code (IECC 2009
// to 2024): the largest assembly U-factor, the R-value options of which any one
// will do, and the footnotes that change a value. [Requirement.Judge] holds a
// part against it by either path. [Advise] returns what ENERGY STAR's
// "Recommended Home Insulation R-Values" tells the owner of an existing
// wood-framed house to add. [Tightness] returns the blower-door limit.
//
// # How far to trust a value
//
// Every value carries a [Mark]: seen on a page (the Source text names it), from
// memory, low confidence, or derived by us. The R-value tables of 2009 to 2021
// were seen. The U-factor tables were not: they come from memory, and the tests
// pair them with the R-value tables by computing the wood walls. The whole 2024
// edition is low confidence ([Edition.LowConfidence]).
//
// # Assumptions
//
//   - Zone 0 reads the row of zone 1; marine zone 4 (4C) reads the row of zone 5.
//   - A zone written without its letter counts as not marine; a note says so.
//   - A door counts as fenestration, as the code defines it.
//   - U-factors are compared at the decimals the table prints: three for opaque
//     parts, two for fenestration, as a window label does.
//   - The residential tables have no U-factor row for slabs. The F-factor given
//     for a slab is our reading of another table, never the code's own limit.
//
// # What it is not
//
// States and cities amend the model code, and this package knows none of their
// amendments. The code is written for new work; what it asks when an old house
// is altered, and whether a figure here applies at all, the local code official
// decides. Nothing here is legal advice. Not covered: commercial buildings,
// log walls, the whole-house UA and performance paths, mechanical systems, and
// the rest of the code.
package target
