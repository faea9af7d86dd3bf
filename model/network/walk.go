package network

import (
	"container/heap"
	"slices"
)

// Pass says whether a walk may cross a link, coming from the given node.
type Pass func(l *Link, from Node) bool

// Reach is where a walk came, and how.
type Reach struct {
	Order []Node // nodes in the order of their distance

	n      *Network
	via    []int // link by which a node was reached, -1 at the start or if not reached
	seen   []bool
	metres []float64
}

// Walk goes from the given nodes over every link that pass lets through, by the
// shortest way along the conductors. A wire without a known length counts as 0 m.
func (n *Network) Walk(from []Node, pass Pass) *Reach {
	r := &Reach{n: n, via: make([]int, n.Size()), seen: make([]bool, n.Size()), metres: make([]float64, n.Size())}
	queue := &frontier{}
	for _, at := range from {
		heap.Push(queue, visit{at: at, via: -1})
	}
	for queue.Len() > 0 {
		v := heap.Pop(queue).(visit)
		if r.seen[v.at] {
			continue
		}
		r.seen[v.at], r.via[v.at], r.metres[v.at] = true, v.via, v.metres
		r.Order = append(r.Order, v.at)
		for _, i := range n.at[v.at] {
			l := &n.links[i]
			if next := l.Other(v.at); !r.seen[next] && pass(l, v.at) {
				queue.pushes++
				heap.Push(queue, visit{at: next, via: i, metres: v.metres + l.metres, turn: queue.pushes})
			}
		}
	}
	return r
}

// Has reports whether the walk came to a node.
func (r *Reach) Has(at Node) bool { return at >= 0 && r.seen[at] }

// Metres is the distance along the conductors from where the walk began.
func (r *Reach) Metres(at Node) float64 { return r.metres[at] }

// Path lists the links from where the walk began to a node that it reached.
func (r *Reach) Path(at Node) []*Link {
	var path []*Link
	for r.seen[at] && r.via[at] >= 0 {
		l := &r.n.links[r.via[at]]
		path = append(path, l)
		at = l.Other(at)
	}
	slices.Reverse(path)
	return path
}

// Via is the link by which the walk came to a node; nil where it began.
func (r *Reach) Via(at Node) *Link {
	if !r.Has(at) || r.via[at] < 0 {
		return nil
	}
	return &r.n.links[r.via[at]]
}

// frontier is the queue of a walk: nearest first, then first come.
type frontier struct {
	visits []visit
	pushes int
}

type visit struct {
	at     Node
	via    int
	metres float64
	turn   int
}

func (f *frontier) Len() int { return len(f.visits) }
func (f *frontier) Less(i, j int) bool {
	a, b := f.visits[i], f.visits[j]
	return a.metres < b.metres || a.metres == b.metres && a.turn < b.turn
}
func (f *frontier) Swap(i, j int) { f.visits[i], f.visits[j] = f.visits[j], f.visits[i] }
func (f *frontier) Push(v any)    { f.visits = append(f.visits, v.(visit)) }
func (f *frontier) Pop() any {
	last := f.visits[len(f.visits)-1]
	f.visits = f.visits[:len(f.visits)-1]
	return last
}
