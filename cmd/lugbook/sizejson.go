package main

import (
	"math"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/size"
)

// The shapes of the size command's JSON. Amperes, volts, metres and degrees Celsius.
type (
	sizesJSON struct {
		Told    []string     `json:"told"`
		Choices []choiceJSON `json:"choices"`
		Caution string       `json:"caution"`
	}
	choiceJSON struct {
		Series     size.Series     `json:"series"`
		Size       string          `json:"size"`
		Fuse       float64         `json:"fuse"`
		AsSlowAs   string          `json:"as_slow_as,omitempty"`
		Why        string          `json:"why,omitempty"`
		Decided    []size.Demand   `json:"decided_by"`
		RunnerUp   *needJSON       `json:"runner_up,omitempty"`
		Needs      []needJSON      `json:"needs"`
		Candidates []candidateJSON `json:"candidates,omitempty"`
		Assumed    []string        `json:"assumed"`
	}
	needJSON struct {
		Demand size.Demand `json:"demand"`
		Size   string      `json:"size"`
	}
	candidateJSON struct {
		Size     string        `json:"size"`
		Amperes  float64       `json:"carries"`
		Verdicts []verdictJSON `json:"verdicts"`
	}
	verdictJSON struct {
		Demand size.Demand `json:"demand"`
		Status size.Status `json:"status"`
		Text   string      `json:"text"`
	}
	sheetSizesJSON struct {
		Job     string          `json:"job"`
		Sheet   model.SheetName `json:"sheet"`
		Wires   []rowJSON       `json:"wires"`
		LeftOut []string        `json:"left_out"`
		Failed  []string        `json:"not_computed"`
		Caution string          `json:"caution"`
	}
	rowJSON struct {
		Wire    model.WireID   `json:"wire"`
		From    string         `json:"from"`
		To      string         `json:"to"`
		Present string         `json:"present"`
		Thin    bool           `json:"thin"`
		Idle    bool           `json:"idle"`
		Missing string         `json:"missing,omitempty"`
		Amps    float64        `json:"amperes"`
		State   string         `json:"state"`
		Duty    []stageJSON    `json:"duty,omitempty"`
		Loop    float64        `json:"loop_metres,omitempty"`    // of conductor that carries its current
		Circuit float64        `json:"circuit_metres,omitempty"` // of the whole circuit that shares the drop
		Behind  *float64       `json:"behind,omitempty"`         // nothing if nothing limits it
		Choice  *choiceJSON    `json:"choice,omitempty"`
		Now     *candidateJSON `json:"now,omitempty"`
	}
	stageJSON struct {
		Amps    float64 `json:"amperes"`
		Seconds float64 `json:"seconds"`
	}
)

func choicesJSON(told []string, choices []size.Choice) sizesJSON {
	out := sizesJSON{Told: append([]string{}, told...), Caution: strings.TrimSpace(sizeCaution)}
	for _, c := range choices {
		one := oneChoice(c)
		for _, x := range c.Candidates {
			one.Candidates = append(one.Candidates, oneCandidate(x))
		}
		out.Choices = append(out.Choices, one)
	}
	return out
}

func oneChoice(c size.Choice) choiceJSON {
	out := choiceJSON{
		Series: c.Series, Size: c.Gauge.String(), Fuse: c.Fuse.Rating.Amperes, AsSlowAs: c.Fuse.AsSlow, Why: c.Why,
		Decided: append([]size.Demand{}, c.Decided...), Assumed: append([]string{}, c.Required.Assumed...), Needs: []needJSON{},
	}
	if c.RunnerUp.Demand != "" {
		out.RunnerUp = &needJSON{c.RunnerUp.Demand, c.RunnerUp.Gauge.String()}
	}
	for _, n := range c.Needs {
		out.Needs = append(out.Needs, needJSON{n.Demand, n.Gauge.String()})
	}
	return out
}

func oneCandidate(x size.Candidate) candidateJSON {
	out := candidateJSON{Size: x.Gauge.String(), Amperes: x.Amperes, Verdicts: []verdictJSON{}}
	for _, v := range x.Verdicts {
		out.Verdicts = append(out.Verdicts, verdictJSON(v))
	}
	return out
}

func rowsJSON(j *model.Job, sheet model.SheetName, rows []size.Row, survey *size.Survey) sheetSizesJSON {
	out := sheetSizesJSON{
		Job: j.Title, Sheet: sheet, Wires: []rowJSON{}, LeftOut: append([]string{}, survey.Skipped()...),
		Failed: append([]string{}, survey.Unsolved()...), Caution: strings.TrimSpace(sizeCaution),
	}
	for _, r := range rows {
		out.Wires = append(out.Wires, oneRow(r))
	}
	return out
}

func oneRow(r size.Row) rowJSON {
	out := rowJSON{
		Wire: r.Wire.ID, From: r.Wire.From.String(), To: r.Wire.To.String(), Present: r.Wire.Gauge.String(),
		Thin: r.Thin(), Idle: r.Idle, Missing: r.Missing, Amps: r.Load.Amps, State: r.Load.State,
	}
	for _, s := range r.Load.Duty {
		out.Duty = append(out.Duty, stageJSON(s))
	}
	if !math.IsInf(r.Behind, 1) {
		out.Behind = &r.Behind
	}
	if r.Idle || r.Missing != "" {
		return out
	}
	out.Loop = r.Choice.Required.Loop
	out.Circuit = max(out.Loop, r.Choice.Required.Circuit)
	choice := oneChoice(r.Choice)
	out.Choice = &choice
	if !r.Present.Gauge.IsZero() {
		now := oneCandidate(r.Present)
		out.Now = &now
	}
	return out
}
