//go:build !unix

package input

import (
	"io"
	"os"
	"time"
)

// Wrap returns the file: Bubble Tea reads console records here, and any other reader would cost it the mouse
// and the size messages.
func Wrap(file *os.File, _ []byte) io.Reader {
	return file
}

// AskBackground asks nothing here and returns no colour: console records do not carry the answer.
func AskBackground(_, _ *os.File, _ time.Duration) (colour string, typed []byte) {
	return "", nil
}
