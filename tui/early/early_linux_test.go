package early_test

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"

	"example.com/lugbook/tui/early"
	"example.com/lugbook/tui/input/ptytest"
)

// childVariable makes the test binary act as a trivial program on the terminal instead of running tests.
const childVariable = "LUGBOOK_EARLY_CHILD"

const (
	frameText  = "the first frame"
	libraryDir = "github.com/charmbracelet/bubbletea"
	ownDir     = "example.com/lugbook/tui/early"
)

func TestMain(m *testing.M) {
	if os.Getenv(childVariable) == "" {
		os.Exit(m.Run())
	}
	early.Restore()
	if _, err := tea.NewProgram(frame{}).Run(); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// frame is a program that shows one line with the TERM it sees, and waits.
type frame struct{}

func (frame) Init() tea.Cmd                             { return nil }
func (f frame) Update(msg tea.Msg) (tea.Model, tea.Cmd) { return f, nil }
func (frame) View() string                              { return frameText + " on " + os.Getenv("TERM") + "." }

// termOutside is the TERM this process was started with, from the kernel's own copy.
func termOutside() (string, bool) {
	raw, err := os.ReadFile("/proc/self/environ")
	if err != nil {
		return "", false
	}
	for pair := range strings.SplitSeq(string(raw), "\x00") {
		if value, found := strings.CutPrefix(pair, "TERM="); found {
			return value, true
		}
	}
	return "", false
}

func TestRestore(t *testing.T) {
	// The state at this point is init's: TestMain has not called Restore.
	require.Equal(t, "dumb", os.Getenv("TERM"), "init has to have run")
	t.Cleanup(func() { require.NoError(t, os.Setenv("TERM", "dumb")) })

	early.Restore()
	want, had := termOutside()
	got, has := os.LookupEnv("TERM")
	require.Equal(t, had, has)
	require.Equal(t, want, got)

	require.NoError(t, os.Setenv("TERM", "xterm-direct"))
	early.Restore()
	require.Equal(t, "xterm-direct", os.Getenv("TERM"), "a TERM set by somebody else is not ours to change")
}

// child is the test binary as the trivial program, on a terminal the libraries would question.
func child(more ...string) *exec.Cmd {
	cmd := exec.Command(os.Args[0])
	for _, pair := range os.Environ() {
		name, _, _ := strings.Cut(pair, "=")
		if !slices.Contains([]string{"TERM", "CI", "COLORTERM", "COLORFGBG", "GODEBUG"}, name) {
			cmd.Env = append(cmd.Env, pair)
		}
	}
	cmd.Env = append(cmd.Env, "TERM=xterm-256color", childVariable+"=1")
	cmd.Env = append(cmd.Env, more...)
	return cmd
}

// A terminal that never answers must not delay the first frame. Without this package the frame comes after
// 5.0 s (seen with Bubble Tea 1.3.10: a five-second timeout in its package init), with it after some 20 ms.
// The limit lies far from both, so that a busy machine does not decide the outcome.
func TestSilentTerminal(t *testing.T) {
	pty := ptytest.Open(t, 80, 24)
	pty.Start(t, child())
	seen := pty.Await(t, frameText+" on xterm-256color.", 2*time.Second)
	require.NotContains(t, seen, "\x1b]1", "no colour question was to be asked")
}

// The order of initialisation is what the cure stands on; the runtime prints it.
func TestInitialisedBeforeTheLibrary(t *testing.T) {
	pty := ptytest.Open(t, 80, 24)
	cmd := child("GODEBUG=inittrace=1")
	var trace bytes.Buffer
	cmd.Stderr = &trace
	pty.Start(t, cmd)
	pty.Await(t, frameText, 2*time.Second)
	require.NoError(t, cmd.Process.Kill())
	_ = cmd.Wait() // reports the kill

	var order []string
	for _, match := range regexp.MustCompile(`(?m)^init (\S+) @`).FindAllStringSubmatch(trace.String(), -1) {
		order = append(order, match[1])
	}
	own, library := slices.Index(order, ownDir), slices.Index(order, libraryDir)
	require.GreaterOrEqual(t, own, 0, "init order was %v", order)
	require.Greater(t, library, own, "init order was %v", order)
	asker := slices.Index(order, "github.com/muesli/termenv")
	require.Greater(t, asker, own, "init order was %v", order)
}
