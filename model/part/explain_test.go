package part

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model"
	"example.com/lugbook/model/clean"
)

var update = flag.Bool("update", false, "write the golden files")

func TestExplainGolden(t *testing.T) {
	for _, kind := range []string{"contactor-48v", "reducer-isolated", "controller-ac", "receptacle-interlock", "frame-point"} {
		got := Explain(*Library().Definition(kind))
		path := filepath.Join("testdata", kind+".txt")
		if *update {
			require.NoError(t, os.WriteFile(path, []byte(got), 0o644))
		}
		want, err := os.ReadFile(path)
		require.NoError(t, err)
		require.Equal(t, string(want), got, kind)
	}
}

func TestExplainLeavesNothingOut(t *testing.T) {
	for _, d := range Definitions() {
		text := Explain(d)
		for _, terminal := range d.Terminals {
			require.Contains(t, text, terminal.Means, d.Kind)
		}
		for _, r := range d.Ratings {
			require.Contains(t, text, r.Value.String(), d.Kind)
			require.Contains(t, text, r.Source, d.Kind)
		}
		for _, e := range d.Elements {
			require.Contains(t, text, strings.Join(e.Between, " to "), d.Kind)
			for _, blocked := range e.Blocked {
				require.Contains(t, text, "never while "+blocked, d.Kind)
			}
		}
		for i, line := range strings.Split(text, "\n") {
			require.Equal(t, strings.TrimRight(line, " "), line, "%s line %d", d.Kind, i+1)
		}
	}
}

func TestExplainIsSafeToPrint(t *testing.T) {
	hostile := "\x1b]0;x\a\u202e\nnext"
	d := model.Definition{
		Kind: hostile, Title: hostile, Family: "loads", Designator: hostile, About: hostile,
		Control:   &model.Switching{Sets: model.Key, Positions: []string{hostile}, Rest: hostile},
		Terminals: []model.TerminalDef{{Name: hostile, Means: hostile, Form: model.TabForm}},
		Elements:  []model.Element{{ID: hostile, Is: model.LoadElement, Between: []string{hostile, hostile}, Amps: hostile}},
		Ratings:   []model.Rating{{Name: hostile, Source: hostile}},
	}
	text := Explain(d)
	require.Empty(t, clean.Suspicious(text))
	require.NotContains(t, text, "\nnext", "no text breaks out of its line")
}

func TestWrapKeepsWordsWithinTheWidth(t *testing.T) {
	text := strings.Repeat("a fuse within a hand's breadth of the stud ", 20)
	wrapped := wrap(text)
	require.Equal(t, strings.Fields(text), strings.Fields(wrapped))
	for _, line := range strings.Split(wrapped, "\n") {
		require.LessOrEqual(t, len(line), width)
	}
	long := strings.Repeat("x", 2*width)
	require.Equal(t, "a\n"+long+"\nb\n", wrap("a "+long+" b"), "a word is never broken")
	require.Equal(t, "\n", wrap(""))
}
