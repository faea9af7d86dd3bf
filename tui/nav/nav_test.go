package nav

import (
	"fmt"
	"image"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	_ "example.com/lugbook/model/fixedseed"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// scattered lays out n boxes of sizes that parts have, without overlap, on a plane of the given size.
func scattered(rng *rand.Rand, n, columns, rows, maxWidth, maxHeight int) []image.Rectangle {
	var boxes []image.Rectangle
	for tries := 0; len(boxes) < n && tries < 4000; tries++ {
		w, h := 1+rng.IntN(maxWidth), 1+rng.IntN(maxHeight)
		if maxWidth > 3 {
			w, h = max(8, w), max(3, h)
		}
		x, y := rng.IntN(columns-w), rng.IntN(rows-h)
		box := image.Rect(x, y, x+w, y+h)
		if !slices.ContainsFunc(boxes, box.Overlaps) {
			boxes = append(boxes, box)
		}
	}
	return boxes
}

// presses is the number of arrow presses from one object to all others, -1 where there is no way.
func presses(m *Map, from int) []int {
	count := make([]int, len(m.next))
	for i := range count {
		count[i] = -1
	}
	count[from] = 0
	for queue := []int{from}; len(queue) > 0; queue = queue[1:] {
		for _, d := range directions {
			if to, found := m.Next(queue[0], d); found && count[to] < 0 {
				count[to] = count[queue[0]] + 1
				queue = append(queue, to)
			}
		}
	}
	return count
}

// requirePromises checks what Map promises, and returns the longest way in presses.
func requirePromises(t require.TestingT, boxes []image.Rectangle) (longest int) {
	m := NewMap(boxes)
	for a := range boxes {
		for b, count := range presses(m, a) {
			require.GreaterOrEqual(t, count, 0, "no way from %d to %d in %v", a, b, boxes)
			longest = max(longest, count)
		}
		for _, d := range directions {
			requireArrow(t, m, boxes, a, d)
		}
	}
	return longest
}

// requireArrow checks one arrow: alive if anything is there, reversible, and with an end.
func requireArrow(t require.TestingT, m *Map, boxes []image.Rectangle, a int, d Dir) {
	here, something := middle(boxes[a], d), false
	for _, box := range boxes {
		something = something || middle(box, d) > here
	}
	pos, moved := At(a).Move(m, d)
	require.True(t, moved || !something, "dead arrow %d at %d in %v", d, a, boxes)
	if !moved {
		require.Equal(t, At(a), pos)
		return
	}
	require.GreaterOrEqual(t, middle(boxes[pos.At], d), here, "arrow %d at %d leads the other way in %v", d, a, boxes)
	back, moved := pos.Move(m, d.Opposite())
	require.True(t, moved)
	require.Equal(t, a, back.At, "the opposite arrow has to return")
	again, _ := back.Move(m, d)
	require.Equal(t, pos.At, again.At, "and the first one to go there again")

	for n := 0; moved; n++ {
		require.Less(t, n, len(boxes), "arrow %d from %d has no end in %v", d, a, boxes)
		pos, moved = pos.Move(m, d)
	}
}

// middle is how far a box lies in a direction, worked out apart from the code under test.
func middle(box image.Rectangle, d Dir) float64 {
	x, y := float64(box.Min.X+box.Max.X)/2, float64(box.Min.Y+box.Max.Y)/2
	return [...]float64{Left: -x, Right: x, Up: -y, Down: y}[d]
}

// Layouts such as carts have: all promises, and never more than ten presses between two boxes.
func TestBoxes(t *testing.T) {
	for _, c := range []struct{ n, columns, rows int }{{16, 120, 36}, {24, 200, 60}, {6, 40, 20}} {
		t.Run(fmt.Sprint(c.n), func(t *testing.T) {
			longest := 0
			for seed := range uint64(500) {
				rng := rand.New(rand.NewPCG(seed, 1))
				longest = max(longest, requirePromises(t, scattered(rng, c.n, c.columns, c.rows, 18, 7)))
			}
			t.Logf("longest way: %d presses", longest)
			require.LessOrEqual(t, longest, 10)
		})
	}
}

// Studs are small and many; the arrows alone still reach all of them.
func TestStuds(t *testing.T) {
	repaired := 0
	for seed := range uint64(120) {
		rng := rand.New(rand.NewPCG(seed, 2))
		boxes := scattered(rng, 31+rng.IntN(60), 120, 36, 3, 1)
		requirePromises(t, boxes)
		if neighbours(boxes).pairs() < len(boxes)*len(boxes) {
			repaired++
		}
	}
	require.Positive(t, repaired, "no layout here needed the repair: the test is too easy")
}

// Anything at all: overlapping, nested and identical boxes.
func TestAnyBoxes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		boxes := rapid.SliceOfN(rapid.Custom(func(t *rapid.T) image.Rectangle {
			x, y := rapid.IntRange(0, 12).Draw(t, "x"), rapid.IntRange(0, 12).Draw(t, "y")
			return image.Rect(x, y, x+rapid.IntRange(0, 9).Draw(t, "w"), y+rapid.IntRange(0, 5).Draw(t, "h"))
		}), 0, 24).Draw(t, "boxes")
		requirePromises(t, boxes)
	})
}

// The chain is the last resort of the repair; it has to work alone, from no arrows at all.
func TestChain(t *testing.T) {
	for seed := range uint64(200) {
		rng := rand.New(rand.NewPCG(seed, 3))
		boxes := scattered(rng, 20, 40, 20, 3, 2)
		boxes = append(boxes, boxes[0], boxes[0], boxes[5]) // identical ones too
		m := &Map{next: make([][len(directions)]int, len(boxes))}
		for i := range m.next {
			m.next[i] = [...]int{none, none, none, none}
		}
		m.chain(boxes)
		require.Equal(t, len(boxes)*len(boxes), m.pairs())
		for a, arrows := range m.next {
			for _, d := range directions {
				require.True(t, arrows[d] == none || beyond(boxes, a, arrows[d], d))
			}
		}
	}
}

// The rule before repair against the same rule in plain floating point.
func TestNeighboursAgainstBruteForce(t *testing.T) {
	for seed := range uint64(200) {
		rng := rand.New(rand.NewPCG(seed, 4))
		boxes := scattered(rng, 20, 120, 36, 18, 7)
		m := neighbours(boxes)
		for a := range boxes {
			for _, d := range directions {
				least := math.Inf(1)
				for b := range boxes {
					if middle(boxes[b], d) > middle(boxes[a], d) {
						least = min(least, plainCost(boxes[a], boxes[b], d))
					}
				}
				to, found := m.Next(a, d)
				require.Equal(t, !math.IsInf(least, 1), found)
				if found {
					require.Equal(t, least, plainCost(boxes[a], boxes[to], d), "arrow %d at %d in %v", d, a, boxes)
				}
			}
		}
	}
}

// plainCost is the arrow rule as it is written down, in cells.
func plainCost(a, b image.Rectangle, d Dir) float64 {
	along := func(r image.Rectangle) (float64, float64) { return float64(r.Min.X), float64(r.Max.X) }
	across := func(r image.Rectangle) (float64, float64) { return 2 * float64(r.Min.Y), 2 * float64(r.Max.Y) }
	if d == Up || d == Down {
		along, across = across, along
	}
	a0, a1 := along(a)
	b0, b1 := along(b)
	gap := b0 - a1
	if d == Left || d == Up {
		gap = a0 - b1
	}
	s0, s1 := across(a)
	t0, t1 := across(b)
	side := max(0, t0-s1, s0-t1)
	shift := math.Abs((s0+s1)/2-(t0+t1)/2) / 4
	ahead := gap >= 0
	gap = max(0, gap)
	switch {
	case ahead && t0 < s1 && s0 < t1:
		return gap + shift
	case side <= gap:
		return gap + 2*side + shift + 6
	default:
		return gap + 3*side + shift + 30
	}
}

func TestNextOutsideTheMap(t *testing.T) {
	m := NewMap([]image.Rectangle{image.Rect(0, 0, 1, 1), image.Rect(5, 0, 6, 1)})
	for _, from := range []int{-1, 2} {
		_, found := m.Next(from, Right)
		require.False(t, found)
	}
	pos, moved := At(7).Move(m, Right)
	require.False(t, moved)
	require.Equal(t, At(7), pos)
}

func TestReadingOrder(t *testing.T) {
	boxes := []image.Rectangle{image.Rect(9, 4, 10, 5), image.Rect(2, 4, 3, 5), image.Rect(50, 0, 51, 9), image.Rect(2, 4, 9, 9)}
	require.Equal(t, []int{2, 1, 3, 0}, ReadingOrder(boxes))
}

func TestLabels(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rng := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 5))
		boxes := make([]image.Rectangle, rapid.IntRange(0, 500).Draw(t, "n"))
		for i := range boxes {
			boxes[i] = image.Rectangle{Max: image.Pt(2, 2)}.Add(image.Pt(rng.IntN(200), rng.IntN(60)))
		}
		from := rapid.IntRange(-1, len(boxes)).Draw(t, "from")
		labels := Labels(boxes, from)
		require.Len(t, labels, len(boxes))
		requireLabels(t, boxes, from, labels)
	})
}

// requireLabels checks that the labels can be told apart while they are typed, and that near ones are not longer.
func requireLabels(t require.TestingT, boxes []image.Rectangle, from int, labels []string) {
	var origin image.Point
	var given []string
	reach := make([]int, 4) // by length, the farthest object
	least := []int{math.MaxInt, math.MaxInt, math.MaxInt, math.MaxInt}
	if from >= 0 && from < len(boxes) {
		origin = centre(boxes[from])
	}
	for i, label := range labels {
		if i == from {
			require.Empty(t, label)
			continue
		}
		require.NotEmpty(t, label)
		require.LessOrEqual(t, len(label), 3)
		require.True(t, len(label) <= 2 || len(boxes) > 400, "%d objects", len(boxes))
		require.Empty(t, strings.Trim(label, letters))
		way := centre(boxes[i]).Sub(origin)
		far := way.X*way.X + way.Y*way.Y
		reach[len(label)], least[len(label)] = max(reach[len(label)], far), min(least[len(label)], far)
		given = append(given, label)
	}
	for short := 1; short < 3; short++ {
		require.LessOrEqual(t, reach[short], least[short+1], "a longer label is nearer")
	}
	slices.Sort(given) // a label would stand right before those it begins
	for i := 1; i < len(given); i++ {
		require.False(t, strings.HasPrefix(given[i], given[i-1]), "%q begins %q", given[i-1], given[i])
	}
}

// The lengths are the least possible ones, and the home row comes first.
func TestLabelLengths(t *testing.T) {
	require.Equal(t, []string{"a", "s", "d", "f", "j", "k", "l", "g", "h"}, prefixFree(9))
	for n, mean := range map[int]string{20: "1.00", 40: "1.55", 80: "1.80", 150: "1.91", 300: "1.98", 400: "2.00"} {
		total := len(strings.Join(prefixFree(n), ""))
		require.Equal(t, mean, fmt.Sprintf("%.2f", float64(total)/float64(n)), "%d labels", n)
	}
	require.Empty(t, prefixFree(0))
}
