package rule_test

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/cart"
	"example.com/lugbook/model/jobfile"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/rule"
)

// soundJobs is the folder of jobs that a technician would hand over as they are.
const soundJobs = "../../testdata/jobs"

// soundJob is a job whose sheet as planned or as built a technician would sign.
type soundJob struct {
	name  string
	job   *model.Job
	sheet model.SheetName
	isOwn bool // a job of soundJobs, which has this one sheet
}

// sound opens the jobs of soundJobs and the plans of the worked carts. A file with a fault
// fails the test.
func sound(t *testing.T) []soundJob {
	t.Helper()
	var list []soundJob
	paths, err := filepath.Glob(filepath.Join(soundJobs, "*.yaml"))
	require.NoError(t, err)
	for _, path := range paths {
		file, err := jobfile.Open(path, part.Library())
		require.NoError(t, err)
		job := file.Job()
		require.Len(t, job.Sheets, 1, "%s has one sheet", path)
		list = append(list, soundJob{strings.TrimSuffix(filepath.Base(path), ".yaml"), job, job.Sheets[0].Name, true})
	}
	for _, name := range cart.Names() {
		data, err := cart.Read(name)
		require.NoError(t, err)
		decoded, problems := jobfile.Decode(name, data, part.Library())
		require.Empty(t, problems)
		list = append(list, soundJob{name, decoded.Job, model.Plan, false})
	}
	return list
}

// remaining reads what may remain on each of the sound jobs: a block a job under its name, the
// findings indented once, the reason for each indented twice. A finding without a reason
// fails the test.
func remaining(t *testing.T) map[string][]string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(soundJobs, "remaining.txt"))
	require.NoError(t, err)
	const once, twice = "  ", "    "
	list := map[string][]string{}
	name, reasoned := "", true
	for line := range strings.Lines(string(text)) {
		line = strings.TrimRight(line, "\n")
		switch {
		case line == "" || strings.HasPrefix(line, "#"):
		case strings.HasPrefix(line, twice):
			reasoned = true
		case strings.HasPrefix(line, once):
			require.True(t, reasoned, "%s: a finding before %q has no reason", name, line)
			list[name] = append(list[name], strings.TrimPrefix(line, once))
			reasoned = false
		default:
			require.True(t, reasoned, "%s: the last finding has no reason", name)
			name = line
			require.NotContains(t, list, name)
			list[name] = []string{}
		}
	}
	require.True(t, reasoned, "%s: the last finding has no reason", name)
	return list
}

// TestSoundJobs sees that the rules say nothing about jobs that a technician would hand over,
// but for what is listed with its reason: a rule that cries wolf is worse than none.
func TestSoundJobs(t *testing.T) {
	if testing.Short() {
		t.Skip("whole carts take their time")
	}
	want := remaining(t)
	jobs := sound(t)
	for _, s := range jobs {
		t.Run(s.name, func(t *testing.T) {
			t.Parallel()
			found, err := rule.Check(s.job, s.sheet, part.Library())
			require.NoError(t, err)
			got, allowed := lines(found), slices.Clone(want[s.name])
			slices.Sort(got)
			slices.Sort(allowed)
			require.Equal(t, strings.Join(allowed, "\n"), strings.Join(got, "\n"))
		})
	}
	for name := range want {
		require.True(t, slices.ContainsFunc(jobs, func(s soundJob) bool { return s.name == name }), "no job is called %s", name)
	}
}

// TestSoundJobsAreAsTheyShouldBe keeps the jobs of use as examples: small and large ones, with
// every drive and voltage, planned and built.
func TestSoundJobsAreAsTheyShouldBe(t *testing.T) {
	var small, usual, large int
	kinds, systems, sheets := map[string]bool{}, map[string]bool{}, map[model.SheetName]int{}
	for _, s := range sound(t) {
		if !s.isOwn {
			continue
		}
		sheet := s.job.Sheet(s.sheet)
		wires := len(sheet.Wires)
		require.True(t, 25 <= wires && wires <= 120, "%s has %d wires", s.name, wires)
		switch {
		case wires < 45:
			small++
		case wires <= 95:
			usual++
		default:
			large++
		}
		for _, p := range sheet.Parts {
			kinds[p.Kind] = true
		}
		systems[s.job.System.String()] = true
		sheets[s.sheet]++
	}
	require.GreaterOrEqual(t, small, 2)
	require.GreaterOrEqual(t, usual, 8)
	require.GreaterOrEqual(t, large, 2)
	for _, kind := range []string{"motor-series", "motor-sepex", "motor-ac", "motor-pm", "reverse-contactor", "direction-rotary", "direction-rocker"} {
		require.Contains(t, kinds, kind)
	}
	for _, volts := range []string{"36 V", "48 V", "72 V"} {
		require.Contains(t, systems, volts)
	}
	require.GreaterOrEqual(t, sheets[model.Plan], 9)
	require.GreaterOrEqual(t, sheets[model.AsBuilt], 3)
}
