package book

import (
	"fmt"
	"html/template"
	"io"
	"strings"

	"example.com/lugbook/diagram/paper"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/diagram/svg"
	"example.com/lugbook/model/clean"
	"example.com/lugbook/model/rule"
)

// html is the book as one HTML file without anything outside of it, the examples as SVG.
var html = Form{
	Name: "html", Ext: ".html", About: "one HTML file that needs nothing else, the examples drawn as SVG",
	Write: writeHTML,
}

func writeHTML(w io.Writer, pages []*Page) error {
	return bookTemplate.Execute(w, struct {
		Cautions string
		Chapters []chapter
	}{Cautions, chapters(pages)})
}

var bookTemplate = template.Must(template.New("book").Funcs(template.FuncMap{
	"capital": func(f rule.Family) string { return capital(string(f)) },
	"anchor":  func(f rule.Family) string { return "family-" + strings.ReplaceAll(string(f), " ", "-") },
	"svg":     svgOf,
	"clean":   clean.Line,
	"entries": func(p *Page) []map[string]string {
		var list []map[string]string
		for _, e := range p.entries() {
			list = append(list, map[string]string{"Heading": e.heading, "Text": e.text})
		}
		return list
	},
}).Parse(bookHTML))

// Room around a drawing on its own small paper: the frame, the lines below it, in cells.
const (
	roomColumns = 6
	roomRows    = 14
	leastWide   = 70
)

// svgOf is the drawing of a plate as an SVG element whose ids begin with the rule's.
func svgOf(p *Page, which string) (template.HTML, error) {
	plate := &p.Wrong
	if which == "right" {
		plate = &p.Right
	}
	drawn := plate.Drawn
	drawn.Paper = scene.Paper{
		WidthMM:  float64((max(leastWide, drawn.W)+roomColumns)*paper.CellWidth+2*paper.Margin) / 1000,
		HeightMM: float64((drawn.H+roomRows)*paper.CellHeight+2*paper.Margin) / 1000,
	}
	var b strings.Builder
	if _, err := svg.Render(&b, &drawn, svg.Options{IDPrefix: p.Rule.ID + "-" + which + "-"}); err != nil {
		return "", fmt.Errorf("draw the %s example of %s: %w", which, p.Rule.ID, err)
	}
	return template.HTML(b.String()), nil // our own painter's, with every text escaped
}

const bookHTML = `<!doctype html>
<html lang="en">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>The rules</title>
<style>
:root{color-scheme:light dark}
body{font:16px/1.5 system-ui,sans-serif;max-width:60rem;margin:2rem auto;padding:0 1rem}
h2{border-bottom:2px solid;margin-top:3rem}
h3{font-family:ui-monospace,monospace;margin-top:2.5rem}
h4{margin:1rem 0 .2rem}
p{margin:.2rem 0 .6rem}
nav ul{list-style:none;padding:0;margin:.2rem 0}
nav li{padding-left:16rem;text-indent:-16rem}
nav a{display:inline-block;min-width:16rem;text-indent:0}
code{font-family:ui-monospace,monospace}
figure{margin:1rem 0;break-inside:avoid}
figure svg{width:100%;height:auto;background:#fff}
blockquote{margin:.5rem 0;padding:.2rem .8rem;border-left:4px solid}
@media (max-width:45rem){nav li{padding:0;text-indent:0}nav a{min-width:0}}
@media print{.back{display:none}a{color:inherit;text-decoration:none}h2,h3,h4{break-after:avoid}h4+figure{break-before:avoid}p{orphans:3;widows:3}}
</style>
<h1>The rules</h1>
<p>{{.Cautions}}</p>
<nav id="contents">{{range .Chapters}}<h4>{{capital .Family}}</h4><ul>{{range .Pages}}<li><a href="#{{.Rule.ID}}"><code>{{.Rule.ID}}</code></a> {{.Rule.Title}}</li>{{end}}</ul>{{end}}</nav>
{{range .Chapters}}<h2 id="{{anchor .Family}}">{{capital .Family}}</h2>
{{range .Pages}}{{$page := .}}<section>
<h3 id="{{.Rule.ID}}">{{.Rule.ID}}</h3>
<p><strong>{{.Rule.Title}}.</strong> Usually {{.Rule.Severity}}. <a class="back" href="#contents">Contents</a></p>
{{range entries .}}<h4>{{.Heading}}</h4>
<p>{{.Text}}</p>
{{end}}<h4>Wrong: {{.Wrong.Caption}}</h4>
<figure>{{svg $page "wrong"}}</figure>
{{range .Wrong.Says}}<blockquote>{{.Severity}}: {{clean .Message}}</blockquote>
{{end}}<h4>Right: {{.Right.Caption}}</h4>
<figure>{{svg $page "right"}}</figure>
</section>
{{end}}{{end}}</html>
`
