package lugline

import (
	"slices"
	"strings"
	"unicode/utf8"

	"example.com/lugbook/model"
)

// How far a shortening is from the full word. The fit of a stud is the sum over its
// part and its terminal.
const (
	same    = 0 // the word itself
	start   = 1 // its beginning
	inOrder = 2 // some of its letters in their order
	unnamed = 3 // a terminal that the token does not name at all
	noFit   = -1
)

// stud is a terminal of the sheet with its words taken apart.
type stud struct {
	at             model.TerminalRef
	of             *model.Part
	part, terminal []string
}

// pieces takes a word apart into letters and whole numbers, case folded. A number stays
// whole, so that b1 never stands for b12.
func pieces(s string) []string {
	var list []string
	digits := false
	for _, r := range strings.ToLower(s) {
		if d := r >= '0' && r <= '9'; d && digits {
			list[len(list)-1] += string(r)
		} else {
			list = append(list, string(r))
			digits = d
		}
	}
	return list
}

// fit is how a shortening fits a word: same, start, inOrder or noFit. It keeps the word's
// letters in order and its numbers whole.
func fit(short, word []string) int {
	if len(short) == 0 || len(short) > len(word) {
		return noFit
	}
	if slices.Equal(short, word[:len(short)]) {
		if len(short) == len(word) {
			return same
		}
		return start
	}
	i := 0
	for _, piece := range word {
		if i < len(short) && short[i] == piece {
			i++
		}
	}
	if i < len(short) {
		return noFit
	}
	return inOrder
}

// fitPart is fit for a part's name, whose first letter must be given.
func fitPart(short, word []string) int {
	if len(short) == 0 || len(word) == 0 || short[0] != word[0] {
		return noFit
	}
	return fit(short, word)
}

// cut is one way to take a token apart into a part and a terminal.
type cut struct{ part, terminal []string }

// cuts lists all ways to take a token apart: at its point, or anywhere if it has none.
func cuts(token string) []cut {
	if part, terminal, pointed := strings.Cut(token, "."); pointed {
		return []cut{{pieces(part), pieces(terminal)}}
	}
	var list []cut
	for i := range token {
		if i > 0 {
			list = append(list, cut{pieces(token[:i]), pieces(token[i:])})
		}
	}
	return append(list, cut{pieces(token), nil})
}

// fitStud is the best fit over all cuts.
func fitStud(ways []cut, s stud) int {
	best := noFit
	for _, w := range ways {
		part, terminal := fitPart(w.part, s.part), unnamed
		if len(w.terminal) > 0 {
			terminal = fit(w.terminal, s.terminal)
		}
		if part != noFit && terminal != noFit && (best == noFit || part+terminal < best) {
			best = part + terminal
		}
	}
	return best
}

// resolve finds the studs that a token fits best; whole asks for tokens that name a
// terminal too. Several mean that the token does not settle it.
func resolve(list []stud, token string, whole bool) []model.TerminalRef {
	if token == "" || !utf8.ValidString(token) {
		return nil
	}
	ways := cuts(token)
	if whole {
		ways = slices.DeleteFunc(ways, func(c cut) bool { return len(c.terminal) == 0 })
	}
	var found []model.TerminalRef
	best := noFit
	for _, s := range list {
		n := fitStud(ways, s)
		if n == noFit || best != noFit && n > best {
			continue
		}
		if best == noFit || n < best {
			best, found = n, nil
		}
		found = append(found, s.at)
	}
	if i := slices.IndexFunc(found, func(at model.TerminalRef) bool { return at.String() == token }); i >= 0 {
		return found[i : i+1]
	}
	if len(found) == 0 && !whole {
		return called(list, token)
	}
	return found
}

// called finds the studs whose terminal alone a token names in full: people say KSI, and not
// which box has it.
func called(list []stud, token string) []model.TerminalRef {
	var found []model.TerminalRef
	for _, s := range list {
		if len(token) > 1 && strings.EqualFold(s.at.Name, token) {
			found = append(found, s.at)
		}
	}
	return found
}

// fresh reads a full name of a terminal that nobody has named yet, on a part of unknown
// kind: such a part has the terminals that its wires name.
func fresh(c Context, token string) (model.TerminalRef, bool) {
	var at model.TerminalRef
	if at.UnmarshalText([]byte(token)) != nil {
		return at, false
	}
	for i := range c.Sheet.Parts {
		p := &c.Sheet.Parts[i]
		if strings.EqualFold(string(p.ID), string(at.Part)) {
			at.Part = p.ID
			named := slices.ContainsFunc(c.Catalogue.TerminalsOf(c.Sheet, p), func(name string) bool { return strings.EqualFold(name, at.Name) })
			return at, !named && c.Catalogue.Definition(p.Kind) == nil
		}
	}
	return at, false
}

// short is the shortest token that means one stud of the list and nothing else, whatever
// else stands on the line.
func short(list []stud, at model.TerminalRef) string {
	part, terminal := pieces(string(at.Part)), pieces(at.Name)
	var forms []string
	for _, p := range heads(part) {
		for _, t := range heads(terminal) {
			forms = append(forms, p+t)
		}
	}
	slices.SortStableFunc(forms, func(a, b string) int { return len(a) - len(b) })
	for _, form := range forms {
		if found := resolve(list, form, false); len(found) == 1 && found[0] == at && onlyStud(form) {
			return form
		}
	}
	return at.String()
}

// heads lists the beginnings of a word, and its beginnings with the number at its end.
func heads(word []string) []string {
	if len(word) == 0 {
		return nil
	}
	var list []string
	last := word[len(word)-1]
	for i := 1; i <= len(word); i++ {
		head := strings.Join(word[:i], "")
		list = append(list, head)
		if numbered := last[0] >= '0' && last[0] <= '9'; numbered && i < len(word)-1 {
			list = append(list, head+last)
		}
	}
	return list
}

// onlyStud reports whether a token can be nothing but a stud.
func onlyStud(token string) bool {
	if _, isEnd := ends[token]; isEnd {
		return false
	}
	_, isLook := parseLook(token)
	return !isLook
}

// Name is how a reading and a screen write a terminal: the point is left out before a
// lone + or -.
func Name(at model.TerminalRef) string {
	if at.Name == "+" || at.Name == "-" {
		return string(at.Part) + at.Name
	}
	return at.String()
}
