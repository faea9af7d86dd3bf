package oracle

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model/rule"
)

// ownRules are the rules that tell of a class of hazard itself, not of what comes with it.
var ownRules = map[string][]string{
	heat: {
		"no-main-fuse", "tap-unfused", "fuse-too-large", "feeds-add-up", "source-exceeds-wire", "return-overload", "wire-too-thin",
		"fuse-too-far", "device-too-slow", "reducer-overloaded", "contact-overload", "battery-shorted", "pack-reversed", "battery-reversed", "backfeed",
	},
	reverse: {
		"pack-reversed", "battery-reversed", "charger-reversed", "controller-reversed", "reducer-input-reversed", "reducer-output-reversed",
		"reducer-swapped", "diode-reversed", "load-reversed", "meter-reversed", "shunt-reversed", "battery-shorted", "coil-suppression",
	},
	motion: {"drives-unasked", "control-bypassed", "key-input-live", "backfeed"},
	coil:   {"coil-always-fed", "drives-unasked", "control-bypassed", "key-input-live", "backfeed"},
	volts:  {"over-voltage", "fuse-volts", "reducer-swapped", "not-made-for-dc"},
	short:  {"battery-shorted", "output-shorted", "fuse-opens", "starved", "reducer-swapped", "diode-reversed", "coil-suppression", "pack-reversed", "battery-reversed", "backfeed"},
	frame:  {"pack-on-frame"},
	still:  {"does-not-drive", "no-rest", "fuse-opens", "throttle-wiring"},
	charge: {"charger-mismatch", "fuse-opens", "charges-nothing", "charger-reversed", "string-count"},
}

func TestOwnRulesAreRules(t *testing.T) {
	for _, c := range classes {
		require.NotEmpty(t, ownRules[c], c)
		for _, id := range ownRules[c] {
			require.NotNil(t, rule.Find(id), "%s: %s", c, id)
		}
	}
}

// spokenOf reports whether a rule of a class's own speaks.
func (r *trial) spokenOf(class string) bool {
	for _, f := range r.findings {
		if slices.Contains(ownRules[class], f.Rule) {
			return true
		}
	}
	return false
}
