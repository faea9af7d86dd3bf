package main

import (
	"fmt"
	"strings"

	"example.com/lugbook/model/clean"
	"example.com/lugbook/model/diagnose"
)

// diagnoseCaution stands above everything that sends a person to a live cart.
const diagnoseCaution = "Live work: drive wheels off the ground and chocked, nobody on the cart, no rings or watches, eye protection;\n" +
	"probe with one hand, fused leads, meter on volts before it touches. Ohms only with the power off, the charger\n" +
	"unplugged and the capacitors down to below 5 V. The maker's instructions prevail.\n"

// text is the diagnosis for a person to read.
func (d diagnosis) text() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s, sheet %s: %d reading%s", clean.Line(d.job.Title), d.sheet, len(d.readings), plural(len(d.readings)))
	if d.complaint != "" {
		fmt.Fprintf(&b, ", complaint %q", clean.Line(d.complaint))
	}
	b.WriteString("\n" + diagnoseCaution)
	d.readingsText(&b)
	d.suspectsText(&b)
	d.nextText(&b)
	return b.String()
}

func plural(n int) string {
	if n == 1 {
		return ""
	}
	return "s"
}

func (d diagnosis) readingsText(b *strings.Builder) {
	if d.elsewhere > 0 {
		fmt.Fprintf(b, "\n%d reading%s of other sheets left out\n", d.elsewhere, plural(d.elsewhere))
	}
	if len(d.readings) == 0 {
		return
	}
	b.WriteString("\nreadings\n")
	for i, r := range d.readings {
		fmt.Fprintf(b, "  %s, %s: %s\n", clean.Line(r.State), clean.Line(r.Where()), clean.Line(r.Shown()))
		expected := d.verdict.Expected[i].Text(diagnose.KindOf(&r.Reading))
		if r.expected.Unit != "" {
			expected = r.expected.Show(d.by)
			if text := r.expected.Range(d.by); text != "" {
				expected += ", " + text
			}
		}
		fmt.Fprintf(b, "    sound: %s; %s\n", expected, r.verdict)
	}
	for _, i := range d.verdict.Contradicts {
		r := d.readings[i]
		fmt.Fprintf(b, "  no single fault on the list gives %s, %s: take it again, or look for two faults or for wiring that differs from the sheet\n",
			clean.Line(r.State), clean.Line(r.Where()))
	}
	if d.verdict.PackRead {
		fmt.Fprintf(b, "  the pack reads %.1f %% of the record; everything is compared with that\n", 100*d.verdict.PackScale)
	}
}

// leastShown is the probability from which suspects are listed.
const leastShown = 0.01

func (d diagnosis) suspectsText(b *strings.Builder) {
	b.WriteString("\nsuspects\n")
	shown := 0.0
	for _, tie := range d.ties {
		if tie.Probability < leastShown {
			continue
		}
		shown += tie.Probability
		d.tieText(b, tie)
	}
	if rest := 1 - d.verdict.NotInList - shown; rest > 0.005 {
		fmt.Fprintf(b, "  %3.0f %%  any of the others among %d faults\n", 100*rest, len(d.verdict.Suspects))
	}
	fmt.Fprintf(b, "  %3.0f %%  something that is not in the list\n", 100*d.verdict.NotInList)
}

// tieText writes suspects that read alike.
func (d diagnosis) tieText(b *strings.Builder, tie diagnose.Tie) {
	for i, k := range tie.Suspects {
		s := d.verdict.Suspects[k]
		lead := "        or "
		if i == 0 {
			lead = fmt.Sprintf("  %3.0f %%  ", 100*tie.Probability)
		}
		fmt.Fprintf(b, "%s%s\n", lead, clean.Line(s.Text))
		fmt.Fprintf(b, "           do: %s\n", clean.Line(s.Do))
		d.whyText(b, s)
		fmt.Fprintf(b, "           weight %.2g: %s\n", s.Weight, clean.Line(s.Basis))
	}
	switch {
	case tie.Hidden && len(tie.Suspects) > 1:
		b.WriteString("           these do not show in any reading on offer\n")
	case len(tie.Suspects) > 1:
		b.WriteString("           no reading on offer tells these apart; begin with the one that is done quickest\n")
	}
}

// whyText says which readings a suspect explains that a sound sheet does not, and which it
// does not explain.
func (d diagnosis) whyText(b *strings.Builder, s diagnose.Suspect) {
	for i := range d.readings {
		r := &d.readings[i]
		kind := diagnose.KindOf(&r.Reading)
		word := "explains"
		if s.Agrees[i] > diagnose.Clear {
			word = "does not explain"
		} else if d.soundAgrees(i) {
			continue
		}
		fmt.Fprintf(b, "           %s %s, %s: gives %s\n", word, clean.Line(r.State), clean.Line(r.Where()), s.Predicts[i].Text(kind))
	}
}

// soundAgrees reports whether a sound sheet explains a reading too.
func (d diagnosis) soundAgrees(reading int) bool {
	for _, s := range d.verdict.Suspects {
		if s.Family == diagnose.Healthy {
			return s.Agrees[reading] <= diagnose.Clear
		}
	}
	return false
}

// mostNamed is how many suspects are named beside what a reading may show.
const mostNamed = 3

func (d diagnosis) nextText(b *strings.Builder) {
	b.WriteString("\nnext\n")
	if !d.more {
		b.WriteString("  no reading on offer tells more: do what the first suspect says, then read again\n")
		return
	}
	p := d.next
	what := "volts"
	if p.Kind == diagnose.Ohms {
		what = "ohms, power off"
	}
	fmt.Fprintf(b, "  %s: red on %s, black on %s, %s (%.2f bit in about %g min)\n", clean.Line(p.State), p.Red, p.Black, what, p.Bits, p.Minutes)
	if about := d.aboutState(p.State); about != "" {
		fmt.Fprintf(b, "    %s: %s\n", clean.Line(p.State), clean.Line(about))
	}
	for _, o := range p.Outcomes {
		var names []string
		for _, k := range o.Suspects {
			if len(names) == mostNamed {
				names = append(names, fmt.Sprintf("%d more", len(o.Suspects)-mostNamed))
				break
			}
			names = append(names, clean.Line(d.verdict.Suspects[k].Text))
		}
		fmt.Fprintf(b, "    %s (%.0f %%) if %s\n", o.Band.Text(p.Kind), 100*o.Probability, strings.Join(names, "; "))
	}
}

func (d diagnosis) aboutState(name string) string {
	for _, s := range d.states {
		if s.Name == name {
			return s.About
		}
	}
	return ""
}
