package cart_test

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
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/rule"
)

var update = flag.Bool("update", false, "write the golden files")

// decoded reads a cart, which must be without a problem.
func decoded(t testing.TB, name string) *jobfile.Decoded {
	t.Helper()
	data, err := cart.Read(name)
	require.NoError(t, err)
	d, problems := jobfile.Decode(name+".yaml", data, part.Library())
	require.Empty(t, problems)
	return d
}

func TestEveryCartIsInTheTable(t *testing.T) {
	files, err := filepath.Glob("*.yaml")
	require.NoError(t, err)
	var names []string
	for _, f := range files {
		names = append(names, strings.TrimSuffix(f, ".yaml"))
	}
	require.ElementsMatch(t, names, cart.Names())
	for _, name := range cart.Names() {
		require.NotEmpty(t, cart.About(name))
	}
	require.Empty(t, cart.About("barge"))
	_, err = cart.Read("barge")
	require.ErrorContains(t, err, "marina-shuttle")
}

func TestCartsAreInCanonicalForm(t *testing.T) {
	for _, name := range cart.Names() {
		t.Run(name, func(t *testing.T) {
			d := decoded(t, name)
			want, err := cart.Read(name)
			require.NoError(t, err)
			have, err := d.Encode(d.Job)
			require.NoError(t, err)
			if *update {
				require.NoError(t, os.WriteFile(name+".yaml", have, 0o644))
				return
			}
			require.Contains(t, string(want), "# put in on purpose")
			requireSameLines(t, string(want), string(have))
		})
	}
}

// requireSameLines stops at the first line that differs, for a whole job file is
// more than anyone reads.
func requireSameLines(t *testing.T, want, have string) {
	t.Helper()
	w, h := strings.Split(want, "\n"), strings.Split(have, "\n")
	for i := range min(len(w), len(h)) {
		require.Equal(t, w[i], h[i], "line %d", i+1)
	}
	require.Len(t, h, len(w))
}

func TestCartsAreWholeJobs(t *testing.T) {
	for _, name := range cart.Names() {
		t.Run(name, func(t *testing.T) {
			job := decoded(t, name).Job
			for _, sheet := range []model.SheetName{model.AsFound, model.Plan} {
				s := job.Sheet(sheet)
				require.NotNil(t, s)
				require.GreaterOrEqual(t, len(s.Wires), 25)
				require.LessOrEqual(t, len(s.Wires), 70)
				requireRecorded(t, s)
			}
		})
	}
}

// requireRecorded makes sure that no part hangs in the air and that a stud with several
// lugs has its order.
func requireRecorded(t *testing.T, s *model.Sheet) {
	t.Helper()
	lib := part.Library()
	for i := range s.Parts {
		p := &s.Parts[i]
		landed := 0
		for _, name := range lib.TerminalsOf(s, p) {
			at := model.TerminalRef{Part: p.ID, Name: name}
			landed += len(s.Landed(at))
			if def := lib.TerminalOf(s, at); def != nil && def.Form == model.StudForm {
				_, known := s.StackOf(at)
				require.True(t, known, "%s: order of the lugs of %s", s.Name, at)
			}
		}
		require.Positive(t, landed, "%s: nothing lands on %s", s.Name, p.ID)
	}
}

func TestAnIdentityIsOneThingOnBothSheets(t *testing.T) {
	for _, name := range cart.Names() {
		t.Run(name, func(t *testing.T) {
			job := decoded(t, name).Job
			found, plan := job.Sheet(model.AsFound), job.Sheet(model.Plan)
			for i := range plan.Parts {
				if was := found.Part(plan.Parts[i].ID); was != nil {
					require.Equal(t, was.Kind, plan.Parts[i].Kind, "part %s", was.ID)
				}
			}
			kept := 0
			for i := range plan.Wires {
				w := &plan.Wires[i]
				was := found.Wire(w.ID)
				if was == nil {
					continue
				}
				kept++
				require.Equal(t, was.Ends(), w.Ends(), "wire %s", w.ID)
				require.Equal(t, []any{was.Gauge, was.Colour, was.Insulation}, []any{w.Gauge, w.Colour, w.Insulation}, "wire %s", w.ID)
			}
			require.Positive(t, kept)
		})
	}
}

func TestCartsGetTheFindingsTheyDeserve(t *testing.T) {
	for _, name := range cart.Names() {
		t.Run(name, func(t *testing.T) {
			job := decoded(t, name).Job
			var b strings.Builder
			for _, sheet := range []model.SheetName{model.AsFound, model.Plan} {
				findings, err := rule.Check(job, sheet, part.Library())
				require.NoError(t, err)
				fmt.Fprintf(&b, "%s\n", sheet)
				for _, f := range findings {
					if f.Severity == rule.Danger || f.Severity == rule.Fault {
						fmt.Fprintf(&b, "  %s %s %s\n", f.Severity, f.Rule, f.Subjects[0])
					}
				}
			}
			golden := filepath.Join("testdata", name+".txt")
			if *update {
				require.NoError(t, os.MkdirAll("testdata", 0o755))
				require.NoError(t, os.WriteFile(golden, []byte(b.String()), 0o644))
			}
			want, err := os.ReadFile(golden)
			require.NoError(t, err)
			require.Equal(t, string(want), b.String())
		})
	}
}
