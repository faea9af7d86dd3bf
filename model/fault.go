package model

import (
	"fmt"
	"strings"

	"example.com/lugbook/model/basis"
)

// Fault is one thing that makes a job inconsistent, such as a wire on a terminal
// that does not exist. Path leads to it through the job file's keys.
type Fault struct {
	Path     []string // keys from the top of the job file
	Text     string   // the offending text
	Message  string   // what is wrong
	Expected string   // what should stand there
	Known    []string // names that would be right, for a suggestion
}

// Error is the fault in one line.
func (f Fault) Error() string {
	s := fmt.Sprintf("%s: %s: %q", strings.Join(f.Path, "."), f.Message, f.Text)
	if f.Expected != "" {
		s += "; expected " + f.Expected
	}
	return s
}

// Check lists everything that is inconsistent in the job; none means that every
// reference leads somewhere and every order is complete.
func (j *Job) Check(lib *Catalogue) []Fault {
	c := checker{job: j, cat: lib.For(j)}
	c.head()
	for i := range j.Definitions {
		c.faults = append(c.faults, j.Definitions[i].check("definitions")...)
	}
	for i := range j.Sheets {
		c.sheet(&j.Sheets[i])
	}
	c.states()
	c.meter()
	c.readings()
	return c.faults
}

// maxSuggested is how many faults come with lists of all that would be right.
const maxSuggested = 200

type checker struct {
	job    *Job
	cat    *Catalogue
	faults []Fault
}

func (c *checker) report(f Fault) { c.faults = append(c.faults, f) }

// id checks the form of an id and that no other id of its kind differs only in case.
func (c *checker) id(path []string, id string, seen map[string]string) {
	if !ValidID(id) {
		c.report(Fault{Path: path, Text: id, Message: "not a usable id", Expected: "1 to 64 letters, digits, hyphens or underscores"})
	}
	fold := strings.ToLower(id)
	if first, taken := seen[fold]; taken {
		c.report(Fault{Path: path, Text: id, Message: "id used twice", Expected: "an id that differs from " + first + " in more than case"})
	}
	seen[fold] = id
}

func (c *checker) zone(path []string, id ZoneID) {
	if id == "" || c.job.Zone(id) != nil {
		return
	}
	c.report(Fault{Path: path, Text: string(id), Message: "no such zone", Expected: "a zone listed under zones", Known: zoneNames(c.job)})
}

func zoneNames(j *Job) []string {
	var names []string
	for _, z := range j.Zones {
		names = append(names, string(z.ID))
	}
	return names
}

func (c *checker) photos(path []string, photos []string) {
	for _, p := range photos {
		if !relativePath(p) {
			c.report(Fault{Path: append(path, "photos"), Text: p, Message: "not a usable photo path",
				Expected: "a path below the job file's folder with / between its parts, such as photos/sol.jpg"})
		}
	}
}

func (c *checker) head() {
	if c.job.Version != FileVersion {
		c.report(Fault{Path: []string{"lugbook"}, Text: fmt.Sprint(c.job.Version), Message: "unknown version of the job file",
			Expected: fmt.Sprintf("%d; a newer lugbook may be needed", FileVersion)})
	}
	if c.job.System.Volts() < 0 {
		c.report(Fault{Path: []string{"system"}, Text: c.job.System.String(), Message: "a system voltage below nothing", Expected: "a voltage such as 48 V"})
	}
	seen := map[string]string{}
	for _, z := range c.job.Zones {
		c.id([]string{"zones", string(z.ID)}, string(z.ID), seen)
	}
	for i, r := range c.job.Runs {
		path := []string{"runs", fmt.Sprint(i)}
		c.zone(append(path, "from"), r.From)
		c.zone(append(path, "to"), r.To)
	}
	c.photos(nil, c.job.Photos)
	words(c, []string{"basis"}, c.job.Basis)
	c.limits()
}

// limits checks that the limits of the job's own are limits that a rule asks for.
func (c *checker) limits() {
	var known []string
	for _, l := range basis.Limits() {
		known = append(known, l.Name)
	}
	for _, own := range c.job.Limits {
		path := []string{"limits", own.Name}
		row, ok := basis.Find(own.Name)
		if !ok {
			c.report(Fault{Path: path, Text: own.Name, Message: "no such limit", Expected: "a limit that a rule asks for", Known: known})
			continue
		}
		if IsBlank(own.Reason) {
			c.report(Fault{Path: path, Text: own.Name, Message: "a limit without a reason",
				Expected: "a reason: the paper that the limit is from, or who decided"})
		}
		base, _ := row.Of(false)
		if base.Dimension() != own.Value.Dimension() || !(own.Value.SI() > 0) {
			c.report(Fault{Path: join(path, "value"), Text: own.Value.String(), Message: "not a value for " + own.Name,
				Expected: fmt.Sprintf("a %s above nothing, such as %s", base.Dimension(), base)})
		}
	}
}
