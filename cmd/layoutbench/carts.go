package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"time"

	"example.com/lugbook/diagram"
	"example.com/lugbook/diagram/layout"
	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
	"example.com/lugbook/model/cart"
	"example.com/lugbook/model/jobfile"
	"example.com/lugbook/model/part"
)

// carts draws every sheet of every worked cart, each on one page, and has the peers draw the same boxes with the same
// terminals.
func (r *reporter) carts() error {
	r.printf("Every sheet on one page. The peers get the boxes and flags as we drew them, their terminals where we put them; zones " +
		"are frames for us, and for peers that know zones. Labels take room in our drawings only. Page faults: what the " +
		"check of finished pages finds.\n\n")
	detail := newDetail()
	ratios := &ratioTable{}
	pageFaults := 0
	for _, name := range cart.Names() {
		job, err := readCart(name)
		if err != nil {
			return err
		}
		for _, s := range job.Sheets {
			own, g, faults, err := drawSheet(job, s.Name, name, diagram.Options{})
			if err != nil {
				return fmt.Errorf("%s: %w", g.Name, err)
			}
			r.progress("%s: %s", g.Name, own.brief())
			pageFaults += faults
			if err := r.save(g, own.picture); err != nil {
				return err
			}
			others := r.ask(g, 1)
			detail.result(g.Name, own)
			for _, o := range others {
				detail.result(g.Name, o)
			}
			ratios.add(g.Name, own, r.best(g.Name, others))
		}
	}
	r.printf("%sPage faults of ours over all sheets: %d.\n\nRatios to the best peer per measure:\n\n%s", detail, pageFaults, ratios)
	return nil
}

func readCart(name string) (*model.Job, error) {
	data, err := cart.Read(name)
	if err != nil {
		return nil, err
	}
	d, problems := jobfile.Decode(name, data, part.Library())
	if len(problems) > 0 {
		return nil, fmt.Errorf("cart %s: %v", name, problems[0])
	}
	return d.Job, nil
}

// drawSheet draws a sheet and reads the graph off the page.
func drawSheet(job *model.Job, sheet model.SheetName, cartName string, o diagram.Options) (result, fileGraph, int, error) {
	g := fileGraph{Name: fmt.Sprintf("%s %s", cartName, sheet)}
	start := time.Now()
	drawing, err := diagram.Draw(job, sheet, part.Library(), o)
	ms := since(start)
	if err != nil {
		return result{}, g, 0, err
	}
	if len(drawing.Pages) != 1 {
		return result{}, g, 0, errors.New("the sheet is not drawn on one page")
	}
	p := &drawing.Pages[0]
	own := result{who: full.name, ms: ms, picture: picturePage(p)}
	if err := g.read(p); err != nil {
		return own, g, 0, err
	}
	own.Report, err = own.picture.measure(&g)
	own.faults = own.Report.Faults()
	return own, g, len(scene.Check(p)), err
}

// picturePage is a page in the form that drawings are measured in. Flags are boxes.
func picturePage(p *scene.Page) picture {
	var d layout.Drawing
	for _, b := range p.Boxes {
		d.Boxes = append(d.Boxes, layout.BoxAt{ID: b.ID, Rect: span(b.Rect)})
	}
	for _, f := range p.Flags {
		d.Boxes = append(d.Boxes, layout.BoxAt{ID: f.ID, Rect: span(f.Rect)})
	}
	for _, w := range p.Wires {
		at := layout.WireAt{ID: w.ID}
		for _, c := range w.Path {
			at.Path = append(at.Path, layout.Point(c))
		}
		d.Wires = append(d.Wires, at)
	}
	return pictureOf(&d)
}

// span is a rectangle by the distance of its edges instead of by cells.
func span(r scene.Rect) layout.Rect { return layout.Rect{X: r.X, Y: r.Y, W: r.W - 1, H: r.H - 1} }

// read takes zones, boxes, flags and wires off a page. Wires are joined to the ports in whose cells they end.
func (file *fileGraph) read(p *scene.Page) error {
	at := map[scene.Point]fileEnd{}
	add := func(id string, r scene.Rect, ports []scene.Port) {
		n := fileNode{ID: id, W: r.W - 1, H: r.H - 1, Ports: []filePort{}}
		for i, port := range ports {
			out := filePort{ID: fmt.Sprint("p", i+1), Side: map[scene.Side]string{
				scene.North: "N", scene.East: "E", scene.South: "S", scene.West: "W"}[port.Side], Offset: port.At.Y - r.Y}
			if port.Side == scene.North || port.Side == scene.South {
				out.Offset = port.At.X - r.X
			}
			n.Ports = append(n.Ports, out)
			at[port.At] = fileEnd{Node: id, Port: out.ID}
		}
		for _, z := range p.Zones {
			if z.Rect.X <= r.X && r.Right() <= z.Rect.Right() && z.Rect.Y <= r.Y && r.Bottom() <= z.Rect.Bottom() {
				n.Zone = z.ID
			}
		}
		file.Nodes = append(file.Nodes, n)
	}
	for _, z := range p.Zones {
		file.Zones = append(file.Zones, fileZone{z.ID})
	}
	for _, b := range p.Boxes {
		add(b.ID, b.Rect, b.Ports)
	}
	for _, f := range p.Flags {
		add(f.ID, f.Rect, []scene.Port{f.Port})
	}
	for _, w := range p.Wires {
		if len(w.Path) < 2 {
			return fmt.Errorf("wire %s is not drawn", w.ID)
		}
		from, ok := at[w.Path[0]]
		to, too := at[w.Path[len(w.Path)-1]]
		if !ok || !too {
			return fmt.Errorf("wire %s does not end at a port", w.ID)
		}
		file.Edges = append(file.Edges, fileEdge{w.ID, from, to})
	}
	return nil
}

// save writes a graph and our drawing of it, if asked to.
func (r *reporter) save(g fileGraph, own picture) error {
	if r.export == "" {
		return nil
	}
	if err := os.MkdirAll(r.export, 0o755); err != nil {
		return err
	}
	return errors.Join(writeJSON(filepath.Join(r.export, g.Name+".json"), g),
		writeJSON(filepath.Join(r.export, g.Name+".drawing.json"), own))
}

func writeJSON(name string, v any) error {
	text, err := json.Marshal(v)
	if err != nil {
		return err
	}
	return os.WriteFile(name, append(text, '\n'), 0o644)
}
