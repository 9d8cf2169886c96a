package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"dryfit/rules/review/catalog"
	"dryfit/schema"
)

func schemaCommand() *cobra.Command {
	names, of := []string{"spec", "standards"}, map[string]func() []byte{
		"spec": schema.SpecSchema, "standards": func() []byte { return schema.StandardsSchema(catalog.Known()) },
	}
	var said strings.Builder
	for _, o := range schema.Outputs() {
		names, of[o.Name] = append(names, o.Name), o.Text
		as := "--format json writes"
		if o.File != "" {
			as = "writes as " + o.File
		}
		fmt.Fprintf(&said, "    %-9s what %s %s\n", o.Name, o.Command, as)
	}
	return &cobra.Command{
		Use:   "schema [" + strings.Join(names, "|") + "]",
		Short: "Print a JSON Schema of a spec, standards or output",
		Long: "Prints a JSON Schema (2020-12):\n\n" +
			"    spec      a spec, for completion and help in editors; the default\n" +
			"    standards a standards file\n" + strings.TrimSuffix(said.String(), "\n"),
		Example:   "  dryfit schema > spec.schema.json\n  dryfit schema output",
		Args:      cobra.MaximumNArgs(1),
		ValidArgs: names,
		RunE: func(c *cobra.Command, args []string) error {
			name := append(args, "spec")[0]
			text, ok := of[name]
			if !ok {
				return fmt.Errorf("no schema %q; there are %s", name, strings.Join(names, ", "))
			}
			if _, err := c.OutOrStdout().Write(text()); err != nil {
				return fmt.Errorf("write standard output: %w", err)
			}
			return nil
		},
	}
}
