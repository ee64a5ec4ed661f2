package rvalue

// unitKey is a unit taken apart: the exponent of every symbol in it. So
// "W/(m²·K)", "W/m2K", "W m-2 K-1" and "W/K/m^2" are one key, and a table of
// units needs one row for all of them.
type unitKey [symbols]int8

// The symbols that units are made of.
const (
	symWatt = iota
	symMetre
	symCentimetre
	symMillimetre
	symKilometre
	symKelvin
	symCelsius // alone; in a compound it is a degree of difference, so a kelvin
	symFahrenheit
	symHour
	symMinute
	symSecond
	symFoot
	symInch
	symMile
	symBtu
	symPascal
	symNanogram
	symKilogram
	symPound
	symLitre
	symPerm
	symbols // how many there are
)

// Words of unit texts that are no symbol themselves.
const (
	wordSquare = symbols + iota // the next symbol is squared
	wordCubic                   // the next symbol is cubed
	wordDegree                  // means nothing beside C or F
	wordPer                     // a fraction stroke
	wordMph
	wordKmh
	wordCfm
	wordPcf
	wordSf
	wordBtuh
)

// unitWord looks up a word in lower case. Case says nothing in the units
// known here: there is no millikelvin and no megametre in a wall.
func unitWord(b []byte) (word int, ok bool) {
	switch string(b) {
	case "w", "watt", "watts":
		return symWatt, true
	case "m", "metre", "metres", "meter", "meters":
		return symMetre, true
	case "cm":
		return symCentimetre, true
	case "mm":
		return symMillimetre, true
	case "km":
		return symKilometre, true
	case "k", "kelvin", "kelvins":
		return symKelvin, true
	case "c", "celsius":
		return symCelsius, true
	case "f", "fahrenheit":
		return symFahrenheit, true
	case "h", "hr", "hrs", "hour", "hours":
		return symHour, true
	case "min", "minute", "minutes":
		return symMinute, true
	case "s", "sec", "second", "seconds":
		return symSecond, true
	case "ft", "foot", "feet":
		return symFoot, true
	case "in", "inch", "inches":
		return symInch, true
	case "mi", "mile", "miles":
		return symMile, true
	case "btu", "btus":
		return symBtu, true
	case "pa":
		return symPascal, true
	case "ng":
		return symNanogram, true
	case "kg":
		return symKilogram, true
	case "lb", "lbs", "lbm", "pound", "pounds":
		return symPound, true
	case "l", "litre", "litres", "liter", "liters":
		return symLitre, true
	case "perm", "perms":
		return symPerm, true
	case "sq", "square":
		return wordSquare, true
	case "cu", "cubic":
		return wordCubic, true
	case "deg", "degs", "degree", "degrees":
		return wordDegree, true
	case "per":
		return wordPer, true
	case "mph":
		return wordMph, true
	case "kmh", "kph":
		return wordKmh, true
	case "cfm":
		return wordCfm, true
	case "pcf":
		return wordPcf, true
	case "sf":
		return wordSf, true
	case "btuh":
		return wordBtuh, true
	}
	return 0, false
}
