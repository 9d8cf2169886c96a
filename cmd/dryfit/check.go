package main

import (
	"github.com/spf13/cobra"

	"dryfit/cmd/dryfit/internal/checking"
	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/usage"
	"dryfit/rules/review/catalog"
	"dryfit/spec"
)

func checkCommand(s console.Streams) *cobra.Command {
	var f checking.Flags
	c := &cobra.Command{
		Use:   "check [PATH...]",
		Short: "Check specs and give a verdict",
		Long: "Checks the specs at the paths: files, folders, or - for standard input. Without a path,\n" +
			"it checks every *.ceiling.toml in this folder and below. It prints the findings, the\n" +
			"rules that were not checked, the assumed values and the verdict. The path of a standards\n" +
			"file, dryfit.toml, stands for all specs that it applies to.\n" +
			"\n" +
			"In a folder, check leaves out specs that git ignores and does not track, and specs that\n" +
			"match [check] exclude in the standards. A path that you name is always checked. A\n" +
			"pattern such as specs/**/*.ceiling.toml is expanded if the shell has not expanded it.\n" +
			"\n" +
			"Standards (dryfit.toml) are found in each spec's folder and the folders above it, up to\n" +
			"the repository's root. --standards names other files in their place. --standards-from\n" +
			"REV takes the standards, with their [check] table, from a git revision, so that a change\n" +
			"can't loosen its own limits. If that revision has none, the built-in limits apply.\n" +
			"\n" +
			"--baseline REV compares the findings with those at a git revision, by the same\n" +
			"standards. A hold then fails the spec only if it is new, or if its figure exceeds the\n" +
			"limit by more than before and the increase is over 0.5% of the limit. With --strict the\n" +
			"same applies to a query. A spec that had another path at the revision has no baseline.\n" +
			"\n" +
			"--rule and --skip take a rule's id or a pattern, such as 'strap.*'. Rules left out count\n" +
			"as not checked. A rule that refers always runs, and its refer findings are always\n" +
			"printed.\n" +
			"\n" +
			"--require 'strap.*' reports a hold if such a rule is not checked because a key is absent.\n" +
			"--require lift.stations reports a hold if that key is absent. [check] require in the\n" +
			"standards does the same for every run.\n" +
			"\n" +
			"The search for a way along each leg of the route has a budget of steps, which is the\n" +
			"same on every machine and is spent in the order of the route. If the budget runs out,\n" +
			"the leg's result says so. --thorough multiplies the budget by ten. To try a value for\n" +
			"'passes with', or in remedy, a leg has at most a fifth of the budget.\n" +
			"\n" +
			"Exit status: 0 passed, 1 failed, 2 could not check, 130 interrupted.",
		Example: "  dryfit check\n" +
			"  dryfit check specs/reading-room.ceiling.toml\n" +
			"  dryfit check --strict --format json --output findings.json specs\n" +
			"  dryfit check --changed-since origin/main specs\n" +
			"  dryfit check --baseline origin/main --standards-from origin/main specs\n" +
			"  dryfit check --watch specs\n" +
			"  dryfit check --summary specs\n" +
			"  dryfit check --rule 'rib.*' --rule close.slide --skip rib.sag specs\n" +
			"  dryfit check - < reading-room.ceiling.toml",
		RunE: func(c *cobra.Command, args []string) error { return checking.Run(c.Context(), s, args, f) },
	}
	flags := c.Flags()
	flags.StringVar(&f.Format, "format", "text", usage.OneOf(checking.Formats))
	usage.OutputFlag(flags, &f.Output)
	flags.StringVar(&f.Colour, "color", "auto", "auto, always or never")
	usage.DateFlag(flags, &f.On)
	flags.StringVar(&f.StdinName, "stdin-name", "standard-input.ceiling.toml", "the `name` of standard input in findings")
	usage.StrictFlag(flags, &f.Strict)
	flags.BoolVar(&f.Thorough, "thorough", false, "multiply the search budget of the route by ten")
	flags.StringArrayVar(&f.Standards, "standards", nil, "a standards `file` in place of those found; may be repeated, with one verdict for each")
	f.Jobs.AtATime(c, "specs to check")
	flags.StringVar(&f.From, "standards-from", "", "take the standards files from a git `revision`")
	flags.StringVar(&f.Baseline, "baseline", "", "fail only on findings that are new or worse since a git `revision`")
	flags.StringVar(&f.Since, "changed-since", "", "check only specs that changed, or whose standards changed, since a git `revision`")
	flags.StringVar(&f.Part, "part", "", "check only part K of N, `K/N`, to split the specs over CI jobs")
	flags.BoolVar(&f.Watch, "watch", false, "check again each time a spec or its standards are saved, and print what changed")
	flags.BoolVar(&f.Summary, "summary", false, "print one line for each file, the refer findings and the totals")
	flags.StringArrayVar(&f.Rules.Only, "rule", nil, "check only rules that match a `pattern`, and those that refer; may be repeated")
	flags.StringArrayVar(&f.Require, "require", nil, "report a hold if a rule that matches a `pattern` is not checked, or a key of that name is absent; may be repeated")
	flags.StringArrayVar(&f.Rules.Skip, "skip", nil, "leave out rules that match a `pattern`, except those that refer; may be repeated")
	usage.CompleteWith(c, "rule", checking.Patterns(catalog.Rules())...)
	usage.CompleteWith(c, "skip", checking.Patterns(catalog.Rules())...)
	usage.CompleteWith(c, "require", append(checking.Patterns(catalog.Rules()), spec.Keys()...)...)
	usage.CompleteWith(c, "format", checking.Formats...)
	usage.CompleteWith(c, "color", "auto", "always", "never")
	return c
}
