package tui

import (
	"errors"

	"example.com/lugbook/model"
	"example.com/lugbook/model/clean"
)

// explain is an error for the one line that the screen has for it.
func explain(err error) string {
	var fault model.Fault
	if errors.As(err, &fault) {
		text := fault.Message + ": " + fault.Text
		if fault.Expected != "" {
			text += "; expected " + fault.Expected
		}
		return clean.Line(text)
	}
	var expected *model.ExpectedError
	if errors.As(err, &expected) {
		return clean.Line(expected.Error())
	}
	return clean.Line(err.Error())
}
