// Package material is the catalogue of what houses of 1900 to 2025 in North
// America and Europe are made of: how far each material resists heat, and who
// says so.
//
// # What it holds
//
// [Default] is a table of one row a material, embedded as catalogue.csv: its
// names, its density, a design conductivity or the resistance of the pieces it
// is sold in, how far the figure may be off, what it lets through of water
// vapour, and the key of its source ([Citation]). [Catalogue.Find] looks a name
// up as people write it. [FindBatt] knows the fibrous batts that are sold by
// their label, [Squeeze] what one resists in a bay too shallow for it, and
// [Material.Factor] what the cold does to a conductivity.
//
// # Where the figures come from
//
// No one source has them all, and where several have one they differ; the table
// takes one figure for each material and says in its note what another says.
// Conductivities are design values of dry, new or aged material at a mean of
// about 24 °C (75 °F), as a North American label states them; European rows
// (ISO 10456, EN ISO 10077-2, the Austrian list) are design values at 10 °C,
// which for masonry, glass and metal makes no difference that would show. A
// source that was not seen is called "from memory", a fact of the trade without
// one "common practice, no source".
//
// # How far to trust a figure
//
// [Material.Spread] is the relative half-range: that of the source's own range,
// but not less than 5 %; 20 % for solid wood, whose conductivity scatters so
// about its density (Wood Handbook); 30 % for masonry and stone; 50 % for
// hollow-backed siding, which the handbook's own note gives.
//
// # What it does not cover
//
// Facings and films are no part of a batt or board. Wet material, ageing beyond
// the stated age, air that moves through or behind a layer, and the difference
// between makers are not computed. No row is a specification of a product: where
// a label or data sheet is at hand, write its value.
package material
