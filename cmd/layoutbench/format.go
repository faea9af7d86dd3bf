package main

import (
	"encoding/json"
	"fmt"

	"example.com/lugbook/diagram/layout"
)

type fileGraph struct {
	Zones []struct{ ID string }
	Nodes []fileNode
	Edges []struct {
		ID       string
		From, To [2]string
	}
}

type fileNode struct {
	ID, Zone string
	W, H     int
	Ports    []struct {
		ID, Side string
		Offset   int
	}
}

type fileDrawing struct {
	Nodes map[string]fileCorner `json:"nodes"`
	Edges map[string][][2]int   `json:"edges"`
}

type fileCorner struct {
	X int `json:"x"`
	Y int `json:"y"`
}

var sides = map[string]layout.Side{"N": layout.North, "E": layout.East, "S": layout.South, "W": layout.West}

// readGraph decodes a graph; without zones its boxes belong to none.
func readGraph(data []byte, zones bool) (layout.Graph, error) {
	var file fileGraph
	var g layout.Graph
	if err := json.Unmarshal(data, &file); err != nil {
		return g, err
	}
	if zones {
		for _, z := range file.Zones {
			g.Zones = append(g.Zones, layout.Zone{ID: z.ID, Title: len(z.ID)})
		}
	}
	for _, n := range file.Nodes {
		box := layout.Box{ID: n.ID, W: n.W, H: n.H}
		if zones {
			box.Zone = n.Zone
		}
		for _, p := range n.Ports {
			side, ok := sides[p.Side]
			if !ok {
				return g, fmt.Errorf("node %s, port %s: side %q is none of N, E, S, W", n.ID, p.ID, p.Side)
			}
			box.Ports = append(box.Ports, layout.Port{ID: p.ID, Sides: layout.SidesOf(side), Offset: p.Offset})
		}
		g.Boxes = append(g.Boxes, box)
	}
	for i, e := range file.Edges {
		if e.ID == "" {
			e.ID = fmt.Sprintf("e%d", i)
		}
		g.Wires = append(g.Wires, layout.Wire{ID: e.ID,
			From: layout.PortRef{Box: e.From[0], Port: e.From[1]}, To: layout.PortRef{Box: e.To[0], Port: e.To[1]}})
	}
	return g, nil
}

func writeDrawing(d *layout.Drawing) ([]byte, error) {
	file := fileDrawing{Nodes: map[string]fileCorner{}, Edges: map[string][][2]int{}}
	for _, b := range d.Boxes {
		file.Nodes[b.ID] = fileCorner{b.Rect.X, b.Rect.Y}
	}
	for _, w := range d.Wires {
		path := [][2]int{}
		for _, p := range w.Path {
			path = append(path, [2]int{p.X, p.Y})
		}
		file.Edges[w.ID] = path
	}
	text, err := json.Marshal(file)
	return append(text, '\n'), err
}
