package input

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"

	"example.com/lugbook/tui/early"
	"example.com/lugbook/tui/input/ptytest"
)

// The tests of this file run the test binary as a program on a terminal they hold the other end of.
// roleVariable says which program it is, journalVariable where it writes.
const (
	roleVariable    = "LUGBOOK_INPUT_ROLE"
	journalVariable = "LUGBOOK_INPUT_JOURNAL"
)

const (
	ready    = "ready."
	mouseOn  = "\x1b[?1002h"
	mouseOff = "\x1b[?1002l"
	altOff   = "\x1b[?1049l"
)

func TestMain(m *testing.M) {
	early.Restore()
	switch os.Getenv(roleVariable) {
	case "":
		os.Exit(m.Run())
	case "ask":
		colour, typed := AskBackground(os.Stdin, os.Stdout, 5*time.Second)
		fmt.Printf("colour %q typed %q done.", colour, typed)
	case "ask briefly":
		colour, typed := AskBackground(os.Stdin, os.Stdout, 20*time.Millisecond)
		fmt.Printf("colour %q typed %q done.", colour, typed)
		runOnTerminal(typed)
	case "run":
		runOnTerminal(nil)
	}
}

// runOnTerminal runs the screen program and prints what it saw.
func runOnTerminal(typed []byte) {
	shown := &screen{}
	reader := Wrap(os.Stdin, typed).(*Reader)
	reader.patience = endless // how long a busy machine takes must not decide a test
	program := tea.NewProgram(shown, tea.WithAltScreen(), tea.WithMouseCellMotion(), tea.WithInput(reader),
		tea.WithoutSignalHandler())
	stop := OnHangup(program, func() {
		if err := os.WriteFile(os.Getenv(journalVariable), []byte("flushed"), 0o600); err != nil {
			return // the test misses the file
		}
		panic("a failing flush must not keep the terminal")
	})
	_, err := program.Run()
	fmt.Printf("keys %q hung up %v: %v.", shown.keys, stop(), err)
}

// screen is a program that notes its keys, suspends at z and ends at q.
type screen struct{ keys []string }

func (*screen) Init() tea.Cmd { return nil }
func (*screen) View() string  { return ready }

func (s *screen) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	for _, one := range Split(msg) {
		key, isKey := one.(tea.KeyMsg)
		switch {
		case !isKey:
		case key.String() == "q":
			return s, tea.Quit
		case key.String() == "z":
			return s, tea.Suspend
		default:
			s.keys = append(s.keys, key.String())
		}
	}
	return s, Resume(msg, true)
}

// play starts the test binary in a role.
func play(t *testing.T, role string, more ...string) (ptytest.Pty, *exec.Cmd) {
	t.Helper()
	cmd := exec.Command(os.Args[0])
	cmd.Env = slices.DeleteFunc(os.Environ(), func(pair string) bool { return strings.HasPrefix(pair, "TERM=") })
	cmd.Env = append(cmd.Env, "TERM=xterm-256color", roleVariable+"="+role)
	cmd.Env = append(cmd.Env, more...)
	pty := ptytest.Open(t, 80, 24)
	pty.Start(t, cmd)
	return pty, cmd
}

// say writes as the terminal, piece by piece.
func say(t *testing.T, pty ptytest.Pty, pieces ...string) {
	t.Helper()
	for _, piece := range pieces {
		_, err := pty.Master.WriteString(piece)
		require.NoError(t, err)
		time.Sleep(gap)
	}
}

func TestAskBackground(t *testing.T) {
	const attributes = "\x1b[?62;22c"
	for _, c := range []struct {
		name   string
		answer []string
		want   string
	}{
		{"answered", []string{"\x1b]11;rgb:1e1e/1e1e/1e1e\x1b\\" + attributes}, `colour "rgb:1e1e/1e1e/1e1e" typed "" done.`},
		{"with BEL", []string{"\x1b]11;rgb:ff/ff/ff\a", attributes}, `colour "rgb:ff/ff/ff" typed "" done.`},
		{"attributes only", []string{"\x1b[?6c"}, `colour "" typed "" done.`},
		{"typing on", []string{"k", "6\x1b]11;rgb:0/0/", "0\x1b\\ \x1b[A", "é" + attributes}, `colour "rgb:0/0/0" typed "k6 \x1b[Aé" done.`},
	} {
		t.Run(c.name, func(t *testing.T) {
			pty, _ := play(t, "ask")
			pty.Await(t, question, deadline)
			say(t, pty, c.answer...)
			require.Contains(t, pty.Await(t, "done.", deadline), c.want)
			require.Eventually(t, func() bool { return pty.Cooked(t) }, deadline, gap, "the mode has to be set back")
		})
	}
}

// A terminal that answers too late must not type its answer into the program, and no key gets lost.
func TestLateAnswer(t *testing.T) {
	pty, _ := play(t, "ask briefly")
	pty.Await(t, question, deadline)
	say(t, pty, "k6")
	pty.Await(t, ready, deadline)
	say(t, pty, "\x1b]11;rgb:1e", "1e/1e1e/1e1e\x1b", "\\\x1b[?6", "2c", "\x1b", "[A", "q")
	require.Contains(t, pty.Await(t, "hung up", deadline), `keys ["k" "6" "up"]`)
}

func TestNoTerminalIsNotAsked(t *testing.T) {
	in, out, err := os.Pipe()
	require.NoError(t, err)
	defer func() { _, _ = in.Close(), out.Close() }()
	colour, typed := AskBackground(in, out, time.Hour)
	require.Empty(t, colour)
	require.Empty(t, typed)
}

func TestRawModeThroughTheReader(t *testing.T) {
	pty, _ := play(t, "run")
	pty.Await(t, ready, deadline)
	require.False(t, pty.Cooked(t), "the program has to read key by key")
	say(t, pty, "j", "\x1b", "[<0;1;1M", "q")
	require.Contains(t, pty.Await(t, "hung up false: <nil>.", deadline), `keys ["j"]`)
	require.True(t, pty.Cooked(t))
}

func TestHangup(t *testing.T) {
	for _, by := range []syscall.Signal{syscall.SIGHUP, syscall.SIGTERM, syscall.SIGINT} {
		t.Run(by.String(), func(t *testing.T) {
			journal := filepath.Join(t.TempDir(), "journal")
			pty, cmd := play(t, "run", journalVariable+"="+journal)
			pty.Await(t, ready, deadline)
			require.NoError(t, cmd.Process.Signal(by))
			seen := pty.Await(t, "hung up true: program was killed", deadline)
			require.Contains(t, seen, mouseOff)
			require.Contains(t, seen, altOff)
			require.True(t, pty.Cooked(t))
			flushed, err := os.ReadFile(journal)
			require.NoError(t, err)
			require.Equal(t, "flushed", string(flushed))
		})
	}
}

// When the terminal itself is gone, the program must not stay behind.
func TestTerminalGone(t *testing.T) {
	pty, cmd := play(t, "run")
	pty.Await(t, ready, deadline)
	require.NoError(t, pty.Master.Close())
	ended := make(chan struct{})
	go func() {
		_ = cmd.Wait() // how it ends depends on which call meets the dead terminal first
		close(ended)
	}()
	select {
	case <-ended:
	case <-time.After(deadline):
		require.FailNow(t, "the program runs on without a terminal")
	}
}

func TestMouseAfterSuspend(t *testing.T) {
	pty, cmd := play(t, "run")
	seen := pty.Await(t, ready, deadline)
	require.Contains(t, seen, mouseOn)
	say(t, pty, "z")
	pty.Await(t, mouseOff, deadline)

	// Nobody stops a process group without a parent in its session, so it only waits to be continued;
	// a signal sent before it waits is lost.
	done := make(chan struct{})
	defer close(done)
	go func() {
		for {
			select {
			case <-done:
				return
			case <-time.After(gap):
				_ = cmd.Process.Signal(syscall.SIGCONT)
			}
		}
	}()
	pty.Await(t, mouseOn, deadline)
}
