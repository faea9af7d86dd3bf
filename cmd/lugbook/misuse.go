package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"
)

// explainMisuse makes every command say what to type when its flags or arguments are
// not as they should be.
func explainMisuse(root *cobra.Command) {
	root.SetFlagErrorFunc(func(cmd *cobra.Command, err error) error {
		text, _, _ := strings.Cut(err.Error(), ": strconv.")
		return fmt.Errorf("%s; see %s --help", text, cmd.CommandPath())
	})
	for _, cmd := range append(root.Commands(), root) {
		cmd.Args = counted(cmd.Args)
	}
}

// counted is a check of the number of arguments whose error shows the line to type.
func counted(check cobra.PositionalArgs) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		if check(cmd, args) == nil {
			return nil
		}
		return fmt.Errorf("arguments given: %d; type %s", len(args), cmd.UseLine())
	}
}
