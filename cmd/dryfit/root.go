package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"

	"github.com/mattn/go-isatty"
	"github.com/spf13/cobra"

	"dryfit/cmd/dryfit/internal/report/show"
)

// streams are where a command reads and writes.
type streams struct {
	in       io.Reader
	out, err io.Writer
}

// The exit statuses.
const (
	exitFail        = 1
	exitNotChecked  = 2
	exitInterrupted = 130
)

// verdictError ends a command whose work was done but whose outcome is not a
// pass. What there is to say has been written.
type verdictError struct{ status int }

func (e verdictError) Error() string { return fmt.Sprintf("exit status %d", e.status) }

// errNothingWritten ends an interrupted command whose whole purpose is its folder: the
// status is that of any folder that could not be written.
var errNothingWritten = errors.New("nothing is written")

// run is the whole program: arguments in, exit status out.
func run(ctx context.Context, args []string, s streams) int {
	root := rootCommand(s)
	root.SetArgs(args)
	help := &output{Writer: s.out}
	root.SetOut(help)
	err := root.ExecuteContext(ctx)
	if err == nil {
		err = help.err
	} else if unknown := unknownCommand(root, args); unknown != nil {
		err = unknown
	}
	var verdict verdictError
	switch {
	case ctx.Err() != nil:
		fmt.Fprintln(s.err, "dryfit: interrupted")
		if errors.Is(err, errNothingWritten) {
			return exitNotChecked
		}
		return exitInterrupted
	case err == nil:
		return 0
	case errors.As(err, &verdict):
		return verdict.status
	default:
		fmt.Fprintln(s.err, "dryfit: "+show.Safe(err.Error()))
		return exitNotChecked
	}
}

// output keeps the first error of what nobody looks at, as when help is printed.
type output struct {
	io.Writer
	err error
}

func (o *output) Write(b []byte) (int, error) {
	n, err := o.Writer.Write(b)
	if err != nil && o.err == nil {
		o.err = fmt.Errorf("write standard output: %w", err)
	}
	return n, err
}

func rootCommand(s streams) *cobra.Command {
	root := &cobra.Command{
		Use:   "dryfit",
		Short: "Check the spec of a shop-built wood ceiling",
		Long: "dryfit reads the specification of a curved, coffered wood ceiling (*.ceiling.toml) and\n" +
			"reports what will not bend, carry, pass the door or close.\n\n" + show.Paragraph(show.Caution),
		Version:       version(),
		SilenceUsage:  true,
		SilenceErrors: true,
		RunE:          func(c *cobra.Command, _ []string) error { return c.Help() },
	}
	root.SetIn(s.in)
	root.SetErr(s.err)
	root.SetFlagErrorFunc(unknownFlag)
	root.SetVersionTemplate("dryfit {{.Version}}" + said(commit()) + "\n")
	root.AddCommand(
		checkCommand(s), calcsCommand(s), takeoffCommand(s),
		beginCommand(s), compareCommand(s), studyCommand(s), remedyCommand(s),
		drawCommand(s), shopCommand(s), raiseCommand(s), submittalCommand(s), basisCommand(), standardsCommand(), schemaCommand(), serveEditorCommand(s), manualCommand(),
	)
	refuseUnknownHelp(root)
	return root
}

// terminal reports whether a stream is a terminal, and not a file, a pipe or
// another device.
func terminal(stream any) bool {
	f, ok := stream.(*os.File)
	return ok && (isatty.IsTerminal(f.Fd()) || isatty.IsCygwinTerminal(f.Fd()))
}
