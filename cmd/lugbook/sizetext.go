package main

import (
	"fmt"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/clean"
	"example.com/lugbook/model/size"
	"example.com/lugbook/model/unit"
)

// sizeMarks lead the lines of verdicts.
var sizeMarks = map[size.Status]string{size.Met: "  ", size.Failed: "! ", size.NotJudged: "? "}

// choicesText is an answer for a person to read.
func choicesText(told []string, choices []size.Choice) string {
	var b strings.Builder
	for _, line := range told {
		fmt.Fprintf(&b, "%s\n", line)
	}
	for i, c := range choices {
		if i > 0 || len(told) > 0 {
			b.WriteString("\n")
		}
		choiceText(&b, c)
	}
	assumedText(&b, choices[0].Required.Assumed)
	b.WriteString("\n" + sizeCaution)
	return b.String()
}

// choiceText writes the size with what decided, what each demand asks for by itself, and
// why the next thinner size will not do.
func choiceText(b *strings.Builder, c size.Choice) {
	chosen, ok := c.Chosen()
	if !ok {
		fmt.Fprintf(b, "%s: none\n  %s\n", c.Series, c.Why)
		return
	}
	fmt.Fprintf(b, "%s%s\n", c.Gauge, fuseText(c.Fuse))
	fmt.Fprintf(b, "  decided by: %s%s\n", demandsText(c.Decided), runnerUpText(c.RunnerUp))
	for _, v := range chosen.Verdicts {
		fmt.Fprintf(b, "%s%-18s %-8s %s\n", sizeMarks[v.Status], v.Demand, needText(c, v), v.Text)
	}
	if thinner, ok := nextThinner(c); ok {
		fmt.Fprintf(b, "  %s will not do:\n", thinner.Gauge)
		failsText(b, thinner)
	}
}

// failsText writes what a size fails.
func failsText(b *strings.Builder, x size.Candidate) {
	for _, v := range x.Verdicts {
		if v.Status == size.Failed {
			fmt.Fprintf(b, "! %-18s          %s\n", v.Demand, v.Text)
		}
	}
}

func fuseText(f size.Fuse) string {
	if f.Rating.Amperes == 0 {
		return ""
	}
	text := fmt.Sprintf(", fuse of %g A", f.Rating.Amperes)
	if f.AsSlow != "" {
		text += ", at least as slow as a " + f.AsSlow
	}
	if f.Rating.Recalled {
		text += " (a size from memory)"
	}
	return text + " (" + f.Why + ")"
}

func runnerUpText(n size.Need) string {
	if n.Demand == "" {
		return ""
	}
	return fmt.Sprintf("; next %s, %s", n.Demand, n.Gauge)
}

func demandsText(list []size.Demand) string {
	if len(list) == 0 {
		return "nothing; it is the thinnest of the list"
	}
	words := make([]string, len(list))
	for i, d := range list {
		words[i] = string(d)
	}
	return strings.Join(words, ", ")
}

// needText is the size that a demand asks for by itself.
func needText(c size.Choice, v size.Verdict) string {
	for _, n := range c.Needs {
		if n.Demand == v.Demand && v.Status != size.NotJudged {
			return n.Gauge.String()
		}
	}
	return "-"
}

// nextThinner is the candidate before the chosen one.
func nextThinner(c size.Choice) (size.Candidate, bool) {
	for i, x := range c.Candidates {
		if x.Gauge == c.Gauge && i > 0 {
			return c.Candidates[i-1], true
		}
	}
	return size.Candidate{}, false
}

// leftOutText tells which states were left out, and which could not be computed.
func leftOutText(b *strings.Builder, survey *size.Survey) {
	hanging(b, "left out: ", survey.Skipped())
	hanging(b, "! not computed, so that what flows then is not known: ", survey.Unsolved())
}

// hanging writes lines with what they are before the first.
func hanging(b *strings.Builder, lead string, lines []string) {
	for i, text := range lines {
		if i == 0 {
			fmt.Fprintf(b, "\n%s%s\n", lead, clean.Line(text))
			continue
		}
		fmt.Fprintf(b, "%*s%s\n", len(lead), "", clean.Line(text))
	}
}

// assumedText lists what was taken for granted.
func assumedText(b *strings.Builder, assumed []string) {
	hanging(b, "assumed: ", assumed)
}

// rowText is one wire of a job with all figures.
func rowText(r size.Row, survey *size.Survey) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s from %s to %s, now %s\n", r.Wire.ID, r.Wire.From, r.Wire.To, orUnknown(r.Wire.Gauge))
	switch {
	case r.Idle:
		fmt.Fprintf(&b, "carries %s: nothing asks for a size\n", idleText(survey))
	case r.Missing != "":
		fmt.Fprintf(&b, "not sized: %s\n", clean.Line(r.Missing))
	default:
		fmt.Fprintf(&b, "%s\n\n", loadText(r))
		choiceText(&b, r.Choice)
		if r.Thin() {
			fmt.Fprintf(&b, "  %s, which is there now, will not do:\n", r.Present.Gauge)
			failsText(&b, r.Present)
		}
		assumedText(&b, r.Choice.Required.Assumed)
	}
	leftOutText(&b, survey)
	b.WriteString("\n" + sizeCaution)
	return b.String()
}

// idleText says in which states a wire carries nothing to speak of.
func idleText(survey *size.Survey) string {
	if len(survey.Unsolved()) > 0 {
		return "next to nothing in any state that could be computed"
	}
	return "next to nothing in any state"
}

func loadText(r size.Row) string {
	text := fmt.Sprintf("carries %.1f A in %s", r.Load.Amps, r.Load.State)
	text += fmt.Sprintf("; circuit of %g V, %.2f m of it in series", r.Choice.Required.Volts, r.Choice.Required.Loop)
	if whole := r.Choice.Required.Circuit; whole > 0 {
		text += fmt.Sprintf(" of %.2f m", whole)
	}
	return text
}

func orUnknown(g unit.Gauge) string {
	if g.IsZero() {
		return "not recorded"
	}
	return g.String()
}

// rowsText is the table of a sheet.
func rowsText(j *model.Job, sheet model.SheetName, rows []size.Row, survey *size.Survey) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s, sheet %s: the thinnest sizes that satisfy everything\n\n", clean.Line(j.Title), sheet)
	fmt.Fprintf(&b, "  %-6s %-16s %-16s %8s  %-9s %-9s %-7s %s\n", "wire", "from", "to", "most A", "now", "needed", "fuse A", "decided by")
	var idle []string
	for _, r := range rows {
		if r.Idle {
			idle = append(idle, string(r.Wire.ID))
			continue
		}
		fmt.Fprintf(&b, "%s%-6s %-16s %-16s %8.1f  %-9s %-9s %-7s %s\n", rowMark(r), r.Wire.ID, r.Wire.From, r.Wire.To, mostAmps(r),
			orUnknown(r.Wire.Gauge), neededText(r), rowFuse(r), rowReason(r))
	}
	if len(idle) > 0 {
		fmt.Fprintf(&b, "\n%s: %s\n", idleText(survey), strings.Join(idle, ", "))
	}
	leftOutText(&b, survey)
	assumedText(&b, assumptions(rows))
	b.WriteString("\n! too thin  ? not recorded. --wire shows the figures of one. The pieces of a circuit share its drop by their lengths.\n" + sizeCaution)
	return b.String()
}

func rowMark(r size.Row) string {
	switch {
	case r.Thin() || r.Choice.Why != "":
		return "! "
	case r.Wire.Gauge.IsZero() || r.Missing != "":
		return "? "
	}
	return "  "
}

// mostAmps is the largest current, of the duty if there is one.
func mostAmps(r size.Row) float64 {
	most := r.Load.Amps
	for _, s := range r.Load.Duty {
		most = max(most, s.Amps)
	}
	return most
}

func neededText(r size.Row) string {
	if r.Choice.Gauge.IsZero() {
		return "none"
	}
	return r.Choice.Gauge.String()
}

func rowFuse(r size.Row) string {
	if r.Choice.Fuse.Rating.Amperes == 0 {
		return "-"
	}
	return fmt.Sprintf("%g", r.Choice.Fuse.Rating.Amperes)
}

func rowReason(r size.Row) string {
	switch {
	case r.Missing != "":
		return clean.Line(r.Missing)
	case r.Choice.Why != "":
		return "no size satisfies everything"
	}
	return demandsText(r.Choice.Decided)
}

// assumptions lists each assumption once, with the wires that it stands for if they are
// few.
func assumptions(rows []size.Row) []string {
	var order []string
	wires := map[string][]string{}
	for _, r := range rows {
		for _, text := range r.Choice.Required.Assumed {
			if wires[text] == nil {
				order = append(order, text)
			}
			wires[text] = append(wires[text], string(r.Wire.ID))
		}
	}
	list := make([]string, len(order))
	for i, text := range order {
		const few = 6
		list[i] = text
		if of := wires[text]; len(of) <= few {
			list[i] += " (" + strings.Join(of, ", ") + ")"
		}
	}
	return list
}
