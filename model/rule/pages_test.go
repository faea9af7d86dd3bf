package rule_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model/part"
	"example.com/lugbook/model/rule"
)

// TestPageExamples: a rule finds its wrong example, says nothing about its right one, and
// nothing else that is a danger or a fault is wrong with the right one.
func TestPageExamples(t *testing.T) {
	for _, r := range rule.All {
		if r.Wrong.Of == "" {
			continue
		}
		t.Run(r.ID, func(t *testing.T) {
			require.Contains(t, rulesOf(judged(t, r.Wrong)), r.ID)
			for _, f := range judged(t, r.Right) {
				require.NotEqual(t, r.ID, f.Rule, f.Message)
				require.NotContains(t, []rule.Severity{rule.Danger, rule.Fault}, f.Severity, f.Message)
			}
		})
	}
}

// judged is the findings on the last sheet of an example.
func judged(t *testing.T, e rule.Example) []rule.Finding {
	t.Helper()
	j, err := e.Job()
	require.NoError(t, err)
	require.Empty(t, j.Check(part.Library()))
	findings, err := rule.Check(j, j.Sheets[len(j.Sheets)-1].Name, part.Library())
	require.NoError(t, err)
	return findings
}

func rulesOf(findings []rule.Finding) []string {
	var ids []string
	for _, f := range findings {
		ids = append(ids, f.Rule)
	}
	return ids
}

// TestFixesMend tries every ready-made edit of every finding of the page examples, and those of
// its own rule on each bad example: it removes its finding and brings no new danger.
func TestFixesMend(t *testing.T) {
	tried := 0
	for _, r := range rule.All {
		if r.Wrong.Of == "" {
			continue
		}
		j, err := r.Wrong.Job()
		require.NoError(t, err)
		tried += tryFixes(t, r.ID, j, "")
	}
	for _, e := range badExamples {
		j := job(t, e.text)
		if e.also != nil {
			e.also(&j.Sheets[0])
		}
		tried += tryFixes(t, e.rule+" "+e.name, j, e.rule)
	}
	require.Positive(t, tried)
}
