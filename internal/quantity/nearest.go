package quantity

import "strings"

// Nearest returns the candidate closest to word by edit distance, ignoring
// case, or "" if none is near enough to be a slip of the finger: within a
// third of its length, and at least one letter right.
func Nearest(word string, candidates []string) string {
	best, bestDistance := "", 1+max(1, len(word)/3)
	for _, c := range candidates {
		d := distance(strings.ToLower(word), strings.ToLower(c))
		if d < bestDistance && d < max(len(word), len(c)) {
			best, bestDistance = c, d
		}
	}
	return best
}

// distance is the edit distance between a and b in bytes, a transposition of
// neighbours counting as one edit.
func distance(a, b string) int {
	rows := make([][]int, len(a)+1)
	for i := range rows {
		rows[i] = make([]int, len(b)+1)
		rows[i][0] = i
	}
	for j := range rows[0] {
		rows[0][j] = j
	}
	for i := 1; i <= len(a); i++ {
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			d := min(rows[i-1][j]+1, rows[i][j-1]+1, rows[i-1][j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				d = min(d, rows[i-2][j-2]+1)
			}
			rows[i][j] = d
		}
	}
	return rows[len(a)][len(b)]
}
