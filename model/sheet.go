package model

// SheetName is one of the three states of a cart's wiring that a job records.
type SheetName string

// The sheets of a job.
const (
	AsFound SheetName = "as-found" // how the cart came in
	Plan    SheetName = "plan"     // how it shall become
	AsBuilt SheetName = "as-built" // how it left
)

// Names lists the sheet names in the order of the work.
func (SheetName) Names() []string {
	return []string{string(AsFound), string(Plan), string(AsBuilt)}
}

// Sheet is one complete state of the wiring: a whole graph.
type Sheet struct {
	Name      SheetName  `yaml:",key"`
	Note      string     `yaml:"note" doc:"what this sheet is about"`
	Parts     []Part     `yaml:"parts,keyed,flow" doc:"the parts, by designator"`
	Wires     []Wire     `yaml:"wires,keyed,flow" doc:"the wires, by number or name"`
	Terminals []Terminal `yaml:"terminals,keyed,flow" doc:"what is known of single terminals: order of lugs, cover, condition"`
	Waived    []Waiver   `yaml:"waived,keyed,flow" doc:"findings that somebody lets stay, with reason, name and date"`
	Drawn     []Kept     `yaml:"drawn" doc:"how the sheet was last drawn, page by page; written by the program, and safe to delete"`
}

// Part finds a part by designator; nil if the sheet has none.
func (s *Sheet) Part(id PartID) *Part {
	for i := range s.Parts {
		if s.Parts[i].ID == id {
			return &s.Parts[i]
		}
	}
	return nil
}

// Wire finds a wire by id; nil if the sheet has none.
func (s *Sheet) Wire(id WireID) *Wire {
	for i := range s.Wires {
		if s.Wires[i].ID == id {
			return &s.Wires[i]
		}
	}
	return nil
}

// Terminal finds what is recorded of a terminal; nil if nothing is.
func (s *Sheet) Terminal(at TerminalRef) *Terminal {
	for i := range s.Terminals {
		if s.Terminals[i].At == at {
			return &s.Terminals[i]
		}
	}
	return nil
}

// Landed lists the wires that end on a terminal, in the order of the sheet.
func (s *Sheet) Landed(at TerminalRef) []WireID {
	var ids []WireID
	for i := range s.Wires {
		if s.Wires[i].LandsOn(at) {
			ids = append(ids, s.Wires[i].ID)
		}
	}
	return ids
}

// StackOf lists the wires on a terminal from the seat outward. Wires whose
// position is recorded come first; known is false if any position is not recorded
// though more than one wire lands there.
func (s *Sheet) StackOf(at TerminalRef) (order []WireID, known bool) {
	landed := s.Landed(at)
	placed := map[WireID]bool{}
	if t := s.Terminal(at); t != nil {
		for _, id := range t.Stack {
			order = append(order, id)
			placed[id] = true
		}
	}
	known = true
	for _, id := range landed {
		if !placed[id] {
			order = append(order, id)
			known = known && len(landed) < 2
		}
	}
	return order, known
}

// Bundled is how many wires share the bundle of a wire, itself included.
func (s *Sheet) Bundled(w *Wire) int {
	if w.Bundle == "" {
		return 1
	}
	n := 0
	for i := range s.Wires {
		if s.Wires[i].Bundle == w.Bundle {
			n++
		}
	}
	return n
}
