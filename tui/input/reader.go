//go:build unix

package input

import (
	"io"
	"os"
	"time"
)

const (
	// patience is how long an unfinished sequence may lie before it counts as finished. A slow link delays the
	// parts of a sequence by some 15 ms, a person needs more than 50 ms between two keys; choice, no source.
	patience = 40 * time.Millisecond

	// reserve is the room kept in every read for completing the last message.
	reserve = maxSequence + 16
)

// Reader is a terminal's file that delivers whole messages: see [Wrap].
type Reader struct {
	*os.File
	patience time.Duration
	scan     scanner
	held     []byte // the unfinished message
	typed    []byte // what was typed before the program listened
}

// Wrap makes a terminal's file fit for Bubble Tea v1, which takes the end of a read for the end of a message.
// Through the wrapped file every read ends with a whole message: an escape sequence, a mouse report or a rune
// that arrives in parts is held back until it is complete, or until nothing has come for 40 ms. So a lone Esc
// arrives 40 ms late. Late answers of the terminal to a colour question are taken out of the stream.
//
// The typed bytes come before all others; they are what [AskBackground] found between the answers. They appear
// with the first thing that comes from the terminal after the program has started.
//
// The result is a file with the same descriptor, so raw mode works. On systems other than Unix the file itself
// is returned, because Bubble Tea reads console records there.
func Wrap(file *os.File, typed []byte) io.Reader {
	return &Reader{File: file, patience: patience, typed: typed}
}

// Read reads whole messages, at most len(p)-1 bytes. It returns 0 bytes and no error when all that came was no
// message. A buffer too small for a message is filled as the file would do it.
func (r *Reader) Read(p []byte) (int, error) {
	if len(p) < 2*reserve {
		return r.File.Read(p)
	}
	out, taken := p[:0], len(r.typed)
	if limit := len(p) - reserve; taken > limit {
		taken = limit
	}
	for _, b := range r.typed[:taken] {
		out = r.place(out, b)
	}
	r.typed = r.typed[taken:]

	if room := len(p) - reserve - taken; room > 0 {
		var chunk [512]byte
		n, err := r.File.Read(chunk[:min(room, len(chunk))])
		for _, b := range chunk[:n] {
			out = r.place(out, b)
		}
		taken += n
		if err != nil && taken == 0 {
			return 0, err
		}
	}
	out = r.complete(out, len(p)-1-taken)
	return len(out), nil
}

// complete reads on, byte by byte and at most room bytes, until nothing is held back any more.
// An error of the file ends it; the next Read meets the same error.
func (r *Reader) complete(out []byte, room int) []byte {
	var one [1]byte
	for ; r.scan.open() && room > 0 && readable(r.Fd(), r.patience); room-- {
		if n, err := r.File.Read(one[:]); err != nil || n == 0 {
			break
		}
		out = r.place(out, one[0])
	}
	if r.scan.open() {
		if r.scan.expire() {
			out = append(out, r.held...)
		}
		r.held = r.held[:0]
	}
	return out
}

// place puts the byte where the scanner says: to the unfinished message or with it to out.
func (r *Reader) place(out []byte, b byte) []byte {
	for {
		switch r.scan.feed(b) {
		case hold:
			if r.scan.state != command || r.scan.count == 0 { // an answer's text is never delivered
				r.held = append(r.held, b)
			}
			return out
		case whole:
			out = append(append(out, r.held...), b)
			r.held = r.held[:0]
			return out
		case swallow:
			r.held = r.held[:0]
			return out
		case again:
			out = append(out, r.held...)
			r.held = r.held[:0]
		case discard:
			r.held = r.held[:0]
		}
	}
}
