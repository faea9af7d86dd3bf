package tui

import (
	"os"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/lugbook/diagram/scene"
	"example.com/lugbook/model"
	"example.com/lugbook/model/store"
	"example.com/lugbook/tui/input"
	"example.com/lugbook/tui/theme"
)

// Session is what a screen works on and where it is shown.
type Session struct {
	Job     *model.Job // as it was read; a job without sheets gets an empty as-found
	Library *model.Catalogue
	Path    string          // of the job's file, as it is shown; may be empty
	Sheet   model.SheetName // shown first; the latest if the job has none of that name

	// Save writes the job to its file, SaveAs to another one, which the job's file then
	// is. Both are called beside the screen and never at the same time. They may be nil:
	// then there is no saving. Errors of package store are offered a way out.
	Save   func(*model.Job, store.Options) (store.Outcome, error)
	SaveAs func(path string, job *model.Job, replace bool) (store.Outcome, error)

	// Export writes the drawing of a sheet in one of the formats, in a state if one is
	// shown, and says where. It is called beside the screen.
	Export  func(format string, job *model.Job, sheet model.SheetName, shown *scene.State) (path string, err error)
	Formats []Format

	Notice string // shown first, until a key is pressed; may be empty

	// Rescue is called with what was not saved when the terminal is lost; it may be nil.
	Rescue func(*model.Job)

	In, Out *os.File // standard input and output if nil
	Colour  string   // one of theme.Choices; auto if empty
	ASCII   bool     // nothing but ASCII on the screen
	Mouse   bool     // the mouse selects and scrolls
}

// Format is a format that drawings can be written in.
type Format struct{ Name, About string }

// patience is how long the terminal may take to say what background it has. Over a slower
// link the colours are the neutral ones; the first frame does not wait.
const patience = 60 * time.Millisecond

// Run shows the job until the person quits. It fails if the terminal cannot be used; if
// the terminal is lost, or the program is told to end, that is [tea.ErrProgramKilled], after
// Rescue was called.
func Run(s Session) error {
	if s.In == nil {
		s.In = os.Stdin
	}
	if s.Out == nil {
		s.Out = os.Stdout
	}
	if s.Colour == "" {
		s.Colour = theme.Choices[0]
	}
	depth, err := theme.DepthOf(s.Colour, true, os.Getenv)
	if err != nil {
		return err
	}
	answer, typed := input.AskBackground(s.In, s.Out, patience)
	d := newDesk(s, theme.New(theme.GroundOf(answer, os.Getenv("COLORFGBG")), depth))
	options := []tea.ProgramOption{
		tea.WithInput(input.Wrap(s.In, typed)), tea.WithOutput(s.Out), tea.WithFilter(input.StillMotion()), tea.WithAltScreen(),
		tea.WithoutSignalHandler(), // OnHangup has one
	}
	if s.Mouse {
		options = append(options, tea.WithMouseCellMotion())
	}
	program := tea.NewProgram(d, options...)
	stop := input.OnHangup(program, d.rescue)
	_, err = program.Run()
	if stop() || err != nil {
		d.rescue()
	}
	return err
}

// rescue hands over what was not saved, once. It may be called beside Update.
func (d *desk) rescue() {
	if job := d.latest.Swap(nil); job != nil && d.session.Rescue != nil {
		d.session.Rescue(job)
	}
}
