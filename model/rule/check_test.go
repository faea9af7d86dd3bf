package rule_test

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestCleanLithiumPlanLacksOnlyTheCurvesOfItsFuses(t *testing.T) {
	require.Equal(t, []string{unproven("fu1, fu3, fu2, fu4, fu5 and fu6")}, lines(check(t, lithium)))
}

func TestALeastCartWithTheCurvesOfItsFusesLacksNoCurve(t *testing.T) {
	require.Contains(t, lines(check(t, direct)), unproven("fu1 and fu3"))
	require.Len(t, check(t, direct, quick), len(check(t, direct))-1)
}
