package ptytest

import (
	"fmt"
	"os"
	"os/exec"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"golang.org/x/sys/unix"
)

// Pty is a pseudo-terminal pair: the program under test has the Slave, the test plays the terminal at the Master.
type Pty struct {
	Master, Slave *os.File
}

// Open makes a pair of the given size in cells and closes it when the test ends.
func Open(t testing.TB, columns, rows int) Pty {
	t.Helper()
	master, err := os.OpenFile("/dev/ptmx", os.O_RDWR|unix.O_NOCTTY|unix.O_NONBLOCK, 0)
	require.NoError(t, err)
	t.Cleanup(func() { _ = master.Close() })

	raw, err := master.SyscallConn()
	require.NoError(t, err)
	var number int
	var ioErr error
	require.NoError(t, raw.Control(func(fd uintptr) {
		if ioErr = unix.IoctlSetPointerInt(int(fd), unix.TIOCSPTLCK, 0); ioErr != nil {
			return
		}
		if number, ioErr = unix.IoctlGetInt(int(fd), unix.TIOCGPTN); ioErr != nil {
			return
		}
		size := &unix.Winsize{Row: uint16(rows), Col: uint16(columns)}
		ioErr = unix.IoctlSetWinsize(int(fd), unix.TIOCSWINSZ, size)
	}))
	require.NoError(t, ioErr)

	slave, err := os.OpenFile(fmt.Sprintf("/dev/pts/%d", number), os.O_RDWR|unix.O_NOCTTY, 0)
	require.NoError(t, err)
	t.Cleanup(func() { _ = slave.Close() })
	return Pty{Master: master, Slave: slave}
}

// Start runs the command with the slave as its controlling terminal and kills it when the test ends.
func (p Pty) Start(t testing.TB, cmd *exec.Cmd) {
	t.Helper()
	cmd.Stdin, cmd.Stdout = p.Slave, p.Slave
	if cmd.Stderr == nil {
		cmd.Stderr = p.Slave
	}
	cmd.SysProcAttr = &syscall.SysProcAttr{Setsid: true, Setctty: true}
	require.NoError(t, cmd.Start())
	t.Cleanup(func() { _ = cmd.Process.Kill() })
}

// Await reads what the program wrote until it contains the text, and returns all of it.
// It fails the test when that takes longer than patience.
func (p Pty) Await(t testing.TB, text string, patience time.Duration) string {
	t.Helper()
	require.NoError(t, p.Master.SetReadDeadline(time.Now().Add(patience)))
	var seen strings.Builder
	buf := make([]byte, 4096)
	for !strings.Contains(seen.String(), text) {
		n, err := p.Master.Read(buf)
		seen.Write(buf[:n])
		require.NoError(t, err, "waiting for %q, saw %q", text, seen.String())
	}
	return seen.String()
}

// Cooked reports whether the terminal is in its everyday state: line by line, with echo.
func (p Pty) Cooked(t testing.TB) bool {
	t.Helper()
	state, err := unix.IoctlGetTermios(int(p.Slave.Fd()), unix.TCGETS)
	require.NoError(t, err)
	return state.Lflag&(unix.ICANON|unix.ECHO) == unix.ICANON|unix.ECHO
}
