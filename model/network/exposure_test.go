package network_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	_ "example.com/lugbook/model/fixedseed"
	"example.com/lugbook/model/mini"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/part"
)

// TestExposureIsTheLeastThatMustOpen compares with every combination of open devices: the
// largest current is the least sum of ratings whose opening parts every source from the
// wire (max-flow min-cut, Ford and Fulkerson 1956).
func TestExposureIsTheLeastThatMustOpen(t *testing.T) {
	const posts = 5
	rapid.Check(t, func(t *rapid.T) {
		type device struct{ a, b, amps int }
		const ground = posts // the sources stand at a post of their own
		charger := device{ground, rapid.IntRange(0, posts-2).Draw(t, "charger"), 18}
		devices := []device{charger} // it limits itself as a device would
		var text strings.Builder
		fmt.Fprintf(&text, "part pack lithium-pack-16\npart load pump-motor\nwire feed pack.POS p0.POST\nwire probe p4.POST load.+\nwire back load.- pack.NEG\n"+
			"part chg charger-onboard-48v charge-current=18A\nwire cp chg.DC+ p%d.POST\nwire cn chg.DC- pack.NEG\n", charger.b)
		for i := range posts {
			fmt.Fprintf(&text, "part p%d bus-post\n", i)
		}
		for i := range rapid.IntRange(0, 9).Draw(t, "fuses") {
			f := device{rapid.IntRange(0, posts-1).Draw(t, "a"), rapid.IntRange(0, posts-1).Draw(t, "b"), rapid.IntRange(1, 50).Draw(t, "amps")}
			devices = append(devices, f)
			fmt.Fprintf(&text, "part f%d fuse-cartridge fuse-rating=%dA\nwire a%d p%d.POST f%d.in\nwire b%d f%d.out p%d.POST\n", i, f.amps, i, f.a, i, i, i, f.b)
		}
		j, err := mini.Job(text.String())
		if err != nil {
			t.Fatal(err)
		}
		n := network.Build(j, &j.Sheets[0], part.Library())
		protection, probe := n.Protect(), n.WireLink("probe")

		least := math.Inf(1)
		for open := range 1 << len(devices) {
			joined, sum := map[int]bool{0: true, ground: true}, 0
			for i, d := range devices {
				if open>>i&1 == 1 {
					sum += d.amps
				}
			}
			for grown := true; grown; {
				grown = false
				for i, d := range devices {
					if open>>i&1 == 0 && joined[d.a] != joined[d.b] {
						joined[d.a], joined[d.b], grown = true, true, true
					}
				}
			}
			if !joined[posts-1] {
				least = min(least, float64(sum))
			}
		}
		exposure := protection.Exposure(probe)
		require.Equal(t, least, exposure.Amps)
		require.Equal(t, least, protection.Exact(probe).Amps, "a wire that nothing bypasses")
		limits := 0.0
		for _, l := range exposure.Limits {
			amps, _ := n.Figure(l.Part, l.Element.Amps)
			limits += amps
		}
		require.Equal(t, least, limits, "the devices named add up to it")
	})
}
