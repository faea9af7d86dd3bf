// Package tui is the terminal screen of a job: the drawing of a sheet in the middle,
// around it the card of what is selected, the findings, and at the bottom what is read,
// typed, noticed, and what the keys do now.
//
// [Run] takes a [Session] and returns when the person quits. All that can be done is an
// [Action] of one table: keys, hints, help and the command list come from it. One model
// (the desk) holds the job's history and a stack of layers over the drawing; a layer is
// something that is open, such as a list, a text being typed or the walk from stud to stud.
// Esc closes the topmost layer and never quits.
//
// The drawing is changed by hand: a box that is moved and a wire that is pulled are drawn at
// each step as they will be. It can be looked at smaller, down to the whole job on one screen
// (package overview). What was on the screen at a step of the history comes back with that step.
//
// Where letters are typed, letters act nowhere: a layer either types or acts. Drawing and
// checking run beside the screen and are stamped with the revision that they belong to.
package tui
