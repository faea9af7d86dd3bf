// Package view holds the kinds of drawing that can be made of a sheet. A view is one
// file; adding one is that file and its line in [All].
package view

import (
	"fmt"
	"strings"

	"example.com/lugbook/diagram"
	"example.com/lugbook/model"
)

// View is a way to draw a sheet.
type View struct {
	Name  string // as commands name it
	About string // one line for help

	// Draw draws a sheet of the job. Equal input gives an equal drawing.
	Draw func(j *model.Job, sheet model.SheetName, lib *model.Catalogue, o diagram.Options) (*diagram.Drawing, error)
}

// All lists the views.
var All = []View{Wiring, OneLine, Harness, Studs, Compare}

// Names lists the names of all views.
func Names() []string {
	names := make([]string, len(All))
	for i, v := range All {
		names[i] = v.Name
	}
	return names
}

// Find finds a view by name. The error lists the names that there are.
func Find(name string) (View, error) {
	for _, v := range All {
		if v.Name == name {
			return v, nil
		}
	}
	return View{}, fmt.Errorf("no view %q; there are %s", name, strings.Join(Names(), ", "))
}
