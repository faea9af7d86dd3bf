package model

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model/unit"
)

// anyOf reads a quantity that the test knows to be right.
func anyOf(t testing.TB, text string) unit.Any {
	t.Helper()
	v, err := unit.ParseAny(text)
	require.NoError(t, err)
	return v
}

// sampleLibrary has a battery and a contactor.
func sampleLibrary(t testing.TB) *Catalogue {
	return NewCatalogue([]Definition{
		{
			Kind: "battery", Title: "battery", Family: Storage, Designator: "b",
			Terminals: []TerminalDef{{Name: "+", Form: StudForm, Pole: Positive}, {Name: "-", Form: StudForm, Pole: Negative}},
			Elements:  []Element{{ID: "emf", Is: SourceElement, Between: []string{"+", "-"}, Volts: "voltage"}},
			Ratings:   []Rating{{Name: "voltage", Value: anyOf(t, "8 V"), Source: Typical}},
		},
		{
			Kind: "contactor", Title: "contactor", Family: Switchgear, Designator: "sol",
			Control:   &Switching{Sets: Key, Positions: []string{"off", "on"}, Rest: "off"},
			Terminals: []TerminalDef{{Name: "L1", Form: StudForm}, {Name: "L2", Form: StudForm}, {Name: "coil+", Form: TabForm}, {Name: "coil-", Form: TabForm}},
			Elements: []Element{
				{ID: "coil", Is: CoilElement, Between: []string{"coil+", "coil-"}},
				{ID: "main", Is: ContactElement, Between: []string{"L1", "L2"}, Coil: "coil"},
			},
		},
	})
}

// sampleJob is a consistent job with a wire on a recorded stack.
func sampleJob(t testing.TB) *Job {
	return &Job{
		Version: FileVersion, Title: "sample",
		Photos: []string{"photos/cart.jpg"},
		Zones:  []Zone{{ID: "tray"}, {ID: "dash"}},
		Runs:   []Run{{From: "tray", To: "dash"}},
		States: []OwnState{
			{Name: "pushed", From: "tow", Set: []Setting{{Control: Key, Position: "on"}}},
			{Name: "pushed-dark", From: "pushed"},
		},
		Meter: &Meter{Accuracy: unit.Pct(0.5), Counts: 3, Display: 6000},
		Readings: []Reading{
			{Sheet: AsFound, State: "parked", Red: TerminalRef{"b1", "+"}, Black: TerminalRef{"b1", "-"}, Value: anyOf(t, "8.3 V")},
			{Sheet: AsFound, State: "pushed", Wire: "w2", Value: anyOf(t, "-4 A")},
			{Sheet: AsFound, State: "tow", Red: TerminalRef{"x1", "7"}, Black: TerminalRef{"sol", "L1"}, Open: true},
			{Sheet: AsFound, State: "key-on", Red: TerminalRef{"sol", "coil+"}, Black: TerminalRef{"sol", "coil-"}, Value: anyOf(t, "0.2 kohm")},
		},
		Sheets: []Sheet{{
			Name: AsFound,
			Parts: []Part{
				{ID: "b1", Kind: "battery", Zone: "tray", Ratings: []Rating{{Name: "voltage", Value: anyOf(t, "8.2 V")}}},
				{ID: "b2", Kind: "battery", Zone: "tray"},
				{ID: "sol", Kind: "contactor", Condition: []Condition{Dirty}, Confidence: Traced, Opening: "bolt-down",
					Opens: []OpenPoint{{At: unit.A(200), Least: unit.S(1)}, {At: unit.A(400), Least: unit.S(0.1), Most: unit.S(0.4)}}},
				{ID: "x1", Kind: UnknownKind},
			},
			Wires: []Wire{
				{ID: "w1", From: On("b1", "-"), To: On("b2", "+"), Colour: Colour{Body: "BK"}, Serves: Traction},
				{ID: "w2", From: On("b1", "+"), To: On("sol", "L1"), Via: []ZoneID{"tray"}, Judged: []Judgement{JudgedTo}},
				{ID: "w3", From: On("x1", "7"), To: End{Loose: Cut, In: "dash"}, Photos: []string{"photos/w3.jpg"}},
				{ID: "w4", From: On("b1", "+"), To: LooseEnd(Untraced)},
			},
			Terminals: []Terminal{
				{At: TerminalRef{"b1", "+"}, Stack: []WireID{"w2", "w4"}, Cover: CoverMissing},
				{At: TerminalRef{"sol", "L1"}, Note: "hot"},
			},
		}},
	}
}
