package tui

import (
	"os"
	"strings"
	"syscall"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
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

// What is not saved is kept when the program is told to end, as at the end of a session.
func TestUnsavedWorkOutlivesASignal(t *testing.T) {
	pty := ptytest.Open(t, 80, 24)
	s, path := onDisk(t)
	s.In, s.Out, s.Colour = pty.Slave, pty.Slave, "256"
	ended := make(chan error, 1)
	go func() { ended <- Run(s) }()
	pty.Await(t, "Nothing is on the", patienceOfTest)
	for _, does := range []struct{ keys, shows string }{{"z", "new zone:"}, {"dash\r", "add zone dash"}} {
		_, err := pty.Master.WriteString(does.keys)
		require.NoError(t, err)
		pty.Await(t, does.shows, patienceOfTest)
	}
	require.NoError(t, syscall.Kill(os.Getpid(), syscall.SIGTERM))
	require.ErrorIs(t, <-ended, tea.ErrProgramKilled)
	require.True(t, pty.Cooked(t), "the terminal is as it was")
	require.Empty(t, reopened(t, path).Zones, "the file itself is as it was")
	require.NotNil(t, reopened(t, rescued(path)).Zone("dash"))
}
