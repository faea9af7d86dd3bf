package part

import (
	"fmt"

	"example.com/lugbook/model"
	"example.com/lugbook/model/strictyaml"
)

// FileVersion is the version of the shop's parts file that this program reads.
const FileVersion = 1

// File is a shop's own parts file.
type File struct {
	Version     int                `yaml:"lugbook-parts,required" doc:"version of the parts file format; this program reads 1"`
	Note        string             `yaml:"note" doc:"anything worth knowing"`
	Definitions []model.Definition `yaml:"definitions,keyed,required" doc:"the shop's kinds of part"`
}

// ParseFile reads a shop's parts file. The name stands for the file in problems. All
// problems are reported; if there are any, there are no definitions.
func ParseFile(name string, data []byte) ([]model.Definition, strictyaml.Problems) {
	var f File
	doc, problems := strictyaml.Decode(name, data, &f, strictyaml.Limits{})
	if len(problems) > 0 {
		return nil, problems
	}
	for _, fault := range f.check() {
		problems = append(problems, doc.Problem(fault.Path, fault.Text, fault.Message, fault.Expected, fault.Known))
	}
	if len(problems) > 0 {
		problems.Sort()
		return nil, problems
	}
	return f.Definitions, nil
}

func (f *File) check() []model.Fault {
	var faults []model.Fault
	if f.Version != FileVersion {
		faults = append(faults, model.Fault{Path: []string{"lugbook-parts"}, Text: fmt.Sprint(f.Version),
			Message: "unknown version of the parts file", Expected: fmt.Sprintf("%d; a newer lugbook may be needed", FileVersion)})
	}
	for i := range f.Definitions {
		for _, fault := range f.Definitions[i].Check() {
			fault.Path = append([]string{"definitions"}, fault.Path...)
			faults = append(faults, fault)
		}
		faults = append(faults, misnamed(&f.Definitions[i])...)
	}
	return faults
}
