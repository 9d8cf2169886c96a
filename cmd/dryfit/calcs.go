package main

import (
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/outfile"
	"dryfit/cmd/dryfit/internal/report/sums"
	"dryfit/cmd/dryfit/internal/single"
	"dryfit/cmd/dryfit/internal/usage"
	"dryfit/rules/model/result"
	"dryfit/rules/model/result/carrying"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
)

func calcsCommand(s console.Streams) *cobra.Command {
	var format, output string
	var named []string
	c := &cobra.Command{
		Use:   "calcs SPEC",
		Short: "Print the calculation sheet",
		Long: "Prints every figure that is derived from a spec: its value, its formula, the formula\n" +
			"with its numbers, the rules that use it, and whether it depends on an assumed value.",
		Example: "  dryfit calcs specs/reading-room.ceiling.toml\n  dryfit calcs --format json specs/reading-room.ceiling.toml",
		Args:    cobra.ExactArgs(1),
		RunE: func(_ *cobra.Command, args []string) error {
			write := sums.CalcsText
			switch format {
			case "text":
			case "json":
				write = sums.CalcsJSON
			default:
				return fmt.Errorf("--format %q is not text or json", format)
			}
			one, err := single.Open(s, args[0], named, review.Options{})
			if err != nil {
				return err
			}
			assessment := one.Assessment
			results := result.Of(assessment.Ceiling, carrying.Search{}, nil)
			calcs := sums.Calcs{
				Path: assessment.Path, Ceiling: assessment.Ceiling, Figures: results.Figures(), Tables: results.Tables(),
				Frames: results.Hanging().Frames(), Rules: catalog.Rules(),
			}
			return outfile.Write(output, s.Out, one.Inputs(), func(w io.Writer) error { return write(w, calcs) })
		},
	}
	c.Flags().StringVar(&format, "format", "text", "text or json")
	usage.OutputFlag(c.Flags(), &output)
	usage.StandardsFlag(c.Flags(), &named)
	usage.CompleteWith(c, "format", "text", "json")
	return c
}
