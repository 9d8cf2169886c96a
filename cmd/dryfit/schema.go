package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"dryfit/rules/catalog"
	"dryfit/schema"
)

func schemaCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "schema [spec|standards|output|compare]",
		Short: "Print the JSON Schema of the spec, the standards or JSON output",
		Long: "Prints the JSON Schema (2020-12) of a spec or of a standards file, which editors use\n" +
			"for completion and help, or of what check and compare --format json write.",
		Example:   "  dryfit schema > spec.schema.json\n  dryfit schema output",
		Args:      cobra.MatchAll(cobra.MaximumNArgs(1), cobra.OnlyValidArgs),
		ValidArgs: []string{"spec", "standards", "output", "compare"},
		RunE: func(c *cobra.Command, args []string) error {
			text := schema.SpecSchema()
			switch {
			case len(args) == 0:
			case args[0] == "standards":
				text = schema.StandardsSchema(catalog.Known())
			case args[0] == "output":
				text = schema.OutputSchema()
			case args[0] == "compare":
				text = schema.CompareSchema()
			}
			if _, err := c.OutOrStdout().Write(text); err != nil {
				return fmt.Errorf("write standard output: %w", err)
			}
			return nil
		},
	}
}
