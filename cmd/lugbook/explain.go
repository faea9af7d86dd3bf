package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"example.com/lugbook/diagram/book"
	"example.com/lugbook/model/part"
	"example.com/lugbook/model/rule"
)

// explainColumns is how wide the paragraphs of a rule's page are.
const explainColumns = 78

func (c *cli) explainCommand() *cobra.Command {
	var ascii bool
	cmd := &cobra.Command{
		Use:   "explain RULE",
		Short: "Explain a rule: why it matters, how to tell on the cart, a wrong and a right example",
		Long: "Explain a rule: what it looks for, why it matters, how to tell on the cart, its basis with the source, the remedy\n" +
			"and its limits, with a wrong and a right example drawn from the rule's own examples.",
		Example: "  lugbook explain fuse-too-large\n  lugbook explain --ascii stack-order | less",
		Args:    cobra.ExactArgs(1),
		RunE: func(_ *cobra.Command, args []string) error {
			r := rule.Find(args[0])
			if r == nil {
				return unknownRule(args[0])
			}
			page, err := book.PageOf(r, part.Library())
			if err != nil {
				return err
			}
			return c.write(stdio, []byte(page.Text(explainColumns, ascii)))
		},
		ValidArgsFunction: cobra.FixedCompletions(ruleNames(), cobra.ShellCompDirectiveNoFileComp),
	}
	cmd.Flags().BoolVar(&ascii, "ascii", false, "draw in printable ASCII alone")
	return cmd
}

// ruleNames lists the rules with their titles, for completion.
func ruleNames() []cobra.Completion {
	var names []cobra.Completion
	for i := range rule.All {
		names = append(names, cobra.CompletionWithDesc(rule.All[i].ID, rule.All[i].Title))
	}
	return names
}

func unknownRule(name string) error {
	var ids []string
	for i := range rule.All {
		ids = append(ids, rule.All[i].ID)
	}
	return unknownName("rule", name, ids, "lugbook rules")
}

// bookHelp lists the forms of the book for help.
func bookHelp() string {
	text := "Forms of the book:\n"
	for _, f := range book.All {
		text += fmt.Sprintf("  %-10s%s\n", f.Name, f.About)
	}
	return text
}
