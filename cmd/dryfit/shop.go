package main

import (
	"github.com/spf13/cobra"

	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/exit"
	"dryfit/cmd/dryfit/internal/issuing"
	"dryfit/cmd/dryfit/internal/usage"
)

func shopCommand(s console.Streams) *cobra.Command {
	var f issuing.PackageFlags
	c := &cobra.Command{
		Use:   "shop SPEC --output DIR",
		Short: "Write patterns at full size and cut lists",
		Long: "Writes one folder from one check of a spec. It holds patterns at full size of ribs,\n" +
			"bending forms, sawn segments, skins and story sticks, each as SVG, as DXF and as PDF in\n" +
			"tiles of office paper. Lists of strips, cut sizes, holes, stations, sheets, marks and\n" +
			"blocks are CSV. shop.json has all figures. The folder is written whole or not at all. It\n" +
			"replaces an older folder only if shop made that folder.\n" +
			"\n" +
			"If the check fails the spec, shop prints the holds and writes nothing. With --even-so it\n" +
			"writes the folder anyway, and every file says NOT FOR CUTTING.\n" +
			"\n" +
			"Exit status: 0 written, 1 the check fails the spec, 2 not written or interrupted; an\n" +
			"older folder is then kept.",
		Example: "  dryfit shop specs/reading-room.ceiling.toml --output reading-room-shop\n" +
			"  dryfit shop specs/reading-room.ceiling.toml --output rib --part rib-1 --paper A3",
		Args: cobra.ExactArgs(1),
		RunE: func(c *cobra.Command, args []string) error {
			err := issuing.Package(c.Context(), s, args[0], f)
			if c.Context().Err() != nil {
				return exit.ErrNothingWritten
			}
			return err
		},
	}
	flags := c.Flags()
	flags.StringVar(&f.Output, "output", "", "the `folder` to write")
	flags.StringVar(&f.Part, "part", "", "write only the pattern of this `name`, such as rib-1")
	flags.StringVar(&f.Paper, "paper", "A4", "the paper of the PDFs' tiles: "+usage.OneOf(issuing.Papers()))
	flags.BoolVar(&f.EvenSo, "even-so", false, "write even if the check fails the spec")
	usage.DateFlag(flags, &f.On)
	usage.StrictFlag(flags, &f.Strict)
	usage.StandardsFlag(flags, &f.Standards)
	usage.CompleteWith(c, "paper", issuing.Papers()...)
	return c
}
