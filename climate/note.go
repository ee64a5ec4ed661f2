package climate

// standIn is the note on counties in whose zone the warm-humid mark counts, with it or
// without: of all zones the code asks something else by the mark in 3A alone.
const standIn = "warm-humid or not is by the region of the county table, which stands in for the code's own list"

func (z Zone) marks() bool { return z.Number == 3 && z.Moisture == 'A' }

// noteOn says what is uncertain about a county's zones. The sources are named in
// counties_data.go.
func noteOn(fips int) string {
	switch fips {
	case 2016: // Aleutians West
		return "the county table says zone 8 before 2021; an older map layer of the Department of Energy says 7"
	case 2158: // Kusilvak
		return "the county table has no zone; 8 is from an older table, where the census area was Wade Hampton"
	case 19047: // Crawford, Iowa
		return "the county table says zone 5A before 2021; an older map layer of the Department of Energy says 6A"
	case 51520: // Bristol, Virginia
		return "the county table has no moisture letter; A is from an older map layer and the neighbours"
	}
	if fips >= 60000 {
		return "the county table has no zone for the territories; 1A is the code's own row for them, from memory"
	}
	return ""
}

// kindOf returns what a county is called in its state, as the Census Bureau lists
// them; from memory, and only names hang on it.
func kindOf(fips int) string {
	switch fips / 1000 {
	case 2:
		return alaskaKind(fips % 1000)
	case 11, 66:
		return ""
	case 22:
		return "Parish"
	case 60:
		if fips == 60010 || fips == 60050 {
			return "District"
		}
		return ""
	case 69:
		return "Municipality"
	case 72:
		return "Municipio"
	case 78:
		return "Island"
	}
	// Independent cities have numbers from 510 on: Baltimore, St. Louis, and those
	// of Virginia. Carson City has the word in its name.
	switch {
	case fips == 32510:
		return ""
	case fips%1000 >= 510 && independent(fips/1000):
		return "city"
	}
	return "County"
}

func independent(state int) bool { return state == 24 || state == 29 || state == 51 }

func alaskaKind(number int) string {
	switch number {
	case 16, 50, 70, 105, 158, 180, 198, 240, 261, 290:
		return "Census Area"
	case 20, 230:
		return "Municipality"
	case 110, 220, 275, 282:
		return "City and Borough"
	}
	return "Borough"
}
