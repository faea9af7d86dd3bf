package support_test

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/cart"
	"example.com/lugbook/model/jobfile"
	"example.com/lugbook/model/mini"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/support"
)

var update = flag.Bool("update", false, "rewrite the golden files")

// report computes a tiny job.
func report(t *testing.T, text string, o support.Options) *support.Report {
	t.Helper()
	job, err := mini.Job(text)
	require.NoError(t, err)
	require.Empty(t, job.Check(part.Library()))
	return support.Of(network.Build(job, &job.Sheets[0], part.Library()), o)
}

// says reports whether a judgement of that grade holds some words.
func says(list []support.Judgement, grade support.Grade, words string) bool {
	for _, j := range list {
		if j.Grade == grade && strings.Contains(j.Text, words) {
			return true
		}
	}
	return false
}

// Every line of these files has been read with the cart in mind.
func TestCartsGolden(t *testing.T) {
	for _, name := range cart.Names() {
		for _, sheet := range []model.SheetName{model.AsFound, model.Plan} {
			t.Run(fmt.Sprintf("%s %s", name, sheet), func(t *testing.T) {
				data, err := cart.Read(name)
				require.NoError(t, err)
				decoded, problems := jobfile.Decode(name, data, part.Library())
				require.Empty(t, problems)
				r := support.Of(network.Build(decoded.Job, decoded.Job.Sheet(sheet), part.Library()), support.Options{})
				path := filepath.Join("testdata", name+"-"+string(sheet)+".txt")
				got := text(r)
				if *update {
					require.NoError(t, os.MkdirAll("testdata", 0o755))
					require.NoError(t, os.WriteFile(path, []byte(got), 0o644))
				}
				want, err := os.ReadFile(path)
				require.NoError(t, err)
				require.Equal(t, string(want), got)
			})
		}
	}
}

func text(r *support.Report) string {
	var b strings.Builder
	for _, section := range r.Sections() {
		fmt.Fprintf(&b, "%s\n", section.Title)
		if len(section.Items) == 0 {
			fmt.Fprintf(&b, "  %s\n", section.None)
		}
		for _, item := range section.Items {
			fmt.Fprintf(&b, "  %s\n", item.Title)
			for _, line := range item.Lines {
				fmt.Fprintf(&b, "    %s\n", line)
			}
			for _, j := range item.Judgements {
				fmt.Fprintf(&b, "    %-8s%s\n", j.Grade, j.Text)
			}
		}
	}
	for _, line := range r.Assumptions() {
		fmt.Fprintf(&b, "assumed: %s\n", line)
	}
	return b.String()
}
