package climate

import (
	"fmt"
	"strings"
)

// County is a US county or what takes its place: a parish, borough, census area,
// independent city, municipio, island. The zero County is none.
type County struct {
	FIPS  int    // number of the Census Bureau, of five digits, the first may be a zero
	Name  string // "St. Louis"
	Kind  string // "County", "Parish", "city" …; empty for the District of Columbia
	State string // postal code, "MN"

	// Zone15 is the zone in the editions of the code from 2006 to 2018, Zone21
	// that from 2021 on. The warm-humid mark is a stand-in, see the package comment.
	Zone15, Zone21 Zone

	Lat, Lon float64 // middle of the area, degrees north and east

	// Note says what is uncertain about the zones, and how the name that was asked
	// for led here when it is not this county's own. Mostly empty.
	Note string
}

// String returns "St. Louis County, MN", which [Parse] reads back.
func (c County) String() string {
	if c.Kind == "" {
		return c.Name + ", " + c.State
	}
	return c.Name + " " + c.Kind + ", " + c.State
}

// Code returns the FIPS number in its five digits, "01001".
func (c County) Code() string { return fmt.Sprintf("%05d", c.FIPS) }

// Zone returns the zone by the IECC edition of that year: 2006, 2009, 2012, 2015,
// 2018, 2021 or 2024. Another year is an error that lists these.
func (c County) Zone(edition int) (Zone, error) {
	newer, err := newMap(edition)
	switch {
	case err != nil:
		return Zone{}, err
	case newer:
		return c.Zone21, nil
	}
	return c.Zone15, nil
}

// state is a state or territory, with a line a county as counties_data.go says.
type state struct {
	code, name     string
	fips           int
	zone15, zone21 string
	rows           string
}

// rowAt returns the line that covers offset i of the rows, and its bounds.
func (s *state) rowAt(i int) (row string, from, to int) {
	from = strings.LastIndexByte(s.rows[:i], '\n') + 1
	to = from + strings.IndexByte(s.rows[from:], '\n')
	return s.rows[from:to], from, to
}

// nameOf returns the name in a row.
func nameOf(row string) string {
	row = row[4:] // past the number
	return row[:strings.IndexByte(row, '|')]
}

// townElsewhere reports whether a town that is named like the county of a row lies in
// another county, as Houston is not in Houston County.
func townElsewhere(row string) bool { return row[3] == '~' }

// number returns the FIPS number in a row.
func (s *state) number(row string) int {
	return s.fips*1000 + int(row[0]-'0')*100 + int(row[1]-'0')*10 + int(row[2]-'0')
}

// decode reads a row. The table is our own and a test reads all of it, so a row
// that is not in order cannot occur.
func (s *state) decode(row string) County {
	name := nameOf(row)
	place, zones, _ := strings.Cut(row[4+len(name)+1:], "|")
	lat, lon, _ := strings.Cut(place, ",")
	z15, z21 := s.zone15, s.zone21
	if zones != "" {
		z15, z21, _ = strings.Cut(zones, ",")
	}
	fips := s.number(row)
	c := County{
		FIPS: fips, Name: name, Kind: kindOf(fips), State: s.code,
		Zone15: zoneOf(z15), Zone21: zoneOf(z21),
		Lat: hundredths(lat), Lon: hundredths(lon), Note: noteOn(fips),
	}
	if c.Note == "" && (c.Zone15.marks() || c.Zone21.marks()) {
		c.Note = standIn
	}
	return c
}

// hundredths reads "-92.46". strconv would do it too, at three times the cost.
func hundredths(s string) float64 {
	sign, v := 1.0, 0
	for i := range len(s) {
		switch c := s[i]; c {
		case '-':
			sign = -1
		case '.':
		default:
			v = v*10 + int(c-'0')
		}
	}
	return sign * float64(v) / 100
}

// All calls yield for every county, by state code and then by name, until it
// returns false; it is an iter.Seq[County].
func All(yield func(County) bool) {
	for i := range states {
		for row := range strings.SplitSeq(strings.Trim(states[i].rows, "\n"), "\n") {
			if !yield(states[i].decode(row)) {
				return
			}
		}
	}
}
