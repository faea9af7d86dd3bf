package input

import (
	"os"
	"os/signal"
	"sync"
	"syscall"

	tea "github.com/charmbracelet/bubbletea"
)

// OnHangup makes the loss of the terminal (SIGHUP), and being told to end (SIGTERM, SIGINT), end the program in order:
// flush is called, then the program is killed, which restores the terminal if it is still there. Bubble Tea itself
// takes SIGTERM for a wish to quit and knows nothing of SIGHUP; have the program made without its handler of signals,
// [tea.WithoutSignalHandler], or the two race.
//
// Flush runs in a goroutine of its own beside Update, so it must be safe for that; a panic in it is dropped, since
// the terminal has to be restored all the same. The program's Run then returns [tea.ErrProgramKilled]. It may also
// meet the dead terminal first and return that error, so flush after Run as well.
//
// Call stop after Run has returned. It reports whether there was a signal.
func OnHangup(program *tea.Program, flush func()) (stop func() (hungUp bool)) {
	signals := make(chan os.Signal, 1)
	signal.Notify(signals, syscall.SIGHUP, syscall.SIGTERM, os.Interrupt)
	quit := make(chan struct{})
	result := make(chan bool, 1)
	go func() {
		select {
		case <-signals:
			attempt(flush)
			program.Kill()
			result <- true
		case <-quit:
			result <- len(signals) > 0
		}
	}()
	return sync.OnceValue(func() bool {
		signal.Stop(signals)
		close(quit)
		return <-result
	})
}

// attempt calls f and survives its panic.
func attempt(f func()) {
	defer func() { _ = recover() }()
	f()
}
