package input

import (
	"bytes"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"
)

// FuzzScanner checks what the reader relies on, for any bytes: the scanner never refuses a byte for good, holds
// back a bounded number, agrees with itself wherever the stream is cut, and knows all complete runes.
func FuzzScanner(f *testing.F) {
	for _, seed := range []string{
		"jjj", "\x1b", "\x1b[A", "\x1b\x1b[A", "\x1b[<35;119;20M", "\x1b[M !!", "\x1bOP", "\x1b[[A", "é€😀", "\x1bé",
		"\x1b[200~a\x1b[A\x1b[201~b", "\x1b]11;rgb:1e1e/1e1e/1e1e\x1b\\x", "\x1b]4;\x1b[A", "\xff\xc3\x28", "\x1b[\x1b[",
	} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, stream []byte) {
		var s scanner
		held := 0
		for i, b := range stream {
			v := s.feed(b)
			if v == again || v == discard {
				require.False(t, s.open(), "byte %d: the sequence is over", i)
				held = 0
				v = s.feed(b)
				require.True(t, v != again && v != discard, "byte %d is refused twice", i)
			}
			if v != hold {
				held = 0
				require.False(t, s.open(), "byte %d: nothing is held after a whole message", i)
				continue
			}
			held++
			require.True(t, s.open(), "byte %d is held back, and nobody waits for more", i)
			if s.state != command {
				require.LessOrEqual(t, held, maxSequence+4)
			}
			require.LessOrEqual(t, held, maxCommand+4)
		}
		if utf8.Valid(stream) && !bytes.ContainsRune(stream, esc) {
			require.False(t, s.open(), "whole runes are held back")
		}
		before := s
		before.expire()
		require.False(t, before.open())
		require.Equal(t, s.state == paste, before.state == paste, "a paste goes on over any pause")
	})
}
