package rule_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model/rule"
)

// onPlan is a text whose last sheet is the plan, with these lines on top of the sheet as found.
func onPlan(text, changes string) rule.Example {
	return rule.Example{Of: text + "\nsheet plan\n" + changes}
}

// saysOf is what one rule says of an example, a line a finding.
func saysOf(t *testing.T, id string, e rule.Example) string {
	t.Helper()
	var said []string
	for _, f := range judged(t, e) {
		if f.Rule == id {
			said = append(said, string(f.Severity)+": "+f.Message)
		}
	}
	return strings.Join(said, "\n")
}

// TestPlansTellWhatTheOldSheetHad: what is lost between two sheets is told by what it was.
func TestPlansTellWhatTheOldSheetHad(t *testing.T) {
	const without = "no rec\nno c1\nno c2\nno c3\nno fus\nno c4\nno comp\nno w5\nwire w4 ctrl.B- b1.- gauge=4AWG insulation=105C\nno k7\n"
	moving := computer + "\npart motor motor-series\nwire m1 ctrl.B+ motor.A1 gauge=4AWG\nwire m2 motor.A2 motor.S1 gauge=4AWG\nwire m3 motor.S2 ctrl.M- gauge=4AWG"
	for _, c := range []struct {
		name, id string
		plan     rule.Example
		want     string
	}{
		{"the lead of the old lock-out is capped", "does-not-drive", onPlan(moving, without+"wire k4 sol.coil- capped gauge=16AWG\nno k5"),
			"fault: it does not drive with key on and pedal down: sol stays open with 0 V at its coil: sol.coil- has no way back to negative: its way ends at the capped end of k4, which went to comp.lockout-a on the as-found sheet"},
		{"the lead of the old lock-out is gone", "does-not-drive", onPlan(moving, without+"no k4\nno k5"),
			"fault: it does not drive with key on and pedal down: sol stays open with 0 V at its coil: sol.coil- has no way back to negative: no wire lands on sol.coil-; on the as-found sheet k4 led there from comp.lockout-a"},
		{"the buzzer was left out", "reverse-warning", onPlan(lead, "no buz\nno k8\nno k9\nno k10"),
			"caution: nothing sounds in reverse: the buzzer buz of the as-found sheet is not on this one"},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.Equal(t, c.want, saysOf(t, c.id, c.plan))
		})
	}
}
