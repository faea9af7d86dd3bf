package scenetest

import "example.com/lugbook/diagram/scene"

// Hostile lists texts that try to break out of a drawing: into markup, into a
// terminal, or out of their cells.
var Hostile = []string{
	"<script>alert(1)</script>", "</text><script>alert(1)</script>", `"><svg onload=alert(1)>`, "' onmouseover='alert(1)",
	`" onload="alert(1)`, "javascript:alert(1)", "&#x3C;script&#x3E;", "&lt;script&gt;", "&", "&amp;", "]]>", "<![CDATA[x]]>",
	"<!--", "-->", `<!DOCTYPE x [<!ENTITY a "b">]>`, "&a;", `<?xml-stylesheet href="x"?>`,
	"<foreignObject><iframe src=javascript:alert(1)>", "<animate onbegin=alert(1) attributeName=x dur=1s>",
	`<use href="data:image/svg+xml,x#a"/>`, "<style>@import url(http://x)</style>", "</style><img src=x onerror=alert(1)>",
	"</title><script>1</script>", "url(http://x)", "expression(alert(1))", "{{.}}", "`${1}`",
	"a\x00b\xff<b>", "\x1b]8;;http://x\x07y", "\ufeff\u2028a\u202eb\u2066c", "\x9b31m", "電池🔋e\u0301", "┼─│", "\r\n\t",
}

// Spoiled is a small page with one text in every place that takes text from a user.
func Spoiled(text string) *scene.Page {
	s := &Sketch{scene.Page{W: 80, H: 24}}
	s.Title = scene.TitleBlock{Job: text, Sheet: text, System: text, Date: text, Revision: text, Shown: text, Notes: []string{text, text}, Page: 1, Pages: 1}
	s.Legend = []string{text}
	s.Zones = []scene.Zone{{ID: text, Name: text, Rect: at(1, 1, 78, 20)}}
	a := s.Box("a", text, text, at(5, 4, 20, 8), "E2 p", "E4 q")
	b := s.Box("b", text, "fuse", at(50, 4, 20, 8), "W2 p")
	s.Flag("f", scene.OffPage, text, scene.Point{X: 40, Y: 8}, scene.West)
	s.Wire("w", "a.p", "b.p", scene.Traction, text, text, 0).Title = text
	s.Wire("v", "a.q", "f", scene.Control, "RD", text, 0)
	a.ID, b.ID, a.Title, b.Marks = text, text+"2", text, []string{text}
	a.Ports[0].ID, a.Ports[0].Name, a.Ports[1].Stud, a.Ports[1].Name = text, text, text, text
	s.Wires[0].ID, s.Wires[0].From, s.Wires[0].To, s.Flags[0].ID = text, text, text, text
	return &s.Page
}
