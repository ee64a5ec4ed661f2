package target

import "github.com/coldseam/coldseam/rvalue"

// fLine is one line of the fenestration columns over several editions.
type fLine struct {
	from, to Edition // inclusive
	v        [bands]float64
	marks    string // one letter a band, as in uLine
	page     string // where the cells marked s were seen
}

const (
	pages2009 = "professionalinspector.com, \"2009 IECC\" (zone 3), and Wisconsin Table 322.31-1 (zones 6 and 7)"
	pageBoise = "City of Boise, \"Prescriptive Residential Energy Code Compliance\""
	pagePhila = "City of Philadelphia, Table R-N1102.1.2"
)

// windowU holds the largest U of vertical fenestration, Btu/(h·ft²·°F), from
// memory but for the cells marked s, seen on the page that the line names.
// Pennsylvania's amended 2018 table has the same 0.32 in zone 4 and 0.30 in 5-8,
// but 0.35 in zone 3. Zone 1 in 2012 to 2018 is the U-factor table's: the
// R-value table asks nothing there (notAsked).
var windowU = [...]fLine{
	{2009, 2009, [bands]float64{1.20, 0.65, 0.50, 0.35, 0.35, 0.35, 0.35}, "mmsmmss", pages2009},
	{2012, 2015, [bands]float64{0.50, 0.40, 0.35, 0.35, 0.32, 0.32, 0.32}, "mmmmsmm", pageBoise},
	{2018, 2018, [bands]float64{0.50, 0.40, 0.32, 0.32, 0.30, 0.30, 0.30}, "mmmmmmm", ""},
	{2021, 2021, [bands]float64{0.50, 0.40, 0.30, 0.30, 0.30, 0.30, 0.30}, "mmmmmmm", ""},
	{2024, 2024, [bands]float64{0.50, 0.40, 0.30, 0.30, 0.28, 0.28, 0.27}, "lllllll", ""},
}

// skylightU holds the largest U of skylights, Btu/(h·ft²·°F).
var skylightU = [...]fLine{
	{2009, 2009, [bands]float64{0.75, 0.75, 0.65, 0.60, 0.60, 0.60, 0.60}, "mmsmmss", pages2009},
	{2012, 2018, [bands]float64{0.75, 0.65, 0.55, 0.55, 0.55, 0.55, 0.55}, "sssssss", pagePhila},
	{2021, 2021, [bands]float64{0.75, 0.65, 0.55, 0.55, 0.55, 0.55, 0.55}, "mmmmmmm", ""},
	{2024, 2024, [bands]float64{0.60, 0.60, 0.53, 0.53, 0.50, 0.50, 0.50}, "lllllll", ""},
}

// shgc holds the largest solar heat gain coefficient of glazed fenestration, 0
// where nothing is asked. In 2021 the 0.40 of zone 5 does not bind marine 4
// (see Requirement.fenestration). 2024 is missing.
var shgc = [...]fLine{
	{2009, 2009, [bands]float64{0.30, 0.30, 0.30, 0, 0, 0, 0}, "mmsmmmm", pages2009},
	{2012, 2018, [bands]float64{0.25, 0.25, 0.25, 0.40, 0, 0, 0}, "sssssss", pagePhila},
	{2021, 2021, [bands]float64{0.25, 0.25, 0.25, 0.40, 0.40, 0, 0}, "mmmmmmm", ""},
}

// skylightSHGC is what a skylight in zones 1 to 3 may have instead of the
// column's value. Seen as a footnote of Philadelphia's Table R-N1102.1.2.
const skylightSHGC = 0.30

// Footnote of 2021: vertical fenestration in marine 4 and zones 5 to 8 may be
// 0.32 above 4000 ft or in windborne-debris regions. Seen in Washington
// Administrative Code 51-11R-40211.
const (
	highU        = 0.32
	highAltitude = 4000 * rvalue.Foot
)

// Impact-rated fenestration in 2009, zones 2 and 3. From memory.
const (
	impactU2 = 0.75
	impactU3 = 0.65
)

// fenLine looks up a line. Nothing found, or a cell of 0, returns zeros.
func fenLine(lines []fLine, e Edition, b band) (v float64, m Mark, page string) {
	for _, l := range lines {
		if l.from <= e && e <= l.to && l.v[b] != 0 {
			return l.v[b], markOf(l.marks[b]), l.page
		}
	}
	return 0, 0, ""
}

// notAsked reports the cell in which the R-value table has NR for vertical
// fenestration although the U-factor table has a figure.
func notAsked(e Edition, b band) bool {
	return b == band1 && e >= Edition2012 && e <= Edition2018
}
