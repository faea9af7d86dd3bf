package tui

import (
	"fmt"
	"reflect"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/lugbook/model"
	"example.com/lugbook/model/diagnose"
)

// diagnosis is what the readings of a sheet make of its faults.
type diagnosis struct {
	stamp
	complaint string

	found   *diagnose.Case
	of      *model.Job // that the faults were listed for, without its readings
	numbers []int      // of the readings that were weighed, from 1
	taken   []model.Reading
	verdict *diagnose.Verdict
	ties    []diagnose.Tie
	next    diagnose.Proposal
	more    bool // next is set
	err     error
}

// mostTied is how many of the leading suspects are compared with each other.
const mostTied = 12

// wantsDiagnosis reports whether the list that shows suspects is open.
func (d *desk) wantsDiagnosis() bool {
	for _, l := range d.layers {
		if list, ok := l.(*listLayer); ok && list.lead == readingsLead {
			return true
		}
	}
	return false
}

// diagnosed is the diagnosis of what is there now; nil while it is being computed.
func (d *desk) diagnosed() *diagnosis {
	if g := d.work.diagnosis; g != nil && g.stamp == d.forceStamp() && g.complaint == d.complaint {
		return g
	}
	return nil
}

// think starts to weigh the faults where that is wanted and out of date. The faults that
// were listed before are taken again if nothing but readings was added since.
func (d *desk) think() tea.Cmd {
	if d.work.thinking || !d.wantsDiagnosis() || d.diagnosed() != nil {
		return nil
	}
	d.work.thinking = true
	g := &diagnosis{stamp: d.forceStamp(), complaint: d.complaint, numbers: d.readingsHere()}
	for _, number := range g.numbers {
		g.taken = append(g.taken, d.job().Readings[number-1])
	}
	job, lib, before := d.job(), d.lib, d.work.diagnosis
	return func() (msg tea.Msg) {
		defer func() {
			if r := recover(); r != nil {
				g.err = fmt.Errorf("the faults cannot be weighed: %v", r)
				msg = g
			}
		}()
		g.err = g.weigh(job, lib, before)
		return g
	}
}

// weigh lists the faults, weighs them and looks for the next reading.
func (g *diagnosis) weigh(job *model.Job, lib *model.Catalogue, before *diagnosis) (err error) {
	bare := *job
	bare.Readings = nil
	g.of = &bare
	if before != nil && before.found != nil && before.sheet == g.sheet && reflect.DeepEqual(before.of, g.of) {
		g.found = before.found
	} else if g.found, err = diagnose.New(job, g.sheet, lib); err != nil {
		return err
	}
	if g.verdict, err = g.found.Rank(g.taken, g.complaint); err != nil {
		return err
	}
	var from diagnose.Place
	if n := len(g.taken); n > 0 {
		from = g.found.PlaceOf(&g.taken[n-1])
	}
	g.next, g.more = g.found.Next(g.verdict, from)
	g.ties = g.found.Ties(g.verdict, mostTied)
	return nil
}

// takeDiagnosis keeps a diagnosis. One of an older revision serves only to list no faults
// twice.
func (d *desk) takeDiagnosis(g *diagnosis) tea.Cmd {
	d.work.thinking = false
	d.work.diagnosis = g
	d.work.news++
	return d.refresh()
}
