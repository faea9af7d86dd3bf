//go:build unix

package input

import (
	"fmt"
	"io"
	"os"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"
)

// deadline bounds every wait of these tests; nothing is measured against it.
const deadline = 20 * time.Second

// probe is a program that passes everything it gets from the keyboard and the mouse to a channel, as text.
type probe struct{ seen chan<- string }

func (probe) Init() tea.Cmd { return nil }
func (probe) View() string  { return "" }

func (p probe) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	for _, one := range Split(msg) {
		switch one := one.(type) {
		case tea.KeyMsg:
			p.seen <- "key " + one.String()
		case tea.MouseMsg:
			p.seen <- fmt.Sprintf("mouse %s %d,%d", one, one.X, one.Y)
		case tea.FocusMsg, tea.BlurMsg:
			p.seen <- fmt.Sprintf("%T", one)
		case fmt.Stringer: // Bubble Tea's own types for what it does not know
			p.seen <- "junk " + one.String()
		}
	}
	return p, nil
}

// program is a running probe and the end of a pipe that plays the keyboard.
type program struct {
	keyboard *os.File
	seen     chan string
}

// start runs a probe that reads through a Reader of the given patience.
func start(t testing.TB, patience time.Duration, typed []byte, options ...tea.ProgramOption) program {
	t.Helper()
	in, keyboard, err := os.Pipe()
	require.NoError(t, err)
	reader := Wrap(in, typed).(*Reader)
	reader.patience = patience
	seen := make(chan string, 4096)
	options = append(options, tea.WithInput(reader), tea.WithOutput(io.Discard), tea.WithoutSignalHandler())
	running := tea.NewProgram(probe{seen}, options...)
	finished := make(chan error, 1)
	go func() {
		_, err := running.Run()
		finished <- err
	}()
	t.Cleanup(func() {
		running.Quit()
		require.NoError(t, <-finished)
		_ = keyboard.Close()
		_ = in.Close()
	})
	return program{keyboard: keyboard, seen: seen}
}

// press writes the bytes as one.
func (p program) press(t testing.TB, bytes string) {
	t.Helper()
	_, err := p.keyboard.WriteString(bytes)
	require.NoError(t, err)
}

// until collects what arrives up to and without the given message.
func (p program) until(t testing.TB, last string) []string {
	t.Helper()
	var got []string
	timeout := time.After(deadline)
	for {
		select {
		case one := <-p.seen:
			if one == last {
				return got
			}
			got = append(got, one)
		case <-timeout:
			require.FailNow(t, "message did not come", "waiting for %q, saw %q", last, got)
		}
	}
}
