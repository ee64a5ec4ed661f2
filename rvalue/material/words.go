package material

import (
	"slices"
	"strings"
	"unicode"
)

// words takes a name apart for look-up: lower case, singular, American spelling,
// without punctuation and without the small words that carry nothing. Hyphens
// part words, apostrophes do not.
func words(name string) []string {
	lower := strings.Map(func(r rune) rune {
		switch {
		case r == '\'' || r == '’':
			return -1
		case unicode.IsLetter(r) || unicode.IsDigit(r):
			return unicode.ToLower(r)
		}
		return ' '
	}, name)
	ws := strings.Fields(lower)
	kept := ws[:0]
	for _, w := range ws {
		if w = american(singular(w)); !small[w] {
			kept = append(kept, w)
		}
	}
	return kept
}

// small words say nothing about a material.
var small = map[string]bool{"a": true, "an": true, "and": true, "of": true, "on": true, "or": true, "over": true, "the": true, "with": true}

// idle words may stand or not without making another material: they are left
// out of what was asked if it is not found with them.
var idle = map[string]bool{"insulation": true, "insulating": true, "material": true, "sheet": true, "layer": true, "generic": true}

// singular strips an English plural. It need not be right (eps becomes ep), only
// the same for what is asked and what is known.
func singular(w string) string {
	switch {
	case len(w) < 3 || !strings.HasSuffix(w, "s") || strings.HasSuffix(w, "ss") || strings.HasSuffix(w, "us"):
		return w
	case strings.HasSuffix(w, "ies") && len(w) > 4:
		return w[:len(w)-3] + "y"
	case strings.HasSuffix(w, "ches"), strings.HasSuffix(w, "shes"), strings.HasSuffix(w, "sses"), strings.HasSuffix(w, "xes"):
		return w[:len(w)-2]
	}
	return w[:len(w)-1]
}

// american changes the British spellings that occur in names of materials.
func american(w string) string {
	switch w {
	case "grey":
		return "gray"
	case "aluminium":
		return "aluminum"
	case "vapour":
		return "vapor"
	case "moulded":
		return "molded"
	case "panelling":
		return "paneling"
	case "galvanised":
		return "galvanized"
	case "aluminised":
		return "aluminized"
	case "mould":
		return "mold"
	case "colour":
		return "color"
	case "coloured":
		return "colored"
	}
	return strings.ReplaceAll(w, "fibre", "fiber")
}

// withoutIdle returns ws without its idle words, or nil if it has none or
// nothing else.
func withoutIdle(ws []string) []string {
	kept := slices.DeleteFunc(slices.Clone(ws), func(w string) bool { return idle[w] })
	if len(kept) == len(ws) || len(kept) == 0 {
		return nil
	}
	return kept
}

// sorted returns the distinct words in order, to compare sets of words.
func sorted(ws []string) []string {
	s := slices.Clone(ws)
	slices.Sort(s)
	return slices.Compact(s)
}
