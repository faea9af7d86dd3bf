package strictyaml

import "strings"

// Nearest finds the known name that a person most likely meant by word; "" if none is
// near. Case does not count. Of equally near names the first wins.
func Nearest(word string, known []string) string {
	const longest = 64
	w := []rune(strings.ToLower(word))
	if len(w) == 0 || len(w) > longest {
		return ""
	}
	best, found := (len(w)+2)/3+1, ""
	for _, name := range known {
		n := []rune(strings.ToLower(name))
		if len(n) > longest || len(n)-len(w) >= best || len(w)-len(n) >= best {
			continue
		}
		if d := distance(w, n); d < best {
			best, found = d, name
		}
	}
	return found
}

// distance counts the insertions, deletions, substitutions and swaps of neighbours that
// turn a into b: the optimal string alignment distance after Damerau, "A technique
// for computer detection and correction of spelling errors", CACM 7(3), 1964.
func distance(a, b []rune) int {
	var rows [3][]int
	for i := range rows {
		rows[i] = make([]int, len(b)+1)
	}
	for j := range rows[1] {
		rows[1][j] = j
	}
	for i := 1; i <= len(a); i++ {
		above2, above, row := rows[0], rows[1], rows[2]
		row[0] = i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			row[j] = min(above[j]+1, row[j-1]+1, above[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], above2[j-2]+1)
			}
		}
		rows[0], rows[1], rows[2] = above, row, above2
	}
	return rows[1][len(b)]
}
