package place

import "example.com/lugbook/diagram/layout/geom"

// Tiles are 32 columns wide and 16 rows high.
const (
	tileX = 5
	tileY = 4
)

// tiles finds the legs and boxes near a place. The plane is rolled up, so that far places share tiles: what is
// found still has to be looked at.
type tiles struct {
	bits  int // of the number of tiles in a row and in a column
	legs  [][]int32
	boxes [][]int32
	path  []int32
}

// newTiles makes about as many tiles as a drawing of n boxes covers.
func newTiles(n int) *tiles {
	t := &tiles{bits: 3}
	for n > 1<<(2*t.bits-2) && t.bits < 7 {
		t.bits++
	}
	t.legs, t.boxes = make([][]int32, 1<<(2*t.bits)), make([][]int32, 1<<(2*t.bits))
	return t
}

func (t *tiles) clear() {
	for i := range t.legs {
		t.legs[i], t.boxes[i] = t.legs[i][:0], t.boxes[i][:0]
	}
}

// at is the tile in column x and row y of tiles.
func (t *tiles) at(x, y int) int32 {
	mask := 1<<t.bits - 1
	return int32(y&mask<<t.bits | x&mask)
}

// over lists the tiles that a rectangle covers. The list is good until the next call.
func (t *tiles) over(r geom.Rect) []int32 {
	t.path = t.path[:0]
	for y := r.Y >> tileY; y <= r.Bottom()>>tileY; y++ {
		for x := r.X >> tileX; x <= r.Right()>>tileX; x++ {
			t.path = append(t.path, t.at(x, y))
		}
	}
	return t.path
}

// along lists the tiles that a leg passes, and now and then one beside it. The list is good until the next call.
func (t *tiles) along(l *leg) []int32 {
	t.path = t.path[:0]
	a, b := l.a, l.b
	if a.Y > b.Y {
		a, b = b, a
	}
	top, bottom := a.Y>>tileY, b.Y>>tileY
	for y := top; y <= bottom; y++ {
		left, right := a.X, b.X
		if y > top {
			left = a.X + (b.X-a.X)*(y<<tileY-a.Y)/(b.Y-a.Y)
		}
		if y < bottom {
			right = a.X + (b.X-a.X)*((y+1)<<tileY-a.Y)/(b.Y-a.Y)
		}
		if left > right {
			left, right = right, left
		}
		left, right = max(left-1, int(l.low[0])), min(right+1, int(l.high[0]))
		for x := left >> tileX; x <= right>>tileX; x++ {
			t.path = append(t.path, t.at(x, y))
		}
	}
	return t.path
}

// put and drop keep the lists of tiles.
func put(lists [][]int32, path []int32, item int) {
	for _, at := range path {
		lists[at] = append(lists[at], int32(item))
	}
}

func drop(lists [][]int32, path []int32, item int) {
	for _, at := range path {
		list := lists[at]
		for k, other := range list {
			if other == int32(item) {
				list[k] = list[len(list)-1]
				lists[at] = list[:len(list)-1]
				break
			}
		}
	}
}
