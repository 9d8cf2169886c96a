package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"

	"github.com/spf13/cobra"

	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/exit"
	"dryfit/cmd/dryfit/internal/outfile"
	"dryfit/cmd/dryfit/internal/report"
	"dryfit/cmd/dryfit/internal/source"
	"dryfit/cmd/dryfit/internal/usage"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
	"dryfit/spec"
)

// checkFlags are those of the check command.
type checkFlags struct {
	format    string
	output    string
	colour    string
	on        string
	stdinName string
	strict    bool
	thorough  bool
	jobs      usage.Jobs
	standards []string
	from      string // a revision, whose standards hold
	since     string // a revision
	baseline  string // a revision, whose findings fail nothing
	part      string // K/N
	watch     bool
	summary   bool
	rules     selection
	require   []string // rules that must be checked, keys that must be given
}

func checkCommand(s console.Streams) *cobra.Command {
	var f checkFlags
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
			"limit by at least 0.5% of the limit more than before. With --strict the same applies to\n" +
			"a query. A spec that had another path at the revision has no baseline.\n" +
			"\n" +
			"--rule and --skip take a rule's id or a pattern, such as 'strap.*'. Rules left out count\n" +
			"as not checked. A rule that refers always runs, and its refer findings are always\n" +
			"printed.\n" +
			"\n" +
			"--require 'strap.*' holds a spec if such a rule is not checked because a key is absent.\n" +
			"--require lift.stations holds a spec if that key is absent. [check] require in the\n" +
			"standards does the same for every run.\n" +
			"\n" +
			"The search for a way along each leg of the route has a budget of steps, which is the\n" +
			"same on every machine and is spent in the order of the route. If the budget runs out,\n" +
			"the leg's result says so. --thorough multiplies the budget by ten.\n" +
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
		RunE: func(c *cobra.Command, args []string) error { return check(c.Context(), s, args, f) },
	}
	flags := c.Flags()
	flags.StringVar(&f.format, "format", "text", usage.OneOf(formats))
	flags.StringVar(&f.output, "output", "", "write to a `file` instead of standard output")
	flags.StringVar(&f.colour, "color", "auto", "auto, always or never")
	flags.StringVar(&f.on, "on", "", "the `date` on which acceptances must be in force, such as 2027-06-30 (default today, UTC)")
	flags.StringVar(&f.stdinName, "stdin-name", "standard-input.ceiling.toml", "the `name` of standard input in findings")
	flags.BoolVar(&f.strict, "strict", false, "a query fails the spec")
	flags.BoolVar(&f.thorough, "thorough", false, "multiply the search budget of the route by ten")
	flags.StringArrayVar(&f.standards, "standards", nil, "a standards `file` in place of those found; may be repeated, with one verdict for each")
	f.jobs.AtATime(c, "specs to check")
	flags.StringVar(&f.from, "standards-from", "", "take the standards files from a git `revision`")
	flags.StringVar(&f.baseline, "baseline", "", "fail only on findings that are new or worse since a git `revision`")
	flags.StringVar(&f.since, "changed-since", "", "check only specs that changed, or whose standards changed, since a git `revision`")
	flags.StringVar(&f.part, "part", "", "check only part K of N, `K/N`, to split the specs over CI jobs")
	flags.BoolVar(&f.watch, "watch", false, "check again each time a spec or its standards are saved, and print what changed")
	flags.BoolVar(&f.summary, "summary", false, "print one line for each file, the refer findings and the totals")
	flags.StringArrayVar(&f.rules.only, "rule", nil, "check only rules that match a `pattern`, and those that refer; may be repeated")
	flags.StringArrayVar(&f.require, "require", nil, "hold a spec if a rule that matches a `pattern` is not checked, or a key of that name is absent; may be repeated")
	flags.StringArrayVar(&f.rules.skip, "skip", nil, "leave out rules that match a `pattern`, except those that refer; may be repeated")
	usage.CompleteWith(c, "rule", patterns(catalog.Rules())...)
	usage.CompleteWith(c, "skip", patterns(catalog.Rules())...)
	usage.CompleteWith(c, "require", append(patterns(catalog.Rules()), spec.Keys()...)...)
	usage.CompleteWith(c, "format", formats...)
	usage.CompleteWith(c, "color", "auto", "always", "never")
	return c
}

func check(ctx context.Context, s console.Streams, paths []string, f checkFlags) error {
	if stay := f.rules.stays(catalog.Rules()); stay != "" {
		fmt.Fprintln(s.Err, stay)
	}
	if f.watch {
		return watch(ctx, s, paths, f)
	}
	write, err := f.writer(s)
	if err != nil {
		return err
	}
	if write == nil {
		return f.lines(ctx, s, paths)
	}
	r, err := f.report(ctx, s, paths)
	if err != nil {
		return err
	}
	if err := outfile.Stream(f.output, s.Out, append(source.InputsAt(f.standards), r.inputs...), func(w io.Writer) error { return write(w, r.Report) }); err != nil {
		return err
	}
	return exit.Outcome(r.Verdict())
}

// lines writes JSON Lines as the sheets come, and of each keeps only the
// verdict: a file of them may be of any number of specs.
func (f checkFlags) lines(ctx context.Context, s console.Streams, paths []string) error {
	c, err := f.prepare(ctx, s, paths)
	if err != nil {
		return err
	}
	err = outfile.Stream(f.output, s.Out, append(source.InputsAt(f.standards), c.inputs...), func(w io.Writer) error {
		err := c.run(ctx, f, func(sheet *review.Sheet) error {
			err := report.JSONLine(w, c.Report, sheet)
			*sheet = review.Sheet{Verdict: sheet.Verdict}
			return err
		})
		if ctx.Err() != nil { // what is not whole is not written
			return errors.New("interrupted")
		}
		return err
	})
	if err != nil {
		return err
	}
	return exit.Outcome(c.Verdict())
}

// writer is the format asked for; nil for JSON Lines, which are written as the
// sheets come.
func (f checkFlags) writer(s console.Streams) (func(io.Writer, report.Report) error, error) {
	colour, err := f.inColour(s)
	if err != nil {
		return nil, err
	}
	if f.summary && f.format != "text" {
		return nil, fmt.Errorf("--summary is of text, and --format %s has its own", f.format)
	}
	switch f.format {
	case "text":
		return f.textWriter(colour), nil
	case "json":
		return report.JSON, nil
	case "jsonl":
		return nil, nil
	case "sarif":
		return report.SARIF, nil
	case "junit":
		return report.JUnit, nil
	case "markdown":
		return report.Markdown, nil
	case "annotations":
		return report.Annotations, nil
	default:
		return nil, fmt.Errorf("--format %q is not %s", f.format, usage.OneOf(formats))
	}
}

func (f checkFlags) textWriter(colour bool) func(io.Writer, report.Report) error {
	print := report.Text
	if f.summary {
		print = report.Summary
	}
	return func(w io.Writer, r report.Report) error { return print(w, r, colour) }
}

// formats are those that findings are written in.
var formats = []string{"text", "json", "jsonl", "sarif", "junit", "markdown", "annotations"}

// inColour follows the flag, then NO_COLOR, then whether there is a terminal.
func (f checkFlags) inColour(s console.Streams) (bool, error) {
	switch f.colour {
	case "always":
		return true, nil
	case "never":
		return false, nil
	case "auto":
		plain := os.Getenv("NO_COLOR") != "" || os.Getenv("TERM") == "dumb"
		return !plain && f.output == "" && console.Terminal(s.Out), nil
	default:
		return false, fmt.Errorf("--color %q is not auto, always or never", f.colour)
	}
}
