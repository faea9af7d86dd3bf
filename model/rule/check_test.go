package rule_test

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestCleanLithiumPlanIsSilent(t *testing.T) {
	require.Empty(t, lines(check(t, lithium)))
}
