package main

import (
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/outfile"
	"dryfit/cmd/dryfit/internal/report/making"
	"dryfit/cmd/dryfit/internal/single"
	"dryfit/cmd/dryfit/internal/usage"
	"dryfit/rules/model/result/stock"
	"dryfit/rules/review"
)

func takeoffCommand(s console.Streams) *cobra.Command {
	var format, output string
	var named []string
	c := &cobra.Command{
		Use:   "takeoff SPEC",
		Short: "List pieces, stock, hardware and weights",
		Long: "Lists every piece of the ceiling with its finished size, the lumber and the sheets to\n" +
			"buy, the hardware, and the weight of each panel and of all panels.",
		Example: "  dryfit takeoff specs/reading-room.ceiling.toml\n  dryfit takeoff --format csv --output pieces.csv specs/reading-room.ceiling.toml",
		Args:    cobra.ExactArgs(1),
		RunE:    func(_ *cobra.Command, args []string) error { return takeOff(s, args[0], format, output, named) },
	}
	c.Flags().StringVar(&format, "format", "text", "text, csv or json")
	usage.OutputFlag(c.Flags(), &output)
	usage.StandardsFlag(c.Flags(), &named)
	usage.CompleteWith(c, "format", "text", "csv", "json")
	return c
}

func takeOff(s console.Streams, path, format, output string, named []string) error {
	write, ok := map[string]func(io.Writer, making.Takeoff) error{
		"text": making.TakeoffText, "csv": making.TakeoffCSV, "json": making.TakeoffJSON,
	}[format]
	if !ok {
		return fmt.Errorf("--format %q is not text, csv or json", format)
	}
	one, err := single.Open(s, path, named, review.Options{})
	if err != nil {
		return err
	}
	assessment := one.Assessment
	takeoff := making.Takeoff{Path: assessment.Path, Ceiling: assessment.Ceiling, Takeoff: stock.Of(assessment.Ceiling, assessment.Results.Survey().Cuts())}
	return outfile.Write(output, s.Out, one.Inputs(), func(w io.Writer) error { return write(w, takeoff) })
}
