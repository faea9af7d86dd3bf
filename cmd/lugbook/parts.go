package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"example.com/lugbook/model"
	"example.com/lugbook/model/clean"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/strictyaml"
)

func (c *cli) partsCommand() *cobra.Command {
	return &cobra.Command{
		Use:     "parts [KIND]",
		Short:   "List the parts library, or explain one kind",
		Example: "  lugbook parts\n  lugbook parts reducer-isolated",
		Args:    cobra.MaximumNArgs(1),
		RunE: func(_ *cobra.Command, args []string) error {
			lib, err := c.catalogue()
			if err != nil {
				return err
			}
			if len(args) == 0 {
				return c.write(stdio, []byte(listKinds(lib)))
			}
			d := lib.Definition(args[0])
			if d == nil {
				return unknownName("kind", args[0], lib.Kinds(), "lugbook parts")
			}
			return c.write(stdio, []byte(part.Explain(*d)))
		},
	}
}

// unknownName is the error for a name that is in no list, with the nearest one that is.
func unknownName(what, name string, known []string, list string) error {
	if near := strictyaml.Nearest(name, known); near != "" {
		return fmt.Errorf("no %s %q; did you mean %q? %s lists them", what, name, near, list)
	}
	return fmt.Errorf("no %s %q; %s lists them", what, name, list)
}

// listKinds lists the kinds by family.
func listKinds(lib *model.Catalogue) string {
	var b strings.Builder
	for _, family := range model.Storage.Names() {
		fmt.Fprintf(&b, "%s\n", family)
		for _, kind := range lib.Kinds() {
			if d := lib.Definition(kind); string(d.Family) == family {
				fmt.Fprintf(&b, "  %-28s %s\n", kind, clean.Line(d.Title))
			}
		}
	}
	return b.String()
}
