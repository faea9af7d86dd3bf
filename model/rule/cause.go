package rule

import "slices"

// underCauses puts each finding that follows from another right behind its cause, and tells it
// so. What follows from a finding that follows itself stands under the first cause of all. A
// group stands where its gravest finding would stand.
func underCauses(rules []Rule, findings []Finding) []Finding {
	causes := map[int][]int{} // findings by the place of their cause
	under := map[int]bool{}
	parents := make([]int, len(findings))
	for i := range findings {
		parents[i] = causeOf(rules, findings, i)
	}
	for i := range findings {
		if c := firstCause(parents, i); c != i {
			causes[c] = append(causes[c], i)
			under[i] = true
		}
	}
	return grouped(findings, causes, under)
}

// firstCause is the finding that stands at the beginning of the causes of another: itself if it
// has none. Of findings that explain each other in a ring the first in the list does.
func firstCause(parents []int, i int) int {
	seen := []int{i}
	for parents[i] >= 0 {
		i = parents[i]
		if at := slices.Index(seen, i); at >= 0 {
			return slices.Min(seen[at:])
		}
		seen = append(seen, i)
	}
	return i
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

// causeOf is the place of the finding from which another follows; -1 if it stands for itself.
// What explains it by a subject that they share comes before what upsets it from afar. That a
// datum is missing follows from nothing, and a note explains nothing.
func causeOf(rules []Rule, findings []Finding, i int) int {
	if findings[i].asks {
		return -1
	}
	upset := -1
	for c := range findings {
		if c == i || findings[c].Severity == Note {
			continue
		}
		r := findRule(rules, findings[c].Rule)
		switch {
		case r == nil:
		case slices.Contains(r.Explains, findings[i].Rule) && findings[c].shares(&findings[i]):
			return c
		case upset < 0 && slices.Contains(r.Upsets, findings[i].Rule):
			upset = c
		}
	}
	return upset
}
