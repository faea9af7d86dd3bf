package rule_test

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/edit"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/rule"
)

var update = flag.Bool("update", false, "write the golden files anew")

// TestBadExamples compares what is found on each bad example, a file a family, with the golden
// file, and sees that its own rule is among it. Notes of other rules are left out: they say
// what the example does not record.
func TestBadExamples(t *testing.T) {
	files := map[rule.Family]*strings.Builder{}
	for _, e := range badExamples {
		family := rule.Find(e.rule).Family
		if files[family] == nil {
			files[family] = &strings.Builder{}
		}
		b := files[family]
		fmt.Fprintf(b, "%s\n", strings.TrimSuffix("# "+e.rule+": "+e.name, ": "))
		findings := check(t, e.text, e.also)
		spoke := false
		for i, line := range lines(findings) {
			f := findings[i]
			spoke = spoke || f.Rule == e.rule
			if f.Severity != rule.Note || f.Rule == e.rule {
				fmt.Fprintf(b, "%s %v\n", line, f.Subjects)
			}
		}
		require.True(t, spoke, "%s does not speak about its bad example %s", e.rule, e.name)
		b.WriteString("\n")
	}
	for family, b := range files {
		golden := filepath.Join("testdata", "findings", strings.ReplaceAll(string(family), " ", "-")+".txt")
		if *update {
			require.NoError(t, os.MkdirAll(filepath.Dir(golden), 0o755))
			require.NoError(t, os.WriteFile(golden, []byte(b.String()), 0o644))
		}
		want, err := os.ReadFile(golden)
		require.NoError(t, err)
		require.Equal(t, string(want), b.String())
	}
}

func TestGoodExamplesLeaveTheirRuleSilent(t *testing.T) {
	for _, e := range goodExamples {
		t.Run(e.rule+" "+e.name, func(t *testing.T) {
			for _, f := range check(t, e.text, e.also) {
				require.NotEqual(t, e.rule, f.Rule, f.Message)
			}
		})
	}
}

func TestEveryRuleIsWhole(t *testing.T) {
	require.NoError(t, rule.Validate(rule.All))
	for _, r := range rule.All {
		require.Equal(t, &r.ID, &rule.Find(r.ID).ID, "found by its id")
	}
	require.Nil(t, rule.Find("no-such-rule"))
}

func TestValidateNamesWhatIsMissing(t *testing.T) {
	whole := rule.All[0]
	bare := rule.Rule{ID: whole.ID}
	err := rule.Validate([]rule.Rule{whole, bare})
	for _, what := range []string{"taken", "title", "about", "why", "how to tell", "limits", "bad example", "good example", "wrong example", "right example", "basis", "source", "remedy", "its code"} {
		require.ErrorContains(t, err, what)
	}
}

func TestReadyMadeFixMendsTheFinding(t *testing.T) {
	j := job(t, edited(lithium, "stack sol.L1", "stack sol.L1 k1 w2 c2 p1"))
	before, err := rule.Check(j, model.AsFound, part.Library())
	require.NoError(t, err)
	require.Equal(t, "stack-order", before[0].Rule)
	require.Len(t, before[0].Fixes, 1)
	h := edit.NewHistory(j, part.Library())
	require.NoError(t, h.Do(before[0].Fixes[0]))
	after, err := rule.Check(h.Job(), model.AsFound, part.Library())
	require.NoError(t, err)
	require.Equal(t, lines(before[1:]), lines(after), "all else stays")
}

func TestCheckNeedsTheSheet(t *testing.T) {
	_, err := rule.Check(job(t, lithium), model.Plan, part.Library())
	require.ErrorContains(t, err, "no plan sheet")
}

func TestFindingsAreSortedByGravity(t *testing.T) {
	findings := check(t, edited(lead, "stack sol.L1", "stack sol.L1 k1 w1"))
	grade := map[rule.Severity]int{}
	for i, s := range rule.Severities() {
		grade[s] = i
	}
	last := rule.Danger
	for _, f := range findings {
		if f.Cause != "" {
			continue // stands under its cause
		}
		require.LessOrEqual(t, grade[last], grade[f.Severity])
		last = f.Severity
	}
	for _, f := range findings {
		require.NotEmpty(t, f.Basis.Source)
		require.NotEmpty(t, f.Remedy)
		require.NotEmpty(t, f.Subjects)
	}
}
