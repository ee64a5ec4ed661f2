package envelope

import (
	"math"
	"strings"

	"github.com/coldseam/coldseam/assembly/window"
	"github.com/coldseam/coldseam/rvalue"
)

// Sources of the default figures of windows and doors. A product's own label is
// better whenever there is one.
const (
	WindowSource = "ASHRAE Handbook—Fundamentals, fenestration, from memory: weighted by area from its " +
		"U-factors of centre of glass, edge of glass and frame, within 0.01 of its table of whole windows"
	StormSource = WindowSource + "; centre of glass with the storm window 1 to 4 in away: " +
		"ASHRAE Handbook 1977 to 1981, from memory (about 0.5 was seen with a consumer group too)"
	SkylightSource = "Washington Administrative Code 51-11R-30314, table R303.1.3(4), seen"
	DoorSource     = "IECC, table of default U-factors of doors, R303.1.3(2), from memory"
)

// DefaultWindow returns the U-factor of a whole upright window of ordinary size
// by its glass and frame, fixed or operable, and the source.
//
// Glass is "single", "single with storm", "double", "double argon", "double
// low-e", "double low-e argon", and the same four as "triple"; the gap is 1/2
// in or more unless "1/4 in" is added. Low-e stands for an emittance of 0.10,
// in triple glass on two panes. Frame is "wood", "vinyl", "clad wood" (or
// reinforced vinyl), "aluminum" (any metal), "aluminum with thermal break" or
// "fiberglass" (insulated, or insulated vinyl). The order of the words and
// words such as "pane" do not matter. The error is a *NameError.
func DefaultWindow(glass, frame string, operable bool) (rvalue.Transmittance, string, error) {
	of, err := ParseFrame(frame)
	if err != nil {
		return 0, "", err
	}
	g, narrow, err := parseGlass(glass)
	if err != nil {
		return 0, "", err
	}
	at := g.wide
	if narrow {
		at = g.narrow
	}
	source := WindowSource
	if g.name == stormName {
		source = StormSource
	}
	return tableU(whole(at, g.panes, of, operable)), source, nil
}

// DefaultSkylight returns the U-factor of a skylight, per area of its rough
// opening, and the source. Glass and frame are as for DefaultWindow; there is
// no storm window, and the gap does not matter. A fiberglass frame is taken as
// the table's wood or vinyl. The error is a *NameError.
func DefaultSkylight(glass, frame string) (rvalue.Transmittance, string, error) {
	of, err := ParseFrame(frame)
	if err != nil {
		return 0, "", err
	}
	g, _, err := parseGlass(glass)
	if err != nil {
		return 0, "", err
	}
	source := SkylightSource
	if of == window.Fiberglass {
		of, source = window.Wood, source+"; its wood or vinyl frame stands for fiberglass"
	}
	if g.skylight[of] == 0 {
		return 0, "", glassError(glass, true)
	}
	return tableU(g.skylight[of]), source, nil
}

// tableU turns a U in Btu/(h·ft²·°F) into a quantity, with the two decimals
// that such tables print.
func tableU(u float64) rvalue.Transmittance {
	return rvalue.Transmittance(math.Round(u*100) / 100 * float64(rvalue.UIP))
}

// doors is what an opaque door is made of, with its U in Btu/(h·ft²·°F).
var doors = [...]struct {
	name  string
	words word
	u     float64
}{
	{"wood", wordWood, 0.50},
	{"insulated steel", wordMetal | wordInsulated, 0.60},
	{"uninsulated steel", wordMetal | wordUninsulated, 1.20},
}

// DefaultDoor returns the U-factor of an opaque door in its frame by what it is
// made of, "wood", "insulated steel" or "uninsulated steel", and the source.
// The error is a *NameError.
func DefaultDoor(of string) (rvalue.Transmittance, string, error) {
	w, ok := words(of)
	known := make([]string, 0, len(doors))
	for _, d := range doors {
		if ok && w == d.words {
			return tableU(d.u), DoorSource, nil
		}
		known = append(known, d.name)
	}
	return 0, "", &NameError{Name: of, What: "no door in the table", Known: known, Hint: "for another, take the U-factor on its label"}
}

// word is a set of words that say something about a window or a door.
type word uint32

// The words that count.
const (
	wordSingle word = 1 << iota
	wordDouble
	wordTriple
	wordStorm
	wordLowE
	wordArgon
	wordNarrow
	wordWood
	wordVinyl
	wordMetal
	wordBreak
	wordClad
	wordReinforced
	wordFiberglass
	wordInsulated
	wordUninsulated
	wordNo
)

// vocabulary has every word that may be written; those of 0 say nothing.
var vocabulary = map[string]word{
	"single": wordSingle, "one": wordSingle, "1": wordSingle,
	"double": wordDouble, "dual": wordDouble, "twin": wordDouble, "two": wordDouble, "2": wordDouble,
	"triple": wordTriple, "three": wordTriple, "3": wordTriple,
	"storm": wordStorm, "storms": wordStorm, "argon": wordArgon,
	"low": wordLowE, "e": wordLowE, "lowe": wordLowE, "emissivity": wordLowE, "emittance": wordLowE, "coated": wordLowE,
	"1/4": wordNarrow, "6": wordNarrow, "6mm": wordNarrow,
	"1/2": 0, "5/8": 0, "3/4": 0, "12": 0, "13": 0, "16": 0, "12mm": 0, "13mm": 0, "16mm": 0, "in": 0, "inch": 0, "mm": 0,
	"pane": 0, "panes": 0, "paned": 0, "glass": 0, "glazed": 0, "glazing": 0, "clear": 0, "plain": 0, "air": 0, "gap": 0,
	"with": 0, "over": 0, "and": 0, "a": 0, "of": 0, "the": 0, "filled": 0, "fill": 0, "gas": 0, "window": 0, "windows": 0, "unit": 0,
	"wood": wordWood, "wooden": wordWood, "timber": wordWood,
	"vinyl": wordVinyl, "pvc": wordVinyl, "upvc": wordVinyl,
	"aluminum": wordMetal, "aluminium": wordMetal, "metal": wordMetal, "steel": wordMetal,
	"thermal": 0, "thermally": 0, "break": wordBreak, "broken": wordBreak,
	"no": wordNo, "without": wordNo, "clad": wordClad, "reinforced": wordReinforced,
	"fiberglass": wordFiberglass, "fibreglass": wordFiberglass,
	"insulated": wordInsulated, "uninsulated": wordUninsulated, "hollow": wordUninsulated,
	"frame": 0, "framed": 0, "frames": 0, "door": 0, "solid": 0,
}

// spaces turns what may stand between words into blanks.
var spaces = strings.NewReplacer("-", " ", "–", " ", ",", " ", "+", " ", "(", " ", ")", " ", `"`, " ", "″", " ")

// words returns the set of words in s, or not ok if it has one that is not in
// the vocabulary.
func words(s string) (set word, ok bool) {
	for w := range strings.FieldsSeq(spaces.Replace(strings.ToLower(s))) {
		bit, known := vocabulary[strings.TrimRight(w, ".")]
		if !known {
			return 0, false
		}
		set |= bit
	}
	return set, true
}

// ParseFrame reads what a frame is made of, in the words of DefaultWindow. The
// error is a *NameError.
func ParseFrame(frame string) (window.Frame, error) {
	w, ok := words(frame)
	if w&wordNo != 0 {
		w &^= wordNo | wordBreak
	}
	if ok {
		switch w {
		case wordMetal:
			return window.Aluminum, nil
		case wordMetal | wordBreak:
			return window.AluminumBreak, nil
		case wordWood | wordClad, wordWood | wordClad | wordMetal, wordWood | wordClad | wordVinyl, wordVinyl | wordReinforced:
			return window.Clad, nil
		case wordWood, wordVinyl:
			return window.Wood, nil
		case wordFiberglass, wordFiberglass | wordInsulated, wordVinyl | wordInsulated:
			return window.Fiberglass, nil
		}
	}
	return 0, &NameError{Name: frame, What: "no frame in the table", Known: frameNames}
}

// parseGlass returns a glazing, and whether its gap is 1/4 in.
func parseGlass(glass string) (g *glazing, narrow bool, err error) {
	if w, ok := words(glass); ok {
		narrow = w&wordNarrow != 0
		for i := range glazings {
			g = &glazings[i]
			if g.words == w&^wordNarrow && (!narrow || g.narrow != (coe{})) {
				return g, narrow, nil
			}
		}
	}
	return nil, false, glassError(glass, false)
}

// glassError lists the glazings.
func glassError(glass string, skylight bool) error {
	known := make([]string, 0, len(glazings))
	for i := range glazings {
		if !skylight || glazings[i].skylight[window.Wood] > 0 {
			known = append(known, glazings[i].name)
		}
	}
	return &NameError{Name: glass, What: "no glazing in the table", Known: known, Hint: "for another, take the U-factor on its label"}
}
