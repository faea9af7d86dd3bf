package main

import (
	"errors"
	"io/fs"
	"os"
	"strings"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/term"
	"github.com/spf13/cobra"

	"example.com/lugbook/model/jobfile"
	"example.com/lugbook/model/strictyaml"
	"example.com/lugbook/tui"
	"example.com/lugbook/tui/theme"
)

// untitled is the file of a job that was opened without a name.
const untitled = "job.yaml"

// screen is how the terminal UI looks.
type screen struct {
	colour  string
	ascii   bool
	noMouse bool
}

// openCommand is the program itself: without a command it opens the terminal UI.
func (c *cli) openCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "lugbook [FILE]",
		Short: "Record, plan, check and draw the wiring of an electric cart",
		Long: "Record, plan, check and draw the wiring of an electric cart.\n\n" +
			"With FILE, or with nothing, it opens the terminal UI; a FILE that is not there is made by the first save.\n\n" +
			"Exit codes: 0 nothing worse than a caution, 1 a danger or a fault was found, 2 bad usage or bad input,\n" +
			"3 the machine failed (disk full, no permission, terminal lost).",
		Example: "  lugbook demo\n  lugbook tug.yaml\n  lugbook check tug.yaml\n  lugbook draw --sheet plan --as svg -o tug.svg tug.yaml",
		Args:    cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := mistyped(cmd, args); err != nil {
				return err
			}
			if !c.terminal() {
				return errors.New("this needs a terminal; see lugbook --help for commands that do not")
			}
			path := untitled
			if len(args) == 1 {
				path = args[0]
			}
			return c.edit(path)
		},
	}
	flags := cmd.PersistentFlags()
	flags.StringVar(&c.screen.colour, "color", theme.Choices[0], "colours of the terminal UI: "+strings.Join(theme.Choices, ", "))
	flags.BoolVar(&c.screen.ascii, "ascii", false, "nothing but ASCII on the terminal UI")
	flags.BoolVar(&c.screen.noMouse, "no-mouse", false, "leave the mouse to the terminal")
	return cmd
}

// mistyped takes the name of a file that is not there for a mistyped command if there is
// one like it.
func mistyped(cmd *cobra.Command, args []string) error {
	if len(args) == 0 || strings.ContainsAny(args[0], "./") {
		return nil
	}
	if _, err := os.Lstat(args[0]); err == nil {
		return nil
	}
	var names []string
	for _, sub := range cmd.Commands() {
		names = append(names, sub.Name())
	}
	if strictyaml.Nearest(args[0], names) == "" {
		return nil
	}
	return unknownName("file or command", args[0], names, "lugbook --help")
}

// terminal reports whether a person sits at both ends.
func (c *cli) terminal() bool {
	in, isIn := c.in.(*os.File)
	out, isOut := c.out.(*os.File)
	return isIn && isOut && term.IsTerminal(in.Fd()) && term.IsTerminal(out.Fd())
}

// edit opens the terminal UI on a job file, or on a new job if there is no such file.
func (c *cli) edit(path string) error {
	lib, err := c.catalogue()
	if err != nil {
		return err
	}
	file, err := jobfile.Open(path, lib)
	if errors.Is(err, fs.ErrNotExist) {
		file, err = jobfile.New(path, emptyJob(newTitle)), nil
	}
	if err != nil {
		return err
	}
	s := tui.ForFile(file, lib)
	s.Colour, s.ASCII, s.Mouse = c.screen.colour, c.screen.ascii, !c.screen.noMouse
	if err = tui.Run(s); errors.Is(err, tea.ErrProgramKilled) {
		return errEnded
	}
	return err
}
