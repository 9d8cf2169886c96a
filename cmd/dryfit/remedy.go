package main

import (
	"bytes"
	"cmp"
	"context"
	"errors"
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"dryfit/cmd/dryfit/internal/build"
	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/exit"
	"dryfit/cmd/dryfit/internal/outfile"
	"dryfit/cmd/dryfit/internal/report/change"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/cmd/dryfit/internal/single"
	"dryfit/cmd/dryfit/internal/source"
	"dryfit/cmd/dryfit/internal/usage"
	"dryfit/rules/design/remedy"
	"dryfit/rules/engine"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
)

// remedyFlags are those of the remedy command.
type remedyFlags struct {
	format, output, on string
	standards          []string
	mayChange          []string
	strict, write      bool
	each               bool
	answer, answers    int
	limit              int
}

func remedyCommand(s console.Streams) *cobra.Command {
	var f remedyFlags
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
		RunE: func(c *cobra.Command, args []string) error { return runRemedy(c.Context(), s, args[0], f) },
	}
	flags := c.Flags()
	flags.StringVar(&f.format, "format", "text", "text, json or patch")
	flags.StringVar(&f.output, "output", "", "write to a `file` instead of standard output")
	flags.StringVar(&f.on, "on", "", "the `date` on which acceptances must be in force, such as 2027-06-30 (default today, UTC)")
	flags.StringArrayVar(&f.standards, "standards", nil, "a standards `file` in place of those found")
	flags.StringSliceVar(&f.mayChange, "may-change", nil, "the `keys` or tables that may change, separated by commas")
	flags.BoolVar(&f.strict, "strict", false, "also clear queries")
	flags.BoolVar(&f.each, "each", false, "for each finding alone, list the keys that clear it, each with its nearest value and its effects")
	flags.BoolVar(&f.write, "write", false, "write an answer into the spec")
	flags.IntVar(&f.answer, "answer", 1, "the number of the answer to write, or to print as a patch")
	flags.IntVar(&f.answers, "answers", 3, "the number of answers to look for")
	flags.IntVar(&f.limit, "limit", remedy.DefaultLimit, "the most checks that the search makes")
	usage.CompleteWith(c, "format", "text", "json", "patch")
	return c
}

func (f remedyFlags) fault(path string) error {
	switch {
	case f.format != "text" && f.format != "json" && f.format != "patch":
		return fmt.Errorf("--format %q is not text, json or patch", f.format)
	case f.answer < 1 || f.answers < 1 || f.limit < 1:
		return errors.New("--answer, --answers and --limit are at least 1")
	case f.answer > f.answers:
		return fmt.Errorf("--answer %d of the %d that --answers looks for", f.answer, f.answers)
	case f.write && path == "-":
		return errors.New("--write has no file to write: the spec comes from standard input")
	case f.each && (f.write || f.format == "patch"):
		return errors.New("--each gives no answer that could be written")
	default:
		return nil
	}
}

func runRemedy(ctx context.Context, s console.Streams, path string, f remedyFlags) error {
	on, err := usage.JudgedOn(f.on)
	if err == nil {
		err = f.fault(path)
	}
	if err != nil {
		return err
	}
	one, err := single.Open(s, path, f.standards, review.Options{Rules: catalog.Rules(), On: on, Strict: f.strict})
	if err != nil {
		return err
	}
	options := remedy.Options{Review: one.Options, MayChange: f.mayChange, Limit: f.limit, Answers: f.answers}
	r := change.Remedy{Version: build.Version(), On: on, Strict: f.strict}
	if f.each {
		r, err = eachBy(ctx, one.Sheet, options, r)
	} else {
		r.Result, err = remedy.Search(ctx, one.Name, one.Src, options)
	}
	if err = cmp.Or(err, ctx.Err()); err != nil {
		return err
	}
	if err := outfile.Write(f.output, s.Out, one.Inputs(), func(w io.Writer) error { return f.print(w, s.Err, one.Src, r) }); err != nil {
		return err
	}
	return f.conclude(s, one.Input, one.Src, r)
}

// eachBy cures every hold and query by itself.
func eachBy(ctx context.Context, sheet *review.Sheet, o remedy.Options, r change.Remedy) (change.Remedy, error) {
	r.Result.Sheet = sheet
	r.Each = []change.Cured{}
	left := o.Limit
	for _, f := range r.Result.Sheet.Findings {
		if f.Accepted != nil || f.Severity != engine.Hold && f.Severity != engine.Query {
			continue
		}
		o.Limit = max(1, left)
		cures, reviews, err := remedy.Cures(ctx, r.Result.Sheet.Document.Tree, f, o)
		if err != nil {
			return r, err
		}
		left -= reviews
		r.Result.Reviews += reviews
		r.Each = append(r.Each, change.Cured{Finding: f, Cures: cures})
	}
	return r, nil
}

func (f remedyFlags) print(w, messages io.Writer, src []byte, r change.Remedy) error {
	switch f.format {
	case "json":
		return change.RemedyJSON(w, r)
	case "text":
		return change.RemedyText(w, r)
	}
	a, ok := f.chosen(r)
	if !ok {
		return change.RemedyText(messages, r)
	}
	return change.Patch(w, r.Result.Sheet.Path, src, a.Source)
}

// chosen is the answer that is asked for.
func (f remedyFlags) chosen(r change.Remedy) (remedy.Answer, bool) {
	if f.answer > len(r.Result.Answers) {
		return remedy.Answer{}, false
	}
	return r.Result.Answers[f.answer-1], true
}

// conclude writes the answer where that is asked for, and gives the exit
// status.
func (f remedyFlags) conclude(s console.Streams, in source.Input, src []byte, r change.Remedy) error {
	failed := len(r.Result.Open) > 0 && len(r.Result.Answers) == 0
	for _, e := range r.Each {
		failed = failed || len(e.Cures) == 0
	}
	a, ok := f.chosen(r)
	switch {
	case failed:
		return exit.VerdictError{Status: exit.Fail}
	case !ok && len(r.Result.Open) > 0 && (f.write || f.format == "patch"):
		return fmt.Errorf("--answer %d: there are %d", f.answer, len(r.Result.Answers))
	case !f.write || !ok || r.Result.Interrupted:
		return nil
	}
	if now, fault := in.Read(nil); fault != "" || !bytes.Equal(now, src) {
		return fmt.Errorf("write %s: it was changed since it was read", in.Path)
	}
	if err := outfile.Rewrite(in.Path, a.Source); err != nil {
		return fmt.Errorf("write %s: %w", in.Path, err)
	}
	fmt.Fprintf(s.Err, "dryfit: answer %d is written to %s\n", f.answer, show.Safe(in.Name))
	for _, c := range a.Comments {
		fmt.Fprintf(s.Err, "dryfit: line %d still says of %s, changed: %s\n", c.Line, show.Safe(c.Key), show.Safe(c.Text))
	}
	return nil
}
