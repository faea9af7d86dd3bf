package input

import (
	"os"
	"os/signal"
	"sync"
	"syscall"

	tea "github.com/charmbracelet/bubbletea"
)

// OnHangup makes the loss of the terminal (SIGHUP) end the program in order: flush is called, then the program is
// killed, which restores the terminal if it is still there. Bubble Tea itself handles SIGINT and SIGTERM only.
//
// Flush runs in a goroutine of its own beside Update, so it must be safe for that; a panic in it is dropped, since
// the terminal has to be restored all the same. The program's Run then returns [tea.ErrProgramKilled]. It may also
// meet the dead terminal first and return that error, so flush after Run as well.
//
// Call stop after Run has returned. It reports whether there was a hangup.
func OnHangup(program *tea.Program, flush func()) (stop func() (hungUp bool)) {
	signals := make(chan os.Signal, 1)
	signal.Notify(signals, syscall.SIGHUP)
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
