// Package climate says where a house stands: the climate zone of its county, the
// monthly normals of the nearest weather station, degree days at any base, bins and
// design temperatures, the air, its moisture and the ground.
//
//	county, err := climate.Parse("St. Louis County, MN") // Zone15 7, Zone21 7
//	spot := county.Spot()
//	weather, err := climate.Nearest(spot)                // Duluth's normals, 87 km
//	year, err := weather.Normals.Prepare()
//	dd, err := year.Year(rvalue.FromFahrenheit(60))       // heating, cooling
//
// # Zones
//
// [Parse], [Find] and [ByFIPS] give each of the 3231 counties and county equivalents
// of the Census Bureau's list of 2017 its zone by both assignments that are in force:
// that of the code (IECC) from 2006 to 2018, and that from 2021 on. The facts are
// those of the county table of PNNL report PNNL-33270 (2022). Kinds (parish, census
// area), later and earlier numbers and names are from memory.
//
// The table has no warm-humid mark. [Zone].WarmHumid stands for its region
// "Hot-Humid" instead, which is defined by the same two wet-bulb tests as the code's
// mark (IECC 2006, section 301.3.1) but is not the code's list: ask the building
// department where it matters. Territories carry no mark.
//
// Elsewhere [Normals.Zone] applies the published definition to monthly means. Within
// the United States the code's list decides, which is older than the climate in many
// cities: Phoenix has the climate of zone 1 and is listed in 2.
//
// # Normals and degree days
//
// The normals are NOAA's of 281 stations for 1981 to 2010, the newest that could be
// had as data; the years since are warmer. [Nearest] picks one by distance from the
// middle of the county, by elevation and by zone. The county's own elevation is not
// known, so give it where it matters. How well that does is measured by leaving each
// station out in turn: HDD65 comes out within 11 % on average (9 % with the elevation
// known), but misses by half or more in the worst places, where desert meets mountain.
//
// [Prepared.Year] gives degree days at any base from monthly means, by Schoenau and
// Kehrig's formula with Erbs's spread (see [Normals.Prepare]). At 65 °F, against the
// published figures of the 270 stations of the states, HDD is off by 1.4 % on average
// where there are more than 500 °F·d, CDD by 51 °F·d rms; with the published figure
// scaled in, as it is for every station, both come out within 4 °F·d, apart from the
// few that published means, HDD and CDD disagree by among themselves (rounding, 7.2
// at most). At other bases only other years' figures could be compared. Every figure of this paragraph and the
// last is made by a test and stands in testdata/climate_SCORE.md.
//
// A station's coordinates are the normals inventory's, good to some kilometres.
// Moisture in the normals is an estimate from relative humidity in the morning and
// in the afternoon. Yuma has no precipitation in the source.
//
// # What it does not cover
//
// Solar radiation, wind, hour-by-hour weather, any year but the average one, climate
// change, microclimate, and normals outside the United States: there the user states
// twelve monthly means ([Given]). Design temperatures are estimates and say so.
// States and cities may have adopted another edition of the code, or amended it.
//
// The package reads no files and keeps no state; its tables are in the program and
// are searched as they stand, so that importing it costs no time at start-up. Any
// number of goroutines may use it at once.
package climate
