//go:build unix

package input

import (
	"os"
	"regexp"
	"time"

	"github.com/charmbracelet/x/term"
	"golang.org/x/sys/unix"
)

// question asks for the background colour (OSC 11) and then for the device attributes (DA1). Practically every
// terminal answers the second, so its answer tells that the first will not come any more.
const question = "\x1b]11;?\x1b\\\x1b[c"

var (
	colourReply     = regexp.MustCompile(`\x1b\]11;([^\x07\x1b]*)(\x07|\x1b\\)`)
	attributesReply = regexp.MustCompile(`\x1b\[\?[0-9;]*c`)
)

// AskBackground asks the terminal for its background colour, waits at most so long, and returns the answer in
// the terminal's own notation ("rgb:1e1e/1e1e/1e1e"), or "" if none came, if in or out is no terminal, or if the
// program runs in the background. Ask before the Bubble Tea program starts, with the files it will use.
//
// Keys pressed meanwhile are returned as typed, for [Wrap]. An answer that comes too late is dropped there.
func AskBackground(in, out *os.File, atMost time.Duration) (colour string, typed []byte) {
	if !term.IsTerminal(in.Fd()) || !term.IsTerminal(out.Fd()) || !inForeground(in.Fd()) {
		return "", nil
	}
	before, err := term.MakeRaw(in.Fd())
	if err != nil {
		return "", nil
	}
	// There is nothing better to do if the mode cannot be set back; Bubble Tea sets raw mode next.
	defer func() { _ = term.Restore(in.Fd(), before) }()
	if _, err := out.WriteString(question); err != nil {
		return "", nil
	}

	deadline := time.Now().Add(atMost)
	var got []byte
	buf := make([]byte, 256)
	for !attributesReply.Match(got) && readable(in.Fd(), time.Until(deadline)) {
		n, err := in.Read(buf)
		if err != nil || n == 0 {
			break
		}
		got = append(got, buf[:n]...)
	}
	if reply := colourReply.FindSubmatch(got); reply != nil {
		colour = string(reply[1])
	}
	typed = colourReply.ReplaceAll(got, nil)
	return colour, attributesReply.ReplaceAll(typed, nil)
}

// inForeground reports whether the process may set the terminal's mode without being stopped for it.
func inForeground(fd uintptr) bool {
	group, err := unix.IoctlGetInt(int(fd), unix.TIOCGPGRP)
	return err == nil && group == unix.Getpgrp()
}
