package main

import (
	"example.com/lugbook/diagram/layout"
	"example.com/lugbook/diagram/layout/layouttest"
)

// randomChannels compares the tracks of routed channels with their density, below which no routing goes.
func (r *reporter) randomChannels() error {
	r.printf("%d channels of each size, wires with two ends, no circles of wires that wait for each other. Tracks: columns with "+
		"upright runs. A chain of waiting wires may force more tracks than the density.\n\n", r.channels)
	t := newTable("wires", "density, mean", "tracks, mean", "at density", "within one", "most over", "faults")
	for _, wires := range []int{5, 10, 20, 30} {
		density, tracks, met, close, worst, faults := 0, 0, 0, 0, 0, 0
		for seed := range uint64(r.channels) {
			c := layouttest.NewChannel(seed, wires)
			d, err := layout.Route(c.Graph, c.Drawing, layout.Options{})
			m, measured := layout.Measure(c.Graph, d)
			if err != nil || measured != nil || m.Faults() > 0 {
				faults += max(m.Faults(), 1)
				continue
			}
			over := layouttest.Tracks(d) - c.Density
			density += c.Density
			tracks += c.Density + over
			worst = max(worst, over)
			if over <= 0 {
				met++
			}
			if over <= 1 {
				close++
			}
		}
		n := max(r.channels, 1)
		t.row(wires, float64(density)/float64(n), float64(tracks)/float64(n), share(met, r.channels), share(close, r.channels), worst, faults)
		r.progress("channels of %d wires", wires)
	}
	r.text.WriteString(t.String())
	return nil
}
