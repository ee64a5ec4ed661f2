package house

import "strings"

// nearest returns the word that was most likely meant, or nothing if none is
// near: at most a third of its letters may differ, and a swap of two
// neighbours counts as one.
func nearest(written string, words []string) string {
	best, least := "", 0
	w := []rune(strings.ToLower(written))
	if len(w) > 60 {
		return ""
	}
	for _, word := range words {
		d := distance(w, []rune(strings.ToLower(word)))
		if limit := max(len(word), len(w)) / 3; d > max(limit, 1) || d >= len(word) {
			continue
		}
		if best == "" || d < least {
			best, least = word, d
		}
	}
	return best
}

// distance counts the letters to add, drop, change or swap with a neighbour to
// turn a into b (the optimal string alignment distance).
func distance(a, b []rune) int {
	prev2, prev, cur := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range prev {
		prev[j] = j
	}
	for i := range a {
		cur[0] = i + 1
		for j := range b {
			cost := 1
			if a[i] == b[j] {
				cost = 0
			}
			cur[j+1] = min(prev[j+1]+1, cur[j]+1, prev[j]+cost)
			if i > 0 && j > 0 && a[i] == b[j-1] && a[i-1] == b[j] {
				cur[j+1] = min(cur[j+1], prev2[j-1]+1)
			}
		}
		prev2, prev, cur = prev, cur, prev2
	}
	return prev[len(b)]
}
