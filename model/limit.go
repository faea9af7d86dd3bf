package model

import (
	"slices"

	"example.com/lugbook/model/basis"
	"example.com/lugbook/model/unit"
)

// Basis is the set of rules that a job is judged by where standards differ. The zero value
// is USSmallCraft.
type Basis string

// The sets of rules.
const (
	USSmallCraft Basis = "us-small-craft" // 33 CFR 183 subpart I with ABYC E-11: the base table
	HouseRule    Basis = "house-rule"     // stricter limits of our own choice
	MakersData   Basis = "makers-data"    // the limits that the job records from the makers' papers, the base table for the rest
)

// Names lists the words that a job file may use.
func (Basis) Names() []string {
	return []string{string(USSmallCraft), string(HouseRule), string(MakersData)}
}

// Limit is one limit that a job sets for itself.
type Limit struct {
	Name   string   `yaml:",key"`
	Value  unit.Any `yaml:"value,required,scalar" doc:"the limit with its unit, such as 4 %"`
	Reason string   `yaml:"reason,required" doc:"why this job has a limit of its own: the paper it is from, or who decided"`
}

// LimitOf is a limit of the table of package basis as the job has it: its own, else that of
// its basis, with where it is from. A name that the table lacks has the zero value.
func (j *Job) LimitOf(name string) (value unit.Any, source string) {
	if i := slices.IndexFunc(j.Limits, func(l Limit) bool { return l.Name == name }); i >= 0 {
		return j.Limits[i].Value, "limit of this job: " + j.Limits[i].Reason
	}
	row, _ := basis.Find(name)
	return row.Of(j.Basis == HouseRule)
}

// OwnLimit reports whether a limit of the job differs from the base table: it is the job's
// own, or the house rule's.
func (j *Job) OwnLimit(name string) bool {
	if slices.ContainsFunc(j.Limits, func(l Limit) bool { return l.Name == name }) {
		return true
	}
	row, _ := basis.Find(name)
	return j.Basis == HouseRule && row.House != ""
}
