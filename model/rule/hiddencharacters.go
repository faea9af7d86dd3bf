package rule

import (
	"fmt"
	"strings"
	"unicode"

	"example.com/lugbook/model/clean"
)

var hiddenCharacters = Rule{
	ID: "hidden-characters", Title: "A text holds characters that can't be seen, or look like others",
	Family: Paper, Severity: Caution,
	About: "Reads the names, notes, marks, bundles and sources of the sheet. Characters that are drawn as nothing or turn the order of letters " +
		"round are a caution; a word that mixes Latin letters with Greek or Cyrillic ones is a note, and so are two ids that differ only by 0 " +
		"and O, or by 1, l and I.",
	Why: "A text can say one thing on the screen and another in the file: a control that reverses the order of letters makes 52 A of 25 A, a " +
		"space of no width makes two equal names different, a Cyrillic letter makes a search miss. Most come from copying out of a web page, " +
		"a few from somebody who wants to be misread. On a drawing wl and w1 are one wire to every eye.",
	Tell: "The program shows each hidden character as its number, such as <U+202E>. Write the text anew by hand; don't copy it.",
	Blind: "Words that are all of one script are taken as written, whatever the script. Ids hold plain letters and digits only, by the file's " +
		"format. Accents and marks are let be.",
	Bad:    "the wires k1 and kl are on the sheet",
	Good:   "they are k1 and k2",
	Wrong:  Example{Of: spliceExample, But: []string{"wire k5", "wire kl sp1.J pack.NEG gauge=16AWG insulation=105C length=1m"}},
	Right:  Example{Of: spliceExample},
	Basis:  Basis{"format and bidirectional characters can make a text read otherwise than it is stored", "Unicode Technical Standard 39; CVE-2021-42574"},
	Remedy: "write the text or the id anew by hand",
	Run:    runHiddenCharacters,
}

func runHiddenCharacters(p *Pass) {
	for _, t := range p.texts() {
		if found := clean.Suspicious(t.text); len(found) > 0 {
			p.report(Finding{
				Message:  fmt.Sprintf("the %s of %s holds hidden characters: %s", t.field, t.subject, clean.Line(t.text)),
				Subjects: []Subject{t.subject},
			})
		} else if word := mixedWord(t.text); word != "" {
			p.report(Finding{
				Severity: Note,
				Message:  fmt.Sprintf("%q in the %s of %s mixes letters of two scripts that look alike", word, t.field, t.subject),
				Subjects: []Subject{t.subject},
			})
		}
	}
	p.reportLookAlikes()
}

// written is a text of the sheet.
type written struct {
	subject     Subject
	field, text string
}

// texts lists the free texts of the sheet.
func (p *Pass) texts() []written {
	var list []written
	add := func(s Subject, field, text string) {
		if text != "" {
			list = append(list, written{s, field, text})
		}
	}
	for i := range p.Sheet.Parts {
		part := &p.Sheet.Parts[i]
		add(OfPart(part.ID), "name", part.Name)
		add(OfPart(part.ID), "note", part.Note)
		for _, r := range part.Ratings {
			add(OfPart(part.ID), "source of "+r.Name, r.Source)
		}
	}
	for i := range p.Sheet.Wires {
		w := &p.Sheet.Wires[i]
		add(OfWire(w.ID), "mark", w.Mark)
		add(OfWire(w.ID), "bundle", w.Bundle)
		add(OfWire(w.ID), "note", w.Note)
	}
	for i := range p.Sheet.Terminals {
		add(OfTerminal(p.Sheet.Terminals[i].At), "note", p.Sheet.Terminals[i].Note)
	}
	return list
}

// unitLetters are the Greek letters that units and figures are written with: both omegas, mu,
// delta and phi.
const unitLetters = "\u03a9\u2126\u03bc\u0394\u03c6"

// mixedWord is the first word of a text that mixes Latin letters with Greek or Cyrillic ones;
// empty if there is none.
func mixedWord(text string) string {
	for _, word := range strings.FieldsFunc(text, func(r rune) bool { return !unicode.IsLetter(r) }) {
		latin, other := false, false
		for _, r := range word {
			latin = latin || unicode.Is(unicode.Latin, r)
			other = other || unicode.In(r, unicode.Greek, unicode.Cyrillic) && !strings.ContainsRune(unitLetters, r)
		}
		if latin && other {
			return word
		}
	}
	return ""
}

// reportLookAlikes reports ids of parts, and ids of wires, that look alike.
func (p *Pass) reportLookAlikes() {
	seen := map[string]Subject{}
	look := func(kind string, s Subject) {
		key := kind + lookAlike.Replace(s.String())
		if first, there := seen[key]; there {
			p.report(Finding{
				Severity: Note,
				Message:  fmt.Sprintf("%s and %s look alike in print", first, s),
				Subjects: []Subject{first, s},
			})
			return
		}
		seen[key] = s
	}
	for i := range p.Sheet.Parts {
		look("part ", OfPart(p.Sheet.Parts[i].ID))
	}
	for i := range p.Sheet.Wires {
		look("wire ", OfWire(p.Sheet.Wires[i].ID))
	}
}

// lookAlike makes ids that look alike equal: 0 and O, and 1, l and I.
var lookAlike = strings.NewReplacer("O", "0", "l", "1", "I", "1")
