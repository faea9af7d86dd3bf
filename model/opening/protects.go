package opening

import (
	"fmt"
	"math"
)

// Answer is the outcome of a question that bounds may leave open.
type Answer string

// The answers.
const (
	Yes      Answer = "yes"
	No       Answer = "no"
	NotKnown Answer = "not known" // the bounds allow either
)

// Verdict is an answer with its reason.
type Verdict struct {
	Answer   Answer
	From     float64 // current in A from which the answer is not yes; 0 if it is yes
	Recalled bool    // figures from memory decided it
	Why      string  // in words, with the numbers
}

// Protects answers whether a device opens before a conductor is harmed that withstands a
// current in amperes for a time in seconds.
func Protects(c Curve, amps, withstandSeconds float64) Verdict {
	b := c.Band(amps)
	v := Verdict{From: amps}
	if math.IsInf(withstandSeconds, 1) {
		return Verdict{Answer: Yes, Why: fmt.Sprintf("the conductor withstands %s A for ever", figures(amps))}
	}
	limit := fmt.Sprintf("the conductor withstands %s A for %s", figures(amps), Span(withstandSeconds))
	switch {
	case b.Most <= withstandSeconds:
		most := c.most(amps)
		return Verdict{Answer: Yes, Recalled: most.gate.Recalled, Why: c.says(most) + "; " + limit}
	case b.Least > withstandSeconds:
		least := c.least(amps)
		v.Answer, v.Recalled, v.Why = No, least.gate.Recalled, c.says(least)+"; "+limit
	case !b.Known:
		v.Answer, v.Why = NotKnown, c.silent(" at "+figures(amps)+" A")+"; "+limit
	case math.IsInf(b.Most, 1):
		v.Answer, v.Recalled = NotKnown, b.Recalled
		v.Why = fmt.Sprintf("%s may never open at %s A; %s", c.name(), figures(amps), limit)
	default:
		v.Answer, v.Recalled = NotKnown, b.Recalled
		v.Why = c.says(c.most(amps)) + ", perhaps sooner; " + limit
	}
	return v
}

// Worst is the current between two, in amperes, at which the device may let the most heat
// through, and that I2t in A2s. A fault along a conductor can have any current between
// those at its ends, and a device that is slow at a small one may be quick at a large one.
// It reports false, with the least current without a bound, if the device may never open.
func (c Curve) Worst(fromAmps, toAmps float64) (amps, i2t float64, ok bool) {
	for _, at := range edges(fromAmps, toAmps, c) {
		heat, bounded := c.LetThrough(at)
		if !bounded {
			return at, 0, false
		}
		if heat > i2t {
			amps, i2t = at, heat
		}
	}
	return amps, i2t, true
}

// name is the device in words.
func (c Curve) name() string {
	if c.Title == "" {
		return "the device"
	}
	return "the " + c.Title
}

// says is a bound as a sentence, with a warning if it is from memory.
func (c Curve) says(b bound) string {
	return c.name() + " " + b.words() + warning(b.gate.Recalled)
}

// warning is what is said of figures from memory.
func warning(recalled bool) string {
	if !recalled {
		return ""
	}
	return " (" + FromMemory + ")"
}

// silent says that nothing is known, at a current in words or at all, and why if there is
// a reason.
func (c Curve) silent(at string) string {
	words := "nothing says when " + c.name() + " opens" + at
	if c.Note != "" {
		words += ": " + c.Note
	}
	return words
}
