package climate

// kind is what the words beside a name say about it.
type kind uint8

const (
	anyKind    kind = iota // nothing
	countyKind             // county, or what takes its place: any but an independent city
	cityKind
)

// kindWords are the words after a county's name, longest phrase first.
var kindWords = [...]struct {
	words []string
	kind  kind
}{
	{[]string{"city", "and", "borough"}, countyKind},
	{[]string{"census", "area"}, countyKind},
	{[]string{"planning", "region"}, countyKind},
	{[]string{"county"}, countyKind},
	{[]string{"co"}, countyKind},
	{[]string{"parish"}, countyKind},
	{[]string{"borough"}, countyKind},
	{[]string{"municipality"}, countyKind},
	{[]string{"municipio"}, countyKind},
	{[]string{"district"}, countyKind},
	{[]string{"island"}, countyKind},
	{[]string{"independent", "city"}, cityKind},
	{[]string{"city"}, cityKind},
}

// withoutKind returns k without "County" and the like at its end, or "City of" at
// its beginning, and what that word says. It leaves at least one word.
func (k *key) withoutKind() (key, kind) {
	if k.nw > 2 && string(k.word(1)) == "of" {
		switch string(k.word(0)) {
		case "city":
			return k.cut(2, k.nw), cityKind
		case "county", "parish", "borough", "municipality":
			return k.cut(2, k.nw), countyKind
		}
	}
	for _, phrase := range kindWords {
		start := k.nw - len(phrase.words)
		if start < 1 {
			continue
		}
		match := true
		for i, w := range phrase.words {
			match = match && string(k.word(start+i)) == w
		}
		if match {
			return k.cut(0, start), phrase.kind
		}
	}
	return *k, anyKind
}

// alias is another name or number of a county.
type alias struct {
	state, name string // folded name
	fips        int    // 0 if the name alone differs
	county      int
	note        string
}

// aliases are names and numbers that are older or newer than the Census list of
// 2017, and those of New York's boroughs; from memory. Since 2022 Connecticut has
// planning regions for counties; the county named is the one that holds the largest
// part of the region's people.
var aliases = [...]alias{
	{"AK", "chugach", 2063, 2261, "Chugach Census Area since 2019, part of the former Valdez-Cordova"},
	{"AK", "copperriver", 2066, 2261, "Copper River Census Area since 2019, part of the former Valdez-Cordova"},
	{"AK", "wadehampton", 2270, 2158, "Wade Hampton until 2015"},
	{"CT", "capitol", 9110, 9003, "most of the Capitol Planning Region"},
	{"CT", "greaterbridgeport", 9120, 9001, "holds the Greater Bridgeport Planning Region"},
	{"CT", "lowerconnecticutrivervalley", 9130, 9007, "most of the Lower Connecticut River Valley Planning Region"},
	{"CT", "naugatuckvalley", 9140, 9009, "most of the Naugatuck Valley Planning Region"},
	{"CT", "northeasternconnecticut", 9150, 9015, "most of the Northeastern Connecticut Planning Region"},
	{"CT", "northwesthills", 9160, 9005, "most of the Northwest Hills Planning Region"},
	{"CT", "southcentralconnecticut", 9170, 9009, "holds the South Central Connecticut Planning Region"},
	{"CT", "southeasternconnecticut", 9180, 9011, "most of the Southeastern Connecticut Planning Region"},
	{"CT", "westernconnecticut", 9190, 9001, "most of the Western Connecticut Planning Region"},
	{"FL", "dade", 12025, 12086, "Dade until 1997"},
	{"NY", "thebronx", 0, 36005, ""},
	{"NY", "brooklyn", 0, 36047, "Brooklyn is Kings County"},
	{"NY", "manhattan", 0, 36061, "Manhattan is New York County"},
	{"NY", "statenisland", 0, 36085, "Staten Island is Richmond County"},
	{"NY", "newyorkcity", 0, 36061, "Manhattan; all five boroughs are in one zone"},
	{"SD", "shannon", 46113, 46102, "Shannon until 2015"},
	{"VA", "bedfordcity", 51515, 51019, "Bedford city is part of the county since 2013"},
	{"VA", "cliftonforgecity", 51560, 51005, "Clifton Forge city is part of the county since 2001"},
	{"VA", "southbostoncity", 51780, 51083, "South Boston city is part of the county since 1995"},
}
