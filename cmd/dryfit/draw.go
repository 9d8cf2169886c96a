package main

import (
	"github.com/spf13/cobra"

	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/drawing"
	"dryfit/cmd/dryfit/internal/issuing"
	"dryfit/cmd/dryfit/internal/usage"
)

func drawCommand(s console.Streams) *cobra.Command {
	var f issuing.SheetFlags
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
		RunE: func(_ *cobra.Command, args []string) error { return issuing.Sheets(s, args[0], f) },
	}
	flags := c.Flags()
	flags.StringVar(&f.Sheet, "sheet", "all", usage.OneOf(names))
	flags.StringVar(&f.Format, "format", "", "svg or pdf (default: the ending of the output's name, else pdf)")
	flags.StringVar(&f.Scale, "scale", "", "1:20, or 1/2in = 1ft (default: the one that suits the sheet)")
	flags.StringVar(&f.Paper, "paper", "", "A4 to A0, or ARCH-A to ARCH-E (default: the smallest with room for all sheets)")
	flags.StringVar(&f.Output, "output", "", "write to a `file` instead of standard output; several SVGs to a folder")
	usage.DateFlag(flags, &f.On)
	usage.StrictFlag(flags, &f.Strict)
	usage.StandardsFlag(flags, &f.Standards)
	usage.CompleteWith(c, "sheet", names...)
	usage.CompleteWith(c, "format", "svg", "pdf")
	return c
}
