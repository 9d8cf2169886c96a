package main

import (
	"context"
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"dryfit/cmd/dryfit/internal/build"
	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/exit"
	"dryfit/cmd/dryfit/internal/outfile"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/cmd/dryfit/internal/usage"
)

// run is the whole program: arguments in, exit status out.
func run(ctx context.Context, args []string, s console.Streams) int {
	root := rootCommand(s)
	root.SetArgs(args)
	help := &outfile.Minded{To: s.Out}
	root.SetOut(help)
	err := root.ExecuteContext(ctx)
	switch unknown := usage.UnknownCommand(root, args); {
	case err == nil && help.Err != nil:
		err = fmt.Errorf("write standard output: %w", help.Err)
	case err != nil && unknown != nil:
		err = unknown
	}
	var verdict exit.VerdictError
	switch {
	case ctx.Err() != nil:
		fmt.Fprintln(s.Err, "dryfit: interrupted")
		if errors.Is(err, exit.ErrNothingWritten) {
			return exit.NotChecked
		}
		return exit.Interrupted
	case err == nil:
		return 0
	case errors.As(err, &verdict):
		return verdict.Status
	default:
		fmt.Fprintln(s.Err, "dryfit: "+show.Safe(err.Error()))
		return exit.NotChecked
	}
}

func rootCommand(s console.Streams) *cobra.Command {
	root := &cobra.Command{
		Use:   "dryfit",
		Short: "Check the spec of a shop-built wood ceiling",
		Long: "dryfit reads the specification of a curved, coffered wood ceiling (*.ceiling.toml) and\n" +
			"reports what will not bend, carry, pass the door or close.\n\n" + show.Paragraph(show.Caution),
		Version:       build.Version(),
		SilenceUsage:  true,
		SilenceErrors: true,
		RunE:          func(c *cobra.Command, _ []string) error { return c.Help() },
	}
	root.SetIn(s.In)
	root.SetErr(s.Err)
	root.SetFlagErrorFunc(usage.UnknownFlag)
	root.SetVersionTemplate("dryfit {{.Version}}" + build.Said(build.Commit()) + "\n")
	root.AddCommand(
		checkCommand(s), calcsCommand(s), takeoffCommand(s),
		beginCommand(s), compareCommand(s), studyCommand(s), remedyCommand(s),
		drawCommand(s), shopCommand(s), raiseCommand(s), submittalCommand(s), basisCommand(), standardsCommand(), schemaCommand(), serveEditorCommand(s), manualCommand(),
	)
	usage.RefuseUnknownHelp(root)
	return root
}
