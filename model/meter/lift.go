package meter

import (
	"fmt"
	"math"
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/state"
)

// dead tells how to take the power off before ohms are read between two nodes: for each
// string that reaches them, what to switch off or open, or which cable to lift where
// neither can be. The negative end first is common practice, no source.
func dead(n *network.Network, s state.State, r, k network.Node) []string {
	solved, err := n.Solve(s)
	if err != nil {
		return nil
	}
	var list []string
	for _, str := range n.Strings() {
		at, _ := s.Position(model.Isolator)
		if !reaches(solved, &str, r, k) || at == "open" && !drives(solved, &str, r, k) {
			continue
		}
		why := lift(n, s, &str, r, k)
		switch {
		case canSwitch(&str):
			why = fmt.Sprintf("%s taken out: switch it off first", str.Cells[0].Link.Part.ID)
		case parts(n, s, &str, r, k):
			why = "the batteries taken out: open the isolator first"
		}
		if why != "" && !slices.Contains(list, why) {
			list = append(list, why)
		}
	}
	return list
}

// reaches reports whether a string gives volts and is joined to one of two nodes.
func reaches(s *network.Solution, str *network.String, r, k network.Node) bool {
	gives := slices.ContainsFunc(str.Cells, func(c network.Cell) bool { return s.On(c.Link) })
	return gives && slices.ContainsFunc([]network.Node{r, k}, func(at network.Node) bool {
		_, known := s.Voltage(at, str.Low)
		return known
	})
}

// canSwitch reports whether a string is a pack with a switch of its own.
func canSwitch(str *network.String) bool {
	return !slices.ContainsFunc(str.Cells, func(c network.Cell) bool { return len(c.Link.Element.ClosedIn) == 0 })
}

// parts reports whether the isolator parts a string from both nodes.
func parts(n *network.Network, s state.State, str *network.String, r, k network.Node) bool {
	if at, there := s.Position(model.Isolator); !there || at == "open" {
		return false
	}
	open, err := n.Solve(s.With(model.Isolator, "open"))
	return err == nil && !drives(open, str, r, k)
}

// drives reports whether volts still stand between two nodes that a string reaches.
func drives(s *network.Solution, str *network.String, r, k network.Node) bool {
	volts, known := s.Voltage(r, k)
	return known && math.Abs(volts) > strayVolts && reaches(s, str, r, k)
}

// lift names the cables at the low end of a string that cannot be switched off; empty if
// no cable is there.
func lift(n *network.Network, s state.State, str *network.String, r, k network.Node) string {
	var changes []network.Change
	var cables []string
	for _, l := range n.LinksAt(str.Low) {
		if l.Kind == network.WireLink {
			changes = append(changes, network.Change{Link: l, Open: true})
			cables = append(cables, string(l.Wire.ID))
		}
	}
	if len(cables) == 0 {
		return ""
	}
	lifted, err := n.SolveWith(s, network.Variation{Changes: changes})
	if err == nil && drives(lifted, str, r, k) {
		return "the batteries taken out: they cannot be switched off, and no cable parts them from the probes; read volts here"
	}
	return fmt.Sprintf("the batteries taken out: they cannot be switched off, lift %s at %s first and cover the end", words(cables), n.Point(str.Low))
}
