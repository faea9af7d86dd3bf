package model

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model/basis"
	"example.com/lugbook/model/unit"
)

// faultCase is one mistake in the sample job and the only fault that it makes.
type faultCase struct {
	name    string
	mistake func(*Job)
	path    string
	message string
	text    string
}

func found(j *Job) *Sheet { return &j.Sheets[0] }

// waived is a whole waiver, added to the sheet.
func waived(j *Job) *Waiver {
	found(j).Waived = []Waiver{{Finding: "stack-count@b1.-", Reason: "goes next week", By: "bench two", Date: "2026-03-12", Severity: "caution"}}
	return &found(j).Waived[0]
}

var faultCases = []faultCase{
	{"voltage below nothing", func(j *Job) { j.System = unit.V(-48) }, "system", "a system voltage below nothing", "-48 V"},
	{"limit without a reason", func(j *Job) {
		j.Limits = []Limit{{Name: basis.FuseDistance, Value: unit.Inches(5).Any(), Reason: "\u200b"}}
	},
		"limits." + basis.FuseDistance, "a limit without a reason", basis.FuseDistance},
	{"waiver of no severity", func(j *Job) { waived(j).Severity = "horrible" }, "sheets.as-found.waived.stack-count@b1.-.severity", "not a known word", "horrible"},
	{"waiver without a date", func(j *Job) { waived(j).Date = "2026-02-30" }, "sheets.as-found.waived.stack-count@b1.-.date", "not a date", "2026-02-30"},
	{"waiver without a reason", func(j *Job) { waived(j).Reason = " \t" }, "sheets.as-found.waived.stack-count@b1.-.reason", "no reason", " \t"},
	{"waiver without a name", func(j *Job) { waived(j).By = "\u200b\x1b" }, "sheets.as-found.waived.stack-count@b1.-.by", "no name", "\u200b\x1b"},
	{"version", func(j *Job) { j.Version = 2 }, "lugbook", "unknown version of the job file", "2"},
	{"zone id", func(j *Job) { j.Zones = append(j.Zones, Zone{ID: "a.b"}) }, "zones.a.b", "not a usable id", "a.b"},
	{"zone twice", func(j *Job) { j.Zones = append(j.Zones, Zone{ID: "TRAY"}) }, "zones.TRAY", "id used twice", "TRAY"},
	{"run from", func(j *Job) { j.Runs[0].From = "attic" }, "runs.0.from", "no such zone", "attic"},
	{"run to", func(j *Job) { j.Runs[0].To = "attic" }, "runs.0.to", "no such zone", "attic"},
	{"job photo", func(j *Job) { j.Photos[0] = "../x.jpg" }, "photos", "not a usable photo path", "../x.jpg"},
	{"sheet name", func(j *Job) { found(j).Name, j.Readings = "wish", nil }, "sheets.wish", "not a known word", "wish"},
	{"part id", func(j *Job) { found(j).Parts = append(found(j).Parts, Part{ID: "a b", Kind: UnknownKind}) },
		"sheets.as-found.parts.a b", "not a usable id", "a b"},
	{"part twice", func(j *Job) { found(j).Parts = append(found(j).Parts, Part{ID: "SOL", Kind: UnknownKind}) },
		"sheets.as-found.parts.SOL", "id used twice", "SOL"},
	{"part kind", func(j *Job) { found(j).Part("x1").Kind = "gadget" }, "sheets.as-found.parts.x1.kind", "no such kind of part", "gadget"},
	{"part left of the drawing", func(j *Job) { found(j).Part("x1").Place = &Place{X: -1, Y: 3} }, "sheets.as-found.parts.x1.place", "a place off the drawing", "-1, 3"},
	{"part far off the drawing", func(j *Job) { found(j).Part("x1").Place = &Place{X: 3, Y: maxPlace + 1} }, "sheets.as-found.parts.x1.place", "a place off the drawing", "3, 10001"},
	{"part zone", func(j *Job) { found(j).Part("b1").Zone = "attic" }, "sheets.as-found.parts.b1.zone", "no such zone", "attic"},
	{"part photo", func(j *Job) { found(j).Part("b1").Photos = []string{"con"} }, "sheets.as-found.parts.b1.photos", "not a usable photo path", "con"},
	{"part condition", func(j *Job) { found(j).Part("b1").Condition = []Condition{"sad"} }, "sheets.as-found.parts.b1.condition", "not a known word", "sad"},
	{"part confidence", func(j *Job) { found(j).Part("b1").Confidence = "sure" }, "sheets.as-found.parts.b1.confidence", "not a known word", "sure"},
	{"rating name", func(j *Job) { found(j).Part("b1").Ratings[0].Name = "vigour" },
		"sheets.as-found.parts.b1.ratings.vigour", "a battery has no such figure", "vigour"},
	{"rating below nothing", func(j *Job) { found(j).Part("b1").Ratings[0].Value = negative(found(j).Part("b1").Ratings[0].Value) },
		"sheets.as-found.parts.b1.ratings.voltage.value", "a figure below nothing", "-8.2 V"},
	{"wire id", func(j *Job) { found(j).Wire("w1").ID = "w.1" }, "sheets.as-found.wires.w.1", "not a usable id", "w.1"},
	{"wire twice", func(j *Job) { found(j).Wire("w1").ID = "W3" }, "sheets.as-found.wires.w3", "id used twice", "w3"},
	{"no part", func(j *Job) { found(j).Wire("w1").From = On("b9", "-") }, "sheets.as-found.wires.w1.from", "no part b9 on this sheet", "b9.-"},
	{"no terminal", func(j *Job) { found(j).Wire("w1").To = On("b2", "L1") }, "sheets.as-found.wires.w1.to", "a battery has no terminal L1", "b2.L1"},
	{"terminal of unknown kind", func(j *Job) { found(j).Wire("w3").From = On("x1", "a b") },
		"sheets.as-found.wires.w3.from", "not a usable terminal name", "x1.a b"},
	{"no end", func(j *Job) { found(j).Wire("w1").To = End{} }, "sheets.as-found.wires.w1.to", "no part  on this sheet", ""},
	{"loose word", func(j *Job) { found(j).Wire("w4").To.Loose = "flapping" }, "sheets.as-found.wires.w4.to", "not a known word", "flapping"},
	{"loose zone", func(j *Job) { found(j).Wire("w3").To.In = "attic" }, "sheets.as-found.wires.w3.to", "no such zone", "attic"},
	{"loose and landed", func(j *Job) { found(j).Wire("w4").To.At = TerminalRef{"b2", "-"} },
		"sheets.as-found.wires.w4.to", "an end both loose and on a terminal", "b2.-"},
	{"both ends on one", func(j *Job) { found(j).Wire("w1").To = On("b1", "-") }, "sheets.as-found.wires.w1.to", "both ends of a wire are on one terminal", "b1.-"},
	{"wire via", func(j *Job) { found(j).Wire("w2").Via[0] = "attic" }, "sheets.as-found.wires.w2.via", "no such zone", "attic"},
	{"wire photo", func(j *Job) { found(j).Wire("w3").Photos[0] = "a?b" }, "sheets.as-found.wires.w3.photos", "not a usable photo path", "a?b"},
	{"wire colour", func(j *Job) { found(j).Wire("w1").Colour.Stripe = "ZZ" }, "sheets.as-found.wires.w1.colour", "no such colour", "BK/ZZ"},
	{"wire service", func(j *Job) { found(j).Wire("w1").Serves = "tea" }, "sheets.as-found.wires.w1.serves", "not a known word", "tea"},
	{"wire judgement", func(j *Job) { found(j).Wire("w2").Judged[0] = "mood" }, "sheets.as-found.wires.w2.judged", "not a known word", "mood"},
	{"wire condition", func(j *Job) { found(j).Wire("w2").Condition = []Condition{"sad"} }, "sheets.as-found.wires.w2.condition", "not a known word", "sad"},
	{"wire confidence", func(j *Job) { found(j).Wire("w2").Confidence = "sure" }, "sheets.as-found.wires.w2.confidence", "not a known word", "sure"},
	{"record of no terminal", func(j *Job) { found(j).Terminals[1].At.Name = "L9" }, "sheets.as-found.terminals.sol.L9", "a contactor has no terminal L9", "sol.L9"},
	{"terminal photo", func(j *Job) { found(j).Terminals[1].Photos = []string{"/x"} }, "sheets.as-found.terminals.sol.L1.photos", "not a usable photo path", "/x"},
	{"terminal cover", func(j *Job) { found(j).Terminals[1].Cover = "torn" }, "sheets.as-found.terminals.sol.L1.cover", "not a known word", "torn"},
	{"terminal condition", func(j *Job) { found(j).Terminals[1].Condition = []Condition{"sad"} },
		"sheets.as-found.terminals.sol.L1.condition", "not a known word", "sad"},
	{"terminal confidence", func(j *Job) { found(j).Terminals[1].Confidence = "sure" }, "sheets.as-found.terminals.sol.L1.confidence", "not a known word", "sure"},
	{"stack of another", func(j *Job) { found(j).Terminals[1].Stack = []WireID{"w1"} },
		"sheets.as-found.terminals.sol.L1.stack", "wire in the stack does not land on sol.L1", "w1"},
	{"stack twice", func(j *Job) { found(j).Terminals[1].Stack = []WireID{"w2", "w2"} },
		"sheets.as-found.terminals.sol.L1.stack", "wire twice in one stack", "w2"},
}

func TestEachMistakeIsOneFault(t *testing.T) {
	lib := sampleLibrary(t)
	require.Empty(t, sampleJob(t).Check(lib), "the sample itself is consistent")
	for _, c := range faultCases {
		t.Run(c.name, func(t *testing.T) {
			j := sampleJob(t)
			c.mistake(j)
			faults := j.Check(lib)
			require.Len(t, faults, 1)
			require.Equal(t, c.path, strings.Join(faults[0].Path, "."))
			require.Equal(t, c.message, faults[0].Message)
			require.Equal(t, c.text, faults[0].Text)
			require.NotEmpty(t, faults[0].Expected)
		})
	}
}

// negative is a quantity with its sign turned.
func negative(a unit.Any) unit.Any {
	n, err := unit.ParseAny("-" + a.String())
	if err != nil {
		panic(err)
	}
	return n
}

func TestARatingNeedsItsDimension(t *testing.T) {
	j := sampleJob(t)
	found(j).Part("b1").Ratings[0].Value = anyOf(t, "8 A")
	faults := j.Check(sampleLibrary(t))
	require.Len(t, faults, 1)
	require.Equal(t, []string{"sheets", "as-found", "parts", "b1", "ratings", "voltage", "value"}, faults[0].Path)
	require.Contains(t, faults[0].Expected, "such as 8 V")
}

func TestFaultsSuggestWhatIsThere(t *testing.T) {
	j := sampleJob(t)
	found(j).Wire("w1").To = On("b2", "L1")
	found(j).Wire("w2").From = On("b9", "+")
	j.Sheets[0].Terminals = nil
	faults := j.Check(sampleLibrary(t))
	require.Equal(t, []string{"b2.+", "b2.-"}, faults[0].Known)
	require.Contains(t, faults[1].Known, "b1.+")
	found(j).Part("x1").Kind = "gadget"
	faults = j.Check(sampleLibrary(t))
	require.Equal(t, []string{"battery", "contactor", UnknownKind}, faults[0].Known)
}

func TestDefinitionFaults(t *testing.T) {
	m8 := unit.Stud{}
	require.NoError(t, m8.UnmarshalText([]byte("M8")))
	for _, c := range []struct {
		name    string
		mistake func(*Definition)
		path    string
		message string
	}{
		{"designator", func(d *Definition) { d.Designator = "" }, "designator", "not a usable designator"},
		{"terminal name", func(d *Definition) { d.Terminals = append(d.Terminals, TerminalDef{Name: "a b", Form: TabForm}) }, "terminals.a b", "not a usable terminal name"},
		{"gates", func(d *Definition) { d.Opening = "a b" }, "opening", "not a usable name"},
		{"a third face", func(d *Definition) { d.Terminals[2].Face = 3 }, "terminals.coil+.face", "no such face"},
		{"stud on a tab", func(d *Definition) { d.Terminals[2].Stud = m8 }, "terminals.coil+.stud", "a stud size on a terminal that is no stud"},
		{"rest", func(d *Definition) { d.Control.Rest = "between" }, "control.rest", "no such position"},
		{"between one", func(d *Definition) { d.Elements[0].Between = []string{"coil+"} }, "elements.coil.between", "an element is between two terminals"},
		{"between none there", func(d *Definition) { d.Elements[0].Between[0] = "L9" }, "elements.coil", "no such terminal"},
		{"one output", func(d *Definition) { d.Elements[0].Out = []string{"L1"} }, "elements.coil.out", "an output is between two terminals"},
		{"fed", func(d *Definition) { d.Elements[0].Fed = []string{"L9"} }, "elements.coil", "no such terminal"},
		{"against", func(d *Definition) { d.Elements[0].Against = "L9" }, "elements.coil.against", "no such terminal"},
		{"coil that is none", func(d *Definition) { d.Elements[1].Coil = "main" }, "elements.main.coil", "no such coil"},
		{"position", func(d *Definition) { d.Elements[1].ClosedIn = []string{"ajar"} }, "elements.main.closed-in", "no such position"},
		{"figure", func(d *Definition) { d.Elements[0].Ohms = "vigour" }, "elements.coil", "no such rating"},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := sampleLibrary(t).Definition("contactor").clone()
			require.Empty(t, d.Check())
			c.mistake(&d)
			faults := d.Check()
			require.Len(t, faults, 1)
			require.Equal(t, "contactor."+c.path, strings.Join(faults[0].Path, "."))
			require.Equal(t, c.message, faults[0].Message)
		})
	}
	j := sampleJob(t)
	j.Definitions = []Definition{{Kind: "a b", Designator: "x"}}
	faults := j.Check(sampleLibrary(t))
	require.Len(t, faults, 1)
	require.Equal(t, []string{"definitions", "a b"}, faults[0].Path)
}

func TestEveryListOfWordsHasNoDoubles(t *testing.T) {
	for _, list := range [][]string{
		AsFound.Names(), Condition("").Names(), Confidence("").Names(), Cover("").Names(), Judgement("").Names(), Service("").Names(),
		Family("").Names(), Control("").Names(), Form("").Names(), Pole("").Names(), ElementKind("").Names(), Rest("").Names(), Loose("").Names(),
	} {
		sorted := slices.Sorted(slices.Values(list))
		require.Len(t, slices.Compact(sorted), len(list))
		require.NotContains(t, list, "")
	}
}
