package network_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	_ "example.com/lugbook/model/fixedseed"
	"example.com/lugbook/model/network"
	"example.com/lugbook/model/network/mini"
	"example.com/lugbook/model/part"
)

// TestExposureIsTheLeastCut compares with every way to part the posts in two: the
// largest current is the least sum of ratings that parts the pack from the wire (Ford and
// Fulkerson).
func TestExposureIsTheLeastCut(t *testing.T) {
	const posts = 5
	rapid.Check(t, func(t *rapid.T) {
		type fuse struct{ a, b, amps int }
		var text strings.Builder
		text.WriteString("part pack lithium-pack-16\npart load pump-motor\nwire feed pack.POS p0.POST\nwire probe p4.POST load.+\nwire back load.- pack.NEG\n")
		for i := range posts {
			fmt.Fprintf(&text, "part p%d bus-post\n", i)
		}
		var fuses []fuse
		for i := range rapid.IntRange(0, 9).Draw(t, "fuses") {
			f := fuse{rapid.IntRange(0, posts-1).Draw(t, "a"), rapid.IntRange(0, posts-1).Draw(t, "b"), rapid.IntRange(1, 50).Draw(t, "amps")}
			fuses = append(fuses, f)
			fmt.Fprintf(&text, "part f%d fuse-cartridge fuse-rating=%dA\nwire a%d p%d.POST f%d.in\nwire b%d f%d.out p%d.POST\n", i, f.amps, i, f.a, i, i, i, f.b)
		}
		j, err := mini.Job(text.String())
		if err != nil {
			t.Fatal(err)
		}
		n := network.Build(j, &j.Sheets[0], part.Library())
		protection, probe := n.Protect(), n.WireLink("probe")

		least := math.Inf(1)
		for side := range 1 << posts {
			if side&1 == 0 || side&(1<<(posts-1)) != 0 {
				continue // the pack on one side, the wire on the other
			}
			cut := 0
			for _, f := range fuses {
				if side>>f.a&1 != side>>f.b&1 {
					cut += f.amps
				}
			}
			least = min(least, float64(cut))
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
