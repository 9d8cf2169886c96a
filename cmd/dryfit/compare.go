package main

import (
	"github.com/spf13/cobra"

	"dryfit/cmd/dryfit/internal/comparing"
	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/usage"
)

func compareCommand(s console.Streams) *cobra.Command {
	var f comparing.Flags
	c := &cobra.Command{
		Use:   "compare OLD NEW",
		Short: "List what a revision changed",
		Long: "Compares two specs: files, - for standard input, or REV:PATH from git. Both are checked\n" +
			"to the standards in the working tree, REV:PATH too, so a change of the standards alone\n" +
			"shows no difference. --judge-by old applies the standards at the old spec's revision to\n" +
			"both specs, --judge-by new those at the new spec's revision; --judge-by each applies to\n" +
			"each spec the standards at its own revision. --standards names another file for both.\n" +
			"\n" +
			"The output lists the verdicts, then the findings that are new, gone, worse or otherwise\n" +
			"changed, then figures. All figures that crossed a limit are listed first. The main\n" +
			"figures follow, up to ten in all: proportion, weight, the worst strap, sheets and lumber\n" +
			"to buy, joints, the last gap, the tightest leg and the lift with the greatest load.\n" +
			"--all lists every changed figure. JSON always has all of them.\n" +
			"\n" +
			"HTML and SVG draw both specs over each other in section, plan and the view from the\n" +
			"entry. Parts that only the new spec has are in a second colour; parts that only the old\n" +
			"spec has are dashed.\n" +
			"\n" +
			"A quantity in other units with the same value is unchanged. A figure counts as changed\n" +
			"if it differs by more than --threshold.\n" +
			"\n" +
			"Exit status: 0 compared, 1 such a finding is new or worse (with --fail-on), 2 could not\n" +
			"compare, 130 interrupted.",
		Example: "  dryfit compare before.ceiling.toml after.ceiling.toml\n" +
			"  dryfit compare HEAD~1:specs/reading-room.ceiling.toml specs/reading-room.ceiling.toml\n" +
			"  dryfit compare --format html --output changes.html before.ceiling.toml after.ceiling.toml\n" +
			"  dryfit compare --fail-on new-hold --format markdown main:specs/hall.ceiling.toml specs/hall.ceiling.toml",
		Args: cobra.ExactArgs(2),
		RunE: func(c *cobra.Command, args []string) error { return comparing.Run(c.Context(), s, args, f) },
	}
	flags := c.Flags()
	flags.StringVar(&f.Format, "format", "text", "text, markdown, json, html or svg")
	usage.OutputFlag(flags, &f.Output)
	flags.StringVar(&f.Threshold, "threshold", "0.5%", "the `share` by which a figure may differ and still count as unchanged")
	flags.StringVar(&f.FailOn, "fail-on", "", "new-hold or new-query: exit 1 if such a finding is new or worse")
	usage.DateFlag(flags, &f.On)
	usage.StandardsFlag(flags, &f.Standards)
	flags.StringVar(&f.JudgeBy, "judge-by", "", "the `side` at whose revision the standards are taken: old, new, or each for its own spec (default: the standards in the working tree)")
	flags.BoolVar(&f.Strict, "strict", false, "a query fails a spec")
	flags.BoolVar(&f.All, "all", false, "list every figure that changed, not only the main ones")
	usage.CompleteWith(c, "format", "text", "markdown", "json", "html", "svg")
	usage.CompleteWith(c, "fail-on", "new-hold", "new-query")
	usage.CompleteWith(c, "judge-by", "old", "new", "each")
	return c
}
