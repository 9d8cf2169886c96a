package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"dryfit/schema"
)

func schemaCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "schema [spec|output]",
		Short: "Print the JSON Schema of the spec or of the JSON output",
		Long: "Prints the JSON Schema (2020-12) of a spec, which editors use for completion and\n" +
			"help, or of what check --format json writes.",
		Example:   "  dryfit schema > spec.schema.json\n  dryfit schema output",
		Args:      cobra.MatchAll(cobra.MaximumNArgs(1), cobra.OnlyValidArgs),
		ValidArgs: []string{"spec", "output"},
		RunE: func(c *cobra.Command, args []string) error {
			text := schema.SpecSchema()
			if len(args) == 1 && args[0] == "output" {
				text = schema.OutputSchema()
			}
			if _, err := c.OutOrStdout().Write(text); err != nil {
				return fmt.Errorf("write standard output: %w", err)
			}
			return nil
		},
	}
}
