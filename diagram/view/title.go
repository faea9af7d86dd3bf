package view

import (
	"fmt"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
)

// blank is a page without a drawing: what stands in the title block of a view.
func blank(j *model.Job, sheet model.SheetName, kind string) scene.Page {
	return scene.Page{Title: scene.TitleBlock{
		Job: j.Title, Sheet: string(sheet), View: kind, System: j.System.String(), Date: j.Date, Revision: j.Revision,
	}}
}

// find finds a sheet of a job.
func find(j *model.Job, name model.SheetName) (*model.Sheet, error) {
	if s := j.Sheet(name); s != nil {
		return s, nil
	}
	return nil, fmt.Errorf("the job has no %s sheet", name)
}
