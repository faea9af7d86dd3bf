package rule_test

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/rule"
)

// The catalogue of mistakes is written in a small language: a block an entry, blank lines
// between. The first line of a block says in words which mistake it is; each of the others is
// one thing, its first word says which:
//
//	on nursery-tug                          the sound job that it is made in
//	on marina-shuttle as-found              or another sheet of a job, with what is wrong there already
//	mistake 16 24                           its numbers in the list of mistakes, if it is there
//	and WORDS                               what follows is a second mistake
//	speaks danger fuse-too-large            a finding that the job now gets
//	follows fault does-not-drive            one that it gets as the consequence of another
//	asks gauge a3                           a question that is now open
//
//	wire w3 gauge 16 AWG                    a property of a wire; without a value it is forgotten;
//	                                        with another gauge it gets lugs that fit
//	end k5 to key.BAT                       an end of a wire moved; a lug that fits is put on
//	end k5 to cut in dash                   or left loose
//	swap red.IN+ red.IN-                    all that lands on two terminals exchanged
//	without w4                              a wire taken out, or a part with its wires
//	bridge fu1                              a part with two terminals taken out, its wires joined
//	bypass key                              as bridge, but the part stays, with a wire over it
//	rate fu3 fuse-rating 60 A               a figure of a part; without a value it is forgotten
//	fuse fu3 60 A                           a fuse of the same make and another rating in its place
//	copy fu2 fu9                            a new part like another one
//	part fu3 zone dash                      a property of a part
//	opens fu1 200 A 1 s 3 s                 a point of its curve in the place of what is recorded
//	add part fu9 fuse-inline dash           a new part in a zone
//	add wire x1 bus.3 usb.+ gauge 16 AWG    a new wire; commas between its properties
//	at sol.L1 washer between                a property of a terminal
//	stack sol.L1 p1 w14                     the order of its lugs, from the seat outward
//	job coldest -10 C                       a property of the job
//	run tray dash 6 m                       the routed length between two zones
//	zone attic 70 C                         a new zone, with the hottest that it gets if it is said
//	sheet as-found: wire w1 gauge 6 AWG     any of these on another sheet, begun as a copy

// mistake is an entry of the catalogue.
type mistake struct {
	where   string   // file and line of its first line
	title   string   // which mistake it is
	also    []string // the further ones in it
	job     string
	sheet   model.SheetName // that is judged; empty: the sound one
	numbers []int
	acts    []act
	speaks  []told
	asks    []asked
}

// told is what a rule must say.
type told struct {
	severity rule.Severity
	rule     string
	follows  bool // as the consequence of another finding
}

func (t told) String() string {
	if t.follows {
		return fmt.Sprintf("follows %s %s", t.severity, t.rule)
	}
	return fmt.Sprintf("speaks %s %s", t.severity, t.rule)
}

// asked is a question by the property that it asks for and what it asks about.
type asked struct{ field, subject string }

func (a asked) String() string { return "asks " + a.field + " " + a.subject }

// act is one line that changes the job. Where a change depends on what is there, it makes its
// edit from the job as it stands.
type act struct {
	where string
	sheet model.SheetName // empty: the sheet that is judged
	do    func(spot) (edit.Edit, error)
}

// spot is a job and the sheet of it that is changed.
type spot struct {
	job   *model.Job
	sheet *model.Sheet
}

// parseMistakes reads a file of the catalogue. It stops at the first line that it cannot read,
// and names it.
func parseMistakes(file, text string) ([]mistake, error) {
	var list []mistake
	inside := false
	number := 0
	for line := range strings.Lines(text) {
		number++
		line = strings.TrimSpace(line)
		where := fmt.Sprintf("%s:%d", file, number)
		switch {
		case line == "":
			inside = false
		case strings.HasPrefix(line, "#"):
		case !inside:
			list = append(list, mistake{where: where, title: line})
			inside = true
		default:
			if err := list[len(list)-1].line(where, line); err != nil {
				return nil, fmt.Errorf("%s: %w", where, err)
			}
		}
	}
	for _, m := range list {
		if m.job == "" || len(m.acts) == 0 || len(m.speaks)+len(m.asks) == 0 {
			return nil, fmt.Errorf("%s: %q needs a job, a change and what is said of it", m.where, m.title)
		}
	}
	return list, nil
}

// line reads a line of an entry below its first.
func (m *mistake) line(where, line string) error {
	word, rest, _ := strings.Cut(line, " ")
	words := strings.Fields(rest)
	switch word {
	case "on":
		if err := need(words, 1, 2); err != nil {
			return err
		}
		m.job, m.sheet = words[0], model.SheetName(strings.Join(words[1:], ""))
		return nil
	case "and":
		m.also = append(m.also, rest)
		return need(words, 1, 99)
	case "mistake":
		for _, w := range words {
			n, err := strconv.Atoi(w)
			if err != nil {
				return fmt.Errorf("%q is no number of a mistake", w)
			}
			m.numbers = append(m.numbers, n)
		}
		return need(words, 1, 99)
	case "speaks", "follows":
		if err := need(words, 2, 2); err != nil {
			return err
		}
		if !slices.Contains(rule.Severities(), rule.Severity(words[0])) {
			return fmt.Errorf("%q is no severity", words[0])
		}
		m.speaks = append(m.speaks, told{rule.Severity(words[0]), words[1], word == "follows"})
		return nil
	case "asks":
		if err := need(words, 2, 2); err != nil {
			return err
		}
		m.asks = append(m.asks, asked{words[0], words[1]})
		return nil
	case "sheet":
		name, change, found := strings.Cut(rest, ": ")
		if !found || !slices.Contains(model.AsFound.Names(), name) {
			return fmt.Errorf("expected the name of a sheet, a colon and a change")
		}
		return m.act(where, model.SheetName(name), change)
	}
	return m.act(where, "", line)
}

func (m *mistake) act(where string, sheet model.SheetName, line string) error {
	word, rest, _ := strings.Cut(line, " ")
	kind, known := changes[word]
	if !known {
		return fmt.Errorf("unknown word %q", word)
	}
	words := strings.Fields(rest)
	if err := need(words, kind.least, kind.most); err != nil {
		return err
	}
	do, err := kind.make(words)
	if err != nil {
		return err
	}
	m.acts = append(m.acts, act{where, sheet, do})
	return nil
}

func need(words []string, least, most int) error {
	if len(words) < least || len(words) > most {
		return fmt.Errorf("%d words after the first, expected %d to %d", len(words), least, most)
	}
	return nil
}

// make makes the mistake in a copy of a sound job.
func (m *mistake) make(sound *model.Job, judged model.SheetName) (*model.Job, error) {
	job := sound.Clone()
	for _, a := range m.acts {
		name := judged
		if a.sheet != "" {
			name = a.sheet
		}
		if job.Sheet(name) == nil {
			if err := (edit.StartSheet{New: name, Copy: judged}).Apply(job); err != nil {
				return nil, fmt.Errorf("%s: %w", a.where, err)
			}
		}
		e, err := a.do(spot{job, job.Sheet(name)})
		if err == nil {
			err = e.Apply(job)
		}
		if err != nil {
			return nil, fmt.Errorf("%s: %w", a.where, err)
		}
	}
	if faults := job.Check(part.Library()); len(faults) > 0 {
		return nil, fmt.Errorf("%s: the job is no longer valid: %s", m.where, faults[0].Error())
	}
	return job, nil
}
