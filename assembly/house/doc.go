// Package house reads the house file, the description of a house that people
// write by hand, and computes what it describes.
//
//	h, err := house.Decode("larkspur.toml", data) // Errors: every mistake, with its place
//	report, err := h.Rank()                       // the ranking, and all it rests on
//
// # The file
//
// It is TOML, and every quantity in it a text with its unit ("31 ft x 8 ft 6
// in", "0.3 W/(m·K)"), in inch-pound or metric units as they come. A bare
// number where a unit is needed is a mistake. The folder examples has houses to
// copy from; [Schema] is a JSON Schema of it for editors.
//
//	name      what the house is called
//	place     county and state, or a town, whose climate zone is looked up
//	zone      the climate zone instead, or where it is not that of the list
//	edition   of the energy code; 2021 unless given
//	altitude  air is thinner high up; sea level unless given
//	units     of the output, "ip" or "si"; ip unless given
//	films     whose surface films, "ashrae" or "iso 6946", and whose method
//	soil      beside basements: clay or silt unless given
//	cold      true: conductivities at the layers' own mean temperatures
//	numeric   true: assemblies of no method of their own are solved in their
//	          sections (package section), not by a hand method
//	notes     kept, not computed
//	indoors   temperature, humidity
//	outdoors  temperature, wind: for the temperatures inside the parts;
//	          design: for the size of the heater, estimated unless given
//	leakage   volume; ach50, flow50 or tightness; storeys, shelter
//	fuel      kind, plant, price, per, currency; efficiency, or a heat pump's cop,
//	          hspf or hspf2, or cop_at, a list of outdoors, cop and capacity
//	living    floor, bedrooms; or gains: heat for nothing
//	cooling   seer
//	months    twelve monthly mean temperatures, of a place no list has; its
//	          zone follows from them unless given
//
//	[material.NAME]  conductivity, or resistance with or without a thickness;
//	                 source; class, density, aliases
//	[assembly.NAME]  faces ("wall", "ceiling", "floor", "roof 4/12"); layers, in
//	                 the notation of package assembly; method
//	[window.NAME]    kind ("window", "skylight", "door"); u, or glass and frame
//	                 and operable, or the leaf of a door
//	[buffer.NAME]    an unheated space: to_outdoors, a list of areas with their
//	                 assembly, window or u; to_ground, a list of the walls and
//	                 the floor that it has in the ground; volume, air_change
//	[[part]]         name; assembly, u or window; area with the openings in it;
//	                 openings, a list of name, window, size or area, count;
//	                 toward ("outdoors", "ground", "buffer NAME"); kind, where
//	                 it does not follow; perimeter and edge of a slab; perimeter
//	                 and depth of a basement floor; depth of a basement wall
//	[section.NAME]   a section drawn as DecodeDrawing says: air, piece, face,
//	                 flank (which may name an assembly), point; notes
//	[[bridge]]       name, length, psi: an edge that loses heat; or section, one
//	                 of the file or of package section's catalogue, that gives
//	                 psi, and by which dimensions
//
// What is left out is filled in, and listed in [House].Defaults with the reason.
//
// # Mistakes
//
// Decode reports all mistakes of a file at once, in order, each with line,
// column and the source line: unknown keys with the nearest known one, values
// of the wrong kind, units, names that refer to nothing, and mistakes inside
// layer texts at their character. After a slip in TOML itself it goes on where
// the next value or line can be told apart.
//
// # What is computed
//
// [House.Rank] evaluates each assembly for what it faces (outdoors, the still
// air of a buffer, the ground), holds each part against the energy code of the
// zone, and ranks them (package envelope). A slab on the ground counts by the
// F-factor of its edge, spread over its area; basement walls and floors by ISO
// 13370. What the code asks of a basement wall is asked of the wall
// itself, films on both faces; how far it is behind is reckoned through the
// same ground. A part toward a buffer is judged as if it faced outdoors. Where
// the place or its months are known, a mean year's heat, fuel, money and CO2
// (package season) and the heat loss on a cold day are computed too.
//
// # Drawn sections
//
// [DecodeDrawing] reads a plane section drawn in a file of its own, in the same
// manner; [DrawingSchema] is its schema.
//
// # What it does not cover
//
// Moisture; crawl spaces as buffers of their own beyond what [buffer.NAME] can say;
// heated slabs. A window's U-factor by glass and frame is a table's, not that of the
// window at hand.
package house
