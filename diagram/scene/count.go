package scene

import "strconv"

// Count is a number of things in words: 1 wire, 2 wires.
func Count(n int, one, more string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + more
}
