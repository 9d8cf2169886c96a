package main

import (
	"strings"

	"github.com/spf13/cobra"

	"dryfit/cmd/dryfit/internal/beginning"
	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/source"
	"dryfit/cmd/dryfit/internal/usage"
	"dryfit/rules/design/begin"
)

func beginCommand(s console.Streams) *cobra.Command {
	var f beginning.Flags
	c := &cobra.Command{
		Use:   "begin",
		Short: "Write a first spec that passes",
		Long: "Writes a commented spec that passes its own check to the built-in standards. Sizes are\n" +
			"derived from the rules. The values that dryfit chose are marked \"confirm\". The keys that\n" +
			"you must supply, such as the allowable load of a strap, are commented out. On a\n" +
			"terminal, begin asks for each missing value (room, curve, grid) and shows the result of\n" +
			"each answer. It never overwrites a file.\n" +
			"\n" +
			"With --room or --survey, dryfit chooses the size of the vault. The span and the length\n" +
			"are the greatest for which the room still has space for the gaps, the seasonal movement\n" +
			"and the travel of the last panel. The rise is the greatest with which a panel passes the\n" +
			"route and tilts into place. A value that you give is kept. If no spec passes with it,\n" +
			"dryfit prints values that would pass and writes nothing.\n" +
			"\n" +
			"Exit status: 0 written, 1 no sizes found that pass, 2 bad usage or not written.",
		Example: "  dryfit begin --room 4.57m,5.1m,2.7m --output hall.ceiling.toml\n" +
			"  dryfit begin --room 15ft,20ft,9ft --around 7 --species ash --take crew.people=4\n" +
			"  dryfit begin --survey room.toml --height 2.7m\n" +
			"  dryfit begin --span 4200mm --rise 840mm --length 7080mm\n" +
			"  dryfit begin --span \"14ft\" --rise \"3ft\" --length \"23ft 6in\" --output hall.ceiling.toml\n" +
			"  dryfit begin --profile semicircular --span 3m --length 6m",
		Args: cobra.NoArgs,
		RunE: func(c *cobra.Command, _ []string) error {
			f.Curved = c.Flags().Changed("profile")
			return beginning.Run(c.Context(), s, f)
		},
	}
	flags := c.Flags()
	flags.StringVar(&f.Span, "span", "", "the `length` from springing to springing, on the finished underside: 4200mm or 13ft 9in")
	flags.StringVar(&f.Rise, "rise", "", "the `length` from springing to crown; not for flat and semicircular vaults")
	flags.StringVar(&f.Length, "length", "", "the `length` of the vault, over all panels")
	flags.StringVar(&f.Room, "room", "", "the `room`, in place of --span and --length: width,length,height from floor to springing")
	flags.StringVar(&f.Survey, "survey", "", "a `file` with the table [survey], the measured room, in place of --room; needs --height")
	flags.StringVar(&f.Height, "height", "", "the `length` from floor to springing, with --survey")
	flags.IntVar(&f.Around, "around", 0, "the `count` of coffers around the arc (default: dryfit chooses)")
	flags.IntVar(&f.Along, "along", 0, "the `count` of coffers along the vault (default: dryfit chooses)")
	flags.StringVar(&f.Species, "species", "", "the `wood` of ribs and rails (default white oak)")
	flags.StringVar(&f.Construction, "construction", "", "how ribs are made: "+usage.OneOf(beginning.Constructions)+" (default laminated)")
	flags.StringVar(&f.Skin, "skin", "", "the `material` of the skin (default bendable plywood)")
	flags.StringArrayVar(&f.Take, "take", nil, "set a key of the spec, `KEY=VALUE`; may be repeated")
	flags.StringVar(&f.Profile, "profile", "segmental", "the `shape` of the curve: "+strings.Join(begin.Profiles(), ", "))
	flags.StringVar(&f.Units, "units", "", "metric or imperial (default: the units of the span)")
	flags.StringVar(&f.Title, "title", "", "the ceiling's title on drawings")
	flags.StringVar(&f.Output, "output", "", "write to a new `file`, *"+source.Extension+", instead of standard output")
	usage.CompleteWith(c, "units", "metric", "imperial")
	usage.CompleteWith(c, "profile", begin.Profiles()...)
	usage.CompleteWith(c, "construction", beginning.Constructions...)
	return c
}
