package view

import "example.com/lugbook/diagram"

// Wiring is every part, terminal and wire of a sheet.
var Wiring = View{Name: "wiring", About: "every part, terminal and wire", Draw: diagram.Draw}
