package oracle

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
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/rule"
)

// clean is a sheet that the rules find no danger or fault on.
type clean struct {
	name  string
	job   *model.Job
	sheet model.SheetName
	net   *network.Network
	exam  *exam
}

// jobFiles are the worked jobs beside those of package cart.
const jobFiles = "../../../testdata/jobs/*.yaml"

// read is what cleanCarts has read, once for all tests.
var read []*clean

// cleanCarts reads the sheets, planned or built, of all worked carts and jobs.
func cleanCarts(t testing.TB) []*clean {
	t.Helper()
	if read != nil {
		return read
	}
	var list []*clean
	add := func(name string, data []byte) {
		d, problems := jobfile.Decode(name, data, part.Library())
		require.Empty(t, problems, name)
		sheet := d.Job.Sheets[len(d.Job.Sheets)-1].Name
		if grave, _ := check(t, d.Job, sheet); len(grave) > 0 {
			return
		}
		x := examine(d.Job, sheet, part.Library())
		x.judgeHeat()
		list = append(list, &clean{name: name, job: d.Job, sheet: sheet, net: x.net, exam: x})
	}
	for _, name := range cart.Names() {
		data, err := cart.Read(name)
		require.NoError(t, err)
		add(name, data)
	}
	files, err := filepath.Glob(jobFiles)
	require.NoError(t, err)
	for _, file := range files {
		data, err := os.ReadFile(file)
		require.NoError(t, err)
		add(strings.TrimSuffix(filepath.Base(file), ".yaml"), data)
	}
	read = list
	return list
}

// graveRules are the rules that speak of dangers and faults by themselves.
var graveRules = slices.DeleteFunc(slices.Clone(rule.All), func(r rule.Rule) bool {
	return r.Family == rule.Studs || r.Severity != rule.Danger && r.Severity != rule.Fault
})

// check parts the findings of a sheet into dangers and faults, and cautions. How lugs are
// stacked is left out: no mistake here is about it. Rules of lesser weight are only asked if
// the others find nothing grave.
func check(t testing.TB, job *model.Job, sheet model.SheetName) (grave, lesser []rule.Finding) {
	t.Helper()
	if grave, lesser = parted(t, graveRules, job, sheet); len(grave) > 0 {
		return grave, lesser
	}
	return parted(t, rule.All, job, sheet)
}

func parted(t testing.TB, rules []rule.Rule, job *model.Job, sheet model.SheetName) (grave, lesser []rule.Finding) {
	t.Helper()
	report, err := rule.Judge(rules, job, sheet, part.Library())
	require.NoError(t, err)
	for _, f := range report.Findings {
		switch {
		case rule.Find(f.Rule).Family == rule.Studs:
		case f.Severity == rule.Danger, f.Severity == rule.Fault:
			grave = append(grave, f)
		case f.Severity == rule.Caution:
			lesser = append(lesser, f)
		}
	}
	return grave, lesser
}

func TestCleanCartsAreClean(t *testing.T) {
	carts := cleanCarts(t)
	require.Greater(t, len(carts), len(cart.Names()))
	for _, c := range carts {
		require.Empty(t, c.exam.hazards, "%s %v", c.name, c.exam.notes)
		require.NotEmpty(t, c.exam.drives, c.name)
		for setting, drives := range c.exam.drives {
			require.True(t, drives, "%s does not drive with %s", c.name, setting)
		}
		require.True(t, c.exam.charges, c.name)
	}
}
