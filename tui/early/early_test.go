package early_test

import (
	"go/parser"
	"go/token"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// The package may import only the standard library: anything else would have to be initialised before it.
func TestStandardLibraryOnly(t *testing.T) {
	file, err := parser.ParseFile(token.NewFileSet(), "early.go", nil, parser.ImportsOnly)
	require.NoError(t, err)
	for _, spec := range file.Imports {
		first, _, _ := strings.Cut(strings.Trim(spec.Path.Value, `"`), "/")
		require.NotContains(t, first, ".", "%s is not of the standard library", spec.Path.Value)
	}
}
