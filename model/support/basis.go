package support

import (
	"slices"

	"example.com/lugbook/model"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/unit"
)

// Assumption is a figure that is not the part's own, or is taken for want of one.
type Assumption struct {
	Of   string `json:"of"` // the part or wire; empty for what holds for the whole sheet
	Text string `json:"text"`
}

// basis gathers the assumptions that a result rests on while its figures are read.
type basis struct {
	n     *network.Network
	lines []Assumption
}

// figure is a rating in SI units, a share as a fraction. One that is the library's and
// not the part's own is an assumption. It is false if nobody states it.
func (b *basis) figure(p *model.Part, rating string) (float64, bool) {
	if rating == "" {
		return 0, false
	}
	r, ok := b.n.Cat.RatingOf(p, rating)
	if !ok || r.Value.IsZero() {
		return 0, false
	}
	if _, own := p.Rating(rating); !own {
		b.assume(string(p.ID), rating+" "+r.Value.String()+" ("+r.Source+")")
	}
	return r.Value.SI(), true
}

// lacks says what keeps a rating from being computed with: that nobody records it, or that
// it is recorded as nothing, or as more than the whole if it is a share. It is empty if
// nothing does.
func (b *basis) lacks(p *model.Part, rating string) string {
	r, ok := b.n.Cat.RatingOf(p, rating)
	switch {
	case rating == "" || !ok || r.Value.IsZero():
		return rating + " is not recorded"
	case !(r.Value.SI() > 0), r.Value.Dimension() == unit.Ratio && r.Value.SI() > 1:
		return rating + " is " + r.Value.String()
	}
	return ""
}

// share is a rating that is a share of something, or one that is assumed in words if
// nobody records one that is above nothing and not above the whole.
func (b *basis) share(p *model.Part, rating string, otherwise float64, words string) float64 {
	if b.lacks(p, rating) != "" {
		b.assume(string(p.ID), words)
		return otherwise
	}
	v, _ := b.figure(p, rating)
	return v
}

// orElse is a figure, or one that is assumed in words.
func (b *basis) orElse(p *model.Part, rating string, otherwise float64, words string) float64 {
	if v, ok := b.figure(p, rating); ok {
		return v
	}
	b.assume(string(p.ID), words)
	return otherwise
}

func (b *basis) assume(of, text string) {
	if line := (Assumption{of, text}); !slices.Contains(b.lines, line) {
		b.lines = append(b.lines, line)
	}
}

// recalled reports whether a figure is the library's and not the part's own.
func (b *basis) recalled(p *model.Part, rating string) bool {
	_, own := p.Rating(rating)
	return !own
}

// wires notes that the resistance of some wire is assumed.
func (b *basis) wires(path []*network.Link) {
	for _, l := range path {
		if l.Kind != network.WireLink {
			continue
		}
		if _, assumed := b.n.WireOhms(l); assumed {
			b.assume("wire "+string(l.Wire.ID), "its size or length is not recorded, a usual one is taken (from memory)")
		}
	}
}
