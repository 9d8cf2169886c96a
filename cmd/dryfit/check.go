package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"
	"sync"
	"time"

	"github.com/spf13/cobra"

	"dryfit/cmd/dryfit/internal/outfile"
	"dryfit/cmd/dryfit/internal/report"
	"dryfit/cmd/dryfit/internal/source"
	"dryfit/rules/engine"
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
	jobs      jobs
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

func checkCommand(s streams) *cobra.Command {
	var f checkFlags
	c := &cobra.Command{
		Use:   "check [PATH...]",
		Short: "Check specs and give a verdict",
		Long: "Checks the specs at the paths: files, folders, or - for standard input. By default it\n" +
			"checks all *.ceiling.toml under this folder. It prints the findings, what was not\n" +
			"checked, what was assumed, and the verdict. The path of a standards file, dryfit.toml,\n" +
			"stands for all specs under it.\n" +
			"\n" +
			"In a git repository, specs that git ignores and does not track are left out, and those\n" +
			"that [check] exclude in the standards names. A path that is named here is always\n" +
			"checked. A pattern such as specs/**/*.ceiling.toml is expanded if the shell has not.\n" +
			"\n" +
			"Standards (dryfit.toml) are found in each spec's folder and the folders above it, up to\n" +
			"the repository's root; --standards names other files in their place. --standards-from\n" +
			"REV takes them from a git revision, [check] included, so that a change can't loosen its\n" +
			"own limits; where that revision has none, the built-in limits apply.\n" +
			"\n" +
			"--baseline REV compares with the findings at a revision, by the same standards. A hold\n" +
			"fails the spec only if it is new, or if its figure is further past the limit, by 0.5%\n" +
			"of the limit or more; under --strict, so does a query. A spec that had another path at\n" +
			"the revision has no baseline.\n" +
			"\n" +
			"--rule and --skip take a rule's id or a pattern, such as 'strap.*'. Rules left out count\n" +
			"as not checked. A refer can't be left out: a rule that refers always runs, and what it\n" +
			"refers is printed.\n" +
			"\n" +
			"--require 'strap.*' holds a spec where such a rule is not checked because a key is\n" +
			"absent; --require lift.stations where that key is absent. [check] require in the\n" +
			"standards does the same for every run.\n" +
			"\n" +
			"Each leg of the route is searched within a budget of steps that is the same on every\n" +
			"machine, in the order of the route. A leg that has no budget left says so; --thorough\n" +
			"searches ten times as far.\n" +
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
	flags.StringVar(&f.format, "format", "text", oneOf(formats))
	flags.StringVar(&f.output, "output", "", "write to a `file` instead of standard output")
	flags.StringVar(&f.colour, "color", "auto", "auto, always or never")
	flags.StringVar(&f.on, "on", "", "the `date` that acceptances are judged on, 2027-06-30 (default today, UTC)")
	flags.StringVar(&f.stdinName, "stdin-name", "standard-input.ceiling.toml", "the `name` that standard input is reported under")
	flags.BoolVar(&f.strict, "strict", false, "a query fails the spec")
	flags.BoolVar(&f.thorough, "thorough", false, "search ten times as far for each leg of the route")
	flags.StringArrayVar(&f.standards, "standards", nil, "a standards `file` in place of those found; more than one gives a verdict for each")
	f.jobs.atATime(c, "specs to check")
	flags.StringVar(&f.from, "standards-from", "", "the standards files as they were at a `revision`, in place of those found")
	flags.StringVar(&f.baseline, "baseline", "", "fail only on findings that are new or worse since a `revision`")
	flags.StringVar(&f.since, "changed-since", "", "check only specs that have changed since a `revision` in git, or whose standards have")
	flags.StringVar(&f.part, "part", "", "check only part `K/N` of the specs, to split them over jobs")
	flags.BoolVar(&f.watch, "watch", false, "check again after each save of a spec or its standards, and print what changed")
	flags.BoolVar(&f.summary, "summary", false, "print a line for each file, what is referred, and the totals")
	flags.StringArrayVar(&f.rules.only, "rule", nil, "check only rules that a `pattern` names, and what is referred; may be given again")
	flags.StringArrayVar(&f.require, "require", nil, "hold a spec where a rule that a `pattern` names is not checked, or a key of that name is not given; may be given again")
	flags.StringArrayVar(&f.rules.skip, "skip", nil, "leave out rules that a `pattern` names, but nothing that is referred; may be given again")
	completeWith(c, "rule", patterns(catalog.Rules())...)
	completeWith(c, "skip", patterns(catalog.Rules())...)
	completeWith(c, "require", append(patterns(catalog.Rules()), spec.Keys()...)...)
	completeWith(c, "format", formats...)
	completeWith(c, "color", "auto", "always", "never")
	return c
}

func completeWith(c *cobra.Command, flag string, words ...string) {
	err := c.RegisterFlagCompletionFunc(flag, cobra.FixedCompletions(words, cobra.ShellCompDirectiveNoFileComp))
	if err != nil {
		panic(err) // the flag is not one of the command's
	}
}

func check(ctx context.Context, s streams, paths []string, f checkFlags) error {
	if stay := f.rules.stays(catalog.Rules()); stay != "" {
		fmt.Fprintln(s.err, stay)
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
	if err := outfile.Stream(f.output, s.out, append(source.InputsAt(f.standards), r.inputs...), func(w io.Writer) error { return write(w, r.Report) }); err != nil {
		return err
	}
	return outcome(r.Verdict())
}

// lines writes JSON Lines as the sheets come, and of each keeps only the
// verdict: a file of them may be of any number of specs.
func (f checkFlags) lines(ctx context.Context, s streams, paths []string) error {
	c, err := f.prepare(ctx, s, paths)
	if err != nil {
		return err
	}
	err = outfile.Stream(f.output, s.out, append(source.InputsAt(f.standards), c.inputs...), func(w io.Writer) error {
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
	return outcome(c.Verdict())
}

// outcome turns a verdict into the command's exit status.
func outcome(v engine.Verdict) error {
	switch v {
	case engine.CouldNotCheck:
		return verdictError{exitNotChecked}
	case engine.Failed:
		return verdictError{exitFail}
	default:
		return nil
	}
}

// judgedOn is the date given, or today in UTC.
func judgedOn(given string) (string, error) {
	if given == "" {
		return time.Now().UTC().Format(time.DateOnly), nil
	}
	if _, err := time.Parse(time.DateOnly, given); err != nil {
		return "", fmt.Errorf("--on %q is not a date; write 2027-06-30", given)
	}
	return given, nil
}

// writer is the format asked for; nil for JSON Lines, which are written as the
// sheets come.
func (f checkFlags) writer(s streams) (func(io.Writer, report.Report) error, error) {
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
		return nil, fmt.Errorf("--format %q is not %s", f.format, oneOf(formats))
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

// oneOf lists words to choose from.
func oneOf(words []string) string {
	last := len(words) - 1
	return strings.Join(words[:last], ", ") + " or " + words[last]
}

// inColour follows the flag, then NO_COLOR, then whether there is a terminal.
func (f checkFlags) inColour(s streams) (bool, error) {
	switch f.colour {
	case "always":
		return true, nil
	case "never":
		return false, nil
	case "auto":
		plain := os.Getenv("NO_COLOR") != "" || os.Getenv("TERM") == "dumb"
		return !plain && f.output == "" && terminal(s.out), nil
	default:
		return false, fmt.Errorf("--color %q is not auto, always or never", f.colour)
	}
}

// once lets standard input be read again for each run. It is read by the first
// input that is -, and not at all where none is.
func once(r io.Reader) func() io.Reader {
	read := sync.OnceValues(func() ([]byte, error) { return io.ReadAll(io.LimitReader(r, spec.MaxSize+1)) })
	return func() io.Reader { return &again{read: read} }
}

// again reads what was read once. What could not be read whole is an error from
// the first byte: part of a spec is none.
type again struct {
	read func() ([]byte, error)
	rest *bytes.Reader
}

func (a *again) Read(p []byte) (int, error) {
	if a.rest == nil {
		b, err := a.read()
		if err != nil {
			return 0, err
		}
		a.rest = bytes.NewReader(b)
	}
	return a.rest.Read(p)
}
