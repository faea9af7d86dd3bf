package main

import (
	"fmt"
	"strconv"
	"strings"
)

// table is a Markdown table whose first column holds words.
type table struct {
	head []string
	rows [][]string
}

func newTable(head ...string) *table { return &table{head: head} }

// row adds a row; what is lacking at its end stays empty.
func (t *table) row(cells ...any) {
	row := make([]string, len(t.head))
	for i, c := range cells {
		row[i] = cellText(c)
	}
	t.rows = append(t.rows, row)
}

// String is the table with a blank line after it.
func (t *table) String() string {
	var b strings.Builder
	line := func(cells []string) { fmt.Fprintf(&b, "| %s |\n", strings.Join(cells, " | ")) }
	line(t.head)
	rule := make([]string, len(t.head))
	for i := range rule {
		rule[i] = "--:"
	}
	rule[0] = "---"
	line(rule)
	for _, r := range t.rows {
		line(r)
	}
	b.WriteByte('\n')
	return b.String()
}

// cellText prints floats with the digits that tell something.
func cellText(v any) string {
	f, ok := v.(float64)
	if !ok {
		return strings.ReplaceAll(fmt.Sprint(v), "|", "/")
	}
	digits := 2
	switch {
	case f == float64(int64(f)) || f >= 100 || f <= -100:
		digits = 0
	case f >= 10:
		digits = 1
	}
	return strconv.FormatFloat(f, 'f', digits, 64)
}

// share is a part of a whole in percent.
func share(part, whole int) string {
	if whole == 0 {
		return "-"
	}
	return strconv.FormatFloat(100*float64(part)/float64(whole), 'f', 1, 64) + " %"
}
