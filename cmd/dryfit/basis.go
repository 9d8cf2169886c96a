package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"dryfit/cmd/dryfit/internal/report/rulebook"
	"dryfit/cmd/dryfit/internal/usage"
	"dryfit/rules/review/catalog"
)

func basisCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "basis [RULE]",
		Short: "Print a rule's formula, limits, sources and examples",
		Long: "Prints a rule: what it checks and why, its formula, its limits with their sources, an\n" +
			"example that it reports and an example that passes. Without a rule, lists all rules.",
		Example:           "  dryfit basis\n  dryfit basis bend.lamination",
		Args:              cobra.MaximumNArgs(1),
		ValidArgsFunction: completeRules,
		RunE: func(c *cobra.Command, args []string) error {
			if len(args) == 0 {
				return rulebook.Catalogue(c.OutOrStdout(), catalog.Families())
			}
			f, r, ok := catalog.Find(args[0])
			if !ok {
				return unknownRule(args[0])
			}
			return rulebook.Basis(c.OutOrStdout(), f, r, catalog.Reads(r.ID))
		},
	}
}

func completeRules(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
	var ids []string
	if len(args) == 0 {
		for _, r := range catalog.Rules() {
			ids = append(ids, r.ID+"\t"+r.Title)
		}
	}
	return ids, cobra.ShellCompDirectiveNoFileComp
}

func unknownRule(id string) error {
	var known []string
	for _, r := range catalog.Rules() {
		known = append(known, r.ID)
	}
	return fmt.Errorf("no rule %q%s", id, usage.IsIt(id, known, "dryfit basis lists them"))
}
