//go:build ignore

// The towns that the weather stations are named for, for gen.go.
package main

import (
	"bytes"
	"cmp"
	"fmt"
	"log"
	"slices"
	"strings"
)

type town struct{ name, state, fips string }

// placed says where a station's town is when the station's name is not just the
// town's, or the airport lies in another county than the town: from general
// knowledge. A name without a number keeps the station's county; an empty list
// means that the station is no town.
var placed = map[string][]town{
	"13873": {{name: "Athens"}},
	"13874": {{name: "Atlanta", fips: "13121"}},
	"27502": {{name: "Barrow"}, {name: "Utqiagvik"}},
	"26415": {{name: "Delta Junction"}},
	"25713": {{name: "St. Paul"}},
	"93721": {{name: "Baltimore", fips: "24510"}},
	"14753": {},
	"94822": {{name: "Rockford"}},
	"93812": {{name: "Cincinnati"}},
	"93738": {},
	"13743": {{name: "Washington"}},
	"14826": {{name: "Flint"}},
	"14836": {{name: "Lansing", fips: "26065"}},
	"14922": {{name: "Minneapolis"}, {name: "St. Paul", fips: "27123"}},
	"14926": {{name: "St. Cloud", fips: "27145"}},
	"54902": {{name: "Des Moines", fips: "19153"}},
	"13988": {{name: "Kansas City", fips: "29095"}},
	"13994": {{name: "St. Louis", fips: "29510"}},
	"24156": {{name: "Pocatello", fips: "16005"}},
	"12975": {{name: "Houston", fips: "48201"}},
	"12916": {{name: "New Orleans", fips: "22071"}},
	"53905": {{name: "Shreveport", fips: "22017"}},
	"14942": {{name: "Omaha"}}, "94918": {},
	"24281": {{name: "Seattle"}}, "24233": {},
	"26510": {{name: "McGrath"}},
	"61705": {{name: "Pago Pago"}},
	"11641": {{name: "San Juan", fips: "72127"}},
	"94789": {}, "14732": {},
	"94728": {{name: "New York", fips: "36061"}},
	"13723": {{name: "Greensboro"}, {name: "High Point"}, {name: "Winston-Salem", fips: "37067"}},
	"93729": {},
	"14755": {}, "24235": {},
	"13891": {{name: "Knoxville", fips: "47093"}},
	"13877": {{name: "Bristol"}, {name: "Kingsport"}, {name: "Johnson City", fips: "47179"}},
	"14852": {{name: "Youngstown", fips: "39099"}},
	"14711": {{name: "Harrisburg"}, {name: "Middletown"}},
	"13739": {{name: "Philadelphia", fips: "42101"}},
	"14777": {{name: "Wilkes-Barre"}},
	"14765": {{name: "Providence", fips: "44007"}},
	"13883": {{name: "Columbia", fips: "45079"}},
	"03870": {{name: "Greenville", fips: "45045"}, {name: "Spartanburg"}},
	"13733": {{name: "Lynchburg", fips: "51680"}},
	"13740": {{name: "Richmond", fips: "51760"}},
	"03860": {{name: "Huntington", fips: "54011"}},
	"23023": {{name: "Midland"}, {name: "Odessa", fips: "48135"}},
	"13958": {{name: "Austin"}}, "13904": {},
	"13960": {{name: "Dallas"}}, "03927": {{name: "Fort Worth", fips: "48439"}},
	"13782": {}, "93134": {}, "23234": {}, "23272": {{name: "San Francisco"}}, "13724": {},
}

func townsOf(stations []station, counties []county) []town {
	var out []town
	for _, s := range stations {
		if s.fips == "0" {
			continue // no county to name
		}
		list, ok := placed[s.wban]
		if !ok {
			name, _, _ := strings.Cut(s.name, " AP")
			list = []town{{name: name}}
		}
		for _, t := range list {
			t.state, t.fips = s.state, cmp.Or(t.fips, fmt.Sprintf("%05s", s.fips))
			if !slices.ContainsFunc(counties, func(c county) bool { return c.fips == t.fips && c.state == t.state }) {
				log.Fatalf("town %v is in no county of its state", t)
			}
			out = append(out, t)
		}
	}
	slices.SortFunc(out, func(a, b town) int {
		return cmp.Or(cmp.Compare(a.state, b.state), cmp.Compare(a.name, b.name))
	})
	return out
}

func writeTowns(towns []town) {
	var b bytes.Buffer
	fmt.Fprintf(&b, head, townOrigin)
	b.WriteString("// towns holds name, state and county of the towns that weather stations are named for.\nvar towns = [...]town{\n")
	for _, t := range towns {
		fmt.Fprintf(&b, "{%q, %q, %s},\n", t.name, t.state, strings.TrimLeft(t.fips, "0"))
	}
	b.WriteString("}\n")
	write("towns_data.go", b.Bytes())
}
