package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

const root = "../.."

// sources parses every Go file of the project below the root.
func sources(t *testing.T, mode parser.Mode, visit func(path string, set *token.FileSet, f *ast.File)) {
	t.Helper()
	set := token.NewFileSet()
	require.NoError(t, filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && (d.Name() == "testdata" || strings.HasPrefix(d.Name(), ".") && d.Name() != "..") {
			return filepath.SkipDir
		}
		if !strings.HasSuffix(path, ".go") {
			return nil
		}
		f, err := parser.ParseFile(set, path, nil, mode)
		if err != nil {
			return err
		}
		rel, err := filepath.Rel(root, path)
		visit(filepath.ToSlash(rel), set, f)
		return err
	}))
}

func TestTopLevelIsAsFixed(t *testing.T) {
	fixed := []string{"cmd", "tui", "model", "diagram", "testdata", "go.mod", "go.sum", "README.md", "DEVELOPERS.md"}
	entries, err := os.ReadDir(root)
	require.NoError(t, err)
	var have []string
	for _, e := range entries {
		if !strings.HasPrefix(e.Name(), ".") {
			have = append(have, e.Name())
		}
	}
	require.ElementsMatch(t, fixed, have)
}

func TestDependenciesPointOneWay(t *testing.T) {
	may := map[string][]string{
		"model":   {"model"},
		"diagram": {"diagram", "model"},
		"tui":     {"tui", "diagram", "model"},
		"cmd":     {"cmd", "tui", "diagram", "model"},
	}
	const own = "example.com/lugbook/"
	sources(t, parser.ImportsOnly, func(path string, _ *token.FileSet, f *ast.File) {
		if strings.HasSuffix(path, "_test.go") {
			return
		}
		top, _, _ := strings.Cut(path, "/")
		for _, spec := range f.Imports {
			imported := strings.Trim(spec.Path.Value, `"`)
			if inside, ok := strings.CutPrefix(imported, own); ok {
				target, _, _ := strings.Cut(inside, "/")
				require.Contains(t, may[top], target, "%s imports %s", path, imported)
			}
			if strings.Contains(imported, "charmbracelet") {
				require.Contains(t, []string{"tui", "cmd"}, top, "%s imports %s", path, imported)
			}
			require.False(t, imported == "net" || strings.HasPrefix(imported, "net/"), "%s imports %s: no network, ever", path, imported)
		}
	})
}

// TestModelStandsOnTheStandardLibrary holds the graph and its computations free of
// other people's code; only the file format may use the YAML library, and what tests alone
// import the library for property tests.
func TestModelStandsOnTheStandardLibrary(t *testing.T) {
	allowed := []string{"model/strictyaml", "model/fixedseed"}
	sources(t, parser.ImportsOnly, func(path string, _ *token.FileSet, f *ast.File) {
		if !strings.HasPrefix(path, "model/") || strings.HasSuffix(path, "_test.go") {
			return
		}
		for _, spec := range f.Imports {
			imported := strings.Trim(spec.Path.Value, `"`)
			first, _, _ := strings.Cut(imported, "/")
			if strings.Contains(first, ".") && !strings.HasPrefix(imported, "example.com/lugbook/") && imported != "golang.org/x/sys/unix" {
				require.Contains(t, allowed, filepath.ToSlash(filepath.Dir(path)), "%s imports %s", path, imported)
			}
		}
	})
}

func TestFilesAndFunctionsStaySmall(t *testing.T) {
	var lengths []int
	sources(t, parser.ParseComments, func(path string, set *token.FileSet, f *ast.File) {
		test := strings.HasSuffix(path, "_test.go")
		if lines := set.Position(f.FileEnd).Line; lines > 400 && !test {
			t.Errorf("%s has %d lines; the bar is 400", path, lines)
		}
		for _, d := range f.Decls {
			fn, ok := d.(*ast.FuncDecl)
			if !ok || test {
				continue
			}
			lines := set.Position(fn.End()).Line - set.Position(fn.Pos()).Line + 1
			lengths = append(lengths, lines)
			if lines > 80 {
				t.Errorf("%s: %s has %d lines; the bar is 80", path, fn.Name.Name, lines)
			}
		}
	})
	slices.Sort(lengths)
	require.LessOrEqual(t, lengths[len(lengths)*99/100], 60, "99 of 100 functions have at most 60 lines")
}

func TestExportedNamesAreDocumented(t *testing.T) {
	sources(t, parser.ParseComments, func(path string, _ *token.FileSet, f *ast.File) {
		if strings.HasSuffix(path, "_test.go") {
			return
		}
		for _, d := range f.Decls {
			switch d := d.(type) {
			case *ast.FuncDecl:
				if d.Name.IsExported() && d.Doc == nil && receiverExported(d) {
					t.Errorf("%s: %s has no doc comment", path, d.Name.Name)
				}
			case *ast.GenDecl:
				undocumented(t, path, d)
			}
		}
	})
}

func receiverExported(d *ast.FuncDecl) bool {
	if d.Recv == nil {
		return true
	}
	typ := d.Recv.List[0].Type
	for {
		switch x := typ.(type) {
		case *ast.StarExpr:
			typ = x.X
		case *ast.IndexExpr:
			typ = x.X
		case *ast.Ident:
			return x.IsExported()
		default:
			return false
		}
	}
}

func undocumented(t *testing.T, path string, d *ast.GenDecl) {
	for _, s := range d.Specs {
		switch s := s.(type) {
		case *ast.TypeSpec:
			if s.Name.IsExported() && d.Doc == nil && s.Doc == nil {
				t.Errorf("%s: %s has no doc comment", path, s.Name.Name)
			}
		case *ast.ValueSpec:
			if s.Names[0].IsExported() && d.Doc == nil && s.Doc == nil && s.Comment == nil {
				t.Errorf("%s: %s has no doc comment", path, s.Names[0].Name)
			}
		}
	}
}

func TestFewModulesAreLinked(t *testing.T) {
	cmd := exec.Command("go", "list", "-deps", "-f", "{{with .Module}}{{.Path}}{{end}}", "./cmd/lugbook")
	cmd.Dir = root
	out, err := cmd.Output()
	require.NoError(t, err)
	linked := strings.Fields(string(out))
	slices.Sort(linked)
	linked = slices.DeleteFunc(slices.Compact(linked), func(m string) bool { return m == "example.com/lugbook" })
	require.Less(t, len(linked), 32)

	guide, err := os.ReadFile(filepath.Join(root, "DEVELOPERS.md"))
	require.NoError(t, err)
	for _, m := range linked {
		require.Contains(t, string(guide), "`"+m+"`", "DEVELOPERS.md says why each linked module is there")
	}
}

func TestGuideNamesPathsThatExist(t *testing.T) {
	paths := regexp.MustCompile("`((?:cmd|tui|model|diagram|testdata|\\.ci)/[A-Za-z0-9_./-]*)`")
	for _, name := range []string{"README.md", "DEVELOPERS.md"} {
		text, err := os.ReadFile(filepath.Join(root, name))
		require.NoError(t, err)
		found := paths.FindAllStringSubmatch(string(text), -1)
		for _, m := range found {
			_, err := os.Stat(filepath.Join(root, m[1]))
			require.NoError(t, err, "%s names %s", name, m[1])
		}
		if name == "DEVELOPERS.md" {
			require.NotEmpty(t, found)
		}
	}
}
