package heat

import (
	"fmt"
	"math"
	"strings"
	"unicode"

	"example.com/lugbook/model/unit"
)

// Stage is a current that flows for a time.
type Stage struct {
	Amps, Seconds float64
}

// String is the stage as people write it: 300 A 30 s.
func (s Stage) String() string { return unit.A(s.Amps).String() + " " + clock(s.Seconds) }

// clock writes a time in the largest unit that leaves a whole number.
func clock(seconds float64) string {
	for _, in := range []struct {
		name  string
		worth float64
	}{{"h", 3600}, {"min", 60}} {
		if n := seconds / in.worth; n >= 1 && n == math.Trunc(n) {
			return fmt.Sprintf("%.0f %s", n, in.name)
		}
	}
	return unit.S(seconds).String()
}

// Duty is stages that follow each other again and again.
type Duty []Stage

// Settling is how long a drive is taken to run at its continuous rating between two
// peaks: an hour, the usual time of such a rating (from memory).
const Settling = 3600

// FromRatings is the duty that a drive's ratings describe: its peak current for the
// seconds that it is given for, then its continuous current for the time Settling, and
// again. Without a peak above the continuous current the latter flows all the time.
func FromRatings(continuous, peak, peakSeconds float64) Duty {
	if peak <= continuous || peakSeconds <= 0 {
		return Duty{{continuous, Settling}}
	}
	return Duty{{peak, peakSeconds}, {continuous, Settling}}
}

// dutyExpected says what a duty looks like.
const dutyExpected = "currents with their times such as 300 A 30 s, 90 A 1 h"

// ParseDuty reads a duty: stages with a comma between, each a current and how long it
// flows, such as 300 A 30 s, 90 A 1 h. "for" may stand between current and time.
func ParseDuty(text string) (Duty, error) {
	var d Duty
	for _, part := range strings.Split(text, ",") {
		stage, err := parseStage(strings.TrimSpace(part))
		if err != nil {
			return nil, err
		}
		d = append(d, stage)
	}
	return d, nil
}

func parseStage(text string) (Stage, error) {
	if text == "" {
		return Stage{}, fmt.Errorf("a stage of the duty is empty: expected %s", dutyExpected)
	}
	current, time := splitStage(text)
	amps, err := unit.ParseAmpere(current)
	if err != nil {
		return Stage{}, fmt.Errorf("duty %q: %w", text, err)
	}
	if time == "" {
		return Stage{}, fmt.Errorf("%q does not say how long: expected %s", text, dutyExpected)
	}
	seconds, err := unit.ParseSecond(time)
	if err != nil {
		return Stage{}, fmt.Errorf("duty %q: %w", text, err)
	}
	switch {
	case amps.Amperes() < 0:
		return Stage{}, fmt.Errorf("%q has a current below 0: write it without a sign, either direction warms a conductor", text)
	case seconds.Seconds() <= 0:
		return Stage{}, fmt.Errorf("%q takes no time: expected %s", text, dutyExpected)
	}
	return Stage{amps.Amperes(), seconds.Seconds()}, nil
}

// splitStage cuts a stage into current and time: the time begins with the first digit
// or dot after a unit.
func splitStage(text string) (current, time string) {
	lettered := false
	for i, r := range text {
		switch {
		case lettered && (r >= '0' && r <= '9' || r == '.'):
			current = strings.TrimSuffix(strings.TrimSpace(text[:i]), " for")
			return strings.TrimSpace(current), text[i:]
		case unicode.IsLetter(r):
			lettered = true
		}
	}
	return text, ""
}

// String is the duty as ParseDuty reads it.
func (d Duty) String() string {
	stages := make([]string, len(d))
	for i, s := range d {
		stages[i] = s.String()
	}
	return strings.Join(stages, ", ")
}

// Period is how long in seconds the duty takes once.
func (d Duty) Period() float64 {
	total := 0.0
	for _, s := range d {
		total += s.Seconds
	}
	return total
}

// RMS is the root-mean-square current in amperes: the steady one that loses as much
// heat. It is 0 for a duty that takes no time. Cable.RMSHolds says whether it stands
// for the duty.
func (d Duty) RMS() float64 {
	period := d.Period()
	if period <= 0 {
		return 0
	}
	mean := 0.0
	for _, s := range d {
		mean += s.Amps * s.Amps * (s.Seconds / period)
	}
	return math.Sqrt(mean)
}

// DutyFactor is the root-mean-square of a current that flows for a share of the time
// and not at all for the rest, as a share of that current: the square root that the
// tables of NEC 630.11(A) and 630.31(A)(2) round.
func DutyFactor(share float64) float64 { return math.Sqrt(min(max(share, 0), 1)) }
