// Package airspace computes what an enclosed air space resists: still or in
// slow convection between two flat parallel faces, ordinary or bright, at any
// tilt.
//
// # What it computes
//
// Heat crosses an air space by radiation and by convection side by side:
//
//	R = 1/(hc + E·hr0),  hr0 = 4σTm³,  E = 1/(1/ε1 + 1/ε2 − 1)
//
// with the mean temperature Tm and the emittances ε of the faces.
// [Space.Resistance] offers two ways to the convective coefficient hc:
//
//   - [Correlated], the default: curves of our own, fitted to the table of plane
//     air spaces of ASHRAE Handbook—Fundamentals, whose measurements are
//     Robinson and Powlitch, NBS report 3030.
//   - [ISO6946]: the closed form in the annex on airspaces of ISO 6946, which
//     gives all 24 cells of that standard's own table at the printed digits.
//
// # The fit, and how far to trust it
//
// The table's convection, recovered from its printed resistances, is in each of
// its five positions a function of the Rayleigh number alone, so that one curve a
// position fits it. The curves were fitted to the 400 cells at 0 °F and 50 °F; the
// 300 at −50 °F and 90 °F served only as a check. The whole table is from memory
// (one cell was seen); a test shows that it agrees with itself. Largest and
// root-mean-square difference from the printed R, in %, over all 700 cells:
//
//	heat flow     ISO 6946      published    our curves   on the 300 cells
//	                            correlation               not fitted
//	level, up     32.6  12.7    26.3   9.2    1.1  0.5    1.1  0.5
//	45°, up       19.3   7.0    21.2   7.5    1.9  0.8    1.9  0.9
//	upright       25.8   9.2     7.4   2.7    2.0  0.6    2.0  0.8
//	45°, down    207.5  59.6    18.0   6.4    1.3  0.4    1.3  0.4
//	level, down   15.5   5.2    56.8  12.0    2.3  0.6    1.5  0.6
//
// The published correlations are those of Hollands, Unny, Raithby and Konicek
// (1976) up, ElSherbiny, Raithby and Hollands (1982) upright, the sine of Arnold,
// Catton and Edwards (1976) obliquely down, and still air straight down; all are
// for tall or wide layers with ideal edges. The measured panel had edges: that is
// our guess at why the table's level space with the heat flowing down, where the
// air should be still, carries up to 76 % more than still air does, and why its
// level space with the heat flowing up begins to convect gradually and well below
// Ra = 1708. ISO 6946 knows three directions only, and counts a 45° space as level.
//
// A table of foil-faced spaces that was seen, and that nothing was fitted to (45
// cells, 13 mm, 23 °C), is met within 5.0 %, 2.2 % rms; by ISO 6946 within 23.8 %,
// 10.6 % rms.
//
// # Assumptions
//
//   - Between the five positions the curves are joined by the cosine of the tilt
//     with the heat flowing up and by its sine with the heat flowing down, as in
//     the correlations of Hollands and of Arnold. Nothing here was measured there.
//   - Spaces deeper than 3.5 in have the convection of 3.5 in (the handbook's
//     advice, from memory, for heat flowing up or sideways).
//   - Below 0.5 in the curves tend to still air. Differences above 30 °F, and
//     temperatures beyond −50 °F to 90 °F, are extrapolated by the Rayleigh number.
//   - Dry air at sea-level pressure, by ISO 15099's linear properties.
//   - The faces are smooth and parallel and the edges tight. Leaky spaces resist
//     less, and dust on an upward-facing foil makes it an ordinary face.
//
// # What it does not cover
//
// Sealed glazing and gases other than air (package window), spaces above 300 mm,
// air that wind or a fan moves. Several sheets make several spaces, one Space
// each. The temperatures of a space inside an assembly are found by package
// assembly.
package airspace
