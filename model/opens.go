package model

import "example.com/lugbook/model/unit"

// OpenPoint is one point of the time-current curve that the maker of a fuse or breaker
// publishes: at a current through it, the band of times in which it opens.
type OpenPoint struct {
	At    unit.Ampere `yaml:"at,required" doc:"current through it"`
	Least unit.Second `yaml:"least,required" doc:"shortest time in which it opens"`
	Most  unit.Second `yaml:"most" doc:"longest time in which it opens; left out if it may never open"`
}

// opens checks the curve of a part: currents that rise, each with a band of times.
func (c *checker) opens(path []string, points []OpenPoint) {
	for i, p := range points {
		switch {
		case p.At.Amperes() <= 0:
			c.report(Fault{Path: path, Text: p.At.String(), Message: "a point of the curve without a current", Expected: "a current above nothing"})
		case i > 0 && p.At.Amperes() <= points[i-1].At.Amperes():
			c.report(Fault{Path: path, Text: p.At.String(), Message: "points of the curve out of order", Expected: "currents that rise from point to point"})
		case p.Least.IsZero():
			c.report(Fault{Path: path, Text: p.At.String(), Message: "a point of the curve without a time", Expected: "the shortest time, such as 0.1 s"})
		case !p.Most.IsZero() && p.Most.Seconds() < p.Least.Seconds():
			c.report(Fault{Path: path, Text: p.Most.String(), Message: "a longest time below the shortest", Expected: "at least " + p.Least.String()})
		}
	}
}

// opening checks the form of the name of a standard's gates; what they are is known to
// those who compute with them.
func (c *checker) opening(path []string, name string) {
	if name != "" && !ValidID(name) {
		c.report(Fault{Path: path, Text: name, Message: "not a usable name", Expected: "1 to 64 letters, digits, hyphens or underscores"})
	}
}
