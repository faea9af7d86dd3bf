package rule_test

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model/part"
	"example.com/lugbook/model/rule"
)

// mistakes is the folder of the catalogue of mistakes.
const mistakes = "../../testdata/mistakes"

// clean is a sound job with what the rules say about it.
type clean struct {
	soundJob
	report rule.Report
}

// cleanJobs judges each sound job once for all tests of the catalogue.
var cleanJobs = struct {
	sync.Mutex
	jobs map[string]*clean
}{}

// clean is the job that the mistake is made in, judged without it.
func (m *mistake) clean(t *testing.T) *clean {
	t.Helper()
	cleanJobs.Lock()
	defer cleanJobs.Unlock()
	if cleanJobs.jobs == nil {
		cleanJobs.jobs = map[string]*clean{}
		for _, s := range sound(t) {
			cleanJobs.jobs[s.name] = &clean{soundJob: s}
		}
	}
	sound := cleanJobs.jobs[m.job]
	require.NotNil(t, sound, "%s: no sound job is called %s", m.where, m.job)
	name := m.job + " " + string(m.sheet)
	c := cleanJobs.jobs[name]
	switch {
	case m.sheet == "":
		c = sound
	case c == nil:
		require.NotNil(t, sound.job.Sheet(m.sheet), "%s: %s has no sheet %s", m.where, m.job, m.sheet)
		c = &clean{soundJob: soundJob{job: sound.job, sheet: m.sheet}}
		cleanJobs.jobs[name] = c
	}
	if c.report.Sheet == "" {
		report, err := rule.Judge(rule.All, c.job, c.sheet, part.Library())
		require.NoError(t, err)
		c.report = report
	}
	return c
}

// catalogue reads all entries. With -short it reads a part of them.
func catalogue(t *testing.T) []mistake {
	t.Helper()
	paths, err := filepath.Glob(filepath.Join(mistakes, "*.txt"))
	require.NoError(t, err)
	var list []mistake
	for _, path := range paths {
		if filepath.Base(path) == listOfMistakes {
			continue
		}
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		entries, err := parseMistakes(filepath.Base(path), string(text))
		require.NoError(t, err)
		list = append(list, entries...)
	}
	return list
}

// news is what one report says that another does not, by rule and severity, in the order of
// the report; and the questions that only it asks. What was graver before is no news, and of
// consequences one of a kind stands for all.
func news(before, after rule.Report) (said []told, asks map[asked]bool) {
	had := map[told]int{}
	for _, f := range before.Findings {
		had[told{f.Severity, f.Rule, f.Cause != ""}]++
	}
	for _, f := range after.Findings {
		one := told{f.Severity, f.Rule, f.Cause != ""}
		if had[one]--; had[one] < 0 && !(one.follows && slices.Contains(said, one)) {
			said = append(said, one)
		}
	}
	said = slices.DeleteFunc(said, func(s told) bool {
		for _, graver := range rule.Severities() {
			if graver == s.severity {
				break
			}
			if was := (told{graver, s.rule, s.follows}); had[was] > 0 {
				had[was]--
				return true
			}
		}
		return false
	})
	asks = map[asked]bool{}
	for _, q := range after.Questions {
		asks[asked{q.Field, q.Subject.String()}] = true
	}
	for _, q := range before.Questions {
		delete(asks, asked{q.Field, q.Subject.String()})
	}
	return said, asks
}

// judge makes the mistake and compares what the rules say with what they must. The answer is
// empty if it is that, else what differs.
func (m *mistake) judge(t *testing.T, rules []rule.Rule) string {
	t.Helper()
	c := m.clean(t)
	job, err := m.make(c.job, c.sheet)
	require.NoError(t, err)
	report, err := rule.Judge(rules, job, c.sheet, part.Library())
	require.NoError(t, err)
	said, asks := news(c.report, report)
	var differs strings.Builder
	missing := slices.Clone(m.speaks)
	for _, s := range said {
		if i := slices.Index(missing, s); i >= 0 {
			missing = slices.Delete(missing, i, i+1)
			continue
		}
		fmt.Fprintf(&differs, "not expected: %s\n", s)
	}
	for _, s := range missing {
		fmt.Fprintf(&differs, "missing: %s\n", s)
	}
	for _, a := range m.asks {
		if !asks[a] {
			fmt.Fprintf(&differs, "missing: %s\n", a)
		}
	}
	if differs.Len() == 0 {
		return ""
	}
	differs.WriteString("the rules say:\n")
	for _, f := range report.Findings {
		cause := ""
		if f.Cause != "" {
			cause = " (follows from " + f.Cause + ")"
		}
		fmt.Fprintf(&differs, "  %s %s: %s%s\n", f.Severity, f.Rule, f.Message, cause)
	}
	if len(m.asks) > 0 {
		for a := range asks {
			fmt.Fprintf(&differs, "  new question: %s\n", a)
		}
	}
	return differs.String()
}

// sampled leaves most entries out with -short: whole carts take their time.
func sampled(entries []mistake) []mistake {
	if !testing.Short() {
		return entries
	}
	var some []mistake
	for i := 0; i < len(entries); i += 9 {
		some = append(some, entries[i])
	}
	return some
}

// TestCatalogue makes each mistake in its sound job: exactly the rules that must speak do.
func TestCatalogue(t *testing.T) {
	for _, m := range sampled(catalogue(t)) {
		t.Run(m.where+" "+m.title, func(t *testing.T) {
			require.Empty(t, m.judge(t, rule.All), "%s: %s", m.where, m.title)
		})
	}
}

// TestCatalogueNoticesEachRule leaves out one rule after the other: the smallest entry that
// names it must then fail.
func TestCatalogueNoticesEachRule(t *testing.T) {
	if testing.Short() {
		t.Skip("whole carts take their time")
	}
	entries := catalogue(t)
	for i, r := range rule.All {
		var least *mistake
		size := 0
		for k := range entries {
			m := &entries[k]
			if !slices.ContainsFunc(m.speaks, func(s told) bool { return s.rule == r.ID }) {
				continue
			}
			c := m.clean(t)
			if n := len(c.job.Sheet(c.sheet).Wires); least == nil || n < size {
				least, size = m, n
			}
		}
		require.NotNil(t, least, "no entry names %s", r.ID)
		require.NotEmpty(t, least.judge(t, slices.Delete(slices.Clone(rule.All), i, i+1)), "%s holds without %s", least.where, r.ID)
	}
}

// TestCatalogueIsWide asks of the catalogue what makes it one: many entries in every sound job,
// each rule in two jobs at least, and mistakes that come together.
func TestCatalogueIsWide(t *testing.T) {
	entries := catalogue(t)
	require.GreaterOrEqual(t, len(entries), 150)
	jobs, pairs, titles := map[string]int{}, 0, map[string]string{}
	named := map[string]map[string]bool{}
	for _, m := range entries {
		require.Empty(t, titles[m.title], "%s and %s have one title", m.where, titles[m.title])
		titles[m.title] = m.where
		jobs[m.job]++
		if len(m.also) > 0 {
			pairs++
		}
		for _, s := range m.speaks {
			require.NotNil(t, rule.Find(s.rule), "%s: no rule is called %s", m.where, s.rule)
			if named[s.rule] == nil {
				named[s.rule] = map[string]bool{}
			}
			named[s.rule][m.job] = true
		}
	}
	require.GreaterOrEqual(t, pairs, 15)
	for _, s := range sound(t) {
		require.NotZero(t, jobs[s.name], "no mistake is made in %s", s.name)
	}
	for _, r := range rule.All {
		require.GreaterOrEqual(t, len(named[r.ID]), 2, "%s is named in %d jobs", r.ID, len(named[r.ID]))
	}
}

// listOfMistakes is the list of what goes wrong in this work, a line a mistake: its number,
// what it is, and after the colon the rules that speak of it or ask.
const listOfMistakes = "list.txt"

// TestListOfMistakes sees that each mistake of the list is made in an entry in which one of its
// rules speaks or asks.
func TestListOfMistakes(t *testing.T) {
	text, err := os.ReadFile(filepath.Join(mistakes, listOfMistakes))
	require.NoError(t, err)
	rules := map[int][]string{}
	for line := range strings.Lines(string(text)) {
		line = strings.TrimSpace(line)
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		number, rest, _ := strings.Cut(line, " ")
		n, err := strconv.Atoi(number)
		require.NoError(t, err, line)
		require.Equal(t, len(rules)+1, n, "the numbers follow one another")
		words, ids, found := strings.Cut(rest, ": ")
		require.True(t, found && words != "", line)
		rules[n] = strings.Fields(ids)
		for _, id := range rules[n] {
			require.NotNil(t, rule.Find(id), "%s: no rule is called %s", line, id)
		}
	}
	require.Len(t, rules, 88)
	made := map[int]bool{}
	for _, m := range catalogue(t) {
		for _, n := range m.numbers {
			require.Contains(t, rules, n, "%s: there is no mistake %d", m.where, n)
			speaks := slices.ContainsFunc(m.speaks, func(s told) bool { return slices.Contains(rules[n], s.rule) })
			require.True(t, speaks || len(m.asks) > 0, "%s: no rule of mistake %d speaks", m.where, n)
			made[n] = true
		}
	}
	for n := range rules {
		require.True(t, made[n], "nobody makes mistake %d", n)
	}
}

// TestCatalogueErrorsNameTheLine: a line that cannot be read is named with its file.
func TestCatalogueErrorsNameTheLine(t *testing.T) {
	for line, say := range map[string]string{
		"turn w1":                      `unknown word "turn"`,
		"on":                           "expected 1 to 2",
		"mistake seven":                `"seven" is no number`,
		"speaks loud fuse-too-large":   `"loud" is no severity`,
		"speaks danger":                "expected 2 to 2",
		"asks gauge":                   "expected 2 to 2",
		"sheet attic: without w1":      "name of a sheet",
		"end w1 middle sol.L1":         `"middle" is no end`,
		"end w1 to nowhere":            "part.terminal",
		"rate fu1 fuse-rating many":    "",
		"swap red.IN+ red":             "part.terminal",
		"stack L1 w1":                  "part.terminal",
		"at L1 cover missing":          "part.terminal",
		"opens fu1 1 s 2 s":            "expected a current",
		"opens fu1 1 A 2 s 3":          "no unit",
		"run tray dash far":            "",
		"zone attic warm":              "",
		"add fuse fu9 fuse-inline bay": `unknown word "fuse"`,
		"add wire x1 nowhere sol.L1":   "part.terminal",
	} {
		_, err := parseMistakes("chain.txt", "a mistake\n  on nursery-tug\n  "+line+"\n")
		require.ErrorContains(t, err, "chain.txt:3: ", line)
		require.ErrorContains(t, err, say, line)
	}
	_, err := parseMistakes("chain.txt", "\na mistake\n  on nursery-tug\n")
	require.ErrorContains(t, err, "chain.txt:2: ")
}

// FuzzMistakes: whatever is written is read or refused.
func FuzzMistakes(f *testing.F) {
	f.Add("a mistake\n on nursery-tug\n mistake 1\n wire w1 gauge 16 AWG\n speaks danger fuse-too-large\n")
	f.Add("two\n on x\n and more\n sheet plan: opens fu1 1 A 2 s 3 s\n add wire x a.b cut gauge 2 AWG\n asks gauge a3\n")
	f.Add("three\n on x\n end w1 to cut in dash\n zone z 3 C\n run a b 1 m\n stack a.b\n follows note backfeed\n")
	f.Fuzz(func(t *testing.T, text string) {
		entries, err := parseMistakes("fuzzed", text)
		if err != nil {
			require.Contains(t, err.Error(), "fuzzed:")
			return
		}
		for _, m := range entries {
			require.NotEmpty(t, m.title)
			require.NotEmpty(t, m.acts)
		}
	})
}
