package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"path/filepath"

	"github.com/spf13/cobra"

	"dryfit/cmd/dryfit/internal/build"
	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/exit"
	"dryfit/cmd/dryfit/internal/outfile"
	"dryfit/cmd/dryfit/internal/report/change"
	"dryfit/cmd/dryfit/internal/single"
	"dryfit/cmd/dryfit/internal/source"
	"dryfit/cmd/dryfit/internal/usage"
	"dryfit/rules/design/compare"
	"dryfit/rules/engine"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
	"dryfit/spec/quantity"
)

// compareFlags are those of the compare command.
type compareFlags struct {
	format, output, threshold, failOn, on string
	standards                             []string
	strict, all                           bool
	judgeBy                               string
}

func compareCommand(s console.Streams) *cobra.Command {
	var f compareFlags
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
		RunE: func(c *cobra.Command, args []string) error { return compareSpecs(c.Context(), s, args, f) },
	}
	flags := c.Flags()
	flags.StringVar(&f.format, "format", "text", "text, markdown, json, html or svg")
	flags.StringVar(&f.output, "output", "", "write to a `file` instead of standard output")
	flags.StringVar(&f.threshold, "threshold", "0.5%", "the `share` by which a figure may differ and still count as unchanged")
	flags.StringVar(&f.failOn, "fail-on", "", "new-hold or new-query: exit 1 if such a finding is new or worse")
	flags.StringVar(&f.on, "on", "", "the `date` on which acceptances must be in force, such as 2027-06-30 (default today, UTC)")
	flags.StringArrayVar(&f.standards, "standards", nil, "a standards `file` in place of those found")
	flags.StringVar(&f.judgeBy, "judge-by", "", "apply the standards at the revision of the `old` spec, the new one, or each its own: old, new or each (default those in the working tree)")
	flags.BoolVar(&f.strict, "strict", false, "a query fails a spec")
	flags.BoolVar(&f.all, "all", false, "list every figure that changed, not only the main ones")
	usage.CompleteWith(c, "format", "text", "markdown", "json", "html", "svg")
	usage.CompleteWith(c, "fail-on", "new-hold", "new-query")
	usage.CompleteWith(c, "judge-by", "old", "new", "each")
	return c
}

func compareSpecs(ctx context.Context, s console.Streams, args []string, f compareFlags) error {
	write, ok := map[string]func(io.Writer, change.Comparison) error{
		"text": change.CompareText, "markdown": change.CompareMarkdown, "json": change.CompareJSON,
		"html": comparePage, "svg": compareSVG,
	}[f.format]
	if !ok {
		return fmt.Errorf("--format %q is not text, markdown, json, html or svg", f.format)
	}
	least, ok := map[string]engine.Severity{"": 0, "new-hold": engine.Hold, "new-query": engine.Query}[f.failOn]
	if !ok {
		return fmt.Errorf("--fail-on %q is not new-hold or new-query", f.failOn)
	}
	threshold, err := quantity.Parse(quantity.Fraction, f.threshold)
	if err != nil || threshold.SI < 0 {
		return fmt.Errorf("--threshold %q is not a share; write 0.5%%", f.threshold)
	}
	on, err := usage.JudgedOn(f.on)
	if err != nil {
		return err
	}
	if args[0] == "-" && args[1] == "-" {
		return errors.New("standard input can be one of the two specs, not both")
	}
	sheets, inputs, err := bothSides(ctx, s, args, f, on)
	if err != nil {
		return err
	}
	c := compare.Of(sheets[0], sheets[1], threshold.SI)
	r := change.Comparison{Comparison: c, Version: build.Version(), On: on, All: f.all}
	if err := outfile.Write(f.output, s.Out, inputs, func(w io.Writer) error { return write(w, r) }); err != nil {
		return err
	}
	if least > 0 && c.Worse(least) {
		return exit.VerdictError{Status: exit.Fail}
	}
	return nil
}

// bothSides reads and checks the two specs. One that can't be is reported as
// check reports it.
func bothSides(ctx context.Context, s console.Streams, args []string, f compareFlags, on string) ([]*review.Sheet, []source.Input, error) {
	finders, err := f.finders(ctx, args)
	if err != nil {
		return nil, nil, err
	}
	o := review.Options{Rules: catalog.Rules(), Standards: standards.BuiltIn(), On: on, Strict: f.strict}
	var sheets, broken []*review.Sheet
	var inputs []source.Input
	for i, name := range args {
		in, src, problem := side(ctx, s, name)
		under, sheet := finders[i].UnderStandards(f.judgedAs(in, args), o)
		switch {
		case sheet != nil:
		case problem != "":
			sheet = review.Unreadable(in.Name, problem, under)
		default:
			sheet = review.Spec(in.Name, src, under)
		}
		sheets, inputs = append(sheets, sheet), append(inputs, in)
		if sheet.Ceiling == nil {
			broken = append(broken, sheet)
		}
	}
	if ctx.Err() != nil {
		return nil, nil, ctx.Err()
	}
	if len(broken) > 0 {
		said := finders[0].Sheets()
		if finders[1] != finders[0] {
			said = append(said, finders[1].Sheets()...)
		}
		return nil, nil, single.Unresolved(s, on, append(said, broken...)...)
	}
	return sheets, inputs, nil
}

// finders are the standards that each of the two specs is judged by.
func (f compareFlags) finders(ctx context.Context, names []string) ([2]*source.Finder, error) {
	var out [2]*source.Finder
	if f.judgeBy == "" {
		one, err := source.OneFinder(f.standards)
		return [2]*source.Finder{one, one}, err
	}
	if len(f.standards) > 0 {
		return out, errors.New("--judge-by takes the standards that a revision has, and --standards those of a file; leave one out")
	}
	for i, name := range names {
		out[i] = source.NewFinder("")
		r, ok := source.RevisionOf(name)
		if !ok {
			continue
		}
		var err error
		if out[i].From, err = source.SnapshotAt(ctx, r.Rev); err != nil {
			return out, fmt.Errorf("--judge-by: %w", err)
		}
	}
	switch f.judgeBy {
	case "old":
		out[1] = out[0]
	case "new":
		out[0] = out[1]
	case "each":
	default:
		return out, fmt.Errorf("--judge-by %q is not old, new or each", f.judgeBy)
	}
	return out, nil
}

// judgedAs is where the standards of an input are looked for: where both are judged
// by those of one, at that one.
func (f compareFlags) judgedAs(in source.Input, names []string) source.Input {
	at, ok := map[string]int{"old": 0, "new": 1}[f.judgeBy]
	if !ok {
		return in
	}
	if r, is := source.RevisionOf(names[at]); is {
		in.Path = filepath.Join(r.Folder(), filepath.Base(r.Path))
	} else if by := source.InputAt(names[at]); !by.Stdin {
		in.Path = by.Path
	}
	return in
}

// side reads one of the two specs.
func side(ctx context.Context, s console.Streams, name string) (in source.Input, src []byte, problem string) {
	if r, ok := source.RevisionOf(name); ok {
		in = source.Input{Name: name, Path: filepath.Join(r.Folder(), filepath.Base(r.Path))}
		src, problem = source.FromGit(ctx, r)
		return in, src, problem
	}
	in = source.InputAt(name)
	src, problem = in.Read(s.In)
	return in, src, problem
}
