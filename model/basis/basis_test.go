package basis_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/model/basis"
)

func TestEveryLimitIsWhole(t *testing.T) {
	seen := map[string]bool{}
	for _, l := range basis.Limits() {
		require.False(t, seen[l.Name], "%s is there once", l.Name)
		seen[l.Name] = true
		require.NotEmpty(t, l.Means, l.Name)
		require.NotEmpty(t, l.Source, l.Name)
		base, _ := l.Of(false)
		require.False(t, base.IsZero(), "%s: %q", l.Name, l.Base)
		house, source := l.Of(true)
		require.Equal(t, base.Dimension(), house.Dimension(), l.Name)
		require.Equal(t, l.House == "", l.Why == "", "%s: a reason for what differs", l.Name)
		if l.House != "" {
			require.NotEqual(t, base, house, l.Name)
			require.Contains(t, source, l.Why)
		}
		found, ok := basis.Find(l.Name)
		require.True(t, ok)
		require.Equal(t, l, found)
	}
	_, ok := basis.Find("no-such-limit")
	require.False(t, ok)
}

// TestEveryLimitIsAskedFor: a limit that no rule and no verdict on protection reads decides
// nothing, and would be chosen by a job in vain.
func TestEveryLimitIsAskedFor(t *testing.T) {
	names := constants(t, "basis.go")
	asked := map[string]bool{}
	for _, folder := range []string{"../rule", "../protect"} {
		for _, name := range read(t, folder) {
			asked[names[name]] = true
		}
	}
	for _, l := range basis.Limits() {
		require.True(t, asked[l.Name], "nothing asks for %s", l.Name)
	}
	require.Len(t, names, len(basis.Limits()), "each name is a row of the table")
}

// constants is the value of each exported text constant of a file, by its name.
func constants(t *testing.T, path string) map[string]string {
	file, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
	require.NoError(t, err)
	values := map[string]string{}
	ast.Inspect(file, func(n ast.Node) bool {
		if spec, ok := n.(*ast.ValueSpec); ok && spec.Names[0].IsExported() && len(spec.Values) == 1 {
			if literal, ok := spec.Values[0].(*ast.BasicLit); ok {
				text, err := strconv.Unquote(literal.Value)
				require.NoError(t, err)
				values[spec.Names[0].Name] = text
			}
		}
		return true
	})
	return values
}

// read lists the names of this package that the sources of a folder use, its tests left out.
func read(t *testing.T, folder string) []string {
	paths, err := filepath.Glob(filepath.Join(folder, "*.go"))
	require.NoError(t, err)
	var used []string
	for _, path := range paths {
		if strings.HasSuffix(path, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
		require.NoError(t, err)
		ast.Inspect(file, func(n ast.Node) bool {
			if of, ok := n.(*ast.SelectorExpr); ok {
				if x, ok := of.X.(*ast.Ident); ok && x.Name == "basis" {
					used = append(used, of.Sel.Name)
				}
			}
			return true
		})
	}
	return used
}
