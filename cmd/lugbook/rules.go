package main

import (
	"bytes"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"example.com/lugbook/diagram/book"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/rule"
)

func (c *cli) rulesCommand() *cobra.Command {
	var as, out string
	cmd := &cobra.Command{
		Use:   "rules",
		Short: "List the rules that sheets are checked against, or write them as a book",
		Long: "List the rules that sheets are checked against. With --book all their pages are written as one book, each with\n" +
			"its examples drawn; lugbook explain RULE shows a single page.\n\n" + bookHelp(),
		Example: "  lugbook rules\n  lugbook rules --book html -o rules.html\n  lugbook rules --book markdown | less",
		Args:    cobra.NoArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			if as == "" {
				return c.write(out, []byte(listRules()))
			}
			form, err := book.Find(as)
			if err != nil {
				return err
			}
			pages, err := book.Pages(rule.All, part.Library())
			if err != nil {
				return err
			}
			var b bytes.Buffer
			if err := form.Write(&b, pages); err != nil {
				return err
			}
			return c.write(out, b.Bytes())
		},
	}
	cmd.Flags().StringVar(&as, "book", "", "write all pages as a book: markdown or html")
	cmd.Flags().StringVarP(&out, "out", "o", stdio, "file to write, - for standard output")
	return cmd
}

func listRules() string {
	var b strings.Builder
	for _, family := range rule.Families() {
		fmt.Fprintf(&b, "%s\n", family)
		for i := range rule.All {
			if r := &rule.All[i]; r.Family == family {
				fmt.Fprintf(&b, "  %-28s %-8s %s\n", r.ID, r.Severity, r.Title)
			}
		}
	}
	return b.String()
}
