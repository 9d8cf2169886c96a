package main

import (
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/exit"
	"dryfit/cmd/dryfit/internal/outfile"
	"dryfit/cmd/dryfit/internal/report/making"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/cmd/dryfit/internal/single"
	"dryfit/cmd/dryfit/internal/usage"
	"dryfit/rules/engine"
	"dryfit/rules/model/result/raising"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
)

// raiseFlags are those of the raise command.
type raiseFlags struct {
	format, output, on string
	strict             bool
	standards          []string
}

func raiseCommand(s console.Streams) *cobra.Command {
	var f raiseFlags
	c := &cobra.Command{
		Use:   "raise SPEC",
		Short: "Print the order from lifts to straps, with each force",
		Long: "Prints the raising plan for the crew: the order in which the straps of each panel are\n" +
			"fixed, and the load on each lift and each strap at every step, with all supports in\n" +
			"place and with any one lift or strap lost. Straps are fixed unloaded, while the panel\n" +
			"has the shape that it takes on its lifts.\n" +
			"\n" +
			show.Paragraph(raising.LiftsStay) + "\n" +
			show.Paragraph(raising.LossStatic) + "\n" +
			"\n" +
			"There is no plan if the check fails the spec, or if the spec has no lifts, no straps or\n" +
			"no allowable load of a strap.\n" +
			"\n" +
			"Exit status: 0 there is a plan, 1 there is none, 2 the spec can't be read.",
		Example: "  dryfit raise specs/reading-room.ceiling.toml\n" +
			"  dryfit raise specs/reading-room.ceiling.toml --format csv --output raising.csv",
		Args: cobra.ExactArgs(1),
		RunE: func(_ *cobra.Command, args []string) error { return raise(s, args[0], f) },
	}
	flags := c.Flags()
	flags.StringVar(&f.format, "format", "text", "text, csv or json")
	usage.OutputFlag(flags, &f.output)
	usage.DateFlag(flags, &f.on)
	usage.StrictFlag(flags, &f.strict)
	usage.StandardsFlag(flags, &f.standards)
	usage.CompleteWith(c, "format", "text", "csv", "json")
	return c
}

func raise(s console.Streams, path string, f raiseFlags) error {
	write, ok := map[string]func(io.Writer, making.Raise) error{
		"text": making.RaiseText, "csv": making.RaiseCSV, "json": making.RaiseJSON,
	}[f.format]
	if !ok {
		return fmt.Errorf("--format %q is not text, csv or json", f.format)
	}
	on, err := usage.JudgedOn(f.on)
	if err != nil {
		return err
	}
	one, err := single.Open(s, path, f.standards, review.Options{Rules: catalog.Rules(), On: on, Strict: f.strict})
	if err != nil {
		return err
	}
	if one.Assessment.Verdict == engine.Failed {
		to := s.Err // where a program waits for a document there is none
		if f.format == "text" && f.output == "" {
			to = s.Out
		}
		return single.Withheld(s, to, one, on, "there is no raising plan: the check fails the spec")
	}
	plan := making.Raise{Assessment: one.Assessment, On: on, Plan: one.Assessment.Results.Raising(), Frames: one.Assessment.Results.Frames()}
	if why := plan.None(one.Assessment.Ceiling); why != "" {
		fmt.Fprintln(s.Err, "dryfit: there is no raising plan: "+show.Safe(why))
		return exit.VerdictError{Status: exit.Fail}
	}
	return outfile.Write(f.output, s.Out, one.Inputs(), func(w io.Writer) error { return write(w, plan) })
}
