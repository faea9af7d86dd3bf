package tui

import (
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"example.com/lugbook/tui/input/ptytest"
)

// patienceOfTest bounds every wait; nothing is measured against it.
const patienceOfTest = 20 * time.Second

// A real program on a real terminal: it draws, takes keys that arrive in one read, saves,
// quits and leaves the terminal as it was.
func TestARealProgram(t *testing.T) {
	pty := ptytest.Open(t, 80, 24)
	s, path := onDisk(t)
	s.In, s.Out, s.Colour = pty.Slave, pty.Slave, "256"
	ended := make(chan error, 1)
	go func() { ended <- Run(s) }()

	press := func(keys, shows string) {
		t.Helper()
		_, err := pty.Master.WriteString(keys)
		require.NoError(t, err)
		pty.Await(t, shows, patienceOfTest)
	}
	pty.Await(t, "Nothing is on the", patienceOfTest)
	require.False(t, pty.Cooked(t))
	press("z", "new zone:")
	press("dash\r", "add zone dash")
	press("a", "which kind?")
	press("key-switch\r", "where is it?")
	press("dash\r", "designator:")
	press("\r", "Key switch")
	press("s", "saved")
	_, err := pty.Master.WriteString("q")
	require.NoError(t, err)
	require.NoError(t, <-ended)
	require.True(t, pty.Cooked(t), "the terminal is as it was")
	job := reopened(t, path)
	require.Len(t, job.Sheets[0].Parts, 1)
	require.True(t, strings.HasPrefix(string(job.Sheets[0].Parts[0].ID), "key"))
}
