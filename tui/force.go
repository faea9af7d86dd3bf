package tui

import (
	"errors"
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/lugbook/diagram/live"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/text"
	"example.com/lugbook/model"
	"example.com/lugbook/model/clean"
	"example.com/lugbook/model/meter"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
)

// noState is the word for no state in force.
const noState = "none"

// force is the state in force as computed: the solved network, and the drawing painted
// with it.
type force struct {
	of    stamp
	state string

	network  *network.Network
	bench    *meter.Bench // nil if the sheet comes to no rest
	solution *network.Solution
	feeds    []network.Feed
	shown    scene.State
	err      error

	picture *picture   // that it is painted on; nil if none
	grid    *text.Grid // painted
}

// solver computes a state of a sheet; nil if there is nothing to compute.
type solver func(on *picture) *force

// solver prepares the computation of the state in force; nil if none is. What it needs is
// looked up here, so that it may run beside the screen.
func (d *desk) solver() solver {
	s, in := d.state()
	if !in {
		return nil
	}
	job, sheet, lib, of, ascii := d.job(), d.sheet(), d.lib, d.forceStamp(), d.session.ASCII
	return func(on *picture) (f *force) {
		f = &force{of: of, state: s.Name, shown: scene.State{Name: s.Name, About: s.About}, picture: on}
		defer func() {
			if r := recover(); r != nil {
				f.err = fmt.Errorf("%s cannot be computed: %v", s.Name, r)
			}
		}()
		f.network = network.Build(job, sheet, lib)
		f.feeds = f.network.Feeds()
		if f.bench, f.err = meter.At(f.network, s); f.err == nil {
			f.solution = f.bench.Solution()
			f.shown = live.Of(f.network, f.solution)
			f.warm()
		} else {
			f.shown.Parts = restless(f.err)
		}
		if on != nil {
			page := on.page.In(f.shown)
			f.grid = text.Render(&page, text.Options{ASCII: ascii, Bare: true})
		}
		return f
	}
}

// warm takes a first reading, so that the ones that the screen asks for cost little: the
// bench keeps what it solves for them.
func (f *force) warm() {
	if low, high, ok := f.network.Poles(); ok {
		_, _ = f.bench.Volts(f.network.Point(high).At, f.network.Point(low).At)
	}
}

// restless marks the parts that come to no rest.
func restless(err error) map[string]scene.Working {
	var chatter *network.ChatterError
	if !errors.As(err, &chatter) {
		return nil
	}
	parts := map[string]scene.Working{}
	for _, l := range chatter.Links {
		parts[string(l.Part.ID)] = scene.Working{Word: "CHATTERS", Active: true}
	}
	return parts
}

// forceStamp is what the state in force is computed from, besides its name.
func (d *desk) forceStamp() stamp {
	return stamp{revision: d.history.Revision(), sheet: d.sheetName}
}

// inForce is the state in force as computed; nil if none is, or it is still being computed.
func (d *desk) inForce() *force {
	f := d.work.force
	if s, in := d.state(); !in || f == nil || f.of != d.forceStamp() || f.state != s.Name {
		return nil
	}
	return f
}

// grid is a picture as it is shown: the drawing is painted with the state in force if there is
// one. While a state is being computed anew, the drawing keeps the paint of the one before.
func (d *desk) grid(p *picture) *text.Grid {
	if p != d.work.picture {
		return p.grid
	}
	f := d.work.force
	if _, in := d.state(); in && f != nil && f.picture == d.work.picture && f.grid != nil && f.of.sheet == d.sheetName {
		return f.grid
	}
	return d.work.picture.grid
}

// shown is what a drawing shows of the state in force; nil if none is, or it has no rest.
func (d *desk) shown() *scene.State {
	f := d.inForce()
	if f == nil || f.err != nil {
		return nil
	}
	return &f.shown
}

// forced is the finished computation of a state.
type forced struct{ *force }

// energise starts to compute the state in force where that is out of date.
func (d *desk) energise() tea.Cmd {
	solve := d.solver()
	if solve == nil || d.work.solving {
		return nil
	}
	if f := d.inForce(); f != nil && f.picture == d.work.picture {
		return nil
	}
	d.work.solving = true
	on := d.work.picture
	return func() tea.Msg { return forced{solve(on)} }
}

// takeForce shows a state that was computed. One of an older revision is dropped.
func (d *desk) takeForce(f *force) tea.Cmd {
	d.work.solving = false
	d.keepForce(f)
	return d.refresh()
}

// keepForce keeps a computed state if it is the one in force, and says if it has no rest.
func (d *desk) keepForce(f *force) {
	s, in := d.state()
	if f == nil || !in || f.of != d.forceStamp() || f.state != s.Name {
		return
	}
	first := d.inForce() == nil
	d.work.force = f
	if f.err != nil && first {
		d.warn(clean.Line(f.err.Error()))
	}
}

// state is the state in force; false if none is, or this sheet does not have it.
func (d *desk) state() (state.State, bool) {
	if d.stateName == "" {
		return state.State{}, false
	}
	return state.Find(d.states(), d.stateName)
}

// states lists the states of the sheet, those of the job's own last.
func (d *desk) states() []state.State { return state.OfJob(d.job(), d.sheet(), d.cat()) }

// stateWords name the state in force for the status line.
func (d *desk) stateWords() string {
	s, in := d.state()
	if !in {
		return "state " + noState
	}
	if f := d.inForce(); f != nil && f.err != nil {
		return "state " + s.Name + ": NO REST"
	}
	return "state " + s.Name
}

// unrest names the parts that come to no rest in the state in force; empty if it has one.
func (f *force) unrest() string {
	var chatter *network.ChatterError
	if !errors.As(f.err, &chatter) {
		return ""
	}
	var names []string
	seen := map[model.PartID]bool{}
	for _, l := range chatter.Links {
		if id := l.Part.ID; !seen[id] {
			seen[id] = true
			names = append(names, string(id))
		}
	}
	return strings.Join(names, ", ")
}
