package main

import (
	"encoding/json"
	"fmt"

	"example.com/lugbook/diagram/layout"
)

// fileGraph is a graph in JSON.
type fileGraph struct {
	Name  string     `json:"name,omitempty"`
	Runs  int        `json:"runs,omitempty"` // timed runs that a peer should make
	Zones []fileZone `json:"zones,omitempty"`
	Nodes []fileNode `json:"nodes"`
	Edges []fileEdge `json:"edges"`
}

type fileZone struct {
	ID string `json:"id"`
}

type fileNode struct {
	ID    string     `json:"id"`
	Zone  string     `json:"zone,omitempty"`
	W     int        `json:"w"`
	H     int        `json:"h"`
	Ports []filePort `json:"ports"`
}

type filePort struct {
	ID     string `json:"id"`
	Side   string `json:"side"`
	Offset int    `json:"offset"`
}

type fileEdge struct {
	ID   string  `json:"id"`
	From fileEnd `json:"from"`
	To   fileEnd `json:"to"`
}

// fileEnd is [node, port]; a port of null is a free end, which may be anywhere on the node.
type fileEnd struct {
	Node, Port string
	Free       bool
}

// UnmarshalJSON reads [node, port] or [node, null].
func (e *fileEnd) UnmarshalJSON(data []byte) error {
	var pair []*string
	if err := json.Unmarshal(data, &pair); err != nil {
		return err
	}
	if len(pair) != 2 || pair[0] == nil {
		return fmt.Errorf("an end is [node, port], not %s", data)
	}
	e.Node, e.Free = *pair[0], pair[1] == nil
	if !e.Free {
		e.Port = *pair[1]
	}
	return nil
}

// MarshalJSON writes [node, port] or [node, null].
func (e fileEnd) MarshalJSON() ([]byte, error) {
	if e.Free {
		return json.Marshal([]any{e.Node, nil})
	}
	return json.Marshal([]string{e.Node, e.Port})
}

var (
	sides     = map[string]layout.Side{"N": layout.North, "E": layout.East, "S": layout.South, "W": layout.West}
	sideNames = [4]string{layout.North: "N", layout.East: "E", layout.South: "S", layout.West: "W"}
)

// readGraph decodes a graph and names the edges that have no name.
func readGraph(data []byte) (fileGraph, error) {
	var file fileGraph
	if err := json.Unmarshal(data, &file); err != nil {
		return file, err
	}
	for i := range file.Edges {
		if file.Edges[i].ID == "" {
			file.Edges[i].ID = fmt.Sprintf("e%d", i)
		}
	}
	return file, nil
}

// graph is the graph for our layout; without zones its boxes belong to none. A free end gets a port of its own.
func (file *fileGraph) graph(zones bool) (layout.Graph, error) {
	var g layout.Graph
	if zones {
		for _, z := range file.Zones {
			g.Zones = append(g.Zones, layout.Zone{ID: z.ID, Title: len(z.ID)})
		}
	}
	at := map[string]int{}
	for i, n := range file.Nodes {
		at[n.ID] = i
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
	end := func(e fileEnd, edge string) (layout.PortRef, error) {
		if !e.Free {
			return layout.PortRef{Box: e.Node, Port: e.Port}, nil
		}
		i, ok := at[e.Node]
		if !ok {
			return layout.PortRef{}, fmt.Errorf("edge %s: there is no node %q", edge, e.Node)
		}
		b := &g.Boxes[i]
		p := layout.Port{ID: fmt.Sprintf("free %d", len(b.Ports)), Sides: layout.AnySide, Offset: -1}
		b.Ports = append(b.Ports, p)
		return layout.PortRef{Box: b.ID, Port: p.ID}, nil
	}
	for _, e := range file.Edges {
		from, err := end(e.From, e.ID)
		if err != nil {
			return g, err
		}
		to, err := end(e.To, e.ID)
		if err != nil {
			return g, err
		}
		g.Wires = append(g.Wires, layout.Wire{ID: e.ID, From: from, To: to})
	}
	return g, nil
}

// fileOf is the graph in the form of the files. A port whose place may be chosen becomes a free end of each wire on it.
func fileOf(name string, g layout.Graph) fileGraph {
	file := fileGraph{Name: name}
	for _, z := range g.Zones {
		file.Zones = append(file.Zones, fileZone{z.ID})
	}
	free := map[layout.PortRef]bool{}
	for _, b := range g.Boxes {
		n := fileNode{ID: b.ID, Zone: b.Zone, W: b.W, H: b.H, Ports: []filePort{}}
		for _, p := range b.Ports {
			side := layout.North
			for side < layout.West && p.Sides&layout.SidesOf(side) == 0 {
				side++
			}
			if p.Offset < 0 {
				free[layout.PortRef{Box: b.ID, Port: p.ID}] = true
			} else {
				n.Ports = append(n.Ports, filePort{p.ID, sideNames[side], p.Offset})
			}
		}
		file.Nodes = append(file.Nodes, n)
	}
	end := func(r layout.PortRef) fileEnd {
		if free[r] {
			return fileEnd{Node: r.Box, Free: true}
		}
		return fileEnd{Node: r.Box, Port: r.Port}
	}
	for _, w := range g.Wires {
		file.Edges = append(file.Edges, fileEdge{w.ID, end(w.From), end(w.To)})
	}
	return file
}
