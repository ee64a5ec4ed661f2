package house

import (
	"strings"
	"unicode/utf8"

	"github.com/coldseam/coldseam/rvalue/spelling"
)

// nearest returns the word that was most likely meant, or nothing if none is
// near: at most a third of its letters may differ, and a swap of two
// neighbours counts as one.
func nearest(written string, words []string) string {
	best, least := "", 0
	w := strings.ToLower(written)
	if utf8.RuneCountInString(w) > 60 {
		return ""
	}
	for _, word := range words {
		d := spelling.Distance(w, strings.ToLower(word))
		if limit := max(len(word), utf8.RuneCountInString(w)) / 3; d > max(limit, 1) || d >= len(word) {
			continue
		}
		if best == "" || d < least {
			best, least = word, d
		}
	}
	return best
}
