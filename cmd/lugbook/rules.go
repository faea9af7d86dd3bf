package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"example.com/lugbook/model/rule"
)

func (c *cli) rulesCommand() *cobra.Command {
	return &cobra.Command{
		Use:     "rules [RULE]",
		Short:   "List the rules that sheets are checked against, or explain one",
		Example: "  lugbook rules\n  lugbook rules fuse-too-large",
		Args:    cobra.MaximumNArgs(1),
		RunE: func(_ *cobra.Command, args []string) error {
			if len(args) == 0 {
				return c.write(stdio, []byte(listRules()))
			}
			r := rule.Find(args[0])
			if r == nil {
				var ids []string
				for _, r := range rule.All {
					ids = append(ids, r.ID)
				}
				return unknownName("rule", args[0], ids, "lugbook rules")
			}
			return c.write(stdio, []byte(explainRule(r)))
		},
	}
}

func listRules() string {
	var b strings.Builder
	var family rule.Family
	for _, r := range rule.All {
		if r.Family != family {
			family = r.Family
			fmt.Fprintf(&b, "%s\n", family)
		}
		fmt.Fprintf(&b, "  %-28s %-8s %s\n", r.ID, r.Severity, r.Title)
	}
	return b.String()
}

func explainRule(r *rule.Rule) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s: %s\n\n%s\n\n", r.ID, r.Title, r.About)
	for _, line := range []struct{ what, text string }{
		{"severity", string(r.Severity)}, {"bad", r.Bad}, {"good", r.Good},
		{"basis", fmt.Sprintf("%s (%s)", r.Basis.Text, r.Basis.Source)}, {"remedy", r.Remedy},
	} {
		fmt.Fprintf(&b, "%-9s %s\n", line.what+":", line.text)
	}
	return b.String()
}
