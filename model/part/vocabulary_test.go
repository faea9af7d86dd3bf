package part

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestFiguresAreNamedByTheVocabulary(t *testing.T) {
	used := map[string]bool{}
	for _, d := range Definitions() {
		for _, r := range d.Ratings {
			term, ok := TermOf(r.Name)
			require.True(t, ok, "%s: %s is not in the vocabulary", d.Kind, r.Name)
			require.Equal(t, term.Of, r.Value.Dimension(), "%s: %s", d.Kind, r.Name)
			used[r.Name] = true
		}
	}
	for _, term := range Vocabulary() {
		require.True(t, used[term.Name], "no kind has %s", term.Name)
	}
}

func TestVocabularyIsUnambiguous(t *testing.T) {
	names, meanings := map[string]bool{}, map[string]bool{}
	for _, term := range Vocabulary() {
		require.False(t, names[term.Name], term.Name)
		require.False(t, meanings[term.Means], term.Means)
		require.NotEmpty(t, term.Means, term.Name)
		names[term.Name], meanings[term.Means] = true, true
	}
	_, ok := TermOf("colour")
	require.False(t, ok)
}

func TestFiguresHaveASource(t *testing.T) {
	for _, d := range Definitions() {
		for _, r := range d.Ratings {
			require.NotEmpty(t, r.Source, "%s: %s", d.Kind, r.Name)
			require.NotContains(t, r.Source, "\n", "%s: %s", d.Kind, r.Name)
			require.Equal(t, strings.TrimSpace(r.Source), r.Source)
		}
	}
}
