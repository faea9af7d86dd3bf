//go:build unix

package input

import (
	"errors"
	"time"

	"golang.org/x/sys/unix"
)

// readable waits until the descriptor has something to read, at most so long, and reports whether it has.
// It uses select, because poll does not serve terminals on every Unix.
func readable(fd uintptr, atMost time.Duration) bool {
	if fd >= unix.FD_SETSIZE {
		return false // select cannot watch it: what is unfinished is delivered as it is
	}
	deadline := time.Now().Add(atMost)
	for {
		left := unix.NsecToTimeval(max(0, time.Until(deadline)).Nanoseconds())
		var set unix.FdSet
		set.Set(int(fd))
		n, err := unix.Select(int(fd)+1, &set, nil, nil, &left)
		if errors.Is(err, unix.EINTR) {
			continue
		}
		return err == nil && n > 0
	}
}
