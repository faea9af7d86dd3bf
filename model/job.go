package model

import "example.com/lugbook/model/unit"

// FileVersion is the version of the job file that this program writes.
const FileVersion = 1

// Job is one cart's file: who it is for, its system voltage, its zones and the
// sheets that say how it is wired.
type Job struct {
	Version     int          `yaml:"lugbook,required" doc:"version of the job file format; this program reads and writes 1"`
	Title       string       `yaml:"title,required" doc:"short name of the job, printed on every drawing"`
	Cart        string       `yaml:"cart" doc:"the cart in plain words: seats, drive, age, how to tell it from its sisters"`
	System      unit.Volt    `yaml:"system" doc:"nominal system voltage, such as 48 V"`
	Basis       Basis        `yaml:"basis" doc:"set of rules that the job is judged by where standards differ; us-small-craft unless said"`
	Limits      []Limit      `yaml:"limits,keyed,flow" doc:"limits that this job sets for itself, above those of its basis"`
	Coldest     unit.Celsius `yaml:"coldest" doc:"coldest temperature in which the cart is charged"`
	Hottest     unit.Celsius `yaml:"hottest" doc:"hottest temperature around the wiring, but in zones that say their own; 30 C unless said"`
	Customer    string       `yaml:"customer" doc:"customer reference, as the shop files it"`
	Technician  string       `yaml:"technician" doc:"who recorded and planned"`
	Date        string       `yaml:"date" doc:"date of the record, year-month-day; printed on drawings"`
	Revision    string       `yaml:"revision" doc:"revision letter or number of the record"`
	Note        string       `yaml:"note" doc:"anything worth knowing"`
	Photos      []string     `yaml:"photos,flow" doc:"photos by path relative to the job file"`
	Zones       []Zone       `yaml:"zones,keyed,flow" doc:"places on the cart"`
	Runs        []Run        `yaml:"runs,flow" doc:"routed lengths between neighbouring zones"`
	Definitions []Definition `yaml:"definitions,keyed" doc:"part definitions of this job alone"`
	States      []OwnState   `yaml:"states,keyed,flow" doc:"states of the controls that somebody asks about besides those that follow from the controls"`
	Meter       *Meter       `yaml:"meter,flow" doc:"the meter that readings are taken with"`
	Sheets      []Sheet      `yaml:"sheets,keyed" doc:"the states of the wiring: as-found, plan, as-built"`
	Readings    []Reading    `yaml:"readings,flow" doc:"what a meter showed on the cart"`
}

// Zone is a place on the cart, such as the pack tray or the dash.
type Zone struct {
	ID      ZoneID       `yaml:",key"`
	Name    string       `yaml:"name" doc:"what the place is called in words"`
	Hottest unit.Celsius `yaml:"hottest" doc:"hottest temperature there, such as 50 C beside a motor"`
	Note    string       `yaml:"note" doc:"anything worth knowing"`
}

// Run is the routed length of conductor between two neighbouring zones.
type Run struct {
	From   ZoneID      `yaml:"from,required" doc:"zone at one end"`
	To     ZoneID      `yaml:"to,required" doc:"zone at the other end"`
	Length unit.Length `yaml:"length,required" doc:"length along the route, such as 0.8 m"`
}

// ZoneID names a zone of a job.
type ZoneID string

// Sheet finds a sheet by name; nil if the job has none of that name.
func (j *Job) Sheet(name SheetName) *Sheet {
	for i := range j.Sheets {
		if j.Sheets[i].Name == name {
			return &j.Sheets[i]
		}
	}
	return nil
}

// Zone finds a zone by id; nil if the job has none of that id.
func (j *Job) Zone(id ZoneID) *Zone {
	for i := range j.Zones {
		if j.Zones[i].ID == id {
			return &j.Zones[i]
		}
	}
	return nil
}

// RunLength is the routed length between two neighbouring zones, in either direction.
// It is false if the job records no such run.
func (j *Job) RunLength(a, b ZoneID) (unit.Length, bool) {
	for _, r := range j.Runs {
		if r.From == a && r.To == b || r.From == b && r.To == a {
			return r.Length, true
		}
	}
	return unit.Length{}, false
}
