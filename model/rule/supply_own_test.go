package rule_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/mini"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/rule"
	"example.com/lugbook/model/unit"
)

// ownReducer is a reducer of the job's own that is always awake.
func ownReducer(ratings ...model.Rating) model.Definition {
	return model.Definition{
		Kind: "own-reducer", Title: "reducer without a label", Family: model.Supply, Designator: "red",
		Terminals: []model.TerminalDef{{Name: "IN+"}, {Name: "IN-"}, {Name: "OUT+"}, {Name: "OUT-"}},
		Elements: []model.Element{{ID: "converter", Is: model.ConverterElement, Between: []string{"IN+", "IN-"},
			Out: []string{"OUT+", "OUT-"}, OutVolts: "output-voltage", Amps: "output-current"}},
		Ratings: append(ratings, model.Rating{Name: "output-voltage", Value: unit.V(12).Any(), Source: "label"}),
	}
}

// ownLamp is a lamp of the job's own that states its power, if anything.
func ownLamp(ratings ...model.Rating) model.Definition {
	return model.Definition{
		Kind: "own-lamp", Title: "lamp without a label", Family: model.Loads, Designator: "lt",
		Terminals: []model.TerminalDef{{Name: "+"}, {Name: "-"}},
		Elements:  []model.Element{{ID: "load", Is: model.LoadElement, Between: []string{"+", "-"}, Watts: "power-rating"}},
		Ratings:   ratings,
	}
}

// onOwnReducer judges two lamps of a kind on a reducer.
func onOwnReducer(t *testing.T, definitions ...model.Definition) rule.Report {
	t.Helper()
	j, err := mini.Job("part pack lithium-pack-16\npart fu fuse-cartridge fuse-rating=10A\npart red own-reducer\npart l1 own-lamp\npart l2 own-lamp\n" +
		"wire r1 pack.POS fu.in gauge=12AWG\nwire r2 fu.out red.IN+ gauge=12AWG\nwire r3 red.IN- pack.NEG gauge=12AWG\n" +
		"wire a1 red.OUT+ l1.+ gauge=12AWG\nwire a2 red.OUT+ l2.+ gauge=12AWG\nwire a3 l1.- red.OUT- gauge=12AWG\nwire a4 l2.- red.OUT- gauge=12AWG")
	require.NoError(t, err)
	j.Definitions = definitions
	r, err := rule.Judge(rule.All, j, model.AsFound, part.Library())
	require.NoError(t, err)
	return r
}

// askedBy lists what a rule asks, as datum of subject.
func askedBy(r rule.Report, id string) []string {
	var list []string
	for _, q := range r.Questions {
		for _, by := range q.Rules {
			if by == id {
				list = append(list, q.String())
			}
		}
	}
	return list
}

func TestLoadsByTheirPowerAddUp(t *testing.T) {
	power := model.Rating{Name: "power-rating", Value: unit.W(60).Any(), Source: "label"}
	r := onOwnReducer(t, ownReducer(model.Rating{Name: "output-current", Value: unit.A(8).Any(), Source: "label"}), ownLamp(power))
	require.Contains(t, lines(r.Findings), "fault reducer-overloaded: 10 A are asked of red, which gives 8 A: l1 5 A and l2 5 A")
}

func TestWhatAReducerGivesAndItsLoadsTakeIsAsked(t *testing.T) {
	power := model.Rating{Name: "power-rating", Value: unit.W(60).Any(), Source: "label"}
	r := onOwnReducer(t, ownReducer(), ownLamp(power))
	require.Equal(t, []string{"the output current of red"}, askedBy(r, "reducer-overloaded"))
	r = onOwnReducer(t, ownReducer(), ownLamp())
	require.Equal(t, []string{"the current of l1", "the current of l2"}, askedBy(r, "reducer-overloaded"))
}

func TestTheInsideOfCANDevicesIsAsked(t *testing.T) {
	j, err := mini.Job(edited(paired, "wire n5", "", "wire n6", "", "part t2", "", "part disp", "part disp can-display can-resistance=25kohm"))
	require.NoError(t, err)
	r, err := rule.Judge(rule.All, j, model.AsFound, part.Library())
	require.NoError(t, err)
	require.Equal(t, []string{"the resistance between the CAN pins of pack"}, askedBy(r, "can-terminators"))
}
