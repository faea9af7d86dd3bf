package diagnose

import "example.com/lugbook/model/network"

// wires lists open wires, and a poor joint at each end of those that carry something.
func (l *lister) wires() {
	links := l.n.Links()
	for i := range links {
		if links[i].Kind == network.WireLink {
			l.wire(i, &links[i])
		}
	}
}

func (l *lister) wire(i int, link *network.Link) {
	w := link.Wire
	if w.From.At.IsZero() || w.To.At.IsZero() {
		return
	}
	class := l.classOfWire(link)
	l.add(Fault{
		ID: "open:" + string(w.ID), Family: OpenWire, Text: "wire " + string(w.ID) + " from " + w.From.At.String() + " to " + w.To.At.String() + " is open",
		Do:       "pull gently at both lugs of " + string(w.ID) + ", look for broken strands and chafing, and replace it",
		variants: []int{l.change(network.Change{Link: link, Open: true})}, class: class, at: link.A,
	}, w.Condition)
	felt := l.joint(link, l.most[i])
	if felt == nil {
		return
	}
	for k, end := range w.Ends() {
		at := []network.Node{link.A, link.B}[k]
		l.add(Fault{
			ID: "joint:" + string(w.ID) + "@" + end.At.String(), Family: PoorJoint,
			Text:     "poor joint of " + string(w.ID) + " at " + end.At.String(),
			Do:       "with the power off take " + string(w.ID) + " off " + end.At.String() + ", clean both faces, renew the lug if the crimp turns, tighten to the record",
			variants: felt, class: class, at: at,
		}, w.Condition, l.conditionsAt(end.At))
	}
}
