package route

// queue is a bucket queue of search states. Among equal keys the last one in comes out first, so that the search
// runs on along the path it is on.
type queue struct {
	buckets [][]queued // per key
	low     int
	high    int
	size    int
}

// queued is a state, what it costs to come to it, and where it lies.
type queued struct {
	state, cost int32
	x, y        int16
}

func (q *queue) reset() {
	for k := q.low; k <= q.high && q.size > 0; k++ {
		q.size -= len(q.buckets[k])
		q.buckets[k] = q.buckets[k][:0]
	}
	q.low, q.high, q.size = 0, 0, 0
}

func (q *queue) push(key int, item queued) {
	for key >= len(q.buckets) {
		q.buckets = append(q.buckets, make([][]queued, 1024)...)
	}
	q.buckets[key] = append(q.buckets[key], item)
	q.low = min(q.low, key)
	q.high = max(q.high, key)
	q.size++
}

// pop takes a state of the lowest key; ok is false when there is none.
func (q *queue) pop() (key int, item queued, ok bool) {
	if q.size == 0 {
		return 0, queued{}, false
	}
	for len(q.buckets[q.low]) == 0 {
		q.low++
	}
	bucket := q.buckets[q.low]
	item = bucket[len(bucket)-1]
	q.buckets[q.low] = bucket[:len(bucket)-1]
	q.size--
	return q.low, item, true
}
