package main

import (
	"fmt"
	"path/filepath"

	"github.com/spf13/cobra"

	"dryfit/cmd/dryfit/internal/report"
	"dryfit/cmd/dryfit/internal/report/rulebook"
	"dryfit/cmd/dryfit/internal/source"
	"dryfit/cmd/dryfit/internal/usage"
	"dryfit/rules/review/catalog"
)

func standardsCommand() *cobra.Command {
	var format, named string
	c := &cobra.Command{
		Use:   "standards [SPEC]",
		Short: "List the limits and defaults in force",
		Long: "Lists the limits, severities and defaults that apply to a spec, each with its value, its\n" +
			"source, and the file and line that sets it. Without a spec, it lists those that apply to\n" +
			"this folder. LOOSENED marks each limit that is less strict than the built-in one.",
		Example: "  dryfit standards\n  dryfit standards specs/reading-room.ceiling.toml",
		Args:    cobra.MaximumNArgs(1),
		RunE: func(c *cobra.Command, args []string) error {
			folder := "."
			if len(args) == 1 {
				folder = filepath.Dir(args[0])
				if _, fault := source.NewInput(args[0]).Read(nil); fault != "" {
					return fmt.Errorf("read %s: %s", args[0], fault)
				}
			}
			finder := source.NewFinder(named)
			std, broken := finder.ForFolder(folder)
			if std == nil {
				if err := report.Write(c.OutOrStdout(), report.Report{Runs: []report.Run{{Assessments: finder.Assessments()}}}, report.Text(false)); err != nil {
					return err
				}
				return fmt.Errorf("read %s: see above", broken)
			}
			switch format {
			case "text":
				return rulebook.Standards(c.OutOrStdout(), catalog.Rules(), std)
			case "json":
				return rulebook.StandardsJSON(c.OutOrStdout(), catalog.Rules(), std)
			default:
				return fmt.Errorf("--format %q is not text or json", format)
			}
		},
	}
	c.Flags().StringVar(&format, "format", "text", "text or json")
	c.Flags().StringVar(&named, "standards", "", "a standards `file` in place of those found")
	usage.CompleteWith(c, "format", "text", "json")
	return c
}
