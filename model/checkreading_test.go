package model

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model/unit"
)

func reading(j *Job, i int) *Reading { return &j.Readings[i] }
func curve(j *Job) []OpenPoint       { return found(j).Part("sol").Opens }

var readingFaults = []faultCase{
	{"state id", func(j *Job) { j.States[1].Name = "a b" }, "states.a b", "not a usable id", "a b"},
	{"state twice", func(j *Job) { j.States[1].Name = "Pushed" }, "states.Pushed", "id used twice", "Pushed"},
	{"name of a derived state", func(j *Job) { j.States[1].Name = "charging" }, "states.charging", "id used twice", "charging"},
	{"from no state", func(j *Job) { j.States[0].From = "asleep" }, "states.pushed.from", "no such state", "asleep"},
	{"from a later state", func(j *Job) { j.States[0].From = "pushed-dark" }, "states.pushed.from", "no such state", "pushed-dark"},
	{"from itself", func(j *Job) { j.States[1].From = "pushed-dark" }, "states.pushed-dark.from", "no such state", "pushed-dark"},
	{"no such control", func(j *Job) { j.States[0].Set[0].Control = "sunroof" }, "states.pushed.set.sunroof", "not a known word", "sunroof"},
	{"no control", func(j *Job) { j.States[0].Set[0].Control = "" }, "states.pushed.set.", "not a known word", ""},
	{"no such position", func(j *Job) { j.States[0].Set[0].Position = "half" }, "states.pushed.set.key", "no such position of key", "half"},
	{"control of no part", func(j *Job) { j.States[0].Set[0].Control = Pedal }, "states.pushed.set.pedal", "no such position of pedal", "on"},

	{"reading on no sheet", func(j *Job) { reading(j, 0).Sheet = Plan }, "readings.0.sheet", "no such sheet", "plan"},
	{"reading in no state", func(j *Job) { reading(j, 0).State = "asleep" }, "readings.0.state", "no such state", "asleep"},
	{"reading without state", func(j *Job) { reading(j, 0).State = "" }, "readings.0.state", "no such state", ""},
	{"red on no part", func(j *Job) { reading(j, 0).Red.Part = "b9" }, "readings.0.red", "no part b9 on this sheet", "b9.+"},
	{"black on no terminal", func(j *Job) { reading(j, 0).Black.Name = "L1" }, "readings.0.black", "a battery has no terminal L1", "b1.L1"},
	{"one probe", func(j *Job) { reading(j, 0).Black = TerminalRef{} }, "readings.0", "a reading of nothing", "b1.+ against "},
	{"both probes on one", func(j *Job) { reading(j, 0).Black = reading(j, 0).Red }, "readings.0.black", "both probes are on one terminal", "b1.+"},
	{"no wire", func(j *Job) { reading(j, 1).Wire = "w9" }, "readings.1.wire", "no such wire on this sheet", "w9"},
	{"wire and probe", func(j *Job) { reading(j, 1).Red = reading(j, 0).Red }, "readings.1.wire", "a reading of both a wire and terminals", "w2"},
	{"no value", func(j *Job) { reading(j, 0).Value = unit.Any{} }, "readings.0.value", "a reading shows either a value or an open circuit", ""},
	{"value and open", func(j *Job) { reading(j, 3).Open = true }, "readings.3.value", "a reading shows either a value or an open circuit", "0.2 kohm"},
	{"watts", func(j *Job) { reading(j, 0).Value = unit.W(3).Any() }, "readings.0.value", "two probes read volts or ohms", "3 W"},
	{"amperes between probes", func(j *Job) { reading(j, 0).Value = unit.A(3).Any() }, "readings.0.value", "two probes read volts or ohms", "3 A"},
	{"volts of a wire", func(j *Job) { reading(j, 1).Value = unit.V(3).Any() }, "readings.1.value", "a clamp round a wire reads amperes", "3 V"},

	{"meter without accuracy", func(j *Job) { j.Meter.Accuracy = unit.Percent{} }, "meter.accuracy", "not a usable accuracy", ""},
	{"meter that is off by all", func(j *Job) { j.Meter.Accuracy = unit.Pct(100) }, "meter.accuracy", "not a usable accuracy", "100 %"},
	{"meter without display", func(j *Job) { j.Meter.Display = 0 }, "meter.display", "not a usable display", "0"},
	{"meter below zero", func(j *Job) { j.Meter.Counts = -1 }, "meter.counts", "not a usable number of counts", "-1"},
	{"meter off by its display", func(j *Job) { j.Meter.Counts = 6001 }, "meter.counts", "not a usable number of counts", "6001"},
	{"meter that is a short", func(j *Job) { j.Meter.Input = unit.Ohms(0) }, "meter.input", "a meter without input resistance", "0 ohm"},

	{"gates", func(j *Job) { found(j).Part("sol").Opening = "a b" }, "sheets.as-found.parts.sol.opening", "not a usable name", "a b"},
	{"curve without current", func(j *Job) { curve(j)[0].At = unit.A(0) }, "sheets.as-found.parts.sol.opens", "a point of the curve without a current", "0 A"},
	{"curve out of order", func(j *Job) { curve(j)[1].At = unit.A(200) }, "sheets.as-found.parts.sol.opens", "points of the curve out of order", "200 A"},
	{"curve without time", func(j *Job) { curve(j)[1].Least = unit.Second{} }, "sheets.as-found.parts.sol.opens", "a point of the curve without a time", "400 A"},
	{"curve turned round", func(j *Job) { curve(j)[1].Most = unit.S(0.05) }, "sheets.as-found.parts.sol.opens", "a longest time below the shortest", "50 ms"},
}

func TestEachMistakeInReadingsIsOneFault(t *testing.T) {
	lib := sampleLibrary(t)
	for _, c := range readingFaults {
		t.Run(c.name, func(t *testing.T) {
			j := sampleJob(t)
			c.mistake(j)
			require.NotEqual(t, sampleJob(t), j, "the mistake is one")
			faults := j.Check(lib)
			require.Len(t, faults, 1)
			require.Equal(t, c.path, strings.Join(faults[0].Path, "."))
			require.Equal(t, c.message, faults[0].Message)
			require.Equal(t, c.text, faults[0].Text)
			require.NotEmpty(t, faults[0].Expected)
		})
	}
}

func TestReadingInWords(t *testing.T) {
	j := sampleJob(t)
	var where, shown []string
	var of []unit.Dimension
	for i := range j.Readings {
		where = append(where, j.Readings[i].Where())
		shown = append(shown, j.Readings[i].Shown())
		of = append(of, j.Readings[i].Dimension())
	}
	require.Equal(t, []string{"b1.+ against b1.-", "w2", "x1.7 against sol.L1", "sol.coil+ against sol.coil-"}, where)
	require.Equal(t, []string{"8.3 V", "-4 A", "open", "0.2 kohm"}, shown)
	require.Equal(t, []unit.Dimension{unit.Voltage, unit.Current, unit.Resistance, unit.Resistance}, of)
}

func TestStateNames(t *testing.T) {
	j := sampleJob(t)
	require.Equal(t, append(DerivedStates(), "pushed", "pushed-dark"), j.StateNames())
	require.Same(t, &j.States[0], j.OwnState("pushed"))
	require.Nil(t, j.OwnState("parked"), "derived, not the job's own")
	DerivedStates()[0] = "changed"
	require.Equal(t, "parked", DerivedStates()[0], "a copy is handed out")
}
