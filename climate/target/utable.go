package target

// uLine is one line of a U-factor table over several editions.
type uLine struct {
	from, to Edition // inclusive
	c        Component
	inside   bool           // mass wall with more than half its insulation inside
	u        [bands]float64 // Btu/(h·ft²·°F), zone 1 to zones 7 and 8
	marks    string         // one letter a band: s seen, m from memory, l low confidence
}

// uLines holds the residential U-factor tables of opaque parts: Table R402.1.3
// (2009, 2012), R402.1.4 (2015, 2018), R402.1.2 (2021). From memory; no page
// with a whole table was found. The 2021 ceiling 0.024 was seen in Washington
// Administrative Code 51-11R, which covers zones 4C and 5. An amended Idaho table seen in
// notes gives 0.030 with R-38, 0.026 with R-49, 0.060 with R-20 or 13+5 and
// 0.033 with floor R-30: the same pairs.
var uLines = [...]uLine{
	{2009, 2009, Ceiling, false, [bands]float64{0.035, 0.035, 0.035, 0.030, 0.030, 0.026, 0.026}, "mmmmmmm"},
	{2012, 2018, Ceiling, false, [bands]float64{0.035, 0.030, 0.030, 0.026, 0.026, 0.026, 0.026}, "mmmmmmm"},
	{2021, 2021, Ceiling, false, [bands]float64{0.035, 0.026, 0.026, 0.024, 0.024, 0.024, 0.024}, "mmmmsmm"},
	{2024, 2024, Ceiling, false, [bands]float64{0.035, 0.030, 0.030, 0.026, 0.026, 0.026, 0.026}, "lllllll"},

	{2009, 2009, Wall, false, [bands]float64{0.082, 0.082, 0.082, 0.082, 0.057, 0.057, 0.057}, "mmmmmmm"},
	{2012, 2012, Wall, false, [bands]float64{0.082, 0.082, 0.057, 0.057, 0.057, 0.048, 0.048}, "mmmmmmm"},
	{2015, 2018, Wall, false, [bands]float64{0.084, 0.084, 0.060, 0.060, 0.060, 0.045, 0.045}, "mmmmmmm"},
	{2021, 2021, Wall, false, [bands]float64{0.084, 0.084, 0.060, 0.045, 0.045, 0.045, 0.045}, "mmmmmmm"},
	{2024, 2024, Wall, false, [bands]float64{0.084, 0.084, 0.060, 0.045, 0.045, 0.045, 0.045}, "lllllll"},

	{2009, 2009, MassWall, false, [bands]float64{0.197, 0.165, 0.141, 0.141, 0.082, 0.060, 0.057}, "mmmmmmm"},
	{2012, 2021, MassWall, false, [bands]float64{0.197, 0.165, 0.098, 0.098, 0.082, 0.060, 0.057}, "mmmmmmm"},
	// 2009 sends zones 5 to 8 to the frame-wall line.
	{2009, 2009, MassWall, true, [bands]float64{0.17, 0.14, 0.12, 0.10, 0.057, 0.057, 0.057}, "mmmmmmm"},
	{2012, 2021, MassWall, true, [bands]float64{0.17, 0.14, 0.12, 0.087, 0.065, 0.057, 0.057}, "mmmmmmm"},

	{2009, 2021, Floor, false, [bands]float64{0.064, 0.064, 0.047, 0.047, 0.033, 0.033, 0.028}, "mmmmmmm"},

	// Zone 3: 0.360 in warm-humid counties, see footnotes.
	{2009, 2009, BasementWall, false, [bands]float64{0.360, 0.360, 0.091, 0.059, 0.059, 0.050, 0.050}, "mmmmmmm"},
	{2012, 2021, BasementWall, false, [bands]float64{0.360, 0.360, 0.091, 0.059, 0.050, 0.050, 0.050}, "mmmmmmm"},

	{2009, 2009, CrawlWall, false, [bands]float64{0.477, 0.477, 0.136, 0.065, 0.065, 0.065, 0.065}, "mmmmmmm"},
	{2012, 2021, CrawlWall, false, [bands]float64{0.477, 0.477, 0.136, 0.065, 0.055, 0.055, 0.055}, "mmmmmmm"},
}

// pageCeiling2021 is where the one cell of uLines marked s was seen.
const pageCeiling2021 = "Washington Administrative Code 51-11R, adoption of the 2021 edition"

// uWarmHumid is the basement wall of warm-humid zone 3, which asks no insulation.
const uWarmHumid = 0.360 // Btu/(h·ft²·°F), from memory

// carried reports whether the 2024 value of c stands in from the 2021 edition:
// the R column is the same, and no figure of 2024 was found.
func carried(e Edition, c Component) bool {
	return e == Edition2024 && (c == MassWall || c == Floor || c == BasementWall || c == CrawlWall)
}

// uFactor looks up a line. Nothing found returns zeros.
func uFactor(e Edition, c Component, inside bool, b band) (u float64, m Mark) {
	if c == CathedralCeiling {
		c = Ceiling // the table has one line for both
	}
	weaken := carried(e, c)
	if weaken {
		e = Edition2021
	}
	for _, l := range uLines {
		if l.c == c && l.inside == (inside && c == MassWall) && l.from <= e && e <= l.to {
			m = markOf(l.marks[b])
			if weaken {
				m = LowConfidence
			}
			return l.u[b], m
		}
	}
	return 0, 0
}
