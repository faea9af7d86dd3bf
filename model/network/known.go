package network

import (
	"slices"
	"sync"
)

// known is what is asked of a network again and again, worked out when first asked for.
type known struct {
	firm       *Groups
	metal      *Groups
	strings    func() []String
	feeds      func() []Feed
	returns    func() []bool
	protection func() *Protection
}

// remember prepares what is worked out once.
func (n *Network) remember() {
	n.known = known{
		firm: n.Joined((*Link).Firm), metal: n.Joined((*Link).IsMetal),
		strings: sync.OnceValue(n.findStrings), feeds: sync.OnceValue(n.findFeeds),
		returns: sync.OnceValue(n.findReturns), protection: sync.OnceValue(n.protect),
	}
}

// FirmGroups are the nodes at one potential in service, see [Link.Firm].
func (n *Network) FirmGroups() *Groups { return n.known.firm }

// MetalGroups are the nodes that plain metal joins, see [Link.IsMetal].
func (n *Network) MetalGroups() *Groups { return n.known.metal }

// Strings finds the chains of sources by their metal, with fuses, isolators and
// shunts closed and no load considered. A source whose voltage is not known counts
// as 1 V for the direction of its string.
func (n *Network) Strings() []String { return slices.Clone(n.known.strings()) }

// Feeds lists the feeds of the network: strings first, with the batteries inside
// them, then chargers and converters in the order of the sheet.
func (n *Network) Feeds() []Feed { return slices.Clone(n.known.feeds()) }

// Returns marks the nodes that hold the low end of a string or of a converter's
// output in service: conductors there bring current back and are no feed. Treat it as
// read-only.
func (n *Network) Returns() []bool { return n.known.returns() }

// Protect is how much current can reach each conductor, worked out once.
func (n *Network) Protect() *Protection { return n.known.protection() }
