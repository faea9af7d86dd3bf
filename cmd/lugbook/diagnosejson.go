package main

import (
	"slices"
	"strings"

	"example.com/lugbook/model"
	"example.com/lugbook/model/diagnose"
)

// bandJSON is what is predicted of a reading, as a program reads it.
type bandJSON struct {
	Low      float64 `json:"low"`
	High     float64 `json:"high"`
	Floating bool    `json:"floating,omitempty"`
	Restless bool    `json:"restless,omitempty"`
}

func jsonOfBand(b diagnose.Band) bandJSON {
	return bandJSON{rounded(b.Low), rounded(b.High), b.Floating, b.Restless}
}

type comparedJSON struct {
	State    string   `json:"state"`
	Red      string   `json:"red,omitempty"`
	Black    string   `json:"black,omitempty"`
	Wire     string   `json:"wire,omitempty"`
	Shown    string   `json:"shown"`
	Expected bandJSON `json:"expected"`
	Verdict  string   `json:"verdict"`
	Explains bool     `json:"explained"`
}

type suspectJSON struct {
	ID          string     `json:"id"`
	Family      string     `json:"family"`
	Text        string     `json:"text"`
	Do          string     `json:"do"`
	Probability float64    `json:"probability"`
	Weight      float64    `json:"weight"`
	Basis       string     `json:"basis"`
	Predicts    []bandJSON `json:"predicts"`
	Tie         int        `json:"tie"`
}

type outcomeJSON struct {
	Band        bandJSON `json:"band"`
	Probability float64  `json:"probability"`
	Suspects    []string `json:"suspects"`
}

type proposalJSON struct {
	State    string        `json:"state"`
	Kind     string        `json:"unit"`
	Red      string        `json:"red"`
	Black    string        `json:"black"`
	Bits     float64       `json:"bits"`
	Minutes  float64       `json:"minutes"`
	Outcomes []outcomeJSON `json:"outcomes"`
}

type diagnosisJSON struct {
	Job       string          `json:"job"`
	Sheet     model.SheetName `json:"sheet"`
	Complaint string          `json:"complaint,omitempty"`
	Caution   string          `json:"caution"`
	Readings  []comparedJSON  `json:"readings"`
	Suspects  []suspectJSON   `json:"suspects"`
	NotListed float64         `json:"not-in-list"`
	Next      *proposalJSON   `json:"next"`
}

// json is the diagnosis for a program: the suspects that are worth a thought, with the
// number of the tie that they are in, or -1.
func (d diagnosis) json() diagnosisJSON {
	out := diagnosisJSON{
		Job: d.job.Title, Sheet: d.sheet, Complaint: d.complaint, Caution: strings.ReplaceAll(strings.TrimSpace(diagnoseCaution), "\n", " "),
		Readings: []comparedJSON{}, Suspects: []suspectJSON{}, NotListed: rounded(d.verdict.NotInList),
	}
	for i, r := range d.readings {
		out.Readings = append(out.Readings, comparedJSON{
			r.State, r.Red.String(), r.Black.String(), string(r.Wire), r.Shown(),
			jsonOfBand(d.verdict.Expected[i]), string(r.verdict), !slices.Contains(d.verdict.Contradicts, i),
		})
	}
	for k, s := range d.verdict.Suspects {
		tie := slices.IndexFunc(d.ties, func(t diagnose.Tie) bool { return slices.Contains(t.Suspects, k) })
		if tie < 0 && s.Probability < leastShown {
			continue
		}
		one := suspectJSON{s.ID, string(s.Family), s.Text, s.Do, rounded(s.Probability), s.Weight, s.Basis, []bandJSON{}, tie}
		for _, band := range s.Predicts {
			one.Predicts = append(one.Predicts, jsonOfBand(band))
		}
		out.Suspects = append(out.Suspects, one)
	}
	if d.more {
		out.Next = d.proposalJSON()
	}
	return out
}

func (d diagnosis) proposalJSON() *proposalJSON {
	p := d.next
	next := &proposalJSON{p.State, string(p.Kind), p.Red.String(), p.Black.String(), rounded(p.Bits), p.Minutes, []outcomeJSON{}}
	for _, o := range p.Outcomes {
		one := outcomeJSON{jsonOfBand(o.Band), rounded(o.Probability), []string{}}
		for _, k := range o.Suspects {
			one.Suspects = append(one.Suspects, d.verdict.Suspects[k].ID)
		}
		next.Outcomes = append(next.Outcomes, one)
	}
	return next
}
