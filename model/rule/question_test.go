package rule_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/rule"
)

func reported(t *testing.T, text string, sheet model.SheetName) rule.Report {
	t.Helper()
	r, err := rule.Judge(rule.All, job(t, text), sheet, part.Library())
	require.NoError(t, err)
	return r
}

// Questions come gravest consequence first; each says what it decides and who asks, once for a
// datum of a thing; what is asked quietly is no finding.
func TestQuestionsAreInOrderOfConsequence(t *testing.T) {
	text := edited(lithium, "wire k3", "wire k3 key.IGN dir.micro-com", "at pack.POS", "", "wire w2", "wire w2 fu1.out sol.L1 gauge=2AWG insulation=105C")
	r := reported(t, text, model.AsFound)
	grades := rule.Severities()
	seen := map[string]bool{}
	for i, q := range r.Questions {
		require.NotEmpty(t, q.Decides)
		require.NotEmpty(t, q.Rules)
		require.False(t, seen[q.String()], q.String())
		seen[q.String()] = true
		if i > 0 {
			require.LessOrEqual(t, slices.Index(grades, r.Questions[i-1].Worst), slices.Index(grades, q.Worst))
		}
	}
	require.True(t, seen["the gauge of k3"])
	require.True(t, seen["the cover of pack.POS"])
	for _, f := range r.Findings {
		require.NotContains(t, f.Message, "place of the washers", "asked quietly")
	}
}

// Nothing is asked quietly of a part that is gone on the next sheet.
func TestWhatLeavesIsNotAskedAbout(t *testing.T) {
	asksOf := func(r rule.Report, id model.PartID) bool {
		return slices.ContainsFunc(r.Questions, func(q rule.Question) bool {
			return q.Datum == "the place of the washers" && q.Subject.Terminal.Part == id
		})
	}
	stays := reported(t, lithium, model.AsFound)
	require.True(t, asksOf(stays, "dir"))
	leaves := reported(t, lithium+"\nsheet plan\nno m2\nno m3\nno m4\nno m5\nno k3\nno k4\nno k9\nno b1\nno dir\n", model.AsFound)
	require.False(t, asksOf(leaves, "dir"))
	require.True(t, asksOf(leaves, "sol"))
}
