package main

import (
	"github.com/spf13/cobra"

	"example.com/lugbook/model/jobfile"
)

func (c *cli) schemaCommand() *cobra.Command {
	return &cobra.Command{
		Use:     "schema",
		Short:   "Print the JSON Schema of job files",
		Long:    "Print the JSON Schema of job files, for editors that complete and check them.",
		Example: "  lugbook schema > lugbook.schema.json",
		Args:    cobra.NoArgs,
		RunE: func(*cobra.Command, []string) error {
			data, err := jobfile.Schema()
			if err != nil {
				return err
			}
			return c.write(stdio, data)
		},
	}
}
