package size

import (
	"cmp"
	"fmt"

	"example.com/lugbook/model/conductor"
	"example.com/lugbook/model/heat"
	"example.com/lugbook/model/opening"
	"example.com/lugbook/model/unit"
)

// Requirement is what is asked of a conductor and its fuse. What is zero is not asked
// for, or has the default that Complete fills in.
type Requirement struct {
	Continuous float64   // A that flow all the time
	Duty       heat.Duty // stages that repeat, such as a drive's peaks; beside Continuous or in its place

	Volts float64 // nominal voltage of the circuit; the rules for fuses go by it

	Loop float64 // m of conductor out and back in which the drop counts; 0 if not known
	Drop float64 // most that may drop along Circuit, as a share of Volts; 0 if the drop does not matter

	// Circuit is the whole length in m of the circuit that Loop is a piece of, if that is
	// longer: the pieces share the drop by their lengths, so that all together keep within it.
	Circuit float64

	Insulation float64 // C, temperature of the insulation
	Ambient    float64 // C, where the conductor lies
	Bundle     int     // conductors that carry current in the same bundle, this one included
	Sheathed   bool    // it runs in a sheath with others

	Margin  float64       // share of the lasting current that the fuse is rated above it
	Opening opening.Gates // family of the fuse; the zero Gates if not chosen
	Fault   float64       // A of the largest fault that can flow in it; 0 if not known
	Unfused bool          // what feeds it limits its own current, as a drive does that of its motor: no fuse is asked for

	Studs []unit.Stud // that its lugs go on

	Assumed []string // what was taken for granted, one statement each
}

// The defaults. Common practice; the margin as NEC 210.20(A) has it for loads that last.
const (
	DefaultInsulation = 105  // C, battery cable
	DefaultAmbient    = 30   // C, that of the ampacity table
	DefaultMargin     = 0.25 // over the lasting current
	DefaultDrop       = 0.03 // ABYC E-11 11.14.2.6 for circuits that matter
)

// Complete fills in the defaults of what is not stated and says so under Assumed.
func (r Requirement) Complete() Requirement {
	r.Assumed = append([]string(nil), r.Assumed...)
	if r.Insulation == 0 {
		r.Insulation = DefaultInsulation
		r.assume("insulation of %d C", DefaultInsulation)
	}
	if r.Ambient == 0 {
		r.Ambient = DefaultAmbient
		r.assume("ambient of %d C", DefaultAmbient)
	}
	r.Margin = cmp.Or(r.Margin, DefaultMargin)
	if r.Drop == 0 && r.Loop > 0 {
		r.Drop = DefaultDrop
		r.assume("a drop of %s at most", percent(DefaultDrop))
	}
	r.Bundle = max(r.Bundle, 1)
	return r
}

// assume adds to what was taken for granted.
func (r *Requirement) assume(format string, args ...any) {
	r.Assumed = append(r.Assumed, fmt.Sprintf(format, args...))
}

// Check says what is missing or impossible in a requirement.
func (r Requirement) Check() error {
	switch {
	case r.Continuous < 0 || r.Drop < 0 || r.Loop < 0 || r.Margin < 0 || r.Fault < 0:
		return fmt.Errorf("currents, lengths, drop and margin are not below 0")
	case r.Continuous == 0 && len(r.Duty) == 0:
		return fmt.Errorf("say which current flows, or the duty")
	case r.Volts <= 0:
		return fmt.Errorf("say the nominal voltage of the circuit: the rules for fuses and the drop go by it")
	case r.Drop >= 1:
		return fmt.Errorf("a drop of %s leaves nothing: say less than 100 %%", percent(r.Drop))
	}
	return nil
}

// share is how much of the drop of its circuit belongs to Loop.
func (r Requirement) share() float64 {
	if r.Circuit <= r.Loop {
		return 1
	}
	return r.Loop / r.Circuit
}

// lasting is the current in A that stands for the heat of the load: the root mean square.
func (r Requirement) lasting() float64 { return max(r.Continuous, r.Duty.RMS()) }

// bundling is what the bundle leaves of the ampacity.
func (r Requirement) bundling() float64 { return conductor.BundleFactor(r.Bundle, r.Volts) }
