package main

import (
	"io"
	"runtime/debug"

	"github.com/spf13/cobra"
)

// cli is what every command works with.
type cli struct {
	in     io.Reader
	out    io.Writer
	shop   string // path of the shop's parts file; empty for the usual place
	screen screen
}

// commands lists the commands in the order of help. One file holds one command.
func (c *cli) commands() []*cobra.Command {
	return []*cobra.Command{
		c.demoCommand(), c.newCommand(), c.checkCommand(), c.drawCommand(), c.partsCommand(), c.rulesCommand(), c.explainCommand(), c.questionsCommand(), c.waiveCommand(),
		c.tidyCommand(), c.schemaCommand(),
		c.protectCommand(),
		c.supportCommand(), c.sizeCommand(),
		c.meterCommand(), c.statesCommand(), c.diagnoseCommand(),
	}
}

// run runs one command line and returns the exit code.
func run(args []string, in io.Reader, out, errs io.Writer) int {
	c := &cli{in: in, out: out}
	root := c.openCommand()
	root.Version = version()
	root.SetVersionTemplate("lugbook {{.Version}}\n")
	root.SilenceErrors, root.SilenceUsage = true, true
	root.SetArgs(args)
	root.SetIn(in)
	root.SetOut(out)
	root.SetErr(errs)
	root.PersistentFlags().StringVar(&c.shop, "shop", "", "the shop's own parts `FILE`; without it parts.yaml in lugbook's folder of the user's settings, if there is one")
	root.AddCommand(c.commands()...)
	explainMisuse(root)
	return exitCode(errs, root.Execute())
}

// version is the version that the build recorded.
func version() string {
	if info, ok := debug.ReadBuildInfo(); ok && info.Main.Version != "" {
		return info.Main.Version
	}
	return "(development)"
}
