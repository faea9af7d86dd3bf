package part

import (
	"cmp"
	"embed"
	"io/fs"
	"slices"
	"strings"
	"sync"

	"example.com/lugbook/model"
	"example.com/lugbook/model/strictyaml"
)

//go:embed library/*.yaml
var library embed.FS

// Library is the catalogue of the built-in kinds. It is read once and shared: callers
// do not change its definitions.
func Library() *model.Catalogue { return builtIn().catalogue }

// Definitions lists the built-in kinds by family, in the order of
// [model.Family.Names], and by kind within a family. The list is the caller's, its
// definitions are shared.
func Definitions() []model.Definition { return slices.Clone(builtIn().definitions) }

type collection struct {
	definitions []model.Definition
	catalogue   *model.Catalogue
}

// builtIn panics if a file of the library is wrong: a mistake in the program, which
// its tests find.
var builtIn = sync.OnceValue(func() collection {
	definitions, problems := readLibrary(library)
	if err := problems.Err(); err != nil {
		panic("parts library: " + err.Error())
	}
	return collection{definitions, model.NewCatalogue(definitions)}
})

// readLibrary reads every file of a folder named library, a kind each.
func readLibrary(folder fs.FS) ([]model.Definition, strictyaml.Problems) {
	names, err := fs.Glob(folder, "library/*.yaml")
	if err != nil || len(names) == 0 {
		return nil, strictyaml.Problems{{File: "library", Line: 1, Column: 1, Message: "no files"}}
	}
	var definitions []model.Definition
	var problems strictyaml.Problems
	for _, name := range names {
		data, err := fs.ReadFile(folder, name)
		if err != nil {
			problems = append(problems, strictyaml.Problem{File: name, Line: 1, Column: 1, Message: err.Error()})
			continue
		}
		d, more := readKind(name, data)
		definitions = append(definitions, d)
		problems = append(problems, more...)
	}
	slices.SortFunc(definitions, func(a, b model.Definition) int {
		return cmp.Or(cmp.Compare(familyOrder(a.Family), familyOrder(b.Family)), strings.Compare(a.Kind, b.Kind))
	})
	return definitions, problems
}

// readKind reads the file of one kind and checks it by itself.
func readKind(name string, data []byte) (model.Definition, strictyaml.Problems) {
	var d model.Definition
	doc, problems := strictyaml.Decode(name, data, &d, strictyaml.Limits{})
	if len(problems) > 0 {
		return d, problems
	}
	d.Kind = strings.TrimSuffix(strings.TrimPrefix(name, "library/"), ".yaml")
	for _, f := range d.Check() {
		problems = append(problems, doc.Problem(f.Path[1:], f.Text, f.Message, f.Expected, f.Known))
	}
	return d, problems
}

func familyOrder(f model.Family) int { return slices.Index(f.Names(), string(f)) }
