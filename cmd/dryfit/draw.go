package main

import (
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"dryfit/cmd/dryfit/internal/build"
	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/drawing"
	"dryfit/cmd/dryfit/internal/drawing/pdf"
	"dryfit/cmd/dryfit/internal/drawing/svg"
	"dryfit/cmd/dryfit/internal/outfile"
	"dryfit/cmd/dryfit/internal/report"
	"dryfit/cmd/dryfit/internal/single"
	"dryfit/cmd/dryfit/internal/usage"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
)

// drawFlags are those of the draw command.
type drawFlags struct {
	sheet, format, scale, paper, output, on string
	strict                                  bool
	standards                               []string
}

func drawCommand(s console.Streams) *cobra.Command {
	var f drawFlags
	names := append(drawing.Names(), "all")
	c := &cobra.Command{
		Use:   "draw SPEC",
		Short: "Draw the ceiling to scale, with its findings marked",
		Long: "Draws the ceiling to scale, one subject a sheet: section, plan, panel, rib, straps,\n" +
			"route, view, raising. Each finding's number marks its place. Every sheet lists the\n" +
			"assumed values. By default each sheet has the scale that suits it. All sheets of a set\n" +
			"have one paper size, the smallest with room for each sheet at its scale.\n" +
			"\n" +
			"A PDF holds all sheets. Several SVGs go into a folder. A sheet that needs an absent key\n" +
			"is left out, and the key is printed. Notes that do not fit in a sheet's column go to a\n" +
			"sheet of notes at the end of the set.",
		Example: "  dryfit draw specs/reading-room.ceiling.toml --output reading-room.pdf\n" +
			"  dryfit draw specs/reading-room.ceiling.toml --sheet section --scale 1:20 --paper A2 --output section.pdf\n" +
			"  dryfit draw specs/reading-room.ceiling.toml --format svg --output drawings\n" +
			"  dryfit draw specs/hall.ceiling.toml --sheet plan --scale \"1/2in = 1ft\" --paper ARCH-D --output plan.pdf",
		Args: cobra.ExactArgs(1),
		RunE: func(_ *cobra.Command, args []string) error { return draw(s, args[0], f) },
	}
	flags := c.Flags()
	flags.StringVar(&f.sheet, "sheet", "all", usage.OneOf(names))
	flags.StringVar(&f.format, "format", "", "svg or pdf (default: the ending of the output's name, else pdf)")
	flags.StringVar(&f.scale, "scale", "", "1:20, or 1/2in = 1ft (default: the one that suits the sheet)")
	flags.StringVar(&f.paper, "paper", "", "A4 to A0, or ARCH-A to ARCH-E (default: the smallest with room for all sheets)")
	flags.StringVar(&f.output, "output", "", "write to a `file` instead of standard output; several SVGs to a folder")
	flags.StringVar(&f.on, "on", "", "the `date` on which acceptances must be in force, such as 2027-06-30 (default today, UTC)")
	flags.BoolVar(&f.strict, "strict", false, "a query fails the spec")
	flags.StringArrayVar(&f.standards, "standards", nil, "a standards `file` in place of those found")
	usage.CompleteWith(c, "sheet", names...)
	usage.CompleteWith(c, "format", "svg", "pdf")
	return c
}

func draw(s console.Streams, path string, f drawFlags) error {
	on, err := usage.JudgedOn(f.on)
	if err != nil {
		return err
	}
	options := drawing.Options{Paper: f.paper}
	if f.scale != "" {
		if options.Scale, err = drawing.ParseScale(f.scale); err != nil {
			return fmt.Errorf("--scale %w", err)
		}
	}
	if err := f.settle(); err != nil {
		return err
	}
	one, err := single.Open(s, path, f.standards, review.Options{Rules: catalog.Rules(), On: on, Strict: f.strict})
	if err != nil {
		return err
	}
	in := drawing.Input{Sheet: one.Sheet, Version: build.Version(), On: on, SHA256: report.DigestOf(one.Name, one.Src).SHA256}
	drawn, err := f.sheets(s, in, options)
	if err != nil {
		return err
	}
	if f.format == "pdf" {
		return outfile.Write(f.output, s.Out, one.Inputs(), func(w io.Writer) error {
			return pdf.Write(w, document(in.Sheet.Ceiling.Project.Title.Get(), on), drawn)
		})
	}
	if len(drawn) == 1 && f.sheet != "all" {
		return outfile.Write(f.output, s.Out, one.Inputs(), func(w io.Writer) error { return svg.Write(w, drawn[0]) })
	}
	return writeFolder(f.output, one.Inputs(), drawn)
}
