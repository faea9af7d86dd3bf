package rule

import (
	"maps"
	"slices"
)

// underCauses puts each finding that follows from another right behind its cause, and tells it
// so. A group stands where its gravest finding would stand. A cause is never put under another.
func underCauses(rules []Rule, findings []Finding) []Finding {
	causes := map[int][]int{} // findings by the place of their cause
	for i := range findings {
		if c := causeOf(rules, findings, i); c >= 0 {
			causes[c] = append(causes[c], i)
		}
	}
	under := map[int]bool{}
	for _, list := range causes {
		for _, i := range list {
			under[i] = true
		}
	}
	for _, c := range slices.Sorted(maps.Keys(causes)) {
		if under[c] {
			for _, i := range causes[c] {
				delete(under, i)
			}
			delete(causes, c)
		}
	}
	return grouped(findings, causes, under)
}

// grouped lists the findings anew: each that stands for itself, followed by what follows from
// it, at the place of the gravest of them.
func grouped(findings []Finding, causes map[int][]int, under map[int]bool) []Finding {
	head := map[int]int{} // the place at which a group is listed: that of its first finding
	for c, list := range causes {
		head[min(c, slices.Min(list))] = c
	}
	var out []Finding
	for i := range findings {
		if c, heads := head[i]; heads {
			out = append(out, findings[c])
			for _, k := range causes[c] {
				findings[k].Cause = findings[c].Key
				out = append(out, findings[k])
			}
			continue
		}
		if _, isCause := causes[i]; !under[i] && !isCause {
			out = append(out, findings[i])
		}
	}
	return out
}

// causeOf is the place of the finding from which another follows; -1 if it stands for itself. A
// note says that a datum is missing: it follows from nothing and explains nothing.
func causeOf(rules []Rule, findings []Finding, i int) int {
	if findings[i].Severity == Note {
		return -1
	}
	for c := range findings {
		if c == i || findings[c].Severity == Note {
			continue
		}
		r := findRule(rules, findings[c].Rule)
		switch {
		case r == nil:
		case slices.Contains(r.Upsets, findings[i].Rule),
			slices.Contains(r.Explains, findings[i].Rule) && findings[c].shares(&findings[i]):
			return c
		}
	}
	return -1
}
