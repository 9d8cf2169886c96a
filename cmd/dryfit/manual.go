package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"dryfit/cmd/dryfit/internal/manual"
)

func manualCommand() *cobra.Command {
	var output string
	c := &cobra.Command{
		Use:   "manual",
		Short: "Write the manual pages",
		Long: "Writes a page for man(1) for each command (dryfit-check.1 and so on) into a folder. It\n" +
			"makes the folder if there is none. The pages have today's date, or that of\n" +
			"SOURCE_DATE_EPOCH.",
		Example: "  dryfit manual --output /usr/local/share/man/man1",
		Args:    cobra.NoArgs,
		RunE: func(c *cobra.Command, _ []string) error {
			if output == "" {
				return fmt.Errorf("manual needs --output, the folder to write to")
			}
			return manual.Write(c.Root(), output)
		},
	}
	c.Flags().StringVar(&output, "output", "", "the `folder` to write to")
	return c
}
