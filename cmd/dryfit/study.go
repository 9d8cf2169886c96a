package main

import (
	"github.com/spf13/cobra"

	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/studying"
	"dryfit/cmd/dryfit/internal/usage"
)

func studyCommand(s console.Streams) *cobra.Command {
	var f studying.Flags
	c := &cobra.Command{
		Use:   "study SPEC --vary KEY=VALUES ...",
		Short: "Check every combination of some values, and compare them",
		Long: "Checks the ceiling with every combination of some values, and prints one row for each\n" +
			"option: its figures and its verdict. Among the options that do not fail, it marks those\n" +
			"that no other option beats by all aims. For each other option, it lists the figures in\n" +
			"which it is worse. The spec is not changed.\n" +
			"\n" +
			"VALUES take one of these forms:\n" +
			"\n" +
			"    3..6  or  3..9/2                      a range of counts; /2 is the step\n" +
			"    700mm..1000mm/50mm  or  2ft..3ft/3in  a range of quantities with its step\n" +
			"    6mm,9mm                               a list of values, ranges or words\n" +
			"\n" +
			"Put a word that has a comma in double quotes. The key of a named row of a list has that\n" +
			"name in it: route.\"street door\".width=1m,1.2m. Keys that must follow a change are\n" +
			"changed too, and listed. To keep such a key as it is, vary it with one value.\n" +
			"\n" +
			"Keys that change together have values with slashes between them:\n" +
			"vault.span,rise=4.2m/840mm,4m/900mm. Those of one table may be written as in a spec:\n" +
			"skin={layers=1},{layers=2}.\n" +
			"\n" +
			"An aim states the value that you want for a figure:\n" +
			"\n" +
			"    mass=least, gap=most            as low or as high as possible\n" +
			"    ratio=1.5                       near a value\n" +
			"    module-along=600mm..1200mm      inside a range\n" +
			"    ratio=2:along, ratio=2:around   near a value, the long side in that direction\n" +
			"\n" +
			"The distance from a value is the logarithm of the ratio, so half and double are equally\n" +
			"far.\n" +
			"\n" +
			"Figures for --aim, --weigh and --sort: ratio, long-side, coffers, module-around,\n" +
			"module-along, length, width, height, mass, strap, share, sag, sheets, joints, margin,\n" +
			"gap, holds, queries, and any that calcs prints, by its key. --sort also takes option,\n" +
			"verdict and the varied keys; prefix - to reverse the order. --columns chooses the\n" +
			"table's columns from all of these.\n" +
			"\n" +
			"--save N writes option N as a spec: the author's own text, with the varied values and\n" +
			"the keys that follow from them. --save unbeaten writes every option that no other option\n" +
			"beats to a folder. --compare 2,3 compares two options as the command compare does two\n" +
			"specs.\n" +
			"\n" +
			"--join takes, in place of a spec, the parts of one study, each written with --format\n" +
			"jsonl, and writes the result of the whole study. The spec and its standards must be\n" +
			"unchanged.\n" +
			"\n" +
			"Exit status: 0 the study was made, whatever its options; 2 it could not be made; 130\n" +
			"interrupted, with the finished options written.",
		Example: "  dryfit study specs/reading-room.ceiling.toml --vary grid.along=3..6 --vary grid.around=5..9\n" +
			"  dryfit study specs/reading-room.ceiling.toml --vary grid.along=3..16 --aim ratio=2:along --aim coffers=least\n" +
			"  dryfit study specs/reading-room.ceiling.toml --vary grid.along=3..6 --columns look.member-share,look.coffer-depth,mass\n" +
			"  dryfit study specs/reading-room.ceiling.toml --vary vault.rise=700mm..1000mm/50mm --sort mass --only pass\n" +
			"  dryfit study specs/reading-room.ceiling.toml --vary 'rib.species=white oak,red oak' --format html --output study.html\n" +
			"  dryfit study specs/reading-room.ceiling.toml --vary grid.along=3..6 --save 2 --output specs/four.ceiling.toml\n" +
			"  dryfit study specs/reading-room.ceiling.toml --vary grid.along=3..6 --compare 2,3\n" +
			"  dryfit study specs/reading-room.ceiling.toml --vary rib.depth=55mm..65mm/1mm --part 1/2 --format jsonl --output part-1.jsonl\n" +
			"  dryfit study specs/reading-room.ceiling.toml --vary rib.depth=55mm..65mm/1mm --part 2/2 --format jsonl --output part-2.jsonl\n" +
			"  dryfit study --join part-1.jsonl part-2.jsonl",
		Args: func(c *cobra.Command, args []string) error {
			if f.Join {
				return cobra.MinimumNArgs(1)(c, args)
			}
			return cobra.ExactArgs(1)(c, args)
		},
	}
	flags := c.Flags()
	c.RunE = func(c *cobra.Command, args []string) error {
		if f.Join {
			return studying.Join(c.Context(), s, args, f, flags)
		}
		return studying.Run(c.Context(), s, args[0], f)
	}
	flags.StringArrayVar(&f.Vary, "vary", nil, "a key and its values, `KEY=VALUES`; may be repeated, and the last key changes fastest")
	flags.StringArrayVar(&f.Aim, "aim", nil, "an aim for a figure, `FIGURE=WISH`; may be repeated")
	flags.StringSliceVar(&f.Weigh, "weigh", nil, "`figures` to minimise or maximise, each in its better direction (default mass,strap,joints,queries, without --aim)")
	flags.StringSliceVar(&f.Sort, "sort", nil, "the `keys` to sort by, best first (default: the order of the options)")
	flags.StringSliceVar(&f.Columns, "columns", nil, "the `figures` in the table, by their keys (default the main ones)")
	flags.StringVar(&f.Only, "only", "", "pass: list only options that do not fail")
	flags.StringVar(&f.Save, "save", "", "write `option` N as a spec, or, with unbeaten, every option that no other beats to a folder")
	flags.StringSliceVar(&f.Compare, "compare", nil, "compare two `options`, such as 2,3, in place of the table")
	flags.StringVar(&f.Part, "part", "1/1", "make only part K of N, `K/N`, to split the study over CI jobs")
	flags.StringVar(&f.Format, "format", "text", "text, csv, json, jsonl, html, or svg for a contact sheet")
	usage.OutputFlag(flags, &f.Output)
	usage.DateFlag(flags, &f.On)
	flags.BoolVar(&f.Strict, "strict", false, "a query fails an option")
	flags.BoolVar(&f.Search, "search", false, "search each leg of the route as check does; without it only simple motions are tried")
	flags.BoolVar(&f.Join, "join", false, "join parts that were written with --format jsonl")
	f.Jobs.AtATime(c, "options to work out")
	usage.StandardsFlag(flags, &f.Standards)
	usage.CompleteWith(c, "format", studying.Formats...)
	usage.CompleteWith(c, "only", "pass")
	return c
}
