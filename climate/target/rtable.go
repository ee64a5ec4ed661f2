package target

// pair is cavity R and continuous R, both in h·ft²·°F/Btu.
type pair struct{ cavity, ci float64 }

// rRow is one zone's row of an R-value table, R in h·ft²·°F/Btu, depth in ft.
// A nil list or a zero asks nothing.
type rRow struct {
	ceiling         float64
	wall            []pair // any one
	massOut, massIn float64
	floor           float64
	basement        []pair // any one
	slab, depth     float64
	crawl           []pair // any one
}

type rTable struct {
	from, to        Edition // inclusive
	page            string  // where the rows were seen, or why they were not
	mark, depthMark Mark
	fill            bool // note g: a floor may instead fill its cavity, from band5 on
	rows            [bands]rRow
}

// Recurring cells. "5/13" in the code's basement column is R-5 continuous or
// R-13 in the cavity (note c).
var (
	wall13      = []pair{{13, 0}}
	wall21      = []pair{{21, 0}}
	wall20      = []pair{{20, 0}, {13, 5}}
	wall20c5    = []pair{{20, 5}, {13, 10}}
	wall13c0    = []pair{{13, 0}, {0, 10}}
	wall20c0    = []pair{{20, 0}, {13, 5}, {0, 15}}
	wall30c0    = []pair{{30, 0}, {20, 5}, {13, 10}, {0, 20}}
	below5x13   = []pair{{0, 5}, {13, 0}}
	below10x13  = []pair{{0, 10}, {13, 0}}
	below15x19  = []pair{{0, 15}, {19, 0}}
	below15x19c = []pair{{0, 15}, {19, 0}, {13, 5}}
)

const pnnl = "PNNL Building America Solution Center, \"2009-2021 IECC and IRC Minimum Insulation Requirements for New Homes\""

// rTables holds the residential R-value tables. Rows run from zone 1 to zones 7
// and 8; columns: ceiling, wood wall, mass wall outside and inside, floor,
// basement wall, slab edge, its depth, crawl-space wall.
var rTables = [...]rTable{
	// IECC 2009, seen on the PNNL page except the slab depth. Zone 3 agrees with
	// professionalinspector.com, zones 6 and 7 with Wisconsin Table 322.31-1.
	{from: Edition2009, to: Edition2009, page: pnnl, mark: Seen, depthMark: FromMemory, fill: true, rows: [bands]rRow{
		{30, wall13, 3, 4, 13, nil, 0, 0, nil},
		{30, wall13, 4, 6, 13, nil, 0, 0, nil},
		{30, wall13, 5, 8, 19, below5x13, 0, 0, below5x13},
		{38, wall13, 5, 10, 19, below10x13, 10, 2, below10x13},
		{38, wall20, 13, 17, 30, below10x13, 10, 2, below10x13},
		{49, wall20, 15, 19, 30, below15x19, 10, 4, below10x13},
		{49, wall21, 19, 21, 38, below15x19, 10, 4, below10x13},
	}},
	// IECC 2012, 2015 and 2018: identical opaque rows, seen on the PNNL page and,
	// every row and depth, in Philadelphia's Table R-N1102.1.2.
	{from: Edition2012, to: Edition2018, page: pnnl, mark: Seen, depthMark: Seen, fill: true, rows: [bands]rRow{
		{30, wall13, 3, 4, 13, nil, 0, 0, nil},
		{38, wall13, 4, 6, 13, nil, 0, 0, nil},
		{38, wall20, 8, 13, 19, below5x13, 0, 0, below5x13},
		{49, wall20, 8, 13, 19, below10x13, 10, 2, below10x13},
		{49, wall20, 13, 17, 30, below15x19, 10, 2, below15x19},
		{49, wall20c5, 15, 20, 30, below15x19, 10, 4, below15x19},
		{49, wall20c5, 19, 21, 38, below15x19, 10, 4, below15x19},
	}},
	// IECC 2021, second and later printings, seen on the PNNL page.
	{from: Edition2021, to: Edition2021, page: pnnl + ", second and later printings", mark: Seen, depthMark: Seen, fill: true, rows: [bands]rRow{
		{30, wall13c0, 3, 4, 13, nil, 0, 0, nil},
		{49, wall13c0, 4, 6, 13, nil, 0, 0, nil},
		{49, wall20c0, 8, 13, 19, below5x13, 10, 2, below5x13},
		{60, wall30c0, 8, 13, 19, below10x13, 10, 4, below10x13},
		{60, wall30c0, 13, 17, 30, below15x19c, 10, 4, below15x19c},
		{60, wall30c0, 15, 20, 30, below15x19c, 10, 4, below15x19c},
		{60, wall30c0, 19, 21, 38, below15x19c, 10, 4, below15x19c},
	}},
	// IECC 2024, from memory, low confidence. The mass-wall columns are carried
	// over from 2021 (see carried), because nothing was found for them.
	{from: Edition2024, to: Edition2024, page: "no page with the table found", mark: LowConfidence, depthMark: LowConfidence, rows: [bands]rRow{
		{30, wall13c0, 3, 4, 13, nil, 0, 0, nil},
		{38, wall13c0, 4, 6, 13, nil, 0, 0, nil},
		{38, wall20c0, 8, 13, 19, below5x13, 10, 2, below5x13},
		{49, wall30c0, 8, 13, 19, below10x13, 10, 3, below10x13},
		{49, wall30c0, 13, 17, 30, below15x19c, 10, 3, below15x19c},
		{49, wall30c0, 15, 20, 30, below15x19c, 10, 4, below15x19c},
		{49, wall30c0, 19, 21, 38, below15x19c, 10, 4, below15x19c},
	}},
}

// rTableOf returns the table of a known edition.
func rTableOf(e Edition) *rTable {
	for i := range rTables {
		if t := &rTables[i]; t.from <= e && e <= t.to {
			return t
		}
	}
	return nil // unreachable for an edition that check accepts; a test walks all of them
}

// cell returns the options of an opaque component. Total options name one R for
// the whole part, wherever in it the insulation sits.
func (row rRow) cell(c Component, inside bool) []Option {
	total := func(r float64) []Option {
		if r == 0 {
			return nil
		}
		return []Option{totalR(r)}
	}
	switch c {
	case Ceiling, CathedralCeiling:
		return total(row.ceiling)
	case Wall:
		return options(row.wall)
	case MassWall:
		if inside {
			return total(row.massIn)
		}
		return total(row.massOut)
	case Floor:
		return total(row.floor)
	case BasementWall:
		return options(row.basement)
	case CrawlWall:
		return options(row.crawl)
	case Slab:
		return total(row.slab)
	}
	return nil
}
