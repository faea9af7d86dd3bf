package part

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// figure is a rating in SI. Ratings print as a number and a unit.
func figure(t *testing.T, kind, name string) float64 {
	t.Helper()
	d := Library().Definition(kind)
	require.NotNil(t, d, kind)
	r, ok := d.Rating(name)
	require.True(t, ok, "%s: %s", kind, name)
	digits, mark, _ := strings.Cut(r.Value.String(), " ")
	n, err := strconv.ParseFloat(digits, 64)
	require.NoError(t, err)
	switch {
	case mark == "%":
		return n / 100
	case strings.HasPrefix(mark, "m"):
		return n / 1e3
	case strings.HasPrefix(mark, "k"):
		return n * 1e3
	}
	return n
}

// Rest voltages at 100 % charge and 77 F: table of the battery industry (BCI), from
// memory. Strings: 48 V of eight 6 V, six 8 V or four 12 V batteries.
func TestLeadBatteriesAgreeWithTheIndustryTable(t *testing.T) {
	for _, c := range []struct {
		kind           string
		nominal, rest  float64
		cells, in48    float64
		string48AtRest float64
	}{
		{"lead-battery-6v", 6, 6.32, 3, 8, 50.6},
		{"lead-battery-8v", 8, 8.43, 4, 6, 50.6},
		{"lead-battery-12v", 12, 12.65, 6, 4, 50.6},
	} {
		require.InDelta(t, c.nominal, figure(t, c.kind, "voltage"), 1e-9)
		require.InDelta(t, c.rest, figure(t, c.kind, "rest-voltage"), 1e-9)
		require.InDelta(t, c.cells, figure(t, c.kind, "cells"), 1e-9)
		require.InDelta(t, 48, c.in48*figure(t, c.kind, "voltage"), 1e-9)
		require.InDelta(t, c.string48AtRest, c.in48*figure(t, c.kind, "rest-voltage"), 0.05)
		require.InDelta(t, 2.45*c.cells, figure(t, c.kind, "full-voltage"), 0.01, "2.45 V a cell, common practice")
		require.InDelta(t, 1.75*c.cells, figure(t, c.kind, "cutoff-voltage"), 0.01, "1.75 V a cell, common practice")
	}
}

// Voltages of a LiFePO4 cell: 3.2 V nominal, 3.65 V full, 2.5 V floor, as makers of
// cells commonly publish.
func TestLithiumPacksAgreeWithTheirCells(t *testing.T) {
	for _, c := range []struct {
		kind                       string
		cells                      float64
		nominal, full, floor, rest float64
	}{
		{"lithium-pack-12", 12, 38.4, 43.8, 30, 40.0},
		{"lithium-pack-16", 16, 51.2, 58.4, 40, 53.3},
		{"lithium-pack-24", 24, 76.8, 87.6, 60, 79.9},
	} {
		require.InDelta(t, c.cells, figure(t, c.kind, "cells"), 1e-9)
		require.InDelta(t, c.nominal, figure(t, c.kind, "voltage"), 1e-9)
		require.InDelta(t, c.full, figure(t, c.kind, "full-voltage"), 1e-9)
		require.InDelta(t, c.full, figure(t, c.kind, "charge-voltage"), 1e-9)
		require.InDelta(t, c.floor, figure(t, c.kind, "cutoff-voltage"), 1e-9)
		require.InDelta(t, c.rest, figure(t, c.kind, "rest-voltage"), 1e-9)
		require.InDelta(t, 3.33*c.cells, figure(t, c.kind, "rest-voltage"), 0.05)
		require.Greater(t, figure(t, c.kind, "peak-current"), figure(t, c.kind, "continuous-current"))
	}
}

func TestSourcesObeyOhmsLaw(t *testing.T) {
	for _, kind := range []string{"lead-battery-6v", "lead-battery-8v", "lead-battery-12v", "lithium-pack-12", "lithium-pack-16", "lithium-pack-24"} {
		rest, ri := figure(t, kind, "rest-voltage"), figure(t, kind, "internal-resistance")
		require.InEpsilon(t, rest/ri, figure(t, kind, "fault-current"), 0.005, kind)
		require.Less(t, figure(t, kind, "cutoff-voltage"), rest, kind)
		require.Less(t, rest, figure(t, kind, "full-voltage"), kind)
	}
}

// class is a system with the parts that are meant for it.
var classes = []struct{ pack, contactor, controller, charger, reducer, precharge string }{
	{"lithium-pack-12", "contactor-36v", "controller-series", "charger-onboard-36v", "reducer-isolated", "precharge-resistor-36v"},
	{"lithium-pack-16", "contactor-48v", "controller-series", "charger-onboard-48v", "reducer-isolated", "precharge-resistor"},
	{"lithium-pack-16", "contactor-48v", "controller-sepex", "charger-onboard-48v", "reducer-common-negative", "precharge-resistor"},
	{"lithium-pack-16", "contactor-48v", "controller-ac", "charger-onboard-48v", "reducer-isolated", "precharge-resistor"},
	{"lithium-pack-24", "contactor-72v", "controller-ac-72v", "charger-onboard-72v", "reducer-isolated-72v", "precharge-resistor-72v"},
	{"lithium-pack-24", "contactor-72v", "controller-ac-72v", "charger-onboard-72v", "reducer-common-negative-72v", "precharge-resistor-72v"},
}

func TestPartsOfOneClassFitTogether(t *testing.T) {
	for _, c := range classes {
		full, floor := figure(t, c.pack, "full-voltage"), figure(t, c.pack, "cutoff-voltage")
		require.InDelta(t, full, figure(t, c.charger, "charge-voltage"), 1e-9, c.charger)
		require.InDelta(t, figure(t, c.pack, "cells"), figure(t, c.charger, "cells"), 1e-9, c.charger)
		require.LessOrEqual(t, figure(t, c.charger, "charge-current"), figure(t, c.pack, "charge-current"), c.charger)
		for _, device := range []string{c.controller, c.reducer} {
			require.GreaterOrEqual(t, figure(t, device, "max-input-voltage"), full, device)
			require.LessOrEqual(t, figure(t, device, "min-input-voltage"), floor, device)
		}
		require.GreaterOrEqual(t, figure(t, c.contactor, "voltage-rating"), full, c.contactor)
		require.Less(t, figure(t, c.contactor, "pull-in-voltage"), floor, "%s pulls in on an empty pack", c.contactor)
		require.Less(t, figure(t, c.contactor, "drop-out-voltage"), figure(t, c.contactor, "pull-in-voltage"), c.contactor)
		require.LessOrEqual(t, figure(t, c.controller, "peak-current"), figure(t, c.pack, "peak-current"), c.controller)
		require.LessOrEqual(t, figure(t, c.controller, "peak-current"), figure(t, c.contactor, "peak-current"), c.controller)
	}
}

// A contactor coil takes 0.2 to 1.5 A and so does not burn a key contact of 10 A:
// common practice, no source.
func TestCoilCurrentsArePlausible(t *testing.T) {
	for _, kind := range []string{"contactor-36v", "contactor-48v", "contactor-72v", "reverse-contactor"} {
		amps := figure(t, kind, "coil-voltage") / figure(t, kind, "coil-resistance")
		require.Greater(t, amps, 0.2, kind)
		require.Less(t, amps, 1.5, kind)
	}
}

// Pre-charge through R into C: the time to 5 % is 3 R C (NEETS module 2, RC time
// constants) and the resistor takes 1/2 C V^2 in that time.
func TestPrechargeFillsTheControllerInTime(t *testing.T) {
	for _, c := range classes {
		r, farads, volts := figure(t, c.precharge, "resistance"), figure(t, c.controller, "input-capacitance"), figure(t, c.pack, "full-voltage")
		seconds := 3 * r * farads
		require.Less(t, seconds, 15.0, c.precharge)
		require.Less(t, farads*volts*volts/2/seconds, figure(t, c.precharge, "power-rating"), c.precharge)
	}
}

// A main fuse with the fault current of a pack: the class T kind clears what every
// pack of the library can give, the ordinary blade clears none of them.
func TestMainFuseClearsTheFaultCurrent(t *testing.T) {
	for _, c := range classes {
		fault, full := figure(t, c.pack, "fault-current"), figure(t, c.pack, "full-voltage")
		for _, kind := range []string{"fuse-class-t", "fuse-cartridge"} {
			require.Greater(t, figure(t, kind, "interrupting-rating"), fault, kind)
			require.Greater(t, figure(t, kind, "voltage-rating"), full, kind)
		}
		require.Less(t, figure(t, "fuse-inline", "voltage-rating"), full)
		require.Less(t, figure(t, "fuse-inline", "interrupting-rating"), fault)
	}
}

// Shunts are stamped by current and drop: 500 A, 50 mV.
func TestShuntIsItsStamp(t *testing.T) {
	require.InDelta(t, 0.050, 500*figure(t, "shunt", "resistance"), 1e-12)
}
