package route

// queue is a bucket queue of search states. Among equal keys the last one in comes out first, so that the search
// runs on along the path it is on.
type queue struct {
	heads []int32 // per key, index into items + 1
	items []queued
	free  int32 // index + 1 of the first item to be used again
	low   int
	high  int
	size  int
}

type queued struct {
	state int32
	next  int32
}

func (q *queue) reset() {
	clear(q.heads[:min(q.high+1, len(q.heads))])
	q.items = q.items[:0]
	q.free, q.low, q.high, q.size = 0, 0, 0, 0
}

func (q *queue) push(key int, state int32) {
	for key >= len(q.heads) {
		q.heads = append(q.heads, make([]int32, 1024)...)
	}
	var at int32
	if q.free != 0 {
		at = q.free
		q.free = q.items[at-1].next
		q.items[at-1] = queued{state, q.heads[key]}
	} else {
		q.items = append(q.items, queued{state, q.heads[key]})
		at = int32(len(q.items))
	}
	q.heads[key] = at
	q.low = min(q.low, key)
	q.high = max(q.high, key)
	q.size++
}

// pop takes a state of the lowest key; ok is false when there is none.
func (q *queue) pop() (key int, state int32, ok bool) {
	if q.size == 0 {
		return 0, 0, false
	}
	for q.heads[q.low] == 0 {
		q.low++
	}
	at := q.heads[q.low]
	item := &q.items[at-1]
	q.heads[q.low] = item.next
	state = item.state
	item.next = q.free
	q.free = at
	q.size--
	return q.low, state, true
}
