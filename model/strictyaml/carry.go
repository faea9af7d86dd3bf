package strictyaml

// carry copies the comments of one tree to another by path. What has no place in the
// other is left behind.
func carry(from, to *tree) { carryTree(from, to, false) }

// carryAll does the same but leaves nothing behind: comments of an entry without a
// counterpart move to the end of its block.
func carryAll(from, to *tree) { carryTree(from, to, true) }

func carryTree(from, to *tree, all bool) {
	match := matchKeys
	switch {
	case from.kind == sequenceKind && all:
		match = matchPositions
	case from.kind == sequenceKind:
		match = matchItems
	}
	for i, other := range match(from, to) {
		e := from.entries[i]
		if other == nil {
			if all {
				to.tail = append(to.tail, e.remarks()...)
			}
			continue
		}
		other.head = append(other.head, e.head...)
		other.trail = e.trail
		if e.value.kind == other.value.kind {
			carryTree(e.value, other.value, all)
			continue
		}
		other.head = append(other.head, e.value.remarks()...)
	}
	to.tail = append(to.tail, from.tail...)
}

// matchKeys pairs the entries of two mappings by key: the result holds, for each entry
// of from, its counterpart or nil.
func matchKeys(from, to *tree) []*entry {
	known := make(map[string]*entry, len(to.entries))
	for _, e := range to.entries {
		known[e.key] = e
	}
	pairs := make([]*entry, len(from.entries))
	for i, e := range from.entries {
		pairs[i] = known[e.key]
	}
	return pairs
}

// matchPositions pairs the items of two forms of one list.
func matchPositions(from, to *tree) []*entry {
	pairs := make([]*entry, len(from.entries))
	copy(pairs, to.entries)
	return pairs
}

// matchItems pairs the items of two lists: first those of equal content, in order, then
// those that are left and have the same position.
func matchItems(from, to *tree) []*entry {
	known := map[string][]int{}
	for i, e := range to.entries {
		content := e.value.content()
		known[content] = append(known[content], i)
	}
	pairs := make([]*entry, len(from.entries))
	taken := make([]bool, len(to.entries))
	for i, e := range from.entries {
		content := e.value.content()
		if same := known[content]; len(same) > 0 {
			known[content] = same[1:]
			pairs[i], taken[same[0]] = to.entries[same[0]], true
		}
	}
	for i := range from.entries {
		if pairs[i] == nil && i < len(to.entries) && !taken[i] {
			pairs[i] = to.entries[i]
		}
	}
	return pairs
}

// content is the value of a tree without its comments.
func (t *tree) content() string { return t.oneLine(true) }

// remarks lists all the comments at and in an entry.
func (e *entry) remarks() []remark {
	list := append([]remark(nil), e.head...)
	if e.trail != "" {
		list = append(list, remark{text: e.trail})
	}
	return append(list, e.value.remarks()...)
}

func (t *tree) remarks() []remark {
	var list []remark
	for _, e := range t.entries {
		list = append(list, e.remarks()...)
	}
	return append(list, t.tail...)
}
