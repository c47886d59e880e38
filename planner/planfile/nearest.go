package planfile

import "sort"

// nearest returns the word that a person most likely meant: the one with the
// smallest optimal string alignment distance (insertions, deletions,
// substitutions and swaps of neighbours, each counted one), if no more than a
// third of the letters differ. Ties go to the first in the alphabet.
func nearest(typed string, words []string) string {
	if len(typed) > MaxID {
		return ""
	}
	sorted := append([]string(nil), words...)
	sort.Strings(sorted)
	best, least := "", 1+max(1, len(typed)/3)
	for _, w := range sorted {
		if len(w) > MaxID {
			continue
		}
		if d := distance([]rune(typed), []rune(w)); d < least {
			best, least = w, d
		}
	}
	return best
}

func distance(a, b []rune) int {
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
			rows[i][j] = min(rows[i-1][j]+1, rows[i][j-1]+1, rows[i-1][j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				rows[i][j] = min(rows[i][j], rows[i-2][j-2]+1)
			}
		}
	}
	return rows[len(a)][len(b)]
}
