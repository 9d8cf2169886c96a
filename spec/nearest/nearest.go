// Package nearest finds the known word that an unknown one was probably meant
// to be.
package nearest

// Word returns the known word that takes the fewest insertions, deletions,
// replacements and swaps of neighbouring letters, if they are few for its
// length. Of several equally near, the first.
func Word(word string, known []string) (string, bool) {
	best, least := "", len([]rune(word))/3+2
	for _, k := range known {
		if d := distance([]rune(word), []rune(k)); d < least {
			best, least = k, d
		}
	}
	return best, best != ""
}

// distance is the optimal string alignment distance, row by row.
func distance(a, b []rune) int {
	before, row, next := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range a {
		next[0] = i + 1
		for j := range b {
			cost := 1
			if a[i] == b[j] {
				cost = 0
			}
			next[j+1] = min(row[j+1]+1, next[j]+1, row[j]+cost)
			if i > 0 && j > 0 && a[i] == b[j-1] && a[i-1] == b[j] {
				next[j+1] = min(next[j+1], before[j-1]+1)
			}
		}
		before, row, next = row, next, before
	}
	return row[len(b)]
}
