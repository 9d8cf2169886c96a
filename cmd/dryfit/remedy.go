package main

import (
	"github.com/spf13/cobra"

	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/remedying"
	"dryfit/cmd/dryfit/internal/usage"
	"dryfit/rules/design/remedy"
)

func remedyCommand(s console.Streams) *cobra.Command {
	var f remedying.Flags
	c := &cobra.Command{
		Use:   "remedy SPEC",
		Short: "Find the smallest changes that clear a spec's findings",
		Long: "Searches for the smallest and cheapest changes to a spec that leave no hold and, with\n" +
			"--strict, no query. Sizes change in the steps in which the trade sells or makes them.\n" +
			"Answers that make no other figure worse come first. The standards can state which\n" +
			"changes a shop prefers. Every answer is written into the spec and checked by all rules\n" +
			"before it is shown. If there is no answer, remedy lists the rules that conflict and the\n" +
			"keys that would have to change. --write also lists the comments beside changed values.\n" +
			"\n" +
			"--may-change names the keys or tables that may change. By default all may change except\n" +
			"the room, the route, the curve of the vault, the climate, and facts such as allowable\n" +
			"loads, lifts and the size of fittings.\n" +
			"\n" +
			"Exit status: 0 an answer was found or no change is needed, 1 none was found, 2 could not\n" +
			"check, 130 interrupted (answers found so far are shown, not written).",
		Example: "  dryfit remedy specs/reading-room.ceiling.toml\n" +
			"  dryfit remedy --strict --may-change rib.depth,panels.along specs/reading-room.ceiling.toml\n" +
			"  dryfit remedy --each specs/reading-room.ceiling.toml\n" +
			"  dryfit remedy --write --answer 2 specs/reading-room.ceiling.toml\n" +
			"  dryfit remedy --format patch specs/reading-room.ceiling.toml | git apply",
		Args: cobra.ExactArgs(1),
		RunE: func(c *cobra.Command, args []string) error { return remedying.Run(c.Context(), s, args[0], f) },
	}
	flags := c.Flags()
	flags.StringVar(&f.Format, "format", "text", "text, json or patch")
	usage.OutputFlag(flags, &f.Output)
	usage.DateFlag(flags, &f.On)
	usage.StandardsFlag(flags, &f.Standards)
	flags.StringSliceVar(&f.MayChange, "may-change", nil, "the `keys` or tables that may change, separated by commas")
	flags.BoolVar(&f.Strict, "strict", false, "also clear queries")
	flags.BoolVar(&f.Each, "each", false, "for each finding alone, list the keys that clear it, each with its nearest value and its effects")
	flags.BoolVar(&f.Write, "write", false, "write an answer into the spec")
	flags.IntVar(&f.Answer, "answer", 1, "the number of the answer to write, or to print as a patch")
	flags.IntVar(&f.Answers, "answers", 3, "the number of answers to look for")
	flags.IntVar(&f.Limit, "limit", remedy.DefaultLimit, "the most checks that the search makes")
	usage.CompleteWith(c, "format", "text", "json", "patch")
	return c
}
