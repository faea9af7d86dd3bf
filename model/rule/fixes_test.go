package rule_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/rule"
)

// tryFixes tries the ready-made edits of one rule, or of all, on the last sheet of a job, and holds what is grouped
// under a cause against them: it is gone as well when the cause is mended. It returns how many
// edits there were.
func tryFixes(t *testing.T, name string, j *model.Job, of string) int {
	t.Helper()
	sheet := j.Sheets[len(j.Sheets)-1].Name
	findings, err := rule.Check(j, sheet, part.Library())
	require.NoError(t, err)
	tried := 0
	for _, f := range findings {
		if of != "" && f.Rule != of {
			continue
		}
		for _, e := range f.Fixes {
			tried++
			trial, err := rule.Try(j, sheet, part.Library(), findings, f.Key, e)
			require.NoError(t, err, "%s: %s: %s", name, f.Key, e.Name())
			require.True(t, trial.Gone, "%s: %q leaves %s", name, e.Name(), f.Key)
			require.True(t, trial.Sound(), "%s: %q for %s brings %v", name, e.Name(), f.Key, lines(trial.New))
			requireFollowersGone(t, name, findings, trial, f.Key)
		}
	}
	return tried
}

func requireFollowersGone(t *testing.T, name string, before []rule.Finding, trial *rule.Trial, cause string) {
	t.Helper()
	for _, b := range before {
		if b.Cause != cause {
			continue
		}
		for _, a := range trial.After {
			require.NotEqual(t, b.Key, a.Key, "%s: %s is said to follow from %s and stays when that is mended", name, b.Key, cause)
		}
	}
}
