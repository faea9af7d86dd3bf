package main

import (
	"github.com/spf13/cobra"

	"example.com/lugbook/model/store"
)

func (c *cli) tidyCommand() *cobra.Command {
	return &cobra.Command{
		Use:     "tidy FILE",
		Short:   "Rewrite a job file in its canonical form",
		Long:    "Rewrite a job file in its canonical form. With - it reads standard input and writes standard output.",
		Example: "  lugbook tidy tug.yaml\n  lugbook tidy - < tug.yaml",
		Args:    cobra.ExactArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			o, err := c.open(args[0])
			if err != nil {
				return err
			}
			if o.file == nil {
				data, err := o.decoded.Encode(o.job)
				if err != nil {
					return err
				}
				return c.write(stdio, data)
			}
			outcome, err := o.file.Save(o.job, store.Options{})
			if err != nil {
				return err
			}
			warn(cmd.ErrOrStderr(), outcome)
			return nil
		},
	}
}
