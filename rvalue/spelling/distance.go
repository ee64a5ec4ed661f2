// Package spelling tells how far one word is from another, for everything that
// answers a misspelt name with those that may have been meant.
package spelling

// Distance counts the letters to insert, drop, change or swap with a neighbour to turn
// a into b: the optimal string alignment distance, in which no letter is edited twice.
// It takes time and room of the product of both lengths, so bound what people typed.
func Distance(a, b string) int {
	// Words are short: nothing is allocated up to 64 letters.
	var letters [2][64]rune
	var room [3 * 65]int
	from, to := append(letters[0][:0], []rune(a)...), append(letters[1][:0], []rune(b)...)
	width := len(to) + 1
	rows := room[:]
	if 3*width > len(rows) {
		rows = make([]int, 3*width)
	}
	before, last, row := rows[:width], rows[width:2*width], rows[2*width:3*width]
	for j := range last {
		last[j] = j
	}
	for i := range from {
		row[0] = i + 1
		for j := range to {
			change := last[j]
			if from[i] != to[j] {
				change++
			}
			row[j+1] = min(last[j+1]+1, row[j]+1, change)
			if i > 0 && j > 0 && from[i] == to[j-1] && from[i-1] == to[j] {
				row[j+1] = min(row[j+1], before[j-1]+1)
			}
		}
		before, last, row = last, row, before
	}
	return last[len(to)]
}
