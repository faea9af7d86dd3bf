package rule_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model/rule"
	"example.com/lugbook/model/unit"
)

// TestFiguresAreSaidWithFourDigits: a computed current has no millionths, a measured one and a
// gauge stay as they were written.
func TestFiguresAreSaidWithFourDigits(t *testing.T) {
	for text, f := range map[string]rule.Figure{
		"current 129.4 A, at most 75 A: 72.5 % over":   {What: "current", Value: quantity(t, "129.363391 A"), Limit: quantity(t, "75 A")},
		"hole 8.331 mm, at most 5.309 mm: 56.9 % over": {What: "hole", Value: quantity(t, "8.3312 mm"), Limit: quantity(t, "5.3086 mm")},
		"rating 32 V, at least 58.8 V: 45.6 % short":   {What: "rating", Value: quantity(t, "32 V"), Limit: quantity(t, "58.8 V"), Least: true},
		"conductor 2/0 AWG, at most 4/0 AWG":           {What: "conductor", Value: quantity(t, "2/0 AWG"), Limit: quantity(t, "4/0 AWG")},
		"short 12345 A":                                {What: "short", Value: quantity(t, "12345 A")},
	} {
		require.Equal(t, text, f.String())
	}
}

func quantity(t *testing.T, text string) unit.Any {
	q, err := unit.ParseAny(text)
	require.NoError(t, err)
	return q
}
