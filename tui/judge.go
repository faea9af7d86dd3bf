package tui

import (
	"fmt"
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/lugbook/model"
	"example.com/lugbook/model/clean"
	"example.com/lugbook/model/lugline"
	"example.com/lugbook/model/meter"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
	"example.com/lugbook/model/unit"
	"example.com/lugbook/tui/theme"
)

// judgement is a reading beside what the sheet gives.
type judgement struct {
	expected meter.Reading
	verdict  meter.Verdict
	by       meter.Instrument
	err      error // why there is nothing to compare with
}

// judged are all readings of a job that were taken on a sheet, by their number from 1.
type judged struct {
	stamp
	list map[int]judgement
}

// sign is a judgement in one character.
func (j judgement) sign() string {
	switch {
	case j.err != nil:
		return "-"
	case j.verdict == meter.Pass:
		return "="
	case j.verdict == meter.Fail:
		return "!"
	}
	return "?"
}

// words say whether the sheet gives what was read.
func (j judgement) words() string {
	if j.err != nil {
		return "nothing to compare with: " + clean.Line(j.err.Error())
	}
	text := "not decided"
	switch j.verdict {
	case meter.Pass:
		text = "agrees"
	case meter.Fail:
		text = "does not agree"
	}
	text += ": expected " + j.expected.Show(j.by)
	if e := j.expected; !e.Open && !e.Floating {
		text += ", " + between(e.Figure(j.by, e.Low), e.Figure(j.by, e.High)+" "+e.Symbol())
	}
	return text
}

// why says what the meter may be off by, and what the expected value depends on.
func (j judgement) why() string {
	if j.err != nil || j.expected.Open {
		return ""
	}
	off := "the meter may be off by " + j.expected.Figure(j.by, j.expected.Off) + " " + j.expected.Symbol()
	return "; " + strings.Join(append([]string{off}, j.expected.Why...), "; ")
}

// bench is a sheet in a state, with the power on or off.
type bench struct {
	state string
	off   bool
}

// judge compares the readings of a sheet with what it gives, beside the screen.
func (d *desk) judge(of stamp) tea.Cmd {
	job, lib := d.job(), d.lib
	return func() (msg tea.Msg) {
		done := judged{stamp: of, list: map[int]judgement{}}
		defer func() {
			if r := recover(); r != nil {
				for i := range job.Readings {
					done.list[i+1] = judgement{err: fmt.Errorf("the comparison failed: %v", r)}
				}
				msg = done
			}
		}()
		n := network.Build(job, job.Sheet(of.sheet), lib)
		benches := map[bench]*meter.Bench{}
		for i := range job.Readings {
			if r := &job.Readings[i]; r.Sheet == of.sheet {
				done.list[i+1] = compare(n, benches, r)
			}
		}
		return done
	}
}

// compare judges one reading; benches are kept for the next ones.
func compare(n *network.Network, benches map[bench]*meter.Bench, r *model.Reading) judgement {
	j := judgement{by: meter.Of(n.Job().Meter)}
	at := bench{r.State, r.Dimension() == unit.Resistance}
	b := benches[at]
	if b == nil {
		s, ok := state.Find(n.States(), r.State)
		if !ok {
			j.err = fmt.Errorf("the sheet has no state %s", r.State)
			return j
		}
		set := meter.At
		if at.off {
			set = meter.Off
		}
		if b, j.err = set(n, s); j.err != nil {
			return j
		}
		benches[at] = b
	}
	switch {
	case r.Wire != "":
		j.expected, j.err = b.Amps(r.Wire)
	case at.off:
		j.expected, j.err = b.Ohms(r.Red, r.Black)
	default:
		j.expected, j.err = b.Volts(r.Red, r.Black)
	}
	if j.err == nil {
		j.verdict = j.expected.Judge(j.by, r.Value.SI(), r.Open)
	}
	return j
}

// compareReadings starts to judge the readings of the sheet where that is out of date.
func (d *desk) compareReadings() tea.Cmd {
	if d.work.judging || len(d.readingsHere()) == 0 || d.work.judged.stamp == d.forceStamp() {
		return nil
	}
	d.work.judging = true
	return d.judge(d.forceStamp())
}

// takeJudged keeps a comparison, and tells of the reading that was entered last. One of an
// older revision is dropped.
func (d *desk) takeJudged(m judged) tea.Cmd {
	d.work.judging = false
	if m.stamp == d.forceStamp() {
		d.work.judged = m
		d.work.news++
		if j, known := m.list[d.tell]; known {
			d.tellOf(&d.job().Readings[d.tell-1], j)
		}
		d.tell = 0
	}
	return d.refresh()
}

// tellOf says how a reading compares.
func (d *desk) tellOf(r *model.Reading, j judgement) {
	d.notice = notice{j.sign() + " " + r.Shown() + " " + d.placeWords(r) + " " + j.words(), theme.Caution}
	if j.err == nil && j.verdict == meter.Pass {
		d.notice.role = theme.Text
	}
}

// readingsHere are the numbers of the readings of the sheet that is shown.
func (d *desk) readingsHere() []int {
	var list []int
	for i := range d.job().Readings {
		if d.job().Readings[i].Sheet == d.sheetName {
			list = append(list, i+1)
		}
	}
	return list
}

// judgementOf is how a reading compares; false while it is being compared.
func (d *desk) judgementOf(number int) (judgement, bool) {
	if d.work.judged.stamp != d.forceStamp() {
		return judgement{}, false
	}
	j, known := d.work.judged.list[number]
	return j, known
}

// readingRows are the rows of a card that readings give.
func (d *desk) readingRows(t thing) []row {
	var rows []row
	for _, number := range d.readingsHere() {
		r := &d.job().Readings[number-1]
		if !slices.Contains(d.places(r), t) {
			continue
		}
		sign, words := d.judgementWords(number)
		about := words + "; " + r.Shown() + " on " + readWhere(r) + " in " + r.State + "; Enter corrects it, d takes it away"
		rows = append(rows, row{
			name: "read", value: sign + " " + r.Shown() + ", " + r.State + d.against(r, t), about: about,
			edit:   func(d *desk) tea.Cmd { return d.correct(number) },
			remove: func(d *desk) { d.removeReading(number) },
		})
	}
	return rows
}

// against says where the other probe was, if that was not the pack's negative.
func (d *desk) against(r *model.Reading, t thing) string {
	switch {
	case r.Wire != "" || r.Black == d.packPoles().low:
		return ""
	case ofReading(r) == t:
		return ", black " + lugline.Name(r.Black)
	}
	return ", red " + lugline.Name(r.Red)
}

// judgementWords are the sign and the words of how a reading compares.
func (d *desk) judgementWords(number int) (sign, words string) {
	j, known := d.judgementOf(number)
	if !known {
		return ".", "is being compared"
	}
	return j.sign(), j.words() + j.why()
}
