package lugline

import (
	"slices"
	"strings"

	"example.com/lugbook/model"
)

type conditionLetter struct {
	letter string
	is     model.Condition
	joint  bool
}

// conditionLetters are the letters after ! with what they record. The conditions of a
// joint belong to the stud, so that its contact can be judged; the others to the wire.
var conditionLetters = []conditionLetter{
	{"l", model.LooseFit, true},
	{"c", model.Corroded, true},
	{"h", model.HeatMark, true},
	{"d", model.Dirty, true},
	{"f", model.Frayed, false},
	{"b", model.Broken, false},
	{"s", model.Spliced, false},
	{"m", model.Melted, false},
	{"x", model.WrongLug, false},
}

// split parts conditions into those of the wire and those of the joint on its stud.
func split(list []model.Condition) (onWire, onStud []model.Condition) {
	for _, is := range list {
		joint := false
		for _, c := range conditionLetters {
			joint = joint || c.is == is && c.joint
		}
		if joint {
			onStud = append(onStud, is)
		} else {
			onWire = append(onWire, is)
		}
	}
	return onWire, onStud
}

// parseConditions reads what follows a !: letters and words, parted by commas.
func parseConditions(text string) ([]model.Condition, bool) {
	var list []model.Condition
	for part := range strings.SplitSeq(strings.ToLower(text), ",") {
		more, ok := conditionsOf(part)
		if !ok {
			return nil, false
		}
		list = union(list, more)
	}
	return list, true
}

func conditionsOf(part string) ([]model.Condition, bool) {
	if slices.Contains(model.Condition("").Names(), part) {
		return []model.Condition{model.Condition(part)}, true
	}
	var list []model.Condition
	for _, r := range part {
		i := slices.IndexFunc(conditionLetters, func(c conditionLetter) bool { return c.letter == string(r) })
		if i < 0 {
			return nil, false
		}
		list = append(list, conditionLetters[i].is)
	}
	return list, len(list) > 0
}

// union appends what is not in the list yet.
func union(list, more []model.Condition) []model.Condition {
	for _, is := range more {
		if !slices.Contains(list, is) {
			list = append(list, is)
		}
	}
	return list
}

// shortConditions writes conditions as the line does: letters first, then words.
func shortConditions(list []model.Condition) string {
	var parts []string
	letters := false
	for _, is := range list {
		short := string(is)
		for _, c := range conditionLetters {
			if c.is == is {
				short = c.letter
			}
		}
		if letters && len(short) == 1 {
			parts[len(parts)-1] += short
		} else {
			parts = append(parts, short)
		}
		letters = len(short) == 1
	}
	return strings.Join(parts, ",")
}
