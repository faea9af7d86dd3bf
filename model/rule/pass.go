package rule

import (
	"errors"

	"example.com/lugbook/model"
	"example.com/lugbook/model/harness"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/protect"
	"example.com/lugbook/model/size"
	"example.com/lugbook/model/state"
	"example.com/lugbook/model/support"
)

// Pass is one check of one sheet: what a rule may look at, and where it reports.
// Everything that is computed for a rule is computed once for all of them.
type Pass struct {
	Job   *model.Job
	Sheet *model.Sheet
	Net   *network.Network

	rule     *Rule
	findings *[]Finding
	shared   *shared
}

// shared holds what was computed so far.
type shared struct {
	protection *network.Protection
	guard      *protect.Survey
	support    *support.Report
	currents   *size.Survey
	harness    *harness.Harness
	plain      *network.Groups
	lies       map[model.WireID]*harness.Wire // how each wire lies
	sides      []feedSides
	survey     *survey
	fusing     *fusing
	hubs       func(network.Node) bool
	studs      []stud
	solved     []solved
	restless   []*network.ChatterError
	asked      bool // solved is complete
	uses       []use
	used       bool // uses is complete
	trials     []trial
	tried      bool // trials is complete
	opening    map[*network.Link]opened
	atOnce     map[*network.Solution]bool
	limits     map[string]limited
	bare       *bool // the drive has no controller; nil until asked
	noted      map[string]bool
	gaps       []gap
}

// solved is a state with its solution.
type solved struct {
	state    state.State
	solution *network.Solution
}

func newPass(job *model.Job, s *model.Sheet, lib *model.Catalogue) *Pass {
	return &Pass{
		Job: job, Sheet: s, Net: network.Build(job, s, lib),
		findings: new([]Finding), shared: &shared{noted: map[string]bool{}, atOnce: map[*network.Solution]bool{}, limits: map[string]limited{}},
	}
}

func (p *Pass) run(r *Rule) {
	own := *p
	own.rule = r
	r.Run(&own)
}

// report adds a finding. Whatever it does not say is taken from the rule.
func (p *Pass) report(f Finding) {
	f.Rule = p.rule.ID
	if f.Severity == "" {
		f.Severity = p.rule.Severity
	}
	if f.Basis == (Basis{}) {
		f.Basis = p.rule.Basis
	}
	if f.Remedy == "" {
		f.Remedy = p.rule.Remedy
	}
	*p.findings = append(*p.findings, f)
}

// protection is the flow of current through the protective devices.
func (p *Pass) protection() *network.Protection {
	if p.shared.protection == nil {
		p.shared.protection = p.Net.Protect()
	}
	return p.shared.protection
}

// guard tells what protects each conductor.
func (p *Pass) guard() *protect.Survey {
	if p.shared.guard == nil {
		p.shared.guard = protect.NewSurvey(p.Net)
	}
	return p.shared.guard
}

// support is what stands around the traction circuit: pre-charge, coils, charging, drain.
func (p *Pass) support() *support.Report {
	if p.shared.support == nil {
		p.shared.support = support.Of(p.Net, support.Options{})
	}
	return p.shared.support
}

// currents are what every wire carries, and what every load loses on the way.
func (p *Pass) currents() *size.Survey {
	if p.shared.currents == nil {
		p.shared.currents = size.Of(p.Net)
	}
	return p.shared.currents
}

// solved lists the states of the sheet with their solutions, computed when first asked
// for. A state without a solution is left out.
func (p *Pass) solved() []solved {
	p.solveStates()
	return p.shared.solved
}

// restless lists the errors of the states in which the sheet comes to no rest.
func (p *Pass) restless() []*network.ChatterError {
	p.solveStates()
	return p.shared.restless
}

func (p *Pass) solveStates() {
	if p.shared.asked {
		return
	}
	p.shared.asked = true
	for _, s := range p.Net.States() {
		solution, err := p.Net.Solve(s)
		var chatter *network.ChatterError
		switch {
		case errors.As(err, &chatter):
			p.shared.restless = append(p.shared.restless, chatter)
		case err == nil:
			p.shared.solved = append(p.shared.solved, solved{s, solution})
		}
	}
}
